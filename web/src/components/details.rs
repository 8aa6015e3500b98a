//! What is looked at second: the pictures, the numbers and the working below an answer, and what unfolds below a finding.
//! It stands in a part of the program that comes after the answers.

use std::rc::Rc;

use quietpin_core::{
    checked,
    explained::explanation,
    finding::{Basis, Finding},
    message::Message,
    quantity::Holds,
    report::{Answer, Picture},
    schema::Place,
};
use yew::prelude::*;

use super::{Page, button, figures, lazy_fold, sending, working::working};
use crate::{
    element::{View, all, el, several},
    pictures,
    state::Action,
};

/// What stands below an answer, drawn anew only where the answer is another one.
pub(crate) fn numbers(answer: &Rc<Answer>) -> View {
    html! { <Numbers answer={Rc::clone(answer)} /> }.into()
}

#[component]
fn Numbers(props: &Numbered) -> Html {
    drawn(&props.answer).into()
}

#[derive(Properties)]
struct Numbered {
    answer: Rc<Answer>,
}

impl PartialEq for Numbered {
    fn eq(&self, other: &Self) -> bool {
        // to compare the answers would take as long as to draw them
        Rc::ptr_eq(&self.answer, &other.answer)
    }
}

/// Its pictures; its numbers, its tables and the working, folded away.
fn drawn(answer: &Rc<Answer>) -> View {
    let folded = Rc::clone(answer);
    let has_numbers = !answer.figures.is_empty() || !answer.tables.is_empty();
    // a circuit shows what the verdict is about; of other pictures one is enough at first
    let is_shown =
        |(at, picture): &(usize, &Picture)| *at == 0 || matches!(picture, Picture::Circuit(_));
    // where two are possible, each says what it holds for
    let are_several = answer.pictures.len() > 1;
    let titled = |it: &Picture| {
        let caption = match it {
            Picture::Circuit(circuit) if are_several => Some(&circuit.caption.text),
            _ => None,
        };
        several!(caption.map(|it| el!("p", "class" = "hypothesis"; it)), picture(it))
    };
    let shown = answer.pictures.iter().enumerate().filter(is_shown).map(|it| titled(it.1));
    let draw = move || {
        let more =
            folded.pictures.iter().enumerate().filter(|it| !is_shown(it)).map(|it| picture(it.1));
        el!("div", "class" = "folded";
            all(more),
            figures::figures(&folded.figures),
            all(folded.tables.iter().map(figures::table)),
            working_of(&folded),
            checked::about(&folded.subject).map(checks),
        )
    };
    let name = format!("numbers {}", kind_of(&answer.subject));
    let version = Rc::as_ptr(answer).addr();
    several!(
        all(shown),
        has_numbers.then(|| lazy_fold(name, "Numbers and working", Rc::new(draw), version)),
    )
}

/// What an answer is about, without its number: what is opened for one load is opened for the next.
fn kind_of(subject: &str) -> String {
    subject.split('.').filter(|it| it.parse::<usize>().is_err()).collect::<Vec<_>>().join(".")
}

/// What the answers to a question were compared with.
fn checks(record: &'static str) -> View {
    el!("details";
        el!("summary"; "How this was checked"),
        el!("ul"; all(checked::lines(record).map(|line| el!("li"; line)))),
    )
}

fn picture(picture: &Picture) -> View {
    match picture {
        Picture::Cycle(cycle) => pictures::cycle_view(cycle),
        Picture::Strip(strip) => pictures::strip_view(strip),
        Picture::Circuit(circuit) => {
            html! { <pictures::CircuitView circuit={circuit.clone()} /> }.into()
        }
        Picture::Timeline(timeline) => pictures::timeline_view(timeline),
        Picture::Traces(traces) => pictures::traces_view(traces),
    }
}

fn working_of(answer: &Answer) -> View {
    let figures = answer.figures.iter().map(|it| (it.label.text.as_str(), it.working.as_slice()));
    let tables = answer.tables.iter().map(|it| (it.caption.text.as_str(), it.working.as_slice()));
    working(figures.chain(tables))
}

/// What unfolds below a finding: where it holds, why it matters, what else would do, and how it was found.
pub(crate) fn more(page: &Page, finding: &Finding) -> View {
    let explained = explanation(finding.message.code);
    let has_remedies = !finding.remedies.is_empty();
    // each with its own button, the first too, so that nobody wonders what “this” is
    let remedy = |it: &Message| el!("li"; el!("p"; &it.text), doing(page, it));
    let remedies = || el!("ul"; all(finding.remedies.iter().map(remedy)));
    el!("details";
        el!("summary"; "Why, and what to do"),
        explained.map(|it| el!("p"; it.why)),
        explained.filter(|_| !has_remedies).map(|it| el!("p"; it.act)),
        has_remedies.then(remedies),
        holds(finding),
        explained.map(|it| el!("p", "class" = "source"; "Source: ", it.source)),
        working(std::iter::once(("How it was found", finding.working.as_slice()))),
    )
}

/// Does in the plan what a remedy says, where that is an edit of it.
fn doing(page: &Page, remedy: &Message) -> Option<View> {
    let apply = Action::Apply(remedy.edits.clone());
    // the plan can't enter anything in the controller: it takes note that the fitter has
    let is_entered = remedy.edits.iter().all(|it| {
        let of_sensor = [".table", ".entered"].iter().any(|end| it.path.ends_with(end));
        it.path.starts_with("controller.") || of_sensor
    });
    let label = if is_entered { "I have entered it" } else { "Do this in the plan" };
    let press = || button(None, label, sending(&page.send, apply));
    (page.state.is_tried && !remedy.edits.is_empty()).then(press)
}

fn holds(finding: &Finding) -> View {
    let from = match finding.basis {
        Basis::AsPlanned => "As planned",
        Basis::AsWired => "As found at the car",
    };
    let place = Place::at_path(&finding.subject).map_or("", |place| place.field().label);
    let when = match &finding.holds {
        Holds::AtSome(corners) => format!("; at: {}", corners.join("; ")),
        Holds::Always | Holds::Never => String::new(),
    };
    let field = if place.is_empty() { String::new() } else { format!("; field “{place}”") };
    el!("p", "class" = "basis"; format!("{from}{when}{field}."))
}
