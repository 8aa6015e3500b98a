//! One field: label, input, how it stands, what is wrong with it.

mod input;

use std::rc::Rc;

use input::input;
use quietpin_core::{
    message::Message,
    quantity::Value,
    read::{FieldState, State as Standing},
    schema::{Field, Kind, Place},
};

use super::{Page, button, sending};
use crate::{
    element::{View, el, keyed, nothing},
    state::Action,
    words,
};

/// A field and the page it stands on.
pub(crate) struct Props<'a> {
    pub(crate) path: String,
    pub(crate) page: &'a Page,
    /// Said in place of the field's own label, where the same field stands many times.
    pub(crate) label: Option<String>,
    /// Which of its places on the page this is.
    pub(crate) place: FieldPlace,
}

/// A field has one home on the page; where else it is needed it stands as well.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum FieldPlace {
    /// Where the page leads to.
    Home,
    /// Beside another answer that rests on it.
    Also,
}

impl FieldPlace {
    /// The name of an element of the field, by what it is: `at` for the input, `note`, `problem`.
    fn id(self, what: &str, path: &str) -> String {
        match self {
            Self::Home => format!("{what}-{path}"),
            Self::Also => format!("also-{what}-{path}"),
        }
    }
}

/// The field at a path of the plan; nothing where there is none.
pub(crate) fn field_view(props: &Props<'_>) -> View {
    let path = &props.path;
    let Some(place) = Place::at_path(path) else { return nothing() };
    let field = place.field();
    let state = &props.page.state;
    let typed = state.plan.get(path).unwrap_or_default();
    let standing = state.report.fields.get(path).map(Rc::as_ref);
    // what is wrong, here or elsewhere, waits until the hand rests
    let told = if state.typing.is_some() { &state.told } else { &state.report };
    let is_typing = state.typing.as_ref() == Some(path);
    let problem = told.fields.get(path).and_then(|it| it.problem.as_ref()).filter(|_| !is_typing);
    let label = props.label.clone().unwrap_or_else(|| field.label.to_owned());
    let shape = match field.kind {
        Kind::Row => "",
        // nothing is ever noted of a name
        Kind::Text => " short named",
        // a box beside its name would cut off what is chosen
        Kind::Choice(choices) if choices.iter().any(|it| it.label.chars().count() > FITS) => "",
        Kind::NameIn(part) if state.plan.names(part).iter().any(|it| it.chars().count() > FITS) => {
            ""
        }
        Kind::Quantity { .. } | Kind::Whole(..) | Kind::Choice(_) | Kind::NameIn(_) => " short",
    };
    let class = match problem {
        Some(_) => format!("field wrong{shape}"),
        None if typed.trim().is_empty() => format!("field blank{shape}"),
        None => format!("field{shape}"),
    };
    let view = el!("div", "class" = class;
        el!("label", "for" = props.place.id("at", path); label),
        input(props, field, typed, problem.is_some()),
        problem.map(|it| problem_view(props, it, standing)),
        note(field, standing, typed, props),
    );
    keyed(path, view)
}

fn problem_view(props: &Props<'_>, problem: &Message, standing: Option<&FieldState>) -> View {
    // what is read, but found wrong, is no slip of the hand
    let is_unreadable = standing.is_some_and(|it| it.state == Standing::Unreadable);
    el!("p", "class" = "problem", "id" = props.place.id("problem", &props.path);
        is_unreadable.then(|| el!("strong"; "Error: ")), &problem.text)
}

fn note(field: &Field, standing: Option<&FieldState>, typed: &str, props: &Props<'_>) -> View {
    let value = standing.and_then(|it| it.value.as_ref());
    let stands = standing.map(|it| it.state);
    let is_typing = props.page.state.typing.as_ref() == Some(&props.path);
    let text = match (stands, value) {
        // nothing moves under the hand: what it was taken for is told once that rests
        _ if is_typing => before(field, props),
        // what is chosen for a blank stands in the box itself
        (Some(Standing::Assumed), Some(value)) if !is_choice(field) => {
            format!("Assumed: {}.", value.shown)
        }
        (Some(Standing::Given), Some(value))
            if !is_choice(field)
                && (differs(&value.shown, typed) || meant(field, typed).is_some()) =>
        {
            format!("Read as {}.", value.shown)
        }
        _ if typed.is_empty() => String::new(),
        _ => usual(field),
    };
    // what helps to fill it in stays until one comes here again: nothing moves while it is typed
    let was_blank = props.page.state.entered.get(&props.path).is_none_or(str::is_empty);
    let hint = if was_blank { hint(field) } else { String::new() };
    let basis = standing.and_then(|it| it.basis.as_deref()).filter(|_| typed.is_empty());
    let is_asked = was_blank && (field.is_measured || field.assumed.is_some());
    el!("div", "class" = "notes", "id" = props.place.id("note", &props.path);
        (!hint.is_empty()).then(|| el!("p"; hint)),
        (!text.is_empty()).then(|| el!("p"; text)),
        cut(field, value).map(|label| el!("p", "class" = "cut", "aria-hidden" = "true"; label)),
        meant(field, typed).filter(|_| !is_typing).map(|other| other_unit(props, typed, other)),
        is_asked.then(|| measure(field, props, basis)),
    )
}

