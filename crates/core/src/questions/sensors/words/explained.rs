//! What each finding about sensors means.

use super::{
    CANNOT, COARSE, GAUGE_FOR_ABSOLUTE, GAUGE_OVER, INPUT_TWICE, NO_PULL_UP, NO_SERIES, NO_SPAN,
    NO_STROKE, NO_SUCH_INPUT, NO_SUCH_SUPPLY, NOT_A_CURVE, ONE_SUPPLY, OVER_SUPPLY, PAIRS_UNREAD,
    PULLED_UNWANTED, READING_DIFFERS, READS_OPEN, READS_SHORT, SECOND_PULL, SET_OTHERWISE,
    SUPPLY_TOO_SMALL, TABLE_DIFFERS, TABLE_ENDS, TABLE_NOT_THIS, TABLE_READS_COLD, TO_BATTERY,
    TRACKS_ALIKE, TRACKS_DIFFER, WRONG_INPUT,
};
use crate::words::Explanation;

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: PAIRS_UNREAD.code,
        why: "What can't be read is left out, and the answer waits.",
        act: "Type what it tells, then what is read there: 20 2450, 80 290.",
        source: "how pairs are typed is this program's own",
    },
    Explanation {
        code: NOT_A_CURVE.code,
        why: "One reading would stand for two temperatures or pressures.",
        act: "Look for a slip: a digit, a k, two points swapped.",
        source: "it follows from what a table is",
    },
    Explanation {
        code: NO_SERIES.code,
        why: "The resistance of a thermistor falls throughout; these numbers give none that does.",
        act: "Copy them from its data once more, each with its exponent.",
        source: "Steinhart and Hart, 1968",
    },
    Explanation {
        code: NO_SPAN.code,
        why: "Two ends are needed to tell one pressure from another.",
        act: "Type the pressures at its lower and upper voltage.",
        source: "it follows from the line between them",
    },
    Explanation {
        code: NO_STROKE.code,
        why: "Both tracks are compared place by place.",
        act: "Type the volts one behind the other, first released.",
        source: "how it is typed is this program's own",
    },
    Explanation {
        code: NO_SUCH_INPUT.code,
        why: "An input that is not described can't be held against the sensor.",
        act: "Correct the name, or describe that input.",
        source: "the plan's own names",
    },
    Explanation {
        code: NO_SUCH_SUPPLY.code,
        why: "A supply that is not described can't be counted.",
        act: "Correct the name, or describe that supply.",
        source: "the plan's own names",
    },
    Explanation {
        code: CANNOT.code,
        why: "The controller would be told something else, and believe it.",
        act: "Choose the sensor for what it is to tell.",
        source: "it follows from what the sensor measures",
    },
    Explanation {
        code: GAUGE_FOR_ABSOLUTE.code,
        why: "Fuel and spark are set by absolute pressure: all below the air's would read as nothing.",
        act: "Use an absolute sensor; a gauge sensor suits oil and fuel.",
        source: "common practice, no source; the air's pressure by ISO 2533, from memory",
    },
    Explanation {
        code: INPUT_TWICE.code,
        why: "Both pull at one voltage: what is read is neither.",
        act: "Give each an input of its own.",
        source: "currents into a node sum to zero (Kirchhoff)",
    },
    Explanation {
        code: WRONG_INPUT.code,
        why: "An input reads only what it is built for.",
        act: "Move it to an input that reads what it gives.",
        source: "the pin table",
    },
    Explanation {
        code: NO_PULL_UP.code,
        why: "Ohms alone make no voltage.",
        act: "Use an input with a pull-up, or fit one to the sensor supply.",
        source: "a voltage divider (Ohm's law)",
    },
    Explanation {
        code: PULLED_UNWANTED.code,
        why: "The pull-up adds its current to the sensor's own: weak outputs and potentiometers are lifted.",
        act: "Use an input without a pull-up, or switch it off.",
        source: "currents into a node sum to zero (Kirchhoff); above 20 kΩ it does not count: common practice, no source",
    },
    Explanation {
        code: SECOND_PULL.code,
        why: "Two pull-ups in parallel are a smaller one: the table no longer suits.",
        act: "Cut the old gauge or the second pull-up off.",
        source: "resistors in parallel (Ohm's law)",
    },
    Explanation {
        code: GAUGE_OVER.code,
        why: "With the sensor cold or unplugged the gauge lifts the input above what it is built for.",
        act: "Cut the old gauge off this wire, and give it a sender of its own.",
        source: "currents into a node sum to zero (Kirchhoff)",
    },
    Explanation {
        code: OVER_SUPPLY.code,
        why: "It burns out, or puts more than 5 V on its input.",
        act: "Feed it from a sensor supply of the controller.",
        source: "the sensor's data: made for 5 V",
    },
    Explanation {
        code: TO_BATTERY.code,
        why: "The input gets more than it is built for.",
        act: "Let the switch ground the input, or use one that is rated for the battery.",
        source: "the pin table",
    },
    Explanation {
        code: TABLE_READS_COLD.code,
        why: "The engine is fuelled as a cold one, fans stay off, and nobody is warned of the heat.",
        act: "Enter this sensor's own table; check it cold and hot.",
        source: "its data through the pull-up, held against the table entered",
    },
    Explanation {
        code: TABLE_DIFFERS.code,
        why: "A table may be right at one point and wrong at all others.",
        act: "Enter this sensor's own table; check it at two points far apart.",
        source: "its data, held against the table entered; what counts as off: common practice, no source",
    },
    Explanation {
        code: TABLE_ENDS.code,
        why: "Beyond its last point a table stays at it.",
        act: "Enter a point beyond what the engine meets.",
        source: "common practice, no source",
    },
    Explanation {
        code: TABLE_NOT_THIS.code,
        why: "One reading may suit any table: two far apart tell whose it is.",
        act: "Enter the table that these readings give.",
        source: "the readings, held against the table entered",
    },
    Explanation {
        code: READING_DIFFERS.code,
        why: "It is another sensor than its data say, or was as warm as another place.",
        act: "Read it again, sensor and thermometer in one place; else type it as read.",
        source: "its data, with 3 °C and 3% for thermometer and meter: common practice, no source",
    },
    Explanation {
        code: READS_OPEN.code,
        why: "Nothing draws the input down.",
        act: "Unplug it: ohms across its two pins, then each wire from end to end.",
        source: "a voltage divider with one end open (Ohm's law)",
    },
    Explanation {
        code: READS_SHORT.code,
        why: "Nothing lifts the input, or ground holds it.",
        act: "Unplug it: 5 V at the pin now is a shorted sensor; still 0 V a shorted wire or no pull-up.",
        source: "a voltage divider with one end shorted (Ohm's law)",
    },
    Explanation {
        code: COARSE.code,
        why: "The reading jumps between steps where it is needed most.",
        act: "Use a smaller pull-up, or an input of more bits.",
        source: "a voltage divider (Ohm's law); 2 °C is too coarse: common practice, no source",
    },
    Explanation {
        code: SET_OTHERWISE.code,
        why: "The controller takes one for the other, and acts on it.",
        act: "Set the input in the controller: purpose, then calibration, then what it is used for.",
        source: "the plan, held against what is entered",
    },
    Explanation {
        code: TRACKS_ALIKE.code,
        why: "The second track is there to show that the first is false.",
        act: "Use a sensor whose second track runs mirrored or at half the voltage.",
        source: "common practice, no source",
    },
    Explanation {
        code: TRACKS_DIFFER.code,
        why: "The controller sees two strokes that don't agree, and shuts the throttle.",
        act: "Look for swapped wires, then set the second track as it runs.",
        source: "common practice, no source: 0.2 V apart at the most",
    },
    Explanation {
        code: ONE_SUPPLY.code,
        why: "Both fall to 0 V at once; the controller sees that, and lets the throttle shut.",
        act: "Where the controller has two sensor supplies, give each track its own.",
        source: "common practice, no source",
    },
    Explanation {
        code: SUPPLY_TOO_SMALL.code,
        why: "Its voltage sags, and all sensors on it read wrong at once.",
        act: "Move some to another supply.",
        source: "the sum of what is drawn, held against the pin table",
    },
];
