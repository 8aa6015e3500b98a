//! How much a plan holds: one limit for what is read and for what is written.

use super::{Plan, node::DocumentNode, parse};

/// The largest plan, in bytes of its file: a full plan has some tens of thousands.
pub const MOST_BYTES: usize = 1_000_000;

impl Plan {
    /// Whether what is written of the plan can be read again.
    pub fn fits(&self) -> bool {
        self.most_written() <= MOST_BYTES || parse::write(self).len() <= MOST_BYTES
    }

    /// No fewer bytes than are written, without writing them.
    fn most_written(&self) -> usize {
        // a character of control takes six; the number of a cell stands for the blank ones before it
        let texts = self.texts.iter().map(|(place, text)| 6 * text.len() + 20 * place.cell() + 100);
        let left = self.left.iter().map(|(path, text)| 6 * (path.len() + text.len()) + 100);
        let counts = self.counts.iter().map(|(_, count)| 20 * count + 100);
        let own = 6 * (self.name.len() + self.notes.len()) + 1000;
        texts.chain(left).chain(counts).fold(own, usize::saturating_add)
    }
}

impl DocumentNode {
    /// How many bytes its texts and their paths take: a path that many share is written with each of them.
    pub(super) fn weight(&self, path: usize) -> usize {
        match self {
            Self::Text(text) => path + text.len(),
            Self::Truth(_) => path,
            Self::List(nodes) => sum(nodes.iter().map(|node| node.weight(path + 4))),
            Self::Object(members) => {
                sum(members.iter().map(|(key, node)| node.weight(path + key.len() + 1)))
            }
        }
    }
}

fn sum(all: impl Iterator<Item = usize>) -> usize {
    all.fold(0, usize::saturating_add)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        fields::{engine, loads},
        plan::{ReadError, VERSION, parse, write},
        schema::Part,
    };

    #[test]
    fn a_plan_fits_where_its_file_is_read_again() {
        for length in [10, MOST_BYTES / 6, MOST_BYTES - 100, MOST_BYTES] {
            for letter in ["9", "\u{1}", "Ω", "\""] {
                let mut plan = Plan::named("long");
                plan.put(engine::ORDER, &letter.repeat(length / letter.len()));
                let is_read = parse(&write(&plan)).is_ok();
                assert_eq!(plan.fits(), is_read, "{length} bytes of {letter:?}");
            }
        }
    }

    #[test]
    fn what_is_counted_is_never_less_than_what_is_written() {
        let mut plan = Plan::named("\u{2}\"");
        plan.notes = "\u{1}".repeat(50);
        for at in 0..70 {
            plan.add(Part::Loads);
            plan.put(loads::NAME.at(at), "\u{1f}\u{1f}");
        }
        plan.left.push(("\u{1}".repeat(9), "\u{1}".repeat(9)));
        assert!(plan.most_written() >= write(&plan).len(), "{}", plan.most_written());
    }

    #[test]
    fn a_small_file_that_would_be_written_large_is_refused() {
        let long = format!(
            "{{\"quietpin\": {VERSION}, \"{}\": [{}1]}}",
            "x".repeat(90_000),
            "1,".repeat(90_000)
        );
        assert!(long.len() < MOST_BYTES);
        assert!(matches!(parse(&long), Err(ReadError::TooLarge { .. })));
        let many =
            format!("{{\"quietpin\": {VERSION}, \"loads\": [{}{{}}]}}", "{},".repeat(200_000));
        assert!(many.len() < MOST_BYTES);
        assert!(matches!(parse(&many), Err(ReadError::TooLarge { .. })));
    }
}
