//! The sentences of the question of injectors.

use crate::words::{Explanation, sentences};

pub(crate) mod parts;

sentences! {
    QUESTION = "injectors.question", "Can outputs carry the injectors?";
    PENDING = "injectors.pending", "One moment…";
    // verdicts
    OPEN = "injectors.open", "Needs: the resistance of one injector";
    UNREADABLE = "injectors.unreadable", "Not answered yet: the resistance can't be read";
    SHARING_UNKNOWN = "injectors.sharing-unknown", "Not answered yet: how many share an output?";
    LIMIT_WANTED = "injectors.limit-wanted", "They need outputs of at least {limit}";
    CARRIES = "injectors.carries", "Each output carries its injectors, {margin} of its limit to spare";
    CARRIES_BARELY = "injectors.carries-barely", "Each output carries its injectors, but no margin: {margin}";
    CARRIES_UNOPENED = "injectors.carries-unopened", "Each output carries its injectors, but they may not open";
    HAIR_OVER = "injectors.hair-over", "At its limit, a hair over: {corners}";
    TOO_MUCH = "injectors.too-much", "Too much for the output: {corners}";
    TOO_MUCH_ALWAYS = "injectors.too-much-always", "Too much for the output, hot or cold";
    PEAK_WANTED = "injectors.peak-wanted", "Set its peak to {peak}";
    PEAK_IMPOSSIBLE = "injectors.peak-impossible", "May not open them: {corner}";
    PEAK_GOOD = "injectors.peak-good", "Suits them: peak reached in every case";
    PEAK_UNUSED = "injectors.peak-unused", "Suits them, as a plain switch would";
    PEAK_MISSED = "injectors.peak-missed", "Opens them, but misses its peak: {corners}";
    PEAK_NEVER = "injectors.peak-never", "Never reaches its peak with these injectors";
    PEAK_SMALL = "injectors.peak-small", "Its peak is too small to open {n|one|so many}";
    PEAK_CUT_SHORT = "injectors.peak-cut-short", "Its peak may end before they open: {corners}";
    PEAK_BY_TIME = "injectors.peak-by-time", "Suits them: its time limit ends the peak";
    // why
    ONE_ALONE = "injectors.one-alone",
        "One injector of {resistance}, alone on an output, takes up to {most} ({corner}); those that share an output add up.";
    TAKES = "injectors.takes", "{n} × {resistance} on one output: {now} with the battery at rest, up to {most} ({corner}).";
    TAKES_OF_LIMIT = "injectors.takes-of-limit",
        "{n} × {resistance} on one output: {now} with the battery at rest, up to {most} ({corner}); the limit is {limit}.";
    CHANNEL_NEEDS = "injectors.channel-needs",
        "{n} × {resistance} on one channel need {least} to open, and the battery pushes at least {most} ({corner}).";
    CHANNEL_GIVES = "injectors.channel-gives",
        "{n} × {resistance} share a peak of {peak}: {share} each, where {opening} opens one; the battery pushes at least {most} ({corner}).";
    // what to do
    ANY_ONE = "injectors.any-one", "Other ways, any one of them enough:";
    WANTS_RESISTANCE = "injectors.wants-resistance",
        "Unplug one injector, meter across its two pins, then touch the probes together: the first reading less the second \
         is its resistance.";
    WANTS_SHARING = "injectors.wants-sharing",
        "Count the injectors that one output of the controller feeds: one, or those of a pair or a bank.";
    WANTS_LIMIT = "injectors.wants-limit",
        "Look up the continuous current limit of one injector output in the controller's pin table.";
    WANTS_PEAK = "injectors.wants-peak",
        "Look up the peak to which the output is set, and whether it can be changed; it limits the sum of its injectors.";
    FEWER_COUNTED = "injectors.fewer-counted",
        "Put {n} on each output: at most {highest} each then, {outputs} {outputs|output|outputs} in all.";
    FEWER = "injectors.fewer", "Put fewer on each output: {n} {n|takes|take} up to {highest}, with margin.";
    RESISTOR_EACH = "injectors.resistor-each",
        "Fit {value}, {rating}, in series with each injector: up to {highest} of {limit} then, and {left} left to open it \
         ({corner}).";
    FEWER_AND_RESISTOR = "injectors.fewer-and-resistor",
        "Put {n} on each output, with {value}, {rating}, in series with each injector: up to {highest} of {limit} then, and \
         {left} left to open it ({corner}).";
    RESISTOR_STARVES = "injectors.resistor-starves",
        "No resistor will do: the limit needs at least {least} ({least_corner}), and behind more than {most} an injector may not open ({most_corner}).";
    RESISTOR_HAS_NO_VALUE = "injectors.resistor-has-no-value",
        "No resistor of the E12 or E24 series will do: it would have to be from {least} ({least_corner}) to {most} ({most_corner}).";
    RESISTOR_IMPOSSIBLE = "injectors.resistor-impossible",
        "No resistor will do: the limit needs {least} in series, and the injector may not open even without ({corner}).";
    RESISTOR_TOO_HOT = "injectors.resistor-too-hot",
        "No resistor will do: at the {least} that the limit needs it would turn {heat} into heat.";
    ONLY_DRIVER = "injectors.only-driver",
        "Only a peak-and-hold driver will do, a channel for each injector: set its peak to {peak} ({least} to {most} would do, even {corner}), its hold current to {hold} or more.";
    OR_DRIVER = "injectors.or-driver",
        "Fit a peak-and-hold driver, a channel for each injector: set its peak to {peak} ({least} to {most} would do, even {corner}), its hold current to {hold} or more. It opens them faster than a resistor lets them.";
    NOT_EVEN_DRIVER = "injectors.not-even-driver",
        "Even a peak-and-hold driver may not open them: at least {most} flows ({corner}), {least} is needed.";
    BETTER_OUTPUT = "injectors.better-output", "Use outputs with a limit of {limit} or more.";
    SET_PEAK = "injectors.set-peak",
        "Set the peak to {peak}: it opens them, and is reached in every case ({least} to {most} would do).";
    TIME_OUT = "injectors.time-out",
        "Ask for the driver's data: one that falls to its hold current after a few milliseconds, peak reached or not, is safe.";
    NO_PEAK_FITS = "injectors.no-peak-fits",
        "No peak does both: {least} is needed to open them, and only {most} is sure to flow ({corner}).";
    OPENS_FROM = "injectors.opens-from",
        "They are only sure to open with {supply} or more at the battery: charge it, or shorten the wires.";
    FIND_OPENING = "injectors.find-opening",
        "Find the current that opens one, in its maker's data or on the bench: the one assumed is a guess.";
    MEASURE_AGAIN = "injectors.measure-again",
        "Measure again: the reading across the injector less the reading with the probes together; a contact or a probe of 2 Ω makes a low one look like this.";
    MEASURE_ANOTHER = "injectors.measure-another",
        "Measure a second one, unplugged: two in parallel on one connector read half of one.";
    TAKEN = "injectors.taken", "Assumed: {list}. Check what differs on your car.";
    // cautions
    HOT_RESISTOR = "injectors.hot-resistor",
        "Bolt the resistors to bare metal with thermal paste, clear of harness, hoses, fuel and hands: they get hot enough to burn.";
    NO_DIODE = "injectors.no-diode",
        "No diode across an injector: it would take several times as long to close, and idle could not be tuned. The output's own \
         clamp ends the current.";
    BEFORE_WIRING = "injectors.before-wiring",
        "Disconnect the battery and let off fuel pressure before you work on this wiring. The makers' data for injector and output take precedence over these numbers.";
    // numbers
    OUTPUT_CURRENT = "injectors.output-current", "Current of one output";
    INJECTOR_CURRENT = "injectors.injector-current", "Current of one injector";
    OUTPUT_UNLIMITED = "injectors.output-unlimited", "Current of one output if nothing limits it";
    INJECTOR_UNLIMITED = "injectors.injector-unlimited", "Current of one injector if nothing limits it";
    OUTPUTS_USED = "injectors.outputs-used", "Outputs used";
    LIMIT_NEEDED = "injectors.limit-needed", "Limit an output needs, with 10% margin";
    MARGIN = "injectors.margin", "Margin to the limit in the worst case";
    OPENING_CURRENT = "injectors.opening-current", "Current that opens one, as given";
    OPENING_ASSUMED = "injectors.opening-assumed", "Current that opens one, assumed";
    OPENING_SUPPLY = "injectors.opening-supply", "Battery voltage that is sure to open one";
    RISE = "injectors.rise", "Time to the current that opens one{with}: {corner}";
    RESISTOR_VALUE = "injectors.resistor-value", "Resistor with each injector, {series} series";
    RESISTOR_HEAT = "injectors.resistor-heat", "Its heat in the worst case, steady current";
    RESISTOR_RATING = "injectors.resistor-rating", "Rating to buy";
    RESISTOR_MARGIN = "injectors.resistor-margin", "Margin to the limit with it";
    RESISTOR_LEAVES = "injectors.resistor-leaves", "Lowest current of an injector with it: {corner}";
    RESISTOR_OPENS_FROM = "injectors.resistor-opens-from", "Battery voltage that is sure to open one with it";
    PEAK_SHARE = "injectors.peak-share", "Peak of each injector";
    PEAK_LEAST = "injectors.peak-least", "Lowest peak that opens them";
    PEAK_MOST = "injectors.peak-most", "Highest peak that is sure to be reached: {corner}";
    HOLD_NEEDED = "injectors.hold-needed", "Lowest hold current needed";
    CORNERS = "injectors.corners", "Currents in every case, each injector on its own wire";
    CORNERS_UNLIMITED = "injectors.corners-unlimited",
        "What the battery would push in every case if nothing limits it";
    CORNERS_WITH = "injectors.corners-with", "Currents with {value} in series with each injector";
    COLUMN_WHEN = "injectors.column-when", "When";
    COLUMN_SUPPLY = "injectors.column-supply", "Battery";
    COLUMN_TEMPERATURE = "injectors.column-temperature", "Parts at";
    COLUMN_INJECTOR = "injectors.column-injector", "One injector";
    COLUMN_OUTPUT = "injectors.column-output", "One output";
    COLUMN_RESULT = "injectors.column-result", "Result";
    // findings
    MORE_THAN_THERE_ARE = "injectors.more-than-there-are",
        "{per_output} injectors on one output, but there {count|is|are} only {count}. Type how many share an output, or how \
         many there are.";
    TOO_MUCH_FOR_OUTPUT = "injectors.too-much-for-output",
        "{outputs|The injector output|Each injector output} would carry up to {highest} ({corner}), {times} times its limit of {limit}.";
    BARELY_OVER = "injectors.barely-over",
        "{outputs|The injector output|Each injector output} would carry up to {highest} ({corner}), {times} times its limit of {limit}: within the tolerances.";
    OPENING_HANGS = "injectors.opening-hangs",
        "Behind its resistor an injector gets at least {current} ({corner}). {opening} to open it is only usual; some need half as much again.";
    NO_MARGIN = "injectors.no-margin",
        "Each injector output would carry up to {highest} ({corner}): {margin} below its limit of {limit}; 10% is needed.";
    MAY_NOT_OPEN = "injectors.may-not-open",
        "An injector may not open ({corner}): at least {current} flows, and it opens at {opening} ({basis}).";
    NEITHER_HIGH_NOR_LOW = "injectors.neither-high-nor-low",
        "{resistance} is neither clearly low impedance (below 5 Ω) nor clearly high (above 10 Ω).";
    SHARING_DIFFERS = "injectors.sharing-differs",
        "{typed} typed here for one output, but {firing} to a channel {basis}: which is right?";
    COUNT_DIFFERS = "injectors.count-differs",
        "{count} {count|injector|injectors} for {cylinders} cylinders, but each is to be fired at its own cylinder's moment: which is right?";
    SEVERAL_AT_EACH = "injectors.several-at-each",
        "{count} injectors, but the firing is planned for {cylinders}: where do the others go?";
    SEVERAL_SHARE = "injectors.several-share", "On the same output as the first: type {n} to an output.";
    SEVERAL_APART = "injectors.several-apart",
        "On outputs of their own: type {cylinders} here, and the others as the second set.";
    COUNT_AS_CYLINDERS = "injectors.count-as-cylinders", "Leave it blank: {cylinders} are then assumed, one for each cylinder.";
    SHARING_AS_FIRED = "injectors.sharing-as-fired", "Leave it blank: {firing} is then assumed, as they are fired.";
    UNEVEN = "injectors.uneven",
        "{count} injectors at {n} to an output fill {outputs} outputs, the last with only {last}.";
    PEAK_TOO_SMALL = "injectors.peak-too-small",
        "A peak of {peak} does not open {n} {n|injector|injectors}: {least} is needed, since the channel limits their sum.";
    PEAK_NOT_REACHED = "injectors.peak-not-reached",
        "The battery may not push the peak of {peak} through: at least {most} ({corner}). The driver then stays fully on, and it and the injector run hot.";
    PEAK_NOT_WHILE_CRANKING = "injectors.peak-not-while-cranking",
        "While cranking the battery may not push the peak of {peak} through: at least {most} ({corner}). They open all the same.";
    PEAK_NOT_USED = "injectors.peak-not-used",
        "The peak of {peak} is never reached: these injectors limit the current themselves, and the output acts as a plain \
         switch.";
    HOLD_TOO_SMALL = "injectors.hold-too-small",
        "A hold current of {hold} may let {n|the injector|the injectors} close: {needed} is needed.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: MORE_THAN_THERE_ARE.code,
        // More injectors share an output than the engine has.
        why: "The current of an output can't be worked out from numbers that contradict each other.",
        act: "Count the injectors that one output feeds.",
        source: "definition of a count",
    },
    Explanation {
        code: TOO_MUCH_FOR_OUTPUT.code,
        // The highest current of an output is above its limit at some corner of supply and temperature.
        why: "The output burns, often not at once: cold copper and the alternator's voltage push the most through it.",
        act: "Fewer injectors on it, resistors, a peak-and-hold driver, or a stronger output.",
        source: "Ohm's law and the sum of currents; copper by IEC 60028; the limit is the maker's",
    },
    Explanation {
        code: BARELY_OVER.code,
        // Over the limit by no more than three percent, or by the tolerances alone.
        why: "What was typed is known no better than that; the limit may hold hot, or only at 25 °C.",
        act: "Find out at what temperature the limit holds; measure the injectors. No resistor for so little.",
        source: "common practice, no source: three percent is a hair",
    },
    Explanation {
        code: OPENING_HANGS.code,
        // A resistor in line, and a current above the usual opening current by less than √2.
        why: "With the resistor little is left on a weak battery: the engine may not start hot or cold.",
        act: "Find out what opens one, at full fuel pressure.",
        source: "common practice, no source: 1.5 to 3 W open an injector of the usual size",
    },
    Explanation {
        code: NO_MARGIN.code,
        // Less than ten percent of the output's limit is left at the worst corner.
        why: "A limit is seldom given for the heat of an engine bay, and a drifting regulator uses up the rest.",
        act: "Fewer injectors on it, or a stronger output; or accept it, knowing the maker's conditions for the limit.",
        source: "common practice, no source: ten percent of margin",
    },
    Explanation {
        code: MAY_NOT_OPEN.code,
        // At some corner less current flows than opens an injector.
        why: "The engine cranks and does not start: hot copper and a weak battery halve the current.",
        act: "Less resistance in series, a better battery, or injectors made for a lower voltage.",
        source: "Ohm's law; copper by IEC 60028; an assumed opening current is common practice, no source",
    },
    Explanation {
        code: NEITHER_HIGH_NOR_LOW.code,
        // One injector has 5 to 10 ohm.
        why: "Most have 1 to 4 or 11 to 17 Ω; between is a rare part, two in parallel, or the resistance of the test leads.",
        act: "Measure again, leads subtracted, and a second one; the currents hold for the value that was typed.",
        source: "common practice, no source",
    },
    Explanation {
        code: COUNT_DIFFERS.code,
        // In sequence or in companion pairs, the number of injectors is no multiple of that of the cylinders.
        why: "A cylinder without an injector of its own gets its fuel at another's moment, or none.",
        act: "Count them; one or two for all cylinders are fired all together.",
        source: "count of injectors against cylinders",
    },
    Explanation {
        code: SEVERAL_AT_EACH.code,
        // In sequence or in companion pairs, the number of injectors is twice that of the cylinders, or more.
        why: "Where the others go decides how much an output carries, and whether they are fired at all.",
        act: "Follow their wires: on the outputs of the first, or on others, as a second set.",
        source: "count of injectors against cylinders",
    },
    Explanation {
        code: SHARING_DIFFERS.code,
        // The number typed is not that of the firing mode, or of the channels as they were found.
        why: "An output carries the current of all its injectors: with three on it that is three times as much.",
        act: "Follow the wires from one output. Several outputs that fire at once with one injector each are right as typed; else type the other number, or change how they are fired.",
        source: "currents at a node sum to zero",
    },
    Explanation {
        code: UNEVEN.code,
        // The number of injectors is no multiple of the number on an output.
        why: "An output with fewer carries less, which is harmless; but the numbers may be a slip.",
        act: "Check both numbers.",
        source: "arithmetic; common practice, no source",
    },
    Explanation {
        code: PEAK_TOO_SMALL.code,
        // The peak of a current-controlled channel, shared by its injectors, is less than opens each.
        why: "The channel limits the sum: two injectors get half each and may never open.",
        act: "A higher peak, or fewer injectors on the channel.",
        source: "currents at a node sum to zero",
    },
    Explanation {
        code: PEAK_NOT_REACHED.code,
        // Supply and resistance let less through than the peak at some corner.
        why: "The driver waits for a peak that never comes and does not fall to its hold current while cranking.",
        act: "A lower peak that still opens the injectors, or a driver that ends its peak by time.",
        source: "Ohm's law; how drivers behave is common practice, no source",
    },
    Explanation {
        code: PEAK_NOT_WHILE_CRANKING.code,
        // Supply and resistance let less through than the peak while the starter turns, and only then.
        why: "The driver stays fully on through each pulse of the start: a few hundredths of the time, in which nothing runs hot.",
        act: "Leave it, or take a lower peak that still opens the injectors.",
        source: "Ohm's law; how drivers behave is common practice, no source",
    },
    Explanation {
        code: PEAK_NOT_USED.code,
        // High-impedance injectors hang on an output that controls the current.
        why: "It does no harm: their own resistance keeps the current below the peak.",
        act: "Nothing; a plain switch would do as well.",
        source: "Ohm's law, steady current",
    },
    Explanation {
        code: HOLD_TOO_SMALL.code,
        // The hold current is less than half of what opens the injectors that share the channel.
        why: "An injector that closes within its pulse leans out its cylinder.",
        act: "A higher hold current, or fewer injectors on the channel.",
        source: "common practice, no source: half of the opening current holds",
    },
];
