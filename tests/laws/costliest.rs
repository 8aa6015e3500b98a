//! The plan that costs most, climbed to: how much it makes the core do. Counted, as seconds hang on the machine; those are told
//! by `slowest` of the trials, which climbs for longer, and from more.

use quietpin_core::{
    counted::{Done, counting},
    plan,
    report::report,
};
use quietpin_trials::{
    climb::{beginnings, climb, nanoseconds},
    random::Random,
};

/// Kinds of plans, with how many changes are tried on each. What is left to the trials takes long for what it shows.
const TRIED: &[(&str, u32)] = &[
    ("cranking", 4),
    ("chatter", 1),
    ("engine", 6),
    ("firing", 6),
    ("trigger", 12),
    ("injectors", 12),
    ("coils", 12),
    ("chain-2", 12),
    ("chain-3", 4),
    ("shared-2", 4),
];

/// The most that a report may do. One report, six remedies tried, and four pairs of them; starts that are followed, and looked at
/// for every relay, as `cost.rs` of cranking counts them; circuits as that of the outputs counts them; and of the connections,
/// each exchange of two of the 32 plugs of sixteen cylinders, in each of the reports for each of three rows.
const MOST: Done = Done {
    reports: 1 + 6 + 4,
    networks: 100_000,
    teeth: 60_000_000,
    connections: 3 * 11 * (32 * 31 / 2 + 32),
};

#[test]
fn no_plan_that_is_climbed_to_makes_the_core_do_more_than_it_may() {
    let mut random = Random::of(1, 0);
    let mut climbed = 0;
    for (name, plan) in beginnings() {
        let Some((_, tries)) = TRIED.iter().find(|it| it.0 == name) else { continue };
        let done = |plan: &plan::Plan| counting(|| report(plan)).1;
        let (costliest, _) = climb(plan, *tries, &mut random, |plan| nanoseconds(&done(plan)));
        let done = done(&costliest);
        let is_within = done.reports <= MOST.reports
            && done.networks <= MOST.networks
            && done.teeth <= MOST.teeth
            && done.connections <= MOST.connections;
        assert!(is_within, "{name}: {done:?} for {}", plan::write(&costliest));
        climbed += 1;
    }
    assert_eq!(climbed, TRIED.len(), "each kind is one that the climb begins with");
}
