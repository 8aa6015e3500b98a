//! An electronic throttle judged as one thing: it is driven both ways, and what drives it can be cut off apart from it.
//!
//! Source: a plate that springs hold a little open between its ends, and a supply that a second path can take away, are common
//! practice, no source.

use super::case::Subject;
use crate::{
    fields::loads,
    finding::{Finding, Severity},
    message::Message,
    questions::outputs::words,
    read::{LoadPlace, OutputLink, PlannedThrottle, PowerCut},
    report::{Tone, Verdict},
    say,
    schema::{Part, Place},
};

/// What is wrong with it beside what is wrong with any motor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Lack {
    /// The pair drives its plate one way only.
    OneWay,
    /// Nothing takes its supply away.
    NoCut,
    /// What takes its supply away is driven by the very outputs that drive the plate.
    CutByItself,
    /// The relay that should is driven by no output.
    CutUndriven,
    /// It is not known what takes its supply away.
    CutUnknown,
}

/// The findings about it.
pub(super) fn findings(subject: &Subject<'_>) -> impl Iterator<Item = Finding> {
    lacks(subject).into_iter().map(|lack| finding(subject, lack))
}

/// The verdict, where it is the throttle that forbids or doubts it.
pub(super) fn verdict(subject: &Subject<'_>) -> Option<Verdict> {
    let lacks = lacks(subject);
    let is_doubt = |lack: &&Lack| **lack == Lack::CutUnknown;
    let verdict = |tone, message: Message| Some(Verdict { tone, message });
    match lacks.iter().find(|lack| !is_doubt(lack)) {
        Some(Lack::OneWay) => verdict(Tone::Bad, say!(words::NO_THROTTLE_ONE_WAY)),
        Some(_) => verdict(Tone::Bad, say!(words::NO_THROTTLE_CUT)),
        None if lacks.is_empty() => None,
        None => verdict(Tone::Doubtful, say!(words::CARE_THROTTLE_CUT)),
    }
}

fn lacks(subject: &Subject<'_>) -> Vec<Lack> {
    let Some(throttle) = &subject.load.throttle else { return Vec::new() };
    let is_two_way = subject.wiring().is_some_and(|wiring| wiring.is_reversible(subject.at));
    let one_way = (!is_two_way).then_some(Lack::OneWay);
    one_way.into_iter().chain(cut(subject, *throttle)).collect()
}

fn cut(subject: &Subject<'_>, throttle: PlannedThrottle) -> Option<Lack> {
    let relay = match (throttle.cut, throttle.relay) {
        (Some(PowerCut::Controller), _) => return None,
        (Some(PowerCut::Nothing), _) => return Some(Lack::NoCut),
        (None, _) | (Some(PowerCut::Relay), None) => return Some(Lack::CutUnknown),
        (Some(PowerCut::Relay), Some(relay)) => LoadPlace { part: Part::Relays, number: relay },
    };
    let coil = subject.planned.loads.iter().find(|load| load.place == relay);
    match coil.map(|coil| coil.link) {
        Some(OutputLink::To(number)) if subject.load.takes(number) => Some(Lack::CutByItself),
        Some(OutputLink::To(_)) => None,
        Some(OutputLink::Blank | OutputLink::Nowhere) | None => Some(Lack::CutUndriven),
    }
}

fn finding(subject: &Subject<'_>, lack: Lack) -> Finding {
    let (load, number) = (subject.load.name.clone(), subject.load.place.number);
    let (severity, place, message): (_, Place, _) = match lack {
        Lack::OneWay => (
            Severity::Fault,
            loads::FAR_END.at(number).into(),
            say!(words::THROTTLE_ONE_WAY, load = load),
        ),
        Lack::NoCut => (
            Severity::Danger,
            loads::POWER_CUT.at(number).into(),
            say!(words::THROTTLE_NO_CUT, load = load),
        ),
        Lack::CutByItself => (
            Severity::Danger,
            loads::CUT_RELAY.at(number).into(),
            say!(words::THROTTLE_CUT_BY_ITSELF, load = load),
        ),
        Lack::CutUndriven => (
            Severity::Fault,
            loads::CUT_RELAY.at(number).into(),
            say!(words::THROTTLE_CUT_UNDRIVEN, load = load),
        ),
        Lack::CutUnknown => (
            Severity::Doubt,
            loads::POWER_CUT.at(number).into(),
            say!(words::THROTTLE_CUT_UNKNOWN, load = load),
        ),
    };
    Finding::new(severity, place, message)
}
