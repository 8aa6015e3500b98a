//! The card on the screen, and the bar under the thumb that leads to the ones beside it.

use std::rc::Rc;

use quietpin_core::{
    finding::{Finding, Severity},
    plan::Plan,
};
use yew::Callback;

use super::{Dispatch, Page, button, line::line, row::row, sending};
use crate::{
    address::{FOUND, LIST, PLANS, SHEET, Shown, shown},
    browser::storage,
    cards::{Card, place_of},
    element::{View, all, el, keyed, nothing, on_click, several},
    questions::{answers, asks, name_of},
    state::{Action, State},
};

/// A question and its cards.
pub(crate) type Cards = (&'static str, Vec<Card>);

/// One card: the verdict in sight, what is asked, what is answered.
pub(crate) fn card_view(page: &Page, questions: &[Cards], here: (usize, usize)) -> View {
    let Some((id, cards)) = questions.get(here.0) else { return nothing() };
    let at = here.1;
    let Some(card) = cards.get(at) else { return nothing() };
    let is_here = |it: &&Rc<Finding>| place_of(questions, &it.subject) == Some(here);
    let found: Vec<_> = page.state.report.findings.iter().filter(is_here).cloned().collect();
    let title = || el!("h1", "id" = "title", "tabindex" = "-1"; &card.title);
    let parts = || {
        let rows = cards.iter().enumerate().map(|(other, card)| row(card, other == at));
        let which = format!("All of {}", name_of(id));
        el!("details", "class" = "parts";
            el!("summary"; title(), el!("small"; which)),
            el!("ul", "class" = "rows"; all(rows)),
        )
    };
    let view = el!("section", "class" = "question card", "aria-labelledby" = "title";
        el!("div", "class" = "head";
            if cards.len() > 1 { parts() } else { title() },
        ),
        asks(page, card),
        answers(page, card, &found, false),
    );
    several!(line(page, cards, card, &found), keyed(&card.key, view))
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
    let link = |address: &str, label: String| el!("a", "href" = format!("#{address}"); el!("span", "class" = "name"; label));
    let inside = match before {
        Some(at) => several!(
            link(LIST, format!("List{}", wrong(state))),
            beside(at.checked_sub(1).and_then(|it| flat.get(it)), "before", "‹"),
            beside(flat.get(at + 1), "after", "›"),
        ),
        None if shown(&state.address) != Shown::List(LIST) => {
            several!(link(LIST, format!("List{}", wrong(state))), link(PLANS, "Plans".into()))
        }
        None if *state.plan == Plan::default() => {
            several!(demo(&page.send), link(PLANS, "Plans".into()))
        }
        None => several!(
            link(FOUND, format!("Findings{}", wrong(state))),
            link(SHEET, "Sheet".into()),
            link(PLANS, "Plans".into()),
        ),
    };
    let tool = |action: Action, label: &'static str, sign: &'static str, can: bool| {
        let button = el!("button", "type" = "button", "class" = "tool", "disabled" = !can,
            "aria-label" = label, "title" = label; sign);
        on_click(button, sending(&page.send, action))
    };
    el!("nav", "class" = "bar", "aria-label" = "Questions";
        inside,
        tool(Action::Undo, "Undo", "↶", state.can_undo()),
        tool(Action::Redo, "Redo", "↷", state.can_redo()),
    )
}

/// Opens the demo.
fn demo(send: &Dispatch) -> View {
    let send = send.clone();
    let open = Callback::from(move |_| {
        send.dispatch(Action::Open(storage::free_key(), Box::new(quietpin_core::demo())));
    });
    button(Some("demo"), "Look at the demo", open)
}

/// How many Dangers and Faults there are.
fn wrong(state: &State) -> String {
    let count = state.report.findings.iter().filter(|it| it.severity <= Severity::Fault).count();
    if count == 0 { String::new() } else { format!(" ✕\u{a0}{count}") }
}
