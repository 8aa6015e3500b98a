//! The sheet to take to the car, to be printed: verdicts, what was found, what to enter, to buy and to prove, with boxes to tick
//! and room for a pencil.

use quietpin_core::report::usual::{Fact, PINS, Pairs, Setting, Usual, Verdicts, usual};
use yew::Callback;

use super::{Page, button, link_to};
use crate::{
    address::ALL,
    browser::print,
    element::{View, all, el, nothing, several, text, whole},
    words,
};

/// The sheet.
pub(crate) fn sheet(page: &Page) -> View {
    let usual = usual(&page.state.report);
    let tools = el!("div", "class" = "buttons not-printed";
        button(None, "Print this sheet", Callback::from(|_| print::print())),
        el!("p"; link_to(ALL, text("All on one page, to read or to print"))),
    );
    el!("article", "class" = "car-sheet", "aria-labelledby" = "title";
        el!("h1", "id" = "title", "tabindex" = "-1"; if usual.name.trim().is_empty() { words::UNNAMED } else { &usual.name }),
        el!("p", "class" = "basis"; format!("To take to the car. Printed {}.", print::today())),
        tools,
        el!("p", "class" = "counted"; usual.counted()),
        el!("dl", "class" = "verdicts"; all(usual.questions.iter().map(verdicts))),
        part("Findings", usual.facts.iter().enumerate().map(|(at, it)| fact(at, it))),
        part("Enter in the controller", usual.enter.iter().map(setting)),
        part("Buy", usual.buy.iter().map(|it| ticked(&it.told(), false))),
        cautions(&usual),
        proofs(&usual),
        usual.assumed_told("they stand on the page with all questions").map(|it| el!("p", "class" = "basis"; it)),
    )
}

/// A heading with what is listed below it; nothing where that is nothing.
fn part(title: &'static str, lines: impl Iterator<Item = View>) -> View {
    let mut lines = lines.peekable();
    if lines.peek().is_none() {
        return nothing();
    }
    el!("section"; el!("h2"; title), el!("ul", "class" = "ticks"; all(lines)))
}

fn verdicts(question: &Verdicts) -> View {
    el!("div", "class" = words::tone_class(question.tone);
        el!("dt"; el!("span", "class" = "sign"; words::tone_sign(question.tone)), question.name),
        el!("dd"; whole(&question.told())),
    )
}

fn fact(at: usize, fact: &Fact) -> View {
    let head = fact.head().join(", ");
    let gap = if head.is_empty() { "" } else { ": " };
    let cures = fact.cures.iter().map(|it| el!("p", "class" = "cure"; whole(&it.told())));
    el!("li", "class" = format!("plain {}", words::severity_class(fact.severity));
        el!("p"; el!("b"; format!("{}. ", at + 1)), el!("span", "class" = "severity"; words::severity(fact.severity)), whole(&format!("{head}{gap}{}", fact.told()))),
        all(cures),
    )
}

/// A line with a box to tick, and a place for what was read where something is.
fn ticked(words: &str, is_read: bool) -> View {
    el!("li";
        el!("span", "class" = "tick", "aria-hidden" = "true"),
        el!("span", "class" = "words"; whole(words)),
        is_read.then(|| el!("span", "class" = "reading", "aria-hidden" = "true")),
    )
}

fn setting(setting: &Setting) -> View {
    match setting {
        Setting::Said(line) => ticked(&line.told(), false),
        Setting::Paired { .. } => setting.pairs().map_or_else(nothing, |it| paired(&it)),
    }
}

fn paired(Pairs { about, heads: [upper, lower], pairs }: &Pairs) -> View {
    let column = |(one, other): &(String, String)| el!("span", "class" = "pair"; el!("b"; one), el!("span"; other));
    let heads = el!("span", "class" = "pair heads"; el!("b"; upper), el!("span"; lower));
    el!("li";
        el!("span", "class" = "tick", "aria-hidden" = "true"),
        el!("span", "class" = "words"; about, ":", el!("span", "class" = "pairs"; heads, all(pairs.iter().map(column)))),
    )
}

fn proofs(usual: &Usual) -> View {
    if usual.pins.is_empty() && usual.prove.is_empty() {
        return nothing();
    }
    let pins = || {
        several!(
            el!("p"; PINS),
            el!("ul", "class" = "ticks"; all(usual.pins.iter().map(|it| ticked(&it.told(), true)))),
            usual.lamps_told().map(|it| el!("p"; whole(&it))),
        )
    };
    el!("section";
        el!("h2"; "Prove at the car"),
        (!usual.pins.is_empty()).then(pins),
        el!("ul", "class" = "ticks"; all(usual.prove.iter().map(|it| ticked(&it.told(), true)))),
    )
}

fn cautions(usual: &Usual) -> View {
    if usual.cautions.is_empty() {
        return nothing();
    }
    let lines = usual.cautions.iter().map(|it| el!("li"; &it.text));
    el!("section"; el!("h2"; "Take care"), el!("ul"; all(lines)))
}
