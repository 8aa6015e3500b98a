//! What the page weighs, and what in it weighs most.

mod functions;
mod parts;

pub(crate) use parts::{LIMIT, LIMIT_OF_ALL, all, first, parts, print};

use crate::build::{self, Symbols};
use crate::{setup, shell};
use anyhow::{Context, Result};

const SHOWN: usize = 20;

/// Prints both.
pub(crate) fn size() -> Result<()> {
    let target = setup::for_build()?;
    shell::heading("Build");
    build::build_with(&target)?;
    let named = build::program(&target, Symbols::Kept)?;

    let answering = named.further.iter().find(|part| part.name == "answers");
    let answering = answering
        .and_then(|part| part.modules.iter().max_by_key(|it| it.len()))
        .context("there is no part that answers")?;

    shell::heading("Bytes by part");
    print(&parts()?);

    for (part, wasm) in [("first", &named.first), ("answering", answering)] {
        let title = format!(
            "The {SHOWN} largest functions of the {part} part, in bytes before compression"
        );
        shell::heading(&title);
        let functions = functions::by_size(wasm)?;
        let whole: usize = functions.iter().map(|function| function.bytes).sum();
        for function in functions.iter().take(SHOWN) {
            shell::say(&format!("{:>8}  {}", function.bytes, function.name));
        }
        shell::say(&format!("{whole:>8}  all {} functions", functions.len()));
    }
    Ok(())
}
