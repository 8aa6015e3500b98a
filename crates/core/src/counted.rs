//! How much was worked out, for those who hold it to a bound: what keeps a page busy is counted where it is done, as seconds
//! would be others on every machine.
//!
//! Counted with the feature `counted` alone, which nothing but tests and trials asks for; no answer hangs on it.

/// What was done.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Done {
    /// Reports made: the one that was asked for, and those with a remedy that was tried.
    pub reports: u64,
    /// Circuits solved.
    pub networks: u64,
    /// Teeth of a start whose times were worked out.
    pub teeth: u64,
    /// Ways to connect the channels that were looked at.
    pub connections: u64,
}

#[cfg(any(test, feature = "counted"))]
mod here {
    use std::cell::Cell;

    use super::Done;

    thread_local! {
        static DONE: Cell<Done> = const { Cell::new(Done { reports: 0, networks: 0, teeth: 0, connections: 0 }) };
    }

    pub(super) fn count(add: impl FnOnce(&mut Done)) {
        DONE.with(|done| {
            let mut sum = done.get();
            add(&mut sum);
            done.set(sum);
        });
    }

    /// What some work did, and what came of it.
    pub fn counting<T>(work: impl FnOnce() -> T) -> (T, Done) {
        let before = DONE.replace(Done::default());
        let made = work();
        (made, DONE.replace(before))
    }
}

#[cfg(any(test, feature = "counted"))]
pub use here::counting;

/// Adds to what was done.
#[cfg(any(test, feature = "counted"))]
pub(crate) fn count(add: impl FnOnce(&mut Done)) {
    here::count(add);
}

/// Adds to what was done: nothing here.
#[cfg(not(any(test, feature = "counted")))]
pub(crate) fn count(_: impl FnOnce(&mut Done)) {}
