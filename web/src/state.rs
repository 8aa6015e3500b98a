//! The state of the page: pure, so that it is tested without a browser.

mod history;
mod lead;

use std::{cell::RefCell, rc::Rc};

use history::History;
use quietpin_core::{
    fields::{
        outputs,
        relays::{self, Purpose},
    },
    message::Edit,
    plan::{Plan, names_in},
    report::{Memory, Report},
    schema::{self, Choice as _, Kind, Part, Place},
};
use yew::Reducible;

use crate::{
    address::record,
    answering::{Answering, Details},
    words::REFUSED,
};

/// Something the page has to say that is not in the report.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Notice {
    /// What happened, and what it means.
    pub text: String,
    /// A text that could not be read, to be saved as a file.
    pub kept: Option<String>,
}

/// What the fitter, or the browser, did.
#[derive(Clone, Debug)]
pub enum Action {
    /// Typed into a field.
    Type(String, String),
    /// Emptied these fields.
    Clear(Vec<String>),
    /// Added an entry to a list.
    Add(Part),
    /// Added a relay that feeds this.
    AddRelay(Purpose),
    /// Dropped what has no place in the plan.
    DropLeftOver,
    /// Took an entry off a list.
    Remove(Part, usize),
    /// Took the outputs of this description in place of the plan's.
    Take(Box<Plan>),
    /// Went to this address on the page.
    Go(String),
    /// Paused, or left the field: what is wrong with it is told now.
    Settle,
    /// Paused: time to try the remedies.
    Try,
    /// Did what a remedy says.
    Apply(Vec<Edit>),
    /// Took back the last change.
    Undo,
    /// Made it again.
    Redo,
    /// Opened a plan kept under this key.
    Open(String, Box<Plan>),
    /// The browser has something to say.
    Say(Notice),
    /// Read what was said.
    Dismiss,
    /// Asked for what answers.
    Await,
    /// It came.
    Answer(&'static Answering),
    /// It can't be had.
    Miss,
    /// What shows the details came.
    Detail(&'static Details),
    /// It can't be had.
    MissDetails,
}

/// A part of the program that comes after the form is there.
#[derive(Clone, Copy, Debug)]
pub enum Further<T: 'static> {
    /// On its way.
    Coming,
    /// There, by its functions.
    There(&'static T),
    /// It can't be had: no network, before the page was kept on this device.
    Missed,
}

impl<T> Further<T> {
    /// Its functions, once they are there.
    pub(crate) fn there(self) -> Option<&'static T> {
        if let Self::There(it) = self { Some(it) } else { None }
    }

    /// What was missed is asked for again.
    fn await_again(&mut self) {
        if matches!(self, Self::Missed) {
            *self = Self::Coming;
        }
    }
}

/// Everything the page shows.
#[derive(Clone, Debug)]
pub struct State {
    /// The key under which the plan is kept.
    pub key: String,
    /// The plan.
    pub plan: Rc<Plan>,
    /// What follows from it, once there is what answers; every question, unanswered, until then.
    pub report: Rc<Report>,
    /// Whether its remedies were tried: that is done in a pause of the typing.
    pub is_tried: bool,
    /// What answers: once it is there, every change is answered at once.
    pub answers: Further<Answering>,
    /// What shows the details of the answers.
    pub details: Further<Details>,
    /// What the browser has to say.
    pub notices: Vec<Notice>,
    /// The address of what is on the screen.
    pub address: String,
    /// The field that is being typed into: what is wrong with it waits for a pause.
    pub typing: Option<String>,
    /// The plan as it was when one came to this address: what is asked of a field does not change under the hand.
    pub entered: Rc<Plan>,
    /// What the answer is about that was changed last.
    pub lead: Option<String>,
    /// Keeps a plan under its key; false where the browser refuses.
    keep: Keep,
    /// What was answered last.
    memory: Rc<RefCell<Memory>>,
    history: History,
}

/// What keeps a plan.
pub type Keep = fn(&str, &Plan) -> bool;

impl State {
    /// A page with this plan, which `keep` keeps at every change; what answers is still coming.
    pub fn new(key: String, plan: Plan, keep: Keep) -> Self {
        Self {
            key,
            report: Rc::new(Report::pending(&plan)),
            entered: Rc::new(plan.clone()),
            plan: Rc::new(plan),
            is_tried: false,
            answers: Further::Coming,
            details: Further::Coming,
            notices: Vec::new(),
            address: String::new(),
            typing: None,
            lead: None,
            keep,
            memory: Rc::default(),
            history: History::default(),
        }
    }

