use quietpin_core::{
    fields::{engine, loads},
    questions,
    report::Section,
};

use super::{keep::tests::KEEP, *};

const ANSWER: Action = Action::Answer(&crate::answering::ALL);
const DETAIL: Action = Action::Detail(&crate::answering::DETAILS);

fn unanswered(actions: Vec<Action>) -> Rc<State> {
    let start = Rc::new(State::new("1".into(), Plan::default(), KEEP));
    actions.into_iter().fold(start, Reducible::reduce)
}

fn after(actions: Vec<Action>) -> Rc<State> {
    tried(&unanswered(
        [ANSWER, DETAIL].into_iter().chain(actions).chain([Action::Follow]).collect(),
    ))
}

/// The state after its remedies were tried, one by one.
fn tried(state: &Rc<State>) -> Rc<State> {
    let Some(mut trials) = state.trials() else { return Rc::clone(state) };
    loop {
        if let Some(tried) = trials.further() {
            return Rc::clone(state).reduce(tried);
        }
    }
}

#[test]
fn what_is_typed_before_there_are_answers_is_answered_when_they_come() {
    let typed = || typed("engine.cylinders", "x");
    let early = unanswered(vec![typed(), Action::Miss, Action::Await]);
    assert_eq!(early.plan.text(engine::CYLINDERS), "x");
    assert_eq!(*early.report, Report::pending(&early.plan), "nothing answers yet");
    let late = unanswered(vec![typed(), ANSWER]);
    let detailed = late.reduce(DETAIL);
    assert_eq!(detailed.report, after(vec![typed()]).report);
}

#[test]
fn verdicts_and_findings_are_the_same_before_the_details_are_there() {
    let plan = Box::new(quietpin_core::demo());
    let early = unanswered(vec![ANSWER, Action::Open("2".into(), plan)]);
    let late = Rc::clone(&early).reduce(DETAIL);
    // other ways to connect a load are searched with the details
    let named = |state: &State| -> Vec<_> {
        let findings = state.report.findings.iter();
        findings.map(|it| (it.severity, it.subject.clone(), it.message.clone())).collect()
    };
    assert_eq!(named(&early), named(&late));
    // nobody waits for wires and pins: what answers them comes with the details
    let unawaited = [questions::wires::QUESTION.id, questions::pins::QUESTION.id];
    let is_awaited = |it: &&Section| !unawaited.contains(&it.id);
    let answers = |state: &State| -> Vec<_> {
        state.report.sections.iter().filter(is_awaited).flat_map(|it| it.answers.clone()).collect()
    };
    assert!(answers(&late).iter().any(|it| !it.figures.is_empty()), "details are shown");
    for (early, late) in answers(&early).iter().zip(answers(&late)) {
        assert!(early.figures.is_empty() && early.tables.is_empty(), "{}", early.subject);
        assert_eq!(early.verdict, late.verdict);
        assert_eq!(early.why, late.why);
        let is_kept = early.to_do.iter().all(|it| late.to_do.contains(it));
        assert!(is_kept, "{}: what is to be done stays", early.subject);
    }
}

#[test]
fn a_letter_is_drawn_before_it_is_answered() {
    let state = after(vec![Action::Go("injectors".into())]);
    let before = Rc::clone(&state.report);
    let drawn = state.reduce(typed("injectors.resistance", "2.4 ohm"));
    assert_eq!(drawn.plan.get("injectors.resistance"), Some("2.4 ohm"), "it is in the plan");
    assert!(drawn.is_due() && Rc::ptr_eq(&before, &drawn.report), "and not answered yet");
    let answered = drawn.reduce(Action::Follow);
    assert!(!answered.is_due());
    assert_eq!(answered.lead.as_deref(), Some("injectors"), "the answer that it changed leads");
    let again = Rc::clone(&answered).reduce(Action::Follow);
    assert!(Rc::ptr_eq(&answered.report, &again.report), "there is nothing to answer twice");
}

#[test]
fn what_is_wrong_is_told_once_the_hand_rests_or_the_field_is_left() {
    let path = || "injectors.resistance".to_owned();
    let wrong = |state: &State| {
        let report = if state.typing.is_some() { &state.told } else { &state.report };
        report.fields.get(&path()).is_some_and(|it| it.problem.is_some())
    };
    let state = after(vec![typed(&path(), "x")]);
    assert!(!wrong(&state), "the letter is hardly typed");
    let other = Rc::clone(&state).reduce(Action::Settle(Some("engine.order".into())));
    assert!(!wrong(&other), "another field was left");
    assert!(wrong(&state.reduce(Action::Settle(Some(path())))), "it is told of");
}

