//! The readings of a timing light from their fields.

use crate::read::Reader;
use crate::{
    channels::light::Readings,
    engine::Engine,
    fields,
    finding::{Finding, Severity},
    plan::{MOST_ENTRIES, Plan},
    quantity::{Band, CrankAngle},
    questions::firing::words,
    say,
    schema::Part,
};

/// What the fields of the timing light say.
#[derive(Debug)]
pub(crate) struct Lit {
    /// The advance at which the controller is locked, where it is known.
    pub(crate) advance: Option<CrankAngle>,
    /// The readings, with that advance or none.
    pub(crate) readings: Readings,
    /// Whether a reading can't be used.
    pub(crate) is_spoiled: bool,
}

/// Reads the timing light; nothing where none of it was typed: then it was not asked about, and nothing is taken.
pub(crate) fn light(reader: &mut Reader<'_>, engine: Option<&Engine>) -> Option<Lit> {
    let plan = reader.plan();
    let cylinders = engine.map_or(0, Engine::cylinders);
    let mut seen = Vec::new();
    let mut is_spoiled = false;
    let typed = plan.cell_count(fields::light::SEEN).min(MOST_ENTRIES);
    let typed = u32::try_from(typed).unwrap_or(0);
    for at in 0..cylinders.max(typed) {
        let key = fields::light::SEEN.in_cell(at as usize);
        let entry = reader.band(key);
        is_spoiled |= reader.is_typed(key) && entry.value().is_none();
        let Some(angle) = entry.value() else { continue };
        if engine.is_some() && at >= cylinders {
            let message = say!(words::light::LIGHT_STRAY, cylinder = at + 1, cylinders = cylinders);
            reader.unusable(Finding::new(Severity::Fault, key, message).as_wired());
            is_spoiled = true;
        } else {
            seen.push((at + 1, angle.nominal));
        }
    }
    if is_blank(plan) {
        return None;
    }
    let advance = reader.band(fields::controller::LOCKED_ADVANCE).value().map(|band| band.nominal);
    let tolerance = reader.band(fields::light::TOLERANCE).value();
    let offset = reader.band(fields::controller::OFFSET).value().map(|band| band.nominal);
    let stroke = reader.choice(fields::light::STROKE).value();
    let readings = Readings {
        advance: advance.unwrap_or_default(),
        seen,
        tolerance: tolerance.map_or(CrankAngle::new(2.0), |band: Band<CrankAngle>| band.high),
        offset,
        positions: reader.whole_elsewhere(fields::wheels::CRANK_TEETH),
        stroke,
    };
    Some(Lit { advance, readings, is_spoiled })
}

/// Whether nothing is typed, or nothing but blanks.
fn is_blank(plan: &Plan) -> bool {
    plan.part(Part::Light).iter().all(|(_, text)| text.trim().is_empty())
}
