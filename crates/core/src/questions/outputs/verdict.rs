//! The verdict in a few words.

use super::{
    case::{LoadAtLevel, Subject},
    told::{self, forbids},
    trouble::is_fault,
};
use crate::{
    message::Message,
    output::{Judgement, Trouble},
    questions::outputs::words,
    read::Unasked,
    report::{Tone, Verdict},
    say, say_of,
};

/// The verdict over all on-levels that are possible.
pub(super) fn verdict(subject: &Subject<'_>) -> Verdict {
    let heads: Vec<_> = subject.cases.iter().map(head).collect();
    let unasked = subject.load.unasked;
    let of = |head: Option<Trouble>| {
        if head.is_some_and(|it| it == Trouble::Inrush && is_fault(it, subject.load)) {
            return Verdict { tone: Tone::Bad, message: say!(words::NO_INRUSH) };
        }
        Verdict { tone: tone(head, unasked), message: message(head, unasked) }
    };
    if subject.is_measured_first() {
        return Verdict { tone: Tone::Doubtful, message: say!(words::MEASURE_FIRST) };
    }
    match heads.as_slice() {
        [one] => of(*one),
        [one, other] if one == other => of(*one),
        [Some(one), Some(other)] if forbids(*one, unasked) && forbids(*other, unasked) => {
            Verdict { tone: Tone::Bad, message: say!(words::NO_EITHER_WAY) }
        }
        [_, _] => Verdict { tone: Tone::Doubtful, message: say!(words::DEPENDS) },
        _ => Verdict { tone: Tone::Open, message: say!(words::OPEN_UNSOLVED) },
    }
}

/// Whether the on-levels that are possible give different answers.
pub(super) fn depends_on_level(subject: &Subject<'_>) -> bool {
    matches!(subject.cases.as_slice(), [one, other] if head(one) != head(other))
}

/// The words for one case.
pub(super) fn of_judgement(judgement: &Judgement, unasked: Unasked) -> Message {
    message(judgement.head().map(|found| found.trouble), unasked)
}

fn head(case: &LoadAtLevel) -> Option<Trouble> {
    case.judgement.head().map(|found| found.trouble)
}

fn tone(head: Option<Trouble>, unasked: Unasked) -> Tone {
    match head {
        None => Tone::Good,
        Some(trouble) if forbids(trouble, unasked) => Tone::Bad,
        Some(_) => Tone::Doubtful,
    }
}

fn message(head: Option<Trouble>, unasked: Unasked) -> Message {
    let Some(trouble) = head else { return say!(words::CONNECT) };
    say_of!(told::verdict(trouble, unasked))
}
