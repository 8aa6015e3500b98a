//! The state of the page: pure, so that it is tested without a browser.

mod changes;
pub(crate) mod copies;
mod history;
pub(crate) mod keep;
mod lead;
#[cfg(test)]
mod tests;

use std::{cell::RefCell, rc::Rc};

pub(crate) use changes::{clash, told};
use copies::Copies;
use history::{History, Shelf};
pub use keep::Keep;
use quietpin_core::{
    fields::{
        inputs, outputs,
        relays::{self, Purpose},
        sensor_supplies,
    },
    message::Edit,
    plan::{MOST_ENTRIES, Plan, names_in},
    report::{Made, Memory, Report},
    schema::{self, Choice as _, Kind, Part, Place},
};
use yew::Reducible;

use crate::{
    address::record,
    answering::{Answering, Details},
    words,
};

/// Something the page has to say that is not in the report.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Notice {
    /// What happened, and what it means.
    pub text: String,
    /// A text that could not be read, to be saved as a file.
    pub kept: Option<String>,
}

/// What was done to the plan with one press, and the press that does the contrary.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Done {
    /// What it was.
    pub text: String,
    /// Whether it can be made again; it can be taken back otherwise.
    pub is_taken_back: bool,
}

/// What the fitter, or the browser, did.
#[derive(Clone, Debug)]
pub enum Action {
    /// Typed into a field.
    Type(String, String),
    /// Chose, tapped or ticked what a field holds: it is answered at once.
    Choose(String, String),
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
    /// What was typed is drawn: time to answer it.
    Follow,
    /// Paused, or left the field: what is wrong with it is told now; of this field, or of any.
    Settle(Option<String>),
    /// The remedies of this report were tried: it is the other with those that hold.
    Tried(Rc<Report>, Rc<Report>),
    /// Did what a remedy says.
    Apply(Vec<Edit>),
    /// Took back the last change.
    Undo,
    /// Made it again.
    Redo,
    /// Opened a plan kept under this key.
    Open(String, Box<Plan>),
    /// Another page may have kept this plan.
    Meet,
    /// Asked for answers to a plan that was not answered to the end last time.
    AnswerNow,
    /// The browser has something to say.
    Say(Notice),
    /// Read what was said.
    Dismiss,
    /// What was done was told long enough.
    Fade,
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

/// When what was changed is answered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Due {
    /// It is.
    Answered,
    /// What is being changed is answered once it is drawn.
    Later,
    /// As soon as it is drawn.
    Now,
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
    /// Whether what was typed is answered.
    due: Due,
    /// The field that is being typed into: what is wrong with it waits for a pause.
    pub typing: Option<String>,
    /// The report before the field was typed into: what is wrong anywhere waits for a pause.
    pub told: Rc<Report>,
    /// The plan that this report is of.
    pub stood: Rc<Plan>,
    /// The plan as it was when one came to this address: what is asked of a field does not change under the hand.
    pub entered: Rc<Plan>,
    /// What the answer is about that was changed last.
    pub lead: Option<String>,
    /// What was done with one press.
    pub done: Option<Done>,
    /// Whether answering this plan did not come to an end last time: it is not answered until that is asked for.
    pub is_held: bool,
    /// The field whose text was more than a plan holds; the number tells one time from another.
    pub refused: (usize, String),
    /// What keeps a plan.
    keep: Keep,
    copies: Copies,
    /// What can be taken back in plans that were open before.
    shelf: Rc<Shelf>,
    /// What was answered last.
    memory: Rc<RefCell<Memory>>,
    history: History,
}

