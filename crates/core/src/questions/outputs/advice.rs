//! What to do, and what to beware of.

use std::cell::OnceCell;

use super::{
    case::{LoadAtLevel, Subject},
    names, unsolved,
};
use crate::{
    budget::Budget,
    fields::{
        loads::{self, Across},
        outputs,
    },
    finding::Finding,
    message::{Edit, Message},
    output::{
        Alternative, Change, FarEnd, KeyState, LoadKind, LoadState, MeterReading, OnLevel, Phase,
        Probe, SolvedCorner, Stage, Trouble, probe, reading,
    },
    quantity::{Band, Current, Measure, Value, Voltage, amperes, volts},
    questions::outputs::words,
    read::{OutputLink, Unasked},
    say, say_of,
    schema::{Choice as _, Part, Place},
    words::Wording,
};

/// A remedy that is right only if a certain level counts as on.
const IF_LEVEL: &Wording = words::DO_IF_LEVEL;

/// What to do, in order: measure what decides, then the alternatives; or how to prove a wiring that is right.
pub(super) fn to_do(
    subject: &Subject<'_>,
    found: &[Finding],
    remedies: Option<Vec<Message>>,
    budget: &Budget,
) -> Vec<Message> {
    let is_none_found = remedies.as_ref().is_some_and(Vec::is_empty);
    let is_searched = remedies.is_some();
    let remedies = remedies.unwrap_or_default();
    let mut to_do = measurements(subject, found, &remedies);
    // solved once, where it is asked for at all
    let probed = OnceCell::new();
    let probed = || {
        *probed.get_or_init(|| {
            let case = subject.cases.first()?;
            probe(&case.rest.wiring, &subject.planned.around)
        })
    };
    let is_clean = subject.cases.iter().all(|case| case.judgement.is_clean());
    if is_clean {
        to_do.extend(proof(subject, probed));
        to_do.extend(lamp(subject, probed));
        to_do.extend(proof_beyond(subject));
        to_do.extend(limit(subject));
    } else if is_none_found && !subject.is_decided_elsewhere() && !subject.is_measured_first() {
        to_do.push(unsolved::nothing_found(budget));
    }
    to_do.extend(remedies);
    // the pin of what is to be mended is measured before any other, if what is on there is known
    if let ([case], false, true) = (subject.cases.as_slice(), is_clean, is_searched) {
        // where a setting is the cure, the pin proves that it was made
        if to_do.iter().any(|it| it.code == words::DO_LEVEL.code) {
            to_do.extend(proof_set(subject, case));
        } else if !is_input_live(subject, case) {
            to_do.extend(proof(subject, probed));
        }
    }
    to_do
}

/// Whether it is an input that is live at rest: what its pin reads then proves only what is wrong.
fn is_input_live(subject: &Subject<'_>, case: &LoadAtLevel) -> bool {
    let head = case.judgement.head().map(|it| it.trouble);
    subject.load.kind.is_signal() && head == Some(Trouble::LiveAtRest)
}

/// What the bare pin must read once the other level counts as on.
fn proof_set(subject: &Subject<'_>, case: &LoadAtLevel) -> Option<Message> {
    let wiring = case.rest.wiring.at_level(case.level.other());
    let read = |state| reading(&wiring, state, &subject.planned.around);
    let (off, on) = (read(KeyState::Off)?, read(KeyState::On)?);
    Some(say!(words::DO_PROVE_READS, reading = off_and_on(&off, &on)))
}

/// How to measure what was taken and decides, or what a remedy needs.
fn measurements(subject: &Subject<'_>, found: &[Finding], remedies: &[Message]) -> Vec<Message> {
    let on_level = outputs::ON_LEVEL.at(subject.output.record).place().path();
    let is_needed = remedies.iter().any(|it| it.code == IF_LEVEL.code);
    let deciding = found.iter().filter(|it| it.message.code.starts_with("outputs.depends-on-"));
    let mut paths: Vec<&str> = deciding.map(|it| it.subject.as_str()).collect();
    if is_needed && !paths.contains(&on_level.as_str()) {
        paths.insert(0, &on_level);
    }
    let how = paths.into_iter().filter_map(Place::at_path).map(|it| match it.part() {
        Part::Loads => it.measure_in(loads::MEASURES),
        _ => it.measure_in(outputs::MEASURES),
    });
    how.filter(|how| !how.is_empty()).map(|how| say!(words::DO_MEASURE, how = how)).collect()
}

