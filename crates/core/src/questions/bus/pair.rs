//! What closes the pair at its ends, as planned and as a meter has read.

use super::{
    read::{PairReading, PlannedBus},
    titled, words,
};
use crate::{
    bus::{
        pair::{PairDrive, PairState, driven, expected, told},
        reach,
    },
    fields::{self, bus::TerminatedAt},
    finding::{Basis, Finding, Findings, Severity},
    message::Message,
    quantity::{Measure as _, Resistance, Value, metres},
    read::Entry,
    report::{Answer, Tone},
    say, say_of,
};

/// The number of terminators that a bus has.
const TWO: u32 = 2;

pub(super) fn answer(bus: &PlannedBus, findings: &mut Findings) -> Answer {
    let title = say!(words::TITLE_PAIR);
    let read = match bus.reading {
        Entry::Given(read) | Entry::Assumed(read) => Some(read),
        Entry::Missing | Entry::Unreadable => None,
    };
    let mut said = planned(bus, read.is_some(), findings);
    if let Some(read) = read {
        let (verdict, mut to_do) = by_reading(bus, read, findings);
        said.push(verdict);
        let mut answer = titled("bus.termination", title, said, say!(words::PAIR_OPEN));
        answer.basis = Basis::AsWired;
        answer.why = Some(why_read(bus, read));
        if answer.verdict.tone != Tone::Good {
            to_do.extend(moved(bus));
            answer.cautions = vec![say!(words::CAUTION_OFF)];
        }
        answer.to_do = to_do;
        return answer;
    }
    let open = match bus.reading {
        Entry::Unreadable => say!(words::PAIR_UNREADABLE),
        _ => say!(words::PAIR_OPEN),
    };
    let mut answer = titled("bus.termination", title, said, open);
    let right = expected(TWO, bus.wires);
    answer.why = Some(say!(words::WHY_PLANNED));
    answer.to_do.extend(bus.terminators.value().filter(|it| *it != TWO).map(|_| cure(bus)));
    answer.to_do.extend(moved(bus));
    answer.to_do.push(say!(words::DO_OHMS, low = right.low, high = right.high));
    answer.cautions = vec![say!(words::CAUTION_OFF)];
    answer
}

/// How a reading is said.
pub(super) fn shown(read: PairReading) -> Value {
    match read {
        PairReading::Ohms(ohms) => ohms.show(),
        PairReading::NoEnd => Value::text(words::NO_END.text),
    }
}

/// What a reading is to the trade: none where the meter shows no end.
pub(super) fn ohms(read: PairReading) -> Option<Resistance> {
    match read {
        PairReading::Ohms(ohms) => Some(ohms),
        PairReading::NoEnd => None,
    }
}

/// The terminators as they are planned.
fn planned(bus: &PlannedBus, is_read: bool, findings: &mut Findings) -> Vec<(Tone, Message)> {
    let mut said = Vec::new();
    let Some(count) = bus.terminators.value() else { return said };
    if count != TWO {
        said.push((Tone::Bad, say!(words::PAIR_COUNT, n = count)));
        let read = match count {
            0 => say_of!(words::NO_END).into_text(),
            _ => expected(count, bus.wires).nominal.show().into_shown(),
        };
        let message = say!(words::TERMINATORS, n = count, read = read);
        let finding = Finding::new(Severity::Fault, fields::bus::TERMINATORS, message);
        findings.push(finding.cured_by([cure(bus)]));
    } else if is_misplaced(bus) {
        said.push((Tone::Doubtful, say!(words::PAIR_AT)));
        let message = say!(words::NOT_AT_ENDS);
        let finding = Finding::new(Severity::Doubt, fields::bus::TERMINATED_AT, message);
        findings.push(finding.cured_by(moved(bus)));
    } else if !is_read {
        let right = expected(TWO, bus.wires);
        said.push((Tone::Good, say!(words::PAIR_PLANNED, low = right.low, high = right.high)));
    }
    said
}

/// Two of them; what was read with another number is read again.
fn cure(bus: &PlannedBus) -> Message {
    let mut edits =
        vec![fields::bus::TERMINATORS.edit("2"), fields::bus::TERMINATED_AT.edit("ends")];
    if is_as_planned(bus) {
        edits.push(fields::bus::READING.edit(""));
    }
    say!(words::DO_TWO).done_by(edits)
}

/// Whether the reading shows no more than what is planned.
fn is_as_planned(bus: &PlannedBus) -> bool {
    let Some((read, count)) = bus.reading.value().zip(bus.terminators.value()) else {
        return false;
    };
    match told(ohms(read), bus.wires) {
        PairState::Fitted(fitted) => fitted == count,
        PairState::Unterminated => count == 0,
        _ => false,
    }
}

