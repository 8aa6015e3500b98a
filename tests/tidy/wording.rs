//! All that a fitter reads is held to the glossary.

use std::{fmt::Write as _, fs, path::Path};

use quietpin_tests::blessed;

use super::{
    check_none,
    glossary::{GLOSSARY, miswritten, strayed},
    sources,
};

/// What the contributors read, not the fitter.
const OF_CONTRIBUTORS: &[&str] = &["crates/core/src/finding/scale.rs"];

/// Names that a person gave: a sentence that begins with one begins with a capital (`words::fill`).
const NAMES: &[&str] = &["load", "output", "relay", "name", "end", "what", "others"];

/// A text that a fitter reads, and where it stands.
type Text = (String, String);

/// The texts of the core, the page and the command line: sentences, labels, choices, hints, sources.
fn of_the_program() -> Vec<Text> {
    let mut all = Vec::new();
    for folder in ["crates/core/src", "crates/cli/src", "web/src"] {
        let sources = sources::under(folder);
        for (path, contents) in sources::outside_tests(&sources) {
            if OF_CONTRIBUTORS.contains(&path) {
                continue;
            }
            let declared = contents.declared.into_iter().map(|(_, text, line)| (text, line));
            let quoted = contents.texts.into_iter().filter(|(text, _)| !is_code(text));
            all.extend(declared.chain(quoted).map(|(text, line)| (format!("{path}:{line}"), text)));
        }
    }
    assert!(all.len() > 2500, "only {} texts are found", all.len());
    all
}

/// The README by its paragraphs, without the commands; the shell of the page.
fn of_the_files() -> Vec<Text> {
    let top = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let read = |name: &str| fs::read_to_string(top.join(name)).expect(name);
    let readme = read("README.md");
    let said = readme.split("\n\n").filter(|it| !it.starts_with("    "));
    let said = said
        .map(|it| ("README.md".to_owned(), it.split_whitespace().collect::<Vec<_>>().join(" ")));
    said.chain([("index.html".to_owned(), read("index.html"))]).collect()
}

/// A code, a class, a name of the program: no fitter reads it.
fn is_code(text: &str) -> bool {
    let is_plain = !text.contains(|c: char| c.is_whitespace() || c.is_uppercase() || !c.is_ascii());
    // names of gaps, one after the other
    is_plain || text.contains('_') && text.split(", ").all(|it| !it.contains(' '))
}

#[test]
fn every_text_has_the_words_of_the_glossary() {
    // the codes of findings are no words
    let record =
        include_str!("../VALIDATION.md").lines().filter(|it| !it.contains("in findings: "));
    let strayed_in =
        |line| strayed(line).into_iter().map(move |it| format!("VALIDATION.md: {it}: {line}"));
    let mut found: Vec<_> = record.flat_map(strayed_in).collect();
    let texts = of_the_program().into_iter().chain(of_the_files());
    found.extend(texts.flat_map(|(place, text)| {
        let signs = miswritten(&text).into_iter().map(str::to_owned);
        let all: Vec<_> = strayed(&text).into_iter().chain(signs).collect();
        all.into_iter().map(move |it| format!("{place}: {it}: {text}"))
    }));
    found.dedup();
    check_none(&found, "Say it as tests/GLOSSARY.md does:");
}

/// At the start of a text the program sees to it; behind a full stop nobody does.
#[test]
fn no_later_sentence_begins_with_a_name() {
    let begins = |text: &str| NAMES.iter().any(|name| text.contains(&format!(". {{{name}}}")));
    assert!(
        begins("Unplug it. {load} is live.") && !begins("Unplug {load}."),
        "a planted one is found"
    );
    let found = of_the_program().into_iter().filter(|(_, text)| begins(text));
    check_none(
        &found.map(|(place, text)| format!("{place}: {text}")).collect::<Vec<_>>(),
        "In small letters:",
    );
}

/// The table as a person reads it.
fn table() -> String {
    let mut text = String::from(
        "# One word for one thing\n\nMade by the tests from `tidy/glossary.rs`; all that a fitter reads is held to it: sentences, labels, \
         choices, hints and sources of the core, the page's and the command line's own texts, the README.\n",
    );
    for (group, entries) in GLOSSARY {
        let _ = write!(
            text,
            "\n## {group}\n\n| word | what it is | not | but right in |\n| --- | --- | --- | --- |\n"
        );
        for it in *entries {
            let (never, right_in) = (it.never.join(", "), it.right_in.join(", "));
            let _ = writeln!(text, "| {} | {} | {never} | {right_in} |", it.word, it.means);
        }
    }
    text.push_str(
        "\n## Signs\n\n- One apostrophe: `'`. Quotes are “ and ”: what was typed, and the names of fields and questions.\n\
         - `80%`, `90°`, but `5 V`: as the values of the report are written.\n\
         - Ω, kΩ, µs and mm² in all that is shown; `ohm`, `us` and `mm2` are typed, and read.\n\
         - A name that was typed stands as it was typed, and begins with a capital where it begins a sentence.\n",
    );
    text
}

#[test]
fn the_table_is_as_it_was_read_and_accepted() {
    blessed("GLOSSARY.md", &table());
}
