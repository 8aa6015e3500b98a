//! The bus from its fields.

use crate::{
    bus::{
        frame::{FrameBits, IdentifierKind, KnownFrame},
        load::PeriodicFrame,
    },
    fields::{
        self,
        bus::{BusShape, TerminatedAt},
        frames,
    },
    finding::{Finding, Severity},
    quantity::{
        Band, BitRate, Length, Measure as _, Ratio, Resistance, Voltage, celsius, metres, share,
    },
    questions::bus::words,
    read::{Entry, Reader, problem::shortened, rest::limited},
    say,
    schema::Part,
    tables::copper,
};

/// A length that no bus of a car exceeds by much, where none was typed, in metres: common practice, no source.
const USUAL_LENGTH_M: f64 = 10.0;

/// What a meter says that shows no end.
const NO_END: [&str; 7] = ["OL", "0L", "OPEN", "INF", "INFINITE", "INFINITY", "∞"];

/// What an ohmmeter has shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum PairReading {
    /// So much.
    Ohms(Resistance),
    /// No end.
    NoEnd,
}

/// What the fields say.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct PlannedBus {
    pub(crate) rate: Entry<BitRate>,
    pub(crate) other_rate: Option<BitRate>,
    pub(crate) terminators: Entry<u32>,
    pub(crate) terminated_at: Option<TerminatedAt>,
    pub(crate) length: Option<Length>,
    pub(crate) branch: Option<Length>,
    pub(crate) shape: Option<BusShape>,
    /// Both lines from end to end, there and back, at the most.
    pub(crate) wires: Resistance,
    pub(crate) reading: Entry<PairReading>,
    pub(crate) high: Entry<Voltage>,
    pub(crate) low: Entry<Voltage>,
    pub(crate) frames: Vec<PlannedFrame>,
}

/// A record of a frame.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct PlannedFrame {
    /// Its number in the list.
    pub(crate) record: usize,
    /// What it is called.
    pub(crate) name: String,
    pub(crate) kind: IdentifierKind,
    pub(crate) identifier: Option<u32>,
    /// Its bits and its period; nothing of one whose period is not known.
    pub(crate) periodic: Option<PeriodicFrame>,
    /// Its bits counted one by one, where all are known.
    pub(crate) known: Option<FrameBits>,
}

/// Reads it; every field, whatever stands in the others. Nothing where none of it was typed.
pub(crate) fn bus(reader: &mut Reader<'_>) -> Option<PlannedBus> {
    let plan = reader.plan();
    if plan.is_blank(Part::Bus) && plan.count(Part::Frames) == 0 {
        for place in Part::Bus.places() {
            reader.missing(place);
        }
        return None;
    }
    let length = reader.band(fields::bus::LENGTH).value().map(|it| it.high);
    let size = reader.band(fields::bus::SIZE).value().map(|it| it.low);
    let long = length.unwrap_or_else(|| metres(USUAL_LENGTH_M));
    let wires = size.map_or_else(
        || Resistance::from_base(0.0),
        |size| copper::wire_at_most(long * 2.0, size, celsius(20.0)),
    );
    let volts = |reader: &mut Reader<'_>, key| reader.band(key).map(|it: Band<_>| it.nominal);
    Some(PlannedBus {
        rate: reader.band(fields::bus::BIT_RATE).map(|it| it.nominal),
        other_rate: reader.band(fields::bus::OTHER_RATE).value().map(|it| it.nominal),
        terminators: reader.whole(fields::bus::TERMINATORS),
        terminated_at: reader.choice(fields::bus::TERMINATED_AT).value(),
        length,
        branch: reader.band(fields::bus::BRANCH).value().map(|it| it.high),
        shape: reader.choice(fields::bus::SHAPE).value(),
        wires,
        reading: reading(reader),
        high: volts(reader, fields::bus::HIGH),
        low: volts(reader, fields::bus::LOW),
        frames: frames(reader),
    })
}

/// A number of ohms, or what a meter says that shows no end.
fn reading(reader: &mut Reader<'_>) -> Entry<PairReading> {
    let key = fields::bus::READING;
    let typed: String = reader.text(key).chars().filter(|it| !matches!(it, '.' | ' ')).collect();
    if NO_END.iter().any(|it| it.eq_ignore_ascii_case(&typed)) {
        reader.given(key, "OL: no end");
        return Entry::Given(PairReading::NoEnd);
    }
    reader.band(key).map(|it| PairReading::Ohms(it.nominal))
}

fn frames(reader: &mut Reader<'_>) -> Vec<PlannedFrame> {
    (0..limited(reader, Part::Frames, "Frames")).map(|record| frame(reader, record)).collect()
}

