//! Held against all that there is: every choice of small problems, tried one by one.

use proptest::prelude::*;

use super::*;
use crate::budget::{Allowance, Budget};

fn free() -> Budget {
    Budget::unlimited()
}

/// Every choice of a number below each of these.
fn choices(counts: &[usize]) -> Vec<Vec<usize>> {
    let longer = |known: Vec<Vec<usize>>, count: &usize| -> Vec<Vec<usize>> {
        let each = known.iter().flat_map(|it| (0..*count).map(move |at| (it, at)));
        each.map(|(it, at)| it.iter().copied().chain([at]).collect()).collect()
    };
    counts.iter().fold(vec![Vec::new()], longer)
}

/// Each job at a place of its own: all ways to do it.
fn ways(table: &CostTable) -> Vec<Vec<usize>> {
    let mut known: Vec<Vec<usize>> = vec![Vec::new()];
    for job in 0..table.jobs() {
        let longer = known.iter().flat_map(|it| {
            let there = (0..table.places())
                .filter(move |place| !it.contains(place) && table.at(job, *place).is_some());
            there.map(move |place| it.iter().copied().chain([place]).collect())
        });
        known = longer.collect();
    }
    known
}

fn cost_of(table: &CostTable, places: &[usize]) -> Cost {
    let costs = places.iter().enumerate().map(|(job, place)| table.at(job, *place).unwrap());
    costs.fold(Cost::default(), |sum, cost| sum + cost)
}

/// Jobs and places, a third of the pairs forbidden, few costs so that many assignments cost the same.
fn tables(most_jobs: usize, most_places: usize) -> impl Strategy<Value = CostTable> {
    (0..=most_jobs, 0..=most_places).prop_flat_map(|(jobs, places)| {
        let cell = prop::option::weighted(0.66, (0..3_u32, 0..2_u32, 0..4_u32));
        prop::collection::vec(cell, jobs * places).prop_map(move |cells| {
            let mut table = CostTable::new(jobs, places);
            for (at, cell) in cells.into_iter().enumerate() {
                if let Some((first, second, third)) = cell {
                    table.allow(at / places, at % places, Cost::new([first, second, third]));
                }
            }
            table
        })
    })
}

/// The prices prove it: whatever was done to find them.
fn prove(table: &CostTable, prices: &Prices, cost: Cost) {
    assert_eq!(prices.sum(), cost.number(), "they sum up to the cost");
    assert!(prices.places.iter().all(|price| *price <= 0), "{prices:?}");
    for job in 0..table.jobs() {
        for place in 0..table.places() {
            if let Some(cost) = table.at(job, place) {
                assert!(
                    prices.jobs[job] + prices.places[place] <= cost.number(),
                    "{job} at {place}"
                );
            }
        }
    }
}

fn of_table(table: &CostTable) -> Placement {
    let job = |job: usize| {
        let places = (0..table.places()).filter_map(|place| Some((place, table.at(job, place)?)));
        let placings = places.map(|(place, cost)| Placing { places: vec![place], cost });
        PlacedJob { placings: placings.collect(), ..PlacedJob::default() }
    };
    Placement {
        jobs: (0..table.jobs()).map(job).collect(),
        places: table.places(),
        banks: Vec::new(),
    }
}

/// Jobs with single places, pairs and threes; banks with limits and with one pace.
fn placements(most_jobs: usize, most_places: usize) -> impl Strategy<Value = Placement> {
    (1..=most_jobs, 1..=most_places).prop_flat_map(|(jobs, places)| {
        let group = prop::collection::btree_set(0..places, 1..=3.min(places));
        let placing = (group, 0..2_u32, 0..5_u32).prop_map(|(places, second, third)| Placing {
            places: places.into_iter().collect(),
            cost: Cost::new([0, second, third]),
        });
        let job = (prop::collection::vec(placing, 0..=4), 0..6_u64, prop::option::of(0..2_u64));
        let job = job.prop_map(|(placings, draw, pace)| PlacedJob { placings, draw, pace });
        let of_bank = prop::collection::btree_set(0..places, 1..=places);
        let bank = (of_bank, prop::option::of(0..12_u64), any::<bool>());
        let bank = bank.prop_map(|(places, limit, is_one_pace)| Bank {
            places: places.into_iter().collect(),
            limit,
            is_one_pace,
        });
        (prop::collection::vec(job, jobs), prop::collection::vec(bank, 0..=3))
            .prop_map(move |(jobs, banks)| Placement { jobs, places, banks })
    })
}

