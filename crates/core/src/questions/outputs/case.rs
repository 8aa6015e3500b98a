//! A load on its output at one on-level, solved and judged.

use std::rc::Rc;

use super::names;

use crate::{
    budget::Budget,
    output::{Judgement, Load, OnLevel, Rest, Spare, Wiring, cost, judge, rest},
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
                let judgement = judge(&rest, |_| true);
                Some(LoadAtLevel { level, rest, judgement })
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