/// What the bare pin must read before the load is plugged in.
fn proof(subject: &Subject<'_>, probed: impl Fn() -> Option<Probe>) -> Option<Message> {
    let case = subject.cases.first()?;
    let (off, on) = (&case.rest.state(KeyState::Off)?.bare, &case.rest.state(KeyState::On)?.bare);
    // a leak through a meter's own resistance reads as the pin does: only a resistor tells on from off
    let apart = (off.band.nominal.base() - on.band.nominal.base()).abs();
    if off.floats || apart < TOLD_APART_V {
        let probe = probed()?;
        return Some(say!(
            words::DO_PROVE_FLOATS,
            resistor = probe.resistor,
            end = names::end(probe.end),
            off = on_a_meter(&probe.off),
            on = on_a_meter(&probe.on)
        ));
    }
    Some(say!(words::DO_PROVE_READS, reading = off_and_on(off, on)))
}

/// Readings that are no further apart prove nothing.
const TOLD_APART_V: f64 = 1.0;

/// The same for the output at the load's other end.
fn proof_beyond(subject: &Subject<'_>) -> Option<Message> {
    let number = subject.load.partner.filter(|_| subject.load.far_end == Some(FarEnd::Output))?;
    let level = subject.cases.first()?.level;
    let (planned, around) = (subject.planned, &subject.planned.around);
    let wiring = planned.wiring(number, level)?;
    let output = planned.outputs.get(number)?.name.clone();
    let off = reading(&wiring, KeyState::Off, around)?;
    if off.floats {
        let probe = probe(&wiring, around)?;
        return Some(say!(
            words::DO_PROVE_OTHER_FLOATS,
            output = output,
            resistor = probe.resistor,
            end = names::end(probe.end),
            off = on_a_meter(&probe.off),
            on = on_a_meter(&probe.on)
        ));
    }
    let on = reading(&wiring, KeyState::On, around)?;
    Some(say!(words::DO_PROVE_OTHER, output = output, reading = off_and_on(&off, &on)))
}

fn off_and_on(off: &MeterReading, on: &MeterReading) -> Value {
    let (off, on) = (reading_range(off), reading_range(on));
    Value::text(format!("{}, and {} with the output on", off.shown, on.shown))
}

/// What a test lamp shows at a pin that floats, or why none belongs there.
fn lamp(subject: &Subject<'_>, probed: impl Fn() -> Option<Probe>) -> Option<Message> {
    let case = subject.cases.first()?;
    let wiring = &case.rest.wiring;
    if !case.rest.state(KeyState::Off)?.bare.floats {
        return None;
    }
    let probe = probed()?;
    let limit = wiring.output.current_limit.map(|limit| limit.low);
    match limit {
        Some(limit) if probe.lamp_inrush > limit => {
            Some(say!(words::DO_NO_LAMP, inrush = probe.lamp_inrush, limit = limit))
        }
        _ => Some(say!(words::DO_PROVE_LAMP, current = carried(probe.lamp, probe.lamp_inrush))),
    }
}

/// A reading with its range.
pub(super) fn reading_range(reading: &MeterReading) -> Value {
    if reading.floats {
        return names::word(words::FLOATS);
    }
    range(&reading.band)
}

/// What a hand meter shows: no millivolts.
fn on_a_meter(band: &Band<Voltage>) -> Value {
    if band.low.base().abs().max(band.high.base().abs()) < NEAR_0_V {
        return band.nominal.show().said("near 0 V".to_owned());
    }
    range(band)
}

/// Below this a hand meter on its 20 V range shows next to nothing: common practice, no source.
const NEAR_0_V: f64 = 0.05;

