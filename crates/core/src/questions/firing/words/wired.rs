//! The sentences about what was found at the car.

use crate::words::{Explanation, sentences};

sentences! {
    TITLE_IGNITION_WIRED = "firing.title-ignition-wired", "Ignition, as wired";
    TITLE_INJECTION_WIRED = "firing.title-injection-wired", "Injection, as wired";
    TITLE_SECOND_WIRED = "firing.title-second-wired", "Second injectors, as wired";
    WIRED_UNREADABLE = "firing.wired-unreadable",
        "Channel {channel}: “{typed}” is not a cylinder. Type the number that was found there, for example {example}.";
    WIRED_STRAY = "firing.wired-stray",
        "Channel {channel}: there is no cylinder {stray} among {cylinders}. Look again at the car.";
    WIRED_AGAIN = "firing.wired-again",
        "Channel {channel}: {target} was already found on channel {other}. One of the two is wrong: test both again.";
    HABITS_BY_CYLINDER = "firing.habits-by-cylinder",
        "Two numberings are mixed: wired by cylinder, planned by firing order.";
    HABITS_BY_ORDER = "firing.habits-by-order",
        "Two numberings are mixed: wired by firing order, planned by cylinder.";
    // verdicts
    WIRED_NONE_USABLE = "firing.wired-none-usable", "Nothing typed here can be used";
    WIRED_RIGHT = "firing.wired-right", "Wired right: all {n}";
    NOT_SEEN = "firing.not-seen", "Not yet proved: {planned}";
    WIRED_HIDDEN = "firing.wired-hidden", "Runs like this, but not sequential";
    WIRED_PARTLY = "firing.wired-partly", "{seen} of {all} seen, nothing wrong so far";
    WIRED_SETTING = "firing.wired-setting", "All {n} out by the same: one setting";
    WIRED_WRONG = "firing.wired-wrong", "Wired wrong: {n} of {all}";
    WIRED_WRONG_PARTLY = "firing.wired-wrong-partly", "Wired wrong: {n} of the {seen} seen";
    WIRED_RIGHT_WHY = "firing.wired-right-why", "All {n} are on their planned channels.";
    WIRED_TOGETHER_WHY = "firing.wired-together-why", "All injectors are on the one channel that fires them.";
    WIRED_PARTLY_WHY = "firing.wired-partly-why", "A fix can be named only when all have been seen.";
    LOOK_COILS = "firing.look-coils",
        "Not seen yet: {cylinders}. Fire one channel at a time and note whose coil sparks.";
    LOOK_INJECTORS = "firing.look-injectors",
        "Not seen yet: {cylinders}. Fire one channel at a time and note whose injector clicks.";
    LOOK_TOWERS = "firing.look-towers", "Not seen yet: {cylinders}. Follow their leads from the cap.";
    // what goes wrong
    SPARK_INTAKE = "firing.spark-intake",
        "{n|Cylinder|Cylinders} {cylinders}: spark {error} early, in the intake stroke. Backfire in the inlet, fire.";
    SPARK_COMPRESSION = "firing.spark-compression",
        "{n|Cylinder|Cylinders} {cylinders}: spark {error} early, in mid-compression. Kicks back while cranking.";
    SPARK_EARLY = "firing.spark-early",
        "{n|Cylinder|Cylinders} {cylinders}: spark {error} early, on top of the advance. Detonation, kick-back.";
    SPARK_POWER = "firing.spark-power",
        "{n|Cylinder|Cylinders} {cylinders}: spark {error} late, in the power stroke. No power, hot exhaust.";
    SPARK_EXHAUST = "firing.spark-exhaust",
        "{n|Cylinder|Cylinders} {cylinders}: spark {error} late, in the exhaust stroke. Pops in the exhaust.";
    SPARK_OVERLAP = "firing.spark-overlap",
        "{n|Cylinder|Cylinders} {cylinders}: spark a whole turn out, in the overlap. Never fires.";
    SPARK_PORTS = "firing.spark-ports",
        "{n|Cylinder|Cylinders} {cylinders}: spark {error} out, with the ports open. No power; it may light the incoming charge.";
    SPARK_NEXT = "firing.spark-next",
        "{n|Plug|Plugs} {cylinders}: spark half a turn out, when this plug looks into the next chamber before its top. Kicks back, detonates.";
    SPARK_NEVER = "firing.spark-never", "{n|Cylinder|Cylinders} {cylinders}: on a channel that the plan never fires.";
    SPLIT_EXCHANGED = "firing.split-exchanged",
        "{n|Plug|Plugs} {plugs}: leading and trailing swapped, so the trailing one fires first. Detonation.";
    FUEL_NEVER = "firing.fuel-never", "{n|Cylinder|Cylinders} {cylinders}: on a channel that the plan never fires. No fuel there.";
    FUEL_OTHER_BANK = "firing.fuel-other-bank",
        "{n|Cylinder|Cylinders} {cylinders}: the injector is on another bank's channel. Runs, but corrections by bank reach the wrong cylinder.";
    FUEL_ELSEWHERE = "firing.fuel-elsewhere",
        "{n|Cylinder|Cylinders} {cylinders}: fuel {error} away from its own moment. Runs, but poorly at idle; trims reach the wrong cylinder.";
    COMPANIONS_SWAPPED = "firing.companions-swapped",
        "{n|Cylinder|Cylinders} {cylinders}: channels swapped. No effect while each coil is fired every turn; 360° out on the day you turn on sequential.";
    // cures
    CURE_SETTING_TURN = "firing.cure-setting-turn",
        "One setting: the controller is a whole turn out. Move its cam reference by {error} and leave the leads. Injection moves with it: check that too.";
    CURE_SETTING_EARLIER = "firing.cure-setting-earlier",
        "One setting: the reference is {error} late. The controller takes cylinder {other} for cylinder {first}; move it {error} earlier. Injection moves with it: check that too.";
    CURE_SETTING_LATER = "firing.cure-setting-later",
        "One setting: the reference is {error} early. The controller takes cylinder {other} for cylinder {first}; move it {error} later. Injection moves with it: check that too.";
    CURE_SETTING_FUEL_EARLIER = "firing.cure-setting-fuel-earlier",
        "One setting: all injections {error} earlier. The wires stay.";
    CURE_SETTING_FUEL_LATER = "firing.cure-setting-fuel-later",
        "One setting: all injections {error} later. The wires stay.";
    CURE_SETTING_TOWERS_ON = "firing.cure-setting-towers-on",
        "Move all leads together {n} {n|tower|towers} on, in rotor direction.";
    CURE_SETTING_TOWERS_BACK = "firing.cure-setting-towers-back",
        "Move all leads together {n} {n|tower|towers} back, against rotor direction.";
    CURE_ORDER = "firing.cure-order",
        "Enter this order of channels in the controller: {order}. No lead is moved.";
    CURE_GROUPS = "firing.cure-groups",
        "Give the channels to the banks in this order: {order}. No wire is moved.";
    CURE_EXCHANGE = "firing.cure-exchange",
        "Swap leads or coil connectors: {n} {n|swap|swaps} ({list}) {n|puts|put} {m} right{n||, in this order}.";
    CURE_EXCHANGE_INJECTORS = "firing.cure-exchange-injectors",
        "Swap injector connectors: {n} {n|swap|swaps} ({list}) {n|puts|put} {m} right{n||, in this order}.";
    CURE_MOVE = "firing.cure-move", "Move to another channel: {list}.";
    CURE_MOVE_TOWERS = "firing.cure-move-towers", "Move to another tower: {list}.";
    // the table
    TABLE_WIRED = "firing.table-wired", "What really happens, cylinder by cylinder";
    COL_ERROR = "firing.col-error", "Error";
    COL_STROKE = "firing.col-stroke", "Stroke";
    COL_OUTCOME = "firing.col-outcome", "What it does";
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
    OUTCOME_PORTS = "firing.outcome-ports", "no power, may light the incoming charge";
    OUTCOME_NEXT = "firing.outcome-next", "kick-back, detonation";
    OUTCOME_NEVER = "firing.outcome-never", "channel never fires";
    OUTCOME_SPLIT = "firing.outcome-split", "leading and trailing swapped";
    OUTCOME_BANK = "firing.outcome-bank", "on another bank's channel";
    OUTCOME_FUEL = "firing.outcome-fuel", "fuel at another moment";
    FIGURE_WRONG = "firing.figure-wrong", "Wrong, of those seen";
    FIGURE_OUT_OF_PLACE = "firing.figure-out-of-place", "Leads out of place";
    FIGURE_EXCHANGES = "firing.figure-exchanges", "Swaps that fix it";
    PICTURE_WIRED_RIGHT = "firing.picture-wired-right", "The cycle as wired: nothing wrong";
    PICTURE_WIRED = "firing.picture-wired", "The cycle as wired: {n} {n|cylinder|cylinders} wrong";
}