impl State {
    /// A page with this plan, which `keep` keeps at every change; what answers is still coming.
    pub fn new(key: String, plan: Plan, keep: Keep) -> Self {
        let plan = Rc::new(plan);
        let report = Rc::new(Report::pending(&plan));
        Self {
            is_held: (keep.is_marked)(&key),
            copies: Copies::of((keep.read)(&key).as_deref(), &plan),
            key,
            report: Rc::clone(&report),
            entered: Rc::clone(&plan),
            plan: Rc::clone(&plan),
            done: None,
            refused: (0, String::new()),
            shelf: Rc::default(),
            is_tried: false,
            answers: Further::Coming,
            details: Further::Coming,
            notices: Vec::new(),
            address: String::new(),
            due: Due::Answered,
            typing: None,
            told: report,
            stood: Rc::clone(&plan),
            lead: None,
            keep,
            memory: Rc::default(),
            history: History::default(),
        }
    }

    /// The plans that can come back by taking back, the last ones first.
    pub fn past(&self) -> impl Iterator<Item = &Rc<Plan>> {
        self.history.past()
    }

    /// The same page, on which these plans can come back, the last one last.
    #[must_use]
    pub fn coming_from(self, past: Vec<Rc<Plan>>) -> Self {
        Self { history: History::of(past), ..self }
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
    #[inline(never)]
    fn step(&mut self, is_taken_back: bool, step: fn(&mut History, &Rc<Plan>) -> Option<Rc<Plan>>) {
        if let Some(plan) = step(&mut self.history, &self.plan) {
            let done = if is_taken_back { words::TAKEN_BACK } else { words::MADE_AGAIN };
            self.done = self.done_as(done, &plan, is_taken_back);
            self.show(plan);
        }
    }

    /// Changes the plan with one press: it is told what that did.
    fn press(&mut self, edit: impl FnOnce(&mut Plan)) {
        let mut plan = (*self.plan).clone();
        edit(&mut plan);
        self.pressed(plan);
    }

    #[inline(never)]
    fn pressed(&mut self, plan: Plan) {
        let done = self.done_as(words::CHANGED, &plan, false);
        if self.changed("", plan) {
            self.done = done;
        }
    }

    /// What is said of a change to `after`, once there is what puts it into words.
    fn done_as(&self, done: &str, after: &Plan, is_taken_back: bool) -> Option<Done> {
        let told = (self.details.there()?.told)(&self.plan, after);
        Some(Done { text: format!("{done}: {told}"), is_taken_back })
    }

    /// Opens another plan. What can be taken back in this one can be when it is opened again.
    #[inline(never)]
    fn open(&mut self, key: String, plan: Plan) {
        let mut shelf = Rc::clone(&self.shelf);
        let histories = Rc::make_mut(&mut shelf);
        let left = (std::mem::take(&mut self.history), Rc::clone(&self.plan));
        histories.put(self.key.clone(), left);
        let notices = std::mem::take(&mut self.notices);
        let (answers, details) = (self.answers, self.details);
        let mut opened = Self::new(key, plan, self.keep);
        if let Some((mut history, left)) = histories.take(&opened.key) {
            if let Some(answering) = answers.there().filter(|_| left != opened.plan) {
                history.carry(&left, &opened.plan, answering.merged);
            }
            opened.history = history;
        }
        let address = std::mem::take(&mut self.address);
        *self = Self { answers, details, notices, address, shelf, ..opened };
    }

    /// Whether something was typed that is not answered yet.
    pub fn is_due(&self) -> bool {
        self.due == Due::Now
    }

    /// Takes a letter. It is drawn first: what follows from it comes in the breath after.
    fn take(&mut self, path: String, text: &str) {
        if self.typing.is_none() {
            self.told = Rc::clone(&self.report);
            self.stood = Rc::clone(&self.plan);
        }
        let before = self.due;
        if self.answers.there().is_some() {
            self.due = Due::Later;
        }
        self.type_in(&path, text);
        if self.due == Due::Later {
            self.due = before;
        }
        self.typing = Some(path);
    }

    /// What is wrong with the field that was left, or any, is told now.
    fn settle(&mut self, left: Option<&String>) {
        if left.is_none_or(|it| self.typing.as_ref() == Some(it)) {
            self.typing = None;
        }
    }

    /// Comes to another address.
    fn go(&mut self, address: String) {
        self.address = address;
        self.entered = Rc::clone(&self.plan);
        (self.typing, self.lead) = (None, None);
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

    #[inline(never)]
    fn tell(&mut self, text: String) {
        self.say(Notice { text, kept: None });
    }

    fn say(&mut self, notice: Notice) {
        if !self.notices.contains(&notice) {
            self.notices.push(notice);
        }
    }

    fn show(&mut self, plan: Rc<Plan>) {
        self.plan = plan;
        match self.due {
            Due::Later => self.due = Due::Now,
            Due::Answered | Due::Now => self.follow(),
        }
    }

    /// Answers what was changed, and says which answer that changed.
    fn follow(&mut self) {
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

    /// Answers a plan though that did not come to an end last time.
    fn answer_now(&mut self) {
        self.is_held = false;
        self.answer_anew();
    }

    /// Answers, now that there is what does; and takes in what another page kept meanwhile.
    fn answer_with(&mut self, answering: &'static Answering) {
        self.answers = Further::There(answering);
        self.answer();
        self.meet();
    }

    #[inline(never)]
    fn answer(&mut self) {
        self.due = Due::Answered;
        let plan = &self.plan;
        let Some(answering) = self.answers.there().filter(|_| !self.is_held) else {
            self.report = Rc::new(Report::pending(plan));
            return;
        };
        let mut memory = self.memory.borrow_mut();
        (self.keep.mark)(&self.key, true);
        let report = (answering.report)(&mut memory, plan);
        (self.keep.mark)(&self.key, false);
        self.report = Rc::new(report);
        self.is_tried = false;
    }

    /// The trials that the report still wants, once there is what makes them.
    pub fn trials(&self) -> Option<Trials> {
        let details = self.details.there().filter(|_| self.answers.there().is_some())?;
        (!self.is_tried && !self.is_held).then(|| Trials {
            report: Rc::clone(&self.report),
            plan: Rc::clone(&self.plan),
            memory: Rc::clone(&self.memory),
            made: Made::default(),
            further: details.tried_further,
            mark: self.keep.mark,
            key: self.key.clone(),
        })
    }

    /// Keeps those remedies that hold with the whole plan.
    fn tried(&mut self, report: &Rc<Report>, tried: Rc<Report>) {
        if Rc::ptr_eq(report, &self.report) {
            (self.report, self.is_tried) = (tried, true);
        }
    }

    /// Changes the plan, unless the change leaves it as it is.
    fn change(&mut self, place: &str, edit: impl FnOnce(&mut Plan)) {
        let mut plan = (*self.plan).clone();
        edit(&mut plan);
        self.changed(place, plan);
    }

    /// Takes the plan as it was changed at a place, unless it is more than a plan holds; says whether it is another now.
    // once, not in each change: it is the most of them
    #[inline(never)]
    fn changed(&mut self, place: &str, plan: Plan) -> bool {
        let grown = |list: &Part| plan.count(*list) > self.plan.count(*list).max(MOST_ENTRIES);
        if Part::ALL.iter().any(grown) {
            self.tell(format!("A list takes no more than {MOST_ENTRIES} entries: none was added."));
        } else if !plan.fits() {
            let field = Place::at_path(place).map(|it| it.field().label);
            self.tell(words::refused(field.unwrap_or(words::PLAN)));
            self.refused = (self.refused.0 + 1, place.to_owned());
        } else if plan != *self.plan {
            self.done = None;
            self.history.remember(place, Rc::clone(&self.plan));
            self.show(Rc::new(plan));
            return true;
        }
        false
    }
}

/// The trials of a report's remedies. Each is a report: a page makes them one by one, and does what else there is between them.
#[derive(Debug)]
pub struct Trials {
    report: Rc<Report>,
    plan: Rc<Plan>,
    memory: Rc<RefCell<Memory>>,
    made: Made,
    further: fn(&Report, &Plan, &Memory, &mut Made) -> Option<Report>,
    mark: fn(&str, bool),
    key: String,
}

impl Trials {
    /// Makes one more; what came of them, once none is left.
    pub fn further(&mut self) -> Option<Action> {
        (self.mark)(&self.key, true);
        let tried = (self.further)(&self.report, &self.plan, &self.memory.borrow(), &mut self.made);
        (self.mark)(&self.key, false);
        tried.map(|it| Action::Tried(Rc::clone(&self.report), Rc::new(it)))
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
        _ => return,
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

/// A load is on an output and a sensor on an input: the first one brings its own.
fn bring_pin(plan: &mut Plan, list: Part) {
    let pins = match list {
        Part::Loads => Part::Outputs,
        Part::Sensors => Part::Inputs,
        _ => return,
    };
    if plan.count(pins) == 0 {
        plan.add(pins);
    }
}

/// An output that is named on the card of a load that is on none is the one that this load is on; an input and a sensor likewise.
fn hang(plan: &mut Plan, before: &Plan, name: Place, address: &str) {
    let field = if name.part() == Part::Inputs { "input" } else { "output" };
    let path = [record(address), ".", field].concat();
    let Some(place) = Place::at_path(&path) else { return };
    let is_on_none = before.text(place).trim().is_empty();
    let is_new = before.text(name).trim().is_empty();
    let is_pin = matches!(name.part(), Part::Outputs | Part::Inputs);
    if is_pin && is_on_none && is_new {
        let named = names_in(plan.text(name)).first().cloned().unwrap_or_default();
        plan.put(place, &named);
    }
}

impl Reducible for State {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        let mut state = (*self).clone();
        match action {
            Action::Type(path, text) => state.take(path, &text),
            Action::Choose(path, text) => state.type_in(&path, &text),
            Action::Go(address) => state.go(address),
            Action::Settle(left) => state.settle(left.as_ref()),
            Action::Follow if state.is_due() => state.follow(),
            Action::Follow => {}
            Action::Clear(paths) => state.press(|plan| {
                for path in &paths {
                    plan.set(path, "");
                }
            }),
            Action::Add(list) => state.change("", |plan| {
                plan.add(list);
                bring_pin(plan, list);
            }),
            Action::AddRelay(purpose) => state.change("", |plan| {
                add_relay(plan, purpose);
            }),
            Action::Apply(edits) => {
                let edited = state.plan.edited(&edits);
                state.press(|plan| *plan = edited.unwrap_or_else(|| plan.clone()));
            }
            Action::DropLeftOver => state.press(Plan::drop_left_over),
            Action::Remove(list, at) => state.press(|plan| plan.remove(list, at)),
            Action::Take(description) => {
                state.press(|plan| plan.take_controller(&description));
            }
            Action::Undo => state.step(true, History::undo),
            Action::Redo => state.step(false, History::redo),
            Action::Open(key, plan) => {
                state.open(key, *plan);
                state.answer_anew();
            }
            Action::Meet => state.meet(),
            Action::AnswerNow => state.answer_now(),
            Action::Say(notice) => state.say(notice),
            Action::Dismiss => {
                state.notices.clear();
                state.done = None;
            }
            Action::Fade => state.done = None,
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
            Action::Tried(report, tried) => state.tried(&report, tried),
            Action::Answer(answering) => state.answer_with(answering),
        }
        state.keep_after(&self);
        Rc::new(state)
    }
}

/// The name of an output or a relay, where that is what stands at a path.
fn name_at(path: &str) -> Option<Place> {
    let names = [
        outputs::NAME.place(),
        relays::NAME.place(),
        inputs::NAME.place(),
        sensor_supplies::NAME.place(),
    ];
    Place::at_path(path).filter(|place| names.contains(&place.at(0)))
}