/// A nominal value with its range.
pub(super) fn range<Q: Measure>(band: &Band<Q>) -> Value {
    let value = band.nominal.show();
    if band.low.base().to_bits() == band.high.base().to_bits() {
        return value;
    }
    let (low, high) = (band.low.show().into_shown(), band.high.show().into_shown());
    if low == high {
        return value;
    }
    let words = format!("{} ({low} to {high})", value.shown);
    value.said(words)
}

/// Where the limit is not known: what the output must carry.
fn limit(subject: &Subject<'_>) -> Option<Message> {
    let case = subject.cases.first()?;
    if case.rest.wiring.output.current_limit.is_some() {
        return None;
    }
    let on = case.rest.state(KeyState::On)?;
    let most = |phase: Phase| {
        let corners = on.corners.iter().filter(|it| it.point.phase == phase);
        let currents = corners.map(|it| it.operating.switch_current().base());
        amperes(currents.fold(0.0, f64::max))
    };
    let (running, standing): (Current, Current) = (most(Phase::Running), most(Phase::Standing));
    let output = subject.output.name.clone();
    Some(say!(words::DO_CHECK_LIMIT, output = output, current = carried(running, standing)))
}

/// A current, and the inrush where that is more.
fn carried(running: Current, standing: Current) -> Value {
    if standing <= running {
        return running.show();
    }
    Value::text(say!(words::AND_INRUSH, current = running, inrush = standing).into_text())
}

/// The most across the load when it should rest, and the least when it is on and the starter doesn't turn.
pub(super) fn extremes(subject: &Subject<'_>) -> Option<(Voltage, Voltage)> {
    let across =
        |solved: &SolvedCorner| solved.load().map_or(0.0, |flow| flow.voltage.base().abs());
    let states = || subject.cases.iter().flat_map(|case| &case.rest.states);
    let wiring = subject.wiring()?;
    let is_turned =
        |state: KeyState| state == KeyState::OtherOn && wiring.is_reversible(subject.at);
    let is_rest =
        |state: KeyState| !state.is_asked() && !state.is_fault() && state != KeyState::Outlived;
    let resting =
        states().filter(|it| is_rest(it.state) && !is_turned(it.state)).flat_map(|it| &it.corners);
    let on = states().filter(|it| it.state == KeyState::On).flat_map(|it| &it.corners);
    let least = on.map(across).reduce(f64::min)?;
    Some((volts(resting.map(across).fold(0.0, f64::max)), volts(least)))
}

pub(super) fn size(voltage: Voltage) -> Voltage {
    volts(voltage.base().abs())
}

fn stage_of(subject: &Subject<'_>, number: usize) -> Stage {
    let output = subject.planned.outputs.get(number).and_then(|it| it.output.as_ref());
    output.map_or(Stage::HalfBridge, |output| output.stage)
}

/// An alternative in words, behind the level that it needs.
pub(super) fn remedy(subject: &Subject<'_>, it: &Alternative) -> Message {
    let change = change(subject, it);
    let Some(level) = it.level else { return change.done_by(edits(subject, it)) };
    let level = names::level(level, stage_of(subject, subject.output_number));
    say!(IF_LEVEL, level = level, change = names::inside(&change.into_text()))
}

