//! Thermocouples of type K.

use crate::{
    math,
    quantity::{Measure, Temperature, Voltage, celsius, volts},
    working::{Formula, Step, step},
};

const JUNCTION: Formula = Formula {
    symbols: "U = E(t_hot) − E(t_cold)",
    source: "type K by ITS-90, the polynomials of NIST Monograph 175: from memory",
};

/// From the coldest to the hottest of the polynomials, in degrees Celsius.
pub const RANGE: (f64, f64) = (-270.0, 1372.0);

/// Less than a meter can show.
const NOTHING_V: f64 = 1e-9;

/// Millivolts by powers of the temperature, below 0 °C.
const BELOW: [f64; 11] = [
    0.0,
    0.394_501_280_25e-1,
    0.236_223_735_98e-4,
    -0.328_589_067_84e-6,
    -0.499_048_287_77e-8,
    -0.675_090_591_73e-10,
    -0.574_103_274_28e-12,
    -0.310_888_728_94e-14,
    -0.104_516_093_65e-16,
    -0.198_892_668_78e-19,
    -0.163_226_974_86e-22,
];
/// The same from 0 °C up.
const ABOVE: [f64; 10] = [
    -0.176_004_136_86e-1,
    0.389_212_049_75e-1,
    0.185_587_700_32e-4,
    -0.994_575_928_74e-7,
    0.318_409_457_19e-9,
    -0.560_728_448_89e-12,
    0.560_750_590_59e-15,
    -0.320_207_200_03e-18,
    0.971_511_471_52e-22,
    -0.121_047_212_75e-25,
];
/// And the bell that is added there: height, width, where.
const BELL: (f64, f64, f64) = (0.118_597_6, -0.118_343_2e-3, 126.9686);

/// What it gives with its cold end at 0 °C; beyond the range as at its ends.
pub fn voltage(hot: Temperature) -> Voltage {
    let t = hot.base().clamp(RANGE.0, RANGE.1);
    let by = |terms: &[f64]| terms.iter().rev().fold(0.0, |sum, term| sum * t + term);
    let millivolts = if t < 0.0 {
        by(&BELOW)
    } else {
        let (height, width, middle) = BELL;
        by(&ABOVE) + height * math::exp(width * (t - middle) * (t - middle))
    };
    volts(millivolts * 1e-3)
}

/// What it gives with its cold end at another temperature.
pub fn between(hot: Temperature, cold: Temperature) -> Voltage {
    voltage(hot) - voltage(cold)
}

/// The temperature of its hot end; nothing beyond the range.
pub fn temperature(at: Voltage, cold: Temperature) -> Option<Temperature> {
    let wanted = at + voltage(cold);
    let (low, high) = RANGE;
    // at 0 °C the polynomial is not quite 0: what is at an end is not beyond it
    let slack = volts(NOTHING_V);
    let is_within =
        voltage(celsius(low)) <= wanted + slack && wanted <= voltage(celsius(high)) + slack;
    is_within.then(|| celsius(math::least(low, high, |t| voltage(celsius(t)) >= wanted)))
}

/// How its voltage was found.
pub fn working(hot: Temperature, cold: Temperature) -> Step {
    let values = [("t_hot", hot.show()), ("t_cold", cold.show())];
    step(&JUNCTION, &values, between(hot, cold).show())
}
