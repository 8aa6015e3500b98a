//! The sentences of the question of the bus.

use crate::words::{Explanation, sentences};

sentences! {
    QUESTION = "bus.question", "Is the bus terminated, short enough, not overloaded?";
    PENDING = "bus.pending", "One moment…";
    BLANK = "bus.blank", "Needs: the ohms between CAN-H and CAN-L, or how many ends";
    // titles
    TITLE_PAIR = "bus.title-pair", "Terminators";
    TITLE_WIRE = "bus.title-wire", "Wire and bit rate";
    TITLE_LEVELS = "bus.title-levels", "Levels while it runs";
    TITLE_LOAD = "bus.title-load", "Load";
    // verdicts: the pair
    PAIR_OPEN = "bus.pair-open", "Needs: the ohms between CAN-H and CAN-L, or how many ends";
    PAIR_UNREADABLE = "bus.pair-unreadable", "Not answered yet: the reading can't be read";
    PAIR_READ = "bus.pair-read", "Two terminators: {read}";
    PAIR_PLANNED = "bus.pair-planned", "Two terminators: it must read {low} to {high}";
    PAIR_AT = "bus.pair-at", "Two terminators, but not at the ends";
    PAIR_COUNT = "bus.pair-count", "{n} {n|terminator|terminators}, where two are needed";
    PAIR_ONE = "bus.pair-one", "{read}: one terminator, not two";
    PAIR_NONE = "bus.pair-none", "{read}: no terminator is connected";
    PAIR_MANY = "bus.pair-many", "{read}: too many terminators";
    PAIR_SHORT = "bus.pair-short", "{read}: the two lines touch";
    PAIR_CONTACT = "bus.pair-contact", "{read}: between {right} and {more} terminators";
    // verdicts: the wire
    WIRE_OPEN = "bus.wire-open", "Needs: the bit rate and the length";
    WIRE_NO_RATE = "bus.wire-no-rate", "Needs: the bit rate";
    WIRE_NO_LENGTH = "bus.wire-no-length", "Needs: the length; {rate} reaches {most}";
    WIRE_SHORT = "bus.wire-short", "Short enough for {rate}";
    WIRE_LONG = "bus.wire-long", "Too long for {rate}";
    WIRE_TIGHT = "bus.wire-tight", "Perhaps too long for {rate}";
    WIRE_BRANCH = "bus.wire-branch", "A branch is too long for {rate}";
    WIRE_BRANCH_TIGHT = "bus.wire-branch-tight", "A branch is perhaps too long for {rate}";
    WIRE_RATES = "bus.wire-rates", "Two bit rates: nobody speaks";
    // verdicts: the levels
    LEVELS_HALF = "bus.levels-half", "Needs: both lines against ground";
    LEVELS_RIGHT = "bus.levels-right", "Levels right: dominant about {share} of the time";
    LEVELS_SILENT = "bus.levels-silent", "Both lines at {middle}: nobody sends";
    LEVELS_SWAPPED = "bus.levels-swapped", "CAN-H and CAN-L are swapped";
    LEVELS_STUCK = "bus.levels-stuck", "A device holds the bus";
    LEVELS_GROUND = "bus.levels-ground", "A line at ground, or no supply";
    LEVELS_BATTERY = "bus.levels-battery", "{line} touches a supply";
    LEVELS_UNEVEN = "bus.levels-uneven", "Not around 2.5 V";
    // verdicts: the load
    LOAD_NO_RATE = "bus.load-no-rate", "Needs: the bit rate";
    LOAD_NO_PERIOD = "bus.load-no-period", "Needs: how often each frame is sent";
    LOAD_EASY = "bus.load-easy", "Load up to {most}";
    LOAD_SO_FAR = "bus.load-so-far", "Load {most} so far, but something is left out";
    LOAD_BUSY = "bus.load-busy", "Busy: {most} in the worst case";
    LOAD_OVER = "bus.load-over", "More than it carries: {least}";
    LOAD_TWICE = "bus.load-twice", "One identifier is used twice";
    // why
    WHY_READ = "bus.why-read",
        "Two of 120 Ω side by side are 60 Ω. Ohms don't show whether CAN-H and CAN-L are swapped: the volts of the running bus do.";
    WHY_PLANNED = "bus.why-planned",
        "Each end is closed with 120 Ω, as the wire itself is, so that nothing comes back from there; side by side they read 60 Ω.";
    WHY_DIFFERS = "bus.why-differs", "{n} {n|is|are} planned, but the meter sees {read}.";
    WHY_WIRE = "bus.why-wire",
        "There and back within a bit: {most} are sure at {rate}, and branches of {branch}.";
    WHY_LEVELS = "bus.why-levels",
        "A meter shows the mean: CAN-H {up} from 2.5 V, CAN-L {down}. The busier the bus, the further they part, both alike.";
    WHY_LOAD = "bus.why-load",
        "{n} {n|frame|frames} take {least} of {rate} without stuffing and {most} with the most of it. Up to 70% is common practice; a CAN FD frame is not counted.";
    // what to do
    DO_OHMS = "bus.do-ohms",
        "Battery off, all devices plugged in: {low} to {high} between CAN-H and CAN-L.";
    DO_UNPLUG = "bus.do-unplug",
        "Unplug the far terminator and read again here: the same says that the pair is broken on the way to it, or a pin pushed back; no end says that the near one is missing.";
    DO_FIT = "bus.do-fit", "Fit 120 Ω at each end of the wire, or switch on the one inside the device there.";
    DO_TAKE_OFF = "bus.do-take-off",
        "Unplug the devices one by one: where the reading rises, one is inside. Switch it off, or take it out, but at the two ends.";
    DO_CONTACT = "bus.do-contact",
        "{contact} too much in one branch: clean and press each contact between the meter and the terminators, or look for a resistor that is not 120 Ω.";
    DO_SHORT = "bus.do-short",
        "Unplug the devices one by one; if it still reads so, look along the pair for where it is crushed.";
    DO_SHORT_AT = "bus.do-short-at",
        "Read from an end, it lies about {distance} of wire away; unplug the devices one by one first.";
    DO_TWO = "bus.do-two", "Two terminators, one at each end.";
    DO_ENDS = "bus.do-ends", "Move the terminators to the ends of the wire.";
    DO_RATE = "bus.do-rate", "Set all devices to {rate}.";
    DO_BRANCH = "bus.do-branch", "Shorten it to {most}: take the pair itself past the device, in and out.";
    DO_LINE = "bus.do-line", "Lay the pair from device to device, with branches of no more than {most}.";
    DO_SAMPLE = "bus.do-sample",
        "Ask for the devices' sample point: 75 to 87.5% of the bit, alike in all.";
    DO_SAME_RATE = "bus.do-same-rate", "Set that device to {rate} too.";
    DO_SWAP = "bus.do-swap", "Swap the two lines where the meter was, if its own leads were right.";
    DO_ONE_OFF = "bus.do-one-off",
        "Key off, battery off: ohms from each line to ground and to plus. A few kΩ or more is right; unplug devices until it rises.";
    DO_HOLDER = "bus.do-holder", "Unplug the devices one by one until the two come together: that one holds the bus.";
    DO_TALK = "bus.do-talk",
        "See that two devices at least are supplied, at one bit rate: one alone is never answered.";
    DO_GROUNDS = "bus.do-grounds",
        "Unplug the devices one by one; read each one's ground against the meter's, key on: millivolts.";
    DO_OTHER = "bus.do-other", "Type the other line's volts.";
    DO_IDENTIFIER = "bus.do-identifier", "Give one of them another identifier.";
    DO_SLOWER = "bus.do-slower", "Send what nobody watches less often: dials need no more than 20 a second.";
    DO_PERIODS = "bus.do-periods", "Left out, since it is not known how often: {list}.";
    // lines
    CAN_HIGH = "bus.can-high", "CAN-H";
    CAN_LOW = "bus.can-low", "CAN-L";
    NO_END = "bus.no-end", "no end (OL)";
    // cautions
    CAUTION_OFF = "bus.caution-off",
        "Ohms only with the battery off: on a live bus the reading means nothing, and the meter may be harmed.";
    // figures and tables
    FIGURE_READ = "bus.figure-read", "To read between CAN-H and CAN-L";
    FIGURE_CONTACT = "bus.figure-contact", "Too much in one branch";
    FIGURE_TURN = "bus.figure-turn", "Part of a bit for the way there and back";
    FIGURE_LOAD = "bus.figure-load", "Load of the bus";
    TABLE_FRAMES = "bus.table-frames", "Frames";
    COLUMN_NAME = "bus.column-name", "Frame";
    COLUMN_SEEN = "bus.column-seen", "Bits as seen";
    COLUMN_BITS = "bus.column-bits", "Bits at most";
    COLUMN_TIME = "bus.column-time", "Time at most";
    COLUMN_SHARE = "bus.column-share", "Load at most";
    FRAME = "bus.frame", "frame {n}";
    // findings: the pair
    TERMINATORS = "bus.terminators",
        "{n} {n|terminator|terminators} on the bus instead of two: {read} between the lines instead of 60 Ω.";
    NOT_AT_ENDS = "bus.not-at-ends",
        "The terminators are not at the ends of the wire: an open end throws the signal back.";
    ONE_READ = "bus.one-read", "{read} between CAN-H and CAN-L: one terminator is missing, or the pair is broken.";
    NONE_READ = "bus.none-read", "{read} between CAN-H and CAN-L: no terminator is connected.";
    MANY_READ = "bus.many-read",
        "{read} between CAN-H and CAN-L instead of 60 Ω: {n} terminators or more, too much for the transceivers.";
    SHORTED = "bus.shorted", "{read} between CAN-H and CAN-L: the two lines touch.";
    CONTACT = "bus.contact",
        "{read} between CAN-H and CAN-L: as with {contact} in one branch, a bad contact or a wrong resistor.";
    // findings: the wire
    TOO_LONG = "bus.too-long", "{length} of bus is too long for {rate}: {most} at the most.";
    LENGTH_TIGHT = "bus.length-tight",
        "{length} of bus at {rate} is more than the {sure} that are sure: it depends on the devices.";
    BRANCH_TOO_LONG = "bus.branch-too-long",
        "{length} is too long for a branch or an arm at {rate}: {most} at the most.";
    BRANCH_LONG = "bus.branch-long",
        "{length} is more than the {sure} that are sure for a branch or an arm at {rate}.";
    RATES_DIFFER = "bus.rates-differ", "{one} and {other} on one bus: each takes the other's frames for errors.";
    // findings: the levels
    SWAPPED = "bus.swapped", "CAN-H {high}, CAN-L {low}: the two lines are swapped.";
    STUCK = "bus.stuck", "CAN-H {high}, CAN-L {low}: a device holds the bus dominant all the time.";
    TO_GROUND = "bus.to-ground", "CAN-H {high}, CAN-L {low}: a line touches ground, or no device is supplied.";
    TO_BATTERY = "bus.to-battery", "CAN-H {high}, CAN-L {low}: {line} touches a supply.";
    SILENT = "bus.silent", "CAN-H {high}, CAN-L {low}: nobody sends, or the two touch.";
    UNEVEN = "bus.uneven",
        "CAN-H {high}, CAN-L {low}: not around 2.5 V. A device without ground or supply, or one line not driven.";
    // findings: the load
    OVERLOADED = "bus.overloaded", "The frames take {least} of {rate}, without stuffing: the last in rank are never sent.";
    BUSY = "bus.busy", "The frames take up to {most} of {rate}: those of low rank come late.";
    TWICE = "bus.identifier-twice",
        "Identifier {identifier} is used twice: where two devices send it at once, they destroy each other's frames.";
    NO_IDENTIFIER = "bus.no-identifier",
        "“{typed}” is no identifier of {bits} bits: type it in hex, 0 to {highest}.";
    NO_DATA = "bus.no-data", "“{typed}” is not {bytes} {bytes|byte|bytes}: type two hex digits for each, as 01 F3.";
}

