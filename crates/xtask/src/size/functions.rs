//! The functions of a WebAssembly module, by size.

use anyhow::Result;
use std::collections::BTreeMap;
use wasmparser::{KnownCustom, Name, NameSectionReader, Parser, Payload, TypeRef};

/// One function of the module.
#[derive(Debug)]
pub(super) struct Function {
    pub(super) name: String,
    pub(super) bytes: usize,
}

/// All functions, the largest first.
pub(super) fn by_size(wasm: &[u8]) -> Result<Vec<Function>> {
    let (mut names, mut sizes, mut imported) = (BTreeMap::new(), Vec::new(), 0_u32);
    for payload in Parser::new(0).parse_all(wasm) {
        match payload? {
            Payload::ImportSection(imports) => {
                for import in imports.into_imports() {
                    imported +=
                        u32::from(matches!(import?.ty, TypeRef::Func(_) | TypeRef::FuncExact(_)));
                }
            }
            Payload::CodeSectionEntry(body) => sizes.push(body.range().len()),
            Payload::CustomSection(section) => {
                if let KnownCustom::Name(reader) = section.as_known() {
                    names = function_names(reader)?;
                }
            }
            _ => {}
        }
    }
    // Imported functions come first in the numbering, and have no body here.
    let numbered = (imported..).zip(sizes);
    let mut functions: Vec<_> =
        numbered.map(|(index, bytes)| Function { name: name(&names, index), bytes }).collect();
    functions.sort_by(|a, b| b.bytes.cmp(&a.bytes).then_with(|| a.name.cmp(&b.name)));
    Ok(functions)
}

fn name(names: &BTreeMap<u32, String>, index: u32) -> String {
    names.get(&index).cloned().unwrap_or_else(|| format!("function {index}"))
}

fn function_names(reader: NameSectionReader<'_>) -> Result<BTreeMap<u32, String>> {
    let mut names = BTreeMap::new();
    for subsection in reader {
        let Name::Function(map) = subsection? else { continue };
        for naming in map {
            let naming = naming?;
            // Without the hash that the compiler ends a name with.
            names.insert(naming.index, format!("{:#}", rustc_demangle::demangle(naming.name)));
        }
    }
    Ok(names)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// One import, then a body of 2 bytes (no locals, end) and one of 4 (a drop of a zero), with the name `small`
    /// for the first; written by hand from the binary format of the WebAssembly core specification.
    const MODULE: [u8; 57] = [
        0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00, // magic, version
        0x01, 0x04, 0x01, 0x60, 0x00, 0x00, // one type: nothing to nothing
        0x02, 0x07, 0x01, 0x01, b'm', 0x01, b'f', 0x00, 0x00, // import m.f
        0x03, 0x03, 0x02, 0x00, 0x00, // two functions of that type
        0x0a, 0x0a, 0x02, 0x02, 0x00, 0x0b, 0x05, 0x00, 0x41, 0x00, 0x1a, 0x0b, // bodies
        0x00, 0x0f, 0x04, b'n', b'a', b'm', b'e', 0x01, 0x08, 0x01, 0x01, 0x05, b's', b'm', b'a',
        b'l', b'l',
    ];

    #[test]
    fn sizes_go_with_names_and_the_largest_is_first() {
        let functions = by_size(&MODULE).unwrap();
        let told: Vec<_> =
            functions.iter().map(|function| (function.name.as_str(), function.bytes)).collect();
        assert_eq!(told, [("function 2", 5), ("small", 2)], "the import is number 0");
    }
}
