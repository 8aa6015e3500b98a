//! One code: what it holds, and how it is written.
//!
//! Its text is `A`, the version of this form; bytes as [signs](crate::signs); and `Z`, so that a code never ends in a sign
//! that programs which find links in messages leave out. The bytes are, in this order:
//!
//! | bytes | what |
//! | --- | --- |
//! | 1 | which of how many: the number less one in its high half, how many less one in its low half |
//! | 4 | CRC-32 of the whole compressed plan: the series, and the check of the whole |
//! | any | this code's piece of the compressed plan |
//! | 4 | CRC-32 of all that stands before, in this code |
//!
//! The compressed plan is the text of its file without blanks between its parts, as a raw DEFLATE stream (RFC 1951).

use std::fmt;

use miniz_oxide::deflate::compress_to_vec;
use quietpin_core::plan::{self, Plan};

use crate::{MARK, check::crc32, signs};

/// The version of the form.
const VERSION: char = 'A';
/// What a code ends in.
const END: char = 'Z';

/// Most codes of one plan. Somebody has to scan them all.
pub const MOST_CODES: u8 = 12;

/// Most bytes that go into one QR code: a phone that is held in a hand still reads it.
const MOST_BYTES: usize = 1000;
/// How many bytes of these say what follows, in two segments.
const HEADS: usize = 5;
/// Room in a code whatever the address before it takes, in signs.
const LEAST_ROOM: usize = 300;
/// Bytes of a code that are not of the plan.
const AROUND: usize = 9;

/// The slowest and best of the compressor's levels: a plan is small.
const LEVEL: u8 = 10;

/// A code that was written or read: a piece of a plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Code {
    /// Which one of its series, from 1 on.
    pub number: u8,
    /// How many there are.
    pub of: u8,
    /// The check of the whole.
    pub(crate) whole: u32,
    /// A piece of the compressed plan.
    pub(crate) piece: Vec<u8>,
}

/// A plan takes more codes than anybody scans.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooLong;

impl fmt::Display for TooLong {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "This plan takes more than {MOST_CODES} codes: save it as a file instead, and send that."
        )
    }
}

/// Why a text is not a code.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refused {
    /// Nothing in it begins like one.
    NoCode,
    /// Of a later version of the form.
    Newer,
    /// Its check does not hold.
    Damaged,
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoCode => {
                "This is not a code of a plan. Paste all of the text that was scanned, from its first sign to its last."
            }
            Self::Newer => "This code was made by a newer Quietpin. Open it with the newer one.",
            Self::Damaged => "This code is damaged, or not all of it is here: scan it again.",
        })
    }
}

/// A plan as one code of any length, for a link.
pub fn whole(plan: &Plan) -> Code {
    let piece = compressed(plan);
    Code { number: 1, of: 1, whole: crc32(&piece), piece }
}

/// A plan as codes for scanning, the first first. `before` is how many bytes stand before each: the page's address and
/// [`MARK`].
///
/// # Errors
/// It takes more than [`MOST_CODES`].
pub fn series(plan: &Plan, before: usize) -> Result<Vec<Code>, TooLong> {
    let bytes = compressed(plan);
    // five and a half bits a sign
    let room = MOST_BYTES.saturating_sub(HEADS).saturating_sub(before).saturating_mul(16) / 11;
    let most =
        signs::bytes_in(room.max(LEAST_ROOM).saturating_sub(2)).saturating_sub(AROUND).max(1);
    let count = bytes.len().div_ceil(most).max(1);
    // of one size, so that none is harder to scan than it must be
    let size = bytes.len().div_ceil(count).max(1);
    let of = u8::try_from(bytes.len().div_ceil(size)).ok();
    let of = of.filter(|it| *it <= MOST_CODES).ok_or(TooLong)?;
    let (whole, pieces) = (crc32(&bytes), bytes.chunks(size));
    let code = |(number, piece): (u8, &[u8])| Code { number, of, whole, piece: piece.to_vec() };
    Ok((1..=of).zip(pieces).map(code).collect())
}

fn compressed(plan: &Plan) -> Vec<u8> {
    compress_to_vec(without_blanks(&plan::write(plan)).as_bytes(), LEVEL)
}

/// JSON without the blanks between its parts.
fn without_blanks(json: &str) -> String {
    let (mut in_text, mut is_escaped) = (false, false);
    let is_kept = |sign: &char| {
        let was_in_text = in_text;
        if *sign == '"' && !is_escaped {
            in_text = !in_text;
        }
        is_escaped = *sign == '\\' && !is_escaped;
        was_in_text || !sign.is_ascii_whitespace()
    };
    json.chars().filter(is_kept).collect()
}

impl Code {
    /// Its text.
    pub fn text(&self) -> String {
        let mut bytes = vec![(self.number.wrapping_sub(1) << 4) | (self.of.wrapping_sub(1) & 15)];
        bytes.extend(self.whole.to_be_bytes());
        bytes.extend(&self.piece);
        bytes.extend(crc32(&bytes).to_be_bytes());
        format!("{VERSION}{}{END}", signs::written(&bytes))
    }

    /// Reads the text of a code.
    ///
    /// # Errors
    /// [`Refused`] says why it is none.
    pub fn read(text: &str) -> Result<Self, Refused> {
        match text.chars().next() {
            Some(VERSION) => {}
            Some('B'..='Z') => return Err(Refused::Newer),
            _ => return Err(Refused::Damaged),
        }
        let inside = text.strip_prefix(VERSION).and_then(|it| it.strip_suffix(END));
        inside.and_then(signs::read).and_then(|it| Self::of_bytes(&it)).ok_or(Refused::Damaged)
    }

    fn of_bytes(bytes: &[u8]) -> Option<Self> {
        let (bytes, check) = bytes.split_last_chunk::<4>()?;
        let (first, rest) = bytes.split_first()?;
        let (whole, piece) = rest.split_first_chunk::<4>()?;
        let (number, of) = ((first >> 4) + 1, (first & 15) + 1);
        let is_whole = crc32(bytes) == u32::from_be_bytes(*check);
        let code = Self { number, of, whole: u32::from_be_bytes(*whole), piece: piece.to_vec() };
        (is_whole && number <= of && of <= MOST_CODES).then_some(code)
    }

    /// Reads what was scanned or pasted: links or what stands in codes without an address, one or several.
    ///
    /// # Errors
    /// The first that is no code says why.
    pub fn read_all(pasted: &str) -> Result<Vec<Self>, Refused> {
        let codes: Vec<_> = pasted.split_whitespace().filter_map(after_mark).collect();
        match (codes.as_slice(), codes.iter().map(|it| Self::read(it)).collect()) {
            ([], _) => Err(Refused::NoCode),
            // some programs break a long line
            ([_], Err(Refused::Damaged)) => {
                let joined: String = pasted.split_whitespace().collect();
                Ok(vec![Self::read(after_mark(&joined).unwrap_or_default())?])
            }
            (_, read) => read,
        }
    }
}

fn after_mark(text: &str) -> Option<&str> {
    let at = text.as_bytes().windows(MARK.len()).position(|it| it == MARK.as_bytes())?;
    text.get(at.saturating_add(MARK.len())..)
}
