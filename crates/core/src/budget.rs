//! Work that is counted before it is done, so that a search ends at the same place on every machine.
//!
//! A search whose work grows with what is typed would keep a page busy for minutes. A clock would end it elsewhere each
//! time, and the same plan would give other reports; so each search says how many steps it takes before it begins, and is
//! not begun where they are more than its answer may spend. Who asked then says what was not searched.

use std::cell::Cell;

/// What an answer may spend, in steps.
///
/// A step is what takes about a nanosecond natively: a few operations on numbers that are at hand.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Allowance {
    /// At most, for what the answer is not one without.
    pub most: u64,
    /// At most, with what is welcome beside it: other ways that are tried.
    pub share: u64,
}

impl Allowance {
    /// Whether it would do where `other` was needed.
    fn covers(self, other: Self) -> bool {
        self.most >= other.most && self.share >= other.share
    }
}

/// What one answer has spent of what it may.
#[derive(Debug)]
pub struct Budget {
    given: Allowance,
    spent: Cell<u64>,
    /// The least that would have done so far.
    needed: Cell<Allowance>,
    is_short: Cell<bool>,
}

impl Budget {
    /// An answer that has spent nothing yet.
    pub fn new(given: Allowance) -> Self {
        Self {
            given,
            spent: Cell::new(0),
            needed: Cell::new(Allowance::default()),
            is_short: Cell::new(false),
        }
    }

    /// An answer that may take as long as it does.
    pub fn unlimited() -> Self {
        Self::new(Allowance { most: u64::MAX, share: u64::MAX })
    }

    /// The most that it may spend.
    pub fn given(&self) -> Allowance {
        self.given
    }

    /// Takes the steps of what the answer is not one without. Nothing where they are too many: then that must not be begun,
    /// and nothing is given any more.
    pub fn take(&self, steps: u64) -> Option<()> {
        let spent = self.pay(steps, self.given.most)?;
        let needed = self.needed.get();
        self.needed.set(Allowance { most: spent, ..needed });
        Some(())
    }

    /// The same for what is welcome beside it.
    pub fn take_spare(&self, steps: u64) -> Option<()> {
        let spent = self.pay(steps, self.given.share)?;
        let needed = self.needed.get();
        self.needed.set(Allowance { share: spent, ..needed });
        Some(())
    }

    /// Steps that were taken.
    pub fn spent(&self) -> u64 {
        self.spent.get()
    }

    /// Whether something was too much to be begun.
    pub fn is_short(&self) -> bool {
        self.is_short.get()
    }

    /// What the answer hangs on, of all that it was given.
    pub(crate) fn account(&self) -> Account {
        Account {
            given: self.given,
            spent: self.spent(),
            needed: self.needed.get(),
            is_short: self.is_short(),
        }
    }

    fn pay(&self, steps: u64, most: u64) -> Option<u64> {
        let spent = self.spent.get().saturating_add(steps);
        if self.is_short.get() || spent > most {
            self.is_short.set(true);
            return None;
        }
        self.spent.set(spent);
        Some(spent)
    }
}

/// What an answer that is remembered was given and has spent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Account {
    given: Allowance,
    /// Steps that it has spent.
    pub(crate) spent: u64,
    needed: Allowance,
    is_short: bool,
}

impl Account {
    /// Whether the answer would be the same, to the last step, if it were given this.
    pub(crate) fn would_be_the_same(&self, given: Allowance) -> bool {
        if self.is_short { self.given == given } else { given.covers(self.needed) }
    }
}

/// What all answers to a question may spend together, one after the other.
///
/// Half of it is kept for all alike, so that an answer that costs much leaves the others what they need.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Pool {
    left: u64,
    kept_for_each: u64,
    waiting: u64,
}

impl Pool {
    /// So many steps for so many answers.
    pub(crate) fn new(steps: u64, answers: usize) -> Self {
        let waiting = u64::try_from(answers).unwrap_or(u64::MAX).max(1);
        Self { left: steps, kept_for_each: steps / 2 / waiting, waiting }
    }

    /// What the next answer may spend.
    pub(crate) fn allowance(&self) -> Allowance {
        let others = self.waiting.saturating_sub(1);
        Allowance {
            most: self.left.saturating_sub(self.kept_for_each.saturating_mul(others)),
            share: self.left / self.waiting.max(1),
        }
    }

    /// Takes off what it has spent.
    pub(crate) fn pay(&mut self, account: &Account) {
        self.left = self.left.saturating_sub(account.spent);
        self.waiting = self.waiting.saturating_sub(1);
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn what_is_too_much_is_not_begun_and_nothing_after_it() {
        let budget = Budget::new(Allowance { most: 10, share: 6 });
        assert_eq!(budget.take(5), Some(()));
        assert_eq!(budget.take_spare(1), Some(()), "five and one are no more than six");
        assert_eq!(budget.take_spare(1), None, "seven are");
        assert_eq!(budget.take(1), None, "what comes after would hang on what was left out");
        assert_eq!((budget.spent(), budget.is_short()), (6, true));
    }

    #[test]
    fn more_steps_than_can_be_counted_are_too_many() {
        let budget = Budget::new(Allowance { most: u64::MAX - 1, share: 0 });
        assert_eq!(budget.take(u64::MAX - 1), Some(()));
        assert_eq!(budget.take(u64::MAX), None);
    }

    /// A question whose answers each want so many steps, and then so many more that they can do without.
    fn spend(pool: &mut Pool, wants: &[(u64, u64)]) -> Vec<Account> {
        let each = wants.iter().map(|(needs, likes)| {
            let budget = Budget::new(pool.allowance());
            let done = budget.take(*needs).and_then(|()| budget.take_spare(*likes));
            assert_eq!(done.is_none(), budget.is_short());
            pool.pay(&budget.account());
            budget.account()
        });
        each.collect()
    }

    proptest! {
        #[test]
        fn all_together_never_spend_more_than_there_is(
            steps in 0_u64..1000,
            wants in prop::collection::vec((0_u64..400, 0_u64..400), 1..20),
        ) {
            let mut pool = Pool::new(steps, wants.len());
            let spent: u64 = spend(&mut pool, &wants).iter().map(|it| it.spent).sum();
            prop_assert!(spent <= steps, "{spent} of {steps}");
        }

        /// Whatever the others cost, before it or after.
        #[test]
        fn what_costs_no_more_than_its_part_of_the_half_is_always_done(
            wants in prop::collection::vec((0_u64..2000, 0_u64..2000), 1..20),
            at in any::<prop::sample::Index>(),
        ) {
            let mut wants = wants;
            let part = 1000 / 2 / u64::try_from(wants.len()).unwrap();
            let at = at.index(wants.len());
            wants[at] = (part / 2, part / 2);
            let mut pool = Pool::new(1000, wants.len());
            prop_assert!(!spend(&mut pool, &wants)[at].is_short);
        }

        #[test]
        fn what_would_be_the_same_is(
            (needs, likes) in (0_u64..100, 0_u64..100),
            given in (0_u64..200, 0_u64..200),
            other in (0_u64..200, 0_u64..200),
        ) {
            let [given, other] = [given, other].map(|(most, share)| Allowance { most, share });
            let spend = |given| {
                let budget = Budget::new(given);
                let done = budget.take(needs).is_some();
                (done, done && budget.take_spare(likes).is_some(), budget.account())
            };
            let (one, two) = (spend(given), spend(other));
            if one.2.would_be_the_same(other) {
                prop_assert_eq!((one.0, one.1, one.2.spent), (two.0, two.1, two.2.spent));
            }
        }
    }
}
