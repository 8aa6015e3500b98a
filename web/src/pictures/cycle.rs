//! The engine's cycle: a row a cylinder, the events on it.

use quietpin_core::report::{Cycle, CycleCylinder, CycleEvent, Outcome};

use super::{
    label,
    rows::{Rows, spark, spark_entry},
};
use crate::element::{View, all, el};

/// Names nearer to each other than this would lie on each other.
const NEAR: f64 = 14.0;

/// The cycle, a row a cylinder.
pub(crate) fn cycle_view(cycle: &Cycle) -> View {
    let rows = Rows {
        caption: &cycle.caption.text,
        cycle_deg: cycle.cycle_deg,
        cylinders: &cycle.cylinders,
        row: 26.0,
        tick: 11.0,
    };
    let is_near = |one: &CycleEvent, other: &CycleEvent| {
        (rows.x_of(one.angle_deg) - rows.x_of(other.angle_deg)).abs() < NEAR
    };
    // channels that fire at one place (both plugs of a rotor) are named there together, once
    let mark = |events: &[&CycleEvent], n: usize, y: f64| {
        let event = *events.get(n)?;
        let x = rows.x_of(event.angle_deg);
        let here = || events.iter().filter(|other| is_near(event, other));
        let is_first = here().next().is_some_and(|first| std::ptr::eq(*first, event));
        let channels: Vec<_> = here().map(|it| it.channel.to_string()).collect();
        let name = is_first.then(|| label("channel", x + 9.0, y - 3.0, None, &channels.join(" ")));
        Some(el!("g"; spark(event.outcome, x, y), name))
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
        let events: Vec<_> = events.collect();
        all((0..events.len()).filter_map(|n| mark(&events, n, y)))
    };
    let numbers = el!("li"; "left: cylinder; at a mark: channel");
    rows.view(marks, all(key.into_iter().flatten().chain([numbers])))
}
