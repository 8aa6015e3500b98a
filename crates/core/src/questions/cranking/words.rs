//! The sentences of the question of cranking.

pub(crate) mod relays;
pub(crate) mod supply;
pub(crate) mod unsearched;

use crate::words::{Explanation, sentences};

sentences! {
    QUESTION = "cranking.question", "When does the relay pull in?";
    PENDING = "cranking.pending", "One moment…";
    // what is still wanted
    OPEN = "cranking.open", "Not answered yet";
    NO_COIL_RELAY = "cranking.no-coil-relay", "No relay of the coils to set";
    NOT_BY_SPEED = "cranking.not-by-speed", "No speed to set: the coils' relay follows none";
    NOT_BY_SPEED_WHY = "cranking.not-by-speed-why",
        "The plan says that something other than an engine speed switches it.";
    OPEN_WANTS = "cranking.open-wants", "Type {wanted}; the rest has usual values until you know better.";
    WANTS_CYLINDERS = "cranking.wants-cylinders", "the number of cylinders";
    WANTS_SPEED = "cranking.wants-speed", "the cranking speed";
    WANTS_THRESHOLD = "cranking.wants-threshold", "the threshold of the coils' relay";
    ANY_WORKS = "cranking.any-works", "Threshold: {low} to {high}";
    ANY_WORKS_WHY = "cranking.any-works-why",
        "Above {low_end} a rocking engine can't pull the relay in; up to {high_end} every reading while cranking reaches it.";
    NONE_WORKS = "cranking.none-works", "No threshold works here";
    NONE_WORKS_WHY = "cranking.none-works-why",
        "The dips read down to {slowest}, and the relay must neither pull in at {rocking} nor drop out in a dip.";
    // verdicts
    SUITS = "cranking.suits", "{threshold} works: power before the first spark";
    SUITS_WHY = "cranking.suits-why",
        "Worst start: the contact closes after {power} ({turned}), {margin} before dwell for the first spark begins, and stays closed.";
    SUITS_LATE = "cranking.suits-late", "{threshold} works; a first spark may be missed";
    LATE = "cranking.late", "{threshold}: power comes late";
    LATE_WHY = "cranking.late-why",
        "The contact closes after {power} ({turned}) at the latest: from the worst start {lost} {lost|spark is|sparks are} lost, a wait of {delay}.";
    SUITS_NO_SPARK = "cranking.suits-no-spark", "{threshold} works for the relay; no spark is possible";
    NEVER = "cranking.never", "The relay never pulls in";
    NEVER_WHY = "cranking.never-why",
        "The engine turns at {speed}, and no {agree} {agree|reading reaches|readings in a row reach} {threshold}.";
    MAY_NEVER = "cranking.may-never", "The relay may never pull in";
    MAY_NEVER_WHY = "cranking.may-never-why",
        "At {corners}, no {agree} {agree|reading reaches|readings in a row reach} {threshold} from some starting positions.";
    CHATTER = "cranking.chatter", "The relay chatters while cranking";
    CHATTER_WHY = "cranking.chatter-why",
        "Once it is in, a dip reads {lowest}, below the release of {release}: it drops out again, {openings}.";
    A_SECOND = "cranking.a-second", "{rate} times a second";
    IN_RUN_UP = "cranking.in-run-up", "{count} {count|time|times} in the run-up";
    CREST = "cranking.crest", "{threshold} is too near the dips";
    CREST_WHY = "cranking.crest-why",
        "The readings dip to {slowest}: the relay pulls in only between compressions, and a little more drag keeps it out.";
    ALWAYS = "cranking.always", "Power is on at standstill";
    ALWAYS_WHY = "cranking.always-why",
        "With a threshold of 0 rpm nothing switches the relay off when the engine stops.";
    ROCKING = "cranking.rocking", "{threshold} is too low: power at standstill";
    ROCKING_WHY = "cranking.rocking-why",
        "An engine that rocks as it stops may read {rocking}, which pulls the relay in again.";
    RELEASE = "cranking.release", "The release must not be above {threshold}";
    RELEASE_WHY = "cranking.release-why",
        "A release of {release} asks for on and off at once; the rest of this answer uses {usual}.";
    TIMEOUT = "cranking.timeout", "The stall time-out cuts power while cranking";
    TIMEOUT_WHY = "cranking.timeout-why",
        "Up to {interval} pass between two teeth; after {timeout} the engine counts as stopped.";
    // what to do
    DO_SET = "cranking.do-set",
        "Enter: threshold {threshold}, release {release}, {agree} {agree|reading|readings} in a row.";
    DO_KEEP = "cranking.do-keep",
        "Keep threshold {threshold}, release {release}, {agree} {agree|reading|readings} in a row.";
    DO_MEASURE = "cranking.do-measure",
        "Record the speed from every tooth while cranking cold, fuel and spark off. Type the mean and the dip: they decide the band.";
    DO_LISTEN = "cranking.do-listen",
        "Unplug coils, injectors and pump, but leave this relay's fuse in. Crank and listen: one click, no buzz; its contact (87) reads battery voltage from then on.";
    DO_STOP = "cranking.do-stop", "Let go of the key and watch the meter: power must go when the engine stops.";
    // cautions
    CAUTION_CRANK = "cranking.caution-crank",
        "While cranking: coils, injectors and pump unplugged, gearbox in neutral, hands, hair and sleeves clear of belts and fan.";
    CAUTION_PUMP = "cranking.caution-pump",
        "Fire risk: a relay that stays in keeps the pump running after a crash. Put an inertia switch in the pump's feed, and follow the rules of your sport and the maker's data.";
    CAUTION_COIL = "cranking.caution-coil",
        "A coil held on burns without blowing a fuse. Power must go when the engine stops.";
    // figures
    FIGURE_WORKS = "cranking.figure-works", "Thresholds that work";
    FIGURE_PROMPT = "cranking.figure-prompt", "Of these, no spark lost from any start";
    FIGURE_USUAL = "cranking.figure-usual", "100 rpm, common practice";
    FIGURE_SLOWEST = "cranking.figure-slowest", "Slowest true speed while cranking";
    FIGURE_SLOWEST_READING = "cranking.figure-slowest-reading", "Slowest reading while cranking";
    FIGURE_CLEARANCE = "cranking.figure-clearance", "Slowest reading less the threshold";
    FIGURE_ABOVE_ROCKING = "cranking.figure-above-rocking", "Threshold above the rocking engine by";
    FIGURE_TOOTH = "cranking.figure-tooth", "Tooth to tooth at the slowest speed";
    FIGURE_GAP = "cranking.figure-gap", "Across the gap at the slowest speed";
    FIGURE_POWER = "cranking.figure-power", "Powered after, from the start of cranking";
    FIGURE_TURNED = "cranking.figure-turned", "Crank angle by then";
    FIGURE_SPARK = "cranking.figure-spark", "Earliest first spark";
    FIGURE_MARGIN = "cranking.figure-margin", "Time to spare before the first spark";
    FIGURE_OPENINGS = "cranking.figure-openings", "Drops out again";
    FIGURE_OFF = "cranking.figure-off", "Power stays on after the engine dies";
    FIGURE_AT_REST = "cranking.figure-at-rest", "Of that, at standstill";
    FIGURE_RELAY = "cranking.figure-relay", "Relay needs to pull in, coil cold to hot";
    // table
    TABLE = "cranking.table", "Each case, at its worst starting position";
    COLUMN_CORNER = "cranking.column-corner", "Case";
    COLUMN_MEAN = "cranking.column-mean", "Mean speed";
    COLUMN_SLOWEST = "cranking.column-slowest", "Slowest reading";
    COLUMN_POWER = "cranking.column-power", "Powered after";
    COLUMN_SPARK = "cranking.column-spark", "First spark after";
    COLUMN_LOST = "cranking.column-lost", "Sparks lost";
    COLUMN_OPENINGS = "cranking.column-openings", "Drops out";
    // picture
    PICTURE = "cranking.picture",
        "Speed while cranking, {corner}: dips at each compression, the readings, threshold {threshold} and release {release}.";
    MARK_SYNC = "cranking.mark-sync", "Position known";
    MARK_SPARK = "cranking.mark-spark", "First spark possible";
    MARK_POWER = "cranking.mark-power", "Power";
    MARK_OPENS = "cranking.mark-opens", "Relay drops out";
    // findings
    NEVER_CLOSES = "cranking.never-closes",
        "The relay's threshold is {threshold}, but the readings while cranking never reach it for long enough: {corners}.";
    CHATTERS = "cranking.chatters",
        "While the starter turns the relay drops out again, {openings}: a dip reads {lowest}, the release is {release}.";
    WAITS_FOR_CREST = "cranking.waits-for-crest",
        "Threshold {threshold}, but the readings dip to {slowest}: the relay waits for a crest of the speed.";
    ALWAYS_ON = "cranking.always-on",
        "A threshold of 0 rpm keeps power on while the engine is stopped: coils burn, the pump runs on.";
    ON_AT_STANDSTILL = "cranking.on-at-standstill",
        "The threshold of {threshold} is not above the {rocking} that a rocking engine may read: power can come back at standstill.";
    NO_MARK = "cranking.no-mark",
        "The first spark waits for the gap, but a wheel of {positions} positions with none missing has no gap: the controller never knows where the engine is.";
    TIMEOUT_IN_GAP = "cranking.timeout-in-gap",
        "The stall time-out of {timeout} is shorter than the {interval} between two teeth at the slowest. The speed reads 0: power is cut while the engine turns.";
    CONTROLLER_RESTARTS = "cranking.controller-restarts",
        "While the starter turns the battery may drop to {supply}, and the controller needs {least}: it restarts in the middle of the start, again and again.";
    HOLD_SUPPLY = "cranking.hold-supply",
        "A stronger battery, thicker and shorter cables to the starter, and a feed of the controller's own from the battery post.";
    SPARKS_LOST = "cranking.sparks-lost",
        "From the worst starting position {lost} {lost|spark comes|sparks come} before the coils have power: the engine catches up to {delay} later.";
    GAP_AS_TOOTH = "cranking.gap-as-tooth",
        "A controller that reads the gap as one slow tooth would let the relay drop out while cranking, {openings}.";
    RELAY_WEAK = "cranking.relay-weak",
        "With its coil at {hot} the relay is only sure to pull in at {needed}; while the starter turns it gets {coil} of the battery's {supply}. A hot restart may fail.";
    RELAY_TOO_WEAK = "cranking.relay-too-weak",
        "Even cold the relay is only sure to pull in at {needed}; while the starter turns its coil gets {coil} of the battery's {supply}.";
    ON_AFTER_STOP = "cranking.on-after-stop", "When the engine dies, power stays on for {on} after it has stopped.";
    EVEN_GUESS = "cranking.even-guess",
        "The firing order is not known yet: {n} evenly spaced {n|compression is|compressions are} assumed.";
    SETTING_SPREAD = "cranking.setting-spread",
        "{field}: {low} to {high} is a range, but a controller takes one number. Type the one you will enter.";
    RELEASE_ABOVE = "cranking.release-above",
        "The release of {release} is above the threshold of {threshold}. Type less, for example {usual}.";
    ALL_MISSING = "cranking.all-missing",
        "{missing} missing teeth on a wheel of {positions} {positions|position|positions} leave none. Count again; missing ones are part of the positions.";
    WHEEL_BY_NAME = "cranking.wheel-by-name",
        "“{typed}” is a wheel's name: its positions and its missing teeth have a field each.";
    WHEEL_OF_GAPS = "cranking.wheel-of-gaps",
        "Only one of its {n} gaps is worked out here: speeds and times hold, but find TDC by a degree wheel, not by counting teeth.";
    WHEEL_APART = "cranking.wheel-apart", "{positions} positions, {missing} missing.";
    // remedies
    SET_THRESHOLD = "cranking.set-threshold",
        "Set threshold {threshold} and release {release}: simulated, that works in every case from every start.";
    USE_CAM = "cranking.use-cam",
        "Let the first spark wait for the cam as well, or type how many teeth are missing.";
    SET_TIMEOUT = "cranking.set-timeout", "Set the stall time-out to {timeout} or more.";
    USE_RELAY = "cranking.use-relay",
        "Use a relay that is sure to pull in at {voltage} or less with its coil at 20 °C, or mount it away from the heat.";
    SHORTER_TIMEOUT = "cranking.shorter-timeout",
        "Shorten the stall time-out; the longest time between teeth while cranking is {interval}.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: NEVER_CLOSES.code,
        // At a corner and from some starting position, the readings never reach the threshold as many
        // times in a row as must agree.
        why: "Coils or pump stay without power: the engine turns and never fires, most likely when it is cold.",
        act: "Lower the threshold below the slowest reading while cranking.",
        source: "simulation of the start from what was typed",
    },
    Explanation {
        code: CHATTERS.code,
        // After the contact first closed, the readings fall below the release for long enough while the
        // starter turns.
        why: "Contacts that open at coil current burn or weld, and sparks are lost.",
        act: "Lower the release, or ask for more readings in a row.",
        source: "simulation of the start from what was typed",
    },
    Explanation {
        code: WAITS_FOR_CREST.code,
        // The threshold lies between the slowest and the fastest reading while cranking.
        why: "The relay pulls in only between two compressions. A colder engine or a weaker battery keeps it out.",
        act: "Lower the threshold below the slowest reading.",
        source: "common practice, no source: the threshold is below the slowest measured instant",
    },
    Explanation {
        code: ALWAYS_ON.code,
        // The threshold is nought.
        why: "The relay no longer guards against a coil held on at standstill, nor against a pump that runs after a crash.",
        act: "Choose a threshold from the band that works.",
        source: "the purpose of a speed-switched relay",
    },
    Explanation {
        code: ON_AT_STANDSTILL.code,
        // The threshold is at or below the speed that a rocking engine may read.
        why: "As the engine rocks to a standstill, the coils get power again with nothing turning.",
        act: "Raise the threshold above that speed.",
        source: "common practice, no source",
    },
    Explanation {
        code: NO_MARK.code,
        // The first spark is to wait for a gap, and the wheel has none.
        why: "The controller can't tell where the engine is, and never fires a coil.",
        act: "Count the missing teeth again, or let the cam tell the position.",
        source: "a wheel of equal teeth looks the same at each of them",
    },
    Explanation {
        code: TIMEOUT_IN_GAP.code,
        // Two teeth at the slowest cranking speed are further apart in time than the stall time-out.
        why: "The controller takes a turning engine for a stopped one and cuts power.",
        act: "Lengthen the stall time-out.",
        source: "time from tooth to tooth, 60 / (n z), and the gap",
    },
    Explanation {
        code: CONTROLLER_RESTARTS.code,
        // The lowest supply while cranking is below the least that the controller runs on.
        why: "Each restart drops relays and outputs and forgets where the engine is: no spark, or one at the wrong time.",
        act: "Measure at the controller's own pins while the starter turns, cold.",
        source: "the controller's data",
    },
    Explanation {
        code: SPARKS_LOST.code,
        // The controller can fire before the relay has closed and the coil has had its dwell.
        why: "Those sparks don't come, and the engine fires one or more compressions later. Usually harmless; fuel injected meanwhile goes out unburnt and may pop.",
        act: "Lower the threshold within the band that works, if the start seems slow.",
        source: "simulation of the start from what was typed",
    },
    Explanation {
        code: GAP_AS_TOOTH.code,
        // The readings that span the gap, divided by too few positions, fall below the release.
        why: "Some controllers must be set for the missing teeth before they read the speed right.",
        act: "Tell the controller its wheel, or average over more teeth.",
        source: "simulation of the start from what was typed",
    },
    Explanation {
        code: RELAY_WEAK.code,
        // The relay's pull-in voltage, raised by the resistance of a hot coil, exceeds the battery while
        // cranking.
        why: "A hot restart fails though all the settings are right.",
        act: "Measure the battery while cranking hot, keep the relay cool, or use one that pulls in at less.",
        source: "copper gains 0.393% of its resistance per kelvin (IEC 60028); a relay needs the same current",
    },
    Explanation {
        code: RELAY_TOO_WEAK.code,
        // The relay's pull-in voltage exceeds the battery while cranking even with the coil cold.
        why: "The relay may never pull in while the starter turns.",
        act: "Use a relay with a lower pull-in voltage, or a better battery and cables.",
        source: "copper gains 0.393% of its resistance per kelvin (IEC 60028); a relay needs the same current",
    },
    Explanation {
        code: ON_AFTER_STOP.code,
        // No reading falls below the release before the engine has stopped, so that only the time-out cuts
        // power.
        why: "The pump runs and coils have power with nothing turning: a fire risk after a crash.",
        act: "Shorten the time-out, or raise the release.",
        source: "simulation of an engine that dies from idle",
    },
    Explanation {
        code: EVEN_GUESS.code,
        // The number of cylinders is known but their firings are not.
        why: "An odd-fire engine has its dips elsewhere.",
        act: "Type the firing order, and the angles of an odd-fire engine.",
        source: "the usual engine fires evenly",
    },
    Explanation {
        code: SETTING_SPREAD.code,
        // A range was typed where the controller takes one number.
        why: "The answer depends on which of them is entered.",
        act: "Type the number that will be entered.",
        source: "the form of this plan",
    },
    Explanation {
        code: RELEASE_ABOVE.code,
        // The speed at which the relay is switched off lies above the one at which it is switched on.
        why: "Between the two the relay is switched on and off at once, and chatters.",
        act: "Lower the release.",
        source: "what hysteresis is",
    },
    Explanation {
        code: ALL_MISSING.code,
        // As many teeth are missing as the wheel has positions, or more.
        why: "Such a wheel gives no signal.",
        act: "Count the teeth and the places of the missing ones.",
        source: "what a wheel is",
    },
    Explanation {
        code: WHEEL_BY_NAME.code,
        // The wheel's name stands in the field of its positions: 60-2.
        why: "How far it is from tooth to tooth follows from the positions alone.",
        act: "Type the positions, and the missing teeth in their own field.",
        source: "the form of this plan",
    },
];
