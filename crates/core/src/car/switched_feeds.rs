//! The feeds that are switched: 15, and the contact (87) of each relay.

pub mod fields;
