//! An output and its load, with the current's path in each key state.
//!
//! Symbols in the manner of IEC 60617: a rectangle for a load or resistor, an arrow and bar for a diode, an
//! open or closed lever for a switch. What carries current is drawn thick, and said in words below.

use quietpin_core::report::{Circuit, CircuitState};
use yew::prelude::*;

use super::{at, whole};
use crate::words;

#[derive(Properties, PartialEq)]
pub(crate) struct Props {
    pub(crate) circuit: Circuit,
}

#[component]
pub(crate) fn CircuitView(props: &Props) -> Html {
    let circuit = &props.circuit;
    // the state that most needs looking at is shown first
    let worst =
        circuit.states.iter().enumerate().min_by_key(|(_, it)| it.tone).map_or(0, |(at, _)| at);
    let chosen = use_state(|| None::<usize>);
    let now = chosen.unwrap_or(worst).min(circuit.states.len().saturating_sub(1));
    let Some(state) = circuit.states.get(now) else { return html! {} };
    let choose = |to: usize| {
        let chosen = chosen.clone();
        Callback::from(move |_: MouseEvent| chosen.set(Some(to)))
    };
    html! {
        <figure class="picture circuit">
            <div class="states" role="group" aria-label="Key state">
                { for circuit.states.iter().enumerate().map(|(at, it)| html! {
                    <button type="button" key={it.state} class={classes!("state", words::tone_class(it.tone))}
                        aria-pressed={if at == now { "true" } else { "false" }} onclick={choose(at)}>
                        <span class="sign" aria-hidden="true">{ words::tone_sign(it.tone) }</span>{ &it.name.text }
                    </button>
                }) }
            </div>
            <svg viewBox="0 0 340 300" role="img" aria-label={format!("{} {}", state.name.text, state.summary.text)}>
                { drawing(circuit, state) }
            </svg>
            <figcaption aria-live="polite"><strong>{ &state.name.text }{ ": " }</strong>{ &state.summary.text }</figcaption>
            <ul class="all-states">
                { for circuit.states.iter().map(|it| html! { <li><strong>{ &it.name.text }{ ": " }</strong>{ &it.summary.text }</li> }) }
            </ul>
        </figure>
    }
}

/// Where the parts stand. The controller is the frame on the left, the load hangs on the pin to its right.
const RAIL: f64 = 46.0;
const PIN: f64 = 150.0;
const GROUND: f64 = 254.0;
const SWITCH: f64 = 78.0;
const DIODE: f64 = 118.0;
const PULL: f64 = 158.0;
const EDGE: f64 = 190.0;
const LOAD: f64 = 270.0;

fn drawing(circuit: &Circuit, state: &CircuitState) -> Html {
    let has_upper = circuit.stage != "open-drain";
    let has_lower = circuit.stage != "high-side";
    html! {
        <>
            <rect class="frame" x="40" y="20" width={at(EDGE - 40.0)} height="260" rx="3" />
            <text class="scale" x="44" y="15">{ "controller" }</text>
            if has_upper { { upper(state) } }
            if has_lower { { lower(state) } }
            { pulls(circuit, state) }
            { pin(circuit, state) }
            { load(circuit, state) }
        </>
    }
}

fn current(state: &CircuitState, part: &str) -> f64 {
    let branch = state.currents.iter().find(|it| it.part == part);
    branch.and_then(|it| it.current.number).unwrap_or(0.0)
}

/// Whether a branch carries enough to be drawn as a path: a milliampere lights an LED.
fn class_of(amperes: f64) -> &'static str {
    if amperes.abs() >= 0.5e-3 { "wire live" } else { "wire" }
}

fn upper(state: &CircuitState) -> Html {
    let (switch, diode) = (current(state, "upper-switch"), current(state, "upper-diode"));
    html! {
        <>
            { bar(RAIL, SWITCH - 14.0, PULL, "wire") }
            { value("rail", state.rail.as_ref().map(|it| it.shown.as_str()), 46.0, RAIL - 8.0) }
            { lever(SWITCH, RAIL, PIN, switch) }
            { diode_up(DIODE, RAIL, PIN, diode) }
        </>
    }
}

fn lower(state: &CircuitState) -> Html {
    let (switch, diode) = (current(state, "lower-switch"), current(state, "lower-diode"));
    html! {
        <>
            { lever(SWITCH, PIN, GROUND, switch) }
            { diode_up(DIODE, PIN, GROUND, diode) }
            { bar(GROUND, SWITCH - 14.0, PULL, "wire") }
            { earth(SWITCH, GROUND) }
        </>
    }
}

fn pulls(circuit: &Circuit, state: &CircuitState) -> Html {
    let (up, down) = (current(state, "pull-up"), current(state, "pull-down"));
    html! {
        <>
            if let Some(rail) = circuit.pull_up {
                { resistor(PULL, RAIL, PIN, up) }
                <text class="scale" x={at(PULL)} y={at(RAIL - 4.0)} text-anchor="middle">{ rail_name(rail) }</text>
            }
            if circuit.pull_down { { resistor(PULL, PIN, GROUND, down) } { earth(PULL, GROUND) } }
        </>
    }
}

fn pin(circuit: &Circuit, state: &CircuitState) -> Html {
    let carries = class_of(current(state, "load"));
    let left = if circuit.pull_up.is_some() || circuit.pull_down { "wire" } else { carries };
    html! {
        <>
            { bar(PIN, SWITCH, PULL, left) }
            { bar(PIN, PULL, LOAD, carries) }
            <circle class="pin" cx={at(EDGE)} cy={at(PIN)} r="5" />
            { value("pin", Some(state.pin.as_ref().map_or("floats", |it| it.shown.as_str())), EDGE + 8.0, PIN - 8.0) }
        </>
    }
}

