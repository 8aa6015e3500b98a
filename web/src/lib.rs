//! The page: a form, the answers, the pictures. It computes nothing of the trade itself.
//!
//! A plan is edited through [`state`]; the report that follows from it is drawn by `questions`; all that
//! can fail outside stands in `browser`.

mod address;
mod answering;
mod app;
mod browser;
mod cards;
mod components;
mod element;
mod keeping;
mod pictures;
mod questions;
pub mod state;
mod words;

pub use answering::report_of;

/// Puts the page into the document.
pub fn start() {
    yew::Renderer::<app::App>::new().render();
}
