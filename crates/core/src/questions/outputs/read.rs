//! Outputs and loads from their fields.

mod joined;
mod load;

use std::rc::Rc;

use crate::read::{Conditions, Entry, Reader, again::Before, problem::shortened, relay_records};
use crate::{
    fields,
    finding::{Finding, Severity},
    output::{
        FarEnd, Load, LoadKind, OnLevel, Output, Partner, PullRail, Pulse, Stage, SupplyCorner,
        Suppression, Surroundings,
    },
    plan::{MOST_ENTRIES, names_in},
    quantity::{Band, Current, Inductance, Measure, Resistance, Value, Voltage, amperes, ohms},
    questions::outputs::words,
    say,
    schema::{Choice as _, Key, Part, Text},
};

pub(crate) use crate::fields::loads::{PowerCut, Stripe, Unasked};

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
    /// The number of its record, which may describe several.
    pub(crate) record: usize,
    pub(crate) name: String,
    /// Nothing while its stage is not known, or a field of it can't be read.
    pub(crate) output: Option<Output>,
    /// Whether a field of it can't be read: an unreadable pull-up is not the same as none.
    pub(crate) is_unreadable: bool,
    /// What it shares a limit with, where it does.
    pub(crate) group: Option<SharedLimit>,
}

/// Outputs that share a limit.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct SharedLimit {
    pub(crate) name: String,
    /// What all of them carry together at the most.
    pub(crate) limit: Option<Current>,
    /// Whether they are pulsed at one frequency.
    pub(crate) is_one_pulse: bool,
}

/// A load of the plan.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct PlannedLoad {
    /// Its record.
    pub(crate) place: LoadPlace,
    pub(crate) name: String,
    pub(crate) link: OutputLink,
    /// The number of the output that it is planned on, where its wire was found on another: `link` is that other then.
    pub(crate) meant: Option<usize>,
    pub(crate) far_end: Option<FarEnd>,
    /// The record of the relay that it is said to be fed by.
    pub(crate) fed_by: Option<usize>,
    /// The number of the output at its other end; nothing while that output's stage is not known.
    pub(crate) partner: Option<usize>,
    pub(crate) unasked: Unasked,
    pub(crate) kind: LoadKind,
    pub(crate) resistance: Band<Resistance>,
    pub(crate) pull_in: Band<Voltage>,
    pub(crate) drop_out: Band<Voltage>,
    pub(crate) assumed: LoadAssumptions,
    pub(crate) inductance: Band<Inductance>,
    pub(crate) suppression: Suppressed,
    pub(crate) pulse: Option<Pulse>,
    /// The highest voltage that it bears, of an input.
    pub(crate) bears: Option<Voltage>,
    /// Where it moves a throttle's plate, what is told of that.
    pub(crate) throttle: Option<PlannedThrottle>,
    /// Whether it stays on the output that is named, whatever would suit better.
    pub(crate) stays: bool,
    /// Whether a switch works it, and no output.
    pub(crate) is_by_hand: bool,
    /// Whether a field of it can't be read.
    pub(crate) is_unreadable: bool,
}

/// What is told of a throttle's motor beside what all motors are asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct PlannedThrottle {
    /// What cuts its supply, where that was said.
    pub(crate) cut: Option<PowerCut>,
    /// The number of the relay that does.
    pub(crate) relay: Option<usize>,
}

/// What of a load was taken rather than typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct LoadAssumptions {
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

/// The output a load hangs on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum OutputLink {
    /// The output with this number.
    To(usize),
    /// None is named.
    Blank,
    /// One is named that the plan doesn't have; its finding is reported.
    Nowhere,
}

/// The record of a load: among the loads, or among the relays, whose coil it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct LoadPlace {
    pub(crate) part: Part,
    pub(crate) number: usize,
}

impl LoadPlace {
    /// The path of its record.
    pub(crate) fn record(self) -> String {
        self.part.record(self.number)
    }

    /// What its answer is about: a load, or the coil of a relay.
    pub(crate) fn subject(self) -> String {
        let record = self.record();
        if self.part == Part::Relays { record + ".coil" } else { record }
    }

