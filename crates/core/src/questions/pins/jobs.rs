//! The loads as what has to be placed, the outputs as places.

use super::suited::{SuitStrictness, Suiting};
use crate::{
    assignment::{Bank, Cost, PlacedJob, Placement, Placing},
    output::{FarEnd, Output, Stage},
    quantity::{Current, Measure},
    read::{OutputLink, PlannedLoad, PlannedRest, Unasked},
};

/// What takes an output, or two: a load, or several that share one.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct PinJob {
    /// The numbers of its loads.
    pub(super) loads: Vec<usize>,
    /// The outputs that it is on now: its own, and the one at its other end.
    pub(super) now: Option<Vec<usize>>,
    pub(super) is_pair: bool,
}

/// The loads of a plan that can be placed, and what is taken beforehand.
#[derive(Clone, Debug, Default)]
pub(super) struct PinJobs {
    pub(super) jobs: Vec<PinJob>,
    /// The outputs of what stays where it is.
    pub(super) taken: Vec<usize>,
    /// Those that stay though they might be moved.
    pub(super) staying: Vec<usize>,
    /// The loads of which too little is known.
    pub(super) left_out: Vec<usize>,
}

/// The output that a load is planned on.
pub(super) fn planned_on(load: &PlannedLoad) -> Option<usize> {
    let OutputLink::To(link) = load.link else { return None };
    Some(load.meant.unwrap_or(link))
}

impl PinJobs {
    /// Of each load; those that share an output are placed together.
    /// One that stays where it is may be let go.
    pub(super) fn of(planned: &PlannedRest, let_go: Option<usize>) -> Self {
        let mut found = Self::default();
        for (at, load) in planned.loads.iter().enumerate() {
            let now = planned_on(load);
            if load.is_by_hand && now.is_none() {
                continue;
            }
            let is_pair = load.far_end == Some(FarEnd::Output);
            let ends: Option<Vec<usize>> = now.map(|own| {
                [Some(own), load.partner.filter(|_| is_pair)].into_iter().flatten().collect()
            });
            let is_free =
                is_pair.then_some(2).is_none_or(|n| ends.as_ref().is_none_or(|it| it.len() == n));
            if !load.is_solved() || load.link == OutputLink::Nowhere || !is_free {
                found.left_out.push(at);
                found.taken.extend(ends.into_iter().flatten());
                continue;
            }
            if load.stays && now.is_some() && let_go != Some(at) {
                found.staying.push(at);
                found.taken.extend(ends.into_iter().flatten());
                continue;
            }
            let same = found
                .jobs
                .iter_mut()
                .find(|it| now.is_some() && !is_pair && !it.is_pair && it.now == ends);
            match same {
                Some(job) => job.loads.push(at),
                None => found.jobs.push(PinJob { loads: vec![at], now: ends, is_pair }),
            }
        }
        found.stay_with_others();
        found
    }

    /// What hangs together with something that stays, or with another job, stays too: it is one circuit.
    fn stay_with_others(&mut self) {
        let all: Vec<Vec<usize>> =
            self.jobs.iter().map(|it| it.now.clone().unwrap_or_default()).collect();
        let mut at = 0;
        let taken = self.taken.clone();
        let (mut staying, mut more): (Vec<usize>, Vec<usize>) = (Vec::new(), Vec::new());
        self.jobs.retain(|job| {
            let now = job.now.clone().unwrap_or_default();
            let others =
                all.iter().enumerate().filter(|(other, _)| *other != at).flat_map(|(_, it)| it);
            let is_joined =
                now.iter().any(|it| taken.contains(it) || others.clone().any(|other| other == it));
            at += 1;
            if is_joined {
                staying.extend(&job.loads);
                more.extend(now);
            }
            !is_joined
        });
        self.staying.extend(staying);
        self.taken.extend(more);
    }