    /// Whether there is something to take back.
    pub fn can_undo(&self) -> bool {
        self.history.can_undo()
    }

    /// Whether something that was taken back can be made again.
    pub fn can_redo(&self) -> bool {
        self.history.can_redo()
    }

    /// Goes a step through what was changed.
    fn step(&mut self, step: fn(&mut History, &Rc<Plan>) -> Option<Rc<Plan>>) {
        if let Some(plan) = step(&mut self.history, &self.plan) {
            self.show(plan);
        }
    }

    /// Takes what is typed into a field.
    fn type_in(&mut self, path: &str, text: &str) {
        // a name that is emptied and typed anew is one change: the loads follow from its start
        let before = self.history.start(path).unwrap_or_else(|| Rc::clone(&self.plan));
        let address = self.address.clone();
        self.change(path, |plan| {
            begin(plan, path);
            plan.set(path, text);
            if let Some(name) = name_at(path) {
                follow(plan, &before, name);
                hang(plan, &before, name, &address);
            }
        });
    }

    /// Keeps the plan if it is another than `before`. This is done before anything is drawn, and in the same breath as
    /// the change: a page that is closed now has lost nothing.
    fn keep_after(&mut self, before: &Self) {
        let is_same = self.key == before.key && self.plan == before.plan;
        // a blank plan that was never touched is not worth a key
        let is_blank = *self.plan == Plan::default() && !self.can_undo() && !self.can_redo();
        if !is_same && !is_blank && !(self.keep)(&self.key, &self.plan) {
            self.say(Notice { text: REFUSED.into(), kept: None });
        }
    }

    fn say(&mut self, notice: Notice) {
        if !self.notices.contains(&notice) {
            self.notices.push(notice);
        }
    }

    fn show(&mut self, plan: Rc<Plan>) {
        self.plan = plan;
        let before = Rc::clone(&self.report);
        self.answer();
        self.lead = lead::changed(&before, &self.report).or_else(|| self.lead.take());
    }

    /// Answers as if nothing had been answered before, with all details once what makes them is there.
    fn answer_anew(&mut self) {
        let memory = self.details.there().map_or_else(Memory::default, |it| (it.memory)());
        self.memory = Rc::new(RefCell::new(memory));
        self.answer();
    }

    fn answer(&mut self) {
        let plan = &self.plan;
        let Some(answering) = self.answers.there() else {
            self.report = Rc::new(Report::pending(plan));
            return;
        };
        let mut memory = self.memory.borrow_mut();
        let report = (answering.report)(&mut memory, plan);
        self.report = Rc::new(report);
        self.is_tried = false;
    }

    /// Keeps those remedies that hold with the whole plan.
    fn try_remedies(&mut self) {
        if let Some(details) = self.details.there().filter(|_| self.answers.there().is_some()) {
            let report = (*self.report).clone();
            self.report = Rc::new((details.tried)(report, &self.plan, &self.memory.borrow()));
            self.is_tried = true;
        }
    }

