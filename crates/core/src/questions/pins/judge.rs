//! Is there an output for each load, and what is done where there is none?

use super::{
    jobs::{PinJobs, groups, planned_on},
    releases,
    suited::Suiting,
    table, words,
};
use crate::{
    assignment::{PlacedJobs, Placement, PlacementSearch, competing, placed},
    fields::{loads, outputs},
    finding::{Finding, Findings, Severity},
    message::{Edit, Message},
    quantity::{Current, Measure, Value, amperes},
    read::{OutputLink, PlannedLoad, PlannedOutput, PlannedRest},
    report::{Answer, Detail, Tone},
    say,
};

/// The answer, and what was found.
pub(super) fn answer(suiting: &mut Suiting<'_>, findings: &mut Findings) -> Answer {
    let planned = suiting.planned;
    of_groups(planned, findings);
    let jobs = PinJobs::of(planned, None);
    let placement = jobs.placement(suiting);
    let search = placed(&placement, suiting.budget);
    let is_all_tried = !suiting.budget.is_short();
    let mut answer = match &search {
        _ if !is_all_tried => open(say!(words::OPEN_UNSEARCHED)),
        PlacementSearch::Best(found) => of_best(planned, &jobs, &placement, found),
        PlacementSearch::Impossible => impossible(suiting, &jobs, &placement, findings),
        PlacementSearch::Unsearched(_) => open(say!(words::OPEN_UNSEARCHED)),
    };
    answer.title = Some(say!(words::TITLE));
    let best = if let PlacementSearch::Best(found) = &search { Some(found) } else { None };
    answer.show(Some(Detail {
        tables: vec![table::of(planned, &jobs, &placement, best)],
        ..Detail::default()
    }));
    answer
}

fn open(verdict: Message) -> Answer {
    Answer::new("pins", Tone::Open, verdict)
}

/// Names in a row.
pub(super) fn listed(names: &[String]) -> String {
    match names {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => {
            [first.join(", "), say!(words::AND, last = last.clone()).into_text()].join(" ")
        }
    }
}

/// The same, of many the first.
pub(super) fn some_of(names: &[String], most: usize) -> String {
    match names.get(..most) {
        Some(first) if names.len() > most + 1 => {
            let n = names.len() - most;
            [first.join(", "), say!(words::AND_MORE, n = n).into_text()].join(" ")
        }
        _ => listed(names),
    }
}

/// So many are listed of those that compete: in a verdict, in what was found.
pub(super) const MOST_COMPETING: [usize; 2] = [2, 4];

fn name_of(planned: &PlannedRest, output: usize) -> String {
    planned.outputs.get(output).map_or_else(String::new, |it| it.name.clone())
}

/// The outputs on which nothing is planned once all is placed.
fn spare(
    planned: &PlannedRest,
    jobs: &PinJobs,
    placement: &Placement,
    found: &PlacedJobs,
) -> Vec<String> {
    let placed =
        placement.jobs.iter().zip(&found.chosen).filter_map(|(job, at)| job.placings.get(*at));
    let used: Vec<usize> =
        placed.flat_map(|it| it.places.clone()).chain(jobs.taken.clone()).collect();
    let free = (0..planned.outputs.len()).filter(|it| !used.contains(it));
    free.map(|it| name_of(planned, it)).collect()
}

/// Each load has its output; those that are not on it are told where to go.
fn of_best(
    planned: &PlannedRest,
    jobs: &PinJobs,
    placement: &Placement,
    found: &PlacedJobs,
) -> Answer {
    let by_hand = planned.loads.iter().filter(|it| it.is_by_hand && it.link == OutputLink::Blank);
    let all = planned.loads.len() - by_hand.count();
    let (mut list, mut edits, mut blank, mut moved) = (Vec::new(), Vec::new(), 0, 0);
    for (at, job) in jobs.jobs.iter().enumerate() {
        let placing = found.chosen.get(at).and_then(|it| placement.jobs.get(at)?.placings.get(*it));
        let Some(placing) = placing.filter(|it| job.now.as_ref() != Some(&it.places)) else {
            continue;
        };
        let loads = PinJobs::loads(planned, job);
        if job.now.is_none() {
            blank += loads.len();
        } else {
            moved += loads.len();
        }
        for load in loads {
            list.push(place(planned, load, &placing.places));
            edits.extend(edits_of(planned, load, &placing.places));
        }
    }
    let mut answer = if let Some(left) = left_out(planned, jobs) {
        open(say!(words::OPEN_LEFT, list = left))
    } else if blank > 0 {
        open(say!(words::OPEN_PLACE, n = blank, all = all))
    } else if moved > 0 {
        open(say!(words::OPEN_MOVE, n = moved, all = all))
    } else if all == 1 {
        Answer::new("pins", Tone::Good, say!(words::GOOD_ONE))
    } else {
        Answer::new("pins", Tone::Good, say!(words::GOOD, n = all))
    };
    let spare = spare(planned, jobs, placement, found);
    answer.why = Some(if spare.is_empty() {
        say!(words::WHY_NO_SPARE)
    } else {
        say!(words::WHY_SPARE, list = shortened(&spare))
    });
    if !list.is_empty() {
        answer.to_do.push(say!(words::DO_PLACE, list = listed(&list)).done_by(edits));
    }
    answer
}

