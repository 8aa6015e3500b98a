//! The fields of a part as one text. A table of them is mostly addresses, lengths and noughts, and the page would load
//! it before anything is shown; a text takes half of that, and is unpacked once.

use std::str::Split;

use super::{Choosable, Condition, Field, Kind, Part, Tier};
use crate::{math, quantity::Dimension};

/// The fields of a part, packed by the compiler.
#[derive(Clone, Copy, Debug)]
pub(crate) struct PackedFields {
    /// A line for each thing that is said of a field, field by field.
    pub(crate) text: &'static str,
    /// What the fields offer that offer a choice, in the same order.
    pub(crate) choices: &'static [&'static [Choosable]],
}

/// What stands between two things on a line.
const BETWEEN: char = '\t';

/// Writes a text of `N` bytes while the program is compiled; what has no room is counted.
struct Pen<const N: usize> {
    bytes: [u8; N],
    at: usize,
}

impl<const N: usize> Pen<N> {
    const fn byte(&mut self, byte: u8) {
        if self.at < N {
            #[expect(clippy::indexing_slicing, reason = "there is room, and it is compiled away")]
            {
                self.bytes[self.at] = byte;
            }
        }
        self.at += 1;
    }

    const fn text(&mut self, text: &str) {
        let mut bytes = text.as_bytes();
        while let [byte, rest @ ..] = bytes {
            assert!(*byte >= b' ', "a text of a field is one line");
            self.byte(*byte);
            bytes = rest;
        }
    }

    const fn line(&mut self, text: &str) {
        self.text(text);
        self.byte(b'\n');
    }

    /// The least digits that are read as the same number.
    const fn number(&mut self, number: f64) {
        if number < 0.0 {
            self.byte(b'-');
        }
        let (mut scale, mut places) = (1_u64, 0);
        #[expect(
            clippy::cast_precision_loss,
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            clippy::float_cmp,
            reason = "what is lost is seen in the comparison"
        )]
        let mut rest = loop {
            assert!(places < 9, "a limit has few digits");
            let whole = (number.abs() * scale as f64) as u64;
            if whole as f64 / scale as f64 == number.abs() {
                break whole;
            }
            scale *= 10;
            places += 1;
        };
        let mut unit = scale;
        while rest / unit >= 10 {
            unit *= 10;
        }
        while unit > 0 {
            #[expect(clippy::cast_possible_truncation, reason = "a digit")]
            self.byte(b'0' + (rest / unit) as u8);
            rest %= unit;
            if unit == scale && scale > 1 {
                self.byte(b'.');
            }
            unit /= 10;
        }
    }

    const fn kind(&mut self, kind: Kind) {
        match kind {
            Kind::Text => self.byte(b't'),
            Kind::Row => self.byte(b'r'),
            Kind::Choice(_) => self.byte(b'c'),
            Kind::NameIn(part) => {
                self.byte(b'n');
                self.byte(b'A' + part as u8);
            }
            Kind::Whole(low, high) => {
                self.byte(b'w');
                self.number(low as f64);
                self.byte(BETWEEN as u8);
                self.number(high as f64);
            }
            Kind::Quantity { dimension, unit, low, high } => {
                self.byte(b'q');
                self.byte(b'A' + dimension as u8);
                self.text(unit);
                self.byte(BETWEEN as u8);
                self.number(low);
                self.byte(BETWEEN as u8);
                self.number(high);
            }
        }
        self.byte(b'\n');
    }

    const fn field(&mut self, field: &Field) {
        self.line(field.name);
        self.line(field.label);
        self.line(field.hint);
        if let Some(assumed) = field.assumed {
            self.byte(b'=');
            self.text(assumed);
        }
        self.byte(b'\n');
        if let Some(Condition { name, codes: mut rest }) = field.only_if {
            self.text(name);
            while let [code, others @ ..] = rest {
                self.byte(BETWEEN as u8);
                self.text(code);
                rest = others;
            }
        }
        self.byte(b'\n');
        self.byte(match field.tier {
            Tier::First => b'f',
            Tier::Usual => b'u',
            Tier::Rare => b'r',
        });
        self.text(if field.is_list { "l" } else { "" });
        self.text(if field.is_measured { "m" } else { "" });
        self.text(if field.is_of_kind { "k" } else { "" });
        self.byte(b'\n');
        self.kind(field.kind);
    }
}

