//! The sentences of what stands around the injectors: remedies side by side, the clamp, the driver's times, a second set,
//! the feed.

use crate::words::{Explanation, Sentence};

pub(in crate::words) const SENTENCES: &[Sentence] = &[
    ("injectors.first-set", "The first set"),
    ("injectors.second-set", "The second set"),
    ("injectors.feed", "The feed that they all hang on"),
    // remedies
    ("injectors.remedies", "What can be done, side by side, each at its worst corner"),
    ("injectors.column-remedy", "Done"),
    ("injectors.column-carries", "One output carries"),
    ("injectors.column-gets", "One injector gets at least"),
    ("injectors.column-opens-from", "Opens from a battery at"),
    ("injectors.column-opens-in", "Opens in, at rest"),
    ("injectors.column-clamp", "Clamp takes"),
    ("injectors.column-verdict", "Result"),
    (
        "injectors.take-fewer",
        "Take this: {what}. It needs no part, and an output carries {most} at most, with margin.",
    ),
    (
        "injectors.take-resistor",
        "Take this: {what}. The cheapest that leaves the output its margin and the injector more than opens it: {left} ({corner}), \
         where {opening} opens it.",
    ),
    (
        "injectors.take-driver-tight",
        "Take this: {what}. A resistor would leave {left} ({corner}), where {opening} opens one: too little to spare, or none \
         for the output.",
    ),
    ("injectors.take-driver", "Take this: {what}. Nothing cheaper works at every corner."),
    ("injectors.take-other", "Take this: {what}. Nothing else works at every corner."),
    (
        "injectors.take-none",
        "Nothing that was tried works at every corner: a stronger battery, shorter wires or other injectors first.",
    ),
    // the clamp
    ("injectors.kick-too-much", "The kick is too much for its clamp"),
    ("injectors.inductance", "Inductance of one, as given"),
    ("injectors.inductance-assumed", "Inductance of one, assumed"),
    ("injectors.turn-off-time", "Time until the current is gone"),
    ("injectors.turn-off-energy", "Energy that the clamp takes at each turn-off"),
    ("injectors.output-heat", "Heat of one output at the highest speed, {frequency}"),
    (
        "injectors.stronger-clamp",
        "Fewer injectors on an output, an output with a stronger clamp, or a driver; and never a diode across the injector.",
    ),
    (
        "injectors.clamp-too-low",
        "A clamp at {clamp} is not above the {supply} of the battery: the current never ends, and clamp and injector burn.",
    ),
    (
        "injectors.clamp-overloaded",
        "At each turn-off the clamp takes up to {energy} ({corner}); it bears {bears}.",
    ),
    (
        "injectors.output-too-hot",
        "At the highest speed, {frequency}, one output gives off up to {heat}; it bears {bears}.",
    ),
    // the driver's times
    ("injectors.peak-after", "Time to the peak: {corner}"),
    (
        "injectors.current-at-limit",
        "Least current of an injector when the time limit ends the peak: {corner}",
    ),
    (
        "injectors.linear-heat",
        "Heat of a channel if it holds without chopping, at the highest supply",
    ),
    (
        "injectors.longer-peak",
        "Let the peak last {time} or more: by then they are open at every corner.",
    ),
    (
        "injectors.peak-time-too-short",
        "The peak ends after {limit}, and an injector may need {needed} to open: the hold current is not sure to open it.",
    ),
    (
        "injectors.peak-ends-by-time",
        "The peak of {peak} is not always reached; the time limit of {limit} ends it, and by then they are open.",
    ),
    (
        "injectors.hot-driver",
        "Bolt the driver to bare metal: one that holds the current without chopping it drops the rest of the battery's voltage \
         itself.",
    ),
    // pictures
    (
        "injectors.picture-closing",
        "Current of one injector after its output closes, at three supplies",
    ),
    ("injectors.picture-closing-with", "The same behind {value}"),
    (
        "injectors.picture-opened",
        "When the output opens, battery at {supply}: the clamp lets the pin rise to {clamp}, and the current of one injector is \
         gone after {time}",
    ),
    ("injectors.curve-supply", "{corner}, {supply}"),
    ("injectors.curve-current", "current of one injector"),
    ("injectors.curve-pin", "voltage at the pin"),
    ("injectors.level-opens", "opens"),
    ("injectors.level-peak", "peak"),
    ("injectors.level-hold", "hold"),
    ("injectors.level-limit", "the output's limit{n||, its share}"),
    ("injectors.level-clamp", "clamp"),
    ("injectors.level-battery", "battery"),
    // the feed
    ("injectors.feed-open", "Not answered yet: what do they take in all?"),
    ("injectors.feed-wants-count", "Type how many injectors there are, in each set."),
    ("injectors.feed-wants-sets", "It follows once every set of injectors is answered."),
    ("injectors.feed-wanted", "Needs a fuse of {fuse} and a relay for as much"),
    ("injectors.feed-good", "Fuse and relay carry them"),
    ("injectors.feed-fuse-small", "The fuse is too small: it blows on the road"),
    ("injectors.feed-relay-small", "The relay's contact is too small"),
    ("injectors.feed-both-small", "Fuse and relay are too small"),
    ("injectors.feed-too-much", "Too much for one blade fuse: split the feed"),
    (
        "injectors.feed-takes",
        "{counts} injectors take up to {total} for long, at the corner that takes most.",
    ),
    (
        "injectors.feed-takes-cured",
        "{counts} injectors take up to {total} for long, with the remedy that is named above; as planned the outputs can't carry \
         them.",
    ),
    (
        "injectors.feed-fit",
        "Fit a blade fuse of {fuse}, close to the battery, and a relay whose contact is rated for as much or more, so that an \
         overload blows the fuse first. A dead short may still weld it (common practice, no source).",
    ),
    (
        "injectors.feed-wire",
        "Take wire that bears more than the fuse, hot, as its maker says: the fuse protects the wire, not the injectors.",
    ),
    ("injectors.feed-split", "Split it: a fuse, a wire and a relay for each bank."),
    ("injectors.feed-share", "What they take, the first set"),
    ("injectors.feed-share-second", "What they take, the second set"),
    ("injectors.feed-total", "What flows in the feed"),
    ("injectors.feed-least", "Rating that fuse and contact need, loaded to 75%"),
    (
        "injectors.feed-caution",
        "An injector that stays powered with the engine stopped can fill a cylinder with fuel: let this relay drop out with the \
         key, and pull its fuse before you test coils.",
    ),
    (
        "injectors.fuse-too-small",
        "A fuse of {rating} carries {total} for long only if it is rated {least} or more.",
    ),
    (
        "injectors.relay-too-small",
        "A contact rated {rating} carries {total} for long only if it is rated {least} or more.",
    ),
];

