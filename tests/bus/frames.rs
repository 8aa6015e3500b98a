//! How many bits a frame takes: the published counts, frames bit by bit, and all short ones by brute force.

use proptest::prelude::*;
use quietpin_core::bus::frame::{
    IdentifierKind, KnownFrame, bits_at_least, bits_at_most, stuffing_at_most,
};
use quietpin_tests::{Checked, Worst, reference};

use super::json;

const KINDS: [IdentifierKind; 2] = [IdentifierKind::Standard, IdentifierKind::Extended];

/// Bits between frames. Source: ISO 11898-1, `can_bus.json`.
const BETWEEN: u32 = 3;

/// Source: `can_frame_bits.csv`, computed from the field sizes of ISO 11898-1; two formulas for the same beside each other.
pub(crate) fn counts() -> Checked {
    let text = reference("can_frame_bits.csv");
    let mut rows = csv::Reader::from_reader(text.as_bytes());
    let mut worst = Worst::default();
    let mut seen = 0;
    for record in rows.records() {
        let record = record.expect("a row");
        let number = |column: usize| record[column].parse::<f64>().expect("a number");
        let bytes: u32 = record[0].parse().expect("a number of bytes");
        let mut same = |what: &str, found: u32, printed: f64| {
            worst.check(&format!("{bytes} bytes, {what}"), Some(f64::from(found)), printed, 0.0);
        };
        for (kind, at) in KINDS.into_iter().zip([1, 6]) {
            let at_most = bits_at_most(kind, bytes);
            same("no stuffing", bits_at_least(kind, bytes) - BETWEEN, number(at));
            same("stuffing", stuffing_at_most(kind, bytes), number(at + 1));
            same("at most", at_most - BETWEEN, number(at + 2));
            same("with the bits between", at_most, number(at + 3));
            same("the other formula", at_most, number(at + 4));
        }
        for (rate, column) in [(125e3, 11), (250e3, 12), (500e3, 13), (1e6, 14)] {
            let time = f64::from(bits_at_most(IdentifierKind::Standard, bytes)) / rate * 1e6;
            worst.check(
                &format!("{bytes} bytes at {rate}"),
                Some(time),
                number(column),
                1e-9 * time,
            );
        }
        seen += 1;
    }
    assert_eq!(seen, 9, "0 to 8 bytes");
    worst.checked(
        "bus",
        "Bits of a frame, stuffed as much as can be",
        "ISO 11898-1, computed",
        "bits, µs",
    )
}

/// Source: `can_frames_actual.csv`, made by an encoder of its own whose check sum was held against the published check value.
pub(crate) fn one_by_one() -> Checked {
    let text = reference("can_frames_actual.csv");
    let mut rows = csv::Reader::from_reader(text.as_bytes());
    let mut seen = 0;
    for record in rows.records() {
        let record = record.expect("a row");
        let hex = |column: usize| u32::from_str_radix(&record[column], 16).expect("hex");
        let number = |column: usize| record[column].parse::<u32>().expect("a number");
        let kind = KINDS[number(1) as usize];
        let data: Vec<u8> = record[3]
            .split_whitespace()
            .map(|it| u8::from_str_radix(it, 16).expect("a byte"))
            .collect();
        let place = format!("row {} of can_frames_actual.csv", seen + 2);
        assert_eq!(data.len(), number(2) as usize, "{place}");
        let bits = KnownFrame { kind, identifier: hex(0), data: &data }.bits();
        assert_eq!(u32::from(bits.check), hex(4), "{place}");
        assert_eq!(
            (bits.stuffing, bits.all - BETWEEN, bits.all),
            (number(5), number(6), number(7)),
            "{place}"
        );
        assert_eq!(stuffing_at_most(kind, number(2)), number(8), "{place}");
        seen += 1;
    }
    assert_eq!(seen, 48, "all rows");
    Checked::exact(
        "bus",
        "Check sum and bits of frames, stuffed",
        "an encoder of its own, by ISO 11898-1",
        seen * 5,
    )
}

/// Source: `can_bus.json`: the fields of a frame, and the counts of one with eight bytes.
#[test]
fn the_fields_sum_up() {
    let file = json();
    let frame = &file["frame"];
    for (kind, fields, overhead) in [
        (KINDS[0], "std_fields", "std_overhead_with_ifs"),
        (KINDS[1], "ext_fields", "ext_overhead_with_ifs"),
    ] {
        let fields = frame[fields].as_object().expect("fields");
        let sum: u64 = fields.values().map(|it| it.as_u64().expect("bits")).sum();
        assert_eq!(u64::from(kind.fields()), sum);
        assert_eq!(frame[overhead].as_u64(), Some(sum));
    }
    let worst = &file["worst_case"];
    for (kind, with, without) in
        [(KINDS[0], "n8_std_ifs", "n8_std_no_ifs"), (KINDS[1], "n8_ext_ifs", "n8_ext_no_ifs")]
    {
        let most = bits_at_most(kind, 8);
        assert_eq!(worst[with].as_u64(), Some(most.into()));
        assert_eq!(worst[without].as_u64(), Some((most - BETWEEN).into()));
    }
}

