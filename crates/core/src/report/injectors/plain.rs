//! The answer for outputs that are plain switches.

use super::{
    super::{Answer, Tone},
    corners, cures, numbers,
};
use crate::{
    finding::{Finding, Findings, Severity},
    injector::{
        Answer as Found, Cures, Inputs,
        branch::{self, Ballast, End},
        carrying::{Carries, Carrying},
    },
    message::Message,
    quantity::{Holds, Measure, Ratio},
    report::Figure,
    say,
    working::Step,
};

const LIMIT: &str = "injectors.output_limit";

/// What the output must bear, where its limit is not known.
pub(super) fn limit_unknown(inputs: &Inputs, found: &Found) -> Answer {
    let verdict = say!("injectors.limit-wanted", limit = found.limit_needed.limit);
    let mut answer = Answer::new("injectors", Tone::Open, verdict);
    answer.why = Some(say!(
        "injectors.takes",
        n = inputs.per_output,
        resistance = inputs.resistance.nominal,
        now = found.usual().output.nominal,
        most = found.highest.output.high,
        corner = found.highest.corner.name
    ));
    answer.to_do = vec![say!("injectors.wants-limit")];
    answer
}

/// The output's limit held against its injectors.
pub(super) fn answer(
    inputs: &Inputs,
    found: &Found,
    carrying: &Carrying,
    cures: &Cures,
    findings: &mut Findings,
) -> Answer {
    let (tone, verdict) = verdict(found, carrying);
    let mut answer = Answer::new("injectors", tone, verdict);
    answer.why = Some(say!(
        "injectors.takes-of-limit",
        n = inputs.per_output,
        resistance = inputs.resistance.nominal,
        now = found.usual().output.nominal,
        most = carrying.highest,
        corner = carrying.worst.name,
        limit = carrying.limit
    ));
    let working = margin_working(inputs, carrying);
    answer.figures.push(Figure::plain(say!("injectors.margin"), carrying.margin, working.clone()));
    if carrying.has_margin() {
        return answer;
    }
    let words = cures::in_words(found, cures);
    if let Some(resistor) = cures::offered(cures) {
        answer.figures.extend(numbers::of_resistor(inputs, resistor));
        answer.figures.extend(numbers::of_rise(inputs, found, &resistor.ballast()));
        answer.tables.push(numbers::of_corners_with(inputs, found, resistor));
        answer.cautions.push(say!("injectors.hot-resistor"));
    }
    if carrying.over != Holds::Never {
        answer.cautions.extend([say!("injectors.no-diode"), say!("injectors.before-wiring")]);
    }
    findings.push(finding(carrying).cured_by(words.iter().cloned()).shown_by(working));
    answer.to_do.extend(cures::obstacle(cures));
    if words.len() > 1 {
        answer.to_do.push(say!("injectors.any-one"));
    }
    answer.to_do.extend(words);
    answer
}

fn margin_working(inputs: &Inputs, carrying: &Carrying) -> Vec<Step> {
    let mut working = branch::working_at(inputs, &carrying.worst, End::Most, &Ballast::NONE);
    working.extend(carrying.working.iter().cloned());
    working
}

fn verdict(found: &Found, carrying: &Carrying) -> (Tone, Message) {
    let (margin, over) = (carrying.margin, corners(&carrying.over));
    let missed = match (&found.may_not_open, found.opening.is_given) {
        (Holds::Never, _) => None,
        (_, true) => Some(Tone::Bad),
        (_, false) => Some(Tone::Doubtful),
    };
    match (carrying.carries, missed) {
        (Carries::Nowhere, _) => (Tone::Bad, say!("injectors.too-much-always")),
        (Carries::NotEverywhere, _) => (Tone::Bad, say!("injectors.too-much", corners = over)),
        (_, Some(tone)) => (tone, say!("injectors.carries-unopened")),
        (Carries::NoMargin, None) => {
            (Tone::Doubtful, say!("injectors.carries-barely", margin = margin))
        }
        (Carries::WithMargin, None) => (Tone::Good, say!("injectors.carries", margin = margin)),
    }
}

fn finding(carrying: &Carrying) -> Finding {
    let (highest, limit, corner) = (carrying.highest, carrying.limit, carrying.worst.name);
    if carrying.over == Holds::Never {
        let margin = carrying.margin;
        let message = say!(
            "injectors.no-margin",
            highest = highest,
            corner = corner,
            margin = margin,
            limit = limit
        );
        return Finding::new(Severity::Doubt, LIMIT, message);
    }
    let over: Ratio = Measure::from_base(-carrying.margin.base());
    let message = say!(
        "injectors.too-much-for-output",
        highest = highest,
        corner = corner,
        over = over,
        limit = limit
    );
    Finding::new(Severity::Danger, LIMIT, message).holding(carrying.over.clone())
}
