//! May the load be connected? What is wrong, worst first.

use super::{
    Catcher, Commanded, Contact, FarEnd, Following, Harm, KeyState, Load, LoadKind, LoadState,
    Operating, Phase, PinPart, Point, Rest, SolvedCorner, StateRest, Suppression, Trouble, Wiring,
    corner, kick, trouble::By,
};
use crate::quantity::{Holds, Measure, amperes};

/// A trouble, with where it is and its worst case.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// What is wrong.
    pub trouble: Trouble,
    /// In which key state.
    pub state: KeyState,
    /// At which corners.
    pub holds: Holds,
    /// The corner where it is worst.
    pub worst: SolvedCorner,
}

/// What is wrong with a load, worst first; nothing where it may be connected.
#[derive(Clone, Debug, PartialEq)]
pub struct Judgement {
    /// The troubles.
    pub found: Vec<Found>,
}

/// Above this a switched-off controller may stay alive or an engine may not stop: common practice, no source.
const WAKING_A: f64 = 0.020;
/// The same, as the voltage on its supply: below it nothing in a controller works: common practice, no source.
const WAKING_V: f64 = 3.0;
/// At this a relay that is in stays in, and a coil still sparks: common practice, no source.
const SPARKING_V: f64 = 6.0;
/// Below this a current into something switched off is nothing: common practice, no source.
const LEAK_A: f64 = 0.001;
/// A sensor supply with one sensor on it takes as much; a regulator takes nothing back: common practice, no source.
const LIFTING_A: f64 = 0.005;
/// A diode that carries more than this while the output is not switching shorts what drives it: a suppressed coil takes
/// less by itself. Common practice, no source.
const SHORT_A: f64 = 1.0;
/// What a switch without a heat sink of its own gets rid of: common practice, no source.
const HOT_W: f64 = 1.0;
/// A limit and what is held against it are no better known.
const HAIR: f64 = 1.03;
/// What none without one gets rid of: common practice, no source.
const MELTING_W: f64 = 5.0;
/// What the clamp of an output takes at each turn-off, where its data are not known: 25 to 100 mJ are usual (from memory).
const USUALLY_BORNE_J: f64 = 0.05;
/// What no output of a controller takes at each turn-off: from memory.
const BORNE_BY_NONE_J: f64 = 0.3;
/// What the controller's 5 V has left for a load: it gives 100 to 250 mA in all, and each sensor takes 5 to 15 of them (from
/// memory).
const SPARED_A: f64 = 0.05;
/// What the inputs of 5 V logic bear.
const LOGIC_V: f64 = 5.0;
/// A supply of 5 V is within a tenth of it.
const WITHIN: f64 = 1.1;
/// A parked car takes 20 to 50 mA in all (from memory), so that a quarter of the least of it in one output is too much:
/// common practice, no source.
pub(super) const DRAIN_A: f64 = 0.005;

impl Judgement {
    /// The worst trouble, passing over what is bearable.
    pub fn head(&self) -> Option<&Found> {
        self.found.iter().find(|found| !found.trouble.is_bearable())
    }

    /// Whether this is among what is wrong.
    pub fn has(&self, trouble: Trouble) -> bool {
        self.found.iter().any(|it| it.trouble == trouble)
    }

    /// Whether the load may be connected.
    pub fn is_clean(&self) -> bool {
        self.head().is_none()
    }
}

/// Judges a load by those corners that `counts` lets through.
pub fn judge(rest: &Rest, counts: impl Fn(&Point) -> bool) -> Judgement {
    let mut found: Vec<Found> =
        rest.states.iter().flat_map(|state| judge_state(rest, state, &counts)).collect();
    if !can_be_in(rest, &counts) {
        found.retain(|it| !it.trouble.needs_to_be_in());
    }
    found.extend(pulses(rest, &counts));
    let is_counting = rest.wiring.loads.get(rest.subject).is_some_and(|it| it.kind.counts_pulses());
    if !is_counting && never_acts(rest, &counts) {
        for it in &mut found {
            if matches!(it.trouble, Trouble::Weak) {
                it.trouble = Trouble::NeverActs;
            }
        }
    }
    let troubles: Vec<_> = found.iter().map(|it| it.trouble).collect();
    found.retain(|it| !troubles.iter().any(|other| it.trouble.is_said_by(*other)));
    let load = rest.wiring.loads.get(rest.subject);
    let bad = |it: &Found| badness(it.trouble, load, &it.worst);
    // the same in several states is told where it is worst
    crate::sorted::by(&mut found, |one, other| {
        let ranks = one.trouble.rank().cmp(&other.trouble.rank());
        ranks.then_with(|| bad(other).total_cmp(&bad(one)))
    });
    found.dedup_by_key(|it| it.trouble.rank());
    let all = found.clone();
    found.retain(|it| !all.iter().any(|other| is_same_cause(it, other, &bad)));
    Judgement { found }
}

