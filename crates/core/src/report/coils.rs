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
    quantity::{Band, RotationalSpeed, Value},
    read::{self, Coiled, Conditions, Reader},
    say,
};

pub(super) fn section(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    engine: Option<&Engine>,
    speed: Option<Band<RotationalSpeed>>,
    findings: &mut Findings,
) -> Section {
    let read = read::coils(reader, conditions, engine, speed);
    let answers = match &read {
        None => vec![Answer::new("coils", Tone::Open, say!("coils.blank")).into()],
        Some(read) => answered(read, findings).into_iter().map(Into::into).collect(),
    };
    Section { id: "coils", question: say!("coils.question"), answers }
}

fn answered(read: &Coiled, findings: &mut Findings) -> Vec<Answer> {
    let inputs = &read.inputs;
    let Some(found) = coil::answer(inputs) else {
        return vec![Answer::new("coils", Tone::Bad, say!("coils.no-voltage"))];
    };
    let is_enough = found.at_speed.as_ref().is_none_or(|at| at.is_enough(inputs));
    let cures =
        if is_enough { Cures::default() } else { Cures::of(inputs, read.once_a_cycle.as_ref()) };
    let cures = judge::cures(&cures);
    let (tone, verdict) = judge::verdict(inputs, &found);
    let mut answer = Answer::new("coils", tone, verdict);
    answer.title = Some(say!("coils.title"));
    answer.why = judge::why(inputs, &found);
    answer.to_do = judge::to_do(inputs, &found, &cures);
    answer.to_do.extend(taken(read));
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
    judge::concerns(inputs, &found, &cures, findings);
    vec![answer, feed::answer(read, &found, findings)]
}

/// What was taken where nothing was given.
fn taken(read: &Coiled) -> Option<Message> {
    let each = |(label, value): &(&str, Value)| format!("{label}: {}", value.shown);
    let list: Vec<_> = read.taken.iter().map(each).collect();
    (!list.is_empty()).then(|| say!("coils.taken", list = list.join("; ")))
}