pub(in crate::words) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: "injectors.clamp-too-low",
        // The clamp's lowest voltage is not above the highest supply.
        why: "The current runs down only against what the clamp has above the battery; without that it flows on for ever.",
        act: "Look up the clamp again; it stands between the pin and ground. An output made for injectors has 30 V and more.",
        source: "voltages around a loop sum to zero",
    },
    Explanation {
        code: "injectors.clamp-overloaded",
        // The energy of one turn-off is above what the clamp bears again and again.
        why: "The output's own clamp turns the coil's energy, and what the battery adds, into heat; too much breaks it, at once or in \
              a week.",
        act: "Fewer injectors on it, more resistance in series, a stronger output, or a driver.",
        source: "the clamp's voltage times the charge that runs through it; the limit is the maker's",
    },
    Explanation {
        code: "injectors.output-too-hot",
        // Clamp and switch together give off more at the highest speed than the output bears.
        why: "Each turn-off heats the output, and they come faster the faster the engine turns: it dies at the end of the straight.",
        act: "Fewer injectors on it, a stronger output, a cooler place for the box, or a driver.",
        source: "resistive heating; the switch taken as held on all the time",
    },
    Explanation {
        code: "injectors.peak-time-too-short",
        // The driver's time limit ends the peak before the current opens an injector, at some corner.
        why: "The current falls to its hold level before the needle has moved: cold it starts, hot with a weak battery it does not.",
        act: "A longer peak, or injectors with less inductance or resistance.",
        source: "University Physics, vol. 2, section 14.4; that hold does not open is common practice, no source",
    },
    Explanation {
        code: "injectors.peak-ends-by-time",
        // The peak is not reached at some corner, and the time limit ends it when they are open.
        why: "The driver is safe from waiting for a peak that never comes.",
        act: "Nothing; set the peak lower if the driver runs hot.",
        source: "Ohm's law; how drivers behave is common practice, no source",
    },
    Explanation {
        code: "injectors.fuse-too-small",
        // The fuse carries less for long than all injectors take.
        why: "It holds in the workshop and blows at the highest speed, or after an hour: the engine stops.",
        act: "A larger fuse, if the wire bears more than it; else a second feed.",
        source: "ISO 8820-3 ratings, from memory; loaded to 75%: common practice, no source",
    },
    Explanation {
        code: "injectors.relay-too-small",
        // The relay's contact carries less for long than all injectors take.
        why: "Its contact heats, then burns or welds: the engine stops, or the injectors stay powered.",
        act: "A relay with a stronger contact, or one for each bank.",
        source: "loaded to 75%: common practice, no source; the rating is the maker's",
    },
];
