//! The sentences about what was found at the car.

use crate::words::{Explanation, sentences};

sentences! {
    TITLE_IGNITION_WIRED = "firing.title-ignition-wired", "Ignition, as wired";
    TITLE_INJECTION_WIRED = "firing.title-injection-wired", "Injection, as wired";
    TITLE_SECOND_WIRED = "firing.title-second-wired", "Second injectors, as wired";
    WIRED_UNREADABLE = "firing.wired-unreadable",
        "Channel {channel}: “{typed}” is no cylinder. Type the number that was found there, for example {example}.";
    WIRED_STRAY = "firing.wired-stray",
        "Channel {channel}: there is no cylinder {stray} among {cylinders}. Look again at the car.";
    WIRED_AGAIN = "firing.wired-again",
        "Channel {channel}: {target} was already found on channel {other}. One of the two is wrong: test both again.";
    HABITS_BY_CYLINDER = "firing.habits-by-cylinder",
        "Two habits are mixed: it is wired by cylinder, and the plan numbers by firing order.";
    HABITS_BY_ORDER = "firing.habits-by-order",
        "Two habits are mixed: it is wired by firing order, and the plan numbers by cylinder.";
    // verdicts
    WIRED_NONE_USABLE = "firing.wired-none-usable", "Nothing typed here can be used";
    WIRED_RIGHT = "firing.wired-right", "Wired right: all {n}";
    WIRED_HIDDEN = "firing.wired-hidden", "Runs like this, but not in sequence";
    WIRED_PARTLY = "firing.wired-partly", "Right so far: {seen} of {all} seen";
    WIRED_SETTING = "firing.wired-setting", "All {n} out by the same: one setting";
    WIRED_WRONG = "firing.wired-wrong", "Wired wrong: {n} of {all}";
    WIRED_WRONG_PARTLY = "firing.wired-wrong-partly", "Wired wrong: {n} of the {seen} seen";
    WIRED_RIGHT_WHY = "firing.wired-right-why", "Each of {n} is reached by the channel that the plan gives it.";
    WIRED_TOGETHER_WHY = "firing.wired-together-why", "All injectors hang on the one channel that fires them.";
    WIRED_PARTLY_WHY = "firing.wired-partly-why", "A cure can be named only when all have been seen.";
    LOOK_COILS = "firing.look-coils",
        "Not seen yet: {cylinders}. Fire one channel at a time and note whose coil answers.";
    LOOK_INJECTORS = "firing.look-injectors",
        "Not seen yet: {cylinders}. Fire one channel at a time and note whose injector clicks.";
    LOOK_TOWERS = "firing.look-towers", "Not seen yet: {cylinders}. Follow their leads from the cap.";
    // what goes wrong
    SPARK_INTAKE = "firing.spark-intake",
        "No. {cylinders}: a spark in the intake stroke, {error} from its own firing point. Backfire in the inlet, fire.";
    SPARK_COMPRESSION = "firing.spark-compression",
        "No. {cylinders}: a spark in the middle of compression, {error} from its own firing point. Kicks back while cranking.";
    SPARK_EARLY = "firing.spark-early",
        "No. {cylinders}: a spark {error} from its own firing point, on top of the advance. Detonation, kick-back.";
    SPARK_POWER = "firing.spark-power",
        "No. {cylinders}: the spark comes {error} late, in the power stroke. No power, hot exhaust.";
    SPARK_EXHAUST = "firing.spark-exhaust",
        "No. {cylinders}: the spark comes {error} late, in the exhaust stroke. Pops in the exhaust.";
    SPARK_OVERLAP = "firing.spark-overlap",
        "No. {cylinders}: the spark comes a whole turn out, in the overlap. The cylinder never fires.";
    SPARK_PORTS = "firing.spark-ports",
        "No. {cylinders}: the spark comes {error} out, with the ports open. No power; it may light the charge that comes in.";
    SPARK_NEXT = "firing.spark-next",
        "No. {cylinders}: the spark comes half a turn out, when this plug looks into the next chamber before its top. Kicks back, detonates.";
    SPARK_NEVER = "firing.spark-never", "No. {cylinders}: on a channel that the plan never fires.";
    SPLIT_EXCHANGED = "firing.split-exchanged",
        "No. {plugs}: leading and trailing plug are exchanged, so the trailing one fires first. Detonation.";
    FUEL_NEVER = "firing.fuel-never", "No. {cylinders}: on a channel that the plan never fires. No fuel there.";
    FUEL_OTHER_BANK = "firing.fuel-other-bank",
        "No. {cylinders}: the injector hangs on another bank's channel. Runs, but corrections by bank reach the wrong cylinder.";
    FUEL_ELSEWHERE = "firing.fuel-elsewhere",
        "No. {cylinders}: fuel comes {error} from its own moment. Runs, but poorly at idle; trims reach the wrong cylinder.";
    COMPANIONS_SWAPPED = "firing.companions-swapped",
        "No. {cylinders} have exchanged channels: no effect while each coil is fired every turn, 360° out on the day that sequential is turned on.";
    // cures
    CURE_SETTING_TURN = "firing.cure-setting-turn",
        "One setting: the controller is a whole turn out. Move its cam reference by {error} and leave the leads. Injection moves with it: check that too.";
    CURE_SETTING_EARLIER = "firing.cure-setting-earlier",
        "One setting: the reference stands {error} late. The controller takes cylinder {other} for cylinder {first}; move it {error} earlier. Injection moves with it: check that too.";
    CURE_SETTING_LATER = "firing.cure-setting-later",
        "One setting: the reference stands {error} early. The controller takes cylinder {other} for cylinder {first}; move it {error} later. Injection moves with it: check that too.";
    CURE_SETTING_FUEL_EARLIER = "firing.cure-setting-fuel-earlier",
        "One setting: all injections {error} earlier. The leads stay.";
    CURE_SETTING_FUEL_LATER = "firing.cure-setting-fuel-later",
        "One setting: all injections {error} later. The leads stay.";
    CURE_SETTING_TOWERS_ON = "firing.cure-setting-towers-on",
        "Turn all leads together {n} {n|tower|towers} on, in the direction of the rotor.";
    CURE_SETTING_TOWERS_BACK = "firing.cure-setting-towers-back",
        "Turn all leads together {n} {n|tower|towers} back, against the direction of the rotor.";
    CURE_ORDER = "firing.cure-order",
        "Enter this order of channels in the controller: {order}. No lead is moved.";
    CURE_GROUPS = "firing.cure-groups",
        "Give the channels to the banks in this order: {order}. No wire is moved.";
    CURE_EXCHANGE = "firing.cure-exchange",
        "Move leads: {n} {n|exchange|exchanges} ({list}) {n|puts|put} {m} leads right, in this order.";
    CURE_EXCHANGE_INJECTORS = "firing.cure-exchange-injectors",
        "Move injector plugs: {n} {n|exchange|exchanges} ({list}) {n|puts|put} {m} right, in this order.";
    CURE_MOVE = "firing.cure-move", "Move to another channel: {list}.";
    CURE_MOVE_TOWERS = "firing.cure-move-towers", "Move to another tower: {list}.";
    // the table
    TABLE_WIRED = "firing.table-wired", "What really happens, cylinder by cylinder";
    COL_ERROR = "firing.col-error", "Error";
    COL_STROKE = "firing.col-stroke", "Stroke";
    COL_OUTCOME = "firing.col-outcome", "What comes of it";
    STROKE_FIRING = "firing.stroke-firing", "firing point";
    STROKE_COMPRESSION = "firing.stroke-compression", "compression";
    STROKE_POWER = "firing.stroke-power", "power";
    STROKE_EXHAUST = "firing.stroke-exhaust", "exhaust";
    STROKE_OVERLAP = "firing.stroke-overlap", "overlap";
    STROKE_INTAKE = "firing.stroke-intake", "intake";
    STROKE_PORTS = "firing.stroke-ports", "bottom, ports open";
    STROKE_NEXT = "firing.stroke-next", "compression of the next chamber";
    OUTCOME_FIRES = "firing.outcome-fires", "fires";
    OUTCOME_RIGHT = "firing.outcome-right", "right";
    OUTCOME_INTAKE = "firing.outcome-intake", "backfire in the inlet";
    OUTCOME_COMPRESSION = "firing.outcome-compression", "kick-back";
    OUTCOME_EARLY = "firing.outcome-early", "detonation";
    OUTCOME_POWER = "firing.outcome-power", "no power, hot exhaust";
    OUTCOME_EXHAUST = "firing.outcome-exhaust", "pops in the exhaust";
    OUTCOME_OVERLAP = "firing.outcome-overlap", "never fires";
    OUTCOME_PORTS = "firing.outcome-ports", "no power, may light what comes in";
    OUTCOME_NEXT = "firing.outcome-next", "kick-back, detonation";
    OUTCOME_NEVER = "firing.outcome-never", "channel never fires";
    OUTCOME_SPLIT = "firing.outcome-split", "leading and trailing exchanged";
    OUTCOME_BANK = "firing.outcome-bank", "on another bank's channel";
    OUTCOME_FUEL = "firing.outcome-fuel", "fuel at another moment";
    FIGURE_WRONG = "firing.figure-wrong", "Wrong, of those seen";
    FIGURE_OUT_OF_PLACE = "firing.figure-out-of-place", "Leads out of place";
    FIGURE_EXCHANGES = "firing.figure-exchanges", "Exchanges that cure it";
    PICTURE_WIRED = "firing.picture-wired", "The cycle as it is wired: {n} {n|cylinder|cylinders} wrong";
}

