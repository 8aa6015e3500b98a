//! A resistance between an input and ground, with the input's pull-up above it.

use crate::{
    quantity::{Band, Measure, Power, Resistance, Voltage, ohms, volts, watts},
    tables::preferred::Series,
    working::{Formula, Step, step},
};

const DIVIDED: Formula =
    Formula { symbols: "U = U_supply R / (R + R_pull)", source: "a voltage divider (Ohm's law)" };
const PULLED_TWICE: Formula = Formula {
    symbols: "U = (U_supply / R_pull + U_other / R_other) / (1 / R + 1 / R_pull + 1 / R_other)",
    source: "currents into a node sum to zero (Kirchhoff)",
};
const HEAT: Formula = Formula { symbols: "P = U² / R", source: "Ohm's law" };

/// Below it a resistance counts as this: no wire has none.
const LEAST_OHM: f64 = 1e-3;
/// Pull-ups that are tried: common practice, no source.
const PULL_UPS_OHM: (f64, f64) = (100.0, 100e3);

/// A second way up: an old gauge that is still connected, or the sensor's own pull-up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SecondPull {
    /// What it goes to.
    pub supply: Band<Voltage>,
    /// Its resistance; above zero.
    pub resistance: Band<Resistance>,
}

/// An input's pull-up, and what else pulls.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Divider {
    /// What the pull-up goes to.
    pub supply: Band<Voltage>,
    /// The pull-up; above zero.
    pub pull_up: Band<Resistance>,
    /// What else pulls.
    pub second: Option<SecondPull>,
}

/// The voltage where these meet.
fn node(supply: f64, pull_up: f64, sensor: f64, second: Option<(f64, f64)>) -> f64 {
    let pull_up = pull_up.max(LEAST_OHM);
    let (other, by_other) = second.map_or((0.0, 0.0), |(v, r)| {
        let r = r.max(LEAST_OHM);
        (v / r, 1.0 / r)
    });
    (supply / pull_up + other) / (1.0 / sensor.max(LEAST_OHM) + 1.0 / pull_up + by_other)
}

impl Divider {
    /// The voltage at the input over every tolerance.
    pub fn voltage(&self, sensor: &Band<Resistance>) -> Band<Voltage> {
        let second = |of: fn(&Band<Voltage>) -> f64| {
            self.second.map(|it| {
                let ends = [it.resistance.low.base(), it.resistance.high.base()];
                ends.map(|ohm| (of(&it.supply), ohm))
            })
        };
        let pulls = [self.pull_up.low.base(), self.pull_up.high.base()];
        // more ohms pull less, up or down: both are tried
        let over = |supply: Voltage, sensor: Resistance, second: Option<[(f64, f64); 2]>| {
            let seconds: Vec<_> =
                second.map_or_else(|| vec![None], |it| it.into_iter().map(Some).collect());
            let all = pulls.into_iter().flat_map(move |pull| {
                let seconds = seconds.clone().into_iter();
                seconds.map(move |it| node(supply.base(), pull, sensor.base(), it))
            });
            all.collect::<Vec<_>>()
        };
        let low = over(self.supply.low, sensor.low, second(|it| it.low.base()));
        let high = over(self.supply.high, sensor.high, second(|it| it.high.base()));
        Band {
            low: volts(low.into_iter().fold(f64::INFINITY, f64::min)),
            nominal: self.nominal(sensor.nominal),
            high: volts(high.into_iter().fold(f64::NEG_INFINITY, f64::max)),
        }
    }

    /// The same with every part as its data have it.
    pub fn nominal(&self, sensor: Resistance) -> Voltage {
        let second = self.second.map(|it| (it.supply.nominal.base(), it.resistance.nominal.base()));
        let (supply, pull_up) = (self.supply.nominal.base(), self.pull_up.nominal.base());
        volts(node(supply, pull_up, sensor.base(), second))
    }

    /// The resistance at which the input gets a voltage, with nothing else pulling; nothing where no resistance gives it.
    pub fn resistance(&self, at: Voltage) -> Option<Resistance> {
        let (supply, at) = (self.supply.nominal.base(), at.base());
        let is_between = 0.0 < at && at < supply;
        is_between.then(|| ohms(self.pull_up.nominal.base() * at / (supply - at)))
    }

    /// What heats the sensor.
    pub fn heat(&self, sensor: Resistance) -> (Power, Step) {
        let voltage = self.nominal(sensor);
        let heat = watts(voltage.base() * voltage.base() / sensor.base().max(LEAST_OHM));
        (heat, step(&HEAT, &[("U", voltage.show()), ("R", sensor.show())], heat.show()))
    }

    /// How the voltage as meant was found.
    pub fn working(&self, sensor: Resistance) -> Step {
        let mut values = vec![
            ("U_supply", self.supply.nominal.show()),
            ("R_pull", self.pull_up.nominal.show()),
            ("R", sensor.show()),
        ];
        if let Some(it) = self.second {
            values.push(("U_other", it.supply.nominal.show()));
            values.push(("R_other", it.resistance.nominal.show()));
        }
        let formula = if self.second.is_some() { &PULLED_TWICE } else { &DIVIDED };
        step(formula, &values, self.nominal(sensor).show())
    }
}

/// The pull-up of the E12 series with which the weaker end of a range tells two values apart best: `cold` and `hot` are the
/// resistances at the two sides of a small step, at each end of the range.
pub fn best_pull_up(
    cold: (Resistance, Resistance),
    hot: (Resistance, Resistance),
) -> Option<Resistance> {
    let step = |pull: f64, (one, other): (Resistance, Resistance)| {
        (node(1.0, pull, one.base(), None) - node(1.0, pull, other.base(), None)).abs()
    };
    let weakest = |pull: f64| step(pull, cold).min(step(pull, hot));
    let (low, high) = PULL_UPS_OHM;
    let tried = Series::E12.values().filter(|it| (low..=high).contains(&it.base()));
    tried.fold(None, |best: Option<Resistance>, it| match best {
        Some(best) if weakest(best.base()) >= weakest(it.base()) => Some(best),
        _ => Some(it),
    })
}
