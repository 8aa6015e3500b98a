//! The corners at which a key state is solved.

use super::{
    Commanded, Drive, FarEnd, KeyState, Load, Output, PullRail, Stage, Suppression, Wiring,
};
use crate::quantity::{Band, Measure, Resistance, Temperature, Voltage};

/// One end of a band, or what is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// The lowest.
    Low,
    /// What is meant.
    Nominal,
    /// The highest.
    High,
}

/// Whether a load stands still or has come up to its running state.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phase {
    /// Cold filament, stalled motor.
    Standing,
    /// As it runs.
    Running,
}

/// The contact (87) of the relay that feeds a load.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Contact {
    /// Open: what hangs on 87 is dead.
    Open,
    /// Closed: 87 is the battery.
    Closed,
}

/// A supply and a temperature with a name.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SupplyCorner {
    /// What a fitter calls it.
    pub name: &'static str,
    /// The battery's voltage.
    pub supply: Voltage,
    /// The temperature of the load.
    pub temperature: Temperature,
    /// Only while the starter turns: it can't be with the key off.
    pub is_cranking: bool,
    /// Only while the engine charges the battery: it can't be with the key off either.
    pub is_charging: bool,
}

/// What an output stands in.
#[derive(Clone, Debug, PartialEq)]
pub struct Surroundings {
    /// Supply and temperature, every corner.
    pub corners: Vec<SupplyCorner>,
    /// The corner that is meant where none is named: a battery at rest, 20 °C.
    pub nominal: SupplyCorner,
    /// Resistance to ground of whatever else hangs on the controller's supply while that is cut off.
    pub dead_rail: Band<Resistance>,
    /// The same for the ignition feed (15) or the relay contact (87) of the load.
    pub dead_feed: Band<Resistance>,
}

/// One corner: everything that may lie anywhere in its band stands at one end of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Supply and temperature.
    pub at: SupplyCorner,
    /// The number of the load that is asked about.
    pub subject: usize,
    /// Resistance of the load that is asked about.
    pub load: End,
    /// Resistance of the other loads: at `High` they pull the pin as high as they can.
    pub others: End,
    /// Whether the loads stand or run.
    pub phase: Phase,
    /// What else hangs on the controller's dead supply.
    pub dead_rail: End,
    /// What else hangs on the controller's dead 5 V: a load between that and the pin gets most where the one is held up
    /// and the other down, so that it has an end of its own.
    pub dead_logic: End,
    /// What else hangs on the load's dead feed.
    pub dead_feed: End,
    /// The pin's own resistors: at `High` they pull it as high as they can.
    pub pulls: End,
    /// The same of every output that hangs together with this one.
    pub beyond: End,
    /// On-resistance.
    pub on: End,
    /// A resistor across the winding of a load.
    pub shunt: End,
    /// The part of each period that is on, of a pulsed load.
    pub duty: End,
    /// Frequency and inductance of a pulsed load: at `High` its current is smoothest.
    pub smoothing: End,
    /// Of a pulsed load: not at those ends, but where between them it heats what catches it most.
    pub is_hottest: bool,
    /// The relay that feeds a load.
    pub contact: Contact,
    /// Which outputs are on while the load is not asked to act.
    pub commanded: Commanded,
    /// Every resistance at the same end, whatever the others say: then the battery gives the most, or the least.
    pub alike: Option<End>,
}

impl End {
    const ENDS: &[Self] = &[Self::Low, Self::High];
    const ONE: &[Self] = &[Self::Nominal];

    /// This end of a band.
    pub fn of<Q: Copy>(self, band: &Band<Q>) -> Q {
        match self {
            Self::Low => band.low,
            Self::Nominal => band.nominal,
            Self::High => band.high,
        }
    }

    /// The other end.
    #[must_use]
    pub fn opposite(self) -> Self {
        match self {
            Self::Low => Self::High,
            Self::Nominal => Self::Nominal,
            Self::High => Self::Low,
        }
    }

    pub(super) fn ends(is_spread: bool) -> &'static [Self] {
        if is_spread { Self::ENDS } else { Self::ONE }
    }
}

impl Point {
    /// What is meant, with the relay's contact so.
    pub fn nominal(at: SupplyCorner, subject: usize, contact: Contact) -> Self {
        let end = End::Nominal;
        Self {
            at,
            subject,
            load: end,
            others: end,
            phase: Phase::Running,
            dead_rail: end,
            dead_logic: end,
            dead_feed: end,
            pulls: end,
            beyond: end,
            on: end,
            shunt: end,
            duty: end,
            smoothing: end,
            is_hottest: false,
            contact,
            commanded: Commanded::AsStated,
            alike: None,
        }
    }

    /// Every resistance at this end.
    pub(super) fn alike(at: SupplyCorner, end: End, phase: Phase) -> Self {
        let point = Self::nominal(at, 0, Contact::Open);
        Self {
            phase,
            dead_rail: end,
            dead_logic: end,
            dead_feed: end,
            shunt: end,
            alike: Some(end),
            ..point
        }
    }
}

