//! What was answered before: an edit leaves most answers as they are.

use std::rc::Rc;

use super::Answer;
use crate::finding::{Finding, Findings};

/// Answers, each with everything that it followed from.
#[derive(Clone, Debug)]
pub(crate) struct Recall<Asked> {
    before: Vec<Rc<Told<Asked>>>,
    told: Vec<Rc<Told<Asked>>>,
}

#[derive(Debug)]
struct Told<Asked> {
    asked: Asked,
    answer: Rc<Answer>,
    findings: Vec<Rc<Finding>>,
}

impl<Asked> Default for Recall<Asked> {
    fn default() -> Self {
        Self { before: Vec::new(), told: Vec::new() }
    }
}

impl<Asked: PartialEq> Recall<Asked> {
    /// Begins another report: what was told for the one before is what can be recalled.
    pub(crate) fn turn(&mut self) {
        self.before = std::mem::take(&mut self.told);
    }

    /// The answer that follows from `asked`, with its findings: as it was told before, or worked out. It must follow from
    /// nothing else.
    pub(crate) fn recall(
        &mut self,
        asked: Asked,
        findings: &mut Findings,
        answer: impl FnOnce(&Asked, &mut Findings) -> Option<Answer>,
    ) -> Option<Rc<Answer>> {
        let known = self.before.iter().find(|told| told.asked == asked).cloned();
        let told = known.or_else(|| {
            let mut findings = Findings::default();
            let answer = Rc::new(answer(&asked, &mut findings)?);
            Some(Rc::new(Told { asked, answer, findings: findings.into_all() }))
        })?;
        findings.share(&told.findings);
        let answer = Rc::clone(&told.answer);
        self.told.push(told);
        Some(answer)
    }
}
