//! Outputs and loads from their fields.

use super::{Conditions, Entry, Reader, problem::shortened};
use crate::{
    finding::{Finding, Severity},
    output::{FarEnd, Kind, Load, OnLevel, Output, PullRail, Stage, SupplyCorner, Surroundings},
    plan::MOST_ENTRIES,
    quantity::{Band, Measure, Resistance, Value, Voltage, ohms},
    say,
};

/// All outputs and loads of a plan.
#[derive(Debug)]
pub(crate) struct PlannedRest {
    pub(crate) outputs: Vec<PlannedOutput>,
    pub(crate) loads: Vec<PlannedLoad>,
    pub(crate) around: Surroundings,
    /// Whether the resistance of the controller's dead supply was taken rather than typed.
    pub(crate) is_dead_rail_assumed: bool,
    /// The same for a dead feed.
    pub(crate) is_dead_feed_assumed: bool,
}

/// An output of the plan.
#[derive(Debug)]
pub(crate) struct PlannedOutput {
    pub(crate) name: String,
    /// Nothing while its stage is not known, or a field of it can't be read.
    pub(crate) output: Option<Output>,
    /// Whether a field of it can't be read: an unreadable pull-up is not the same as none.
    pub(crate) is_unreadable: bool,
}

/// A load of the plan.
#[derive(Debug)]
pub(crate) struct PlannedLoad {
    pub(crate) path: String,
    pub(crate) name: String,
    pub(crate) link: Link,
    pub(crate) far_end: Option<FarEnd>,
    pub(crate) unasked: Unasked,
    pub(crate) kind: Kind,
    pub(crate) resistance: Band<Resistance>,
    pub(crate) pull_in: Band<Voltage>,
    pub(crate) drop_out: Band<Voltage>,
    pub(crate) is_resistance_assumed: bool,
    pub(crate) is_pull_in_assumed: bool,
    /// Whether a field of it can't be read.
    pub(crate) is_unreadable: bool,
}

/// The output a load hangs on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Link {
    /// The output with this number.
    To(usize),
    /// None is named.
    Blank,
    /// One is named that the plan doesn't have; its finding is reported.
    Nowhere,
}

/// What it means if a load acts unasked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Unasked {
    Harmless,
    Costly,
    Dangerous,
}

impl PlannedLoad {
    /// The load with its other end there.
    pub(crate) fn to(&self, far_end: FarEnd) -> Load {
        Load {
            kind: self.kind,
            far_end,
            resistance: self.resistance,
            pull_in: self.pull_in,
            drop_out: self.drop_out,
        }
    }
}

/// Reads the outputs, then the loads that name them.
pub(crate) fn rest(reader: &mut Reader<'_>, conditions: &Conditions) -> PlannedRest {
    let count = limited(reader, "outputs", "Outputs", reader.plan().outputs.len());
    let mut outputs: Vec<_> = (0..count).map(|at| output(reader, at)).collect();
    tell_doubles_apart(reader, &mut outputs);
    let count = limited(reader, "loads", "Loads", reader.plan().loads.len());
    let loads = (0..count).map(|at| load(reader, at, &outputs)).collect();
    let dead_rail = dead(reader, "conditions.dead_supply");
    let dead_feed = dead(reader, "conditions.dead_feed");
    PlannedRest {
        outputs,
        loads,
        is_dead_rail_assumed: !matches!(dead_rail, Entry::Given(_)),
        is_dead_feed_assumed: !matches!(dead_feed, Entry::Given(_)),
        around: surroundings(
            conditions,
            dead_rail.value().unwrap_or_else(usual_dead),
            dead_feed.value().unwrap_or_else(usual_dead),
        ),
    }
}

fn limited(reader: &mut Reader<'_>, path: &str, name: &str, count: usize) -> usize {
    if count > MOST_ENTRIES {
        let message = say!("field.too-many", field = name, count = count, most = MOST_ENTRIES);
        reader.unusable(Finding::new(Severity::Fault, path, message));
    }
    count.min(MOST_ENTRIES)
}

/// From a feed with many consumers to one with a single controller; a relay and a lamp between.
fn usual_dead() -> Band<Resistance> {
    Band { low: ohms(5.0), nominal: ohms(47.0), high: ohms(1000.0) }
}

