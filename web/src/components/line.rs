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
    cards::{Card, weight},
    element::{View, el, on_click, whole},
    state::State,
    words,
};

/// The line above a card.
pub(crate) fn line(page: &Page, cards: &[Card], card: &Card, found: &[Rc<Finding>]) -> View {
    let Some(answer) = in_sight(&page.state, cards, card) else {
        return el!("p", "class" = "line open";
            sign(Tone::Open),
            el!("span", "class" = "words"; el!("b"; card.idle)),
        );
    };
    if let Some(all) = card.is_overview.then(|| of_all(cards)).flatten() {
        return el!("a", "class" = format!("line {}", words::tone_class(all.0)), "href" = format!("#{}", card.key);
            sign(all.0),
            el!("span", "class" = "words", "aria-live" = "polite"; el!("b"; all.1)),
        );
    }
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
    // beside its answers, where there is room for both, the line would only say it twice
    let own = if card.answers.is_empty() { "" } else { " own" };
    let line = el!("a", "class" = format!("line {}{own}", words::tone_class(tone)), "href" = format!("#{}", answer.subject);
        sign(tone),
        el!("span", "class" = "words", "aria-live" = "polite";
            el!("b"; titled(&answer)),
            cure.map(|it| el!("span", "class" = "first-cure"; whole(&it.text))),
        ),
    );
    on_click(line, go)
}

/// The answer of the card that was changed last, or the one that matters most. Of a card that answers nothing of its own, the
/// one that was changed on it last: another one would be taken for its own.
fn in_sight(state: &State, cards: &[Card], card: &Card) -> Option<Rc<Answer>> {
    let sections = &state.report.sections;
    let mut all: Box<dyn Iterator<Item = &Rc<Answer>>> = if card.answers.is_empty() {
        Box::new(sections.iter().flat_map(|it| &it.answers))
    } else {
        Box::new(card.answers.iter())
    };
    let last = state.lead.as_ref().and_then(|lead| all.find(|it| it.subject == *lead));
    let own = || if card.is_overview { worst_of(cards) } else { card.worst() };
    last.or_else(own).cloned()
}

fn worst_of(cards: &[Card]) -> Option<&Rc<Answer>> {
    cards.iter().flat_map(|it| &it.answers).min_by_key(|it| weight(it.verdict.tone))
}

/// How all that a card lists stands, and how many of it: the worst by name.
fn of_all(cards: &[Card]) -> Option<(Tone, String)> {
    let answers: Vec<_> = cards.iter().flat_map(|it| &it.answers).collect();
    let worst = worst_of(cards)?;
    let tone = worst.verdict.tone;
    let as_bad = answers.iter().filter(|it| it.verdict.tone == tone).count();
    let said = match (tone, as_bad) {
        (_, 1) => titled(worst),
        (Tone::Good, all) => format!("Nothing wrong in all {all}"),
        (_, more) => format!("{} (and {} more)", titled(worst), more - 1),
    };
    Some((tone, said))
}
