//! The core for JavaScript: translates, and computes nothing.
//!
//! Whatever is handed in, a function returns its answer or throws a `PlanError`, which tells its kind and what
//! would be right; it never traps. The types of the plan, the report and the errors are generated from the core
//! (`types.d.ts`) and are part of the package's own types.

mod error;
mod field;
#[cfg(all(test, not(target_arch = "wasm32")))]
mod types;

use js_sys::{JSON, JsString};
use quietpin_core::{
    plan::{self, MOST_BYTES, ReadError},
    report,
};
use serde::Serialize;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::prelude::*;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = include_str!("../types.d.ts");

/// Reads the text of a plan file. Throws a `PlanError` where it is not a plan.
#[wasm_bindgen(unchecked_return_type = "Plan")]
pub fn parse(
    #[wasm_bindgen(unchecked_param_type = "string")] text: &JsValue,
) -> Result<JsValue, JsValue> {
    let text = text_of(text, "it is not a text.").map_err(|it| error::thrown(&it))?;
    value(&plan::parse(&text).map_err(|it| error::thrown(&it))?)
}

/// The report of a plan, as `parse` gives it. Throws a `PlanError` where it is not a plan.
///
/// The plan goes the way of a plan file, so that both doors let in the same, and an object that refers to itself,
/// throws when it is read, or nests without end is refused like any other.
#[wasm_bindgen(unchecked_return_type = "Report")]
pub fn report(
    #[wasm_bindgen(unchecked_param_type = "Plan")] plan: &JsValue,
) -> Result<JsValue, JsValue> {
    let text = JSON::stringify(plan)
        .map_err(|_| error::thrown(&no_plan("it can't be written as JSON.")))?;
    let text = text_of(&text, "it is not an object.").map_err(|it| error::thrown(&it))?;
    let plan = plan::parse(&text).map_err(|it| error::thrown(&it))?;
    value(&report::report(&plan))
}

/// Every field of a plan, in the order in which a fitter can know the answers: what it is called, what it takes,
/// what is assumed when it is blank, how to measure it.
#[wasm_bindgen(unchecked_return_type = "Field[]")]
pub fn fields() -> Result<JsValue, JsValue> {
    value(&field::all())
}

/// The version of this package.
#[wasm_bindgen]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").to_owned()
}

/// The text in a JavaScript value; one that no plan can have is refused before it is copied.
fn text_of(value: &JsValue, problem: &str) -> Result<String, ReadError> {
    // JSON gives undefined for what it has no word for
    let text = value.dyn_ref::<JsString>().ok_or_else(|| no_plan(problem))?;
    let units = usize::try_from(text.length()).unwrap_or(usize::MAX);
    // a unit of UTF-16 takes at least a byte
    if units > MOST_BYTES {
        return Err(ReadError::TooLarge { bytes: units });
    }
    Ok(String::from(text))
}

fn no_plan(detail: &str) -> ReadError {
    ReadError::NotAPlan { detail: detail.to_owned() }
}

/// Plain objects and arrays, as JSON has them.
fn value(value: &impl Serialize) -> Result<JsValue, JsValue> {
    value.serialize(&Serializer::json_compatible()).map_err(JsValue::from)
}