#[test]
fn an_output_that_is_named_on_the_card_of_a_load_is_the_one_that_it_is_on() {
    let new = || vec![Action::Add(Part::Loads), Action::Go("loads.0".into())];
    let on_card =
        after([new(), vec![typed("outputs.0.name", "A"), typed("outputs.0.name", "A1")]].concat());
    assert_eq!(on_card.plan.text(loads::OUTPUT.at(0)), "A1");
    let elsewhere = after(vec![Action::Add(Part::Loads), typed("outputs.0.name", "A1")]);
    assert_eq!(elsewhere.plan.text(loads::OUTPUT.at(0)), "", "nobody said that it is on this one");
}

#[test]
fn a_plan_that_is_opened_is_answered_at_once() {
    let plan = Box::new(quietpin_core::demo());
    let opened = after(vec![Action::Open("2".into(), plan.clone())]);
    assert_eq!(*opened.report, quietpin_core::report::report(&plan));
}

fn typed(path: &str, text: &str) -> Action {
    Action::Type(path.into(), text.into())
}

#[test]
fn what_is_typed_is_in_the_plan_and_the_report_follows() {
    let blank = after(vec![]);
    let state = after(vec![typed("engine.cylinders", "x")]);
    assert_eq!(state.plan.text(engine::CYLINDERS), "x");
    assert_ne!(state.report, blank.report, "the report did not follow");
}

#[test]
fn fields_are_emptied_together_and_come_back_together() {
    let paths = || vec!["channels.coils_wired.0".into(), "channels.coils_done".into()];
    let state = after(vec![
        typed("channels.coils_wired.0", "3"),
        typed("channels.coils_done", "swap1_3"),
        Action::Clear(paths()),
    ]);
    assert!(paths().iter().all(|path: &String| state.plan.get(path) == Some("")));
    let state = state.reduce(Action::Undo);
    assert_eq!(state.plan.get("channels.coils_wired.0"), Some("3"));
    assert_eq!(state.plan.get("channels.coils_done"), Some("swap1_3"));
}

#[test]
fn letters_typed_in_one_field_are_taken_back_together() {
    let state = after(vec![
        typed("engine.order", "1"),
        typed("engine.order", "1-"),
        typed("engine.order", "1-2"),
        typed("engine.kind", "two-stroke"),
        Action::Undo,
        Action::Undo,
    ]);
    assert_eq!(*state.plan, Plan::default());
    assert!(!state.can_undo(), "nothing is left to take back");
    assert!(state.can_redo(), "it can be made again");
}

#[test]
fn what_was_taken_back_can_be_made_again_until_something_else_is_typed() {
    let state = after(vec![typed("engine.order", "1-2"), Action::Undo, Action::Redo]);
    assert_eq!(state.plan.text(engine::ORDER), "1-2");
    let state =
        after(vec![typed("engine.order", "1-2"), Action::Undo, typed("name", "a"), Action::Redo]);
    assert_eq!(state.plan.text(engine::ORDER), "", "a new change ends the old future");
}

#[test]
fn a_removed_entry_comes_back() {
    let state = after(vec![
        Action::Add(Part::Loads),
        typed("loads.0.name", "fan"),
        Action::Remove(Part::Loads, 0),
        Action::Remove(Part::Loads, 7),
        Action::Undo,
    ]);
    assert_eq!(state.plan.text(loads::NAME.at(0)), "fan");
}

#[test]
fn a_load_stays_on_its_output_when_that_is_renamed() {
    let state = after(vec![
        Action::Add(Part::Loads),
        typed("outputs.0.name", "A1"),
        typed("loads.0.output", "A1"),
        typed("outputs.0.name", ""),
        typed("outputs.0.name", "P"),
        typed("outputs.0.name", "P8"),
    ]);
    assert_eq!(state.plan.text(loads::OUTPUT.at(0)), "P8");
}

#[test]
fn a_load_stays_on_its_output_when_more_are_described_with_it() {
    let on = |names: &[&str]| {
        let name = names.iter().map(|name| typed("outputs.0.name", name));
        let start = [
            Action::Add(Part::Loads),
            typed("outputs.0.name", "D1"),
            typed("loads.0.output", "D1"),
            typed("name", "another edit"),
        ];
        let state = after(start.into_iter().chain(name).collect());
        state.plan.text(loads::OUTPUT.at(0)).to_owned()
    };
    assert_eq!(on(&["D1 t", "D1 to", "D1 to D", "D1 to D8"]), "D1");
    assert_eq!(on(&["", "H1 to H4"]), "H1", "it is the first of them");
    assert_eq!(on(&["D1 to D8", "", "H1"]), "H1");
}

