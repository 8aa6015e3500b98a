//! The answer to the question of coils: are they charged in time, and what must their feed bear?

mod feed;
mod judge;
mod numbers;

use super::{Answer, Section, Tone};
use crate::{
    coil::{self, cures::Cures},
    engine::Engine,
    finding::Findings,
    message::Message,
    quantity::{Band, Measure, RotationalSpeed, Time, Value},
    read::{self, Coiled, Conditions, Reader},
    say,
};

/// The answers, and the dwell that the coils need at the charging supply, where that is known.
pub(super) fn section(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    engine: Option<&Engine>,
    speed: Option<Band<RotationalSpeed>>,
    findings: &mut Findings,
) -> (Section, Option<Time>) {
    let read = read::coils(reader, conditions, engine, speed);
    let mut dwell = None;
    let answers = match &read {
        None => vec![Answer::new("coils", Tone::Open, say!("coils.blank")).into()],
        Some(read) => answered(read, &mut dwell, findings).into_iter().map(Into::into).collect(),
    };
    (Section { id: "coils", question: say!("coils.question"), answers }, dwell)
}

fn answered(read: &Coiled, dwell: &mut Option<Time>, findings: &mut Findings) -> Vec<Answer> {
    let inputs = &read.inputs;
    let Some(found) = coil::answer(inputs) else {
        return vec![Answer::new("coils", Tone::Bad, say!("coils.no-voltage"))];
    };
    *dwell = Some(found.charge.time).filter(|time| time.base() > 0.0);
    let is_enough = found.at_speed.as_ref().is_none_or(|at| at.is_enough(inputs));
    let cures =
        if is_enough { Cures::default() } else { Cures::of(inputs, read.once_a_cycle.as_ref()) };
    let cures = judge::cures(&cures);
    let (tone, verdict) = judge::verdict(inputs, &found);
    let mut answer = Answer::new("coils", tone, verdict);
    answer.title = Some(say!("coils.title"));
    answer.why = judge::why(inputs, &found);
    answer.to_do = judge::to_do(inputs, &found, &cures);
    answer.to_do.extend(taken(&read.taken));
    answer.cautions = vec![
        say!("coils.caution-spark"),
        say!(
            "coils.caution-held",
            current = found.held.current.nominal,
            heat = found.held.in_coil.nominal
        ),
    ];
    answer.figures = numbers::figures(inputs, &found);
    answer.tables = vec![numbers::table(inputs, &found)];
    answer.pictures.extend(numbers::picture(inputs, &found));
    judge::concerns(inputs, &found, &cures, findings);
    vec![answer, feed::answer(read, &found, findings)]
}

/// What was taken where nothing was given.
pub(super) fn taken(taken: &[(&'static str, Value)]) -> Option<Message> {
    let each = |(label, value): &(&str, Value)| format!("{label}: {}", value.shown);
    let list: Vec<_> = taken.iter().map(each).collect();
    (!list.is_empty()).then(|| say!("coils.taken", list = list.join("; ")))
}