    pub(super) fn loads<'a>(planned: &'a PlannedRest, job: &PinJob) -> Vec<&'a PlannedLoad> {
        job.loads.iter().filter_map(|at| planned.loads.get(*at).map(|it| &**it)).collect()
    }

    /// Where each may stand, and what that costs: wires that are moved count most, then what the output could do beyond.
    pub(super) fn placement(&self, suiting: &mut Suiting<'_>) -> Placement {
        let planned = suiting.planned;
        let jobs = self.jobs.iter().map(|job| {
            let loads = Self::loads(planned, job);
            let placings = if job.is_pair {
                self.pairs(suiting, job, &loads)
            } else {
                self.singles(suiting, job, &loads)
            };
            let draw: f64 = loads.iter().map(|it| planned.taken_by_one(it).base()).sum();
            let pace = loads.iter().find_map(|it| it.pulse);
            PlacedJob {
                placings,
                draw: milli(draw),
                pace: pace.map(|it| milli(it.frequency.nominal.base())),
            }
        });
        Placement {
            jobs: jobs.collect(),
            places: planned.outputs.len(),
            banks: self.banks(planned),
        }
    }

    fn singles(
        &self,
        suiting: &mut Suiting<'_>,
        job: &PinJob,
        loads: &[&PlannedLoad],
    ) -> Vec<Placing> {
        let free = (0..suiting.planned.outputs.len()).filter(|it| !self.taken.contains(it));
        free.filter_map(|at| {
            let is_now = job.now.as_deref() == Some(&[at]);
            let held = if is_now { SuitStrictness::AsItIs } else { SuitStrictness::Clean };
            let cost = cost(suiting.planned, job, loads, &[at])?;
            let suits = suiting.together(loads, at, held);
            suits.then_some(Placing { places: vec![at], cost })
        })
        .collect()
    }

    fn pairs(
        &self,
        suiting: &mut Suiting<'_>,
        job: &PinJob,
        loads: &[&PlannedLoad],
    ) -> Vec<Placing> {
        let planned = suiting.planned;
        let stage = |at: &usize| {
            planned.outputs.get(*at).and_then(|it| it.output.as_ref()).map(|it| it.stage)
        };
        let bridges: Vec<usize> = (0..planned.outputs.len())
            .filter(|at| stage(at) == Some(Stage::HalfBridge) && !self.taken.contains(at))
            .collect();
        let mut placings = Vec::new();
        let Some(load) = loads.first() else { return placings };
        for (place, own) in bridges.iter().enumerate() {
            for far in bridges.iter().skip(place + 1) {
                // which of its ends goes where matters only as it is wired now
                let is_turned = job.now.as_deref() == Some(&[*far, *own]);
                let ends = if is_turned { [*far, *own] } else { [*own, *far] };
                let is_now = job.now.as_deref() == Some(&ends);
                let held = if is_now { SuitStrictness::AsItIs } else { SuitStrictness::Clean };
                let Some(cost) = cost(planned, job, loads, &ends) else { continue };
                if suiting.between(load, ends, held) {
                    placings.push(Placing { places: ends.to_vec(), cost });
                }
            }
        }
        placings
    }

    /// The outputs that share a limit, less what is taken of it beforehand.
    fn banks(&self, planned: &PlannedRest) -> Vec<Bank> {
        groups(planned)
            .into_iter()
            .map(|group| {
                let on = |load: &&std::rc::Rc<PlannedLoad>| {
                    planned_on(load)
                        .is_some_and(|it| group.outputs.contains(&it) && self.taken.contains(&it))
                };
                let taken: f64 =
                    planned.loads.iter().filter(on).map(|it| planned.taken_by_one(it).base()).sum();
                let limit = group.limit.map(|it| milli((it.base() - taken).max(0.0)));
                Bank { places: group.outputs, limit, is_one_pace: group.is_one_pulse }
            })
            .collect()
    }
}

/// Outputs that share a limit.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct LimitedGroup {
    pub(super) name: String,
    /// The record that the limit stands in.
    pub(super) record: usize,
    pub(super) outputs: Vec<usize>,
    pub(super) limit: Option<Current>,
    pub(super) is_one_pulse: bool,
}

/// The groups of the plan: the least of what is typed of each holds.
pub(super) fn groups(planned: &PlannedRest) -> Vec<LimitedGroup> {
    let mut groups: Vec<LimitedGroup> = Vec::new();
    for (at, output) in planned.outputs.iter().enumerate() {
        let Some(group) = &output.group else { continue };
        let is_it = |it: &&mut LimitedGroup| it.name.eq_ignore_ascii_case(&group.name);
        let Some(known) = groups.iter_mut().find(is_it) else {
            groups.push(LimitedGroup {
                name: group.name.clone(),
                record: output.record,
                outputs: vec![at],
                limit: group.limit,
                is_one_pulse: group.is_one_pulse,
            });
            continue;
        };
        known.outputs.push(at);
        known.is_one_pulse |= group.is_one_pulse;
        if let Some(limit) = group.limit.filter(|it| known.limit.is_none_or(|known| *it < known)) {
            known.limit = Some(limit);
            known.record = output.record;
        }
    }
    groups
}

/// A thousand to one: what is summed and compared is whole.
fn milli(number: f64) -> u64 {
    let fixed = crate::math::fixed((number * 1000.0).clamp(0.0, 1e12), 0);
    fixed.parse().unwrap_or(u64::MAX)
}

/// Nothing where one of the outputs is not known.
fn cost(
    planned: &PlannedRest,
    job: &PinJob,
    loads: &[&PlannedLoad],
    places: &[usize],
) -> Option<Cost> {
    let outputs: Option<Vec<&Output>> =
        places.iter().map(|at| planned.outputs.get(*at)?.output.as_ref()).collect();
    let is_moved = job.now.as_deref().is_some_and(|now| now != places);
    let moves = if is_moved { u32::try_from(loads.len()).unwrap_or(u32::MAX) } else { 0 };
    let is_dangerous = loads.iter().any(|it| it.unasked == Unasked::Dangerous);
    let each = outputs?.into_iter().map(|it| ability(it, is_dangerous));
    Some(Cost::new([moves, each.fold(0, u32::saturating_add), 0]))
}

/// How much an output can do beyond the next: what drives both ways first, then by what it carries, then by how fast it is pulsed. What a
/// setting turns round is no place for what can hurt someone, while another serves.
fn ability(output: &Output, is_dangerous: bool) -> u32 {
    let stage = match output.stage {
        Stage::Logic => 0,
        Stage::OpenDrain => 1,
        Stage::HighSide => 2,
        Stage::HalfBridge => 3,
    };
    let carries = output.current_limit.map_or(USUAL_A, |it| it.low.base());
    let pulsed = output.pulse_limit.map_or(USUAL_HZ, |it| it.low.base());
    let tenths = milli(carries.clamp(0.0, 99.0)) / 100;
    let tens = milli(pulsed.clamp(0.0, 99_000.0)) / 10_000;
    let rank = stage * 1_000 + u32::try_from(tenths).unwrap_or(0);
    let plain = rank * 10_000 + u32::try_from(tens).unwrap_or(0);
    if is_dangerous && output.stage.is_two_way() { plain + (1 << 30) } else { plain }
}

/// While a limit is not known: common practice, no source.
const USUAL_A: f64 = 5.0;
const USUAL_HZ: f64 = 300.0;
