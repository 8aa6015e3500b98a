//! The bus between controllers: its wire, its ends, what a meter shows.

pub mod frames;

use crate::{
    quantity::{Area, BitRate, Length, Resistance, Voltage},
    schema::{Part, Whole, choice, choices, fields, quantity, whole},
};

/// Where the terminators are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TerminatedAt {
    /// One at each end of the wire.
    Ends,
    /// Anywhere else.
    Elsewhere,
}

choices! {
    TerminatedAt {
        Ends = "ends", "One at each end of the wire";
        Elsewhere = "elsewhere", "Anywhere else: in the middle, at one end";
    }
}

/// How the wire is laid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BusShape {
    /// One wire from device to device.
    Line,
    /// From a middle to each device.
    Star,
}

choices! {
    BusShape {
        Line = "line", "From device to device, with branches";
        Star = "star", "A star: an arm to each device";
    }
}

fields! {
    of Part::Bus;
    /// What an ohmmeter shows.
    READING: Resistance = quantity("reading", "CAN-H to CAN-L, power off", "ohm", 0.0, 1e7)
        .hint("ohms; OL where it shows no end")
        .measure("Battery off, every device plugged in, a minute later: ohms between the two lines, at any connector of the bus.")
        .first();
    /// The terminators that are planned.
    TERMINATORS: Whole = whole("terminators", "Terminators of 120 Ω", 0, 4)
        .hint("those inside devices too")
        .first();
    /// Where they are.
    TERMINATED_AT: TerminatedAt = choice("terminated_at", "Where they are")
        .only_if("terminators", &["2", "3", "4"])
        .first();
    /// Its copper.
    SIZE: Area = quantity("size", "Size of its wires", "mm2", 0.05, 10.0)
        .assumed("0.35 mm2", "a usual bus wire: common practice, no source")
        .rare();
    /// Bits in a second.
    BIT_RATE: BitRate = quantity("bit_rate", "Bit rate", "kbit/s", 5.0, 1000.0)
        .hint("as 500 kbit/s; CAN FD: that of the identifiers")
        .first();
    /// The wire from one end to the other.
    LENGTH: Length = quantity("length", "Wire from end to end", "m", 0.1, 5000.0)
        .hint("of a star: its two longest arms")
        .first();
    /// The longest branch.
    BRANCH: Length = quantity("branch", "Longest branch to a device", "m", 0.0, 1000.0)
        .hint("of a star: its longest arm");
    /// How the wire is laid.
    SHAPE: BusShape = choice("shape", "How it is laid");
    /// Another device's bit rate.
    OTHER_RATE: BitRate = quantity("other_rate", "Bit rate of a device that differs", "kbit/s", 5.0, 1000.0)
        .hint("blank: all are alike")
        .rare();
    /// What CAN-H shows.
    HIGH: Voltage = quantity("high", "CAN-H to ground, bus running", "V", -30.0, 60.0)
        .measure("Key on, every device plugged in: DC volts from CAN-H to ground. The meter shows the mean.")
        .first();
    /// What CAN-L shows.
    LOW: Voltage = quantity("low", "CAN-L to ground, bus running", "V", -30.0, 60.0)
        .measure("The same at CAN-L, within the same minute.")
        .first();
}
