//! What else the fitter should know of the injectors.

use super::Solved;
use crate::{
    finding::{Finding, Findings, Severity},
    injector::Class,
    quantity::Holds,
    say,
};

/// Where an injector may not open.
pub(super) fn of_opening(solved: &Solved<'_>, findings: &mut Findings) {
    let Solved { inputs, found, .. } = solved;
    if found.may_not_open == Holds::Never {
        return;
    }
    let (severity, basis) = if found.opening.is_given {
        (Severity::Fault, "as given")
    } else {
        (Severity::Doubt, "assumed")
    };
    let message = say!(
        "injectors.may-not-open",
        current = found.lowest.injector.low,
        corner = found.lowest.corner.name,
        opening = found.opening.current.high,
        basis = basis
    );
    let mut remedies = vec![say!("injectors.opens-from", supply = found.opens_from.supply)];
    if inputs.opening_current.is_none() {
        remedies.push(say!("injectors.find-opening"));
    }
    let working = found.opening.working.iter().chain(&found.opens_from.working).cloned();
    findings.push(
        Finding::new(severity, solved.path("opening_current"), message)
            .holding(found.may_not_open.clone())
            .cured_by(remedies)
            .shown_by(working),
    );
}

/// A resistance that belongs to neither kind.
pub(super) fn of_class(solved: &Solved<'_>, findings: &mut Findings) {
    let Solved { inputs, found, .. } = solved;
    if found.class != Class::Between {
        return;
    }
    let message = say!("injectors.neither-high-nor-low", resistance = inputs.resistance.nominal);
    findings.push(
        Finding::new(Severity::Doubt, solved.path("resistance"), message)
            .cured_by([say!("injectors.measure-again"), say!("injectors.measure-another")]),
    );
}

/// A number of injectors that doesn't fill its outputs.
pub(super) fn of_count(solved: &Solved<'_>, findings: &mut Findings) {
    let Solved { inputs, found, .. } = solved;
    let (Some(count), Some(outputs)) = (inputs.count, found.outputs) else { return };
    let Some(last) = count.checked_rem(inputs.per_output).filter(|last| *last > 0) else { return };
    let message = say!(
        "injectors.uneven",
        count = count,
        n = inputs.per_output,
        outputs = outputs,
        last = last
    );
    findings.push(Finding::new(Severity::Note, solved.path("per_output"), message));
}
