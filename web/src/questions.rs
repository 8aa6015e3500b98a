//! The questions, in the order in which a fitter meets them. Every one is drawn alike: the question, its
//! answers, the fields they rest on.

mod coils;
mod conditions;
mod controller;
mod cranking;
mod firing;
mod injectors;
mod outputs;
mod relays;
mod standing;
mod trigger;

use std::{ops::Bound, rc::Rc};

use quietpin_core::{
    questions::{self, Question},
    read::{FieldState, State as Stands},
    report::{Answer, Report, Section},
    schema::{Part, Place, Tier},
};

use crate::{
    components::{Drawn, FieldPlace, FieldProps, Page, field_view, fold, is_as_before, parts},
    element::{View, all, el, nothing},
    state::State,
};

/// All questions.
pub(crate) fn questions_view(page: &Page) -> View {
    parts(page, ALL.len(), QUESTION)
}

/// How a question is drawn, and the parts of the plan whose fields it asks for.
struct Drawing {
    /// The name of its section in the report.
    id: &'static str,
    parts: &'static [Part],
    view: fn(&Page) -> View,
}

const fn drawing(question: &Question, view: fn(&Page) -> View) -> Drawing {
    Drawing { id: question.id, parts: question.parts, view }
}

const ALL: [Drawing; 8] = [
    drawing(&questions::firing::QUESTION, firing::firing_view),
    drawing(&questions::injectors::QUESTION, injectors::injectors_view),
    drawing(&questions::outputs::QUESTION, outputs::outputs_view),
    drawing(&questions::trigger::QUESTION, trigger::trigger_view),
    drawing(&questions::cranking::QUESTION, cranking::cranking_view),
    drawing(&questions::coils::QUESTION, coils::coils_view),
    drawing(&questions::standing::QUESTION, standing::standing_view),
    // what all of them rest on
    Drawing { id: "conditions", parts: conditions::PARTS, view: conditions::conditions_view },
];

const QUESTION: Drawn = Drawn {
    draw: |page, at| ALL.get(at).map_or_else(nothing, |it| (it.view)(page)),
    is_same: |one, other, at| {
        ALL.get(at).is_some_and(|question| {
            // the controller is saved under the plan's name
            one.plan.name == other.plan.name
                && one.plan.left_over() == other.plan.left_over()
                && question.parts.iter().all(|part| one.plan.is_same_in(&other.plan, *part))
                && same_answers(
                    answers_in(&one.report, question.id),
                    answers_in(&other.report, question.id),
                )
                && question.parts.iter().all(|part| same_fields(one, other, part.name()))
        })
    },
};

fn same_answers(one: &[Rc<Answer>], other: &[Rc<Answer>]) -> bool {
    one.len() == other.len()
        && one.iter().zip(other).all(|(one, other)| is_as_before(Some(one), Some(other)))
}

/// Whether the fields of a record stand as they did.
fn same_fields(one: &State, other: &State, record: &str) -> bool {
    let (mut one, mut other) = (fields_of(&one.report, record), fields_of(&other.report, record));
    loop {
        match (one.next(), other.next()) {
            (None, None) => return true,
            (Some(one), Some(other)) if is_as_it_stood(one, other) => {}
            _ => return false,
        }
    }
}

/// Where it is the same as before, so is its path.
fn is_as_it_stood(one: Standing<'_>, other: Standing<'_>) -> bool {
    Rc::ptr_eq(one.1, other.1) || one == other
}

type Standing<'a> = (&'a String, &'a Rc<FieldState>);

/// How the fields of a record stand.
fn fields_of<'a>(report: &'a Report, record: &str) -> impl Iterator<Item = Standing<'a>> {
    let record = format!("{record}.");
    let from = report.fields.range::<str, _>((Bound::Included(record.as_str()), Bound::Unbounded));
    from.take_while(move |(path, _)| path.starts_with(&record))
}

/// The frame of a question.
fn frame(section: Option<&Section>, content: Option<View>) -> View {
    let Some(section) = section else { return nothing() };
    frame_of(section.id, &section.question.text, content)
}

