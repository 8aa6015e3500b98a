//! The answer to the question of cranking.

mod advice;
mod bounds;
mod detail;
mod extent;
pub mod fields;
mod figures;
mod judge;
mod otherwise;
mod picture;
mod problems;
pub(crate) mod read;
mod relays;
mod search;
mod supply;
mod unsearched;
pub(crate) mod words;

use std::rc::Rc;

use advice::{Advice, Best};
use otherwise::Otherwise;
use search::{Searched, StartSearch};

use crate::report::{Answer, Detail, Tone, recall::Recall};
use crate::{
    budget::Pool,
    car::Car,
    cranking::CrankingAnswer,
    cranking::{CrankingInputs, Starts, cost},
    finding::Findings,
    message::Message,
    plan::Plan,
    questions::Question,
    read::Wanted,
    read::{
        Known, Purpose, SpeedRelay,
        cranking::{Firings, WhichRelay},
        relay_records,
    },
    say, say_of,
    schema::Part,
    timeline::Interval,
};

/// What all relays of a plan may cost together, in steps, beside the starts that are followed once for all of them: about half a
/// second natively, and a few on a phone. Only relays that open at every dip of a start as long as it may be can cost more, where
/// they are several and the engine has many cylinders.
pub(crate) const MOST: u64 = 400_000_000;

/// What an answer follows from: the start of the engine, and the relay that it is about, where that is a further one.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct StartAsked {
    known: Rc<Known>,
    relay: Option<SpeedRelay>,
}

/// What was answered before, and the starts that were followed for it.
#[derive(Clone, Debug, Default)]
pub(crate) struct Memory {
    /// The firings of the engine as they were read last.
    pub(crate) firings: Option<Firings>,
    answers: Recall<StartAsked>,
    starts: Option<Rc<Starts>>,
    /// Steps that it took to follow them, where that was for this report.
    followed: u64,
}

impl Memory {
    /// All starts of an engine, followed anew where those before were of another.
    fn starts(&mut self, inputs: Option<&CrankingInputs>) -> Option<Rc<Starts>> {
        self.followed = 0;
        let Some(inputs) = inputs else {
            self.starts = None;
            return None;
        };
        if !self.starts.as_ref().is_some_and(|it| it.are_of(inputs)) {
            self.followed = cost::following(inputs);
            self.starts = Starts::follow(inputs).map(Rc::new);
        }
        self.starts.clone()
    }

    /// Steps that this report took: for the starts that were followed, and for the answers that were not recalled.
    pub(crate) fn worked(&self) -> u64 {
        self.answers.worked().saturating_add(self.followed)
    }

    /// Steps that its answers have spent together.
    #[cfg(test)]
    pub(crate) fn spent(&self) -> u64 {
        self.answers.spent()
    }
}

/// What is said of the question before it is answered.
pub const QUESTION: Question = Question {
    id: "cranking",
    name: "Relay",
    asks: words::QUESTION,
    pending: words::PENDING,
    parts: &[Part::Cranking, Part::Relays, Part::Controller],
    subjects,
};

fn subjects(plan: &Plan) -> Vec<String> {
    let further = relay_records::further(plan).into_iter();
    let relays = further.chain(relay_records::pumps_on_key(plan)).map(|at| Part::Relays.record(at));
    [Part::Cranking.name().to_owned()].into_iter().chain(relays).collect()
}

/// What makes the details of each answer.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Details {
    start: fn(&Known, &CrankingInputs, &CrankingAnswer, Option<&Best>, &Otherwise) -> Detail,
    outline: fn(&Known, &CrankingInputs, &CrankingAnswer) -> Detail,
    relay: fn(&SpeedRelay, Purpose, &CrankingInputs, &CrankingAnswer, Option<&Best>) -> Detail,
    running: fn(Interval) -> Detail,
}

/// Named by the list of questions alone.
pub(crate) const DETAILS: Details = Details {
    start: detail::of_start,
    outline: detail::of_outline,
    relay: detail::of_relay,
    running: detail::of_running,
};

/// The answers: the coils' relay, then each further one.
pub(crate) fn answers(
    car: &Car<'_>,
    memory: &mut Memory,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    let starts = memory.starts(car.cranking.inputs.as_ref());
    let (starts, memory) = (starts.as_deref(), &mut memory.answers);
    memory.turn();
    let mut pool = Pool::new(MOST, 1 + car.relays.len());
    let asked = StartAsked { known: Rc::clone(&car.cranking), relay: None };
    let own = memory.recall(asked, &mut pool, findings, |asked, budget, findings| {
        let known = &asked.known;
        let Some(inputs) = &known.inputs else {
            findings.extend(supply::feed_cut(known));
            return Some(open(known));
        };
        let Some(starts) = starts else { return Some(open(known)) };
        Some(answered(known, StartSearch { inputs, starts, budget }, details, findings))
    });
    // a plan that has other relays that follow the engine has told of those that there are
    let own = own.map(|it| if is_untold_beside(car) { Rc::new(none_of_coils()) } else { it });
    let others = relays::answers(car, &mut pool, (memory, starts), details, findings);
    let pumps = car.key_pumps.iter().map(|pump| Rc::new(relays::on_key::answer(pump, findings)));
    own.into_iter().chain(others).chain(pumps).collect()
}

