//! Other ways to connect a load, each kept only if it solves clean in every key state at every corner.

use std::ops::RangeInclusive;

use super::{
    FarEnd, Load, OnLevel, Output, Stage, Surroundings, Wiring,
    clean::{RESTING, is_clean_in, solve_clean},
};
use crate::{
    quantity::{Band, Current, Measure, Power, Resistance, Voltage, ohms, watts},
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
    /// A resistor from the pin to ground, and the most it dissipates.
    PullDown(Resistance, Power),
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
    found.extend(search.far_ends());
    if found.is_empty() {
        found.extend(search.levels_and_far_ends());
    }
    found.extend(search.spares(spares));
    found.extend(search.pull_downs());
    if found.len() < 2 {
        found.extend(search.stages());
    }
    if found.len() < MOST {
        found.extend(search.relays());
    }
    found.truncate(MOST);
    found
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

    /// The largest resistor to ground that keeps the load released.
    ///
    /// The smaller it is, the less a pull-up leaves at the pin: the first that serves is found by halving.
    fn pull_downs(&self) -> Option<Alternative> {
        if self.wiring.output.pull_up.is_none() || self.wiring.output.pull_down.is_some() {
            return None;
        }
        let mut values: Vec<f64> = Series::E12.values().map(Measure::base).collect();
        values.retain(|ohm| PULL_DOWN_OHM.contains(ohm));
        values.reverse();
        let with = |ohm: f64| {
            let mut wiring = self.wiring.clone();
            wiring.output.pull_down = Some(Band::with_tolerance(ohms(ohm), 0.05));
            wiring
        };
        let is_released = |ohm: f64| {
            RESTING
                .into_iter()
                .all(|state| is_clean_in(state, &with(ohm), self.subject, self.around))
        };
        let at = values.partition_point(|ohm| !is_released(*ohm));
        let ohm = *values.get(at)?;
        let change = Change::PullDown(ohms(ohm), self.most_power(ohm));
        let found = self.solve(change, &with(ohm))?;
        (self.most_power(ohm) <= watts(MOST_PULL_DOWN_W)).then_some(found)
    }

    /// With the highest supply across it, at the lower end of its tolerance.
    fn most_power(&self, ohm: f64) -> Power {
        let supplies = self.around.corners.iter().map(|at| at.supply.base());
        let most = supplies.fold(0.0, f64::max);
        watts(most * most / (0.95 * ohm))
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
        if self.load.kind == super::Kind::RelayCoil || self.wiring.loads.len() > 1 {
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
                let load = Load { far_end, ..load.clone() };
                let wiring = Wiring { output: output.clone(), level, loads: vec![load] };
                let said = (levels.len() > 1).then_some(level);
                solve_clean(change(far_end, said), &wiring, 0, self.around)
            })
        })
    }

    fn level_or(&self, level: OnLevel) -> OnLevel {
        if self.is_level_known() { self.wiring.level } else { level }
    }

    fn load_to(&self, far_end: FarEnd) -> Load {
        Load { far_end, ..self.load.clone() }
    }

    /// The same wiring with another level and another load in this one's place.
    fn with(&self, level: OnLevel, load: Load) -> Wiring {
        let mut wiring = Wiring { level, ..self.wiring.clone() };
        if let Some(place) = wiring.loads.get_mut(self.subject) {
            *place = load;
        }
        wiring
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
        (!others.any(is_worse)).then_some(found)
    }
}