const CLASSES: &str = "classes by stroke: common practice, no source";

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: WIRED_UNREADABLE.code,
        // What was typed for a channel is no number of a cylinder.
        why: "What the channel reaches is not known.",
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
        source: "a coil or injector is on one channel",
    },
    Explanation {
        code: SPARK_INTAKE.code,
        // A spark falls 180 to 360 degrees before the cylinder's own firing point.
        why: "The inlet valve is open: the flame runs back into the inlet.",
        act: "Don't crank. Use the cheapest fix.",
        source: CLASSES,
    },
    Explanation {
        code: SPARK_COMPRESSION.code,
        // A spark falls 60 to 180 degrees before the cylinder's own firing point.
        why: "The charge burns against a rising piston: starters and hands get broken.",
        act: "Don't crank. Use the cheapest fix.",
        source: CLASSES,
    },
    Explanation {
        code: SPARK_EARLY.code,
        // A spark falls less than 60 degrees before the cylinder's own firing point, beyond the advance.
        why: "The engine runs, and detonates: pistons melt. Typical of an odd-fire engine set to even.",
        act: "Don't run it under load. Use the cheapest fix.",
        source: CLASSES,
    },
    Explanation {
        code: SPARK_POWER.code,
        // A spark falls up to 180 degrees after the cylinder's own firing point.
        why: "The charge burns late: no power, and the heat goes into valves and exhaust.",
        act: "Use the cheapest fix.",
        source: CLASSES,
    },
    Explanation {
        code: SPARK_EXHAUST.code,
        // A spark falls 180 to 360 degrees after the cylinder's own firing point.
        why: "Unburnt charge goes off in the exhaust.",
        act: "Use the cheapest fix.",
        source: CLASSES,
    },
    Explanation {
        code: SPARK_OVERLAP.code,
        // The spark falls exactly a turn away from the cylinder's own firing point.
        why: "There is nothing to burn, and the charge that should burn leaves unburnt.",
        act: "If all are so, it is one setting; else use the cheapest fix.",
        source: CLASSES,
    },
    Explanation {
        code: SPARK_PORTS.code,
        // A spark of a two-stroke falls more than 110 degrees from the cylinder's own firing point.
        why: "The charge that should burn is not lit at TDC; what comes in may be, back into the crankcase.",
        act: "Use the cheapest fix.",
        source: CLASSES,
    },
    Explanation {
        code: SPARK_NEXT.code,
        // The spark of a rotor's trailing plug falls half a turn out.
        why: "Half a turn after the top the apex has passed this plug: it lights the chamber that follows, half a turn too early.",
        act: "Don't crank. Use the cheapest fix.",
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
        act: "Don't run it. Use the cheapest fix.",
        source: "common practice, no source",
    },
    Explanation {
        code: FUEL_NEVER.code,
        // An injector is on a channel that has no part in the plan.
        why: "The cylinder gets no fuel.",
        act: "Enter that channel in the order, or move the injector's connector.",
        source: "the plan's own channels",
    },
    Explanation {
        code: FUEL_OTHER_BANK.code,
        // Injection goes bank by bank, and an injector hangs on another bank's channel.
        why: "A mixture correction measured on one bank then changes a cylinder of another.",
        act: "Swap the injector connectors.",
        source: "common practice, no source",
    },
    Explanation {
        code: FUEL_ELSEWHERE.code,
        // An injector opens at another cylinder's moment.
        why: "The fuel waits at the valve: the engine runs, less cleanly at idle, and a trim for one cylinder reaches another.",
        act: "Use the cheapest fix; it is a mild fault.",
        source: "common practice, no source",
    },
    Explanation {
        code: COMPANIONS_SWAPPED.code,
        // Companions have exchanged channels while each coil is fired every turn.
        why: "You won't notice it now, but both cylinders are 360 degrees out on the day you turn on sequential.",
        act: "Fix it now, or write it on the plan.",
        source: "geometry of the four-stroke cycle",
    },
];
