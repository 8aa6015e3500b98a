//! What feeds the coils: relay, fuse and lead.

use crate::report::{Answer, Detail, Figure, Row, Table, Tone};
use crate::{
    coil::{
        self, AtSpeed,
        feed::{CoilFeed, CoilFeedParts},
        held::BurningPart,
    },
    cranking::USUAL_THRESHOLD_RPM,
    fields::{self, relays::SwitchedBy},
    finding::{Finding, Findings, Severity},
    message::Message,
    quantity::{Area, Current, Measure, Power, Time, Value, Voltage, amperes, rpm, volts},
    questions::coils::{starting::charges_at_rest, words},
    read::{self, Coiled},
    say,
    schema::Choice as _,
    supply::circuit::Exposed,
    tables::fuses,
};

/// More than this between battery and coils is too much: common practice, no source.
fn most_drop() -> Voltage {
    volts(0.3)
}

/// What makes the details: of the feed, and of each bank's with its cylinders.
pub(super) type Detailing = fn(&CoilFeed, &[(Vec<u32>, CoilFeed)]) -> Detail;

/// What its fuse leaves exposed, and what fuse and contact come to where they carry more than the coils.
pub(super) type AtRelay = (Option<Exposed>, Option<Tone>);

/// The answer: open until it is known how often the coils are charged.
pub(super) fn answer(
    read: &Coiled,
    found: &coil::CoilAnswer,
    at_relay: AtRelay,
    detailing: Option<Detailing>,
    findings: &mut Findings,
) -> Answer {
    let parts = &read.parts;
    let Some(at) = &found.at_speed else {
        let mut answer = Answer::new("coils.feed", Tone::Open, say!(words::FEED_OPEN));
        answer.title = Some(say!(words::FEED_TITLE));
        answer.why = held_in_words(read, found);
        return answer;
    };
    let banks = by_bank(at, parts);
    let feed = worst(&banks).cloned().unwrap_or_else(|| CoilFeed::new(&at.taken, parts));
    let (tone, verdict) = verdict(&feed, (read, found), at_relay);
    let mut answer = Answer::new("coils.feed", tone, verdict);
    answer.title = Some(say!(words::FEED_TITLE));
    answer.why = Some(say!(
        words::FEED_WHY,
        coils = feed.coils,
        relays = parts.relays,
        mean = feed.mean,
        speed = at.taken.at,
        effective = feed.effective,
        peak = feed.peak,
        at_once = at.taken.at_once
    ));
    if let Some(saved) = held_in_words(read, found) {
        answer.why = answer.why.map(|why| why.and_then(&saved));
    }
    // what is planned and suits is not told anew
    answer.to_do = match feed.fuse {
        // with all that they carry
        _ if at_relay.1.is_some() => Vec::new(),
        Some(_) if tone == Tone::Good => Vec::new(),
        // the fuse that is there suits: what is wanting is what its relay bears
        Some(_) if tone == Tone::Open && parts.fuse.is_some() => vec![say!(words::DO_RATING)],
        Some(fuse) => {
            vec![say!(words::FEED_FIT, fuse = fuse, peak = feed.peak, relays = parts.relays)]
        }
        None => vec![say!(words::FEED_SPLIT)],
    };
    answer.to_do.push(say!(words::FEED_GROUND));
    answer.show(detailing.map(|detail| detail(&feed, &banks)));
    concerns(&feed, read, at_relay.1.is_some(), findings);
    answer
}

fn verdict(
    feed: &CoilFeed,
    (read, found): (&Coiled, &coil::CoilAnswer),
    (exposed, shared): AtRelay,
) -> (Tone, Message) {
    let parts = &read.parts;
    let is_alone = shared.is_none();
    let fuse_fails = is_alone && parts.fuse.is_some_and(|rating| !feed.is_fused_by(rating));
    let relay_fails = is_alone && parts.relay.is_some_and(|rating| !feed.is_switched_by(rating));
    let drops = feed.drop.filter(|drop| *drop > most_drop());
    match (fuse_fails, relay_fails, drops) {
        (true, true, _) => (Tone::Bad, say!(words::FEED_BOTH_SMALL)),
        (true, ..) => (Tone::Bad, say!(words::FEED_FUSE_SMALL)),
        (_, true, _) => (Tone::Bad, say!(words::FEED_RELAY_SMALL)),
        _ if shared == Some(Tone::Bad) => (Tone::Bad, say!(words::FEED_SHARED)),
        _ if exposed == Some(Exposed::WireBarely) => (Tone::Doubtful, say!(words::FEED_FUSE_BIG)),
        _ if exposed.is_some() => (Tone::Bad, say!(words::FEED_FUSE_BIG)),
        (.., Some(drop)) => (Tone::Doubtful, say!(words::FEED_LEAD_THIN, drop = drop)),
        _ if shared == Some(Tone::Doubtful) => (Tone::Doubtful, say!(words::FEED_SHARED)),
        _ if is_held(read, found) => (Tone::Doubtful, say!(words::FEED_OUTLASTS)),
        _ if shared == Some(Tone::Open) => (Tone::Open, say!(words::FEED_SHARED)),
        _ if parts.fuse.is_some() && parts.relay.is_some() => (Tone::Good, say!(words::FEED_GOOD)),
        _ if parts.fuse.is_some() => (Tone::Open, say!(words::FEED_UNRATED)),
        _ => wanted(feed, parts.relays),
    }
}

