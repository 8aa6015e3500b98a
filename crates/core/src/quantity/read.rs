//! From what a person typed to a quantity.
//!
//! Reads `2.4`, `2,4`, `2R4`, `2k2`, `2.2k`, `18 AWG`, `1.5 mm2`, `15 ft`, `100 rpm`, `12 ohm ±5%`,
//! `8 to 14.8 V`, `14-16`, `about 14`. What can be read in two ways is asked back, not guessed.

mod capitals;
mod numeral;

use std::borrow::Cow;

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
    read_span_within(text, dimension, usual_unit, None)
}

/// The same; of two readings, that which alone lies between these limits is taken.
///
/// # Errors
/// [`Misread`] says what is wrong with the text.
pub(crate) fn read_span_within(
    text: &str,
    dimension: Dimension,
    usual_unit: &str,
    limits: Option<(f64, f64)>,
) -> Result<Span, Misread> {
    let asked = Asked { dimension, usual_unit, limits };
    let mut plain = Cow::from(text);
    if text.contains('+') {
        plain = text.replace("+/-", "±").replace("+-", "±").into();
    }
    if let Some((value, tolerance)) = plain.split_once('±') {
        return asked.with_tolerance(value, tolerance);
    }
    let Some((one, other)) = ends(&plain) else {
        return asked.base(&plain).map(Span::exact);
    };
    // "8 to 14.8 V": the unit at the end serves both
    let unit = unit_text(other).filter(|unit| !unit.is_empty()).unwrap_or(usual_unit);
    let (one, other) = (Asked { usual_unit: unit, ..asked }.base(one)?, asked.base(other)?);
    Ok(Span { low: one.min(other), nominal: f64::midpoint(one, other), high: one.max(other) })
}

/// What people put before a number that they are not sure of: it is that number.
const ABOUT: [&str; 8] = ["about", "around", "approx.", "approx", "circa", "ca.", "~", "≈"];

fn without_about(text: &str) -> &str {
    let text = text.trim();
    let is_before =
        |word: &&str| text.get(..word.len()).is_some_and(|it| it.eq_ignore_ascii_case(word));
    let word = ABOUT.into_iter().find(is_before);
    word.and_then(|word| text.get(word.len()..)).unwrap_or(text).trim_start()
}

/// The two ends of a text that has two: `8 to 14.8 V`, `14-16`.
fn ends(text: &str) -> Option<(&str, &str)> {
    text.split_once(" to ").or_else(|| text.split_once("..")).or_else(|| {
        // a dash at the front is a sign, one behind an e its exponent's
        text.match_indices(['-', '–']).find_map(|(at, dash)| {
            let (one, other) = (text.get(..at)?, text.get(at + dash.len()..)?);
            let is_number =
                one.contains(|c: char| c.is_ascii_digit()) && !one.ends_with(['e', 'E']);
            let goes_on = |c: char| c.is_ascii_digit() || matches!(c, '.' | '-' | '−');
            (is_number && other.trim_start().starts_with(goes_on)).then_some((one, other))
        })
    })
}

fn unit_text(text: &str) -> Option<&str> {
    numeral::take(text.trim()).ok().map(|(_, rest)| rest.trim())
}

/// What a text is to be read as.
#[derive(Clone, Copy)]
struct Asked<'a> {
    dimension: Dimension,
    usual_unit: &'a str,
    /// The limits in base units, where they may decide between two readings.
    limits: Option<(f64, f64)>,
}

