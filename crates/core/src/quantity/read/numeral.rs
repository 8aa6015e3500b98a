//! The number at the start of a text.

use std::borrow::Cow;

use super::Misread;
use crate::math::decimal;

/// A number, or the two numbers that the same marks could mean.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Numeral {
    /// One reading.
    One(f64),
    /// The smaller and the larger reading, spelled without doubt.
    Two(String, String),
}

/// Splits the number off the start of a trimmed text.
pub(super) fn take(text: &str) -> Result<(Numeral, &str), Misread> {
    let (negative, body) = sign(text);
    let (marks, rest) = body.split_at(marks_length(body));
    if !marks.contains(|c: char| c.is_ascii_digit()) {
        return Err(Misread::NoNumber);
    }
    let (exponent, rest) = exponent(rest);
    let marks = marks.trim_end();
    if let Some((small, large)) = two_readings(marks, exponent) {
        let minus = if negative { "-" } else { "" };
        return Ok((Numeral::Two(format!("{minus}{small}"), format!("{minus}{large}")), rest));
    }
    let digits = plain(marks).ok_or(Misread::NoNumber)?;
    let number = if exponent.is_empty() { decimal(&digits) } else { decimal(&(digits + exponent)) };
    let number = number.ok_or(Misread::NotFinite)?;
    Ok((Numeral::One(if negative { -number } else { number }), rest))
}

/// `2R4`, `R47`, `2k2`, `1M5`: the letter stands where the point would. Source: IEC 60062.
pub(super) fn letter_for_point(text: &str) -> Option<f64> {
    let at = text.find(['R', 'r', 'k', 'K', 'M'])?;
    let (whole, rest) = text.split_at_checked(at)?;
    let mut rest = rest.chars();
    let factor = match rest.next()? {
        'R' | 'r' => 1.0,
        'M' => 1e6,
        _ => 1e3,
    };
    let part = rest.as_str();
    let all_digits = |s: &str| s.chars().all(|c| c.is_ascii_digit());
    if part.is_empty() || !all_digits(whole) || !all_digits(part) {
        return None;
    }
    decimal(&format!("{whole}.{part}")).map(|number| number * factor)
}

fn sign(text: &str) -> (bool, &str) {
    match text.strip_prefix(['-', '−', '–']) {
        Some(rest) => (true, rest.trim_start()),
        None => (false, text.strip_prefix('+').unwrap_or(text).trim_start()),
    }
}

/// How far digits, points, commas and the gaps between groups of digits reach.
fn marks_length(text: &str) -> usize {
    let mut end = 0;
    let mut chars = text.char_indices().peekable();
    while let Some((at, c)) = chars.next() {
        let goes_on = match c {
            '0'..='9' | '.' | ',' => true,
            ' ' | '\u{a0}' | '\u{202f}' | '\'' => {
                at > 0 && chars.peek().is_some_and(|(next, _)| is_group(text, *next))
            }
            _ => false,
        };
        if !goes_on {
            break;
        }
        end = at + c.len_utf8();
    }
    end
}

/// Whether three digits follow and no more: a gap between others makes two numbers.
fn is_group(text: &str, at: usize) -> bool {
    let after = text.get(at..).unwrap_or_default();
    after.chars().take_while(char::is_ascii_digit).count() == 3
}

/// `e3`, `E-3`: only where digits follow, since `E` may start a unit.
fn exponent(rest: &str) -> (&str, &str) {
    let Some(after) = rest.strip_prefix(['e', 'E']) else { return ("", rest) };
    let unsigned = after.strip_prefix(['-', '+']).unwrap_or(after);
    let digits = unsigned.chars().take_while(char::is_ascii_digit).count();
    let length = 1 + (after.len() - unsigned.len()) + digits;
    if digits == 0 { ("", rest) } else { rest.split_at_checked(length).unwrap_or(("", rest)) }
}

/// One mark, up to three digits before it, exactly three after: thousands or a decimal?
fn two_readings(marks: &str, exponent: &str) -> Option<(String, String)> {
    let (whole, part) = marks.split_once(['.', ','])?;
    let digits = |s: &str| !s.is_empty() && s.chars().all(|c| c.is_ascii_digit());
    let doubtful = exponent.is_empty()
        && digits(whole)
        && digits(part)
        && part.len() == 3
        && whole.len() <= 3
        && !whole.starts_with('0');
    if !doubtful {
        return None;
    }
    let decimals = part.trim_end_matches('0');
    let small = if decimals.is_empty() { whole.to_owned() } else { format!("{whole}.{decimals}") };
    Some((small, format!("{whole}{part}")))
}

/// The digits with a point for the decimal mark: the last mark, where two kinds are used.
fn plain(marks: &str) -> Option<Cow<'_, str>> {
    let mut others = marks.chars().filter(|c| !c.is_ascii_digit());
    if matches!((others.next(), others.next()), (None | Some('.'), None)) {
        return Some(marks.into());
    }
    let is_gap = |c: char| matches!(c, ' ' | '\u{a0}' | '\u{202f}' | '\'');
    let tight: String = marks.chars().filter(|c| !is_gap(*c)).collect();
    let last = tight.rfind(['.', ',']);
    let Some(last) = last else { return Some(tight.into()) };
    let (whole, part) = tight.split_at_checked(last)?;
    let mark = part.chars().next()?;
    let part = part.get(1..)?;
    if whole.contains(mark) {
        // "1.234.567": the same mark again can only group
        return groups(&tight, mark).then(|| tight.replace(mark, "").into());
    }
    let other = if mark == '.' { ',' } else { '.' };
    if whole.contains(other) && !groups(whole, other) {
        return None;
    }
    Some(format!("{}.{part}", whole.replace(other, "")).into())
}

fn groups(text: &str, mark: char) -> bool {
    let mut parts = text.split(mark);
    let first = parts.next().is_some_and(|part| (1..=3).contains(&part.len()));
    first && parts.all(|part| part.len() == 3 && part.chars().all(|c| c.is_ascii_digit()))
}
