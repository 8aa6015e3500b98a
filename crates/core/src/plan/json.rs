//! JSON as far as a plan needs it, read and written. A general reader brings its own texts for a hundred faults and
//! tables for numbers into the page's first part: a twentieth of it.

use super::node::DocumentNode;
use crate::math;

/// Lists and objects within each other that are read; deeper ones could use up the stack.
const DEEPEST: u32 = 127;

/// What a text holds.
///
/// # Errors
/// Where it is no JSON.
pub(super) fn read(text: &str) -> Result<DocumentNode, String> {
    let mut reader = JsonReader { text, at: 0 };
    match reader.value(DEEPEST) {
        Some(node) if reader.peek().is_none() => Ok(node),
        _ => Err(reader.place()),
    }
}

/// Reads on from a place in a text; where it finds none of what it looks for, it stays near there.
struct JsonReader<'a> {
    text: &'a str,
    at: usize,
}

impl JsonReader<'_> {
    fn rest(&self) -> &str {
        self.text.get(self.at..).unwrap_or_default()
    }

    fn next(&mut self) -> Option<u8> {
        let next = self.text.as_bytes().get(self.at).copied();
        self.at += usize::from(next.is_some());
        next
    }

    /// What comes after blanks.
    fn peek(&mut self) -> Option<u8> {
        loop {
            match self.text.as_bytes().get(self.at) {
                Some(b' ' | b'\n' | b'\r' | b'\t') => self.at += 1,
                other => return other.copied(),
            }
        }
    }

    fn takes(&mut self, sign: u8) -> bool {
        let is_there = self.peek() == Some(sign);
        self.at += usize::from(is_there);
        is_there
    }

    fn value(&mut self, depth: u32) -> Option<DocumentNode> {
        match self.peek()? {
            b'"' => self.quoted().map(DocumentNode::Text),
            b'[' => self.list(depth.checked_sub(1)?),
            b'{' => self.object(depth.checked_sub(1)?),
            b'-' | b'0'..=b'9' => self.number(),
            _ => self.word(),
        }
    }

    fn list(&mut self, depth: u32) -> Option<DocumentNode> {
        self.at += 1;
        let mut nodes = Vec::new();
        if !self.takes(b']') {
            nodes.push(self.value(depth)?);
            while !self.takes(b']') {
                self.takes(b',').then_some(())?;
                nodes.push(self.value(depth)?);
            }
        }
        Some(DocumentNode::List(nodes))
    }

    fn object(&mut self, depth: u32) -> Option<DocumentNode> {
        self.at += 1;
        let mut members = Vec::new();
        if !self.takes(b'}') {
            members.push(self.member(depth)?);
            while !self.takes(b'}') {
                self.takes(b',').then_some(())?;
                members.push(self.member(depth)?);
            }
        }
        Some(DocumentNode::Object(members))
    }

    fn member(&mut self, depth: u32) -> Option<(String, DocumentNode)> {
        let name = self.quoted()?;
        self.takes(b':').then_some(())?;
        Some((name, self.value(depth)?))
    }

    fn quoted(&mut self) -> Option<String> {
        self.takes(b'"').then_some(())?;
        let mut text = String::new();
        loop {
            let rest = self.rest();
            let plain = rest.find(|it: char| matches!(it, '"' | '\\') || it < ' ');
            let plain = rest.get(..plain.unwrap_or(rest.len()))?;
            text.push_str(plain);
            self.at += plain.len();
            match self.next()? {
                b'"' => return Some(text),
                b'\\' => text.push(self.escaped()?),
                _ => return None,
            }
        }
    }

    fn escaped(&mut self) -> Option<char> {
        Some(match self.next()? {
            b'b' => '\u{8}',
            b'f' => '\u{c}',
            b'n' => '\n',
            b'r' => '\r',
            b't' => '\t',
            b'u' => return self.unicode(),
            sign @ (b'"' | b'\\' | b'/') => char::from(sign),
            _ => return None,
        })
    }

    /// A character by its number in UTF-16: one, or two that belong together.
    fn unicode(&mut self) -> Option<char> {
        let first = self.unit()?;
        if !(0xd800..0xdc00).contains(&first) {
            return char::from_u32(first.into());
        }
        (self.next()? == b'\\' && self.next()? == b'u').then_some(())?;
        char::decode_utf16([first, self.unit()?]).next()?.ok()
    }

    fn unit(&mut self) -> Option<u16> {
        let mut unit = 0;
        for _ in 0..4 {
            let digit = char::from(self.next()?).to_digit(16)?;
            unit = unit << 4 | u16::try_from(digit).ok()?;
        }
        Some(unit)
    }

    /// A number: a whole one as it stands, another one as short as it can be.
    fn number(&mut self) -> Option<DocumentNode> {
        let rest = self.rest();
        let is_other =
            |it: char| !(it.is_ascii_digit() || matches!(it, '-' | '+' | '.' | 'e' | 'E'));
        let number = rest.get(..rest.find(is_other).unwrap_or(rest.len()))?;
        let is_digit = |it: Option<char>| it.is_some_and(|it| it.is_ascii_digit());
        // without the liberties that a person has who types one
        let mut digits = number.strip_prefix('-').unwrap_or(number).chars();
        let first = digits.next();
        let is_padded = first == Some('0') && is_digit(digits.next());
        let has_fraction = |(_, part): (&str, &str)| is_digit(part.chars().next());
        if is_padded || !is_digit(first) || !number.split_once('.').is_none_or(has_fraction) {
            return None;
        }
        let is_whole =
            number.parse::<u64>().is_ok() || number.parse::<i64>().is_ok_and(|it| it < 0);
        let text =
            if is_whole { number.to_owned() } else { math::shortest(math::decimal(number)?) };
        self.at += number.len();
        Some(DocumentNode::Text(text))
    }

    fn word(&mut self) -> Option<DocumentNode> {
        let (length, node) = if self.rest().starts_with("null") {
            (4, DocumentNode::Text(String::new()))
        } else if self.rest().starts_with("true") {
            (4, DocumentNode::Truth(true))
        } else if self.rest().starts_with("false") {
            (5, DocumentNode::Truth(false))
        } else {
            return None;
        };
        self.at += length;
        Some(node)
    }

    /// How far it was read.
    fn place(&self) -> String {
        if self.rest().is_empty() {
            return "it ends too early".to_owned();
        }
        let before = self.text.get(..self.at).unwrap_or(self.text);
        let line = before.split('\n').count();
        let column = before.rsplit('\n').next().unwrap_or_default().chars().count() + 1;
        format!("line {line}, column {column}")
    }
}

