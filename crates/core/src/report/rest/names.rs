//! What things are called in the sentences, and their codes in the pictures.

use crate::{
    output::{Catcher, FarEnd, KeyState, Kind, OnLevel, Part, PullRail, Stage, Wiring},
    quantity::Value,
    words,
};

pub(super) fn word(code: &'static str) -> Value {
    Value::text(words::sentence(code))
}

pub(super) fn end(end: FarEnd) -> Value {
    word(match end {
        FarEnd::Ground => "rest.end-ground",
        FarEnd::Battery => "rest.end-battery",
        FarEnd::Ignition => "rest.end-ignition",
        FarEnd::Relay => "rest.end-relay",
        FarEnd::FiveVolt => "rest.end-five-volt",
        FarEnd::Output => "rest.end-output",
    })
}

/// At the start of a sentence.
pub(super) fn end_first(far_end: FarEnd) -> Value {
    let name = end(far_end).into_shown();
    let mut letters = name.chars();
    // without the tables of every alphabet's capitals, ten kilobytes of the page
    let first: String =
        letters.next().map(|letter| letter.to_ascii_uppercase()).into_iter().collect();
    Value::text(first + letters.as_str())
}

/// A sentence inside another one.
pub(super) fn inside(sentence: &str) -> String {
    let mut letters = sentence.chars();
    let first: String =
        letters.next().map(|letter| letter.to_ascii_lowercase()).into_iter().collect();
    first + letters.as_str()
}

pub(super) fn level(level: OnLevel, stage: Stage) -> Value {
    word(match (level, stage) {
        (OnLevel::Ground, _) => "rest.level-ground",
        (OnLevel::Battery, Stage::Logic) => "rest.level-five-volt",
        (OnLevel::Battery, _) => "rest.level-battery",
    })
}

pub(super) fn a_stage(stage: Stage) -> Value {
    word(match stage {
        Stage::OpenDrain => "rest.a-stage-open-drain",
        Stage::HighSide => "rest.a-stage-high-side",
        Stage::HalfBridge => "rest.a-stage-half-bridge",
        Stage::Logic => "rest.a-stage-logic",
    })
}

pub(super) fn part(part: Part) -> Value {
    word(match part {
        Part::Load(_) | Part::Beyond | Part::Meter => "rest.part-load",
        Part::Suppressor(_) => "rest.part-suppressor",
        Part::UpperSwitch => "rest.part-upper-switch",
        Part::LowerSwitch => "rest.part-lower-switch",
        Part::UpperDiode => "rest.part-upper-diode",
        Part::LowerDiode => "rest.part-lower-diode",
        Part::PullUp => "rest.part-pull-up",
        Part::PullDown => "rest.part-pull-down",
        Part::UpperLeak => "rest.part-upper-leak",
        Part::LowerLeak => "rest.part-lower-leak",
    })
}

/// What catches a kick.
pub(super) fn catcher(catcher: Option<Catcher>) -> Value {
    word(match catcher {
        None => "rest.catcher-none",
        Some(Catcher::Diode) => "rest.catcher-diode",
        Some(Catcher::Resistor) => "rest.catcher-resistor",
        Some(Catcher::Switch) => "rest.catcher-switch",
        Some(Catcher::UpperDiode) => "rest.part-upper-diode",
        Some(Catcher::LowerDiode) => "rest.part-lower-diode",
        Some(Catcher::Clamp) => "rest.catcher-clamp",
    })
}

pub(super) fn state(state: KeyState) -> &'static str {
    match state {
        KeyState::KeyOff => "rest.state-key-off",
        KeyState::Starting => "rest.state-starting",
        KeyState::Off => "rest.state-off",
        KeyState::On => "rest.state-on",
        KeyState::Pulsed => "rest.state-pulsed",
        KeyState::OtherOn => "rest.state-other-on",
        KeyState::FeedLost => "rest.state-feed-lost",
        KeyState::GroundLost => "rest.state-ground-lost",
        KeyState::SupplyLost => "rest.state-supply-lost",
    }
}

/// The state as the load meets it: one that needs both outputs of its pair is asked to act by both.
pub(super) fn state_of(state: KeyState, wiring: &Wiring, subject: usize) -> &'static str {
    match state {
        KeyState::On if wiring.needs(subject).is_some() => "rest.state-both-on",
        _ => self::state(state),
    }
}

pub(super) fn state_code(state: KeyState) -> &'static str {
    match state {
        KeyState::KeyOff => "key-off",
        KeyState::Starting => "starting",
        KeyState::Off => "off",
        KeyState::On => "on",
        KeyState::Pulsed => "pulsed",
        KeyState::OtherOn => "other-on",
        KeyState::FeedLost => "feed-lost",
        KeyState::GroundLost => "ground-lost",
        KeyState::SupplyLost => "supply-lost",
    }
}

pub(super) fn stage_code(stage: Stage) -> &'static str {
    match stage {
        Stage::OpenDrain => "open-drain",
        Stage::HighSide => "high-side",
        Stage::HalfBridge => "half-bridge",
        Stage::Logic => "logic",
    }
}

pub(super) fn end_code(end: FarEnd) -> &'static str {
    match end {
        FarEnd::Ground => "ground",
        FarEnd::Battery => "battery",
        FarEnd::Ignition => "ignition",
        FarEnd::Relay => "relay",
        FarEnd::FiveVolt => "5v",
        FarEnd::Output => "output",
    }
}

pub(super) fn kind_code(kind: Kind) -> &'static str {
    match kind {
        Kind::RelayCoil => "relay-coil",
        Kind::Solenoid => "solenoid",
        Kind::Motor => "motor",
        Kind::Lamp => "lamp",
        Kind::Resistor => "resistor",
        Kind::Led => "led",
        Kind::SolidState => "solid-state",
        Kind::LogicInput => "logic-input",
        Kind::Gauge => "gauge",
    }
}

pub(super) fn rail_code(rail: PullRail) -> &'static str {
    match rail {
        PullRail::Battery => "battery",
        PullRail::Controller => "controller",
        PullRail::FiveVolt => "5v",
        PullRail::ThreeVolt => "3v3",
    }
}
