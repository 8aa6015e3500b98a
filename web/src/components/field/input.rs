//! What a field is filled in with.

use quietpin_core::schema::{Field, Kind};
use web_sys::HtmlSelectElement;
use yew::prelude::*;

use super::{super::Dispatch, FieldPlace, Props};
use crate::{
    element::{View, all, el, keyed, on, on_typing},
    state::Action,
};

/// The text field or the list of choices.
pub(super) fn input(props: &Props<'_>, field: &Field, typed: &str, is_wrong: bool) -> View {
    let path = &props.path;
    let choice = |options, blank| {
        let select = Select { path, place: props.place, is_wrong, typed, options, blank };
        select_view(&select, props.page.send.clone())
    };
    match field.kind {
        Kind::Choice(choices) => {
            let options = choices.iter().map(|it| (it.code, it.label)).collect();
            choice(options, blank_choice(field))
        }
        Kind::NameIn(part) => {
            let names = props.page.state.plan.names(part);
            choice(names.iter().map(|it| (it.as_str(), it.as_str())).collect(), "Choose".into())
        }
        Kind::Text | Kind::Row | Kind::Whole(..) => text_input(props, field, typed, "", is_wrong),
        Kind::Quantity { unit, .. } => text_input(props, field, typed, unit, is_wrong),
    }
}

fn text_input(
    props: &Props<'_>,
    field: &Field,
    typed: &str,
    unit: &'static str,
    is_wrong: bool,
) -> View {
    let path = props.path.clone();
    let mode = if matches!(field.kind, Kind::Whole(..)) { "numeric" } else { "text" };
    let input = el!(
        "input",
        "id" = props.place.id("at", &path),
        "type" = "text",
        "inputmode" = mode,
        "autocomplete" = "off",
        "autocapitalize" = "off",
        "spellcheck" = "false",
        "aria-describedby" = described_by(props.place, &path, is_wrong),
        "aria-invalid" = yes_or_no(is_wrong)
    );
    let send = props.page.send.clone();
    let keep = Callback::from(move |typed| send.dispatch(Action::Type(path.clone(), typed)));
    el!("div", "class" = "entry";
        on_typing(input, typed, keep),
        // one that was typed stands alone
        (!unit.is_empty()).then(|| el!("span", "class" = "unit"; if has_unit(typed) { "" } else { sign(unit) })),
    )
}

/// Whether a text names a unit itself.
fn has_unit(typed: &str) -> bool {
    // what is no letter of ASCII is one of a unit, as in Ω, mm² or °
    typed.trim_end().ends_with(|it: char| !it.is_ascii() || it.is_ascii_alphabetic() || it == '%')
}

/// A unit with its proper sign; a field names it as it is typed without one.
fn sign(unit: &'static str) -> &'static str {
    match unit {
        "ohm" => "Ω",
        "mohm" => "mΩ",
        "us" => "µs",
        "mm2" => "mm²",
        "deg" => "°",
        other => other,
    }
}

/// The ids of what is said about a field.
fn described_by(place: FieldPlace, path: &str, is_wrong: bool) -> String {
    let note = place.id("note", path);
    if is_wrong { format!("{} {note}", place.id("problem", path)) } else { note }
}

fn yes_or_no(it: bool) -> &'static str {
    if it { "true" } else { "false" }
}

struct Select<'a> {
    path: &'a str,
    place: FieldPlace,
    is_wrong: bool,
    typed: &'a str,
    options: Vec<(&'a str, &'a str)>,
    blank: String,
}

fn select_view(it: &Select<'_>, send: Dispatch) -> View {
    // a word from a plan file that is no choice stays to be seen
    let is_known = it.typed.is_empty() || it.options.iter().any(|(code, _)| *code == it.typed);
    let known = |(code, label): &(&str, &str)| keyed(code, option(code, label, *code == it.typed));
    let select = el!("select", "id" = it.place.id("at", it.path),
        "aria-describedby" = described_by(it.place, it.path, it.is_wrong),
        "aria-invalid" = yes_or_no(it.is_wrong);
        option("", &it.blank, it.typed.is_empty()),
        (!is_known).then(|| option(it.typed, it.typed, true)),
        all(it.options.iter().map(known)),
    );
    let path = it.path.to_owned();
    let keep = Callback::from(move |event: Event| {
        if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
            send.dispatch(Action::Choose(path.clone(), select.value()));
        }
    });
    el!("div", "class" = "entry"; on("change", select, keep))
}

fn option(code: &str, label: &str, is_selected: bool) -> View {
    el!("option", "value" = code.to_owned(), "selected" = is_selected; label)
}

fn blank_choice(field: &Field) -> String {
    let Kind::Choice(choices) = field.kind else { return String::new() };
    let usual = field.assumed.and_then(|assumed| choices.iter().find(|it| it.code == assumed));
    usual.map_or_else(|| "Not known".to_owned(), |it| format!("Assumed: {}", it.label))
}