const CLASSES: &str = "classes by stroke: common practice, no source";

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: WIRED_UNREADABLE.code,
        // What was typed for a channel is no number of a cylinder.
        why: "What the channel reaches can't be told.",
        act: "Type the number alone; two numbers where the channel reaches two. For a rotor, 1L or 1T.",
        source: "the form of this plan",
    },
    Explanation {
        code: WIRED_STRAY.code,
        // A channel is said to reach a cylinder that the engine doesn't have.
        why: "Cylinders may be counted from the other end, or by bank.",
        act: "Agree on the numbering first, then test the channel again.",
        source: "the form of this plan",
    },
    Explanation {
        code: WIRED_AGAIN.code,
        // Two channels are said to reach the same cylinder.
        why: "One observation must be wrong, or a wire is doubled. Neither is used until that is known.",
        act: "Fire both channels again, one at a time.",
        source: "a coil or injector hangs on one channel",
    },
    Explanation {
        code: SPARK_INTAKE.code,
        // A spark falls 180 to 360 degrees before the cylinder's own firing point.
        why: "The inlet valve is open: the flame runs back into the inlet.",
        act: "Don't crank. Take the cheapest of the cures.",
        source: CLASSES,
    },
    Explanation {
        code: SPARK_COMPRESSION.code,
        // A spark falls 60 to 180 degrees before the cylinder's own firing point.
        why: "The charge burns against a rising piston: starters and hands get broken.",
        act: "Don't crank. Take the cheapest of the cures.",
        source: CLASSES,
    },
    Explanation {
        code: SPARK_EARLY.code,
        // A spark falls less than 60 degrees before the cylinder's own firing point, beyond the advance.
        why: "The engine runs, and detonates: pistons melt. Typical of an odd-fire engine told to be even.",
        act: "Don't run it under load. Take the cheapest of the cures.",
        source: CLASSES,
    },
    Explanation {
        code: SPARK_POWER.code,
        // A spark falls up to 180 degrees after the cylinder's own firing point.
        why: "The charge burns late: no power, and the heat goes into valves and exhaust.",
        act: "Take the cheapest of the cures.",
        source: CLASSES,
    },
    Explanation {
        code: SPARK_EXHAUST.code,
        // A spark falls 180 to 360 degrees after the cylinder's own firing point.
        why: "Unburnt charge goes off in the exhaust.",
        act: "Take the cheapest of the cures.",
        source: CLASSES,
    },
    Explanation {
        code: SPARK_OVERLAP.code,
        // The spark falls exactly a turn away from the cylinder's own firing point.
        why: "There is nothing to burn, and the charge that should burn leaves unburnt.",
        act: "Where all are so, it is one setting; else take the cheapest of the cures.",
        source: CLASSES,
    },
    Explanation {
        code: SPARK_PORTS.code,
        // A spark of a two-stroke falls more than 110 degrees from the cylinder's own firing point.
        why: "The charge that should burn is not lit at its top; what comes in may be, back into the crankcase.",
        act: "Take the cheapest of the cures.",
        source: CLASSES,
    },
    Explanation {
        code: SPARK_NEXT.code,
        // The spark of a rotor's trailing plug falls half a turn out.
        why: "Half a turn after the top the apex has passed this plug: it lights the chamber that follows, half a turn too early.",
        act: "Don't crank. Take the cheapest of the cures.",
        source: "geometry of the rotor; how early the apex passes: common practice, no source",
    },
    Explanation {
        code: SPARK_NEVER.code,
        // A coil is on a channel that has no part in the plan.
        why: "The cylinder never fires, and its fuel goes into the exhaust.",
        act: "Enter that channel in the order, or move the lead.",
        source: "the plan's own channels",
    },
    Explanation {
        code: SPLIT_EXCHANGED.code,
        // A rotor's leading plug is on a trailing channel, or the other way round.
        why: "The trailing plug then fires before the leading one, which detonates.",
        act: "Don't run it. Take the cheapest of the cures.",
        source: "common practice, no source",
    },
    Explanation {
        code: FUEL_NEVER.code,
        // An injector is on a channel that has no part in the plan.
        why: "The cylinder gets no fuel.",
        act: "Enter that channel in the order, or move the injector's plug.",
        source: "the plan's own channels",
    },
    Explanation {
        code: FUEL_OTHER_BANK.code,
        // Injection goes bank by bank, and an injector hangs on another bank's channel.
        why: "A mixture correction measured on one bank then changes a cylinder of another.",
        act: "Exchange the injector plugs.",
        source: "common practice, no source",
    },
    Explanation {
        code: FUEL_ELSEWHERE.code,
        // An injector opens at another cylinder's moment.
        why: "The fuel waits at the valve: the engine runs, less cleanly at idle, and a trim for one cylinder reaches another.",
        act: "Take the cheapest of the cures; it is a mild fault.",
        source: "common practice, no source",
    },
    Explanation {
        code: COMPANIONS_SWAPPED.code,
        // Companions have exchanged channels while each coil is fired every turn.
        why: "It can't be noticed now, and puts both cylinders 360 degrees out on the day that sequential is turned on.",
        act: "Cure it now, or write it on the plan.",
        source: "geometry of the four-stroke cycle",
    },
];