fn dead(reader: &mut Reader<'_>, path: &str) -> Entry<Band<Resistance>> {
    let entry = reader.band::<Resistance>(path);
    // the middle of such a band means nothing: a typical feed lies near its geometric mean
    if entry.is_assumed() { Entry::Assumed(usual_dead()) } else { entry }
}

fn surroundings(
    conditions: &Conditions,
    dead_rail: Band<Resistance>,
    dead_feed: Band<Resistance>,
) -> Surroundings {
    let [cold_crank, hot_crank, nominal, cold_charge, hot_charge] =
        conditions.corners().map(|corner| SupplyCorner {
            name: corner.name,
            supply: corner.supply,
            temperature: corner.temperature,
            is_cranking: false,
        });
    let cranking = |corner| SupplyCorner { is_cranking: true, ..corner };
    let hot_rest =
        SupplyCorner { name: "at rest, hot", supply: conditions.supply.nominal, ..hot_charge };
    Surroundings {
        corners: vec![
            cranking(cold_crank),
            cranking(hot_crank),
            nominal,
            hot_rest,
            cold_charge,
            hot_charge,
        ],
        nominal,
        dead_rail,
        dead_feed,
    }
}

fn name(reader: &mut Reader<'_>, path: &str, usual: String) -> String {
    let typed = reader.text(path);
    if typed.is_empty() {
        let value = Value::text(usual.clone());
        reader.or_assume(path, Entry::Missing, (), value, "its place in the list");
        return usual;
    }
    let shown = shortened(typed);
    reader.given(path, shown.clone());
    shown
}

fn output(reader: &mut Reader<'_>, at: usize) -> PlannedOutput {
    let path = |field: &str| format!("outputs.{at}.{field}");
    let name = name(reader, &path("name"), format!("output {}", at + 1));
    let stage = reader.choice(&path("stage"));
    let on_level = reader.choice(&path("on_level"));
    let on_resistance = reader.band(&path("on_resistance"));
    let current_limit = reader.band(&path("current_limit"));
    let pull_up = reader.band(&path("pull_up"));
    let rail = pull_rail(reader, &path("pull_up_rail"), pull_up.value().is_some());
    let pull_down = reader.band(&path("pull_down"));
    let is_unreadable = [stage, on_level, rail].contains(&Entry::Unreadable)
        || [on_resistance, pull_up, pull_down].contains(&Entry::Unreadable)
        || current_limit == Entry::Unreadable;
    let output = stage.value().and_then(stage_of).filter(|_| !is_unreadable);
    let output = output.map(|stage| Output {
        stage,
        on_level: on_level.value().map(level_of),
        on_resistance: on_resistance.value().unwrap_or(Band::exact(ohms(0.1))),
        current_limit: current_limit.value(),
        pull_up: pull_up.value().map(|band| (band, rail_of(rail.value()))),
        pull_down: pull_down.value(),
    });
    PlannedOutput { name, output, is_unreadable }
}

fn level_of(code: &str) -> OnLevel {
    if code == "battery" { OnLevel::Battery } else { OnLevel::Ground }
}

fn stage_of(code: &str) -> Option<Stage> {
    match code {
        "open-drain" => Some(Stage::OpenDrain),
        "high-side" => Some(Stage::HighSide),
        "half-bridge" => Some(Stage::HalfBridge),
        _ => None,
    }
}