#[test]
fn each_plan_has_what_can_be_taken_back_in_it_and_keeps_it_while_another_is_open() {
    let state = after(vec![
        typed("name", "one"),
        Action::Open("2".into(), Box::new(Plan::named("two"))),
        Action::Undo,
    ]);
    assert_eq!((state.key.as_str(), state.plan.name.as_str()), ("2", "two"));
    let state = state.reduce(Action::Open("1".into(), Box::new(Plan::named("one"))));
    let state = state.reduce(Action::Undo);
    assert_eq!((state.key.as_str(), state.plan.name.as_str()), ("1", ""));
}

#[test]
fn what_is_taken_back_or_made_again_is_told() {
    let start = || vec![typed("injectors.resistance", "2.4 ohm"), Action::Undo];
    let told = |state: &State| state.done.clone().map(|it| (it.text, it.is_taken_back));
    let back = after(start());
    let text = "Undone: Resistance of one injector at 20 °C, 2.4 ohm → blank".to_owned();
    assert_eq!(told(&back), Some((text, true)));
    let again = Rc::clone(&back).reduce(Action::Redo);
    let text = "Redone: Resistance of one injector at 20 °C, blank → 2.4 ohm".to_owned();
    assert_eq!(told(&again), Some((text, false)));
    let other = again.reduce(typed("engine.cylinders", "4"));
    assert_eq!(told(&other), None, "it is about the last press alone");
}

#[test]
fn what_one_press_changes_is_told() {
    let state = after(vec![
        Action::Add(Part::Loads),
        typed("loads.0.name", "fan"),
        Action::Remove(Part::Loads, 0),
    ]);
    let text = state.done.as_ref().map(|it| it.text.as_str());
    assert_eq!(text, Some("Changed: fan removed"));
}

#[test]
fn the_same_notice_is_not_said_twice() {
    let notice = Notice { text: "full".into(), kept: None };
    let state = after(vec![Action::Say(notice.clone()), Action::Say(notice)]);
    assert_eq!(state.notices.len(), 1);
}

#[test]
fn a_list_grows_to_its_limit_and_no_further() {
    let adds = std::iter::repeat_n(Action::Add(Part::Relays), MOST_ENTRIES);
    let full = unanswered(adds.collect());
    assert_eq!((full.plan.count(Part::Relays), full.notices.len()), (MOST_ENTRIES, 0));
    let more = full.reduce(Action::AddRelay(Purpose::Coils));
    assert_eq!((more.plan.count(Part::Relays), more.notices.len()), (MOST_ENTRIES, 1));
}

#[test]
fn what_is_more_than_a_plan_holds_is_not_taken_and_told() {
    let state = unanswered(vec![
        typed("engine.order", "1-2"),
        typed("engine.order", &"9".repeat(1_000_000)),
    ]);
    assert_eq!(state.plan.text(engine::ORDER), "1-2");
    assert_eq!(state.refused, (1, "engine.order".into()));
    let [notice] = state.notices.as_slice() else { panic!("{:?}", state.notices) };
    assert!(notice.text.contains("was not kept"), "{}", notice.text);
}

#[test]
fn a_plan_that_was_not_answered_to_the_end_is_answered_when_that_is_asked_for() {
    let marked = Keep { is_marked: |key| key == "2", ..KEEP };
    let start = Rc::new(State::new("1".into(), Plan::default(), marked));
    let open = Action::Open("2".into(), Box::new(quietpin_core::demo()));
    let held = [ANSWER, DETAIL, open].into_iter().fold(start, Reducible::reduce);
    assert!(held.is_held, "it is marked");
    assert_eq!(*held.report, Report::pending(&held.plan));
    let held = tried(&held.reduce(typed("engine.order", "1-2")));
    assert_eq!(*held.report, Report::pending(&held.plan), "an edit does not answer it either");
    assert_eq!(held.plan.text(engine::ORDER), "1-2");
    let answered = held.reduce(Action::AnswerNow);
    assert_ne!(*answered.report, Report::pending(&answered.plan));
}

#[test]
fn a_plan_is_marked_while_it_is_answered_and_not_after() {
    thread_local! {
        static MARKS: RefCell<Vec<(String, bool)>> = const { RefCell::new(Vec::new()) };
    }
    let keep = Keep {
        mark: |key, is_answering| {
            MARKS.with_borrow_mut(|marks| marks.push((key.to_owned(), is_answering)));
        },
        ..KEEP
    };
    let start = Rc::new(State::new("1".into(), Plan::default(), keep));
    tried(&[ANSWER, DETAIL].into_iter().fold(start, Reducible::reduce));
    MARKS.with_borrow(|marks| {
        assert_eq!(marks.len(), 6, "answered, answered with details, tried");
        for pair in marks.chunks(2) {
            assert_eq!(pair, [("1".to_owned(), true), ("1".to_owned(), false)]);
        }
    });
}