/// Whether what one thing tells follows from the other: the part that may hold the load in while the output is off holds it in with
/// the key off, during a restart and after a failure too, by no more than the tenth that the corners differ.
fn is_same_cause(it: &Found, other: &Found, bad: &dyn Fn(&Found) -> f64) -> bool {
    if (it.trouble, other.trouble) == (Trouble::LiveAtKeyOn, Trouble::LiveAtRest) {
        return it.worst.carrier() == other.worst.carrier();
    }
    let is_at_rest = matches!(other.trouble, Trouble::MayStayIn | Trouble::MayStayInAtRestart);
    let is_elsewhere = matches!(it.trouble, Trouble::MayStayInKeyOff | Trouble::MayStayInAtRestart);
    let is_later = is_elsewhere || it.trouble.needs_fault() && it.trouble.harm() == Harm::Acts;
    is_at_rest
        && is_later
        && other.trouble.rank() < it.trouble.rank()
        && it.worst.carrier() == other.worst.carrier()
        && bad(it) <= 1.1 * bad(other)
}

/// Whether the load can be in at all: what never was in does not stay so.
fn can_be_in(rest: &Rest, counts: &impl Fn(&Point) -> bool) -> bool {
    let Some(load) = rest.wiring.loads.get(rest.subject) else { return false };
    let corners =
        rest.states.iter().filter(|state| !state.state.is_fault()).flat_map(|it| &it.corners);
    corners.filter(|it| counts(&it.point)).any(|it| effect(load, it) == LoadState::Energised)
}

fn never_acts(rest: &Rest, counts: &impl Fn(&Point) -> bool) -> bool {
    let Some(load) = rest.wiring.loads.get(rest.subject) else { return false };
    let Some(on) = rest.state(KeyState::On) else { return false };
    let mut corners = on.corners.iter().filter(|solved| counts(&solved.point));
    corners.all(|solved| effect(load, solved) != LoadState::Energised)
}

/// What a load does at a solved corner.
pub(super) fn effect(load: &Load, solved: &SolvedCorner) -> LoadState {
    solved.load().map_or(LoadState::Released, |flow| load.effect(flow, solved.point.at.temperature))
}

/// Whether less than what acts for certain is no fault while the starter turns: it follows what it gets, or only counts.
fn follows(kind: LoadKind) -> bool {
    kind == LoadKind::ProportionalValve || kind.counts_pulses()
}

/// What a load that counts pulses gets of them: it must be high with the output on and low with it off, or the other way
/// round, at every corner.
fn pulses(rest: &Rest, counts: &impl Fn(&Point) -> bool) -> Option<Found> {
    let load = rest.wiring.loads.get(rest.subject)?;
    let corners = |state: KeyState| -> Vec<&SolvedCorner> {
        let all = rest.state(state).into_iter().flat_map(|it| &it.corners);
        all.filter(|it| counts(&it.point)).collect()
    };
    let (trouble, state, worst) = swing(load, corners(KeyState::On), corners(KeyState::Off))?;
    Some(Found { trouble, state, holds: Holds::Always, worst: worst.clone() })
}