    /// A field of this record, by that of the loads.
    pub(crate) fn key<T>(self, of_loads: Key<T>) -> Key<T> {
        of_loads.twin(self.part).at(self.number)
    }
}

impl PlannedLoad {
    /// What its answer is about.
    pub(crate) fn path(&self) -> String {
        self.place.subject()
    }

    /// Whether it hangs on the output with this number, with either end.
    pub(crate) fn takes(&self, number: usize) -> bool {
        self.link == OutputLink::To(number) || self.partner == Some(number)
    }

    /// The same, or whether it is planned there: nothing else may be put there.
    pub(crate) fn claims(&self, number: usize) -> bool {
        self.takes(number) || self.meant == Some(number)
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
            bears: self.bears,
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
    outputs: Before<PlannedOutput>,
    loads: Before<PlannedLoad>,
    relays: Before<PlannedLoad>,
    /// What the loads were read with: the name of each output, and whether its stage is known; the names of the relays.
    named: Named,
}

/// What a load may name: each output, and whether its stage is known; each relay.
type Named = (Vec<(String, bool)>, Vec<FeedingRelay>);

/// A relay as what feeds others.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct FeedingRelay {
    name: String,
    /// The number of the relay whose contact feeds its coil, where one does.
    fed_by: Option<usize>,
}

/// Whether a relay's coil hangs, through however many others, on its own contact.
fn feeds_itself(relays: &[FeedingRelay], at: usize) -> bool {
    let above = |number: &usize| relays.get(*number)?.fed_by;
    std::iter::successors(above(&at), above).take(relays.len()).any(|number| number == at)
}

