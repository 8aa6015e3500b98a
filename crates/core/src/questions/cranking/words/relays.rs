//! The sentences of starts that go otherwise and of the further relays.

use crate::words::{Explanation, sentences};

sentences! {
    // figures and tables
    FIGURE_BOUNDS = "cranking.figure-bounds", "What bounds them";
    FIGURE_BEST = "cranking.figure-best", "Best to enter";
    FIGURE_RELEASES = "cranking.figure-releases", "Releases that work with {threshold}";
    FIGURE_DIP = "cranking.figure-dip", "Dip at each compression, from this engine";
    FIGURE_PRIME = "cranking.figure-prime", "No gap where the starter turns within, from key-on";
    OTHERWISE = "cranking.otherwise", "Starts that go otherwise, at the worst corner";
    COLUMN_OTHERWISE = "cranking.column-otherwise", "What happens";
    COLUMN_POWERED = "cranking.column-powered", "Power while it stands or turns back";
    CAUTION_SPARK = "cranking.caution-spark",
        "Some coils spark once as power arrives, wherever the engine stands. Find out before there is fuel, and choose it below.";
    // findings of the first relay
    SLOW_FIRST_TURN = "cranking.slow-first-turn",
        "If the starter needs a whole turn to reach its speed, the relay opens again up to {openings} {openings|time|times} on the way.";
    KICK_BACK = "cranking.kick-back",
        "Thrown back by {back}, the sensor counts up to {teeth} teeth too many and reads up to {speed} backwards; power is on for {powered} of that. A spark then drives it back.";
    STICKS = "cranking.sticks",
        "A starter that stands for {stands} in mid-crank leaves power on for {powered}; then it all begins anew, with power for good after {power}.";
    FALSE_EDGES = "cranking.false-edges",
        "While the engine rocks, {edges} false {edges|edge|edges in a row} between teeth {edges|reads|read} as {threshold} and {edges|closes|close} the relay; above {above} no number of them does. A burst of {burst} passes for any speed.";
    FILTER_EDGES = "cranking.filter-edges", "Ask for more readings in a row, or average over more teeth.";
    SPARK_IN_COMPRESSION = "cranking.spark-in-compression",
        "The coils spark once as the relay closes, at any angle: in {share} of {starts} simulated starts a cylinder is then on compression. That spark can kick the engine back.";
    SPARK_AT_POWER = "cranking.spark-at-power",
        "The coils spark once as power arrives, wherever the engine then is: on a compression that spark can kick it back.";
    OTHER_IGNITER = "cranking.other-igniter",
        "Use igniters that stay quiet at power-up. A higher threshold is no cure: the angle stays arbitrary.";
    POWER_BEFORE = "cranking.power-before",
        "Or power the coils before cranking, with the igniters’ inputs held off, and the engine at rest with no fuel in it.";
    // further relays
    RELAY_TITLE = "cranking.relay-title", "{name}";
    RELAY_WANTS_PURPOSE = "cranking.relay-wants-purpose", "Choose what it feeds: each use has demands of its own.";
    RELAY_WANTS_THRESHOLD = "cranking.relay-wants-threshold", "Type the speed at which it is switched on.";
    DO_PUMP = "cranking.do-pump", "Stall the engine on purpose, in the open: the pump must stop when it stands.";
    PUMP_SUITS = "cranking.pump-suits", "{threshold} suits: the pump stops soon after the engine";
    PUMP_NO_CUT = "cranking.pump-no-cut", "{threshold} suits; after a crash nothing else stops it";
    PUMP_SUITS_WHY = "cranking.pump-suits-why",
        "It runs {power} after the starter begins to turn at the latest, and stops {off} after the engine dies at the latest, {on} of that at standstill.";
    PUMP_RUNS_ON = "cranking.pump-runs-on", "The pump runs on for {on} after a stall";
    PUMP_RUNS_ON_WHY = "cranking.pump-runs-on-why",
        "No reading falls below {release} before the engine stands; only the stall time-out of {timeout} stops it. A torn line is then fed for {on}.";
    PUMP_ON_AFTER_STOP = "cranking.pump-on-after-stop",
        "{name}: the pump runs on for {on} after the engine stands. After a crash it feeds a torn line.";
    PUMP_UNCUT = "cranking.pump-uncut",
        "{name}: nothing but the controller stops the pump. A relay that sticks, or an engine that turns on, feeds a torn line.";
    RAISE_RELEASE = "cranking.raise-release",
        "Switch it off below {release}: simulated, the pump then stops in time.";
    FIT_CUT = "cranking.fit-cut",
        "Put an inertia switch, or an oil-pressure switch with a start bypass, in the pump’s feed (common practice; the rules of your sport and the maker’s data decide).";
    RUNNING_SUITS = "cranking.running-suits", "{threshold} suits: out while cranking, on at idle";
    RUNNING_EARLY = "cranking.running-early", "{threshold} switches it on while cranking";
    RUNNING_HOLDS = "cranking.running-holds", "It would hold while the starter turns";
    RUNNING_LATE = "cranking.running-late", "{threshold} leaves it off at idle";
    RUNNING_WHY = "cranking.running-why",
        "While the starter turns the readings reach {crest} ({at}); off below {release}; idle is {idle}.";
    RUNNING_ANY_WHY = "cranking.running-any-why",
        "Above the {crest} that cranking reads, up to the idle of {idle}.";
    RUNNING_NONE_WHY = "cranking.running-none-why",
        "Cranking reads up to {crest}, which is not below the idle of {idle}.";
    RELAY_WHILE_CRANKING = "cranking.relay-while-cranking",
        "{name}: cranking reads up to {crest} ({at}), so it is on while the starter turns.";
    RELAY_HOLDS_WHILE_CRANKING = "cranking.relay-holds-while-cranking",
        "{name}: its release is not above the {crest} that cranking reads: once on, it stays on while the starter turns.";
    RELAY_NOT_AT_IDLE = "cranking.relay-not-at-idle", "{name}: it is switched on above the idle of {idle}.";
    SET_RUNNING = "cranking.set-running", "Switch on at {threshold} and off below {release}.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: SLOW_FIRST_TURN.code,
        // The usual start keeps the relay closed; one that takes a turn to reach its speed does not.
        why: "Cold oil makes the first turn slow: contacts open at coil current just then.",
        act: "Lower the release, or ask for more readings in a row.",
        source: "simulation of a start that needs one turn to reach its speed",
    },
    Explanation {
        code: KICK_BACK.code,
        // The angle of a kick-back was typed.
        why: "Most sensors can’t tell backwards from forwards: position is lost, and a spark now makes it worse. Starters and wrists break.",
        act: "Let the controller check the gap before every spark while cranking, and retard the cranking advance.",
        source: "simulation: thrown back as fast as it came, slowed evenly (an assumption, no source)",
    },
    Explanation {
        code: STICKS.code,
        // The time for which a starter sticks was typed.
        why: "Coils keep power on an engine that stands until the time-out, and a start begins twice.",
        act: "Mend the starter or its leads; keep the stall time-out short.",
        source: "simulation of a start that stops after one turn",
    },
    Explanation {
        code: FALSE_EDGES.code,
        // At the speed of a rocking engine, edges midway between teeth read as the threshold.
        why: "Starter and coils disturb the sensor’s wire: power can come at standstill.",
        act: "Raise the threshold, ask for more readings in a row, or twist and shield the sensor’s wires.",
        source: "an edge midway between two teeth doubles the speed read",
    },
    Explanation {
        code: SPARK_IN_COMPRESSION.code,
        // Coils that spark once at power-up, on a relay that closes while the engine turns.
        why: "A spark on compression drives the piston back: a broken starter, a hurt hand, or a backfire into the inlet.",
        act: "Use igniters that stay quiet, or give power before cranking with their inputs held off.",
        source: "simulation: the angle at which the contact closes, over all starts",
    },
    Explanation {
        code: SPARK_AT_POWER.code,
        // The same, where no threshold is known or the relay never closes.
        why: "A spark on compression drives the piston back: a broken starter, a hurt hand, or a backfire into the inlet.",
        act: "Use igniters that stay quiet, or give power before cranking with their inputs held off.",
        source: "the relay closes at an arbitrary crank angle",
    },
    Explanation {
        code: PUMP_ON_AFTER_STOP.code,
        // No reading falls below the pump’s release before the engine stands.
        why: "Fuel and fire: a pump that outlives its engine empties the tank through a torn line.",
        act: "Raise the release, shorten the stall time-out, and fit a switch that works without the controller.",
        source: "simulation of an engine that dies from idle; the switch: common practice, no source",
    },
    Explanation {
        code: PUMP_UNCUT.code,
        // It was chosen that nothing else stops the pump.
        why: "Contacts weld and wires chafe: the relay alone is no safety device.",
        act: "Fit an inertia switch or an oil-pressure switch in the pump’s feed.",
        source: "common practice, no source",
    },
    Explanation {
        code: RELAY_WHILE_CRANKING.code,
        // The threshold is not above the fastest reading while cranking.
        why: "An alternator that is excited brakes the starter, and a fan takes the battery’s last volts.",
        act: "Raise the threshold above what cranking reads.",
        source: "simulation of the start from what was typed",
    },
    Explanation {
        code: RELAY_HOLDS_WHILE_CRANKING.code,
        // The release is not above the fastest reading while cranking.
        why: "After a stall, with the starter held on, the load stays on the engine.",
        act: "Raise the release above what cranking reads.",
        source: "simulation of the start from what was typed",
    },
    Explanation {
        code: RELAY_NOT_AT_IDLE.code,
        // The threshold is above the speed from which the engine dies.
        why: "The battery isn’t charged, or nothing is cooled, until somebody revs the engine.",
        act: "Lower the threshold below the idle.",
        source: "common practice, no source",
    },
];
