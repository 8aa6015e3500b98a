//! What can be wrong with a field, as a sentence at the field.

use crate::{
    finding::{Finding, Severity},
    message::Message,
    quantity::{Misread, Value},
    say,
    schema::{Choosable, Field, Kind, Place},
};

/// Why a field can't be used.
#[derive(Debug)]
pub(crate) enum Problem {
    Misread(Misread),
    TooSmall(Box<Beyond>),
    TooLarge(Box<Beyond>),
    NotWhole(u32, u32),
    UnknownChoice(String),
}

/// A value outside its limits.
#[derive(Debug)]
pub(crate) struct Beyond {
    pub(crate) value: Value,
    pub(crate) low: Value,
    pub(crate) high: Value,
    /// A thousandth or a thousand times as much, where that is possible: a prefix that slipped.
    pub(crate) meant: Option<Value>,
}

impl Beyond {
    fn told(self, message: Message) -> Message {
        match self.meant {
            Some(meant) => message.and_then(&say!(crate::words::field::MEANT, meant = meant)),
            None => message,
        }
    }
}

impl Problem {
    pub(crate) fn finding(self, place: Place, typed: &str) -> Finding {
        let field = place.field();
        let typed = shortened(typed);
        let name = field.label;
        let message = match self {
            Self::Misread(misread) => unread(misread, field, &typed),
            Self::TooSmall(it) => {
                let message = say!(
                    crate::words::field::TOO_SMALL,
                    field = name,
                    value = it.value,
                    low = it.low,
                    high = it.high
                );
                it.told(message)
            }
            Self::TooLarge(it) => {
                let message = say!(
                    crate::words::field::TOO_LARGE,
                    field = name,
                    value = it.value,
                    low = it.low,
                    high = it.high
                );
                it.told(message)
            }
            Self::NotWhole(low, high) => {
                say!(
                    crate::words::field::NOT_WHOLE,
                    field = name,
                    typed = typed,
                    low = low,
                    high = high
                )
            }
            Self::UnknownChoice(choices) => {
                say!(
                    crate::words::field::UNKNOWN_CHOICE,
                    field = name,
                    typed = typed,
                    choices = choices
                )
            }
        };
        Finding::new(Severity::Fault, place, message)
    }
}

#[expect(clippy::too_many_lines, reason = "one arm for each way to be misread, none of them long")]
fn unread(misread: Misread, field: &Field, typed: &str) -> Message {
    let (name, what, example) = (field.label, wanted(field), field.example());
    match misread {
        Misread::Empty | Misread::NoNumber => {
            say!(
                crate::words::field::NO_NUMBER,
                field = name,
                typed = typed,
                what = what,
                example = example
            )
        }
        Misread::NotFinite => {
            say!(
                crate::words::field::NOT_FINITE,
                field = name,
                typed = typed,
                what = what,
                example = example
            )
        }
        Misread::TwoReadings(small, large) => {
            say!(
                crate::words::field::TWO_READINGS,
                field = name,
                typed = typed,
                small = small,
                large = large
            )
        }
        Misread::OtherDimension(got) => {
            say!(
                crate::words::field::WRONG_UNIT,
                field = name,
                typed = typed,
                got = got.name(),
                what = what,
                example = example
            )
        }
        Misread::WrongCapitals(known) => {
            say!(crate::words::field::WRONG_CAPITALS, field = name, typed = typed, known = known)
        }
        Misread::UnknownUnit(_) => {
            say!(
                crate::words::field::UNKNOWN_UNIT,
                field = name,
                typed = typed,
                what = what,
                example = example
            )
        }
        Misread::LeftOver(rest) => {
            say!(
                crate::words::field::LEFT_OVER,
                field = name,
                typed = typed,
                rest = rest,
                what = what,
                example = example
            )
        }
    }
}

/// A megabyte pasted into a field is not repeated in the message about it.
pub(crate) fn shortened(typed: &str) -> String {
    match typed.char_indices().nth(40) {
        Some((end, _)) => format!("{}…", typed.get(..end).unwrap_or_default()),
        None => typed.to_owned(),
    }
}

fn wanted(field: &Field) -> &'static str {
    match field.kind {
        Kind::Quantity { dimension, .. } => dimension.name(),
        Kind::Whole(..) => "a whole number",
        Kind::Choice(_) => "one of the choices",
        Kind::Text | Kind::Row | Kind::NameIn(_) => "a text",
    }
}

/// Reads a whole number within the field's limits.
pub(crate) fn whole_of(field: &Field, text: &str) -> Result<u32, Problem> {
    let Kind::Whole(low, high) = field.kind else {
        return Err(Problem::Misread(Misread::NoNumber));
    };
    let Some(number) = text.parse().ok().or_else(|| counted(field, text)) else {
        // "-3" and "6.0" are numbers, but no counts
        return Err(Problem::NotWhole(low, high));
    };
    let beyond = || {
        Box::new(Beyond { value: number.into(), low: low.into(), high: high.into(), meant: None })
    };
    if number < low {
        return Err(Problem::TooSmall(beyond()));
    }
    if number > high {
        return Err(Problem::TooLarge(beyond()));
    }
    Ok(number)
}

/// A number with what is counted behind it: `6 cyl`.
fn counted(field: &Field, text: &str) -> Option<u32> {
    let (number, word) = text.split_at_checked(text.find(|c: char| !c.is_ascii_digit())?)?;
    let word = word.trim().trim_end_matches('.').to_ascii_lowercase();
    let label = field.label.to_ascii_lowercase();
    let is_said = word.len() >= 3 && label.split(' ').any(|it| it.starts_with(&word));
    number.parse().ok().filter(|_| is_said)
}

/// The number of a choice, by its code, or by its label as a person would write it into a file.
pub(crate) fn choice_of(table: &[Choosable], text: &str) -> Result<usize, Problem> {
    let same = |one: &str| one.eq_ignore_ascii_case(text);
    if let Some(at) = table.iter().position(|it| same(it.code) || same(it.label)) {
        return Ok(at);
    }
    let all: Vec<_> = table.iter().map(|it| it.code).collect();
    Err(Problem::UnknownChoice(all.join(", ")))
}
