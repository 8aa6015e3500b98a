//! The feed of all injectors: its relay and its fuse.

use super::Solved;
use crate::{
    finding::{Finding, Findings, Severity},
    injector::feed::{Feed, Share},
    read::{FeedParts, Reader, Set},
    report::{Answer, Figure, Tone},
    say,
};

const SUBJECT: &str = "injector_feed";
const FUSE: &str = "injector_feed.fuse";
const RELAY: &str = "injector_feed.relay";

/// The answer, once anything is said of the injectors or of the feed.
pub(super) fn answer(
    reader: &Reader<'_>,
    parts: FeedParts,
    solved: &[Solved<'_>],
    asked: usize,
    findings: &mut Findings,
) -> Option<Answer> {
    // it must not go while a field of the injectors is typed anew
    let typed = |set: Set| super::is_begun(reader, set);
    let has_parts = [FUSE, RELAY].into_iter().any(|path| !reader.text(path).is_empty());
    if !typed(Set::First) && !typed(Set::Second) && !has_parts {
        return None;
    }
    let shares: Vec<_> = solved.iter().filter_map(|it| Share::of(it.inputs, it.found)).collect();
    if shares.len() < asked {
        let mut answer = Answer::new(SUBJECT, Tone::Open, say!("injectors.feed-open"));
        let counted = solved.iter().all(|it| it.inputs.count.is_some());
        let wanted = if solved.len() == asked && !counted {
            "injectors.feed-wants-count"
        } else {
            "injectors.feed-wants-sets"
        };
        answer.title = Some(say!("injectors.feed"));
        answer.to_do = vec![say!(wanted)];
        return Some(answer);
    }
    Some(answered(&Feed::of(shares), parts, findings))
}

fn answered(feed: &Feed, parts: FeedParts, findings: &mut Findings) -> Answer {
    let fails = |rating| !feed.is_carried_by(rating);
    let (fuse_fails, relay_fails) = (parts.fuse.is_some_and(fails), parts.relay.is_some_and(fails));
    let (tone, verdict) = match (fuse_fails, relay_fails, parts.fuse, parts.relay) {
        (true, true, ..) => (Tone::Bad, say!("injectors.feed-both-small")),
        (true, ..) => (Tone::Bad, say!("injectors.feed-fuse-small")),
        (_, true, ..) => (Tone::Bad, say!("injectors.feed-relay-small")),
        (_, _, Some(_), Some(_)) => (Tone::Good, say!("injectors.feed-good")),
        _ => match feed.fuse {
            Some(fuse) => (Tone::Open, say!("injectors.feed-wanted", fuse = fuse)),
            None => (Tone::Doubtful, say!("injectors.feed-too-much")),
        },
    };
    let mut answer = Answer::new(SUBJECT, tone, verdict);
    answer.title = Some(say!("injectors.feed"));
    let counts: Vec<String> = feed.shares.iter().map(|share| share.count.to_string()).collect();
    let is_cured = feed.shares.iter().any(|share| share.is_cured);
    let takes = if is_cured { "injectors.feed-takes-cured" } else { "injectors.feed-takes" };
    answer.why = Some(say!(takes, counts = counts.join(" + "), total = feed.total));
    answer.to_do = match feed.fuse {
        Some(fuse) => vec![say!("injectors.feed-fit", fuse = fuse), say!("injectors.feed-wire")],
        None => vec![say!("injectors.feed-split")],
    };
    for (code, share) in
        ["injectors.feed-share", "injectors.feed-share-second"].into_iter().zip(&feed.shares)
    {
        answer.figures.push(Figure::plain(say!(code), share.current, share.working.clone()));
    }
    let total = [("injectors.feed-total", feed.total), ("injectors.feed-least", feed.least)];
    let figures = total.map(|(code, value)| Figure::plain(say!(code), value, feed.working.clone()));
    answer.figures.extend(figures);
    answer.cautions.push(say!("injectors.feed-caution"));
    for (path, rating, code) in [
        (FUSE, parts.fuse, "injectors.fuse-too-small"),
        (RELAY, parts.relay, "injectors.relay-too-small"),
    ] {
        let Some(rating) = rating.filter(|rating| fails(*rating)) else { continue };
        let message = say!(code, rating = rating, total = feed.total, least = feed.least);
        findings.push(
            Finding::new(Severity::Fault, path, message)
                .cured_by(answer.to_do.iter().cloned())
                .shown_by(feed.working.iter().cloned()),
        );
    }
    answer
}
