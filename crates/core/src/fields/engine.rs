//! Question 1: the engine.

use super::{Choice, Field, Kind, choice, quantity};
use crate::quantity::Dimension::Speed;

const KINDS: &[Choice] = &[
    choice("four-stroke", "Four-stroke"),
    choice("two-stroke", "Two-stroke"),
    choice("rotary", "Rotary (rotors in place of cylinders)"),
];

const SPACINGS: &[Choice] =
    &[choice("even", "Evenly spaced"), choice("angles", "Odd-fire: I know the angles")];

pub(super) const FIELDS: &[Field] = &[
    Field::new("engine.cylinders", "Cylinders", Kind::Whole(1, 16)).hint("or rotors").first(),
    Field::new("engine.order", "Firing order", Kind::Row)
        .hint("1-5-3-6-2-4")
        .measure("Turn the engine by hand in its own direction, plugs out, a thumb or a cork on each hole in turn: note the order in which they push.")
        .first(),
    Field::new("engine.kind", "Engine", Kind::Choice(KINDS)).assumed("four-stroke", "the usual engine"),
    Field::new("engine.spacing", "Spacing of the firings", Kind::Choice(SPACINGS))
        .assumed("even", "the usual engine; a 90° V6 or a V-twin on a common pin is not"),
    Field::new("engine.angles", "Angles in the order of firing", Kind::Row)
        .hint("0 90 240 330 480 570")
        .measure("A degree wheel on the crank and a dial gauge in each plug hole: the angle of each top dead centre, from the first one.")
        .only_if("engine.spacing", &["angles"]),
    Field::new("engine.highest_speed", "Highest speed", quantity(Speed, "rpm", 300.0, 30000.0))
        .hint("where the limiter will be set"),
    Field::new("engine.banks", "Banks, front to rear", Kind::Row).hint("1 3 5 / 2 4 6").rare(),
];
