//! The frame of the page, and the order of the questions.

use std::{cell::Cell, rc::Rc};

use gloo::{
    events::{EventListener, EventListenerOptions},
    timers::callback::Timeout,
};
use quietpin_core::plan::Plan;
use wasm_bindgen::JsCast;
use web_sys::{DragEvent, Element, KeyboardEvent};
use yew::{platform::spawn_local, prelude::*};

use crate::{
    address::{ALL, Shown, shown},
    answering::{answering, detailing},
    browser::{address, files, focus, offline, print, storage},
    cards::place_of,
    components::{
        Dispatch, Page, Plans, bar, button, card_view, found_view, link_to, list, open_file,
        sending, whole_car,
    },
    element::{View, all, el, nothing, on_click, several, text},
    keeping,
    questions::{all_cards, all_questions},
    state::{Action, Further, Notice, State, Trials},
    words,
};

/// The page.
#[component]
pub(crate) fn App() -> Html {
    let state = use_reducer(keeping::opened);
    let dispatch = state.dispatcher();
    let held = keeping::use_keeping(&state, &dispatch);
    use_listening(&dispatch, held);
    use_trials(&state, &dispatch);
    use_arriving(&state);
    use_following(&state, &dispatch);
    use_settling(&state, &dispatch);
    let page = &Page { state: Rc::new((*state).clone()), send: dispatch };
    let questions = &all_cards(&state);
    let here = match shown(&state.address) {
        Shown::At(path) => place_of(questions, path),
        _ => None,
    };
    let is_blank = *state.plan == Plan::default();
    let is_missed = state.is_held || matches!(state.answers, Further::Missed);
    let is_coming = match state.answers {
        Further::Coming => true,
        Further::There(_) => matches!(state.details, Further::Coming),
        Further::Missed => false,
    };
    use_title(
        here.and_then(|(question, card)| questions.get(question)?.1.get(card))
            .map(|it| it.title.clone()),
    );
    let content = match (here, shown(&state.address)) {
        (Some(here), _) => card_view(page, questions, here),
        (None, Shown::Sheet) => state.details.there().map_or_else(nothing, |it| (it.sheet)(page)),
        (None, Shown::Labels) => state.details.there().map_or_else(nothing, |it| (it.labels)(page)),
        (None, Shown::All) => several!(found_view(page, true), all_questions(page)),
        // a card that is there once it is answered
        (None, Shown::At(_)) if is_coming => el!("p", "class" = "why"; words::COMING),
        (None, _) => list(page, questions, is_blank),
    };
    let is_awaited = is_coming && matches!(shown(&state.address), Shown::At(_));
    let is_list = here.is_none()
        && !matches!(shown(&state.address), Shown::Sheet | Shown::Labels)
        && !is_awaited;
    let skip = on_click(
        el!("button", "type" = "button", "class" = "skip"; "Skip to the question"),
        Callback::from(|_| focus::to_title()),
    );
    several!(
        skip,
        is_list.then(|| header(page)),
        el!("main", "class" = is_missed.then_some("unanswered"), "aria-busy" = is_coming.then_some("true"), "data-due" = state.is_due();
            missed(page),
            notices(page),
            state.answers.there().map(|it| (it.aside)(page)),
            (is_list && is_blank).then(lead),
            content,
            (is_list && is_blank).then(|| welcome(page)),
            is_list.then(|| plans(page)),
            is_list.then(caution),
        ),
        bar(page, questions, here),
    )
    .into()
}

/// Listens as long as the page is there, and asks for what answers, once the form is put together.
#[hook]
fn use_listening(dispatch: &Dispatch, held: keeping::Held) {
    let send = dispatch.clone();
    // one effect for all: each is program of its own
    use_effect_with((), move |()| {
        keeping::listen(&send, held);
        take_drops(&send);
        take_keys(&send);
        print::unfold_for_print();
        settle_what_is_left(&send);
        let go = send.clone();
        address::listen(move |address| go.dispatch(Action::Go(address)));
        ask(send);
    });
}

/// Comes to the place that the address says, once it is drawn.
#[hook]
fn use_arriving(state: &State) {
    use_effect_with(state.address.clone(), |address| {
        if !address.is_empty() {
            address::arrive(address);
        }
    });
}

/// So long a letter is drawn before it is answered, in milliseconds: a frame.
const DRAWN: u32 = 20;

/// Answers what was typed once it is drawn: the hand does not wait for an answer.
#[hook]
fn use_following(state: &State, dispatch: &Dispatch) {
    let send = dispatch.clone();
    use_effect_with((state.is_due(), Rc::as_ptr(&state.plan)), move |(is_due, _)| {
        let drawn = is_due.then(|| Timeout::new(DRAWN, move || send.dispatch(Action::Follow)));
        move || drop(drawn)
    });
}

/// The page's title names what is on the screen.
#[hook]
fn use_title(card: Option<String>) {
    use_effect_with(card, |card| {
        let title =
            card.as_ref().map_or_else(|| "Quietpin".to_owned(), |it| format!("{it} · Quietpin"));
        gloo::utils::document().set_title(&title);
    });
}

/// So long nothing is typed before it is told what is wrong with it, in milliseconds; or until the field is left.
const SETTLED: u32 = 1500;

/// So long a finger may stay on a button, in milliseconds.
const PRESSED: u32 = 300;

