//! How a trouble is told: a row each.

use super::words;
use crate::{
    fields::{loads, outputs},
    output::{KeyState, Trouble},
    read::{LoadPlace, Unasked},
    schema::{Key, Place},
    words::Wording,
};

/// How a trouble is told.
#[derive(Clone, Copy, Debug)]
pub(super) struct Told {
    /// The field that the page leads to, in the first record of its list.
    pub(super) field: Place,
    /// The sentence of its finding.
    pub(super) finding: &'static Wording,
    /// What it says as the verdict.
    pub(super) verdict: &'static Wording,
}

impl Told {
    /// A trouble that is never the reason of a verdict, until one is given.
    const fn at<T>(field: Key<T>, finding: &'static Wording) -> Self {
        Self { field: field.place(), finding, verdict: words::CONNECT }
    }
    const fn as_verdict(self, verdict: &'static Wording) -> Self {
        Self { verdict, ..self }
    }
}

// a table: a row stays a line
#[rustfmt::skip]
const fn told(trouble: Trouble) -> Told {
    match trouble {
        Trouble::LiveAtRest => Told::at(loads::FAR_END, words::LIVE_AT_REST).as_verdict(words::NO_LIVE_AT_REST),
        Trouble::LiveAtKeyOn => Told::at(loads::FAR_END, words::LIVE_AT_KEY_ON).as_verdict(words::NO_LIVE_AT_KEY_ON),
        Trouble::LiveKeyOff => Told::at(loads::FAR_END, words::LIVE_KEY_OFF).as_verdict(words::NO_LIVE_KEY_OFF),
        Trouble::MayStayIn => Told::at(loads::FAR_END, words::MAY_STAY_IN).as_verdict(words::NO_MAY_STAY_IN),
        Trouble::MayStayInKeyOff => Told::at(loads::FAR_END, words::MAY_STAY_IN_KEY_OFF).as_verdict(words::NO_MAY_STAY_IN_KEY_OFF),
        Trouble::NeverActs => Told::at(loads::FAR_END, words::NEVER_ACTS).as_verdict(words::NO_NEVER_ACTS),
        Trouble::NoPulses => Told::at(loads::FAR_END, words::NO_PULSES).as_verdict(words::NO_NO_PULSES),
        Trouble::ActsWithOther => Told::at(loads::FAR_END, words::ACTS_WITH_OTHER).as_verdict(words::NO_ACTS_WITH_OTHER),
        Trouble::MayStayInWithOther => Told::at(loads::FAR_END, words::MAY_STAY_IN_WITH_OTHER).as_verdict(words::NO_MAY_STAY_IN_WITH_OTHER),
        Trouble::ShortedByDiode => Told::at(loads::STRIPE, words::SHORTED_BY_DIODE).as_verdict(words::NO_SHORTED_BY_DIODE),
        Trouble::OverVoltage => Told::at(loads::BEARS, words::OVER_VOLTAGE).as_verdict(words::NO_OVER_VOLTAGE),
        Trouble::PerhapsOverVoltage => Told::at(loads::BEARS, words::PERHAPS_OVER_VOLTAGE).as_verdict(words::CARE_OVER_VOLTAGE),
        Trouble::LoadsLogicRail => Told::at(loads::FAR_END, words::LOADS_LOGIC_RAIL).as_verdict(words::NO_LOADS_LOGIC_RAIL),
        Trouble::AtLimit => Told::at(loads::OUTPUT, words::AT_LIMIT).as_verdict(words::CARE_AT_LIMIT),
        Trouble::TooMuchCurrent => Told::at(loads::OUTPUT, words::TOO_MUCH_CURRENT).as_verdict(words::NO_TOO_MUCH_CURRENT),
        Trouble::KickTooStrong => Told::at(outputs::CLAMP_ENERGY, words::KICK_TOO_STRONG).as_verdict(words::NO_KICK_TOO_STRONG),
        Trouble::KickBeyondAny => Told::at(loads::SUPPRESSION, words::KICK_BEYOND_ANY).as_verdict(words::NO_KICK_TOO_STRONG),
        Trouble::KickBeyondUsual => Told::at(loads::SUPPRESSION, words::KICK_BEYOND_USUAL).as_verdict(words::CARE_KICK),
        Trouble::KicksMelt => Told::at(loads::FREQUENCY, words::KICKS_MELT).as_verdict(words::NO_KICKS_MELT),
        Trouble::TooFast => Told::at(loads::FREQUENCY, words::TOO_FAST).as_verdict(words::NO_TOO_FAST),
        Trouble::WakesController => Told::at(loads::FAR_END, words::WAKES_CONTROLLER).as_verdict(words::NO_WAKES_CONTROLLER),
        Trouble::LiveOutlived => Told::at(loads::FAR_END, words::LIVE_OUTLIVED).as_verdict(words::NO_LIVE_OUTLIVED),
        Trouble::DrivesDeadFeed => Told::at(loads::FAR_END, words::DRIVES_DEAD_FEED).as_verdict(words::NO_DRIVES_DEAD_FEED),
        Trouble::PerhapsLiveOutlived => Told::at(loads::FAR_END, words::PERHAPS_LIVE_OUTLIVED),
        Trouble::PerhapsDrivesDeadFeed => Told::at(loads::FAR_END, words::PERHAPS_DRIVES_DEAD_FEED),
        Trouble::MayStayInAtRestart => Told::at(loads::FAR_END, words::MAY_STAY_IN_AT_RESTART).as_verdict(words::CARE_MAY_STAY_IN_AT_RESTART),
        Trouble::Weak => Told::at(loads::PULL_IN, words::WEAK).as_verdict(words::CARE_WEAK),
        Trouble::PulsesBlurred => Told::at(loads::DROP_OUT, words::PULSES_BLURRED).as_verdict(words::CARE_PULSES_BLURRED),
        Trouble::KickPerhapsTooStrong => Told::at(loads::INDUCTANCE, words::KICK_PERHAPS_TOO_STRONG).as_verdict(words::CARE_KICK),
        Trouble::Inrush => Told::at(loads::OUTPUT, words::INRUSH).as_verdict(words::CARE_INRUSH),
        Trouble::Chatters => Told::at(loads::FREQUENCY, words::CHATTERS).as_verdict(words::CARE_CHATTERS),
        Trouble::KicksHeat => Told::at(loads::FREQUENCY, words::KICKS_HEAT).as_verdict(words::CARE_KICKS_HEAT),
        Trouble::FeedsDeadFeed => Told::at(loads::FAR_END, words::FEEDS_DEAD_FEED).as_verdict(words::CARE_FEEDS_DEAD_FEED),
        Trouble::LeaksIntoController => Told::at(loads::FAR_END, words::LEAKS_INTO_CONTROLLER).as_verdict(words::CARE_LEAKS),
        Trouble::DrainsBattery => Told::at(loads::FAR_END, words::DRAINS_BATTERY).as_verdict(words::CARE_DRAINS),
        Trouble::LiftsLogicRail => Told::at(loads::FAR_END, words::LIFTS_LOGIC_RAIL).as_verdict(words::CARE_LIFTS_LOGIC_RAIL),
        Trouble::WeakWhileCranking => Told::at(loads::PULL_IN, words::WEAK_WHILE_CRANKING),
        Trouble::KickUncaught => Told::at(loads::SUPPRESSION, words::KICK_UNCAUGHT),
        Trouble::PulsedTooLittle => Told::at(loads::DUTY, words::PULSED_TOO_LITTLE),
        Trouble::ActsWithoutFeed => Told::at(loads::FAR_END, words::ACTS_WITHOUT_FEED),
        Trouble::ActsWithoutGround => Told::at(loads::FAR_END, words::ACTS_WITHOUT_GROUND),
        Trouble::OverVoltageWithoutGround => Told::at(loads::BEARS, words::OVER_VOLTAGE_WITHOUT_GROUND),
        Trouble::ActsWithoutSupply => Told::at(loads::FAR_END, words::ACTS_WITHOUT_SUPPLY),
        Trouble::KeepsFeedAlive => Told::at(loads::FAR_END, words::KEEPS_FEED_ALIVE),
        Trouble::KeepsControllerAlive => Told::at(loads::FAR_END, words::KEEPS_CONTROLLER_ALIVE),
    }
}

