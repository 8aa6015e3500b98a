//! What would keep a plain switch inside its limit, in words; each was solved.

use super::SolvedSet;
use crate::{
    channels::Injection,
    fields,
    injector::{
        Both, Class, DriverKind, Fewer, InjectorCures,
        ballast::{BallastFit, BallastPlace, BallastRange, Resistor},
        controlled::Controlled,
    },
    message::{Edit, Message},
    quantity::{Measure, Resistance, Value, number},
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

/// The cures, cheapest first.
pub(super) fn in_words(solved: &SolvedSet<'_>, cures: &InjectorCures) -> Vec<Message> {
    let found = solved.found;
    let of_fewer = |it: &Fewer| fewer(it).done_by(sharing(solved, it.per_output));
    let mut words: Vec<_> = cures.fewer.iter().map(of_fewer).collect();
    if let Some(each) = cures.resistor() {
        words.extend(resistors(solved, each, cures.shared.as_ref()));
    }
    let of_both = |it: &Both| {
        let sharing = sharing(solved, it.per_output);
        // where it takes both, one alone is no remedy
        let edits = if sharing.is_empty() {
            sharing
        } else {
            [sharing, fitted(solved, &it.resistor)].concat()
        };
        both(it).done_by(edits)
    };
    words.extend(cures.both.iter().map(of_both));
    // nobody sells a plain output for low-impedance injectors that starve behind a resistor
    let outgrown = found.class == Class::LowImpedance && obstacle(cures).is_some();
    if cures.each.is_some() && found.class != Class::HighImpedance {
        words.push(driver(solved, &cures.driver, !words.is_empty() || !outgrown));
    }
    if !outgrown {
        words.push(say!(words::BETTER_OUTPUT, limit = found.limit_needed.limit));
    }
    words
}

/// The edits with which so many share an output; none where no way of firing does that.
pub(super) fn sharing(solved: &SolvedSet<'_>, per_output: u32) -> Vec<Edit> {
    let mode = match per_output {
        1 => Some(Injection::EachOnce),
        2 => Some(Injection::Companions),
        _ => None,
    };
    let typed = || solved.key(fields::injectors::PER_OUTPUT).edit(per_output.to_string());
    match (solved.mode, mode) {
        (None, _) => vec![typed()],
        (Some(key), Some(mode)) => {
            let typed = solved.is_sharing_typed.then(typed);
            [key.edit(mode.choosable().code)].into_iter().chain(typed).collect()
        }
        (Some(_), None) => Vec::new(),
    }
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

fn resistors(solved: &SolvedSet<'_>, each: &Resistor, shared: Option<&BallastFit>) -> Vec<Message> {
    let edits = fitted(solved, each);
    let mut words = vec![resistor(words::RESISTOR_EACH, each).done_by(edits)];
    if let Some(BallastFit::Offered(shared)) = shared {
        words.push(resistor(words::RESISTOR_SHARED, shared));
    }
    words
}

fn resistor(code: &'static Wording, resistor: &Resistor) -> Message {
    match &resistor.roomier {
        Some(roomier) => say_of!(
            if resistor.place == BallastPlace::EachInjector {
                words::RESISTOR_EACH_TIGHT
            } else {
                words::RESISTOR_SHARED_TIGHT
            },
            value = sold(resistor.value),
            rating = resistor.rating,
            highest = resistor.carrying.highest,
            limit = resistor.carrying.limit,
            left = resistor.least_current,
            corner = resistor.least_at.name,
            roomier = sold(roomier.value)
        ),
        None => say_of!(
            code,
            value = sold(resistor.value),
            rating = resistor.rating,
            highest = resistor.carrying.highest,
            limit = resistor.carrying.limit,
            left = resistor.least_current,
            corner = resistor.least_at.name
        ),
    }
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
        least = window.least,
        most = window.most,
        corner = window.most_at.name,
        hold = driver.hold_needed
    )
    .done_by(driven(solved, driver))
}

/// The edits that put such a driver in place of the outputs.
fn driven(solved: &SolvedSet<'_>, driver: &Controlled) -> Vec<Edit> {
    let of_sharing = if solved.inputs.per_output > 1 { sharing(solved, 1) } else { Vec::new() };
    let (peak, hold) = (driver.window.best(), driver.hold_needed);
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
