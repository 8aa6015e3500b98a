//! Question 1: the engine.

use super::{Choice, Field, Kind, choice, quantity};
use crate::quantity::Dimension::{Angle, Speed};

const KINDS: &[Choice] = &[
    choice("four-stroke", "Four-stroke"),
    choice("two-stroke", "Two-stroke"),
    choice("rotary", "Rotary (rotors in place of cylinders)"),
];

const SPACINGS: &[Choice] = &[
    choice("even", "Evenly spaced"),
    choice("angles", "Odd-fire: I know the angles"),
    choice("geometry", "Odd-fire: I know the crank"),
];

/// Left and right are seen by who stands at the end that is named and faces the engine.
const NUMBERINGS: &[Choice] = &[
    choice("inline-front", "In line: 1 at the front (free end)"),
    choice("inline-flywheel", "In line: 1 at the flywheel"),
    choice("banks-left-front", "From the front: 1 2 3 left, 4 5 6 right"),
    choice("banks-right-front", "From the front: 1 2 3 right, 4 5 6 left"),
    choice("alternating-left", "From the front: 1 3 5 left, 2 4 6 right"),
    choice("alternating-right", "From the front: 1 3 5 right, 2 4 6 left"),
    choice("banks-left-flywheel", "From the flywheel: 1 2 3 left, 4 5 6 right"),
    choice("banks-right-flywheel", "From the flywheel: 1 2 3 right, 4 5 6 left"),
];

pub(super) const FIELDS: &[Field] = &[
    Field::new("engine.cylinders", "Cylinders", Kind::Whole(1, 16)).hint("or rotors").first(),
    Field::new("engine.order", "Firing order", Kind::Row)
        .hint("1-5-3-6-2-4")
        .measure("Ignition off, plugs out: turn the engine by hand in its own direction, a thumb or a cork on each hole in turn, and note the order in which they push.")
        .first(),
    Field::new("engine.kind", "Engine", Kind::Choice(KINDS)).assumed("four-stroke", "the usual engine"),
    Field::new("engine.spacing", "Spacing of the firings", Kind::Choice(SPACINGS))
        .assumed("even", "the usual engine; a 90° V6 or a V-twin on a common pin is not"),
    Field::new("engine.angles", "Angles in the order of firing", Kind::Row)
        .hint("0 90 240 330 480 570")
        .measure("A degree wheel on the crank and a dial gauge in each plug hole: the angle of each top dead centre, from the first one.")
        .only_if("engine.spacing", &["angles"]),
    Field::new("engine.bank_angles", "Angle of each further bank from the first", Kind::Row)
        .hint("90; a radial: 72 144 216 288; in line: leave blank")
        .measure("Counted in the direction in which the crank turns, from the bank of cylinder 1, or the first in “Banks”.")
        .only_if("engine.spacing", &["geometry"]),
    Field::new("engine.pins", "Crank pins, front to rear", Kind::Row)
        .hint("0 120 240; or one for each cylinder by number: 0 270")
        .measure("How far the crank turns from pin 1 at its top until each pin is at its top: by a degree wheel, or the maker’s drawing.")
        .only_if("engine.spacing", &["geometry"]),
    Field::new("engine.split", "Split pins: the second bank’s rod follows by", quantity(Angle, "°", -180.0, 180.0))
        .assumed("0 °", "both rods on one pin")
        .only_if("engine.spacing", &["geometry"]),
    Field::new("engine.highest_speed", "Highest speed", quantity(Speed, "rpm", 300.0, 30000.0))
        .hint("where the limiter will be set"),
    Field::new("engine.numbering", "Numbering of the cylinders", Kind::Choice(NUMBERINGS))
        .hint("left and right as you stand at that end, facing the engine")
        .rare(),
    Field::new("engine.order_numbering", "Numbering where the order was found", Kind::Choice(NUMBERINGS))
        .hint("where it is another one")
        .only_if("engine.numbering", &[])
        .rare(),
    Field::new("engine.banks", "Banks, front to rear", Kind::Row).hint("1 3 5 / 2 4 6").rare(),
];
