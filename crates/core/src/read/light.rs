//! The readings of a timing light from their fields.

use super::Reader;
use crate::{
    channels::light::{Readings, SparkStroke},
    engine::Engine,
    finding::{Finding, Severity},
    plan::{Light as Typed, MOST_ENTRIES},
    quantity::{Band, CrankAngle},
    say,
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
    let typed = u32::try_from(plan.light.seen.len().min(MOST_ENTRIES)).unwrap_or(0);
    for at in 0..cylinders.max(typed) {
        let path = format!("light.seen.{at}");
        let entry = reader.band::<CrankAngle>(&path);
        is_spoiled |= !reader.text(&path).is_empty() && entry.value().is_none();
        let Some(angle) = entry.value() else { continue };
        if engine.is_some() && at >= cylinders {
            let message = say!("channels.light-stray", cylinder = at + 1, cylinders = cylinders);
            reader.unusable(Finding::new(Severity::Fault, path, message).as_wired());
            is_spoiled = true;
        } else {
            seen.push((at + 1, angle.nominal));
        }
    }
    if is_blank(&plan.light) {
        return None;
    }
    let advance = reader.band::<CrankAngle>("light.advance").value().map(|band| band.nominal);
    let tolerance = reader.band::<CrankAngle>("light.tolerance").value();
    let offset = reader.band::<CrankAngle>("light.offset").value().map(|band| band.nominal);
    let stroke = reader.choice("light.stroke").value().map(|code| match code {
        "exhaust" => SparkStroke::Exhaust,
        _ => SparkStroke::Compression,
    });
    let readings = Readings {
        advance: advance.unwrap_or_default(),
        seen,
        tolerance: tolerance.map_or(CrankAngle::new(2.0), |band: Band<CrankAngle>| band.high),
        offset,
        positions: reader.whole_elsewhere("cranking.teeth"),
        stroke,
    };
    Some(Lit { advance, readings, is_spoiled })
}

/// Whether nothing is typed; a reading that was typed and emptied leaves a blank behind.
fn is_blank(light: &Typed) -> bool {
    let texts = [&light.advance, &light.stroke, &light.offset, &light.tolerance];
    texts.into_iter().chain(&light.seen).all(|text| text.trim().is_empty())
}
