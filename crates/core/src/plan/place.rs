//! The way to a text of the plan by its path.

use super::{
    MOST_ENTRIES,
    record::{Slot, View},
};

/// The text at `path` in a record.
pub(super) fn view<'a>(fields: Vec<(&'static str, View<'a>)>, path: &str) -> Option<&'a str> {
    let (name, rest) = path.split_once('.').unwrap_or((path, ""));
    match fields.into_iter().find(|(field, _)| *field == name)?.1 {
        View::Text(text) => rest.is_empty().then_some(text),
        View::List(texts) => {
            let at: usize = rest.parse().ok()?;
            texts.get(at).map(String::as_str).or((at < MOST_ENTRIES).then_some(""))
        }
    }
}

/// The place at `path` in a record; a list grows to reach it.
pub(super) fn slot<'a>(
    fields: Vec<(&'static str, Slot<'a>)>,
    path: &str,
) -> Option<&'a mut String> {
    let (name, rest) = path.split_once('.').unwrap_or((path, ""));
    match fields.into_iter().find(|(field, _)| *field == name)?.1 {
        Slot::Text(text) => rest.is_empty().then_some(text),
        Slot::List(texts) => {
            let at: usize = rest.parse().ok().filter(|at| *at < MOST_ENTRIES)?;
            if texts.len() <= at {
                texts.resize(at + 1, String::new());
            }
            texts.get_mut(at)
        }
    }
}
