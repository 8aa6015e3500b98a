//! What was done, counted by the tests: the same on every machine, as no time is.

use std::cell::Cell;

/// Counts since they began.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Work {
    /// Networks that were solved, and not known from before.
    pub(crate) networks: u64,
    /// How often what is joined to what was worked out.
    pub(crate) layouts: u64,
    /// How often the potentials were eliminated.
    pub(crate) eliminations: u64,
}

thread_local! {
    static DONE: Cell<Work> = const { Cell::new(Work { networks: 0, layouts: 0, eliminations: 0 }) };
}

/// What is done for something.
pub(crate) fn work_for<T>(something: impl FnOnce() -> T) -> (T, Work) {
    DONE.set(Work::default());
    let found = something();
    (found, DONE.get())
}

/// Counts something.
pub(super) fn done(what: impl FnOnce(&mut Work)) {
    let mut work = DONE.get();
    what(&mut work);
    DONE.set(work);
}
