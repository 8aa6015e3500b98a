//! The engine.

use crate::{
    engine::EngineKind,
    engine::numbering::{EngineEnd, Numbering, Side},
    quantity::{CrankAngle, RotationalSpeed},
    schema::{NumberRow, Part, Whole, choice, choices, fields, quantity, row, whole},
};

choices! {
    EngineKind {
        FourStroke = "four-stroke", "Four-stroke";
        TwoStroke = "two-stroke", "Two-stroke";
        Rotary = "rotary", "Rotary (rotors in place of cylinders)";
    }
}

/// By what the spacing of the firings is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum KnownBy {
    /// They are even.
    Even,
    /// Their angles.
    Angles,
    /// The crank.
    Geometry,
}

choices! {
    KnownBy {
        Even = "even", "Evenly spaced";
        Angles = "angles", "Odd-fire: I know the angles";
        Geometry = "geometry", "Odd-fire: I know the crank";
    }
}

choices! {
    Numbering {
        InLine(EngineEnd::Front) = "inline-front", "In line: 1 at the front (free end)";
        InLine(EngineEnd::Flywheel) = "inline-flywheel", "In line: 1 at the flywheel";
        BankByBank(EngineEnd::Front, Side::Left) = "banks-left-front", "From the front: 1 2 3 left, 4 5 6 right";
        BankByBank(EngineEnd::Front, Side::Right) = "banks-right-front", "From the front: 1 2 3 right, 4 5 6 left";
        Alternating(Side::Left) = "alternating-left", "From the front: 1 3 5 left, 2 4 6 right";
        Alternating(Side::Right) = "alternating-right", "From the front: 1 3 5 right, 2 4 6 left";
        BankByBank(EngineEnd::Flywheel, Side::Left) = "banks-left-flywheel", "From the flywheel: 1 2 3 left, 4 5 6 right";
        BankByBank(EngineEnd::Flywheel, Side::Right) = "banks-right-flywheel", "From the flywheel: 1 2 3 right, 4 5 6 left";
    }
}

fields! {
    of Part::Engine;
    /// Number of cylinders, or of rotors.
    CYLINDERS: Whole = whole("cylinders", "Cylinders", 1, 16)
        .hint("or rotors")
        .first();
    /// Firing order, as `1-5-3-6-2-4`.
    ORDER: NumberRow = row("order", "Firing order")
        .hint("1-5-3-6-2-4")
        .measure("Ignition off, spark plugs out: turn the engine by hand, the way it runs, a thumb or a cork on each hole in turn, and note the order in which you find compression.")
        .first();
    /// `four-stroke`, `two-stroke` or `rotary`.
    KIND: EngineKind = choice("kind", "Engine type")
        .assumed("four-stroke", "the usual engine");
    /// `even`, `angles` or `geometry`.
    SPACING: KnownBy = choice("spacing", "Spacing of the firings")
        .assumed("even", "the usual engine; a 90° V6 or a V-twin on a common pin is not");
    /// Firing angles in the order of firing, degrees from the first, as `0 90 240 330 480 570`.
    ANGLES: NumberRow = row("angles", "Angles in the order of firing")
        .hint("0 90 240 330 480 570")
        .measure("A degree wheel on the crank and a dial gauge in each plug hole: the angle of each TDC, from the first one.")
        .only_if("spacing", &["angles"]);
    /// Angle of each further bank from the first, degrees in the direction in which the crank turns, as `90`.
    BANK_ANGLES: NumberRow = row("bank_angles", "Angle of each further bank from the first")
        .hint("90; a radial: 72 144 216 288; in line: leave blank")
        .measure("Counted in the direction in which the crank turns, from the bank of cylinder 1, or the first in “Banks”.")
        .only_if("spacing", &["geometry"]);
    /// How far the crank turns until each pin is at its top, degrees from pin 1, as `0 120 240`.
    PINS: NumberRow = row("pins", "Crank pins, front to rear")
        .hint("0 120 240; or one for each cylinder by number: 0 270")
        .measure("How far the crank turns from pin 1 at its top until each pin is at its top: by a degree wheel, or the maker's drawing.")
        .only_if("spacing", &["geometry"]);
    /// How far the second rod of a split pin follows.
    SPLIT: CrankAngle = quantity("split", "Split pins: the second bank's rod follows by", "°", -180.0, 180.0)
        .assumed("0 °", "both rods on one pin")
        .only_if("spacing", &["geometry"]);
    /// Highest speed of the engine.
    HIGHEST_SPEED: RotationalSpeed = quantity("highest_speed", "Highest speed", "rpm", 300.0, 30000.0)
        .hint("where the limiter will be set");
    /// How the cylinders are numbered in this plan, as `banks-left-front`.
    NUMBERING: Numbering = choice("numbering", "Numbering of the cylinders")
        .hint("left and right as you stand at that end, facing the engine")
        .rare();
    /// How they are numbered where the firing order was found.
    ORDER_NUMBERING: Numbering = choice("order_numbering", "Numbering used by that firing order")
        .hint("if it is another one")
        .only_if("numbering", &[])
        .rare();
    /// Cylinders by bank, front to rear, as `1 3 5 / 2 4 6`.
    BANKS: NumberRow = row("banks", "Banks, front to rear")
        .hint("1 3 5 / 2 4 6")
        .rare();
}
