//! Speed against time, the two thresholds, and when the relay's contact is closed.

use quietpin_core::report::Timeline;

use super::{at, horizontal, label, round_up, vertical, view_box, whole};
use crate::element::{View, all, el, several};

const WIDTH: f64 = 340.0;
const LEFT: f64 = 40.0;
const RIGHT: f64 = 8.0;
const TOP: f64 = 12.0;
const PLOT: f64 = 130.0;
const BAR: f64 = 14.0;

struct Scale {
    from_s: f64,
    to_s: f64,
    most_rpm: f64,
}

impl Scale {
    fn of(timeline: &Timeline) -> Self {
        let times = || timeline.speed.iter().chain(&timeline.measured).map(|(t, _)| *t);
        let speeds = timeline.speed.iter().chain(&timeline.measured).map(|(_, n)| *n);
        let most = speeds.fold(timeline.threshold_rpm.max(timeline.release_rpm), f64::max).max(1.0);
        let (from_s, to_s) =
            (times().fold(f64::INFINITY, f64::min), times().fold(f64::NEG_INFINITY, f64::max));
        let (from_s, to_s) = if from_s < to_s { (from_s, to_s) } else { (0.0, 1.0) };
        Self { from_s, to_s, most_rpm: round_up(most * 1.05) }
    }
    fn x(&self, t: f64) -> f64 {
        let share = ((t - self.from_s) / (self.to_s - self.from_s)).clamp(0.0, 1.0);
        LEFT + (WIDTH - LEFT - RIGHT) * share
    }
    fn y(&self, rpm: f64) -> f64 {
        TOP + PLOT * (1.0 - (rpm / self.most_rpm).clamp(0.0, 1.0))
    }
}

/// Speed against time, and the relay below it.
pub(crate) fn timeline_view(it: &Timeline) -> View {
    let scale = Scale::of(it);
    let bar = TOP + PLOT + 26.0;
    #[expect(clippy::cast_precision_loss, reason = "a handful of marks")]
    let height = bar + BAR + 10.0 + 15.0 * it.marks.len() as f64;
    let caption = &it.caption.text;
    let marks = it.marks.iter();
    el!("figure", "class" = "picture timeline";
        el!("svg", "viewBox" = view_box(WIDTH, height), "role" = "img", "aria-label" = caption;
            axes(&scale),
            el!("polyline", "class" = "speed", "points" = points(&scale, &it.speed)),
            el!("polyline", "class" = "measured", "points" = points(&scale, &it.measured)),
            level(&scale, it.threshold_rpm, "level on"),
            level(&scale, it.release_rpm, "level off"),
            relay(&scale, it, bar),
            all(marks.clone().enumerate().map(|(n, (t, _))| mark(&scale, n, *t, bar))),
        ),
        // no words stand in the drawing, where a curve would run through them
        el!("figcaption";
            caption,
            el!("ul", "class" = "key";
                key("speed", "true speed"),
                key("measured", "as measured"),
                key("level on", &format!("threshold {} rpm", whole(it.threshold_rpm))),
                key("level off", &format!("release {} rpm", whole(it.release_rpm))),
            ),
            el!("ol", "class" = "marks"; all(marks.map(|(_, said)| el!("li"; &said.text)))),
        ),
    )
}

fn key(class: &'static str, meaning: &str) -> View {
    let sample = el!("path", "class" = class, "d" = "M0 4H24");
    el!("li"; el!("svg", "viewBox" = "0 0 24 8", "aria-hidden" = "true"; sample), meaning)
}

fn points(scale: &Scale, curve: &[(f64, f64)]) -> String {
    let points: Vec<_> =
        curve.iter().map(|(t, n)| format!("{},{}", at(scale.x(*t)), at(scale.y(*n)))).collect();
    points.join(" ")
}

fn axes(scale: &Scale) -> View {
    let speed = |share: f64| {
        let rpm = scale.most_rpm * share;
        let y = scale.y(rpm);
        el!("g";
            horizontal("grid", LEFT, WIDTH - RIGHT, y),
            label("scale", LEFT - 4.0, y + 4.0, Some("end"), &whole(rpm)),
        )
    };
    let time = |share: f64| {
        let t = scale.from_s + (scale.to_s - scale.from_s) * share;
        let anchor = if share > 0.9 { "end" } else { "middle" };
        label("scale", scale.x(t), TOP + PLOT + 14.0, Some(anchor), &format!("{} s", at(t)))
    };
    several!(all([0.0, 0.5, 1.0].map(speed)), all([0.0, 0.5, 1.0].map(time)))
}

fn level(scale: &Scale, rpm: f64, class: &'static str) -> View {
    horizontal(class, LEFT, WIDTH - RIGHT, scale.y(rpm))
}

fn relay(scale: &Scale, it: &Timeline, y: f64) -> View {
    let closed = |(from, to): &(f64, f64)| {
        let (x, end) = (scale.x(*from), scale.x(*to));
        let width = (end - x).max(1.0);
        el!("rect", "class" = "closed", "x" = x, "width" = width, "y" = y, "height" = BAR)
    };
    el!("g";
        horizontal("row", LEFT, WIDTH - RIGHT, y + BAR),
        el!("text", "class" = "scale", "x" = "2", "y" = y + 11.0; "relay"),
        all(it.closed.iter().map(closed)),
    )
}

/// A line where something happens, and below it the number by which the list tells it.
fn mark(scale: &Scale, n: usize, t: f64, bar: f64) -> View {
    let x = scale.x(t);
    #[expect(clippy::cast_precision_loss, reason = "a handful of marks")]
    let y = bar + BAR + 14.0 + 15.0 * n as f64;
    let (anchor, gap) = if x > WIDTH * 0.9 { ("end", -4.0) } else { ("start", 4.0) };
    let number = (n + 1).to_string();
    el!("g"; vertical("mark", x, TOP, y), label("said", x + gap, y, Some(anchor), &number))
}
