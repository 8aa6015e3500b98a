//! What can be taken back, and made again.

use std::rc::Rc;

use quietpin_core::plan::{Merged, Plan};

/// Most changes that are remembered: a plan is some kilobytes.
const MOST: usize = 500;

/// Of so many plans that were open before it is remembered what can be taken back in them.
const MOST_PLANS: usize = 10;

/// The plans before and after this one.
#[derive(Clone, Debug, Default)]
pub(super) struct History {
    past: Vec<Rc<Plan>>,
    future: Vec<Rc<Plan>>,
    /// The field that was typed into last: its letters are one change.
    place: String,
}

impl History {
    pub(super) fn can_undo(&self) -> bool {
        !self.past.is_empty()
    }

    pub(super) fn can_redo(&self) -> bool {
        !self.future.is_empty()
    }

    /// The plans that can come back, the last ones first.
    pub(super) fn past(&self) -> impl Iterator<Item = &Rc<Plan>> {
        self.past.iter().rev()
    }

    /// What can be taken back of a plan that was open before the page was loaded, the last one last.
    pub(super) fn of(past: Vec<Rc<Plan>>) -> Self {
        Self { past, ..Self::default() }
    }

    /// Remembers the plan before a change at `place`; a change without place stands alone.
    pub(super) fn remember(&mut self, place: &str, before: Rc<Plan>) {
        self.future.clear();
        let goes_on = !place.is_empty() && place == self.place;
        place.clone_into(&mut self.place);
        if !goes_on {
            if self.past.len() >= MOST {
                self.past.remove(0);
            }
            self.past.push(before);
        }
    }

    /// The plan before the letters that are being typed at `place`, where some were.
    pub(super) fn start(&self, place: &str) -> Option<Rc<Plan>> {
        if place == self.place { self.past.last().cloned() } else { None }
    }

    pub(super) fn undo(&mut self, now: &Rc<Plan>) -> Option<Rc<Plan>> {
        self.place.clear();
        let before = self.past.pop()?;
        self.future.push(Rc::clone(now));
        Some(before)
    }

    pub(super) fn redo(&mut self, now: &Rc<Plan>) -> Option<Rc<Plan>> {
        self.place.clear();
        let after = self.future.pop()?;
        self.past.push(Rc::clone(now));
        Some(after)
    }

    /// Carries what another page changed into every plan that may come back: one's own undo takes back one's own.
    pub(super) fn carry(&mut self, before: &Plan, after: &Plan, merged: Merging) {
        for plan in self.past.iter_mut().chain(&mut self.future) {
            *plan = Rc::new(merged(before, plan, after).plan);
        }
    }
}

/// A plan with what was changed in either of two that come from it.
pub(super) type Merging = fn(&Plan, &Plan, &Plan) -> Merged;

/// What can be taken back in a plan that is put away, and what it was then.
type PutAway = (History, Rc<Plan>);

/// What can be taken back in plans that were open before, by their keys.
#[derive(Clone, Debug, Default)]
pub(super) struct Shelf(Vec<(String, PutAway)>);

impl Shelf {
    pub(super) fn put(&mut self, key: String, history: PutAway) {
        if self.0.len() >= MOST_PLANS {
            self.0.remove(0);
        }
        self.0.push((key, history));
    }

    pub(super) fn take(&mut self, key: &str) -> Option<PutAway> {
        let at = self.0.iter().position(|(it, _)| it == key)?;
        Some(self.0.remove(at).1)
    }
}
