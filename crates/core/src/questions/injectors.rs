//! The answer to the question of injectors: each set of them, and the feed that all hang on.

mod concerns;
mod controlled;
mod cures;
mod detail;
mod feed;
pub mod fields;
mod kick;
mod numbers;
mod pictures;
mod plain;
pub(crate) mod read;
mod remedies;
pub(crate) mod words;

use std::rc::Rc;

use crate::questions::fuel::{self, FuelDetails};
use crate::report::{Answer, Detail, Tone};
use crate::{
    car::Car,
    finding::Findings,
    injector::{self, InjectorAnswer, InjectorInputs, On, feed::InjectorFeed},
    message::Message,
    quantity::{Holds, Measure, Value},
    questions::Question,
    read::{Injectors, WhichSet},
    say, say_of,
    schema::Key,
    schema::Part,
};

/// A set of injectors with what was found of it.
struct SolvedSet<'a> {
    set: WhichSet,
    inputs: &'a InjectorInputs,
    found: &'a InjectorAnswer,
}

impl<'a> SolvedSet<'a> {
    fn new(read: &'a Injectors, found: Option<&'a InjectorAnswer>) -> Option<Self> {
        Some(Self { set: read.set, inputs: read.inputs.as_ref()?, found: found? })
    }

    /// What is in line on each of its wires, as a person says it.
    fn in_line(&self) -> Value {
        let (own, fitted) = (self.inputs.resistance.nominal, self.inputs.resistor.nominal);
        if fitted.base() > 0.0 {
            return own.show().said(format!(
                "{} + {}",
                own.show().shown,
                cures::sold(fitted).shown
            ));
        }
        own.show()
    }

    /// A field of the set.
    fn key<T>(&self, key: Key<T>) -> Key<T> {
        key.of(self.set.part())
    }
}

/// What is said of the question before it is answered.
pub const QUESTION: Question = Question {
    id: "injectors",
    name: "Fuel",
    asks: words::QUESTION,
    pending: words::PENDING,
    parts: &[Part::Injectors, Part::SecondInjectors, Part::Fuel, Part::Relays],
    subjects: |_| vec![Part::Injectors.name().to_owned(), Part::Fuel.name().to_owned()],
};

/// What was solved of each set, and what it followed from: another edit leaves it as it is.
#[derive(Clone, Debug, Default)]
pub(crate) struct Memory {
    sets: [Option<(InjectorInputs, Rc<InjectorAnswer>)>; 2],
}

impl Memory {
    /// What comes of each set, worked out only where something of it is new.
    pub(crate) fn recall(&mut self, read: &[Injectors; 2]) -> [Option<Rc<InjectorAnswer>>; 2] {
        for (known, read) in self.sets.iter_mut().zip(read) {
            if known.as_ref().map(|(inputs, _)| inputs) != read.inputs.as_ref() {
                let solved = |inputs: &InjectorInputs| Rc::new(injector::answer(inputs));
                *known = read.inputs.as_ref().map(|inputs| (inputs.clone(), solved(inputs)));
            }
        }
        self.sets.each_ref().map(|known| known.as_ref().map(|(_, found)| Rc::clone(found)))
    }
}

