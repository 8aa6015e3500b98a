//! The sentences about the engine's fields.

pub(crate) mod crank;

use crate::words::{Explanation, sentences};

sentences! {
    CYLINDERS_MANY = "engine.cylinders-many",
        "{count} cylinders are more than can be planned here: 1 to {most} can.";
    ORDER_UNREADABLE = "engine.order-unreadable",
        "Firing order: “{typed}” is not a cylinder number. Type the numbers alone, for example 1-3-4-2.";
    ORDER_LENGTH = "engine.order-length",
        "Firing order: {entries} {entries|entry|entries} for {cylinders} {cylinders|cylinder|cylinders}. Each cylinder appears in it once.";
    ORDER_STRAY = "engine.order-stray",
        "Firing order: there is no cylinder {stray} among {cylinders}. Type each of 1 to {cylinders} once.";
    ORDER_TWICE = "engine.order-twice",
        "Firing order: cylinder {cylinder} appears twice and {missing} is missing. Type each cylinder once.";
    ANGLES_UNREADABLE = "engine.angles-unreadable",
        "Angles: “{typed}” is not a number of degrees. Type one angle for each firing, for example 0 90 240 330 480 570.";
    ANGLES_COUNT = "engine.angles-count",
        "Angles: {angles} {angles|angle|angles} for {cylinders} {cylinders|cylinder|cylinders}. Type one for each firing, the first of them 0.";
    ANGLES_FIRST = "engine.angles-first",
        "Angles: the first is {angle}. They count from the first firing: type 0 there, and the others from it.";
    ANGLES_FALLING = "engine.angles-falling",
        "Angles: {angle} comes after {before}. They rise in firing order: sort the angles, or correct the firing order.";
    ANGLES_BEYOND = "engine.angles-beyond",
        "Angles: {angle} is not below the cycle of {cycle}. Type angles from 0 to below {cycle}.";
    ANGLES_ARE_INTERVALS = "engine.angles-are-intervals",
        "Angles: these are the intervals (they add up to {cycle}), not the angles. Type {angles}.";
    BANKS_UNREADABLE = "engine.banks-unreadable",
        "Banks: “{typed}” is not a cylinder number. Type the cylinders of each bank, banks apart by /, for example 1 3 5 / 2 4 6.";
    BANKS_STRAY = "engine.banks-stray",
        "Banks: cylinder {stray} appears twice, or is none of the {cylinders}. Type each of 1 to {cylinders} once.";
    BANKS_MISSING = "engine.banks-missing", "Banks: cylinder {missing} is in no bank. Type each cylinder once.";
    FIRE_TOGETHER = "engine.fire-together",
        "Cylinders {first} and {second} both fire at {angle}. Rare, but built: check the angles.";
    EVEN_ASSUMED = "engine.even-assumed",
        "Even spacing is assumed, but engines of {cylinders} cylinders are built odd-fire too.";
    EVEN_CONTRADICTED = "engine.even-contradicted",
        "The spacing is set to even, but the crank as typed fires at {angles}.";
    TAKE_CRANK = "engine.take-crank", "Use the spacing of the crank.";
    DROP_CRANK = "engine.drop-crank", "If it is even: clear pins and bank angles.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: CYLINDERS_MANY.code,
        // The engine has more cylinders than are looked at here.
        why: "Every angle is the cycle divided by the number of cylinders.",
        act: "Type the number of cylinders, or of rotors.",
        source: "limit of this plan: 1 to 16",
    },
    Explanation {
        code: ORDER_UNREADABLE.code,
        // Something in the firing order is no whole number.
        why: "Without the order no channel can be given a cylinder.",
        act: "Type the numbers alone, with dashes, commas or blanks between them.",
        source: "the form of this plan",
    },
    Explanation {
        code: ORDER_LENGTH.code,
        // The firing order is longer or shorter than the engine has cylinders.
        why: "Each cylinder fires once in a cycle, so it appears in the order once.",
        act: "Count again, on the engine rather than on paper.",
        source: "definition of a firing order",
    },
    Explanation {
        code: ORDER_STRAY.code,
        // The firing order names a cylinder beyond the last.
        why: "A channel would go to a cylinder that isn't there, and a real one would never fire.",
        act: "Correct the order or the number of cylinders.",
        source: "definition of a firing order",
    },
    Explanation {
        code: ORDER_TWICE.code,
        // A cylinder stands twice in the firing order.
        why: "Then another is missing, and would never fire.",
        act: "Find the order on the engine: spark plugs out, turn by hand, note the order in which you find compression.",
        source: "definition of a firing order",
    },
    Explanation {
        code: ANGLES_UNREADABLE.code,
        // Something among the angles is no number.
        why: "Odd-fire engines can't be answered without their angles.",
        act: "Type degrees of the crankshaft, in the order of firing.",
        source: "the form of this plan",
    },
    Explanation {
        code: ANGLES_COUNT.code,
        // There are more or fewer angles than cylinders.
        why: "Each firing has one angle.",
        act: "Type an angle for each firing; the first is 0.",
        source: "the form of this plan",
    },
    Explanation {
        code: ANGLES_FIRST.code,
        // The first angle is not 0.
        why: "All angles count from the first cylinder's firing TDC.",
        act: "Subtract the first angle from all of them.",
        source: "the form of this plan",
    },
    Explanation {
        code: ANGLES_FALLING.code,
        // An angle is smaller than the one before it.
        why: "Then the firing order and the angles say two different things.",
        act: "Measure again with a degree wheel, or correct the order.",
        source: "definition of a firing order",
    },
    Explanation {
        code: ANGLES_BEYOND.code,
        // An angle lies at or beyond the end of the cycle.
        why: "The intervals between the firings have to add up to the cycle: 720 degrees, or 360.",
        act: "Check the kind of engine and the angles.",
        source: "geometry of the cycle",
    },
    Explanation {
        code: ANGLES_ARE_INTERVALS.code,
        // The numbers rise and fall, and their sum is the cycle.
        why: "Intervals read as angles would put nearly every spark in the wrong place.",
        act: "Type the running sums named here, beginning with 0.",
        source: "geometry of the cycle",
    },
    Explanation {
        code: BANKS_UNREADABLE.code,
        // Something among the banks is no whole number.
        why: "Firing bank by bank needs to know which cylinder is where.",
        act: "Type the cylinders of each bank, front to rear.",
        source: "the form of this plan",
    },
    Explanation {
        code: BANKS_STRAY.code,
        // A cylinder stands twice in the banks, or is none of this engine.
        why: "A cylinder is in one place.",
        act: "Look at the engine and type each cylinder once.",
        source: "definition of a bank",
    },
    Explanation {
        code: BANKS_MISSING.code,
        // A cylinder is in no bank.
        why: "It would get no fuel where injection goes bank by bank.",
        act: "Look at the engine and type each cylinder once.",
        source: "definition of a bank",
    },
    Explanation {
        code: FIRE_TOGETHER.code,
        // Two firings of a four-stroke engine are given the same angle.
        why: "Some engines are built so, but a slip of the finger looks the same.",
        act: "Check both angles with a degree wheel.",
        source: "common practice, no source",
    },
    Explanation {
        code: EVEN_CONTRADICTED.code,
        // The spacing was chosen even, and pins and bank angles that were typed are not.
        why: "One of the two is wrong: every second spark would be off by the difference.",
        act: "Measure two neighbouring TDCs with a degree wheel, and correct the wrong one.",
        source: "kinematics of crank and rod, from memory",
    },
    Explanation {
        code: EVEN_ASSUMED.code,
        // A four-stroke of 2, 6 or 10 cylinders, not in line by order or numbering, with nothing said about its spacing.
        why: "On common pins its firings are not even: one bank would fire 18 or 30 degrees wrong, which heats or detonates.",
        act: "Look at the crankshaft, or measure two neighbouring TDCs; then choose the spacing.",
        source: "geometry of the crank; common practice, no source",
    },
];
