//! The sentences of the question of sensors.

pub(crate) mod explained;

use crate::words::sentences;

sentences! {
    QUESTION = "sensors.question", "What should each sensor read now?";
    PENDING = "sensors.pending", "One moment…";
    TITLE = "sensors.title", "{sensor} on {input}";
    TITLE_ALONE = "sensors.title-alone", "{sensor}";
    SUPPLY_TITLE = "sensors.supply-title", "Sensor supply {supply}";
    // verdicts
    BLANK = "sensors.blank", "Needs: a sensor and its type";
    OPEN_MEND = "sensors.open-mend", "Not answered yet: a field of it can't be read";
    OPEN_KIND = "sensors.open-kind", "Needs: its type";
    OPEN_DATA = "sensors.open-data", "Needs: its data, or ohms at two temperatures";
    OPEN_POINTS = "sensors.open-points", "Needs: its data, as points";
    OPEN_RANGE = "sensors.open-range", "Needs: the pressures at its two voltages";
    OPEN_STROKE = "sensors.open-stroke", "Needs: its volts over the stroke";
    OPEN_SWITCH = "sensors.open-switch", "Needs: what it connects to, and whether it is closed";
    OPEN_INPUT = "sensors.open-input", "Now {ohms} unplugged; needs its input";
    OPEN_PULL = "sensors.open-pull", "Now {ohms} unplugged; needs the input's pull-up";
    NOW_BOTH = "sensors.now-both", "Now {ohms} unplugged, {volts} plugged in";
    NOW_VOLTS = "sensors.now-volts", "Now {volts} plugged in";
    NOW_WARM = "sensors.now-warm", "Warm, in free air: {volts}";
    NOW_EITHER = "sensors.now-either", "Now about 0 V, or {volts}, as it stands";
    NOW_KNOCK = "sensors.now-knock", "Now 100 kΩ or more unplugged";
    NOW_BETWEEN = "sensors.now-between", "Between {low} and {high}, by what is in the tank";
    NOW_TRACKS = "sensors.now-tracks", "Released {first} and {second}: the tracks agree";
    NOW_TRACK = "sensors.now-track", "Released {first}";
    IS_FED = "sensors.is-fed", "12 V destroys it or its input";
    IS_MISPLACED = "sensors.is-misplaced", "Its input can't read it";
    IS_UNPULLED = "sensors.is-unpulled", "No pull-up: the input reads nothing";
    IS_SHARED = "sensors.is-shared", "Two sensors are on one input";
    IS_UNABLE = "sensors.is-unable", "It can't tell that";
    IS_MISREAD = "sensors.is-misread", "The table entered is another sensor's";
    IS_OFF = "sensors.is-off", "It reads wrong";
    IS_SET = "sensors.is-set", "Its input is set as another sensor";
    IS_APART = "sensors.is-apart", "Its two tracks don't agree";
    IS_COARSE = "sensors.is-coarse", "Its input is coarse where it matters";
    SUPPLY_OVER = "sensors.supply-over-verdict", "Too much for the supply: {draws} of {rating}";
    SUPPLY_GOOD = "sensors.supply-good", "Enough: {draws} of {rating}";
    SUPPLY_SO_FAR = "sensors.supply-so-far", "At least {draws} of {rating}: draws are missing";
    SUPPLY_OPEN = "sensors.supply-open", "At least {draws}: needs what it may give";
    SUPPLY_BLANK = "sensors.supply-blank", "Needs: what its sensors draw";
    // why
    WHY_ENDS = "sensors.why-ends", "At {cold}: {cold_reads}. At {hot}: {hot_reads}.";
    WHY_SHORT = "sensors.why-short", "A short on it takes down together: {sensors}.";
    WHY_GROUND = "sensors.why-ground",
        "At {cold}: {cold_reads}. At {hot}: {hot_reads}. Not grounded at the controller's sensor ground: each 10 mV between them is {off}.";
    TAKEN = "sensors.taken", "Assumed: {list}.";
    // what to do
    DO_DATA = "sensors.do-data",
        "Look up its data; or read its ohms unplugged, cold and hot, and type both.";
    DO_PULL = "sensors.do-pull", "Find the input's pull-up: in the pin table, or with 1 kΩ as the field says.";
    DO_DRAWS = "sensors.do-draws", "Look up what these draw: {list}.";
    DO_RATING = "sensors.do-rating", "Look up what this supply may give.";
    DO_LIMITS = "sensors.do-limits",
        "Enter its fault limits: below {low} is a short, above {high} a broken wire.";
    DO_SET = "sensors.do-set",
        "In the controller set {input} as {purpose}: {low} at {low_volts}, {high} at {high_volts}.";
    DO_CALIBRATE = "sensors.do-calibrate",
        "Enter the table of this sensor: {points}.";
    DO_STOOD = "sensors.do-stood",
        "Compare the temperatures that the controller shows while the engine is cold, after a night: all alike within 3 °C. After a run each is as hot as its place.";
    DO_OPEN_AIR = "sensors.do-open-air",
        "Key on, engine stopped, hose off: the controller shows the air's pressure, {air}, for one that is absolute, and 0 for one that is gauge.";
    DO_AIR = "sensors.do-air",
        "Key on, engine stopped, hose off: the controller shows the air's pressure, {air}.";
    DO_NO_PRESSURE = "sensors.do-no-pressure",
        "Key on, engine stopped, no pressure on it: the controller shows 0.";
    DO_STROKE = "sensors.do-stroke",
        "Key on, engine stopped: move it slowly from stop to stop; both tracks follow without a gap.";
    DO_WARM_AIR = "sensors.do-warm-air",
        "Once its heater is warm, in free air: {volts}. Cold it tells nothing.";
    CAUTION_HOT = "sensors.caution-hot",
        "Open no cooling system while it is hot: measure hot by what is outside, hands clear of belts, fan and exhaust.";
    CAUTION_THROTTLE = "sensors.caution-throttle",
        "Keep fingers out of an electronic throttle with the key on: its plate shuts on them.";
    // fixes
    CURE_PULL = "sensors.cure-pull", "Fit a pull-up of {best} from {input} to its sensor supply.";
    CURE_BEST = "sensors.cure-best", "A pull-up of {best} in place of {now}.";
    CURE_DISCONNECT = "sensors.cure-disconnect", "Cut the old wire off: the input's own pull-up alone.";
    CURE_FEED = "sensors.cure-feed", "Feed it from a sensor supply.";
    CURE_TABLE = "sensors.cure-table", "Enter this sensor's own table: {points}.";
    CURE_SET = "sensors.cure-set", "Set its input in the controller as {purpose}.";
    CURE_SECOND = "sensors.cure-second", "By these volts it runs {run}: type it so, and set the controller so.";
    // figures and tables
    FIGURE_OHMS = "sensors.figure-ohms", "Ohms now, unplugged";
    FIGURE_VOLTS = "sensors.figure-volts", "Volts now, plugged in";
    FIGURE_AIR = "sensors.figure-air", "Air pressure now";
    FIGURE_STEP = "sensors.figure-step", "One step of the input, hot";
    FIGURE_BEST = "sensors.figure-best", "Best pull-up of the E12 series";
    FIGURE_HEAT = "sensors.figure-heat", "Heat in it, hot";
    FIGURE_SELF = "sensors.figure-self", "Warmed by its own current in still air, now";
    FIGURE_GROUND = "sensors.figure-ground", "10 mV of ground offset, hot";
    FIGURE_DRAWS = "sensors.figure-draws", "Drawn by its sensors, at least";
    FIGURE_JUNCTION = "sensors.figure-junction", "Its thermocouple itself, hot, cold end as warm as today";
    TABLE = "sensors.table", "What it reads";
    COL_TOLD = "sensors.col-told", "It tells";
    COL_OHMS = "sensors.col-ohms", "Ohms unplugged";
    COL_VOLTS = "sensors.col-volts", "Volts plugged in";
    COL_SHOWN = "sensors.col-shown", "The controller shows";
    TRACKS = "sensors.tracks", "Over the stroke";
    COL_FIRST = "sensors.col-first", "First track";
    COL_SECOND = "sensors.col-second", "Second track";
    COL_SUM = "sensors.col-sum", "Sum";
    // findings
    PAIRS_UNREAD = "sensors.pairs-unread",
        "{field}: “{piece}” can't be read. Pairs, with a comma between: {example}.";
    NOT_A_CURVE = "sensors.not-a-curve",
        "{field}: no curve. It takes two pairs or more, in which what is read only rises or only falls.";
    NO_SERIES = "sensors.no-series",
        "{field}: three numbers A B C, or four with the resistance at 25 °C, of a resistance that falls.";
    NO_SPAN = "sensors.no-span", "Both ends of its range are the same: no pressure can be told.";
    NO_STROKE = "sensors.no-stroke", "{field}: volts from 0 to 16, with blanks between: 0.5 1.5 3.0 4.5.";
    NO_SUCH_INPUT = "sensors.no-such-input", "{field}: no input is called “{name}”.";
    NO_SUCH_SUPPLY = "sensors.no-such-supply", "{field}: no sensor supply is called “{name}”.";
    CANNOT = "sensors.cannot", "{kind} can't tell {purpose}.";
    GAUGE_FOR_ABSOLUTE = "sensors.gauge-for-absolute",
        "A gauge sensor reads 0 at the air's pressure; {purpose} is counted from nothing, {air} now.";
    INPUT_TWICE = "sensors.input-twice", "{sensor} is on {input}, and {other} too: neither is read.";
    WRONG_INPUT = "sensors.wrong-input", "{input} reads {takes}; {sensor} gives {gives}.";
    NO_PULL_UP = "sensors.no-pull-up", "{sensor} is only ohms, and nothing pulls {input} up: it reads 0 V or floats.";
    PULLED_UNWANTED = "sensors.pulled-unwanted",
        "{sensor} drives its own voltage, and {input} pulls it up through {pull_up}: it reads too high, most at its low end.";
    SECOND_PULL = "sensors.second-pull",
        "What is still connected pulls too: at {at} the input reads {both} and not {alone}, which is {off} off.";
    GAUGE_OVER = "sensors.gauge-over",
        "The old gauge puts up to {high} on an input that reads up to {range}.";
    OVER_SUPPLY = "sensors.over-supply", "{sensor} is made for 5 V and is fed 12 V.";
    TO_BATTERY = "sensors.to-battery", "Closed, the switch puts the battery on {input}, which reads up to {range}.";
    TABLE_READS_COLD = "sensors.table-reads-cold",
        "At {at} the controller will show {shown}: a hot engine reads cold.";
    TABLE_DIFFERS = "sensors.table-differs", "At {at} the controller will show {shown}.";
    TABLE_ENDS = "sensors.table-ends", "The table entered ends at {end}: at {at} the controller still shows {shown}.";
    TABLE_NOT_THIS = "sensors.table-not-this",
        "{ohms} was read at {at}; the table entered makes {shown} of it: it is another sensor's.";
    READING_DIFFERS = "sensors.reading-differs",
        "{read} was read at {at}; by its data it is {expected}.";
    READS_OPEN = "sensors.reads-open", "{read} was read, as with the wire broken or the sensor unplugged; it should be {expected}.";
    READS_SHORT = "sensors.reads-short", "{read} was read, as with the wire on ground or no pull-up; it should be {expected}.";
    COARSE = "sensors.coarse", "At {at} one step of {input} is {step} under a pull-up of {now}.";
    SET_OTHERWISE = "sensors.entered-otherwise", "{input} is set as {entered} in the controller; {sensor} tells {purpose}.";
    TRACKS_ALIKE = "sensors.tracks-alike",
        "Both tracks run alike: a short between them reads as a stroke, and nothing tells it from one.";
    TRACKS_DIFFER = "sensors.tracks-differ", "Over the stroke the tracks are up to {apart} from running {run}; their sum goes from {low} to {high}.";
    ONE_SUPPLY = "sensors.one-supply", "Both tracks are on one supply: one short takes both down, and the engine goes to idle.";
    SUPPLY_TOO_SMALL = "sensors.supply-too-small", "At least {draws} are drawn from {supply}, which may give {rating}.";
    AS_MIRRORED = "sensors.as-mirrored", "the other way (mirrored)";
    AS_HALF = "sensors.as-half", "at half the voltage";
    AS_ALIKE = "sensors.as-alike", "alike";
    GIVES_VOLTS = "sensors.gives-volts", "a voltage";
    GIVES_PULSES = "sensors.gives-pulses", "on and off";
    GIVES_NOISE = "sensors.gives-noise", "noise";
}
