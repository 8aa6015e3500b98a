//! Other ways to connect a load, each kept only if it solves clean in every key state at every corner.

use std::ops::RangeInclusive;

use super::{
    Contact, FarEnd, KeyState, Kick, Kind, Load, OnLevel, Output, Pin, Point, Solved, Stage,
    Suppression, Surroundings, Wiring,
    clean::{RESTING, is_clean_in, solve_clean},
    kick, operate,
};
use crate::{
    quantity::{Band, Current, Frequency, Measure, Power, Resistance, Time, Voltage, ohms, watts},
    tables::preferred::Series,
};

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
        /// What must count as on, where that output has the choice and it is not settled.
        level: Option<OnLevel>,
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
    /// A relay's coil hangs on the output in the load's stead.
    Relay {
        /// Where the coil's other end goes.
        far_end: FarEnd,
        /// What must count as on, where the output has the choice and it is not settled.
        level: Option<OnLevel>,
    },
}

/// A change that solves clean.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Alternative {
    /// The change.
    pub change: Change,
    /// The most that is across the load (or the coil) when it is not asked to act, at any corner.
    pub unasked: Voltage,
    /// What is across it when it is on, battery at rest, 20 °C.
    pub on: Voltage,
    /// The most that the output carries for good, at any corner.
    pub current: Current,
    /// The most that it carries for a moment.
    pub inrush: Current,
}

/// More of them than this nobody reads.
const MOST: usize = 4;

/// Tolerance of a usual resistor.
const TOLERANCE: f64 = 0.05;

/// Resistors that may serve as a pull-down.
const PULL_DOWN_OHM: RangeInclusive<f64> = 10.0..=8200.0;

/// A resistor that a fitter can splice into a loom gets no hotter than this: common practice, no source.
const MOST_PULL_DOWN_W: f64 = 2.0;

/// Alternatives for the load with the number `subject`, least work first.
///
/// `wiring.level` counts where the level is known; else every alternative says which level it needs.
pub fn alternatives(
    wiring: &Wiring,
    subject: usize,
    spares: &[Spare],
    around: &Surroundings,
) -> Vec<Alternative> {
    let Some(load) = wiring.loads.get(subject) else { return Vec::new() };
    let search = Search { wiring, subject, load, around };
    let mut found = search.levels();
    found.extend(search.slower());
    found.extend(search.turned());
    found.extend(search.without_diode());
    found.extend(search.far_ends());
    if found.is_empty() {
        found.extend(search.levels_and_far_ends());
    }
    found.extend(search.spares(spares));
    found.extend(search.pull_downs());
    found.extend(search.bleeders());
    found.extend(search.coil_diode());
    found.extend(search.feed_diode());
    if found.len() < 2 {
        found.extend(search.stages());
    }
    if found.len() < MOST {
        found.extend(search.relays());
    }
    found.truncate(MOST);
    found
}

/// A load with its other end elsewhere.
fn moved(load: &Load, far_end: FarEnd) -> Load {
    let mut load = load.clone();
    let was_from_pin = load.is_from_pin();
    load.far_end = far_end;
    if load.is_from_pin() != was_from_pin {
        load.suppression.turn();
    }
    load
}

/// The turn-off with everything as it is meant, with the most inductance.
fn kick_at(wiring: &Wiring, subject: usize, around: &Surroundings) -> Option<Kick> {
    let point = Point::nominal(around.nominal, subject, Contact::Closed);
    let operating = operate(wiring, KeyState::On, &point, around)?;
    let inductance = wiring.loads.get(subject)?.inductance.high;
    kick(wiring, &Solved { point, operating }, inductance)
}

struct Search<'a> {
    wiring: &'a Wiring,
    subject: usize,
    load: &'a Load,
    around: &'a Surroundings,
}

