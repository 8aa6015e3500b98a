//! The JSON Schema of a plan file, published beside the page: it is made from the fields, and what it refuses is what the
//! report refuses, as far as a schema can know. `tests/browser/schema.test.mjs` holds every example against it with a
//! general validator.
#![expect(clippy::expect_used, reason = "a test fails by it")]

use std::collections::BTreeMap;

use quietpin_core::{
    plan::{VERSION, parse},
    report::report,
    schema::{Kind, Part, Place},
};
use quietpin_tests::{blessed, plans};
use serde_json::{Map, Value, json};

/// What is refused of a plan by what a schema can know: these words, at these places.
const KNOWN_BY_SCHEMA: [&str; 3] = ["field.unknown-choice", "field.not-whole", "field.no-place"];

fn schema() -> Value {
    let mut parts = Map::new();
    for part in Part::ALL {
        let record = record(*part);
        let shape =
            if part.is_list() { json!({ "type": "array", "items": record }) } else { record };
        parts.insert(part.name().into(), shape);
    }
    parts.insert(
        "quietpin".into(),
        json!({ "const": VERSION, "description": "Version of the format." }),
    );
    for (name, what) in [("name", "The plan’s name."), ("notes", "The fitter’s own notes.")] {
        parts.insert(name.into(), json!({ "type": "string", "description": what }));
    }
    json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A plan of Quietpin",
        "description": "Texts as they were typed: a quantity with its unit and, where it has one, its tolerance. What is not known is left out.",
        "type": "object",
        "required": ["quietpin"],
        "properties": parts,
        "additionalProperties": false,
    })
}

fn record(part: Part) -> Value {
    let fields: Map<_, _> = part
        .places()
        .map(|place| {
            let field = place.field();
            let one = text(place);
            let shape = if field.is_list {
                json!({ "type": "array", "items": one, "title": field.label })
            } else {
                one
            };
            (field.name.to_owned(), shape)
        })
        .collect();
    json!({ "type": "object", "properties": fields, "additionalProperties": false })
}

/// One text. A number without quotes is in the field's own unit; blanks and capitals make no difference to what is chosen.
fn text(place: Place) -> Value {
    let (field, measure) = (place.field(), place.measure());
    let mut shape = Map::new();
    shape.insert("title".into(), field.label.into());
    let help = [field.hint, measure].into_iter().filter(|it| !it.is_empty());
    let mut help: Vec<_> = help.map(str::to_owned).collect();
    if let Some(assumed) = field.assumed {
        help.push(format!("Left out: taken as {assumed} ({}).", place.basis()));
    }
    if !help.is_empty() {
        shape.insert("description".into(), help.join(" — ").into());
    }
    match field.kind {
        Kind::Choice(choices) => {
            let codes: Vec<_> = choices.iter().map(|it| Value::from(it.code)).collect();
            let labels: Vec<_> = choices.iter().map(|it| Value::from(it.label)).collect();
            shape.insert("enum".into(), codes.into());
            shape.insert("$comment".into(), json!({ "labels": labels }).to_string().into());
        }
        Kind::Whole(low, high) => {
            let number = json!({ "type": "integer", "minimum": low, "maximum": high });
            let digits = json!({ "type": "string", "pattern": r"^\s*([0-9]+\s*)?$" });
            shape.insert("anyOf".into(), json!([number, digits]));
        }
        Kind::Quantity { unit, low, high, .. } => {
            let number = json!({
                "type": "number", "minimum": low, "maximum": high,
                "description": format!("In {unit}."),
            });
            shape.insert("anyOf".into(), json!([number, { "type": "string" }]));
        }
        Kind::NameIn(part) => {
            shape.insert("type".into(), json!(["string", "number"]));
            shape.insert(
                "$comment".into(),
                format!("the name of one of the {}", part.name()).into(),
            );
        }
        Kind::Text | Kind::Row => {
            shape.insert("type".into(), json!(["string", "number"]));
        }
    }
    Value::Object(shape)
}

/// The places of each example at which the schema must refuse it: none where it is valid.
fn refused() -> Value {
    let mut all = BTreeMap::new();
    for example in plans::ALL {
        let plan = parse(example.text).expect(example.name);
        let mut paths: Vec<String> =
            plan.left_over().iter().map(|(path, _)| path.clone()).collect();
        let findings = report(&plan).findings;
        let told = findings.iter().filter(|it| KNOWN_BY_SCHEMA.contains(&it.message.code));
        paths.extend(told.map(|it| it.subject.clone()).filter(|it| it != "left_over"));
        paths.sort();
        if !paths.is_empty() {
            all.insert(example.name, paths);
        }
    }
    json!(all)
}

fn check(file: &str, made: &Value) {
    blessed(file, &format!("{made:#}\n"));
}

#[test]
fn the_published_schema_is_that_of_the_fields() {
    check("../web/static/plan.schema.json", &schema());
}

#[test]
fn what_the_schema_must_refuse_is_listed() {
    let refused = refused();
    assert!(refused.as_object().is_some_and(|it| it.len() > 3), "some examples have slips");
    check("plans-refused.json", &refused);
}
