//! The engine's cycle: a row a cylinder, the events on it.

use quietpin_core::report::{Cycle, CycleCylinder, CycleEvent, Outcome};

use super::{
    label,
    rows::{Rows, spark, spark_entry},
};
use crate::element::{View, all, el};

/// The cycle, a row a cylinder.
pub(crate) fn cycle_view(cycle: &Cycle) -> View {
    let rows = Rows {
        caption: &cycle.caption.text,
        cycle_deg: cycle.cycle_deg,
        cylinders: &cycle.cylinders,
        row: 26.0,
        tick: 11.0,
    };
    let mark = |event: &CycleEvent, y: f64| {
        let x = rows.x_of(event.angle_deg);
        let channel = event.channel.to_string();
        el!("g"; spark(event.outcome, x, y), label("channel", x + 9.0, y - 3.0, None, &channel))
    };
    // marks that are not there are not told
    let has = |outcome| cycle.events.iter().any(|it| it.outcome == outcome);
    let told = |outcome, meaning| spark_entry(has(outcome), outcome, meaning);
    let key = [
        spark_entry(true, Outcome::Fires, "fires"),
        told(Outcome::Wasted, "without effect"),
        told(Outcome::Misplaced, "in the wrong place"),
    ];
    let marks = |it: &CycleCylinder, y: f64| {
        let events = cycle.events.iter().filter(|event| event.cylinder == it.cylinder);
        all(events.map(|event| mark(event, y)))
    };
    rows.view(marks, all(key.into_iter().flatten()))
}
