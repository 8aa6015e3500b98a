//! The search: each change is made to the wiring at every level that may count as on, and solved.

use super::{Alternative, Change, moved};
use crate::{
    budget::Budget,
    output::{
        Contact, FarEnd, KeyState, Kick, Load, Point, SolvedCorner, Stage, Surroundings, Trouble,
        Wiring,
        clean::{solve_clean, suits},
        kick, operate,
    },
    quantity::Band,
};

/// What is searched for a load, and where.
pub(super) struct Search<'a> {
    /// The wiring at each level that may count as on.
    wirings: &'a [&'a Wiring],
    /// The first of them.
    pub(super) wiring: &'a Wiring,
    /// Those with which the load is not clean as it is, where the level is not known.
    unclean: Vec<&'a Wiring>,
    pub(super) subject: usize,
    /// The load in the first of the wirings.
    pub(super) load: &'a Load,
    pub(super) around: &'a Surroundings,
    /// What more may be spent: where that is short, what is left is not tried.
    pub(super) budget: &'a Budget,
    /// What is wrong beside what is to be cured, and less grave: a change need not cure that too.
    pub(super) borne: &'a [Trouble],
    /// Whether it can hurt someone: its other end then goes where the key cuts it, if that solves.
    is_dangerous: bool,
}

impl<'a> Search<'a> {
    /// Nothing where there is no such load.
    pub(super) fn new(
        wirings: &'a [&'a Wiring],
        subject: usize,
        around: &'a Surroundings,
        (budget, borne, is_dangerous): (&'a Budget, &'a [Trouble], bool),
    ) -> Option<Self> {
        let wiring = wirings.first()?;
        let load = wiring.loads.get(subject)?;
        let is_known = wirings.len() == 1;
        let needs_a_cure = |it: &&Wiring| !is_known && suits(it, subject, around, budget).is_none();
        let unclean = wirings.iter().copied().filter(needs_a_cure).collect();
        Some(Self { wirings, wiring, unclean, subject, load, around, budget, borne, is_dangerous })
    }

    fn is_level_known(&self) -> bool {
        self.wirings.len() == 1
    }

    /// Whether a setting says what counts as on.
    pub(super) fn is_set(&self) -> bool {
        self.wiring.output.stage.is_two_way()
    }

    /// What is found for all levels at once; if nothing is, what is found for each that needs it.
    pub(super) fn at_levels(
        &self,
        find: impl Fn(&[&Wiring]) -> Option<Alternative>,
    ) -> Vec<Alternative> {
        if let Some(found) = find(self.wirings) {
            return vec![found];
        }
        let alone = |it: &&Wiring| {
            let found = find(&[it])?;
            Some(Alternative { level: Some(it.level), ..found })
        };
        self.unclean.iter().filter_map(alone).collect()
    }

    /// A change that solves clean with each of these wirings.
    pub(super) fn solve_each(
        &self,
        wirings: &[&Wiring],
        change: impl Fn(&Wiring) -> Option<(Change, Wiring)>,
    ) -> Option<Alternative> {
        each(wirings, |before| {
            let (change, now) = change(before)?;
            self.solve(change, before, &now)
        })
    }

    /// A change of the load alone.
    pub(super) fn altered(
        &self,
        change: Change,
        alter: impl Fn(&Load) -> Option<Load>,
    ) -> Vec<Alternative> {
        self.at_levels(|wirings| {
            self.solve_each(wirings, |before| {
                Some((change, self.with(before, alter(self.load_of(before)?)?)))
            })
        })
    }

    /// The other setting of what counts as on, or either where it is not known.
    pub(super) fn levels(&self) -> Vec<Alternative> {
        if !self.is_level_known() {
            let possible = self.wirings.iter().filter_map(|now| {
                let found = solve_clean(
                    Change::Level(now.level),
                    now,
                    self.subject,
                    self.around,
                    (self.budget, self.borne),
                )?;
                self.wirings.iter().all(|before| self.is_no_worse(before, now)).then_some(found)
            });
            return possible.take(1).collect();
        }
        let level = self.wiring.level.other();
        let set = |before: &Wiring| Some((Change::Level(level), before.at_level(level)));
        let is_choice = matches!(self.wiring.output.stage, Stage::HalfBridge | Stage::Logic);
        is_choice.then(|| self.solve_each(self.wirings, set)).flatten().into_iter().collect()
    }

    /// Where else its other end may go.
    pub(super) fn elsewhere(&self) -> impl Iterator<Item = FarEnd> + use<> {
        let (here, is_signal) = (self.load.far_end, self.load.kind.is_signal());
        // an input's ground stays the ground of what it belongs to
        FarEnd::OFFERED.into_iter().filter(move |end| *end != here && !is_signal)
    }

    /// Where its other end goes on another output, best first.
    pub(super) fn ends_elsewhere(&self) -> Vec<Vec<FarEnd>> {
        let stays = vec![self.load.far_end];
        let moves = self.elsewhere().collect();
        let by_key = [FarEnd::Ignition, FarEnd::Relay];
        if self.is_dangerous && self.load.far_end == FarEnd::Battery {
            return vec![by_key.to_vec(), stays, moves];
        }
        vec![stays, moves]
    }

    fn to_end(&self, wirings: &[&Wiring], far_end: FarEnd) -> Option<Alternative> {
        self.solve_each(wirings, |before| {
            let load = moved(self.load_of(before)?, far_end);
            Some((Change::FarEnd(far_end), self.with(before, load)))
        })
    }

    pub(super) fn far_ends(&self) -> Vec<Alternative> {
        if self.is_level_known() {
            return self
                .elsewhere()
                .filter_map(|end| self.to_end(self.wirings, end))
                .take(2)
                .collect();
        }
        self.at_levels(|wirings| self.elsewhere().find_map(|end| self.to_end(wirings, end)))
    }

    /// The other setting and another end; where the level is not known, an end for each level says it all.
    pub(super) fn levels_and_far_ends(&self) -> Vec<Alternative> {
        if self.wiring.output.stage != Stage::HalfBridge || !self.is_level_known() {
            return Vec::new();
        }
        let level = self.wiring.level.other();
        let both = |far_end| {
            let now = self.with(self.wiring, moved(self.load, far_end)).at_level(level);
            self.solve(Change::LevelAndFarEnd(level, far_end), self.wiring, &now)
        };
        self.elsewhere().filter_map(both).take(2).collect()
    }

    /// Pulsed as fast as the output can, where it is pulsed faster.
    pub(super) fn slower(&self) -> Vec<Alternative> {
        let Some(limit) = self.wiring.output.pulse_limit.map(|it| it.low) else {
            return Vec::new();
        };
        self.altered(Change::Slower(limit), |load| {
            let mut load = load.clone();
            let pulse = load.pulse.as_mut().filter(|pulse| pulse.frequency.high > limit)?;
            pulse.frequency = Band::exact(limit);
            Some(load)
        })
    }

    /// Solves a change, if the load is clean with it and nothing else suffers.
    pub(super) fn solve(
        &self,
        change: Change,
        before: &Wiring,
        now: &Wiring,
    ) -> Option<Alternative> {
        let found = solve_clean(change, now, self.subject, self.around, (self.budget, self.borne))?;
        // what was not solved to its end is not known to be no worse
        (self.is_no_worse(before, now) && !self.budget.is_short()).then_some(found)
    }

    /// Whether every other load on the pin that was clean still is, and the load's kick is caught if it was.
    fn is_no_worse(&self, before: &Wiring, now: &Wiring) -> bool {
        let mut others = (0..now.loads.len()).filter(|other| *other != self.subject);
        let is_clean = |wiring, other| suits(wiring, other, self.around, self.budget).is_some();
        let is_worse = |other: usize| !is_clean(now, other) && is_clean(before, other);
        !others.any(is_worse) && !self.is_left_uncaught(before, now, self.subject)
    }

    /// Whether a kick that is caught as planned would no longer be.
    pub(super) fn is_left_uncaught(&self, before: &Wiring, now: &Wiring, subject: usize) -> bool {
        let is_uncaught = |kick: Kick| kick.path.is_none();
        // what carries no current as planned has no kick that was caught
        let was_caught = self.kick_at(before, self.subject).is_some_and(|it| !is_uncaught(it));
        was_caught && self.kick_at(now, subject).is_some_and(is_uncaught)
    }

    /// The turn-off of the load with everything as it is meant, with the most inductance.
    pub(super) fn turn_off(&self, wiring: &Wiring) -> Option<Kick> {
        self.kick_at(wiring, self.subject)
    }

    fn kick_at(&self, wiring: &Wiring, subject: usize) -> Option<Kick> {
        let point = Point::nominal(self.around.nominal, subject, Contact::Closed);
        let operating = operate(wiring, KeyState::On, &point, self.around)?;
        let inductance = wiring.loads.get(subject)?.inductance.high;
        kick(wiring, &SolvedCorner { point, operating }, inductance)
    }

    /// The load as it is in one of the wirings: with its other end at an output, the level says which way it is driven.
    pub(super) fn load_of<'w>(&self, wiring: &'w Wiring) -> Option<&'w Load> {
        wiring.loads.get(self.subject)
    }

    /// The same wiring with another load in this one's place.
    pub(super) fn with(&self, before: &Wiring, load: Load) -> Wiring {
        let mut now = before.clone();
        if let Some(place) = now.loads.get_mut(self.subject) {
            *place = load;
        }
        now
    }
}

/// What is found with each of these wirings, and holds with all of them.
pub(super) fn each(
    wirings: &[&Wiring],
    find: impl Fn(&Wiring) -> Option<Alternative>,
) -> Option<Alternative> {
    let mut found = wirings.iter().map(|before| find(before));
    let first = found.next()??;
    found.try_fold(first, |worst, it| Some(worst.and_at(it?)))
}
