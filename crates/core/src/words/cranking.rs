//! The sentences of the question of cranking.

pub(super) mod relays;

use super::{Explanation, Sentence};

pub(super) const SENTENCES: &[Sentence] = &[
    // what is still wanted
    ("cranking.open", "Not answered yet"),
    ("cranking.open-wants", "Type {wanted}: the rest has usual values until you know better."),
    ("cranking.wants-cylinders", "the number of cylinders"),
    ("cranking.wants-speed", "the cranking speed"),
    ("cranking.wants-threshold", "the speed at which the relay is switched on"),
    ("cranking.any-works", "Switch on at {low} to {high}"),
    (
        "cranking.any-works-why",
        "Above {low_end} a rocking engine can't close the relay; up to {high_end} every reading while cranking meets it.",
    ),
    ("cranking.none-works", "No threshold works here"),
    (
        "cranking.none-works-why",
        "The dips read down to {slowest}, and the relay must neither close at {rocking} nor let go in a dip.",
    ),
    // verdicts
    ("cranking.suits", "{threshold} suits: power before the first spark"),
    (
        "cranking.suits-why",
        "From the worst start the contact closes after {power} and {turned}, {margin} before dwell for the first spark begins; it does not open again.",
    ),
    ("cranking.suits-late", "{threshold} suits; a first spark may be missed"),
    ("cranking.late", "{threshold} brings power late"),
    (
        "cranking.late-why",
        "The contact closes after {power} and {turned} at the latest: from the worst start {lost} {lost|spark comes|sparks come} too early, a wait of {delay}.",
    ),
    ("cranking.suits-no-spark", "{threshold} suits the relay; no spark is possible"),
    ("cranking.never", "The relay never pulls in"),
    (
        "cranking.never-why",
        "The engine turns at {speed}, and no {agree} {agree|reading reaches|readings in a row reach} {threshold}.",
    ),
    ("cranking.may-never", "The relay may never pull in"),
    (
        "cranking.may-never-why",
        "At {corners}, no {agree} {agree|reading meets|readings in a row meet} {threshold} from some starting positions.",
    ),
    ("cranking.chatter", "The relay chatters while cranking"),
    (
        "cranking.chatter-why",
        "Once it has closed, a dip reads {lowest}, below the release of {release}: up to {openings} {openings|opening|openings} while the starter turns.",
    ),
    ("cranking.crest", "{threshold} is too near the dips"),
    (
        "cranking.crest-why",
        "The readings dip to {slowest}: the relay closes only between compressions, and a little more drag keeps it out.",
    ),
    ("cranking.always", "Power is on at standstill"),
    (
        "cranking.always-why",
        "With a threshold of nought nothing switches the relay off when the engine stands.",
    ),
    ("cranking.rocking", "{threshold} is too low: power at standstill"),
    (
        "cranking.rocking-why",
        "An engine that rocks as it stops may read {rocking}, which closes the relay again.",
    ),
    ("cranking.release", "The release must lie below {threshold}"),
    (
        "cranking.release-why",
        "At {release} it asks for on and off at once; the rest of this answer uses {usual}.",
    ),
    ("cranking.timeout", "The stall time-out cuts power while cranking"),
    (
        "cranking.timeout-why",
        "Between two teeth pass up to {interval}; after {timeout} the engine counts as stopped.",
    ),
    // what to do
    (
        "cranking.do-set",
        "Enter: on at {threshold}, off below {release}, {agree} {agree|reading|readings} in a row.",
    ),
    (
        "cranking.do-measure",
        "Record the speed from every tooth while cranking cold, fuel and spark off. Type the mean and the dip: they decide the band.",
    ),
    (
        "cranking.do-listen",
        "Unplug coils, injectors and pump, but leave this relay's fuse in. Crank and listen: one click, no buzz; its contact (87) reads battery voltage from then on.",
    ),
    (
        "cranking.do-stop",
        "Let go of the key and watch the meter: power must go when the engine stands.",
    ),
    // cautions
    (
        "cranking.caution-crank",
        "While cranking: coils, injectors and pump unplugged, gearbox in neutral, hands, hair and sleeves clear of belts and fan.",
    ),
    (
        "cranking.caution-pump",
        "Fuel and fire: a relay that stays in keeps the pump running after a crash. Put an inertia switch in the pump's feed, and follow the rules of your sport and the maker's data.",
    ),
    (
        "cranking.caution-coil",
        "A coil with power and its driver held on burns without blowing a fuse. Power must go when the engine stands.",
    ),
    // figures
    ("cranking.figure-works", "Thresholds that work"),
    ("cranking.figure-prompt", "Of these, no spark lost from any start"),
    ("cranking.figure-usual", "100 rpm, common practice"),
    ("cranking.figure-slowest", "Slowest true speed while cranking"),
    ("cranking.figure-slowest-reading", "Slowest reading while cranking"),
    ("cranking.figure-clearance", "Threshold below the slowest reading by"),
    ("cranking.figure-above-rocking", "Threshold above the rocking engine by"),
    ("cranking.figure-tooth", "From tooth to tooth at the slowest speed"),
    ("cranking.figure-gap", "Across the gap at the slowest speed"),
    ("cranking.figure-power", "Power, from the start of cranking"),
    ("cranking.figure-turned", "Crank angle by then"),
    ("cranking.figure-spark", "First spark possible, from the best start on"),
    ("cranking.figure-margin", "Power and dwell before the first spark"),
    ("cranking.figure-openings", "Openings after the first closing"),
    ("cranking.figure-off", "Power stays on after the engine dies"),
    ("cranking.figure-at-rest", "Of that, at standstill"),
    ("cranking.figure-relay", "Relay needs, coil cold to hot"),
    // table
    ("cranking.table", "Each corner, from the worst of all starting positions"),
    ("cranking.column-corner", "Corner"),
    ("cranking.column-mean", "Mean speed"),
    ("cranking.column-slowest", "Slowest reading"),
    ("cranking.column-power", "Power after"),
    ("cranking.column-spark", "First spark after"),
    ("cranking.column-lost", "Sparks lost"),
    ("cranking.column-openings", "Openings"),
    // picture
    (
        "cranking.picture",
        "Speed while cranking, {corner}: the dips at each compression, the readings, {threshold} to switch on and {release} to switch off.",
    ),
    ("cranking.mark-sync", "Position known"),
    ("cranking.mark-spark", "First spark possible"),
    ("cranking.mark-power", "Power"),
    ("cranking.mark-opens", "Relay opens"),
    // findings
    (
        "cranking.never-closes",
        "The relay is switched on at {threshold}, but the readings while cranking never meet it long enough at: {corners}.",
    ),
    (
        "cranking.chatters",
        "The relay opens again up to {openings} {openings|time|times} while the starter turns: a dip reads {lowest}, the release is {release}.",
    ),
    (
        "cranking.waits-for-crest",
        "The threshold of {threshold} lies above the slowest reading of {slowest}: the relay waits for a crest of the speed.",
    ),
    (
        "cranking.always-on",
        "A threshold of nought keeps power on an engine that stands: coils burn, the pump runs on.",
    ),
    (
        "cranking.on-at-standstill",
        "The threshold of {threshold} is not above the {rocking} that a rocking engine may read: power can come back at standstill.",
    ),
    (
        "cranking.no-mark",
        "The first spark waits for the gap, but a wheel of {positions} positions with none missing has no gap: the controller never knows where the engine is.",
    ),
    (
        "cranking.timeout-in-gap",
        "The stall time-out of {timeout} is shorter than the {interval} between two teeth at the slowest: power is cut while the engine turns.",
    ),
    (
        "cranking.sparks-lost",
        "From the worst starting position {lost} {lost|spark comes|sparks come} before the coils have power: the engine catches up to {delay} later.",
    ),
    (
        "cranking.gap-as-tooth",
        "A controller that takes the gap for one slow tooth would open the relay up to {openings} {openings|time|times} while cranking.",
    ),
    (
        "cranking.relay-weak",
        "With its coil at {hot} the relay is sure to pull in only from {needed}; cranking leaves {supply}. A hot restart may fail.",
    ),
    (
        "cranking.relay-too-weak",
        "Even cold the relay is sure to pull in only from {needed}; cranking leaves {supply}.",
    ),
    ("cranking.on-after-stop", "When the engine dies, power stays on for {on} after it stands."),
    (
        "cranking.even-guess",
        "The firing order is not known yet: {n} {n|compression is|compressions are} taken as evenly spaced.",
    ),
    (
        "cranking.setting-spread",
        "{field}: {low} to {high} is a range, but a controller takes one number. Type the one you will enter.",
    ),
    (
        "cranking.release-above",
        "The relay is to be switched off below {release}, which is not below the {threshold} at which it is switched on. Type less, for example {usual}.",
    ),
    (
        "cranking.all-missing",
        "{missing} missing teeth on a wheel of {positions} {positions|position|positions} leave none. Count again; missing ones are part of the positions.",
    ),
    // remedies
    (
        "cranking.set-threshold",
        "Switch on at {threshold} and off below {release}: simulated, it works at every corner from every start.",
    ),
    (
        "cranking.use-cam",
        "Let the first spark wait for the cam as well, or type how many teeth are missing.",
    ),
    ("cranking.set-timeout", "Set the stall time-out to {timeout} or more."),
    (
        "cranking.use-relay",
        "Use a relay that is sure to pull in at {voltage} or less with its coil at 20 °C, or mount it away from the heat.",
    ),
    (
        "cranking.shorter-timeout",
        "Shorten the stall time-out; the longest gap between teeth while cranking is {interval}.",
    ),
];

