//! The answer to the question of injectors.

mod concerns;
mod controlled;
mod cures;
mod numbers;
mod plain;

use super::{Answer, Section, Tone, fuel};
use crate::{
    engine::Engine,
    finding::Findings,
    injector::{self, Inputs, On, branch::Ballast},
    message::Message,
    quantity::{Holds, Value},
    read::{self, Conditions, Injectors, Reader},
    say,
};

pub(super) fn section(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    engine: Option<&Engine>,
    findings: &mut Findings,
) -> Section {
    let read = read::injectors(reader, conditions, engine);
    let mut answer = match &read.inputs {
        None => open(&read, reader),
        Some(inputs) if !read.sharing_is_known => alone(inputs),
        Some(inputs) => answered(inputs, findings),
    };
    if read.inputs.is_some() {
        answer.to_do.extend(taken(&read));
    }
    let of_fuel = fuel::answer(reader, read.count, findings);
    let answers = vec![answer.into(), of_fuel.into()];
    Section { id: "injectors", question: say!("injectors.question"), answers }
}

/// What is still wanted before anything can be said.
fn open(read: &Injectors, reader: &Reader<'_>) -> Answer {
    let verdict =
        if read.resistance.is_missing() { "injectors.open" } else { "injectors.unreadable" };
    let mut answer = Answer::new("injectors", Tone::Open, say!(verdict));
    let wanted = [
        ("injectors.resistance", "injectors.wants-resistance"),
        ("injectors.per_output", "injectors.wants-sharing"),
        ("injectors.output_limit", "injectors.wants-limit"),
    ];
    let blank = wanted.into_iter().filter(|(path, _)| reader.text(path).is_empty());
    answer.to_do = blank.map(|(_, code)| say!(code)).collect();
    answer
}

/// What one injector takes, where it is not known how many share an output.
fn alone(inputs: &Inputs) -> Answer {
    let found = injector::answer(inputs);
    let mut answer = Answer::new("injectors", Tone::Open, say!("injectors.sharing-unknown"));
    let worst = &found.highest;
    answer.why = Some(say!(
        "injectors.one-alone",
        resistance = inputs.resistance.nominal,
        most = worst.output.high,
        corner = worst.corner.name
    ));
    answer.to_do = vec![say!("injectors.wants-sharing")];
    answer.figures = numbers::of_currents(inputs, &found);
    answer.tables = vec![numbers::of_corners(inputs, &found)];
    answer
}

fn answered(inputs: &Inputs, findings: &mut Findings) -> Answer {
    let found = injector::answer(inputs);
    let mut answer = match &found.on {
        On::UnknownLimit => plain::limit_unknown(inputs, &found),
        On::PlainSwitch(carrying, cures) => {
            plain::answer(inputs, &found, carrying, cures, findings)
        }
        On::CurrentControlled(channel) => controlled::answer(inputs, &found, channel, findings),
    };
    answer.figures.splice(0..0, numbers::of_currents(inputs, &found));
    answer.figures.extend(numbers::of_opening(&found));
    answer.figures.extend(numbers::of_rise(inputs, &found, &Ballast::NONE));
    answer.tables.insert(0, numbers::of_corners(inputs, &found));
    concerns::of_opening(inputs, &found, findings);
    concerns::of_class(inputs, &found, findings);
    concerns::of_count(inputs, &found, findings);
    answer
}

/// What was taken where nothing was given.
fn taken(read: &Injectors) -> Option<Message> {
    let each = |(label, value): &(&str, Value)| format!("{label}: {}", value.shown);
    let list: Vec<_> = read.taken.iter().map(each).collect();
    (!list.is_empty()).then(|| say!("injectors.taken", list = list.join("; ")))
}

/// The corners at which something holds, as a person says them.
fn corners(holds: &Holds) -> String {
    match holds {
        Holds::Never => "nowhere".into(),
        Holds::AtSome(corners) => corners.join("; "),
        Holds::Always => "always".into(),
    }
}
