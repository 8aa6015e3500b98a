//! The supply and temperatures between which every answer must hold.

use super::Reader;
use crate::quantity::{Band, Temperature, Voltage, celsius, volts};

/// Supply and temperatures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Conditions {
    /// From cranking to charging; at rest between.
    pub supply: Band<Voltage>,
    /// From the coldest start to the hottest soak; 20 °C between.
    pub temperature: Band<Temperature>,
}

/// One of the corners at which an answer is worked out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    /// What a fitter calls it.
    pub name: &'static str,
    /// The supply there.
    pub supply: Voltage,
    /// The temperature of the parts there.
    pub temperature: Temperature,
}

impl Conditions {
    /// The corners, in the order in which an engine meets them.
    pub fn corners(&self) -> [Corner; 5] {
        let corner = |name, supply, temperature| Corner { name, supply, temperature };
        let (supply, temperature) = (self.supply, self.temperature);
        [
            corner("cranking, cold", supply.low, temperature.low),
            corner("cranking, hot", supply.low, temperature.high),
            corner("at rest, 20 °C", supply.nominal, temperature.nominal),
            corner("charging, cold", supply.high, temperature.low),
            corner("charging, hot", supply.high, temperature.high),
        ]
    }
}

/// Reads the conditions; what can't be read is replaced by what is assumed, and its finding stands.
pub(crate) fn conditions(reader: &mut Reader<'_>) -> Conditions {
    let mut voltage = |path, usual| {
        reader.band::<Voltage>(path).value().map_or(Band::exact(volts(usual)), |band| band)
    };
    let (low, rest, high) = (
        voltage("conditions.cranking", 8.0),
        voltage("conditions.resting", 12.6),
        voltage("conditions.charging", 14.8),
    );
    let mut temperature = |path, usual| {
        reader.band::<Temperature>(path).value().map_or(Band::exact(celsius(usual)), |band| band)
    };
    let (cold, hot) = (temperature("conditions.cold", -20.0), temperature("conditions.hot", 100.0));
    let supply = Band::exact(rest.nominal)
        .widened_to(low.low)
        .widened_to(low.high)
        .widened_to(high.low)
        .widened_to(high.high);
    let temperature =
        Band::exact(celsius(20.0)).widened_to(cold.low).widened_to(hot.high).widened_to(cold.high);
    Conditions { supply, temperature }
}
