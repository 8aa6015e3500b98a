//! A variable-reluctance sensor: its peak by speed, and what its input gets of it.

use crate::{
    circuit::{GROUND, Network},
    quantity::{
        Band, Current, Measure, Resistance, RotationalSpeed, Temperature, Voltage, amperes, ohms,
        volts,
    },
    tables::{copper, preferred::Series},
    working::{Formula, Step, Working},
};

/// What a clamp at an input is let carry: common practice, no source.
const CLAMP_A: f64 = 0.005;

const SCALED: Formula = Formula {
    symbols: "U = U_m n / n_m",
    source: "law of induction: the same flux in less time, at the same air gap (University Physics, vol. 2, section 13.1)",
};
const DIVIDED: Formula = Formula {
    symbols: "U_in = U R_in / (R_coil + R_series + R_in)",
    source: "the circuit, solved: coil and input are a divider",
};

/// A sensor and its input.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reluctance {
    /// Its peak, unplugged.
    pub peak: Band<Voltage>,
    /// The speed at which that was measured; above zero.
    pub measured_at: Band<RotationalSpeed>,
    /// Resistance of its coil at 20 °C; above zero.
    pub coil: Band<Resistance>,
    /// Resistance of the input; above zero.
    pub input: Band<Resistance>,
    /// How cold and how hot the coil gets.
    pub temperature: Band<Temperature>,
    /// A resistor in line with the signal.
    pub series: Resistance,
}

/// Its peak at a speed.
#[derive(Clone, Debug, PartialEq)]
pub struct Peak {
    /// Unplugged.
    pub open: Band<Voltage>,
    /// At the input.
    pub at_input: Band<Voltage>,
    /// How it was found.
    pub working: Vec<Step>,
}

/// What keeps a signal from being too high, and still leaves enough while cranking.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SignalLimiter {
    /// A resistor in line alone; what is left at the slowest instant.
    Series(Resistance, Voltage),
    /// A resistor in line and a clamp behind it; the current in the clamp.
    Clamp(Resistance, Current),
}

/// A peak at another speed.
pub fn scaled(peak: Voltage, from: RotationalSpeed, to: RotationalSpeed) -> Voltage {
    volts(peak.base() * to.base() / from.base())
}

/// What a divider leaves of a voltage, by the circuit; nothing where a value is none that a circuit can have.
pub fn divided(open: Voltage, above: Resistance, input: Resistance) -> Option<Voltage> {
    let mut network = Network::new();
    let (source, pin) = (network.node("sensor"), network.node("input"));
    network.source(source, GROUND, open.base());
    network.resistor(source, pin, above.base());
    network.resistor(pin, GROUND, input.base());
    network.solve().ok()?.voltage(pin).map(volts)
}

impl Reluctance {
    /// The peak at a speed.
    pub fn at(&self, speed: Band<RotationalSpeed>) -> Option<Peak> {
        let open = Band {
            nominal: scaled(self.peak.nominal, self.measured_at.nominal, speed.nominal),
            low: scaled(self.peak.low, self.measured_at.high, speed.low),
            high: scaled(self.peak.high, self.measured_at.low, speed.high),
        };
        let (cold, hot) = (self.temperature.low, self.temperature.high);
        let above = |coil| coil + self.series;
        let at_input = Band {
            nominal: divided(open.nominal, above(self.coil.nominal), self.input.nominal)?,
            low: divided(open.low, above(copper::at(hot, self.coil.high)), self.input.low)?,
            high: divided(open.high, above(copper::at(cold, self.coil.low)), self.input.high)?,
        };
        let mut working = Working::new();
        let shown = [
            ("U_m", self.peak.nominal.show()),
            ("n", speed.nominal.show()),
            ("n_m", self.measured_at.nominal.show()),
        ];
        working.step(&SCALED, &shown, open.nominal);
        let shown = [
            ("U", open.nominal.show()),
            ("R_in", self.input.nominal.show()),
            ("R_coil", self.coil.nominal.show()),
            ("R_series", self.series.show()),
        ];
        working.step(&DIVIDED, &shown, at_input.nominal);
        Some(Peak { open, at_input, working: working.into_steps() })
    }

    /// What keeps the peak at the highest speed at or below what the input bears and leaves `counts_from` at the slowest: a
    /// resistor alone, or one with a clamp. Both are solved before they are offered.
    pub fn cure(
        &self,
        slowest: Band<RotationalSpeed>,
        highest: Band<RotationalSpeed>,
        counts_from: Voltage,
        bears: Voltage,
    ) -> Option<SignalLimiter> {
        let open = self.at(highest)?.open.high.base();
        let cold = copper::at(self.temperature.low, self.coil.low).base();
        let with = |ohm: f64| {
            let series = Series::E24.next_at_or_above(ohms(ohm.max(1.0)))?;
            let changed = Self { series, ..*self };
            let left = changed.at(slowest)?.at_input.low;
            (left >= counts_from).then_some((changed, left))
        };
        let alone = (open / bears.base() - 1.0) * self.input.high.base() - cold;
        if let Some((changed, left)) = with(alone)
            && changed.at(highest)?.at_input.high <= bears
        {
            return Some(SignalLimiter::Series(changed.series, left));
        }
        let (changed, _) = with((open - bears.base()) / CLAMP_A - cold)?;
        let current = (open - bears.base()) / (changed.series.base() + cold);
        Some(SignalLimiter::Clamp(changed.series, amperes(current)))
    }
}
