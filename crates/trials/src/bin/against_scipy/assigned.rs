//! Jobs and places at random, and what the core says they cost at the least.

use quietpin_core::{
    assignment::{Cost, CostTable, matched},
    budget::Budget,
};

use super::Random;

/// Up to 40 jobs on up to 48 places, of which almost all are forbidden to a job; a third of the problems cost only a few, so that
/// many assignments cost the same. A line for the other side: our cost, or that there is none; jobs, places, and each pair.
pub(crate) fn problem(random: &mut Random) -> String {
    let jobs = 1 + random.below(40);
    let places = jobs + random.below(9);
    let forbidden = random.share() * 0.97;
    let highest = [4_u32, 1000, 1_000_000][random.below(3)];
    let mut table = CostTable::new(jobs, places);
    let mut cells = Vec::new();
    for job in 0..jobs {
        for place in 0..places {
            if random.share() < forbidden {
                cells.push("inf".to_owned());
                continue;
            }
            let cost = u32::try_from(random.below_large(highest)).unwrap_or(0);
            table.allow(job, place, Cost::of(cost));
            cells.push(cost.to_string());
        }
    }
    let ours = matched(&table, &Budget::unlimited());
    let ours = ours.map_or_else(|_| "none".to_owned(), |it| it.cost.ranks()[2].to_string());
    format!("assign {ours} {jobs} {places} {}\n", cells.join(" "))
}