/// A document as a person reads it: a line for each member.
pub(super) fn written(node: &DocumentNode) -> String {
    let mut text = String::new();
    push(&mut text, 0, node);
    text
}

fn push(text: &mut String, depth: usize, node: &DocumentNode) {
    match node {
        DocumentNode::Text(words) => push_quoted(text, words),
        DocumentNode::Truth(truth) => text.push_str(if *truth { "true" } else { "false" }),
        DocumentNode::Number(number) => text.push_str(&number.to_string()),
        DocumentNode::List(nodes) => {
            push_lines(text, depth, ['[', ']'], &mut nodes.iter().map(|node| (None, node)));
        }
        DocumentNode::Object(members) => {
            let mut members = members.iter().map(|(name, node)| (Some(name), node));
            push_lines(text, depth, ['{', '}'], &mut members);
        }
    }
}

/// A line of what is enclosed: its name, if it has one, and what it is.
type JsonLine<'a> = (Option<&'a String>, &'a DocumentNode);

fn push_lines(
    text: &mut String,
    depth: usize,
    [open, close]: [char; 2],
    lines: &mut dyn Iterator<Item = JsonLine<'_>>,
) {
    text.push(open);
    let begin = text.len();
    for (name, node) in lines {
        if text.len() > begin {
            text.push(',');
        }
        push_line_end(text, depth + 1);
        if let Some(name) = name {
            push_quoted(text, name);
            text.push_str(": ");
        }
        push(text, depth + 1, node);
    }
    if text.len() > begin {
        push_line_end(text, depth);
    }
    text.push(close);
}

fn push_line_end(text: &mut String, depth: usize) {
    text.push('\n');
    for _ in 0..depth {
        text.push_str("  ");
    }
}

fn push_quoted(text: &mut String, words: &str) {
    text.push('"');
    for letter in words.chars() {
        let short = match letter {
            '"' | '\\' => letter,
            '\u{8}' => 'b',
            '\u{c}' => 'f',
            '\n' => 'n',
            '\r' => 'r',
            '\t' => 't',
            '\0'..' ' => {
                text.push_str("\\u00");
                for digit in [u32::from(letter) >> 4, u32::from(letter) & 15] {
                    text.extend(char::from_digit(digit, 16));
                }
                continue;
            }
            _ => {
                text.push(letter);
                continue;
            }
        };
        text.push('\\');
        text.push(short);
    }
    text.push('"');
}

/// Source: `serde_json`, which is tested by many: the same texts are read and refused, and the same is written.
#[cfg(test)]
mod tests {
    use proptest::{collection::vec, prelude::*, sample::select};

    use super::*;

