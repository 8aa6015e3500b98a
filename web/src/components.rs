//! The parts the page is made of.

mod answer;
mod dialog;
mod field;
mod figures;
mod findings;
mod working;

pub(crate) use answer::AnswerView;
pub(crate) use dialog::{Plans, open_file};
pub(crate) use field::FieldView;
pub(crate) use findings::FindingsView;
use working::WorkingView;

use std::rc::Rc;

use crate::state::State;
use yew::UseReducerDispatcher;

/// Where a component sends what was done.
pub(crate) type Dispatch = UseReducerDispatcher<State>;

/// The state, compared by its report and plan: both are shared, never copied.
#[derive(Clone)]
pub(crate) struct Shown(pub(crate) Rc<State>);

impl PartialEq for Shown {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}