/// The positions of the contact that are possible in a state.
pub(super) fn contacts(state: KeyState, wiring: &Wiring) -> &'static [Contact] {
    match state {
        KeyState::KeyOff => &[Contact::Open],
        KeyState::Cranking | KeyState::On | KeyState::Pulsed => &[Contact::Closed],
        _ if wiring.goes_to(FarEnd::Relay) => &[Contact::Closed, Contact::Open],
        _ => &[Contact::Closed],
    }
}

/// Every corner of a state for the load with the number `subject`.
///
/// Where no current can flow whatever the corner, fewer stand for all of them.
pub(super) fn points(
    state: KeyState,
    wiring: &Wiring,
    subject: usize,
    around: &Surroundings,
) -> Vec<Point> {
    let free = Free::of(state, wiring, subject, around);
    let mut all = Vec::new();
    for &contact in contacts(state, wiring) {
        if is_dead(state, wiring) {
            all.push(Point::nominal(around.nominal, subject, contact));
            continue;
        }
        let supplies = around.corners.iter().filter(|at| state.meets(at));
        let mut points: Vec<_> = supplies.map(|&at| Point::nominal(at, subject, contact)).collect();
        spread(&mut points, free.load, |point| &mut point.load);
        spread(&mut points, free.others, |point| &mut point.others);
        spread(&mut points, free.pulls, |point| &mut point.pulls);
        spread(&mut points, free.beyond, |point| &mut point.beyond);
        spread(&mut points, free.on, |point| &mut point.on);
        spread(&mut points, free.shunt, |point| &mut point.shunt);
        let has_inside = free.duty.len() > 1 || free.smoothing.len() > 1;
        let between = (has_inside && heats(wiring, subject)).then(|| points.clone());
        spread(&mut points, free.duty, |point| &mut point.duty);
        spread(&mut points, free.smoothing, |point| &mut point.smoothing);
        points.extend(between.into_iter().flatten().map(|it| Point { is_hottest: true, ..it }));
        spread(&mut points, free.rail, |point| &mut point.dead_rail);
        spread(&mut points, free.logic, |point| &mut point.dead_logic);
        let feed = free.feed(state, contact) && around.dead_feed.is_spread();
        spread(&mut points, End::ends(feed), |point| &mut point.dead_feed);
        spread(&mut points, free.phases, |point| &mut point.phase);
        let commands = wiring.commands(state, subject);
        spread(&mut points, &commands, |point| &mut point.commanded);
        all.append(&mut points);
    }
    all
}

/// How many there are.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Count {
    /// At the ends of all bands.
    pub(super) usual: u64,
    /// Where a pulsed load heats what catches it most.
    pub(super) hottest: u64,
}

/// How many [`points`] there are, without writing them down.
pub(super) fn count(
    state: KeyState,
    wiring: &Wiring,
    subject: usize,
    around: &Surroundings,
) -> Count {
    let free = Free::of(state, wiring, subject, around);
    let ways = |ends: usize| u64::try_from(ends).unwrap_or(u64::MAX);
    let mut all = Count::default();
    for &contact in contacts(state, wiring) {
        if is_dead(state, wiring) {
            all.usual += 1;
            continue;
        }
        let supplies = around.corners.iter().filter(|at| state.meets(at)).count();
        let feed = free.feed(state, contact) && around.dead_feed.is_spread();
        let before = [free.load, free.others, free.pulls, free.beyond, free.on, free.shunt];
        let after = [free.rail, free.logic, End::ends(feed)];
        let alike =
            before.iter().chain(&after).fold(ways(supplies), |all, it| all * ways(it.len()))
                * ways(free.phases.len())
                * ways(wiring.commands(state, subject).len());
        all.usual += alike * ways(free.duty.len()) * ways(free.smoothing.len());
        let has_inside = free.duty.len() > 1 || free.smoothing.len() > 1;
        all.hottest += if has_inside && heats(wiring, subject) { alike } else { 0 };
    }
    all
}

/// With the key off, whether nothing links the pin to the battery.
pub(super) fn is_dead(state: KeyState, wiring: &Wiring) -> bool {
    let is_fed = wiring.goes_to(FarEnd::Battery);
    let mut pulls = wiring.outputs().filter_map(|output| output.pull_up.as_ref());
    let is_pulled = pulls.any(|(_, rail)| *rail == PullRail::Battery);
    state == KeyState::KeyOff && !is_fed && !is_pulled
}

/// Whether the load is the only thing that can carry current at the pin: then it carries none, whatever its resistance.
fn is_alone(state: KeyState, wiring: &Wiring) -> bool {
    let output = &wiring.output;
    let is_whole = !state.is_unfed() && state != KeyState::GroundLost;
    is_whole
        && wiring.drive(state) == Drive::Open
        && wiring.loads.len() == 1
        && wiring.beyond.is_empty()
        && output.pull_up.is_none()
        && output.pull_down.is_none()
        && output.leakage.is_none()
}