impl Search<'_> {
    fn is_level_known(&self) -> bool {
        self.wiring.output.levels().len() == 1
    }

    /// The other setting of what counts as on, or either where it is not known.
    fn levels(&self) -> Vec<Alternative> {
        if self.wiring.output.stage != Stage::HalfBridge {
            return Vec::new();
        }
        let known = self.is_level_known();
        let possible =
            OnLevel::BOTH.into_iter().filter(|level| !known || *level != self.wiring.level);
        let changed =
            possible.map(|level| (Change::Level(level), self.with(level, self.load.clone())));
        changed.filter_map(|(change, wiring)| self.solve(change, &wiring)).take(1).collect()
    }

    fn far_ends(&self) -> Vec<Alternative> {
        let elsewhere = FarEnd::OFFERED.into_iter().filter(|end| *end != self.load.far_end);
        let at_every_level = |far_end| {
            let mut solved = self.wiring.output.levels().iter().map(|level| {
                let wiring = self.with(self.level_or(*level), self.load_to(far_end));
                self.solve(Change::FarEnd(far_end), &wiring)
            });
            let first = solved.next()??;
            solved.all(|it| it.is_some()).then_some(first)
        };
        elsewhere.filter_map(at_every_level).take(2).collect()
    }

    fn levels_and_far_ends(&self) -> Vec<Alternative> {
        if self.wiring.output.stage != Stage::HalfBridge {
            return Vec::new();
        }
        let known = self.is_level_known();
        let levels =
            OnLevel::BOTH.into_iter().filter(|level| !known || *level != self.wiring.level);
        let all = levels.flat_map(|level| {
            let ends = FarEnd::OFFERED.into_iter().filter(|end| *end != self.load.far_end);
            ends.map(move |far_end| (level, far_end))
        });
        all.filter_map(|(level, far_end)| {
            let wiring = self.with(level, self.load_to(far_end));
            self.solve(Change::LevelAndFarEnd(level, far_end), &wiring)
        })
        .take(2)
        .collect()
    }

    /// A free output: first one where the other end may stay, then one where it moves.
    fn spares(&self, spares: &[Spare]) -> Option<Alternative> {
        let stays = [self.load.far_end];
        let moves: Vec<_> =
            FarEnd::OFFERED.into_iter().filter(|end| *end != self.load.far_end).collect();
        [&stays[..], &moves].into_iter().find_map(|far_ends| {
            spares.iter().find_map(|spare| {
                let (output, number) = (&spare.output, spare.number);
                self.on_output(output, far_ends, self.load, |far_end, level| Change::Spare {
                    number,
                    far_end,
                    level,
                })
            })
        })
    }

    /// Pulsed as fast as the output can, where it is pulsed faster.
    fn slower(&self) -> Option<Alternative> {
        let limit = self.wiring.output.pulse_limit?.low;
        let mut load = self.load.clone();
        let pulse = load.pulse.as_mut().filter(|pulse| pulse.frequency.high > limit)?;
        pulse.frequency = Band::exact(limit);
        self.solve(Change::Slower(limit), &self.with(self.wiring.level, load))
    }

    /// The diode turned the right way round.
    fn turned(&self) -> Option<Alternative> {
        let suppression = match self.load.suppression {
            Suppression::Diode { is_right_way: false } => Suppression::Diode { is_right_way: true },
            _ => return None,
        };
        let load = Load { suppression, ..self.load.clone() };
        self.solve(Change::Turn, &self.with(self.wiring.level, load))
    }

    /// No diode across a load that is driven both ways.
    fn without_diode(&self) -> Option<Alternative> {
        let has_diode = matches!(self.load.suppression, Suppression::Diode { .. });
        if !has_diode || self.load.far_end != FarEnd::Output {
            return None;
        }
        let load = Load { suppression: Suppression::None, ..self.load.clone() };
        self.solve(Change::NoDiode, &self.with(self.wiring.level, load))
    }

    /// The largest resistor to ground that keeps the load released.
    fn pull_downs(&self) -> Option<Alternative> {
        if self.wiring.output.pull_up.is_none() || self.wiring.output.pull_down.is_some() {
            return None;
        }
        self.largest(Change::PullDown, |ohm| {
            let mut wiring = self.wiring.clone();
            wiring.output.pull_down = Some(Band::with_tolerance(ohms(ohm), TOLERANCE));
            wiring
        })
    }

    /// The largest resistor across the load that keeps it released, where something pulls the pin down or leaks.
    fn bleeders(&self) -> Option<Alternative> {
        let output = &self.wiring.output;
        let is_held = output.pull_down.is_some() || output.leakage.is_some();
        let is_fed =
            matches!(self.load.far_end, FarEnd::Ignition | FarEnd::Relay | FarEnd::Battery);
        if !is_held || !is_fed {
            return None;
        }
        self.largest(Change::Bleeder, |ohm| {
            let resistance = Band::with_tolerance(ohms(ohm), TOLERANCE);
            let beside = Load { resistance, ..Load::usual(Kind::Resistor, self.load.far_end) };
            let mut wiring = self.wiring.clone();
            wiring.loads.push(beside);
            wiring
        })
    }

    /// A diode across a winding whose kick the output can't bear.
    fn coil_diode(&self) -> Option<Alternative> {
        let is_bare = matches!(self.load.suppression, Suppression::Unknown | Suppression::None);
        if !is_bare {
            return None;
        }
        let suppression = Suppression::Diode { is_right_way: true };
        let wiring = self.with(self.wiring.level, Load { suppression, ..self.load.clone() });
        let time = kick_at(&wiring, self.subject, self.around)?.lets_go?;
        self.solve(Change::CoilDiode(time), &wiring)
    }

    /// Whether a kick that is caught as planned would no longer be.
    fn is_left_uncaught(&self, wiring: &Wiring, subject: usize) -> bool {
        let is_uncaught = |wiring, subject| {
            kick_at(wiring, subject, self.around).is_some_and(|kick| kick.path.is_none())
        };
        is_uncaught(wiring, subject) && !is_uncaught(self.wiring, self.subject)
    }

    /// A diode in the feed of a load that is driven backwards, or feeds something dead.
    fn feed_diode(&self) -> Option<Alternative> {
        let is_fed =
            matches!(self.load.far_end, FarEnd::Ignition | FarEnd::Relay | FarEnd::Battery);
        if !is_fed || self.load.is_one_way() {
            return None;
        }
        let load = Load { has_feed_diode: true, ..self.load.clone() };
        self.solve(Change::FeedDiode, &self.with(self.wiring.level, load))
    }

    /// The largest preferred resistor with which the load is released in every state at rest.
    ///
    /// The smaller it is, the less is left across the load: the first that serves is found by halving.
    fn largest(
        &self,
        change: impl Fn(Resistance, Power) -> Change,
        with: impl Fn(f64) -> Wiring,
    ) -> Option<Alternative> {
        let mut values: Vec<f64> = Series::E12.values().map(Measure::base).collect();
        values.retain(|ohm| PULL_DOWN_OHM.contains(ohm));
        values.reverse();
        let is_released = |ohm: f64| {
            RESTING
                .into_iter()
                .all(|state| is_clean_in(state, &with(ohm), self.subject, self.around))
        };
        let at = values.partition_point(|ohm| !is_released(*ohm));
        let ohm = *values.get(at)?;
        let power = self.most_power(ohm);
        let found = self.solve(change(ohms(ohm), power), &with(ohm))?;
        (power <= watts(MOST_PULL_DOWN_W)).then_some(found)
    }

    /// With the highest supply across it, at the lower end of its tolerance.
    fn most_power(&self, ohm: f64) -> Power {
        let supplies = self.around.corners.iter().map(|at| at.supply.base());
        let most = supplies.fold(0.0, f64::max);
        watts(most * most / ((1.0 - TOLERANCE) * ohm))
    }

    fn stages(&self) -> Option<Alternative> {
        let others = Stage::ALL.into_iter().filter(|it| *it != self.wiring.output.stage);
        let stays = [self.load.far_end];
        let on = |stage: Stage, far_ends: &[FarEnd]| {
            let mut output = Output::plain(stage);
            output.current_limit = None;
            self.on_output(&output, far_ends, self.load, |far_end, _| Change::Stage(stage, far_end))
        };
        // what drives both ways would need its level said too: the plain switches suffice
        let mut plain = others.filter(|stage| !stage.is_two_way());
        plain
            .clone()
            .find_map(|stage| on(stage, &stays))
            .or_else(|| plain.find_map(|stage| on(stage, &FarEnd::OFFERED)))
    }

    fn relays(&self) -> Option<Alternative> {
        let goes_here = |pin: &Pin| pin.loads.iter().any(|load| load.far_pin() == Some(0));
        let is_shared = self.wiring.loads.len() > 1 || self.wiring.beyond.iter().any(goes_here);
        if self.load.kind == Kind::RelayCoil || self.load.pulse.is_some() || is_shared {
            return None;
        }
        let coil = Load::relay_coil(FarEnd::Ignition);
        let change = |far_end, level| Change::Relay { far_end, level };
        self.on_output(&self.wiring.output, &FarEnd::OFFERED, &coil, change)
    }

    /// A load alone on an output, with the first far end that solves clean.
    fn on_output(
        &self,
        output: &Output,
        far_ends: &[FarEnd],
        load: &Load,
        change: impl Fn(FarEnd, Option<OnLevel>) -> Change,
    ) -> Option<Alternative> {
        let levels = output.levels();
        far_ends.iter().find_map(|&far_end| {
            levels.iter().find_map(|&level| {
                let wiring = self.moved_to(output, level, moved(load, far_end));
                let said = (levels.len() > 1).then_some(level);
                let found = solve_clean(change(far_end, said), &wiring, 0, self.around)?;
                (!self.is_left_uncaught(&wiring, 0)).then_some(found)
            })
        })
    }

    /// The load on another output; where its other end goes to an output, everything else stays where it hangs.
    fn moved_to(&self, output: &Output, level: OnLevel, load: Load) -> Wiring {
        let stays = load.far_end == FarEnd::Output;
        let mut moved = Wiring::alone(output.clone(), level, vec![load]);
        if !stays {
            return moved;
        }
        let before = self.wiring;
        let mut left = before.loads.clone();
        if self.subject < left.len() {
            left.remove(self.subject);
        }
        moved.beyond.clone_from(&before.beyond);
        moved.beyond.push(Pin { output: before.output.clone(), level: before.level, loads: left });
        let last = moved.beyond.len();
        for partner in moved
            .beyond
            .iter_mut()
            .flat_map(|pin| &mut pin.loads)
            .filter_map(|it| it.partner.as_mut())
        {
            if partner.pin == 0 {
                partner.pin = last;
            }
        }
        moved.at_level(level)
    }

    fn level_or(&self, level: OnLevel) -> OnLevel {
        if self.is_level_known() { self.wiring.level } else { level }
    }

    /// The load with its other end elsewhere; a diode across it stays on its wires, and is the other way round once
    /// plus and minus have changed.
    fn load_to(&self, far_end: FarEnd) -> Load {
        moved(self.load, far_end)
    }

    /// The same wiring with another level and another load in this one's place.
    fn with(&self, level: OnLevel, load: Load) -> Wiring {
        let mut wiring = self.wiring.clone();
        if let Some(place) = wiring.loads.get_mut(self.subject) {
            *place = load;
        }
        if level == wiring.level { wiring } else { wiring.at_level(level) }
    }

    /// The change, if the load solves clean and no other load on the pin that was clean is so no more.
    fn solve(&self, change: Change, wiring: &Wiring) -> Option<Alternative> {
        let found = solve_clean(change, wiring, self.subject, self.around)?;
        let mut others = (0..wiring.loads.len()).filter(|other| *other != self.subject);
        let is_worse = |other: usize| {
            let (before, now) = (self.wiring, wiring);
            let is_clean = |wiring| solve_clean(change, wiring, other, self.around).is_some();
            !is_clean(now) && is_clean(before)
        };
        let is_good = !others.any(is_worse) && !self.is_left_uncaught(wiring, self.subject);
        is_good.then_some(found)
    }
}
