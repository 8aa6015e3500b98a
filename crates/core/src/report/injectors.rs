//! The answer to the question of injectors: each set of them, and the feed that all hang on.

mod concerns;
mod controlled;
mod cures;
mod feed;
mod kick;
mod numbers;
mod pictures;
mod plain;
mod remedies;

use super::{Answer, Section, Tone, fuel};
use crate::{
    finding::Findings,
    injector::{self, Answer as Found, Inputs, On},
    message::Message,
    quantity::{Holds, Value},
    read::{self, Car, Injectors, Reader, Set},
    say,
};

/// A set of injectors with what was found of it.
struct Solved<'a> {
    set: Set,
    inputs: &'a Inputs,
    found: &'a Found,
}

impl Solved<'_> {
    fn path(&self, name: &str) -> String {
        self.set.path(name)
    }
}

pub(super) fn section(reader: &mut Reader<'_>, car: &Car<'_>, findings: &mut Findings) -> Section {
    let sets = [Set::First, Set::Second].map(|set| read::injectors(reader, car, set));
    let parts = read::feed_parts(reader);
    let found = sets.each_ref().map(|read| read.inputs.as_ref().map(injector::answer));
    let [first, second] = &sets;
    let [found_first, found_second] = &found;
    let mut answers = vec![of_set(first, found_first.as_ref(), reader, findings)];
    if is_begun(reader, Set::Second) {
        answers.push(of_set(second, found_second.as_ref(), reader, findings));
        for (answer, title) in
            answers.iter_mut().zip(["injectors.first-set", "injectors.second-set"])
        {
            answer.title = Some(say!(title));
        }
    }
    let asked = answers.len();
    let solved: Vec<_> = sets
        .iter()
        .zip(&found)
        .take(asked)
        .filter_map(|(read, found)| {
            Some(Solved { set: read.set, inputs: read.inputs.as_ref()?, found: found.as_ref()? })
        })
        .collect();
    answers.extend(feed::answer(reader, parts, &solved, asked, findings));
    answers.push(fuel::answer(reader, [first.count, second.count], car.highest_speed, findings));
    let answers = answers.into_iter().map(Into::into).collect();
    Section { id: "injectors", question: say!("injectors.question"), answers }
}

/// Whether anything is said of a set.
fn is_begun(reader: &Reader<'_>, set: Set) -> bool {
    let typed = |name: &&str| !reader.text(&set.path(name)).is_empty();
    crate::plan::Injectors::FIELDS.iter().any(typed)
}

fn of_set(
    read: &Injectors,
    found: Option<&Found>,
    reader: &Reader<'_>,
    findings: &mut Findings,
) -> Answer {
    let solved = read.inputs.as_ref().zip(found);
    let Some(solved) = solved.map(|(inputs, found)| Solved { set: read.set, inputs, found }) else {
        return open(read, reader);
    };
    let mut answer =
        if read.sharing_is_known { answered(&solved, findings) } else { alone(&solved) };
    answer.to_do.extend(taken(read));
    answer
}

/// What is still wanted before anything can be said.
fn open(read: &Injectors, reader: &Reader<'_>) -> Answer {
    let verdict =
        if read.resistance.is_missing() { "injectors.open" } else { "injectors.unreadable" };
    let mut answer = Answer::new(read.set.record(), Tone::Open, say!(verdict));
    let wanted = [
        ("resistance", "injectors.wants-resistance"),
        ("per_output", "injectors.wants-sharing"),
        ("output_limit", "injectors.wants-limit"),
    ];
    let blank = wanted.into_iter().filter(|(name, _)| reader.text(&read.set.path(name)).is_empty());
    answer.to_do = blank.map(|(_, code)| say!(code)).collect();
    answer
}

/// What one injector takes, where it is not known how many share an output.
fn alone(solved: &Solved<'_>) -> Answer {
    let Solved { set, inputs, found } = solved;
    let mut answer = Answer::new(set.record(), Tone::Open, say!("injectors.sharing-unknown"));
    let worst = &found.highest;
    answer.why = Some(say!(
        "injectors.one-alone",
        resistance = inputs.resistance.nominal,
        most = worst.output.high,
        corner = worst.corner.name
    ));
    answer.to_do = vec![say!("injectors.wants-sharing")];
    answer.figures = numbers::of_currents(inputs, found);
    answer.tables = vec![numbers::of_corners(inputs, found)];
    answer
}

fn answered(solved: &Solved<'_>, findings: &mut Findings) -> Answer {
    let Solved { inputs, found, .. } = solved;
    let mut answer = match &found.on {
        On::UnknownLimit => plain::limit_unknown(solved),
        On::PlainSwitch(carrying, cures) => plain::answer(solved, carrying, cures, findings),
        On::CurrentControlled(channel) => controlled::answer(solved, channel, findings),
    };
    answer.figures.splice(0..0, numbers::of_currents(inputs, found));
    answer.figures.extend(numbers::of_opening(found));
    answer.figures.extend(numbers::of_rise(inputs, found));
    answer.figures.extend(kick::figures(inputs, found));
    answer.tables.insert(0, numbers::of_corners(inputs, found));
    answer.pictures = pictures::pictures(inputs, found);
    kick::judge(solved, &mut answer, findings);
    concerns::of_opening(solved, findings);
    concerns::of_class(solved, findings);
    concerns::of_count(solved, findings);
    answer
}

/// What was taken where nothing was given.
fn taken(read: &Injectors) -> Option<Message> {
    let each = |(label, value): &(&str, Value)| format!("{label}: {}", value.shown);
    let list: Vec<_> = read.taken.iter().map(each).collect();
    (!list.is_empty()).then(|| say!("injectors.taken", list = list.join("; ")))
}

/// The corners at which something holds, as a verdict says them in a few words.
fn corners(holds: &Holds) -> String {
    match holds {
        Holds::Never => "nowhere".into(),
        Holds::AtSome(corners) if corners.len() > 2 => {
            format!("at {} of {} corners", corners.len(), injector::CORNERS)
        }
        Holds::AtSome(corners) => corners.join("; "),
        Holds::Always => "always".into(),
    }
}
