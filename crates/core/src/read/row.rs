//! Numbers in a row: a firing order, a list of angles.

use super::problem::shortened;
use crate::math::decimal;

/// The numbers in a text, apart by anything a person puts between them; the first token that is none.
///
/// A comma between digits without a blank is taken as a separator, since a row has several numbers.
///
/// # Errors
/// The token that can't be read.
pub(crate) fn row(text: &str) -> Result<Vec<f64>, String> {
    text.split(|c: char| {
        c.is_whitespace() || matches!(c, '-' | '–' | ',' | ';' | '/' | '>' | '→' | '+' | '&')
    })
    // "1.5.3.6.2.4": points that can only stand between numbers
    .flat_map(|token| token.split(if token.matches('.').count() > 1 { '.' } else { ' ' }))
    .filter(|token| !token.is_empty())
    .map(|token| {
        let number = decimal(token.trim_end_matches('°'));
        number.ok_or_else(|| shortened(token))
    })
    .collect()
}

/// The same, where a number may be below nought: a dash at a number with a blank before it is its sign.
///
/// # Errors
/// The token that can't be read.
pub(crate) fn signed_row(text: &str) -> Result<Vec<f64>, String> {
    let mut numbers = Vec::new();
    for token in text.split_whitespace() {
        let below = token.strip_prefix(['-', '−']).map(|it| it.trim_end_matches('°'));
        match below.and_then(decimal) {
            Some(number) => numbers.push(-number),
            None => numbers.extend(row(token)?),
        }
    }
    Ok(numbers)
}
