//! Colours of wires, by letters.

/// The letters of IEC 60757 and the word of each, from memory.
pub const CODES: [(&str, &str); 14] = [
    ("BK", "black"),
    ("BN", "brown"),
    ("RD", "red"),
    ("OG", "orange"),
    ("YE", "yellow"),
    ("GN", "green"),
    ("BU", "blue"),
    ("VT", "violet"),
    ("GY", "grey"),
    ("WH", "white"),
    ("PK", "pink"),
    ("TQ", "turquoise"),
    ("GD", "gold"),
    ("SR", "silver"),
];

/// The letters of a colour, or of a base colour and its stripe, as they are written together: `RD`, `RDWH`. Upper or lower
/// case, with a mark between or none; nothing where that is no colour.
///
/// ```
/// use quietpin_core::loom::colour::read;
/// assert_eq!(read("rd/wh").as_deref(), Some("RDWH"));
/// assert_eq!(read("red"), None);
/// ```
pub fn read(text: &str) -> Option<String> {
    let letters: String = text
        .chars()
        .filter(|it| !it.is_whitespace() && !"-–/+".contains(*it))
        .map(|it| it.to_ascii_uppercase())
        .collect();
    let is_code = |code: &str| CODES.iter().any(|(it, _)| *it == code);
    let is_colour = match letters.len() {
        2 => is_code(&letters),
        4 => letters
            .split_at_checked(2)
            .is_some_and(|(base, stripe)| base != stripe && is_code(base) && is_code(stripe)),
        _ => false,
    };
    is_colour.then_some(letters)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_are_read_in_any_case_with_or_without_a_stripe() {
        for (typed, expected) in [
            ("RD", Some("RD")),
            (" bk ", Some("BK")),
            ("gn-ye", Some("GNYE")),
            ("BU WH", Some("BUWH")),
            ("", None),
            ("R", None),
            ("RDRD", None),
            ("RDX", None),
            ("ROT", None),
            ("RDWHBU", None),
            ("éé", None),
        ] {
            assert_eq!(read(typed).as_deref(), expected, "{typed:?}");
        }
    }
}
