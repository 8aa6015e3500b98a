//! What things are called in the sentences, and their codes in the pictures.

use crate::{
    output::{Catcher, FarEnd, KeyState, LoadKind, OnLevel, PinPart, PullRail, Stage, Wiring},
    quantity::Value,
    questions::outputs::words,
    words::Wording,
};

pub(super) fn word(code: &'static Wording) -> Value {
    Value::text(code.text)
}

pub(super) fn end(end: FarEnd) -> Value {
    word(match end {
        FarEnd::Ground => words::END_GROUND,
        FarEnd::Battery => words::END_BATTERY,
        FarEnd::Ignition => words::END_IGNITION,
        FarEnd::Relay => words::END_RELAY,
        FarEnd::FiveVolt => words::END_FIVE_VOLT,
        FarEnd::Output => words::END_OUTPUT,
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

/// How it is said that a load acts from a voltage on.
pub(super) fn acts(kind: LoadKind) -> Value {
    let is_input = kind.is_signal() || kind == LoadKind::SolidState;
    word(if is_input { words::COUNTS_FROM } else { words::PULLS_IN_AT })
}

pub(super) fn level(level: OnLevel, stage: Stage) -> Value {
    word(match (level, stage) {
        (OnLevel::Ground, _) => words::LEVEL_GROUND,
        (OnLevel::Battery, Stage::Logic) => words::LEVEL_FIVE_VOLT,
        (OnLevel::Battery, _) => words::LEVEL_BATTERY,
    })
}

pub(super) fn a_stage(stage: Stage) -> Value {
    word(match stage {
        Stage::OpenDrain => words::A_STAGE_OPEN_DRAIN,
        Stage::HighSide => words::A_STAGE_HIGH_SIDE,
        Stage::HalfBridge => words::A_STAGE_HALF_BRIDGE,
        Stage::Logic => words::A_STAGE_LOGIC,
    })
}

pub(super) fn part(part: PinPart) -> Value {
    word(match part {
        PinPart::Load(_) | PinPart::Beyond | PinPart::Meter => words::PART_LOAD,
        PinPart::Suppressor(_) => words::PART_SUPPRESSOR,
        PinPart::UpperSwitch => words::PART_UPPER_SWITCH,
        PinPart::LowerSwitch => words::PART_LOWER_SWITCH,
        PinPart::UpperDiode => words::PART_UPPER_DIODE,
        PinPart::LowerDiode => words::PART_LOWER_DIODE,
        PinPart::PullUp => words::PART_PULL_UP,
        PinPart::PullDown => words::PART_PULL_DOWN,
        PinPart::UpperLeak => words::PART_UPPER_LEAK,
        PinPart::LowerLeak => words::PART_LOWER_LEAK,
    })
}

/// What catches a kick.
pub(super) fn catcher(catcher: Option<Catcher>) -> Value {
    word(match catcher {
        None => words::CATCHER_NONE,
        Some(Catcher::Diode) => words::CATCHER_DIODE,
        Some(Catcher::Resistor) => words::CATCHER_RESISTOR,
        Some(Catcher::Switch) => words::CATCHER_SWITCH,
        Some(Catcher::UpperDiode) => words::PART_UPPER_DIODE,
        Some(Catcher::LowerDiode) => words::PART_LOWER_DIODE,
        Some(Catcher::Clamp) => words::CATCHER_CLAMP,
    })
}

pub(super) fn state(state: KeyState) -> &'static Wording {
    match state {
        KeyState::KeyOff => words::STATE_KEY_OFF,
        KeyState::Starting => words::STATE_STARTING,
        KeyState::Off => words::STATE_OFF,
        KeyState::Cranking => words::STATE_CRANKING,
        KeyState::On => words::STATE_ON,
        KeyState::Outlived => words::STATE_OUTLIVED,
        KeyState::Pulsed => words::STATE_PULSED,
        KeyState::OtherOn => words::STATE_OTHER_ON,
        KeyState::FeedLost => words::STATE_FEED_LOST,
        KeyState::GroundLost => words::STATE_GROUND_LOST,
        KeyState::SupplyLost => words::STATE_SUPPLY_LOST,
    }
}

/// The state as the load meets it: one that needs both outputs of its pair is asked to act by both.
pub(super) fn state_of(state: KeyState, wiring: &Wiring, subject: usize) -> &'static Wording {
    match state {
        KeyState::On if wiring.needs(subject).is_some() => words::STATE_BOTH_ON,
        _ => self::state(state),
    }
}

pub(super) fn state_code(state: KeyState) -> &'static str {
    match state {
        KeyState::KeyOff => "key-off",
        KeyState::Starting => "starting",
        KeyState::Off => "off",
        KeyState::Cranking => "cranking",
        KeyState::On => "on",
        KeyState::Outlived => "outlived",
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

pub(super) fn kind_code(kind: LoadKind) -> &'static str {
    match kind {
        LoadKind::RelayCoil => "relay-coil",
        LoadKind::Solenoid => "solenoid",
        LoadKind::Motor => "motor",
        LoadKind::Lamp => "lamp",
        LoadKind::Resistor => "resistor",
        LoadKind::Led => "led",
        LoadKind::SolidState => "solid-state",
        LoadKind::LogicInput => "logic-input",
        LoadKind::Gauge => "gauge",
        LoadKind::ProportionalValve => "proportional-valve",
        LoadKind::PulseInput => "pulse-input",
        LoadKind::RevCounter => "rev-counter",
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
