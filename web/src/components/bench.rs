//! The test at the car, worked with one thumb: the channel to fire, and what may answer, to be tapped.

use std::rc::Rc;

use quietpin_core::{
    channels::{NOTHING, tapped, words_of},
    report::{Answer, Bench, BenchChannel},
    schema::Part,
};
use yew::prelude::*;

use super::{Dispatch, Page, button, fold_while, sending};
use crate::{
    browser::focus,
    element::{View, all, el, keyed, on_click, several, whole},
    state::Action,
};

/// The bench of an answer, where it has one.
pub(crate) fn bench_view(page: &Page, answer: &Rc<Answer>) -> View {
    html! { <Worked page={page.clone()} answer={Rc::clone(answer)} /> }.into()
}

#[derive(Properties)]
struct Props {
    page: Page,
    answer: Rc<Answer>,
}

impl PartialEq for Props {
    fn eq(&self, other: &Self) -> bool {
        let typed = |props: &Self| Rc::clone(&props.page.state.plan);
        Rc::ptr_eq(&self.answer, &other.answer)
            && typed(self).is_same_in(&typed(other), Part::Channels)
    }
}

#[component]
fn Worked(props: &Props) -> Html {
    // a channel that the fitter chose; otherwise the one that tells most
    let chosen = use_state(|| None::<u32>);
    let Some(bench) = &props.answer.bench else { return Html::default() };
    let now = chosen.or(bench.next);
    let now = now.and_then(|now| bench.channels.iter().find(|it| it.channel == now));
    let caution = |it: &quietpin_core::message::Message| el!("p", "class" = "caution"; el!("strong"; "Caution: "), &it.text);
    let is_new = bench.channels.iter().all(|it| it.found.is_empty());
    let tool = bench.tool.as_ref().map(|it| el!("p"; &it.text));
    let says = bench.says.iter().map(|it| el!("li"; &it.text));
    el!("div", "class" = "bench";
        el!("div"; fold_while("cautions", "Caution: read this first", is_new, all(bench.cautions.iter().map(caution))), tool),
        el!("div"; now.map(|now| asked(props, bench, now, &chosen))),
        el!("ul", "class" = "says", "aria-live" = "polite"; all(says)),
        el!("ol", "class" = "channels", "aria-label" = "Channels, in the order of firing";
            all(bench.channels.iter().map(|it| channel(it, now, &chosen)))),
        clear(bench, &props.page.send),
    )
    .into()
}

/// What is fired now, and what may answer.
fn asked(
    props: &Props,
    bench: &Bench,
    now: &BenchChannel,
    chosen: &UseStateHandle<Option<u32>>,
) -> View {
    let path = format!("{}.{}", bench.list, now.channel.saturating_sub(1));
    let text = props.page.state.plan.get(&path).unwrap_or_default();
    let words = words_of(text);
    let answer = |word: &str, label: String| {
        let is_there = words.contains(&word);
        // where one cylinder answers, a second tap corrects the first
        let is_one = now.expected <= 1 || word == NOTHING;
        let replaces = !is_there && (now.again || is_one);
        let after = if replaces { word.to_owned() } else { tapped(text, word) };
        // once all have answered, it goes on with what tells most
        let is_full = !is_there && (word == NOTHING || words_of(&after).len() >= now.expected);
        let (send, chosen) = (props.page.send.clone(), chosen.clone());
        let (path, stay) = (path.clone(), now.channel);
        let tap = Callback::from(move |_| {
            chosen.set((!is_full).then_some(stay));
            send.dispatch(Action::Choose(path.clone(), after.clone()));
        });
        let pressed = if is_there { "true" } else { "false" };
        keyed(
            word,
            on_click(el!("button", "type" = "button", "aria-pressed" = pressed; label), tap),
        )
    };
    let nothing = if words.is_empty() { "Nothing fires" } else { "Nothing else" };
    several!(
        el!("p", "class" = "ask", "id" = focus::ASK, "tabindex" = "-1"; whole(&now.ask.text)),
        el!("div", "class" = "answers";
            all(bench.targets.iter().map(|it| answer(it, it.clone())))),
        el!("div", "class" = "none"; answer(NOTHING, nothing.to_owned())),
    )
}

/// A channel and what answered to it; pressed, it is the one that is fired.
fn channel(
    it: &BenchChannel,
    now: Option<&BenchChannel>,
    chosen: &UseStateHandle<Option<u32>>,
) -> View {
    let is_now = now.is_some_and(|now| now.channel == it.channel);
    let found = if it.found.is_empty() { "?" } else { it.found.as_str() };
    let stands = it.stands.as_ref().map(|it| el!("small"; &it.text));
    let number = it.channel;
    let choose = {
        let chosen = chosen.clone();
        Callback::from(move |_| {
            chosen.set(Some(number));
            focus::to_ask();
        })
    };
    let label = several!(el!("span"; format!("Channel {number} → {found}")), stands);
    let current = is_now.then_some("step");
    el!("li"; on_click(el!("button", "type" = "button", "aria-current" = current; label), choose))
}

fn clear(bench: &Bench, send: &Dispatch) -> View {
    let paths = bench.channels.iter().map(|it| format!("{}.{}", bench.list, it.channel - 1));
    let paths = paths.chain([bench.done.clone()]).collect();
    button(Some("quiet"), "Clear and test again", sending(send, Action::Clear(paths)))
}
