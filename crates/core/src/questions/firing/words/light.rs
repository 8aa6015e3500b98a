//! The sentences about what a timing light shows.

use crate::words::{Explanation, sentences};

sentences! {
    LIGHT_TITLE = "firing.light-title", "By the timing light";
    LIGHT_OPEN = "firing.light-open", "Two readings tell what is wrong";
    LIGHT_NEEDS_ADVANCE = "firing.light-needs-advance",
        "Type the advance at which the timing is locked: the readings are compared with it.";
    LIGHT_NEEDS_TWO = "firing.light-needs-two",
        "One reading can't tell a wrong lead from a wrong reference: read a second cylinder.";
    LIGHT_MEND = "firing.light-mend", "A reading can't be used: see its field.";
    LIGHT_STRAY = "firing.light-stray",
        "There is no cylinder {cylinder} among {cylinders}: this reading is left out.";
    // verdicts
    LIGHT_RIGHT = "firing.light-right", "Timing right on all {n} read";
    LIGHT_STROKE = "firing.light-stroke", "The mark is right; now prove the stroke";
    LIGHT_TURN = "firing.light-turn", "A whole turn out: the cam reference";
    LIGHT_SIGN = "firing.light-sign", "The offset has the wrong sign";
    LIGHT_EDGE = "firing.light-edge", "Probably the other edge of the tooth";
    LIGHT_TEETH = "firing.light-teeth", "Probably {n} {n|tooth|teeth} out";
    LIGHT_REFERENCE = "firing.light-reference", "Probably cylinder {other} set as cylinder {first}";
    LIGHT_LATE = "firing.light-late", "All late by {error}: one offset";
    LIGHT_EARLY = "firing.light-early", "All early by {error}: one offset";
    LIGHT_MIXED = "firing.light-mixed", "Out by other firings: leads or order";
    LIGHT_SPACING = "firing.light-spacing", "Odd-fire engine, fired evenly";
    LIGHT_SCATTERED = "firing.light-scattered", "Each out by a different angle";
    // why
    LIGHT_RIGHT_WHY = "firing.light-right-why",
        "All agree with the advance set, within {error} on average. The mark comes round every turn, so it can't tell the stroke.";
    LIGHT_RIGHT_ALONE_WHY = "firing.light-right-alone-why",
        "All agree with the advance set, within {error} on average.";
    LIGHT_TURN_WHY = "firing.light-turn-why",
        "The mark is right, but the spark falls in the exhaust stroke: the controller knows the angle but not the turn.";
    LIGHT_LATE_WHY = "firing.light-late-why", "All {n} are late by the same {error}: one cause, and not the leads.";
    LIGHT_EARLY_WHY = "firing.light-early-why", "All {n} are early by the same {error}: one cause, and not the leads.";
    LIGHT_MIXED_WHY = "firing.light-mixed-why", "By the angles, {list}. The mark can't tell companions apart.";
    LIGHT_SPACING_WHY = "firing.light-spacing-why",
        "Swapped leads can't do this; even spacing in the controller on an odd-fire engine does.";
    LIGHT_SCATTERED_WHY = "firing.light-scattered-why",
        "Swapped leads can't do this, nor can one offset: readings agree to within {tolerance} at best.";
    // what to do
    LIGHT_DO_THUMB = "firing.light-do-thumb",
        "Prove the stroke once: fuel off, spark plug out, its lead on a grounded spark tester well away, a cork on the hole (no thumb). Crank: the cork must pop just before the spark. Then say so in the field.";
    LIGHT_DO_TURN = "firing.light-do-turn",
        "If it is the exhaust stroke: move the cam reference by 360° in the controller (or swap its two halves of the cycle) and leave the leads.";
    LIGHT_DO_SIGN = "firing.light-do-sign",
        "The error is twice the offset entered: enter the offset with the other sign, then read again. The whole {error} must be gone.";
    LIGHT_DO_EDGE = "firing.light-do-edge",
        "{error} is half a position of the wheel: set the other edge, or swap the two wires of an inductive sensor. Then read again.";
    LIGHT_DO_TEETH_LATE = "firing.light-do-teeth-late",
        "It is {n} {n|position|positions} of the wheel late: make the offset earlier by that, or count the first tooth after the gap again.";
    LIGHT_DO_TEETH_EARLY = "firing.light-do-teeth-early",
        "It is {n} {n|position|positions} of the wheel early: make the offset later by that, or count the first tooth after the gap again.";
    LIGHT_DO_REFERENCE = "firing.light-do-reference",
        "It is the angle from {first} to {other}: the offset was measured at TDC of {other}. Move it {error}, then read again.";
    LIGHT_DO_EARLIER = "firing.light-do-earlier",
        "Change the offset so that everything comes {error} earlier; read again at two speeds: an error that grows with speed is a delay, not an offset.";
    LIGHT_DO_LATER = "firing.light-do-later",
        "Change the offset so that everything comes {error} later; read again at two speeds: an error that grows with speed is a delay, not an offset.";
    LIGHT_DO_TAPS = "firing.light-do-taps",
        "Fire each channel alone, as above: it tells companions apart, and gives the fix.";
    LIGHT_DO_AGAIN = "firing.light-do-again",
        "Read each once more at a steady speed with the timing locked: hunting idle, or a dwell that isn't finished, moves the flash.";
    LIGHT_FIRED_EVENLY = "firing.light-fired-evenly",
        "Enter the engine's angles in the controller, in firing order: {angles}. Then read again.";
    LIGHT_ALTERNATING = "firing.light-alternating",
        "Every second one in the order is out by {more} against the others: measure each TDC with a degree wheel, and enter those angles here and in the controller.";
    LIGHT_DO_ANGLES = "firing.light-do-angles",
        "If it stays: the firing angles of an odd-fire engine, or a wheel that runs out of true.";
    LIGHT_CAUTION = "firing.light-caution",
        "Belts, fans and the starter take hands and cables: keep clear; nothing loose, in neutral; fuel off while cranking.";
    // table
    LIGHT_TABLE = "firing.light-table", "Each reading against the advance set";
    LIGHT_COL_SEEN = "firing.light-col-seen", "Seen";
    LIGHT_COL_STANDS = "firing.light-col-stands", "Result";
    LIGHT_CELL_RIGHT = "firing.light-cell-right", "right";
    LIGHT_CELL_LATE = "firing.light-cell-late", "late";
    LIGHT_CELL_EARLY = "firing.light-cell-early", "early";
    // findings
    LIGHT_ALL_LATE = "firing.light-all-late", "By the timing light every spark comes {error} late.";
    LIGHT_ALL_EARLY = "firing.light-all-early", "By the timing light every spark comes {error} early.";
    LIGHT_TURNED = "firing.light-turned", "By the timing light every spark falls in the exhaust stroke.";
    LIGHT_LEADS = "firing.light-leads", "By the timing light the sparks of other cylinders reach {cylinders}.";
    LIGHT_SPACED = "firing.light-spaced",
        "By the timing light an odd-fire engine is fired at even intervals.";
    LIGHT_UNEVEN = "firing.light-uneven", "By the timing light the cylinders are out by unlike angles.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: LIGHT_ALL_LATE.code,
        // All readings are late by the same.
        why: "Late sparks burn into the exhaust: no power, hot valves.",
        act: "Fix what fits first, then read again: the right fix removes the whole error.",
        source: "geometry of wheel and firing order",
    },
    Explanation {
        code: LIGHT_ALL_EARLY.code,
        // All readings are early by the same.
        why: "Early sparks kick back while cranking, and detonate under load.",
        act: "Don't start it like this. Fix what fits first, then read again.",
        source: "geometry of wheel and firing order",
    },
    Explanation {
        code: LIGHT_TURNED.code,
        // The mark is right and the spark falls into the exhaust stroke.
        why: "The mixture that comes in next may be lit by a spark in the overlap, and the cylinder never fires.",
        act: "Move the cam reference by a turn. Injection moves with it.",
        source: "geometry of the four-stroke cycle",
    },
    Explanation {
        code: LIGHT_LEADS.code,
        // The readings differ by angles between firings.
        why: "A spark meant for another cylinder falls in a live stroke: backfire or kick-back.",
        act: "Fire each channel alone, and move the leads or enter the order that follows.",
        source: "geometry of the firing order",
    },
    Explanation {
        code: LIGHT_SPACED.code,
        // The readings differ as the engine's angles do from even ones, or every second one differs by the same.
        why: "Every second spark comes too early or too late by the difference: detonation, or no power and hot valves.",
        act: "Enter the engine's own angles. A controller that only fires evenly doesn't suit it with a spark of its own for each.",
        source: "geometry of the firing order",
    },
    Explanation {
        code: LIGHT_UNEVEN.code,
        // The readings differ by what no exchange explains.
        why: "Either the readings are off, or the angles in the controller are not those of the engine.",
        act: "Read again at a steady speed; then check the firing angles and the wheel's run-out.",
        source: "elimination; common practice, no source",
    },
    Explanation {
        code: LIGHT_STRAY.code,
        // A reading stands for a cylinder that there isn't.
        why: "There is nothing to compare it with.",
        act: "Clear it, or correct the number of cylinders.",
        source: "count of cylinders",
    },
];
