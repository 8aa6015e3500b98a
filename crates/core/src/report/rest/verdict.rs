//! The verdict in a few words.

use super::case::{Case, Subject};
use crate::{
    message::Message,
    output::{Judgement, Trouble},
    read::Unasked,
    report::{Tone, Verdict},
    say,
};

/// The verdict over all on-levels that are possible.
pub(super) fn verdict(subject: &Subject<'_>) -> Verdict {
    let heads: Vec<_> = subject.cases.iter().map(head).collect();
    let unasked = subject.load.unasked;
    let of = |head: Option<Trouble>| Verdict {
        tone: tone(head, unasked),
        message: message(head, unasked),
    };
    match heads.as_slice() {
        [one] => of(*one),
        [one, other] if one == other => of(*one),
        [Some(one), Some(other)] if forbids(*one, unasked) && forbids(*other, unasked) => {
            Verdict { tone: Tone::Bad, message: say!("rest.no-either-way") }
        }
        [_, _] => Verdict { tone: Tone::Doubtful, message: say!("rest.depends") },
        _ => Verdict { tone: Tone::Open, message: say!("rest.open-unsolved") },
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

fn head(case: &Case) -> Option<Trouble> {
    case.judgement.head().map(|found| found.trouble)
}

fn forbids(trouble: Trouble, unasked: Unasked) -> bool {
    let is_dangerous = unasked == Unasked::Dangerous;
    trouble.forbids() || (is_dangerous && trouble == Trouble::MayStayInAtRestart)
}

fn tone(head: Option<Trouble>, unasked: Unasked) -> Tone {
    match head {
        None => Tone::Good,
        Some(trouble) if forbids(trouble, unasked) => Tone::Bad,
        Some(_) => Tone::Doubtful,
    }
}

fn message(head: Option<Trouble>, unasked: Unasked) -> Message {
    let Some(trouble) = head else { return say!("rest.connect") };
    let code = match trouble {
        Trouble::LiveAtRest => "rest.no-live-at-rest",
        Trouble::LiveAtKeyOn => "rest.no-live-at-key-on",
        Trouble::LiveKeyOff => "rest.no-live-key-off",
        Trouble::MayStayIn => "rest.no-may-stay-in",
        Trouble::MayStayInKeyOff => "rest.no-may-stay-in-key-off",
        Trouble::ActsWithOther => "rest.no-acts-with-other",
        Trouble::MayStayInWithOther => "rest.no-may-stay-in-with-other",
        Trouble::NeverActs => "rest.no-never-acts",
        Trouble::ShortedByDiode => "rest.no-shorted-by-diode",
        Trouble::TooMuchCurrent => "rest.no-too-much-current",
        Trouble::KickTooStrong => "rest.no-kick-too-strong",
        Trouble::TooFast => "rest.no-too-fast",
        Trouble::WakesController => "rest.no-wakes-controller",
        Trouble::MayStayInAtRestart if forbids(trouble, unasked) => {
            "rest.no-may-stay-in-at-restart"
        }
        Trouble::MayStayInAtRestart => "rest.care-may-stay-in-at-restart",
        Trouble::Weak => "rest.care-weak",
        Trouble::Inrush => "rest.care-inrush",
        Trouble::Chatters => "rest.care-chatters",
        Trouble::KicksHeat => "rest.care-kicks-heat",
        Trouble::FeedsDeadFeed => "rest.care-feeds-dead-feed",
        Trouble::LeaksIntoController => "rest.care-leaks",
        Trouble::DrainsBattery => "rest.care-drains",
        Trouble::LiftsLogicRail => "rest.care-lifts-logic-rail",
        // bearable: never the reason of a verdict
        Trouble::WeakWhileCranking
        | Trouble::KickUncaught
        | Trouble::PulsedTooLittle
        | Trouble::ActsWithoutFeed
        | Trouble::ActsWithoutGround
        | Trouble::ActsWithoutSupply
        | Trouble::KeepsFeedAlive
        | Trouble::KeepsControllerAlive => "rest.connect",
    };
    say!(code)
}
