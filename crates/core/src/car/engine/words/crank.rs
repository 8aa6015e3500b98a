//! The sentences about the engine's crank, and about the numbering of its cylinders.

use crate::words::{Explanation, sentences};

sentences! {
    NEEDS_CRANK = "engine.needs-crank",
        "It needs the crank: its pins, the banks, and the angle of each further bank.";
    CRANK_UNREADABLE = "engine.crank-unreadable",
        "{field}: “{typed}” is not a number of degrees. Type degrees with blanks between, for example 0 120 240.";
    ANGLE_BEYOND_TURN = "engine.angle-beyond-turn",
        "{field}: {angle} is a turn or more. The same place is {same}: type that.";
    BANK_ANGLES_COUNT = "engine.bank-angles-count",
        "Angles of the banks: {angles} for {banks} banks. Type {wanted}: one for each bank after the first.";
    PINS_COUNT = "engine.pins-count",
        "Crank pins: {pins} for {cylinders} cylinders. Type {each} where opposite cylinders share a pin, or {cylinders}, one for each cylinder.";
    PINS_EACH = "engine.pins-each",
        "Crank pins: {pins} for {cylinders} {cylinders|cylinder|cylinders}. Type {cylinders}, one for each cylinder by number.";
    OUT_OF_TURN = "engine.out-of-turn",
        "Crank pins: cylinder {cylinder} doesn't fit the order. Its TDC, {angle} after the first, must come after that of {before}, {before_angle}. Check pins, bank angles and order.";
    OTHER_HAND = "engine.other-hand", "Counted the other way round it fits: {field} {angles}.";
    TURN_TAKEN = "engine.turn-taken",
        "Two sets of angles fit the order: {angles} (assumed, as more even) and {others}. To tell: from firing TDC of {first} turn on {top}. Valves of {cylinder} shut: it fires there. Rocking: a turn later. If it is the other set, type its angles.";
    TURN_TIE = "engine.turn-tie",
        "Two sets of angles fit, equally even: {angles} (assumed) or {others}. To tell: from firing TDC of {first} turn on {top}. Valves of {cylinder} shut: it fires there. Rocking: a turn later. Then type the angles.";
    NUMBERING_ODD = "engine.numbering-odd",
        "Numbering of the cylinders: two equal banks can't have {cylinders}. Choose one in line, or type the banks alone.";
    NUMBERING_LAYOUTS = "engine.numbering-layouts",
        "Numbering used by that firing order: one of the two numberings is in line, the other in two banks. Choose two of the same kind.";
    NUMBERING_BANKS = "engine.numbering-banks",
        "Banks: they contradict the numbering, which gives {banks}, front to rear. Clear this field, or choose another numbering.";
    ORDER_TRANSLATED = "engine.order-translated", "Firing order: {there} there is {here} in your numbering.";
    TABLE_PLACES = "engine.table-places",
        "The cylinders in both numberings; left and right as seen from the front";
    COL_PLACE = "engine.col-place", "Place";
    COL_THERE = "engine.col-there", "Number there";
    COL_HERE = "engine.col-here", "Your number";
    PLACE_LINE = "engine.place-line", "{place} from the front";
    PLACE_LEFT = "engine.place-left", "Left, {place} from the front";
    PLACE_RIGHT = "engine.place-right", "Right, {place} from the front";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: CRANK_UNREADABLE.code,
        // Something among pins or bank angles is no number.
        why: "The firing angles are found from the crank.",
        act: "Type degrees of the crankshaft, with blanks between them.",
        source: "the form of this plan",
    },
    Explanation {
        code: ANGLE_BEYOND_TURN.code,
        // A pin or a bank angle is a turn or more.
        why: "Pins and banks have a place in one turn; which turn a cylinder fires in follows from the order.",
        act: "Type the place in one turn, counted in the direction in which the crank turns.",
        source: "the form of this plan",
    },
    Explanation {
        code: BANK_ANGLES_COUNT.code,
        // More or fewer bank angles than banks after the first.
        why: "The first bank is where the counting starts; each other has one angle from it.",
        act: "Count the banks at the engine.",
        source: "the form of this plan",
    },
    Explanation {
        code: PINS_COUNT.code,
        // The pins are as many as neither the cylinders of a bank nor all cylinders.
        why: "Each piston is on one pin, its own or a shared one.",
        act: "Count the pins at the crank.",
        source: "the form of this plan",
    },
    Explanation {
        code: PINS_EACH.code,
        // The pins are not as many as the cylinders, of which none share one.
        why: "Here each piston has a pin of its own.",
        act: "Type the place of each cylinder's pin, by the number of the cylinder.",
        source: "the form of this plan",
    },
    Explanation {
        code: OUT_OF_TURN.code,
        // No way of giving each cylinder one of the two turns agrees with the order.
        why: "Every cylinder fires at its own TDC, once in two turns.",
        act: "Often the bank angle or the pins are counted against the direction in which the crank turns.",
        source: "kinematics of crank and rod, from memory",
    },
    Explanation {
        code: TURN_TAKEN.code,
        // More than one way agrees with the order, and one is the most even.
        why: "A piston is at its top once a turn; the camshaft decides in which turn it fires.",
        act: "Turn the engine by hand, spark plugs out, and look at the valves.",
        source: "kinematics of crank and rod, from memory; the more even: common practice, no source",
    },
    Explanation {
        code: TURN_TIE.code,
        // More than one way agrees with the order, and two are as even.
        why: "A turn out, that cylinder's spark falls at its overlap, and it never fires.",
        act: "Look at the valves and type the angles. With more than two cylinders, check first that pins and banks are counted in the direction in which the crank turns.",
        source: "kinematics of crank and rod, from memory",
    },
    Explanation {
        code: NUMBERING_ODD.code,
        // A numbering of two banks is chosen for an odd number of cylinders.
        why: "The numbering gives the same number of cylinders to each bank.",
        act: "Choose one in line, or type the cylinders of each bank.",
        source: "geometry of two equal banks",
    },
    Explanation {
        code: NUMBERING_LAYOUTS.code,
        // One numbering is in line, the other in two banks.
        why: "One engine can't be both, so the firing order can't be translated; it is used as typed.",
        act: "Look at the engine, and choose both of its kind.",
        source: "geometry of the engine",
    },
    Explanation {
        code: NUMBERING_BANKS.code,
        // The banks typed are not those of the numbering.
        why: "One of the two is wrong, and with it every number on a wire.",
        act: "Look at the engine and correct the wrong one.",
        source: "DIN 73021 as published motoring lexicons quote it; common practice, no source",
    },
    Explanation {
        code: ORDER_TRANSLATED.code,
        // The firing order was found in another numbering.
        why: "All numbers of this plan are in your numbering; the order begins with its cylinder 1.",
        act: "Check the table against the engine before you wire.",
        source: "DIN 73021 as published motoring lexicons quote it; common practice, no source",
    },
];
