//! What a spark in a wrong place comes to, in a few words.

use crate::{
    channels::{Effect, Stroke},
    message::Message,
    questions::firing::words,
    say,
};

/// Into which stroke it falls.
pub(super) fn stroke(stroke: Stroke) -> Message {
    match stroke {
        Stroke::Firing => say!(words::wired::STROKE_FIRING),
        Stroke::Compression => say!(words::wired::STROKE_COMPRESSION),
        Stroke::Power => say!(words::wired::STROKE_POWER),
        Stroke::Exhaust => say!(words::wired::STROKE_EXHAUST),
        Stroke::Overlap => say!(words::wired::STROKE_OVERLAP),
        Stroke::Intake => say!(words::wired::STROKE_INTAKE),
        Stroke::Ports => say!(words::wired::STROKE_PORTS),
        Stroke::Next => say!(words::wired::STROKE_NEXT),
    }
}

/// What comes of it.
pub(super) fn outcome(effect: Effect, is_ignition: bool) -> Message {
    match effect {
        Effect::Right if is_ignition => say!(words::wired::OUTCOME_FIRES),
        Effect::Right => say!(words::wired::OUTCOME_RIGHT),
        Effect::InletBackfire => say!(words::wired::OUTCOME_INTAKE),
        Effect::KickBack => say!(words::wired::OUTCOME_COMPRESSION),
        Effect::NextChamber => say!(words::wired::OUTCOME_NEXT),
        Effect::Early => say!(words::wired::OUTCOME_EARLY),
        Effect::LateBurn => say!(words::wired::OUTCOME_POWER),
        Effect::ExhaustPop => say!(words::wired::OUTCOME_EXHAUST),
        Effect::OpenPorts => say!(words::wired::OUTCOME_PORTS),
        Effect::Overlap => say!(words::wired::OUTCOME_OVERLAP),
        Effect::Never => say!(words::wired::OUTCOME_NEVER),
        Effect::OtherPosition => say!(words::wired::OUTCOME_SPLIT),
        Effect::OtherGroup => say!(words::wired::OUTCOME_BANK),
        Effect::FuelElsewhere => say!(words::wired::OUTCOME_FUEL),
    }
}
