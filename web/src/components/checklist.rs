//! Things to be done one by one, ticked off with a thumb or, on paper, with a pencil.

use quietpin_core::{
    channels::tapped,
    report::{Checklist, Item},
};

use super::{Page, sending};
use crate::{
    element::{View, all, el, keyed, on_click, several},
    state::Action,
};

/// A longer list is folded.
const MOST_OPEN: usize = 24;

/// A list, folded until it is wanted.
pub(crate) fn checklist_view(page: &Page, list: &Checklist) -> View {
    let items = list.items.iter().map(|it| item(page, &list.path, it));
    // what the card is there for is open, as far as it can be seen over
    let is_open = list.is_main && list.items.len() <= MOST_OPEN;
    el!("details", "class" = "rare checklist", "open" = is_open.then_some("");
        el!("summary"; &list.title.text),
        el!("ul"; all(items)),
    )
}

fn item(page: &Page, path: &str, item: &Item) -> View {
    let done = page.state.plan.get(path).unwrap_or_default();
    let tick = Action::Choose(path.to_owned(), tapped(done, &item.name));
    let (checked, sign) = if item.is_done { ("true", "☑") } else { ("false", "☐") };
    let label = several!(
        el!("span", "class" = "box", "aria-hidden" = "true"; sign),
        el!("span"; &item.words.text),
    );
    let box_ =
        el!("button", "type" = "button", "role" = "checkbox", "aria-checked" = checked; label);
    keyed(&item.name, el!("li"; on_click(box_, sending(&page.send, tick))))
}
