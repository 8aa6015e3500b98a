//! Whatever is done one after the other: what is remembered, taken back, saved and opened again stays what it was.

use std::env;

use proptest::{collection, prelude::*, sample::Index};
use quietpin_core::{
    plan::{self, Plan},
    report::{Memory, report, report_after},
    schema::Part,
};

use super::typed;

/// How many sequences are tried where nothing else is said; `cargo xtask laws` tries thousands.
const USUAL: u32 = 100;

/// What is done to a plan.
#[derive(Clone, Debug)]
pub(super) enum Step {
    /// A text is typed at one of its places.
    Type(Index, String),
    /// A record is added to a list.
    Add(Part),
    /// One is taken off.
    Remove(Part, Index),
    /// One of the plans before comes back.
    GoBack(Index),
}

fn list() -> impl Strategy<Value = Part> {
    let lists: Vec<_> = Part::ALL.iter().copied().filter(|part| part.is_list()).collect();
    prop::sample::select(lists)
}

pub(super) fn step() -> impl Strategy<Value = Step> {
    prop_oneof![
        6 => (any::<Index>(), typed::short()).prop_map(|(at, text)| Step::Type(at, text)),
        1 => list().prop_map(Step::Add),
        1 => (list(), any::<Index>()).prop_map(|(list, at)| Step::Remove(list, at)),
        1 => any::<Index>().prop_map(Step::GoBack),
    ]
}

pub(super) fn taken(step: &Step, plan: &Plan, before: &[Plan]) -> Plan {
    let mut plan = plan.clone();
    match step {
        Step::Type(at, text) => {
            plan.put(*at.get(&typed::places(&plan)), text);
        }
        Step::Add(list) => {
            plan.add(*list);
        }
        Step::Remove(list, at) => {
            let count = plan.count(*list);
            if count > 0 {
                plan.remove(*list, at.index(count));
            }
        }
        Step::GoBack(at) => plan.clone_from(at.get(before)),
    }
    plan
}

fn sequences() -> u32 {
    env::var("QUIETPIN_SEQUENCES").ok().and_then(|text| text.parse().ok()).unwrap_or(USUAL)
}

proptest! {
    #![proptest_config(ProptestConfig {
        failure_persistence: None, max_shrink_iters: 256, ..ProptestConfig::with_cases(sequences())
    })]

    #[test]
    fn after_any_edits_what_is_remembered_and_what_is_kept_is_what_there_is(
        start in typed::plan(),
        steps in collection::vec(step(), 1..6),
    ) {
        let (mut memory, mut plans) = (Memory::detailed(), vec![start]);
        for (number, step) in steps.iter().enumerate() {
            let plan = taken(step, plans.last().expect("the start"), &plans);
            let remembered = report_after(&mut memory, &plan);
            prop_assert!(remembered == report(&plan), "after step {number}: {step:?}");
            let kept = plan::parse(&plan::write(&plan)).expect("what was kept is a plan");
            let mut there = plan.clone();
            there.quietpin = kept.quietpin;
            prop_assert!(kept == there, "after step {number}: {step:?}");
            plans.push(plan);
        }
    }
}
