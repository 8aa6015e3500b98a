//! One cycle at a speed, from its fields.

use crate::read::{Reader, injectors::usual};
use crate::{
    channels::strip::Act,
    fields,
    quantity::{Band, RotationalSpeed, Time, Value, seconds},
};

/// Dwell where nothing better is known: common practice, no source.
const USUAL_DWELL_S: f64 = 0.003;

/// What the fields say.
#[derive(Debug)]
pub(crate) struct Stripped {
    /// The speed, where one is known.
    pub(crate) speed: Option<RotationalSpeed>,
    /// The charging of a coil.
    pub(crate) dwell: Act,
    /// The opening of an injector, of the first set and of the second.
    pub(crate) injections: [Act; 2],
    /// What was taken for fields that are blank or can't be read: the label of the field and the value.
    pub(crate) taken: Vec<(&'static str, Value)>,
}

/// Reads them; `highest` is the engine's highest speed, `coils` the dwell that its coils need.
pub(crate) fn strip(
    reader: &mut Reader<'_>,
    highest: Option<Band<RotationalSpeed>>,
    coils: Option<Time>,
) -> Stripped {
    let taken = &mut Vec::new();
    let speed = reader.band(fields::strip::SPEED);
    let highest = highest.map(|band| band.high);
    if let Some(highest) = highest {
        let speed = speed.map(|band| band.nominal);
        reader.or_assume(
            fields::strip::SPEED,
            speed,
            highest,
            Value::from(highest),
            "the highest speed",
        );
    }
    let entry = reader.band(fields::controller::DWELL).map(|band| band.nominal);
    let (dwell, basis) = match coils {
        Some(dwell) => (dwell, "what the coils need at the charging supply"),
        None => (seconds(USUAL_DWELL_S), "a usual dwell: common practice, no source"),
    };
    let lasts =
        reader.or_assume(fields::controller::DWELL, entry, dwell, Value::from(dwell), basis);
    let advance = usual(reader, fields::strip::ADVANCE, taken).nominal;
    let injection = usual(reader, fields::strip::INJECTION, taken).nominal;
    let ends_before = usual(reader, fields::strip::INJECTION_END, taken).nominal;
    let second = reader.band(fields::strip::SECOND_INJECTION).value().map(|band| band.nominal);
    let act = |lasts| Act { lasts, ends_before };
    Stripped {
        speed: speed.value().map(|band| band.nominal).or(highest),
        dwell: Act { lasts: lasts.value().unwrap_or(dwell), ends_before: advance },
        injections: [act(injection), act(second.unwrap_or(injection))],
        taken: std::mem::take(taken),
    }
}
