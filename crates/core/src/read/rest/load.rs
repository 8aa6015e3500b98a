//! One load from its fields.

use std::rc::Rc;

use super::{
    Assumed, Link, PlannedLoad, PlannedOutput, Stripe, Suppressed, Unasked, name, same_name,
};
use crate::{
    fields,
    finding::{Finding, Severity},
    output::{FarEnd, Kind, Pulse},
    quantity::{Band, Frequency, Inductance, Measure, Ratio, Resistance, Value, Voltage},
    read::{Entry, Reader, problem::shortened},
    say,
};

pub(super) fn load(
    reader: &mut Reader<'_>,
    at: usize,
    outputs: &[Rc<PlannedOutput>],
) -> PlannedLoad {
    let path = |field: &str| format!("loads.{at}.{field}");
    let name = name(reader, &path("name"), format!("load {}", at + 1));
    let far_end = reader.choice(&path("far_end"));
    let link = link(reader, &path("output"), outputs);
    let far_end_code = far_end.value();
    let partner = partner(reader, &path("far_output"), link, far_end_code, outputs);
    let kind_entry = reader.choice(&path("kind"));
    let kind = kind_entry.value().map_or(Kind::RelayCoil, kind_of);
    let unasked = reader.choice(&path("unasked"));
    let resistance =
        usual(reader, &path("resistance"), kind.usual_resistance(), resistance_basis(kind));
    let pull_in = usual(reader, &path("pull_in"), kind.usual_pull_in(), level_basis(kind));
    let acts = pull_in.value().unwrap_or(kind.usual_pull_in());
    let drop_out = drop_out(reader, &path("drop_out"), kind, acts);
    let inductance = inductance(reader, &path("inductance"), kind);
    let suppression = suppression(reader, at, kind);
    let pulse = pulse(reader, at);
    let is_unreadable = [far_end, kind_entry, unasked].contains(&Entry::Unreadable)
        || [pull_in, drop_out].contains(&Entry::Unreadable)
        || resistance == Entry::Unreadable
        || inductance == Entry::Unreadable
        || suppression.is_none()
        || pulse == Entry::Unreadable;
    PlannedLoad {
        path: format!("loads.{at}"),
        name,
        link,
        far_end: far_end_code
            .and_then(far_end_of)
            .filter(|it| *it != FarEnd::Output || partner.is_some()),
        partner,
        unasked: unasked_of(unasked.value()),
        kind,
        assumed: Assumed {
            resistance: resistance.is_assumed(),
            pull_in: pull_in.is_assumed(),
            inductance: inductance.is_assumed(),
        },
        resistance: resistance.value().unwrap_or(kind.usual_resistance()),
        pull_in: acts,
        drop_out: drop_out.value().unwrap_or(below(kind.usual_drop_out(), acts)),
        inductance: inductance.value().unwrap_or(kind.usual_inductance()),
        suppression: suppression.unwrap_or(Suppressed::Unknown),
        pulse: pulse.value(),
        is_unreadable,
    }
}

/// What is usual for the kind of load; nothing is taken for what has no winding.
fn inductance(reader: &mut Reader<'_>, path: &str, kind: Kind) -> Entry<Band<Inductance>> {
    let typical = kind.usual_inductance();
    if typical.high.base() <= 0.0 {
        // what is typed is read all the same, and kept
        let entry = reader.band::<Inductance>(path);
        return if entry == Entry::Unreadable { entry } else { Entry::Missing };
    }
    usual(reader, path, typical, "usual for its kind: common practice, no source")
}

/// Nothing where a field of it can't be read.
fn suppression(reader: &mut Reader<'_>, at: usize, kind: Kind) -> Option<Suppressed> {
    let path = |field: &str| format!("loads.{at}.{field}");
    let choice = reader.choice(&path("suppression"));
    let stripe = reader.choice(&path("stripe"));
    let resistor = reader.band::<Resistance>(&path("suppression_resistance"));
    if [choice, stripe].contains(&Entry::Unreadable) || resistor == Entry::Unreadable {
        return None;
    }
    if kind.usual_inductance().high.base() <= 0.0 {
        return Some(Suppressed::None);
    }
    let stripe = stripe.value().map(|code| match code {
        "pin" => Stripe::Pin,
        _ => Stripe::FarEnd,
    });
    Some(match (choice.value(), resistor.value()) {
        (Some("none"), _) => Suppressed::None,
        (Some("diode"), _) => Suppressed::Diode(stripe),
        (Some("resistor"), Some(band)) => Suppressed::Resistor(band),
        _ => Suppressed::Unknown,
    })
}

fn pulse(reader: &mut Reader<'_>, at: usize) -> Entry<Pulse> {
    let frequency = reader.band::<Frequency>(&format!("loads.{at}.frequency"));
    let duty = reader.band::<Ratio>(&format!("loads.{at}.duty"));
    match (frequency.value(), duty.value()) {
        (Some(frequency), Some(duty)) => Entry::Given(Pulse { frequency, duty }),
        _ if frequency == Entry::Unreadable || duty == Entry::Unreadable => Entry::Unreadable,
        _ => Entry::Missing,
    }
}

fn unasked_of(code: Option<&str>) -> Unasked {
    match code {
        Some("harmless") => Unasked::Harmless,
        Some("dangerous") => Unasked::Dangerous,
        _ => Unasked::Costly,
    }
}

