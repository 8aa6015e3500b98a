//! What comes back: the strap, the controller's ground wires, the bolt that sensors share.

use super::{
    Details,
    grounded::{PlannedSensors, PlannedStrap, PlannedWires, StrapLoss},
    read::PlannedFeeds,
    words::grounds as words,
};
use crate::{
    fields::{
        grounds::{self as fields, MinusTo, SensorGround, StrapFitted},
        relays::{self, GroundedAt},
    },
    finding::{Finding, Findings, Severity},
    message::Message,
    quantity::{Area, Measure, Voltage},
    report::{Answer, Tone},
    say, say_of,
    schema::Choice as _,
    supply::{
        cable,
        ground::{self, GroundWires, OffsetSize, SharedBolt, StrapHeat},
        laid::LaidWire,
    },
};

/// What is said of one of them.
type GroundsVerdict = (Tone, Message);

/// All of them of which something is said.
pub(super) fn answers(
    feeds: &PlannedFeeds,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Answer> {
    let grounds = &feeds.grounds;
    let mut answers = Vec::new();
    answers.extend(grounds.strap.map(|it| strap(feeds, &it, details, findings)));
    let is_at_block = grounds.sensors.as_ref().is_some_and(|it| it.at == SensorGround::Engine);
    let of_wires = grounds.wires.map(|it| wires((&it, is_at_block), details, findings));
    answers.extend(of_wires);
    let rise = grounds.wires.and_then(|it| it.wires);
    let sensors = grounds.sensors.as_ref();
    answers.extend(sensors.map(|it| of_sensors(it, rise.as_ref(), details, findings)));
    answers
}

fn strap(
    feeds: &PlannedFeeds,
    strap: &PlannedStrap,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Answer {
    let (tone, verdict) = of_strap(feeds, strap, findings);
    let mut answer = Answer::new("feeds.strap", tone, verdict);
    answer.title = Some(say!(words::STRAP_TITLE));
    answer.why = match (strap.inputs, strap.of_body) {
        _ if tone == Tone::Open => None,
        (Some(inputs), _) => Some(say!(words::STRAP_WHY_STARTER, current = inputs.starter)),
        (None, Some(current)) if strap.minus_to == Some(MinusTo::Engine) => {
            Some(say!(words::STRAP_WHY, current = current))
        }
        _ => None,
    };
    answer.show(details.zip(strap.inputs.as_ref()).map(|(it, inputs)| (it.strap)(inputs)));
    answer
}

fn of_strap(feeds: &PlannedFeeds, strap: &PlannedStrap, findings: &mut Findings) -> GroundsVerdict {
    let open = || {
        let wanted = match strap.known {
            (true, _) => words::STRAP_OPEN_LENGTH,
            (_, true) => words::STRAP_OPEN_SIZE,
            _ => words::STRAP_OPEN,
        };
        (Tone::Open, say_of!(wanted))
    };
    if strap.strap.is_none() && strap.known == (false, false) {
        return (Tone::Open, say!(words::STRAP_OPEN_FITTED));
    }
    let Some(minus_to) = strap.minus_to else {
        return (Tone::Open, say!(words::STRAP_OPEN_MINUS));
    };
    if strap.strap == Some(StrapFitted::Nothing) {
        findings.push(without_strap(feeds, minus_to));
        return (Tone::Bad, say!(words::STRAP_NONE));
    }
    let Some((area, _)) = strap.sized else { return open() };
    if minus_to == MinusTo::Engine {
        return of_body(feeds, strap, area, findings);
    }
    let Some(inputs) = strap.inputs else {
        return (Tone::Open, say!(words::STRAP_OPEN_STARTER));
    };
    let (heat, drop) = (inputs.heat(), inputs.drop());
    let over = feeds.grounds.strap_over(feeds.cable.as_ref());
    if heat != StrapHeat::Cool {
        let (current, size) = (inputs.starter, area);
        let is_hot = heat == StrapHeat::Hot;
        let of = if is_hot { words::STRAP_HOT } else { words::STRAP_WARM };
        let message = say_of!(of, current = current, size = size);
        let most = over.map_or(drop, |_| ground::most_of_a_strap());
        let cure = thicker(inputs.wanted(most));
        let severity = if is_hot { Severity::Danger } else { Severity::Doubt };
        findings.push(Finding::new(severity, fields::STRAP_SIZE, message).cured_by([cure]));
        if is_hot {
            return (Tone::Bad, say!(words::STRAP_BURNS));
        }
        return (Tone::Doubtful, say!(words::STRAP_NEAR));
    }
    let Some(loss) = over else {
        return (Tone::Good, say!(words::STRAP_GOOD_DROP, drop = drop));
    };
    let tone = too_thin(feeds, &loss, findings);
    (tone, say!(words::STRAP_THIN, drop = drop))
}

fn without_strap(feeds: &PlannedFeeds, minus_to: MinusTo) -> Finding {
    let fitted = || fields::STRAP.edit(StrapFitted::Fitted.choosable().code);
    let cure = match feeds.cable {
        Some(it) => {
            let size = cable::sold().find(|size| *size >= it.area).unwrap_or(it.area);
            let edit = fields::STRAP_SIZE.edit(size.show().into_shown());
            say!(words::DO_STRAP_SIZE, size = size).done_by(vec![fitted(), edit])
        }
        None => say!(words::DO_STRAP).done_by(vec![fitted()]),
    };
    let (severity, message) = match minus_to {
        MinusTo::Body => (Severity::Danger, say!(words::NO_STRAP)),
        MinusTo::Engine => (Severity::Fault, say!(words::NO_STRAP_BACK)),
    };
    Finding::new(severity, fields::STRAP, message).cured_by([cure])
}

fn thicker(size: Option<Area>) -> Message {
    size.map_or_else(
        || say!(words::DO_STRAP_SHORTER),
        |size| {
            let edit = fields::STRAP_SIZE.edit(size.show().into_shown());
            say!(words::DO_STRAP_SIZE, size = size).done_by(vec![edit])
        },
    )
}

/// A strap that takes too much of what the starter needs.
fn too_thin(feeds: &PlannedFeeds, loss: &StrapLoss, findings: &mut Findings) -> Tone {
    let drop = loss.inputs.drop();
    let message = say!(words::STRAP_DROPS, drop = drop);
    let is_most = feeds.cable.is_some_and(|it| cable::is_most(it.answer().drop, it.cranking));
    let severity = if is_most { Severity::Fault } else { Severity::Doubt };
    let finding = Finding::new(severity, fields::STRAP_SIZE, message);
    findings.push(finding.cured_by([thicker(loss.wanted)]).shown_by(loss.inputs.working()));
    if is_most { Tone::Bad } else { Tone::Doubtful }
}

/// A strap through which what is grounded to the body comes back.
fn of_body(
    feeds: &PlannedFeeds,
    strap: &PlannedStrap,
    area: Area,
    findings: &mut Findings,
) -> GroundsVerdict {
    let good = (Tone::Good, say!(words::STRAP_GOOD));
    let laid = |area| LaidWire { area, bundled: 1, ..feeds.laid };
    let carries = laid(area).bears();
    let Some(current) = strap.of_body.filter(|it| *it > carries) else { return good };
    let message = say!(words::STRAP_CARRIES, current = current, size = area, carries = carries);
    let cure = thicker(ground::size_for(current, laid(area)));
    // where each of them is grounded is usual rather than known
    let finding = Finding::new(Severity::Doubt, fields::STRAP_SIZE, message).cured_by([cure]);
    findings.push(finding.shown_by([laid(area).bears_step()]));
    (Tone::Doubtful, say!(words::STRAP_NEAR))
}

fn wires(
    (planned, is_at_block): (&PlannedWires, bool),
    details: Option<&Details>,
    findings: &mut Findings,
) -> Answer {
    let of = |tone, verdict| {
        let mut answer = Answer::new("feeds.ground", tone, verdict);
        answer.title = Some(say!(words::GROUND_TITLE));
        answer
    };
    let Some(wires) = planned.wires else { return of(Tone::Open, say!(words::GROUND_OPEN)) };
    if wires.sinks.base() <= 0.0 {
        return of(Tone::Open, say!(words::GROUND_OPEN_LOADS));
    }
    let (tone, verdict) = of_wires(planned, &wires, is_at_block, findings);
    let mut answer = of(tone, verdict);
    answer.why = Some(say!(
        words::GROUND_WHY,
        sinks = wires.sinks,
        count = wires.count,
        size = wires.area,
        rise = wires.rise()
    ));
    answer.show(details.map(|it| (it.ground)(&wires)));
    answer
}

fn of_wires(
    planned: &PlannedWires,
    wires: &GroundWires,
    is_at_block: bool,
    findings: &mut Findings,
) -> GroundsVerdict {
    // at the block sensors would be out by what is left of it
    let most = if is_at_block { ground::most_below_sensors() } else { ground::most_rise() };
    let more = || more_wires(wires, most);
    if wires.is_overloaded(false) {
        let message = say!(
            words::GROUND_HOT,
            sinks = wires.sinks,
            each = wires.each(),
            size = wires.area,
            carries = wires.carries()
        );
        // what follows from usual loads, or from a hair, is no more than a doubt
        let is_certain = GroundWires { sinks: planned.certain, ..*wires }.is_overloaded(true);
        let severity = if is_certain { Severity::Danger } else { Severity::Doubt };
        let finding = Finding::new(severity, fields::WIRES, message);
        findings.push(finding.cured_by([more()]).shown_by(wires.working()));
        return if is_certain {
            (Tone::Bad, say!(words::GROUND_BAD))
        } else {
            (Tone::Doubtful, say!(words::GROUND_NEAR_HOT))
        };
    }
    if wires.is_too_high() {
        let (rise, most) = (wires.rise(), ground::most_rise());
        let message = say!(words::GROUND_RISES, sinks = wires.sinks, rise = rise, most = most);
        let finding = Finding::new(Severity::Doubt, fields::WIRES, message);
        findings.push(finding.cured_by([more()]).shown_by(wires.working()));
        return (Tone::Doubtful, say!(words::GROUND_NEAR, rise = rise));
    }
    (Tone::Good, say!(words::GROUND_GOOD))
}

/// More of them, or else thicker ones.
fn more_wires(wires: &GroundWires, most: Voltage) -> Message {
    if let Some(count) = wires.wanted(most) {
        let edit = fields::WIRES.edit(count.to_string());
        return say!(words::DO_GROUND_WIRES, count = count).done_by(vec![edit]);
    }
    if let Some((count, size)) = wires.thicker(most) {
        let edit = fields::WIRE_SIZE.edit(size.show().into_shown());
        if count == wires.count {
            return say!(words::DO_GROUND_SIZE, size = size).done_by(vec![edit]);
        }
        let edits = vec![fields::WIRES.edit(count.to_string()), edit];
        return say!(words::DO_GROUND_BOTH, count = count, size = size).done_by(edits);
    }
    say!(words::DO_GROUND_SHORTER)
}

fn of_sensors(
    sensors: &PlannedSensors,
    wires: Option<&GroundWires>,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Answer {
    let bolt = sensors.bolt.as_ref().filter(|_| sensors.at == SensorGround::Bolt);
    let (tone, verdict) = match (sensors.at, bolt) {
        (SensorGround::Pin, _) => (Tone::Good, say!(words::SENSORS_GOOD)),
        (SensorGround::Bolt, bolt) => of_bolt(sensors, bolt, findings),
        (SensorGround::Engine, _) => of_block(wires, findings),
    };
    let mut answer = Answer::new("feeds.sensors", tone, verdict);
    answer.title = Some(say!(words::SENSORS_TITLE));
    if tone != Tone::Open {
        answer.why = match sensors.at {
            SensorGround::Pin => None,
            SensorGround::Bolt => bolt.map(|it| say!(words::SENSORS_WHY, current = it.current)),
            SensorGround::Engine => Some(say!(words::SENSORS_WHY_RISE)),
        };
    }
    answer.show(details.zip(bolt).map(|(it, bolt)| (it.sensors)(bolt)));
    answer
}

fn at_pin() -> Message {
    let edit = fields::SENSORS.edit(SensorGround::Pin.choosable().code);
    say!(words::DO_SENSORS_PIN).done_by(vec![edit])
}

fn of_bolt(
    sensors: &PlannedSensors,
    bolt: Option<&SharedBolt>,
    findings: &mut Findings,
) -> GroundsVerdict {
    let wants_draws = || {
        let feed = sensors.unknown.clone()?;
        Some((Tone::Open, say!(words::SENSORS_OPEN_DRAWS, feed = feed)))
    };
    let Some(bolt) = bolt else {
        return wants_draws().unwrap_or_else(|| (Tone::Open, say!(words::SENSORS_OPEN)));
    };
    let offset = bolt.offset();
    let severity = match bolt.size() {
        OffsetSize::Small => {
            let small = || (Tone::Good, say!(words::SENSORS_SMALL, offset = offset));
            return wants_draws().unwrap_or_else(small);
        }
        OffsetSize::Perhaps => Severity::Doubt,
        OffsetSize::TooMuch => Severity::Fault,
    };
    let (current, part) = (bolt.current, bolt.part());
    let message = say!(words::SENSORS_OFFSET, current = current, offset = offset, part = part);
    let mut cures = vec![at_pin()];
    cures.extend(sensors.most.as_ref().map(|(at, name, _)| {
        let edit = relays::GROUND.at(*at).edit(GroundedAt::Own.choosable().code);
        say!(words::DO_OWN_BOLT, feed = name.clone()).done_by(vec![edit])
    }));
    let finding = Finding::new(severity, fields::SENSORS, message);
    findings.push(finding.cured_by(cures).shown_by(bolt.working()));
    out(severity, offset)
}

fn out(severity: Severity, offset: Voltage) -> GroundsVerdict {
    let tone = if severity == Severity::Fault { Tone::Bad } else { Tone::Doubtful };
    (tone, say!(words::SENSORS_OUT, offset = offset))
}

/// Grounded at the block, while the controller's own ground is above it.
fn of_block(wires: Option<&GroundWires>, findings: &mut Findings) -> GroundsVerdict {
    let Some(wires) = wires.filter(|it| it.sinks.base() > 0.0) else {
        return (Tone::Open, say!(words::SENSORS_OPEN_WIRES));
    };
    let offset = wires.rise();
    if !ground::is_told(offset) {
        return (Tone::Good, say!(words::SENSORS_SMALL, offset = offset));
    }
    // what lifts it so much that it is told by itself is the one cause of both
    if !wires.is_too_high() && !wires.is_overloaded(false) {
        let message = say!(words::SENSORS_BLOCK, offset = offset, part = ground::of_span(offset));
        let finding = Finding::new(Severity::Doubt, fields::SENSORS, message);
        findings.push(finding.cured_by([at_pin()]).shown_by(wires.working()));
    }
    out(Severity::Doubt, offset)
}
