//! The English of every sentence, in one place for each question: another language is another set of these.
//!
//! A gap is `{name}`; `{n|plug|plugs}` chooses by the number in `n`.

pub(crate) mod field;
mod gaps;

pub(crate) use gaps::gaps_are_of;
pub use gaps::{filled_by, is_filled_by};

use crate::message::Gaps;

/// The words of a sentence, and the name that they go by. A gap is `{name}`; `{n|plug|plugs}` chooses by the number in `n`.
#[derive(Debug, PartialEq, Eq)]
pub struct Wording {
    /// Stable name of the sentence: a translation is keyed by it.
    pub code: &'static str,
    /// The sentence in English, with gaps.
    pub text: &'static str,
}

/// Declares sentences, a constant each.
macro_rules! sentences {
    ($($name:ident = $code:literal, $text:expr;)*) => {
        $(pub(crate) const $name: &$crate::words::Wording =
            &$crate::words::Wording { code: $code, text: $text };)*
    };
}

pub(crate) use sentences;

/// What a finding means, beyond its own sentence. When it is found stands as a comment beside each: nobody at the car
/// needs to be told, and the page would carry it.
#[derive(Clone, Copy, Debug)]
pub struct Explanation {
    /// The finding's code.
    pub code: &'static str,
    /// Why it matters.
    pub why: &'static str,
    /// What to do, in general; the remedies of a finding are more exact.
    pub act: &'static str,
    /// Where the rule comes from.
    pub source: &'static str,
}

/// Puts values into the gaps of a sentence; a gap without a value stays as it is.
pub(crate) fn fill(sentence: &str, values: &Gaps) -> String {
    let mut text = String::with_capacity(sentence.len() + 32);
    let mut rest = sentence;
    while let Some((before, gap_and_after)) = rest.split_once('{') {
        text.push_str(before);
        let Some((gap, after)) = gap_and_after.split_once('}') else {
            text.push('{');
            rest = gap_and_after;
            continue;
        };
        match filled(gap, values) {
            Some(value) => text.push_str(value),
            None => text.extend(["{", gap, "}"]),
        }
        rest = after;
    }
    text.push_str(rest);
    // a name stands as it was typed, but a sentence begins with a capital
    if sentence.starts_with('{') { capitalised(text) } else { text }
}

/// The same with a capital first letter, where it is one of Latin-1: the page carries no table of the others.
fn capitalised(text: String) -> String {
    let mut letters = text.chars();
    let capital = match letters.next() {
        Some(first @ ('a'..='z' | 'à'..='ö' | 'ø'..='þ')) => {
            char::from_u32(u32::from(first) - 32)
        }
        _ => None,
    };
    match capital {
        Some(capital) => [capital.to_string().as_str(), letters.as_str()].concat(),
        None => text,
    }
}

/// A text in small letters, where they are Latin, Greek or Cyrillic: the page carries no table of the others.
pub(crate) fn small_letters(text: &str) -> impl Iterator<Item = char> {
    text.chars().map(small_letter)
}

fn small_letter(letter: char) -> char {
    let number = u32::from(letter);
    let small = match letter {
        'A'..='Z' | 'À'..='Ö' | 'Ø'..='Þ' | 'Α'..='Ρ' | 'Σ'..='Ϋ' | 'А'..='Я' => {
            number + 32
        }
        'Ѐ'..='Џ' => number + 80,
        // each is followed by its small one: the capital is even
        'Ā'..='į' | 'Ĳ'..='ķ' | 'Ŋ'..='ŷ' => number | 1,
        // or odd
        'Ĺ'..='ň' | 'Ź'..='ž' => (number + 1) & !1,
        _ => number,
    };
    char::from_u32(small).unwrap_or(letter)
}

fn filled<'a>(gap: &'a str, values: &'a Gaps) -> Option<&'a str> {
    let mut parts = gap.split('|');
    let value = values.get(parts.next()?)?;
    match (parts.next(), parts.next()) {
        (Some(one), Some(many)) => {
            let is_one = value.number.is_some_and(|number| (number - 1.0).abs() < 1e-9);
            Some(if is_one { one } else { many })
        }
        _ => Some(&value.shown),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Value;

    /// Source: the standard library's table, of the Unicode Standard.
    #[test]
    fn letters_are_made_small_as_unicode_has_it() {
        let is_known =
            |it: &char| matches!(it, '\0'..='į' | 'Ĳ'..='ŷ' | 'Ź'..='ž' | 'Α'..='ω' | 'Ѐ'..='џ');
        for letter in ('\0'..='\u{2fff}').filter(is_known) {
            let theirs: String = letter.to_lowercase().collect();
            assert_eq!(small_letter(letter).to_string(), theirs, "{letter}");
        }
        assert!(small_letters("Pumpe Ä").eq("pumpe ä".chars()));
    }

    #[test]
    fn gaps_are_filled_and_numbers_agree() {
        let values = Gaps::from_iter([("n", Value::from(1_u32)), ("m", Value::from(3_u32))]);
        let text = fill("move {n} {n|plug|plugs}, then {m} {m|plug|plugs}; {none} }{", &values);
        assert_eq!(text, "move 1 plug, then 3 plugs; {none} }{");
    }

    #[test]
    fn a_sentence_that_begins_with_a_name_begins_with_a_capital() {
        let fill = |sentence, name: &str| fill(sentence, &Gaps::from_iter([("load", name.into())]));
        assert_eq!(fill("{load} is live", "fuel valve"), "Fuel valve is live");
        assert_eq!(fill("{load} is live", "ölpumpe"), "Ölpumpe is live");
        assert_eq!(fill("{load} is live", "5 V"), "5 V is live");
        assert_eq!(fill("{load}", ""), "");
        assert_eq!(fill("Live: {load}", "fuel valve"), "Live: fuel valve");
    }

    #[test]
    fn the_compiler_knows_the_gaps_of_a_sentence() {
        const MOVES: &Wording =
            &Wording { code: "it.moves", text: "move {n} {n|plug|plugs} of {name}, then look" };
        const PLAIN: &Wording = &Wording { code: "it.plain", text: "no gap" };
        assert!(is_filled_by(MOVES, &["n", "name"]) && is_filled_by(PLAIN, &[]), "all are filled");
        assert!(is_filled_by(MOVES, &["name", "more", "n"]), "more does no harm");
        for names in [&["n"][..], &["name"], &["nam", "n"], &["names", "n"], &[]] {
            assert!(!is_filled_by(MOVES, names), "{names:?}");
        }
    }

    #[test]
    fn the_compiler_knows_whether_a_shorter_sentence_has_gaps_of_its_own() {
        let said = |text| Wording { code: "it.said", text };
        let long = said("move {n} {n|plug|plugs} of {name}, then look");
        for short in ["move {n}", "{name}: {n|one|more}", "look"] {
            assert!(gaps_are_of(&said(short), &long), "{short}");
        }
        for other in ["move {m}", "{nam}", "{names}", "{n} of {other|a|b}"] {
            assert!(!gaps_are_of(&said(other), &long), "{other}");
        }
    }
}
