//! The controller, described once and carried from plan to plan.

use quietpin_core::{
    plan::{GENERICS, Plan},
    schema::Part,
};

use crate::{
    components::{Drawn, Page, button, file_input, fold, save, sending},
    element::{View, all, el},
    state::Action,
};

/// Where its outputs may come from, and where they may go.
pub(super) const CONTROLLER: Drawn = Drawn {
    draw: |page, _| controller_view(page),
    is_same: |one, other, _| {
        one.plan.name == other.plan.name && one.plan.is_same_in(&other.plan, Part::Outputs)
    },
};

fn controller_view(page: &Page) -> View {
    let (state, send) = (&page.state, &page.send);
    let generics = GENERICS.iter().map(|generic| {
        let take = Action::Take(Box::new(generic.describe()));
        button(Some("quiet"), generic.name, sending(send, take))
    });
    let content = el!("div", "class" = "controller";
        el!("p"; "The outputs above are your controller. Save them once, and use them in the next plan: loads stay on the output \
            that they name. What you open replaces the outputs above; Undo brings those back."),
        el!("div", "class" = "buttons";
            button(None, "Save the outputs as a file", save(state.plan.controller().into(), send.clone())),
            el!("label", "class" = "button", "for" = "controller-file"; "Open outputs from a file"),
            file_input("controller-file", send.clone(), take),
        ),
        state.details.there().map(|details| (details.pin_table)(page)),
        el!("p"; "Or start from a generic description, invented, and set each output as its pin table says:"),
        el!("div", "class" = "buttons"; all(generics)),
    );
    fold("rare", "The controller, described once", false, content)
}

fn take(plan: Plan) -> Action {
    if plan.count(Part::Outputs) == 0 {
        let text = "This file describes no outputs: nothing was changed.".to_owned();
        return Action::Say(crate::state::Notice { text, kept: None });
    }
    Action::Take(Box::new(plan))
}
