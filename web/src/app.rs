//! The frame of the page, and the order of the questions.

use std::rc::Rc;

use gloo::{
    events::{EventListener, EventListenerOptions},
    timers::callback::Timeout,
};
use quietpin_core::{plan::Plan, questions};
use wasm_bindgen::JsCast;
use web_sys::{DragEvent, KeyboardEvent};
use yew::{platform::spawn_local, prelude::*};

use crate::{
    answering::{answering, detailing},
    browser::{files, offline, print, storage},
    components::{Dispatch, Page, Plans, button, link_to, open_file, sending, whole_car},
    element::{View, all, el, nothing, on_click, several, text},
    keeping,
    questions::questions_view,
    state::{Action, Further, Notice, State},
    words,
};

/// The page.
#[component]
pub(crate) fn App() -> Html {
    let state = use_reducer(keeping::opened);
    let dispatch = state.dispatcher();
    keeping::use_keeping(&state, &dispatch);
    use_answers(&dispatch);
    use_trials(&state, &dispatch);
    use_drops(&dispatch);
    use_keys(&dispatch);
    use_effect_with((), |()| {
        let listeners = print::unfold_for_print();
        move || drop(listeners)
    });
    let page = &Page { state: Rc::new((*state).clone()), send: dispatch };
    let is_blank = *state.plan == Plan::default();
    let is_missed = state.is_held || matches!(state.answers, Further::Missed);
    let is_coming = match state.answers {
        Further::Coming => true,
        Further::There(_) => matches!(state.details, Further::Coming),
        Further::Missed => false,
    };
    several!(
        header(page),
        el!("main", "class" = is_missed.then_some("unanswered"), "aria-busy" = is_coming.then_some("true");
            missed(page),
            notices(page),
            state.answers.there().map(|it| (it.aside)(page)),
            if is_blank { welcome(page) } else { found_view(page) },
            questions_view(page),
            caution(),
        ),
        bar(page),
    )
    .into()
}

/// Asks for what answers, once the form is put together.
#[hook]
fn use_answers(dispatch: &Dispatch) {
    let send = dispatch.clone();
    use_effect_with((), move |()| ask(send));
}

/// So long nothing is typed before the remedies are tried, in milliseconds.
const PAUSE: u32 = 400;

/// Tries the remedies once the fitter pauses: a trial is a report, and a letter must not wait for it.
#[hook]
fn use_trials(state: &State, dispatch: &Dispatch) {
    let is_wanted = !state.is_tried && state.details.there().is_some();
    let send = dispatch.clone();
    use_effect_with((Rc::as_ptr(&state.report), is_wanted), move |_| {
        let pause = is_wanted.then(|| Timeout::new(PAUSE, move || send.dispatch(Action::Try)));
        move || drop(pause)
    });
}

/// Asks for what answers; meanwhile, the form takes what is typed.
fn ask(send: Dispatch) {
    spawn_local(async move {
        let Ok(answering) = answering().await else { return send.dispatch(Action::Miss) };
        send.dispatch(Action::Answer(answering));
        send.dispatch(detailing().await.map_or(Action::MissDetails, Action::Detail));
    });
}

/// Opens a plan file that is dropped anywhere on the page.
#[hook]
fn use_drops(dispatch: &Dispatch) {
    let send = dispatch.clone();
    use_effect_with((), move |()| {
        let options = EventListenerOptions::enable_prevent_default();
        let window = gloo::utils::window();
        let over = EventListener::new_with_options(&window, "dragover", options, |event| {
            event.prevent_default();
        });
        let drop = EventListener::new_with_options(&window, "drop", options, move |event| {
            event.prevent_default();
            let transfer = event.dyn_ref::<DragEvent>().and_then(DragEvent::data_transfer);
            if let Some(file) = transfer.and_then(|it| it.files()).and_then(|files| files.get(0)) {
                open_file(&file, send.clone());
            }
        });
        move || std::mem::drop((over, drop))
    });
}

/// Undo and redo by the keys that every program uses; inside a text field too, where the browser's own would undo what
/// is typed but not what followed from it.
#[hook]
fn use_keys(dispatch: &Dispatch) {
    let send = dispatch.clone();
    use_effect_with((), move |()| {
        let options = EventListenerOptions::enable_prevent_default();
        let listener = EventListener::new_with_options(
            &gloo::utils::document(),
            "keydown",
            options,
            move |event| {
                let Some(key) = event.dyn_ref::<KeyboardEvent>() else { return };
                if !(key.ctrl_key() || key.meta_key()) || key.alt_key() {
                    return;
                }
                let action = match (key.key().to_ascii_lowercase().as_str(), key.shift_key()) {
                    ("z", false) => Action::Undo,
                    ("z", true) | ("y", false) => Action::Redo,
                    _ => return,
                };
                event.prevent_default();
                send.dispatch(action);
            },
        );
        move || drop(listener)
    });
}

