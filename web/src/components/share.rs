//! A plan to another phone and from it, with no network between: codes to scan, a link to copy, a box for what was scanned.

use std::{cell::Cell, rc::Rc};

use quietpin_core::plan::Plan;
use quietpin_share::{Arrival, Code, Gathered, MARK, Refused, Symbol, TooLong, series, whole};
use web_sys::{HtmlDetailsElement, HtmlTextAreaElement};
use yew::prelude::*;

use super::{Dispatch, Page, button, fold};
use crate::{
    browser::{scanned, storage},
    element::{View, all, el, nothing, on, several, text},
    state::{Action, Notice},
};

/// The folds under Plans.
pub(crate) fn share(page: &Page) -> View {
    several!(
        View::from(html! { <ToAnother page={page.clone()} /> }),
        View::from(html! { <FromAnother page={page.clone()} /> }),
    )
}

#[derive(Properties, PartialEq)]
struct Props {
    page: Page,
}

/// The field with the link.
const LINK: &str = "plan-link";

#[component]
fn ToAnother(props: &Props) -> Html {
    let plan = &props.page.state.plan;
    let (is_open, shown, copied) = (use_state(|| false), use_state(|| 0), use_state(|| None));
    // to compress a plan takes longer than a letter may
    let made =
        use_memo((Rc::as_ptr(plan), *is_open), |(_, is_open)| is_open.then(|| Made::of(plan)));
    let toggled = {
        let is_open = is_open.clone();
        Callback::from(move |event: Event| {
            let details = event.target_dyn_into::<HtmlDetailsElement>();
            is_open.set(details.is_some_and(|it| it.open()));
        })
    };
    let inside =
        made.as_ref().as_ref().map(|made| several!(codes(made, &shown), link(made, &copied)));
    let details = el!("details", "class" = "share";
        el!("summary"; "To another phone"),
        el!("div"; inside),
    );
    on("toggle", details, toggled).into()
}

/// What a plan was made into.
struct Made {
    /// Its codes; nothing where they are too many.
    codes: Result<Vec<Code>, TooLong>,
    /// What stands before each of them.
    address: String,
    /// All of it as one link, or as the text that takes its place.
    link: String,
}

impl Made {
    fn of(plan: &Plan) -> Self {
        let address = scanned::address();
        let codes = series(plan, address.len() + MARK.len());
        Self { codes, link: format!("{address}{MARK}{}", whole(plan).text()), address }
    }
}

fn codes(made: &Made, shown: &UseStateHandle<usize>) -> View {
    let codes = match &made.codes {
        Ok(codes) => codes,
        Err(too_long) => return el!("p"; too_long.to_string()),
    };
    let of = codes.len();
    let at = (**shown).min(of.saturating_sub(1));
    let count = format!("Code {} of {of}", at + 1);
    let how = if scanned::is_reached_from_elsewhere(&made.address) {
        "Scan this with the other phone's camera and open the link: the plan opens there, beside the plans of that phone."
    } else {
        "Scan this with the other phone's camera, copy the text that it shows, and paste it there in Quietpin under “Plans”, “From another phone”."
    };
    let each = format!("The plan takes {of} codes: scan each of them, in any order.");
    let step = |label: &'static str, to: Option<usize>| {
        let (is_there, to, shown) = (to.is_some(), to.unwrap_or(at), shown.clone());
        let step = Callback::from(move |_| shown.set(to));
        on("click", el!("button", "type" = "button", "disabled" = !is_there; label), step)
    };
    let steps = || {
        el!("div", "class" = "steps";
            step("Previous", at.checked_sub(1)),
            step("Next", Some(at + 1).filter(|it| *it < of)),
        )
    };
    several!(
        el!("p"; how),
        (of > 1).then(|| el!("p"; each)),
        codes.get(at).map(|code| picture(&made.address, code, &count)),
        el!("p", "class" = "count", "aria-live" = "polite"; (of > 1).then(|| text(&count))),
        (of > 1).then(steps),
    )
}

/// Black on white, whatever the colours of the page: a camera needs it so.
fn picture(address: &str, code: &Code, name: &String) -> View {
    let Some(Symbol { side, path }) = Symbol::of(address, code) else {
        return el!("p"; "The address of this page is too long for a code.");
    };
    el!("svg", "class" = "symbol", "role" = "img", "aria-label" = name, "viewBox" = format!("0 0 {side} {side}"),
        "shape-rendering" = "crispEdges";
        el!("path", "fill" = "#fff", "d" = format!("M0 0h{side}v{side}h-{side}z")),
        el!("path", "fill" = "#000", "d" = path),
    )
}

