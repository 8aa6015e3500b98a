//! What would keep a plain switch inside its limit, in words; each was solved.

use super::SolvedSet;
use crate::{
    fields,
    injector::{
        Both, Class, DriverKind, Fewer, InjectorCures,
        ballast::{BallastFit, BallastRange, Resistor},
        controlled::Controlled,
        remedy::Means,
    },
    message::{Edit, Message},
    quantity::{Current, Measure, Resistance, Value, number},
    questions::injectors::words,
    say, say_of,
    schema::Choice as _,
    words::Wording,
};

/// The value of a resistor as it is sold: 0.82 Ω, not 820 mΩ.
pub(super) fn sold(value: Resistance) -> Value {
    let ohms = value.base();
    if (0.01..1.0).contains(&ohms) {
        return value.show().said(format!("{} Ω", number(ohms)));
    }
    value.show()
}

/// Why no resistor does it, where one was looked for in vain.
pub(super) fn obstacle(cures: &InjectorCures) -> Option<Message> {
    if cures.finer.is_some() {
        return None;
    }
    match cures.each.as_ref()? {
        BallastFit::Offered(_) => None,
        BallastFit::Starves(bounds) => Some(starves(words::RESISTOR_STARVES, bounds)),
        BallastFit::NoValue(bounds) => Some(starves(words::RESISTOR_HAS_NO_VALUE, bounds)),
        BallastFit::TooHot(bounds, heat) => {
            Some(say!(words::RESISTOR_TOO_HOT, least = bounds.least, heat = *heat))
        }
    }
}

/// The cures, one of a kind.
pub(super) struct CuresInWords {
    /// The one to take, where it is among them.
    pub(super) best: Option<Message>,
    /// Those that are less work first.
    pub(super) others: Vec<Message>,
}

/// The cures in words.
pub(super) fn in_words(solved: &SolvedSet<'_>, cures: &InjectorCures) -> CuresInWords {
    let taken = cures.side_by_side.taken().map(|row| kind(&row.means));
    let kinds =
        [CureKind::Fewer, CureKind::Resistor, CureKind::Both, CureKind::Driver, CureKind::Output];
    let best = taken.and_then(|kind| of_kind(solved, cures, kind, true));
    let mut others = Vec::new();
    for kind in kinds.into_iter().filter(|kind| Some(*kind) != taken) {
        let is_first = best.is_none() && others.is_empty();
        others.extend(of_kind(solved, cures, kind, is_first));
    }
    CuresInWords { best, others }
}

/// Cures of a kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum CureKind {
    Fewer,
    Resistor,
    Both,
    Driver,
    Output,
}

fn kind(means: &Means) -> CureKind {
    match means {
        Means::Fewer { .. } => CureKind::Fewer,
        Means::Resistor(_) => CureKind::Resistor,
        Means::FewerWithResistor { .. } => CureKind::Both,
        Means::Driver { .. } => CureKind::Driver,
        Means::AsWired | Means::Output { .. } | Means::Others { .. } => CureKind::Output,
    }
}

fn of_kind(
    solved: &SolvedSet<'_>,
    cures: &InjectorCures,
    kind: CureKind,
    is_first: bool,
) -> Option<Message> {
    let found = solved.found;
    // nobody sells a plain output for low-impedance injectors that starve behind a resistor
    let outgrown = found.class == Class::LowImpedance && obstacle(cures).is_some();
    match kind {
        CureKind::Fewer => {
            cures.fewer.as_ref().map(|it| fewer(it).done_by(sharing(solved, it.per_output)))
        }
        CureKind::Resistor => cures.resistor().map(|it| resistor(it).done_by(fitted(solved, it))),
        CureKind::Both => cures.both.as_ref().map(|it| {
            let edits = [sharing(solved, it.per_output), fitted(solved, &it.resistor)].concat();
            both(it).done_by(edits)
        }),
        CureKind::Driver => {
            let is_wanted = cures.each.is_some() && found.class != Class::HighImpedance;
            is_wanted.then(|| driver(solved, &cures.driver, !is_first || !outgrown))
        }
        CureKind::Output => {
            (!outgrown).then(|| say!(words::BETTER_OUTPUT, limit = found.limit_needed.limit))
        }
    }
}

