//! The air's pressure by the altitude.

use crate::{
    math,
    quantity::{Band, Length, Measure, Pressure},
    working::{Formula, Step, step},
};

const AIR: Formula = Formula {
    symbols: "p = 101.325 kPa × (1 − 2.25577e-5 h) ^ 5.25588",
    source: "standard atmosphere, ISO 2533, below 11 km: from memory, as handbooks print it",
};

/// Pascals at sea level.
const AT_SEA_PA: f64 = 101_325.0;
/// Share of the temperature that a metre takes: 0.0065 K of 288.15 K.
const A_METRE: f64 = 0.0065 / 288.15;
/// Gravity over the gas constant of air and the lapse of temperature: 9.80665 / (287.05287 × 0.0065).
const POWER: f64 = 9.806_65 / (287.052_87 * 0.0065);
/// Above it the formula is another.
const HIGHEST_M: f64 = 11_000.0;
/// By how much the weather moves it, in pascals: common practice, no source.
const WEATHER_PA: f64 = 2500.0;

/// The air's pressure at an altitude in standard weather; above 11 km as there.
pub fn standard(altitude: Length) -> Pressure {
    let rest = 1.0 - A_METRE * altitude.base().min(HIGHEST_M);
    Pressure::from_base(AT_SEA_PA * math::pow(rest, POWER))
}

/// The same between two altitudes, in any usual weather.
pub fn pressure(altitude: &Band<Length>) -> Band<Pressure> {
    let standard = altitude.map(standard);
    Band {
        low: Pressure::from_base(standard.low.base() - WEATHER_PA),
        nominal: standard.nominal,
        high: Pressure::from_base(standard.high.base() + WEATHER_PA),
    }
}

/// How the pressure at the altitude that is meant was found.
pub fn working(altitude: Length) -> Step {
    step(&AIR, &[("h", altitude.show())], standard(altitude).show())
}
