//! How many bits a frame takes on the wire.
//!
//! Behind five bits alike the sender puts one of the other kind, which the receiver takes out again: stuffing. It counts from the
//! start of the frame to the end of its check sum, and depends on every bit of it. Source: ISO 11898-1, classical frames; a frame
//! with a flexible data rate (CAN FD) is another, and is not counted here.

use crc::{CRC_15_CAN, Crc, NoTable};

use crate::working::Formula;

/// The most bytes of data that a frame carries.
pub const MOST_BYTES: u32 = 8;

/// How long the identifiers of a frame are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum IdentifierKind {
    /// 11 bits.
    Standard,
    /// 29 bits.
    Extended,
}

/// The formula of [`bits_at_most`] for 11 bits; that for 29 has 67 and 54 in the place of 47 and 34.
pub const AT_MOST: Formula = Formula {
    symbols: "bits = f + 8 × n + floor((s + 8 × n - 1) / 4)",
    source: "ISO 11898-1: the fields of a frame of n bytes, with the 3 bits to the next (f: 47, or 67 with 29 bits of identifier); \
             the first 5 alike and then every 4 bits can force one more (s: 34 or 54 bits that are stuffed, beside the data)",
};

impl IdentifierKind {
    /// The highest identifier.
    pub fn highest(self) -> u32 {
        match self {
            Self::Standard => 0x7FF,
            Self::Extended => 0x1FFF_FFFF,
        }
    }

    /// Bits of a frame without data and stuffing, with the three to the next frame.
    pub fn fields(self) -> u32 {
        match self {
            Self::Standard => 47,
            Self::Extended => 67,
        }
    }

    /// Those of them that are stuffed.
    pub fn stuffed(self) -> u32 {
        match self {
            Self::Standard => 34,
            Self::Extended => 54,
        }
    }
}

/// Bits of a frame that needs no stuffing, with the three to the next frame; no frame takes fewer.
pub fn bits_at_least(kind: IdentifierKind, bytes: u32) -> u32 {
    kind.fields() + 8 * bytes.min(MOST_BYTES)
}

/// Bits that stuffing adds at most. See [`AT_MOST`].
pub fn stuffing_at_most(kind: IdentifierKind, bytes: u32) -> u32 {
    (kind.stuffed() + 8 * bytes.min(MOST_BYTES) - 1) / 4
}

/// Bits of a frame at most, with the three to the next frame. See [`AT_MOST`].
pub fn bits_at_most(kind: IdentifierKind, bytes: u32) -> u32 {
    bits_at_least(kind, bytes) + stuffing_at_most(kind, bytes)
}

/// A frame of which every bit is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct KnownFrame<'a> {
    /// How long its identifier is.
    pub kind: IdentifierKind,
    /// Its identifier; bits beyond its length are left out.
    pub identifier: u32,
    /// Its data; what is beyond eight bytes is left out.
    pub data: &'a [u8],
}

/// What such a frame takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FrameBits {
    /// Its check sum, 15 bits.
    pub check: u16,
    /// Bits that stuffing adds.
    pub stuffing: u32,
    /// All its bits, with the three to the next frame.
    pub all: u32,
}

impl KnownFrame<'_> {
    fn data(&self) -> &[u8] {
        self.data.get(..MOST_BYTES as usize).unwrap_or(self.data)
    }

    /// Counts its bits: written out from the start of the frame to the end of the check sum, and stuffed.
    pub fn bits(&self) -> FrameBits {
        let mut bits = self.before_check();
        let check = check(&bits);
        push(&mut bits, u32::from(check), 15);
        let bytes = u32::try_from(self.data().len()).unwrap_or(MOST_BYTES);
        let stuffing = stuffing(&bits);
        FrameBits { check, stuffing, all: bits_at_least(self.kind, bytes) + stuffing }
    }

    /// From the start of the frame to its data: 1 is recessive.
    fn before_check(&self) -> Vec<bool> {
        let mut bits = Vec::with_capacity(128);
        // the start of the frame is dominant
        push(&mut bits, 0, 1);
        match self.kind {
            IdentifierKind::Standard => {
                push(&mut bits, self.identifier, 11);
                // no request, no extension, reserved
                push(&mut bits, 0, 3);
            }
            IdentifierKind::Extended => {
                push(&mut bits, self.identifier >> 18, 11);
                // stands for the request; extended
                push(&mut bits, 0b11, 2);
                push(&mut bits, self.identifier, 18);
                // no request, two reserved
                push(&mut bits, 0, 3);
            }
        }
        let data = self.data();
        push(&mut bits, u32::try_from(data.len()).unwrap_or(MOST_BYTES), 4);
        for byte in data {
            push(&mut bits, u32::from(*byte), 8);
        }
        bits
    }
}

/// The lowest `count` bits of a number, the highest of them first.
fn push(bits: &mut Vec<bool>, number: u32, count: u32) {
    bits.extend((0..count).rev().map(|at| number >> at & 1 == 1));
}

/// The check sum over bits that are no whole bytes: it begins at nought, so that noughts before them change nothing.
fn check(bits: &[bool]) -> u16 {
    let mut padded = vec![false; bits.len().next_multiple_of(8) - bits.len()];
    padded.extend_from_slice(bits);
    let byte = |bits: &[bool]| bits.iter().fold(0_u8, |byte, bit| byte << 1 | u8::from(*bit));
    let bytes: Vec<u8> = padded.chunks(8).map(byte).collect();
    Crc::<u16, NoTable>::new(&CRC_15_CAN).checksum(&bytes)
}

/// How many bits are put in: behind five alike one of the other kind, which counts with what follows.
fn stuffing(bits: &[bool]) -> u32 {
    let (mut last, mut alike, mut added) = (true, 0, 0);
    for &bit in bits {
        alike = if bit == last { alike + 1 } else { 1 };
        last = bit;
        if alike == 5 {
            added += 1;
            last = !bit;
            alike = 1;
        }
    }
    added
}
