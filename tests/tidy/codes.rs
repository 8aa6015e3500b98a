//! Every sentence has a code of its own; every finding is explained, shown by one plan and absent from another.

use std::collections::{BTreeMap, BTreeSet};

use quietpin_core::{
    explained,
    plan::Plan,
    report::{report, usual},
};
use quietpin_tests::plans;

use super::{answers, check_none, sources};

/// Questions that have no answers yet. Their first example plan takes them off this list.
const UNANSWERED: &[&str] = &[];

/// A sentence as it is declared: where, its code, its words.
struct Declared {
    place: String,
    code: String,
    text: String,
}

/// Every sentence of the core. That each is said somewhere, and with its gaps filled, the compiler sees to.
fn sentences() -> Vec<Declared> {
    let sources = sources::of_the_core().iter();
    let all: Vec<_> = sources.flat_map(|(path, contents)| declared_in(path, contents)).collect();
    assert!(all.len() > 500, "only {} sentences are found", all.len());
    all
}

fn declared_in(path: &str, contents: &sources::Contents) -> Vec<Declared> {
    let at = |(code, text, line): &(String, String, usize)| Declared {
        place: format!("{path}:{line}"),
        code: code.clone(),
        text: text.clone(),
    };
    contents.declared.iter().map(at).collect()
}

/// Whether the answers that a code belongs to are there.
fn is_answered(code: &str) -> bool {
    match family(code) {
        // what is typed belongs to all of them
        "field" => UNANSWERED.is_empty(),
        // the engine is described where its channels are asked about
        "engine" => !UNANSWERED.contains(&"firing"),
        question => !UNANSWERED.contains(&question),
    }
}

fn family(code: &str) -> &str {
    code.split('.').next().unwrap_or_default()
}

#[test]
fn questions_without_answers_are_known() {
    let blank = report(&Plan::default());
    for section in &blank.sections {
        let has_plans =
            plans::ALL.iter().any(|plan| family(&plan.name.replace('-', ".")) == section.id);
        assert_eq!(
            has_plans,
            !UNANSWERED.contains(&section.id),
            "{}: its example plans begin with its name; correct UNANSWERED in {}",
            section.id,
            file!()
        );
    }
}

#[test]
fn no_code_stands_twice() {
    let mut seen = BTreeSet::new();
    let twice = sentences().into_iter().filter(|it| !seen.insert(it.code.clone()));
    let twice: Vec<_> = twice.map(|it| format!("{}: {}", it.place, it.code)).collect();
    check_none(&twice, "Codes that stand twice:");
}

#[test]
fn every_code_begins_with_its_question() {
    let mut families: BTreeSet<_> =
        report(&Plan::default()).sections.iter().map(|it| it.id).collect();
    // the engine is described with its channels, the fuel with its injectors
    families.extend(["field", "engine", "fuel"]);
    // and the usual report has a few words of its own
    families.insert("usual");
    let all = sentences();
    let strange = all.iter().filter(|it| !families.contains(family(&it.code)));
    let strange: Vec<_> = strange.map(|it| format!("{}: {}", it.place, it.code)).collect();
    check_none(&strange, "Codes of no question:");
}

#[test]
fn every_finding_is_explained() {
    let mut found = BTreeSet::new();
    for (name, codes) in &answers::found().codes {
        for code in codes {
            if explained::explanation(code).is_none() {
                found.insert(format!("{code}, as in {name}"));
            }
        }
    }
    check_none(&found.into_iter().collect::<Vec<_>>(), "Findings without an explanation:");
}

#[test]
fn every_finding_is_shown_by_one_plan_and_absent_from_another() {
    let plans = &answers::found().codes;
    let mut shown: BTreeMap<&str, usize> = BTreeMap::new();
    for code in plans.values().flatten() {
        *shown.entry(code).or_default() += 1;
    }
    let mut found = Vec::new();
    for code in explained::explanations().map(|it| it.code).filter(|code| is_answered(code)) {
        match shown.get(code) {
            None => found.push(format!("{code}: no plan shows it")),
            Some(count) if *count == plans.len() => {
                found.push(format!("{code}: every plan shows it"));
            }
            Some(_) => {}
        }
    }
    check_none(&found, "Findings that the plans in tests/plans/ don't prove:");
}

/// How the codes of sentences begin that say what to do, or what to beware of.
const STEPS: [&str; 10] = [
    "best-",
    "caution-",
    "cure-",
    "do-",
    "inject-",
    "instead-",
    "light-do-",
    "look-",
    "set-",
    "take-",
];

/// No plan shows every one of them.
#[test]
fn it_is_known_what_every_sentence_is_for_that_says_what_to_do() {
    let is_step = |it: &Declared| {
        let name = it.code.split_once('.').map_or("", |(_, name)| name);
        STEPS.iter().any(|start| name.starts_with(start))
    };
    let unknown = sentences().into_iter().filter(|it| is_step(it) && family(&it.code) != "usual");
    let unknown = unknown.filter(|it| !usual::knows(&it.code));
    let unknown: Vec<_> = unknown.map(|it| format!("{}: {}", it.place, it.code)).collect();
    check_none(&unknown, "Say in crates/core/src/report/usual/steps/ what these are for:");
}

/// A sentence speaks to someone: it begins with a capital or a gap and has no blank at its ends.
#[test]
fn sentences_are_written_cleanly() {
    let mut found = Vec::new();
    for Declared { place, code, text } in sentences() {
        let is_even = text.matches('{').count() == text.matches('}').count();
        let name_is_plain = code
            .chars()
            .all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || matches!(c, '.' | '-'));
        if text.trim() != text
            || text.is_empty()
            || text.contains("  ")
            || !is_even
            || !name_is_plain
        {
            found.push(format!("{place}: {code}: {text:?}"));
        }
    }
    check_none(&found, "Sentences to mend:");
}
