//! The answer to the question of the feeds: is everything fed by a big enough relay, fuse and wire?

mod beside;
mod judge;
mod numbers;
pub(crate) mod read;
pub(crate) mod words;

use std::rc::Rc;

use crate::{
    car::Car,
    finding::Findings,
    message::Message,
    questions::Question,
    report::{Answer, Detail, Tone},
    say,
    schema::Part,
    supply::cable::{AlternatorAnswer, CableAnswer},
};
use read::{PlannedCircuit, PlannedFeeds};

pub(crate) use read::Memory;

/// What makes the details of each answer.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Details {
    feeds: fn(&[PlannedCircuit]) -> Detail,
    cable: fn(&CableAnswer) -> Detail,
    alternator: fn(&AlternatorAnswer) -> Detail,
}

/// Named by the list of questions alone.
pub(crate) const DETAILS: Details = Details {
    feeds: numbers::of_feeds,
    cable: numbers::of_cable,
    alternator: numbers::of_alternator,
};

/// What is said of the question before it is answered.
pub const QUESTION: Question = Question {
    id: "feeds",
    name: "Feeds",
    asks: words::QUESTION,
    pending: words::PENDING,
    parts: &[Part::Relays, Part::SwitchedFeeds, Part::Wiring, Part::Battery],
    subjects: |_| Vec::new(),
};

/// The answers: the circuits, then the battery's cable and the alternator where something is said of them.
pub(crate) fn answers(
    car: &Car<'_>,
    _: &mut Memory,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    let feeds = &car.feeds;
    let mut answer = of_circuits(feeds, findings);
    let is_told = !feeds.circuits.is_empty();
    answer.show(details.filter(|_| is_told).map(|it| (it.feeds)(&feeds.circuits)));
    let mut answers = vec![answer];
    answers.extend(beside::cable(feeds, details, findings));
    answers.extend(beside::alternator(feeds, details, findings));
    answers.into_iter().map(Into::into).collect()
}

/// How many feeds are named before the rest is counted.
const NAMED: usize = 4;

fn of_circuits(feeds: &PlannedFeeds, findings: &mut Findings) -> Answer {
    let mut verdict: Option<judge::Told> = None;
    for circuit in &feeds.circuits {
        for told in judge::concerns(circuit, findings) {
            if verdict.as_ref().is_none_or(|it| told.rank < it.rank) {
                verdict = Some(told);
            }
        }
    }
    let open: Vec<&PlannedCircuit> =
        feeds.circuits.iter().filter(|it| !judge::is_known(it)).collect();
    let (tone, verdict) = match (verdict, feeds.circuits.as_slice()) {
        (Some(told), _) => (told.tone, told.verdict),
        (None, []) => (Tone::Open, say!(words::BLANK)),
        (None, _) if !open.is_empty() => {
            (Tone::Open, say!(words::OPEN, list = names(open.iter().copied())))
        }
        (None, [one]) => (Tone::Good, say!(words::GOOD_ONE, feed = one.name.clone())),
        (None, all) => (Tone::Good, say!(words::GOOD, count = all.len())),
    };
    let mut answer = Answer::new("feeds", tone, verdict);
    if feeds.circuits.is_empty() {
        return answer;
    }
    answer.title = Some(say!(words::TITLE));
    answer.to_do = to_do(&open);
    if !feeds.is_laid_known && open.is_empty() {
        answer.why = Some(say!(words::WHY_LAID));
    }
    if tone == Tone::Bad {
        answer.cautions.push(say!(words::CAUTION_FUSE));
    }
    answer
}

/// What would complete the plan: what to fit where it is known what a feed draws, and what has still to be typed.
fn to_do(open: &[&PlannedCircuit]) -> Vec<Message> {
    let fits: Vec<String> = open.iter().filter_map(|it| judge::fit_in_words(it)).collect();
    let fit = (!fits.is_empty()).then(|| say!(words::DO_FIT, list = fits.join("; ")));
    let wanting = |is_it: fn(&PlannedCircuit) -> bool| {
        let list: Vec<_> = open.iter().copied().filter(|it| is_it(it)).collect();
        (!list.is_empty()).then(|| names(list.into_iter()))
    };
    let draws = wanting(|it| it.wants_draws).map(|list| say!(words::DO_DRAWS, list = list));
    let parts = wanting(|it| !it.wants_draws && judge::fit_in_words(it).is_none())
        .map(|list| say!(words::DO_TYPE, list = list));
    fit.into_iter().chain(draws).chain(parts).collect()
}

/// Their names, the rest counted.
fn names<'a>(circuits: impl Iterator<Item = &'a PlannedCircuit>) -> String {
    let all: Vec<&str> = circuits.map(|it| it.name.as_str()).collect();
    let shown: Vec<&str> = all.iter().take(NAMED).copied().collect();
    let mut list = shown.join(", ");
    if let Some(more @ 1..) = all.len().checked_sub(NAMED) {
        list.push_str(&[" (+", &more.to_string(), ")"].concat());
    }
    list
}
