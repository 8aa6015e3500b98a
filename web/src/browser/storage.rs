//! Plans kept in the browser, each twice: in its simple storage, which answers at once and reaches the disk late; and in its
//! database, which is asked to have it on the disk (`web/static/second_copy.js`). The page reads the first alone: before it
//! starts, what is newer in the second is put there.
//!
//! Storage may be denied, full, or hold a text that this version can't read: none of these may cost the
//! fitter anything typed.

use std::{cmp::Ordering, rc::Rc};

use quietpin_core::plan::{self, Plan};
use wasm_bindgen::prelude::wasm_bindgen;

use crate::state::{
    Keep,
    copies::{text_of, time_of, valued},
};

const PLAN: &str = "quietpin.plan.";
const REMOVED: &str = "quietpin.removed.";
const ANSWERING: &str = "quietpin.answering.";
const OPEN: &str = "quietpin.open";

/// So many removed plans can be brought back.
const MOST_REMOVED: usize = 5;

#[wasm_bindgen]
extern "C" {
    /// Keeps the second copy of what is kept under a name.
    #[wasm_bindgen(js_namespace = wasm_bindgen, js_name = keep)]
    fn keep_second(name: &str, value: &str);
}

/// What is kept under a key.
pub(crate) enum Stored {
    Nothing,
    Plan(Box<Plan>),
    /// A text that is no plan, and why; it stays where it is.
    Unreadable(String, plan::ReadError),
}

/// A plan in the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Kept {
    pub(crate) key: String,
    /// When it was kept.
    time: u64,
    pub(crate) name: String,
}

/// The browser's storage as what keeps plans.
pub(crate) const KEEP: Keep = Keep {
    read: |key| item(&plan_name(key)),
    write,
    open: |key| {
        // where it is refused, another plan opens next time
        set(OPEN, key);
    },
    fresh: free_key,
    now,
    mark,
    is_marked: |key| item(&format!("{ANSWERING}{key}")).is_some(),
};

fn storage() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok()?
}

fn item(name: &str) -> Option<String> {
    storage()?.get_item(name).ok()?
}

fn set(name: &str, value: &str) -> bool {
    storage().is_some_and(|storage| storage.set_item(name, value).is_ok())
}

fn unset(name: &str) {
    if let Some(storage) = storage() {
        // what can't be removed stays listed
        storage.remove_item(name).ok();
    }
}

fn plan_name(key: &str) -> String {
    format!("{PLAN}{key}")
}

/// Whether another page kept a plan, or removed one.
pub(crate) fn is_of_plan(event: &web_sys::StorageEvent) -> bool {
    event.key().is_none_or(|name| name.starts_with(PLAN))
}

/// Marks a plan that is being answered. Where storage is denied, there is no plan to be opened next time either.
fn mark(key: &str, is_answering: bool) {
    let name = format!("{ANSWERING}{key}");
    if is_answering {
        set(&name, "");
    } else {
        unset(&name);
    }
}

/// The plan kept under a key.
pub(crate) fn read(key: &str) -> Stored {
    match item(&plan_name(key)) {
        None => Stored::Nothing,
        Some(value) => match plan::parse(text_of(&value)) {
            Ok(plan) => Stored::Plan(Box::new(plan)),
            Err(error) => Stored::Unreadable(text_of(&value).to_owned(), error),
        },
    }
}

/// Keeps a plan under a key, and remembers it as the one that is open. Removed plans make room for it.
fn write(key: &str, value: &str) -> bool {
    let name = plan_name(key);
    let is_kept = set(&name, value) || {
        keep_removed(0);
        set(&name, value)
    };
    if is_kept {
        keep_second(&name, value);
    }
    is_kept && set(OPEN, key)
}

const PAST: &str = "quietpin.past";

/// Between the plans of what can be taken back: no text of a plan holds it.
const NEXT: char = '\u{1e}';

/// More letters of it than this are not kept over a reload.
const MOST_OF_PAST: usize = 500_000;

/// Keeps what can be taken back for the time when the page is loaded again.
pub(crate) fn keep_past<'a>(key: &str, now: &Plan, past: impl Iterator<Item = &'a Rc<Plan>>) {
    let mut text = format!("{key}{NEXT}{}", plan::write(now));
    for plan in past {
        let plan = plan::write(plan);
        if text.len() + plan.len() > MOST_OF_PAST {
            break;
        }
        text.push(NEXT);
        text.push_str(&plan);
    }
    if let Some(session) = session() {
        // where it is refused, there is less to take back
        session.set_item(PAST, &text).ok();
    }
}