/// The edits with which so many share an output, however they are fired: there are outputs for it, as far as is known.
pub(super) fn sharing(solved: &SolvedSet<'_>, per_output: u32) -> Vec<Edit> {
    vec![solved.key(fields::injectors::PER_OUTPUT).edit(per_output.to_string())]
}

/// The edits that put a resistor in line with each injector.
fn fitted(solved: &SolvedSet<'_>, resistor: &Resistor) -> Vec<Edit> {
    vec![
        solved.key(fields::injectors::RESISTOR).edit(sold(resistor.value).into_shown()),
        solved.key(fields::injectors::RESISTOR_RATING).edit(resistor.rating.show().into_shown()),
    ]
}

fn both(both: &Both) -> Message {
    let resistor = &both.resistor;
    say!(
        words::FEWER_AND_RESISTOR,
        n = both.per_output,
        value = sold(resistor.value),
        rating = resistor.rating,
        highest = resistor.carrying.highest,
        limit = resistor.carrying.limit,
        left = resistor.least_current,
        corner = resistor.least_at.name
    )
}

fn fewer(fewer: &Fewer) -> Message {
    match fewer.outputs {
        Some(outputs) => say!(
            words::FEWER_COUNTED,
            n = fewer.per_output,
            highest = fewer.highest,
            outputs = outputs
        ),
        None => say!(words::FEWER, n = fewer.per_output, highest = fewer.highest),
    }
}

fn resistor(resistor: &Resistor) -> Message {
    say!(
        words::RESISTOR_EACH,
        value = sold(resistor.value),
        rating = resistor.rating,
        highest = resistor.carrying.highest,
        limit = resistor.carrying.limit,
        left = resistor.least_current,
        corner = resistor.least_at.name
    )
}

fn starves(code: &'static Wording, bounds: &BallastRange) -> Message {
    // below zero the injector doesn't open even without a resistor
    if bounds.most.base() < 0.0 {
        return say!(
            words::RESISTOR_IMPOSSIBLE,
            least = bounds.least,
            corner = bounds.most_at.name
        );
    }
    say_of!(
        code,
        least = bounds.least,
        least_corner = bounds.least_at.name,
        most = bounds.most,
        most_corner = bounds.most_at.name
    )
}

/// A driver of which each channel has one injector.
fn driver(solved: &SolvedSet<'_>, driver: &Controlled, is_alternative: bool) -> Message {
    let window = &driver.window;
    if !window.is_open() {
        return say!(
            words::NOT_EVEN_DRIVER,
            corner = window.most_at.name,
            most = window.most,
            least = window.least
        );
    }
    let code = if is_alternative { words::OR_DRIVER } else { words::ONLY_DRIVER };
    say_of!(
        code,
        peak = window.best(),
        least = window.least,
        most = window.most,
        corner = window.most_at.name,
        hold = hold(driver)
    )
    .done_by(driven(solved, driver))
}

fn hold(driver: &Controlled) -> Current {
    rounded_hold(driver.hold_needed)
}

/// The hold current to set: up to the next twentieth of an ampere, so that what is typed is enough.
pub(super) fn rounded_hold(needed: Current) -> Current {
    Measure::from_base((needed.base() * 20.0 - 1e-9).ceil() / 20.0)
}

/// The edits that put such a driver in place of the outputs.
fn driven(solved: &SolvedSet<'_>, driver: &Controlled) -> Vec<Edit> {
    let of_sharing = if solved.inputs.per_output > 1 { sharing(solved, 1) } else { Vec::new() };
    let (peak, hold) = (driver.window.best(), hold(driver));
    let kind = DriverKind::CurrentControlled.choosable().code;
    let mut edits = vec![
        solved.key(fields::injectors::OUTPUT_KIND).edit(kind),
        solved.key(fields::injectors::OUTPUT_LIMIT).edit(peak.show().into_shown()),
        solved.key(fields::injectors::HOLD_CURRENT).edit(hold.show().into_shown()),
        solved.key(fields::injectors::PEAK_TIME).edit(""),
        solved.key(fields::injectors::RESISTOR).edit(""),
    ];
    edits.extend(of_sharing);
    edits
}
