//! What would make room: each tried, the cheapest first.

use super::{
    jobs::PinJobs,
    suited::{SuitStrictness, Suiting},
    words,
};
use crate::{
    assignment::{PlacedJob, Placement, PlacementSearch, Placing, placed},
    fields::loads::{self, Keeps},
    message::Message,
    output::{FarEnd, LoadKind},
    quantity::Value,
    read::{LoadPlace, PlannedLoad, PlannedRest, Unasked},
    say, say_of,
    schema::{Choice as _, Part},
};

/// More of them than this nobody reads.
const MOST: usize = 4;

/// What would make it possible, for a set of jobs that compete.
pub(super) fn of(
    suiting: &mut Suiting<'_>,
    jobs: &PinJobs,
    placement: &Placement,
    set: &[usize],
) -> (Vec<Message>, Option<LoadPlace>) {
    let planned = suiting.planned;
    let mut found: Vec<Message> = measured(planned, jobs, set).into_iter().collect();
    found.extend(let_move(suiting, jobs));
    let relay = by_relay(suiting, jobs, placement, set);
    let about = relay.as_ref().map(|it| it.1);
    found.extend(relay.map(|it| it.0));
    found.extend(shared(suiting, jobs, placement, set));
    let single = |at: &&usize| jobs.jobs.get(**at).is_some_and(|it| !it.is_pair);
    let mut by_hand = set.iter().filter(single).filter_map(|at| first_load(planned, jobs, *at));
    found.extend(by_hand.rfind(|it| may_be_by_hand(it)).map(by_switch));
    found.extend(larger(planned, jobs, set));
    found.truncate(MOST);
    (found, about)
}

/// What somebody may work with a switch; what a relay feeds may have to stop by itself.
fn may_be_by_hand(load: &PlannedLoad) -> bool {
    let is_plain = load.place.part == Part::Loads && load.pulse.is_none();
    is_plain
        && !load.kind.is_signal()
        && !load.kind.counts_pulses()
        && load.unasked == Unasked::Harmless
}

fn by_switch(load: &PlannedLoad) -> Message {
    let key = load.place.key(loads::KEEPS);
    let edits =
        vec![key.edit(Keeps::ByHand.choosable().code), load.place.key(loads::OUTPUT).edit("")];
    say!(words::DO_SWITCH, load = load.name.clone()).done_by(edits)
}

fn first_load<'a>(planned: &'a PlannedRest, jobs: &PinJobs, at: usize) -> Option<&'a PlannedLoad> {
    let job = jobs.jobs.get(at)?;
    job.loads.first().and_then(|it| planned.loads.get(*it)).map(|it| &**it)
}

/// Of what is usual in the place of what is not known, the most decides.
fn measured(planned: &PlannedRest, jobs: &PinJobs, set: &[usize]) -> Option<Message> {
    let of_set =
        set.iter().filter_map(|at| jobs.jobs.get(*at)).flat_map(|it| PinJobs::loads(planned, it));
    let names: Vec<String> =
        of_set.filter(|it| it.assumed.resistance).map(|it| it.name.clone()).collect();
    (!names.is_empty()).then(|| say!(words::DO_MEASURE, list = super::judge::listed(&names)))
}

fn is_possible(placement: &Placement, suiting: &Suiting<'_>) -> bool {
    matches!(placed(placement, suiting.budget), PlacementSearch::Best(_))
}

/// One that was said to stay.
fn let_move(suiting: &mut Suiting<'_>, jobs: &PinJobs) -> Option<Message> {
    let planned = suiting.planned;
    let fixed: Vec<usize> = jobs
        .staying
        .iter()
        .copied()
        .filter(|at| planned.loads.get(*at).is_some_and(|it| it.stays))
        .collect();
    for at in fixed {
        let jobs = PinJobs::of(planned, Some(at));
        let placement = jobs.placement(suiting);
        if is_possible(&placement, suiting) {
            let load = planned.loads.get(at)?;
            let on = super::jobs::planned_on(load)?;
            let output = planned.outputs.get(on)?.name.clone();
            let edit = load.place.key(loads::KEEPS).edit(Keeps::Moves.choosable().code);
            let message = say!(words::DO_LET_MOVE, load = load.name.clone(), output = output);
            return Some(message.done_by(vec![edit]));
        }
    }
    None
}

