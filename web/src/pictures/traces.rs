//! Currents and voltages against time, panel below panel.

use quietpin_core::report::{Curve, Level, Panel, Traces};

use super::{at, horizontal, label, round_up, vertical, view_box, whole};
use crate::element::{View, all, el};

const WIDTH: f64 = 340.0;
const LEFT: f64 = 34.0;
const RIGHT: f64 = 8.0;
const TOP: f64 = 12.0;
const PLOT: f64 = 110.0;
const GAP: f64 = 30.0;

/// Each curve of a panel looks different without colour.
const LOOKS: [&str; 3] = ["trace one", "trace two", "trace three"];

/// Where the names of the levels stand, from the right: two that lie close must not hide each other.
const PLACES: [f64; 3] = [1.0, 0.68, 0.4];

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
    // a curve that is alone in its panel is named there
    let several_in = it.panels.iter().filter(|panel| panel.curves.len() > 1);
    let curves = several_in.flat_map(|panel| panel.curves.iter().zip(LOOKS));
    el!("figure", "class" = "picture traces";
        el!("svg", "viewBox" = view_box(WIDTH, height), "role" = "img", "aria-label" = caption;
            all(panels.map(|(n, panel)| panel_view(&Scale::of(it.span, panel, top(n)), panel))),
        ),
        el!("figcaption";
            caption,
            el!("ul", "class" = "key"; all(curves.map(|(curve, look)| key(look, &curve.name.text)))),
        ),
    )
}

fn key(look: &'static str, name: &str) -> View {
    let sample = el!("path", "class" = look, "d" = "M0 4H24");
    el!("li"; el!("svg", "viewBox" = "0 0 24 8", "aria-hidden" = "true"; sample), name)
}

fn panel_view(scale: &Scale, panel: &Panel) -> View {
    let levels = panel.levels.iter().filter(|level| level.at <= scale.most);
    // a name goes below its line where another level lies close above
    let is_below = |level: &Level| {
        let above = |other: &Level| (1.0..16.0).contains(&(scale.y(level.at) - scale.y(other.at)));
        panel.levels.iter().any(above)
    };
    let level = |(level, place)| level_view(scale, level, place, is_below(level), panel.unit);
    let alone = match panel.curves.as_slice() {
        [only] => Some(label("scale", scale.x(0.0) + 4.0, scale.top + 26.0, None, &only.name.text)),
        _ => None,
    };
    el!("g";
        axes(scale, panel.unit),
        all(panel.curves.iter().zip(LOOKS).map(|(curve, look)| curve_view(scale, curve, look))),
        all(levels.zip(PLACES).map(level)),
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

fn level_view(
    scale: &Scale,
    level: &Level,
    place: f64,
    is_below: bool,
    unit: &'static str,
) -> View {
    let y = scale.y(level.at);
    let x = LEFT + (WIDTH - LEFT - RIGHT) * place;
    let said = format!("{} {} {unit}", level.name.text, at(level.at));
    el!("g";
        horizontal("level", LEFT, WIDTH - RIGHT, y),
        label("scale named", x, if is_below { y + 12.0 } else { y - 3.0 }, Some("end"), &said),
    )
}
