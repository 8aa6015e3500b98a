//! The sentences about what was found at the car.

use crate::words::{Explanation, Sentence};

pub(in crate::words) const SENTENCES: &[Sentence] = &[
    ("channels.title-ignition-wired", "Ignition, as wired"),
    ("channels.title-injection-wired", "Injection, as wired"),
    ("channels.title-second-wired", "Second injectors, as wired"),
    (
        "channels.wired-unreadable",
        "Channel {channel}: “{typed}” is no cylinder. Type the number that was found there, for example {example}.",
    ),
    (
        "channels.wired-stray",
        "Channel {channel}: there is no cylinder {stray} among {cylinders}. Look again at the car.",
    ),
    (
        "channels.wired-again",
        "Channel {channel}: {target} was already found on channel {other}. One of the two is wrong: test both again.",
    ),
    (
        "channels.habits-by-cylinder",
        "Two habits are mixed: it is wired by cylinder, and the plan numbers by firing order.",
    ),
    (
        "channels.habits-by-order",
        "Two habits are mixed: it is wired by firing order, and the plan numbers by cylinder.",
    ),
    // verdicts
    ("channels.wired-none-usable", "Nothing typed here can be used"),
    ("channels.wired-right", "Wired right: all {n}"),
    ("channels.wired-hidden", "Runs like this, but not in sequence"),
    ("channels.wired-partly", "Right so far: {seen} of {all} seen"),
    ("channels.wired-setting", "All {n} out by the same: one setting"),
    ("channels.wired-wrong", "Wired wrong: {n} of {all}"),
    ("channels.wired-wrong-partly", "Wired wrong: {n} of the {seen} seen"),
    ("channels.wired-right-why", "Each of {n} is reached by the channel that the plan gives it."),
    ("channels.wired-together-why", "All injectors hang on the one channel that fires them."),
    ("channels.wired-partly-why", "A cure can be named only when all have been seen."),
    (
        "channels.look-coils",
        "Not seen yet: {cylinders}. Fire one channel at a time and note whose coil answers.",
    ),
    (
        "channels.look-injectors",
        "Not seen yet: {cylinders}. Fire one channel at a time and note whose injector clicks.",
    ),
    ("channels.look-towers", "Not seen yet: {cylinders}. Follow their leads from the cap."),
    // what goes wrong
    (
        "channels.spark-intake",
        "No. {cylinders}: a spark in the intake stroke, {error} from its own firing point. Backfire in the inlet, fire.",
    ),
    (
        "channels.spark-compression",
        "No. {cylinders}: a spark in the middle of compression, {error} from its own firing point. Kicks back while cranking.",
    ),
    (
        "channels.spark-early",
        "No. {cylinders}: a spark {error} from its own firing point, on top of the advance. Detonation, kick-back.",
    ),
    (
        "channels.spark-power",
        "No. {cylinders}: the spark comes {error} late, in the power stroke. No power, hot exhaust.",
    ),
    (
        "channels.spark-exhaust",
        "No. {cylinders}: the spark comes {error} late, in the exhaust stroke. Pops in the exhaust.",
    ),
    (
        "channels.spark-overlap",
        "No. {cylinders}: the spark comes a whole turn out, in the overlap. The cylinder never fires.",
    ),
    ("channels.spark-never", "No. {cylinders}: on a channel that the plan never fires."),
    (
        "channels.split-exchanged",
        "No. {plugs}: leading and trailing plug are exchanged, so the trailing one fires first. Detonation.",
    ),
    (
        "channels.fuel-never",
        "No. {cylinders}: on a channel that the plan never fires. No fuel there.",
    ),
    (
        "channels.fuel-other-bank",
        "No. {cylinders}: the injector hangs on another bank's channel. Runs, but corrections by bank reach the wrong cylinder.",
    ),
    (
        "channels.fuel-elsewhere",
        "No. {cylinders}: fuel comes {error} from its own moment. Runs, but poorly at idle; trims reach the wrong cylinder.",
    ),
    (
        "channels.companions-swapped",
        "No. {cylinders} have exchanged channels: no effect while each coil is fired every turn, 360° out on the day that sequential is turned on.",
    ),
    // cures
    (
        "channels.cure-setting-turn",
        "One setting: the controller is a whole turn out. Move its cam reference by {error} and leave the leads. Injection moves with it: check that too.",
    ),
    (
        "channels.cure-setting-earlier",
        "One setting: the reference stands {error} late. The controller takes cylinder {other} for cylinder {first}; move it {error} earlier. Injection moves with it: check that too.",
    ),
    (
        "channels.cure-setting-later",
        "One setting: the reference stands {error} early. The controller takes cylinder {other} for cylinder {first}; move it {error} later. Injection moves with it: check that too.",
    ),
    (
        "channels.cure-setting-fuel-earlier",
        "One setting: all injections {error} earlier. The leads stay.",
    ),
    (
        "channels.cure-setting-fuel-later",
        "One setting: all injections {error} later. The leads stay.",
    ),
    (
        "channels.cure-setting-towers-on",
        "Turn all leads together {n} {n|tower|towers} on, in the direction of the rotor.",
    ),
    (
        "channels.cure-setting-towers-back",
        "Turn all leads together {n} {n|tower|towers} back, against the direction of the rotor.",
    ),
    (
        "channels.cure-order",
        "Enter this order of channels in the controller: {order}. No lead is moved.",
    ),
    (
        "channels.cure-groups",
        "Give the channels to the banks in this order: {order}. No wire is moved.",
    ),
    (
        "channels.cure-exchange",
        "Move leads: {n} {n|exchange|exchanges} ({list}) {n|puts|put} {m} leads right, in this order.",
    ),
    (
        "channels.cure-exchange-injectors",
        "Move injector plugs: {n} {n|exchange|exchanges} ({list}) {n|puts|put} {m} right, in this order.",
    ),
    ("channels.cure-move", "Move to another channel: {list}."),
    ("channels.cure-move-towers", "Move to another tower: {list}."),
    // the table
    ("channels.table-wired", "What really happens, cylinder by cylinder"),
    ("channels.col-error", "Error"),
    ("channels.col-stroke", "Stroke"),
    ("channels.col-outcome", "What comes of it"),
    ("channels.stroke-firing", "firing point"),
    ("channels.stroke-compression", "compression"),
    ("channels.stroke-power", "power"),
    ("channels.stroke-exhaust", "exhaust"),
    ("channels.stroke-overlap", "overlap"),
    ("channels.stroke-intake", "intake"),
    ("channels.outcome-fires", "fires"),
    ("channels.outcome-right", "right"),
    ("channels.outcome-intake", "backfire in the inlet"),
    ("channels.outcome-compression", "kick-back"),
    ("channels.outcome-early", "detonation"),
    ("channels.outcome-power", "no power, hot exhaust"),
    ("channels.outcome-exhaust", "pops in the exhaust"),
    ("channels.outcome-overlap", "never fires"),
    ("channels.outcome-never", "channel never fires"),
    ("channels.outcome-split", "leading and trailing exchanged"),
    ("channels.outcome-bank", "on another bank's channel"),
    ("channels.outcome-fuel", "fuel at another moment"),
    ("channels.figure-wrong", "Wrong, of those seen"),
    ("channels.figure-out-of-place", "Leads out of place"),
    ("channels.figure-exchanges", "Exchanges that cure it"),
    ("channels.picture-wired", "The cycle as it is wired: {n} {n|cylinder|cylinders} wrong"),
];