fn frame(reader: &mut Reader<'_>, record: usize) -> PlannedFrame {
    let name = reader.text(frames::NAME.at(record)).to_owned();
    reader.stand(frames::NAME.at(record).into());
    let kind = reader.choice(frames::IDENTIFIER_KIND.at(record));
    // one that can't be read may be either
    let is_kind_sure = !matches!(kind, Entry::Unreadable);
    let kind = kind.value().unwrap_or(IdentifierKind::Standard);
    let bytes = reader.whole(frames::BYTES.at(record));
    let identifier = identifier(reader, record, kind);
    let data = data(reader, record, bytes);
    let period = reader.band(frames::PERIOD.at(record)).value();
    let range = match (&data, bytes) {
        (Some(data), _) => {
            let count = u32::try_from(data.len()).unwrap_or_default();
            (count, count)
        }
        (None, Entry::Given(bytes)) => (bytes, bytes),
        (None, _) => (0, crate::bus::frame::MOST_BYTES),
    };
    let known = identifier.zip(data.as_ref()).filter(|_| is_kind_sure);
    let known = known.map(|(identifier, data)| KnownFrame { kind, identifier, data }.bits());
    let longest = if is_kind_sure { kind } else { IdentifierKind::Extended };
    let periodic = period.map(|period| {
        let mut frame = PeriodicFrame::of_bytes(longest, range, period);
        frame.bits.low = PeriodicFrame::of_bytes(kind, range, period).bits.low;
        if let Some(known) = known {
            // such bytes once; others may need more, and none fewer than no stuffing
            frame.bits.nominal = in_bits(known.all);
        }
        frame
    });
    PlannedFrame { record, name, kind, identifier, periodic, known }
}

fn in_bits(bits: u32) -> Ratio {
    share(f64::from(bits))
}

/// The identifier, in hex as every list of frames has it.
fn identifier(reader: &mut Reader<'_>, record: usize, kind: IdentifierKind) -> Option<u32> {
    let key = frames::IDENTIFIER.at(record);
    let typed = reader.text(key);
    if typed.is_empty() {
        reader.missing(key);
        return None;
    }
    let number = u32::from_str_radix(digits(typed), 16).ok().filter(|it| *it <= kind.highest());
    if let Some(number) = number {
        reader.given(key, shown(number));
    } else {
        let message = say!(
            words::NO_IDENTIFIER,
            typed = shortened(typed),
            bits = if kind == IdentifierKind::Standard { 11_u32 } else { 29 },
            highest = shown(kind.highest())
        );
        reader.unusable(Finding::new(Severity::Fault, key, message));
    }
    number
}

/// As lists of frames have it.
pub(super) fn shown(identifier: u32) -> String {
    format!("{identifier:X}")
}

/// Without what says that the digits are hex.
fn digits(typed: &str) -> &str {
    let rest = typed.strip_prefix("0x").or_else(|| typed.strip_prefix("0X")).unwrap_or(typed);
    let rest = rest.strip_suffix(['h', 'H']).unwrap_or(rest);
    // a sign would be read as well
    if rest.starts_with(['+', '-']) { "" } else { rest }
}

/// The bytes that were seen; as many as the frame has, where that was typed.
fn data(reader: &mut Reader<'_>, record: usize, bytes: Entry<u32>) -> Option<Vec<u8>> {
    let key = frames::DATA.at(record);
    let typed = reader.text(key);
    if typed.is_empty() {
        reader.missing(key);
        return None;
    }
    let most = crate::bus::frame::MOST_BYTES;
    let data = bytes_of(typed).filter(|data| {
        let count = u32::try_from(data.len()).unwrap_or(u32::MAX);
        match bytes {
            Entry::Given(bytes) => count == bytes,
            _ => count <= most,
        }
    });
    if data.is_some() {
        reader.given(key, shortened(typed));
    } else {
        let bytes = match bytes {
            Entry::Given(bytes) => bytes,
            _ => most,
        };
        let message = say!(words::NO_DATA, typed = shortened(typed), bytes = bytes);
        reader.unusable(Finding::new(Severity::Fault, key, message));
    }
    data
}

/// Two hex digits each, with or without a blank between them.
fn bytes_of(typed: &str) -> Option<Vec<u8>> {
    let mut bytes = Vec::new();
    for token in typed.split([' ', ',', ';', ':', '-']).filter(|it| !it.is_empty()) {
        let token = digits(token).as_bytes();
        let is_hex = token.iter().all(u8::is_ascii_hexdigit);
        if token.is_empty() || token.len() % 2 == 1 || !is_hex {
            return None;
        }
        for pair in token.chunks(2) {
            let pair = std::str::from_utf8(pair).ok()?;
            bytes.push(u8::from_str_radix(pair, 16).ok()?);
        }
    }
    Some(bytes)
}
