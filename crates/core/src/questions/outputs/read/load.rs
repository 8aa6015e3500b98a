//! One load from its fields.

use std::rc::Rc;

use super::{
    FeedingRelay, LoadAssumptions, LoadPlace, OutputLink, PlannedLoad, PlannedOutput,
    PlannedThrottle, Suppressed, Unasked, feeds_itself, name, same_name,
};
use crate::{
    fields::{
        self,
        loads::{Across, Keeps, PlainKind, PowerCut},
        relays::SwitchedBy,
    },
    finding::{Finding, Severity},
    message::Message,
    output::{FarEnd, LoadKind, Pulse},
    quantity::{Band, Inductance, Measure, Resistance, Value, Voltage},
    questions::outputs::words,
    read::{Entry, Reader, problem::shortened},
    say,
    schema::{Key, OutputName, Part, RelayName},
};

/// What a load may name.
#[derive(Clone, Copy)]
pub(super) struct Names<'a> {
    pub(super) outputs: &'a [Rc<PlannedOutput>],
    pub(super) relays: &'a [FeedingRelay],
}

pub(super) fn load(reader: &mut Reader<'_>, at: LoadPlace, names: Names<'_>) -> PlannedLoad {
    let outputs = names.outputs;
    let what = if at.part == Part::Relays { "relay" } else { "load" };
    let name = name(reader, at.key(fields::loads::NAME), format!("{what} {}", at.number + 1));
    reader.stand(at.key(fields::loads::LIKE).place());
    let far_end = reader.choice(at.key(fields::loads::FAR_END));
    let planned = link(reader, at, outputs);
    let (link, meant) = found(reader, at, planned, outputs);
    let partner =
        partner(reader, at.key(fields::loads::FAR_OUTPUT), link, far_end.value(), outputs);
    let far_end = feed(reader, at, &name, far_end, names.relays);
    let kind_entry = kind(reader, at);
    let throttle = throttle(reader, at, names.relays);
    let kind = kind_entry.value().unwrap_or(LoadKind::RelayCoil);
    let unasked = unasked(reader, at, throttle.is_some());
    let resistance = resistance(reader, at.key(fields::loads::RESISTANCE), kind);
    let pull_in =
        usual(reader, at.key(fields::loads::PULL_IN), kind.usual_pull_in(), level_basis(kind));
    let acts = pull_in.value().unwrap_or(kind.usual_pull_in());
    let drop_out = drop_out(reader, at.key(fields::loads::DROP_OUT), kind, acts);
    let inductance = inductance(reader, at.key(fields::loads::INDUCTANCE), kind);
    let suppression = suppression(reader, at, kind);
    let pulse = pulse(reader, at);
    let bears = bears(reader, at, kind);
    let keeps = reader.choice(at.key(fields::loads::KEEPS)).value();
    let is_unreadable = far_end == Entry::Unreadable
        || kind_entry == Entry::Unreadable
        || unasked == Entry::Unreadable
        || [pull_in, drop_out].contains(&Entry::Unreadable)
        || resistance == Entry::Unreadable
        || inductance == Entry::Unreadable
        || suppression.is_none()
        || pulse == Entry::Unreadable
        || bears == Entry::Unreadable;
    PlannedLoad {
        place: at,
        name,
        link,
        meant,
        far_end: far_end.value().filter(|it| *it != FarEnd::Output || partner.is_some()),
        partner,
        fed_by: fed_by(reader, at, names.relays),
        unasked: unasked.value().unwrap_or(Unasked::Costly),
        throttle,
        kind,
        assumed: LoadAssumptions {
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
        bears: bears.value().map(|band| band.low),
        stays: keeps == Some(Keeps::Stays),
        is_by_hand: keeps == Some(Keeps::ByHand),
        is_unreadable,
    }
}

/// What it is; while that is not said, a relay’s coil.
fn kind(reader: &mut Reader<'_>, at: LoadPlace) -> Entry<LoadKind> {
    if at.part == Part::Relays {
        return Entry::Given(LoadKind::RelayCoil);
    }
    let key = at.key(fields::loads::KIND);
    let entry = reader.choice(key).map(PlainKind::load);
    let basis = "the usual load of an output, and one that little holds in";
    reader.or_assume(key, entry, LoadKind::RelayCoil, Value::text("a relay's coil"), basis)
}

/// The relay that is said to feed it.
fn fed_by(reader: &Reader<'_>, at: LoadPlace, relays: &[FeedingRelay]) -> Option<usize> {
    let feeder = reader.text(at.key(fields::loads::FAR_RELAY));
    relays.iter().position(|relay| same_name(&relay.name, feeder))
}

/// Its other end; not known where it goes to the contact of a relay that is not there, or that it closes itself.
fn feed(
    reader: &mut Reader<'_>,
    at: LoadPlace,
    name: &str,
    far_end: Entry<FarEnd>,
    relays: &[FeedingRelay],
) -> Entry<FarEnd> {
    let key = at.key(fields::loads::FAR_RELAY);
    let shown = shortened(reader.text(key));
    if shown.is_empty() {
        reader.missing(key);
        return far_end;
    }
    reader.given(key, shown.clone());
    if far_end != Entry::Given(FarEnd::Relay) {
        // what stands there is kept for when it is asked for again
        return far_end;
    }
    let message = match relays.iter().position(|relay| same_name(&relay.name, &shown)) {
        Some(_) if at.part == Part::Relays && feeds_itself(relays, at.number) => {
            say!(words::FEEDS_ITSELF, name = name.to_owned())
        }
        Some(_) => return far_end,
        None => no_such_relay(key, &shown, relays),
    };
    reader.unusable(Finding::new(Severity::Fault, key, message));
    Entry::Unreadable
}

fn resistance(
    reader: &mut Reader<'_>,
    key: Key<Resistance>,
    kind: LoadKind,
) -> Entry<Band<Resistance>> {
    usual(reader, key, kind.usual_resistance(), resistance_basis(kind))
}

/// What is usual for the kind of load; nothing is taken for what has no winding.
fn inductance(
    reader: &mut Reader<'_>,
    key: Key<Inductance>,
    kind: LoadKind,
) -> Entry<Band<Inductance>> {
    let typical = kind.usual_inductance();
    if typical.high.base() <= 0.0 {
        // what is typed is read all the same, and kept
        let entry = reader.band(key);
        return if entry == Entry::Unreadable { entry } else { Entry::Missing };
    }
    usual(reader, key, typical, "usual for its kind: common practice, no source")
}

/// What it means if it acts unasked: of a throttle, until something else is said, that it can hurt someone.
fn unasked(reader: &mut Reader<'_>, at: LoadPlace, is_throttle: bool) -> Entry<Unasked> {
    match reader.choice(at.key(fields::loads::UNASKED)) {
        Entry::Assumed(_) if is_throttle => Entry::Assumed(Unasked::Dangerous),
        entry => entry,
    }
}

/// What is told of a throttle's motor beside what all motors are asked; nothing of what is none.
fn throttle(
    reader: &mut Reader<'_>,
    at: LoadPlace,
    relays: &[FeedingRelay],
) -> Option<PlannedThrottle> {
    if at.part == Part::Relays {
        return None;
    }
    let is_one = reader.choice_elsewhere(fields::loads::KIND.at(at.number));
    let cut = reader.choice(fields::loads::POWER_CUT.at(at.number));
    let key = fields::loads::CUT_RELAY.at(at.number);
    let shown = shortened(reader.text(key));
    let relay = relays.iter().position(|relay| same_name(&relay.name, &shown));
    if shown.is_empty() {
        reader.missing(key);
    } else if relay.is_some() || cut != Entry::Given(PowerCut::Relay) {
        // what stands there is kept for when it is asked for again
        reader.given(key, shown);
    } else {
        let message = no_such_relay(key, &shown, relays);
        reader.unusable(Finding::new(Severity::Fault, key, message));
    }
    let planned = PlannedThrottle { cut: cut.value(), relay };
    (is_one == Some(PlainKind::Throttle)).then_some(planned)
}

/// That no relay bears a name, and which there are.
fn no_such_relay(key: Key<RelayName>, shown: &str, relays: &[FeedingRelay]) -> Message {
    let names: Vec<_> = relays.iter().map(|relay| relay.name.as_str()).collect();
    let choices = if names.is_empty() { "none".to_owned() } else { names.join(", ") };
    say!(
        crate::words::field::NO_SUCH_RELAY,
        field = key.field().label,
        typed = shown.to_owned(),
        choices = choices
    )
}

/// What an input bears; nothing of what is none.
fn bears(reader: &mut Reader<'_>, at: LoadPlace, kind: LoadKind) -> Entry<Band<Voltage>> {
    if at.part == Part::Relays {
        return Entry::Missing;
    }
    let entry = reader.band(at.key(fields::loads::BEARS));
    // what is typed is read all the same, and kept
    if kind.is_signal() || entry == Entry::Unreadable { entry } else { Entry::Missing }
}

/// Nothing where a field of it can't be read.
fn suppression(reader: &mut Reader<'_>, at: LoadPlace, kind: LoadKind) -> Option<Suppressed> {
    let choice = reader.choice(at.key(fields::loads::SUPPRESSION));
    let stripe = reader.choice(at.key(fields::loads::STRIPE));
    let resistor = reader.band(at.key(fields::loads::SUPPRESSION_RESISTANCE));
    if choice == Entry::Unreadable || stripe == Entry::Unreadable || resistor == Entry::Unreadable {
        return None;
    }
    if kind.usual_inductance().high.base() <= 0.0 {
        return Some(Suppressed::None);
    }
    Some(match (choice.value(), resistor.value()) {
        (Some(Across::Nothing), _) => Suppressed::None,
        (Some(Across::Diode), _) => Suppressed::Diode(stripe.value()),
        (Some(Across::Resistor), Some(band)) => Suppressed::Resistor(band),
        (Some(Across::Resistor), None) | (None, _) => Suppressed::Unknown,
    })
}

fn pulse(reader: &mut Reader<'_>, at: LoadPlace) -> Entry<Pulse> {
    let frequency = reader.band(at.key(fields::loads::FREQUENCY));
    let duty = reader.band(at.key(fields::loads::DUTY));
    match (frequency.value(), duty.value()) {
        (Some(frequency), Some(duty)) => Entry::Given(Pulse { frequency, duty }),
        _ if frequency == Entry::Unreadable || duty == Entry::Unreadable => Entry::Unreadable,
        _ => Entry::Missing,
    }
}

/// A band, or what is usual for the kind of load.
fn usual<Q: Measure>(
    reader: &mut Reader<'_>,
    key: Key<Q>,
    usual: Band<Q>,
    basis: &str,
) -> Entry<Band<Q>> {
    let entry = reader.band(key);
    let shown = format!("{} to {}", usual.low.show().shown, usual.high.show().shown);
    reader.or_assume(key, entry, usual, Value::text(shown), basis)
}

/// A part that lets go above the voltage at which it acts is none: the typed value is refused.
fn drop_out(
    reader: &mut Reader<'_>,
    key: Key<Voltage>,
    kind: LoadKind,
    acts: Band<Voltage>,
) -> Entry<Band<Voltage>> {
    let entry = usual(reader, key, below(kind.usual_drop_out(), acts), level_basis(kind));
    match entry {
        Entry::Given(band) if band.high >= acts.low => {
            let message = say!(words::LETS_GO_ABOVE, drop_out = band.high, pull_in = acts.low);
            reader.unusable(Finding::new(Severity::Fault, key, message));
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

fn link(reader: &mut Reader<'_>, at: LoadPlace, outputs: &[Rc<PlannedOutput>]) -> OutputLink {
    let key = at.key(fields::loads::OUTPUT);
    let typed = reader.text(key);
    if typed.is_empty() {
        // what isn't switched at a speed may not be the controller's at all
        let by = reader.choice_elsewhere(fields::relays::SWITCHED_BY.at(at.number));
        let is_otherwise = at.part == Part::Relays && by.is_some_and(|it| it != SwitchedBy::Speed);
        if let ([only], false) = (outputs, is_otherwise) {
            let shown = Value::text(only.name.clone());
            reader.or_assume(key, Entry::Missing, (), shown, "the only output of the plan");
            return OutputLink::To(0);
        }
        reader.missing(key);
        return OutputLink::Blank;
    }
    let shown = shortened(typed);
    if let Some(at) = outputs.iter().position(|output| same_name(&output.name, &shown)) {
        reader.given(key, shown);
        return OutputLink::To(at);
    }
    nowhere(reader, key, &shown, outputs);
    OutputLink::Nowhere
}

/// The output that its wire was found on, or else the one that it is planned on; and the number of the latter where that is another.
fn found(
    reader: &mut Reader<'_>,
    at: LoadPlace,
    planned: OutputLink,
    outputs: &[Rc<PlannedOutput>],
) -> (OutputLink, Option<usize>) {
    let key = at.key(fields::loads::WIRED);
    let shown = shortened(reader.text(key));
    if shown.is_empty() {
        reader.missing(key);
        return (planned, None);
    }
    let Some(found) = outputs.iter().position(|output| same_name(&output.name, &shown)) else {
        nowhere(reader, key, &shown, outputs);
        return (planned, None);
    };
    reader.given(key, shown);
    let meant = match planned {
        OutputLink::To(number) if number != found => Some(number),
        _ => None,
    };
    (OutputLink::To(found), meant)
}

/// The number of the output at the other end; nothing where it is not asked for, or not known.
fn partner(
    reader: &mut Reader<'_>,
    key: Key<OutputName>,
    link: OutputLink,
    far_end: Option<FarEnd>,
    outputs: &[Rc<PlannedOutput>],
) -> Option<usize> {
    let shown = shortened(reader.text(key));
    if shown.is_empty() {
        reader.missing(key);
        return None;
    }
    if far_end != Some(FarEnd::Output) {
        // what stands there is kept for when it is asked for again
        reader.given(key, shown);
        return None;
    }
    let Some(at) = outputs.iter().position(|output| same_name(&output.name, &shown)) else {
        nowhere(reader, key, &shown, outputs);
        return None;
    };
    if link == OutputLink::To(at) {
        let message = say!(words::PAIR_OF_ONE, output = shown);
        reader.unusable(Finding::new(Severity::Fault, key, message));
        return None;
    }
    reader.given(key, shown);
    outputs.get(at)?.output.as_ref().map(|_| at)
}

/// Reports a name that no output bears.
fn nowhere(
    reader: &mut Reader<'_>,
    key: Key<OutputName>,
    shown: &str,
    outputs: &[Rc<PlannedOutput>],
) {
    let names: Vec<_> = outputs.iter().map(|output| output.name.as_str()).collect();
    let choices = if names.is_empty() { "none".to_owned() } else { names.join(", ") };
    let message = say!(
        crate::words::field::NO_SUCH_OUTPUT,
        field = key.field().label,
        typed = shown,
        choices = choices
    );
    reader.unusable(Finding::new(Severity::Fault, key, message));
}

fn resistance_basis(kind: LoadKind) -> &'static str {
    match kind {
        LoadKind::RelayCoil => "data sheets of generic 12 V plug-in relays",
        LoadKind::Solenoid | LoadKind::ProportionalValve | LoadKind::Resistor => {
            "common practice, no source"
        }
        LoadKind::Motor => "a small motor, standing: common practice, no source",
        LoadKind::Lamp => "a lamp of 5 to 21 W, cold: common practice, no source",
        LoadKind::Led => "the series resistor of a 12 V indicator: common practice, no source",
        LoadKind::SolidState => "a 3 to 32 V control input: common practice, no source",
        LoadKind::LogicInput | LoadKind::PulseInput | LoadKind::RevCounter | LoadKind::Gauge => {
            "what it is to ground, or to its own pull-up: common practice, no source"
        }
    }
}

fn level_basis(kind: LoadKind) -> &'static str {
    match kind {
        LoadKind::RelayCoil => {
            "data sheets of five generic 12 V relays: pull in at 0.57 to 0.67 of nominal, drop out at 0.04 to 0.1"
        }
        LoadKind::Led => "red to white, a glow in the dark to bright: common practice, no source",
        LoadKind::SolidState => {
            "a 3 to 32 V control input, off below 1 V: common practice, no source"
        }
        LoadKind::LogicInput | LoadKind::PulseInput => {
            "5 V logic, 0.8 V low to 3.5 V high: common practice, no source"
        }
        _ => "a 12 V part: common practice, no source",
    }
}
