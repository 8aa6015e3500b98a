//! What flows out of the battery with the key off, part by part.

use std::rc::Rc;

use crate::{
    fields,
    output::{self, Drain, OnLevel, Surroundings, Wiring, is_told_of_its_load},
    quantity::{Band, Current, Measure, amperes},
    read::{Entry, OutputLink, PlannedLoad, PlannedOutput, PlannedRest},
};

/// Outputs that hang together, with what hangs on them.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct OutputGroup {
    /// The outputs by name.
    pub(super) outputs: String,
    /// The loads by name.
    pub(super) loads: String,
    /// What they draw.
    pub(super) drain: Drain,
    /// What they draw with every load of theirs fed by the key instead of permanent battery, where that is less.
    pub(super) by_the_key: Option<Band<Current>>,
    /// Whether the answer about a load tells of it already.
    pub(super) is_told: bool,
}

/// What all outputs draw, and what they were solved from: another edit leaves them as they are.
#[derive(Clone, Debug, Default)]
pub(crate) struct Memory {
    outputs: Vec<Rc<PlannedOutput>>,
    loads: Vec<Rc<PlannedLoad>>,
    around: Option<Rc<Surroundings>>,
    solved: Rc<Solved>,
}

/// What all outputs draw.
#[derive(Clone, Debug, Default)]
pub(super) struct Solved {
    /// Those that draw anything, biggest first.
    pub(super) groups: Vec<OutputGroup>,
    /// The names of what was left out, since too little is known of it.
    pub(super) left_out: Vec<String>,
}

impl Memory {
    /// What all outputs draw, solved only where something of them is new.
    pub(super) fn recall(&mut self, planned: &PlannedRest) -> Rc<Solved> {
        let is_known = self.around.as_ref() == Some(&planned.around)
            && self.outputs == planned.outputs
            && self.loads == planned.loads;
        if !is_known {
            *self = Self {
                outputs: planned.outputs.clone(),
                loads: planned.loads.clone(),
                around: Some(Rc::clone(&planned.around)),
                solved: Rc::new(solve(planned)),
            };
        }
        Rc::clone(&self.solved)
    }
}

fn solve(planned: &PlannedRest) -> Solved {
    let mut solved = Solved::default();
    let mut seen: Vec<usize> = Vec::new();
    for (number, output) in planned.outputs.iter().enumerate() {
        if seen.contains(&number) {
            continue;
        }
        if output.is_unreadable {
            solved.left_out.push(output.name.clone());
        }
        if output.output.is_none() {
            continue;
        }
        let joined = planned.joined(number);
        match group(planned, &joined) {
            Some(group) => solved.groups.push(group),
            None => solved.left_out.push(outputs_of(planned, &joined)),
        }
        seen.extend(joined);
    }
    let is_shown = |group: &OutputGroup| is_drawn(group.drain.current.high);
    solved.groups.retain(is_shown);
    let most = |group: &OutputGroup| group.drain.current.high.base();
    crate::sorted::by(&mut solved.groups, |one, other| most(other).total_cmp(&most(one)));
    let is_counted = |load: &&Rc<PlannedLoad>| match load.link {
        OutputLink::To(number) if load.is_solved() => seen.contains(&number),
        _ => false,
    };
    let left_out = planned.loads.iter().filter(|load| !is_counted(load));
    solved.left_out.extend(left_out.map(|load| load.name.clone()));
    solved
}

/// Whether a meter shows it at all.
pub(super) fn is_drawn(current: Current) -> bool {
    current.base() >= Current::DIMENSION.nought()
}

