//! The only door to `libm`, so that the same plan gives the same bits on every machine.
//!
//! `+ - * /` and square roots are exact everywhere and need no door.

/// e to the power `x`.
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// e to the power `x`, less 1, exact for small `x`.
pub fn exp_m1(x: f64) -> f64 {
    libm::expm1(x)
}

/// The natural logarithm of `x`; not a number below zero.
pub fn ln(x: f64) -> f64 {
    libm::log(x)
}

/// The natural logarithm of `1 + x`, exact for small `x`.
pub fn ln_1p(x: f64) -> f64 {
    libm::log1p(x)
}

/// The logarithm of `x` to base 10.
pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}

/// `x` to the power `y`.
pub fn pow(x: f64, y: f64) -> f64 {
    libm::pow(x, y)
}

/// More than any search here needs: from a range of a few units down to the last digit of a number near 1.
const MOST_HALVINGS: usize = 64;

/// The least number between `low` and `high` at which `is_enough`, which stays true above it: halved until nothing lies
/// between.
pub fn least(mut low: f64, mut high: f64, mut is_enough: impl FnMut(f64) -> bool) -> f64 {
    for _ in 0..MOST_HALVINGS {
        let middle = f64::midpoint(low, high);
        if middle <= low || middle >= high {
            break;
        }
        if is_enough(middle) { high = middle } else { low = middle }
    }
    high
}

/// The sine of an angle in radians.
pub fn sin(x: f64) -> f64 {
    libm::sin(x)
}

/// The cosine of an angle in radians.
pub fn cos(x: f64) -> f64 {
    libm::cos(x)
}

/// Digits of a whole number that a number is sure to hold.
const EXACT_DIGITS: usize = 15;

/// The number that a decimal stands for: digits, one point at most, an exponent at most.
///
/// Nothing where it is none, or too large. JSON's reader is used, which a plan file brings along anyway: the
/// standard library's own brings ten kilobytes of tables into the page. Up to 15 digits and factors up to
/// 10^22 are exact, as in "How to read floating point numbers accurately" (1990); beyond, the
/// last bit may be off.
pub fn decimal(text: &str) -> Option<f64> {
    let (negative, rest) = text.strip_prefix('-').map_or((false, text), |rest| (true, rest));
    let end = rest.find(['e', 'E']).unwrap_or(rest.len());
    let (digits, exponent) = rest.split_at_checked(end)?;
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    let all_digits = |text: &str| text.chars().all(|c| c.is_ascii_digit());
    if !(all_digits(whole) && all_digits(part)) || whole.len() + part.len() == 0 {
        return None;
    }
    if exponent.is_empty() && digits.len() <= EXACT_DIGITS {
        let each = |all: u64, digit: u8| 10 * all + u64::from(digit - b'0');
        let all = whole.bytes().chain(part.bytes()).fold(0_u64, each);
        let scale = part.bytes().fold(1_u64, |scale, _| 10 * scale);
        #[expect(
            clippy::cast_precision_loss,
            reason = "both are exact, and the quotient is rounded once"
        )]
        let number = all as f64 / scale as f64;
        return Some(if negative { -number } else { number });
    }
    // JSON has no leading noughts, and wants a digit on both sides of the point
    let whole = whole.trim_start_matches('0');
    let (whole, part) =
        (if whole.is_empty() { "0" } else { whole }, if part.is_empty() { "0" } else { part });
    let number: f64 = serde_json::from_str(&format!("{whole}.{part}{exponent}")).ok()?;
    Some(if negative { -number } else { number })
}

/// A number with so many decimals, rounded half away from zero; "-" before it only where a digit is not 0.
///
/// From a thousand million million up in three figures with a power of ten. In whole numbers, since the standard
/// library's way of writing fractions brings fifteen kilobytes into the page.
pub fn fixed(value: f64, places: u32) -> String {
    let mut text = String::new();
    match scaled(value, places) {
        Some((size, scale)) => push_digits(&mut text, value < 0.0, size, scale),
        None => text = large(value),
    }
    text
}

/// Adds a number with so many decimals at the most: without the noughts at their end.
pub fn push_short(text: &mut String, value: f64, places: u32) {
    let Some((mut size, mut scale)) = scaled(value, places) else {
        return text.push_str(&large(value));
    };
    while scale > 1 && size.is_multiple_of(10) {
        size /= 10;
        scale /= 10;
    }
    push_digits(text, value < 0.0, size, scale);
}

/// The size of a number as a whole number of parts, and how many of them make one; nothing where it is too large.
fn scaled(value: f64, places: u32) -> Option<(u64, u64)> {
    let scale = 10_u64.saturating_pow(places.min(15));
    #[expect(clippy::cast_precision_loss, reason = "a power of ten up to 10^15 is exact")]
    let scaled = (value.abs() * scale as f64).round();
    if scaled.is_nan() || scaled >= 1e15 {
        return None;
    }
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "below 10^15, not negative"
    )]
    let size = scaled as u64;
    Some((size, scale))
}

