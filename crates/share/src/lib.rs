//! A plan on its way to another phone, with no network between: as a link, or as QR codes that are scanned in any order.
//!
//! What stands in a code is the text of the plan's file, compressed, with a check; see [`code`] for its form. Codes of one
//! plan that is too long for one of them are numbered, and [`gathered`] puts them together. All of it is total: any text
//! may be read here, and what is no code, or damaged, or of another plan, is told by its name.
#![forbid(unsafe_code)]

mod check;
pub mod code;
pub mod gathered;
mod signs;
mod symbol;

pub use code::{Code, MOST_CODES, Refused, TooLong, series, whole};
pub use gathered::{Arrival, Gathered, Standing};
pub use symbol::Symbol;

/// What the fragment of a link begins with, where a code follows.
pub const MARK: &str = "#plan=";