/// A band, or what is usual for the kind of load.
fn usual<Q: Measure>(
    reader: &mut Reader<'_>,
    path: &str,
    usual: Band<Q>,
    basis: &str,
) -> Entry<Band<Q>> {
    let entry = reader.band::<Q>(path);
    let shown = format!("{} to {}", usual.low.show().shown, usual.high.show().shown);
    reader.or_assume(path, entry, usual, Value::text(shown), basis)
}

/// A part that lets go above the voltage at which it acts is none: the typed value is refused.
fn drop_out(
    reader: &mut Reader<'_>,
    path: &str,
    kind: Kind,
    acts: Band<Voltage>,
) -> Entry<Band<Voltage>> {
    let entry = usual(reader, path, below(kind.usual_drop_out(), acts), level_basis(kind));
    match entry {
        Entry::Given(band) if band.high >= acts.low => {
            let message = say!("rest.lets-go-above", drop_out = band.high, pull_in = acts.low);
            reader.unusable(Finding::new(Severity::Fault, path, message));
            Entry::Unreadable
        }
        other => other,
    }
}

/// What is usual at 12 V, scaled down where the part acts at less.
fn below(usual: Band<Voltage>, acts: Band<Voltage>) -> Band<Voltage> {
    if usual.high < acts.low {
        return usual;
    }
    let scale = 0.5 * acts.low.base() / usual.high.base();
    usual.map(|voltage| voltage * scale)
}

fn link(reader: &mut Reader<'_>, path: &str, outputs: &[Rc<PlannedOutput>]) -> Link {
    let typed = reader.text(path);
    if typed.is_empty() {
        if let [only] = outputs {
            let shown = Value::text(only.name.clone());
            reader.or_assume(path, Entry::Missing, (), shown, "the only output of the plan");
            return Link::To(0);
        }
        reader.missing(path);
        return Link::Blank;
    }
    let shown = shortened(typed);
    if let Some(at) = outputs.iter().position(|output| same_name(&output.name, &shown)) {
        reader.given(path, shown);
        return Link::To(at);
    }
    nowhere(reader, path, &shown, outputs);
    Link::Nowhere
}

/// The number of the output at the other end; nothing where it is not asked for, or not known.
fn partner(
    reader: &mut Reader<'_>,
    path: &str,
    link: Link,
    far_end: Option<&str>,
    outputs: &[Rc<PlannedOutput>],
) -> Option<usize> {
    let shown = shortened(reader.text(path));
    if shown.is_empty() {
        reader.missing(path);
        return None;
    }
    if far_end != Some("output") {
        // what stands there is kept for when it is asked for again
        reader.given(path, shown);
        return None;
    }
    let Some(at) = outputs.iter().position(|output| same_name(&output.name, &shown)) else {
        nowhere(reader, path, &shown, outputs);
        return None;
    };
    if link == Link::To(at) {
        let message = say!("rest.pair-of-one", output = shown);
        reader.unusable(Finding::new(Severity::Fault, path, message));
        return None;
    }
    reader.given(path, shown);
    outputs.get(at)?.output.as_ref().map(|_| at)
}

/// Reports a name that no output bears.
fn nowhere(reader: &mut Reader<'_>, path: &str, shown: &str, outputs: &[Rc<PlannedOutput>]) {
    let names: Vec<_> = outputs.iter().map(|output| output.name.as_str()).collect();
    let choices = if names.is_empty() { "none".to_owned() } else { names.join(", ") };
    let label = fields::find(path).map_or("", |field| field.label);
    let message = say!("field.no-such-output", field = label, typed = shown, choices = choices);
    reader.unusable(Finding::new(Severity::Fault, path, message));
}

fn far_end_of(code: &str) -> Option<FarEnd> {
    match code {
        "ground" => Some(FarEnd::Ground),
        "battery" => Some(FarEnd::Battery),
        "ignition" => Some(FarEnd::Ignition),
        "relay" => Some(FarEnd::Relay),
        "5v" => Some(FarEnd::FiveVolt),
        "output" => Some(FarEnd::Output),
        _ => None,
    }
}

fn kind_of(code: &str) -> Kind {
    match code {
        "solenoid" => Kind::Solenoid,
        "motor" => Kind::Motor,
        "lamp" => Kind::Lamp,
        "resistor" => Kind::Resistor,
        "led" => Kind::Led,
        "solid-state" => Kind::SolidState,
        "logic-input" => Kind::LogicInput,
        "gauge" => Kind::Gauge,
        _ => Kind::RelayCoil,
    }
}

fn resistance_basis(kind: Kind) -> &'static str {
    match kind {
        Kind::RelayCoil => "data sheets of generic 12 V plug-in relays",
        Kind::Solenoid | Kind::Resistor => "common practice, no source",
        Kind::Motor => "a small motor, standing: common practice, no source",
        Kind::Lamp => "a lamp of 5 to 21 W, cold: common practice, no source",
        Kind::Led => "the series resistor of a 12 V indicator: common practice, no source",
        Kind::SolidState => "a 3 to 32 V control input: common practice, no source",
        Kind::LogicInput | Kind::Gauge => {
            "what it is to ground, or to its own pull-up: common practice, no source"
        }
    }
}

fn level_basis(kind: Kind) -> &'static str {
    match kind {
        Kind::RelayCoil => {
            "data sheets of five generic 12 V relays: 0.57 to 0.67 of nominal to act, 0.04 to 0.1 to let go"
        }
        Kind::Led => "red to white, a glow in the dark to bright: common practice, no source",
        Kind::SolidState => "a 3 to 32 V control input, off below 1 V: common practice, no source",
        Kind::LogicInput => "5 V logic, 0.8 V low to 3.5 V high: common practice, no source",
        _ => "a 12 V part: common practice, no source",
    }
}