fn frame_of(id: &str, question: &str, content: impl Into<Option<View>>) -> View {
    let title = format!("title-{id}");
    el!("section", "id" = format!("at-{id}"), "class" = "question", "tabindex" = "-1",
        "aria-labelledby" = &title;
        el!("h2", "id" = &title; question),
        content.into(),
    )
}

fn answers_in<'a>(report: &'a Report, id: &str) -> &'a [Rc<Answer>] {
    section(report, id).map(|section| section.answers.as_slice()).unwrap_or_default()
}

fn section<'a>(report: &'a Report, id: &str) -> Option<&'a Section> {
    report.sections.iter().find(|section| section.id == id)
}

/// The fields of a record: those asked first, then the others, the rare ones folded away.
fn form(page: &Page, fields: &[Place]) -> View {
    let plan = &page.state.plan;
    let is_asked = |place: &Place| match place.field().only_if {
        None => true,
        Some(only) => {
            let typed = place.beside(only.name).map_or("", |beside| plan.text(beside));
            if only.codes.is_empty() {
                !typed.trim().is_empty()
            } else {
                only.codes.contains(&typed)
            }
        }
    };
    let view = |place: Place| field_at(page, place, FieldPlace::Home);
    let tier = |tier| move |place: &Place| place.field().tier == tier;
    let in_order = fields.iter().copied().filter(is_asked);
    let first = in_order.clone().filter(tier(Tier::First)).map(view);
    let usual = in_order.clone().filter(tier(Tier::Usual)).map(view);
    let rare: Vec<_> = in_order.clone().filter(tier(Tier::Rare)).collect();
    let typed = |place: &Place| !plan.text(*place).trim().is_empty();
    // few at a time: the others are asked once the first are answered, or where one of them was
    let stands = |place: &Place| page.state.report.fields.get(&place.path());
    let is_assumed = |place: &Place| stands(place).map(|it| it.state) == Some(Stands::Assumed);
    let answered = |place: &Place| typed(place) || is_assumed(place);
    let goes_on = in_order.clone().filter(tier(Tier::First)).all(|it| answered(&it))
        || in_order.filter(|it| it.field().tier != Tier::First).any(|it| typed(&it));
    let is_wrong = rare.iter().any(|it| stands(it).is_some_and(|it| it.problem.is_some()));
    let some = |fields: Option<View>| el!("div", "class" = "some"; fields);
    let has_rare = goes_on && !rare.is_empty();
    let more =
        || fold("rare", "More details", is_wrong, some(Some(all(rare.into_iter().map(view)))));
    // in places of their own, so that none is made anew when another comes or goes
    el!("div", "class" = "form";
        some(Some(all(first))),
        some(goes_on.then(|| all(usual))),
        has_rare.then(more),
    )
}

/// A field that has its home with another question, and is typed here just as well.
fn also(page: &Page, place: impl Into<Place>) -> View {
    field_at(page, place.into(), FieldPlace::Also)
}

fn field_at(page: &Page, place: Place, at: FieldPlace) -> View {
    field_view(&FieldProps { path: place.path(), page, label: None, place: at })
}

/// The fields of a part of the plan that is no list; what the first spark waits for is asked with the wheels.
fn form_of(page: &Page, part: Part) -> View {
    let is_here = |it: &Place| !it.field().is_list && !trigger::is_of_wheels(*it);
    form(page, &part.places().filter(is_here).collect::<Vec<_>>())
}

#[cfg(test)]
mod tests {
    use quietpin_core::plan::Plan;

    use quietpin_core::schema;

    use super::*;

    /// A field that no question compares would be drawn as it was before the last letter.
    #[test]
    fn an_edit_of_any_field_draws_its_question_anew() {
        let mut plan = Plan::default();
        for part in Part::ALL {
            plan.set_count(*part, 1);
        }
        for place in schema::places() {
            let mut edited = plan.clone();
            assert!(edited.put(place, "typed"), "{}", place.path());
            let mut asking = ALL.iter().filter(|it| it.parts.contains(&place.part()));
            assert!(asking.next().is_some(), "{}", place.path());
            assert!(!plan.is_same_in(&edited, place.part()), "{}", place.path());
        }
    }
}
