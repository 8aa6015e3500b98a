//! What relay and controller are left with while the starter turns.

use crate::{
    cranking::{CrankingInputs, PullIn, RelayAnswer},
    fields::{self, switched_feeds::WhileCranking},
    finding::{Finding, Severity},
    message::Message,
    quantity::{Holds, Measure, Voltage, volts},
    questions::cranking::words,
    read::{
        Known,
        cranking::{BatteryBasis, WhichRelay},
    },
    say,
    schema::Choice as _,
};

/// How grave it is that the controller runs on more than the battery may give; nothing where it does not. A battery of which
/// nothing is known may well give more.
pub(super) fn restarts(known: &Known, inputs: &CrankingInputs) -> Option<Severity> {
    let least = known.least_supply?;
    let lowest = inputs.supply.min(inputs.hot_supply);
    let severity = match known.battery {
        BatteryBasis::Typed | BatteryBasis::TypedHot => Severity::Fault,
        BatteryBasis::Usual => Severity::Doubt,
    };
    (lowest < least).then_some(severity)
}

pub(super) fn restarting(inputs: &CrankingInputs, least: Voltage) -> Message {
    let lowest = inputs.supply.min(inputs.hot_supply);
    say!(words::CONTROLLER_RESTARTS, supply = lowest, least = least)
}

/// A battery that falls below what the controller runs on: it restarts in the middle of the start, again and again.
pub(super) fn controller_restarts(known: &Known, inputs: &CrankingInputs) -> Option<Finding> {
    let message = restarting(inputs, known.least_supply?);
    let finding = Finding::new(restarts(known, inputs)?, fields::controller::LEAST_SUPPLY, message);
    Some(finding.cured_by([say!(words::HOLD_SUPPLY)]))
}

/// Neither what is left nor what is needed is better known.
const A_HAIR: f64 = 0.97;

/// How grave it is that the relay is not sure to pull in; nothing where it is.
pub(super) fn weak(known: &Known, relay: &RelayAnswer) -> Option<Severity> {
    // what is in before the starter turns need not pull in then: whether it holds is told by itself
    if known.which == WhichRelay::Untold || !known.which.is_by_speed() {
        return None;
    }
    match relay.pull_in {
        PullIn::Sure => None,
        // two usual values in a row are no reason either
        PullIn::PerhapsNotHot if known.battery == BatteryBasis::Usual => None,
        PullIn::NotCold if known.battery != BatteryBasis::Usual => Some(Severity::Fault),
        // all of it typed, and beyond a hair
        PullIn::NotHot
            if known.battery == BatteryBasis::TypedHot
                && relay.is_exact
                && relay.at_coil.1.base() < A_HAIR * relay.needed.high.base() =>
        {
            Some(Severity::Fault)
        }
        PullIn::PerhapsNotHot | PullIn::NotHot | PullIn::PerhapsNotCold | PullIn::NotCold => {
            Some(Severity::Doubt)
        }
    }
}

pub(super) fn weakness(inputs: &CrankingInputs, relay: &RelayAnswer) -> Message {
    let (cold, hot) = relay.at_coil;
    if matches!(relay.pull_in, PullIn::NotHot | PullIn::PerhapsNotHot) {
        return say!(
            words::RELAY_WEAK,
            hot = inputs.temperature.high,
            needed = relay.needed.high,
            coil = hot,
            supply = inputs.hot_supply
        );
    }
    say!(words::RELAY_TOO_WEAK, needed = relay.needed.low, coil = cold, supply = inputs.supply)
}

pub(super) fn weak_relay(
    known: &Known,
    inputs: &CrankingInputs,
    relay: &RelayAnswer,
) -> Option<Finding> {
    let severity = weak(known, relay)?;
    let holds = match relay.pull_in {
        PullIn::NotHot | PullIn::PerhapsNotHot => Holds::AtSome(vec!["coil hot".to_owned()]),
        PullIn::Sure | PullIn::PerhapsNotCold | PullIn::NotCold => Holds::Always,
    };
    let per_volt = relay.needed.nominal.base() / relay.needed.high.base();
    let enough = relay.at_coil.1.base() * per_volt;
    // of two figures, so that what is bought is enough
    let enough = volts((enough * 10.0).floor() / 10.0);
    let mut cures = vec![say!(words::USE_RELAY, voltage = enough)];
    cures.extend(
        relay.holds_to.map(|it| {
            say!(words::supply::HOLDS_ONCE_IN, hot = inputs.temperature.high, voltage = it)
        }),
    );
    let finding = Finding::new(severity, known.keys.pull_in_voltage, weakness(inputs, relay));
    let working = relay.working.iter().chain(&relay.of_coil).cloned();
    Some(finding.holding(holds).cured_by(cures).shown_by(working))
}

/// What a relay does that is in before the starter turns, and can't hold.
pub(super) fn letting_go(known: &Known) -> Option<Message> {
    let it = known.lets_go.as_ref()?;
    let name = it.name.clone();
    Some(say!(words::supply::LETS_GO, name = name, coil = it.at_coil, holds = it.holds_to))
}

/// The same as a finding: no more than a doubt, as a contact that bounces may still carry enough.
pub(super) fn other_lets_go(known: &Known) -> Option<Finding> {
    let key = known.lets_go.as_ref()?.key;
    let finding = Finding::new(Severity::Doubt, key, letting_go(known)?);
    Some(finding.cured_by([say!(words::HOLD_SUPPLY)]))
}

pub(super) fn without_feed(known: &Known) -> Message {
    say!(words::supply::FEED_CUT, names = super::listed(&known.unfed))
}

/// What the engine needs hangs on a contact that the starter's turning cuts. Said once, of all that do.
pub(super) fn feed_cut(known: &Known) -> Option<Finding> {
    if known.unfed.is_empty() || !known.is_first() {
        return None;
    }
    let key = fields::switched_feeds::CRANKING;
    let cure = say!(words::supply::LIVE_FEED)
        .done_by(vec![key.edit(WhileCranking::Live.choosable().code)]);
    Some(Finding::new(Severity::Fault, key, without_feed(known)).cured_by([cure]))
}