/// Whether two terminators stand where the wire beyond them is longer than a branch may be.
fn is_misplaced(bus: &PlannedBus) -> bool {
    let is_two = bus.terminators.value() == Some(TWO);
    let harmless = bus.rate.value().map_or_else(|| metres(0.0), |rate| reach::of_branch(rate).sure);
    is_two
        && bus.terminated_at == Some(TerminatedAt::Elsewhere)
        && bus.length.is_none_or(|length| length > harmless)
}

fn moved(bus: &PlannedBus) -> Option<Message> {
    let edits = vec![fields::bus::TERMINATED_AT.edit("ends")];
    is_misplaced(bus).then(|| say!(words::DO_ENDS).done_by(edits))
}

fn why_read(bus: &PlannedBus, read: PairReading) -> Message {
    let PairState::Fitted(fitted) = told(ohms(read), bus.wires) else {
        return say!(words::WHY_READ);
    };
    match bus.terminators.value().filter(|it| *it != fitted) {
        Some(n) => say!(words::WHY_DIFFERS, n = n, read = shown(read)),
        None => say!(words::WHY_READ),
    }
}

/// What the meter tells: verdict and what to do.
fn by_reading(
    bus: &PlannedBus,
    read: PairReading,
    findings: &mut Findings,
) -> ((Tone, Message), Vec<Message>) {
    let it = ReadPair { bus, read: shown(read), ohms: ohms(read) };
    let found = it.found();
    // what was planned so is told at the plan
    let is_told = is_as_planned(bus);
    if let Some((severity, message)) = found.finding.filter(|_| !is_told) {
        let mut finding = Finding::new(severity, fields::bus::READING, message).as_wired();
        if let Some(ohms) = it.ohms {
            finding = finding.shown_by(super::numbers::contact(ohms, bus.wires));
        }
        findings.push(finding);
    }
    (found.verdict, found.to_do)
}

/// A pair that was read.
struct ReadPair<'a> {
    bus: &'a PlannedBus,
    read: Value,
    ohms: Option<Resistance>,
}

/// What is said of it.
struct FoundPair {
    verdict: (Tone, Message),
    finding: Option<(Severity, Message)>,
    to_do: Vec<Message>,
}

impl ReadPair<'_> {
    fn found(&self) -> FoundPair {
        let read = self.read.clone();
        match told(self.ohms, self.bus.wires) {
            PairState::Fitted(TWO) => FoundPair {
                verdict: (Tone::Good, say!(words::PAIR_READ, read = read)),
                finding: None,
                to_do: Vec::new(),
            },
            PairState::Fitted(1) => FoundPair {
                verdict: (Tone::Bad, say!(words::PAIR_ONE, read = read)),
                finding: Some((Severity::Fault, say!(words::ONE_READ, read = read))),
                to_do: vec![say!(words::DO_UNPLUG), say!(words::DO_FIT)],
            },
            PairState::Fitted(n) => self.too_many(n),
            PairState::TooLow => self.too_many(5),
            PairState::Unterminated => FoundPair {
                verdict: (Tone::Bad, say!(words::PAIR_NONE, read = read)),
                finding: Some((Severity::Fault, say!(words::NONE_READ, read = read))),
                to_do: vec![say!(words::DO_FIT)],
            },
            PairState::Shorted(share) => self.shorted(share),
            PairState::Between { right, contact } => self.between(right, contact),
        }
    }

    fn too_many(&self, n: u32) -> FoundPair {
        let read = self.read.clone();
        FoundPair {
            verdict: (Tone::Bad, say!(words::PAIR_MANY, read = read)),
            finding: Some((Severity::Fault, say!(words::MANY_READ, read = read, n = n))),
            to_do: vec![say!(words::DO_TAKE_OFF)],
        }
    }

    fn shorted(&self, share: Option<f64>) -> FoundPair {
        let read = self.read.clone();
        let at = share.zip(self.bus.length).map(|(share, length)| length * share);
        FoundPair {
            verdict: (Tone::Bad, say!(words::PAIR_SHORT, read = read)),
            finding: Some((Severity::Fault, say!(words::SHORTED, read = read))),
            to_do: vec![at.map_or_else(
                || say!(words::DO_SHORT),
                |distance| say!(words::DO_SHORT_AT, distance = distance),
            )],
        }
    }

    fn between(&self, right: u32, contact: Resistance) -> FoundPair {
        let read = self.read.clone();
        let (tone, severity) = match driven(self.ohms, self.bus.wires) {
            PairDrive::No => (Tone::Bad, Severity::Fault),
            PairDrive::Barely | PairDrive::Well => (Tone::Doubtful, Severity::Doubt),
        };
        let more = right + 1;
        FoundPair {
            verdict: (tone, say!(words::PAIR_CONTACT, read = read, right = right, more = more)),
            finding: Some((severity, say!(words::CONTACT, read = read, contact = contact))),
            to_do: vec![say!(words::DO_CONTACT, contact = contact)],
        }
    }
}
