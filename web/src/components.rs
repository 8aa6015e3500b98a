//! The parts the page is made of: plain functions, but where a part keeps something of its own, or is worth keeping as
//! it is. Each component costs kilobytes.

mod answer;
mod bench;
mod card;
mod checklist;
mod controls;
mod details;
mod dialog;
mod field;
mod figures;
mod findings;
mod fold;
mod harness;
mod line;
mod list;
mod part;
mod pin_table;
mod row;
mod share;
mod sheet;
mod working;

use std::rc::Rc;

pub(crate) use answer::{Told, answer_view};
pub(crate) use bench::bench_view;
pub(crate) use card::{bar, card_view};
pub(crate) use checklist::checklist_view;
pub(crate) use controls::{button, link_to, sending};
pub(crate) use details::{more, numbers};
pub(crate) use dialog::{Plans, file_input, open_file, save, whole_car};
pub(crate) use field::{FieldPlace, Props as FieldProps, field_view};
pub(crate) use findings::{found, found_here};
pub(crate) use fold::{fold, fold_while, lazy_fold};
pub(crate) use harness::{harness_lists, labels_view};
pub(crate) use list::{found_view, list};
pub(crate) use part::{Drawn, is_as_before, parts};
pub(crate) use pin_table::pin_table;
pub(crate) use row::row;
pub(crate) use share::{share, take_links};
pub(crate) use sheet::sheet;
use yew::UseReducerDispatcher;

use crate::state::State;

/// Where a component sends what was done.
pub(crate) type Dispatch = UseReducerDispatcher<State>;

/// What the page shows, and where it sends what was done.
#[derive(Clone)]
pub(crate) struct Page {
    pub(crate) state: Rc<State>,
    pub(crate) send: Dispatch,
}

impl PartialEq for Page {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.state, &other.state)
    }
}
