//! What was answered before: an edit of one load leaves the answers about the others as they are.

use std::rc::Rc;

use super::{Details, MOST, answer};
use crate::{
    budget::{Budget, Pool},
    finding::Findings,
    output::Surroundings,
    read::{OutputLink, PlannedLoad, PlannedOutput, PlannedRest, RestBefore},
    report::{Answer, recall::Recall},
};

/// What was read for the report before, and its answers, each with everything that it followed from.
#[derive(Clone, Debug, Default)]
pub(crate) struct Memory {
    read: RestBefore,
    told: Recall<LoadAsked>,
}

/// Everything that the answer about one load follows from.
#[derive(Clone, Debug, PartialEq)]
struct LoadAsked {
    number: usize,
    /// Its output and those that hang together with it, with their numbers.
    outputs: Vec<(usize, Rc<PlannedOutput>)>,
    /// All loads on them, this one among them, with their numbers.
    sharing: Vec<(usize, Rc<PlannedLoad>)>,
    /// The outputs on which nothing hangs, and nothing else is planned: it may be moved there.
    free: Vec<(usize, Rc<PlannedOutput>)>,
    /// The output that it is planned on, where that is another.
    meant: Option<Rc<PlannedOutput>>,
    around: Rc<Surroundings>,
    is_dead_rail_assumed: bool,
    is_dead_feed_assumed: bool,
}

impl Memory {
    /// The outputs and loads as they were read last.
    pub(crate) fn read_before(&mut self) -> &mut RestBefore {
        &mut self.read
    }

    /// Steps that were spent on the answers of this report that were not recalled; those about loads that hang nowhere are
    /// few.
    pub(crate) fn worked(&self) -> u64 {
        self.told.worked()
    }

    /// Steps that the answers have spent together.
    #[cfg(test)]
    pub(crate) fn spent(&self) -> u64 {
        self.told.spent()
    }

    /// The answers about all loads, with their findings; these are what is remembered next.
    pub(super) fn recall(
        &mut self,
        planned: &PlannedRest,
        details: Option<&Details>,
        findings: &mut Findings,
    ) -> Vec<Rc<Answer>> {
        self.told.turn();
        let mut pool = Pool::new(MOST, planned.loads.len());
        let mut each = |number| {
            if let Some(asked) = LoadAsked::of(planned, number) {
                return self.told.recall(asked, &mut pool, findings, |asked, budget, findings| {
                    answer(planned, asked.number, budget, details, findings)
                });
            }
            let budget = Budget::new(pool.allowance());
            let answer = answer(planned, number, &budget, details, findings).map(Rc::new);
            pool.pay(&budget.account());
            answer
        };
        (0..planned.loads.len()).filter_map(&mut each).collect()
    }
}

impl LoadAsked {
    /// Nothing for a load that hangs on no output: then every output may matter, and nothing is solved.
    fn of(planned: &PlannedRest, number: usize) -> Option<Self> {
        let load = planned.loads.get(number)?;
        let OutputLink::To(link) = load.link else { return None };
        load.far_end?;
        let loads = || planned.loads.iter().enumerate();
        let is_free = |output: usize| {
            loads()
                .all(|(at, it)| if at == number { !it.takes(output) } else { !it.claims(output) })
        };
        let outputs = || planned.outputs.iter().enumerate();
        let owned = |(number, it): (usize, &Rc<PlannedOutput>)| (number, Rc::clone(it));
        let joined = planned.joined(link);
        let number_of = |number: &usize| outputs().nth(*number).map(owned);
        let sharing = loads().filter(|(_, it)| joined.iter().any(|number| it.takes(*number)));
        Some(Self {
            number,
            outputs: joined.iter().filter_map(number_of).collect(),
            sharing: sharing.map(|(number, it)| (number, Rc::clone(it))).collect(),
            free: outputs().filter(|(number, _)| is_free(*number)).map(owned).collect(),
            meant: load.meant.and_then(|it| planned.outputs.get(it)).map(Rc::clone),
            around: Rc::clone(&planned.around),
            is_dead_rail_assumed: planned.is_dead_rail_assumed,
            is_dead_feed_assumed: planned.is_dead_feed_assumed,
        })
    }
}
