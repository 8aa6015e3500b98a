//! The frames that a bus carries.

use crate::{
    bus::frame::IdentifierKind,
    quantity::Time,
    schema::{Part, Text, Whole, choice, choices, fields, quantity, text, whole},
};

choices! {
    IdentifierKind {
        Standard = "11", "11 bits";
        Extended = "29", "29 bits (extended)";
    }
}

fields! {
    of Part::Frames;
    /// What it is called.
    NAME: Text = text("name", "What it carries").hint("as engine speed").first();
    /// Its identifier.
    IDENTIFIER: Text = text("identifier", "Identifier, hex").hint("as 5F0").first();
    /// How long that is.
    IDENTIFIER_KIND: IdentifierKind = choice("identifier_kind", "Length of the identifier")
        .assumed("11", "the usual one: common practice, no source");
    /// Bytes of its data.
    BYTES: Whole = whole("bytes", "Bytes of data", 0, 8)
        .assumed("8", "the most that a frame carries: ISO 11898-1")
        .first();
    /// After which time it comes again.
    PERIOD: Time = quantity("period", "Sent every", "ms", 0.1, 3600000.0).hint("as 20 ms").first();
    /// Its data, where they are known.
    DATA: Text = text("data", "Its data, as seen, hex").hint("as 01 F3 00: its bits are counted one by one").rare();
}
