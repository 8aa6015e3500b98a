//! Question 1: what a timing light shows.

use super::{Choice, Field, Kind, choice, quantity};
use crate::quantity::Dimension::Angle;

const STROKES: &[Choice] = &[
    choice("compression", "Compression: both valves shut"),
    choice("exhaust", "Exhaust: a valve open, or the cork stays on"),
];

pub(super) const FIELDS: &[Field] = &[
    Field::new("light.advance", "Controller locked at, before top dead centre", quantity(Angle, "deg", -60.0, 90.0))
        .hint("10 deg")
        .measure("Lock the timing in the controller at a fixed advance. Cranking: injectors unplugged. Running: warm, at a steady speed."),
    Field::new("light.seen.#", "Advance seen on cylinder", quantity(Angle, "deg", -360.0, 360.0))
        .hint("after top dead centre: minus")
        .measure("The light’s clamp on this cylinder’s lead, the beam on its own mark of the crank: the degrees before its top dead centre; after it with a minus."),
    Field::new("light.stroke", "The spark falls on the stroke of", Kind::Choice(STROKES))
        .measure("Fuel off, plug out, its lead on a grounded spark tester well away, a cork on the hole (no thumb). Crank: on compression the cork pops, just before the spark. Or look at the valves."),
    Field::new("light.offset", "Offset of the trigger, as entered", quantity(Angle, "deg", -720.0, 720.0))
        .hint("as it stands in the controller")
        .rare(),
    Field::new("light.tolerance", "A reading may be off by", quantity(Angle, "deg", 0.1, 20.0))
        .assumed("2 deg", "a mark on a pulley read by eye: common practice, no source")
        .rare(),
];