/// Reads the outputs, then the loads and the relays’ coils, which name them.
pub(crate) fn rest(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    before: &mut RestBefore,
) -> PlannedRest {
    let count = limited(reader, Part::Outputs, "Outputs");
    let described = before.outputs.each(reader, Part::Outputs, 0..count, output);
    let mut outputs = each_named(reader, described);
    tell_doubles_apart(reader, &mut outputs);
    let after = reader.choice(fields::controller::AFTER_KEY_OFF).value();
    if let Some(after) = after {
        outlive(&mut outputs, after == fields::controller::AfterKeyOff::Stays);
    }
    let relays = relays(reader);
    let named: Vec<_> = outputs.iter().map(|it| (it.name.clone(), it.output.is_some())).collect();
    let named = (named, relays);
    if before.named != named {
        before.loads.forget();
        before.relays.forget();
        before.named = named;
    }
    let (_, relays) = &before.named;
    let count = limited(reader, Part::Loads, "Loads");
    let names = load::Names { outputs: &outputs, relays };
    let read_in = |part| {
        move |reader: &mut Reader<'_>, number| load::load(reader, LoadPlace { part, number }, names)
    };
    let mut loads = before.loads.each(reader, Part::Loads, 0..count, read_in(Part::Loads));
    let coils = relay_records::with_coil(reader.plan()).into_iter().filter(|at| *at < MOST_ENTRIES);
    loads.extend(before.relays.each(reader, Part::Relays, coils, read_in(Part::Relays)));
    let dead_rail = dead(reader, fields::controller::SUPPLY_OFF);
    let dead_feed = dead(reader, fields::switched_feeds::OFF_RESISTANCE);
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

impl PlannedRest {
    /// What the loads behind a relay's contact take together for long, RMS, all of them on while the battery is charged; however
    /// their pulses fall it is no more.
    pub(crate) fn taken_behind(&self, relay: usize) -> Current {
        self.taken_by(|it| it.fed_by == Some(relay) && it.far_end == Some(FarEnd::Relay))
    }

    /// The same of what hangs on a feed without a relay's contact.
    pub(crate) fn taken_from(&self, far_end: FarEnd) -> Current {
        self.taken_by(|it| it.far_end == Some(far_end))
    }

    /// What of that is left out on the average, as some of them are pulsed: `sqrt(D)` of the RMS of a pulse of duty `D` is its mean.
    pub(crate) fn pulsed_behind(&self, relay: usize) -> Current {
        self.pulsed(|it| it.fed_by == Some(relay) && it.far_end == Some(FarEnd::Relay))
    }

    /// The same of what is on a feed without a relay's contact.
    pub(crate) fn pulsed_from(&self, far_end: FarEnd) -> Current {
        self.pulsed(|it| it.far_end == Some(far_end))
    }

    fn pulsed(&self, is_there: impl Fn(&PlannedLoad) -> bool) -> Current {
        let one = |load: &Rc<PlannedLoad>| {
            let duty = load.pulse.map_or(1.0, |pulse| pulse.duty.high.base());
            self.taken_by_one(load).base() * (1.0 - duty.sqrt())
        };
        amperes(self.loads.iter().filter(|it| is_there(it)).map(one).sum())
    }

    /// Whether an output or a load can't be read: what rests on all of them waits.
    pub(crate) fn is_unreadable(&self) -> bool {
        self.outputs.iter().any(|it| it.is_unreadable)
            || self.loads.iter().any(|it| it.is_unreadable)
    }

    /// What the outputs sink into the controller's ground, all of them on; and the part of it that follows from what was typed.
    pub(crate) fn sunk(&self) -> (Current, Current) {
        let sinks = |load: &PlannedLoad| {
            let OutputLink::To(number) = load.link else { return false };
            let output = self.outputs.get(number).and_then(|it| it.output.as_ref());
            output.is_some_and(|output| match output.stage {
                Stage::OpenDrain => true,
                Stage::HalfBridge => load.far_end.is_some_and(|it| it != FarEnd::Ground),
                Stage::HighSide | Stage::Logic => false,
            })
        };
        let is_certain = |load: &PlannedLoad| sinks(load) && !load.assumed.resistance;
        (self.taken_by(sinks), self.taken_by(is_certain))
    }

    fn taken_by(&self, is_there: impl Fn(&PlannedLoad) -> bool) -> Current {
        let one = |load: &Rc<PlannedLoad>| self.taken_by_one(load).base();
        amperes(self.loads.iter().filter(|it| is_there(it)).map(one).sum())
    }

    /// What one of them takes for long, RMS, while the battery is charged.
    pub(crate) fn taken_by_one(&self, load: &PlannedLoad) -> Current {
        let supply = self.around.corners.iter().map(|it| it.supply.base()).fold(0.0, f64::max);
        let running = load.resistance.nominal.base() * load.kind.running_ratio();
        let duty = load.pulse.map_or(1.0, |pulse| pulse.duty.high.base());
        amperes(supply / running.max(f64::MIN_POSITIVE) * duty.sqrt())
    }
}

/// What is known of the controller holds of each of its outputs.
fn outlive(outputs: &mut [Rc<PlannedOutput>], outlives: bool) {
    for planned in outputs {
        if let Some(output) = &mut Rc::make_mut(planned).output {
            output.outlives_key = Some(outlives);
        }
    }
}

/// The names of the relays; one that bears the name of another is told.
fn relays(reader: &mut Reader<'_>) -> Vec<FeedingRelay> {
    let count = limited(reader, Part::Relays, "Relays");
    let mut names: Vec<String> = Vec::new();
    for at in 0..count {
        let key = fields::relays::NAME.at(at);
        let name = name(reader, key, format!("relay {}", at + 1));
        if let Some(earlier) = names.iter().position(|it| same_name(it, &name)) {
            let message = say!(words::RELAY_NAMED_TWICE, name = name.clone());
            let key = reader.typed_of([key, fields::relays::NAME.at(earlier)]);
            reader.remark(Finding::new(Severity::Doubt, key, message));
        }
        names.push(name);
    }
    let fed_by = |at: usize| {
        let far_end = reader.choice_elsewhere(fields::relays::FAR_END.at(at));
        let feeder = reader.text(fields::relays::FAR_RELAY.at(at));
        let is_it = |name: &String| far_end == Some(FarEnd::Relay) && same_name(name, feeder);
        names.iter().position(is_it)
    };
    let fed_by: Vec<_> = (0..count).map(fed_by).collect();
    let relay = |(name, fed_by)| FeedingRelay { name, fed_by };
    names.into_iter().zip(fed_by).map(relay).collect()
}

/// To how many of its records a list is read.
pub(crate) fn limited(reader: &mut Reader<'_>, list: Part, name: &str) -> usize {
    let count = reader.plan().count(list);
    if count > MOST_ENTRIES {
        tell_too_many(reader, list, name, count);
    }
    count.min(MOST_ENTRIES)
}

fn tell_too_many(reader: &mut Reader<'_>, list: Part, name: &str, count: usize) {
    let message =
        say!(crate::words::field::TOO_MANY, field = name, count = count, most = MOST_ENTRIES);
    reader.unusable(Finding::new(Severity::Fault, list.name(), message));
}

/// From a feed with many consumers to one with a single controller; a relay and a lamp between.
fn usual_dead() -> Band<Resistance> {
    Band { low: ohms(5.0), nominal: ohms(47.0), high: ohms(1000.0) }
}

fn dead(reader: &mut Reader<'_>, key: Key<Resistance>) -> Entry<Band<Resistance>> {
    let entry = reader.band(key);
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
            is_charging: false,
        });
    let cranking = |corner| SupplyCorner { is_cranking: true, ..corner };
    let resting = conditions.supply.nominal;
    let hot_rest = SupplyCorner { name: "at rest, hot", supply: resting, ..hot_charge };
    let charging = |corner| SupplyCorner { is_charging: true, ..corner };
    Surroundings {
        corners: vec![
            cranking(cold_crank),
            cranking(hot_crank),
            nominal,
            hot_rest,
            charging(cold_charge),
            charging(hot_charge),
        ],
        nominal,
        dead_rail,
        dead_feed,
    }
}

