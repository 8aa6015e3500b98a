//! The supply and temperatures from their fields.

pub use crate::conditions::{Conditions, Corner};
use crate::fields;
use crate::quantity::{Band, Temperature, Voltage, celsius, volts};
use crate::read::Reader;

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
    let hot_cranking = reader.band(fields::battery::HOT_CRANKING).value().map(|it| it.low);
    let supply = Band::exact(rest.nominal)
        .widened_to(low.low)
        .widened_to(low.high)
        .widened_to(hot_cranking.unwrap_or(low.low))
        .widened_to(high.low)
        .widened_to(high.high);
    let temperature =
        Band::exact(celsius(20.0)).widened_to(cold.low).widened_to(hot.high).widened_to(cold.high);
    let cold_cranking = Band::exact(rest.nominal).widened_to(low.low).widened_to(low.high).low;
    Conditions {
        supply,
        cold_cranking,
        hot_cranking: hot_cranking.unwrap_or(cold_cranking),
        temperature,
    }
}
