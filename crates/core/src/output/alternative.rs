//! Other ways to connect a load, each kept only if it solves clean in every key state at every corner.

mod across;
mod elsewhere;
mod search;

use super::{FarEnd, Load, OnLevel, Output, Stage, Surroundings, Trouble, Wiring};
use crate::budget::Budget;
use crate::quantity::{Current, Frequency, Power, Resistance, Time, Voltage};

use search::Search;

/// An output of the plan on which nothing hangs.
#[derive(Clone, Debug, PartialEq)]
pub struct Spare {
    /// Its number in the plan.
    pub number: usize,
    /// The output.
    pub output: Output,
}

/// What is done otherwise.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Change {
    /// This level is set to count as on.
    Level(OnLevel),
    /// The load's other end goes here.
    FarEnd(FarEnd),
    /// Both.
    LevelAndFarEnd(OnLevel, FarEnd),
    /// The load hangs on the output with this number, which is free.
    Spare {
        /// The output's number in the plan.
        number: usize,
        /// Where the load's other end goes.
        far_end: FarEnd,
        /// What must count as on there, where that output has the choice and it is not settled.
        level: Option<OnLevel>,
    },
    /// The same, on an output that drives one way, with a diode across its winding.
    SpareWithDiode {
        /// The output's number in the plan.
        number: usize,
        /// Where the load's other end goes.
        far_end: FarEnd,
    },
    /// It is pulsed no faster than the output can.
    Slower(Frequency),
    /// The load's two wires change places, so that its diode is the right way round.
    Turn,
    /// The diode across it comes off: it is driven both ways.
    NoDiode,
    /// A resistor from the pin to ground, and the most it dissipates.
    PullDown(Resistance, Power),
    /// A resistor across the load, and the most it dissipates.
    Bleeder(Resistance, Power),
    /// A diode across the load's winding, and how long that takes to let go at most.
    CoilDiode(Time),
    /// A diode in the load's feed, which lets pass what drives it and nothing backwards.
    FeedDiode,
    /// An output of another kind.
    Stage(Stage, FarEnd),
    /// A relay's coil hangs on the output in the load's stead; its other end goes here.
    Relay(FarEnd),
}

/// A change that solves clean.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Alternative {
    /// The change.
    pub change: Change,
    /// With what as on at the load's own output it does, where that is not known and it doesn't do either way.
    pub level: Option<OnLevel>,
    /// Whether the load's two wires change places as well, so that its diode is the right way round there.
    pub is_turned: bool,
    /// The most that is across the load (or the coil) when it is not asked to act, at any corner.
    pub unasked: Voltage,
    /// What is across it when it is on, battery at rest, 20 °C.
    pub on: Voltage,
    /// The most that the output carries for good, at any corner.
    pub current: Current,
    /// The most that it carries for a moment.
    pub inrush: Current,
}

/// Which alternatives come first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Prefer {
    /// What is least work.
    LeastWork,
    /// What no setting can undo, then what is done to wires, then what is set: for a load that may hurt someone.
    Wires,
}

/// More of them than this nobody reads.
const MOST: usize = 4;