fn group(planned: &PlannedRest, joined: &[usize]) -> Option<OutputGroup> {
    let &first = joined.first()?;
    // every stage is open; but which way round a diode is right hangs on what counts as on
    let wirings = OnLevel::BOTH.into_iter().map(|level| planned.wiring(first, level));
    let wirings: Option<Vec<_>> = wirings.collect();
    let mut wirings = wirings?;
    wirings.dedup();
    let drain = widest(&wirings, &planned.around)?;
    let by_the_key: Vec<_> = wirings.iter().map(Wiring::fed_by_the_key).collect();
    let by_the_key = if is_drawn(drain.current.high) && by_the_key != wirings {
        let current = widest(&by_the_key, &planned.around)?.current;
        (current.high < drain.current.high).then_some(current)
    } else {
        None
    };
    let hangs = |load: &&Rc<PlannedLoad>| {
        load.is_solved() && joined.iter().any(|number| load.takes(*number))
    };
    let loads: Vec<_> = planned.loads.iter().filter(hangs).map(|load| load.name.as_str()).collect();
    Some(OutputGroup {
        outputs: outputs_of(planned, joined),
        is_told: !loads.is_empty() && is_told_of_its_load(drain.current.high),
        loads: loads.join(", "),
        drain,
        by_the_key,
    })
}

fn outputs_of(planned: &PlannedRest, joined: &[usize]) -> String {
    let names = joined.iter().filter_map(|number| planned.outputs.get(*number));
    names.map(|output| output.name.as_str()).collect::<Vec<_>>().join(", ")
}

/// Of the wirings that are possible, the most and the least.
fn widest(wirings: &[Wiring], around: &Surroundings) -> Option<Drain> {
    let all: Option<Vec<Drain>> =
        wirings.iter().map(|wiring| output::drain(wiring, around)).collect();
    all?.into_iter().reduce(|one, other| {
        let (mut more, less) =
            if other.current.nominal > one.current.nominal { (other, one) } else { (one, other) };
        if less.current.high > more.current.high {
            more.most = less.most;
        }
        more.current = more.current.widened_to(less.current.low).widened_to(less.current.high);
        more
    })
}

/// All that flows, and from where.
#[derive(Debug)]
pub(super) struct TotalDrain {
    pub(super) solved: Rc<Solved>,
    pub(super) outputs: Band<Current>,
    pub(super) controller: Band<Current>,
    pub(super) other: Band<Current>,
    /// The sum of the three.
    pub(super) all: Band<Current>,
    /// The names of what is not counted.
    pub(super) left_out: Vec<String>,
}

impl TotalDrain {
    pub(super) fn new(
        solved: Rc<Solved>,
        controller: Entry<Band<Current>>,
        other: Entry<Band<Current>>,
    ) -> Self {
        let mut left_out = solved.left_out.clone();
        let mut counted = |entry: Entry<Band<Current>>, label: &str| {
            if entry == Entry::Unreadable {
                left_out.push(label.to_owned());
            }
            entry.value().unwrap_or(none())
        };
        let controller = counted(controller, fields::controller::KEY_OFF_DRAW.field().label);
        let other = counted(other, fields::battery::OTHER_DRAW.field().label);
        let outputs = solved.groups.iter().fold(none(), |sum, it| plus(&sum, &it.drain.current));
        let all = plus(&plus(&outputs, &controller), &other);
        Self { solved, outputs, controller, other, all, left_out }
    }

    /// What flows at most that no answer about a load tells of.
    pub(super) fn untold(&self) -> Band<Current> {
        let groups = self.solved.groups.iter().filter(|group| !group.is_told);
        let outputs = groups.fold(none(), |sum, it| plus(&sum, &it.drain.current));
        plus(&plus(&outputs, &self.controller), &self.other)
    }
}

fn none() -> Band<Current> {
    Band::exact(amperes(0.0))
}

fn plus(one: &Band<Current>, other: &Band<Current>) -> Band<Current> {
    Band {
        low: one.low + other.low,
        nominal: one.nominal + other.nominal,
        high: one.high + other.high,
    }
}

/// What is left of a sum without one of its parts, and with another in its place.
pub(super) fn instead(
    all: &Band<Current>,
    part: &Band<Current>,
    new: Option<&Band<Current>>,
) -> Band<Current> {
    let left = |all: Current, part: Current| amperes((all - part).base().max(0.0));
    let rest = Band {
        low: left(all.low, part.low),
        nominal: left(all.nominal, part.nominal),
        high: left(all.high, part.high),
    };
    new.map_or(rest, |new| plus(&rest, new))
}