/// What is to be done otherwise, in words.
fn change(subject: &Subject<'_>, it: &Alternative) -> Message {
    let then = say!(words::THEN, unasked = it.unasked, on = it.on).into_text();
    let is_level_known = subject.cases.len() == 1;
    let carry = carried(it.current, it.inrush);
    let own = || subject.output.name.clone();
    let named = |number: usize| {
        subject.planned.outputs.get(number).map_or_else(String::new, |it| it.name.clone())
    };
    let level = |level: OnLevel| names::level(level, stage_of(subject, subject.output_number));
    match it.change {
        Change::Level(on) if is_level_known => {
            say!(words::DO_LEVEL, level = level(on), then = then)
        }
        Change::Level(on) => say!(words::DO_LEVEL_IF, level = level(on), then = then),
        Change::FarEnd(end) => say!(words::DO_END, end = names::end(end), then = then),
        Change::LevelAndFarEnd(on, end) => {
            say!(words::DO_LEVEL_AND_END, level = level(on), end = names::end(end), then = then)
        }
        Change::Spare { number, far_end, level: None } => {
            let wording = if it.is_turned { words::DO_SPARE_TURNED } else { words::DO_SPARE };
            let (output, end) = (named(number), names::end(far_end));
            say_of!(wording, output = output, current = carry, end = end, then = then)
        }
        Change::Spare { number, far_end, level: Some(on) } => say!(
            words::DO_SPARE_AT_LEVEL,
            output = named(number),
            current = carry,
            level = names::level(on, stage_of(subject, number)),
            end = names::end(far_end),
            then = then
        ),
        Change::SpareWithDiode { number, far_end } => say!(
            words::DO_SPARE_WITH_DIODE,
            output = named(number),
            current = carry,
            end = names::end(far_end),
            then = then
        ),
        Change::Slower(limit) => say!(words::DO_SLOWER, frequency = limit, then = then),
        Change::Turn => say!(words::DO_TURN, then = then),
        Change::NoDiode => say!(words::DO_NO_DIODE, then = then),
        Change::Stage(Stage::Logic, _) => say!(words::DO_LOGIC, then = then),
        Change::Stage(stage, end) => {
            let wording = if it.is_turned { words::DO_STAGE_TURNED } else { words::DO_STAGE };
            let (stage, end) = (names::a_stage(stage), names::end(end));
            say_of!(wording, stage = stage, current = carry, end = end, then = then)
        }
        Change::Relay(far_end) => {
            say!(words::DO_RELAY, output = own(), end = names::end(far_end), then = then)
        }
        Change::PullDown(resistor, power) => {
            say!(words::DO_PULL_DOWN, resistor = resistor, power = power, then = then)
        }
        Change::Bleeder(resistor, power) => {
            say!(words::DO_BLEEDER, resistor = resistor, power = power, then = then)
        }
        Change::FeedDiode => say!(words::DO_FEED_DIODE, current = carry, then = then),
        Change::CoilDiode(time) => {
            say!(words::DO_COIL_DIODE, current = carry, time = time, then = then)
        }
    }
}

/// The change as edits of the plan; none where it is no such edit, or is one of outputs that go by one description.
fn edits(subject: &Subject<'_>, it: &Alternative) -> Vec<Edit> {
    let outputs = &subject.planned.outputs;
    let edit = |place: Place, text: &str| Edit { path: place.path(), text: text.to_owned() };
    let of_load = |key: Place, text: &str| {
        edit(key.twin(subject.load.place.part).at(subject.load.place.number), text)
    };
    let far_end = |end: FarEnd| of_load(loads::FAR_END.place(), end.choosable().code);
    let of_output = |number: usize, key: Place, text: &str| {
        let record = outputs.get(number)?.record;
        let is_alone = outputs.iter().filter(|it| it.record == record).count() == 1;
        is_alone.then(|| edit(key.at(record), text))
    };
    let level = |number: usize, level: OnLevel| {
        of_output(number, outputs::ON_LEVEL.place(), level.choosable().code)
    };
    let own = subject.output_number;
    let turned = it.is_turned.then(|| of_load(loads::STRIPE.place(), ""));
    let edits = match it.change {
        Change::Level(on) => level_of_all(subject, on).map(|it| vec![it]),
        Change::FarEnd(end) => Some(vec![far_end(end)]),
        Change::LevelAndFarEnd(on, end) => level(own, on).map(|it| vec![it, far_end(end)]),
        Change::Spare { number, far_end: end, level: on } => {
            outputs.get(number).and_then(|output| {
                let moved = vec![of_load(loads::OUTPUT.place(), &output.name), far_end(end)];
                let moved: Vec<_> = moved.into_iter().chain(turned).collect();
                match on {
                    Some(on) => level(number, on).map(|it| [moved, vec![it]].concat()),
                    None => Some(moved),
                }
            })
        }
        Change::SpareWithDiode { number, far_end: end } => outputs.get(number).map(|output| {
            vec![
                of_load(loads::OUTPUT.place(), &output.name),
                far_end(end),
                of_load(loads::SUPPRESSION.place(), Across::Diode.choosable().code),
                of_load(loads::STRIPE.place(), ""),
            ]
        }),
        Change::Slower(limit) => Some(vec![of_load(loads::FREQUENCY.place(), &limit.show().shown)]),
        Change::NoDiode => {
            Some(vec![of_load(loads::SUPPRESSION.place(), Across::Nothing.choosable().code)])
        }
        Change::CoilDiode(_) => Some(vec![
            of_load(loads::SUPPRESSION.place(), Across::Diode.choosable().code),
            of_load(loads::STRIPE.place(), ""),
        ]),
        Change::Turn => Some(vec![of_load(loads::STRIPE.place(), "")]),
        Change::PullDown(resistor, _) => {
            of_output(own, outputs::PULL_DOWN.place(), &resistor.show().shown).map(|it| vec![it])
        }
        // what a plan has no field for
        Change::Bleeder(..) | Change::FeedDiode | Change::Stage(..) | Change::Relay(_) => None,
    };
    let mut edits = edits.unwrap_or_default();
    // what is moved is no longer where its wire was found
    let is_moved = edits.iter().any(|it| it.path == of_load(loads::OUTPUT.place(), "").path);
    if is_moved && subject.load.meant.is_some() {
        edits.push(of_load(loads::WIRED.place(), ""));
    }
    edits
}

