//! Whether the relay's coil can pull in at what the starter leaves it.

use crate::{
    quantity::{Band, Measure, Resistance, Temperature, Time, Voltage, volts},
    tables::copper,
    working::{Formula, Step, Working},
};

/// Temperature coefficient of copper's resistance at 20 °C, 1/K. Source: IEC 60028.
const COPPER_PER_KELVIN: f64 = 0.00393;

const PULL_IN_AT: Formula = Formula {
    symbols: "U_T = U_20 · (1 + 0.00393 · (T − 20 °C))",
    source: "a relay pulls in at a current, and copper gains 0.393% of its resistance per kelvin (IEC 60028)",
};
const AFTER_FEED: Formula = Formula {
    symbols: "U_coil = U_battery − U_feed",
    source: "voltages around a loop sum to zero",
};
const AT_COIL: Formula = Formula {
    symbols: "U_coil = (U_battery − U_feed) R_coil / (R_coil + R_on)",
    source: "Ohm's law: feed, coil and the output's switch in a row",
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
    /// Voltage at which it lets go with its coil at 20 °C, where that is known.
    pub drop_out_voltage: Option<Voltage>,
    /// What is lost between battery and coil while the starter turns.
    pub feed_loss: Band<Voltage>,
    /// On-resistance of the output, and resistance of the coil at 20 °C, where its output is known.
    pub switched: Option<(Resistance, Resistance)>,
}

/// Whether the relay is sure to pull in while the starter turns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PullIn {
    /// It is.
    Sure,
    /// It is not with its coil hot, by what is usually lost in its feed.
    PerhapsNotHot,
    /// Nor so, whatever is lost there.
    NotHot,
    /// Nor cold, by what is usually lost there.
    PerhapsNotCold,
    /// Nor cold, whatever is lost there.
    NotCold,
}

/// How the relay's coil fares while the starter turns.
#[derive(Clone, Debug, PartialEq)]
pub struct RelayAnswer {
    /// Voltage at which it is sure to pull in: cold, at 20 °C, hot.
    pub needed: Band<Voltage>,
    /// What its coil gets with the engine cold, and with it hot.
    pub at_coil: (Voltage, Voltage),
    /// Whether it is sure to pull in.
    pub pull_in: PullIn,
    /// Whether its pull-in voltage is one figure, and no span.
    pub is_exact: bool,
    /// What a relay that is in holds down to with its coil hot, where that is known.
    pub holds_to: Option<Voltage>,
    /// How what it needs was found.
    pub working: Vec<Step>,
    /// How what it gets was found.
    pub of_coil: Vec<Step>,
}

/// The voltage at which a relay pulls in with its coil at a temperature.
///
/// `U_T = U_20 (1 + 0.00393 (T - 20))`: the current stays the same.
pub fn pull_in_at(at_20: Voltage, coil: Temperature) -> Voltage {
    volts(at_20.base() * (1.0 + COPPER_PER_KELVIN * (coil.base() - 20.0)))
}

impl Relay {
    /// What its coil gets of a supply, by this loss in its feed.
    fn at_coil(&self, supply: Voltage, loss: Voltage, coil: Temperature) -> Voltage {
        let share = self.switched.map_or(1.0, |(on, cold)| {
            let coil = copper::at(coil, cold);
            coil.base() / (coil + on).base()
        });
        volts((supply - loss).base().max(0.0) * share)
    }
}

/// What a relay that is in gets at its coil while the starter turns, and what it holds down to, where that is more: with its
/// coil hot, which lets go first, or cold on what is left of a cold battery.
pub fn lets_go(
    relay: &Relay,
    (cold, hot): (Voltage, Voltage),
    coil: Band<Temperature>,
) -> Option<(Voltage, Voltage)> {
    let at_20 = relay.drop_out_voltage?;
    let each = [(hot, coil.high), (cold, coil.low)].map(|(supply, temperature)| {
        let at_coil = relay.at_coil(supply, relay.feed_loss.low, temperature);
        (at_coil, pull_in_at(at_20, temperature))
    });
    each.into_iter().find(|(at_coil, holds_to)| at_coil < holds_to)
}

/// `supply` is what the battery gives with the engine cold, and with it hot.
pub(super) fn answer(
    relay: &Relay,
    (cold, hot): (Voltage, Voltage),
    coil: Band<Temperature>,
) -> RelayAnswer {
    let mut working = Working::new();
    let surest = relay.pull_in_voltage.high;
    let mut at = |temperature: Temperature| {
        let values = [("U_20", surest.show()), ("T", temperature.show())];
        working.step(&PULL_IN_AT, &values, pull_in_at(surest, temperature))
    };
    let needed = Band { low: at(coil.low), nominal: surest, high: at(coil.high) };
    let (usual, mut of_coil) = (relay.feed_loss.nominal, Working::new());
    let at_coil = [(cold, coil.low), (hot, coil.high)].map(|(supply, temperature)| {
        let mut values = vec![("U_battery", supply.show()), ("U_feed", usual.show())];
        if let Some((on, resistance)) = relay.switched {
            values.push(("R_coil", copper::at(temperature, resistance).show()));
            values.push(("R_on", on.show()));
        }
        let formula = if relay.switched.is_some() { &AT_COIL } else { &AFTER_FEED };
        of_coil.step(formula, &values, relay.at_coil(supply, usual, temperature))
    });
    let [at_cold, at_hot] = at_coil;
    // what only some of its kind need is no doubt while the starter turns
    let least = relay.pull_in_voltage.low;
    let (asked_cold, asked_hot) = (pull_in_at(least, coil.low), pull_in_at(least, coil.high));
    let pull_in = if relay.at_coil(cold, relay.feed_loss.low, coil.low) < asked_cold {
        PullIn::NotCold
    } else if at_cold < asked_cold {
        PullIn::PerhapsNotCold
    } else if relay.at_coil(hot, relay.feed_loss.low, coil.high) < asked_hot {
        PullIn::NotHot
    } else if at_hot < asked_hot {
        PullIn::PerhapsNotHot
    } else {
        PullIn::Sure
    };
    RelayAnswer {
        needed,
        at_coil: (at_cold, at_hot),
        pull_in,
        is_exact: !relay.pull_in_voltage.is_spread(),
        holds_to: relay.drop_out_voltage.map(|at_20| pull_in_at(at_20, coil.high)),
        working: working.into_steps(),
        of_coil: of_coil.into_steps(),
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
