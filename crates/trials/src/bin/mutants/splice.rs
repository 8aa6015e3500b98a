//! Texts put into a text, so that all that is not changed stays as it was, to the last blank.

use std::ops::Range;

/// What is put in, in the order in which it was asked for: what surrounds first.
#[derive(Debug, Default)]
pub(crate) struct Splices {
    all: Vec<(usize, Place, String)>,
}

/// What comes first where several stand at one place: what ends, what is replaced, what begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Place {
    End,
    Instead { until: usize },
    Begin,
}

impl Splices {
    /// Puts something before and something behind a piece.
    pub(crate) fn around(&mut self, piece: &Range<usize>, before: &str, behind: &str) {
        self.all.push((piece.start, Place::Begin, before.to_owned()));
        self.all.push((piece.end, Place::End, behind.to_owned()));
    }

    /// Puts something in the place of a piece.
    pub(crate) fn instead(&mut self, piece: &Range<usize>, text: &str) {
        self.all.push((piece.start, Place::Instead { until: piece.end }, text.to_owned()));
    }

    /// Puts in what was asked for in a piece within.
    pub(crate) fn append(&mut self, within: &mut Self) {
        self.all.append(&mut within.all);
    }

    /// Whether there is nothing.
    pub(crate) fn is_empty(&self) -> bool {
        self.all.is_empty()
    }

    /// The text with all of it.
    pub(crate) fn put_into(self, text: &str) -> String {
        let mut all: Vec<_> = self.all.into_iter().enumerate().collect();
        // of two pieces that end at one place the inner one ends first; of two that begin there, the outer one begins first
        all.sort_by_key(|(order, (at, place, _))| match place {
            Place::End => (*at, 0, usize::MAX - order),
            Place::Instead { .. } => (*at, 1, *order),
            Place::Begin => (*at, 2, *order),
        });
        let mut made = String::with_capacity(text.len() * 2);
        let mut from = 0;
        for (_, (at, place, put)) in all {
            made += text.get(from..at).unwrap_or_default();
            made += &put;
            from = from.max(at);
            if let Place::Instead { until } = place {
                from = until;
            }
        }
        made + text.get(from..).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_outer_begins_first_and_ends_last() {
        let mut splices = Splices::default();
        splices.around(&(0..5), "(", ")");
        splices.around(&(0..1), "[", "]");
        splices.instead(&(2..3), "<=");
        splices.around(&(4..5), "{", "}");
        assert_eq!(splices.put_into("a < b;"), "([a] <= {b});");
    }

    #[test]
    fn what_ends_where_something_is_replaced_ends_before_it() {
        let mut splices = Splices::default();
        splices.around(&(0..1), "(", ")");
        splices.instead(&(1..2), ", ");
        splices.around(&(2..3), "(", ")");
        assert_eq!(splices.put_into("a<b"), "(a), (b)");
    }
}
