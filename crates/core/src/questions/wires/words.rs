//! The sentences of the question of the wires.

use crate::words::{Explanation, sentences};

sentences! {
    QUESTION = "wires.question", "What do I cut, label and buy?";
    PENDING = "wires.pending", "One moment…";
    // ends
    IGNITION = "wires.ignition", "Ignition {n}";
    INJECTION = "wires.injection", "Injection {n}";
    SECOND_INJECTION = "wires.second-injection", "Second injection {n}";
    OUTPUT = "wires.output", "{name}";
    THE_COIL = "wires.the-coil", "the coil";
    COIL = "wires.coil", "coil {n}";
    INJECTOR = "wires.injector", "injector {n}";
    TERMINAL_85 = "wires.terminal-85", "{relay} 85";
    TERMINAL_86 = "wires.terminal-86", "{relay} 86";
    TERMINAL_87 = "wires.terminal-87", "{relay} 87";
    GROUND = "wires.ground", "ground (31)";
    FEED_30 = "wires.feed-30", "battery feed (30)";
    FEED_15 = "wires.feed-15", "ignition feed (15)";
    FEED_50 = "wires.feed-50", "the key's start position (50), through what blocks the starter";
    FEED_87 = "wires.feed-87", "relay contact (87)";
    FIVE_VOLT = "wires.five-volt", "the controller's 5 V";
    CRANK_SENSOR = "wires.crank-sensor", "crank sensor";
    CAM_SENSOR = "wires.cam-sensor", "cam sensor";
    SIGNAL_PLUS = "wires.signal-plus", "signal +";
    SIGNAL_MINUS = "wires.signal-minus", "signal -";
    SENSOR_SUPPLY = "wires.sensor-supply", "supply";
    SENSOR_SIGNAL = "wires.sensor-signal", "signal";
    SENSOR_GROUND = "wires.sensor-ground", "sensor ground";
    INPUT = "wires.input", "{sensor} input, {end}";
    CONTROLLER_SUPPLY = "wires.controller-supply", "Controller supply";
    CONTROLLER_GROUND = "wires.controller-ground", "Controller ground {n}";
    BATTERY_PLUS = "wires.battery-plus", "battery plus";
    BATTERY_CABLE = "wires.battery-cable", "Battery cable";
    STARTER = "wires.starter", "starter (30)";
    TERMINAL_30 = "wires.terminal-30", "{relay} 30";
    OF_ALIKE = "wires.of-alike", "{relay} {n}";
    FED_BY = "wires.fed-by", "what {relay} feeds";
    RELAY = "wires.relay", "relay {n}";
    COIL_FEED = "wires.coil-feed", "coil feed (87)";
    INJECTOR_FEED = "wires.injector-feed", "injector feed (87)";
    SECOND_INJECTOR = "wires.second-injector", "second injector {n}";
    BATTERY_MINUS = "wires.battery-minus", "battery minus";
    MINUS_CABLE = "wires.minus-cable", "Battery minus cable";
    STRAP = "wires.strap", "Engine strap";
    ENGINE = "wires.engine", "engine";
    BODY = "wires.body", "body";
    NAMED = "wires.named", "{name}";
    ITS_LOADS = "wires.its-loads", "what it feeds";
    FEEDS_COILS = "wires.feeds-coils", "the coils";
    FEEDS_INJECTORS = "wires.feeds-injectors", "the injectors";
    FEEDS_ENGINE = "wires.feeds-engine", "coils and injectors";
    FEED_LABEL = "wires.feed-label", "Feed: {name}";
    // work
    WORK_TWIST = "wires.work-twist", "twist";
    WORK_SHIELD = "wires.work-shield", "shield, grounded at the controller";
    WORK_SPLICE = "wires.work-splice", "splice to {n}";
    WORK_LENGTHEN = "wires.work-lengthen", "lengthen by {length}";
    WORK_MOVE = "wires.work-move", "move it here from another output";
    WORK_CHANGE = "wires.work-change", "change the connector";
    WORK_FIT = "wires.work-fit", "fit a connector";
    // titles
    TITLE_COILS = "wires.title-coils", "Coil wires";
    TITLE_INJECTORS = "wires.title-injectors", "Injector wires";
    TITLE_SECOND = "wires.title-second", "Second injector wires";
    TITLE_LOADS = "wires.title-loads", "Load wires";
    TITLE_SENSORS = "wires.title-sensors", "Sensor wires";
    TITLE_FEEDS = "wires.title-feeds", "Feed wires";
    TITLE_CUT = "wires.title-cut", "Cut list";
    TITLE_BUY = "wires.title-buy", "Shopping list";
    // verdicts
    BLANK = "wires.blank", "Needs: coils, injectors, or a load's output";
    OPEN_HARNESS = "wires.open-harness", "{n} wires. Needs: the harness's length";
    OPEN_WAYS = "wires.open-ways", "{n} wires. Needs: the way of {m} of them";
    OPEN_ALL = "wires.open-all", "{n} wires. Needs: the way of each";
    SHORT = "wires.short", "{m} of {n} wires don't reach";
    TIGHT = "wires.tight", "All {n} reach, {m} with nothing to spare";
    GOOD = "wires.good", "All {n} wires reach";
    GROUP_OFF = "wires.group-off", "{n} wires: cut off {from} to {to}";
    GROUP_OFF_ALIKE = "wires.group-off-alike", "{n} wires: cut off {off}";
    GROUP_KNOWN = "wires.group-known", "{n} wires, all measured";
    CUT_OPEN = "wires.cut-open", "{done} of {n} done";
    CUT_DONE = "wires.cut-done", "All {n} done";
    BUY = "wires.buy", "{length} of wire, {fuses} fuses";
    // cuts, to be ticked off
    ITEM_OFF = "wires.item-off", "{label}: cut off {off}";
    ITEM_AS_IS = "wires.item-as-is", "{label}: leave it as it is";
    ITEM_SHORT = "wires.item-short", "{label}: lengthen by {short}";
    ITEM_PIECE = "wires.item-piece", "{label}: cut {length} of {size}, {colour}";
    ITEM_PIECE_OF = "wires.item-piece-of", "{label}: cut {length}, {colour}";
    LIST_HARNESS = "wires.list-harness", "From the harness: cut, crimped, labelled at both ends";
    LIST_REELS = "wires.list-reels", "From reels: cut, crimped, labelled at both ends";
    // to buy
    BUY_WIRE = "wires.buy-wire", "Buy {metres} m of wire {size}, {colour}: {at}.";
    BUY_WIRE_FOR = "wires.buy-wire-for",
        "Buy {metres} m of wire {size}, {colour}: {at}, also where {least} would do.";
    BUY_SHIELD = "wires.buy-shield", "Buy {metres} m of braided shield: {at}.";
    BUY_PIECE = "wires.buy-piece", "Buy {length} of {size} with its lugs: {at}.";
    BUY_FUSES = "wires.buy-fuses", "Buy {n} fuses of {fuse}, one of them to spare: {at}.";
    BUY_HOLDERS = "wires.buy-holders", "Buy fuse holders: {n}.";
    BUY_RELAYS = "wires.buy-relays", "Buy {n} relays rated for {rating}, one of them to spare: {at}.";
    BUY_SOCKETS = "wires.buy-sockets", "Buy relay sockets with their terminals: {n}.";
    BUY_RINGS = "wires.buy-rings", "Buy ring terminals for {size}: {n}, at {bolts}.";
    BUY_SLEEVES = "wires.buy-sleeves", "Buy {n} label sleeves, two for each wire.";
    BUY_SPLICES = "wires.buy-splices", "Buy crimp splices with sealing sleeves: {n}.";
    BUY_CONNECTORS = "wires.buy-connectors", "Buy connectors with terminals and seals: {n}.";
    DO_WAYS = "wires.do-ways", "Measure each way with a string, bends and clips included, before you cut.";
    // cautions
    CAUTION_CUT = "wires.caution-cut",
        "Battery off, controller unplugged. Measure twice: what is cut off doesn't grow again.";
    // tables
    COL_WIRE = "wires.col-wire", "Wire";
    COL_WAY = "wires.col-way", "Way";
    COL_OFF = "wires.col-off", "Cut off";
    COL_PIECE = "wires.col-piece", "Piece";
    COL_WORK = "wires.col-work", "Work";
    COL_SIZE = "wires.col-size", "Size";
    COL_LABEL = "wires.col-label", "Label";
    COL_FROM = "wires.col-from", "From";
    COL_TO = "wires.col-to", "To";
    COL_DUTY = "wires.col-duty", "For";
    COL_MM2 = "wires.col-mm2", "mm2";
    COL_COLOUR = "wires.col-colour", "Colour";
    COL_WAY_M = "wires.col-way-m", "Way, m";
    COL_BOUGHT_M = "wires.col-bought-m", "As bought, m";
    COL_OFF_M = "wires.col-off-m", "Cut off, m";
    COL_PIECE_M = "wires.col-piece-m", "Piece, m";
    COL_FUSE_A = "wires.col-fuse-a", "Fuse, A";
    COL_DONE = "wires.col-done", "Done";
    COL_PART = "wires.col-part", "Part";
    COL_COUNT = "wires.col-count", "Count";
    COL_UNIT = "wires.col-unit", "Unit";
    COL_FOR = "wires.col-for", "Where";
    DUTY_PERMANENT = "wires.duty-permanent", "feed (30)";
    DUTY_SWITCHED = "wires.duty-switched", "feed (15, 87)";
    DUTY_GROUND = "wires.duty-ground", "ground (31)";
    DUTY_IGNITION = "wires.duty-ignition", "ignition";
    DUTY_INJECTION = "wires.duty-injection", "injection";
    DUTY_OUTPUT = "wires.duty-output", "output";
    DUTY_SENSOR = "wires.duty-sensor", "sensor";
    LACKS = "wires.lacks", "{short} too short";
    WAY_BOTH = "wires.way-both", "{length} with the piece to 30";
    NOT_MEASURED = "wires.not-measured", "measure";
    // findings
    NO_COLOUR = "wires.no-colour",
        "“{typed}” is no colour by its letters: BK, BN, RD, OG, YE, GN, BU, VT, GY, WH or PK; of two, both: RDWH.";
    BEYOND_CABLE = "wires.beyond-cable", "{part} to the contact of a cable of {whole}: it is part of that cable.";
    TOO_SHORT = "wires.too-short", "{list}: too short, the worst by {short}.";
    TOO_TIGHT = "wires.too-tight", "{list}: {left} left at the end, not enough to crimp it once more.";
    ALIKE = "wires.alike",
        "{feeds} and grounds have one colour, {colour}: whoever looks for a fault takes one for the other.";
    PIN_HOT = "wires.pin-hot",
        "{load}: {draws} flow through a pin that carries {most}: it gets hot, and its contact goes.";
    PIN_WIRE = "wires.pin-wire",
        "{list}: wire of {size} doesn't fit the controller's pins and seals ({from} to {to}).";
    AND_MORE = "wires.and-more", "and {n} more";
    BATTERY_FEEDS = "wires.battery-feeds", "Battery feeds (30)";
    SWITCHED_FEEDS = "wires.switched-feeds", "Switched feeds (15, 87)";
    ALL_FEEDS = "wires.all-feeds", "Feeds";
    DO_LENGTHEN = "wires.do-lengthen",
        "Lay it a shorter way, or lengthen it with a crimped, sealed splice of the same size.";
    DO_COLOUR = "wires.do-colour", "Use {colour} for grounds.";
    DO_PINS = "wires.do-pins", "Switch it by a relay, or share it between pins that the maker allows to be joined.";
    DO_GROUND_PINS = "wires.do-ground-pins", "Ground the controller through more of its pins, a wire to each.";
    DO_PIGTAIL = "wires.do-pigtail", "Splice on a short end that fits the pin, close to the connector.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    // a colour is typed that isn't one of the letters
    Explanation {
        code: "wires.no-colour",
        why: "Lists and labels name colours by letters that are the same in every language.",
        act: "Type the letters, base colour first.",
        source: "IEC 60757, from memory",
    },
    // the way to the contact is longer than the cable that it is part of
    Explanation {
        code: "wires.beyond-cable",
        why: "The cable's length is from the battery to what it feeds, the piece to the relay's contact among it.",
        act: "Measure both from the battery.",
        source: "the whole is more than its part",
    },
    // a way through the car is longer than the harness's wire
    Explanation {
        code: "wires.too-short",
        why: "A wire that is pulled tight works loose at its crimp, and chafes.",
        act: "Lay it another way, or lengthen it before it is clipped.",
        source: "common practice, no source",
    },
    // what is left is less than what was to be spared
    Explanation {
        code: "wires.too-tight",
        why: "A connector that fails can't be crimped again.",
        act: "Look for a shorter way; else leave it as it is.",
        source: "common practice, no source",
    },
    // two of the three colours are the same
    Explanation {
        code: "wires.alike",
        why: "At the car, on your back, colour is all that you see of a wire.",
        act: "Give grounds and feeds a colour each; the letters are those of IEC 60757.",
        source: "common practice, no source; IEC 60757, from memory",
    },
    // the load's current is above what the pin is said to carry
    Explanation {
        code: "wires.pin-hot",
        why: "A pin is rated hot, in a full connector; beyond it the plating goes, the contact gets worse, and heats more.",
        act: "Keep to the connector's data.",
        source: "the connector's data; the current by Ohm's law",
    },
    // a wire's size is typed and lies beyond what pins and seals take
    Explanation {
        code: "wires.pin-wire",
        why: "A crimp on too thin a wire pulls off, too thick a one breaks it, and the seal leaks.",
        act: "Crimp only what terminal and seal are made for.",
        source: "the connector's data",
    },
];
