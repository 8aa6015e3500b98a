//! The engine's cycle at a speed: a row a cylinder, above its line the charging of its coil, below it its injection.

use quietpin_core::report::{CycleCylinder, CycleStrip, Outcome, StripWindow};

use super::{
    at, label,
    rows::{Rows, entry, spark, spark_entry},
    vertical,
};
use crate::element::{View, all, el};

/// Below this many degrees a bar has no room for the number of its channel.
const ROOM: f64 = 40.0;

/// The strip.
pub(crate) fn strip_view(strip: &CycleStrip) -> View {
    let rows = Rows {
        caption: &strip.caption.text,
        cycle_deg: strip.cycle_deg,
        cylinders: &strip.cylinders,
        row: 40.0,
        tick: 17.0,
    };
    let marks = |it: &CycleCylinder, y: f64| {
        let windows = strip.windows.iter().filter(|window| window.cylinder == it.cylinder);
        all(windows.map(|window| act(&rows, window, y)))
    };
    rows.view(marks, key(strip))
}

/// What the marks mean; those that are not there are not told.
fn key(strip: &CycleStrip) -> View {
    let has = |kind: &str| strip.windows.iter().any(|it| it.kind == kind);
    let bar = |kind, meaning| {
        let sample =
            || el!("rect", "class" = kind, "x" = "0", "y" = "4", "width" = "16", "height" = "8");
        has(kind).then(|| entry(sample(), meaning))
    };
    let sparks = |outcome, meaning| {
        let is_there = strip.windows.iter().any(|it| it.kind == "dwell" && it.outcome == outcome);
        spark_entry(is_there, outcome, meaning)
    };
    let told = [
        bar("dwell", "coil charging"),
        sparks(Outcome::Fires, "spark"),
        sparks(Outcome::Wasted, "spark without effect"),
        sparks(Outcome::Misplaced, "spark in the wrong place"),
        bar("injection", "injector open"),
        bar("second", "second injector open"),
        Some(entry(vertical("own", 8.0, 0.0, 16.0), "firing TDC")),
    ];
    all(told.into_iter().flatten())
}

/// A window, in two pieces where it goes over the end of the cycle, with its channel and its spark.
fn act(rows: &Rows<'_>, window: &StripWindow, y: f64) -> View {
    let cycle = rows.cycle_deg;
    // longer than the cycle is all of it
    let from = window.from_deg.max(window.to_deg - cycle);
    let is_dwell = window.kind == "dwell";
    let (top, height) = match window.kind {
        "dwell" => (y - 14.0, 12.0),
        "injection" => (y + 2.0, 6.0),
        _ => (y + 9.0, 6.0),
    };
    let bar = |from: f64, to: f64| {
        let (x, end) = (rows.x_of(from), rows.x_of(to));
        let width = at((end - x).max(0.0));
        el!(
            "rect",
            "class" = window.kind,
            "x" = x,
            "y" = top,
            "width" = width,
            "height" = at(height)
        )
    };
    let before = (from < 0.0).then(|| bar(from + cycle, cycle));
    let fires =
        is_dwell.then(|| spark(window.outcome, rows.x_of(window.to_deg), top + height / 2.0));
    let has_room = is_dwell && window.to_deg - from.max(0.0) >= ROOM;
    let number = has_room.then(|| {
        let middle = rows.x_of(f64::midpoint(from.max(0.0), window.to_deg));
        label("on-bar", middle, top + 9.5, Some("middle"), &window.channel.to_string())
    });
    el!("g"; before, bar(from.max(0.0), window.to_deg), fires, number)
}