/// Whether an input of this plan keeps a coil on that burns before its fuse blows.
fn is_held(read: &Coiled, found: &coil::CoilAnswer) -> bool {
    held(read, found).is_some() || charges_at_rest(read) && burns_at_rest(read, found)
}

fn wanted(feed: &CoilFeed, relays: u32) -> (Tone, Message) {
    match feed.fuse {
        Some(fuse) => (Tone::Open, say!(words::FEED_WANTED, fuse = fuse, relays = relays)),
        None => (Tone::Doubtful, say!(words::FEED_TOO_MUCH)),
    }
}

/// The feed of each bank's relay, with its cylinders, where there is one for each bank.
fn by_bank(at: &AtSpeed, parts: &CoilFeedParts) -> Vec<(Vec<u32>, CoilFeed)> {
    if u32::try_from(at.banks.len()) != Ok(parts.relays) || at.banks.len() < 2 {
        return Vec::new();
    }
    let alone = CoilFeedParts { relays: 1, ..*parts };
    at.banks.iter().map(|(bank, taken)| (bank.clone(), CoilFeed::new(taken, &alone))).collect()
}

fn worst(banks: &[(Vec<u32>, CoilFeed)]) -> Option<&CoilFeed> {
    let by_heat = |one: &&CoilFeed, other: &&CoilFeed| {
        one.effective.base().total_cmp(&other.effective.base())
    };
    banks.iter().map(|(_, feed)| feed).max_by(by_heat)
}

pub(super) fn detail(feed: &CoilFeed, banks: &[(Vec<u32>, CoilFeed)]) -> Detail {
    let tables = table(banks).into_iter().collect();
    Detail { figures: figures(feed), tables, ..Detail::default() }
}

/// What each bank's relay carries.
fn table(banks: &[(Vec<u32>, CoilFeed)]) -> Option<Table> {
    let row = |(bank, feed): &(Vec<u32>, CoilFeed)| Row {
        cells: vec![
            Value::text(read::written(bank)),
            feed.mean.into(),
            feed.effective.into(),
            feed.peak.into(),
        ],
        tone: None,
    };
    (!banks.is_empty()).then(|| Table {
        caption: say!(words::TABLE_BANKS),
        columns: vec![
            say!(words::COLUMN_BANK),
            say!(words::COLUMN_MEAN),
            say!(words::COLUMN_EFFECTIVE),
            say!(words::COLUMN_PEAK),
        ],
        rows: banks.iter().map(row).collect(),
        working: banks.iter().flat_map(|(_, feed)| feed.working.clone()).collect(),
    })
}

fn figures(feed: &CoilFeed) -> Vec<Figure> {
    let steps = || feed.working.clone();
    let mut figures = vec![
        Figure::plain(say!(words::FIGURE_MEAN), feed.mean, steps()),
        Figure::plain(say!(words::FIGURE_EFFECTIVE), feed.effective, steps()),
        Figure::plain(say!(words::FIGURE_PEAK), feed.peak, steps()),
        Figure::plain(say!(words::FIGURE_LEAST), feed.least, steps()),
    ];
    if let Some(drop) = feed.drop {
        figures.push(Figure::plain(say!(words::FIGURE_DROP), drop, steps()));
    }
    figures
}

fn concerns(feed: &CoilFeed, read: &Coiled, is_shared: bool, findings: &mut Findings) {
    let parts = &read.parts;
    let shown = |finding: Finding| finding.shown_by(feed.working.iter().cloned());
    if let Some(rating) = parts.fuse.filter(|it| !is_shared && !feed.is_fused_by(*it)) {
        let message = say!(
            words::FUSE_TOO_SMALL,
            rating = rating,
            effective = feed.effective,
            least = feed.least
        );
        let key = fields::relays::FUSE.at(read.relay);
        let larger = feed.fuse.map(|fuse| {
            say!(words::FUSE_LARGER, fuse = fuse).done_by(vec![key.edit(fuse.show().into_shown())])
        });
        findings.push(shown(Finding::new(Severity::Fault, key, message).cured_by(larger)));
    }
    if let Some(rating) = parts.relay.filter(|it| !is_shared && !feed.is_switched_by(*it)) {
        let message = say!(
            words::RELAY_TOO_SMALL,
            rating = rating,
            effective = feed.effective,
            peak = feed.peak
        );
        findings.push(shown(Finding::new(
            Severity::Fault,
            fields::relays::RATING.at(read.relay),
            message,
        )));
    }
    if let Some(drop) = feed.drop.filter(|it| *it > most_drop()) {
        let message = say!(words::LEAD_DROPS, drop = drop, peak = feed.peak, most = most_drop());
        findings.push(shown(Finding::new(
            Severity::Doubt,
            fields::relays::LEAD_SIZE.at(read.relay),
            message,
        )));
    }
}

