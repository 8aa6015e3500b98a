//! Two pages with one plan, and the browser between them.

use std::{cell::RefCell, collections::BTreeMap};

use quietpin_core::{
    fields::{engine, injectors},
    plan,
    report::Report,
    schema::Part,
};
use yew::Reducible;

use super::*;
use crate::{
    answering::{ALL, Answering},
    state::{Action, copies::text_of},
};

#[derive(Default)]
struct Storage {
    values: BTreeMap<String, String>,
    writes: Vec<String>,
    is_full: bool,
    clock: u64,
}

thread_local! {
    static STORAGE: RefCell<Storage> = RefCell::default();
}

pub(crate) const KEEP: Keep = Keep {
    read: |key| STORAGE.with_borrow(|it| it.values.get(key).cloned()),
    write: |key, value| {
        STORAGE.with_borrow_mut(|it| {
            if !it.is_full {
                it.values.insert(key.to_owned(), value.to_owned());
                it.writes.push(key.to_owned());
            }
            !it.is_full
        })
    },
    open: |_| {},
    fresh: || "fresh".into(),
    now: || {
        STORAGE.with_borrow_mut(|it| {
            it.clock += 10;
            it.clock
        })
    },
    mark: |_, _| {},
    is_marked: |_| false,
};

fn kept(key: &str) -> Plan {
    let value = (KEEP.read)(key).expect("something is kept");
    plan::parse(text_of(&value)).expect("a plan is kept")
}

fn writes() -> usize {
    STORAGE.with_borrow(|it| it.writes.len())
}

/// Hides what was kept since from a page: it is told only later.
fn keep_anew(key: &str, value: Option<String>) {
    STORAGE.with_borrow_mut(|it| match value {
        Some(value) => drop(it.values.insert(key.to_owned(), value)),
        None => drop(it.values.remove(key)),
    });
}

/// All of it, without the work of a report.
const ANSWERING: Answering = Answering { report: |_, plan| Report::pending(plan), ..ALL };

fn page(plan: &Plan) -> Rc<State> {
    let page = State::new("1".into(), plan.clone(), KEEP);
    let answered = Rc::new(page).reduce(Action::Answer(&ANSWERING));
    answered.reduce(Action::Detail(&crate::answering::DETAILS))
}

fn typed(page: &Rc<State>, path: &str, text: &str) -> Rc<State> {
    Rc::clone(page).reduce(Action::Type(path.into(), text.into()))
}

fn met(page: &Rc<State>) -> Rc<State> {
    Rc::clone(page).reduce(Action::Meet)
}

/// Two pages that opened the same plan.
fn two() -> (Rc<State>, Rc<State>) {
    let one = typed(&page(&Plan::default()), "name", "car");
    let other = page(&kept("1"));
    (one, other)
}

fn same(one: &State, other: &State) -> bool {
    with_version(&one.plan, 0) == with_version(&other.plan, 0)
}

fn with_version(plan: &Plan, version: u32) -> Plan {
    let mut plan = plan.clone();
    plan.quietpin = version;
    plan
}

#[test]
fn every_change_is_kept_before_it_is_drawn() {
    let one = typed(&page(&Plan::default()), "engine.order", "1-2");
    assert_eq!(kept("1").text(engine::ORDER), "1-2");
    assert_eq!(writes(), 1);
    let one = typed(&one, "engine.order", "1-2").reduce(Action::Dismiss);
    assert_eq!(writes(), 1, "what changes nothing is not kept again");
    one.reduce(Action::Undo);
    assert_eq!(kept("1").text(engine::ORDER), "", "a plan that was made blank is kept");
}

#[test]
fn a_browser_that_keeps_nothing_is_told_of_once() {
    STORAGE.with_borrow_mut(|it| it.is_full = true);
    let one = typed(&page(&Plan::default()), "engine.order", "1");
    let one = typed(&one, "engine.order", "1-2");
    assert_eq!(one.notices.len(), 1, "{:?}", one.notices);
    assert_eq!(one.plan.text(engine::ORDER), "1-2", "what was typed is there all the same");
    assert_eq!(one.reduce(Action::Dismiss).notices.len(), 0, "it can be put away");
}

#[test]
fn what_is_typed_on_one_page_is_on_the_other_before_it_writes() {
    let (one, other) = two();
    typed(&one, "engine.order", "1-2");
    let other = typed(&other, "injectors.resistance", "2 ohm");
    assert_eq!(other.plan.text(engine::ORDER), "1-2");
    assert_eq!(kept("1").text(engine::ORDER), "1-2");
    assert_eq!(kept("1").text(injectors::RESISTANCE), "2 ohm");
    assert_eq!(other.notices, []);
}

#[test]
fn what_both_type_at_once_is_on_both_after_they_met() {
    let (one, other) = two();
    let before = (KEEP.read)("1");
    let one = typed(&one, "engine.order", "1-2");
    // the other page has not been told yet
    keep_anew("1", before);
    let other = typed(&other, "injectors.resistance", "2 ohm");
    let one = met(&one);
    let other = met(&other);
    for it in [&one, &other] {
        assert_eq!(it.plan.text(engine::ORDER), "1-2");
        assert_eq!(it.plan.text(injectors::RESISTANCE), "2 ohm");
        assert_eq!(it.notices, []);
    }
    let settled = writes();
    met(&met(&one));
    met(&met(&other));
    assert_eq!(writes(), settled, "they do not go on writing");
}

