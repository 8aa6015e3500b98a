//! One answer: the verdict in words, why, what to do; below it the pictures, the numbers and the working.

use std::rc::Rc;

use quietpin_core::{
    finding::Finding,
    message::Message,
    report::{Answer, AnswerRole, Tone},
};

use super::{Page, fold};
use crate::{
    element::{View, all, el, keyed, whole},
    words,
};

/// What is told of an answer on its card already.
pub(crate) struct Told<'a> {
    /// Whether its title stands nowhere else.
    pub(crate) is_titled: bool,
    /// The cautions that were told.
    pub(crate) warned: &'a [String],
    /// What was found on the card.
    pub(crate) found: &'a [Rc<Finding>],
}

/// The verdict, why, what to do, and what stands below; with its title, where the card has several answers.
pub(crate) fn answer_view(
    page: &Page,
    answer: &Rc<Answer>,
    told: &Told<'_>,
    found: Option<View>,
) -> View {
    let numbers = page.state.details.there().map(|details| (details.numbers)(answer));
    let lists = page
        .state
        .details
        .there()
        .map(|details| all(answer.lists.iter().map(|it| (details.checklist)(page, it))));
    let id = format!("answer-{}", answer.subject);
    let view = el!("article", "class" = "answer", "id" = id, "tabindex" = "-1";
        said(answer, told, found),
        el!("div"; lists),
        el!("div", "class" = "numbers"; numbers),
    );
    keyed(key_of(&answer.subject), view)
}

fn said(answer: &Answer, told: &Told<'_>, found: Option<View>) -> View {
    let tone = answer.verdict.tone;
    // of several ways out of what is wrong, the best one is enough at first; of what is to be done, what comes first
    let first = match (tone, answer.role) {
        (_, AnswerRole::List) => usize::MAX,
        (Tone::Bad, _) => 1,
        _ => 2,
    };
    // what was found, and is said here, is said with how grave it is
    let found_as = |message: &Message| told.found.iter().find(|it| it.message.text == message.text);
    let badge = |message: &Message| {
        found_as(message).map(|it| el!("span", "class" = "severity"; words::severity(it.severity)))
    };
    let class_of =
        |message: &Message| found_as(message).map_or("", |it| words::severity_class(it.severity));
    let steps = |steps: &[Message]| {
        el!("ul", "class" = "to-do", "aria-label" = "What to do";
            all(steps.iter().map(|it| el!("li", "class" = class_of(it); badge(it), whole(&it.text)))))
    };
    // what cures what was found stands there once more, to be done by a tap
    let is_cure = |step: &Message| told.found.iter().any(|it| it.remedies.contains(step));
    let (best, more) = answer.to_do.split_at(first.min(answer.to_do.len()));
    let more: Vec<_> = more.iter().filter(|it| !is_cure(it)).cloned().collect();
    let cautions: Vec<_> =
        answer.cautions.iter().filter(|it| !told.warned.contains(&it.text)).collect();
    let (first_caution, cautions) = cautions.split_at(1.min(cautions.len()));
    let caution =
        |it: &Message| el!("p", "class" = "caution"; el!("strong"; "Caution: "), whole(&it.text));
    let more_cautions = || {
        let summary = if cautions.len() == 1 {
            "1 more caution".to_owned()
        } else {
            format!("{} more cautions", cautions.len())
        };
        fold("cautions", summary, false, all(cautions.iter().map(|it| caution(it))))
    };
    let further = || {
        let what = if tone == Tone::Bad { "More to do, and other ways" } else { "More to do" };
        fold("ways", format!("{what}: {}", more.len()), false, steps(&more))
    };
    el!("div", "class" = "said";
        answer.title.as_ref().filter(|_| told.is_titled).map(|it| el!("h3"; &it.text)),
        el!("div", "class" = format!("verdict {}", words::tone_class(tone));
            el!("span", "class" = "sign", "aria-hidden" = "true"; words::tone_sign(tone)),
            el!("p"; whole(&answer.verdict.message.text)),
        ),
        answer.why.as_ref().map(|it| el!("p", "class" = format!("why {}", class_of(it)); badge(it), whole(&it.text))),
        (!best.is_empty()).then(|| steps(best)),
        answer.assumed.as_ref().map(|it| fold("ways", "What was assumed", false, el!("p"; whole(&it.text)))),
        (!more.is_empty()).then(further),
        el!("div"; found),
        all(first_caution.iter().map(|it| caution(it))),
        (!cautions.is_empty()).then(more_cautions),
    )
}

/// What an answer is about, without the field that it points at now.
fn key_of(subject: &str) -> &str {
    subject.strip_suffix("_count").or_else(|| subject.strip_suffix("_mode")).unwrap_or(subject)
}
