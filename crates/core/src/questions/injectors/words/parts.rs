//! The sentences of what stands around the injectors: remedies side by side, the clamp, the driver's times, a second set,
//! the feed.

use crate::words::{Explanation, sentences};

sentences! {
    FIRST_SET = "injectors.first-set", "The first set";
    SECOND_SET = "injectors.second-set", "The second set";
    FEED = "injectors.feed", "Feed of all injectors";
    // remedies
    REMEDIES = "injectors.remedies", "What can be done, side by side, each in its worst case";
    COLUMN_REMEDY = "injectors.column-remedy", "Done";
    COLUMN_CARRIES = "injectors.column-carries", "One output carries";
    COLUMN_GETS = "injectors.column-gets", "One injector gets at least";
    COLUMN_OPENS_FROM = "injectors.column-opens-from", "Opens with the battery at";
    COLUMN_OPENS_IN = "injectors.column-opens-in", "Opens in, battery at rest";
    COLUMN_CLAMP = "injectors.column-clamp", "Into the clamp";
    COLUMN_VERDICT = "injectors.column-verdict", "Result";
    TAKE_FEWER = "injectors.take-fewer",
        "Best: {what}. It needs no part, and an output carries {most} at most, with margin.";
    TAKE_RESISTOR = "injectors.take-resistor",
        "Best: {what}. It is the cheapest that leaves the output its margin and opens the injector with some to spare: {left} ({corner}), where {opening} opens it.";
    TAKE_DRIVER_TIGHT = "injectors.take-driver-tight",
        "Best: {what}. A resistor would leave {left} ({corner}), where {opening} opens one: too little to spare, or none for the output.";
    TAKE_DRIVER = "injectors.take-driver", "Best: {what}. Nothing cheaper works in every case.";
    TAKE_OTHER = "injectors.take-other", "Best: {what}. Nothing else works in every case.";
    TAKE_NONE = "injectors.take-none",
        "Nothing that was tried works in every case: use a stronger battery, shorter wires or other injectors first.";
    // the clamp
    KICK_TOO_MUCH = "injectors.kick-too-much", "The spike is too much for its clamp";
    INDUCTANCE = "injectors.inductance", "Inductance of one, as given";
    INDUCTANCE_ASSUMED = "injectors.inductance-assumed", "Inductance of one, assumed";
    TURN_OFF_TIME = "injectors.turn-off-time", "Time until the current is gone";
    TURN_OFF_ENERGY = "injectors.turn-off-energy", "Energy into the clamp at each turn-off";
    OUTPUT_HEAT = "injectors.output-heat", "Heat of one output at the highest speed, {frequency}";
    STRONGER_CLAMP = "injectors.stronger-clamp",
        "Fewer injectors on an output, an output with a stronger clamp, or a driver; and never a diode across the injector.";
    CLAMP_TOO_LOW = "injectors.clamp-too-low",
        "A clamp at {clamp} is not above the {supply} of the battery: the current never ends, and clamp and injector burn.";
    CLAMP_OVERLOADED = "injectors.clamp-overloaded",
        "At each turn-off the clamp takes up to {energy} ({corner}); its limit is {bears}.";
    OUTPUT_TOO_HOT = "injectors.output-too-hot",
        "At the highest speed, {frequency}, one output gives off up to {heat}; its limit is {bears}.";
    DIODE_ACROSS_VERDICT = "injectors.diode-across-verdict", "They close late: a diode is across each";
    DIODE_ACROSS = "injectors.diode-across",
        "A diode is across each injector: it stays open for about {time} after its output switches off, and short pulses can't be metered.";
    TAKE_DIODE_OFF = "injectors.take-diode-off", "Take the diodes off: the outputs have clamps of their own.";
    // the driver's times
    PEAK_AFTER = "injectors.peak-after", "Time to the peak: {corner}";
    CURRENT_AT_LIMIT = "injectors.current-at-limit",
        "Lowest current of an injector when the time limit ends the peak: {corner}";
    LINEAR_HEAT = "injectors.linear-heat", "Heat of a channel if it holds without chopping, at the highest supply";
    LONGER_PEAK = "injectors.longer-peak",
        "Let the peak last {time} or more: by then they are open in every case.";
    PEAK_TIME_TOO_SHORT = "injectors.peak-time-too-short",
        "The peak ends after {limit}, and an injector may need {needed} to open: the hold current is not sure to open it.";
    PEAK_ENDS_BY_TIME = "injectors.peak-ends-by-time",
        "The peak of {peak} is not always reached; the time limit of {limit} ends it, and by then they are open.";
    HOT_DRIVER = "injectors.hot-driver",
        "Bolt the driver to bare metal: one that holds the current without chopping it drops the rest of the battery's voltage \
         itself.";
    // pictures
    PICTURE_CLOSING = "injectors.picture-closing",
        "Current of one injector after its output switches on, at three supplies";
    PICTURE_CLOSING_WITH = "injectors.picture-closing-with", "The same behind {value}";
    PICTURE_OPENED = "injectors.picture-opened",
        "When the output switches off, battery at {supply}: the clamp lets the pin rise to {clamp}, and the current of one injector is \
         gone after {time}";
    CURVE_SUPPLY = "injectors.curve-supply", "{corner}, {supply}";
    CURVE_CURRENT = "injectors.curve-current", "current of one injector";
    CURVE_PIN = "injectors.curve-pin", "voltage at the pin";
    LEVEL_OPENS = "injectors.level-opens", "opens";
    LEVEL_PEAK = "injectors.level-peak", "peak";
    LEVEL_HOLD = "injectors.level-hold", "hold";
    LEVEL_LIMIT = "injectors.level-limit", "the output's limit{n||, its share}";
    LEVEL_CLAMP = "injectors.level-clamp", "clamp";
    LEVEL_BATTERY = "injectors.level-battery", "battery";
    // the feed
    FEED_OPEN = "injectors.feed-open", "Not answered yet: what do they draw in all?";
    FEED_WANTS_COUNT = "injectors.feed-wants-count", "Type how many injectors there are, in each set.";
    FEED_WANTS_SETS = "injectors.feed-wants-sets", "It follows once every set of injectors is answered.";
    FEED_WANTED = "injectors.feed-wanted", "Needs a fuse of {fuse} and a relay to match";
    FEED_SHARED = "injectors.feed-shared", "Fuse and relay: see Feeds";
    FEED_GOOD = "injectors.feed-good", "Fuse and relay are big enough";
    FEED_FUSE_BIG = "injectors.feed-fuse-big", "Fuse too large for what is behind it";
    FEED_FUSE_SMALL = "injectors.feed-fuse-small", "The fuse is too small: it blows on the road";
    FEED_RELAY_SMALL = "injectors.feed-relay-small", "The relay's contact is too small";
    FEED_BOTH_SMALL = "injectors.feed-both-small", "Fuse and relay are too small";
    FEED_TOO_MUCH = "injectors.feed-too-much", "Too much for one blade fuse: split the feed";
    FEED_TAKES = "injectors.feed-takes",
        "{counts} injectors draw up to {total} RMS continuously.";
    FEED_TAKES_CURED = "injectors.feed-takes-cured",
        "{counts} injectors draw up to {total} RMS continuously, with the best fix above; as planned the outputs can't carry them.";
    FEED_BESIDE = "injectors.feed-beside", "That includes {others} for the other loads on the same relay.";
    FEED_FIT = "injectors.feed-fit",
        "Fit a blade fuse of {fuse}, close to the battery, and a relay whose contact is rated for as much or more, so that an \
         overload blows the fuse first. A dead short may still weld it (common practice, no source).";
    FEED_WIRE = "injectors.feed-wire",
        "Use wire rated, hot, for more than the fuse: the fuse protects the wire, not the injectors.";
    FEED_SPLIT = "injectors.feed-split", "Split it: a fuse, a wire and a relay for each bank.";
    FEED_SHARE = "injectors.feed-share", "Current of the first set";
    FEED_SHARE_SECOND = "injectors.feed-share-second", "Current of the second set";
    FEED_TOTAL = "injectors.feed-total", "Current in the feed";
    FEED_LEAST = "injectors.feed-least", "Rating that fuse and contact need, loaded to 75%";
    FEED_CAUTION = "injectors.feed-caution",
        "An injector that stays powered with the engine stopped can fill a cylinder with fuel: let this relay drop out with the \
         key, and pull its fuse before you test coils.";
    FUSE_TOO_SMALL = "injectors.fuse-too-small",
        "A fuse of {rating} carries {total} continuously only if it is rated {least} or more.";
    RELAY_TOO_SMALL = "injectors.relay-too-small",
        "A contact rated {rating} carries {total} continuously only if it is rated {least} or more.";
    FEWER_ON_CHANNEL = "injectors.fewer-on-channel",
        "Put {n} on each channel: its peak and its hold current are then enough for {n|it|each of them}, and are reached in every case.";
    RESISTOR_OVERHEATS = "injectors.resistor-overheats",
        "A resistor rated {rating} turns up to {heat} into heat while its injector is held open.";
    RESISTOR_LARGER = "injectors.resistor-larger", "Fit resistors rated {rating} or more, on bare metal.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: DIODE_ACROSS.code,
        // The plan says that a diode lies across each.
        why: "A clamp ends the current in a fraction of a millisecond; through a diode it runs down by itself. Idle pulses last two or three milliseconds.",
        act: "Take the diodes off, and see in the controller's data that its outputs have clamps.",
        source: "University Physics, vol. 2, section 14.4; a quarter of its current holds an injector: common practice, no source",
    },
    Explanation {
        code: CLAMP_TOO_LOW.code,
        // The clamp's lowest voltage is not above the highest supply.
        why: "The current falls only by what the clamp has above the battery; without that it flows for ever.",
        act: "Look up the clamp again; it is between the pin and ground. An output made for injectors has 30 V and more.",
        source: "voltages around a loop sum to zero",
    },
    Explanation {
        code: CLAMP_OVERLOADED.code,
        // The energy of one turn-off is above what the clamp bears again and again.
        why: "The output's own clamp turns the coil's energy, and what the battery adds, into heat; too much breaks it, at once or in \
              a week.",
        act: "Fewer injectors on it, more resistance in series, a stronger output, or a driver.",
        source: "the clamp's voltage times the charge that runs through it; the limit is the maker's",
    },
    Explanation {
        code: OUTPUT_TOO_HOT.code,
        // Clamp and switch together give off more at the highest speed than the output bears.
        why: "Each turn-off heats the output, and they come faster the faster the engine turns: it dies at the end of the straight.",
        act: "Fewer injectors on it, a stronger output, a cooler place for the box, or a driver.",
        source: "resistive heating; the switch assumed held on all the time",
    },
    Explanation {
        code: PEAK_TIME_TOO_SHORT.code,
        // The driver's time limit ends the peak before the current opens an injector, at some corner.
        why: "The current falls to its hold level before the needle has moved: cold it starts, hot with a weak battery it does not.",
        act: "A longer peak, or injectors with less inductance or resistance.",
        source: "University Physics, vol. 2, section 14.4; that hold does not open is common practice, no source",
    },
    Explanation {
        code: PEAK_ENDS_BY_TIME.code,
        // The peak is not reached at some corner, and the time limit ends it when they are open.
        why: "The driver is safe from waiting for a peak that never comes.",
        act: "Nothing; set the peak lower if the driver runs hot.",
        source: "Ohm's law; how drivers behave is common practice, no source",
    },
    Explanation {
        code: FUSE_TOO_SMALL.code,
        // The fuse carries less for long than all injectors take.
        why: "It holds in the workshop and blows at the highest speed, or after an hour: the engine stops.",
        act: "A larger fuse, if the wire is rated for more than it; else a second feed.",
        source: "ISO 8820-3 ratings, from memory; loaded to 75%: common practice, no source",
    },
    Explanation {
        code: RELAY_TOO_SMALL.code,
        // The relay's contact carries less for long than all injectors take.
        why: "Its contact heats, then burns or welds: the engine stops, or the injectors stay powered.",
        act: "A relay with a stronger contact, or one for each bank.",
        source: "loaded to 75%: common practice, no source; the rating is the maker's",
    },
    Explanation {
        code: RESISTOR_OVERHEATS.code,
        // The resistor in line with each injector is rated for less than its steady heat at the worst corner.
        why: "A stuck needle, a long pulse or a test with the injector held open burns it, and what touches it.",
        act: "A larger one, or two in series of half the value each.",
        source: "resistive heating, P = I²R; a rating holds on the metal that its maker names",
    },
];
