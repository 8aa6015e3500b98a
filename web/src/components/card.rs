//! The card on the screen, and the bar under the thumb that leads to the ones beside it.

use quietpin_core::finding::Severity;

use super::{Page, fold, line::line, row::row, sending};
use crate::{
    address::{FOUND, LIST, PLANS, SHEET},
    cards::Card,
    element::{View, all, el, keyed, on_click, several, text},
    questions::{answers, asks, name_of, question_of},
    state::{Action, State},
};

/// A question and its cards.
pub(crate) type Cards = (&'static str, Vec<Card>);

/// One card: the verdict in sight, what is asked, what is answered.
pub(crate) fn card_view(page: &Page, (id, cards): &Cards, at: usize) -> View {
    let Some(card) = cards.get(at) else { return text("") };
    let question = question_of(&page.state.report, id);
    let parts = || {
        let rows = cards.iter().enumerate().map(|(other, card)| row(card, other == at));
        let summary = format!("{}: {} of {}", name_of(id), at + 1, cards.len());
        fold("parts", summary, false, el!("ul", "class" = "rows"; all(rows)))
    };
    let view = el!("section", "class" = "question card", "aria-labelledby" = "title";
        el!("div", "class" = "head";
            (cards.len() > 1).then(parts),
            el!("h2", "id" = "title", "tabindex" = "-1"; &card.title),
            (question != card.title).then(|| el!("p", "class" = "asks"; question)),
        ),
        asks(page, card),
        answers(page, card, false),
    );
    several!(line(page, card), keyed(&card.key, view))
}

/// The bar below a card: to the card before, to the list, to the next one; and what was done last, taken back.
pub(crate) fn bar(page: &Page, questions: &[Cards], here: Option<(usize, usize)>) -> View {
    let state = &page.state;
    let flat: Vec<_> = questions.iter().flat_map(|(_, cards)| cards).collect();
    let before = here.map(|(question, card)| {
        questions.iter().take(question).map(|it| it.1.len()).sum::<usize>() + card
    });
    let beside = |card: Option<&&Card>, class, sign: &'static str| {
        let card = card?;
        Some(el!("a", "class" = class, "href" = format!("#{}", card.key);
            el!("span", "aria-hidden" = "true"; sign), el!("span", "class" = "name"; &card.title)))
    };
    let link = |address: &str, label: String| {
        el!("a", "href" = format!("#{address}"); el!("span", "class" = "name"; label))
    };
    let inside = match before {
        Some(at) => several!(
            beside(at.checked_sub(1).and_then(|it| flat.get(it)), "before", "‹"),
            link(LIST, format!("All questions{}", wrong(state))),
            beside(flat.get(at + 1), "after", "›"),
        ),
        None => several!(
            link(LIST, "Questions".into()),
            link(FOUND, format!("Findings{}", wrong(state))),
            link(SHEET, "Sheet for the car".into()),
            link(PLANS, "Plans".into()),
        ),
    };
    let undo = el!("button", "type" = "button", "class" = "tool", "disabled" = !state.can_undo(),
        "aria-label" = "Undo", "title" = "Undo"; "↶");
    el!("nav", "class" = "bar", "aria-label" = "Questions";
        inside,
        on_click(undo, sending(&page.send, Action::Undo)),
    )
}

/// How many Dangers and Faults there are.
fn wrong(state: &State) -> String {
    let count = state.report.findings.iter().filter(|it| it.severity <= Severity::Fault).count();
    if count == 0 { String::new() } else { format!(" ✕ {count}") }
}
