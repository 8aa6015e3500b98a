//! Copper: the resistance of wires and windings, and what temperature does to it.
//!
//! Source: IEC 60028, International standard of resistance for copper: annealed copper at 20 °C has
//! 1/58 Ω·mm²/m and a temperature coefficient of 0.00393 per kelvin at constant mass. That is the least that a wire
//! of true size can have: right for the highest current, which is what burns an output. Where the least current or the
//! greatest drop is asked for, [`STRANDED`] times as much is taken.

use crate::{
    quantity::{Area, Length, Measure, Resistance, Temperature},
    working::Formula,
};

/// Resistivity at 20 °C in Ω·m: 1/58 Ω·mm²/m.
pub const RESISTIVITY_OHM_M: f64 = 1e-6 / 58.0;

/// How many times that a flexible stranded wire of its nominal size may have: from 1.10 to 1.16 for 0.5 to 120 mm².
/// Source: IEC 60228:2004, table 3, class 5, plain copper.
pub const STRANDED: f64 = 1.16;

/// Rise of resistance per kelvin, as a share of that at 20 °C.
pub const COEFFICIENT_PER_K: f64 = 0.00393;

/// The formula of [`at`].
pub const AT_TEMPERATURE: Formula = Formula {
    symbols: "R_T = R_20 × (1 + 0.00393/K × (T − 20 °C))",
    source: "IEC 60028, copper",
};

/// The formula of [`wire`].
pub const WIRE: Formula = Formula {
    symbols: "R_w = l / (58 m/(Ω·mm²) × A) × (1 + 0.00393/K × (T − 20 °C))",
    source: "IEC 60028, copper; size by IEC 60228 or ASTM B258",
};

/// The formula of [`wire_at_most`].
pub const WIRE_AT_MOST: Formula = Formula {
    symbols: "R_w = 1.16 × l / (58 m/(Ω·mm²) × A) × (1 + 0.00393/K × (T − 20 °C))",
    source: "IEC 60028, copper; 1.16: the most that IEC 60228 allows a class 5 wire",
};

/// How many times its resistance at 20 °C copper has at this temperature.
///
/// A straight line, good from -50 to 180 °C; it reaches zero at -234 °C.
pub fn factor(temperature: Temperature) -> f64 {
    1.0 + COEFFICIENT_PER_K * (temperature.base() - 20.0)
}

/// The resistance of a winding at a temperature, from that at 20 °C. See [`AT_TEMPERATURE`].
pub fn at(temperature: Temperature, at_20: Resistance) -> Resistance {
    at_20 * factor(temperature)
}

/// The resistance of a wire at a temperature. See [`WIRE`].
///
/// Without limit where `area` is zero.
pub fn wire(length: Length, area: Area, temperature: Temperature) -> Resistance {
    Measure::from_base(RESISTIVITY_OHM_M * length.base() / area.base() * factor(temperature))
}

/// The most that a stranded wire may have at a temperature. See [`WIRE_AT_MOST`].
pub fn wire_at_most(length: Length, area: Area, temperature: Temperature) -> Resistance {
    wire(length, area, temperature) * STRANDED
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{celsius, metres, ohms};

    #[track_caller]
    fn check(got: Resistance, expected_ohm: f64) {
        let got = got.base();
        assert!((got - expected_ohm).abs() <= 1e-9 * expected_ohm, "{got} is not {expected_ohm}");
    }

    #[test]
    fn copper_is_a_sixth_lower_in_hard_cold_and_a_third_higher_when_hot() {
        check(at(celsius(20.0), ohms(14.0)), 14.0);
        check(at(celsius(-20.0), ohms(14.0)), 14.0 * 0.8428);
        check(at(celsius(100.0), ohms(14.0)), 14.0 * 1.3144);
    }

    #[test]
    fn a_wire_of_58_metres_and_one_square_millimetre_has_one_ohm() {
        check(wire(metres(58.0), Area::from_base(1e-6), celsius(20.0)), 1.0);
        check(wire(metres(29.0), Area::from_base(2e-6), celsius(100.0)), 0.25 * 1.3144);
    }
}
