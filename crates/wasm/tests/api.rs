//! The API as JavaScript sees it, in a browser.
#![cfg(target_arch = "wasm32")]
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test fails by them")]

use js_sys::{Array, Error, Function, JSON, Object, Reflect};
use quietpin_core::{plan, report::report};
use wasm_bindgen::prelude::*;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

const PLAN: &str = r#"{
  "quietpin": 1,
  "name": "Hill-climb special",
  "conditions": {"charging": "14,4 V", "cold": -10},
  "engine": {"cylinders": 6, "order": "1-5-3-6-2-4"},
  "channels": {"coils_wired": ["1", "", "3"]},
  "outputs": [{"name": "A1", "stage": "half-bridge"}],
  "loads": [{"name": "idle valve", "output": "A1", "far_end": "ground"}]
}"#;

/// A value as JavaScript writes it in source.
fn script(source: &str) -> JsValue {
    Function::new_no_args(&format!("return {source}")).call0(&JsValue::NULL).unwrap()
}

fn get(value: &JsValue, name: &str) -> JsValue {
    Reflect::get(value, &name.into()).unwrap()
}

fn json(value: &JsValue) -> serde_json::Value {
    serde_json::from_str(&String::from(JSON::stringify(value).unwrap())).unwrap()
}

/// What was thrown is an `Error` with this kind and a message with this in it.
#[track_caller]
fn check_thrown(result: Result<JsValue, JsValue>, kind: &str, part: &str) {
    let error = match result {
        Ok(value) => panic!("{kind} is not thrown: {value:?}"),
        Err(error) => error.dyn_into::<Error>().unwrap(),
    };
    let message = String::from(error.message());
    assert_eq!(get(&error, "kind").as_string().as_deref(), Some(kind), "{message}");
    assert!(message.contains(part), "{part}: {message}");
    assert_eq!(String::from(error.name()), "PlanError", "{message}");
}

#[wasm_bindgen_test]
fn a_plan_goes_to_javascript_and_comes_back() {
    let object = quietpin_wasm::parse(&PLAN.into()).unwrap();
    let native = plan::parse(PLAN).unwrap();
    assert_eq!(json(&object), serde_json::to_value(&native).unwrap(), "the same plan");
    let text = String::from(JSON::stringify(&object).unwrap());
    assert_eq!(plan::parse(&text).unwrap(), native, "and the same again");
    let temperatures = get(&object, "temperatures");
    assert_eq!(get(&temperatures, "cold").as_string().as_deref(), Some("-10"), "as a text");
}

#[wasm_bindgen_test]
fn a_report_is_what_the_core_says() {
    let object = quietpin_wasm::report(&quietpin_wasm::parse(&PLAN.into()).unwrap()).unwrap();
    let native = report(&plan::parse(PLAN).unwrap());
    // JavaScript writes 720 for 720.0: the numbers are compared, not their texts
    let expected = JSON::parse(&serde_json::to_string(&native).unwrap()).unwrap();
    assert_eq!(json(&object), json(&expected), "the same report");
    assert!(Array::is_array(&get(&object, "findings")), "lists are arrays");
    assert!(get(&object, "fields").is_instance_of::<Object>(), "maps are plain objects");
}

