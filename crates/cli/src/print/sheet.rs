//! Lines of text: indented, wrapped, and safe to show on a terminal.

use textwrap::{Options, WordSplitter, core::display_width};

use super::WIDTH;

/// A text as it grows.
#[derive(Debug)]
pub(super) struct Sheet {
    text: String,
    width: usize,
}

impl Default for Sheet {
    fn default() -> Self {
        Self::of_width(WIDTH)
    }
}

impl Sheet {
    /// One whose lines have at most so many columns.
    pub(super) fn of_width(width: usize) -> Self {
        Self { text: String::new(), width }
    }

    /// A heading with a line of `rule` under it, set apart.
    pub(super) fn heading(&mut self, text: &str, rule: char) {
        self.blank();
        let start = self.text.len();
        self.paragraph(0, text);
        let heading = self.text.get(start..).unwrap_or_default();
        let width = heading.lines().map(display_width).max().unwrap_or_default();
        self.line(&rule.to_string().repeat(width));
        self.blank();
    }

    /// A paragraph, `indent` columns in.
    pub(super) fn paragraph(&mut self, indent: usize, text: &str) {
        self.item(indent, "", text);
    }

    /// A paragraph behind a mark; its later lines begin under its first word.
    pub(super) fn item(&mut self, indent: usize, mark: &str, text: &str) {
        let first = format!("{}{mark}", " ".repeat(indent));
        let later = " ".repeat(display_width(&first));
        for line in wrap(text, self.width, &first, &later) {
            self.line(&line);
        }
    }

    /// A paragraph behind a label; its later lines are only a little further in.
    pub(super) fn labelled(&mut self, indent: usize, label: &str, text: &str) {
        let first = format!("{}{label} ", " ".repeat(indent));
        for line in wrap(text, self.width, &first, &" ".repeat(indent + 2)) {
            self.line(&line);
        }
    }

    /// A line as it is.
    pub(super) fn line(&mut self, line: &str) {
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }

    /// A blank line, unless there is one already.
    pub(super) fn blank(&mut self) {
        if !self.text.is_empty() && !self.text.ends_with("\n\n") {
            self.text.push('\n');
        }
    }

    /// The whole text.
    pub(super) fn into_text(self) -> String {
        self.text
    }
}

/// Breaks a text into lines of at most `width` columns.
pub(super) fn wrap(text: &str, width: usize, first: &str, later: &str) -> Vec<String> {
    let options = Options::new(width)
        .initial_indent(first)
        .subsequent_indent(later)
        // a firing order or an option of a command stays in one piece
        .word_splitter(WordSplitter::NoHyphenation);
    textwrap::wrap(&clean(text), options).into_iter().map(String::from).collect()
}

/// A plan may come from anywhere: nothing in it may steer the terminal or turn the text around.
pub(super) fn clean(text: &str) -> String {
    text.chars()
        .map(|c| match c {
            '\n' | '\r' | '\t' => ' ',
            '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' => {
                '\u{fffd}'
            }
            c if c.is_control() => '\u{fffd}',
            c => c,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn items_are_wrapped_under_their_first_word() {
        let mut sheet = Sheet::default();
        sheet.item(2, "1. ", &"a word 1-5-3-6-2-4 ".repeat(10));
        let text = sheet.into_text();
        assert!(text.lines().count() > 1, "it is wrapped: {text}");
        for (at, line) in text.lines().enumerate() {
            assert!(display_width(line) <= WIDTH, "{line} is too wide");
            assert!(line.starts_with(if at == 0 { "  1. a" } else { "     " }), "{line:?}");
            assert!(!line.ends_with('-'), "{line} breaks within a firing order");
        }
    }

    #[test]
    fn nothing_in_a_plan_steers_the_terminal() {
        assert_eq!(clean("a\u{1b}[31mb\u{7}\nc\u{202e}d"), "a\u{fffd}[31mb\u{fffd} c\u{fffd}d");
    }
}
