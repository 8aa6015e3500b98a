//! Plans kept in the browser.
//!
//! Storage may be denied, full, or hold a text that this version can't read: none of these may cost the
//! fitter anything typed.

use quietpin_core::plan::{self, Plan};

const PLAN: &str = "quietpin.plan.";
const OPEN: &str = "quietpin.open";

/// What is kept under a key.
pub(crate) enum Stored {
    Nothing,
    Plan(Box<Plan>),
    /// A text that is no plan, and why; it stays where it is.
    Unreadable(String, plan::ReadError),
}

/// The browser would not keep it: denied, or full.
#[derive(Debug)]
pub(crate) struct Refused;

/// A plan in the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Kept {
    pub(crate) key: String,
    pub(crate) name: String,
}

fn storage() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok()?
}

/// The plan kept under a key.
pub(crate) fn read(key: &str) -> Stored {
    let text = storage().and_then(|storage| storage.get_item(&format!("{PLAN}{key}")).ok()?);
    match text {
        None => Stored::Nothing,
        Some(text) => match plan::parse(&text) {
            Ok(plan) => Stored::Plan(Box::new(plan)),
            Err(error) => Stored::Unreadable(text, error),
        },
    }
}

/// Keeps a plan under a key, and remembers it as the one that is open.
pub(crate) fn write(key: &str, plan: &Plan) -> Result<(), Refused> {
    let storage = storage().ok_or(Refused)?;
    storage.set_item(&format!("{PLAN}{key}"), &plan::write(plan)).map_err(|_| Refused)?;
    storage.set_item(OPEN, key).map_err(|_| Refused)
}

/// Takes a plan out.
pub(crate) fn remove(key: &str) {
    if let Some(storage) = storage() {
        // what can't be removed stays listed
        storage.remove_item(&format!("{PLAN}{key}")).ok();
    }
}

/// The key of the plan that was open last.
pub(crate) fn last_open() -> Option<String> {
    storage()?.get_item(OPEN).ok()?
}

/// The plans that are kept, by key.
pub(crate) fn list() -> Vec<Kept> {
    let mut kept: Vec<_> = keys()
        .into_iter()
        .map(|key| {
            let name = match read(&key) {
                Stored::Plan(plan) => plan.name.clone(),
                Stored::Nothing | Stored::Unreadable(..) => String::new(),
            };
            Kept { key, name }
        })
        .collect();
    kept.sort_by(|one, other| (one.key.len(), &one.key).cmp(&(other.key.len(), &other.key)));
    kept
}

/// A key under which nothing is kept yet.
pub(crate) fn free_key() -> String {
    let taken = keys();
    let mut number = taken.len() + 1;
    while taken.contains(&number.to_string()) {
        number += 1;
    }
    number.to_string()
}

fn keys() -> Vec<String> {
    let Some(storage) = storage() else { return Vec::new() };
    let length = storage.length().unwrap_or(0);
    (0..length)
        .filter_map(|at| storage.key(at).ok()?)
        .filter_map(|key| key.strip_prefix(PLAN).map(str::to_owned))
        .collect()
}
