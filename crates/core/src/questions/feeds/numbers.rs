//! The numbers, feed by feed.

use super::{
    read::PlannedCircuit,
    words::{self, grounds},
};
use crate::{
    message::Message,
    quantity::{Current, Measure, Value},
    report::{Detail, Figure},
    say, say_of,
    supply::{
        cable::{AlternatorAnswer, CableAnswer},
        ground::{GroundWires, SharedBolt, StrapInputs},
    },
    working::Step,
};

pub(super) fn of_circuit(circuit: &PlannedCircuit) -> Detail {
    let (inputs, found) = (&circuit.inputs, &circuit.found.answer);
    let one = |step: Option<Step>| step.into_iter().collect::<Vec<_>>();
    let protection = inputs.protection();
    // the first two are of the short at the other end
    let steps = || protection.iter().flat_map(|it| it.working.iter().cloned());
    let fitted = circuit.found.fitted;
    let average = inputs.average_step(circuit.pulsed);
    let all = [
        (words::FIGURE_DRAWS, found.draws.map(Measure::show), one(inputs.draws_step())),
        (words::FIGURE_MEAN, average.as_ref().map(|it| it.result.clone()), one(average.clone())),
        (
            words::FIGURE_INRUSH,
            found.inrush.map(|(current, _)| current.show()),
            one(inputs.inrush_step()),
        ),
        (words::FIGURE_FUSE, fitted.map(|set| set.fuse.show()), one(inputs.least_step())),
        (
            words::FIGURE_SIZE,
            fitted.map(|set| set.area.show()),
            fitted.map_or_else(Vec::new, |set| inputs.with(set).working),
        ),
        (
            words::FIGURE_WORST,
            protection.as_ref().map(|it| it.worst.current.show()),
            steps().skip(2).collect(),
        ),
        (words::FIGURE_FAR, protection.as_ref().map(|it| it.far.show()), steps().take(2).collect()),
        (words::FIGURE_LOST, found.drop.map(|(drop, _)| drop.show()), inputs.drop_steps()),
    ];
    let figures = all
        .into_iter()
        .filter_map(|(label, value, working)| Some(figure(say_of!(label), value?, working)))
        .collect();
    Detail { figures, ..Detail::default() }
}

pub(super) fn of_cable(found: &CableAnswer) -> Detail {
    let drop = figure(say!(words::FIGURE_DROP), found.drop.show(), found.working.clone());
    Detail { figures: vec![drop], ..Detail::default() }
}

pub(super) fn of_alternator(found: &AlternatorAnswer) -> Detail {
    let of = |label, value: Current| figure(say_of!(label), value.show(), found.working.clone());
    let all = [
        (words::FIGURE_NEEDED, Some(found.needed)),
        (words::FIGURE_IDLE, found.idle),
        (words::FIGURE_SPEED, found.speed),
    ];
    let figures = all.into_iter().filter_map(|(label, value)| Some(of(label, value?))).collect();
    Detail { figures, ..Detail::default() }
}

pub(super) fn of_strap(inputs: &StrapInputs) -> Detail {
    let lost = figure(say!(grounds::FIGURE_STRAP), inputs.drop().show(), inputs.working());
    Detail { figures: vec![lost], ..Detail::default() }
}

pub(super) fn of_ground(wires: &GroundWires) -> Detail {
    let rise = figure(say!(grounds::FIGURE_RISE), wires.rise().show(), wires.working());
    Detail { figures: vec![rise], ..Detail::default() }
}

pub(super) fn of_sensors(bolt: &SharedBolt) -> Detail {
    let offset = figure(say!(grounds::FIGURE_OFFSET), bolt.offset().show(), bolt.working());
    Detail { figures: vec![offset], ..Detail::default() }
}

fn figure(label: Message, value: Value, working: Vec<Step>) -> Figure {
    Figure { label, value, low: None, high: None, working }
}
