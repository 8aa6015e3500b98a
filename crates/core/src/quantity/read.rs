//! From what a person typed to a quantity.
//!
//! Reads `2.4`, `2,4`, `2R4`, `2k2`, `2.2k`, `18 AWG`, `1.5 mm2`, `15 ft`, `100 rpm`, `12 ohm ±5%`,
//! `8 to 14.8 V`. What can be read in two ways is asked back, not guessed.

mod capitals;
mod numeral;

use capitals::find_in;
use numeral::Numeral;

use super::{Band, Dimension, Measure, Span, Unit};
use crate::math;

/// Why a text is not the quantity that is wanted.
#[derive(Clone, Debug, PartialEq)]
pub enum Misread {
    /// Nothing was typed.
    Empty,
    /// There is no number in it.
    NoNumber,
    /// The number is too large, or not a number at all.
    NotFinite,
    /// `1.500` or `1,500`: the decimal and the thousands reading.
    TwoReadings(String, String),
    /// The unit belongs to another dimension.
    OtherDimension(Dimension),
    /// `MJ` where `mJ` is known: the capital would change the size a thousand times over. The spellings that are known.
    WrongCapitals(String),
    /// The unit is not known.
    UnknownUnit(String),
    /// Something is left over after the quantity.
    LeftOver(String),
}

/// Reads a quantity; a number without unit is taken in `usual_unit`.
///
/// # Errors
/// [`Misread`] says what is wrong with the text.
pub fn read<Q: Measure>(text: &str, usual_unit: &str) -> Result<Q, Misread> {
    read_base(text, Q::DIMENSION, usual_unit).map(Q::from_base)
}

/// Reads a quantity with its tolerance (`12 ohm ±5%`) or its two ends (`8 to 14.8 V`).
///
/// # Errors
/// [`Misread`] says what is wrong with the text.
pub fn read_band<Q: Measure>(text: &str, usual_unit: &str) -> Result<Band<Q>, Misread> {
    read_span(text, Q::DIMENSION, usual_unit).map(Span::band)
}

/// The same in base units of `dimension`.
///
/// # Errors
/// [`Misread`] says what is wrong with the text.
pub fn read_span(text: &str, dimension: Dimension, usual_unit: &str) -> Result<Span, Misread> {
    let plain = text.replace("+/-", "±").replace("+-", "±");
    if let Some((value, tolerance)) = plain.split_once('±') {
        return read_tolerance(value, tolerance, dimension, usual_unit);
    }
    let ends = plain
        .split_once(" to ")
        .or_else(|| plain.split_once(".."))
        .or_else(|| plain.split_once('–'));
    let Some((one, other)) = ends else {
        return read_base(&plain, dimension, usual_unit).map(Span::exact);
    };
    // "8 to 14.8 V": the unit at the end serves both
    let unit = unit_text(other).filter(|unit| !unit.is_empty()).unwrap_or(usual_unit);
    let (one, other) = (read_base(one, dimension, unit)?, read_base(other, dimension, usual_unit)?);
    Ok(Span { low: one.min(other), nominal: f64::midpoint(one, other), high: one.max(other) })
}

fn read_tolerance(
    value: &str,
    tolerance: &str,
    dimension: Dimension,
    usual_unit: &str,
) -> Result<Span, Misread> {
    let own_unit = unit_text(tolerance).unwrap_or_default();
    if own_unit.contains('%') {
        let nominal = read_base(value, dimension, usual_unit)?;
        let share = read_base(tolerance, Dimension::Share, "%")?;
        return Ok(Span::around(nominal, nominal * share));
    }
    // "12 ± 0.5 V": the unit at the end serves both
    let value_unit = unit_text(value).unwrap_or_default();
    let unit = [value_unit, own_unit, usual_unit]
        .into_iter()
        .find(|unit| !unit.is_empty())
        .unwrap_or_default();
    let nominal = read_base(value, dimension, unit)?;
    // a difference of temperatures has no zero of its own
    let off = read_base(tolerance, dimension, unit)? - read_base("0", dimension, unit)?;
    Ok(Span::around(nominal, off))
}

fn unit_text(text: &str) -> Option<&str> {
    numeral::take(text.trim()).ok().map(|(_, rest)| rest.trim())
}

