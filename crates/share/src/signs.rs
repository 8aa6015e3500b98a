//! Bytes as signs that take little room in a QR code and may stand in a link.
//!
//! A QR code holds a sign of its alphanumeric set in five and a half bits, and any other in eight. Two bytes are three
//! signs, as in RFC 9285 (Base45), but of 41 signs in place of 45: those of the set that a fragment takes as they are (RFC
//! 3986), without the colon and the asterisk, of which programs that pass on messages make pictures and bold letters. 41³
//! is 68921: enough for two bytes, in 16.5 bits.

/// The signs by their value.
const SIGNS: &[u8; 41] = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ$+-./";

/// How many there are.
const BASE: u32 = 41;

/// How many bytes fit into so many signs.
pub(crate) const fn bytes_in(signs: usize) -> usize {
    signs / 3 * 2
}

/// Bytes as signs.
pub(crate) fn written(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len().div_ceil(2).saturating_mul(3));
    let mut write = |mut value: u32, count: usize| {
        for _ in 0..count {
            text.push(sign(value % BASE));
            value /= BASE;
        }
    };
    for pair in bytes.chunks(2) {
        match *pair {
            [high, low] => write(u32::from(high) * 256 + u32::from(low), 3),
            [last] => write(u32::from(last), 2),
            _ => {}
        }
    }
    text
}

fn sign(value: u32) -> char {
    let at = usize::try_from(value).unwrap_or_default();
    SIGNS.get(at).map_or('0', |sign| char::from(*sign))
}

/// The bytes that were written as these signs; nothing where they are none.
pub(crate) fn read(text: &str) -> Option<Vec<u8>> {
    let mut bytes = Vec::with_capacity(bytes_in(text.len()).saturating_add(1));
    for signs in text.as_bytes().chunks(3) {
        let mut value = 0;
        for sign in signs.iter().rev() {
            let digit = SIGNS.iter().position(|it| it == sign)?;
            value = value * BASE + u32::try_from(digit).ok()?;
        }
        match signs.len() {
            3 => bytes.extend(u16::try_from(value).ok()?.to_be_bytes()),
            2 => bytes.push(u8::try_from(value).ok()?),
            _ => return None,
        }
    }
    Some(bytes)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    /// By hand: 0x4142 is 16706 = 19 + 41·(38 + 41·9), and 0xFF is 255 = 9 + 41·6.
    #[test]
    fn a_pair_worked_by_hand() {
        assert_eq!(written(b"AB"), "J-9");
        assert_eq!(written(&[0xFF]), "96");
        assert_eq!(written(&[0xFF, 0xFF]), "H/-", "the largest pair");
    }

    #[test]
    fn what_stands_for_no_bytes_is_nothing() {
        // too large for a pair, too large for a byte, a sign that stands alone, strange signs
        for text in ["///", "//", "A", "AAAA", "a00", "00:", "Ω0"] {
            assert_eq!(read(text), None, "{text}");
        }
    }

    proptest! {
        #[test]
        fn bytes_come_back(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
            let text = written(&bytes);
            prop_assert!(bytes_in(text.len()) >= bytes.len() & !1, "no more signs than is said");
            prop_assert_eq!(read(&text), Some(bytes));
        }

        #[test]
        fn any_text_is_read(text in ".*") {
            // what is read at all is written so, and not in another way
            if let Some(bytes) = read(&text) {
                prop_assert_eq!(written(&bytes), text);
            }
        }
    }
}
