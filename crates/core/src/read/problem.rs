//! What can be wrong with a field, as a sentence at the field.

use crate::{
    fields::{Field, Kind},
    finding::{Finding, Severity},
    message::Message,
    quantity::{Misread, Value},
    say,
};

/// Why a field can't be used.
#[derive(Debug)]
pub(super) enum Problem {
    Misread(Misread),
    TooSmall(Box<Beyond>),
    TooLarge(Box<Beyond>),
    NotWhole(u32, u32),
    UnknownChoice(String),
}

/// A value outside its limits.
#[derive(Debug)]
pub(super) struct Beyond {
    pub(super) value: Value,
    pub(super) low: Value,
    pub(super) high: Value,
}

impl Problem {
    pub(super) fn finding(self, path: &str, field: &Field, typed: &str) -> Finding {
        let typed = shortened(typed);
        let name = field.label;
        let message = match self {
            Self::Misread(misread) => unread(misread, field, &typed),
            Self::TooSmall(it) => {
                say!(
                    "field.too-small",
                    field = name,
                    value = it.value,
                    low = it.low,
                    high = it.high
                )
            }
            Self::TooLarge(it) => {
                say!(
                    "field.too-large",
                    field = name,
                    value = it.value,
                    low = it.low,
                    high = it.high
                )
            }
            Self::NotWhole(low, high) => {
                say!("field.not-whole", field = name, typed = typed, low = low, high = high)
            }
            Self::UnknownChoice(choices) => {
                say!("field.unknown-choice", field = name, typed = typed, choices = choices)
            }
        };
        Finding::new(Severity::Fault, path, message)
    }
}

fn unread(misread: Misread, field: &Field, typed: &str) -> Message {
    let (name, what, example) = (field.label, wanted(field), field.example());
    match misread {
        Misread::Empty | Misread::NoNumber => {
            say!("field.no-number", field = name, typed = typed, what = what, example = example)
        }
        Misread::NotFinite => {
            say!("field.not-finite", field = name, typed = typed, what = what, example = example)
        }
        Misread::TwoReadings(small, large) => {
            say!("field.two-readings", field = name, typed = typed, small = small, large = large)
        }
        Misread::OtherDimension(got) => {
            say!(
                "field.wrong-unit",
                field = name,
                typed = typed,
                got = got.name(),
                what = what,
                example = example
            )
        }
        Misread::WrongCapitals(known) => {
            say!("field.wrong-capitals", field = name, typed = typed, known = known)
        }
        Misread::UnknownUnit(_) => {
            say!("field.unknown-unit", field = name, typed = typed, what = what, example = example)
        }
        Misread::LeftOver(rest) => {
            say!(
                "field.left-over",
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
pub(super) fn shortened(typed: &str) -> String {
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
        Kind::Text | Kind::Row | Kind::OutputName => "a text",
    }
}

/// Reads a whole number within the field's limits.
pub(super) fn whole_of(field: &Field, text: &str) -> Result<u32, Problem> {
    let Kind::Whole(low, high) = field.kind else {
        return Err(Problem::Misread(Misread::NoNumber));
    };
    let Ok(number) = text.parse::<u32>() else {
        // "-3" and "6.0" are numbers, but no counts
        return Err(Problem::NotWhole(low, high));
    };
    let beyond = || Box::new(Beyond { value: number.into(), low: low.into(), high: high.into() });
    if number < low {
        return Err(Problem::TooSmall(beyond()));
    }
    if number > high {
        return Err(Problem::TooLarge(beyond()));
    }
    Ok(number)
}

/// Reads a choice by its code, or by its label as a person would write it into a file.
pub(super) fn choice_of(field: &Field, text: &str) -> Result<&'static str, Problem> {
    let Kind::Choice(choices) = field.kind else { return Err(Problem::Misread(Misread::NoNumber)) };
    let same = |one: &str| one.eq_ignore_ascii_case(text);
    if let Some(choice) = choices.iter().find(|choice| same(choice.code) || same(choice.label)) {
        return Ok(choice.code);
    }
    let all: Vec<_> = choices.iter().map(|choice| choice.code).collect();
    Err(Problem::UnknownChoice(all.join(", ")))
}
