//! A list of short words in one field, changed by a tap.

/// Said of a channel to which nothing, or nothing else, answered.
pub const NOTHING: &str = "none";

/// The text of a list after a tap on one of its words: the word is added at the end, or taken out where it is there.
///
/// ```
/// use quietpin_core::channels::tapped;
/// assert_eq!(tapped("1", "6"), "1 6");
/// assert_eq!(tapped("1 6", "1"), "6");
/// ```
pub fn tapped(text: &str, word: &str) -> String {
    let words = words_of(text);
    let is_there = words.contains(&word);
    let mut kept: Vec<&str> = words.into_iter().filter(|it| *it != word).collect();
    if !is_there {
        kept.push(word);
    }
    kept.join(" ")
}

/// The words of a list.
pub fn words_of(text: &str) -> Vec<&str> {
    // as in a row that is typed
    let apart = |c: char| c.is_whitespace() || "-–,;/>→+&".contains(c);
    text.split(apart).filter(|it| !it.is_empty()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tap_adds_a_word_or_takes_it_out() {
        for (text, word, expected) in [
            ("", "1", "1"),
            ("1", "6", "1 6"),
            ("1 6", "1", "6"),
            ("1-6", "6", "1"),
            ("1, 6;3", "6", "1 3"),
            ("1 6 1", "1", "6"),
        ] {
            assert_eq!(tapped(text, word), expected, "{text:?} and {word:?}");
        }
    }

    #[test]
    fn words_stand_apart_by_blanks_or_by_any_mark_of_a_list() {
        assert_eq!(words_of("1L 2T,\t3–4 → 5 & 6/7"), ["1L", "2T", "3", "4", "5", "6", "7"]);
        assert_eq!(words_of(" - "), [""; 0]);
    }
}
