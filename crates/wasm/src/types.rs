//! Keeps `types.d.ts` what the core says it is.

use std::{any::TypeId, collections::BTreeMap, env, fs, path::Path};

use quietpin_core::{
    plan::ReadError,
    report::Report,
    schema::{Field, Kind, Part},
};
use ts_rs::{Config, TS, TypeVisitor};

use crate::field::Field as Told;

const HEAD: &str = "\
// Generated from the Rust types. After a change there: cargo xtask bless

/** What `parse` and `report` throw where there is no plan. Its `message` is for a person. */
export type PlanError = Error & ReadError;
";

/// Declarations by name, so that their order is no matter of chance.
struct Declarations {
    config: Config,
    types: BTreeMap<String, (TypeId, String)>,
}

impl TypeVisitor for Declarations {
    fn visit<T: TS + 'static + ?Sized>(&mut self) {
        // what has no file of its own is of the language: a string, a list
        if T::output_path().is_none() {
            return;
        }
        let name = T::ident(&self.config);
        let id = TypeId::of::<T::WithoutGenerics>();
        if let Some((known, _)) = self.types.get(&name) {
            assert_eq!(*known, id, "two types are called {name}");
            return;
        }
        let docs = T::docs().unwrap_or_default();
        let text = format!("\n{docs}export {}\n", T::decl(&self.config));
        self.types.insert(name, (id, text));
        T::visit_dependencies(self);
    }
}

fn types() -> String {
    let config = Config::default().with_large_int("number");
    let mut found = Declarations { config, types: BTreeMap::new() };
    found.visit::<Report>();
    found.visit::<ReadError>();
    found.visit::<Told>();
    let mut text = HEAD.to_owned() + &plan();
    for line in found.types.values().flat_map(|(_, declaration)| declaration.lines()) {
        text.push_str(line.trim_end());
        text.push('\n');
    }
    text
}

/// The plan, as its schema has it.
fn plan() -> String {
    let mut text = "
/**
 * Everything that was typed.
 */
export type Plan = {
/**
 * Version of the format.
 */
quietpin: number,
/**
 * The plan's name.
 */
name?: string,
/**
 * The fitter's own notes.
 */
notes?: string,
"
    .to_owned();
    for part in Part::ALL {
        let record = record_name(*part);
        let shape = if part.is_list() { format!("Array<{record}>") } else { record };
        text.extend([part.name(), "?: ", &shape, ",\n"]);
    }
    text += "};\n";
    for part in Part::ALL {
        text.extend(["\nexport type ", &record_name(*part), " = {\n"]);
        text.extend(part.fields().iter().map(member));
        text += "};\n";
    }
    text
}

/// `crank_sensor` is a `CrankSensor`, and `loads` are of `Load`.
fn record_name(part: Part) -> String {
    let name = if part.is_list() { part.name().trim_end_matches('s') } else { part.name() };
    let capital = |word: &str| {
        let mut letters = word.chars();
        letters.next().into_iter().flat_map(char::to_uppercase).chain(letters).collect::<String>()
    };
    name.split('_').map(capital).collect()
}

fn member(field: &Field) -> String {
    let Field { name, label, hint, .. } = field;
    let of = match field.kind {
        Kind::Choice(choices) => {
            let codes: Vec<_> = choices.iter().map(|it| format!("`{}`", it.code)).collect();
            format!(": {}", codes.join(", "))
        }
        Kind::Quantity { dimension, unit, low, high } => {
            format!(": {}, {low} to {high} {unit}", dimension.name())
        }
        Kind::Whole(low, high) => format!(": {low} to {high}"),
        Kind::Text | Kind::Row | Kind::NameIn(_) => String::new(),
    };
    let hint = if hint.is_empty() { String::new() } else { format!(" ({hint})") };
    let shape = if field.is_list { "Array<string>" } else { "string" };
    format!("/**\n * {label}{of}{hint}\n */\n{name}?: {shape},\n")
}

#[test]
fn types_for_javascript_are_current() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("types.d.ts");
    let types = types();
    if env::var_os("QUIETPIN_BLESS").is_some() {
        fs::write(&file, &types).expect("the file is written");
        return;
    }
    assert!(
        types == include_str!("../types.d.ts"),
        "crates/wasm/types.d.ts is not what the core says: QUIETPIN_BLESS=1 cargo test -p quietpin-wasm"
    );
}

#[test]
fn types_are_precise() {
    let types = types();
    for part in
        ["type Answer = ", "type Plan = ", "low?: Value,", "order?: string,", "\"kind\": \"newer\""]
    {
        assert!(types.contains(part), "{part} is missing in {types}");
    }
    for vague in [": any", "bigint", ": unknown", "undefined", ": object"] {
        assert!(!types.contains(vague), "{vague} says nothing in {types}");
    }
}
