//! What is said of fields that a record takes from another one.

use std::rc::Rc;

use crate::{
    finding::{Finding, Severity, in_order},
    plan::{Astray, Filled},
    read::{FieldStates, State, problem::shortened},
    say,
    words::field,
};

/// Fields that were filled from another record say so; what can't be read is told where it was typed, and only there.
pub(super) fn tell(filled: &Filled, fields: &mut FieldStates, findings: &mut Vec<Rc<Finding>>) {
    for (place, from) in &filled.taken {
        let (path, home) = (place.path(), from.path());
        let is_told_there = |it: &Rc<Finding>| {
            it.subject == path
                && findings.iter().any(|there| there.subject == home && there.message == it.message)
        };
        let twice: Vec<_> = findings.iter().filter(|it| is_told_there(it)).cloned().collect();
        findings.retain(|it| !twice.iter().any(|twin| Rc::ptr_eq(twin, it)));
        let Some(standing) = fields.get_mut(&path).map(Rc::make_mut) else { continue };
        standing.problem = None;
        standing.state = if standing.value.is_some() { State::Assumed } else { State::Missing };
        let name = from.beside("name").map_or("", |name| filled.plan.text(name).trim());
        standing.basis = Some(format!("as “{}”", shortened(name)));
    }
    for (place, why) in &filled.astray {
        let typed = shortened(filled.plan.text(*place).trim());
        let label = place.field().label;
        let message = match why {
            Astray::Nowhere => {
                let mut names = filled.plan.names(place.part());
                let own = place.beside("name").map_or("", |name| filled.plan.text(name).trim());
                names.retain(|name| name != own);
                let names = if names.is_empty() { "none".to_owned() } else { names.join(", ") };
                say!(field::NO_SUCH_MODEL, field = label, typed = typed, choices = names)
            }
            Astray::Circle => say!(field::LIKE_ITSELF, field = label, typed = typed),
        };
        findings.push(Finding::new(Severity::Fault, place.path(), message).at_its_field().into());
    }
    in_order(findings);
}
