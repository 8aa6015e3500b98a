//! Pictures, for those who would rather look than read. Geometry is made here, from the numbers of the report.

mod circuit;
mod cycle;
mod rows;
mod strip;
mod timeline;
mod traces;

pub(crate) use circuit::CircuitView;
pub(crate) use cycle::cycle_view;
pub(crate) use strip::strip_view;
pub(crate) use timeline::timeline_view;
pub(crate) use traces::traces_view;

use yew::AttrValue;

use crate::element::{Setting, View, el};

/// A coordinate, or a length, set as it is drawn.
impl Setting for f64 {
    fn setting(&self) -> Option<AttrValue> {
        at(*self).setting()
    }
}

/// A number without decimals.
fn whole(number: f64) -> String {
    quietpin_core::math::fixed(number, 0)
}

/// A coordinate of a drawing, to a tenth of its unit.
fn at(number: f64) -> String {
    quietpin_core::math::fixed(number, 1)
}

/// A round number at or above: 1, 2 or 5 times a power of ten.
fn round_up(number: f64) -> f64 {
    let mut step = 1.0;
    loop {
        for factor in [1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0] {
            if step * factor >= number {
                return step * factor;
            }
        }
        if step > 1e9 {
            return number;
        }
        step *= 10.0;
    }
}

fn view_box(width: f64, height: f64) -> String {
    format!("0 0 {} {}", whole(width), whole(height))
}

/// A straight line between two points.
fn line(class: &'static str, (x1, y1): (f64, f64), (x2, y2): (f64, f64)) -> View {
    el!("line", "class" = class, "x1" = x1, "x2" = x2, "y1" = y1, "y2" = y2)
}

fn horizontal(class: &'static str, from: f64, to: f64, y: f64) -> View {
    line(class, (from, y), (to, y))
}

fn vertical(class: &'static str, x: f64, from: f64, to: f64) -> View {
    line(class, (x, from), (x, to))
}

fn disc(class: &'static str, x: f64, y: f64, radius: &'static str) -> View {
    el!("circle", "class" = class, "cx" = x, "cy" = y, "r" = radius)
}

/// Words in a drawing; the anchor, `middle` or `end`, is the part of them that stands at their place.
fn label(class: &'static str, x: f64, y: f64, anchor: Option<&'static str>, words: &str) -> View {
    el!("text", "class" = class, "x" = x, "y" = y, "text-anchor" = anchor; words)
}
