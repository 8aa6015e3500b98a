//! The questions, in the order in which a fitter meets them. Every one is drawn alike: the question, its
//! answers, the fields they rest on.

mod bus;
mod coils;
mod conditions;
mod controller;
mod cranking;
mod feeds;
mod firing;
mod injectors;
mod outputs;
mod pins;
mod relays;
mod sensors;
mod standing;
mod trigger;
mod wires;

use std::{ops::Bound, rc::Rc};

use quietpin_core::{
    fields,
    finding::Finding,
    questions::{self, Question},
    read::{FieldState, State as Stands},
    report::{Answer, Report, Section},
    schema::{Part, Place, Tier},
};

use crate::{
    cards::{Block, Card},
    components::{Drawn, FieldPlace, FieldProps, Page, Told, answer_view, field_view, fold, parts},
    element::{View, all, el, nothing},
    state::State,
};

/// All questions, one below the other.
pub(crate) fn all_questions(page: &Page) -> View {
    parts(page, ALL.len(), QUESTION)
}

/// How a question is put: its cards, and the parts of the plan whose fields it asks for.
pub(crate) struct Asked {
    /// The name of its section in the report.
    pub(crate) id: &'static str,
    parts: &'static [Part],
    cards: fn(&State) -> Vec<Card>,
}

const fn asked(question: &Question, cards: fn(&State) -> Vec<Card>) -> Asked {
    Asked { id: question.id, parts: question.parts, cards }
}

/// Every question, in the order in which a fitter meets them.
pub(crate) const ALL: [Asked; 13] = [
    asked(&questions::firing::QUESTION, firing::cards),
    asked(&questions::injectors::QUESTION, injectors::cards),
    asked(&questions::outputs::QUESTION, outputs::cards),
    asked(&questions::pins::QUESTION, pins::cards),
    asked(&questions::trigger::QUESTION, trigger::cards),
    asked(&questions::sensors::QUESTION, sensors::cards),
    asked(&questions::cranking::QUESTION, cranking::cards),
    asked(&questions::coils::QUESTION, coils::cards),
    asked(&questions::feeds::QUESTION, feeds::cards),
    asked(&questions::standing::QUESTION, standing::cards),
    asked(&questions::bus::QUESTION, bus::cards),
    asked(&questions::wires::QUESTION, wires::cards),
    // what all of them rest on
    Asked { id: CONDITIONS, parts: conditions::PARTS, cards: conditions::cards },
];

/// What is asked for all questions alike.
const CONDITIONS: &str = "conditions";

/// The cards of all questions, by the name of each.
pub(crate) fn all_cards(state: &State) -> Vec<(&'static str, Vec<Card>)> {
    ALL.iter().map(|it| (it.id, (it.cards)(state))).collect()
}

/// The question in the words of a fitter.
pub(crate) fn question_of(report: &Report, id: &str) -> String {
    section(report, id).map_or_else(
        || "Battery voltages and temperatures".to_owned(),
        |it| it.question.text.clone(),
    )
}

/// What a question is called in a word.
pub(crate) fn name_of(id: &str) -> &'static str {
    questions::ALL.iter().find(|it| it.id == id).map_or("Battery", |it| it.name)
}

/// Whether a question is told on its own card first, which lists the others.
pub(crate) fn has_overview(id: &str) -> bool {
    id == questions::outputs::QUESTION.id || id == questions::sensors::QUESTION.id
}

