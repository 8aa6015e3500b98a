//! The stages of the test run.

mod browser;
mod native;
mod page;

use super::Finding;
use super::count::Count;
use super::machine::Machine;
use anyhow::Result;

/// One part of the run.
pub(super) struct Stage {
    pub(super) name: &'static str,
    pub(super) run: fn(&Machine) -> Result<Finding>,
}

/// In the order in which a mistake is cheapest to find.
pub(super) const FOR_THIS_MACHINE: [Stage; 4] = [
    Stage { name: "Formatting", run: |_| quiet(native::formatting()) },
    Stage { name: "Lints", run: |_| quiet(native::lints()) },
    Stage { name: "Tests on this machine", run: |_| counted(native::tests()) },
    Stage { name: "Docs", run: |_| quiet(native::docs()) },
];

/// The page first: it takes longest, on one core.
pub(super) const FOR_THE_BROWSER: [Stage; 3] = [
    Stage { name: "Build of the page", run: |machine| quiet(page::build(machine)) },
    Stage { name: "Lints for wasm32", run: |machine| quiet(browser::lints(machine)) },
    Stage {
        name: "Tests of the JavaScript API in a browser",
        run: |machine| counted(browser::tests(machine)),
    },
];

/// What is done with the built page.
pub(super) const LAST: [Stage; 2] = [
    Stage { name: "Tests of the page in a browser", run: |machine| counted(page::tests(machine)) },
    Stage { name: "Size", run: |_| page::size() },
];

fn quiet(result: Result<()>) -> Result<Finding> {
    counted(result.map(|()| Count::default()))
}

fn counted(result: Result<Count>) -> Result<Finding> {
    result.map(|tests| Finding { tests, bytes: None })
}
