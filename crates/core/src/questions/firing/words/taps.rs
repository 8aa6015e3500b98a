//! The sentences of the test at the car, and of the lists to tick off.

use crate::words::{Explanation, sentences};

sentences! {
    // what is done and asked
    ASK_COIL = "firing.ask-coil",
        "Fire channel {channel}. On which {n|cylinder's tester|cylinders' testers} does it spark?";
    ASK_PLUG = "firing.ask-plug", "Fire channel {channel}. On which plug's tester does it spark?";
    ASK_INJECTOR = "firing.ask-injector", "Pulse channel {channel}. Which {n|injector clicks|injectors click}?";
    ASK_TOWER = "firing.ask-tower", "Follow the lead of tower {channel}. Where does it end?";
    // by what that is seen
    TOOL_COIL = "firing.tool-coil",
        "A spark tester on every lead, or a timing light's clamp on one after the other. Hands off while it fires.";
    TOOL_INJECTOR = "firing.tool-injector",
        "A finger on each injector, or a screwdriver from it to your ear: feel or hear it click.";
    // how it stands, beside the channel
    TAP_RIGHT = "firing.tap-right", "as planned";
    TAP_OTHER = "firing.tap-other", "not as planned";
    TAP_NOTHING = "firing.tap-nothing", "nothing fires";
    TAP_AGAIN = "firing.tap-again", "try again";
    TAP_MUST = "firing.tap-must", "must be";
    // what is known by now
    TAP_MOST = "firing.tap-most", "At most {n} {n|test|tests}, then all is certain.";
    TAP_LEFT = "firing.tap-left", "At most {n} more {n|test|tests} until all is certain.";
    TAP_CERTAIN = "firing.tap-certain", "All seen.";
    MUST_BE = "firing.must-be",
        "Channel {channel} must reach {cylinders}: nothing else is left. Fire it once to prove that its lead is on.";
    CERTAINLY_WRONG = "firing.certainly-wrong",
        "{n|Channel|Channels} {channels} can't be as planned: what the plan has there fired on another.";
    TWO_ARRANGEMENTS = "firing.two-arrangements",
        "Two arrangements are left: channel {one} reaches {a} and {other} reaches {b}, or the other way round. Firing one of them tells.";
    LIKELY_NONE = "firing.likely-none", "No usual mix-up fits: several leads have moved round.";
    LIKELY_ONE = "firing.likely-one", "Of the usual arrangements only one still fits: {slip}.";
    LIKELY_TWO = "firing.likely-two", "Two of the usual arrangements still fit: {one}, or {two}.";
    LIKELY_MORE = "firing.likely-more", "Not as planned; {n} of the usual mix-ups still fit.";
    LIKELY_PLANNED = "firing.likely-planned", "As planned so far; {n} usual {n|mix-up|mix-ups} could still hide.";
    SLIP_NONE = "firing.slip-none", "as planned";
    SLIP_HABIT = "firing.slip-habit", "numbered the other way";
    SLIP_ONWARD = "firing.slip-onward", "all leads {n} {n|place|places} on in firing order";
    SLIP_BANKS = "firing.slip-banks", "the banks swapped";
    SLIP_END = "firing.slip-end", "cylinders counted from the other end";
    SLIP_POSITIONS = "firing.slip-positions", "leading and trailing plugs swapped";
    SLIP_EXCHANGE = "firing.slip-exchange", "{one} and {other} swapped";
    // what can't be, or is broken
    CROWDED = "firing.crowded",
        "Channel {channel}: {cylinders} fired, more than the plan has on it. Two are connected to it, or you misheard: fire it again.";
    SILENT = "firing.silent", "Channel {channel}: nothing fires.";
    SILENT_INJECTOR = "firing.silent-injector", "Channel {channel}: no injector clicks.";
    HALF_SILENT = "firing.half-silent", "Channel {channel}: only {cylinders} fired.";
    TAPS_CONTRADICT = "firing.taps-contradict",
        "Channels {one} and {other} can't both reach the same cylinder: fire both again.";
    BEYOND_COUNT = "firing.beyond-count",
        "Channel {channel} fired at the car, and the controller is said to have {count}.";
    WIRED_MUST_WHY = "firing.wired-must-why",
        "The last one is known by elimination only: a loose lead would look the same.";
    // lists
    LIST_SETTING = "firing.list-setting", "Tick off: the setting";
    LIST_ORDER = "firing.list-order", "Tick off: the order to enter";
    LIST_MOVES = "firing.list-moves", "Tick off: the leads to move";
    ITEM_PLACE = "firing.item-place", "Place {place} in the order: channel {channel}";
    ITEM_EXCHANGE = "firing.item-exchange", "Swap the leads of {one} and {other}";
    ITEM_MOVE = "firing.item-move", "Cylinder {target}: from channel {from} to channel {to}";
    ITEM_AGAIN = "firing.item-again", "Fire every channel again: each must be where the plan says";
    DO_FIRE_AGAIN = "firing.do-fire-again",
        "All ticked off: clear and test again. What is shown here was seen before the fix.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: CROWDED.code,
        // More answered to one channel than the plan has on it.
        why: "Either two leads are on one channel, or one of them was misheard.",
        act: "Fire it again. Coils: look at one spark tester at a time. Injectors: listen to one at a time.",
        source: "count: each channel has its own",
    },
    Explanation {
        code: SILENT.code,
        // A channel was fired, and no coil answered.
        why: "An open lead, a coil without feed or ground, a dead coil or a dead channel look alike.",
        act: "Connect a coil that fired to this channel: if it fires, the coil, its feed or its ground is at fault; if not, the lead or the channel.",
        source: "elimination; common practice, no source",
    },
    Explanation {
        code: SILENT_INJECTOR.code,
        // A channel was pulsed, and no injector clicked.
        why: "An open lead, an injector without feed, one that sticks or a dead channel look alike.",
        act: "Measure the injector's resistance at the controller's connector, then connect one that clicks to this channel.",
        source: "elimination; common practice, no source",
    },
    Explanation {
        code: HALF_SILENT.code,
        // Fewer answered to a channel than the plan has on it.
        why: "The other one's lead is open or on another channel, or it is dead.",
        act: "Fire the other channels: where it fires, that is its channel; if nowhere, check its feed and lead.",
        source: "elimination",
    },
    Explanation {
        code: BEYOND_COUNT.code,
        // Something answered to a channel beyond the number of those that there are.
        why: "One of the two is wrong: the count, or the numbering by which it was fired.",
        act: "Look at the controller's own list of channels, and correct the wrong one.",
        source: "count of channels",
    },
    Explanation {
        code: TAPS_CONTRADICT.code,
        // Two channels were both seen to reach one cylinder.
        why: "One lead can't be on two channels: one of the two was misheard.",
        act: "Fire both again, one at a time. Coil: look at a spark tester on its lead, hands off. Injector: feel it, or listen with a screwdriver.",
        source: "elimination",
    },
];