#[test]
fn of_one_field_that_both_change_at_once_the_last_text_stays_on_both_and_the_other_is_told() {
    let (one, other) = two();
    let before = (KEEP.read)("1");
    let one = typed(&one, "engine.order", "1-2");
    keep_anew("1", before);
    let other = typed(&other, "engine.order", "2-1");
    let (one, other) = (met(&one), met(&other));
    assert!(same(&one, &other), "both show the same");
    assert_eq!(kept("1").text(engine::ORDER), "2-1");
    let [notice] = one.notices.as_slice() else { panic!("{:?}", one.notices) };
    assert!(notice.text.contains("2-1 stays; 1-2 was typed"), "{}", notice.text);
}

#[test]
fn what_is_taken_back_is_ones_own() {
    let (one, other) = two();
    let one = typed(&one, "engine.order", "1-2");
    let other = typed(&met(&other), "injectors.resistance", "2 ohm");
    let one = met(&one).reduce(Action::Undo);
    assert_eq!(one.plan.text(engine::ORDER), "");
    assert_eq!(one.plan.text(injectors::RESISTANCE), "2 ohm", "it was typed on the other page");
    assert_eq!(met(&other).plan.text(engine::ORDER), "");
}

#[test]
fn a_plan_that_another_page_removes_is_told_and_kept_again_when_it_is_typed_into() {
    let (one, _) = two();
    keep_anew("1", None);
    let one = met(&one);
    assert_eq!(one.notices.len(), 1, "{:?}", one.notices);
    assert_eq!(met(&one).notices.len(), 1, "once");
    typed(&one, "engine.order", "1-2");
    assert_eq!(kept("1").text(engine::ORDER), "1-2");
}

#[test]
fn what_this_page_cannot_read_is_not_written_over() {
    let (one, _) = two();
    let newer = "{\"quietpin\": 99}".to_owned();
    keep_anew("1", Some(newer.clone()));
    let one = typed(&one, "engine.order", "1-2");
    assert_eq!((KEEP.read)("1"), Some(newer));
    assert_eq!(one.key, "fresh");
    assert_eq!(kept("fresh").text(engine::ORDER), "1-2");
    assert_eq!(one.notices.len(), 1, "{:?}", one.notices);
}

#[test]
fn before_there_is_what_makes_two_plans_one_they_are_kept_beside_each_other() {
    let (one, _) = two();
    let early = State::new("1".into(), kept("1"), KEEP);
    let one = typed(&one, "engine.order", "1-2");
    let early = typed(&Rc::new(early), "engine.order", "2-1");
    assert_eq!(kept("1").text(engine::ORDER), "1-2");
    assert_eq!((early.key.as_str(), kept("fresh").text(engine::ORDER)), ("fresh", "2-1"));
    let unread = Rc::new(State::new("1".into(), Plan::default(), KEEP)).reduce(Action::Meet);
    assert_eq!((unread.key.as_str(), unread.notices.len()), ("1", 0), "it waits where it can");
    assert_eq!(one.notices, []);
}

#[test]
fn a_plan_that_was_kept_by_an_earlier_version_opens_and_is_met() {
    keep_anew("1", Some(plan::write(&Plan::named("old"))));
    let (one, other) = (page(&kept("1")), page(&kept("1")));
    typed(&one, "engine.order", "1-2");
    let other = typed(&other, "injectors.resistance", "2 ohm");
    assert_eq!(other.plan.text(engine::ORDER), "1-2");
    assert_eq!(other.notices, []);
}

mod laws {
    use proptest::{collection, prelude::*, sample::select};

    use super::*;

    const PATHS: &[&str] = &[
        "name",
        "engine.order",
        "injectors.resistance",
        "loads.0.name",
        "loads.1.name",
        "loads.0.resistance",
        "channels.coils_wired.1",
    ];

    /// What is done on one of the pages; or it is told what the other has kept.
    fn step() -> impl Strategy<Value = (usize, bool, Option<Action>)> {
        let text = prop_oneof![
            6 => "[a-z\u{1}\"Ω]{0,3}",
            1 => select(&[300_000_usize, 900_000][..]).prop_map(|it| "\"".repeat(it)),
        ];
        let action = prop_oneof![
            6 => (select(PATHS), text).prop_map(|(path, text)| Action::Type(path.into(), text)),
            2 => Just(Action::Add(Part::Loads)),
            1 => (0_usize..3).prop_map(|at| Action::Remove(Part::Loads, at)),
            1 => Just(Action::Undo),
            1 => Just(Action::Redo),
        ];
        (0..2_usize, any::<bool>(), prop::option::weighted(0.7, action))
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(200) })]

        #[test]
        fn pages_that_met_show_the_same_and_what_they_keep_can_be_read(
            steps in collection::vec(step(), 1..14),
        ) {
            STORAGE.set(Storage::default());
            let (one, other) = two();
            let mut pages = [one, other];
            let mut seen = [(KEEP.read)("1"), (KEEP.read)("1")];
            for (at, is_late, action) in steps {
                let (there, before) = ((KEEP.read)("1"), writes());
                if is_late {
                    // the page has not been told yet of what is there
                    keep_anew("1", seen[at].clone());
                }
                pages[at] = Rc::clone(&pages[at]).reduce(action.unwrap_or(Action::Meet));
                seen[at] = (KEEP.read)("1");
                if writes() == before {
                    keep_anew("1", there);
                }
                let there = (KEEP.read)("1").expect("it is kept");
                prop_assert!(plan::parse(text_of(&there)).is_ok(), "it can't be read again");
            }
            for at in [0, 1, 0, 1] {
                pages[at] = met(&pages[at]);
            }
            prop_assert!(same(&pages[0], &pages[1]));
            prop_assert_eq!(with_version(&kept("1"), 0), with_version(&pages[0].plan, 0));
        }
    }
}