/// So many names are listed.
const MOST_NAMED: usize = 12;

pub(super) fn shortened(names: &[String]) -> String {
    let mut shown: Vec<&str> = names.iter().take(MOST_NAMED).map(String::as_str).collect();
    if names.len() > MOST_NAMED {
        shown.push("…");
    }
    shown.join(", ")
}

fn left_out(planned: &PlannedRest, jobs: &PinJobs) -> Option<String> {
    let name = |at: &usize| planned.loads.get(*at).map(|it| it.name.clone());
    let names: Vec<String> = jobs.left_out.iter().filter_map(name).collect();
    (!names.is_empty()).then(|| listed(&names))
}

fn place(planned: &PlannedRest, load: &PlannedLoad, places: &[usize]) -> String {
    let name = |at: usize| name_of(planned, at);
    let load = load.name.clone();
    let first = places.first().map_or_else(String::new, |it| name(*it));
    let said = match places.get(1) {
        Some(far) => {
            say!(words::PLACE_BETWEEN, output = first, other = name(*far))
        }
        None => say!(words::PLACE, output = first),
    };
    [load, said.into_text()].join(" ")
}

fn edits_of(planned: &PlannedRest, load: &PlannedLoad, places: &[usize]) -> Vec<Edit> {
    let name = |at: &usize| name_of(planned, *at);
    let mut edits: Vec<Edit> =
        places.first().map(|it| load.place.key(loads::OUTPUT).edit(name(it))).into_iter().collect();
    edits.extend(places.get(1).map(|it| load.place.key(loads::FAR_OUTPUT).edit(name(it))));
    // what is moved is no longer where its wire was found
    edits.extend(load.meant.map(|_| load.place.key(loads::WIRED).edit("")));
    edits
}

/// Some are too many for the outputs that suit them.
fn impossible(
    suiting: &mut Suiting<'_>,
    jobs: &PinJobs,
    placement: &Placement,
    findings: &mut Findings,
) -> Answer {
    let planned = suiting.planned;
    // of an output whose type isn't known nothing is tried
    let is_unknown = |it: &&std::rc::Rc<PlannedOutput>| it.output.is_none();
    if let Some(unknown) = planned.outputs.iter().find(is_unknown) {
        return open(say!(words::OPEN_STAGE, output = unknown.name.clone()));
    }
    let Some(set) = competing(placement, suiting.budget) else {
        return open(say!(words::OPEN_UNSEARCHED));
    };
    let in_set = || set.iter().filter_map(|at| jobs.jobs.get(*at));
    let competing: Vec<&PlannedLoad> =
        in_set().flat_map(|it| PinJobs::loads(planned, it)).collect();
    let names: Vec<String> = competing.iter().map(|it| it.name.clone()).collect();
    let mut open_to: Vec<usize> = set
        .iter()
        .filter_map(|at| placement.jobs.get(*at))
        .flat_map(|it| it.placings.iter().flat_map(|it| it.places.clone()))
        .collect();
    open_to.sort_unstable();
    open_to.dedup();
    let [in_verdict, in_finding] = MOST_COMPETING.map(|most| some_of(&names, most));
    let verdict = if open_to.is_empty() {
        say!(words::NONE_SUITS, list = in_verdict)
    } else {
        say!(words::TOO_FEW, list = in_verdict)
    };
    let (cures, about) = releases::of(suiting, jobs, placement, &set);
    // what is on an output that doesn't suit it is told there
    let mut blanks = competing.iter().filter(|it| it.link == OutputLink::Blank);
    let by_cure = blanks.clone().find(|it| Some(it.place) == about);
    let blank = by_cure.or_else(|| blanks.next());
    let Some(blank) = blank else {
        let mut answer = open(verdict);
        answer.to_do = cures;
        return answer;
    };
    let is_certain = competing.iter().all(|it| !it.assumed.resistance);
    let message = if open_to.is_empty() {
        say!(words::NO_OUTPUT, list = in_finding)
    } else {
        let wanted: usize = in_set().map(|it| if it.is_pair { 2 } else { 1 }).sum();
        let short = wanted.saturating_sub(open_to.len()).max(1);
        let m = outputs_named(planned, &open_to);
        let others = beside(planned, jobs, placement, (&set, &open_to));
        if others.is_empty() {
            say!(words::TOO_FEW_OUTPUTS, list = in_finding, m = m, short = short)
        } else {
            let short = short + others.len();
            let others = some_of(&others, 4);
            say!(words::TOO_FEW_MORE, list = in_finding, m = m, others = others, short = short)
        }
    };
    let severity = if is_certain { Severity::Fault } else { Severity::Doubt };
    let key = blank.place.key(loads::OUTPUT);
    let mut answer =
        Answer::new("pins", if is_certain { Tone::Bad } else { Tone::Doubtful }, verdict);
    answer.to_do.clone_from(&cures);
    findings.push(Finding::new(severity, key, message).cured_by(cures));
    answer
}

