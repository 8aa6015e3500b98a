//! The names by which the program and its JavaScript know each other.

use std::collections::BTreeMap;

/// What the binder begins such a name with; others, as that of a part which is fetched, are known elsewhere too.
const BOUND: &str = "__wb";

/// The binder's names are long, and end with a hash, which no compression makes smaller; a count tells them apart as
/// well. `names` are those under which the program asks for its imports; the script with the same ones in it.
pub(super) fn shorten<'a>(names: impl Iterator<Item = &'a mut String>, script: &str) -> String {
    let mut short = BTreeMap::new();
    for name in names.filter(|name| name.starts_with(BOUND)) {
        let count = short.len();
        let given = short.entry(name.clone()).or_insert_with(|| format!("b{count}"));
        name.clone_from(given);
    }
    let is_of_name = |letter: u8| letter.is_ascii_alphanumeric() || letter == b'_';
    let words = script.as_bytes().chunk_by(|one, next| is_of_name(*one) == is_of_name(*next));
    // it is parted where a letter of a name stands beside another sign, so no character is
    let words = words.map(String::from_utf8_lossy);
    words.map(|word| short.get(&*word).cloned().unwrap_or_else(|| word.into_owned())).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_sides_get_the_same_names() {
        let mut names = ["__wbg_body_5f971cbc6950ca4f", "__wasm_split_load", "__wbindgen_cast_1"]
            .map(str::to_owned);
        let script = "{ __wbg_body_5f971cbc6950ca4f: 1, __wbindgen_cast_1: “__wbg_body”, __wasm_split_load: 2 }";
        let script = shorten(names.iter_mut(), script);
        assert_eq!(names, ["b0", "__wasm_split_load", "b1"]);
        assert_eq!(script, "{ b0: 1, b1: “__wbg_body”, __wasm_split_load: 2 }");
    }
}
