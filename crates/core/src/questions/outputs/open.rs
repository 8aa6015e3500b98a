//! Answers that are not given yet: what is missing, and what would do.

use std::rc::Rc;

use super::{names, unsolved};
use crate::{
    budget::Budget,
    message::Message,
    output::{FarEnd, OnLevel, Output, Wiring, suits},
    quantity::Voltage,
    questions::outputs::words,
    read::{OutputLink, PlannedLoad, PlannedOutput, PlannedRest},
    report::{Answer, Tone},
    say,
};

/// More of them than this nobody reads.
const MOST: usize = 4;

pub(super) fn without_loads(planned: &PlannedRest) -> Answer {
    let message =
        if planned.outputs.is_empty() { say!(words::OPEN) } else { say!(words::OPEN_NO_LOADS) };
    let mut answer = Answer::new("rest", Tone::Open, message);
    answer.why = Some(say!(words::WHY_OPEN));
    answer
}

/// What is missing for a load, the first thing first.
pub(super) fn answer(planned: &PlannedRest, load: &PlannedLoad, budget: &Budget) -> Answer {
    let output = match load.link {
        OutputLink::To(number) => planned.outputs.get(number),
        OutputLink::Blank | OutputLink::Nowhere => None,
    };
    if load.is_by_hand && load.link == OutputLink::Blank {
        let mut answer = Answer::new(load.path(), Tone::Good, say!(words::CONNECT));
        answer.why = Some(say!(words::WHY_BY_HAND));
        answer.title = Some(say!(words::LOAD_TITLE_ALONE, load = load.name.clone()));
        return answer;
    }
    let (message, to_do) = match (load.link, output) {
        _ if load.is_unreadable => (say!(words::OPEN_MEND), vec![say!(words::WHY_MEND)]),
        (_, Some(output)) if output.is_unreadable => {
            (say!(words::OPEN_MEND), vec![say!(words::WHY_MEND)])
        }
        (_, Some(output)) => match &output.output {
            None => (say!(words::OPEN_STAGE, output = output.name.clone()), Vec::new()),
            Some(known) if load.far_end.is_none() => {
                (say!(words::OPEN_FAR_END), far_ends(planned, load, (known, &output.name), budget))
            }
            Some(_) => (say!(words::OPEN_UNSOLVED), Vec::new()),
        },
        (OutputLink::Nowhere, None) => {
            (say!(words::OPEN_NO_SUCH_OUTPUT), outputs(planned, load, budget))
        }
        _ if planned.outputs.is_empty() => (say!(words::OPEN), Vec::new()),
        _ => (say!(words::OPEN_OUTPUT), outputs(planned, load, budget)),
    };
    let mut answer = Answer::new(load.path(), Tone::Open, message);
    let name = load.name.clone();
    answer.title = Some(match output {
        Some(output) => say!(words::LOAD_TITLE, load = name, output = output.name.clone()),
        None => say!(words::LOAD_TITLE_ALONE, load = name),
    });
    answer.why = planned.outputs.is_empty().then(|| say!(words::WHY_OPEN));
    answer.to_do = to_do;
    answer
}

/// The far ends that are right on this output.
fn far_ends(
    planned: &PlannedRest,
    load: &PlannedLoad,
    (output, name): (&Output, &str),
    budget: &Budget,
) -> Vec<Message> {
    let say_end = |far_end: FarEnd| {
        let fit = fit(planned, load, output, far_end, budget)?;
        let (unasked, on) = fit.voltages;
        let end = names::end_first(far_end);
        Some(match fit.level {
            None => say!(words::END_WOULD_DO, end = end, unasked = unasked, on = on),
            Some(level) => {
                let level = names::level(level, output.stage);
                say!(
                    words::END_WOULD_DO_AT_LEVEL,
                    end = end,
                    level = level,
                    unasked = unasked,
                    on = on
                )
            }
        })
    };
    let found: Vec<_> = FarEnd::OFFERED.into_iter().filter_map(say_end).collect();
    if found.is_empty() && budget.is_short() {
        return vec![unsolved::nothing_found(budget)];
    }
    if found.is_empty() { vec![say!(words::NO_END_WOULD_DO, output = name)] } else { found }
}

/// The free outputs that are right for this load.
fn outputs(planned: &PlannedRest, load: &PlannedLoad, budget: &Budget) -> Vec<Message> {
    let Some(far_end) = load.far_end else { return Vec::new() };
    let is_free = |number: usize| {
        planned.loads.iter().all(|it| it.link != OutputLink::To(number) && it.meant != Some(number))
    };
    let free = planned.outputs.iter().enumerate().filter(|(number, _)| is_free(*number));
    let say_output = |(_, output): (usize, &Rc<PlannedOutput>)| {
        let stage = output.output.as_ref()?;
        let fit = fit(planned, load, stage, far_end, budget)?;
        let ((unasked, on), name) = (fit.voltages, output.name.clone());
        Some(match fit.level {
            None => say!(words::OUTPUT_WOULD_DO, output = name, unasked = unasked, on = on),
            Some(level) => {
                let level = names::level(level, stage.stage);
                say!(
                    words::OUTPUT_WOULD_DO_AT_LEVEL,
                    output = name,
                    level = level,
                    unasked = unasked,
                    on = on
                )
            }
        })
    };
    free.filter_map(say_output).take(MOST).collect()
}

struct Fit {
    /// What must count as on, where it is not settled.
    level: Option<OnLevel>,
    voltages: (Voltage, Voltage),
}

fn fit(
    planned: &PlannedRest,
    load: &PlannedLoad,
    output: &Output,
    far_end: FarEnd,
    budget: &Budget,
) -> Option<Fit> {
    let levels = output.levels();
    levels.iter().find_map(|&level| {
        let wiring = Wiring::alone(output.clone(), level, vec![load.to(far_end, 0, level)]);
        let voltages = suits(&wiring, 0, &planned.around, budget)?;
        Some(Fit { level: (levels.len() > 1).then_some(level), voltages })
    })
}