/// Tells what is wrong with a field once the fitter pauses.
#[hook]
fn use_settling(state: &State, dispatch: &Dispatch) {
    let send = dispatch.clone();
    use_effect_with((state.typing.clone(), Rc::as_ptr(&state.plan)), move |(typing, _)| {
        let pause = typing
            .is_some()
            .then(|| Timeout::new(SETTLED, move || send.dispatch(Action::Settle(None))));
        move || drop(pause)
    });
}

/// Tells what is wrong with the field that is left: a little later, since what is told must not push away the button that
/// is being pressed.
fn settle_what_is_left(send: &Dispatch) {
    let send = send.clone();
    let document = gloo::utils::document();
    let listener = EventListener::new(&document, "focusout", move |event| {
        let field = event.target().and_then(|it| it.dyn_into::<Element>().ok()).map(|it| it.id());
        let Some(path) = field.and_then(|id| Some(id.split_once("at-")?.1.to_owned())) else {
            return;
        };
        let send = send.clone();
        Timeout::new(PRESSED, move || send.dispatch(Action::Settle(Some(path)))).forget();
    });
    listener.forget();
}

/// So long nothing is typed before the remedies are tried, in milliseconds.
const PAUSE: u32 = 400;

/// Tries the remedies once the fitter pauses: a trial is a report, and a letter must not wait for it.
#[hook]
fn use_trials(state: &State, dispatch: &Dispatch) {
    let trials = state.trials();
    let send = dispatch.clone();
    use_effect_with((Rc::as_ptr(&state.report), trials.is_some()), move |_| {
        let waits = Rc::new(Cell::new(None));
        if let Some(trials) = trials {
            try_further(PAUSE, trials, send, &waits);
        }
        move || drop(waits.take())
    });
}

/// Makes one trial after the other, `pause` milliseconds from now; between two of them what was typed is taken.
fn try_further(pause: u32, mut trials: Trials, send: Dispatch, waits: &Rc<Cell<Option<Timeout>>>) {
    let next = Rc::clone(waits);
    let wait = Timeout::new(pause, move || match trials.further() {
        Some(tried) => send.dispatch(tried),
        None => try_further(DRAWN, trials, send, &next),
    });
    waits.set(Some(wait));
}

/// Asks for what answers; meanwhile, the form takes what is typed.
fn ask(send: Dispatch) {
    spawn_local(async move {
        let Ok(answering) = answering().await else { return send.dispatch(Action::Miss) };
        send.dispatch(Action::Answer(answering));
        let Ok(details) = detailing().await else { return send.dispatch(Action::MissDetails) };
        send.dispatch(Action::Detail(details));
        (details.take_links)(&send);
    });
}

/// Opens a plan file that is dropped anywhere on the page.
fn take_drops(send: &Dispatch) {
    let send = send.clone();
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
    over.forget();
    drop.forget();
}

/// Undo and redo by the keys that every program uses; inside a text field too, where the browser's own would undo what
/// is typed but not what followed from it.
fn take_keys(send: &Dispatch) {
    let send = send.clone();
    let options = EventListenerOptions::enable_prevent_default();
    let document = gloo::utils::document();
    let listener = EventListener::new_with_options(&document, "keydown", options, move |event| {
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
    });
    listener.forget();
}

fn header(page: &Page) -> View {
    let state = &page.state;
    let name = if state.plan.name.is_empty() { words::UNNAMED } else { &state.plan.name };
    let printed = format!(", printed {}", print::today());
    el!("header", "class" = "top";
        el!("h1", "id" = "title", "tabindex" = "-1"; "Quietpin"),
        (state.plan.name == quietpin_core::DEMO).then(|| own(&page.send)),
        el!("p", "class" = "plan-name"; name, el!("span", "class" = "printed"; printed)),
    )
}

fn plans(page: &Page) -> View {
    let plans = html! { <Plans page={page.clone()} /> };
    el!("section", "id" = "at-plans", "class" = "plans-at", "tabindex" = "-1", "aria-label" = "Plans";
        View::from(plans),
        el!("p"; link_to(ALL, text("All on one page"))),
        (!offline::is_single_file()).then(keeping::licences),
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

/// What this is, in a line.
fn lead() -> View {
    el!("p", "class" = "lead"; "Plan the wiring of an engine controller, and check it before anything is powered.")
}

fn welcome(page: &Page) -> View {
    el!("section", "class" = "welcome";
        el!("p"; "Answer what you know; blanks are fine. Everything stays on this device."),
        page.state.details.there().map(|details| whole_car(details, &page.send)),
    )
}

/// From the demo to a plan of one's own.
fn own(send: &Dispatch) -> View {
    let send = send.clone();
    let open = Callback::from(move |_| {
        send.dispatch(Action::Open(storage::free_key(), Box::default()));
    });
    button(Some("quiet own"), "Start your own plan", open)
}

fn caution() -> View {
    let alone = "This is the single-file page: it needs no server and no network.";
    el!("footer";
        el!("p", "class" = "caution";
            el!("strong"; "Caution: "),
            "This plans and checks. It does not replace the maker's data, local codes, a sanctioning body's rules or a licensed \
             person. Battery off before you touch the wiring."),
        offline::is_single_file().then(|| el!("p"; alone)),
    )
}