const PAIR: &str = "ISO 11898-2: 120 Ω at each end of the wire; data sheets of transceivers state their levels for 50 to 65 Ω, and for 45 to 70 Ω with less to spare";
const REACH: &str = "ISO 11898-2 for 40 m and branches of 0.3 m at 1 Mbit/s (the latter from memory); manuals of field buses for the others";
const LEVELS: &str = "data sheets of transceivers: 2 to 3 V each while nobody drives; 1.5 to 3 V apart in a dominant bit";

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    // Another number of terminators than two is planned.
    Explanation {
        code: TERMINATORS.code,
        why: "Without its 120 Ω an end throws each edge back, and bits are read wrong; with a third the transceivers can't part the lines far enough.",
        act: "Two in all, one at each end; look into the devices' data, since many have one inside.",
        source: PAIR,
    },
    // Two are planned, elsewhere, on a wire longer than a harmless branch.
    Explanation {
        code: NOT_AT_ENDS.code,
        why: "The wire beyond a terminator is a branch with an open end, and as long as that.",
        act: "Move them to the two devices that are furthest apart, or to the wire's ends.",
        source: PAIR,
    },
    // The reading is that of one.
    Explanation {
        code: ONE_READ.code,
        why: "A device behind a break hears nothing; a bus with one end open may work on the bench and fail in the car.",
        act: "Unplug the far terminator and read again; find the break or fit the one that is missing.",
        source: PAIR,
    },
    // 1 kΩ or more, or no end.
    Explanation {
        code: NONE_READ.code,
        why: "Nothing pulls the lines together after a dominant bit, and both ends throw the signal back.",
        act: "Fit 120 Ω at each end; then see that the meter was on the right two wires.",
        source: PAIR,
    },
    // Three, four or more are read.
    Explanation {
        code: MANY_READ.code,
        why: "A transceiver must drive all of them: the lines part less, and far devices lose bits.",
        act: "Many devices have a terminator inside: switch off or take out all but those at the two ends.",
        source: PAIR,
    },
    // Less than wires and leads have.
    Explanation {
        code: SHORTED.code,
        why: "No device can part the two lines: nobody speaks.",
        act: "Unplug the devices one by one, then search the pair: crushed, chafed, a strand at a crimp.",
        source: PAIR,
    },
    // A reading between those of whole numbers of terminators.
    Explanation {
        code: CONTACT.code,
        why: "A contact with ohms of its own gets worse with heat and shaking, until the end is open.",
        act: "Read again at other connectors: it is where the reading changes.",
        source: PAIR,
    },
    // More than the time in a bit allows.
    Explanation {
        code: TOO_LONG.code,
        why: "What the other end answers comes after the bit was read: good frames count as errors.",
        act: "Lower the bit rate of all devices, or shorten the wire.",
        source: REACH,
    },
    // More than the manuals' row, less than the time in a bit allows.
    Explanation {
        code: LENGTH_TIGHT.code,
        why: "Whether an answer comes in time depends on the transceivers and on where in the bit the devices read.",
        act: "Ask for the sample point of each device, or lower the bit rate.",
        source: REACH,
    },
    // An echo of more than 3 % of a bit, or more than 6 m.
    Explanation {
        code: BRANCH_TOO_LONG.code,
        why: "A branch has no terminator: its end throws each edge back into the bus.",
        act: "Take the pair itself past the device: in at one pin, out at the next.",
        source: REACH,
    },
    // More than 0.3 m at 1 Mbit/s, and as much more as the bits are longer.
    Explanation {
        code: BRANCH_LONG.code,
        why: "It works mostly; how many there are, and what else is on the bus, decides.",
        act: "Keep branches as short as they can be.",
        source: REACH,
    },
    // Another bit rate is typed.
    Explanation {
        code: RATES_DIFFER.code,
        why: "A device with another bit rate answers every frame with an error, until all fall silent.",
        act: "One bit rate for all, or a bus of its own for it.",
        source: "ISO 11898-1: one bit rate on a bus",
    },
    // CAN-L reads higher.
    Explanation {
        code: SWAPPED.code,
        why: "A device that is connected the other way round hears nothing and disturbs the others; ohms don't show it.",
        act: "Read at each device's connector; swap its two wires where it differs.",
        source: LEVELS,
    },
    // 1.5 V apart or more on the average.
    Explanation {
        code: STUCK.code,
        why: "As long as one drives, nobody else can send.",
        act: "Unplug the devices one by one.",
        source: LEVELS,
    },
    // A line within 0.3 V of ground.
    Explanation {
        code: TO_GROUND.code,
        why: "Through the terminators one line takes the other along.",
        act: "Battery off: ohms from each line to ground; unplug devices until it rises.",
        source: LEVELS,
    },
    // More than 4.6 V.
    Explanation {
        code: TO_BATTERY.code,
        why: "Nobody speaks, and a transceiver that is rated for less than the battery's voltage is destroyed.",
        act: "Key off at once; search where the pair runs beside feeds, and the pins of each connector.",
        source: LEVELS,
    },
    // Less than 20 mV apart.
    Explanation {
        code: SILENT.code,
        why: "A bus that runs shows CAN-H a little higher: the mean of its bits.",
        act: "Supply two devices at least; battery off, the ohms between the lines tell whether they touch.",
        source: LEVELS,
    },
    // Their middle is not between 2 and 3 V.
    Explanation {
        code: UNEVEN.code,
        why: "Every device holds the idle lines at half of its own 5 V, above its own ground.",
        act: "Look for the device whose ground or supply is off.",
        source: LEVELS,
    },
    // More than all its bits, without stuffing.
    Explanation {
        code: OVERLOADED.code,
        why: "The frame with the lower identifier goes first: those of high identifiers wait for ever.",
        act: "Send less often, or raise the bit rate of all devices where the wire allows it.",
        source: "ISO 11898-1: the lower identifier wins",
    },
    // More than 70 % with the most stuffing.
    Explanation {
        code: BUSY.code,
        why: "The busier the bus, the longer a frame of high identifier waits for those before it.",
        act: "Send less often what changes slowly.",
        source: "50 to 70%: common practice, no source",
    },
    // Two records have the same.
    Explanation {
        code: TWICE.code,
        why: "Identifiers decide who goes first; two alike go on together until their data differ.",
        act: "Give one of the two another identifier.",
        source: "ISO 11898-1: one sender for each identifier",
    },
    // No hex digits, or more than its length allows.
    Explanation {
        code: NO_IDENTIFIER.code,
        why: "It can't be told whether two frames have the same.",
        act: "Type it in hex, as every list of frames has it; one above 7FF has 29 bits.",
        source: "ISO 11898-1",
    },
    // No hex digits, or another number of bytes.
    Explanation {
        code: NO_DATA.code,
        why: "Its bits can't be counted one by one; the most that they may be are.",
        act: "Type two hex digits for each byte.",
        source: "ISO 11898-1",
    },
];
