//! The sentences of the question of injectors that are about fuel.

use crate::words::{Explanation, sentences};

sentences! {
    TITLE = "fuel.title", "What power do they feed?";
    // verdicts
    BLANK = "fuel.blank", "Needs: the flow of one injector";
    WANTS_FLOW = "fuel.wants-flow", "Not answered yet: what does one injector flow?";
    UNREADABLE = "fuel.unreadable", "Not answered yet: the flow can't be read";
    WANTED = "fuel.wanted", "Each must flow {flow} or more";
    COUNT_UNKNOWN = "fuel.count-unknown", "One feeds {feeds}: how many are there?";
    FEEDS = "fuel.feeds", "They feed at least {feeds}";
    ENOUGH = "fuel.enough", "Enough for {power}: duty {duty} at most";
    ENOUGH_BUT_SPEED = "fuel.enough-but-speed", "Enough for {power}, dead time not counted";
    BARELY = "fuel.barely", "May not be enough: only sure of {feeds}";
    TOO_SMALL = "fuel.too-small", "Too small: only sure of {feeds}";
    TOO_SLOW = "fuel.too-slow", "Run out above {speed}: the dead time takes too much";
    STOPPED = "fuel.stopped", "May get no fuel at full boost";
    // why
    WHY = "fuel.why",
        "{sets}, stated at {stated}, feed {least} to {most} with {fuel} at {drop}; {power} takes {duty} duty, up to {most_duty}, where about {limit} is the limit.";
    WHY_FEEDS = "fuel.why-feeds", "{sets}, stated at {stated}, feed {least} to {most} with {fuel} at {drop}.";
    // what to do
    DO_FLOW = "fuel.do-flow", "Look up what one injector flows when held open, and at which pressure.";
    DO_COUNT = "fuel.do-count", "Type the number of injectors above, or cylinders and firing order under “Firing”.";
    DO_POWER = "fuel.do-power", "Type the target power, to see whether they are enough.";
    DO_SPEED = "fuel.do-speed",
        "Type the highest speed under “Firing”: until then the dead time is not counted.";
    DO_PROVE = "fuel.do-prove",
        "Prove it under load: a fuel pressure gauge that must not fall, and a wideband probe in the exhaust. Whether the pump \
         keeps up is not answered here.";
    DO_HOSE = "fuel.do-hose",
        "Fit a manifold-referenced regulator, or a fuel pressure far above boost.";
    CURE_SEQUENCE = "fuel.cure-sequence",
        "Give each injector a channel of its own and pulse it once a cycle: that is enough.";
    CURE_PRESSURE = "fuel.cure-pressure",
        "Set the fuel pressure to {rail}, if pump, hoses and the injectors' data allow it: the dead time grows with it.";
    CURE_DEAD_TIME = "fuel.cure-dead-time",
        "Pulse each injector once a cycle instead: that leaves twice the time.";
    FIND_DEAD_TIME = "fuel.find-dead-time", "Find the dead time in the injector's data, and type it.";
    CURE_LARGER = "fuel.cure-larger", "Fit injectors of {flow} or more each, stated at {stated}.";
    CURE_LARGER_SETS = "fuel.cure-larger-sets",
        "Fit injectors of {times} times the flow in both sets: {flow} or more each in the first, stated at {stated}.";
    DO_COUNT_SECOND = "fuel.do-count-second",
        "The second set is left out: type one of its fields, and how many it has.";
    CURE_LESS = "fuel.cure-less", "Or settle for {feeds}.";
    NO_PRESSURE = "fuel.no-pressure",
        "More pressure won't do it: it would take {rail}, more than {most} above what their data hold for.";
    NO_TIME = "fuel.no-time", "No pressure and no injector will do it: the dead time leaves no time to inject.";
    // cautions
    CAUTION_LEAN = "fuel.caution-lean",
        "An engine that runs lean at high load can hole a piston within seconds. Go up to full load in steps, lift at the first sign of lean, and leave the last of it to a professional tuner.";
    CAUTION_PRESSURE = "fuel.caution-pressure",
        "Fuel under pressure sprays and burns: disconnect the battery and let off the pressure before you open a joint; hoses and clips made for the new pressure.";
    // numbers
    FEEDS_AT_SPEED = "fuel.feeds-at-speed", "Power at the highest speed, within the duty limit";
    FEEDS_WITHOUT_SPEED = "fuel.feeds-without-speed", "Power within the duty limit, dead time not counted";
    DUTY = "fuel.duty", "Duty at the target power";
    DROP = "fuel.drop", "Pressure across an injector at full load";
    RAIL_AT_BOOST = "fuel.rail-at-boost", "Pressure that pump and rail must hold at full boost";
    WINDOW = "fuel.window", "Time from one pulse to the next at the highest speed";
    DEAD_SHARE = "fuel.dead-share", "Share of it lost to dead time";
    REACHES = "fuel.reaches", "Speed up to which they feed the target power";
    MORE_PRESSURE = "fuel.more-pressure", "Fuel pressure that would do";
    LARGER = "fuel.larger", "Flow of one injector that would do, as stated";
    TABLE = "fuel.table", "Flow of one injector, held open: as stated with the test fluid, and with your fuel";
    COLUMN_WHEN = "fuel.column-when", "One injector";
    COLUMN_PRESSURE = "fuel.column-pressure", "Pressure across it";
    COLUMN_VOLUME = "fuel.column-volume", "By volume";
    COLUMN_POUNDS = "fuel.column-pounds", "By mass";
    COLUMN_GRAMS = "fuel.column-grams", "In grams";
    // findings
    RUNS_LEAN = "fuel.runs-lean",
        "{power} would take {duty} duty, up to {most_duty}, where {limit} is the limit: above {feeds} the engine may run lean.";
    MAY_RUN_LEAN = "fuel.may-run-lean",
        "{power} may take {most_duty} duty, where {limit} is the limit: they are only sure to feed {feeds}.";
    BOOST_STOPS_FUEL = "fuel.boost-stops-fuel",
        "At a boost of {boost} against a fuel pressure of {rail} that does not follow it, no fuel flows: lean at full load.";
    BOOST_TAKES = "fuel.boost-takes",
        "Boost of {boost} works against the fuel: {drop} is left across an injector. A manifold-referenced regulator would keep all of it.";
    DEAD_TIME_HEAVY = "fuel.dead-time-heavy",
        "At {speed} the dead time takes {share} of the time from pulse to pulse ({z} {z|turn|turns}): a small error in it is \
         a large one in fuel.";
    PRESSURE_BEYOND = "fuel.pressure-beyond",
        "{drop} across the injector is far from the {stated} at which its flow is stated. Look up its flow and dead time at \
         that pressure.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: RUNS_LEAN.code,
        // As meant, the power wanted asks for more of the time than the duty limit.
        why: "Injectors that are always open give no more fuel while the air goes on rising: lean at full load, which can hole a piston.",
        act: "Larger injectors, a second set, more pressure within their data, or less power. Have the map made by a professional tuner.",
        source: "definition of specific fuel consumption; the duty limit is common practice, no source",
    },
    Explanation {
        code: MAY_RUN_LEAN.code,
        // Only with tolerances at their lean ends does the power wanted ask for more of the time than the duty limit.
        why: "What an engine burns and what an injector flows are known to a tenth at best; the lean end is the one that breaks pistons.",
        act: "Measure what is assumed, or use the larger injector.",
        source: "definition of specific fuel consumption; the bands are common practice, no source",
    },
    Explanation {
        code: BOOST_STOPS_FUEL.code,
        // The regulator does not follow the manifold, and boost may reach the fuel pressure.
        why: "Fuel flows by the difference of pressures: with none left, the engine gets air alone.",
        act: "Fit a manifold-referenced regulator.",
        source: "orifice equation",
    },
    Explanation {
        code: BOOST_TAKES.code,
        // The regulator does not follow the manifold, and there is boost.
        why: "The flow falls as boost rises, just where more is needed; the controller must allow for it.",
        act: "A manifold-referenced regulator, or the loss counted in the controller's map; it is counted here.",
        source: "orifice equation",
    },
    Explanation {
        code: DEAD_TIME_HEAVY.code,
        // At the highest speed the dead time may take more than fifteen percent of the time between two pulses.
        why: "The dead time changes with battery voltage and pressure, and what it takes is missing from the fuel.",
        act: "Enter the dead time against voltage with care.",
        source: "common practice, no source: fifteen percent",
    },
    Explanation {
        code: PRESSURE_BEYOND.code,
        // Pressure across the injector is more than half above or a third below the one at which its flow is stated.
        why: "The square root holds while the valve opens as it should; far from the stated pressure it may open late or not at all.",
        act: "The maker's flow and dead time at the pressure of this car.",
        source: "common practice, no source: half as much again",
    },
];
