//! The sentences of the question of crank and cam.

use crate::words::{Explanation, sentences};

sentences! {
    QUESTION = "trigger.question", "Do the crank and cam sensor suit?";
    PENDING = "trigger.pending", "One moment…";
    WHEEL_TITLE = "trigger.wheel-title", "Can the input keep up with the wheel?";
    CRANK_TITLE = "trigger.crank-title", "The crank sensor at its input";
    CAM_TITLE = "trigger.cam-title", "The cam sensor at its input";
    OFFSET_TITLE = "trigger.offset-title", "From the first tooth to TDC";
    // verdicts
    BLANK = "trigger.blank", "Needs: the crank sensor's type";
    NO_KIND = "trigger.no-kind", "Not answered yet: coil or Hall?";
    LOST = "trigger.lost", "Position can never be known: no gap, no cam";
    FAST_FROM = "trigger.fast-from", "Too fast for the input above {speed}";
    SLOW = "trigger.slow", "Too slow for the input while cranking: {wheel}";
    NO_SPEED = "trigger.no-speed", "Not answered yet: needs the highest speed";
    NO_CRANKING = "trigger.no-cranking", "Not answered yet: needs the cranking speed";
    RATE_IS = "trigger.rate-is", "Up to {rate}: compare with the controller's data";
    FAST_ENOUGH = "trigger.fast-enough", "In time: {rate} of {limit}";
    MEASURE = "trigger.measure", "Measure its voltage while cranking";
    PEAK_IS = "trigger.peak-is", "Down to {peak} while cranking: compare";
    TOP_IS = "trigger.top-is", "Up to {peak} at the highest speed: compare";
    STRONG = "trigger.strong", "Strong enough: {peak}, needs {counts_from}";
    BORNE = "trigger.borne", "Within its rating: up to {peak}";
    IS_WEAK = "trigger.is-weak", "Too weak while cranking: down to {peak}";
    IS_OVER = "trigger.is-over", "Too much at the highest speed: {peak}";
    IS_REVERSED = "trigger.is-reversed", "Its polarity is the wrong way round";
    IS_UNPULLED = "trigger.is-unpulled", "No pull-up: the input sees nothing";
    RAIL_WANTED = "trigger.rail-wanted", "Not answered yet: what is it pulled up to?";
    LEVELS_SUIT = "trigger.levels-suit", "Levels suit: {low} low, {high} high";
    IS_TOO_HIGH = "trigger.is-too-high", "Too much for the input: {high}";
    NEVER_HIGH = "trigger.never-high", "Never reads high: {high} at most";
    PERHAPS_HIGH = "trigger.perhaps-high", "May not read high: only {high}";
    NO_TOOTH = "trigger.no-tooth", "no tooth is ever counted";
    SOME_TEETH = "trigger.some-teeth", "teeth may be missed";
    NEVER_LOW = "trigger.never-low", "May not read low: {low}";
    SINKS = "trigger.sinks", "It must sink too much: {sunk}";
    RISES = "trigger.rises", "It rises slowly: {time}";
    OFFSET_OPEN = "trigger.offset-open", "Needs: the tooth at TDC, or light readings";
    ENTER_FIRST = "trigger.enter-first", "Enter {angle}, then prove it with a light";
    DIFFERS = "trigger.differs", "Offset wrong: by the tooth it is {stands}";
    NEAR = "trigger.near", "Right to {half}: prove it with a light";
    OUT_AT = "trigger.out-at", "{error} {way} at {speed}: offset or delay";
    ENTER = "trigger.enter", "Enter an offset of {angle}";
    ADD = "trigger.add", "Make the offset {error} {change}";
    OFFSET_RIGHT = "trigger.offset-right", "The offset is right, within {error}";
    LATE = "trigger.late", "Late by {delay} at any speed";
    GAINS = "trigger.gains", "The advance grows with speed, up to {speed}";
    // why
    WHY_LOST = "trigger.why-lost", "{positions} teeth, all alike: nothing tells one from the next.";
    WHY_GAP = "trigger.why-gap",
        "{positions} positions less {missing}: the gap tells where the crank is, but not which of the cycle's two turns it is; sequential firing needs a cam sensor.";
    WHY_CAM = "trigger.why-cam",
        "{positions} positions less {missing} tell the angle; the cam tells which of the cycle's two turns it is.";
    WHY_PLAIN = "trigger.why-plain",
        "{positions} positions less {missing}: once a turn the wheel tells where the crank is.";
    WHY_COIL = "trigger.why-coil",
        "Its voltage rises with speed, and coil and input share it; lowest and highest over what was typed, copper cold and hot.";
    WHY_HALL = "trigger.why-hall",
        "The input reads low at {low} or less and high at {high} or more; solved in every case.";
    WHY_OFFSET = "trigger.why-offset",
        "Counted from the first tooth after the gap, the way the crank turns; advance before TDC is positive.";
    // what to do
    DO_SPEED = "trigger.do-speed", "Type the highest speed under “Firing”.";
    DO_LIMIT = "trigger.do-limit", "Look up the highest frequency of the controller's inputs.";
    DO_GAP = "trigger.do-gap", "Use a wheel with a gap, or add a cam sensor.";
    DO_CRANKING = "trigger.do-cranking", "Type the cranking speed: the slowest instant follows from it.";
    DO_MEASURE = "trigger.do-measure",
        "Sensor unplugged, fuel and spark off, crank: AC volts or a scope across its wires, and note the speed.";
    DO_POLARITY = "trigger.do-polarity",
        "Find its polarity before the first start: with a scope or a moving-coil meter see which way the pointer swings as a tooth comes near. A digital meter's average shows nothing.";
    DO_SWAP = "trigger.do-swap",
        "Swap its two wires at the connector, or the edge in the controller if it offers that.";
    DO_GAP_WIDTH = "trigger.do-gap-width",
        "Set the air gap by its maker's data and check it all round with a feeler gauge, ignition off, turning by hand. Too wide: weak signal. Too narrow: it may touch.";
    DO_INPUT = "trigger.do-input", "Look up the smallest signal that the input detects, and its highest voltage.";
    DO_RAIL = "trigger.do-rail",
        "Sensor unplugged, controller on: measure the input's pin. About 5 V or the battery's is a pull-up; 0 V is none.";
    DO_BEARS = "trigger.do-bears", "Look up the highest input voltage: it gets up to {high}.";
    DO_COIL_WIRES = "trigger.do-coil-wires",
        "Two wires with a few hundred to 2000 Ω between them and none to ground are the coil; a third is its shield.";
    DO_HALL_WIRES = "trigger.do-hall-wires",
        "Supply, ground, signal by the sensor's data; on the old harness, ignition on: supply reads 5 or 12 V, ground 0 V. Never an ohmmeter through a Hall sensor.";
    DO_CONNECTOR_TWO = "trigger.do-connector-two",
        "Change the connector, pin by pin: coil + to the input, coil − to its return, not to the engine block, shield to the controller's shield pin.";
    DO_CONNECTOR_THREE = "trigger.do-connector-three",
        "Change the connector, pin by pin: supply to the sensor supply, ground to the sensor ground, signal to the input. Tug each wire; check each for continuity before power.";
    DO_ROUTE = "trigger.do-route",
        "Twist the signal with its return, shield connected at the controller's end only, 10 cm from coil leads or across them at right angles.";
    DO_STAND = "trigger.do-stand",
        "Ignition off, turn by hand the way it runs: with cylinder 1 at TDC count the tooth at the sensor.";
    DO_PAIR = "trigger.do-pair",
        "A reading without its speed, or a speed without its reading, is left out: type both.";
    DO_LIGHT = "trigger.do-light",
        "Lock the timing in the controller, read the light at two speeds far apart: an error alike at both is offset, one that grows is delay.";
    CAUTION_LIGHT = "trigger.caution-light",
        "Keep hands, hair and leads clear of belts and fan; wheels chocked. A timing light makes turning parts look still.";
    // figures
    FIGURE_RATE = "trigger.figure-rate", "Teeth at the highest speed";
    FIGURE_PERIOD = "trigger.figure-period", "Time between teeth there";
    FIGURE_CAM_RATE = "trigger.figure-cam-rate", "Cam there, {edges} edges a turn";
    FIGURE_RUNS_OUT = "trigger.figure-runs-out", "The input follows up to";
    FIGURE_SLOWEST = "trigger.figure-slowest", "Teeth at the slowest instant of cranking";
    FIGURE_PITCH = "trigger.figure-pitch", "From tooth to tooth";
    FIGURE_LOST = "trigger.figure-lost", "Lost over the gap while cranking, at most";
    FIGURE_TICK = "trigger.figure-tick", "One timer step, at the highest speed";
    FIGURE_PEAK_SLOW = "trigger.figure-peak-slow", "Peak at the input, slowest instant of cranking";
    FIGURE_PEAK_FAST = "trigger.figure-peak-fast", "Peak at the input, highest speed";
    FIGURE_LOW = "trigger.figure-low", "Low at the input";
    FIGURE_HIGH = "trigger.figure-high", "High at the input";
    FIGURE_SUNK = "trigger.figure-sunk", "Current it sinks";
    FIGURE_RISE = "trigger.figure-rise", "Rise time to the input's high";
    FIGURE_STANDING = "trigger.figure-standing", "By the tooth at the sensor";
    FIGURE_AT_ONCE = "trigger.figure-at-once", "Offset and delay together at {speed}";
    FIGURE_ERROR = "trigger.figure-error", "Error at any speed, minus is late";
    FIGURE_DELAY = "trigger.figure-delay", "Delay";
    FIGURE_ENTER = "trigger.figure-enter", "Offset to enter";
    // cures
    CURE_TEETH = "trigger.cure-teeth", "A wheel of {most} positions or fewer.";
    CURE_SERIES = "trigger.cure-series", "{series} in series with the signal; {left} are left while cranking.";
    CURE_CLAMP = "trigger.cure-clamp",
        "{series} in series and a clamp of no more than {bears} behind it, both ways, for {current}.";
    CURE_PULL_UP = "trigger.cure-pull-up", "A pull-up of {pull_up} to {rail}{how}.";
    CURE_OFFSET = "trigger.cure-offset",
        "Enter {enter}, and read the light again: these readings are of {offset}.";
    CURE_COUNT = "trigger.cure-count",
        "Count once more. If it is {tooth} again, enter {stands}; prove it with a light, fuel off.";
    EARLY = "trigger.early", "too early (kick-back, holed pistons)";
    LATE_WAY = "trigger.late-way", "too late";
    // findings
    NO_POSITION = "trigger.no-position",
        "{positions} teeth evenly spaced and no cam sensor: the controller can never know where the engine is.";
    TOO_FAST = "trigger.too-fast", "At {speed} teeth come at {rate}; the input follows {limit}, up to {out}.";
    TOO_SLOW = "trigger.too-slow",
        "At {speed}, the slowest instant of cranking, the {wheel} gives {rate}; the input needs {limit}.";
    COARSE = "trigger.coarse", "A timer step of {tick} is {turned} of the crank at {speed}.";
    LOSES = "trigger.loses", "A spark falls in the gap of {interval}, or just behind it: while cranking it can be {lost} off.";
    GAP_UNKNOWN = "trigger.gap-unknown",
        "Where the gap of {interval} is, is not known: a spark that falls in it can be {lost} off while cranking.";
    DO_COUNT = "trigger.do-count", "Count the tooth at TDC, and type it.";
    FEW_TEETH = "trigger.few-teeth",
        "{interval} between teeth, {firing} between firings: they don't tell how the speed swings in between.";
    WEAK = "trigger.weak",
        "At the slowest instant of cranking {peak} may be left; the input needs {counts_from}.";
    OVER_VOLTAGE = "trigger.over-voltage",
        "At {speed} the sensor puts up to {peak} on an input rated for {bears}.";
    REVERSED = "trigger.reversed",
        "The sensor is the wrong way round: the crossing used is not at the tooth's middle, smears at the gap and moves with speed.";
    NO_PULL_UP = "trigger.no-pull-up", "The sensor only pulls down, and nothing pulls up: the level never rises.";
    RAIL_TOO_HIGH = "trigger.rail-too-high", "The input gets up to {high} and is rated for {bears}.";
    HIGH_TOO_LOW = "trigger.high-too-low", "The signal's high is only {high}; the input reads high from {asked}: {what}.";
    LOW_TOO_HIGH = "trigger.low-too-high", "Low is up to {low}; the input reads low at {asked} or less.";
    OVER_SINK = "trigger.over-sink", "The sensor must sink up to {sunk} and may sink {sink}.";
    SLOW_RISE = "trigger.slow-rise",
        "The level takes up to {time} to rise, {turned} of the crank at {speed}; half a tooth is {half}.";
    SHIELD_BOTH = "trigger.shield-both",
        "The shield is grounded at both ends: it carries the engine's ground current beside the signal.";
    SHIELD_NONE = "trigger.shield-none", "The shield is connected nowhere: it shields nothing.";
    NO_SUCH_TOOTH = "trigger.no-such-tooth",
        "Tooth {tooth} is none of the wheel's {teeth}: count from the first after the gap.";
    LEVELS_CROSS = "trigger.levels-cross",
        "Low up to {low} and high from {high}: a level between would be both. Usual levels are assumed instead.";
    OFFSET_DIFFERS = "trigger.offset-differs",
        "Every spark comes {error} {way}: tooth {tooth} at the sensor at TDC is {stands}; {offset} is entered.";
    GAP_DIFFERS = "trigger.gap-differs",
        "Every spark comes {error} {way}: by “From the gap to TDC” the offset is {stands}; {offset} is entered.";
    OFFSET_WRONG = "trigger.offset-wrong",
        "Sparks come {error} {way} at any speed: enter {enter} in place of {offset}.";
    OFFSET_WRONG_BLANK = "trigger.offset-wrong-blank",
        "Sparks come {error} {way} at any speed: make the offset in the controller {error} {change} (90° becomes {example}).";
    SAME_SPEED = "trigger.same-speed", "Both readings are at {speed}: offset and delay can't be told apart.";
    DELAYED = "trigger.delayed", "Sparks come {delay} late: {late} at {speed}, less below.";
    GAINED = "trigger.gained",
        "The advance grows by {gained} up to {speed}: it was not locked, or a delay is compensated twice.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: NO_POSITION.code,
        // No missing tooth, more than one tooth, and no cam sensor.
        why: "Spark and fuel have nothing to be timed by.",
        act: "Use a wheel with a gap, or add a cam sensor.",
        source: "it follows from the wheel: all its teeth look alike",
    },
    Explanation {
        code: TOO_FAST.code,
        // Teeth between neighbours at the highest speed come faster than the input follows.
        why: "Teeth are lost, the controller loses its place, and the engine cuts out or sparks anywhere.",
        act: "Use a wheel with fewer teeth, or lower the rev limit.",
        source: "f = n N / 60; the controller's data",
    },
    Explanation {
        code: TOO_SLOW.code,
        // Crank or cam at the slowest instant of cranking is below the input's lowest frequency.
        why: "The engine counts as stopped at each compression, and never starts.",
        act: "A wheel with more teeth, a stronger battery, or an input that works down to standstill.",
        source: "f = n N / 60; the controller's data",
    },
    Explanation {
        code: COARSE.code,
        // A step of time is more than half a degree at the highest speed.
        why: "Spark and speed jitter by that much.",
        act: "Keep it in mind where timing is set to the last degree.",
        source: "0.5 degrees: common practice, no source",
    },
    Explanation {
        code: LOSES.code,
        // More than ten degrees over the gap if the speed before it is taken to go on.
        why: "Sparks in the gap are out by that much while the engine starts, when the speed changes fastest.",
        act: "A wheel with more teeth, or a gap away from TDC.",
        source: "the steepest change of speed along a sine; the limit of 10 degrees and the dip: common practice, no source",
    },
    Explanation {
        code: GAP_UNKNOWN.code,
        // The same, where neither the offset, the tooth nor the angle behind the gap is typed.
        why: "With the gap away from every spark nothing is lost.",
        act: "Count the tooth at TDC, or measure the angle from the gap to TDC.",
        source: "the steepest change of speed along a sine; the limit of 10 degrees and the dip: common practice, no source",
    },
    Explanation {
        code: FEW_TEETH.code,
        // The widest interval is more than a quarter of the firing interval.
        why: "Speed falls at each compression and rises after it; with few teeth a spark while cranking is a guess.",
        act: "Start with little advance, or use a wheel with more teeth.",
        source: "sampling a swing takes several readings of it; common practice, no source",
    },
    Explanation {
        code: WEAK.code,
        // The lowest peak at the input at the slowest instant is below that from which the input counts.
        why: "Teeth go uncounted at each compression: no start, cold above all.",
        act: "Narrow the air gap within its data, or use a sensor that gives more, or a Hall sensor.",
        source: "law of induction: University Physics, vol. 2, section 13.1",
    },
    Explanation {
        code: OVER_VOLTAGE.code,
        // The highest peak at the input at the highest speed is above what it bears.
        why: "It can destroy the input, at the highest speed of all.",
        act: "A resistor in series, with a clamp if that alone leaves too little while cranking.",
        source: "law of induction: University Physics, vol. 2, section 13.1; the controller's data",
    },
    Explanation {
        code: REVERSED.code,
        // Polarity typed as reversed.
        why: "It may start, then misfire: the gap is misread and the timing drifts with speed.",
        act: "Swap the sensor's two wires; then prove the timing with a light.",
        source: "common practice, no source",
    },
    Explanation {
        code: NO_PULL_UP.code,
        // An open collector whose output is pulled up to nothing.
        why: "No signal at all: the engine counts as stopped.",
        act: "Switch on the controller's pull-up, or fit a resistor between signal and the controller's 5 V.",
        source: "the circuit, solved; common practice, no source",
    },
    Explanation {
        code: RAIL_TOO_HIGH.code,
        // High at the input is above what it bears at some corner.
        why: "It can destroy the input, most often by a 12 V pull-up on a 5 V pin.",
        act: "Pull up to the controller's 5 V.",
        source: "the circuit, solved; the controller's data",
    },
    Explanation {
        code: HIGH_TOO_LOW.code,
        // The lowest high is below the threshold.
        why: "A signal that never gets high enough is no signal: no speed, no spark.",
        act: "A smaller pull-up, or a higher rail within the input's rating.",
        source: "the circuit, solved",
    },
    Explanation {
        code: LOW_TOO_HIGH.code,
        // The highest low is above the threshold.
        why: "A tooth is seen now and not then, above all when the starter lifts the ground.",
        act: "Ground the sensor at the controller, repair the contact, or use a larger pull-up.",
        source: "the circuit, solved",
    },
    Explanation {
        code: OVER_SINK.code,
        // The highest current is above what the sensor may sink.
        why: "Its low creeps up, and the sensor dies warm.",
        act: "A larger pull-up, or a lower rail.",
        source: "the circuit, solved; the sensor's data",
    },
    Explanation {
        code: SLOW_RISE.code,
        // The longest rise is more than half a tooth, or more than half a degree at the highest speed.
        why: "The rising edge comes late, more so with speed; past half a tooth it is lost.",
        act: "A smaller pull-up, a shorter cable, or let the controller use the falling edge.",
        source: "University Physics, vol. 2, section 10.5",
    },
    Explanation {
        code: SHIELD_BOTH.code,
        // The shield is connected at both ends.
        why: "Starter and coil currents return through it and induce in the signal what it should keep out.",
        act: "Cut it off at the sensor, insulate the end.",
        source: "common practice, no source",
    },
    Explanation {
        code: SHIELD_NONE.code,
        // The shield is connected nowhere.
        why: "A floating shield hands on what it catches.",
        act: "Connect it at the controller only; without one, twist the pair and keep it from coil leads.",
        source: "common practice, no source",
    },
    Explanation {
        code: NO_SUCH_TOOTH.code,
        // The tooth at top dead centre is beyond the teeth that the wheel has.
        why: "What follows from a tooth that isn't there would be no offset.",
        act: "Count again, the missing ones left out.",
        source: "the positions of the wheel, less those that are missing",
    },
    Explanation {
        code: LEVELS_CROSS.code,
        // The low level is no lower than the high one.
        why: "Levels can't be judged by thresholds that overlap.",
        act: "Look them up: low is always below high.",
        source: "it follows from what low and high mean",
    },
    Explanation {
        code: OFFSET_DIFFERS.code,
        // Tooth and offset differ by more than half a tooth, turns left out.
        why: "Every spark is off by so much: kick-back, or no start.",
        act: "Count again, then enter the offset that the tooth gives, and prove it with a light.",
        source: "360 degrees shared by the positions",
    },
    Explanation {
        code: GAP_DIFFERS.code,
        // The angle measured from the gap and the offset entered are further apart than a mark is read, turns left out.
        why: "Both are one angle: every spark, or every time to the first spark, is off by the difference.",
        act: "Measure again with the degree wheel, then enter what the engine shows, and prove it with a light.",
        source: "definition of both; a reading of the mark: common practice, no source",
    },
    Explanation {
        code: OFFSET_WRONG.code,
        // The constant error of two readings is more than a degree, the offset entered known.
        why: "Every spark is off by so much; too early destroys pistons under load.",
        act: "Enter the value, and read the light again at both speeds.",
        source: "two readings solved for error and delay; 1 degree: common practice, no source",
    },
    Explanation {
        code: OFFSET_WRONG_BLANK.code,
        // The same without the offset entered.
        why: "Every spark is off by so much; too early destroys pistons under load.",
        act: "Type the offset that is entered to see its new number. Then read the light again.",
        source: "two readings solved for error and delay; 1 degree: common practice, no source",
    },
    Explanation {
        code: SAME_SPEED.code,
        // Both readings are at one speed.
        why: "Two equations need two speeds.",
        act: "Take the second reading at a speed well above the first.",
        source: "two readings solved for error and delay",
    },
    Explanation {
        code: DELAYED.code,
        // The delay is more than a degree at the higher speed.
        why: "Offset alone can't fix it: right at one speed it is wrong at the other.",
        act: "Enter the delay if the controller has a field for it; look for a filter, a weak pull-up, a reversed sensor.",
        source: "delay = error / (6 n); 1 degree: common practice, no source",
    },
    Explanation {
        code: GAINED.code,
        // The delay is below nought by more than a degree at the higher speed.
        why: "Nothing sparks before it is told to: the readings are not what they seem.",
        act: "Lock the timing, then read both again.",
        source: "delay = error / (6 n); 1 degree: common practice, no source",
    },
];