/// Whether the coils have no relay that is switched at a speed, in a plan that has others which are.
fn is_untold_beside(car: &Car<'_>) -> bool {
    car.cranking.which == WhichRelay::Untold && !car.relays.is_empty()
}

fn none_of_coils() -> Answer {
    Answer::new("cranking", Tone::Good, say!(words::NO_COIL_RELAY))
}

fn open(known: &Known) -> Answer {
    let mut answer = Answer::new("cranking", Tone::Open, say!(words::OPEN));
    answer.why = Some(wants(known));
    answer
}

fn wants(known: &Known) -> Message {
    let names = known.wanted.iter().map(|wanted| {
        let code = match wanted {
            Wanted::Cylinders => words::WANTS_CYLINDERS,
            Wanted::Speed => words::WANTS_SPEED,
            Wanted::Threshold => words::WANTS_THRESHOLD,
        };
        say_of!(code).into_text()
    });
    say!(words::OPEN_WANTS, wanted = listed(&names.collect::<Vec<_>>()))
}

/// `a, b and c`.
fn listed(names: &[String]) -> String {
    match names.split_last() {
        Some((last, rest)) if !rest.is_empty() => format!("{} and {last}", rest.join(", ")),
        _ => names.concat(),
    }
}

fn answered(
    known: &Known,
    search: StartSearch<'_>,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Answer {
    let inputs = search.inputs;
    let result = match search.answer(true) {
        Searched::Whole(result) => result,
        Searched::TooMuch(outline) => {
            return unsearched(known, search, &outline, details, findings);
        }
    };
    let otherwise = Otherwise::new(search);
    let advice = advice::advice(search, &result, otherwise.is_quiet());
    let (tone, verdict, why) = match judge::verdict(known, inputs, &result) {
        // with no speed to set, none is wanted
        (Tone::Open | Tone::Good, ..) if !known.which.is_by_speed() => {
            (Tone::Good, say!(words::NOT_BY_SPEED), say!(words::NOT_BY_SPEED_WHY))
        }
        told => told,
    };
    findings.extend(problems::findings(known, inputs, &result, advice));
    findings.extend(otherwise.findings(known, inputs, &result, advice));
    let mut answer = Answer::new("cranking", tone, verdict);
    answer.why = Some(why);
    answer.to_do = to_do(known, inputs, advice);
    answer.cautions = cautions(known);
    // one number: where what is entered suits, no other is named as best
    let is_wanted = known.which.is_by_speed() && (tone != Tone::Good || inputs.threshold.is_none());
    let best = advice::best(search, &result).filter(|_| is_wanted);
    answer.show(details.map(|it| (it.start)(known, inputs, &result, best.as_ref(), &otherwise)));
    answer
}

/// Where following every start is too much: what can be told without.
fn unsearched(
    known: &Known,
    search: StartSearch<'_>,
    outline: &CrankingAnswer,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Answer {
    let inputs = search.inputs;
    let (tone, verdict, why) = unsearched::verdict(known, inputs, outline);
    let mut answer = Answer::new("cranking", tone, verdict);
    answer.why = Some(why);
    let finding = unsearched::finding(known, search);
    answer.to_do = (!known.wanted.is_empty()).then(|| wants(known)).into_iter().collect();
    answer.to_do.extend_from_slice(&finding.remedies);
    answer.to_do.extend(known.dip_is_assumed.then(|| say!(words::DO_MEASURE)));
    answer.cautions = cautions(known);
    findings.push(finding);
    findings.extend(problems::findings(known, inputs, outline, None));
    answer.show(details.map(|it| (it.outline)(known, inputs, outline)));
    answer
}

fn cautions(known: &Known) -> Vec<Message> {
    let mut cautions = vec![say!(words::CAUTION_CRANK)];
    // a plan that has the pump's relay is told of it there
    if !known.has_pump_relay {
        cautions.push(say!(words::CAUTION_PUMP));
    }
    cautions.push(say!(words::CAUTION_COIL));
    if known.power_up.is_none() {
        cautions.push(say!(words::relays::CAUTION_SPARK));
    }
    cautions
}

fn to_do(known: &Known, inputs: &CrankingInputs, advice: Option<Advice>) -> Vec<Message> {
    let mut steps = Vec::new();
    steps.extend((!known.wanted.is_empty()).then(|| wants(known)));
    steps.extend(advice.filter(|_| known.which.is_by_speed()).map(|it| it.step(known, inputs)));
    if known.dip_is_assumed {
        steps.push(say!(words::DO_MEASURE));
    }
    if known.which.is_by_speed() {
        steps.push(say!(words::DO_LISTEN));
        steps.push(say!(words::DO_STOP));
    }
    steps
}
#[cfg(test)]
mod tests;
