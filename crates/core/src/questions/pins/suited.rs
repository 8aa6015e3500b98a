//! What suits what: each kind of load on each kind of output is solved once.

use std::rc::Rc;

use crate::{
    budget::Budget,
    output::{FarEnd, OnLevel, Output, Pin, Surroundings, Trouble, Wiring, may_connect},
    read::{PlannedLoad, PlannedRest},
};

/// What was tried before, and what came of it.
#[derive(Clone, Debug, Default)]
pub(crate) struct KnownFits(Vec<TriedFit>);

#[derive(Clone, Debug)]
struct TriedFit {
    wiring: Wiring,
    subject: usize,
    is_borne: bool,
    around: Rc<Surroundings>,
    suits: bool,
    is_used: bool,
}

/// How strictly a load is held to an output.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum SuitStrictness {
    /// It may be connected, with care where that is said.
    AsItIs,
    /// It is clean in every key state at every corner.
    Clean,
}

/// The outputs of the plan, tried with its loads.
#[derive(Debug)]
pub(super) struct Suiting<'a> {
    pub(super) planned: &'a PlannedRest,
    pub(super) budget: &'a Budget,
    known: &'a mut KnownFits,
    cares: Vec<Trouble>,
}

impl<'a> Suiting<'a> {
    pub(super) fn new(
        planned: &'a PlannedRest,
        budget: &'a Budget,
        known: &'a mut KnownFits,
    ) -> Self {
        for it in &mut known.0 {
            it.is_used = false;
        }
        Self { planned, budget, known, cares: Trouble::cares() }
    }

    /// What was not asked this time is not remembered.
    pub(super) fn forget_the_rest(&mut self) {
        self.known.0.retain(|it| it.is_used);
    }

    fn output(&self, at: usize) -> Option<&'a Output> {
        self.planned.outputs.get(at)?.output.as_ref()
    }

    /// Whether these loads together suit an output, whatever counts as on there while that is not known.
    pub(super) fn together(
        &mut self,
        loads: &[&PlannedLoad],
        at: usize,
        held: SuitStrictness,
    ) -> bool {
        let Some(output) = self.output(at) else { return false };
        output.levels().iter().all(|level| {
            let each = loads.iter().map(|it| Some(it.to(it.far_end?, 0, *level)));
            let Some(each) = each.collect::<Option<Vec<_>>>() else { return false };
            let wiring = Wiring::alone(output.clone(), *level, each);
            (0..loads.len()).all(|subject| self.is_right(&wiring, subject, held))
        })
    }

    /// Whether a load suits two outputs, one at each end.
    pub(super) fn between(
        &mut self,
        load: &PlannedLoad,
        ends: [usize; 2],
        held: SuitStrictness,
    ) -> bool {
        let [Some(own), Some(far)] = ends.map(|at| self.output(at)) else { return false };
        // while it is not known what counts as on, both are set alike
        let levels = if own.levels().len() > 1 || far.levels().len() > 1 {
            &OnLevel::BOTH
        } else {
            own.levels()
        };
        levels.iter().all(|level| {
            let of = |output: &Output| match output.levels() {
                [only] => *only,
                _ => *level,
            };
            let wiring = Wiring {
                output: own.clone(),
                level: of(own),
                loads: vec![load.to(FarEnd::Output, 1, of(own))],
                beyond: vec![Pin { output: far.clone(), level: of(far), loads: Vec::new() }],
            };
            self.is_right(&wiring, 0, held)
        })
    }

    fn is_right(&mut self, wiring: &Wiring, subject: usize, held: SuitStrictness) -> bool {
        let around = &self.planned.around;
        let is_borne = held == SuitStrictness::AsItIs;
        let is_it = |it: &&mut TriedFit| {
            (it.subject, it.is_borne) == (subject, is_borne)
                && it.wiring == *wiring
                && it.around == *around
        };
        if let Some(known) = self.known.0.iter_mut().find(is_it) {
            known.is_used = true;
            return known.suits;
        }
        let borne: &[Trouble] = if is_borne { &self.cares } else { &[] };
        let suits = may_connect(wiring, subject, around, (self.budget, borne));
        if !self.budget.is_short() {
            let (wiring, around) = (wiring.clone(), Rc::clone(around));
            self.known.0.push(TriedFit { wiring, subject, is_borne, around, suits, is_used: true });
        }
        suits
    }
}