/// A relay that cuts the coils as the engine stands.
pub(super) fn speed_relay(read: &Coiled) -> Option<Message> {
    let (on_at, by) = (fields::relays::RELAY_ON_AT, fields::relays::SWITCHED_BY);
    let speed = rpm(USUAL_THRESHOLD_RPM);
    let edits = vec![
        by.at(read.relay).edit(SwitchedBy::Speed.choosable().code),
        on_at.at(read.relay).edit(speed.show().into_shown()),
    ];
    let cure = say!(words::SPEED_RELAY, speed = speed);
    read.cut_below.is_none().then(|| if read.has_relay { cure.done_by(edits) } else { cure })
}

/// What burns, and when, of a coil that is held on.
struct Burning {
    /// What its fuse does meanwhile.
    fuse: String,
    /// What burns first.
    part: String,
    heat: Power,
    /// When it is 100 K hotter.
    time: Time,
}

/// Nothing where the fuse blows before, or where the output lets go by itself.
fn burning(read: &Coiled, found: &coil::CoilAnswer) -> Option<Burning> {
    let (fuse, held) = (read.parts.fuse?, &found.held);
    let (part, time) = held.first;
    let (outlasts, holds) = held.outlasts(fuse);
    if !outlasts || read.lets_go.is_some_and(|it| it < time) {
        return None;
    }
    let fuse = match holds {
        Some(holds) => say!(words::FUSE_HOLDS_FOR, rating = fuse, time = holds),
        None => say!(words::FUSE_HOLDS_FOR_EVER, rating = fuse),
    };
    let (part, heat) = match part {
        BurningPart::Coil => (say!(words::THE_COIL), held.in_coil.nominal),
        BurningPart::Igniter => (say!(words::THE_IGNITER), held.in_igniter),
    };
    Some(Burning { fuse: fuse.into_text(), part: part.into_text(), heat, time })
}

/// Whether a coil that is held on with the engine stopped burns before its fuse blows, and no relay cuts it.
pub(super) fn burns_at_rest(read: &Coiled, found: &coil::CoilAnswer) -> bool {
    read.cut_below.is_none() && burning(read, found).is_some()
}

/// What a coil comes to that is held on; with a relay that follows the engine, what that saves and what it does not. Where an input
/// of the plan holds it, that is found by itself.
fn held_in_words(read: &Coiled, found: &coil::CoilAnswer) -> Option<Message> {
    let Burning { fuse, part, time, .. } = burning(read, found)?;
    if let Some(speed) = read.cut_below {
        return Some(say!(
            words::HELD_BUT_CUT,
            speed = speed,
            fuse = fuse,
            part = part,
            time = time
        ));
    }
    let current = found.held.taken;
    (read.unasked.is_none())
        .then(|| say!(words::HELD_WOULD, current = current, fuse = fuse, part = part, time = time))
}

/// A coil that is held on behind its fuse, where an input of this plan does that: while the controller is not up. That a stuck output
/// or a wrong setting would do it holds of every car, and is no finding about this one.
pub(super) fn held(read: &Coiled, found: &coil::CoilAnswer) -> Option<Finding> {
    let name = read.input_at_key_on().filter(|_| burns_at_rest(read, found))?;
    let (rating, held) = (read.parts.fuse?, &found.held);
    let Burning { fuse, part, heat, time } = burning(read, found)?;
    let key = fields::relays::FUSE.at(read.relay);
    let steps = held.against(rating);
    let message = say!(
        words::FUSE_BEARS_HELD,
        name = name.to_owned(),
        current = held.taken,
        fuse = fuse,
        part = part,
        heat = heat,
        time = time
    );
    let each = fuse_of_each(read, found, rating).map(|it| say!(words::FUSE_EACH, fuse = it));
    let cures = speed_relay(read).into_iter().chain(each);
    Some(Finding::new(Severity::Doubt, key, message).cured_by(cures).shown_by(steps))
}

/// The largest fuse that still blows before the coil of one igniter burns, and protects the thinnest wire that is usual there: the
/// smallest that carries it for long would tire, and stop the car.
fn fuse_of_each(read: &Coiled, found: &coil::CoilAnswer, fuse: Current) -> Option<Current> {
    let taken = &found.at_speed.as_ref()?.taken;
    let relays = taken.coils / read.inputs.per_igniter.max(1);
    let none = Current::from_base(0.0);
    let alone = CoilFeedParts { relays: relays.max(1), others: none, ..read.parts };
    let alone = CoilFeed::new(taken, &alone);
    let serves = |rating: &Current| {
        *rating < fuse
            && alone.is_fused_by(*rating)
            && !found.held.outlasts(*rating).0
            && fuses::unprotected(*rating, None, Some(thinnest())).is_none()
    };
    fuses::RATINGS_A.into_iter().rev().map(amperes).find(serves)
}

/// Thinner than this no wire of a coil is: common practice, no source.
fn thinnest() -> Area {
    Area::from_base(0.5e-6)
}