/// The least cost of all choices that keep the rules, by another reading of them.
fn by_trying(placement: &Placement) -> Option<Cost> {
    let counts: Vec<_> = placement.jobs.iter().map(|job| job.placings.len()).collect();
    let keeps = |chosen: &Vec<usize>| {
        let placings: Vec<_> =
            placement.jobs.iter().zip(chosen).map(|(job, at)| &job.placings[*at]).collect();
        let mut all: Vec<_> = placings.iter().flat_map(|it| it.places.clone()).collect();
        let count = all.len();
        all.sort_unstable();
        all.dedup();
        all.len() == count
            && placement.banks.iter().all(|bank| {
                let mut drawn = 0;
                let mut paces = Vec::new();
                for (job, placing) in placement.jobs.iter().zip(&placings) {
                    for place in &placing.places {
                        if bank.places.contains(place) {
                            drawn += job.draw;
                            paces.extend(job.pace);
                        }
                    }
                }
                paces.sort_unstable();
                paces.dedup();
                bank.limit.is_none_or(|limit| drawn <= limit)
                    && (!bank.is_one_pace || paces.len() < 2)
            })
    };
    choices(&counts).iter().filter(|it| keeps(it)).map(|it| placement.cost(it)).min()
}

/// The same with some of the jobs alone.
fn of_jobs(placement: &Placement, jobs: &[usize]) -> Placement {
    let jobs = jobs.iter().map(|job| placement.jobs[*job].clone()).collect();
    Placement { jobs, ..placement.clone() }
}

