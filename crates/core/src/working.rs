//! How a number was found: the formula, the same with the numbers in it, the result, the source.

use serde::Serialize;

use crate::quantity::{Measure, Value};

/// A formula and where it comes from.
#[derive(Clone, Copy, Debug)]
pub struct Formula {
    /// In symbols, as `I = V / (R + R_w)`. Letters, digits and `_` make a symbol.
    pub symbols: &'static str,
    /// A standard, a handbook, a textbook, or "common practice, no source".
    pub source: &'static str,
}

/// One line of working.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Step {
    /// The formula in symbols.
    pub symbols: &'static str,
    /// The formula with the numbers in it.
    pub filled: String,
    /// What comes out.
    pub result: Value,
    /// Where the formula comes from.
    pub source: &'static str,
}

/// The steps of a calculation as they are made.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Working(Vec<Step>);

impl Working {
    /// None yet.
    pub fn new() -> Self {
        Self::default()
    }

    /// Records a step and gives back its result, so that what is shown is what is used.
    pub fn step<Q: Measure>(
        &mut self,
        formula: &Formula,
        values: &[(&str, Value)],
        result: Q,
    ) -> Q {
        self.record(formula, values, result.show());
        result
    }

    /// Records a step whose result is no quantity (a count, a verdict).
    pub fn record(&mut self, formula: &Formula, values: &[(&str, Value)], result: Value) {
        let filled = fill(right_side(formula.symbols), values);
        self.0.push(Step { symbols: formula.symbols, filled, result, source: formula.source });
    }

    /// The steps made.
    pub fn into_steps(self) -> Vec<Step> {
        self.0
    }
}

/// A step made on its own, for a single number.
pub fn step(formula: &Formula, values: &[(&str, Value)], result: impl Into<Value>) -> Step {
    let filled = fill(right_side(formula.symbols), values);
    Step { symbols: formula.symbols, filled, result: result.into(), source: formula.source }
}

fn right_side(symbols: &str) -> &str {
    symbols.split_once('=').map_or(symbols, |(_, right)| right.trim_start())
}

/// Puts the values in place of their symbols.
fn fill(symbols: &str, values: &[(&str, Value)]) -> String {
    let mut text = String::with_capacity(symbols.len() * 2);
    let mut rest = symbols;
    while !rest.is_empty() {
        let begin = rest.find(is_symbol).unwrap_or(rest.len());
        let (between, from) = rest.split_at_checked(begin).unwrap_or((rest, ""));
        let length = from.find(|c| !is_symbol(c)).unwrap_or(from.len());
        let (symbol, after) = from.split_at_checked(length).unwrap_or((from, ""));
        text.push_str(between);
        match values.iter().find(|(name, _)| *name == symbol) {
            Some((_, value)) => text.push_str(&value.shown),
            None => text.push_str(symbol),
        }
        rest = after;
    }
    text
}

fn is_symbol(c: char) -> bool {
    // Greek letters and small figures below the line stand in formulas too
    c.is_ascii_alphanumeric() || c == '_' || matches!(c, 'Α'..='ω' | '₀'..='₉')
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{amperes, ohms, volts};

    #[test]
    fn a_step_shows_the_numbers_it_used() {
        let formula = Formula { symbols: "I = V / (R + R_w)", source: "Ohm's law" };
        let mut working = Working::new();
        let values =
            [("V", volts(12.0).show()), ("R", ohms(2.4).show()), ("R_w", ohms(0.1).show())];
        let current = working.step(&formula, &values, amperes(4.8));
        assert_eq!(current, amperes(4.8), "the result is handed back");
        let steps = working.into_steps();
        assert_eq!(steps[0].filled, "12 V / (2.4 Ω + 100 mΩ)");
        assert_eq!(steps[0].result.shown, "4.8 A");
    }
}
