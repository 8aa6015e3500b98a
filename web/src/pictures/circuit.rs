//! An output and its load, with the current's path in each key state.
//!
//! Symbols in the manner of IEC 60617: a rectangle for a load or resistor, an arrow and bar for a diode, an
//! open or closed lever for a switch. What carries current is drawn thick, and said in words below.

use quietpin_core::report::{Circuit, CircuitState};
use yew::prelude::*;

use super::{disc, horizontal, label, line, vertical, whole};
use crate::{
    element::{Step, View, all, el, keyed, nothing, on_click, on_swipe, several},
    words,
};

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
    let start = use_mut_ref(|| None::<i32>);
    let now = chosen.unwrap_or(worst).min(circuit.states.len().saturating_sub(1));
    let Some(state) = circuit.states.get(now) else { return Html::default() };
    let buttons = circuit.states.iter().enumerate().map(|(at, it)| {
        let chosen = chosen.clone();
        let choose = Callback::from(move |_| chosen.set(Some(at)));
        keyed(it.state, on_click(state_button(it, at == now), choose))
    });
    let drawn = el!("svg", "viewBox" = "0 0 340 300", "role" = "img", "class" = "swiped",
        "aria-label" = format!("{} {}", state.name.text, state.summary.text);
        drawing(circuit, state),
    );
    let last = circuit.states.len().saturating_sub(1);
    let shown = chosen.clone();
    let step = Callback::from(move |steps: Step| {
        shown.set(Some(match steps {
            Step::Back => now.saturating_sub(1),
            Step::Forth => (now + 1).min(last),
        }));
    });
    el!("figure", "class" = "picture circuit";
        el!("div", "class" = "states", "role" = "group", "aria-label" = "Key state"; all(buttons)),
        on_swipe(drawn, &start, &step),
        el!("figcaption", "aria-live" = "polite"; summary(state)),
        el!("ul", "class" = "all-states"; all(circuit.states.iter().map(|it| el!("li"; summary(it))))),
    )
    .into()
}

fn state_button(it: &CircuitState, is_chosen: bool) -> View {
    el!("button", "type" = "button", "class" = format!("state {}", words::tone_class(it.tone)),
        "aria-pressed" = if is_chosen { "true" } else { "false" };
        el!("span", "class" = "sign", "aria-hidden" = "true"; words::tone_sign(it.tone)),
        &it.name.text,
    )
}

fn summary(it: &CircuitState) -> View {
    several!(el!("strong"; &it.name.text, ": "), &it.summary.text)
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
const BESIDE: f64 = 306.0;
const RIGHT: f64 = 336.0;

fn drawing(circuit: &Circuit, state: &CircuitState) -> View {
    let has_upper = circuit.stage != "open-drain";
    let has_lower = circuit.stage != "high-side";
    several!(
        el!(
            "rect",
            "class" = "frame",
            "x" = "40",
            "y" = "20",
            "width" = EDGE - 40.0,
            "height" = "260",
            "rx" = "3"
        ),
        el!("text", "class" = "scale", "x" = "44", "y" = "15"; "controller"),
        has_upper.then(|| upper(circuit, state)),
        has_lower.then(|| lower(state)),
        pulls(circuit, state),
        pin(circuit, state),
        load(circuit, state),
        lost(state),
    )
}

/// A cross where something is cut that should not be.
fn lost(state: &CircuitState) -> View {
    let (x, y) = match state.state {
        "feed-lost" => (LOAD, RAIL + 14.0),
        "ground-lost" => (SWITCH, GROUND),
        "supply-lost" => (SWITCH, RAIL),
        _ => return nothing(),
    };
    let strokes = format!("M{} {}l16 16m0 -16l-16 16", whole(x - 8.0), whole(y - 8.0));
    el!("path", "class" = "part live", "d" = strokes)
}

fn current(state: &CircuitState, part: &str) -> f64 {
    let branch = state.currents.iter().find(|it| it.part == part);
    branch.and_then(|it| it.current.number).unwrap_or(0.0)
}

/// Whether a branch carries enough to be drawn as a path: a milliampere lights an LED.
fn is_live(amperes: f64) -> bool {
    amperes.abs() >= 0.5e-3
}

fn class_of(amperes: f64) -> &'static str {
    if is_live(amperes) { "wire live" } else { "wire" }
}

fn part_class(amperes: f64) -> &'static str {
    if is_live(amperes) { "part live" } else { "part" }
}

