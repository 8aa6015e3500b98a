//! Which answer stays in sight while its fields are edited.

use std::rc::Rc;

use quietpin_core::report::{Answer, Report};

use crate::cards::worst;

/// The answer that an edit changed: the one that matters most, where there are several.
pub(super) fn changed(before: &Report, after: &Report) -> Option<String> {
    let as_before = |it: &Rc<Answer>| {
        let mut old = before.sections.iter().flat_map(|section| &section.answers);
        old.any(|old| {
            Rc::ptr_eq(old, it) || (old.subject == it.subject && old.verdict == it.verdict)
        })
    };
    let answers = after.sections.iter().flat_map(|section| &section.answers);
    let changed: Vec<_> = answers.filter(|it| !as_before(it)).cloned().collect();
    worst(&changed).map(|it| it.subject.clone())
}