/// What is wrong with the swing of a load that counts pulses, and the corner that shows it; nothing of any other load.
pub(super) fn swing<'a>(
    load: &Load,
    on: Vec<&'a SolvedCorner>,
    off: Vec<&'a SolvedCorner>,
) -> Option<(Trouble, KeyState, &'a SolvedCorner)> {
    if !load.kind.counts_pulses() {
        return None;
    }
    // nobody reads a rev counter while the starter turns, nor behind a relay that is out
    let is_read =
        |it: &&SolvedCorner| !it.point.at.is_cranking && it.point.contact == Contact::Closed;
    let read = |of: Vec<&'a SolvedCorner>| of.into_iter().filter(is_read).collect::<Vec<_>>();
    let (on, off) = (read(on), read(off));
    let is_high = |it: &SolvedCorner| {
        let temperature = it.point.at.temperature;
        it.load().is_some_and(|flow| load.is_sure_to_act(flow.voltage, temperature))
    };
    let is_low = |it: &SolvedCorner| effect(load, it) == LoadState::Released;
    let may_be_high = |it: &SolvedCorner| effect(load, it) == LoadState::Energised;
    let all = |of: &[&SolvedCorner], is: &dyn Fn(&SolvedCorner) -> bool| of.iter().all(|it| is(it));
    let any = |of: &[&SolvedCorner]| of.iter().any(|it| may_be_high(it));
    if (all(&on, &is_high) && all(&off, &is_low)) || (all(&off, &is_high) && all(&on, &is_low)) {
        return None;
    }
    // what is high for certain in one state is not sure to be low in the other
    let is_on_high = !on.is_empty() && all(&on, &is_high);
    let is_off_high = !off.is_empty() && all(&off, &is_high);
    let (trouble, state, of) = match (any(&on), any(&off)) {
        (true, true) => (Trouble::NoPulses, KeyState::Off, off),
        (true, false) if is_on_high => (Trouble::PulsesBlurred, KeyState::Off, off),
        (false, true) if is_off_high => (Trouble::PulsesBlurred, KeyState::On, on),
        (false, true) => (Trouble::Weak, KeyState::Off, off),
        (true, false) => (Trouble::Weak, KeyState::On, on),
        (false, false) => (Trouble::NeverActs, KeyState::On, on),
    };
    let bad = |it: &SolvedCorner| badness(trouble, Some(load), it);
    let worst = of.into_iter().max_by(|one, other| bad(one).total_cmp(&bad(other)))?;
    Some((trouble, state, worst))
}

/// What it does that it is not asked to: to what counts pulses, a steady voltage is nothing.
fn resting(load: &Load, solved: &SolvedCorner) -> LoadState {
    if load.kind.counts_pulses() { LoadState::Released } else { effect(load, solved) }
}

fn judge_state(rest: &Rest, state: &StateRest, counts: &impl Fn(&Point) -> bool) -> Vec<Found> {
    let corners: Vec<(&SolvedCorner, Vec<Trouble>)> = state
        .corners
        .iter()
        .filter(|solved| counts(&solved.point))
        .map(|solved| (solved, troubles_at(&rest.wiring, rest.subject, state.state, solved)))
        .collect();
    let mut kinds: Vec<Trouble> = Vec::new();
    for trouble in corners.iter().flat_map(|(_, some)| some) {
        if !kinds.contains(trouble) {
            kinds.push(*trouble);
        }
    }
    crate::sorted::by(&mut kinds, |one, other| one.rank().cmp(&other.rank()));
    let load = rest.wiring.loads.get(rest.subject);
    let has_choice =
        rest.wiring.goes_to(FarEnd::Relay) && corner::contacts(state.state, &rest.wiring).len() > 1;
    let find = |trouble: Trouble| {
        // an output that is on is another matter than one that is off
        let is_one = |it: &SolvedCorner, some: &[Trouble]| {
            state.state != KeyState::Outlived
                || it.point.commanded == Commanded::AsStated
                || some.contains(&trouble)
        };
        let is_asked = |it: &SolvedCorner| trouble.is_asked_at(&it.point);
        let asked = || corners.iter().filter(|(it, some)| is_asked(it) && is_one(it, some));
        let hits = || asked().filter(|(_, some)| some.contains(&trouble)).map(|(it, _)| *it);
        let holds = if hits().count() == asked().count() {
            Holds::Always
        } else {
            let name = |it: &SolvedCorner| it.name_parts(state.state, has_choice);
            let hit = once_each(hits().map(name));
            let names = once_each(asked().map(|(it, _)| name(it)).filter(|it| hit.contains(it)));
            Holds::AtSome(names.iter().map(|parts| parts.concat()).collect())
        };
        let bad = |it: &SolvedCorner| badness(trouble, load, it);
        let worst = hits().max_by(|a, b| bad(a).total_cmp(&bad(b)))?.clone();
        Some(Found { trouble, state: state.state, holds, worst })
    };
    kinds.into_iter().filter_map(find).collect()
}