fn pull_rail(reader: &mut Reader<'_>, path: &str, is_asked: bool) -> Entry<&'static str> {
    let entry = reader.choice(path);
    if !is_asked {
        return entry;
    }
    let basis = "the worst that is usual, until the pin table says otherwise";
    reader.or_assume(path, entry, "battery", "Permanent battery (30)", basis)
}

fn rail_of(code: Option<&str>) -> PullRail {
    match code {
        Some("controller") => PullRail::Controller,
        Some("5v") => PullRail::FiveVolt,
        _ => PullRail::Battery,
    }
}

/// Reports an output that bears the name of an earlier one, and adds its number to the name: a load that names it
/// without is taken to mean the first.
fn tell_doubles_apart(reader: &mut Reader<'_>, outputs: &mut [PlannedOutput]) {
    let mut seen: Vec<String> = Vec::new();
    for (at, output) in outputs.iter_mut().enumerate() {
        if seen.iter().any(|name| same_name(name, &output.name)) {
            let message = say!("rest.output-named-twice", name = output.name.clone());
            let path = format!("outputs.{at}.name");
            reader.unusable(Finding::new(Severity::Fault, path, message));
            output.name = format!("{} (output {})", output.name, at + 1);
        }
        seen.push(output.name.clone());
    }
}

fn same_name(one: &str, other: &str) -> bool {
    one.trim().eq_ignore_ascii_case(other.trim())
}

fn load(reader: &mut Reader<'_>, at: usize, outputs: &[PlannedOutput]) -> PlannedLoad {
    let path = |field: &str| format!("loads.{at}.{field}");
    let name = name(reader, &path("name"), format!("load {}", at + 1));
    let far_end = reader.choice(&path("far_end"));
    let link = link(reader, &path("output"), outputs);
    let kind_entry = reader.choice(&path("kind"));
    let kind = kind_entry.value().map_or(Kind::RelayCoil, kind_of);
    let unasked = reader.choice(&path("unasked"));
    let resistance =
        usual(reader, &path("resistance"), kind.usual_resistance(), resistance_basis(kind));
    let pull_in = usual(reader, &path("pull_in"), kind.usual_pull_in(), level_basis(kind));
    let acts = pull_in.value().unwrap_or(kind.usual_pull_in());
    let drop_out = drop_out(reader, &path("drop_out"), kind, acts);
    let is_unreadable = [far_end, kind_entry, unasked].contains(&Entry::Unreadable)
        || [pull_in, drop_out].contains(&Entry::Unreadable)
        || resistance == Entry::Unreadable;
    PlannedLoad {
        path: format!("loads.{at}"),
        name,
        link,
        far_end: far_end.value().and_then(far_end_of),
        unasked: unasked_of(unasked.value()),
        kind,
        is_resistance_assumed: resistance.is_assumed(),
        is_pull_in_assumed: pull_in.is_assumed(),
        resistance: resistance.value().unwrap_or(kind.usual_resistance()),
        pull_in: acts,
        drop_out: drop_out.value().unwrap_or(below(kind.usual_drop_out(), acts)),
        is_unreadable,
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

fn link(reader: &mut Reader<'_>, path: &str, outputs: &[PlannedOutput]) -> Link {
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
    match outputs.iter().position(|output| same_name(&output.name, &shown)) {
        Some(at) => {
            reader.given(path, shown);
            Link::To(at)
        }
        None => {
            let names: Vec<_> = outputs.iter().map(|output| output.name.as_str()).collect();
            let choices = if names.is_empty() { "none".to_owned() } else { names.join(", ") };
            let message =
                say!("field.no-such-output", field = "On output", typed = shown, choices = choices);
            reader.unusable(Finding::new(Severity::Fault, path, message));
            Link::Nowhere
        }
    }
}

fn far_end_of(code: &str) -> Option<FarEnd> {
    match code {
        "ground" => Some(FarEnd::Ground),
        "battery" => Some(FarEnd::Battery),
        "ignition" => Some(FarEnd::Ignition),
        "relay" => Some(FarEnd::Relay),
        _ => None,
    }
}

fn kind_of(code: &str) -> Kind {
    match code {
        "solenoid" => Kind::Solenoid,
        "motor" => Kind::Motor,
        "lamp" => Kind::Lamp,
        "resistor" => Kind::Resistor,
        _ => Kind::RelayCoil,
    }
}

fn resistance_basis(kind: Kind) -> &'static str {
    match kind {
        Kind::RelayCoil => "data sheets of generic 12 V plug-in relays",
        Kind::Solenoid | Kind::Resistor => "common practice, no source",
        Kind::Motor => "a small motor, standing: common practice, no source",
        Kind::Lamp => "a lamp of 5 to 21 W, cold: common practice, no source",
    }
}

fn level_basis(kind: Kind) -> &'static str {
    match kind {
        Kind::RelayCoil => {
            "data sheets of five generic 12 V relays: 0.57 to 0.67 of nominal to act, 0.04 to 0.1 to let go"
        }
        _ => "a 12 V part: common practice, no source",
    }
}
