//! The feed of all injectors.

use crate::{
    quantity::{Current},
    schema::{Part, fields, quantity},
};

fields! {
    of Part::InjectorFeed;
    /// Rating of its fuse.
    FUSE: Current = quantity("fuse", "Fuse of the injectors' feed", "A", 0.5, 200.0)
        .hint("all sets that hang on it");
    /// Rating of its relay's contact.
    RELAY: Current = quantity("relay", "Rating of its relay's contact", "A", 0.5, 200.0)
        .hint("for long, from its label");
}
