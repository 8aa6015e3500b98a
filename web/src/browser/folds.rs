//! Which folds were opened, by their names: one that is opened on a card is open on the next one like it, and after a reload.

use std::cell::RefCell;

thread_local! {
    static OPEN: RefCell<Option<Vec<String>>> = const { RefCell::new(None) };
}

const KEPT: &str = "quietpin.folds";

fn storage() -> Option<web_sys::Storage> {
    web_sys::window()?.session_storage().ok()?
}

/// Whether the fold of this name was left open.
pub(crate) fn is_open(name: &str) -> bool {
    OPEN.with_borrow_mut(|open| opened(open).iter().any(|it| it == name))
}

/// Remembers how the fold of this name stands now.
pub(crate) fn remember(name: &str, is_open: bool) {
    let kept = OPEN.with_borrow_mut(|open| {
        let open = opened(open);
        open.retain(|it| it != name);
        if is_open {
            open.push(name.to_owned());
        }
        open.join("\n")
    });
    if let Some(storage) = storage() {
        // it is a convenience: a browser that keeps nothing opens them folded
        storage.set_item(KEPT, &kept).ok();
    }
}

/// Those that are open; what was left open before the page was loaded again, at first.
fn opened(open: &mut Option<Vec<String>>) -> &mut Vec<String> {
    open.get_or_insert_with(|| {
        let kept = storage().and_then(|it| it.get_item(KEPT).ok()?).unwrap_or_default();
        kept.split('\n').map(str::to_owned).collect()
    })
}
