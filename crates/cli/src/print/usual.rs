//! The usual report: a page or two to take to the car.

use quietpin_core::report::{
    Tone,
    usual::{Fact, PINS, Pairs, Setting, Usual, Verdicts},
};
use textwrap::core::display_width;

use super::{USUAL_WIDTH, finding::word, sheet::Sheet};

/// What is done is ticked off.
const TICK: &str = "[ ] ";

/// Prints it: the answer first, what to do after it, and what to beware of at the end.
pub(super) fn print(sheet: &mut Sheet, usual: &Usual) {
    let name = usual.name.trim();
    sheet.heading(if name.is_empty() { "A plan without a name" } else { name }, '=');
    sheet.paragraph(0, &usual.counted());
    sheet.heading("Verdicts", '-');
    for question in &usual.questions {
        print_question(sheet, question);
    }
    if !usual.facts.is_empty() {
        sheet.heading("Findings", '-');
        for (at, fact) in usual.facts.iter().enumerate() {
            print_fact(sheet, at, fact);
        }
    }
    if !usual.enter.is_empty() {
        sheet.heading("Enter in the controller", '-');
        for setting in &usual.enter {
            print_setting(sheet, setting);
        }
    }
    if !usual.buy.is_empty() {
        sheet.heading("Buy", '-');
        for part in &usual.buy {
            sheet.item(0, TICK, &part.told());
        }
    }
    if !usual.cautions.is_empty() {
        sheet.heading("Take care", '-');
        for caution in &usual.cautions {
            sheet.item(0, "- ", &caution.text);
        }
    }
    print_proofs(sheet, usual);
    if let Some(told) = usual.assumed_told("--full lists them") {
        sheet.blank();
        sheet.paragraph(0, &told);
    }
}

/// A sign that is no colour.
fn sign(tone: Tone) -> &'static str {
    match tone {
        Tone::Bad => "NO",
        Tone::Doubtful => "check",
        Tone::Open => "open",
        Tone::Good => "ok",
    }
}

fn print_question(sheet: &mut Sheet, question: &Verdicts) {
    let mark = format!("{:<6}{:<10}", sign(question.tone), question.name);
    sheet.item(0, &mark, &question.told());
}

fn print_fact(sheet: &mut Sheet, at: usize, fact: &Fact) {
    let mark = format!("{}. ", at + 1);
    let head: Vec<_> = [word(fact.severity)].into_iter().chain(fact.head()).collect();
    sheet.item(0, &mark, &format!("{}: {}", head.join(", "), fact.told()));
    for cured in &fact.cures {
        sheet.item(mark.len(), "> ", &cured.told());
    }
}

fn print_setting(sheet: &mut Sheet, setting: &Setting) {
    match setting {
        Setting::Said(line) => sheet.item(0, TICK, &line.told()),
        Setting::Paired { .. } => {
            if let Some(pairs) = setting.pairs() {
                print_pairs(sheet, &pairs);
            }
        }
    }
}

/// Pairs under one another, in as many rows as they take.
fn print_pairs(sheet: &mut Sheet, Pairs { about, heads: [upper, lower], pairs }: &Pairs) {
    let mut mark = format!("{TICK}{about}: ");
    let head = display_width(upper).max(display_width(lower));
    let room = USUAL_WIDTH.saturating_sub(display_width(&mark) + head);
    let wide = |(one, other): &(String, String)| display_width(one).max(display_width(other));
    let column = pairs.iter().map(wide).max().unwrap_or_default() + 2;
    let right =
        |text: &str| format!("{}{text}", " ".repeat(column - display_width(text).min(column)));
    let left = |text: &str| format!("{text}{}", " ".repeat(head - display_width(text).min(head)));
    for row in pairs.chunks((room / column).max(1)) {
        let (above, below): (String, String) =
            row.iter().map(|(one, other)| (right(one), right(other))).unzip();
        sheet.line(&format!("{mark}{}{above}", left(upper)));
        mark = " ".repeat(display_width(&mark));
        sheet.line(&format!("{mark}{}{below}", left(lower)));
    }
}

fn print_proofs(sheet: &mut Sheet, usual: &Usual) {
    if usual.pins.is_empty() && usual.prove.is_empty() {
        return;
    }
    sheet.heading("Prove at the car", '-');
    if !usual.pins.is_empty() {
        sheet.paragraph(0, PINS);
        usual.pins.iter().for_each(|line| sheet.item(0, TICK, &line.told()));
        if let Some(lamps) = usual.lamps_told() {
            sheet.paragraph(4, &lamps);
        }
    }
    usual.prove.iter().for_each(|line| sheet.item(0, TICK, &line.told()));
}