    /// Changes the plan, unless the change leaves it as it is.
    fn change(&mut self, place: &str, edit: impl FnOnce(&mut Plan)) {
        let mut plan = (*self.plan).clone();
        edit(&mut plan);
        if plan != *self.plan {
            self.history.remember(place, Rc::clone(&self.plan));
            self.show(Rc::new(plan));
        }
    }
}

/// The coils' relay has its fields on the page before it has a record: it gets one with the first letter that is typed.
fn begin(plan: &mut Plan, path: &str) {
    let place = Place::at_path(path).filter(|it| it.part() == Part::Relays);
    if place.is_some_and(|it| it.record() == plan.count(Part::Relays)) {
        add_relay(plan, Purpose::Coils);
    }
}

fn add_relay(plan: &mut Plan, purpose: Purpose) {
    let at = plan.add(Part::Relays);
    plan.put(relays::PURPOSE.at(at), purpose.choosable().code);
    let name = match purpose {
        Purpose::Coils => "Coil relay",
        Purpose::Injectors => "Injector relay",
        Purpose::Pump | Purpose::AlternatorField | Purpose::Fan => return,
    };
    plan.put(relays::NAME.at(at), name);
}

/// What named an output or a relay before that was renamed, still does.
fn follow(plan: &mut Plan, before: &Plan, name: Place) {
    let names = |plan: &Plan| names_in(plan.text(name));
    let (old, new, there) = (names(before), names(plan), plan.names(name.part()));
    let naming = |place: &Place| place.field().kind == Kind::NameIn(name.part());
    for place in schema::places().filter(naming) {
        for at in 0..plan.count(place.part()) {
            let named = before.text(place.at(at)).trim();
            let Some(nth) = old.iter().position(|it| it == named && !it.is_empty()) else {
                continue;
            };
            // one of several that go by a description keeps its place among them
            let renamed = new.get(nth).filter(|it| !it.is_empty());
            if let Some(renamed) = renamed.filter(|_| !there.iter().any(|it| it == named)) {
                plan.put(place.at(at), renamed);
            } else {
                plan.put(place.at(at), named);
            }
        }
    }
}

/// An output that is named on the card of a load that is on none is the one that this load is on.
fn hang(plan: &mut Plan, before: &Plan, name: Place, address: &str) {
    let Some(place) = Place::at_path(&format!("{}.output", record(address))) else { return };
    let is_on_none = before.text(place).trim().is_empty();
    let is_new = before.text(name).trim().is_empty();
    if name.part() == Part::Outputs && is_on_none && is_new {
        let named = names_in(plan.text(name)).first().cloned().unwrap_or_default();
        plan.put(place, &named);
    }
}

impl Reducible for State {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        let mut state = (*self).clone();
        match action {
            Action::Type(path, text) => {
                state.type_in(&path, &text);
                state.typing = Some(path);
            }
            Action::Go(address) => {
                state.address = address;
                state.entered = Rc::clone(&state.plan);
                (state.typing, state.lead) = (None, None);
            }
            Action::Settle => state.typing = None,
            Action::Clear(paths) => state.change("", |plan| {
                for path in &paths {
                    plan.set(path, "");
                }
            }),
            Action::Add(list) => state.change("", |plan| {
                plan.add(list);
                // a load hangs on an output: the first one brings its own
                if list == Part::Loads && plan.count(Part::Outputs) == 0 {
                    plan.add(Part::Outputs);
                }
            }),
            Action::AddRelay(purpose) => state.change("", |plan| {
                add_relay(plan, purpose);
            }),
            Action::Apply(edits) => {
                let edited = state.plan.edited(&edits);
                state.change("", |plan| *plan = edited.unwrap_or_else(|| plan.clone()));
            }
            Action::DropLeftOver => state.change("", Plan::drop_left_over),
            Action::Remove(list, at) => state.change("", |plan| plan.remove(list, at)),
            Action::Take(description) => {
                state.change("", |plan| plan.take_controller(&description));
            }
            Action::Undo => state.step(History::undo),
            Action::Redo => state.step(History::redo),
            Action::Open(key, plan) => {
                let notices = std::mem::take(&mut state.notices);
                let (answers, details) = (state.answers, state.details);
                let address = std::mem::take(&mut state.address);
                let opened = Self::new(key, *plan, state.keep);
                state = Self { answers, details, notices, address, ..opened };
                state.answer_anew();
            }
            Action::Say(notice) => state.say(notice),
            Action::Dismiss => state.notices.clear(),
            Action::Await => {
                state.answers.await_again();
                state.details.await_again();
            }
            Action::Miss => state.answers = Further::Missed,
            Action::MissDetails => state.details = Further::Missed,
            Action::Detail(details) => {
                state.details = Further::There(details);
                state.answer_anew();
            }
            Action::Try => state.try_remedies(),
            Action::Answer(answering) => {
                state.answers = Further::There(answering);
                state.answer();
            }
        }
        state.keep_after(&self);
        Rc::new(state)
    }
}

