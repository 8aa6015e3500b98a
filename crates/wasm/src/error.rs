//! Why there is no answer, as JavaScript throws it.

use js_sys::{Error, JSON, Object};
use quietpin_core::plan::ReadError;
use wasm_bindgen::prelude::*;

/// An `Error` whose message is for a person and whose further properties (`kind`, …) are for a program.
pub(crate) fn thrown(problem: &ReadError) -> JsValue {
    let error = Error::new(&problem.to_string());
    error.set_name("PlanError");
    // by way of JSON: the version of a strange file may be larger than a safe integer
    let details = serde_json::to_string(problem).ok().and_then(|text| JSON::parse(&text).ok());
    if let Some(details) = details.as_ref().and_then(|details| details.dyn_ref::<Object>()) {
        Object::assign(&error, details);
    }
    error.into()
}
