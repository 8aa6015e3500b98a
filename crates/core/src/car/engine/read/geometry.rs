//! The crank from its fields, and the firing angles that it has.

use super::{BANKS, PINS, SPACING, written};
use crate::{
    engine::{
        Engine, EngineKind, Spacing, TURN,
        geometry::{Geometry, Turns, UnfitCrank, turns},
    },
    fields,
    finding::{Finding, Severity},
    message::Message,
    quantity::{CrankAngle, Measure},
    read::{Entry, Reader, row::signed_row},
    say, say_of,
    schema::{Key, NumberRow},
};

const BANK_ANGLES: Key<NumberRow> = fields::engine::BANK_ANGLES;
const SPLIT: Key<CrankAngle> = fields::engine::SPLIT;

/// The crank, where enough of it is known. `rows` are the banks, front to rear, typed or found from the numbering.
pub(super) fn geometry(
    reader: &mut Reader<'_>,
    cylinders: Option<u32>,
    rows: Entry<Vec<Vec<u32>>>,
) -> Option<Geometry> {
    let bank_angles = degrees(reader, BANK_ANGLES);
    let mut pins = degrees(reader, PINS);
    let split = reader.band(SPLIT).value();
    let rows = known_rows(reader, cylinders, rows, &bank_angles)?;
    let bank_angles = if rows.len() == 1 {
        reader.or_assume(BANK_ANGLES, bank_angles, Vec::new(), "none", "all in one bank")
    } else {
        bank_angles
    };
    if rows.iter().all(|row| row.len() == 1) {
        let first = vec![CrankAngle::default()];
        pins = reader.or_assume(PINS, pins, first, "0", "one pin for all");
    }
    let cylinders = rows.iter().map(Vec::len).sum();
    let made = Geometry::new(rows, bank_angles.value()?, pins.value()?, split?.nominal);
    for unfit in made.as_ref().err().into_iter().flatten() {
        reader.unusable(unfitting(*unfit, cylinders));
    }
    made.ok()
}

/// The engine with the firing angles of its crank.
pub(super) fn engine(
    reader: &mut Reader<'_>,
    kind: EngineKind,
    cylinders: u32,
    order: &[u32],
    geometry: &Geometry,
) -> Option<Engine> {
    let tops = geometry.tops();
    match turns(kind, order, &tops) {
        Ok(turns) => {
            several(reader, order, &turns);
            let engine =
                Engine::new(kind, cylinders, order, &Spacing::Angles(turns.angles)).ok()?;
            Some(engine.with_tops(tops))
        }
        Err(out) => {
            let message = say!(
                crate::car::engine::words::crank::OUT_OF_TURN,
                cylinder = out.cylinder,
                angle = out.angle,
                before = out.before,
                before_angle = out.before_angle
            );
            let key = reader.typed_of([PINS, BANK_ANGLES]);
            let cure = other_hand(kind, order, geometry);
            reader.unusable(Finding::new(Severity::Fault, key, message).cured_by(cure));
            None
        }
    }
}

/// Banks or pins counted the other way round, where the order then fits.
fn other_hand(kind: EngineKind, order: &[u32], geometry: &Geometry) -> Option<Message> {
    let fits = |it: &Geometry| turns(kind, order, &it.tops()).is_ok();
    let ways = [(true, false), (false, true)];
    let of = |(banks, pins)| Some((banks, geometry.mirrored(banks, pins))).filter(|it| fits(&it.1));
    let (is_of_banks, mirrored) = ways.into_iter().find_map(of)?;
    let (key, angles) =
        if is_of_banks { (BANK_ANGLES, mirrored.bank_angles()) } else { (PINS, mirrored.pins()) };
    let angles = typed(angles);
    let message = say!(
        crate::car::engine::words::crank::OTHER_HAND,
        field = key.field().label,
        angles = angles.clone()
    );
    Some(message.done_by(vec![key.edit(angles)]))
}

fn is_even(kind: EngineKind, turns: &Turns) -> bool {
    let interval =
        kind.cycle().degrees() / f64::from(u32::try_from(turns.angles.len()).unwrap_or(1));
    let mut places = (0..).zip(&turns.angles);
    places.all(|(place, angle)| angle.is_near(CrankAngle::new(interval * f64::from(place))))
}

/// The firing angles of the crank that stands in the fields though the spacing was told to be even, where they are not.
/// Whether its pins were typed, too.
pub(super) fn contradicting(
    reader: &Reader<'_>,
    kind: EngineKind,
    order: &[u32],
    rows: Option<&Vec<Vec<u32>>>,
) -> Option<(String, bool)> {
    let angles = |key| angles_in(reader.text(key)).ok();
    let (banks, pins) = (angles(BANK_ANGLES)?, angles(PINS)?);
    let each: Vec<u32> = (1..=u32::try_from(order.len()).ok()?).collect();
    let rows = match rows {
        Some(rows) => rows.clone(),
        None if banks.is_empty() => vec![each],
        None if banks.len() + 1 == each.len() => each.iter().map(|it| vec![*it]).collect(),
        None => return None,
    };
    let is_typed = !pins.is_empty();
    // opposite cylinders of one row hang on one pin, unless something else was said
    let is_one_pin = rows.len() > 1 && rows.iter().all(|row| row.len() == 1);
    let pins = if is_typed || !is_one_pin { pins } else { vec![CrankAngle::default()] };
    let split = reader.band_elsewhere(SPLIT)?.nominal;
    let turns = turns(kind, order, &Geometry::new(rows, banks, pins, split).ok()?.tops()).ok()?;
    (!is_even(kind, &turns)).then(|| (typed(&turns.angles), is_typed))
}

