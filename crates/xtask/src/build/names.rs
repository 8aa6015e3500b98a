//! The names by which the program and its JavaScript know each other.

use std::collections::BTreeMap;

/// wasm-bindgen ends each name with a hash of 16 digits, which no compression makes smaller. A count of the same length
/// tells the names apart as well.
pub(super) fn shorten(wasm: &mut [u8], glue: &mut String) {
    let mut script = std::mem::take(glue).into_bytes();
    let mut counts = BTreeMap::new();
    for hash in hashes(&mut script) {
        let next = counts.len();
        let count = counts.entry(hash.to_vec()).or_insert_with(|| format!("{next:0HASH$}"));
        hash.copy_from_slice(count.as_bytes());
    }
    for hash in hashes(wasm) {
        if let Some(count) = counts.get(hash) {
            hash.copy_from_slice(count.as_bytes());
        }
    }
    // Digits were put in place of digits.
    *glue = String::from_utf8_lossy(&script).into_owned();
}

const HASH: usize = 16;

/// The hexadecimal numbers of that length that end a name.
fn hashes(text: &mut [u8]) -> impl Iterator<Item = &mut [u8]> {
    let is_digit = |byte: &u8| matches!(byte, b'0'..=b'9' | b'a'..=b'f');
    let mut ends_name = false;
    text.chunk_by_mut(move |one, next| is_digit(one) == is_digit(next)).filter(move |run| {
        let is_ending = std::mem::replace(&mut ends_name, matches!(run.last(), Some(b'_' | b'h')));
        is_ending && run.len() == HASH && run.first().is_some_and(is_digit)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_sides_get_the_same_names() {
        let mut wasm =
            b"\0__wbg_body_5f971cbc6950ca4f\x01 invoke__h0123456789abcdef, kept_0123456789abcde0"
                .to_vec();
        let mut glue =
            "__wbg_body_5f971cbc6950ca4f: invoke__h0123456789abcdef, __wbg_body_5f971cbc6950ca4f"
                .to_owned();
        shorten(&mut wasm, &mut glue);
        assert_eq!(
            glue,
            "__wbg_body_0000000000000000: invoke__h0000000000000001, __wbg_body_0000000000000000"
        );
        assert_eq!(
            wasm,
            b"\0__wbg_body_0000000000000000\x01 invoke__h0000000000000001, kept_0123456789abcde0",
            "what the JavaScript does not name is left alone"
        );
    }
}
