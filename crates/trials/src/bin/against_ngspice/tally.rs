//! What disagrees, how much, and who is wrong.

use quietpin_core::circuit::{Diode, Unsolvable};

use crate::circuit::{Answer, Circuit, Expected, Kind};

/// Relative, between the two programs.
pub(crate) const TOLERANCE: f64 = 1e-6;

/// Relative, between our solver and the referee: what `circuit` promises.
pub(crate) const OUR_TOLERANCE: f64 = 1e-9;

/// Below so many volts or amperes, errors are relative to this instead: at [`TOLERANCE`], a nanovolt and a picoampere.
pub(crate) const LEAST: [f64; 2] = [1e-3, 1e-6];

/// Where a current is what others leave of each other: [`OUR_TOLERANCE`] is relative to so much of those, at least.
const TRAFFIC: f64 = 1e-3;

/// What came of the circuits of a family.
#[derive(Clone, Debug, Default)]
pub(crate) struct Tally {
    pub(crate) circuits: usize,
    /// Circuits that the simulator found an operating point of, and numbers compared.
    pub(crate) compared: usize,
    pub(crate) numbers: usize,
    /// The two programs furthest apart: in a voltage, in a current.
    pub(crate) apart: [Worst; 2],
    /// Numbers in which they are further apart than the tolerance, and those of them in which the referee is nearer to
    /// the simulator than to us; circuits with such numbers.
    pub(crate) beyond: usize,
    pub(crate) we_are_further: usize,
    pub(crate) circuits_beyond: usize,
    /// Furthest from the referee: of ours, of the simulator's.
    pub(crate) ours: Worst,
    pub(crate) theirs: Worst,
    /// Circuits that have an operating point, and the simulator found none.
    pub(crate) without_answer: usize,
    /// Nodes that float by the way they were made.
    pub(crate) floating: usize,
    /// Circuits without an answer by the way they were made, and those of them that the simulator gives one.
    pub(crate) refused: usize,
    pub(crate) refused_with_volts: usize,
    /// What must not be, each with the number of its circuit.
    pub(crate) wrong: Vec<String>,
}

/// One circuit, and what each program says of it.
pub(crate) struct Trial<'a> {
    pub(crate) index: usize,
    pub(crate) circuit: &'a Circuit,
    pub(crate) ours: &'a Result<Answer, Unsolvable>,
    pub(crate) theirs: &'a Answer,
    pub(crate) exact: Option<Answer>,
}

/// One voltage or current, as each program has it.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Number {
    pub(crate) ours: Option<f64>,
    pub(crate) theirs: Option<f64>,
    pub(crate) exact: Option<f64>,
    pub(crate) place: Place,
    /// What small errors are relative to.
    least: f64,
    /// The same for our own.
    our_least: f64,
}

#[derive(Clone, Copy, Debug)]
pub(crate) enum Place {
    Voltage(usize),
    Current(usize),
}

impl Default for Place {
    fn default() -> Self {
        Self::Voltage(0)
    }
}

/// The largest error met so far.
#[derive(Clone, Debug, Default)]
pub(crate) struct Worst {
    pub(crate) error: f64,
    pub(crate) index: usize,
    pub(crate) number: Number,
}

impl Worst {
    fn see(&mut self, error: f64, index: usize, number: Number) {
        // Not a number is worse than anything.
        if error.is_nan() || error > self.error {
            *self = Self { error, index, number };
        }
    }
}

impl Tally {
    pub(crate) fn add(&mut self, trial: &Trial<'_>) {
        self.circuits += 1;
        let circuit = trial.circuit;
        if circuit.answer != Expected::Answer {
            self.refused += 1;
            self.refused_with_volts += usize::from(trial.theirs.has_volts());
            self.check_refusal(trial);
            return;
        }
        self.floating += circuit.floats.iter().filter(|floats| **floats).count();
        *(if trial.theirs.has_volts() { &mut self.compared } else { &mut self.without_answer }) +=
            1;
        match trial.ours {
            Err(error) => self.wrong(trial, &format!("ours gives no answer: {error}")),
            Ok(ours) => self.check_answer(trial, ours),
        }
    }

    fn wrong(&mut self, trial: &Trial<'_>, what: &str) {
        self.wrong.push(format!("circuit {}: {what}", trial.index));
    }

