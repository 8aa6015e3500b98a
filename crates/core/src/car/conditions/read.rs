//! The supply and temperatures from their fields.

pub use crate::conditions::{Conditions, Corner};
use crate::fields;
use crate::quantity::{Band, Measure, Temperature, Voltage, celsius, volts};
use crate::read::Reader;

/// By how much a warm battery stands higher while the starter turns, in volts: 9.5 to 10 V against 8 V, common practice, no
/// source.
const WARM_V: f64 = 1.5;

/// Reads the conditions; what can't be read is replaced by what is assumed, and its finding stands.
pub(crate) fn conditions(reader: &mut Reader<'_>) -> Conditions {
    let mut voltage = |path, usual| {
        reader.band::<Voltage>(path).value().map_or(Band::exact(volts(usual)), |band| band)
    };
    let (low, rest, high) = (
        voltage(fields::battery::COLD_CRANKING, 8.0),
        voltage(fields::battery::RESTING, 12.6),
        voltage(fields::battery::CHARGING, 14.8),
    );
    let mut temperature = |path, usual| {
        reader.band::<Temperature>(path).value().map_or(Band::exact(celsius(usual)), |band| band)
    };
    let (cold, hot) = (
        temperature(fields::temperatures::COLD, -20.0),
        temperature(fields::temperatures::HOT, 100.0),
    );
    let cold_cranking = Band::exact(rest.nominal).widened_to(low.low).widened_to(low.high).low;
    let hot_cranking = reader.band(fields::battery::HOT_CRANKING);
    let usual = usual_hot(cold_cranking, rest.nominal);
    let basis = "1.5 V more than cold, since a warm battery and thin oil give as much: common practice, no source";
    let hot_cranking = reader.or_assume(
        fields::battery::HOT_CRANKING,
        hot_cranking.map(|it| it.low),
        usual,
        usual.show(),
        basis,
    );
    let hot_cranking = hot_cranking.value().unwrap_or(usual);
    let supply = Band::exact(rest.nominal)
        .widened_to(low.low)
        .widened_to(low.high)
        .widened_to(hot_cranking)
        .widened_to(high.low)
        .widened_to(high.high);
    let temperature =
        Band::exact(celsius(20.0)).widened_to(cold.low).widened_to(hot.high).widened_to(cold.high);
    Conditions { supply, cold_cranking, hot_cranking, temperature }
}

/// What is usual while a hot engine is cranked: no more than the battery has at rest.
fn usual_hot(cold_cranking: Voltage, resting: Voltage) -> Voltage {
    let usual = cold_cranking.base() + WARM_V;
    volts(usual.min(resting.base()))
}
