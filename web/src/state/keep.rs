//! How a plan is kept: at every change, and together with what another page makes of it.

#[cfg(test)]
pub(crate) mod tests;

use std::rc::Rc;

use quietpin_core::plan::Plan;

use super::{State, copies::Copies};
use crate::words;

/// What keeps plans: the browser, or what stands in for it in a test.
#[derive(Clone, Copy, Debug)]
pub struct Keep {
    /// What is kept under a key.
    pub read: fn(&str) -> Option<String>,
    /// Keeps this under a key, which is the one that is open; false where the browser refuses.
    pub write: fn(&str, &str) -> bool,
    /// The plan under this key is open.
    pub open: fn(&str),
    /// A key under which nothing was ever kept.
    pub fresh: fn() -> String,
    /// A number that grows with time, and is another on each page.
    pub now: fn() -> u64,
    /// Marks that this plan is being answered, or is no more.
    pub mark: fn(&str, bool),
    /// Whether it was being answered when the page came to an end.
    pub is_marked: fn(&str) -> bool,
}

impl State {
    /// Keeps the plan if it is another than `before`. This is done before anything is drawn, and in the same breath as
    /// the change: a page that is closed now has lost nothing.
    pub(super) fn keep_after(&mut self, before: &Self) {
        let is_same = self.key == before.key && self.plan == before.plan;
        // a blank plan that was never touched is not worth a key
        let is_blank = *self.plan == Plan::default() && !self.can_undo() && !self.can_redo();
        if !is_same && !is_blank {
            self.take_others();
            self.keep();
        }
    }

    /// Takes in what another page changed in this plan, and keeps both together; once there is what makes them one.
    pub(super) fn meet(&mut self) {
        if self.answers.there().is_some() && self.take_others() && !self.copies.is_kept(&self.plan)
        {
            self.keep();
        }
    }

    fn keep(&mut self) {
        if self.copies.is_kept(&self.plan) {
            return (self.keep.open)(&self.key);
        }
        let (time, value) = self.copies.next((self.keep.now)(), &self.plan);
        if (self.keep.write)(&self.key, &value) {
            self.copies.kept(time, &self.plan);
        } else {
            self.tell(words::REFUSED.into());
        }
    }

    /// Takes in what another page changed in this plan; says whether there was something.
    fn take_others(&mut self) -> bool {
        let Some(value) = (self.keep.read)(&self.key) else {
            if !self.copies.is_empty() {
                self.copies = Copies::default();
                self.tell(words::REMOVED_ELSEWHERE.into());
            }
            return false;
        };
        if !self.copies.is_news(&value) {
            return false;
        }
        let both = self.answers.there().and_then(|answering| {
            Some((answering, (answering.met)(&mut self.copies, &value, &self.plan)?))
        });
        let Some((answering, merged)) = both else {
            // what can't be made one with this plan must not be written over
            (self.key, self.copies) = ((self.keep.fresh)(), Copies::default());
            self.tell(words::KEPT_BESIDE.into());
            return true;
        };
        for clash in &merged.clashes {
            let told = self.details.there().map(|it| (it.clash)(&merged.plan, clash));
            self.tell(told.unwrap_or_else(|| words::CLASH.to_owned()));
        }
        if merged.plan != *self.plan {
            let plan = Rc::new(merged.plan);
            self.history.carry(&self.plan, &plan, answering.merged);
            self.show(plan);
        }
        true
    }
}