const QUESTION: Drawn = Drawn {
    draw: |page, at| {
        let Some(question) = ALL.get(at) else { return nothing() };
        let cards = (question.cards)(&page.state);
        let title = format!("title-{}", question.id);
        el!("section", "id" = format!("at-{}", question.id), "class" = "question", "tabindex" = "-1",
            "aria-labelledby" = &title;
            el!("h2", "id" = &title; question_of(&page.state.report, question.id)),
            all(cards.iter().map(|card| {
                let is_named = cards.len() > 1 && card.answers.iter().all(|it| it.title.is_none());
                el!("div", "class" = "card", "id" = format!("card-{}", card.key);
                    is_named.then(|| el!("h3"; &card.title)),
                    asks(page, card),
                    answers(page, card, &[], true),
                )
            })),
        )
    },
    is_same: |one, other, at| {
        ALL.get(at).is_some_and(|question| {
            // the controller is saved under the plan's name
            one.plan.name == other.plan.name
                && one.typing == other.typing
                && one.plan.left_over() == other.plan.left_over()
                && question.parts.iter().all(|part| one.plan.is_same_in(&other.plan, *part))
                && same_answers(
                    one,
                    answers_in(&one.report, question.id),
                    answers_in(&other.report, question.id),
                )
                && question.parts.iter().all(|part| same_fields(one, other, part.name()))
        })
    },
};

/// What a card asks.
pub(crate) fn asks(page: &Page, card: &Card) -> View {
    el!("div", "class" = "fields"; all(card.blocks.iter().map(|it| block(page, it))))
}

/// What a card answers, and what was found there; `is_titled` where the card's own title does not stand above it.
pub(crate) fn answers(page: &Page, card: &Card, found: &[Rc<Finding>], is_titled: bool) -> View {
    let has_titles = is_titled || card.answers.len() > 1;
    let mut here = page.state.answers.there().map(|it| (it.found_here)(page, found, card));
    // with the answer that matters most; where there is none, alone
    let leading = card.worst().map(|it| it.subject.clone());
    let mut warned = card.warned.clone();
    let answers = card.answers.iter().map(|it| {
        let told = Told { is_titled: has_titles, warned: &warned, found };
        let here = if leading.as_ref() == Some(&it.subject) { here.take() } else { None };
        let view = answer_view(page, it, &told, here);
        warned.extend(it.cautions.iter().map(|it| it.text.clone()));
        view
    });
    let answers = all(answers);
    el!("div", "class" = "answers"; answers, here)
}

fn block(page: &Page, block: &Block) -> View {
    match block {
        Block::Form(places) => form(page, places, nothing()),
        Block::Around(places, middle) => {
            form(page, places, all(middle.iter().map(|it| self::block(page, it))))
        }
        Block::Also(places) => all(places.iter().map(|it| field_at(page, *it, FieldPlace::Also))),
        Block::Rows(list, label) => row_form(page, *list, label),
        Block::Fold { class, summary, is_wanted, blocks } => fold(
            class,
            summary.clone(),
            *is_wanted,
            all(blocks.iter().map(|it| self::block(page, it))),
        ),
        Block::Made(make, at) => make(page, *at),
    }
}

/// How many entries of a list the report speaks of.
fn length(report: &Report, list: Place) -> usize {
    let pattern = list.pattern();
    let start = pattern.trim_end_matches('#');
    let number = |path: &String| path.strip_prefix(start)?.parse::<usize>().ok();
    report.fields.keys().filter_map(number).max().map_or(0, |last| last + 1)
}

/// A field for each entry of a list that the report speaks of; `#` in what it is called stands for its number.
fn row_form(page: &Page, list: Place, what: &str) -> View {
    let field = |at: usize| {
        let label = what.replace('#', &(at + 1).to_string());
        field_view(&FieldProps {
            path: list.in_cell(at).path(),
            page,
            label: Some(label),
            place: FieldPlace::Home,
        })
    };
    el!("div", "class" = "row-form"; all((0..length(&page.state.report, list)).map(field)))
}

/// Most is handed on from one report to the next, and need not be looked at.
fn same_answers(state: &State, one: &[Rc<Answer>], other: &[Rc<Answer>]) -> bool {
    let is_alike = |(one, other): (&Rc<Answer>, &Rc<Answer>)| {
        Rc::ptr_eq(one, other)
            || state.answers.there().is_some_and(|answering| (answering.is_alike)(one, other))
    };
    one.len() == other.len() && one.iter().zip(other).all(is_alike)
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

fn answers_in<'a>(report: &'a Report, id: &str) -> &'a [Rc<Answer>] {
    section(report, id).map(|section| section.answers.as_slice()).unwrap_or_default()
}