    /// A circuit that contradicts itself is refused, and for the right reason.
    fn check_refusal(&mut self, trial: &Trial<'_>) {
        let expected = trial.circuit.answer;
        let is_right = match expected {
            Expected::Answer => trial.ours.is_ok(),
            Expected::SourceLoop => matches!(trial.ours, Err(Unsolvable::SourceLoop { .. })),
            Expected::NoReturn => matches!(trial.ours, Err(Unsolvable::NoReturn { .. })),
            Expected::NoLimit => matches!(trial.ours, Err(Unsolvable::NoLimit { .. })),
        };
        if !is_right {
            self.wrong(trial, &format!("{expected:?} expected, not {:?}", trial.ours));
        }
    }

    fn check_answer(&mut self, trial: &Trial<'_>, ours: &Answer) {
        if trial.exact.is_none() {
            self.wrong(trial, "the referee does not settle");
        }
        let beyond = self.beyond;
        for (node, floats) in trial.circuit.floats.iter().enumerate() {
            if ours.voltages[node].is_none() != *floats {
                let says = if *floats { "held" } else { "floating" };
                self.wrong(trial, &format!("node {node} is not {says}"));
            } else if !floats {
                self.compare(trial, trial.number(ours, Place::Voltage(node)));
            }
        }
        for part in 0..trial.circuit.parts.len() {
            self.compare(trial, trial.number(ours, Place::Current(part)));
        }
        self.circuits_beyond += usize::from(self.beyond > beyond);
    }

    fn compare(&mut self, trial: &Trial<'_>, number: Number) {
        let our_error = error(number.ours, number.exact, number.our_least);
        if let Some(our_error) = our_error {
            self.ours.see(our_error, trial.index, number);
            if our_error.is_nan() || our_error > OUR_TOLERANCE {
                self.wrong(trial, &format!("{number:?}"));
            }
        }
        if number.theirs.is_none() && trial.theirs.has_volts() {
            self.wrong(trial, &format!("ngspice leaves out {:?}", number.place));
        }
        if let Some(their_error) = error(number.theirs, number.exact, number.least) {
            self.theirs.see(their_error, trial.index, number);
        }
        let Some(apart) = error(number.ours, number.theirs, number.least) else { return };
        self.numbers += 1;
        let kind = usize::from(matches!(number.place, Place::Current(_)));
        self.apart[kind].see(apart, trial.index, number);
        if apart.is_nan() || apart > TOLERANCE {
            self.beyond += 1;
            let distance = |value: Option<f64>| error(value, number.exact, number.least);
            self.we_are_further += usize::from(distance(number.ours) >= distance(number.theirs));
        }
    }
}

impl Trial<'_> {
    fn number(&self, ours: &Answer, place: Place) -> Number {
        let of = |answer: &Answer| match place {
            Place::Voltage(node) => answer.voltages[node],
            Place::Current(part) => answer.currents[part],
        };
        let least = LEAST[usize::from(matches!(place, Place::Current(_)))];
        let exact = self.exact.as_ref().and_then(of);
        let our_least = least.max(TRAFFIC * self.traffic_a(place));
        Number { ours: of(ours), theirs: of(self.theirs), exact, place, least, our_least }
    }

    /// Of the current of an ideal source, which is what the others leave, and of a threshold diode, which may be at its
    /// threshold: the sum, without signs, of the currents that meet at its ends, and wherever ideal sources lead from there.
    fn traffic_a(&self, place: Place) -> f64 {
        let (Place::Current(number), Some(exact)) = (place, &self.exact) else { return 0.0 };
        let part = self.circuit.parts[number];
        if !matches!(part.kind, Kind::Source { .. } | Kind::Diode(Diode::Threshold { .. })) {
            return 0.0;
        }
        let group = self.circuit.tied_by_sources(part);
        let parts = self.circuit.parts.iter().zip(&exact.currents);
        let there = parts.filter(|(part, _)| group[part.from] || group[part.to]);
        there.filter_map(|(_, current)| *current).map(f64::abs).sum()
    }
}

/// How far two numbers are apart, relative to the larger, or to `least` where both are smaller.
fn error(a: Option<f64>, b: Option<f64>, least: f64) -> Option<f64> {
    let (a, b) = (a?, b?);
    Some((a - b).abs() / a.abs().max(b.abs()).max(least))
}