/// Whether the pin's own resistors may lie anywhere in a band.
pub(super) fn has_spread_pulls(output: &Output) -> bool {
    output.pull_up.as_ref().is_some_and(|(band, _)| band.is_spread())
        || output.pull_down.as_ref().is_some_and(Band::is_spread)
        || output.leakage.as_ref().is_some_and(Band::is_spread)
}

/// Whether a turn-off of the load can heat its output at all: the current runs on inside it, through a diode or a clamp.
fn heats(wiring: &Wiring, subject: usize) -> bool {
    let output = &wiring.output;
    let is_wound = wiring.loads.get(subject).is_some_and(|load| load.inductance.high.base() > 0.0);
    let runs_inside =
        output.clamp.is_some() || (output.stage.has_upper() && output.stage.has_lower());
    is_wound && runs_inside
}

fn is_pulled(output: &Output, to: impl Fn(PullRail) -> bool) -> bool {
    output.pull_up.as_ref().is_some_and(|(_, rail)| to(*rail))
}

fn has_spread_shunt(load: &Load) -> bool {
    matches!(&load.suppression, Suppression::Resistor(band) if band.is_spread())
}

/// What may lie anywhere in a band in a key state.
struct Free {
    load: &'static [End],
    others: &'static [End],
    pulls: &'static [End],
    beyond: &'static [End],
    on: &'static [End],
    shunt: &'static [End],
    duty: &'static [End],
    smoothing: &'static [End],
    rail: &'static [End],
    logic: &'static [End],
    phases: &'static [Phase],
    ignition: bool,
    relay: bool,
    is_alone: bool,
}

impl Free {
    fn of(state: KeyState, wiring: &Wiring, subject: usize, around: &Surroundings) -> Self {
        let output = &wiring.output;
        let is_spread = |load: &Load| load.resistance.is_spread() || load.forward().is_spread();
        let goes_to = |far_end| wiring.goes_to(far_end);
        let others = wiring.all_loads().enumerate().filter(|(at, _)| *at != subject);
        let is_alone = is_alone(state, wiring);
        let runs = !is_alone && wiring.all_loads().any(|load| load.kind.running_ratio() > 1.0);
        let own = wiring.loads.get(subject).is_some_and(is_spread);
        let is_driven = |number| {
            let mut commands = wiring.commands(state, subject).into_iter();
            commands
                .any(|commanded| wiring.drive_at(number, subject, state, commanded) != Drive::Open)
        };
        let mut switches = wiring.outputs().enumerate();
        let is_driven =
            switches.any(|(number, output)| output.on_resistance.is_spread() && is_driven(number));
        let pulse = wiring.pulse().filter(|_| state == KeyState::Pulsed);
        let is_smoothed = wiring.loads.get(subject).is_some_and(|load| load.inductance.is_spread())
            || pulse.is_some_and(|it| it.frequency.is_spread());
        let hangs_on_rail = state.is_unfed()
            && (goes_to(FarEnd::FiveVolt)
                || wiring.outputs().any(|output| {
                    output.stage.has_upper() || is_pulled(output, |rail| rail != PullRail::Battery)
                }));
        let is_logic = |rail: PullRail| matches!(rail, PullRail::FiveVolt | PullRail::ThreeVolt);
        let hangs_on_logic = state.is_unfed()
            && (goes_to(FarEnd::FiveVolt)
                || wiring
                    .outputs()
                    .any(|output| output.stage == Stage::Logic || is_pulled(output, is_logic)));
        Self {
            load: End::ends(!is_alone && own),
            others: End::ends(others.into_iter().any(|(_, load)| is_spread(load))),
            pulls: End::ends(has_spread_pulls(output)),
            beyond: End::ends(wiring.outputs().skip(1).any(has_spread_pulls)),
            on: End::ends(is_driven),
            shunt: End::ends(wiring.all_loads().any(has_spread_shunt)),
            duty: End::ends(pulse.is_some_and(|it| it.duty.is_spread())),
            smoothing: End::ends(pulse.is_some() && is_smoothed),
            rail: End::ends(
                (hangs_on_rail || state == KeyState::GroundLost) && around.dead_rail.is_spread(),
            ),
            logic: End::ends(hangs_on_logic && around.dead_rail.is_spread()),
            phases: if runs { &[Phase::Standing, Phase::Running] } else { &[Phase::Running] },
            ignition: goes_to(FarEnd::Ignition),
            relay: goes_to(FarEnd::Relay),
            is_alone,
        }
    }

    fn feed(&self, state: KeyState, contact: Contact) -> bool {
        let is_dead = (self.ignition && state.is_unkeyed())
            || state == KeyState::FeedLost
            || (self.relay && contact == Contact::Open);
        is_dead && !self.is_alone
    }
}

/// Replaces each point by one for each of the values.
#[inline(never)]
fn spread<T: Copy>(points: &mut Vec<Point>, values: &[T], part: fn(&mut Point) -> &mut T) {
    let Some((&first, others)) = values.split_first() else { return };
    let so_far = points.len();
    for &value in others {
        points.extend_from_within(..so_far);
        points.iter_mut().rev().take(so_far).for_each(|point| *part(point) = value);
    }
    points.iter_mut().take(so_far).for_each(|point| *part(point) = first);
}
