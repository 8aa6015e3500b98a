//! Which folds were opened, by their names: one that is opened on a card is open on the next one like it, and after a reload.

use std::{cell::RefCell, collections::BTreeSet};

thread_local! {
    static OPEN: RefCell<Option<BTreeSet<String>>> = const { RefCell::new(None) };
}

const KEPT: &str = "quietpin.folds";

fn storage() -> Option<web_sys::Storage> {
    web_sys::window()?.session_storage().ok()?
}

fn with<T>(then: impl FnOnce(&mut BTreeSet<String>) -> T) -> T {
    OPEN.with_borrow_mut(|open| {
        then(open.get_or_insert_with(|| {
            let kept = storage().and_then(|it| it.get_item(KEPT).ok()?).unwrap_or_default();
            kept.split('\n').filter(|it| !it.is_empty()).map(str::to_owned).collect()
        }))
    })
}

/// Whether the fold of this name was left open.
pub(crate) fn is_open(name: &str) -> bool {
    with(|open| open.contains(name))
}

/// Remembers how the fold of this name stands now.
pub(crate) fn remember(name: &str, is_open: bool) {
    let kept = with(|open| {
        if is_open {
            open.insert(name.to_owned());
        } else {
            open.remove(name);
        }
        open.iter().map(String::as_str).collect::<Vec<_>>().join("\n")
    });
    if let Some(storage) = storage() {
        // it is a convenience: a browser that keeps nothing opens them folded
        storage.set_item(KEPT, &kept).ok();
    }
}
