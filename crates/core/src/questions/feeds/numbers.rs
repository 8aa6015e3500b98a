//! The numbers, feed by feed.

use super::{read::PlannedCircuit, words};
use crate::{
    message::Message,
    quantity::{Measure, Value},
    report::{Detail, Figure},
    say, say_of,
    supply::cable::{AlternatorAnswer, CableAnswer},
};

pub(super) fn of_circuit(circuit: &PlannedCircuit) -> Detail {
    let found = &circuit.found.answer;
    let all = [
        (words::FIGURE_DRAWS, found.draws.map(Measure::show)),
        (words::FIGURE_INRUSH, found.inrush.map(|(current, _)| current.show())),
        (words::FIGURE_FUSE, circuit.found.fitted.map(|set| set.fuse.show())),
        (words::FIGURE_SIZE, circuit.found.fitted.map(|set| set.area.show())),
        (words::FIGURE_WORST, found.protection.as_ref().map(|it| it.worst.current.show())),
        (words::FIGURE_FAR, found.protection.as_ref().map(|it| it.far.show())),
        (words::FIGURE_LOST, found.drop.map(|(drop, _)| drop.show())),
    ];
    let figures = all.into_iter().filter_map(|(label, value)| Some(figure(say_of!(label), value?)));
    let mut figures: Vec<Figure> = figures.collect();
    if let Some(last) = figures.last_mut() {
        last.working.clone_from(&found.working);
    }
    Detail { figures, ..Detail::default() }
}

pub(super) fn of_cable(found: &CableAnswer) -> Detail {
    let drop = figure(say!(words::FIGURE_DROP), found.drop.show());
    let figures = vec![Figure { working: found.working.clone(), ..drop }];
    Detail { figures, ..Detail::default() }
}

pub(super) fn of_alternator(found: &AlternatorAnswer) -> Detail {
    let needed = figure(say!(words::FIGURE_NEEDED), found.needed.show());
    let mut figures = vec![Figure { working: found.working.clone(), ..needed }];
    figures.extend(found.idle.map(|left| figure(say!(words::FIGURE_IDLE), left.show())));
    figures.extend(found.speed.map(|left| figure(say!(words::FIGURE_SPEED), left.show())));
    Detail { figures, ..Detail::default() }
}

fn figure(label: Message, value: Value) -> Figure {
    Figure { label, value, low: None, high: None, working: Vec::new() }
}