pub(super) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: "cranking.never-closes",
        // At a corner and from some starting position, the readings never reach the threshold as many
        // times in a row as must agree.
        why: "Coils or pump stay without power: the engine turns and never fires, most likely when it is cold.",
        act: "Lower the threshold below the slowest reading while cranking.",
        source: "simulation of the start from what was typed",
    },
    Explanation {
        code: "cranking.chatters",
        // After the contact first closed, the readings fall below the release for long enough while the
        // starter turns.
        why: "Contacts that open at coil current burn or weld, and sparks are lost.",
        act: "Lower the release, or ask for more readings in a row.",
        source: "simulation of the start from what was typed",
    },
    Explanation {
        code: "cranking.waits-for-crest",
        // The threshold lies between the slowest and the fastest reading while cranking.
        why: "The relay closes only between two compressions. A colder engine or a weaker battery keeps it out.",
        act: "Lower the threshold below the slowest reading.",
        source: "common practice, no source: the threshold lies below the slowest measured instant",
    },
    Explanation {
        code: "cranking.always-on",
        // The threshold is nought.
        why: "The relay no longer guards against a coil held on at standstill, nor against a pump that runs after a crash.",
        act: "Choose a threshold from the band that works.",
        source: "the purpose of a speed-switched relay",
    },
    Explanation {
        code: "cranking.on-at-standstill",
        // The threshold is at or below the speed that a rocking engine may read.
        why: "As the engine rocks to a standstill, the coils get power again with nothing turning.",
        act: "Raise the threshold above that speed.",
        source: "common practice, no source",
    },
    Explanation {
        code: "cranking.no-mark",
        // The first spark is to wait for a gap, and the wheel has none.
        why: "The controller can't tell where the engine is, and never fires a coil.",
        act: "Count the missing teeth again, or let the cam tell the position.",
        source: "a wheel of equal teeth looks the same at each of them",
    },
    Explanation {
        code: "cranking.timeout-in-gap",
        // Two teeth at the slowest cranking speed are further apart in time than the stall time-out.
        why: "The controller takes a turning engine for a stopped one and cuts power.",
        act: "Lengthen the stall time-out.",
        source: "time from tooth to tooth, 60 / (n z), and the gap",
    },
    Explanation {
        code: "cranking.sparks-lost",
        // The controller can fire before the relay has closed and the coil has had its dwell.
        why: "Those sparks don't come, and the engine fires one or more compressions later. Usually harmless; fuel injected meanwhile goes out unburnt and may pop.",
        act: "Lower the threshold within the band that works, if the start seems slow.",
        source: "simulation of the start from what was typed",
    },
    Explanation {
        code: "cranking.gap-as-tooth",
        // The readings that span the gap, divided by too few positions, fall below the release.
        why: "Some controllers have to be told of the missing teeth before they read the speed right.",
        act: "Tell the controller its wheel, or average over more teeth.",
        source: "simulation of the start from what was typed",
    },
    Explanation {
        code: "cranking.relay-weak",
        // The relay's pull-in voltage, raised by the resistance of a hot coil, exceeds the battery while
        // cranking.
        why: "A hot restart fails though all the settings are right.",
        act: "Measure the battery while cranking hot, keep the relay cool, or use one that pulls in at less.",
        source: "copper gains 0.393 % of its resistance per kelvin (IEC 60028); a relay needs the same current",
    },
    Explanation {
        code: "cranking.relay-too-weak",
        // The relay's pull-in voltage exceeds the battery while cranking even with the coil cold.
        why: "The relay may never close while the starter turns.",
        act: "Use a relay that pulls in at less, or a better battery and leads.",
        source: "copper gains 0.393 % of its resistance per kelvin (IEC 60028); a relay needs the same current",
    },
    Explanation {
        code: "cranking.on-after-stop",
        // No reading falls below the release before the engine stands, so that only the time-out cuts
        // power.
        why: "The pump runs and coils have power with nothing turning: a fire risk after a crash.",
        act: "Shorten the time-out, or raise the release.",
        source: "simulation of an engine that dies from idle",
    },
    Explanation {
        code: "cranking.even-guess",
        // The number of cylinders is known but their firings are not.
        why: "An odd-fire engine has its dips elsewhere.",
        act: "Type the firing order, and the angles of an odd-fire engine.",
        source: "the usual engine fires evenly",
    },
    Explanation {
        code: "cranking.setting-spread",
        // A range was typed where the controller takes one number.
        why: "Which of them is entered decides the answer.",
        act: "Type the number that will be entered.",
        source: "the form of this plan",
    },
    Explanation {
        code: "cranking.release-above",
        // The speed at which the relay is switched off is not below the one at which it is switched on.
        why: "Between the two the relay is told on and off at once, and chatters.",
        act: "Lower the release.",
        source: "what hysteresis is",
    },
    Explanation {
        code: "cranking.all-missing",
        // As many teeth are missing as the wheel has positions, or more.
        why: "Such a wheel gives no signal.",
        act: "Count the teeth and the places of the missing ones.",
        source: "what a wheel is",
    },
];
