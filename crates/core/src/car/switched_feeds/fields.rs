//! The switched feeds.

use crate::{
    quantity::{Area, Current, Resistance, Voltage},
    schema::{Part, choice, choices, fields, quantity},
};

/// What becomes of the ignition feed (15) while the starter turns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WhileCranking {
    /// It stays live.
    Live,
    /// It is cut: an accessory contact.
    Cut,
}

choices! {
    WhileCranking {
        Live = "live", "Live";
        Cut = "cut", "Cut (an accessory contact)";
    }
}

fields! {
    of Part::SwitchedFeeds;
    /// Resistance to ground of a switched feed (15 or 87) while it is off.
    OFF_RESISTANCE: Resistance = quantity("off_resistance", "Switched feed (15 or 87) to ground, switched off", "ohm", 0.5, 1e6)
        .hint("through what else is on it")
        .assumed("5 to 1000 ohm", "common practice, no source: from a feed with coils and injectors on it to a single relay")
        .measure("Battery disconnected, this load unplugged: meter from its feed wire to ground.")
        .rare();
    /// The ignition feed (15) while the starter turns: `live` or `cut`.
    CRANKING: WhileCranking = choice("cranking", "The ignition feed (15) while the starter turns")
        .measure("Fuel and spark off: meter from that feed to ground, crank. It must read what the battery posts read, or hardly less. Nothing: it is cut.")
        .rare();
    /// What is lost between battery and the coils of relays while the starter turns.
    CRANKING_LOSS: Voltage = quantity("cranking_loss", "Voltage drop from battery to relay coils, cranking", "V", 0.0, 6.0)
        .assumed("0.1 to 0.5 V", "key switch, fuses and wires while the starter turns: common practice, no source")
        .measure("Meter from the battery's plus post to the feed of the relay's coil (86) while the starter turns.")
        .rare();
    /// The fuse before what is on the ignition feed (15).
    FUSE: Current = quantity("fuse", "Fuse of the ignition feed (15)", "A", 0.5, 500.0)
        .hint("before all that is on it without a relay's contact");
    /// The thinnest wire behind that fuse.
    SIZE: Area = quantity("size", "Thinnest wire behind that fuse", "mm2", 0.05, 120.0)
        .hint("copper; 1 mm² or 18 AWG");
    /// The fuse before what is on permanent battery (30).
    BATTERY_FUSE: Current = quantity("battery_fuse", "Fuse of the battery feed (30)", "A", 0.5, 500.0)
        .hint("before all that is on it without a relay's contact");
    /// The thinnest wire behind that fuse.
    BATTERY_SIZE: Area = quantity("battery_size", "Thinnest wire behind that fuse", "mm2", 0.05, 120.0)
        .hint("copper; 1 mm² or 18 AWG");
}
