//! Which output each load is on, which is best, and which suit it.

use super::{jobs::PinJobs, words};
use crate::{
    assignment::{PlacedJobs, Placement},
    quantity::Value,
    read::PlannedRest,
    report::{Row, Table},
    say,
    working::{Formula, Step, step},
};

const BEST: Formula = Formula {
    symbols: "moved = min sum c(loads, outputs)",
    source: "the assignment problem by shortest paths with prices, which prove it (Kuhn 1955): c is a wire moved first, then what the output can do beyond",
};

fn working(jobs: &PinJobs, placement: &Placement, best: Option<&PlacedJobs>) -> Step {
    let count = |n: usize| Value::from(u32::try_from(n).unwrap_or(u32::MAX));
    let [moved, ..] = best.map_or([0; 3], |it| it.cost.ranks());
    let shown = [("loads", count(jobs.jobs.len())), ("outputs", count(placement.places))];
    step(&BEST, &shown, Value::from(u32::try_from(moved).unwrap_or(u32::MAX)))
}

/// A row for each load that can be placed.
pub(super) fn of(
    planned: &PlannedRest,
    jobs: &PinJobs,
    placement: &Placement,
    best: Option<&PlacedJobs>,
) -> Table {
    let named = |places: &[usize]| {
        let names = places.iter().filter_map(|at| planned.outputs.get(*at));
        let names: Vec<&str> = names.map(|it| it.name.as_str()).collect();
        Value::text(names.join(", "))
    };
    let rows = jobs.jobs.iter().enumerate().flat_map(|(at, job)| {
        let placings = placement.jobs.get(at).map_or(&[][..], |it| &it.placings);
        let chosen = best.and_then(|it| placings.get(*it.chosen.get(at)?));
        let mut suiting: Vec<usize> = placings.iter().flat_map(|it| it.places.clone()).collect();
        suiting.sort_unstable();
        suiting.dedup();
        let cells = [
            named(job.now.as_deref().unwrap_or_default()),
            named(chosen.map_or(&[][..], |it| &it.places)),
            Value::text(in_rows(planned, &suiting)),
        ];
        let loads = PinJobs::loads(planned, job).into_iter();
        let row = move |name: &str| {
            let cells = [Value::text(name.to_owned())].into_iter().chain(cells.clone());
            Row { cells: cells.collect(), tone: None }
        };
        loads.map(|it| row(&it.name)).collect::<Vec<_>>()
    });
    Table {
        caption: say!(words::TABLE),
        columns: vec![
            say!(words::COL_LOAD),
            say!(words::COL_NOW),
            say!(words::COL_BEST),
            say!(words::COL_SUIT),
        ],
        rows: rows.collect(),
        working: vec![working(jobs, placement, best)],
    }
}

/// The names of outputs; those in a row that are alike, and all suit, by the first and the last.
fn in_rows(planned: &PlannedRest, outputs: &[usize]) -> String {
    let of = |at: &usize| planned.outputs.get(*at);
    let is_next = |one: &usize, other: &usize| {
        let (one_is, other_is) = (of(one).map(|it| &it.output), of(other).map(|it| &it.output));
        *other == one + 1 && one_is == other_is
    };
    let names: Vec<String> = outputs
        .chunk_by(is_next)
        .flat_map(|row| {
            let names: Vec<String> = row.iter().filter_map(of).map(|it| it.name.clone()).collect();
            match names.as_slice() {
                [first, _, .., last] => {
                    let (first, last) = (first.clone(), last.clone());
                    vec![say!(words::FROM_TO, first = first, last = last).into_text()]
                }
                _ => names,
            }
        })
        .collect();
    names.join(", ")
}
