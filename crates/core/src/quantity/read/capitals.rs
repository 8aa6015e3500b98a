//! Units in other capitals than their own: `RPM` is a slip that harms nobody, `MJ` for `mJ` is one of nine noughts.

use super::{Dimension, Misread, Unit};

/// The unit by its exact spelling; in other capitals only where that leaves one size.
///
/// # Errors
/// Where a capital decides between a million and a thousandth, and was not typed as any unit here has it.
pub(super) fn find_in(dimension: Dimension, spelled: &str) -> Result<Option<Unit>, Misread> {
    let units = dimension.units();
    let exact = units.iter().find(|unit| unit.spelling == spelled);
    if exact.is_some() {
        return Ok(exact.copied());
    }
    let alike: Vec<_> =
        units.iter().filter(|unit| unit.spelling.eq_ignore_ascii_case(spelled)).collect();
    let mut meant = alike.iter().filter(|unit| keeps_its_size(unit, units, spelled));
    match meant.next() {
        Some(first) if meant.all(|unit| same_size(unit, first)) => Ok(Some(**first)),
        None if alike.is_empty() => Ok(None),
        _ => {
            let known: Vec<_> = alike.iter().map(|unit| unit.spelling).collect();
            Err(Misread::WrongCapitals(known.join(" or ")))
        }
    }
}

/// Whether a unit typed in these capitals can still mean nothing else.
fn keeps_its_size(unit: &Unit, units: &[Unit], spelled: &str) -> bool {
    let (Some(prefix), Some(typed)) = (unit.spelling.chars().next(), spelled.chars().next()) else {
        return false;
    };
    if prefix == typed || !matches!(prefix, 'm' | 'M') || !has_prefix(unit, units) {
        return true;
    }
    // all in capitals, as cables are printed: 1.5 MM2 is no square megametre, for a metre has a small letter
    let is_shouted = !spelled.contains(|c: char| c.is_lowercase());
    is_shouted && unit.spelling.chars().nth(1).is_some_and(char::is_lowercase)
}

/// Whether the first letter is a prefix: the M of `M` and `Mohm`, the m of `mm`, but not that of `m` or `min`.
fn has_prefix(unit: &Unit, units: &[Unit]) -> bool {
    let rest: String = unit.spelling.chars().skip(1).collect();
    if rest.is_empty() {
        return units.first().is_some_and(|base| !same_size(unit, base));
    }
    units.iter().any(|other| other.spelling == rest)
}

#[expect(clippy::float_cmp, reason = "both come from the same table")]
fn same_size(one: &Unit, other: &Unit) -> bool {
    one.factor == other.factor && one.offset == other.offset
}

#[cfg(test)]
mod tests {
    use proptest::{bits, prelude::*, sample::select};

    use super::*;

    /// The number of base units in one of these.
    fn size(dimension: Dimension, spelled: &str) -> Result<f64, Misread> {
        dimension.in_base(1.0, spelled)
    }

    #[track_caller]
    fn check(dimension: Dimension, spelled: &str, expected: f64) {
        let found = size(dimension, spelled).unwrap_or(f64::NAN);
        assert!((found - expected).abs() <= 1e-12 * expected, "1 {spelled} is read as {found}");
    }

    #[track_caller]
    fn check_asked(dimension: Dimension, spelled: &str, known: &str) {
        let expected = Err(Misread::WrongCapitals(known.into()));
        assert_eq!(size(dimension, spelled), expected, "1 {spelled}");
    }

    #[test]
    fn slips_that_change_nothing_pass() {
        check(Dimension::Speed, "RPM", 1.0);
        check(Dimension::Resistance, "OHM", 1.0);
        check(Dimension::Resistance, "mOhm", 1e-3);
        check(Dimension::Resistance, "MOhm", 1e6);
        check(Dimension::Resistance, "KOhm", 1e3);
        check(Dimension::Voltage, "v", 1.0);
        check(Dimension::Current, "a", 1.0);
        check(Dimension::Current, "ma", 1e-3);
        check(Dimension::Frequency, "hz", 1.0);
        check(Dimension::Energy, "mj", 1e-3);
        check(Dimension::Length, "MM", 1e-3);
        check(Dimension::WireSize, "MM2", 1e-6);
        check(Dimension::Time, "MIN", 60.0);
        check(Dimension::Pressure, "PSI", 6894.757293168);
        check(Dimension::Pressure, "Bar", 1e5);
        check(Dimension::Pressure, "Mpa", 1e6);
        check(Dimension::Power, "KW", 1e3);
        check(Dimension::Power, "ps", 735.49875);
    }

