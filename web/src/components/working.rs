//! The working, as an engineer writes it.

use quietpin_core::working::Step;

use crate::element::{View, all, el, nothing};

/// What was worked out, each part with its steps.
pub(crate) fn working<'a>(parts: impl Iterator<Item = (&'a str, &'a [Step])>) -> View {
    let parts: Vec<_> = parts.filter(|(_, steps)| !steps.is_empty()).collect();
    if parts.is_empty() {
        return nothing();
    }
    el!("details", "class" = "working";
        el!("summary"; "Show the working"),
        all(parts.into_iter().map(part)),
    )
}

fn part((title, steps): (&str, &[Step])) -> View {
    el!("section"; el!("p", "class" = "part-name"; title), all(steps.iter().map(line)))
}

fn line(step: &Step) -> View {
    el!("div", "class" = "step";
        el!("p", "class" = "symbols"; step.symbols),
        el!("p", "class" = "filled"; "= ", &step.filled),
        el!("p", "class" = "result"; "= ", el!("b"; &step.result.shown)),
        el!("p", "class" = "source"; step.source),
    )
}