/// Its field, with the numbers of the load and of its output's record.
pub(super) fn field(trouble: Trouble, load: LoadPlace, output: usize) -> Place {
    let field = told(trouble).field;
    if field.part() == outputs::NAME.place().part() {
        return field.at(output);
    }
    field.twin(load.part).at(load.number)
}

/// The sentence of its finding.
pub(super) fn finding(trouble: Trouble, state: KeyState) -> &'static Wording {
    if trouble == Trouble::ShortedByDiode && state == KeyState::OtherOn {
        return words::SHORTED_WHEN_TURNED;
    }
    if trouble == Trouble::DrivesDeadFeed && state != KeyState::Outlived {
        return words::DRIVES_OPEN_FEED;
    }
    told(trouble).finding
}

/// Whether it says no: what may stay in as the controller restarts does so where someone can be hurt.
pub(super) fn forbids(trouble: Trouble, unasked: Unasked) -> bool {
    let is_dangerous = unasked == Unasked::Dangerous;
    trouble.forbids() || (is_dangerous && trouble == Trouble::MayStayInAtRestart)
}

/// What it says as the verdict.
pub(super) fn verdict(trouble: Trouble, unasked: Unasked) -> &'static Wording {
    if trouble == Trouble::MayStayInAtRestart && forbids(trouble, unasked) {
        return words::NO_MAY_STAY_IN_AT_RESTART;
    }
    told(trouble).verdict
}