#[test]
fn frames_take_the_bits_that_are_published() {
    counts();
    one_by_one();
}

/// The same in another way: a text of noughts and ones, the check sum by long division, and stuffing that is taken out again.
fn by_hand(kind: IdentifierKind, identifier: u32, data: &[u8]) -> u32 {
    let mut bits = match kind {
        IdentifierKind::Standard => format!("0{identifier:011b}000"),
        IdentifierKind::Extended => {
            let (first, second) = (identifier >> 18, identifier & 0x3_FFFF);
            format!("0{first:011b}11{second:018b}000")
        }
    };
    bits.extend([format!("{:04b}", data.len())]);
    bits.extend(data.iter().map(|byte| format!("{byte:08b}")));
    // x^15 + x^14 + x^10 + x^8 + x^7 + x^4 + x^3 + 1
    let divisor: Vec<u8> = b"1100010110011001".iter().map(|it| it - b'0').collect();
    let mut rest: Vec<u8> = bits.bytes().map(|it| it - b'0').chain([0; 15]).collect();
    for at in 0..bits.len() {
        if rest[at] == 1 {
            for (bit, of) in rest[at..].iter_mut().zip(&divisor) {
                *bit ^= of;
            }
        }
    }
    bits.extend(rest[bits.len()..].iter().map(|it| if *it == 1 { '1' } else { '0' }));
    let mut wire = String::new();
    for bit in bits.chars() {
        wire.push(bit);
        if wire.ends_with("00000") {
            wire.push('1');
        } else if wire.ends_with("11111") {
            wire.push('0');
        }
    }
    assert!(!wire.contains("000000") && !wire.contains("111111"), "six alike are an error frame");
    u32::try_from(wire.len() - bits.len()).expect("few")
}

#[test]
fn every_short_frame_is_stuffed_as_by_hand() {
    let identifiers = [0, 1, 0x3F, 0x555, 0x5F0, 0x7C1, 0x7FF];
    let mut most = [0; 3];
    for identifier in identifiers {
        for kind in KINDS {
            let identifier = if kind == KINDS[1] { identifier << 14 | 0x83 } else { identifier };
            let empty: [&[u8]; 1] = [&[]];
            let one: Vec<[u8; 1]> = (0..=255).map(|it| [it]).collect();
            let frames = empty.into_iter().chain(one.iter().map(<[u8; 1]>::as_slice));
            for data in frames {
                let bits = KnownFrame { kind, identifier, data }.bits();
                assert_eq!(
                    bits.stuffing,
                    by_hand(kind, identifier, data),
                    "{identifier:X} {data:?}"
                );
                let bytes = u32::try_from(data.len()).expect("few");
                assert!(
                    bits.all >= bits_at_least(kind, bytes) && bits.all <= bits_at_most(kind, bytes)
                );
            }
        }
        // all payloads of two bytes
        for number in 0..=u16::MAX {
            let data = number.to_be_bytes();
            let bits = KnownFrame { kind: KINDS[0], identifier, data: &data }.bits();
            if number % 7 == 0 {
                assert_eq!(
                    bits.stuffing,
                    by_hand(KINDS[0], identifier, &data),
                    "{identifier:X} {number:X}"
                );
            }
            most[2] = most[2].max(bits.all);
        }
    }
    assert!(most[2] <= bits_at_most(KINDS[0], 2), "{most:?}");
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(2000) })]

    #[test]
    fn any_frame_is_stuffed_as_by_hand(
        is_extended in any::<bool>(), identifier in any::<u32>(),
        data in prop::collection::vec(prop_oneof![any::<u8>(), Just(0), Just(255), Just(0xF8)], 0..=8),
    ) {
        let kind = KINDS[usize::from(is_extended)];
        let identifier = identifier & kind.highest();
        let bits = KnownFrame { kind, identifier, data: &data }.bits();
        prop_assert_eq!(bits.stuffing, by_hand(kind, identifier, &data));
        let bytes = u32::try_from(data.len()).expect("few");
        prop_assert!(bits.all >= bits_at_least(kind, bytes) && bits.all <= bits_at_most(kind, bytes));
    }
}