/// Each corner named once, however many ends of other bands were tried there.
fn once_each<const PARTS: usize>(
    names: impl Iterator<Item = [&'static str; PARTS]>,
) -> Vec<[&'static str; PARTS]> {
    let mut once = Vec::new();
    for name in names {
        if !once.contains(&name) {
            once.push(name);
        }
    }
    once
}

/// How bad a trouble is at a corner: the more, the worse.
fn badness(trouble: Trouble, load: Option<&Load>, solved: &SolvedCorner) -> f64 {
    let voltage = || load.map_or(0.0, |load| solved.acting(load).base());
    let operating = &solved.operating;
    let pulsing = operating.pulsing.as_ref();
    match trouble.by() {
        By::MostVoltage => voltage(),
        By::LeastVoltage => -voltage(),
        By::LoadCurrent => solved.load().map_or(0.0, |flow| flow.current.base().abs()),
        By::SwitchCurrent => operating.switch_current().base(),
        By::Frequency => pulsing.map_or(0.0, |it| it.frequency.base()),
        By::Heat => pulsing.map_or(0.0, |it| it.heat.base()),
        By::LeastPulse | By::MostPulse => pulsing.map_or(0.0, |it| -it.driving(it.least).base()),
        By::IntoRail => operating.into_rail().base(),
        By::IntoFeed => operating.into_feed().base(),
        By::IntoLogicRail => operating.into_logic_rail.base(),
        By::FromBattery => operating.from_battery.base(),
    }
}

/// What is wrong at one corner.
pub(super) fn troubles_at(
    wiring: &Wiring,
    subject: usize,
    state: KeyState,
    solved: &SolvedCorner,
) -> Vec<Trouble> {
    let Some(load) = wiring.loads.get(subject) else { return Vec::new() };
    let mut found = Vec::new();
    match state {
        KeyState::On => {
            when_on(wiring, load, solved, &mut found);
            when_switched_off(wiring, load, solved, &mut found);
        }
        // what only some of its kind need is no doubt while the starter turns
        KeyState::Cranking
            if effect(load, solved) != LoadState::Energised && !follows(load.kind) =>
        {
            found.push(Trouble::WeakWhileCranking);
        }
        KeyState::Cranking => {}
        KeyState::Outlived => when_outlived(wiring, load, solved, &mut found),
        KeyState::Pulsed => when_pulsed(wiring, load, solved, &mut found),
        KeyState::OtherOn => {
            if wiring.is_turned(subject, solved.point.commanded) {
                found.extend(overload(wiring, solved));
            } else {
                found.extend(unasked(state, resting(load, solved), true));
            }
        }
        _ => {
            let is_held = solved.acting(load) >= load.drop_out.high;
            found.extend(unasked(state, resting(load, solved), is_held));
        }
    }
    // with a fault the diode stands in for whatever is lost
    if !state.is_fault() && state != KeyState::Outlived && is_shorted(subject, load, solved) {
        found.push(Trouble::ShortedByDiode);
    }
    match state {
        KeyState::KeyOff => when_dead(solved, &mut found),
        KeyState::SupplyLost if wakes(&solved.operating) => {
            found.push(Trouble::KeepsControllerAlive);
        }
        _ => {}
    }
    let over = over_voltage(load, solved);
    match state {
        KeyState::GroundLost if over == Some(Trouble::OverVoltage) => {
            found.push(Trouble::OverVoltageWithoutGround);
        }
        _ if state.is_fault() => {}
        _ => found.extend(over),
    }
    if solved.operating.into_logic_rail > amperes(LIFTING_A) {
        found.push(Trouble::LiftsLogicRail);
    }
    let is_fed = solved.operating.into_feed() > amperes(WAKING_A);
    match state {
        KeyState::FeedLost if is_fed => found.push(Trouble::KeepsFeedAlive),
        KeyState::Starting | KeyState::Off | KeyState::OtherOn if feeds_what_is_dead(solved) => {
            found.push(Trouble::DrivesDeadFeed);
        }
        // what a coil lets pass into a feed that the key cut off moves nothing; what fails first is told by what acts
        KeyState::Outlived | KeyState::FeedLost | KeyState::GroundLost | KeyState::SupplyLost => {}
        _ if is_fed => found.push(Trouble::FeedsDeadFeed),
        _ => {}
    }
    found
}

fn unasked(state: KeyState, effect: LoadState, is_held: bool) -> Option<Trouble> {
    match (state, effect) {
        (_, LoadState::Released)
        | (KeyState::Cranking | KeyState::On | KeyState::Pulsed | KeyState::Outlived, _) => None,
        (KeyState::Off, LoadState::Energised) => Some(Trouble::LiveAtRest),
        (KeyState::Off, LoadState::MayHold) => Some(Trouble::MayStayIn),
        (KeyState::Starting, LoadState::Energised) => Some(Trouble::LiveAtKeyOn),
        (KeyState::Starting, LoadState::MayHold) => Some(Trouble::MayStayInAtRestart),
        (KeyState::KeyOff, LoadState::Energised) => Some(Trouble::LiveKeyOff),
        (KeyState::KeyOff, LoadState::MayHold) => Some(Trouble::MayStayInKeyOff),
        (KeyState::OtherOn, LoadState::Energised) => Some(Trouble::ActsWithOther),
        (KeyState::OtherOn, LoadState::MayHold) => Some(Trouble::MayStayInWithOther),
        // held by less than most of its kind need to stay in
        (KeyState::FeedLost | KeyState::GroundLost | KeyState::SupplyLost, LoadState::MayHold)
            if !is_held =>
        {
            None
        }
        (KeyState::FeedLost, _) => Some(Trouble::ActsWithoutFeed),
        (KeyState::GroundLost, _) => Some(Trouble::ActsWithoutGround),
        (KeyState::SupplyLost, _) => Some(Trouble::ActsWithoutSupply),
    }
}

/// More in the output than it may carry.
fn overload(wiring: &Wiring, solved: &SolvedCorner) -> Option<Trouble> {
    let limit = wiring.current_limit(solved.point.subject)?;
    let over = solved.operating.switch_current().base() / limit.base();
    match solved.point.phase {
        _ if over <= 1.0 => None,
        _ if over <= HAIR => Some(Trouble::AtLimit),
        Phase::Running => Some(Trouble::TooMuchCurrent),
        Phase::Standing => Some(Trouble::Inrush),
    }
}

fn when_on(wiring: &Wiring, load: &Load, solved: &SolvedCorner, found: &mut Vec<Trouble>) {
    found.extend(overload(wiring, solved));
    let takes = solved.load().map_or(0.0, |flow| flow.current.base().abs());
    if load.far_end == FarEnd::FiveVolt && takes > SPARED_A {
        found.push(Trouble::LoadsLogicRail);
    }
    let temperature = solved.point.at.temperature;
    let is_sure = solved.load().is_some_and(|it| load.is_sure_to_act(it.voltage, temperature));
    if !is_sure && !load.kind.counts_pulses() {
        found.push(Trouble::Weak);
    }
}

/// The key is off, and the controller still drives its pins.
fn when_outlived(wiring: &Wiring, load: &Load, solved: &SolvedCorner, found: &mut Vec<Trouble>) {
    let is_known = wiring.output.outlives_key == Some(true);
    let is_off = solved.point.commanded == Commanded::AsStated;
    if is_off && resting(load, solved) == LoadState::Energised {
        found.push(if is_known { Trouble::LiveOutlived } else { Trouble::PerhapsLiveOutlived });
    }
    if feeds_what_is_dead(solved) {
        found.push(if is_known { Trouble::DrivesDeadFeed } else { Trouble::PerhapsDrivesDeadFeed });
        if is_known {
            found.extend(overload(wiring, solved));
        }
    }
}

/// More at an input than it bears, or than many do.
fn over_voltage(load: &Load, solved: &SolvedCorner) -> Option<Trouble> {
    let across = solved.load()?.voltage.base().abs();
    match load.bears {
        Some(bears) => (across > bears.base() * WITHIN).then_some(Trouble::OverVoltage),
        // what has a pull-up to the battery of its own bears that
        None if matches!(load.kind, LoadKind::LogicInput | LoadKind::PulseInput)
            && matches!(load.far_end, FarEnd::Ground | FarEnd::FiveVolt | FarEnd::Output)
            && across > LOGIC_V * WITHIN =>
        {
            Some(Trouble::PerhapsOverVoltage)
        }
        None => None,
    }
}

/// The kick: what catches it, and whether that bears it.
fn when_switched_off(
    wiring: &Wiring,
    load: &Load,
    solved: &SolvedCorner,
    found: &mut Vec<Trouble>,
) {
    let Some(kick) = kick(wiring, solved, load.inductance.high) else { return };
    let is_inside = kick.path.is_none_or(|path| path.catcher == Catcher::Clamp);
    if !is_inside {
        return;
    }
    // what even the least inductance of such a load asks is sure
    let least = self::kick(wiring, solved, load.inductance.low);
    let least = least.map_or(0.0, |it| it.in_output.base());
    found.extend(match wiring.output.clamp_energy.as_ref().filter(|_| kick.path.is_some()) {
        Some(borne) if least > borne.low.base() => Some(Trouble::KickTooStrong),
        Some(borne) if kick.in_output > borne.low => Some(Trouble::KickPerhapsTooStrong),
        None if least > BORNE_BY_NONE_J => Some(Trouble::KickBeyondAny),
        None if least > USUALLY_BORNE_J => Some(Trouble::KickBeyondUsual),
        None if kick.path.is_none() => Some(Trouble::KickUncaught),
        Some(_) | None => None,
    });
}

fn when_pulsed(wiring: &Wiring, load: &Load, solved: &SolvedCorner, found: &mut Vec<Trouble>) {
    let Some(pulsing) = &solved.operating.pulsing else { return };
    let limit = wiring.output.pulse_limit.as_ref();
    if limit.is_some_and(|limit| pulsing.frequency > limit.low) {
        found.push(Trouble::TooFast);
    }
    // as likely to pull in, and as likely to let go, as any of its kind
    let follows = pulsing.following(load.pull_in.low, load.drop_out.high);
    if load.kind == LoadKind::RelayCoil && follows == Following::EachPulse {
        found.push(Trouble::Chatters);
    }
    match pulsing.heat.base() {
        heat if heat > MELTING_W => found.push(Trouble::KicksMelt),
        heat if heat > HOT_W => found.push(Trouble::KicksHeat),
        _ => {}
    }
    // as likely to act as any of its kind
    let is_short = pulsing.driving(pulsing.most) < load.pull_in.low;
    if is_short && !solved.point.at.is_cranking && !load.kind.counts_pulses() {
        found.push(Trouble::PulsedTooLittle);
    }
}

/// A current through the diode across a winding, the load's own set aside.
fn is_shorted(subject: usize, load: &Load, solved: &SolvedCorner) -> bool {
    let is_diode = match load.suppression {
        // the right way round it shorts only what drives the load backwards; into a dead feed it is no short
        Suppression::Diode { is_right_way: true } => !solved.operating.has_dead_feed(),
        Suppression::Diode { is_right_way: false } => true,
        Suppression::Unknown | Suppression::None | Suppression::Resistor(_) => false,
    };
    let through = |branch: &super::PinBranch| {
        branch.part == PinPart::Suppressor(subject) && branch.current.base().abs() > SHORT_A
    };
    is_diode && solved.operating.pulsing.is_none() && solved.operating.branches.iter().any(through)
}

fn when_dead(solved: &SolvedCorner, found: &mut Vec<Trouble>) {
    let operating = &solved.operating;
    if wakes(operating) {
        found.push(Trouble::WakesController);
    } else if operating.into_rail().base() >= LEAK_A {
        found.push(Trouble::LeaksIntoController);
    }
    if operating.from_battery.base() >= DRAIN_A {
        found.push(Trouble::DrainsBattery);
    }
}

/// Whether what hangs on the load's dead feed comes alive: through the diode across the load, which lets all pass that is
/// asked of it, through a load that is small against what else hangs there, or by amperes.
fn feeds_what_is_dead(solved: &SolvedCorner) -> bool {
    let operating = &solved.operating;
    let is_diode = |branch: &super::PinBranch| {
        matches!(branch.part, PinPart::Suppressor(_)) && branch.current.base().abs() >= LEAK_A
    };
    let (lifted, into) = (operating.feed_lifted().base(), operating.into_feed().base());
    let by_diode = lifted >= WAKING_V && operating.branches.iter().any(is_diode);
    by_diode || (lifted >= SPARKING_V && into >= WAKING_A) || into >= SHORT_A
}

/// Whether a controller that is cut off may stay alive.
fn wakes(operating: &Operating) -> bool {
    let into_rail = operating.into_rail().base();
    into_rail >= WAKING_A || (operating.lifted().base() >= WAKING_V && into_rail >= LEAK_A)
}

#[cfg(test)]
mod tests;