/// The others that can be on no other outputs than those for which a set competes.
fn beside(
    planned: &PlannedRest,
    jobs: &PinJobs,
    placement: &Placement,
    (set, open_to): (&[usize], &[usize]),
) -> Vec<String> {
    let is_within = |(at, job): &(usize, &crate::assignment::PlacedJob)| {
        let mut places = job.placings.iter().flat_map(|it| &it.places);
        !set.contains(at) && !job.placings.is_empty() && places.all(|it| open_to.contains(it))
    };
    let others = placement.jobs.iter().enumerate().filter(is_within);
    let jobs = others.filter_map(|(at, _)| jobs.jobs.get(at));
    jobs.flat_map(|it| PinJobs::loads(planned, it)).map(|it| it.name.clone()).collect()
}

fn outputs_named(planned: &PlannedRest, outputs: &[usize]) -> Value {
    let names: Vec<String> = outputs.iter().map(|it| name_of(planned, *it)).collect();
    let names = shortened(&names);
    Value::text(
        match outputs.len() {
            1 => say!(words::OUTPUT, names = names),
            n => say!(words::OUTPUTS, n = n, names = names),
        }
        .into_text(),
    )
}

/// What is planned on outputs that share a limit.
fn of_groups(planned: &PlannedRest, findings: &mut Findings) {
    for group in groups(planned) {
        let on = |load: &&std::rc::Rc<PlannedLoad>| {
            planned_on(load).is_some_and(|it| group.outputs.contains(&it)) && load.is_solved()
        };
        let loads: Vec<_> = planned.loads.iter().filter(on).collect();
        let each = loads.iter().map(|it| planned.taken_by_one(it));
        let sum: Current = amperes(each.map(Current::base).sum());
        if let Some(limit) = group.limit.filter(|limit| sum > *limit) {
            let is_certain = loads.iter().all(|it| !it.assumed.resistance);
            let message =
                say!(words::GROUP_OVER, group = group.name.clone(), sum = sum, limit = limit);
            let severity = if is_certain { Severity::Fault } else { Severity::Doubt };
            let key = outputs::GROUP_LIMIT.at(group.record);
            findings.push(Finding::new(severity, key, message));
        }
        let pulsed: Vec<_> =
            loads.iter().filter_map(|it| Some((it, it.pulse?.frequency.nominal))).collect();
        let Some((first, pace)) = pulsed.first() else { continue };
        let other = pulsed.iter().find(|(_, it)| it.base().to_bits() != pace.base().to_bits());
        if let Some((other, _)) = other.filter(|_| group.is_one_pulse) {
            let (one, other) = (first.name.clone(), other.name.clone());
            let message =
                say!(words::GROUP_PULSES, group = group.name.clone(), one = one, other = other);
            let key = outputs::GROUP_PULSE.at(group.record);
            findings.push(Finding::new(Severity::Fault, key, message));
        }
    }
}
