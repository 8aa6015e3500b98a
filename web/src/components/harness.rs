//! The harness's lists: as files for a spreadsheet, and its labels on paper.

use std::rc::Rc;

use quietpin_core::report::lists::{HarnessList, csv, labels};
use yew::Callback;

use super::{Page, button, link_to};
use crate::{
    address::LABELS,
    browser::{files, print},
    element::{View, all, el, text},
    state::{Action, Notice},
};

/// Every list as a file, and the way to the labels.
pub(crate) fn harness_lists(page: &Page) -> View {
    if page.state.report.sections.iter().all(|it| it.id != "wires" || it.answers.len() < 2) {
        return crate::element::nothing();
    }
    let buttons = HarnessList::ALL.map(|list| {
        let (state, send) = (Rc::clone(&page.state), page.send.clone());
        let save = Callback::from(move |_| {
            let name = files::named(&state.plan.name, &[list.name(), ".csv"].concat());
            let made = csv(list, &state.plan, &state.report);
            if files::save_as(&name, &made, "text/csv").is_err() {
                let text = "This browser did not save the file.".to_owned();
                send.dispatch(Action::Say(Notice { text, kept: None }));
            }
        });
        button(Some("quiet"), format!("Save {} (CSV)", list.name()), save)
    });
    el!("div", "class" = "lists";
        el!("div", "class" = "buttons"; all(buttons)),
        el!("p"; link_to(LABELS, text("Labels to print"))),
    )
}

/// Both labels of each wire, to be printed and cut apart.
pub(crate) fn labels_view(page: &Page) -> View {
    let one = |label: String| el!("li"; label);
    el!("article", "class" = "car-sheet", "aria-labelledby" = "title";
        el!("h1", "id" = "title", "tabindex" = "-1"; "Labels, two for each wire"),
        el!("div", "class" = "buttons not-printed";
            button(None, "Print these labels", Callback::from(|_| print::print()))),
        el!("ul", "class" = "labels"; all(labels(&page.state.plan).into_iter().map(one))),
    )
}
