//! Outputs and loads from their fields.

mod joined;
mod load;

use std::rc::Rc;

use super::{Conditions, Entry, Reader, again::Before, problem::shortened};
use crate::{
    finding::{Finding, Severity},
    output::{
        FarEnd, Kind, Load, OnLevel, Output, Partner, PullRail, Pulse, Stage, SupplyCorner,
        Suppression, Surroundings,
    },
    plan::{self, MOST_ENTRIES},
    quantity::{Band, Inductance, Resistance, Value, Voltage, ohms},
    say,
};

/// All outputs and loads of a plan.
#[derive(Debug)]
pub(crate) struct PlannedRest {
    pub(crate) outputs: Vec<Rc<PlannedOutput>>,
    pub(crate) loads: Vec<Rc<PlannedLoad>>,
    pub(crate) around: Rc<Surroundings>,
    /// Whether the resistance of the controller's dead supply was taken rather than typed.
    pub(crate) is_dead_rail_assumed: bool,
    /// The same for a dead feed.
    pub(crate) is_dead_feed_assumed: bool,
}

/// An output of the plan.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct PlannedOutput {
    pub(crate) name: String,
    /// Nothing while its stage is not known, or a field of it can't be read.
    pub(crate) output: Option<Output>,
    /// Whether a field of it can't be read: an unreadable pull-up is not the same as none.
    pub(crate) is_unreadable: bool,
}

/// A load of the plan.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct PlannedLoad {
    pub(crate) path: String,
    pub(crate) name: String,
    pub(crate) link: Link,
    pub(crate) far_end: Option<FarEnd>,
    /// The number of the output at its other end; nothing while that output's stage is not known.
    pub(crate) partner: Option<usize>,
    pub(crate) unasked: Unasked,
    pub(crate) kind: Kind,
    pub(crate) resistance: Band<Resistance>,
    pub(crate) pull_in: Band<Voltage>,
    pub(crate) drop_out: Band<Voltage>,
    pub(crate) assumed: Assumed,
    pub(crate) inductance: Band<Inductance>,
    pub(crate) suppression: Suppressed,
    pub(crate) pulse: Option<Pulse>,
    /// Whether a field of it can't be read.
    pub(crate) is_unreadable: bool,
}

/// What of a load was taken rather than typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Assumed {
    pub(crate) resistance: bool,
    pub(crate) pull_in: bool,
    pub(crate) inductance: bool,
}

/// What lies across a winding; which way round a diode is right hangs on the load's other end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Suppressed {
    Unknown,
    None,
    /// Where its stripe is; nothing where it was not said.
    Diode(Option<Stripe>),
    Resistor(Band<Resistance>),
}

/// The end of a load at which its diode's stripe (cathode) is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stripe {
    Pin,
    FarEnd,
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
    /// Whether it hangs on the output with this number, with either end.
    pub(crate) fn takes(&self, number: usize) -> bool {
        self.link == Link::To(number) || self.partner == Some(number)
    }

    /// The load with its other end there, at the output with this number among the pins where that is one; `level`
    /// counts as on at its own output.
    pub(crate) fn to(&self, far_end: FarEnd, far_pin: usize, level: OnLevel) -> Load {
        let partner = Partner { pin: far_pin, level };
        let mut load = Load {
            kind: self.kind,
            far_end,
            resistance: self.resistance,
            pull_in: self.pull_in,
            drop_out: self.drop_out,
            inductance: self.inductance,
            suppression: Suppression::Unknown,
            pulse: self.pulse,
            partner: (far_end == FarEnd::Output).then_some(partner),
            has_feed_diode: false,
        };
        load.suppression = self.suppression_of(&load);
        load
    }

    /// A diode is the right way round with its stripe where the plus is when the load is on.
    fn suppression_of(&self, load: &Load) -> Suppression {
        let plus = if load.is_from_pin() { Stripe::Pin } else { Stripe::FarEnd };
        match self.suppression {
            Suppressed::Unknown => Suppression::Unknown,
            Suppressed::None => Suppression::None,
            Suppressed::Resistor(band) => Suppression::Resistor(band),
            Suppressed::Diode(stripe) => {
                Suppression::Diode { is_right_way: stripe.is_none_or(|it| it == plus) }
            }
        }
    }
}

/// Outputs and loads as they were read last.
#[derive(Clone, Debug, Default)]
pub(crate) struct RestBefore {
    outputs: Before<plan::Output, PlannedOutput>,
    loads: Before<plan::Load, PlannedLoad>,
    /// What the loads were read with: the name of each output, and whether its stage is known.
    named: Vec<(String, bool)>,
}