/// Where the order leaves a choice of turns: which is taken, and how to tell.
fn several(reader: &mut Reader<'_>, order: &[u32], turns: &Turns) {
    let Some(other) = turns.others.first() else { return };
    // more than two cylinders have as many ways as cylinders: a row of them all helps nobody
    let more = if turns.others.len() > 1 { " or others" } else { "" };
    let (severity, code) = if turns.is_tie {
        (Severity::Doubt, crate::car::engine::words::crank::TURN_TIE)
    } else {
        (Severity::Note, crate::car::engine::words::crank::TURN_TAKEN)
    };
    let (first, second) = (order.first().copied(), order.get(1).copied());
    let message = say_of!(
        code,
        angles = typed(&turns.angles),
        others = typed(other) + more,
        first = first.unwrap_or(1),
        cylinder = second.unwrap_or(1),
        top = turns.angles.get(1).copied().unwrap_or_default().within(TURN)
    );
    reader.remark(Finding::new(severity, SPACING, message));
}

/// Angles as they would be typed.
fn typed(angles: &[CrankAngle]) -> String {
    let shown: Vec<_> = angles.iter().map(|it| it.show().shown.replace('°', "")).collect();
    shown.join(" ")
}

fn known_rows(
    reader: &mut Reader<'_>,
    cylinders: Option<u32>,
    rows: Entry<Vec<Vec<u32>>>,
    bank_angles: &Entry<Vec<CrankAngle>>,
) -> Option<Vec<Vec<u32>>> {
    if !rows.is_missing() {
        return rows.value();
    }
    let cylinders = cylinders?;
    match bank_angles {
        Entry::Given(angles) if u32::try_from(angles.len() + 1) == Ok(cylinders) => {
            let each: Vec<_> = (1..=cylinders).map(|cylinder| vec![cylinder]).collect();
            let shown: Vec<_> = each.iter().map(|bank| written(bank)).collect();
            let basis = "as many banks as cylinders";
            reader.or_assume(BANKS, Entry::Missing, each, shown.join(" / "), basis).value()
        }
        Entry::Missing => Some(vec![(1..=cylinders).collect()]),
        _ => None,
    }
}

/// Angles of one turn, in a row.
fn degrees(reader: &mut Reader<'_>, key: Key<NumberRow>) -> Entry<Vec<CrankAngle>> {
    let text = reader.text(key);
    if text.is_empty() {
        reader.missing(key);
        return Entry::Missing;
    }
    let field = key.field().label;
    let found = match angles_in(text) {
        Ok(angles) => {
            let Some(angle) = angles.iter().copied().find(|it| !it.is_in(TURN)) else {
                reader.given(key, typed(&angles));
                return Entry::Given(angles);
            };
            say!(
                crate::car::engine::words::crank::ANGLE_BEYOND_TURN,
                field = field,
                angle = angle,
                same = angle.within(TURN)
            )
        }
        Err(token) => {
            say!(crate::car::engine::words::crank::CRANK_UNREADABLE, field = field, typed = token)
        }
    };
    reader.unusable(Finding::new(Severity::Fault, key, found));
    Entry::Unreadable
}

/// The angles in a row; one below nought is the same place, counted the other way.
fn angles_in(text: &str) -> Result<Vec<CrankAngle>, String> {
    Ok(signed_row(text)?.into_iter().map(|it| CrankAngle::new(it).from_nought(TURN)).collect())
}

fn unfitting(unfit: UnfitCrank, cylinders: usize) -> Finding {
    let (key, message) = match unfit {
        UnfitCrank::BankAngles { angles, banks } => (
            BANK_ANGLES,
            say!(
                crate::car::engine::words::crank::BANK_ANGLES_COUNT,
                angles = angles,
                banks = banks,
                wanted = banks.saturating_sub(1)
            ),
        ),
        UnfitCrank::Pins { pins, each: Some(each), .. } if each < cylinders => (
            PINS,
            say!(
                crate::car::engine::words::crank::PINS_COUNT,
                pins = pins,
                each = each,
                cylinders = cylinders
            ),
        ),
        UnfitCrank::Pins { pins, .. } => (
            PINS,
            say!(crate::car::engine::words::crank::PINS_EACH, pins = pins, cylinders = cylinders),
        ),
    };
    Finding::new(Severity::Fault, key, message)
}
