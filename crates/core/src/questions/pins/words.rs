//! The sentences of the question of the pins.

use crate::words::{Explanation, sentences};

sentences! {
    QUESTION = "pins.question", "Which output takes which load?";
    PENDING = "pins.pending", "One moment…";
    TITLE = "pins.title", "Loads on outputs";
    // verdicts
    BLANK = "pins.blank", "Needs: loads and outputs";
    OPEN_MEND = "pins.open-mend", "First: correct what can't be read";
    GOOD = "pins.good", "All {n} loads are on outputs that suit";
    GOOD_ONE = "pins.good-one", "The load is on an output that suits";
    OPEN_PLACE = "pins.open-place", "{n} of {all} loads need an output: there is one for each";
    OPEN_MOVE = "pins.open-move", "{n} of {all} loads are better moved";
    OPEN_LEFT = "pins.open-left", "Needs: where the other end of {list} goes";
    OPEN_STAGE = "pins.open-stage", "Needs: the type of {output}";
    OPEN_UNSEARCHED = "pins.open-unsearched", "Not all ways were tried";
    TOO_FEW = "pins.too-few-outputs", "Too few outputs for {list}";
    NONE_SUITS = "pins.none-suits", "No output suits {list}";
    TITLE_INPUTS = "pins.title-inputs", "Sensors on inputs";
    GOOD_INPUTS = "pins.good-inputs", "Sensors on inputs that suit: {n}";
    OPEN_PLACE_INPUTS = "pins.open-place-inputs", "{n} of {all} sensors need an input: there is one for each";
    OPEN_MOVE_INPUTS = "pins.open-move-inputs", "{n} of {all} sensors are better moved";
    OPEN_TAKES = "pins.open-takes", "Needs: what {input} reads";
    TOO_FEW_OF_INPUTS = "pins.too-few-of-inputs", "Too few inputs for {list}";
    NO_INPUT_SUITS = "pins.no-input-suits", "No input suits {list}";
    // why
    WHY_SPARE = "pins.why-spare", "Free: {list}.";
    WHY_NO_SPARE = "pins.why-no-spare", "None is free.";
    // what to do
    DO_PLACE = "pins.do-place", "Plan {list}.";
    PLACE = "pins.place", "on {output}";
    PLACE_BETWEEN = "pins.place-between", "between {output} and {other}";
    AND = "pins.and", "and {last}";
    AND_MORE = "pins.and-more", "and {n} more";
    DO_LET_MOVE = "pins.do-let-move", "Let {load} be moved from {output}.";
    DO_RELAY = "pins.do-relay", "Put a relay between for {load}: its coil on {output}.";
    DO_SHARE = "pins.do-share", "Put {load} on {output} too, where both may be on together.";
    DO_SWITCH = "pins.do-switch", "Switch {load} by hand: then it needs no output.";
    DO_LARGER = "pins.do-larger", "Take a controller with one more output like this: {kind}, {current} or more.";
    DO_LARGER_INRUSH = "pins.do-larger-inrush",
        "Take a controller with one more output like this: {kind}, {current} or more, {inrush} for a moment.";
    DO_LARGER_PULSED = "pins.do-larger-pulsed",
        "Take a controller with one more output like this: {kind}, {current} or more, pulsed at {frequency}.";
    DO_MEASURE = "pins.do-measure", "Type the resistance of {list}: what is usual may be too much for an output that suits.";
    DO_INPUT_ANALOGUE = "pins.do-input-analogue", "Take a controller with one more analogue input.";
    DO_INPUT_PULLED = "pins.do-input-pulled",
        "Pull a free analogue input up, or take a controller with one more that is.";
    DO_INPUT_DIGITAL = "pins.do-input-digital", "Take a controller with one more digital input.";
    DO_INPUT_KNOCK = "pins.do-input-knock", "Take a controller with one more knock input.";
    STAGE_LOW = "pins.stage-low", "low-side";
    STAGE_HIGH = "pins.stage-high", "high-side";
    STAGE_BRIDGE = "pins.stage-bridge", "a pair of half-bridges";
    // table
    TABLE = "pins.table", "Loads and outputs";
    COL_LOAD = "pins.col-load", "Load";
    COL_NOW = "pins.col-now", "On";
    COL_BEST = "pins.col-best", "Best on";
    COL_SUIT = "pins.col-suit", "Suit it";
    FROM_TO = "pins.from-to", "{first} to {last}";
    // findings
    TOO_FEW_OUTPUTS = "pins.too-few",
        "{list} compete for {m}: {short} too few.";
    TOO_FEW_MORE = "pins.too-few-more",
        "{list} compete for {m}, and {others} can be on no other: {short} too few.";
    NO_OUTPUT = "pins.no-output", "No free output of this plan suits {list}.";
    OUTPUTS = "pins.outputs", "{n} outputs ({names})";
    OUTPUT = "pins.output", "1 output ({names})";
    TOO_FEW_INPUTS = "pins.too-few-inputs",
        "{list} compete for {m}: {short} too few.";
    NO_INPUT = "pins.no-input", "No input of this plan reads {list}.";
    INPUTS = "pins.inputs", "{n} inputs ({names})";
    INPUT = "pins.input", "1 input ({names})";
    GROUP_OVER = "pins.group-over",
        "The outputs of group {group} carry {sum} together with all of them on, and {limit} at the most.";
    GROUP_PULSES = "pins.group-pulses",
        "The outputs of group {group} have one PWM frequency, and {one} and {other} want another each.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: TOO_FEW_OUTPUTS.code,
        // A set of loads that has fewer outputs that suit any of them than it has loads; without any one of them it can be placed.
        why: "However they are changed about, one of them is left over: none of the others is to blame alone.",
        act: "One of the ways that are named frees an output, or needs none.",
        source: "P. Hall, On representatives of subsets, 1935",
    },
    Explanation {
        code: TOO_FEW_MORE.code,
        why: "However they are changed about, as many of them as are too few are left over.",
        act: "One of the ways that are named for each.",
        source: "P. Hall, On representatives of subsets, 1935",
    },
    Explanation {
        code: NO_OUTPUT.code,
        why: "Each output was tried, in every key state in every case: the load comes on when it should be off, is too weak, or is too much for the output.",
        act: "A relay between takes next to nothing from the output.",
        source: "the same solving as of its rest",
    },
    Explanation {
        code: TOO_FEW_INPUTS.code,
        why: "However they are changed about, one of them has no input that reads it.",
        act: "An input more of that kind, or one sensor less.",
        source: "P. Hall, On representatives of subsets, 1935",
    },
    Explanation {
        code: NO_INPUT.code,
        why: "What a sensor gives is a voltage, a level, or noise, and an input reads one of them; a resistance needs a pull-up too.",
        act: "An input of that kind.",
        source: "what each input reads, as typed",
    },
    Explanation {
        code: GROUP_OVER.code,
        why: "Outputs that share a chip share its heat: each may be within its own limit, and the chip is not.",
        act: "Move one of them to an output of another group.",
        source: "the sum of what each draws, and the limit as typed",
    },
    Explanation {
        code: GROUP_PULSES.code,
        why: "They are pulsed by one timer: what the one wants, the other gets.",
        act: "Move one of them to an output of another group.",
        source: "the frequencies as typed",
    },
];
