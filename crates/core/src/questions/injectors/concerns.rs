//! What else the fitter should know of the injectors.

use super::SolvedSet;
use crate::{
    fields,
    fields::loads::Across,
    finding::{Finding, Findings, Severity},
    injector::{Class, ballast, caught},
    message::Message,
    quantity::{Holds, Measure},
    questions::injectors::words,
    report::{Answer, Tone, Verdict},
    say,
    schema::Choice as _,
    working::Working,
};

/// Neither a current nor what it is held against is better known than this.
const A_HAIR: f64 = 0.97;

/// Where an injector may not open.
pub(super) fn of_opening(solved: &SolvedSet<'_>, findings: &mut Findings) {
    let SolvedSet { inputs, found, .. } = solved;
    let key = solved.key(fields::injectors::OPENING_CURRENT);
    if found.hangs {
        let message = say!(
            words::OPENING_HANGS,
            current = found.lowest.injector.low,
            corner = found.lowest.corner.name,
            opening = found.opening.current.high
        );
        let finding = Finding::new(Severity::Doubt, key, message);
        findings.push(finding.cured_by([say!(words::FIND_OPENING)]));
    }
    if found.may_not_open == Holds::Never {
        return;
    }
    // a hair below what opens one is a doubt
    let share = found.lowest.injector.low.base() / found.opening.current.high.base();
    let (severity, basis) = match found.opening.is_given {
        true if share > A_HAIR => (Severity::Doubt, "as given"),
        true => (Severity::Fault, "as given"),
        false => (Severity::Doubt, "assumed"),
    };
    let message = say!(
        words::MAY_NOT_OPEN,
        current = found.lowest.injector.low,
        corner = found.lowest.corner.name,
        opening = found.opening.current.high,
        basis = basis
    );
    let mut remedies = vec![say!(words::OPENS_FROM, supply = found.opens_from.supply)];
    if inputs.opening_current.is_none() {
        remedies.push(say!(words::FIND_OPENING));
    }
    let working = found.opening.working.iter().chain(&found.opens_from.working).cloned();
    findings.push(
        Finding::new(severity, key, message)
            .holding(found.may_not_open.clone())
            .cured_by(remedies)
            .shown_by(working),
    );
}

/// A resistance that belongs to neither kind.
pub(super) fn of_class(solved: &SolvedSet<'_>, findings: &mut Findings) {
    let SolvedSet { inputs, found, .. } = solved;
    if found.class != Class::Between {
        return;
    }
    let message = say!(words::NEITHER_HIGH_NOR_LOW, resistance = inputs.resistance.nominal);
    findings.push(
        Finding::new(Severity::Doubt, solved.key(fields::injectors::RESISTANCE), message)
            .cured_by([say!(words::MEASURE_AGAIN), say!(words::MEASURE_ANOTHER)]),
    );
}

/// A diode across each injector.
pub(super) fn of_diode(solved: &SolvedSet<'_>, answer: &mut Answer, findings: &mut Findings) {
    let Some((time, step)) = caught::runs_on(solved.inputs) else { return };
    if answer.verdict.tone != Tone::Bad {
        answer.verdict =
            Verdict { tone: Tone::Bad, message: say!(words::parts::DIODE_ACROSS_VERDICT) };
    }
    let key = solved.key(fields::injectors::ACROSS);
    let cure = say!(words::parts::TAKE_DIODE_OFF)
        .done_by(vec![key.edit(Across::Nothing.choosable().code)]);
    let message = say!(words::parts::DIODE_ACROSS, time = time);
    findings.push(Finding::new(Severity::Fault, key, message).cured_by([cure]).shown_by([step]));
}

/// A resistor in line with each injector: what it bears, and that it is hot.
pub(super) fn of_resistor(solved: &SolvedSet<'_>, answer: &mut Answer, findings: &mut Findings) {
    let inputs = solved.inputs;
    let Some((heat, steps)) = ballast::heat_of_fitted(inputs) else { return };
    let is_said = |it: &Message| it.code == words::HOT_RESISTOR.code;
    if !answer.cautions.iter().any(is_said) {
        answer.cautions.push(say!(words::HOT_RESISTOR));
    }
    let Some(rating) = inputs.resistor_rating.filter(|rating| *rating < heat) else { return };
    let message = say!(words::parts::RESISTOR_OVERHEATS, rating = rating, heat = heat);
    let key = solved.key(fields::injectors::RESISTOR_RATING);
    let larger = ballast::rating(heat, &mut Working::new()).map(|rating| {
        let edit = key.edit(rating.show().into_shown());
        say!(words::parts::RESISTOR_LARGER, rating = rating).done_by(vec![edit])
    });
    findings.push(Finding::new(Severity::Fault, key, message).cured_by(larger).shown_by(steps));
}

/// A number of injectors that doesn't fill its outputs.
pub(super) fn of_count(solved: &SolvedSet<'_>, findings: &mut Findings) {
    let SolvedSet { inputs, found, .. } = solved;
    let (Some(count), Some(outputs)) = (inputs.count, found.outputs) else { return };
    let Some(last) = count.checked_rem(inputs.per_output).filter(|last| *last > 0) else { return };
    let message =
        say!(words::UNEVEN, count = count, n = inputs.per_output, outputs = outputs, last = last);
    findings.push(Finding::new(Severity::Note, solved.key(fields::injectors::PER_OUTPUT), message));
}
