//! Whether the relay's coil can pull in at cranking voltage.

use crate::{
    quantity::{Band, Measure, Temperature, Time, Voltage, volts},
    working::{Formula, Step, Working},
};

/// Temperature coefficient of copper's resistance at 20 °C, 1/K. Source: IEC 60028.
const COPPER_PER_KELVIN: f64 = 0.00393;

const PULL_IN_AT: Formula = Formula {
    symbols: "U_T = U_20 · (1 + 0.00393 · (T − 20 °C))",
    source: "a relay pulls in at a current, and copper gains 0.393 % of its resistance per kelvin (IEC 60028)",
};

/// The relay.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Relay {
    /// From command to contact.
    pub pull_in_time: Band<Time>,
    /// From the end of the command to the opening of the contact.
    pub drop_out_time: Band<Time>,
    /// Voltage at which it is sure to pull in with its coil at 20 °C.
    pub pull_in_voltage: Band<Voltage>,
}

/// How the relay's coil fares while the starter turns.
#[derive(Clone, Debug, PartialEq)]
pub struct RelayAnswer {
    /// Voltage at which it is sure to pull in: cold, at 20 °C, hot.
    pub needed: Band<Voltage>,
    /// Whether the lowest supply is enough with the coil cold.
    pub cold: bool,
    /// Whether it is enough with the coil hot.
    pub hot: bool,
    /// How the voltages were found.
    pub working: Vec<Step>,
}

/// The voltage at which a relay pulls in with its coil at a temperature.
///
/// `U_T = U_20 (1 + 0.00393 (T - 20))`: the current stays the same.
pub fn pull_in_at(at_20: Voltage, coil: Temperature) -> Voltage {
    volts(at_20.base() * (1.0 + COPPER_PER_KELVIN * (coil.base() - 20.0)))
}

pub(super) fn answer(relay: &Relay, supply: Voltage, coil: Band<Temperature>) -> RelayAnswer {
    let mut working = Working::new();
    let surest = relay.pull_in_voltage.high;
    let mut at = |temperature: Temperature| {
        let values = [("U_20", surest.show()), ("T", temperature.show())];
        working.step(&PULL_IN_AT, &values, pull_in_at(surest, temperature))
    };
    let needed = Band { low: at(coil.low), nominal: surest, high: at(coil.high) };
    RelayAnswer {
        needed,
        cold: supply >= needed.low,
        hot: supply >= needed.high,
        working: working.into_steps(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::celsius;

    /// Source: a relay of 6.9 V at 20 °C needs 8.662605 V at 85 °C and 9.747285 V at 125 °C, computed from the
    /// coefficient of IEC 60028.
    #[test]
    fn a_hot_coil_needs_more_voltage() {
        for (temperature, expected) in [(20.0, 6.9), (85.0, 8.662605), (125.0, 9.747285)] {
            let got = pull_in_at(volts(6.9), celsius(temperature)).base();
            assert!((got - expected).abs() < 1e-9, "{temperature} °C: {got}");
        }
    }
}
