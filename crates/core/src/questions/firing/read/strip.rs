//! One cycle at a speed, from its fields.

use crate::read::{Reader, injectors::usual};
use crate::{
    channels::strip::Act,
    fields,
    quantity::{Band, Measure, RotationalSpeed, Time, Value, seconds},
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
    let injection = injection(reader, speed.value().map(|band| band.nominal).or(highest), taken);
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

/// How long an injection lasts: as typed, else what is usual at full load, and no more than a turn leaves room for.
fn injection(
    reader: &mut Reader<'_>,
    speed: Option<RotationalSpeed>,
    taken: &mut Vec<(&'static str, Value)>,
) -> Time {
    let key = fields::strip::INJECTION;
    let entry = reader.band(key).map(|band| band.nominal);
    let turn = speed.map(|speed| 60.0 / speed.base().max(1.0));
    let usual =
        seconds(turn.map_or(USUAL_INJECTION_S, |turn| USUAL_INJECTION_S.min(OF_A_TURN * turn)));
    let basis = "a usual pulse at full load, 80% of a turn at most: common practice, no source";
    let lasts = reader.or_assume(key, entry, usual, Value::from(usual), basis);
    if lasts != entry {
        taken.push((key.field().label, Value::from(usual)));
    }
    lasts.value().unwrap_or(usual)
}

/// A usual pulse at full load, and the most of a turn that one is open: common practice, no source.
const USUAL_INJECTION_S: f64 = 0.008;
const OF_A_TURN: f64 = 0.8;
