//! The answer to the question of the standing car: how long does the battery last with the key off?

mod drain;
mod judge;
mod numbers;
pub(crate) mod read;
pub(crate) mod words;

use std::rc::Rc;

use crate::{
    battery::until_half,
    car::Car,
    finding::Findings,
    message::Message,
    quantity::{Band, Charge},
    questions::Question,
    read::Entry,
    report::{Answer, Detail, Tone},
    say,
    schema::Part,
};

/// What makes the details of the answer.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Details {
    standing: fn(&TotalDrain, Option<&Band<Charge>>) -> Detail,
}

/// Named by the list of questions alone.
pub(crate) const DETAILS: Details = Details { standing: numbers::detail };

pub(crate) use drain::Memory;
use drain::TotalDrain;

/// What is said of the question before it is answered.
pub const QUESTION: Question = Question {
    id: "standing",
    name: "Standing",
    asks: words::QUESTION,
    pending: words::PENDING,
    parts: &[Part::Battery, Part::Controller],
    subjects: |_| Vec::new(),
};

/// The one answer.
pub(crate) fn answers(
    car: &Car<'_>,
    memory: &mut Memory,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    let Some(read) = &car.standing else {
        return vec![Answer::new("standing", Tone::Open, say!(words::BLANK)).into()];
    };
    let drain = TotalDrain::new(memory.recall(&car.outputs), read.controller, read.other);
    let capacity = read.capacity.value();
    let (tone, verdict) = match (&capacity, read.capacity) {
        (Some(capacity), _) => judge::verdict(&drain, &until_half(capacity, &drain.all)),
        (None, Entry::Unreadable) => (Tone::Open, say!(words::OPEN_MEND)),
        (None, _) => (Tone::Open, say!(words::OPEN)),
    };
    let mut answer = Answer::new("standing", tone, verdict);
    answer.why = Some(judge::why(&drain, capacity.as_ref()));
    answer.show(details.map(|it| (it.standing)(&drain, capacity.as_ref())));
    if let Some(capacity) = &capacity {
        answer.to_do = judge::cures(&drain, capacity);
        answer.cautions = vec![say!(words::CAUTION_METER)];
        answer.to_do.extend(not_counted(&drain, read.other.is_assumed()));
        judge::concerns(&drain, capacity, findings);
    }
    vec![answer.into()]
}

/// What is not counted, and what is counted as nothing.
fn not_counted(drain: &TotalDrain, is_other_taken: bool) -> impl Iterator<Item = Message> {
    let list = drain.left_out.join("; ");
    let left_out = (!list.is_empty()).then(|| say!(words::DO_LEFT_OUT, list = list));
    let measure = is_other_taken.then(|| say!(words::DO_MEASURE));
    left_out.into_iter().chain(measure)
}
