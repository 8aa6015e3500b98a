//! The answer for outputs that are plain switches.

use super::{SolvedSet, corners, cures, cures::CuresInWords, remedies};
use crate::report::{Answer, Tone};
use crate::{
    fields,
    finding::{Finding, Findings, Severity},
    injector::{
        InjectorAnswer, InjectorCures, InjectorInputs,
        branch::{self, Ballast, CurrentEnd},
        carrying::{Carries, Carrying},
    },
    message::Message,
    quantity::Current,
    quantity::{Holds, Measure, Ratio, number},
    questions::injectors::words,
    say,
    schema::Key,
    working::Step,
};

/// What the output must bear, where its limit is not known.
pub(super) fn limit_unknown(solved: &SolvedSet<'_>) -> Answer {
    let SolvedSet { set, inputs, found } = solved;
    let verdict = say!(words::LIMIT_WANTED, limit = found.limit_needed.limit);
    let mut answer = Answer::new(set.part().name(), Tone::Open, verdict);
    answer.why = Some(say!(
        words::TAKES,
        n = inputs.per_output,
        resistance = solved.in_line(),
        now = found.usual().output.nominal,
        most = found.highest.output.high,
        corner = found.highest.corner.name
    ));
    answer.to_do = vec![say!(words::WANTS_LIMIT)];
    answer
}

/// The output's limit held against its injectors.
pub(super) fn answer(
    solved: &SolvedSet<'_>,
    carrying: &Carrying,
    cures: &InjectorCures,
    findings: &mut Findings,
) -> Answer {
    let SolvedSet { set, inputs, found } = solved;
    let (tone, verdict) = verdict(found, carrying);
    let mut answer = Answer::new(set.part().name(), tone, verdict);
    answer.why = Some(say!(
        words::TAKES_OF_LIMIT,
        n = inputs.per_output,
        resistance = solved.in_line(),
        now = found.usual().output.nominal,
        most = carrying.highest,
        corner = carrying.worst.name,
        limit = carrying.limit
    ));
    if carrying.has_margin() && found.turn_off.is_borne() {
        return answer;
    }
    if cures.resistor().is_some() {
        answer.cautions.push(say!(words::HOT_RESISTOR));
    }
    if carrying.over != Holds::Never && !carrying.is_hair {
        answer.cautions.extend([say!(words::NO_DIODE), say!(words::BEFORE_WIRING)]);
    }
    let taken = remedies::taken(solved, cures);
    if carrying.has_margin() {
        answer.to_do.push(taken);
        return answer;
    }
    let CuresInWords { best, others } = cures::in_words(solved, cures);
    let edits = best.as_ref().map_or_else(Vec::new, |it| it.edits.clone());
    answer.to_do.push(taken.done_by(edits));
    let place = solved.key(fields::injectors::OUTPUT_LIMIT);
    let finding = finding(carrying, place, solved.found.outputs);
    let words = best.iter().chain(&others).cloned();
    findings.push(finding.cured_by(words).shown_by(margin_working(inputs, carrying)));
    answer.to_do.extend(cures::obstacle(cures));
    // the one to take is not said again among the others
    if others.len() + usize::from(best.is_some()) > 1 {
        answer.to_do.push(say!(words::ANY_ONE));
    }
    answer.to_do.extend(others);
    answer
}

/// How the margin was found.
pub(super) fn margin_working(inputs: &InjectorInputs, carrying: &Carrying) -> Vec<Step> {
    let mut working = branch::working_at(inputs, &carrying.worst, CurrentEnd::Most, &Ballast::NONE);
    working.extend(carrying.working.iter().cloned());
    working
}

fn verdict(found: &InjectorAnswer, carrying: &Carrying) -> (Tone, Message) {
    let (margin, over) = (carrying.margin, corners(&carrying.over));
    let missed = match (&found.may_not_open, found.opening.is_given) {
        (Holds::Never, _) => found.hangs.then_some(Tone::Doubtful),
        (_, true) => Some(Tone::Bad),
        (_, false) => Some(Tone::Doubtful),
    };
    match (carrying.carries, missed) {
        (Carries::NotEverywhere, None) if carrying.is_hair => {
            (Tone::Doubtful, say!(words::HAIR_OVER, corners = over))
        }
        (Carries::Nowhere, _) => (Tone::Bad, say!(words::TOO_MUCH_ALWAYS)),
        (Carries::NotEverywhere, _) => (Tone::Bad, say!(words::TOO_MUCH, corners = over)),
        (_, Some(tone)) => (tone, say!(words::CARRIES_UNOPENED)),
        (Carries::NoMargin, None) => (Tone::Doubtful, say!(words::CARRIES_BARELY, margin = margin)),
        (Carries::WithMargin, None) => (Tone::Good, say!(words::CARRIES, margin = margin)),
    }
}

fn finding(carrying: &Carrying, place: Key<Current>, outputs: Option<u32>) -> Finding {
    let outputs = outputs.unwrap_or(2);
    let (highest, limit, corner) = (carrying.highest, carrying.limit, carrying.worst.name);
    if carrying.over == Holds::Never {
        let margin = carrying.margin;
        let message = say!(
            words::NO_MARGIN,
            highest = highest,
            corner = corner,
            margin = margin,
            limit = limit
        );
        return Finding::new(Severity::Doubt, place, message);
    }
    let times = 1.0 - carrying.margin.base();
    let times = Ratio::from_base(times).show().said(number(times));
    if carrying.is_hair {
        let message = say!(
            words::BARELY_OVER,
            outputs = outputs,
            highest = highest,
            corner = corner,
            times = times,
            limit = limit
        );
        return Finding::new(Severity::Doubt, place, message).holding(carrying.over.clone());
    }
    let message = say!(
        words::TOO_MUCH_FOR_OUTPUT,
        outputs = outputs,
        highest = highest,
        corner = corner,
        times = times,
        limit = limit
    );
    Finding::new(Severity::Danger, place, message).holding(carrying.over.clone())
}