/// What could be taken back in this plan before the page was loaded, the last one last.
pub(crate) fn past(key: &str, now: &Plan) -> Vec<Rc<Plan>> {
    let Some(text) = session().and_then(|it| it.get_item(PAST).ok()?) else { return Vec::new() };
    let mut texts = text.split(NEXT);
    let is_of = texts.next() == Some(key)
        && texts.next().and_then(|it| plan::parse(it).ok()).as_ref() == Some(now);
    let plans = texts.filter(|_| is_of).map_while(|it| plan::parse(it).ok());
    let mut past: Vec<_> = plans.map(Rc::new).collect();
    past.reverse();
    past
}

fn session() -> Option<web_sys::Storage> {
    web_sys::window()?.session_storage().ok()?
}

/// Takes a plan out of the list; it can be brought back.
pub(crate) fn remove(key: &str) {
    let name = plan_name(key);
    mark(key, false);
    let Some(value) = item(&name) else { return };
    forget(&name);
    let value = valued(now(), text_of(&value));
    let removed = format!("{REMOVED}{key}");
    if set(&removed, &value) {
        keep_second(&removed, &value);
    }
    keep_removed(MOST_REMOVED);
}

/// Forgets what is kept under a name, in both copies.
fn forget(name: &str) {
    unset(name);
    keep_second(name, &valued(now(), ""));
}

/// Keeps so many removed plans, the last ones.
fn keep_removed(most: usize) {
    let removed = removed();
    let over = removed.len().saturating_sub(most);
    for it in removed.iter().rev().take(over) {
        forget(&format!("{REMOVED}{}", it.key));
    }
}

/// The plans that were removed, the last one first.
pub(crate) fn removed() -> Vec<Kept> {
    all(REMOVED, |one, other| other.time.cmp(&one.time))
}

/// Brings a removed plan back into the list; its key there.
pub(crate) fn bring_back(key: &str) -> Option<String> {
    let removed = format!("{REMOVED}{key}");
    let value = item(&removed)?;
    let is_taken = item(&plan_name(key)).is_some();
    let there = if is_taken { free_key() } else { key.to_owned() };
    let is_back = write(&there, &valued(now(), text_of(&value)));
    if is_back {
        forget(&removed);
    }
    is_back.then_some(there)
}

/// The key of the plan that was open last.
pub(crate) fn last_open() -> Option<String> {
    item(OPEN)
}

/// The plans that are kept, by key.
pub(crate) fn list() -> Vec<Kept> {
    all(PLAN, |one, other| (one.key.len(), &one.key).cmp(&(other.key.len(), &other.key)))
}

/// What is kept under names that begin so, in this order.
fn all(under: &str, order: fn(&Kept, &Kept) -> Ordering) -> Vec<Kept> {
    let mut all: Vec<_> = keys(under).into_iter().map(|key| kept(under, key)).collect();
    all.sort_by(order);
    all
}

fn kept(under: &str, key: String) -> Kept {
    let value = item(&format!("{under}{key}")).unwrap_or_default();
    let name = plan::parse(text_of(&value)).map_or_else(|_| String::new(), |plan| plan.name);
    Kept { key, time: time_of(&value), name }
}

impl Kept {
    /// A plan that may not be kept yet.
    pub(crate) fn open(key: &str, name: &str) -> Self {
        Self { key: key.to_owned(), time: 0, name: name.to_owned() }
    }
}

/// A key under which nothing was ever kept: no other page takes the same, and none that was removed is taken again.
pub(crate) fn free_key() -> String {
    now().to_string()
}

/// Microseconds: the clock gives the thousands, chance the rest. So two pages have no number in common.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "whole, and no less than 0"
)]
fn now() -> u64 {
    js_sys::Date::now() as u64 * 1000 + (js_sys::Math::random() * 1000.0) as u64
}

fn keys(under: &str) -> Vec<String> {
    let Some(storage) = storage() else { return Vec::new() };
    let length = storage.length().unwrap_or(0);
    (0..length)
        .filter_map(|at| storage.key(at).ok()?)
        .filter_map(|key| key.strip_prefix(under).map(str::to_owned))
        .collect()
}
