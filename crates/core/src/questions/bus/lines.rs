//! What a voltmeter shows of both lines while the bus runs.

use super::{pair::ohms, read::PlannedBus, titled, words};
use crate::{
    bus::{
        levels::{LineState, told},
        pair::{self, PairState},
    },
    fields,
    finding::{Basis, Finding, Findings, Severity},
    message::Message,
    quantity::{Measure as _, Voltage, volts},
    read::Entry,
    report::{Answer, Tone},
    say, say_of,
};

pub(super) fn answer(bus: &PlannedBus, findings: &mut Findings) -> Option<Answer> {
    let title = say!(words::TITLE_LEVELS);
    if bus.high == Entry::Missing && bus.low == Entry::Missing {
        return None;
    }
    let Some((high, low)) = bus.high.value().zip(bus.low.value()) else {
        let mut answer = titled("bus.levels", title, Vec::new(), say!(words::LEVELS_HALF));
        let is_missing = bus.high.is_missing() || bus.low.is_missing();
        answer.to_do = is_missing.then(|| say!(words::DO_OTHER)).into_iter().collect();
        return Some(answer);
    };
    let state = told(high, low);
    let (tone, verdict) = verdict(state, high);
    let mut answer = titled("bus.levels", title, vec![(tone, verdict)], say!(words::LEVELS_HALF));
    answer.basis = Basis::AsWired;
    let away = |line: Voltage| volts((line.base() - 2.5).abs());
    if let LineState::Running(_) = state {
        answer.why = Some(say!(words::WHY_LEVELS, up = away(high), down = away(low)));
    }
    answer.to_do = to_do(state).into_iter().collect();
    // a pair that touches is told by the ohms
    let is_told = state == LineState::Silent && is_shorted(bus);
    if let Some((severity, message)) = concern(state, high, low).filter(|_| !is_told) {
        findings.push(Finding::new(severity, fields::bus::HIGH, message).as_wired());
    }
    Some(answer)
}

fn is_shorted(bus: &PlannedBus) -> bool {
    let told = |read| pair::told(ohms(read), bus.wires);
    matches!(bus.reading.value().map(told), Some(PairState::Shorted(_)))
}

fn line(is_high: bool) -> String {
    say_of!(if is_high { words::CAN_HIGH } else { words::CAN_LOW }).into_text()
}

fn verdict(state: LineState, high: Voltage) -> (Tone, Message) {
    match state {
        LineState::Running(share) => (Tone::Good, say!(words::LEVELS_RIGHT, share = share)),
        LineState::Silent => (Tone::Doubtful, say!(words::LEVELS_SILENT, middle = high)),
        LineState::Swapped => (Tone::Bad, say!(words::LEVELS_SWAPPED)),
        LineState::Stuck => (Tone::Bad, say!(words::LEVELS_STUCK)),
        LineState::Dead | LineState::LowGrounded => (Tone::Bad, say!(words::LEVELS_GROUND)),
        LineState::ToBattery(is_high) => {
            (Tone::Bad, say!(words::LEVELS_BATTERY, line = line(is_high)))
        }
        LineState::Uneven(_) => (Tone::Doubtful, say!(words::LEVELS_UNEVEN)),
    }
}

fn to_do(state: LineState) -> Option<Message> {
    Some(match state {
        LineState::Running(_) => return None,
        LineState::Silent => say!(words::DO_TALK),
        LineState::Swapped => say!(words::DO_SWAP),
        LineState::Stuck => say!(words::DO_HOLDER),
        LineState::Dead | LineState::LowGrounded | LineState::ToBattery(_) => {
            say!(words::DO_ONE_OFF)
        }
        LineState::Uneven(_) => say!(words::DO_GROUNDS),
    })
}

fn concern(state: LineState, high: Voltage, low: Voltage) -> Option<(Severity, Message)> {
    Some(match state {
        LineState::Running(_) => return None,
        LineState::Silent => (Severity::Doubt, say!(words::SILENT, high = high, low = low)),
        LineState::Swapped => (Severity::Fault, say!(words::SWAPPED, high = high, low = low)),
        LineState::Stuck => (Severity::Fault, say!(words::STUCK, high = high, low = low)),
        LineState::Dead | LineState::LowGrounded => {
            (Severity::Fault, say!(words::TO_GROUND, high = high, low = low))
        }
        LineState::ToBattery(is_high) => {
            let line = line(is_high);
            (Severity::Fault, say!(words::TO_BATTERY, high = high, low = low, line = line))
        }
        LineState::Uneven(_) => (Severity::Doubt, say!(words::UNEVEN, high = high, low = low)),
    })
}