fn upper(circuit: &Circuit, state: &CircuitState) -> View {
    let rail = match circuit.stage {
        "logic" => label("scale", SWITCH, RAIL - 8.0, Some("middle"), "5 V"),
        _ => value("rail", state.rail.as_ref().map(|it| it.shown.as_str()), 46.0, RAIL - 8.0),
    };
    let (switch, diode) = (current(state, "upper-switch"), current(state, "upper-diode"));
    several!(
        horizontal("wire", SWITCH - 14.0, PULL, RAIL),
        rail,
        lever(SWITCH, RAIL, PIN, switch, state.drive == "upper"),
        diode_up(DIODE, RAIL, PIN, diode),
    )
}

fn lower(state: &CircuitState) -> View {
    let (switch, diode) = (current(state, "lower-switch"), current(state, "lower-diode"));
    several!(
        lever(SWITCH, PIN, GROUND, switch, state.drive == "lower"),
        diode_up(DIODE, PIN, GROUND, diode),
        horizontal("wire", SWITCH - 14.0, PULL, GROUND),
        earth(SWITCH, GROUND),
    )
}

fn pulls(circuit: &Circuit, state: &CircuitState) -> View {
    let (up, down) = (current(state, "pull-up"), current(state, "pull-down"));
    let pull_up = |rail| {
        several!(
            resistor(PULL, RAIL, PIN, up),
            label("scale", PULL, RAIL - 4.0, Some("middle"), rail_name(rail)),
        )
    };
    let pull_down = || several!(resistor(PULL, PIN, GROUND, down), earth(PULL, GROUND));
    several!(circuit.pull_up.map(pull_up), circuit.pull_down.then(pull_down))
}

fn pin(circuit: &Circuit, state: &CircuitState) -> View {
    let carries = class_of(current(state, "load"));
    let left = if circuit.pull_up.is_some() || circuit.pull_down { "wire" } else { carries };
    let shown = state.pin.as_ref().map_or("floats", |it| it.shown.as_str());
    // on the side of the wire where the load is not
    let beside = if circuit.far_end == "ground" { PIN - 8.0 } else { PIN + 18.0 };
    several!(
        horizontal(left, SWITCH, PULL, PIN),
        horizontal(carries, PULL, LOAD, PIN),
        disc("pin", EDGE, PIN, "5"),
        value("pin", Some(shown), EDGE + 8.0, beside),
    )
}

/// The load, up to a feed or down to ground.
fn load(circuit: &Circuit, state: &CircuitState) -> View {
    let amperes = current(state, "load");
    let far = if circuit.far_end == "ground" { GROUND } else { RAIL };
    let (top, bottom) = if far < PIN { (far, PIN) } else { (PIN, far) };
    let class = class_of(amperes);
    let middle = f64::midpoint(top, bottom);
    several!(
        vertical(class, LOAD, top, middle - 20.0),
        vertical(class, LOAD, middle + 20.0, bottom),
        el!(
            "rect",
            "class" = part_class(amperes),
            "x" = LOAD - 12.0,
            "y" = middle - 20.0,
            "width" = "24",
            "height" = "40"
        ),
        matches!(circuit.load, "led" | "solid-state").then(|| one_way(
            middle,
            amperes,
            circuit.is_driven_up
        )),
        load_name(circuit, middle),
        suppressor(circuit, state, middle),
        arrow(LOAD, middle, amperes, far < PIN),
        if circuit.far_end == "ground" { earth(LOAD, GROUND) } else { feed(circuit, state) },
    )
}

/// To the right of the load, or to its left where something lies across it.
fn load_name(circuit: &Circuit, middle: f64) -> View {
    let name = circuit.load.replace('-', " ");
    let (x, anchor) = match circuit.suppressor {
        None => (LOAD + 17.0, None),
        Some(_) => (LOAD - 30.0, Some("end")),
    };
    label("scale", x, middle + 4.0, anchor, &name)
}

/// What lies across the load's winding.
fn suppressor(circuit: &Circuit, state: &CircuitState, middle: f64) -> View {
    let Some(kind) = circuit.suppressor else { return nothing() };
    let amperes = current(state, "suppressor");
    let (top, bottom) = (middle - 30.0, middle + 30.0);
    let class = class_of(amperes);
    let part = match kind {
        "diode-up" => diode_up(BESIDE, top, bottom, amperes),
        "resistor" => resistor(BESIDE, top, bottom, amperes),
        _ => diode_down(BESIDE, top, bottom, amperes),
    };
    let shown = state.currents.iter().find(|it| it.part == "suppressor");
    let shown = shown.filter(|_| is_live(amperes)).map(|it| it.current.shown.as_str());
    // which way it flows is drawn
    let shown = shown.map(|it| it.trim_start_matches(['−', '-']));
    several!(
        horizontal(class, LOAD, BESIDE, top),
        part,
        horizontal(class, LOAD, BESIDE, bottom),
        shown.map(|it| label("value", RIGHT, bottom + 16.0, Some("end"), it)),
    )
}