/// The load, up to a feed or down to ground.
fn load(circuit: &Circuit, state: &CircuitState) -> Html {
    let amperes = current(state, "load");
    let far = if circuit.far_end == "ground" { GROUND } else { RAIL };
    let (top, bottom) = if far < PIN { (far, PIN) } else { (PIN, far) };
    let class = class_of(amperes);
    let middle = f64::midpoint(top, bottom);
    html! {
        <>
            <line class={class} x1={at(LOAD)} x2={at(LOAD)} y1={at(top)} y2={at(middle - 20.0)} />
            <line class={class} x1={at(LOAD)} x2={at(LOAD)} y1={at(middle + 20.0)} y2={at(bottom)} />
            <rect class={classes!("part", (class == "wire live").then_some("live"))} x={at(LOAD - 12.0)} y={at(middle - 20.0)} width="24" height="40" />
            <text class="scale" x={at(LOAD + 17.0)} y={at(middle + 4.0)}>{ circuit.load.replace('-', " ") }</text>
            { arrow(LOAD, middle, amperes, far < PIN) }
            if circuit.far_end == "ground" { { earth(LOAD, GROUND) } } else { { feed(circuit, state) } }
        </>
    }
}

fn feed(circuit: &Circuit, state: &CircuitState) -> Html {
    html! {
        <>
            { bar(RAIL, LOAD - 14.0, LOAD + 14.0, "wire") }
            <text class="scale" x={at(LOAD)} y={at(RAIL - 20.0)} text-anchor="middle">{ feed_name(circuit.far_end) }</text>
            { value("", state.far.as_ref().map(|it| it.shown.as_str()), LOAD - 14.0, RAIL - 6.0) }
        </>
    }
}

fn rail_name(rail: &str) -> &'static str {
    match rail {
        "battery" => "30",
        "5v" => "5 V",
        _ => "",
    }
}

fn feed_name(far_end: &str) -> &'static str {
    match far_end {
        "battery" => "30",
        "ignition" => "15",
        "relay" => "87",
        _ => "",
    }
}

fn value(name: &str, shown: Option<&str>, x: f64, y: f64) -> Html {
    let Some(shown) = shown else { return html! {} };
    let text = if name.is_empty() { shown.to_owned() } else { format!("{name} {shown}") };
    html! { <text class="value" x={at(x)} y={at(y)}>{ text }</text> }
}

fn bar(y: f64, from: f64, to: f64, class: &'static str) -> Html {
    html! { <line {class} x1={at(from)} x2={at(to)} y1={at(y)} y2={at(y)} /> }
}

/// A switch between two heights: closed where it carries current, else open.
fn lever(x: f64, top: f64, bottom: f64, amperes: f64) -> Html {
    let class = class_of(amperes);
    let (a, b) = (top + 34.0, bottom - 34.0);
    let tip = if class == "wire live" { x } else { x - 16.0 };
    html! {
        <g>
            <line {class} x1={at(x)} x2={at(x)} y1={at(top)} y2={at(a)} />
            <line {class} x1={at(x)} x2={at(tip)} y1={at(b)} y2={at(a)} />
            <line {class} x1={at(x)} x2={at(x)} y1={at(b)} y2={at(bottom)} />
        </g>
    }
}

/// A diode that lets current pass upwards.
fn diode_up(x: f64, top: f64, bottom: f64, amperes: f64) -> Html {
    let class = class_of(amperes);
    let middle = f64::midpoint(top, bottom);
    let part = if class == "wire live" { "part live" } else { "part" };
    html! {
        <g>
            <line {class} x1={at(x)} x2={at(x)} y1={at(top)} y2={at(middle - 8.0)} />
            <line {class} x1={at(x)} x2={at(x)} y1={at(middle + 8.0)} y2={at(bottom)} />
            <path class={part} d={format!("M{} {}h18l-9 -16z", whole(x - 9.0), whole(middle + 8.0))} />
            <line class={part} x1={at(x - 9.0)} x2={at(x + 9.0)} y1={at(middle - 8.0)} y2={at(middle - 8.0)} />
        </g>
    }
}

fn resistor(x: f64, top: f64, bottom: f64, amperes: f64) -> Html {
    let class = class_of(amperes);
    let middle = f64::midpoint(top, bottom);
    let part = if class == "wire live" { "part live" } else { "part" };
    html! {
        <g>
            <line {class} x1={at(x)} x2={at(x)} y1={at(top)} y2={at(middle - 16.0)} />
            <line {class} x1={at(x)} x2={at(x)} y1={at(middle + 16.0)} y2={at(bottom)} />
            <rect class={part} x={at(x - 7.0)} y={at(middle - 16.0)} width="14" height="32" />
        </g>
    }
}

fn earth(x: f64, y: f64) -> Html {
    html! { <path class="wire" d={format!("M{} {}v8m-10 0h20m-16 4h12m-8 4h4", whole(x), whole(y))} /> }
}

/// An arrow beside the load, the way the current flows; none where there is none.
fn arrow(x: f64, y: f64, amperes: f64, feed_above: bool) -> Html {
    if amperes.abs() < 0.5e-3 {
        return html! {};
    }
    // positive leaves the pin: upwards to a feed above, downwards to ground
    let up = (amperes > 0.0) == feed_above;
    let (tail, tip, head) = if up {
        (y + 18.0, y - 18.0, "m-5 7l5 -7l5 7")
    } else {
        (y - 18.0, y + 18.0, "m-5 -7l5 7l5 -7")
    };
    let (x, tail, tip) = (whole(x - 22.0), whole(tail), whole(tip));
    html! { <path class="wire live arrow" d={format!("M{x} {tail}V{tip}{head}")} /> }
}
