//! The supply and temperatures between which every answer must hold.

use crate::quantity::{Band, Temperature, Voltage};

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
