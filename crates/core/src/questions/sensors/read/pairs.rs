//! Pairs of what a sensor tells and what is read there, as a person types them.

use crate::{
    finding::{Finding, Severity},
    plan::MOST_ENTRIES,
    quantity::{Dimension, read_span},
    questions::sensors::{
        read::{ReadAt, ToldIn},
        words,
    },
    read::{Entry, Reader, problem::shortened},
    say,
    schema::{Key, NumberRow},
};

/// What is read, and the unit that is usual for it.
pub(super) const OHMS: ToldIn = (Dimension::Resistance, "ohm");
pub(super) const VOLTS: ToldIn = (Dimension::Voltage, "V");

/// Beyond these nothing is a sensor's, in base units.
const MOST: f64 = 1e9;

/// The pairs of a field; a pair may lack what it was read at.
pub(super) fn readings(
    reader: &mut Reader<'_>,
    key: Key<NumberRow>,
    told: ToldIn,
    read: ToldIn,
) -> Entry<Vec<ReadAt>> {
    let text = reader.text(key);
    if text.is_empty() {
        reader.missing(key);
        return Entry::Missing;
    }
    let pieces: Vec<_> =
        text.split([',', ';', '\n']).map(str::trim).filter(|it| !it.is_empty()).collect();
    let found: Result<Vec<_>, _> =
        pieces.iter().map(|it| pair(it, told, read).ok_or(*it)).collect();
    match found {
        Ok(pairs) if !pairs.is_empty() && pairs.len() <= MOST_ENTRIES => {
            reader.given(key, shown(&pairs, told, read));
            Entry::Given(pairs)
        }
        found => {
            let piece = found.err().unwrap_or(text);
            let (label, example) = (key.field().label, example(told, read));
            let message = say!(
                words::PAIRS_UNREAD,
                field = label,
                piece = shortened(piece),
                example = example
            );
            reader.unusable(Finding::new(Severity::Fault, key, message));
            Entry::Unreadable
        }
    }
}

/// The same, where each says what it was read at.
pub(super) fn points(
    reader: &mut Reader<'_>,
    key: Key<NumberRow>,
    told: ToldIn,
    read: ToldIn,
) -> Entry<Vec<(f64, f64)>> {
    let Entry::Given(pairs) = readings(reader, key, told, read) else {
        return if reader.is_typed(key) { Entry::Unreadable } else { Entry::Missing };
    };
    let whole: Option<Vec<_>> = pairs.iter().map(|(at, read)| Some(((*at)?, *read))).collect();
    whole.map_or_else(|| turned_down(reader, key), Entry::Given)
}

/// Says that a row of pairs is no curve.
pub(super) fn turned_down<T>(reader: &mut Reader<'_>, key: Key<NumberRow>) -> Entry<T> {
    let message = say!(words::NOT_A_CURVE, field = key.field().label);
    reader.unusable(Finding::new(Severity::Fault, key, message));
    Entry::Unreadable
}

/// `20 2450`, `20 °C: 2.45k`: wherever it can be parted so that both are read.
fn pair(piece: &str, told: ToldIn, read: ToldIn) -> Option<ReadAt> {
    let parted = piece.replace([':', '='], " ");
    let tokens: Vec<_> = parted.split_whitespace().collect();
    let of = |tokens: &[&str], (dimension, unit): ToldIn| {
        let span = read_span(&tokens.join(" "), dimension, unit).ok()?;
        let is_possible = span.low >= span.high && span.nominal.abs() <= MOST;
        is_possible.then_some(span.nominal)
    };
    let is_possible = |it: &f64| *it >= 0.0;
    // five are a number and a unit, twice, and one too many
    let both = (1..tokens.len().min(5)).find_map(|at| {
        let (one, other) = tokens.split_at_checked(at)?;
        Some((Some(of(one, told)?), of(other, read).filter(is_possible)?))
    });
    both.or_else(|| Some((None, of(&tokens, read).filter(is_possible)?)))
}

/// The pairs as they were read.
pub(crate) fn shown(pairs: &[ReadAt], (told, _): ToldIn, (read, _): ToldIn) -> String {
    let one = |(at, reading): &ReadAt| {
        let reading = read.show(*reading).into_shown();
        at.map_or(reading.clone(), |at| [told.show(at).into_shown(), reading].join(" "))
    };
    pairs.iter().map(one).collect::<Vec<_>>().join(", ")
}

fn example((told, _): ToldIn, (read, _): ToldIn) -> &'static str {
    match (told, read) {
        (Dimension::Temperature, Dimension::Resistance) => "20 2450, 80 290",
        (Dimension::Temperature, _) => "20 2.48, 80 0.52",
        (Dimension::Pressure, Dimension::Resistance) => "0 10, 1000 184",
        (Dimension::Pressure, _) => "20 0.5, 250 4.5",
        (_, Dimension::Resistance) => "0 10, 100 184",
        _ => "0.68 0, 1.36 5",
    }
}
