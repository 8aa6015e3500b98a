//! The supply and temperatures between which every answer must hold.

use crate::quantity::{Band, Temperature, Voltage};

/// Supply and temperatures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Conditions {
    /// From cranking to charging; at rest between.
    pub supply: Band<Voltage>,
    /// While the starter turns a cold engine, at the least.
    pub cold_cranking: Voltage,
    /// While it turns a hot one, at the least.
    pub hot_cranking: Voltage,
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
    /// Between these; hot or cold, the starter leaves the battery the same.
    pub fn between(supply: Band<Voltage>, temperature: Band<Temperature>) -> Self {
        Self { supply, cold_cranking: supply.low, hot_cranking: supply.low, temperature }
    }

    /// The corners, in the order in which an engine meets them.
    pub fn corners(&self) -> [Corner; 5] {
        let corner = |name, supply, temperature| Corner { name, supply, temperature };
        let (supply, temperature) = (self.supply, self.temperature);
        [
            corner("cranking, cold", self.cold_cranking, temperature.low),
            corner("cranking, hot", self.hot_cranking, temperature.high),
            corner("at rest, 20 °C", supply.nominal, temperature.nominal),
            corner("charging, cold", supply.high, temperature.low),
            corner("charging, hot", supply.high, temperature.high),
        ]
    }
}