fn read_base(text: &str, dimension: Dimension, usual_unit: &str) -> Result<f64, Misread> {
    let text = text.trim();
    if text.is_empty() {
        return Err(Misread::Empty);
    }
    if dimension == Dimension::WireSize
        && let Some(area) = gauge(text)
    {
        return area;
    }
    if dimension == Dimension::Resistance
        && let Some(number) = numeral::letter_for_point(text)
    {
        return finite(number);
    }
    let (numeral, rest) = numeral::take(text)?;
    let rest = rest.trim();
    let spelled = if rest.is_empty() { usual_unit } else { rest };
    let unit = find(dimension, spelled)?;
    let number = match numeral {
        Numeral::One(number) => number,
        Numeral::Two(small, large) => {
            return Err(Misread::TwoReadings(join(&small, rest), join(&large, rest)));
        }
    };
    finite(number * unit.factor + unit.offset)
}

fn join(number: &str, unit: &str) -> String {
    if unit.is_empty() { number.to_owned() } else { format!("{number} {unit}") }
}

fn finite(number: f64) -> Result<f64, Misread> {
    if number.is_finite() && number.abs() < 1e30 { Ok(number) } else { Err(Misread::NotFinite) }
}

impl Dimension {
    /// So many of the unit with this spelling, in base units.
    ///
    /// # Errors
    /// Where the dimension has no such unit.
    pub fn in_base(self, number: f64, spelled: &str) -> Result<f64, Misread> {
        find(self, spelled).map(|unit| number * unit.factor + unit.offset)
    }
}

fn find(dimension: Dimension, spelled: &str) -> Result<Unit, Misread> {
    if let Some(unit) = find_in(dimension, spelled)? {
        return Ok(unit);
    }
    if let Some(other) = Dimension::ALL
        .into_iter()
        .find(|other| *other != dimension && matches!(find_in(*other, spelled), Ok(Some(_))))
    {
        return Err(Misread::OtherDimension(other));
    }
    let known = dimension.units().iter().find(|unit| spelled.starts_with(unit.spelling));
    match known.and_then(|unit| spelled.strip_prefix(unit.spelling)) {
        Some(rest) if rest.starts_with(char::is_whitespace) => {
            Err(Misread::LeftOver(rest.trim().to_owned()))
        }
        _ => Err(Misread::UnknownUnit(spelled.to_owned())),
    }
}

