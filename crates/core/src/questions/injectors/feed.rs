//! The feed of all injectors: its relay and its fuse.

use super::SolvedSet;
use crate::{
    car::Car,
    fields,
    finding::{Finding, Findings, Severity},
    injector::feed::{InjectorFeed, Share},
    message::Edit,
    quantity::{Current, Measure},
    questions::injectors::words,
    read::FeedParts,
    report::{Answer, Detail, Tone},
    say, say_of,
    schema::Key,
    schema::Part,
    supply::circuit::Exposed,
};

const SUBJECT: &str = "injector_feed";
const FUSE: Key<Current> = fields::relays::FUSE;
const RELAY: Key<Current> = fields::relays::RATING;

/// The answer, once anything is said of the injectors or of the feed.
pub(super) fn answer(
    car: &Car<'_>,
    solved: &[SolvedSet<'_>],
    asked: usize,
    detail: Option<fn(&InjectorFeed) -> Detail>,
    findings: &mut Findings,
) -> Option<Answer> {
    // it must not go while a field of the injectors is typed anew
    let is_begun = [Part::Injectors, Part::SecondInjectors].into_iter().any(|it| car.is_begun(it));
    if !is_begun && car.injector_feed.at.is_none() {
        return None;
    }
    let duty = car.injector_feed.duty;
    let share = |it: &SolvedSet<'_>| Share::of(it.inputs, it.found, duty);
    let shares: Vec<_> = solved.iter().filter_map(share).collect();
    if shares.len() < asked {
        let mut answer = Answer::new(SUBJECT, Tone::Open, say!(words::parts::FEED_OPEN));
        let counted = solved.iter().all(|it| it.inputs.count.is_some());
        let wanted = if solved.len() == asked && !counted {
            words::parts::FEED_WANTS_COUNT
        } else {
            words::parts::FEED_WANTS_SETS
        };
        answer.title = Some(say!(words::parts::FEED));
        answer.to_do = vec![say_of!(wanted)];
        return Some(answer);
    }
    let exposed = car.injector_feed.at.and_then(|at| car.feeds.exposed(at));
    let shared = car.injector_feed.at.and_then(|at| car.feeds.shared(at));
    let feed = InjectorFeed::of(shares, car.injector_feed.others);
    let mut answer = answered(&feed, car.injector_feed, (exposed, shared), findings);
    answer.show(detail.map(|detail| detail(&feed)));
    Some(answer)
}

fn answered(
    feed: &InjectorFeed,
    parts: FeedParts,
    (exposed, shared): (Option<Exposed>, Option<Tone>),
    findings: &mut Findings,
) -> Answer {
    // what carries more than injectors is judged with all that it carries
    let fails = |rating| shared.is_none() && !feed.is_carried_by(rating);
    let (fuse_fails, relay_fails) = (parts.fuse.is_some_and(fails), parts.relay.is_some_and(fails));
    let (tone, verdict) = match (fuse_fails, relay_fails, parts.fuse, parts.relay) {
        (true, true, ..) => (Tone::Bad, say!(words::parts::FEED_BOTH_SMALL)),
        (true, ..) => (Tone::Bad, say!(words::parts::FEED_FUSE_SMALL)),
        (_, true, ..) => (Tone::Bad, say!(words::parts::FEED_RELAY_SMALL)),
        _ if shared == Some(Tone::Bad) => (Tone::Bad, say!(words::parts::FEED_SHARED)),
        (_, _, Some(_), _) if exposed.is_some() => {
            let is_hair = exposed == Some(Exposed::WireBarely);
            let tone = if is_hair { Tone::Doubtful } else { Tone::Bad };
            (tone, say!(words::parts::FEED_FUSE_BIG))
        }
        _ if shared.is_some_and(|it| it != Tone::Good) => {
            (shared.unwrap_or(Tone::Open), say!(words::parts::FEED_SHARED))
        }
        (_, _, Some(_), Some(_)) => (Tone::Good, say!(words::parts::FEED_GOOD)),
        _ => match feed.fuse {
            Some(fuse) => (Tone::Open, say!(words::parts::FEED_WANTED, fuse = fuse)),
            None => (Tone::Doubtful, say!(words::parts::FEED_TOO_MUCH)),
        },
    };
    let mut answer = Answer::new(SUBJECT, tone, verdict);
    answer.title = Some(say!(words::parts::FEED));
    let counts: Vec<String> = feed.shares.iter().map(|share| share.count.to_string()).collect();
    let is_cured = feed.shares.iter().any(|share| share.is_cured);
    let takes = if is_cured { words::parts::FEED_TAKES_CURED } else { words::parts::FEED_TAKES };
    let why = say_of!(takes, counts = counts.join(" + "), total = feed.total);
    let beside = say!(words::parts::FEED_BESIDE, others = feed.others);
    let has_others = feed.others.base() > 0.0;
    answer.why = Some(if has_others { why.and_then(&beside) } else { why });
    answer.to_do = match feed.fuse {
        _ if shared.is_some() => vec![say!(words::parts::FEED_WIRE)],
        // what is planned and suits is not told anew
        Some(_) if tone == Tone::Good => vec![say!(words::parts::FEED_WIRE)],
        Some(fuse) => {
            let fit = say!(words::parts::FEED_FIT, fuse = fuse);
            vec![fit.done_by(fitted(parts, fuse)), say!(words::parts::FEED_WIRE)]
        }
        None => vec![say!(words::parts::FEED_SPLIT)],
    };
    answer.cautions.push(say!(words::parts::FEED_CAUTION));
    for (path, rating, code) in [
        (FUSE, parts.fuse, words::parts::FUSE_TOO_SMALL),
        (RELAY, parts.relay, words::parts::RELAY_TOO_SMALL),
    ] {
        let Some(rating) = rating.filter(|rating| fails(*rating)) else { continue };
        let path = path.at(parts.at.unwrap_or_default());
        let message = say_of!(code, rating = rating, total = feed.total, least = feed.least);
        findings.push(
            Finding::new(Severity::Fault, path, message)
                .cured_by(answer.to_do.iter().cloned())
                .shown_by(feed.working.iter().cloned()),
        );
    }
    answer
}

/// The edits that put this fuse before the feed, and a contact behind it that is rated for as much where a smaller one is
/// planned; none where there is no such relay yet.
fn fitted(parts: FeedParts, fuse: Current) -> Vec<Edit> {
    let Some(at) = parts.at else { return Vec::new() };
    let larger = parts.relay.is_some_and(|rating| rating < fuse);
    let keys = [FUSE, RELAY].into_iter().take(if larger { 2 } else { 1 });
    keys.map(|key| key.at(at).edit(fuse.show().into_shown())).collect()
}