#[wasm_bindgen_test]
fn a_text_that_is_no_plan_is_refused() {
    let parse = |text: &str| quietpin_wasm::parse(&text.into());
    check_thrown(parse(""), "not-json", "JSON");
    check_thrown(parse("\u{0}\u{1}\u{fffd} garbage"), "not-json", "JSON");
    check_thrown(parse(&"[".repeat(200_000)), "not-json", "JSON");
    check_thrown(parse(&" ".repeat(10_000_000)), "too-large", "10000000 bytes");
    // more bytes than units
    check_thrown(parse(&"Ω".repeat(600_000)), "too-large", "1200000 bytes");
    check_thrown(parse("[]"), "not-a-plan", "not an object");
    check_thrown(parse(r#"{"colour": "red"}"#), "not-a-plan", "version");
    check_thrown(parse(r#"{"quietpin": 99, "later": {}}"#), "newer", "newer");
    check_thrown(parse(r#"{"quietpin": 18446744073709551615}"#), "newer", "newer");
}

#[wasm_bindgen_test]
fn what_is_no_text_is_refused() {
    for value in ["undefined", "null", "42", "{}", "Symbol()", "10n", "new String('{}')"] {
        check_thrown(quietpin_wasm::parse(&script(value)), "not-a-plan", "not a text");
    }
}

#[wasm_bindgen_test]
fn an_object_that_is_no_plan_is_refused() {
    let check = |source: &str, kind, part| {
        check_thrown(quietpin_wasm::report(&script(source)), kind, part);
    };
    check("undefined", "not-a-plan", "not an object");
    check("null", "not-a-plan", "not an object");
    check("42", "not-a-plan", "not an object");
    check("() => 1", "not-a-plan", "not an object");
    check("[]", "not-a-plan", "not an object");
    check("({})", "not-a-plan", "version");
    check("({quietpin: 99})", "newer", "newer");
    check("({quietpin: 1n})", "not-a-plan", "JSON");
    check("({quietpin: 1, notes: 'x'.repeat(10000000)})", "too-large", "bytes");
    check(
        "(() => { const it = {quietpin: 1}; it.engine = it; return it })()",
        "not-a-plan",
        "JSON",
    );
    check("({quietpin: 1, get engine() { throw new Error('no') }})", "not-a-plan", "JSON");
    check("new Proxy({}, {ownKeys() { throw 1 }})", "not-a-plan", "JSON");
}

#[wasm_bindgen_test]
fn what_has_no_place_in_a_plan_is_kept_and_told() {
    for (source, path) in [
        ("({quietpin: 2, engine: 6})", "engine"),
        ("({quietpin: 2, engine: {cylindres: '6'}})", "engine.cylindres"),
        ("({quietpin: 2, outputs: {name: 'A1'}})", "outputs.name"),
        ("({quietpin: 2, loads: [{name: {first: 'fan'}}]})", "loads.0.name.first"),
    ] {
        let report = json(&quietpin_wasm::report(&script(source)).unwrap());
        let found = report.pointer("/findings/0/message").unwrap();
        assert_eq!(
            found.get("code").and_then(|it| it.as_str()),
            Some("field.no-place"),
            "{source}"
        );
        assert!(found.to_string().contains(path), "{path} is not in {found}");
    }
}

#[wasm_bindgen_test]
fn an_object_that_nests_without_end_is_refused() {
    for depth in [1_000, 1_000_000] {
        let nested = format!(
            "(() => {{ let it = 1; for (let i = 0; i < {depth}; i++) it = [it]; return {{quietpin: 1, engine: it}} }})()"
        );
        let error = quietpin_wasm::report(&script(&nested)).unwrap_err();
        let kind = get(&error, "kind").as_string();
        assert!(
            matches!(kind.as_deref(), Some("not-json" | "not-a-plan" | "too-large")),
            "{kind:?} at {depth}"
        );
    }
}

#[wasm_bindgen_test]
fn the_fields_are_told() {
    let fields = json(&quietpin_wasm::fields().unwrap());
    let fields = fields.as_array().unwrap();
    assert_eq!(fields.len(), quietpin_core::schema::places().count(), "all of them");
    let path = Some(serde_json::json!("battery.charging"));
    let charging = fields.iter().find(|field| field.get("path") == path.as_ref()).unwrap();
    let text = |place: &str| charging.pointer(place).and_then(|text| text.as_str());
    assert_eq!(text("/takes/kind"), Some("quantity"), "what it takes");
    assert_eq!(text("/takes/unit"), Some("V"), "in which unit");
    assert_eq!(text("/assumed/text"), Some("14.8 V"), "what is assumed");
    assert!(text("/measure").is_some_and(|how| how.contains("Meter")), "how to measure it");
}

#[wasm_bindgen_test]
fn the_version_is_the_workspaces() {
    assert_eq!(quietpin_wasm::version(), env!("CARGO_PKG_VERSION"), "one version for all");
}