    #[test]
    fn slips_that_change_the_size_are_asked_back() {
        check_asked(Dimension::Energy, "MJ", "mJ");
        check_asked(Dimension::Current, "MA", "mA");
        check_asked(Dimension::Power, "MW", "mW");
        check_asked(Dimension::Voltage, "Mv", "mV");
        check_asked(Dimension::Inductance, "MH", "mH");
        check_asked(Dimension::Time, "Ms", "ms");
        check_asked(Dimension::Length, "Mm", "mm");
        check_asked(Dimension::WireSize, "Mm²", "mm²");
        check_asked(Dimension::Pressure, "mPa", "MPa");
        check_asked(Dimension::Pressure, "Mbar", "mbar");
        check_asked(Dimension::Resistance, "m", "M");
        check_asked(Dimension::Resistance, "MOHM", "mohm or Mohm");
    }

    /// The units whose first letter is a prefix that has another meaning in the other size.
    const PREFIXED: [&str; 18] = [
        "mV", "mA", "mohm", "mΩ", "mH", "ms", "mm", "mm2", "mm²", "mm^2", "mW", "mJ", "mbar",
        "ml/min", "M", "Mohm", "MΩ", "MPa",
    ];

    /// A unit, and the same in any capitals.
    fn any_capitals() -> impl Strategy<Value = (Dimension, &'static Unit, String)> {
        let all: Vec<_> = Dimension::ALL
            .into_iter()
            .flat_map(|it| it.units().iter().map(move |unit| (it, unit)))
            .collect();
        (select(all), bits::u32::ANY).prop_map(|((dimension, unit), capitals)| {
            let letter = |(at, letter): (usize, char)| match capitals >> (at % 32) & 1 {
                0 => letter.to_ascii_lowercase(),
                _ => letter.to_ascii_uppercase(),
            };
            (dimension, unit, unit.spelling.chars().enumerate().map(letter).collect())
        })
    }

    proptest! {
        /// Source: SI brochure, BIPM: m is a thousandth, M a million; unit symbols in their own capitals.
        #[test]
        fn capitals_never_turn_a_thousandth_into_a_million((dimension, unit, spelled) in any_capitals()) {
            let sizes = |same: &dyn Fn(&str) -> bool| -> Vec<f64> {
                let units = dimension.units().iter().filter(|it| same(it.spelling));
                units.map(|it| it.factor + it.offset).collect()
            };
            let near = |one: f64, other: f64| (one - other).abs() <= 1e-9 * other.abs();
            match size(dimension, &spelled) {
                Ok(size) => {
                    // what is spelled as some unit is that unit; else it has the size of one that it is like
                    let exact = sizes(&|it| it == spelled);
                    let alike = sizes(&|it| it.eq_ignore_ascii_case(&spelled));
                    let allowed = if exact.is_empty() { alike } else { exact };
                    prop_assert!(allowed.iter().any(|it| near(size, *it)), "{spelled}: {size}");
                    // and where its first letter is the other m, it was all in capitals
                    let is_other = unit.spelling.starts_with(['m', 'M'])
                        && !spelled.starts_with(unit.spelling.chars().next().unwrap_or_default());
                    let is_shouted = !spelled.contains(|c: char| c.is_ascii_lowercase());
                    let is_prefixed = PREFIXED.contains(&unit.spelling);
                    let has_unit_size = near(size, unit.factor + unit.offset);
                    prop_assert!(
                        !(is_other && is_prefixed && has_unit_size) || is_shouted,
                        "{spelled} was read as {}", unit.spelling
                    );
                }
                Err(misread) => {
                    prop_assert!(
                        matches!(misread, Misread::WrongCapitals(_)),
                        "{spelled}, for {}: {misread:?}", unit.spelling
                    );
                }
            }
        }
    }
}