/// The diode in a load: it points where the current goes when the load acts.
fn one_way(middle: f64, amperes: f64, is_up: bool) -> View {
    let x = whole(LOAD - 8.0);
    let strokes = if is_up {
        format!("M{x} {}h16l-8 -14zm0 -14h16", whole(middle + 7.0))
    } else {
        format!("M{x} {}h16l-8 14zm0 14h16", whole(middle - 7.0))
    };
    el!("path", "class" = part_class(amperes), "d" = strokes)
}

fn feed(circuit: &Circuit, state: &CircuitState) -> View {
    several!(
        horizontal("wire", LOAD - 14.0, LOAD + 14.0, RAIL),
        label("scale", LOAD, RAIL - 20.0, Some("middle"), feed_name(circuit.far_end)),
        value("", state.far.as_ref().map(|it| it.shown.as_str()), LOAD - 14.0, RAIL - 6.0),
    )
}

fn rail_name(rail: &str) -> &'static str {
    match rail {
        "battery" => "30",
        "5v" => "5 V",
        "3v3" => "3.3 V",
        _ => "",
    }
}

fn feed_name(far_end: &str) -> &'static str {
    match far_end {
        "battery" => "30",
        "ignition" => "15",
        "relay" => "87",
        "output" => "other output",
        "5v" => "5 V",
        _ => "",
    }
}

fn value(name: &str, shown: Option<&str>, x: f64, y: f64) -> View {
    let Some(shown) = shown else { return nothing() };
    let text = if name.is_empty() { shown.to_owned() } else { format!("{name} {shown}") };
    label("value", x, y, None, &text)
}

/// A switch between two heights.
fn lever(x: f64, top: f64, bottom: f64, amperes: f64, is_closed: bool) -> View {
    let class = class_of(amperes);
    let (a, b) = (top + 34.0, bottom - 34.0);
    let tip = if is_closed { x } else { x - 16.0 };
    el!("g";
        vertical(class, x, top, a),
        line(class, (x, b), (tip, a)),
        vertical(class, x, b, bottom),
    )
}

/// A diode that lets current pass upwards.
fn diode_up(x: f64, top: f64, bottom: f64, amperes: f64) -> View {
    let (class, part) = (class_of(amperes), part_class(amperes));
    let middle = f64::midpoint(top, bottom);
    let triangle = format!("M{} {}h18l-9 -16z", whole(x - 9.0), whole(middle + 8.0));
    el!("g";
        vertical(class, x, top, middle - 8.0),
        vertical(class, x, middle + 8.0, bottom),
        el!("path", "class" = part, "d" = triangle),
        horizontal(part, x - 9.0, x + 9.0, middle - 8.0),
    )
}

/// A diode that lets current pass downwards.
fn diode_down(x: f64, top: f64, bottom: f64, amperes: f64) -> View {
    let (class, part) = (class_of(amperes), part_class(amperes));
    let middle = f64::midpoint(top, bottom);
    let triangle = format!("M{} {}h18l-9 16z", whole(x - 9.0), whole(middle - 8.0));
    el!("g";
        vertical(class, x, top, middle - 8.0),
        vertical(class, x, middle + 8.0, bottom),
        el!("path", "class" = part, "d" = triangle),
        horizontal(part, x - 9.0, x + 9.0, middle + 8.0),
    )
}

fn resistor(x: f64, top: f64, bottom: f64, amperes: f64) -> View {
    let class = class_of(amperes);
    let middle = f64::midpoint(top, bottom);
    el!("g";
        vertical(class, x, top, middle - 16.0),
        vertical(class, x, middle + 16.0, bottom),
        el!("rect", "class" = part_class(amperes), "x" = x - 7.0, "y" = middle - 16.0,
            "width" = "14", "height" = "32"),
    )
}

fn earth(x: f64, y: f64) -> View {
    let strokes = format!("M{} {}v8m-10 0h20m-16 4h12m-8 4h4", whole(x), whole(y));
    el!("path", "class" = "wire", "d" = strokes)
}

/// An arrow beside the load, the way the current flows; none where there is none.
fn arrow(x: f64, y: f64, amperes: f64, feed_above: bool) -> View {
    if !is_live(amperes) {
        return nothing();
    }
    // positive leaves the pin: upwards to a feed above, downwards to ground
    let up = (amperes > 0.0) == feed_above;
    let (tail, tip, head) = if up {
        (y + 18.0, y - 18.0, "m-5 7l5 -7l5 7")
    } else {
        (y - 18.0, y + 18.0, "m-5 -7l5 7l5 -7")
    };
    let (x, tail, tip) = (whole(x - 22.0), whole(tail), whole(tip));
    el!("path", "class" = "wire live arrow", "d" = format!("M{x} {tail}V{tip}{head}"))
}
