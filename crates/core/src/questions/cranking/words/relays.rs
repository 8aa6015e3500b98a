//! The sentences of starts that go otherwise and of the further relays.

use crate::words::{Explanation, sentences};

sentences! {
    // figures and tables
    FIGURE_BOUNDS = "cranking.figure-bounds", "Limited by";
    FIGURE_BEST = "cranking.figure-best", "Middle of the band";
    FIGURE_RELEASES = "cranking.figure-releases", "Releases that work with {threshold}";
    FIGURE_DIP = "cranking.figure-dip", "Dip at each compression, from this engine";
    FIGURE_PRIME = "cranking.figure-prime", "Pump never pauses if you crank within";
    OTHERWISE = "cranking.otherwise", "Starts that go wrong, worst case";
    COLUMN_OTHERWISE = "cranking.column-otherwise", "What happens";
    COLUMN_POWERED = "cranking.column-powered", "Power while stopped or turning back";
    CAUTION_SPARK = "cranking.caution-spark",
        "Some coils spark once at power-up, wherever the engine is. Find out before there is fuel, and choose it: “Coils at power-up”.";
    // findings of the first relay
    SLOW_FIRST_TURN = "cranking.slow-first-turn",
        "If the starter needs a whole turn to reach its speed, the relay drops out again up to {openings} {openings|time|times} on the way.";
    KICK_BACK = "cranking.kick-back",
        "If it kicks back by {back}, the sensor counts up to {teeth} teeth too many and reads up to {speed} backwards; power is on for {powered} of that. A spark then drives it back.";
    STICKS = "cranking.sticks",
        "If the starter sticks for {stands} in mid-crank, power stays on for {powered}; then it all starts again, with lasting power after {power}.";
    FALSE_EDGES = "cranking.false-edges",
        "While the engine rocks, {edges} false {edges|edge|edges in a row} between teeth {edges|reads|read} as {threshold} and {edges|pulls|pull} the relay in; above {above} no number of them does. A burst of {burst} can look like any speed.";
    FILTER_EDGES = "cranking.filter-edges", "Ask for more readings in a row, or average over more teeth.";
    SPARK_IN_COMPRESSION = "cranking.spark-in-compression",
        "The coils spark once as the relay pulls in, at any angle: in {share} of {starts} simulated starts a cylinder is then on compression. That spark can make the engine kick back.";
    SPARK_AT_POWER = "cranking.spark-at-power",
        "The coils spark once at power-up, wherever the engine then is: on a compression that spark can make it kick back.";
    OTHER_IGNITER = "cranking.other-igniter",
        "Use igniters that stay quiet at power-up. A higher threshold is no fix: the angle stays arbitrary.";
    POWER_BEFORE = "cranking.power-before",
        "Or power the coils before cranking, with the igniters' inputs held off, the engine at a standstill and no fuel in it.";
    // further relays
    RELAY_TITLE = "cranking.relay-title", "{name}";
    RELAY_WANTS_PURPOSE = "cranking.relay-wants-purpose", "Choose what it feeds: each use has its own rules.";
    RELAY_WANTS_THRESHOLD = "cranking.relay-wants-threshold", "Type its threshold.";
    DO_PUMP = "cranking.do-pump", "Stall the engine on purpose, in the open: the pump must stop with it.";
    PUMP_SUITS = "cranking.pump-suits", "{threshold} works: the pump stops soon after the engine";
    PUMP_NO_CUT = "cranking.pump-no-cut", "{threshold} works; after a crash nothing else stops it";
    PUMP_SUITS_WHY = "cranking.pump-suits-why",
        "At the latest it runs {power} after the starter begins to turn, and stops {off} after the engine dies, {on} of that at standstill.";
    PUMP_RUNS_ON = "cranking.pump-runs-on", "The pump runs on for {on} after a stall";
    PUMP_RUNS_ON_WHY = "cranking.pump-runs-on-why",
        "No reading falls below {release} before the engine has stopped; only the stall time-out of {timeout} stops it. A torn line is then fed for {on}.";
    PUMP_ON_AFTER_STOP = "cranking.pump-on-after-stop",
        "{name}: the pump runs on for {on} after the engine has stopped. After a crash it feeds a torn line.";
    PUMP_UNCUT = "cranking.pump-uncut",
        "{name}: nothing but the controller stops the pump. A relay that sticks, or an engine that turns on, feeds a torn line.";
    KEY_PUMP_RUNS_ON = "cranking.key-pump-runs-on", "The key keeps the pump running after a stall or a crash";
    KEY_PUMP_CUT = "cranking.key-pump-cut", "On with the key; a switch in its feed stops it";
    KEY_PUMP_WHY = "cranking.key-pump-why", "No speed decides: it runs as long as the key is on, whether the engine turns or not.";
    PUMP_ON_WITH_KEY = "cranking.pump-on-with-key",
        "{name}: the pump runs as long as the key is on, the engine stopped or not. After a crash it feeds a torn line.";
    PUMP_BY_CONTROLLER = "cranking.pump-by-controller",
        "Let the controller switch its relay, at an engine speed: it stops when the engine does.";
    RAISE_RELEASE = "cranking.raise-release",
        "Set its release to {release}: simulated, the pump then stops in time.";
    FIT_CUT = "cranking.fit-cut",
        "Put an inertia switch, or an oil-pressure switch with a start bypass, in the pump's feed (common practice; the rules of your sport and the maker's data decide).";
    RUNNING_SUITS = "cranking.running-suits", "{threshold} works: out while cranking, on at idle";
    RUNNING_EARLY = "cranking.running-early", "{threshold} switches it on while cranking";
    RUNNING_HOLDS = "cranking.running-holds", "It would stay in while the starter turns";
    RUNNING_LATE = "cranking.running-late", "{threshold} leaves it off at idle";
    RUNNING_WHY = "cranking.running-why",
        "While the starter turns the readings reach {crest} ({at}); the release is {release}, idle {idle}.";
    RUNNING_ANY_WHY = "cranking.running-any-why",
        "Above the {crest} that cranking reads, up to the idle of {idle}.";
    RUNNING_NONE_WHY = "cranking.running-none-why",
        "Cranking reads up to {crest}, which is not below the idle of {idle}.";
    RELAY_WHILE_CRANKING = "cranking.relay-while-cranking",
        "{name}: cranking reads up to {crest} ({at}), so it is on while the starter turns.";
    RELAY_HOLDS_WHILE_CRANKING = "cranking.relay-holds-while-cranking",
        "{name}: its release is not above the {crest} that cranking reads: once on, it stays on while the starter turns.";
    RELAY_NOT_AT_IDLE = "cranking.relay-not-at-idle", "{name}: its threshold is above the idle of {idle}.";
    SET_RUNNING = "cranking.set-running", "Set threshold {threshold} and release {release}.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: SLOW_FIRST_TURN.code,
        // The usual start keeps the relay closed; one that takes a turn to reach its speed does not.
        why: "Cold oil makes the first turn slow: the contact opens at coil current just then.",
        act: "Lower the release, or ask for more readings in a row.",
        source: "simulation of a start that needs one turn to reach its speed",
    },
    Explanation {
        code: KICK_BACK.code,
        // The angle of a kick-back was typed.
        why: "Most sensors can't tell backwards from forwards: position is lost, and a spark now makes it worse. Starters and wrists break.",
        act: "Let the controller check the gap before every spark while cranking, and retard the cranking advance.",
        source: "simulation: thrown back as fast as it came, slowed evenly (an assumption, no source)",
    },
    Explanation {
        code: STICKS.code,
        // The time for which a starter sticks was typed.
        why: "Coils keep power on a stopped engine until the time-out, and a start begins twice.",
        act: "Repair the starter or its cables; keep the stall time-out short.",
        source: "simulation of a start that stops after one turn",
    },
    Explanation {
        code: FALSE_EDGES.code,
        // At the speed of a rocking engine, edges midway between teeth read as the threshold.
        why: "Starter and coils disturb the sensor's wire: power can come on at standstill.",
        act: "Raise the threshold, ask for more readings in a row, or twist and shield the sensor's wires.",
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
        // No reading falls below the pump’s release before the engine has stopped.
        why: "Fire risk: a pump that runs on after its engine empties the tank through a torn line.",
        act: "Raise the release, shorten the stall time-out, and fit a switch that works without the controller.",
        source: "simulation of an engine that dies from idle; the switch: common practice, no source",
    },
    Explanation {
        code: PUMP_ON_WITH_KEY.code,
        // The key switches the pump's relay, and nothing is said to cut it.
        why: "Fire risk: the key stays on in a crash, and the pump empties the tank through a torn line.",
        act: "Let the controller switch it at an engine speed, and fit a switch that works without the controller.",
        source: "common practice, no source",
    },
    Explanation {
        code: PUMP_UNCUT.code,
        // It was chosen that nothing else stops the pump.
        why: "Contacts weld and wires chafe: the relay alone is no safety device.",
        act: "Fit an inertia switch or an oil-pressure switch in the pump's feed.",
        source: "common practice, no source",
    },
    Explanation {
        code: RELAY_WHILE_CRANKING.code,
        // The threshold is not above the fastest reading while cranking.
        why: "An excited alternator brakes the starter, and a fan takes the battery's last volts.",
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
        why: "The battery isn't charged, or nothing is cooled, until somebody revs the engine.",
        act: "Lower the threshold below the idle.",
        source: "common practice, no source",
    },
];