pub(crate) fn name(reader: &mut Reader<'_>, key: Key<Text>, usual: String) -> String {
    let typed = reader.text(key);
    if typed.is_empty() {
        let value = Value::text(usual.clone());
        reader.or_assume(key, Entry::Missing, (), value, "its place in the list");
        return usual;
    }
    let shown = shortened(typed);
    reader.given(key, shown.clone());
    shown
}

fn output(reader: &mut Reader<'_>, at: usize) -> PlannedOutput {
    let name = name(reader, fields::outputs::NAME.at(at), format!("output {}", at + 1));
    let stage = reader.choice(fields::outputs::STAGE.at(at));
    let on_level = reader.choice(fields::outputs::ON_LEVEL.at(at));
    let known_stage = stage.value();
    let on_resistance = on_resistance(reader, fields::outputs::ON_RESISTANCE.at(at), known_stage);
    let current_limit = reader.band(fields::outputs::CURRENT_LIMIT.at(at));
    let pull_up = reader.band(fields::outputs::PULL_UP.at(at));
    let rail = pull_rail(reader, fields::outputs::PULL_UP_RAIL.at(at), pull_up.value().is_some());
    let pull_down = reader.band(fields::outputs::PULL_DOWN.at(at));
    let leakage = reader.band(fields::outputs::LEAKAGE.at(at));
    let clamp = reader.band(fields::outputs::CLAMP.at(at));
    let clamp_energy = reader.band(fields::outputs::CLAMP_ENERGY.at(at));
    let pulse_limit = reader.band(fields::outputs::PULSE_LIMIT.at(at));
    let is_unreadable = stage == Entry::Unreadable
        || on_level == Entry::Unreadable
        || rail == Entry::Unreadable
        || [on_resistance, pull_up, pull_down].contains(&Entry::Unreadable)
        || [current_limit, leakage].contains(&Entry::Unreadable)
        || clamp == Entry::Unreadable
        || clamp_energy == Entry::Unreadable
        || pulse_limit == Entry::Unreadable;
    let output = known_stage.filter(|_| !is_unreadable);
    let output = output.map(|stage| Output {
        stage,
        on_level: on_level.value(),
        on_resistance: on_resistance.value().unwrap_or(stage.usual_on_resistance()),
        current_limit: current_limit.value(),
        pull_up: pull_up.value().map(|band| (band, rail.value().unwrap_or(PullRail::Battery))),
        pull_down: pull_down.value(),
        leakage: leakage.value(),
        clamp: clamp.value(),
        clamp_energy: clamp_energy.value(),
        pulse_limit: pulse_limit.value(),
        outlives_key: None,
    });
    PlannedOutput { record: at, name, output, is_unreadable, group: group(reader, at) }
}

