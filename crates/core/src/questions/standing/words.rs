//! The sentences of the question of the standing car.

use crate::words::{Explanation, sentences};

sentences! {
    QUESTION = "standing.question", "How long does the battery last?";
    PENDING = "standing.pending", "One moment…";
    // verdicts
    BLANK = "standing.blank", "Needs: the battery's capacity";
    OPEN = "standing.open", "Needs: the battery's capacity";
    OPEN_MEND = "standing.open-mend", "Not answered yet: the capacity can't be read";
    LONG = "standing.long", "It lasts {time}";
    LONG_ALONE = "standing.long-alone", "It lasts {time}, if nothing else draws";
    SO_FAR = "standing.so-far", "{time} so far, but something is left out";
    SHORT = "standing.short", "It only lasts {time}";
    OVERNIGHT = "standing.overnight", "It may not start next morning: {time}";
    // why
    WHY = "standing.why",
        "With the key off the battery gives up to {most}, {month} a month, and loses up to {own} a month by itself; after {time} half of its {capacity} is gone. Below that it may not crank the engine, and is harmed.";
    WHY_DRAIN = "standing.why-drain", "With the key off the battery gives up to {most}, {month} a month.";
    // what to do
    DO_SWITCHED = "standing.do-switched",
        "The largest part flows through {output}: feed what is on it ({loads}) from the ignition switch (15) instead of permanent battery, and it lasts {time}.";
    DO_CONTROLLER = "standing.do-controller",
        "The largest part goes into the controller: let a relay that follows the key feed it, if its data allow that, and it lasts {time}.";
    DO_SEARCH = "standing.do-search",
        "The largest part is not in this plan: pull one fuse after the other until the reading falls. Without that part it lasts {time}.";
    DO_CUT_OFF = "standing.do-cut-off",
        "A cut-off switch at the battery, opened whenever the car is parked, stops all of it.";
    DO_LEFT_OUT = "standing.do-left-out", "Left out, since too little is known or it can't be read: {list}.";
    DO_MEASURE = "standing.do-measure",
        "Clock, alarm, radio and alternator are counted as 0 until you measure what else draws.";
    // cautions
    CAUTION_METER = "standing.caution-meter",
        "Measure with a fuse in series with the ammeter. Never crank, turn the key or switch anything on with the meter in line: it and its leads burn. No spark near a battery that was just charged: its gas explodes.";
    // figures and table
    FIGURE_DRAIN = "standing.figure-drain", "Current out of the battery, key off";
    FIGURE_TIME = "standing.figure-time", "Time until half the capacity is gone";
    TABLE = "standing.table", "What draws with the key off";
    COLUMN_WHAT = "standing.column-what", "What";
    COLUMN_MEANT = "standing.column-meant", "Nominal";
    COLUMN_MOST = "standing.column-most", "At most";
    ROW_CONTROLLER = "standing.row-controller", "The controller itself";
    ROW_OTHER = "standing.row-other", "Other draw";
    // findings
    FLAT_SOON = "standing.flat-soon",
        "With the key off the battery gives up to {most}: after {time} half of its {capacity} is gone, and it may not crank the engine.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[Explanation {
    code: FLAT_SOON.code,
    // Half the least capacity over the highest drain is less than a fortnight, without what the loads' own findings tell.
    why: "A car parked for a holiday must start after it; and a starter battery that is often emptied that far soon holds no charge.",
    act: "Find what draws most, and feed it by the key; or open a cut-off switch at the battery when the car is parked.",
    source: "half the capacity and a fortnight: common practice, no source",
}];
