//! The verdict in sight: one line that stays where it is while the fields are edited. A tap leads to the whole answer.

use std::rc::Rc;

use quietpin_core::{
    message::Message,
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
pub(crate) fn line(page: &Page, card: &Card) -> View {
    let Some(answer) = in_sight(&page.state, card) else { return nothing() };
    let subject = answer.subject.clone();
    let go = Callback::from(move |event: Event| {
        if focus::to_answer(&subject) {
            event.prevent_default();
        }
    });
    let tone = answer.verdict.tone;
    let cure = first_cure(&page.state, card, &answer).filter(|_| tone != Tone::Good);
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
/// what an edit on it changed elsewhere.
fn in_sight(state: &State, card: &Card) -> Option<Rc<Answer>> {
    let everywhere: Vec<_>;
    let answers = if card.answers.is_empty() {
        everywhere = state.report.sections.iter().flat_map(|it| it.answers.iter().cloned()).collect();
        &everywhere
    } else {
        &card.answers
    };
    let last = state.lead.as_ref().and_then(|lead| answers.iter().find(|it| it.subject == *lead));
    last.or_else(|| worst(answers)).cloned()
}

/// The best cure of what is wrong on the card; else what its answer says to do first.
fn first_cure(state: &State, card: &Card, answer: &Answer) -> Option<Message> {
    let mut found = state.report.findings.iter().filter(|it| {
        card.holds(&it.subject) || it.subject.starts_with(&format!("{}.", answer.subject))
    });
    let cured = found.find_map(|it| it.remedies.first());
    cured.or_else(|| answer.to_do.first()).cloned()
}
