//! The switched feeds.

use crate::{
    quantity::Resistance,
    schema::{Part, fields, quantity},
};

fields! {
    of Part::SwitchedFeeds;
    /// Resistance to ground of a switched feed (15 or 87) while it is off.
    OFF_RESISTANCE: Resistance = quantity("off_resistance", "Switched feed (15 or 87) to ground, switched off", "ohm", 0.5, 1e6)
        .hint("what else hangs on it")
        .assumed("5 to 1000 ohm", "common practice, no source: from a feed with coils and injectors on it to a single relay")
        .measure("Battery disconnected, this load unplugged: meter from its feed wire to ground.")
        .rare();
}
