//! The sentences of the question of injectors.

use super::{Explanation, Sentence};

pub(super) mod parts;

pub(super) const SENTENCES: &[Sentence] = &[
    // verdicts
    ("injectors.open", "Not answered yet: what is one injector's resistance?"),
    ("injectors.unreadable", "Not answered yet: the resistance can't be read"),
    ("injectors.sharing-unknown", "Not answered yet: how many share an output?"),
    ("injectors.limit-wanted", "They need outputs of at least {limit}"),
    ("injectors.carries", "Carries them, {margin} to spare"),
    ("injectors.carries-barely", "Carries them, but no margin: {margin}"),
    ("injectors.carries-unopened", "Carries them, but they may not open"),
    ("injectors.too-much", "Too much for the output: {corners}"),
    ("injectors.too-much-always", "Too much for the output, hot or cold"),
    ("injectors.peak-wanted", "Set its peak from {least} to {most}"),
    ("injectors.peak-impossible", "Can't be sure to open them: {corner}"),
    ("injectors.peak-good", "Serves them: peak reached at every corner"),
    ("injectors.peak-unused", "Serves them, as a plain switch would"),
    ("injectors.peak-missed", "Opens them, but misses its peak: {corners}"),
    ("injectors.peak-never", "Never reaches its peak with these injectors"),
    ("injectors.peak-small", "Its peak is too small to open {n|one|so many}"),
    ("injectors.peak-cut-short", "Its peak may end before they open: {corners}"),
    ("injectors.peak-by-time", "Serves them: its time limit ends the peak"),
    // why
    (
        "injectors.one-alone",
        "One injector of {resistance}, alone on an output, takes up to {most} ({corner}); those that share an output add up.",
    ),
    (
        "injectors.takes",
        "{n} × {resistance} on one output: {now} at rest, up to {most} ({corner}).",
    ),
    (
        "injectors.takes-of-limit",
        "{n} × {resistance} on one output: {now} at rest, up to {most} ({corner}); the limit is {limit}.",
    ),
    (
        "injectors.channel-needs",
        "{n} × {resistance} on one channel want {least} to open, and the battery pushes {most} at least ({corner}).",
    ),
    (
        "injectors.channel-gives",
        "{n} × {resistance} share a peak of {peak}: {share} each, where {opening} opens one; the battery pushes {most} at \
         least ({corner}).",
    ),
    // what to do
    ("injectors.any-one", "Any one of these is enough:"),
    (
        "injectors.wants-resistance",
        "Unplug one injector, meter across its two pins, then touch the probes together: the first reading less the second \
         is its resistance.",
    ),
    (
        "injectors.wants-sharing",
        "Count the injectors that one output of the controller feeds: one, or those of a pair or a bank.",
    ),
    (
        "injectors.wants-limit",
        "Look up the continuous current limit of one injector output in the controller's pin table.",
    ),
    (
        "injectors.wants-peak",
        "Look up the peak to which the output is set, and whether it can be changed; it limits the sum of its injectors.",
    ),
    (
        "injectors.fewer-counted",
        "Put {n} on each output: at most {highest} each then, {outputs} {outputs|output|outputs} in all.",
    ),
    (
        "injectors.fewer",
        "Put fewer on each output: {n} {n|takes|take} up to {highest}, with margin.",
    ),
    (
        "injectors.resistor-each",
        "Fit {value}, {rating}, in series with each injector: up to {highest} of {limit} then, and {left} left to open it \
         ({corner}).",
    ),
    (
        "injectors.resistor-each-tight",
        "Fit {value}, {rating}, in series with each injector: up to {highest} of {limit} then, and {left} left to open it \
         ({corner}). {roomier} gives ten percent of margin, and it still opens.",
    ),
    (
        "injectors.resistor-shared",
        "Fit one {value}, {rating}, into the wire that the injectors of an output share: up to {highest} of {limit}, and \
         {left} left for each ({corner}). One unplugged gives the others more.",
    ),
    (
        "injectors.resistor-shared-tight",
        "Fit one {value}, {rating}, into the wire that the injectors of an output share: up to {highest} of {limit}, and \
         {left} left for each ({corner}). One unplugged gives the others more. {roomier} gives ten percent of margin.",
    ),
    (
        "injectors.fewer-and-resistor",
        "Put {n} on each output, with {value}, {rating}, in series with each injector: up to {highest} of {limit} then, and \
         {left} left to open it ({corner}).",
    ),
    (
        "injectors.resistor-starves",
        "No resistor does it: the limit wants at least {least} ({least_corner}), and behind more than {most} an injector may \
         not open ({most_corner}).",
    ),
    (
        "injectors.resistor-has-no-value",
        "No resistor of the E12 or E24 series does it: it would have to lie from {least} ({least_corner}) to {most} ({most_corner}).",
    ),
    (
        "injectors.resistor-impossible",
        "No resistor does it: the limit wants {least} in series, and the injector may not open even without ({corner}).",
    ),
    (
        "injectors.resistor-too-hot",
        "No resistor does it: at the {least} that the limit wants it would turn {heat} into heat.",
    ),
    (
        "injectors.only-driver",
        "Only a driver that controls the current will do, a channel for each injector: a peak of {least} or more (up to {most} \
         is reached even {corner}), then {hold} or more to hold.",
    ),
    (
        "injectors.or-driver",
        "Fit a driver that controls the current, a channel for each injector: a peak of {least} or more (up to {most} is \
         reached even {corner}), then {hold} or more to hold. It opens them faster than a resistor lets them.",
    ),
    (
        "injectors.not-even-driver",
        "A driver that controls the current would not be sure to open them either: {most} flows at least ({corner}), {least} \
         is wanted.",
    ),
    ("injectors.better-output", "Use outputs with a limit of {limit} or more."),
    (
        "injectors.set-peak",
        "Set the peak from {least} to {most}: it opens them, and is reached at every corner.",
    ),
    (
        "injectors.time-out",
        "Ask for the driver's data: one that falls to its hold current after a few milliseconds, peak reached or not, is safe.",
    ),
    (
        "injectors.no-peak-fits",
        "No peak does both: {least} is wanted to open them, and {most} is all that is sure to flow ({corner}).",
    ),
    (
        "injectors.opens-from",
        "They are sure to open from {supply} at the battery on: charge it, or shorten the wires.",
    ),
    (
        "injectors.find-opening",
        "Find the current that opens one, in its maker's data or at the bench: what is taken is a guess.",
    ),
    (
        "injectors.measure-again",
        "Measure again: the reading across the injector less the reading with the probes touched together; a contact or a \
         lead of 2 Ω makes a low one look like this.",
    ),
    (
        "injectors.measure-another",
        "Measure a second one, unplugged: two in parallel on one connector read half of one.",
    ),
    ("injectors.taken", "Not given, so taken: {list}. Check what differs on your car."),
    // cautions
    (
        "injectors.hot-resistor",
        "Bolt the resistors to bare metal with paste, clear of the harness, hoses, fuel and hands: they get hot enough to burn.",
    ),
    (
        "injectors.no-diode",
        "No diode across an injector: it would take several times as long to close, and idle could not be tuned. The output's own \
         clamp ends the current.",
    ),
    (
        "injectors.before-wiring",
        "Battery off and the fuel rail without pressure before you work on this wiring. The makers' data for injector and \
         output go before these numbers.",
    ),
    // numbers
    ("injectors.output-current", "Current of one output"),
    ("injectors.injector-current", "Current of one injector"),
    ("injectors.output-unlimited", "Current of one output if nothing limits it"),
    ("injectors.injector-unlimited", "Current of one injector if nothing limits it"),
    ("injectors.outputs-used", "Outputs used"),
    ("injectors.limit-needed", "Limit an output needs, 10% of margin counted"),
    ("injectors.margin", "Left of the limit at the worst corner"),
    ("injectors.opening-current", "Current that opens one, as given"),
    ("injectors.opening-assumed", "Current that opens one, assumed"),
    ("injectors.opening-supply", "Battery voltage that is sure to open one"),
    ("injectors.rise", "Time to the current that opens one{with}: {corner}"),
    ("injectors.resistor-value", "Resistor with each injector, {series} series"),
    ("injectors.resistor-heat", "Its heat at the worst corner, current steady"),
    ("injectors.resistor-rating", "Rating to buy"),
    ("injectors.resistor-margin", "Left of the limit with it"),
    ("injectors.resistor-leaves", "Least current of an injector with it: {corner}"),
    ("injectors.resistor-opens-from", "Battery voltage that is sure to open one with it"),
    ("injectors.peak-share", "Peak of each injector"),
    ("injectors.peak-least", "Least peak that opens them"),
    ("injectors.peak-most", "Highest peak that is sure to be reached: {corner}"),
    ("injectors.hold-needed", "Hold current wanted at least"),
    ("injectors.corners", "Currents at every corner, each injector on a wire of its own"),
    (
        "injectors.corners-unlimited",
        "What the battery would push at every corner if nothing limits it",
    ),
    ("injectors.corners-with", "Currents with {value} in series with each injector"),
    ("injectors.column-when", "When"),
    ("injectors.column-supply", "Battery"),
    ("injectors.column-temperature", "Parts at"),
    ("injectors.column-injector", "One injector"),
    ("injectors.column-output", "One output"),
    ("injectors.column-result", "Result"),
    // findings
    (
        "injectors.more-than-there-are",
        "{per_output} injectors on one output, but there {count|is|are} only {count}. Type how many share an output, or how \
         many there are.",
    ),
    (
        "injectors.too-much-for-output",
        "Each injector output would carry up to {highest} ({corner}), {over} over its limit of {limit}.",
    ),
    (
        "injectors.no-margin",
        "Each injector output would carry up to {highest} ({corner}): {margin} below its limit of {limit}, where 10% is wanted.",
    ),
    (
        "injectors.may-not-open",
        "An injector may not open ({corner}): {current} flows at least, {opening} opens it ({basis}).",
    ),
    (
        "injectors.neither-high-nor-low",
        "{resistance} is neither clearly low impedance (below 5 Ω) nor clearly high (above 10 Ω).",
    ),
    (
        "injectors.uneven",
        "{count} injectors at {n} to an output fill {outputs} outputs, the last with {last} only.",
    ),
    (
        "injectors.peak-too-small",
        "A peak of {peak} does not open {n} {n|injector|injectors}: {least} is wanted, since the channel limits their sum.",
    ),
    (
        "injectors.peak-not-reached",
        "The battery may not push the peak of {peak} through: {most} at least ({corner}). The driver then stays fully on, and \
         it and the injector run hot.",
    ),
    (
        "injectors.peak-not-used",
        "The peak of {peak} is never reached: these injectors limit the current themselves, and the output acts as a plain \
         switch.",
    ),
    (
        "injectors.hold-too-small",
        "A hold current of {hold} may let {n|the injector|the injectors} close: {needed} is wanted.",
    ),
];

