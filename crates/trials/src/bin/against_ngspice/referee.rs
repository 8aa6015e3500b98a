//! Who is right: the operating point in 32 digits, by the textbook's way.
//!
//! Modified nodal analysis (C.-W. Ho, A. E. Ruehli, P. A. Brennan, "The modified nodal approach to network analysis", IEEE
//! Transactions on Circuits and Systems 22, 1975), Gauss's elimination with pivoting, Newton's steps: nothing in common
//! with our own solver's elimination, and sixteen digits more than either program. It starts from an answer that it is
//! given, but ends only where Kirchhoff's law holds to [`HOLDS`], and there is only one such place.

use quietpin_core::circuit::Diode;

use crate::circuit::{Answer, Circuit, Kind, Part};
use crate::double_double::DoubleDouble;

/// Kirchhoff's law at a node: what is left over, relative to the currents that meet there.
const HOLDS: f64 = 1e-20;

/// In amperes: what the 32nd digit of a voltage makes in a milliohm.
const LAST_DIGIT_A: f64 = 1e-26;

/// In siemens, from the pin of what floats to its voltage: that carries nothing, whatever it is.
const PIN_S: f64 = 1.0;

const MOST_STEPS: usize = 100;

/// The operating point, if the steps from `start` lead to one.
pub(crate) fn settle(circuit: &Circuit, start: &Answer) -> Option<Answer> {
    // What floats starts at its pin, where the diodes that lead there block.
    let pin_v = circuit.pins.first().map_or(0.0, |pin| pin.1);
    let start = start.voltages.iter().map(|v| v.unwrap_or(pin_v).into());
    let mut volts: Vec<DoubleDouble> = start.collect();
    for _ in 0..MOST_STEPS {
        let mut equations = Equations::at(circuit, &volts);
        let found = equations.solve()?;
        let (nodes, sources) = found.split_at(circuit.nodes() - 1);
        let next: Vec<_> =
            std::iter::once(DoubleDouble::ZERO).chain(nodes.iter().copied()).collect();
        let currents = currents(circuit, &next, sources);
        volts = next;
        if kirchhoff_holds(circuit, &volts, &currents) {
            return Some(Answer {
                voltages: volts.iter().map(|v| Some(v.value())).collect(),
                currents: currents.iter().map(|a| Some(a.value())).collect(),
            });
        }
    }
    None
}

/// Linear equations, one a row, with the right-hand side last.
struct Equations {
    rows: Vec<Vec<DoubleDouble>>,
}

impl Equations {
    /// Every part by its tangent at these voltages; unknown are the voltages of the nodes and the currents of the sources.
    fn at(circuit: &Circuit, volts: &[DoubleDouble]) -> Self {
        let nodes = circuit.nodes() - 1;
        let size = nodes + sources(circuit).count();
        let mut equations = Self { rows: vec![vec![DoubleDouble::ZERO; size + 1]; size] };
        for &(node, v) in &circuit.pins {
            equations.conductance(node, 0, PIN_S.into());
            equations.inflow(node, DoubleDouble::from(v) * PIN_S.into());
        }
        let mut source = nodes;
        for part in &circuit.parts {
            if let Kind::Source { v } = part.kind {
                equations.source(part, source, v);
                source += 1;
            } else {
                let across = volts[part.from] - volts[part.to];
                let (current, conductance) = law(part.kind, across);
                equations.conductance(part.from, part.to, conductance);
                equations.inflow(part.from, conductance * across - current);
                equations.inflow(part.to, current - conductance * across);
            }
        }
        equations
    }

    fn add(&mut self, row: usize, column: usize, value: DoubleDouble) {
        self.rows[row][column] = self.rows[row][column] + value;
    }

    fn inflow(&mut self, node: usize, current: DoubleDouble) {
        if node > 0 {
            self.add(node - 1, self.rows.len(), current);
        }
    }

    fn conductance(&mut self, from: usize, to: usize, siemens: DoubleDouble) {
        for (node, other) in [(from, to), (to, from)] {
            if node > 0 {
                self.add(node - 1, node - 1, siemens);
                if other > 0 {
                    self.add(node - 1, other - 1, -siemens);
                }
            }
        }
    }

