//! A load on its output at one on-level, solved and judged.

use std::rc::Rc;

use super::names;

use crate::{
    budget::Budget,
    output::{
        End, Found, Judgement, Load, OnLevel, Rest, Spare, Trouble, Wiring, cost, judge, rest,
    },
    quantity::Value,
    read::{OutputLink, PlannedLoad, PlannedOutput, PlannedRest},
};

/// What a question about one load starts from.
pub(super) struct Subject<'a> {
    pub(super) planned: &'a PlannedRest,
    pub(super) load: &'a PlannedLoad,
    pub(super) output: &'a PlannedOutput,
    /// The output's number in the plan.
    pub(super) output_number: usize,
    /// The output that the on-levels are those of: the load's own, or another that hangs together with it.
    pub(super) deciding: usize,
    /// The load's number among those on its output.
    pub(super) at: usize,
    /// One for each on-level that is possible.
    pub(super) cases: Vec<LoadAtLevel>,
    /// Loads on the same output, or on one that hangs together with it, this one among them.
    pub(super) hanging: Vec<&'a PlannedLoad>,
    /// The same, as far as too little is known of them.
    pub(super) left_out: Vec<&'a PlannedLoad>,
}

/// The load at one on-level.
pub(super) struct LoadAtLevel {
    pub(super) level: OnLevel,
    pub(super) rest: Rest,
    pub(super) judgement: Judgement,
    /// The same with the least and with the most that the load's resistance may be, where it was not measured: it is assumed, or was
    /// typed as from one value to another.
    pub(super) ends: Option<[Judgement; 2]>,
}

impl LoadAtLevel {
    fn new(level: OnLevel, rest: Rest, load: &PlannedLoad) -> Self {
        let mut judgement = judge(&rest, |_| true);
        let at = |end: End| judge(&rest, |point| point.load != end.opposite());
        let is_open = load.assumed.resistance || load.resistance.is_spread();
        let mut ends = is_open.then(|| [at(End::Low), at(End::High)]);
        // how far a leak lifts an input of which nothing is known is a guess upon a guess
        if let Some(ends) = &mut ends {
            let is_sure = ends.iter().all(|it| it.has(Trouble::PulsesBlurred));
            let judgements = std::iter::once(&mut judgement).chain(ends);
            judgements.for_each(|it| {
                it.found.retain(|found| is_sure || found.trouble != Trouble::PulsesBlurred);
            });
        }
        Self { level, rest, judgement, ends }
    }

    /// Whether a trouble hangs on the load's resistance, which was not measured: at one end of it neither this is wrong, nor
    /// anything that does the same harm and forbids it.
    pub(super) fn hangs_on_resistance(&self, trouble: Trouble) -> bool {
        let is_alike = |it: &Found| {
            it.trouble == trouble || it.trouble.forbids() && it.trouble.harm() == trouble.harm()
        };
        let is_free = |end: &Judgement| !end.found.iter().any(is_alike);
        self.ends.as_ref().is_some_and(|ends| ends.iter().any(is_free))
    }
}

impl<'a> Subject<'a> {
    /// The load with the number `number`, if everything that is needed is known; nothing as well where solving it is more
    /// than may be spent.
    pub(super) fn new(planned: &'a PlannedRest, number: usize, budget: &Budget) -> Option<Self> {
        let load = planned.loads.get(number)?;
        let OutputLink::To(link) = load.link else { return None };
        let output = planned.outputs.get(link)?;
        if !load.is_solved() {
            return None;
        }
        let at = planned.place(load)?;
        let own = output.output.as_ref()?.levels();
        let undecided = planned.undecided(link).filter(|_| own.len() == 1);
        let levels = if undecided.is_some() { &OnLevel::BOTH } else { own };
        let cases: Option<Vec<_>> = levels
            .iter()
            .map(|&level| {
                let wiring = planned.wiring(link, level)?;
                budget.take(cost::resting(&wiring, at, &planned.around))?;
                let rest = rest(&wiring, at, &planned.around)?;
                Some(LoadAtLevel::new(level, rest, load))
            })
            .collect();
        let mut cases = cases?;
        if let ([one, other], [level]) = (cases.as_slice(), own)
            && one.judgement.head().map(|it| it.trouble)
                == other.judgement.head().map(|it| it.trouble)
        {
            // it makes no difference: told as if the others were set like this one
            cases.retain(|case| case.level == *level);
        }
        let deciding = undecided.filter(|_| cases.len() > 1).unwrap_or(link);
        let joined = planned.joined(link);
        let hangs = |load: &&'a PlannedLoad| joined.iter().any(|number| load.takes(*number));
        let (hanging, left_out) =
            planned.loads.iter().map(Rc::as_ref).filter(hangs).partition(|other| other.is_solved());
        Some(Self {
            planned,
            load,
            output,
            output_number: link,
            deciding,
            at,
            cases,
            hanging,
            left_out,
        })
    }

    /// The wiring at the level that is known, or at the first that is possible.
    pub(super) fn wiring(&self) -> Option<&Wiring> {
        self.cases.first().map(|case| &case.rest.wiring)
    }

    /// The load as it is solved.
    pub(super) fn solved(&self) -> Option<&Load> {
        self.wiring()?.loads.get(self.at)
    }

    /// Whether it may be connected hangs on the load's resistance, which was not measured: that comes first.
    pub(super) fn is_measured_first(&self) -> bool {
        let [case] = self.cases.as_slice() else { return false };
        let forbids = |it: &Judgement| it.head().is_some_and(|it| it.trouble.forbids());
        if case.ends.as_ref().is_some_and(|ends| ends.iter().all(forbids)) {
            return false;
        }
        let hangs = |found: &Found| case.hangs_on_resistance(found.trouble);
        case.judgement.head().is_some_and(hangs)
    }

    /// Whether it is another output whose on-level decides.
    pub(super) fn is_decided_elsewhere(&self) -> bool {
        self.deciding != self.output_number
    }

    /// What counts as on in a case, and at which output where that is not the load's own.
    pub(super) fn level(&self, case: &LoadAtLevel) -> Value {
        if !self.is_decided_elsewhere() {
            return names::level(case.level, case.rest.wiring.output.stage);
        }
        let deciding = self.planned.outputs.get(self.deciding);
        let stage = deciding.and_then(|it| it.output.as_ref()).map(|it| it.stage);
        let level = names::level(case.level, stage.unwrap_or(case.rest.wiring.output.stage));
        let name = deciding.map_or("", |it| it.name.as_str());
        Value::text(format!("{} at {name}", level.shown))
    }

    /// The outputs of the plan on which nothing hangs, and nothing else is planned.
    pub(super) fn spares(&self) -> Vec<Spare> {
        // where it is planned it may be itself
        let is_own = |load: &PlannedLoad| load.place == self.load.place;
        let is_taken = |load: &PlannedLoad, number| {
            if is_own(load) { load.takes(number) } else { load.claims(number) }
        };
        let is_free = |number| !self.planned.loads.iter().any(|load| is_taken(load, number));
        let outputs = self.planned.outputs.iter().enumerate();
        outputs
            .filter(|(number, _)| is_free(*number))
            .filter_map(|(number, it)| Some(Spare { number, output: it.output.clone()? }))
            .collect()
    }
}
