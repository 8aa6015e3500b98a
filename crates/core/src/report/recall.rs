//! What was answered before: an edit leaves most answers as they are.

use std::rc::Rc;

use super::Answer;
use crate::{
    budget::{Account, Budget, Pool},
    finding::{Finding, Findings},
};

/// Answers, each with everything that it followed from.
#[derive(Clone, Debug)]
pub(crate) struct Recall<Asked> {
    before: Vec<Rc<Recalled<Asked>>>,
    told: Vec<Rc<Recalled<Asked>>>,
    /// Steps spent on what was not recalled.
    worked: u64,
}

#[derive(Debug)]
struct Recalled<Asked> {
    asked: Asked,
    account: Account,
    answer: Rc<Answer>,
    findings: Vec<Rc<Finding>>,
}

impl<Asked> Default for Recall<Asked> {
    fn default() -> Self {
        Self { before: Vec::new(), told: Vec::new(), worked: 0 }
    }
}

#[cfg(test)]
impl<Asked> Recall<Asked> {
    /// Steps that its answers have spent together.
    pub(crate) fn spent(&self) -> u64 {
        self.told.iter().map(|told| told.account.spent).sum()
    }
}

impl<Asked: PartialEq> Recall<Asked> {
    /// Begins another report: what was told for the one before is what can be recalled.
    pub(crate) fn turn(&mut self) {
        self.before = std::mem::take(&mut self.told);
        self.worked = 0;
    }

    /// Steps that were spent on the answers of this report that were not recalled.
    pub(crate) fn worked(&self) -> u64 {
        self.worked
    }

    /// The answer that follows from `asked` and from what it may spend, with its findings: as it was told before, or worked
    /// out. It must follow from nothing else.
    pub(crate) fn recall(
        &mut self,
        asked: Asked,
        pool: &mut Pool,
        findings: &mut Findings,
        answer: impl FnOnce(&Asked, &Budget, &mut Findings) -> Option<Answer>,
    ) -> Option<Rc<Answer>> {
        let given = pool.allowance();
        let is_known = |told: &&Rc<Recalled<Asked>>| {
            told.asked == asked && told.account.would_be_the_same(given)
        };
        let known = self.before.iter().find(is_known).cloned();
        let told = known.or_else(|| {
            let (budget, mut findings) = (Budget::new(given), Findings::default());
            let answer = Rc::new(answer(&asked, &budget, &mut findings)?);
            let account = budget.account();
            self.worked = self.worked.saturating_add(account.spent);
            Some(Rc::new(Recalled { asked, account, answer, findings: findings.into_all() }))
        })?;
        pool.pay(&told.account);
        findings.share(&told.findings);
        let answer = Rc::clone(&told.answer);
        self.told.push(told);
        Some(answer)
    }
}