    fn theirs(text: &str) -> Option<DocumentNode> {
        serde_json::from_str(text).ok()
    }

    #[track_caller]
    fn check(text: &str) {
        assert_eq!(read(text).ok(), theirs(text), "{text:?}");
    }

    #[test]
    fn what_json_is_and_is_not() {
        for text in [
            "",
            " ",
            "null",
            "nul",
            "nulll",
            "true",
            "false",
            "tru",
            "[]",
            "[ ]",
            "[,]",
            "[1,]",
            "[1 2]",
            "[1, 2]",
            "{}",
            "{ }",
            "{,}",
            "{\"a\":1}",
            "{\"a\" : 1 , \"a\":[{}]}",
            "{\"a\":1,}",
            "{\"a\"}",
            "{a:1}",
            "{1:1}",
            "{\"a\":}",
            "\"",
            "\"a",
            "\"a\"\"",
            "\"\n\"",
            "\"\u{7f}\"",
            "\"\\\"",
            "\"\\x\"",
            "\"\\u00e4\"",
            "\"\\u00E4\"",
            "\"\\u00e\"",
            "\"\\u+123\"",
            "\"\\ud83d\\ude00\"",
            "\"\\ud83d\"",
            "\"\\ud83d\\u0041\"",
            "\"\\ud83d\\n\"",
            "\"\\ude00\"",
            "\"\\u0000\"",
            "\u{feff}1",
            "\u{a0}1",
            "1\u{b}",
            "[1] x",
            "'a'",
            "/**/1",
        ] {
            check(text);
        }
    }

    #[test]
    fn numbers_are_read_alike() {
        for text in [
            "0",
            "-0",
            "00",
            "01",
            "-01",
            "-",
            "--1",
            "+1",
            "1.",
            ".5",
            "-.5",
            "1.5",
            "1.50",
            "0.10",
            "1e3",
            "1E3",
            "1e+3",
            "1e-3",
            "1e",
            "1e+",
            "1.e3",
            "1.5e3",
            "1e3.5",
            "1-2",
            "1+2",
            "18446744073709551615",
            "18446744073709551616",
            "-9223372036854775808",
            "-9223372036854775809",
            "123456789012345678901234567890",
            "1e22",
            "1e-9",
            "1e999",
            "-1e999",
            "1e-999",
            "1e99999999999",
            "0e99999999999",
            "1e-99999999999",
            "0.000",
            "-0.0",
            "3.14159",
            "2.4e0",
        ] {
            check(text);
        }
    }

    #[test]
    fn what_is_too_deep_is_refused() {
        for depth in [126, 127, 128, 129, 100_000] {
            check(&["[".repeat(depth), "]".repeat(depth)].concat());
            check(&["{\"a\":".repeat(depth), "1".into(), "}".repeat(depth)].concat());
        }
    }

    #[test]
    fn it_is_told_where_it_is_no_json() {
        for (text, place) in [
            ("{", "it ends too early"),
            ("{\"a\": \"b", "it ends too early"),
            ("[1,\n  2,\n  x]", "line 3, column 3"),
            ("[\"ä\" 1]", "line 1, column 6"),
            ("{} x", "line 1, column 4"),
        ] {
            assert_eq!(read(text).err().as_deref(), Some(place), "{text}");
        }
    }

    fn node() -> impl Strategy<Value = DocumentNode> {
        let leaf = prop_oneof![
            any::<String>().prop_map(DocumentNode::Text),
            "[\\x00-\\x20\"\\\\/é\u{1f600}]{0,8}".prop_map(DocumentNode::Text),
            any::<bool>().prop_map(DocumentNode::Truth),
        ];
        leaf.prop_recursive(4, 40, 6, |inner| {
            prop_oneof![
                vec(inner.clone(), 0..6).prop_map(DocumentNode::List),
                vec((any::<String>(), inner), 0..6).prop_map(DocumentNode::Object),
            ]
        })
    }

    proptest! {
        #[test]
        fn the_same_is_written_and_it_is_read_again(node in node()) {
            let text = written(&node);
            prop_assert_eq!(&text, &serde_json::to_string_pretty(&node).expect("it is data"));
            prop_assert_eq!(read(&text), Ok(node));
        }

        #[test]
        fn pieces_in_any_order_are_read_and_refused_alike(
            pieces in vec(select(vec![
                "{", "}", "[", "]", ",", ":", "\"", "\"a\"", "\"b\":", "1", "-", "0", ".5", "e2", "null", "true", " ", "\n",
                "\\", "\\u00", "41", "\\ud800", "é",
            ]), 0..9)
        ) {
            let text = pieces.concat();
            prop_assert_eq!(read(&text).ok(), theirs(&text));
        }
    }
}