fn group(reader: &mut Reader<'_>, at: usize) -> Option<SharedLimit> {
    let key = fields::outputs::GROUP.at(at);
    let name = reader.text(key).to_owned();
    let limit = reader.band(fields::outputs::GROUP_LIMIT.at(at)).value().map(|it| it.low);
    let pulse = reader.choice(fields::outputs::GROUP_PULSE.at(at)).value();
    if name.is_empty() {
        reader.missing(key);
        return None;
    }
    reader.given(key, shortened(&name));
    let is_one_pulse = pulse == Some(fields::outputs::GroupPulse::One);
    Some(SharedLimit { name, limit, is_one_pulse })
}

/// What is usual depends on the stage; while that is not known nothing is taken.
fn on_resistance(
    reader: &mut Reader<'_>,
    key: Key<Resistance>,
    stage: Option<Stage>,
) -> Entry<Band<Resistance>> {
    let entry = reader.band(key);
    let Some(stage) = stage else { return entry };
    let usual = stage.usual_on_resistance();
    let basis = match stage {
        Stage::Logic => "a logic output: common practice, no source",
        _ => "a power switch: common practice, no source",
    };
    reader.or_assume(key, entry, usual, usual.nominal, basis)
}

fn pull_rail(reader: &mut Reader<'_>, key: Key<PullRail>, is_asked: bool) -> Entry<PullRail> {
    let entry = reader.choice(key);
    if !is_asked {
        return entry;
    }
    let basis = "the worst that is usual, until the pin table says otherwise";
    reader.or_assume(key, entry, PullRail::Battery, PullRail::Battery.choosable().label, basis)
}

/// The outputs of each record, which names one or several that are alike.
fn each_named(
    reader: &mut Reader<'_>,
    described: Vec<Rc<PlannedOutput>>,
) -> Vec<Rc<PlannedOutput>> {
    let mut outputs = Vec::new();
    for output in described {
        let names = names_in(reader.text(fields::outputs::NAME.at(output.record)));
        if names.len() > 1 {
            let named = |name: String| {
                Rc::new(PlannedOutput { name: shortened(&name), ..(*output).clone() })
            };
            outputs.extend(names.into_iter().map(named));
        } else {
            outputs.push(output);
        }
    }
    if outputs.len() > MOST_ENTRIES {
        tell_too_many(reader, Part::Outputs, "Outputs", outputs.len());
        outputs.truncate(MOST_ENTRIES);
    }
    outputs
}

/// Reports an output that bears the name of an earlier one, and adds its number to the name: a load that names it
/// without is taken to mean the first.
fn tell_doubles_apart(reader: &mut Reader<'_>, outputs: &mut [Rc<PlannedOutput>]) {
    let mut seen: Vec<(String, usize)> = Vec::new();
    for (at, output) in outputs.iter_mut().enumerate() {
        let record = output.record;
        let same = |(name, _): &&(String, usize)| same_name(name, &output.name);
        if let Some((_, earlier)) = seen.iter().find(same) {
            let message = say!(words::OUTPUT_NAMED_TWICE, name = output.name.clone());
            // a place in the list may be the name of one that has none
            let [earlier, later] = [*earlier, record].map(|it| fields::outputs::NAME.at(it));
            let key = reader.typed_of([later, earlier]);
            reader.unusable(Finding::new(Severity::Fault, key, message));
            let name = format!("{} (output {})", output.name, at + 1);
            Rc::make_mut(output).name = name;
        }
        seen.push((output.name.clone(), record));
    }
}

pub(crate) fn same_name(one: &str, other: &str) -> bool {
    one.trim().eq_ignore_ascii_case(other.trim())
}
