//! The injectors from their fields.

use super::{Conditions, Entry, Reader, usual_band};
use crate::{
    engine::Engine,
    fields,
    finding::{Finding, Severity},
    injector::{Inputs, Output, Stage, Wire},
    quantity::{Area, Band, Current, Inductance, Length, Measure, Ratio, Resistance, Value},
    say,
};

/// What the fields of the injectors say.
#[derive(Debug)]
pub(crate) struct Injectors {
    /// The resistance of one; nothing can be said without it.
    pub(crate) resistance: Entry<Band<Resistance>>,
    /// Whether the number on an output can be used; else one is looked at as if it were alone.
    pub(crate) sharing_is_known: bool,
    /// The inputs, where the resistance is known.
    pub(crate) inputs: Option<Inputs>,
    /// How many there are.
    pub(crate) count: Option<u32>,
    /// What was taken for fields that are blank or can't be read: the label of the field and the value.
    pub(crate) taken: Vec<(&'static str, Value)>,
}

/// Reads the injectors; every field, whatever stands in the others.
pub(crate) fn injectors(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    engine: Option<&Engine>,
) -> Injectors {
    let taken = &mut Vec::new();
    let resistance = resistance(reader, taken);
    let count = count(reader, engine);
    let per_output = per_output(reader, count);
    let output = output(reader, taken);
    let wire = Wire {
        length: usual::<Length>(reader, "injectors.wire_length", taken),
        area: usual::<Area>(reader, "injectors.wire_size", taken),
    };
    let opening_current = reader.band::<Current>("injectors.opening_current").value();
    let inductance = reader.band::<Inductance>("injectors.inductance").value();
    let inputs = resistance.value().map(|resistance| Inputs {
        resistance,
        inductance,
        opening_current,
        per_output: per_output.unwrap_or(1),
        count,
        output,
        wire,
        corners: conditions.corners(),
    });
    let taken = std::mem::take(taken);
    Injectors { resistance, sharing_is_known: per_output.is_some(), inputs, count, taken }
}

/// The resistance with its tolerance: its own where it was typed as a band, else the one of the field beside it.
fn resistance(
    reader: &mut Reader<'_>,
    taken: &mut Vec<(&'static str, Value)>,
) -> Entry<Band<Resistance>> {
    const TOLERANCE: &str = "injectors.tolerance";
    let resistance = reader.band::<Resistance>("injectors.resistance");
    let has_its_own = resistance.value().is_some_and(|band| band.is_spread());
    if has_its_own && reader.text(TOLERANCE).is_empty() {
        reader.missing(TOLERANCE);
        return resistance;
    }
    let share = usual::<Ratio>(reader, TOLERANCE, taken).high.base();
    resistance.map(|band| Band {
        low: Measure::from_base(band.low.base() * (1.0 - share)),
        nominal: band.nominal,
        high: Measure::from_base(band.high.base() * (1.0 + share)),
    })
}

/// The number of injectors: one for each cylinder where none is typed.
fn count(reader: &mut Reader<'_>, engine: Option<&Engine>) -> Option<u32> {
    const COUNT: &str = "injectors.count";
    let entry = reader.whole(COUNT);
    let cylinders = engine.map(Engine::cylinders);
    match cylinders {
        Some(cylinders) => {
            reader.or_assume(COUNT, entry, cylinders, cylinders, "one for each cylinder").value()
        }
        None => entry.value(),
    }
}

/// How many share an output; nothing where that can't be read or is more than there are.
fn per_output(reader: &mut Reader<'_>, count: Option<u32>) -> Option<u32> {
    const PER_OUTPUT: &str = "injectors.per_output";
    let per_output = reader.whole(PER_OUTPUT).value()?;
    match count {
        Some(count) if count < per_output => {
            let message =
                say!("injectors.more-than-there-are", per_output = per_output, count = count);
            reader.unusable(Finding::new(Severity::Fault, PER_OUTPUT, message));
            None
        }
        _ => Some(per_output),
    }
}

fn output(reader: &mut Reader<'_>, taken: &mut Vec<(&'static str, Value)>) -> Output {
    let kind = reader.choice("injectors.output_kind");
    if !matches!(kind, Entry::Given(_)) {
        taken.push(("The output is", "a plain switch to ground".into()));
    }
    let stage = match kind.value() {
        Some("current-controlled") => Stage::CurrentControlled,
        _ => Stage::PlainSwitch,
    };
    Output {
        stage,
        limit: reader.band::<Current>("injectors.output_limit").value(),
        hold: reader.band::<Current>("injectors.hold_current").value(),
        on_resistance: usual::<Resistance>(reader, "injectors.output_resistance", taken),
    }
}

/// A quantity that has a usual value, which is taken where the field is blank or can't be read.
pub(super) fn usual<Q: Measure>(
    reader: &mut Reader<'_>,
    path: &'static str,
    taken: &mut Vec<(&'static str, Value)>,
) -> Band<Q> {
    let entry = reader.band::<Q>(path);
    if let Entry::Given(band) = entry {
        return band;
    }
    // a test of the fields sees to it that every assumed value can be read
    let (band, shown) =
        usual_band(path).unwrap_or((Band::exact(Q::from_base(0.0)), Value::text("")));
    taken.push((fields::find(path).map_or("", |field| field.label), shown));
    band
}