/// What makes the details of each answer.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Details {
    set: fn(&SolvedSet<'_>) -> Detail,
    one: fn(&SolvedSet<'_>) -> Detail,
    feed: fn(&InjectorFeed) -> Detail,
    fuel: &'static FuelDetails,
}

/// Named by the list of questions alone.
pub(crate) const DETAILS: Details = Details {
    set: detail::of_set,
    one: detail::of_one,
    feed: detail::of_feed,
    fuel: &fuel::DETAILS,
};

/// The answers: each set, the feed, the fuel.
pub(crate) fn answers(
    car: &Car<'_>,
    _: &mut Memory,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    let found = &car.injected;
    let [first, second] = &car.injectors;
    let [found_first, found_second] = found.each_ref().map(Option::as_deref);
    let mut answers = vec![of_set(first, found_first, car, details, findings)];
    if car.is_begun(Part::SecondInjectors) {
        answers.push(of_set(second, found_second, car, details, findings));
        for (answer, title) in
            answers.iter_mut().zip([words::parts::FIRST_SET, words::parts::SECOND_SET])
        {
            answer.title = Some(say_of!(title));
        }
    }
    let asked = answers.len();
    let solved: Vec<_> = car
        .injectors
        .iter()
        .zip(found)
        .take(asked)
        .filter_map(|(read, found)| SolvedSet::new(read, found.as_deref()))
        .collect();
    answers.extend(feed::answer(car, &solved, asked, details.map(|it| it.feed), findings));
    answers.push(fuel::answer(car.fuel.as_ref(), details.map(|it| it.fuel), findings));
    answers.into_iter().map(Into::into).collect()
}

fn of_set(
    read: &Injectors,
    found: Option<&InjectorAnswer>,
    car: &Car<'_>,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Answer {
    let Some(solved) = SolvedSet::new(read, found) else { return open(read, car) };
    let mut answer = if read.sharing_is_known {
        let mut answer = answered(&solved, findings);
        answer.show(details.map(|it| (it.set)(&solved)));
        answer
    } else {
        let mut answer = alone(&solved);
        answer.show(details.map(|it| (it.one)(&solved)));
        answer
    };
    answer.assume(taken(read));
    answer
}

/// What is still wanted before anything can be said.
fn open(read: &Injectors, car: &Car<'_>) -> Answer {
    let verdict = if read.resistance.is_missing() { words::OPEN } else { words::UNREADABLE };
    let mut answer = Answer::new(read.set.part().name(), Tone::Open, say_of!(verdict));
    let wanted = [
        (crate::fields::injectors::RESISTANCE.place(), words::WANTS_RESISTANCE),
        (crate::fields::injectors::PER_OUTPUT.place(), words::WANTS_SHARING),
        (crate::fields::injectors::OUTPUT_LIMIT.place(), words::WANTS_LIMIT),
    ];
    let blank = wanted.into_iter().filter(|(place, _)| !car.is_typed(place.of(read.set.part())));
    answer.to_do = blank.map(|(_, code)| say_of!(code)).collect();
    answer
}

/// What one injector takes, where it is not known how many share an output.
fn alone(solved: &SolvedSet<'_>) -> Answer {
    let SolvedSet { set, inputs, found } = solved;
    let mut answer = Answer::new(set.part().name(), Tone::Open, say!(words::SHARING_UNKNOWN));
    let worst = &found.highest;
    answer.why = Some(say!(
        words::ONE_ALONE,
        resistance = inputs.resistance.nominal,
        most = worst.output.high,
        corner = worst.corner.name
    ));
    answer.to_do = vec![say!(words::WANTS_SHARING)];
    answer
}

fn answered(solved: &SolvedSet<'_>, findings: &mut Findings) -> Answer {
    let mut answer = match &solved.found.on {
        On::UnknownLimit => plain::limit_unknown(solved),
        On::PlainSwitch(carrying, cures) => plain::answer(solved, carrying, cures, findings),
        On::CurrentControlled(channel) => controlled::answer(solved, channel, findings),
    };
    kick::judge(solved, &mut answer, findings);
    concerns::of_resistor(solved, &mut answer, findings);
    concerns::of_diode(solved, &mut answer, findings);
    concerns::of_opening(solved, findings);
    concerns::of_class(solved, findings);
    concerns::of_count(solved, findings);
    answer
}

/// What was taken where nothing was given.
fn taken(read: &Injectors) -> Option<Message> {
    let each = |(label, value): &(&str, Value)| format!("{label}: {}", value.shown);
    let list: Vec<_> = read.taken.iter().map(each).collect();
    (!list.is_empty()).then(|| say!(words::TAKEN, list = list.join("; ")))
}

/// The corners at which something holds, as a verdict says them in a few words.
fn corners(holds: &Holds) -> String {
    match holds {
        Holds::Never => "nowhere".into(),
        Holds::AtSome(corners) if corners.len() > 2 => {
            format!("in {} of {} cases", corners.len(), injector::CORNERS)
        }
        Holds::AtSome(corners) => corners.join("; "),
        Holds::Always => "always".into(),
    }
}
