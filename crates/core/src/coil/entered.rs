//! The dwell that stands in the controller, and the current to which it charges a coil.

use super::{CoilInputs, charging::CoilCorner};
use crate::{
    quantity::{Band, Current, Measure, Time, Voltage, amperes, celsius},
    working::{Formula, Step, step},
};

const CURRENT: Formula = Formula {
    symbols: "I = V / R × (1 − exp(−R t_dwell / L))",
    source: "University Physics, vol. 2, section 14.4: an inductor through a resistance; an igniter that holds the current ends it there",
};

/// From so many times the current wanted a dwell is too long: the heat goes with the square. Common practice, no source.
pub const TOO_MUCH: f64 = 1.25;
/// Below this share of it the spark is another one, half the energy. Common practice, no source.
pub const TOO_LITTLE: f64 = 0.7;

/// A dwell as it was entered.
#[derive(Clone, Debug, PartialEq)]
pub struct EnteredDwell {
    /// The dwell.
    pub time: Band<Time>,
    /// The supply at which it is looked at.
    pub supply: Voltage,
    /// The current at its end: of the slowest coil, hot; as meant; of the fastest, cold.
    pub current: Band<Current>,
    /// How the current as meant was found.
    pub working: Vec<Step>,
}

/// How a dwell suits the current wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DwellFit {
    /// Even the slowest coil is charged to much more.
    TooLong,
    /// As meant it is charged to much more; the slowest is not.
    PerhapsTooLong,
    /// As meant it is charged to much less.
    TooShort,
    /// The coil is not known: from one end of what is usual to the other, it is charged to much more or to much less.
    Unknown,
    /// Neither.
    Suits,
}

impl EnteredDwell {
    /// What a dwell gives at a supply; nothing where no current can flow.
    pub fn of(inputs: &CoilInputs, time: Band<Time>, supply: Voltage) -> Option<Self> {
        let temperature = inputs.conditions.temperature;
        let at = |corner: &CoilCorner, time: Time| {
            corner.charging()?.current_at(time.base()).map(amperes)
        };
        let nominal = CoilCorner::nominal(inputs, supply, celsius(20.0));
        let current = Band {
            low: at(&CoilCorner::slowest(inputs, supply, temperature.high), time.low)?,
            nominal: at(&nominal, time.nominal)?,
            high: at(&CoilCorner::fastest(inputs, supply, temperature.low), time.high)?,
        };
        let values = [
            ("V", nominal.driving().show()),
            ("R", nominal.resistance.show()),
            ("L", nominal.inductance.show()),
            ("t_dwell", time.nominal.show()),
        ];
        let working = vec![step(&CURRENT, &values, current.nominal)];
        Some(Self { time, supply, current, working })
    }

    /// The same of a coil of which a value is only what is usual.
    pub fn fit_of_unknown(&self, wanted: Current) -> DwellFit {
        let share = |current: Current| current.base() / wanted.base();
        if share(self.current.low) > TOO_MUCH {
            DwellFit::TooLong
        } else if share(self.current.high) > TOO_MUCH || share(self.current.low) < TOO_LITTLE {
            DwellFit::Unknown
        } else {
            DwellFit::Suits
        }
    }

    /// Held against the current wanted.
    pub fn fit(&self, wanted: Current) -> DwellFit {
        let share = |current: Current| current.base() / wanted.base();
        if share(self.current.low) > TOO_MUCH {
            DwellFit::TooLong
        } else if share(self.current.nominal) > TOO_MUCH {
            DwellFit::PerhapsTooLong
        } else if share(self.current.nominal) < TOO_LITTLE {
            DwellFit::TooShort
        } else {
            DwellFit::Suits
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        conditions::Conditions,
        quantity::{Inductance, Resistance, ohms, seconds, volts},
    };

    fn inputs() -> CoilInputs {
        let inductance: Inductance = Measure::from_base(2.2e-3);
        let resistance: Resistance = ohms(0.45);
        CoilInputs {
            resistance: Band::exact(resistance),
            inductance: Band::exact(inductance),
            wanted: amperes(8.0),
            drop: Band::exact(volts(1.0)),
            limit: None,
            per_igniter: 1,
            spark: Band::exact(seconds(0.001)),
            duty_limit: None,
            pattern: None,
            banks: Vec::new(),
            speed: None,
            entered: None,
            entered_cranking: None,
            conditions: Conditions::between(
                Band { low: volts(8.0), nominal: volts(12.6), high: volts(14.8) },
                Band { low: celsius(-20.0), nominal: celsius(20.0), high: celsius(100.0) },
            ),
        }
    }

    /// By hand: 13.8 V / 0.45 Ω × (1 − exp(−0.45 × 5.5 / 2.2)) = 30.67 A × 0.6753 = 20.7 A.
    #[test]
    fn a_dwell_three_times_too_long_charges_to_more_than_twice_the_current() {
        let of = |ms: f64| {
            EnteredDwell::of(&inputs(), Band::exact(seconds(ms * 1e-3)), volts(14.8))
                .expect("current flows")
        };
        let long = of(5.5);
        assert!((long.current.nominal.base() - 20.71).abs() < 0.02, "{:?}", long.current);
        assert_eq!(long.fit(amperes(8.0)), DwellFit::TooLong);
        assert_eq!(of(1.5).fit(amperes(8.0)), DwellFit::Suits);
        assert_eq!(of(0.8).fit(amperes(8.0)), DwellFit::TooShort);
    }

    /// Common practice, no source: a quarter more current is 1.56 times the heat; seven tenths of it are half the energy.
    #[test]
    fn a_quarter_more_current_is_too_much_and_less_than_seven_tenths_too_little() {
        let fit = |low: f64, nominal: f64| {
            let current =
                Band { low: amperes(low), nominal: amperes(nominal), high: amperes(20.0) };
            let (time, supply) = (Band::exact(seconds(3e-3)), volts(14.8));
            EnteredDwell { time, supply, current, working: Vec::new() }.fit(amperes(10.0))
        };
        assert_eq!(fit(13.0, 14.0), DwellFit::TooLong);
        assert_eq!(fit(12.0, 13.0), DwellFit::PerhapsTooLong);
        assert_eq!([fit(6.0, 12.0), fit(6.0, 7.3)], [DwellFit::Suits; 2]);
        assert_eq!(fit(6.0, 6.7), DwellFit::TooShort);
    }

    #[test]
    fn an_igniter_that_holds_the_current_bears_a_long_dwell() {
        let held = CoilInputs { limit: Some(Band::exact(amperes(9.0))), ..inputs() };
        let entered = EnteredDwell::of(&held, Band::exact(seconds(5.5e-3)), volts(14.8));
        assert_eq!(entered.expect("current flows").fit(amperes(8.0)), DwellFit::Suits);
    }
}