/// Reads the outputs, then the loads that name them.
pub(crate) fn rest(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    before: &mut RestBefore,
) -> PlannedRest {
    let plan = reader.plan();
    let count = limited(reader, "outputs", "Outputs", reader.plan().outputs.len());
    let records = plan.outputs.get(..count).unwrap_or_default();
    let mut outputs = before.outputs.each(reader, "outputs", records, output);
    tell_doubles_apart(reader, &mut outputs);
    let named: Vec<_> = outputs.iter().map(|it| (it.name.clone(), it.output.is_some())).collect();
    if before.named != named {
        before.loads.forget();
        before.named = named;
    }
    let count = limited(reader, "loads", "Loads", reader.plan().loads.len());
    let records = plan.loads.get(..count).unwrap_or_default();
    let read = |reader: &mut Reader<'_>, at| load::load(reader, at, &outputs);
    let loads = before.loads.each(reader, "loads", records, read);
    let dead_rail = dead(reader, "conditions.dead_supply");
    let dead_feed = dead(reader, "conditions.dead_feed");
    PlannedRest {
        outputs,
        loads,
        is_dead_rail_assumed: !matches!(dead_rail, Entry::Given(_)),
        is_dead_feed_assumed: !matches!(dead_feed, Entry::Given(_)),
        around: Rc::new(surroundings(
            conditions,
            dead_rail.value().unwrap_or_else(usual_dead),
            dead_feed.value().unwrap_or_else(usual_dead),
        )),
    }
}

pub(super) fn limited(reader: &mut Reader<'_>, path: &str, name: &str, count: usize) -> usize {
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

pub(super) fn name(reader: &mut Reader<'_>, path: &str, usual: String) -> String {
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
    let known_stage = stage.value().and_then(stage_of);
    let on_resistance = on_resistance(reader, &path("on_resistance"), known_stage);
    let current_limit = reader.band(&path("current_limit"));
    let pull_up = reader.band(&path("pull_up"));
    let rail = pull_rail(reader, &path("pull_up_rail"), pull_up.value().is_some());
    let pull_down = reader.band(&path("pull_down"));
    let leakage = reader.band(&path("leakage"));
    let clamp = reader.band(&path("clamp"));
    let clamp_energy = reader.band(&path("clamp_energy"));
    let pulse_limit = reader.band(&path("pulse_limit"));
    let is_unreadable = [stage, on_level, rail].contains(&Entry::Unreadable)
        || [on_resistance, pull_up, pull_down].contains(&Entry::Unreadable)
        || [current_limit, leakage].contains(&Entry::Unreadable)
        || clamp == Entry::Unreadable
        || clamp_energy == Entry::Unreadable
        || pulse_limit == Entry::Unreadable;
    let output = known_stage.filter(|_| !is_unreadable);
    let output = output.map(|stage| Output {
        stage,
        on_level: on_level.value().map(level_of),
        on_resistance: on_resistance.value().unwrap_or(stage.usual_on_resistance()),
        current_limit: current_limit.value(),
        pull_up: pull_up.value().map(|band| (band, rail_of(rail.value()))),
        pull_down: pull_down.value(),
        leakage: leakage.value(),
        clamp: clamp.value(),
        clamp_energy: clamp_energy.value(),
        pulse_limit: pulse_limit.value(),
    });
    PlannedOutput { name, output, is_unreadable }
}

/// What is usual depends on the stage; while that is not known nothing is taken.
fn on_resistance(
    reader: &mut Reader<'_>,
    path: &str,
    stage: Option<Stage>,
) -> Entry<Band<Resistance>> {
    let entry = reader.band(path);
    let Some(stage) = stage else { return entry };
    let usual = stage.usual_on_resistance();
    let basis = match stage {
        Stage::Logic => "a logic output: common practice, no source",
        _ => "a power switch: common practice, no source",
    };
    reader.or_assume(path, entry, usual, usual.nominal, basis)
}

fn level_of(code: &str) -> OnLevel {
    if code == "battery" { OnLevel::Battery } else { OnLevel::Ground }
}

fn stage_of(code: &str) -> Option<Stage> {
    match code {
        "open-drain" => Some(Stage::OpenDrain),
        "high-side" => Some(Stage::HighSide),
        "half-bridge" => Some(Stage::HalfBridge),
        "logic" => Some(Stage::Logic),
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
        Some("3v3") => PullRail::ThreeVolt,
        _ => PullRail::Battery,
    }
}

/// Reports an output that bears the name of an earlier one, and adds its number to the name: a load that names it
/// without is taken to mean the first.
fn tell_doubles_apart(reader: &mut Reader<'_>, outputs: &mut [Rc<PlannedOutput>]) {
    let mut seen: Vec<String> = Vec::new();
    for (at, output) in outputs.iter_mut().enumerate() {
        if let Some(earlier) = seen.iter().position(|name| same_name(name, &output.name)) {
            let message = say!("rest.output-named-twice", name = output.name.clone());
            // a place in the list may be the name of one that has none
            let [earlier, later] = [earlier, at].map(|it| format!("outputs.{it}.name"));
            let path = reader.typed_of([&later, &earlier]).to_owned();
            reader.unusable(Finding::new(Severity::Fault, path, message));
            let name = format!("{} (output {})", output.name, at + 1);
            Rc::make_mut(output).name = name;
        }
        seen.push(output.name.clone());
    }
}

fn same_name(one: &str, other: &str) -> bool {
    one.trim().eq_ignore_ascii_case(other.trim())
}