impl Asked<'_> {
    fn with_tolerance(self, value: &str, tolerance: &str) -> Result<Span, Misread> {
        let own_unit = unit_text(tolerance).unwrap_or_default();
        if own_unit.contains('%') {
            let nominal = self.base(value)?;
            let share = Asked { dimension: Dimension::Share, usual_unit: "%", limits: None };
            return Ok(Span::around(nominal, nominal * share.base(tolerance)?));
        }
        // "12 ± 0.5 V": the unit at the end serves both
        let value_unit = unit_text(value).unwrap_or_default();
        let unit = [value_unit, own_unit, self.usual_unit]
            .into_iter()
            .find(|unit| !unit.is_empty())
            .unwrap_or_default();
        let nominal = Asked { usual_unit: unit, ..self }.base(value)?;
        // a difference of temperatures has no zero of its own
        let difference = Asked { usual_unit: unit, limits: None, ..self };
        let off = difference.base(tolerance)? - difference.base("0")?;
        Ok(Span::around(nominal, off))
    }

    fn base(self, text: &str) -> Result<f64, Misread> {
        let text = without_about(text);
        if text.is_empty() {
            return Err(Misread::Empty);
        }
        if self.dimension == Dimension::WireSize
            && let Some(area) = gauge(text)
        {
            return area;
        }
        if self.dimension == Dimension::Resistance
            && let Some(number) = numeral::letter_for_point(text)
        {
            return finite(number);
        }
        let (numeral, rest) = numeral::take(text)?;
        let rest = rest.trim();
        let spelled = if rest.is_empty() { self.usual_unit } else { rest };
        let unit = find(self.dimension, spelled)?;
        let in_base = |number: f64| number * unit.factor + unit.offset;
        let (small, large) = match numeral {
            Numeral::One(number) => return finite(in_base(number)),
            Numeral::Two(small, large) => (small, large),
        };
        let possible = |number: &str| {
            let base = in_base(math::decimal(number)?);
            self.limits.filter(|(low, high)| (*low..=*high).contains(&base)).map(|_| base)
        };
        match (possible(&small), possible(&large)) {
            (Some(only), None) | (None, Some(only)) => Ok(only),
            _ => Err(Misread::TwoReadings(join(&small, rest), join(&large, rest))),
        }
    }
}

fn read_base(text: &str, dimension: Dimension, usual_unit: &str) -> Result<f64, Misread> {
    Asked { dimension, usual_unit, limits: None }.base(text)
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

/// What stands behind the number of a gauge: where nothing else is said, it is AWG.
const GAUGE: [&str; 5] = ["awg", "gauge", "ga.", "ga", "g"];

/// The copper area of a wire by its AWG number, in square metres.
///
/// d = 0.127 mm x 92^((36 - n) / 39), n from -3 (`4/0`) to 40. Source: ASTM B258.
fn gauge(text: &str) -> Option<Result<f64, Misread>> {
    let lower = text.to_ascii_lowercase();
    let before = ["awg", "#"].into_iter().find_map(|word| lower.strip_prefix(word));
    let behind = || GAUGE.into_iter().find_map(|word| lower.strip_suffix(word));
    let rest = before.or_else(behind)?.trim();
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
        for text in ["550 cc/min", "550 cc", "550"] {
            check::<VolumeRate>(text, "cc/min", 550e-6 / 60.0);
        }
        for text in ["15 feet", "15'", "15 foot", "180 inches", "180\"", "about 15 ft", "~15 ft"] {
            check::<Length>(text, "m", 4.572);
        }
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
        for text in ["18ga", "18 gauge", "#18", "18g", "awg #18", "18 GA."] {
            assert!((area(text) - area("18 AWG")).abs() < 1e-9, "{text} is {}", area(text));
        }
    }

    #[test]
    fn what_has_two_readings_is_asked_back() {
        let both = Misread::TwoReadings("1.5 ohm".into(), "1500 ohm".into());
        check_fails::<Resistance>("1.500 ohm", "ohm", both.clone());
        check_fails::<Resistance>("1,500 ohm", "ohm", both);
        // a foot and two inches are no 62 inches, and two numbers are not one
        check_fails::<Length>("6'2\"", "m", Misread::UnknownUnit("'2\"".into()));
        check_fails::<Voltage>("12 14", "V", Misread::UnknownUnit("14".into()));
    }

    #[test]
    fn of_two_readings_the_one_that_is_possible_is_taken() {
        let within = |low, high| {
            let limits = Some((low, high));
            read_span_within("2.500 A", Dimension::Current, "A", limits).map(|it| it.nominal)
        };
        assert_eq!(within(0.05, 50.0), Ok(2.5));
        assert_eq!(within(50.0, 5000.0), Ok(2500.0));
        let both = Misread::TwoReadings("2.5 A".into(), "2500 A".into());
        assert_eq!(within(1.0, 5000.0), Err(both.clone()));
        assert_eq!(within(3.0, 50.0), Err(both));
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
        check_band("14-16", 14.0, 15.0, 16.0);
        check_band("14 V - 16 V", 14.0, 15.0, 16.0);
        check_band("14–16 V", 14.0, 15.0, 16.0);
        check_band("-16 - -14 V", -16.0, -15.0, -14.0);
        check_band("14e-3", 0.014, 0.014, 0.014);
    }
}