/// Alternatives for the load with the number `subject`.
///
/// `wirings` are the same one at each level that may count as on at the load's output: one where that is known. An
/// alternative is offered for all of them if it solves clean at each; else with the level at which it does, unless the
/// load is clean there as it is. What is `borne` need not be cured by it: it is wrong beside the worst, and less grave.
pub fn alternatives(
    wirings: &[&Wiring],
    subject: usize,
    spares: &[Spare],
    around: &Surroundings,
    prefer: Prefer,
    (budget, borne): (&Budget, &[Trouble]),
) -> Vec<Alternative> {
    let search = (budget, borne, prefer == Prefer::Wires);
    let Some(search) = Search::new(wirings, subject, around, search) else {
        return Vec::new();
    };
    // it cures nothing but a kick, and is then the cure
    let mut found = search.coil_diode();
    found.extend(search.levels());
    found.extend(search.slower());
    found.extend(search.turned());
    found.extend(search.without_diode());
    found.extend(search.far_ends());
    if found.is_empty() {
        found.extend(search.levels_and_far_ends());
    }
    let on_spares = search.spares(spares, false);
    // where only its kick is in the way, a diode goes with it
    let is_one_way = |it: &Alternative| rank(it, true, spares) == Rank::FreeOfSettings;
    if on_spares.is_empty() || prefer == Prefer::Wires && !on_spares.iter().any(is_one_way) {
        found.extend(search.spares_with_diode(spares));
    }
    found.extend(on_spares);
    found.extend(search.pull_downs());
    found.extend(search.bleeders());
    found.extend(search.feed_diode());
    let is_set = search.is_set();
    let rank = |it: &Alternative| rank(it, is_set, spares);
    let has_free = found.iter().any(|it| rank(it) == Rank::FreeOfSettings);
    let is_wanted = found.len() < 2 || (prefer == Prefer::Wires && !has_free);
    let mut on_stages = if is_wanted { search.stages(false) } else { Vec::new() };
    // a wire that goes elsewhere and another that changes places with it are two steps: where one would do, they are not offered
    if found.is_empty() && on_stages.is_empty() {
        found.extend(search.spares(spares, true));
    }
    if found.is_empty() && on_stages.is_empty() {
        on_stages = search.stages(true);
    }
    let is_full = found.len() + on_stages.len() >= MOST;
    let on_relay = if is_full { Vec::new() } else { search.relays() };
    let own = wirings.iter().map(|it| &it.output);
    let outputs: Vec<_> = own.chain(spares.iter().map(|it| &it.output)).collect();
    found.extend(in_order(on_stages, on_relay, &outputs));
    if prefer == Prefer::Wires {
        crate::sorted::by(&mut found, |one, other| rank(one).cmp(&rank(other)));
    }
    found.truncate(MOST);
    found
}

/// An output of another kind before a relay; but what no output of the plan carries is not looked for on another.
fn in_order(
    on_stages: Vec<Alternative>,
    on_relay: Vec<Alternative>,
    outputs: &[&Output],
) -> Vec<Alternative> {
    let is_beyond = on_stages.iter().any(|it| outputs.iter().all(|output| is_over(it, output)));
    if is_beyond { [on_relay, on_stages].concat() } else { [on_stages, on_relay].concat() }
}

/// Whether it takes more than this output carries, where that is known.
fn is_over(it: &Alternative, output: &Output) -> bool {
    output.current_limit.is_some_and(|limit| it.current > limit.low)
}

/// How well an alternative outlasts a change of the controller's settings, best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Rank {
    /// The load hangs on an output that drives one way only.
    FreeOfSettings,
    /// It is right with the settings as they are.
    Wires,
    /// It needs something set, or made sure of.
    Setting,
}

fn rank(it: &Alternative, is_set: bool, spares: &[Spare]) -> Rank {
    let one_way = |is_it| if is_it { Rank::FreeOfSettings } else { Rank::Wires };
    let is_one_way =
        |number| spares.iter().any(|it| it.number == number && !it.output.stage.is_two_way());
    match it.change {
        _ if it.level.is_some() => Rank::Setting,
        Change::Level(_) | Change::LevelAndFarEnd(..) | Change::Spare { level: Some(_), .. } => {
            Rank::Setting
        }
        Change::Spare { number, level: None, .. } | Change::SpareWithDiode { number, .. } => {
            one_way(is_one_way(number))
        }
        Change::Stage(stage, _) => one_way(!stage.is_two_way()),
        Change::FarEnd(_)
        | Change::Slower(_)
        | Change::Turn
        | Change::NoDiode
        | Change::PullDown(..)
        | Change::Bleeder(..)
        | Change::CoilDiode(_)
        | Change::FeedDiode
        | Change::Relay(_) => one_way(!is_set),
    }
}

/// A load with its other end elsewhere; a diode across it stays on its wires, and is the other way round once plus and
/// minus have changed.
fn moved(load: &Load, far_end: FarEnd) -> Load {
    let mut load = load.clone();
    let was_from_pin = load.is_from_pin();
    load.far_end = far_end;
    if load.is_from_pin() != was_from_pin {
        load.suppression.turn();
    }
    load
}

impl Alternative {
    /// The same change at another level as well: what it says then holds at both.
    fn and_at(self, other: Self) -> Self {
        let more = |one: Current, other: Current| if other > one { other } else { one };
        let change = match (self.change, other.change) {
            (Change::CoilDiode(one), Change::CoilDiode(two)) if two > one => Change::CoilDiode(two),
            (change, _) => change,
        };
        Self {
            change,
            level: self.level,
            is_turned: self.is_turned,
            unasked: if other.unasked > self.unasked { other.unasked } else { self.unasked },
            on: if other.on < self.on { other.on } else { self.on },
            current: more(self.current, other.current),
            inrush: more(self.inrush, other.inrush),
        }
    }
}
