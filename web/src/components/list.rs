//! The first screen: what this is, each question with where it stands, what was found, the plans.

use std::rc::Rc;

use quietpin_core::report::Tone;

use super::{
    Page,
    row::{row_of, stands, titled},
};
use crate::{
    cards::{Card, worst},
    element::{View, all, el},
    questions::{has_overview, question_of},
    state::Further,
    words,
};

/// The questions, each leading to its first card, or to the one that is worst.
pub(crate) fn list(page: &Page, questions: &[(&'static str, Vec<Card>)], is_blank: bool) -> View {
    let report = &page.state.report;
    let row = |(at, (id, cards)): (usize, &(&'static str, Vec<Card>))| {
        let answers: Vec<_> = cards.iter().flat_map(|it| it.answers.iter().cloned()).collect();
        let worst = worst(&answers);
        let tone = worst.map(|it| it.verdict.tone);
        let wrong = answers.iter().filter(|it| it.verdict.tone == Tone::Bad).count();
        let says = worst.map(|it| match wrong {
            0 | 1 => stands(it),
            more => format!("{} (and {} more)", titled(it), more - 1),
        });
        // the card with the worst answer; where nothing is wrong, the first
        let is_wrong = matches!(tone, Some(Tone::Bad | Tone::Doubtful)) && !has_overview(id);
        let has_worst = |card: &&Card| {
            worst.is_some_and(|it| card.answers.iter().any(|other| Rc::ptr_eq(it, other)))
        };
        let card = cards.iter().find(|card| is_wrong && has_worst(card)).or_else(|| cards.first());
        let row =
            row_of(card.map_or(id, |it| &it.key), tone, &question_of(report, id), says, false);
        el!("li", "class" = (is_blank && at == 0).then_some("start"); row)
    };
    el!("div", "class" = "with-found";
        el!("section", "class" = "list", "aria-label" = "Questions";
            el!("ol", "class" = "rows"; all(questions.iter().enumerate().map(row)))),
        (!is_blank).then(|| found_view(page, false)),
    )
}

/// What stands out in the plan.
pub(crate) fn found_view(page: &Page, is_full: bool) -> View {
    let counted = match page.state.answers {
        Further::There(_) => words::counted(&page.state.report.findings),
        Further::Coming | Further::Missed => String::new(),
    };
    let found = match page.state.answers {
        Further::There(answering) => Some((answering.found)(page, is_full)),
        Further::Coming => Some(el!("p", "class" = "why"; words::COMING)),
        Further::Missed => None,
    };
    el!("section", "id" = "at-found", "class" = "found", "tabindex" = "-1", "aria-labelledby" = "found-title";
        el!("h2", "id" = "found-title"; "Findings: ", counted),
        found,
    )
}