pub(super) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: "injectors.more-than-there-are",
        // More injectors share an output than the engine has.
        why: "The current of an output can't be told from numbers that contradict each other.",
        act: "Count the injectors that one output feeds.",
        source: "definition of a count",
    },
    Explanation {
        code: "injectors.too-much-for-output",
        // The highest current of an output is above its limit at some corner of supply and temperature.
        why: "The output burns, often not at once: it passes on the bench at 12 V and dies when the alternator charges in the cold.",
        act: "Fewer injectors on it, resistors, a driver that controls the current, or a stronger output.",
        source: "Ohm's law and the sum of currents; copper by IEC 60028; the limit is the maker's",
    },
    Explanation {
        code: "injectors.no-margin",
        // Less than ten percent of the output's limit is left at the worst corner.
        why: "A limit is seldom given for the heat of an engine bay, and a regulator that drifts takes the rest.",
        act: "Fewer injectors on it, or a stronger output; or accept it, knowing the maker's conditions for the limit.",
        source: "common practice, no source: ten percent of margin",
    },
    Explanation {
        code: "injectors.may-not-open",
        // At some corner less current flows than opens an injector.
        why: "The engine cranks and does not start: hot copper and a weak battery halve the current.",
        act: "Less resistance in series, a better battery, or injectors made for a lower voltage.",
        source: "Ohm's law; copper by IEC 60028; an assumed opening current is common practice, no source",
    },
    Explanation {
        code: "injectors.neither-high-nor-low",
        // One injector has 5 to 10 ohm.
        why: "Most have 1 to 4 or 11 to 17 ohm; between lies a rare part, two in parallel, or the resistance of the test leads.",
        act: "Measure again, leads subtracted, and a second one; the currents hold for the value that was typed.",
        source: "common practice, no source",
    },
    Explanation {
        code: "injectors.uneven",
        // The number of injectors is no multiple of the number on an output.
        why: "An output with fewer carries less, which is harmless; but the numbers may be a slip.",
        act: "Check both numbers.",
        source: "arithmetic; common practice, no source",
    },
    Explanation {
        code: "injectors.peak-too-small",
        // The peak of a current-controlled channel, shared by its injectors, is less than opens each.
        why: "The channel limits the sum: two injectors get half each and may never open.",
        act: "A higher peak, or fewer injectors on the channel.",
        source: "currents at a node sum to zero",
    },
    Explanation {
        code: "injectors.peak-not-reached",
        // Supply and resistance let less through than the peak at some corner.
        why: "The driver waits for a peak that never comes and does not fall to its hold current while cranking.",
        act: "A lower peak that still opens the injectors, or a driver that ends its peak by time.",
        source: "Ohm's law; how drivers behave is common practice, no source",
    },
    Explanation {
        code: "injectors.peak-not-used",
        // High-impedance injectors hang on an output that controls the current.
        why: "It does no harm: their own resistance keeps the current below the peak.",
        act: "Nothing; a plain switch would serve as well.",
        source: "Ohm's law, steady current",
    },
    Explanation {
        code: "injectors.hold-too-small",
        // The hold current is less than half of what opens the injectors that share the channel.
        why: "An injector that lets go within its pulse leans out its cylinder.",
        act: "A higher hold current, or fewer injectors on the channel.",
        source: "common practice, no source: half of the opening current holds",
    },
];