/// What was chosen, where a phone cuts it off even in a box of the whole width.
fn cut<'a>(field: &Field, value: Option<&'a Value>) -> Option<&'a str> {
    let label = value.filter(|_| is_choice(field))?.shown.as_str();
    (label.chars().count() > FITS_ALONE).then_some(label)
}

/// A label of so many letters fits into a box of the whole width.
const FITS_ALONE: usize = 26;

/// A label of so many letters fits into a box beside its name on a phone.
const FITS: usize = 14;

fn measure(field: &Field, props: &Props<'_>, basis: Option<&str>) -> View {
    // how comes with the details
    let how = || match props.page.state.details.there() {
        Some(details) => Place::at_path(&props.path).map_or("", details.measure),
        None => words::COMING,
    };
    el!("details", "class" = "measure";
        el!("summary"; if field.is_measured { "How to find it" } else { "Why that is assumed" }),
        field.is_measured.then(|| el!("p"; how())),
        basis.map(|it| el!("p"; format!("Why that is assumed: {it}."))),
    )
}

fn hint(field: &Field) -> String {
    match field.kind {
        Kind::Row | Kind::Text if !field.hint.is_empty() => format!("For example {}", field.hint),
        _ => field.hint.to_owned(),
    }
}

/// What stood there, or would be taken for it, before it was typed into.
fn before(field: &Field, props: &Props<'_>) -> String {
    let state = &props.page.state;
    let typed = state.stood.get(&props.path).unwrap_or_default();
    let stood = state.told.fields.get(&props.path);
    match stood.and_then(|it| Some((it.state, &it.value.as_ref()?.shown))) {
        Some((Standing::Assumed, shown)) => format!("Usual: {shown}."),
        Some((Standing::Given, shown)) if differs(shown, typed) => format!("Before: {shown}."),
        _ => usual(field),
    }
}

/// What would be taken for it if it were blank.
fn usual(field: &Field) -> String {
    match field.assumed.filter(|_| !is_choice(field)) {
        Some(assumed) => format!("Usual: {}.", signed(assumed)),
        None => String::new(),
    }
}

/// A value as it would be typed, with the proper signs of its units.
fn signed(text: &str) -> String {
    text.replace("kohm", "kΩ").replace("mohm", "mΩ").replace("ohm", "Ω").replace("mm2", "mm²")
}

/// The unit that a bare number may have been meant in, beside the one that it was taken in.
fn meant(field: &Field, typed: &str) -> Option<&'static str> {
    let Kind::Quantity { unit, .. } = field.kind else { return None };
    let is_bare = !typed.trim().is_empty()
        && typed.trim().bytes().all(|it| it.is_ascii_digit() || matches!(it, b'.' | b','));
    let other = match unit {
        "mm2" => "AWG",
        "cc/min" => "lb/h",
        "kW" => "hp",
        "degC" => "°F",
        _ => return None,
    };
    is_bare.then_some(other)
}

/// Says what a bare number was taken in, and takes it in the other unit when pressed.
fn other_unit(props: &Props<'_>, typed: &str, unit: &str) -> View {
    let text = format!("{} {unit}", typed.trim());
    let take = Action::Choose(props.path.clone(), text.clone());
    button(Some("quiet"), format!("Meant {text}? Take it so"), sending(&props.page.send, take))
}

fn is_choice(field: &Field) -> bool {
    matches!(field.kind, Kind::Choice(_) | Kind::NameIn(_))
}

/// Whether reading it back tells the fitter something.
fn differs(shown: &str, typed: &str) -> bool {
    let plain = |text: &str| {
        let lower =
            text.to_ascii_lowercase().replace('−', "-").replace("ohms", "Ω").replace("ohm", "Ω");
        lower.chars().filter(|c| !c.is_whitespace()).collect::<String>()
    };
    let (shown, typed) = (plain(shown), plain(typed));
    shown != typed && shown.trim_end_matches(|c: char| !c.is_ascii_digit()) != typed
}
