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

/// Where the name of a level may end, from the right.
const PLACES: [f64; 4] = [1.0, 0.68, 0.4, 0.3];
/// Places no further apart than this are too close for two names.
const APART: f64 = 0.2;
/// About the width of a letter of such a name, and its height.
const LETTER: (f64, f64) = (6.0, 10.0);

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
    // a name goes below its line where another level lies close above
    let is_below = |level: &Level| {
        let above = |other: &Level| (1.0..16.0).contains(&(scale.y(level.at) - scale.y(other.at)));
        panel.levels.iter().any(above)
    };
    let mut free = PLACES.to_vec();
    let mut level = |level: &Level| {
        let said = format!("{} {} {}", level.name.text, at(level.at), panel.unit);
        let y = scale.y(level.at) + if is_below(level) { 12.0 } else { -3.0 };
        // no name on a curve where that can be, and never two that overlap
        let clear = |place: &&f64| is_clear(scale, panel, (along(**place), y), &said);
        let place = *free.iter().find(clear).or(free.first()).unwrap_or(&1.0);
        free.retain(|other| (other - place).abs() > APART);
        let x = along(place);
        el!("g";
            horizontal("level", LEFT, WIDTH - RIGHT, scale.y(level.at)),
            label("scale named", x, y, Some("end"), &said),
        )
    };
    let shown = panel.levels.iter().filter(|level| level.at <= scale.most);
    let levels: Vec<View> = shown.map(&mut level).collect();
    let alone = match panel.curves.as_slice() {
        [only] => Some(label("scale", scale.x(0.0) + 4.0, scale.top + 26.0, None, &only.name.text)),
        _ => None,
    };
    el!("g";
        axes(scale, panel.unit),
        all(panel.curves.iter().zip(LOOKS).map(|(curve, look)| curve_view(scale, curve, look))),
        all(levels.into_iter()),
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

fn along(share: f64) -> f64 {
    LEFT + (WIDTH - LEFT - RIGHT) * share
}

/// Whether no curve runs through a name that ends there.
fn is_clear(scale: &Scale, panel: &Panel, (x, y): (f64, f64), said: &str) -> bool {
    #[expect(clippy::cast_precision_loss, reason = "a few letters")]
    let width = LETTER.0 * said.chars().count() as f64;
    let is_free_of = |at: f64, height: f64| {
        let (beside, above) = (at < x - width || at > x, height < y - LETTER.1);
        beside || above || height > y + 2.0
    };
    let mut curves = panel.curves.iter().map(|curve| &curve.points);
    curves.all(|points| points.iter().all(|(t, v)| is_free_of(scale.x(*t), scale.y(*v))))
}
