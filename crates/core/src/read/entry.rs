//! Given, assumed, missing or unreadable: no default slips in unseen.

/// The input of a calculation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Entry<T> {
    /// Typed.
    Given(T),
    /// Blank: this is taken, and said.
    Assumed(T),
    /// Blank, with nothing to take.
    Missing,
    /// Typed but not usable; its finding is already reported.
    Unreadable,
}

impl<T> Entry<T> {
    /// The value to calculate with, if there is one.
    pub fn value(self) -> Option<T> {
        match self {
            Self::Given(value) | Self::Assumed(value) => Some(value),
            Self::Missing | Self::Unreadable => None,
        }
    }

    /// Whether the value was taken rather than typed.
    pub fn is_assumed(&self) -> bool {
        matches!(self, Self::Assumed(_))
    }

    /// Whether nothing was typed and nothing is taken.
    pub fn is_missing(&self) -> bool {
        matches!(self, Self::Missing)
    }

    /// The same entry with its value made into another.
    pub fn map<R>(self, f: impl FnOnce(T) -> R) -> Entry<R> {
        match self {
            Self::Given(value) => Entry::Given(f(value)),
            Self::Assumed(value) => Entry::Assumed(f(value)),
            Self::Missing => Entry::Missing,
            Self::Unreadable => Entry::Unreadable,
        }
    }

    /// The same entry with its value made into another, or missing where it has none.
    pub fn filter_map<R>(self, f: impl FnOnce(T) -> Option<R>) -> Entry<R> {
        match self {
            Self::Given(value) => f(value).map_or(Entry::Missing, Entry::Given),
            Self::Assumed(value) => f(value).map_or(Entry::Missing, Entry::Assumed),
            Self::Missing => Entry::Missing,
            Self::Unreadable => Entry::Unreadable,
        }
    }
}
