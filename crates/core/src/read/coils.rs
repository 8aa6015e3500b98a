//! The ignition coils from their fields.

use super::{Conditions, Entry, Reader, injectors::usual};
use crate::{
    channels::Ignition,
    coil::{Inputs, feed::Parts, pattern::Pattern},
    engine::Engine,
    fields,
    plan::Coils as Typed,
    quantity::{
        Area, Band, Current, Inductance, Length, Ratio, Resistance, RotationalSpeed, Time, Value,
        Voltage,
    },
};

/// What the fields of the coils say.
#[derive(Debug)]
pub(crate) struct Coiled {
    /// The inputs, with what is taken for blanks.
    pub(crate) inputs: Inputs,
    /// How they would be charged if each were fired once a cycle, where they are not.
    pub(crate) once_a_cycle: Option<Pattern>,
    /// How they are fed.
    pub(crate) parts: Parts,
    /// What was taken for fields that are blank or can't be read: the label of the field and the value.
    pub(crate) taken: Vec<(&'static str, Value)>,
}

/// Reads the coils; every field, whatever stands in the others. Nothing where none of it was typed: then it was not asked
/// about, and nothing is taken.
pub(crate) fn coils(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    engine: Option<&Engine>,
    speed: Option<Band<RotationalSpeed>>,
) -> Option<Coiled> {
    if reader.plan().coils == Typed::default() {
        return None;
    }
    let taken = &mut Vec::new();
    let mode = reader.ignition_mode();
    let inputs = Inputs {
        resistance: usual::<Resistance>(reader, "coils.resistance", taken),
        inductance: usual::<Inductance>(reader, "coils.inductance", taken),
        wanted: usual::<Current>(reader, "coils.current", taken).nominal,
        drop: usual::<Voltage>(reader, "coils.drop", taken),
        limit: reader.band::<Current>("coils.limit").value(),
        spark: usual::<Time>(reader, "coils.spark", taken),
        duty_limit: reader.band::<Ratio>("coils.duty_limit").value().map(|band| band.low),
        pattern: engine.zip(mode).map(|(engine, mode)| Pattern::new(engine, mode)),
        banks: engine
            .zip(mode)
            .map_or_else(Vec::new, |(engine, mode)| Pattern::by_bank(engine, mode)),
        speed: speed.map(|speed| speed.high),
        conditions: *conditions,
    };
    let parts = parts(reader, conditions, taken);
    let is_more_often = mode.is_some_and(|mode| mode != Ignition::Sequential);
    let once_a_cycle =
        engine.filter(|_| is_more_often).map(|engine| Pattern::new(engine, Ignition::Sequential));
    Some(Coiled { inputs, once_a_cycle, parts, taken: std::mem::take(taken) })
}

fn parts(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    taken: &mut Vec<(&'static str, Value)>,
) -> Parts {
    let relays = reader.whole("coils.relays");
    if !matches!(relays, Entry::Given(_)) {
        taken.push((fields::find("coils.relays").map_or("", |field| field.label), 1_u32.into()));
    }
    let mut rating = |path| reader.band::<Current>(path).value().map(|band| band.low);
    let (relay, fuse) = (rating("coils.relay"), rating("coils.fuse"));
    let length = reader.band::<Length>("coils.lead_length").value().map(|band| band.high);
    let area = reader.band::<Area>("coils.lead_size").value().map(|band| band.low);
    Parts {
        relays: relays.value().unwrap_or(1),
        relay,
        fuse,
        lead: length.zip(area),
        hot: conditions.temperature.high,
    }
}