/// The name of an output or a relay, where that is what stands at a path.
fn name_at(path: &str) -> Option<Place> {
    let names = [outputs::NAME.place(), relays::NAME.place()];
    Place::at_path(path).filter(|place| names.contains(&place.at(0)))
}

#[cfg(test)]
mod tests {
    use quietpin_core::fields::{engine, loads};

    use super::*;

    const ANSWER: Action = Action::Answer(&crate::answering::ALL);
    const DETAIL: Action = Action::Detail(&crate::answering::DETAILS);

    fn unanswered(actions: Vec<Action>) -> Rc<State> {
        let start = Rc::new(State::new("1".into(), Plan::default(), |_, _| true));
        actions.into_iter().fold(start, Reducible::reduce)
    }

    fn after(actions: Vec<Action>) -> Rc<State> {
        unanswered([ANSWER, DETAIL].into_iter().chain(actions).chain([Action::Try]).collect())
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
        let answers = |state: &State| -> Vec<_> {
            state.report.sections.iter().flat_map(|it| it.answers.clone()).collect()
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
    fn every_change_is_kept_before_it_is_drawn() {
        use std::cell::RefCell;
        thread_local! {
            static KEPT: RefCell<Vec<String>> = const { RefCell::new(Vec::new()) };
        }
        let keep: Keep = |key, plan| {
            KEPT.with_borrow_mut(|kept| kept.push(format!("{key}: {}", plan.text(engine::ORDER))));
            true
        };
        let blank = Rc::new(State::new("1".into(), Plan::default(), keep));
        let other = Plan::named("other");
        let actions = [
            typed("engine.order", "1-2"),
            typed("engine.order", "1-2"),
            Action::Dismiss,
            Action::Undo,
            Action::Open("2".into(), Box::new(other)),
        ];
        actions.into_iter().fold(blank, Reducible::reduce);
        // what changes nothing is not kept again; a plan that was made blank is
        KEPT.with_borrow(|kept| assert_eq!(*kept, ["1: 1-2", "1: ", "2: "]));
    }

    #[test]
    fn a_browser_that_keeps_nothing_is_told_of_once() {
        let blank = Rc::new(State::new("1".into(), Plan::default(), |_, _| false));
        let state = [typed("engine.order", "1"), typed("engine.order", "1-2")]
            .into_iter()
            .fold(blank, Reducible::reduce);
        assert_eq!(state.notices.len(), 1, "{:?}", state.notices);
        assert_eq!(state.plan.text(engine::ORDER), "1-2", "what was typed is there all the same");
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
        let state = after(vec![
            typed("engine.order", "1-2"),
            Action::Undo,
            typed("name", "a"),
            Action::Redo,
        ]);
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
    fn opening_another_plan_leaves_nothing_of_the_first_to_take_back() {
        let state = after(vec![
            typed("name", "one"),
            Action::Open("2".into(), Box::new(Plan::named("two"))),
            Action::Undo,
        ]);
        assert_eq!((state.key.as_str(), state.plan.name.as_str()), ("2", "two"));
    }

    #[test]
    fn the_same_notice_is_not_said_twice() {
        let notice = Notice { text: "full".into(), kept: None };
        let state = after(vec![Action::Say(notice.clone()), Action::Say(notice)]);
        assert_eq!(state.notices.len(), 1);
    }
}