/// Too many together, and not without any one of them.
fn check_competing(placement: &Placement, jobs: &[usize]) {
    assert_eq!(by_trying(&of_jobs(placement, jobs)), None, "{jobs:?}");
    for job in jobs {
        let others: Vec<_> = jobs.iter().copied().filter(|it| it != job).collect();
        assert!(by_trying(&of_jobs(placement, &others)).is_some(), "{jobs:?} without {job}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(600) })]

    /// Source: all assignments of up to seven jobs to seven places.
    #[test]
    fn no_assignment_costs_less_and_none_that_costs_the_same_comes_before(table in tables(7, 7)) {
        let all = ways(&table);
        let best = all.iter().min_by_key(|it| (cost_of(&table, it), (*it).clone()));
        match (matched(&table, &free()), best) {
            (Ok(found), Some(best)) => {
                prop_assert_eq!(&found.places, best);
                prop_assert_eq!(found.cost, cost_of(&table, best));
                prove(&table, &found.prices, found.cost);
            }
            (found, best) => prop_assert!(
                found == Err(Unmatched::TooFew) && best.is_none(), "{:?} {:?}", found, best
            ),
        }
    }

    /// One more place for the same jobs, wherever it stands.
    #[test]
    fn one_more_place_never_makes_it_worse(table in tables(6, 7), costs in prop::collection::vec(0..6_u32, 7)) {
        let mut larger = CostTable::new(table.jobs(), table.places() + 1);
        for (job, more) in (0..table.jobs()).zip(costs) {
            for place in 0..table.places() {
                if let Some(cost) = table.at(job, place) {
                    larger.allow(job, place, cost);
                }
            }
            larger.allow(job, table.places(), Cost::of(more));
        }
        if let Ok(found) = matched(&table, &free()) {
            prop_assert!(matched(&larger, &free()).unwrap().cost <= found.cost);
        }
    }

    /// Source: all choices of up to six jobs with up to four placings, pairs and threes, and three banks.
    #[test]
    fn no_choice_that_keeps_the_rules_costs_less(placement in placements(6, 7)) {
        let best = by_trying(&placement);
        match placed(&placement, &free()) {
            PlacementSearch::Best(found) => {
                prop_assert!(placement.allows(&found.chosen), "{:?}", found);
                prop_assert_eq!(Some(found.cost), best);
                prop_assert_eq!(placement.cost(&found.chosen), found.cost);
                prop_assert!(found.least <= found.cost);
                prop_assert_eq!(found.prices.sum(), found.least.number());
            }
            found => prop_assert!(
                found == PlacementSearch::Impossible && best.is_none(), "{:?} {:?}", found, best
            ),
        }
    }

    #[test]
    fn one_more_placing_never_makes_it_worse(
        placement in placements(5, 6), job in any::<prop::sample::Index>(), third in 0..5_u32,
    ) {
        let mut larger = placement.clone();
        let job = job.index(larger.jobs.len());
        larger.jobs[job].placings.push(Placing { places: vec![larger.places], cost: Cost::of(third) });
        larger.places += 1;
        if let PlacementSearch::Best(found) = placed(&placement, &free()) {
            let PlacementSearch::Best(better) = placed(&larger, &free()) else { panic!("{larger:?}") };
            prop_assert!(better.cost <= found.cost);
        }
    }

    #[test]
    fn those_that_compete_are_too_many_and_without_any_of_them_are_not(placement in placements(5, 5)) {
        match competing(&placement, &free()) {
            Some(jobs) => check_competing(&placement, &jobs),
            None => prop_assert!(by_trying(&placement).is_some()),
        }
    }

    /// Source: P. Hall 1935: the places that they may stand at are one fewer than they are.
    #[test]
    fn those_that_compete_for_single_places_have_one_place_too_few(table in tables(6, 5)) {
        let placement = of_table(&table);
        if let Some(jobs) = competing(&placement, &free()) {
            check_competing(&placement, &jobs);
            let may = |place: &usize| jobs.iter().any(|job| table.at(*job, *place).is_some());
            prop_assert_eq!((0..table.places()).filter(may).count() + 1, jobs.len());
        }
    }

    /// What ends early says so, and what it has by then keeps the rules.
    #[test]
    fn what_is_not_searched_to_its_end_is_told(placement in placements(6, 7), most in 0..400_u64) {
        let budget = Budget::new(Allowance { most, share: most });
        let found = placed(&placement, &budget);
        prop_assert!(budget.spent() <= most);
        match found {
            PlacementSearch::Unsearched(found) => {
                prop_assert!(budget.is_short());
                prop_assert!(found.is_none_or(|it| placement.allows(&it.chosen)));
            }
            found => prop_assert_eq!(found, placed(&placement, &free())),
        }
    }

    /// The order of the jobs decides between equals alone.
    #[test]
    fn in_another_order_it_costs_the_same(placement in placements(6, 7)) {
        let mut turned = placement.clone();
        turned.jobs.reverse();
        let cost = |placement: &Placement| match placed(placement, &free()) {
            PlacementSearch::Best(found) => Some(found.cost),
            _ => None,
        };
        prop_assert_eq!(cost(&placement), cost(&turned));
    }

    #[test]
    fn a_higher_rank_outweighs_all_lower_ones(
        costs in prop::collection::vec(any::<[u32; 3]>(), 64), others in prop::collection::vec(any::<[u32; 3]>(), 64),
    ) {
        let sum = |costs: &[[u32; 3]]| {
            costs.iter().fold(Cost::default(), |sum, it| sum + Cost::new(*it))
        };
        let ranks = |costs: &[[u32; 3]]| {
            [0, 1, 2].map(|at| costs.iter().map(|it| u64::from(it[at])).sum::<u64>())
        };
        prop_assert_eq!(sum(&costs).ranks(), ranks(&costs));
        prop_assert_eq!(sum(&costs).cmp(&sum(&others)), ranks(&costs).cmp(&ranks(&others)));
    }
}

/// A bridge takes two places that belong together, of which four banks of twelve have six each; the others take one, almost
/// anywhere, and for more in the last bank; a bank carries so much, and has one pace.
fn car(jobs: usize, limit: u64) -> Placement {
    let places = 48;
    let job = |job: usize| {
        let cost = |place: usize| {
            Cost::new([0, u32::from(place >= 36), u32::try_from(place / 12).unwrap()])
        };
        if job.is_multiple_of(10) {
            let pairs = (0..places / 2).map(|it| [2 * it, 2 * it + 1]);
            let placings =
                pairs.map(|pair| Placing { places: pair.to_vec(), cost: cost(pair[0]) }).collect();
            return PlacedJob { placings, draw: 4, pace: Some(1) };
        }
        let may = (0..places).filter(|place| !(place + job).is_multiple_of(5));
        let placings =
            may.map(|place| Placing { places: vec![place], cost: cost(place) }).collect();
        PlacedJob { placings, draw: 1 + job as u64 % 4, pace: job.is_multiple_of(7).then_some(2) }
    };
    let bank = |at: usize| Bank {
        places: (12 * at..12 * at + 12).collect(),
        limit: Some(limit),
        is_one_pace: true,
    };
    Placement { jobs: (0..jobs).map(job).collect(), places, banks: (0..4).map(bank).collect() }
}

/// Counted, not timed. A step is one place that is looked at.
#[test]
fn forty_jobs_on_forty_eight_places_are_counted() {
    let mut placement = car(40, 35);
    let budget = free();
    let PlacementSearch::Best(found) = placed(&placement, &budget) else { panic!("they fit") };
    assert!(placement.allows(&found.chosen));
    assert_eq!(found.cost, found.least, "the prices prove it");
    // 218 832, of which the last bank with its limit and the paces take most
    assert!(budget.spent() < 500_000, "{} steps", budget.spent());
    placement.banks.clear();
    for job in &mut placement.jobs {
        job.placings.retain(|it| it.places.len() == 1);
    }
    placement.jobs.retain(|job| !job.placings.is_empty());
    let budget = free();
    assert!(matches!(placed(&placement, &budget), PlacementSearch::Best(_)));
    // 32 976
    assert!(budget.spent() < 100_000, "{} steps", budget.spent());
}