/// What counts as on, set for all outputs that go by one description, where the loads on them are of one kind: it is tried with
/// the whole plan.
fn level_of_all(subject: &Subject<'_>, level: OnLevel) -> Option<Edit> {
    let (load, record) = (subject.load, subject.output.record);
    let is_of_record = |number: usize| {
        subject.planned.outputs.get(number).is_some_and(|output| output.record == record)
    };
    let mut beside = subject.planned.loads.iter().filter(|other| match other.link {
        OutputLink::To(number) => is_of_record(number),
        OutputLink::Blank | OutputLink::Nowhere => false,
    });
    let is_alike = beside.all(|other| (other.kind, other.far_end) == (load.kind, load.far_end));
    let text = level.choosable().code.to_owned();
    is_alike.then(|| Edit { path: outputs::ON_LEVEL.at(record).place().path(), text })
}

/// Whether it may come on with its fuse pulled.
fn acts_without_feed(subject: &Subject<'_>) -> bool {
    let Some(load) = subject.solved() else { return false };
    let acts = |it: &SolvedCorner| {
        let effect = it.load().map(|flow| load.effect(flow, it.point.at.temperature));
        effect == Some(LoadState::Energised)
    };
    let lost = subject.cases.iter().filter_map(|case| case.rest.state(KeyState::FeedLost));
    lost.flat_map(|it| &it.corners).any(acts)
}

/// Cautions, where connecting it can hurt.
pub(super) fn cautions(subject: &Subject<'_>) -> Vec<Message> {
    let mut cautions = Vec::new();
    if subject.load.unasked == Unasked::Dangerous {
        cautions.push(if acts_without_feed(subject) {
            say!(words::CAUTION_UNPLUGGED)
        } else {
            say!(words::CAUTION_DANGEROUS)
        });
        let is_clean = subject.cases.iter().all(|case| case.judgement.is_clean());
        if is_clean && stage_of(subject, subject.output_number).is_two_way() {
            cautions.push(say!(words::CAUTION_SETTING));
        }
    }
    let kind = subject.load.kind;
    if matches!(kind, LoadKind::Motor | LoadKind::Solenoid | LoadKind::ProportionalValve) {
        cautions.push(say!(words::CAUTION_MOVING));
    }
    if subject.load.kind == LoadKind::RelayCoil {
        cautions.push(say!(words::CAUTION_DIODE_COIL));
    }
    cautions
}
