//! Currents and voltages against time, panel below panel.

use quietpin_core::report::{Curve, Level, Panel, Traces};

use super::{at, horizontal, label, round_up, vertical, view_box, whole};
use crate::element::{View, all, el};

const WIDTH: f64 = 340.0;
const LEFT: f64 = 40.0;
const RIGHT: f64 = 8.0;
const TOP: f64 = 20.0;
const PLOT: f64 = 110.0;
const GAP: f64 = 40.0;

/// Each curve of a panel looks different without colour.
const LOOKS: [&str; 3] = ["trace one", "trace two", "trace three"];

/// Each level looks different, too.
const LEVELS: [&str; 3] = ["level on", "level off", "level other"];

struct Scale {
    from_s: f64,
    to_s: f64,
    most: f64,
    top: f64,
}

impl Scale {
    fn of(span: (f64, f64), panel: &Panel, top: f64) -> Self {
        let (from_s, to_s) = if span.0 < span.1 { span } else { (0.0, 1.0) };
        let points = panel.curves.iter().flat_map(|curve| &curve.points);
        let highest = points.map(|(_, y)| *y).fold(0.0, f64::max);
        // a level far above every curve would press them flat
        let levels = panel.levels.iter().map(|level| level.at).filter(|at| *at < 2.0 * highest);
        let most = round_up(1.05 * levels.fold(highest, f64::max));
        Self { from_s, to_s, most, top }
    }
    fn x(&self, t: f64) -> f64 {
        let share = ((t - self.from_s) / (self.to_s - self.from_s)).clamp(0.0, 1.0);
        LEFT + (WIDTH - LEFT - RIGHT) * share
    }
    fn y(&self, value: f64) -> f64 {
        self.top + PLOT * (1.0 - (value / self.most).clamp(0.0, 1.0))
    }
}

/// The panels, and which curve is which.
pub(crate) fn traces_view(it: &Traces) -> View {
    #[expect(clippy::cast_precision_loss, reason = "a panel or two")]
    let top = |n: usize| TOP + (PLOT + GAP) * n as f64;
    let panels = it.panels.iter().enumerate();
    let height = top(it.panels.len());
    let caption = &it.caption.text;
    // no name stands in the drawing, where a curve would run through it
    let drawn = |panel: &Panel, n: usize| Scale::of(it.span, panel, top(n));
    let levels = it.panels.iter().enumerate().flat_map(|(n, panel)| {
        let most = drawn(panel, n).most;
        let shown = panel.levels.iter().filter(move |level| level.at <= most).zip(LEVELS);
        shown.map(|(level, look)| {
            key(look, &format!("{} {} {}", level.name.text, at(level.at), panel.unit))
        })
    });
    // a curve that is alone in its panel is named above it
    let several_in = it.panels.iter().filter(|panel| panel.curves.len() > 1);
    let curves = several_in.flat_map(|panel| panel.curves.iter().zip(LOOKS));
    let curves = curves.map(|(curve, look)| key(look, &curve.name.text));
    el!("figure", "class" = "picture traces";
        el!("svg", "viewBox" = view_box(WIDTH, height), "role" = "img", "aria-label" = caption;
            all(panels.map(|(n, panel)| panel_view(&drawn(panel, n), panel))),
        ),
        el!("figcaption";
            caption,
            el!("ul", "class" = "key"; all(curves.chain(levels))),
        ),
    )
}

fn key(look: &'static str, name: &str) -> View {
    let sample = el!("path", "class" = look, "d" = "M0 4H24");
    el!("li"; el!("svg", "viewBox" = "0 0 24 8", "aria-hidden" = "true"; sample), name)
}

fn panel_view(scale: &Scale, panel: &Panel) -> View {
    let shown = panel.levels.iter().filter(|level| level.at <= scale.most).zip(LEVELS);
    let level = |(level, look): (&Level, &'static str)| {
        horizontal(look, LEFT, WIDTH - RIGHT, scale.y(level.at))
    };
    let alone = match panel.curves.as_slice() {
        [only] => Some(label("scale", LEFT, scale.top - 8.0, None, &only.name.text)),
        _ => None,
    };
    el!("g";
        axes(scale, panel.unit),
        all(panel.curves.iter().zip(LOOKS).map(|(curve, look)| curve_view(scale, curve, look))),
        all(shown.map(level)),
        alone,
    )
}

fn curve_view(scale: &Scale, curve: &Curve, look: &'static str) -> View {
    let points: Vec<_> = curve
        .points
        .iter()
        .map(|(t, value)| format!("{},{}", at(scale.x(*t)), at(scale.y(*value))))
        .collect();
    el!("polyline", "class" = look, "points" = points.join(" "))
}

fn axes(scale: &Scale, unit: &'static str) -> View {
    let number = |value: f64| if scale.most < 5.0 { at(value) } else { whole(value) };
    let value = |share: f64| {
        let value = scale.most * share;
        let y = scale.y(value);
        let said = if share > 0.9 { format!("{} {unit}", number(value)) } else { number(value) };
        el!("g";
            horizontal("grid", LEFT, WIDTH - RIGHT, y),
            label("scale", LEFT - 4.0, y + 4.0, Some("end"), &said),
        )
    };
    let bottom = scale.top + PLOT;
    let time = |share: f64| {
        let t = scale.to_s * share;
        let anchor = if share > 0.9 { "end" } else { "middle" };
        let said = if scale.to_s < 2e-3 {
            format!("{} µs", whole(t * 1e6))
        } else {
            format!("{} ms", at(t * 1e3))
        };
        label("scale", scale.x(t), bottom + 14.0, Some(anchor), &said)
    };
    el!("g";
        all([0.0, 0.5, 1.0].map(value)),
        vertical("grid", scale.x(0.0), scale.top, bottom),
        all([0.0, 0.5, 1.0].map(time)),
    )
}