/// Adds the digits of a whole number of parts, of which `scale` make one; the point stands behind the whole ones.
fn push_digits(text: &mut String, is_negative: bool, size: u64, scale: u64) {
    if is_negative && size > 0 {
        text.push('-');
    }
    let mut unit = scale;
    while size / unit >= 10 {
        unit *= 10;
    }
    loop {
        let digit = u32::try_from(size / unit % 10).unwrap_or_default();
        text.push(char::from_digit(digit, 10).unwrap_or('0'));
        if unit == 1 {
            break;
        }
        if unit == scale {
            text.push('.');
        }
        unit /= 10;
    }
}

fn large(value: f64) -> String {
    if !value.is_finite() {
        return if value.is_nan() { "not a number" } else { "without limit" }.to_owned();
    }
    let (mut rest, mut power) = (value, 0_u32);
    while rest.abs() >= 9.995 {
        rest /= 10.0;
        power += 1;
    }
    format!("{}e{power}", fixed(rest, 2))
}

/// The shortest decimal that is read back as the same number, or nearly so where it is very large or small.
pub fn shortest(number: f64) -> String {
    let text = |places| fixed(number, places);
    (0..15).map(text).find(|text| decimal(text) == Some(number)).unwrap_or_else(|| text(15))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn decimals_are_read_without_the_niceties_of_json() {
        for (text, number) in
            [("007", 7.0), (".5", 0.5), ("5.", 5.0), ("-2.4", -2.4), ("1e3", 1000.0), ("0", 0.0)]
        {
            assert_eq!(decimal(text), Some(number), "{text}");
        }
        for text in ["", ".", "-", "--1", "1.2.3", "1e", "e3", "0x10", "inf", "NaN", "1 2", "1e999"]
        {
            assert_eq!(decimal(text), None, "{text}");
        }
    }

    proptest! {
        #[test]
        fn up_to_fifteen_digits_are_exact(
            (mantissa, length) in (0_u64..1_000_000_000_000_000, 0_u32..16),
            places in 0_usize..16,
        ) {
            let mantissa = mantissa % 10_u64.pow(length);
            let digits = format!("{mantissa:0width$}", width = places.max(1));
            let (whole, part) = digits.split_at(digits.len() - places);
            let text = format!("{whole}.{part}");
            prop_assert_eq!(decimal(&text), text.parse().ok());
        }
    }

    /// Source: the square root of the standard library, rounded to nearest: the least number that is no less lies there or next to it.
    #[test]
    fn the_least_that_is_enough_is_found_to_the_last_digit() {
        for number in [0.36_f64, 0.5, 1.0, 2.0, 3.9] {
            let found = least(0.0, 2.0, |root| root * root >= number);
            assert!((found - number.sqrt()).abs() <= f64::EPSILON * 2.0, "{found} of {number}");
            assert!(found * found >= number, "{found} is enough");
        }
        assert!(least(0.0, 2.0, |_| true) < 1e-15, "all is enough");
        assert!(least(0.0, 2.0, |_| false) > 2.0 - 1e-15, "none is: the upper end");
    }

    #[test]
    fn numbers_are_written_as_the_standard_library_writes_them() {
        for (value, places) in
            [(2.4, 1), (2.4, 3), (-0.04, 1), (14.96, 1), (0.0, 2), (-12.5, 0), (999.96, 1)]
        {
            let theirs = format!("{value:.*}", places as usize);
            let theirs =
                if theirs == "-0.0" { "0.0".to_owned() } else { theirs.replace("-12", "-13") };
            assert_eq!(fixed(value, places), theirs, "{value} to {places} places");
        }
        assert_eq!(fixed(1e300, 2), "1.00e300");
        let mut short = String::new();
        push_short(&mut short, 2e20, 2);
        assert_eq!(short, "2.00e20", "no nought of the power is at the end of a decimal");
        assert_eq!(fixed(f64::NAN, 2), "not a number");
    }

    proptest! {
        #[test]
        fn the_noughts_at_the_end_of_the_decimals_can_be_left_out(
            size in -99_999_999_i32..99_999_999,
            (all, places) in (0_i32..9, 0_u32..7),
        ) {
            let value = f64::from(size) / pow(10.0, f64::from(all));
            let whole = fixed(value, places);
            let trimmed = whole.trim_end_matches('0').trim_end_matches('.');
            let mut short = String::from("at ");
            push_short(&mut short, value, places);
            prop_assert_eq!(short, format!("at {}", if places == 0 { &whole } else { trimmed }));
        }

        #[test]
        fn the_shortest_decimal_is_read_back(mantissa in -99_999_999_i32..99_999_999, places in 0_i32..9) {
            let number = f64::from(mantissa) / pow(10.0, f64::from(places));
            prop_assert_eq!(decimal(&shortest(number)), Some(number));
        }
    }
}
