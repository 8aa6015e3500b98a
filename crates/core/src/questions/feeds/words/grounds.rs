//! The sentences about what comes back.

use crate::words::{Explanation, sentences};

sentences! {
    STRAP_TITLE = "feeds.strap-title", "Engine strap";
    GROUND_TITLE = "feeds.ground-title", "Controller's ground";
    SENSORS_TITLE = "feeds.sensors-title", "Sensor ground";
    // verdicts
    STRAP_OPEN = "feeds.strap-open", "Needs: the strap's size and length";
    STRAP_OPEN_SIZE = "feeds.strap-open-size", "Needs: the strap's size";
    STRAP_OPEN_LENGTH = "feeds.strap-open-length", "Needs: the strap's length";
    STRAP_OPEN_FITTED = "feeds.strap-open-fitted", "Needs: whether engine and body are joined by a strap";
    STRAP_OPEN_MINUS = "feeds.strap-open-minus", "Needs: where the battery's minus cable goes";
    STRAP_OPEN_STARTER = "feeds.strap-open-starter", "Needs: what the starter draws";
    STRAP_GOOD = "feeds.strap-good", "Engine and body are joined";
    STRAP_GOOD_DROP = "feeds.strap-good-drop", "The strap takes {drop} while cranking";
    STRAP_NONE = "feeds.strap-none", "Nothing joins engine and body";
    STRAP_THIN = "feeds.strap-thin", "The strap takes {drop} while cranking: too much";
    STRAP_BURNS = "feeds.strap-burns", "The strap gets too hot while cranking";
    STRAP_NEAR = "feeds.strap-near", "The strap may get too hot";
    GROUND_OPEN = "feeds.ground-open", "Needs: how many ground wires, their size and length";
    GROUND_OPEN_LOADS = "feeds.ground-open-loads", "Needs: what its outputs switch";
    GROUND_GOOD = "feeds.ground-good", "The controller's ground wires suit";
    GROUND_BAD = "feeds.ground-bad", "The controller's ground wires get too hot";
    GROUND_NEAR = "feeds.ground-near", "The controller's ground rises by {rise}";
    GROUND_NEAR_HOT = "feeds.ground-near-hot", "The controller's ground wires may get too hot";
    SENSORS_GOOD = "feeds.sensors-good", "Nothing shares the sensors' ground";
    SENSORS_SMALL = "feeds.sensors-small", "Sensors are out by {offset} at most";
    SENSORS_OPEN = "feeds.sensors-open", "Needs: which relay's feed is grounded at that bolt";
    SENSORS_OPEN_DRAWS = "feeds.sensors-open-draws", "Needs: what {feed} draws";
    SENSORS_OPEN_WIRES = "feeds.sensors-open-wires", "Needs: the controller's ground wires";
    SENSORS_OUT = "feeds.sensors-out", "Each sensor reads wrong by up to {offset}";
    // why
    STRAP_WHY = "feeds.strap-why", "What pump, fan, lamps and heaters draw, up to {current}, comes back through it.";
    STRAP_WHY_STARTER = "feeds.strap-why-starter", "The starter's {current} come back through it.";
    GROUND_WHY = "feeds.ground-why", "Up to {sinks} come back through {count} {count|wire|wires} of {size}: {rise}.";
    SENSORS_WHY = "feeds.sensors-why", "Up to {current} flow over the sensors' bolt.";
    SENSORS_WHY_RISE = "feeds.sensors-why-rise", "The controller's ground wires lift its ground from the block.";
    // what to do
    DO_STRAP = "feeds.do-strap", "Fit a strap between engine and body, as thick as the battery cable.";
    DO_STRAP_SIZE = "feeds.do-strap-size", "Fit a strap of {size} between engine and body.";
    DO_STRAP_SHORTER = "feeds.do-strap-shorter", "Fit a shorter strap, or two side by side.";
    DO_GROUND_WIRES = "feeds.do-ground-wires", "Ground the controller with {count} such wires, to one point.";
    DO_GROUND_SIZE = "feeds.do-ground-size", "Fit ground wires of {size} or more at the controller.";
    DO_GROUND_BOTH = "feeds.do-ground-both", "Ground the controller with {count} wires of {size}, to one point.";
    DO_GROUND_SHORTER = "feeds.do-ground-shorter", "Shorten the controller's ground wires, or move some loads off it.";
    DO_SENSORS_PIN = "feeds.do-sensors-pin", "Ground the sensors at the controller's sensor ground alone.";
    DO_OWN_BOLT = "feeds.do-own-bolt", "Ground what {feed} feeds at a bolt of its own.";
    // figures
    FIGURE_STRAP = "feeds.figure-strap", "Lost in the strap while cranking";
    FIGURE_RISE = "feeds.figure-rise", "Rise of the controller's ground";
    FIGURE_OFFSET = "feeds.figure-offset", "Offset of the sensors' ground";
    // findings
    NO_STRAP = "feeds.no-strap",
        "The battery's minus is on the body and nothing joins it to the engine: the starter's current comes back through the controller's ground wires, cables and shields: fire.";
    NO_STRAP_BACK = "feeds.no-strap-back",
        "Nothing joins engine and body: what is grounded to the body comes back to the battery through the controller's ground wires and shields.";
    STRAP_HOT = "feeds.strap-hot",
        "The starter's {current} make a strap of {size} too hot within ten seconds: it burns what lies beside it.";
    STRAP_WARM = "feeds.strap-warm",
        "The starter's {current} may make a strap of {size} too hot within ten seconds.";
    STRAP_DROPS = "feeds.strap-drops",
        "The strap between engine and body loses {drop} while cranking: the starter turns slower, or not at all.";
    STRAP_CARRIES = "feeds.strap-carries",
        "What is usually grounded to the body draws {current}, and a strap of {size} carries {carries}.";
    GROUND_HOT = "feeds.ground-hot",
        "Up to {sinks} come back through the controller's ground: {each} in each wire, and {size} carries {carries}.";
    GROUND_RISES = "feeds.ground-rises",
        "Up to {sinks} lift the controller's ground by {rise} above the engine's; more than {most} is too much: sensors that are grounded elsewhere read wrong.";
    SENSORS_OFFSET = "feeds.sensors-offset",
        "Up to {current} over the bolt of the sensors move each of their signals by {offset}, {part} of 5 V.";
    SENSORS_BLOCK = "feeds.sensors-block",
        "The sensors are grounded at the block, and the controller's ground is up to {offset} above it: each signal reads {part} of 5 V low.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: NO_STRAP.code,
        // The minus is said to be on the body, and the strap to be none.
        why: "Hundreds of amperes take every other way there is: a ground wire of the controller, a throttle cable, a shield. Those glow in seconds.",
        act: "A strap as thick as the battery cable, from bare metal to bare metal.",
        source: "Ohm's law; common practice, no source",
    },
    Explanation {
        code: NO_STRAP_BACK.code,
        // The minus is said to be on the engine, and the strap to be none.
        why: "Lamps, pump and fan find their way back through the harness: they get less, sensors read wrong, and thin wires get hot.",
        act: "A strap between engine and body, or each of them grounded at the engine.",
        source: "Ohm's law; common practice, no source",
    },
    Explanation {
        code: STRAP_HOT.code,
        // The starter's current brings a wire of that size beyond the overload of its class in ten seconds.
        why: "A strap that is a thin wire is a fuse that nobody meant.",
        act: "A strap as thick as the battery cable.",
        source: "classes of insulation by ISO 6722-1 and a short by IEC 60364-4-43, from memory; ten seconds at a time: common practice, no source",
    },
    Explanation {
        code: STRAP_WARM.code,
        // The starter's current brings a wire of that size beyond the overload of its class in ten seconds.
        why: "A strap that is a thin wire is a fuse that nobody meant.",
        act: "A strap as thick as the battery cable.",
        source: "classes of insulation by ISO 6722-1 and a short by IEC 60364-4-43, from memory; ten seconds at a time: common practice, no source",
    },
    Explanation {
        code: STRAP_DROPS.code,
        // More is lost in it than in the cable, and both together lose too much; or half of that where no cable is known.
        why: "The starter's current flows through the strap too: what it takes there is missing at the starter.",
        act: "A thicker strap, shorter, from bare metal to bare metal.",
        source: "0.8 V out and back: common practice, no source",
    },
    Explanation {
        code: STRAP_CARRIES.code,
        // What pump, fan, lamps and heaters draw against what a wire of that size carries, the minus on the engine.
        why: "All that is grounded to the body comes back through the strap for as long as it is on.",
        act: "A thicker strap.",
        source: "thin-wall wire from a distributor's table; what is grounded to the body: common practice, no source",
    },
    Explanation {
        code: GROUND_HOT.code,
        // What low-side outputs sink, all at once, by the number of wires, against what a wire of that size carries.
        why: "What a low-side output switches comes back through the controller's ground pins: all of it, and no fuse is there.",
        act: "As many ground wires as the controller has pins for, each as thick as the pin takes.",
        source: "thin-wall wire from a distributor's table; classes of insulation by ISO 6722-1, from memory",
    },
    Explanation {
        code: GROUND_RISES.code,
        // More than 0.1 V.
        why: "The controller measures from its own ground: what that is lifted by is missing from each signal that is grounded elsewhere, and comes and goes with the loads.",
        act: "More ground wires, thicker or shorter, all to one point at the engine.",
        source: "0.1 V: common practice, no source",
    },
    Explanation {
        code: SENSORS_OFFSET.code,
        // The current over the bolt times its resistance, as a share of 5 V: from 1 % a Check, and beyond 2 % of what is typed a Fault.
        why: "What flows over a bolt lifts it: all sensors that are grounded there are wrong by as much, and only while that is on.",
        act: "Sensors at the controller's sensor ground, nothing else with them.",
        source: "Ohm's law; a pump's 14 A over 20 mΩ are 0.28 V; 1 and 2% of 5 V: common practice, no source",
    },
    Explanation {
        code: SENSORS_BLOCK.code,
        // The rise of the controller's ground as a share of 5 V, where it is not told by itself.
        why: "The controller measures from its own ground, which its loads lift above the block.",
        act: "Sensors at the controller's sensor ground, nothing else with them.",
        source: "Ohm's law; 1% of 5 V: common practice, no source",
    },
];