fn header(page: &Page) -> View {
    let (state, send) = (&page.state, &page.send);
    let tool = |action: Action, label: &'static str, sign: &'static str, can: bool| {
        let button = el!("button", "type" = "button", "class" = "tool", "disabled" = !can,
            "aria-label" = label, "title" = label; sign);
        on_click(button, sending(send, action))
    };
    let name = if state.plan.name.is_empty() { words::UNNAMED } else { &state.plan.name };
    let printed = format!(", printed {}", print::today());
    el!("header", "class" = "top";
        el!("div", "class" = "title";
            el!("h1"; "Quietpin"),
            el!("p", "class" = "plan-name"; name, el!("span", "class" = "printed"; printed)),
            tool(Action::Undo, "Undo", "↶", state.can_undo()),
            tool(Action::Redo, "Redo", "↷", state.can_redo()),
        ),
        View::from(html! { <Plans page={page.clone()} /> }),
    )
}

/// That a further part of the program could not be fetched.
fn missed(page: &Page) -> View {
    let what = match (page.state.answers, page.state.details) {
        (Further::Missed, _) | (_, Further::Missed) if offline::is_misplaced() => words::MISPLACED,
        (Further::Missed, _) => words::MISSED,
        (_, Further::Missed) => words::DETAILS_MISSED,
        _ => return nothing(),
    };
    let send = page.send.clone();
    let again = Callback::from(move |_| {
        send.dispatch(Action::Await);
        ask(send.clone());
    });
    el!("div", "class" = "notices", "role" = "alert";
        el!("div", "class" = "notice"; el!("p"; what)),
        button(None, "Try again", again),
    )
}

/// What stands out in the plan.
fn found_view(page: &Page) -> View {
    let found = match page.state.answers {
        Further::There(answering) => Some((answering.found)(page)),
        Further::Coming => Some(el!("p", "class" = "why"; words::COMING)),
        Further::Missed => None,
    };
    el!("section", "id" = "at-found", "class" = "found", "tabindex" = "-1", "aria-labelledby" = "found-title";
        el!("h2", "id" = "found-title"; "Findings"),
        found,
    )
}

fn notices(page: &Page) -> View {
    let notices = &page.state.notices;
    if notices.is_empty() {
        return nothing();
    }
    el!("div", "class" = "notices", "role" = "alert";
        all(notices.iter().map(notice)),
        button(Some("quiet"), "OK", sending(&page.send, Action::Dismiss)),
    )
}

fn notice(notice: &Notice) -> View {
    let save = |text: &String| {
        let text = text.clone();
        let save = Callback::from(move |_| {
            // where the browser refuses, the text is still kept
            files::save("unreadable-plan.txt", &text).ok();
        });
        button(None, "Save the old text as a file", save)
    };
    el!("div", "class" = "notice"; el!("p"; &notice.text), notice.kept.as_ref().map(save))
}

fn welcome(page: &Page) -> View {
    let send = &page.send;
    let demo = {
        let send = send.clone();
        Callback::from(move |_| {
            send.dispatch(Action::Open(storage::free_key(), Box::new(quietpin_core::demo())));
        })
    };
    el!("section", "class" = "welcome";
        el!("p", "class" = "lead";
            "Plan the wiring of an engine controller, then check it, before anything is powered."),
        el!("p"; "Answer what you know. Each question says what it needs first; blanks are fine. \
            Everything stays on this device."),
        button(None, "Look at the demo: a hill-climb special", demo),
        page.state.details.there().map(|details| whole_car(details, send)),
    )
}

fn caution() -> View {
    let alone = "This is the single-file page: it needs no server and no network.";
    el!("footer";
        el!("p", "class" = "caution";
            el!("strong"; "Caution: "),
            "This page plans and checks; it does not replace the maker's data sheet, local codes, a sanctioning body's \
             rules or a licensed person. Fuel burns, ignition voltage kills, and parts move by themselves at key-on: \
             disconnect the battery before you touch the wiring."),
        if offline::is_single_file() { el!("p"; alone) } else { keeping::licences() },
    )
}

/// Seven names fit into the bar of a narrow phone. This question is asked once, and stands at the page's end.
const BESIDE_THE_BAR: &str = questions::standing::QUESTION.id;

/// The bar under the thumb: to the findings and to each question.
fn bar(page: &Page) -> View {
    let report = &page.state.report;
    let found = match report.findings.len() {
        0 => "Found".to_owned(),
        count => format!("Found {count}"),
    };
    let questions = questions::ALL
        .iter()
        .filter(|it| it.id != BESIDE_THE_BAR)
        .map(|it| link_to(it.id, text(it.name)));
    el!("nav", "class" = "bar", "aria-label" = "Questions";
        link_to("found", text(&found)),
        all(questions),
    )
}
