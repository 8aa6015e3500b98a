//! The verdict in sight: one line that stays where it is while the fields are edited. A tap leads to the whole answer.

use std::rc::Rc;

use quietpin_core::{
    finding::Finding,
    report::{Answer, Tone},
};
use yew::prelude::*;

use super::{
    Page,
    row::{sign, titled},
};
use crate::{
    browser::focus,
    cards::{Card, worst},
    element::{View, el, nothing, on_click, whole},
    state::State,
    words,
};

/// The line above a card.
pub(crate) fn line(page: &Page, cards: &[Card], card: &Card, found: &[Rc<Finding>]) -> View {
    let Some(answer) = in_sight(&page.state, cards, card) else { return nothing() };
    let subject = answer.subject.clone();
    let go = Callback::from(move |event: Event| {
        if focus::to_answer(&subject) {
            event.prevent_default();
        }
    });
    let tone = answer.verdict.tone;
    let cure = match tone {
        Tone::Good => None,
        Tone::Open => answer.why.as_ref().or_else(|| answer.to_do.first()),
        Tone::Bad | Tone::Doubtful => {
            found.iter().find_map(|it| it.remedies.first()).or_else(|| answer.to_do.first())
        }
    };
    let line = el!("a", "class" = format!("line {}", words::tone_class(tone)), "href" = format!("#{}", answer.subject);
        sign(tone),
        el!("span", "class" = "words", "aria-live" = "polite";
            el!("b"; titled(&answer)),
            cure.map(|it| el!("span", "class" = "first-cure"; whole(&it.text))),
        ),
    );
    on_click(line, go)
}

/// The answer of the card that was changed last, or the one that matters most. A card that answers nothing of its own shows
/// those of its question, or of all questions.
fn in_sight(state: &State, cards: &[Card], card: &Card) -> Option<Rc<Answer>> {
    let of =
        |cards: &[Card]| cards.iter().flat_map(|it| it.answers.iter().cloned()).collect::<Vec<_>>();
    let mut answers = card.answers.clone();
    if answers.is_empty() {
        answers = of(cards);
    }
    if answers.is_empty() {
        answers = state.report.sections.iter().flat_map(|it| it.answers.iter().cloned()).collect();
    }
    let answers = &answers;
    let last = state.lead.as_ref().and_then(|lead| answers.iter().find(|it| it.subject == *lead));
    last.or_else(|| worst(answers)).cloned()
}