    fn source(&mut self, part: &Part, number: usize, v: f64) {
        for (node, sign) in [(part.from, 1.0), (part.to, -1.0)] {
            if node > 0 {
                self.add(node - 1, number, sign.into());
                self.add(number, node - 1, sign.into());
            }
        }
        self.add(number, self.rows.len(), v.into());
    }

    /// Gauss's elimination; `None` where the equations contradict each other or leave something open.
    fn solve(&mut self) -> Option<Vec<DoubleDouble>> {
        let size = self.rows.len();
        for column in 0..size {
            let magnitude = |row: &usize| self.rows[*row][column].abs().value();
            let pivot = (column..size).max_by(|a, b| magnitude(a).total_cmp(&magnitude(b)))?;
            if magnitude(&pivot) == 0.0 {
                return None;
            }
            self.rows.swap(column, pivot);
            let (above, below) = self.rows.split_at_mut(column + 1);
            let pivot = &above[column];
            for row in below {
                let factor = row[column] / pivot[column];
                for (value, under) in row.iter_mut().zip(pivot).skip(column) {
                    *value = *value - factor * *under;
                }
            }
        }
        let mut found = vec![DoubleDouble::ZERO; size];
        for (number, row) in self.rows.iter().enumerate().rev() {
            let known = row.iter().zip(&found).skip(number + 1);
            let rest = known.fold(row[size], |rest, (factor, value)| rest - *factor * *value);
            found[number] = rest / row[number];
        }
        Some(found)
    }
}

fn sources(circuit: &Circuit) -> impl Iterator<Item = &Part> {
    circuit.parts.iter().filter(|part| matches!(part.kind, Kind::Source { .. }))
}

/// Current and conductance of a part that is no ideal source of voltage.
fn law(kind: Kind, v: DoubleDouble) -> (DoubleDouble, DoubleDouble) {
    let one = DoubleDouble::from(1.0);
    match kind {
        Kind::Resistor { ohm } => (v / ohm.into(), one / ohm.into()),
        Kind::Source { .. } => (DoubleDouble::ZERO, DoubleDouble::ZERO),
        Kind::Current { a } => (a.into(), DoubleDouble::ZERO),
        Kind::Diode(Diode::Threshold { forward_voltage_v, on_resistance_ohm }) => {
            let above = v - forward_voltage_v.into();
            if above.value() > 0.0 {
                (above / on_resistance_ohm.into(), one / on_resistance_ohm.into())
            } else {
                (DoubleDouble::ZERO, DoubleDouble::ZERO)
            }
        }
        Kind::Diode(Diode::Exponential {
            saturation_current_a,
            emission_coefficient,
            thermal_voltage_v,
        }) => {
            let scale = DoubleDouble::from(emission_coefficient * thermal_voltage_v);
            let (saturation, power) = (saturation_current_a.into(), (v / scale).exp_m1());
            (power * saturation, (power + one) * saturation / scale)
        }
    }
}

fn currents(
    circuit: &Circuit,
    volts: &[DoubleDouble],
    sources: &[DoubleDouble],
) -> Vec<DoubleDouble> {
    let mut sources = sources.iter();
    let current = |part: &Part| match part.kind {
        Kind::Source { .. } => sources.next().copied().unwrap_or_default(),
        kind => law(kind, volts[part.from] - volts[part.to]).0,
    };
    circuit.parts.iter().map(current).collect()
}

fn kirchhoff_holds(circuit: &Circuit, volts: &[DoubleDouble], currents: &[DoubleDouble]) -> bool {
    (1..circuit.nodes()).all(|node| {
        let (mut sum, mut traffic) = (DoubleDouble::ZERO, LAST_DIGIT_A / HOLDS);
        for &(_, v) in circuit.pins.iter().filter(|pin| pin.0 == node) {
            sum = sum + (volts[node] - v.into()) * PIN_S.into();
        }
        for (part, current) in circuit.parts.iter().zip(currents) {
            let ends = [(part.from, *current), (part.to, -*current)];
            for (_, outward) in ends.into_iter().filter(|(end, _)| *end == node) {
                sum = sum + outward;
                traffic += outward.value().abs();
            }
        }
        sum.value().abs() <= HOLDS * traffic
    })
}