fn link(made: &Made, copied: &UseStateHandle<Option<bool>>) -> View {
    let is_link = !made.link.starts_with(MARK);
    let what = if is_link { "The whole plan as a link" } else { "The whole plan as a text" };
    let label = match **copied {
        Some(true) => "Copied",
        _ if is_link => "Copy the link",
        _ => "Copy the text",
    };
    let copied_now = copied.clone();
    let copy = Callback::from(move |_| copied_now.set(Some(scanned::copy(LINK))));
    let refused = **copied == Some(false);
    el!("div", "class" = "field";
        el!("label", "for" = LINK; what),
        el!("div", "class" = "entry";
            el!("input", "id" = LINK, "type" = "text", "readonly" = true, "value" = &made.link)),
        button(None, label, copy),
        el!("div", "class" = "notes", "aria-live" = "polite";
            refused.then(|| el!("p"; "This browser did not copy it. Press long on it, and choose Copy.")),
            el!("p"; "The plan itself stands in it: no server gets to see it.")),
    )
}

#[component]
fn FromAnother(props: &Props) -> Html {
    let said = use_state(|| Ok(String::new()));
    let pasted = {
        let (said, send) = (said.clone(), props.page.send.clone());
        Callback::from(move |event: Event| {
            let Some(area) = event.target_dyn_into::<HtmlTextAreaElement>() else { return };
            let text = area.value();
            if !text.trim().is_empty() {
                let taken = take(&text, &send);
                if taken.is_ok() {
                    // the next one is pasted into an empty box
                    area.set_value("");
                }
                said.set(taken);
            } else if said.is_err() {
                said.set(Ok(String::new()));
            }
        })
    };
    let standings = Gathered::read(&scanned::waiting()).standings();
    let is_waiting = !standings.is_empty();
    let forget = {
        let said = said.clone();
        Callback::from(move |_| {
            scanned::wait("");
            said.set(Ok("They are forgotten.".to_owned()));
        })
    };
    let area = el!(
        "textarea",
        "id" = "plan-scanned",
        "rows" = "3",
        "spellcheck" = "false",
        "autocapitalize" = "off",
        "autocomplete" = "off"
    );
    let inside = el!("div", "class" = "field";
        el!("label", "for" = "plan-scanned"; "Paste what was scanned"),
        on("input", area, pasted),
        el!("div", "aria-live" = "polite";
            match &*said {
                Ok(text) => el!("p"; text),
                Err(refused) => el!("p", "class" = "problem"; refused.to_string()),
            },
            all(standings.iter().map(|it| el!("p", "class" = "count"; it.to_string())))),
        if is_waiting { button(Some("quiet"), "Forget these codes", forget) } else { nothing() },
    );
    fold("share", "From another phone", is_waiting, inside).into()
}

thread_local! {
    /// Whether a notice tells of a link that came.
    static HAS_SAID: Cell<bool> = const { Cell::new(false) };
}

/// Takes what was scanned, and opens the plan once it is whole; what came of it.
fn take(pasted: &str, send: &Dispatch) -> Result<String, Refused> {
    let mut gathered = Gathered::read(&scanned::waiting());
    let mut said = String::new();
    for code in Code::read_all(pasted)? {
        let arrival = gathered.take(code);
        said = arrival.to_string();
        if let Arrival::Plan(plan) = arrival {
            send.dispatch(Action::Open(storage::free_key(), plan));
        }
    }
    scanned::wait(&gathered.text());
    // what the link before had to say is no longer so
    if HAS_SAID.replace(false) {
        send.dispatch(Action::Dismiss);
    }
    Ok(said)
}

/// What a fragment brings from another phone, to be taken; nothing where it means something else.
fn shared_in(fragment: &str) -> Option<&str> {
    fragment.starts_with(MARK).then_some(fragment)
}

/// Takes what a link brings: the one by which the page was opened, and those that are opened in it later.
pub(crate) fn take_links(send: &Dispatch) {
    let send = send.clone();
    let arrive = move || {
        let fragment = scanned::fragment();
        let Some(shared) = shared_in(&fragment) else { return };
        let told = take(shared, &send).unwrap_or_else(|refused| refused.to_string());
        scanned::take_off_fragment();
        HAS_SAID.set(true);
        send.dispatch(Action::Say(Notice { text: told, kept: None }));
    };
    arrive();
    scanned::on_fragment(arrive);
}
