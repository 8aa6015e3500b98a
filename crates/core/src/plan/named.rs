//! Records that one description serves: `D1 to D8` names eight outputs.

use super::{MOST_ENTRIES, Plan};
use crate::schema::{Part, Place};

/// The names that a text stands for: one, or those of a list as `A1, A3, D1 to D8`.
///
/// A hyphen belongs to a name (`X1-7` is pin 7 of plug X1). What is no list of pins is one name, as it is.
pub fn names_in(text: &str) -> Vec<String> {
    let text = text.trim();
    let mut names = Vec::new();
    for piece in text.split(',') {
        match range(piece.trim()) {
            Some(more) => names.extend(more),
            None => return vec![text.to_owned()],
        }
        if names.len() > MOST_ENTRIES {
            return vec![text.to_owned()];
        }
    }
    names
}

/// Few texts that stand for these names: the pins among them in lists, anything else by itself.
pub(super) fn joined(names: &[String]) -> Vec<String> {
    let (mut lists, mut last): (Vec<String>, Vec<(String, usize)>) = (Vec::new(), Vec::new());
    let mut pins: Vec<String> = Vec::new();
    for name in names {
        let pin = numbered(name).filter(|_| range(name).is_some_and(|it| it.len() == 1));
        let Some((before, number)) = pin.and_then(|(before, it)| Some((before, it.parse().ok()?)))
        else {
            lists.push(name.clone());
            continue;
        };
        let follows = last.last().is_some_and(|(same, it)| same == before && it + 1 == number);
        if !follows {
            pins.extend(run(&last));
            last.clear();
        }
        last.push((before.to_owned(), number));
    }
    pins.extend(run(&last));
    let text = pins.join(", ");
    // zeros before a number may be lost on the way
    let whole: Vec<_> = names.iter().filter(|name| !lists.contains(name)).cloned().collect();
    if whole.is_empty() {
        return lists;
    }
    if names_in(&text) == whole {
        lists.push(text);
        return lists;
    }
    names.to_vec()
}

/// Pins that follow one another, as `D1 to D8`.
fn run(pins: &[(String, usize)]) -> Option<String> {
    let ((before, first), (_, last)) = (pins.first()?, pins.last()?);
    let first = format!("{before}{first}");
    Some(match pins.len() {
        1 => first,
        2 => format!("{first}, {before}{last}"),
        _ => format!("{first} to {before}{last}"),
    })
}

/// One pin, or those from one to another.
fn range(piece: &str) -> Option<Vec<String>> {
    let mut words = piece.split_whitespace();
    let (first, to, last) = (words.next()?, words.next(), words.next());
    let (before, from) = numbered(first)?;
    let last = match (to, last, words.next()) {
        (None, None, None) => return Some(vec![first.to_owned()]),
        (Some(to), Some(last), None) if to.eq_ignore_ascii_case("to") => last,
        _ => return None,
    };
    let (same, to) = numbered(last)?;
    let is_same = same.is_empty() || same.eq_ignore_ascii_case(before);
    let (low, high): (usize, usize) = (from.parse().ok()?, to.parse().ok()?);
    if !is_same || low > high || high - low >= MOST_ENTRIES {
        return None;
    }
    let width = from.len();
    Some((low..=high).map(|number| format!("{before}{number:0width$}")).collect())
}

/// A name that ends in a number, and that number.
fn numbered(name: &str) -> Option<(&str, &str)> {
    let before = name.trim_end_matches(|c: char| c.is_ascii_digit());
    let number = name.strip_prefix(before)?;
    (!number.is_empty()).then_some((before, number))
}

impl Plan {
    /// The names that the records of a list have, in their order.
    pub fn names(&self, list: Part) -> Vec<String> {
        let named = |place: &Place| place.field().name == "name";
        let Some(name) = list.places().find(named) else { return Vec::new() };
        let texts = (0..self.count(list)).map(|at| self.text(name.at(at)).trim());
        let names = |text: &str| match list {
            Part::Outputs | Part::Inputs => names_in(text),
            _ => vec![text.to_owned()],
        };
        texts.filter(|text| !text.is_empty()).flat_map(names).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, expected: &[&str]) {
        assert_eq!(names_in(text), expected, "{text:?}");
    }

    #[test]
    fn a_list_of_pins_names_each() {
        check("D1 to D4", &["D1", "D2", "D3", "D4"]);
        check(" d1 To 3", &["d1", "d2", "d3"]);
        check("D08 to D11", &["D08", "D09", "D10", "D11"]);
        check("X1-7 to X1-9, B2", &["X1-7", "X1-8", "X1-9", "B2"]);
        check("7 to 9", &["7", "8", "9"]);
        check("A1,A3", &["A1", "A3"]);
    }

    #[test]
    fn names_are_joined_so_that_the_same_are_read_again() {
        let check = |names: &[&str], expected: &[&str]| {
            let names: Vec<_> = names.iter().map(|it| (*it).to_owned()).collect();
            assert_eq!(joined(&names), expected, "{names:?}");
        };
        check(&["D1", "D2", "D3", "D7", "B1", "B2"], &["D1 to D3, D7, B1, B2"]);
        check(&["X1-9", "X1-10"], &["X1-9, X1-10"]);
        check(&["fan", "D1", "D2"], &["fan", "D1, D2"]);
        check(&["D01", "D02"], &["D01", "D02"]);
        check(&["", "D1"], &["", "D1"]);
        check(&[], &[]);
    }

    #[test]
    fn anything_else_is_one_name() {
        for text in [
            "D1",
            "X1-7",
            "idle valve",
            "pump, main",
            "fan 1, left",
            "D1 to E8",
            "D8 to D1",
            "D1 to",
            "to",
            "D1 to D2 to D3",
            "D1 to D99999999999999999999999",
            "D1 to D900",
            "D to E",
            "",
            ",",
        ] {
            check(text, &[text]);
        }
        let long = ["A1 to A40"; 3].join(", ");
        check(&long, &[&long]);
    }
}
