//! The engine's cycle as a strip: a row a cylinder, the events on it.

use quietpin_core::report::{Cycle, CycleCylinder, CycleEvent, Outcome};

use super::{at, disc, horizontal, label, vertical, view_box, whole};
use crate::element::{View, all, el};

pub(super) const WIDTH: f64 = 340.0;
pub(super) const LEFT: f64 = 30.0;
pub(super) const RIGHT: f64 = 12.0;
pub(super) const TOP: f64 = 22.0;
const ROW: f64 = 26.0;

/// The cycle, a row a cylinder.
pub(crate) fn cycle_view(cycle: &Cycle) -> View {
    #[expect(clippy::cast_precision_loss, reason = "at most some tens of cylinders")]
    let height = TOP + ROW * cycle.cylinders.len() as f64 + 8.0;
    let caption = &cycle.caption.text;
    let rows = cycle.cylinders.iter().enumerate().map(|(row, it)| cylinder(cycle, row, it));
    el!("figure", "class" = "picture cycle";
        el!("svg", "viewBox" = view_box(WIDTH, height), "role" = "img", "aria-label" = caption;
            grid(cycle.cycle_deg, height),
            all(rows),
        ),
        el!("figcaption"; caption, key(cycle)),
    )
}

/// What the marks mean; those that are not there are not told.
fn key(cycle: &Cycle) -> View {
    let wasted = el!("circle", "class" = "wasted", "cx" = "8", "cy" = "8", "r" = "5");
    let misplaced = el!("path", "class" = "misplaced", "d" = "M3 3 13 13M13 3 3 13");
    el!("ul", "class" = "key";
        entry(el!("circle", "class" = "fires", "cx" = "8", "cy" = "8", "r" = "6"), "fires"),
        has(cycle, Outcome::Wasted).then(|| entry(wasted, "without effect")),
        has(cycle, Outcome::Misplaced).then(|| entry(misplaced, "in the wrong place")),
    )
}

pub(super) fn entry(mark: View, meaning: &str) -> View {
    el!("li"; el!("svg", "viewBox" = "0 0 16 16", "aria-hidden" = "true"; mark), meaning)
}

fn has(cycle: &Cycle, outcome: Outcome) -> bool {
    cycle.events.iter().any(|it| it.outcome == outcome)
}

pub(super) fn x_of(angle_deg: f64, cycle_deg: f64) -> f64 {
    LEFT + (WIDTH - LEFT - RIGHT) * angle_deg / cycle_deg
}

pub(super) fn grid(cycle_deg: f64, height: f64) -> View {
    let quarter = cycle_deg / 4.0;
    let line = |step: f64| {
        let angle = quarter * step;
        let x = x_of(angle, cycle_deg);
        el!("g";
            vertical("grid", x, TOP - 6.0, height - 6.0),
            el!("text", "class" = "scale", "x" = x, "y" = "11", "text-anchor" = "middle";
                format!("{}°", whole(angle))),
        )
    };
    all([0.0, 1.0, 2.0, 3.0, 4.0].map(line))
}

/// The row of a cylinder: its own firing place as a tick, its events.
fn cylinder(cycle: &Cycle, row: usize, it: &CycleCylinder) -> View {
    #[expect(clippy::cast_precision_loss, reason = "at most some tens of cylinders")]
    let y = TOP + ROW * row as f64 + ROW / 2.0;
    let own = x_of(it.angle_deg, cycle.cycle_deg);
    let events = cycle.events.iter().filter(|event| event.cylinder == it.cylinder);
    el!("g";
        el!("text", "class" = "name", "x" = "4", "y" = y + 5.0; it.cylinder.to_string()),
        horizontal("row", LEFT, WIDTH - RIGHT, y),
        vertical("own", own, y - 11.0, y + 11.0),
        all(events.map(|event| mark(cycle, event, y))),
    )
}

fn mark(cycle: &Cycle, event: &CycleEvent, y: f64) -> View {
    let x = x_of(event.angle_deg, cycle.cycle_deg);
    let shape = match event.outcome {
        Outcome::Fires => disc("fires", x, y, "6"),
        Outcome::Wasted => disc("wasted", x, y, "5"),
        Outcome::Misplaced => {
            let (l, r, t, b) = (at(x - 6.0), at(x + 6.0), at(y - 6.0), at(y + 6.0));
            el!("path", "class" = "misplaced", "d" = format!("M{l} {t} {r} {b}M{r} {t} {l} {b}"))
        }
    };
    let channel = event.channel.to_string();
    el!("g"; shape, label("channel", x + 9.0, y - 3.0, None, &channel))
}
