//! What stands below the answers: which numbers, tables and pictures, in which order.

use super::{SolvedSet, kick, numbers, pictures, plain, remedies};
use crate::{
    injector::{InjectorCures, On, carrying::Carrying, feed::InjectorFeed},
    questions::injectors::words,
    report::{Detail, Figure},
    say, say_of,
};

/// Of a set whose sharing is known.
pub(super) fn of_set(solved: &SolvedSet<'_>) -> Detail {
    let SolvedSet { inputs, found, .. } = solved;
    let mut detail = of_one(solved);
    match &found.on {
        On::UnknownLimit => {}
        On::PlainSwitch(carrying, cures) => of_plain(solved, carrying, cures, &mut detail),
        On::CurrentControlled(channel) => {
            detail.figures.extend(numbers::of_channel(inputs, found, channel));
        }
    }
    detail.figures.extend(numbers::of_opening(found));
    detail.figures.extend(numbers::of_rise(inputs, found));
    detail.figures.extend(kick::figures(inputs, found));
    detail.pictures = pictures::pictures(inputs, found);
    detail
}

/// Of a set of which it is not known how many share an output.
pub(super) fn of_one(solved: &SolvedSet<'_>) -> Detail {
    let SolvedSet { inputs, found, .. } = solved;
    Detail {
        figures: numbers::of_currents(inputs, found),
        tables: vec![numbers::of_corners(inputs, found)],
        ..Detail::default()
    }
}

fn of_plain(
    solved: &SolvedSet<'_>,
    carrying: &Carrying,
    cures: &InjectorCures,
    detail: &mut Detail,
) {
    let SolvedSet { inputs, found, .. } = solved;
    let margin = plain::margin_working(inputs, carrying);
    detail.figures.push(Figure::plain(say!(words::MARGIN), carrying.margin, margin));
    if carrying.has_margin() && found.turn_off.is_borne() {
        return;
    }
    detail.tables.push(remedies::table(&cures.side_by_side));
    if let Some(resistor) = cures.resistor() {
        detail.figures.extend(numbers::of_resistor(inputs, resistor));
        detail.figures.extend(numbers::of_rise_with(inputs, found, resistor));
        detail.tables.push(numbers::of_corners_with(inputs, found, resistor));
    }
}

/// Of the feed that all sets hang on.
pub(super) fn of_feed(feed: &InjectorFeed) -> Detail {
    let shares = [words::parts::FEED_SHARE, words::parts::FEED_SHARE_SECOND];
    let shares = shares
        .into_iter()
        .zip(&feed.shares)
        .map(|(code, share)| Figure::plain(say_of!(code), share.current, share.working.clone()));
    let total = [(words::parts::FEED_TOTAL, feed.total), (words::parts::FEED_LEAST, feed.least)];
    let total =
        total.map(|(code, value)| Figure::plain(say_of!(code), value, feed.working.clone()));
    Detail { figures: shares.chain(total).collect(), ..Detail::default() }
}
