//! How busy the frames make the bus, and whether two have one identifier.

use super::{
    read::{PlannedBus, PlannedFrame, shown},
    titled, words,
};
use crate::{
    bus::load::{Busyness, PeriodicFrame, judged, least_rate, of_frames},
    bus::reach,
    fields::{self, frames},
    finding::{Finding, Findings, Severity},
    message::Message,
    quantity::{Band, BitRate, Measure as _, Ratio, metres},
    report::{Answer, Tone},
    say,
};

pub(super) fn answer(bus: &PlannedBus, findings: &mut Findings) -> Option<Answer> {
    if bus.frames.is_empty() {
        return None;
    }
    let mut said = twice(bus, findings);
    let left_out: Vec<_> = bus.frames.iter().filter(|it| it.periodic.is_none()).map(name).collect();
    let counted: Vec<_> = bus.frames.iter().filter_map(|it| it.periodic.as_ref()).collect();
    let open = if counted.is_empty() { words::LOAD_NO_PERIOD } else { words::LOAD_NO_RATE };
    let load = of(bus);
    let mut to_do = Vec::new();
    if !said.is_empty() {
        to_do.push(say!(words::DO_IDENTIFIER));
    }
    let mut why = None;
    if let Some((load, rate)) = load {
        said.push(verdict(&load, !left_out.is_empty()));
        let (least, most) = (load.low, load.high);
        let n = counted.len();
        why = Some(say!(words::WHY_LOAD, n = n, least = least, most = most, rate = rate));
        to_do.extend(told(bus, &load, rate, findings));
    }
    let title = say!(words::TITLE_LOAD);
    let mut answer = titled("bus.load", title, said, crate::say_of!(open));
    answer.why = why;
    if !left_out.is_empty() {
        to_do.push(say!(words::DO_PERIODS, list = left_out.join(", ")));
    }
    answer.to_do = to_do;
    Some(answer)
}

/// The load, where the bit rate and a period are known.
pub(super) fn of(bus: &PlannedBus) -> Option<(Band<Ratio>, BitRate)> {
    let counted: Vec<&PeriodicFrame> =
        bus.frames.iter().filter_map(|it| it.periodic.as_ref()).collect();
    let rate = bus.rate.value().filter(|_| !counted.is_empty())?;
    Some((of_frames(counted, rate), rate))
}

/// What a frame is called.
pub(super) fn name(frame: &PlannedFrame) -> String {
    if frame.name.is_empty() {
        say!(words::FRAME, n = frame.record + 1).into_text()
    } else {
        frame.name.clone()
    }
}

fn verdict(load: &Band<Ratio>, is_short: bool) -> (Tone, Message) {
    match judged(load) {
        Busyness::Over => (Tone::Bad, say!(words::LOAD_OVER, least = load.low)),
        Busyness::PerhapsOver | Busyness::Busy => {
            (Tone::Doubtful, say!(words::LOAD_BUSY, most = load.high))
        }
        Busyness::Easy if is_short => (Tone::Open, say!(words::LOAD_SO_FAR, most = load.high)),
        Busyness::Easy => (Tone::Good, say!(words::LOAD_EASY, most = load.high)),
    }
}

/// What is found of the load, and what helps.
fn told(
    bus: &PlannedBus,
    load: &Band<Ratio>,
    rate: BitRate,
    findings: &mut Findings,
) -> Vec<Message> {
    let key = fields::bus::BIT_RATE;
    let finding = match judged(load) {
        Busyness::Easy => return Vec::new(),
        Busyness::Over => {
            let message = say!(words::OVERLOADED, least = load.low, rate = rate);
            Finding::new(Severity::Fault, key, message)
        }
        Busyness::PerhapsOver | Busyness::Busy => {
            let message = say!(words::BUSY, most = load.high, rate = rate);
            Finding::new(Severity::Doubt, key, message)
        }
    };
    let faster = faster(bus, load, rate);
    let steps = [super::numbers::sum(load, rate)];
    findings.push(finding.cured_by(faster.clone()).shown_by(steps));
    let slower = say!(words::DO_SLOWER);
    faster.into_iter().chain([slower]).collect()
}

/// The next usual bit rate that carries them with room to spare, where the wire allows it.
fn faster(bus: &PlannedBus, load: &Band<Ratio>, rate: BitRate) -> Option<Message> {
    let faster = reach::usual_above(least_rate(load, rate))?;
    let nothing = metres(0.0);
    let branch = super::wire::branch(bus).unwrap_or(nothing);
    let is_short = reach::highest_rate(faster, bus.length?, branch) == Some(faster);
    let edit = fields::bus::BIT_RATE.edit(faster.show().into_shown());
    is_short.then(|| say!(words::DO_RATE, rate = faster).done_by(vec![edit]))
}

/// The identifiers that two records have.
fn twice(bus: &PlannedBus, findings: &mut Findings) -> Vec<(Tone, Message)> {
    let of = |it: &PlannedFrame| it.identifier.map(|identifier| (it.kind, identifier));
    let mut said = Vec::new();
    for (at, frame) in bus.frames.iter().enumerate() {
        let same = |it: &&PlannedFrame| of(frame).is_some() && of(it) == of(frame);
        // each that comes again is told once
        let before = bus.frames.iter().take(at).filter(same).count();
        if let Some(identifier) = frame.identifier.filter(|_| before == 1) {
            said.push((Tone::Bad, say!(words::LOAD_TWICE)));
            let message = say!(words::TWICE, identifier = shown(identifier));
            let key = frames::IDENTIFIER.at(frame.record);
            findings.push(Finding::new(Severity::Fault, key, message));
        }
    }
    said
}