fn section<'a>(report: &'a Report, id: &str) -> Option<&'a Section> {
    report.sections.iter().find(|section| section.id == id)
}

/// The fields of a record: those asked first, then the others, the rare ones folded away.
fn form(page: &Page, fields: &[Place], middle: View) -> View {
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
    // on which output it is may be asked of the page
    let may_wait = |place: &Place| place.field().name == fields::loads::OUTPUT.place().field().name;
    let goes_on =
        in_order.clone().filter(tier(Tier::First)).all(|it| answered(&it) || may_wait(&it))
            || in_order.clone().filter(|it| it.field().tier != Tier::First).any(|it| typed(&it));
    // where there is nothing else to type, it is not hidden
    let is_all = in_order.clone().all(|it| it.field().tier == Tier::Rare);
    let is_wrong =
        is_all || rare.iter().any(|it| stands(it).is_some_and(|it| it.problem.is_some()));
    let some = |fields: Option<View>| el!("div", "class" = "some"; fields);
    let has_rare = goes_on && !rare.is_empty();
    let more =
        || fold("rare", "More details", is_wrong, some(Some(all(rare.into_iter().map(view)))));
    // in places of their own, so that none is made anew when another comes or goes
    el!("div", "class" = "form";
        some(Some(all(first))),
        middle,
        some(goes_on.then(|| all(usual))),
        has_rare.then(more),
    )
}

fn field_at(page: &Page, place: Place, at: FieldPlace) -> View {
    field_view(&FieldProps { path: place.path(), page, label: None, place: at })
}

/// The fields of a part of the plan that is no list; what the first spark waits for is asked with the wheels.
fn of_part(part: Part) -> Block {
    Block::Form(of_record(part))
}

fn of_record(part: Part) -> Vec<Place> {
    let is_here = |it: &Place| !it.field().is_list && !trigger::is_of_wheels(*it);
    part.places().filter(is_here).collect()
}

#[cfg(test)]
mod tests {
    use quietpin_core::plan::Plan;

    use quietpin_core::schema;

    use std::rc::Rc;

    use yew::Reducible;

    use crate::{
        cards::place_of,
        state::{Action, keep::tests::KEEP},
    };

    use super::*;

    fn answered(plan: Plan) -> Rc<State> {
        let state = Rc::new(State::new("1".into(), plan, KEEP));
        state.reduce(Action::Answer(&crate::answering::ALL))
    }

    /// Where a card's address led to another, the bar would go round.
    #[test]
    fn each_card_is_what_its_own_address_leads_to() {
        let plans = [Plan::default(), quietpin_core::demo(), quietpin_core::whole_car()];
        let early = plans.iter().map(|it| all_cards(&State::new("1".into(), it.clone(), KEEP)));
        let late = plans.iter().map(|it| all_cards(&answered(it.clone())));
        for cards in early.chain(late) {
            for (question, (_, own)) in cards.iter().enumerate() {
                for (at, card) in own.iter().enumerate() {
                    assert_eq!(place_of(&cards, &card.key), Some((question, at)), "{}", card.key);
                }
            }
        }
    }

    #[test]
    fn what_is_gone_leads_to_what_is_left() {
        let cards = all_cards(&answered(quietpin_core::demo()));
        let key = |path: &str| {
            let (question, at) = place_of(&cards, path)?;
            Some(cards[question].1[at].key.as_str())
        };
        assert_eq!(key("loads.0.kind"), Some("loads.0"));
        assert_eq!(key("loads.7.kind"), Some("outputs"), "there are no eight loads");
        assert_eq!(key("outputs.0.stage"), Some("loads.0"), "a load and its output are one card");
        assert_eq!(key("channels.coils_wired.1"), Some("channels.coils_wired"));
        assert_eq!(key("nothing"), None);
    }

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