const CLASSES: &str = "classes by stroke: common practice, no source";

pub(in crate::words) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: "channels.wired-unreadable",
        // What was typed for a channel is no number of a cylinder.
        why: "What the channel reaches can't be told.",
        act: "Type the number alone; two numbers where the channel reaches two. For a rotor, 1L or 1T.",
        source: "the form of this plan",
    },
    Explanation {
        code: "channels.wired-stray",
        // A channel is said to reach a cylinder that the engine doesn't have.
        why: "Cylinders may be counted from the other end, or by bank.",
        act: "Agree on the numbering first, then test the channel again.",
        source: "the form of this plan",
    },
    Explanation {
        code: "channels.wired-again",
        // Two channels are said to reach the same cylinder.
        why: "One observation must be wrong, or a wire is doubled. Neither is used until that is known.",
        act: "Fire both channels again, one at a time.",
        source: "a coil or injector hangs on one channel",
    },
    Explanation {
        code: "channels.spark-intake",
        // A spark falls 180 to 360 degrees before the cylinder's own firing point.
        why: "The inlet valve is open: the flame runs back into the inlet.",
        act: "Don't crank. Take the cheapest of the cures.",
        source: CLASSES,
    },
    Explanation {
        code: "channels.spark-compression",
        // A spark falls 60 to 180 degrees before the cylinder's own firing point.
        why: "The charge burns against a rising piston: starters and hands get broken.",
        act: "Don't crank. Take the cheapest of the cures.",
        source: CLASSES,
    },
    Explanation {
        code: "channels.spark-early",
        // A spark falls less than 60 degrees before the cylinder's own firing point, beyond the advance.
        why: "The engine runs, and detonates: pistons melt. Typical of an odd-fire engine told to be even.",
        act: "Don't run it under load. Take the cheapest of the cures.",
        source: CLASSES,
    },
    Explanation {
        code: "channels.spark-power",
        // A spark falls up to 180 degrees after the cylinder's own firing point.
        why: "The charge burns late: no power, and the heat goes into valves and exhaust.",
        act: "Take the cheapest of the cures.",
        source: CLASSES,
    },
    Explanation {
        code: "channels.spark-exhaust",
        // A spark falls 180 to 360 degrees after the cylinder's own firing point.
        why: "Unburnt charge goes off in the exhaust.",
        act: "Take the cheapest of the cures.",
        source: CLASSES,
    },
    Explanation {
        code: "channels.spark-overlap",
        // The spark falls exactly a turn away from the cylinder's own firing point.
        why: "There is nothing to burn, and the charge that should burn leaves unburnt.",
        act: "Where all are so, it is one setting; else take the cheapest of the cures.",
        source: CLASSES,
    },
    Explanation {
        code: "channels.spark-never",
        // A coil is on a channel that has no part in the plan.
        why: "The cylinder never fires, and its fuel goes into the exhaust.",
        act: "Enter that channel in the order, or move the lead.",
        source: "the plan's own channels",
    },
    Explanation {
        code: "channels.split-exchanged",
        // A rotor's leading plug is on a trailing channel, or the other way round.
        why: "The trailing plug then fires before the leading one, which detonates.",
        act: "Don't run it. Take the cheapest of the cures.",
        source: "common practice, no source",
    },
    Explanation {
        code: "channels.fuel-never",
        // An injector is on a channel that has no part in the plan.
        why: "The cylinder gets no fuel.",
        act: "Enter that channel in the order, or move the injector's plug.",
        source: "the plan's own channels",
    },
    Explanation {
        code: "channels.fuel-other-bank",
        // Injection goes bank by bank, and an injector hangs on another bank's channel.
        why: "A mixture correction measured on one bank then changes a cylinder of another.",
        act: "Exchange the injector plugs.",
        source: "common practice, no source",
    },
    Explanation {
        code: "channels.fuel-elsewhere",
        // An injector opens at another cylinder's moment.
        why: "The fuel waits at the valve: the engine runs, less cleanly at idle, and a trim for one cylinder reaches another.",
        act: "Take the cheapest of the cures; it is a mild fault.",
        source: "common practice, no source",
    },
    Explanation {
        code: "channels.companions-swapped",
        // Companions have exchanged channels while each coil is fired every turn.
        why: "It can't be noticed now, and puts both cylinders 360 degrees out on the day that sequential is turned on.",
        act: "Cure it now, or write it on the plan.",
        source: "geometry of the four-stroke cycle",
    },
];
