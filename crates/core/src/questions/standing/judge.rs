//! Is it long enough? What draws most, and what would help.

use super::{
    drain::{TotalDrain, instead},
    words,
};
use crate::{
    battery::{self, Standstill, standstill, until_half},
    fields,
    finding::{Finding, Findings, Severity},
    message::Message,
    quantity::{Band, Charge, Current, Measure as _, Time},
    report::Tone,
    say,
    schema::Place,
};

/// What draws most.
enum Biggest<'a> {
    Outputs(&'a super::drain::OutputGroup),
    Controller,
    Other,
}

fn biggest(drain: &TotalDrain) -> Biggest<'_> {
    let (controller, other) = (drain.controller.high, drain.other.high);
    let most = drain.solved.groups.first();
    match most.filter(|it| it.drain.current.high > controller && it.drain.current.high > other) {
        Some(group) => Biggest::Outputs(group),
        None if controller > other => Biggest::Controller,
        None => Biggest::Other,
    }
}

pub(super) fn verdict(drain: &TotalDrain, time: &Band<Time>) -> (Tone, Message) {
    let least = battery::shown(time.low);
    match standstill(time.low) {
        Standstill::Overnight => (Tone::Bad, say!(words::OVERNIGHT, time = least)),
        Standstill::Short => (Tone::Doubtful, say!(words::SHORT, time = least)),
        Standstill::Long if !drain.left_out.is_empty() => {
            (Tone::Open, say!(words::SO_FAR, time = least))
        }
        Standstill::Long if drain.other.high.base() <= 0.0 => {
            (Tone::Good, say!(words::LONG_ALONE, time = least))
        }
        Standstill::Long => (Tone::Good, say!(words::LONG, time = least)),
    }
}

pub(super) fn why(drain: &TotalDrain, capacity: Option<&Band<Charge>>) -> Message {
    let (most, month) = (drain.all.high, battery::in_a_month(drain.all.high));
    let Some(capacity) = capacity else {
        return say!(words::WHY_DRAIN, most = most, month = month);
    };
    let least = battery::shown(until_half(capacity, &drain.all).low);
    let own = battery::lost_in_a_month(capacity.low);
    say!(words::WHY, most = most, month = month, own = own, time = least, capacity = capacity.low)
}

/// What would help where it is too short; each time is worked out anew.
pub(super) fn cures(drain: &TotalDrain, capacity: &Band<Charge>) -> Vec<Message> {
    let now = until_half(capacity, &drain.all).low;
    if standstill(now) == Standstill::Long {
        return Vec::new();
    }
    let without = |part: &Band<Current>, new: Option<&Band<Current>>| {
        let time = until_half(capacity, &instead(&drain.all, part, new)).low;
        (time > now).then(|| battery::shown(time))
    };
    let first = match biggest(drain) {
        Biggest::Outputs(group) => group.by_the_key.as_ref().and_then(|new| {
            let time = without(&group.drain.current, Some(new))?;
            let (output, loads) = (group.outputs.clone(), group.loads.clone());
            Some(say!(words::DO_SWITCHED, output = output, loads = loads, time = time))
        }),
        Biggest::Controller => {
            without(&drain.controller, None).map(|time| say!(words::DO_CONTROLLER, time = time))
        }
        Biggest::Other => {
            without(&drain.other, None).map(|time| say!(words::DO_SEARCH, time = time))
        }
    };
    // what the loads' own cures take away needs no switch
    let is_told = standstill(until_half(capacity, &drain.untold()).low) == Standstill::Long;
    first.into_iter().chain((!is_told).then(|| say!(words::DO_CUT_OFF))).collect()
}

/// The finding, unless the answers about the loads tell of all that makes it so short.
pub(super) fn concerns(drain: &TotalDrain, capacity: &Band<Charge>, findings: &mut Findings) {
    let alone = until_half(capacity, &drain.untold()).low;
    if standstill(alone) == Standstill::Long {
        return;
    }
    let time = until_half(capacity, &drain.all).low;
    let message = say!(
        words::FLAT_SOON,
        most = drain.all.high,
        time = battery::shown(time),
        capacity = capacity.low
    );
    let place: Place = match biggest(drain) {
        Biggest::Outputs(_) => fields::battery::CAPACITY.into(),
        Biggest::Controller => fields::controller::KEY_OFF_DRAW.into(),
        Biggest::Other => fields::battery::OTHER_DRAW.into(),
    };
    let steps = [super::numbers::sum(drain), battery::working(capacity, &drain.all)];
    findings.push(Finding::new(Severity::Doubt, place.path(), message).shown_by(steps));
}
