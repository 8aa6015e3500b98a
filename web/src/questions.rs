//! The questions, in the order in which a fitter meets them. Every one is drawn alike: the question, its
//! answers, the fields they rest on.

mod channels;
mod coils;
mod conditions;
mod controller;
mod cranking;
mod injectors;
mod rest;
mod trigger;

use std::{ops::Bound, rc::Rc};

use quietpin_core::{
    fields::{self, Field, Tier},
    read::{FieldState, State as Stands},
    report::{Answer, Report, Section},
};

use crate::{
    components::{Drawn, FieldProps, Page, field_view, fold, is_as_before, parts},
    element::{View, all, el, nothing},
    state::State,
};

/// All questions.
pub(crate) fn questions_view(page: &Page) -> View {
    parts(page, ALL.len(), QUESTION)
}

struct Question {
    /// The name of its section in the report.
    id: &'static str,
    view: fn(&Page) -> View,
    /// The parts of the plan whose fields it asks for.
    asks: &'static [&'static str],
}

const ALL: [Question; 7] = [
    Question {
        id: "channels",
        view: channels::channels_view,
        asks: &["engine", "channels", "light", "strip"],
    },
    Question {
        id: "injectors",
        view: injectors::injectors_view,
        asks: &["injectors", "second_injectors", "injector_feed", "fuel"],
    },
    Question {
        id: "rest",
        view: rest::rest_view,
        // its own parts know better, but for the name, which the controller is saved under
        asks: &["outputs", "loads", "name"],
    },
    Question {
        id: "trigger",
        view: trigger::trigger_view,
        // the wheel is asked here; the other fields of `cranking` in its own question
        asks: &["cranking", "trigger", "crank_sensor", "cam_sensor", "trigger_input"],
    },
    Question { id: "cranking", view: cranking::cranking_view, asks: &["cranking", "relays"] },
    Question { id: "coils", view: coils::coils_view, asks: &["coils"] },
    Question { id: "conditions", view: conditions::conditions_view, asks: &["conditions"] },
];

const QUESTION: Drawn = Drawn {
    draw: |page, at| ALL.get(at).map_or_else(nothing, |it| (it.view)(page)),
    is_same: |one, other, at| {
        ALL.get(at).is_some_and(|question| {
            question.asks.iter().all(|part| one.plan.is_same_in(&other.plan, part))
                && same_answers(
                    answers_in(&one.report, question.id),
                    answers_in(&other.report, question.id),
                )
                && question.asks.iter().all(|record| same_fields(one, other, record))
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
    let title = format!("title-{}", section.id);
    el!("section", "id" = format!("at-{}", section.id), "class" = "question", "tabindex" = "-1",
        "aria-labelledby" = &title;
        el!("h2", "id" = &title; &section.question.text),
        content,
    )
}

fn answers_in<'a>(report: &'a Report, id: &str) -> &'a [Rc<Answer>] {
    section(report, id).map(|section| section.answers.as_slice()).unwrap_or_default()
}

fn section<'a>(report: &'a Report, id: &str) -> Option<&'a Section> {
    report.sections.iter().find(|section| section.id == id)
}

/// The fields of a record: those asked first, then the others, the rare ones folded away.
fn form(page: &Page, record: &str, fields: &[&'static Field]) -> View {
    let path_of = |field: &Field| {
        let name = field.path.rsplit('.').next().unwrap_or_default();
        format!("{record}.{name}")
    };
    let plan = &page.state.plan;
    let is_asked = |field: &&'static Field| match field.only_if {
        None => true,
        Some((path, values)) => {
            let name = path.rsplit('.').next().unwrap_or_default();
            let typed = plan.get(&format!("{record}.{name}")).unwrap_or_default();
            if values.is_empty() { !typed.trim().is_empty() } else { values.contains(&typed) }
        }
    };
    let view =
        |field: &'static Field| field_view(&FieldProps { path: path_of(field), page, label: None });
    let in_order = fields.iter().copied().filter(is_asked);
    let first = in_order.clone().filter(|it| it.tier == Tier::First).map(view);
    let usual = in_order.clone().filter(|it| it.tier == Tier::Usual).map(view);
    let rare: Vec<_> = in_order.clone().filter(|it| it.tier == Tier::Rare).collect();
    let typed =
        |it: &&'static Field| plan.get(&path_of(it)).is_some_and(|text| !text.trim().is_empty());
    // few at a time: the others are asked once the first are answered, or where one of them was
    let stands = |it: &Field| page.state.report.fields.get(&path_of(it)).map(|it| it.state);
    let answered = |it: &&'static Field| typed(it) || stands(it) == Some(Stands::Assumed);
    let goes_on = in_order.clone().filter(|it| it.tier == Tier::First).all(|it| answered(&it))
        || in_order.filter(|it| it.tier != Tier::First).any(|it| typed(&it));
    let is_wrong = rare.iter().any(|it| {
        page.state.report.fields.get(&path_of(it)).is_some_and(|it| it.problem.is_some())
    });
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

/// The fields of a part of the plan that is no list; those of the crank's wheel are asked with its sensor.
fn form_of(page: &Page, part: &'static str) -> View {
    let fields: Vec<_> = fields::of(part)
        .filter(|field| !field.path.contains('#') && !trigger::is_of_wheel(field))
        .collect();
    form(page, part, &fields)
}

#[cfg(test)]
mod tests {
    use quietpin_core::plan::{Load, Output, Plan, SpeedRelay};

    use super::*;

    /// A field that no question compares would be drawn as it was before the last letter.
    #[test]
    fn an_edit_of_any_field_draws_its_question_anew() {
        let plan = Plan {
            outputs: vec![Output::default()],
            loads: vec![Load::default()],
            relays: vec![SpeedRelay::default()],
            ..Plan::default()
        };
        for field in fields::all() {
            let record = field.path.split('.').next().unwrap_or_default();
            let mut edited = plan.clone();
            assert!(edited.set(&field.path.replace('#', "0"), "typed"), "{}", field.path);
            let asking = ALL.iter().find(|question| question.asks.contains(&record));
            let is_same = asking.map(|_| plan.is_same_in(&edited, record));
            assert_eq!(is_same, Some(false), "{}", field.path);
        }
    }
}
