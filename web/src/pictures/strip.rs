//! The engine's cycle at a speed: a row a cylinder, above its line the charging of its coil, below it its injection.

use quietpin_core::report::{CycleCylinder, CycleStrip, Outcome, StripWindow};

use super::{
    at,
    cycle::{LEFT, RIGHT, TOP, WIDTH, entry, grid, x_of},
    disc, horizontal, label, vertical, view_box,
};
use crate::element::{View, all, el};

const ROW: f64 = 40.0;
/// Below this many degrees a bar has no room for the number of its channel.
const ROOM: f64 = 40.0;

/// The strip.
pub(crate) fn strip_view(strip: &CycleStrip) -> View {
    #[expect(clippy::cast_precision_loss, reason = "at most some tens of cylinders")]
    let height = TOP + ROW * strip.cylinders.len() as f64 + 8.0;
    let caption = &strip.caption.text;
    let rows = strip.cylinders.iter().enumerate().map(|(row, it)| cylinder(strip, row, it));
    el!("figure", "class" = "picture strip";
        el!("svg", "viewBox" = view_box(WIDTH, height), "role" = "img", "aria-label" = caption;
            grid(strip.cycle_deg, height),
            all(rows),
        ),
        el!("figcaption"; caption, key(strip)),
    )
}

/// What the marks mean; those that are not there are not told.
fn key(strip: &CycleStrip) -> View {
    let has = |kind: &str| strip.windows.iter().any(|it| it.kind == kind);
    let comes =
        |outcome| strip.windows.iter().any(|it| it.kind == "dwell" && it.outcome == outcome);
    let sample = |class| entry_bar(class);
    let spark = |class| el!("circle", "class" = class, "cx" = "8", "cy" = "8", "r" = "5");
    let cross = || el!("path", "class" = "misplaced", "d" = "M3 3 13 13M13 3 3 13");
    el!("ul", "class" = "key";
        has("dwell").then(|| entry(sample("dwell"), "coil charging")),
        comes(Outcome::Fires).then(|| entry(spark("fires"), "spark")),
        comes(Outcome::Wasted).then(|| entry(spark("wasted"), "spark without effect")),
        comes(Outcome::Misplaced).then(|| entry(cross(), "spark in the wrong place")),
        has("injection").then(|| entry(sample("injection"), "injector open")),
        has("second").then(|| entry(sample("second"), "second injector open")),
        entry(vertical("own", 8.0, 0.0, 16.0), "firing top dead centre"),
    )
}

fn entry_bar(class: &'static str) -> View {
    el!("rect", "class" = class, "x" = "0", "y" = "4", "width" = "16", "height" = "8")
}

fn cylinder(strip: &CycleStrip, row: usize, it: &CycleCylinder) -> View {
    #[expect(clippy::cast_precision_loss, reason = "at most some tens of cylinders")]
    let y = TOP + ROW * row as f64 + ROW / 2.0;
    let own = x_of(it.angle_deg, strip.cycle_deg);
    let windows = strip.windows.iter().filter(|window| window.cylinder == it.cylinder);
    el!("g";
        el!("text", "class" = "name", "x" = "4", "y" = y + 5.0; it.cylinder.to_string()),
        horizontal("row", LEFT, WIDTH - RIGHT, y),
        vertical("own", own, y - 17.0, y + 17.0),
        all(windows.map(|window| act(strip, window, y))),
    )
}

/// A window, in two pieces where it goes over the end of the cycle, with its channel and its spark.
fn act(strip: &CycleStrip, window: &StripWindow, y: f64) -> View {
    let cycle = strip.cycle_deg;
    // longer than the cycle is all of it
    let from = window.from_deg.max(window.to_deg - cycle);
    let top = match window.kind {
        "dwell" => y - 14.0,
        "injection" => y + 2.0,
        _ => y + 9.0,
    };
    let height = if window.kind == "dwell" { 12.0 } else { 6.0 };
    let bar = |from: f64, to: f64| {
        let (x, end) = (x_of(from, cycle), x_of(to, cycle));
        el!(
            "rect",
            "class" = window.kind,
            "x" = x,
            "y" = top,
            "width" = at((end - x).max(0.0)),
            "height" = at(height)
        )
    };
    let before = (from < 0.0).then(|| bar(from + cycle, cycle));
    let spark = (window.kind == "dwell")
        .then(|| spark(window, x_of(window.to_deg, cycle), top + height / 2.0));
    let number = (window.kind == "dwell" && window.to_deg - from.max(0.0) >= ROOM).then(|| {
        let middle = f64::midpoint(from.max(0.0), window.to_deg);
        label("on-bar", x_of(middle, cycle), top + 9.5, Some("middle"), &window.channel.to_string())
    });
    el!("g"; before, bar(from.max(0.0), window.to_deg), spark, number)
}

fn spark(window: &StripWindow, x: f64, y: f64) -> View {
    match window.outcome {
        Outcome::Fires => disc("fires", x, y, "6"),
        Outcome::Wasted => disc("wasted", x, y, "5"),
        Outcome::Misplaced => {
            let (l, r, t, b) = (at(x - 6.0), at(x + 6.0), at(y - 6.0), at(y + 6.0));
            el!("path", "class" = "misplaced", "d" = format!("M{l} {t} {r} {b}M{r} {t} {l} {b}"))
        }
    }
}