/// A relay's coil in the stead of one that competes.
fn by_relay(
    suiting: &mut Suiting<'_>,
    jobs: &PinJobs,
    placement: &Placement,
    set: &[usize],
) -> Option<(Message, LoadPlace)> {
    let planned = suiting.planned;
    for at in set.iter().rev() {
        let Some(load) = first_load(planned, jobs, *at) else { continue };
        let job = jobs.jobs.get(*at)?;
        let is_switched =
            load.pulse.is_none() && !load.kind.is_signal() && !load.kind.counts_pulses();
        if job.is_pair || job.loads.len() > 1 || !is_switched || load.kind == LoadKind::RelayCoil {
            continue;
        }
        let ends = [FarEnd::Ignition, FarEnd::Ground];
        for end in ends {
            let coil = relay_coil(load, end);
            let free = (0..planned.outputs.len()).filter(|it| !jobs.taken.contains(it));
            let serving: Vec<usize> =
                free.filter(|it| suiting.together(&[&coil], *it, SuitStrictness::Clean)).collect();
            let cost = job_cost(placement, *at);
            let placings = serving.iter().map(|it| Placing { places: vec![*it], cost }).collect();
            let with = replaced(placement, *at, PlacedJob { placings, draw: 0, pace: None });
            if let PlacementSearch::Best(found) = placed(&with, suiting.budget) {
                let place = found.chosen.get(*at).and_then(|it| serving.get(*it))?;
                let output = planned.outputs.get(*place)?.name.clone();
                let message = say!(words::DO_RELAY, load = load.name.clone(), output = output);
                return Some((message, load.place));
            }
        }
    }
    None
}

fn job_cost(placement: &Placement, at: usize) -> crate::assignment::Cost {
    let placing = placement.jobs.get(at).and_then(|it| it.placings.first());
    placing.map_or_else(crate::assignment::Cost::default, |it| it.cost)
}

fn replaced(placement: &Placement, at: usize, by: PlacedJob) -> Placement {
    let mut with = placement.clone();
    if let Some(job) = with.jobs.get_mut(at) {
        *job = by;
    }
    with
}

/// The coil of a usual relay, with its other end there.
fn relay_coil(load: &PlannedLoad, far_end: FarEnd) -> PlannedLoad {
    let kind = LoadKind::RelayCoil;
    PlannedLoad {
        kind,
        far_end: Some(far_end),
        resistance: kind.usual_resistance(),
        pull_in: kind.usual_pull_in(),
        drop_out: kind.usual_drop_out(),
        inductance: kind.usual_inductance(),
        suppression: crate::read::rest::Suppressed::Diode(None),
        pulse: None,
        partner: None,
        ..load.clone()
    }
}

/// Two that are of one kind on one output.
fn shared(
    suiting: &mut Suiting<'_>,
    jobs: &PinJobs,
    placement: &Placement,
    set: &[usize],
) -> Option<Message> {
    let planned = suiting.planned;
    let last = set.iter().rev().copied().find(|at| {
        first_load(planned, jobs, *at).is_some_and(|it| it.link == crate::read::OutputLink::Blank)
    })?;
    let load = first_load(planned, jobs, last)?;
    for other in set.iter().copied().filter(|it| *it != last) {
        let Some(beside) = first_load(planned, jobs, other) else { continue };
        let is_alike = (load.kind, load.far_end, load.unasked, load.pulse)
            == (beside.kind, beside.far_end, beside.unasked, beside.pulse);
        let is_single = [last, other]
            .iter()
            .all(|at| jobs.jobs.get(*at).is_some_and(|it| !it.is_pair && it.loads.len() == 1));
        if !is_alike || !is_single {
            continue;
        }
        let both = [load, beside];
        let free = (0..planned.outputs.len()).filter(|it| !jobs.taken.contains(it));
        let serving: Vec<usize> =
            free.filter(|it| suiting.together(&both, *it, SuitStrictness::Clean)).collect();
        let now = super::jobs::planned_on(beside);
        let place = serving.iter().copied().find(|it| now.is_none_or(|now| now == *it));
        let Some(place) = place else { continue };
        let cost = crate::assignment::Cost::default();
        let placings = vec![Placing { places: vec![place], cost }];
        let mut with = replaced(placement, other, PlacedJob { placings, draw: 0, pace: None });
        if last < with.jobs.len() {
            with.jobs.remove(last);
        }
        if is_possible(&with, suiting) {
            let output = planned.outputs.get(place)?.name.clone();
            let mut edits = vec![load.place.key(loads::OUTPUT).edit(output.clone())];
            edits.extend(
                now.is_none().then(|| beside.place.key(loads::OUTPUT).edit(output.clone())),
            );
            let message = say!(words::DO_SHARE, load = load.name.clone(), output = output);
            return Some(message.done_by(edits));
        }
    }
    None
}

/// What an output more would have to be like, for the one that asks least.
fn larger(planned: &PlannedRest, jobs: &PinJobs, set: &[usize]) -> Option<Message> {
    let at = *set.last()?;
    let load = first_load(planned, jobs, at)?;
    let stage = match load.far_end? {
        FarEnd::Output => words::STAGE_BRIDGE,
        FarEnd::Ground => words::STAGE_HIGH,
        _ => words::STAGE_LOW,
    };
    let kind = Value::text(say_of!(stage).into_text());
    let current = planned.taken_by_one(load);
    let cold = current * load.kind.running_ratio();
    Some(match load.pulse {
        None if cold > current => {
            say!(words::DO_LARGER_INRUSH, kind = kind, current = current, inrush = cold)
        }
        Some(pulse) => say!(
            words::DO_LARGER_PULSED,
            kind = kind,
            current = current,
            frequency = pulse.frequency.nominal
        ),
        None => say!(words::DO_LARGER, kind = kind, current = current),
    })
}
