//! Whether a sentence gets a value for each of its gaps: asked by the compiler.
#![expect(
    clippy::indexing_slicing,
    reason = "the compiler has no other way to look at a text, and what is out of range does not compile"
)]

use super::Wording;

/// The sentence itself, where every gap of it is among these names. Anything else does not compile.
///
/// # Panics
/// Where a gap gets no value; as it is asked by the compiler alone, no program does.
pub const fn filled_by(wording: &'static Wording, names: &[&str]) -> &'static Wording {
    assert!(is_filled_by(wording, names), "a gap of this sentence gets no value");
    wording
}

/// Whether every gap of a sentence is among these names: asked by the compiler, wherever one is said.
pub const fn is_filled_by(wording: &Wording, names: &[&str]) -> bool {
    let text = wording.text.as_bytes();
    let mut at = 0;
    let mut each = true;
    while at < text.len() {
        if text[at] == b'{' {
            let end = end_of_name(text, at + 1);
            each = each && is_among(text, at + 1, end, names);
            at = end;
        }
        at += 1;
    }
    each
}

/// Whether every gap of a sentence is one of another sentence too: asked by the compiler, where one is said in fewer words.
pub(crate) const fn gaps_are_of(wording: &Wording, other: &Wording) -> bool {
    let (text, all) = (wording.text.as_bytes(), other.text.as_bytes());
    let mut at = 0;
    let mut each = true;
    while at < text.len() {
        if text[at] == b'{' {
            let end = end_of_name(text, at + 1);
            each = each && has_gap(all, text, at + 1, end);
            at = end;
        }
        at += 1;
    }
    each
}

const fn has_gap(all: &[u8], text: &[u8], start: usize, end: usize) -> bool {
    let mut at = 0;
    while at < all.len() {
        if all[at] == b'{' {
            let other = end_of_name(all, at + 1);
            if is_same(all, at + 1, other, text, start, end) {
                return true;
            }
        }
        at += 1;
    }
    false
}

const fn is_same(
    one: &[u8],
    one_start: usize,
    one_end: usize,
    other: &[u8],
    other_start: usize,
    other_end: usize,
) -> bool {
    if one_end - one_start != other_end - other_start {
        return false;
    }
    let mut at = 0;
    while at < one_end - one_start {
        if one[one_start + at] != other[other_start + at] {
            return false;
        }
        at += 1;
    }
    true
}

const fn end_of_name(text: &[u8], start: usize) -> usize {
    let mut end = start;
    while end < text.len() && text[end] != b'}' && text[end] != b'|' {
        end += 1;
    }
    end
}

const fn is_among(text: &[u8], start: usize, end: usize, names: &[&str]) -> bool {
    let mut at = 0;
    while at < names.len() {
        if stands_at(text, start, end, names[at].as_bytes()) {
            return true;
        }
        at += 1;
    }
    false
}

const fn stands_at(text: &[u8], start: usize, end: usize, name: &[u8]) -> bool {
    if end - start != name.len() {
        return false;
    }
    let mut at = 0;
    while at < name.len() {
        if text[start + at] != name[at] {
            return false;
        }
        at += 1;
    }
    true
}