/// The copper area of a wire by its AWG number, in square metres.
///
/// d = 0.127 mm x 92^((36 - n) / 39), n from -3 (`4/0`) to 40. Source: ASTM B258.
fn gauge(text: &str) -> Option<Result<f64, Misread>> {
    let lower = text.to_ascii_lowercase();
    let rest = lower.strip_prefix("awg").or_else(|| lower.strip_suffix("awg"))?.trim();
    let rest = rest.trim_start_matches('#').trim();
    let number = match rest.split_once("/0") {
        Some((noughts, "")) => math::decimal(noughts.trim()).map(|n| 1.0 - n),
        _ => math::decimal(rest),
    };
    Some(match number {
        Some(n) if (-3.0..=40.0).contains(&n) && n.fract() == 0.0 => {
            let diameter = 0.127e-3 * math::pow(92.0, (36.0 - n) / 39.0);
            Ok(std::f64::consts::PI / 4.0 * diameter * diameter)
        }
        Some(_) => Err(Misread::NotFinite),
        None => Err(Misread::NoNumber),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{
        Area, Charge, Current, Inductance, Length, Resistance, RotationalSpeed, Temperature, Time,
        Voltage, VolumeRate,
    };

    #[track_caller]
    fn check<Q: Measure>(text: &str, usual: &str, expected: f64) {
        let got = read::<Q>(text, usual).map_or(f64::NAN, Q::base);
        assert!((got - expected).abs() <= 1e-12 * expected.abs().max(1e-12), "{text:?}: {got}");
    }

    #[track_caller]
    fn check_fails<Q: Measure>(text: &str, usual: &str, expected: Misread) {
        assert_eq!(read::<Q>(text, usual).map(Q::base), Err(expected), "{text:?}");
    }

    #[test]
    fn resistances_are_read_as_people_write_them() {
        for text in ["2.4", "2,4", "2R4", "2.4ohm", "2.4 Ω", "2.4 OHM", " 2.4 R ", "2400 mohm"] {
            check::<Resistance>(text, "ohm", 2.4);
        }
        for text in ["2.2k", "2k2", "2K2", "2.2 kohm", "2200", "2 200 ohm"] {
            check::<Resistance>(text, "ohm", 2200.0);
        }
        check::<Resistance>("R47", "ohm", 0.47);
        check::<Resistance>("1M", "ohm", 1e6);
    }

    #[test]
    fn other_quantities_are_read_as_people_write_them() {
        check::<RotationalSpeed>("100 rpm", "rpm", 100.0);
        check::<Length>("15 ft", "m", 4.572);
        check::<Temperature>("-20", "°C", -20.0);
        check::<Temperature>("−20 °C", "°C", -20.0);
        check::<Temperature>("212 F", "°C", 100.0);
        check::<Time>("5", "ms", 0.005);
        check::<Inductance>("2,4 mH", "mH", 0.0024);
        check::<Voltage>("12.6", "V", 12.6);
        check::<Voltage>("1.234,5 V", "V", 1234.5);
        check::<Voltage>("0.500", "V", 0.5);
        check::<VolumeRate>("550 cc/min", "cc/min", 550e-6 / 60.0);
    }

    #[test]
    fn what_a_battery_holds_is_read_as_it_is_printed() {
        for text in ["60 Ah", "60", "60AH", "60 ah", "60 A h", "60 Amp Hours", "60000 mAh"] {
            check::<Charge>(text, "Ah", 60.0);
        }
        check_fails::<Charge>("60 A", "Ah", Misread::OtherDimension(Dimension::Current));
        check_fails::<Current>("60 Ah", "A", Misread::OtherDimension(Dimension::Charge));
        check_fails::<Charge>("60 MAh", "Ah", Misread::WrongCapitals("mAh".into()));
    }

    /// Source: ASTM B258 areas as printed in wire tables: 18 AWG 0.823 mm2, 10 AWG 5.261 mm2.
    #[test]
    fn wire_sizes_are_read_in_both_systems() {
        check::<Area>("1.5 mm2", "mm2", 1.5e-6);
        let area = |text| read::<Area>(text, "mm2").map_or(0.0, Area::base) * 1e6;
        assert!((area("18 AWG") - 0.823).abs() < 5e-4, "18 AWG is {}", area("18 AWG"));
        assert!((area("awg 10") - 5.261).abs() < 5e-4, "10 AWG is {}", area("awg 10"));
        assert!((area("4/0 AWG") - 107.2).abs() < 0.05, "4/0 AWG is {}", area("4/0 AWG"));
    }

    #[test]
    fn what_has_two_readings_is_asked_back() {
        let both = Misread::TwoReadings("1.5 ohm".into(), "1500 ohm".into());
        check_fails::<Resistance>("1.500 ohm", "ohm", both.clone());
        check_fails::<Resistance>("1,500 ohm", "ohm", both);
    }

    #[test]
    fn nonsense_is_named() {
        check_fails::<Resistance>("", "ohm", Misread::Empty);
        check_fails::<Resistance>("abc", "ohm", Misread::NoNumber);
        check_fails::<Resistance>("NaN", "ohm", Misread::NoNumber);
        check_fails::<Resistance>("inf", "ohm", Misread::NoNumber);
        check_fails::<Resistance>("1e300", "ohm", Misread::NotFinite);
        check_fails::<Resistance>("2.4 V", "ohm", Misread::OtherDimension(Dimension::Voltage));
        check_fails::<Resistance>("2.4 furlong", "ohm", Misread::UnknownUnit("furlong".into()));
        check_fails::<Resistance>("2.4 ohm cold", "ohm", Misread::LeftOver("cold".into()));
        check_fails::<Area>("99 AWG", "mm2", Misread::NotFinite);
    }

    #[track_caller]
    fn check_band(text: &str, low: f64, nominal: f64, high: f64) {
        let band = read_band::<Voltage>(text, "V").expect(text);
        let near = |a: f64, b: f64| (a - b).abs() < 1e-9;
        let same = near(band.low.base(), low)
            && near(band.nominal.base(), nominal)
            && near(band.high.base(), high);
        assert!(same, "{text:?}: {band:?}");
    }

    #[test]
    fn bands_are_read_by_tolerance_or_by_their_ends() {
        check_band("12", 12.0, 12.0, 12.0);
        check_band("12 V ±5%", 11.4, 12.0, 12.6);
        check_band("12 ± 0.5 V", 11.5, 12.0, 12.5);
        check_band("12 V +/- 500 mV", 11.5, 12.0, 12.5);
        check_band("8 to 14.8 V", 8.0, 11.4, 14.8);
        check_band("800..900 mV", 0.8, 0.85, 0.9);
    }
}