/// The text of these fields, of which `N` bytes are kept, and how long it is.
pub(crate) const fn packed<const N: usize>(fields: &[Field]) -> ([u8; N], usize) {
    let mut pen = Pen { bytes: [0; N], at: 0 };
    let mut rest = fields;
    while let [field, others @ ..] = rest {
        pen.field(field);
        rest = others;
    }
    (pen.bytes, pen.at)
}

/// What those of these fields offer that offer a choice: the first `N`, and how many there are.
pub(crate) const fn offered<const N: usize>(
    fields: &[Field],
) -> ([&'static [Choosable]; N], usize) {
    let mut offered: [&'static [Choosable]; N] = [&[]; N];
    let (mut rest, mut at) = (fields, 0);
    while let [field, others @ ..] = rest {
        if let Kind::Choice(choices) = field.kind {
            if at < N {
                #[expect(
                    clippy::indexing_slicing,
                    reason = "there is room, and it is compiled away"
                )]
                {
                    offered[at] = choices;
                }
            }
            at += 1;
        }
        rest = others;
    }
    (offered, at)
}

/// The fields as they were declared.
pub(super) fn unpacked(packed: PackedFields) -> Vec<Field> {
    let mut lines = packed.text.split('\n');
    let mut choices = packed.choices.iter();
    let mut fields = Vec::new();
    while let Some(field) = field(&mut lines, &mut choices) {
        fields.push(field);
    }
    fields
}

fn field(
    lines: &mut Split<'static, char>,
    choices: &mut std::slice::Iter<'static, &'static [Choosable]>,
) -> Option<Field> {
    let mut next = || lines.next();
    let (name, label, hint) = (next()?, next()?, next()?);
    let (assumed, only_if, marks, kind) = (next()?, next()?, next()?, next()?);
    let is_marked = |mark| marks.contains(mark);
    Some(Field {
        name,
        is_list: is_marked('l'),
        label,
        hint,
        kind: kind_of(kind, choices)?,
        assumed: assumed.strip_prefix('='),
        is_measured: is_marked('m'),
        tier: if is_marked('f') {
            Tier::First
        } else if is_marked('r') {
            Tier::Rare
        } else {
            Tier::Usual
        },
        only_if: (!only_if.is_empty()).then(|| condition(only_if)),
        is_of_kind: is_marked('k'),
    })
}

fn condition(line: &'static str) -> Condition {
    let mut words = line.split(BETWEEN);
    let name = words.next().unwrap_or_default();
    Condition { name, codes: words.collect::<Vec<_>>().leak() }
}

fn kind_of(
    line: &'static str,
    choices: &mut std::slice::Iter<'static, &'static [Choosable]>,
) -> Option<Kind> {
    let rest = line.get(1..)?;
    // those that are numbered are less than the letters
    let numbered = |letter: &u8| usize::from(letter.wrapping_sub(b'A'));
    let number = || rest.as_bytes().first().map(numbered);
    Some(match line.as_bytes().first()? {
        b't' => Kind::Text,
        b'r' => Kind::Row,
        b'c' => Kind::Choice(choices.next()?),
        b'n' => Kind::NameIn(*Part::ALL.get(number()?)?),
        b'w' => {
            let (low, high) = rest.split_once(BETWEEN)?;
            Kind::Whole(low.parse().ok()?, high.parse().ok()?)
        }
        _ => {
            let dimension = *Dimension::ALL.get(number()?)?;
            let (unit, limits) = rest.get(1..)?.split_once(BETWEEN)?;
            let (low, high) = limits.split_once(BETWEEN)?;
            Kind::Quantity { dimension, unit, low: math::decimal(low)?, high: math::decimal(high)? }
        }
    })
}
