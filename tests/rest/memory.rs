//! A report that remembers the one before says the same as one that starts afresh.

use quietpin_core::{
    fields,
    plan::{Plan, parse},
    report::{Memory, report, report_after},
};

fn example(name: &str) -> Plan {
    let path = format!("{}/plans/rest-{name}.json", env!("CARGO_MANIFEST_DIR"));
    parse(&std::fs::read_to_string(path).expect("the file")).expect("a plan")
}

/// Every place of a list's fields, with the same place of the next entry: what stands there is typed here.
fn edits(plan: &Plan) -> Vec<(String, String)> {
    let of = |list: &'static str, count: usize| {
        fields::of(list).flat_map(move |field| {
            let at = |number: usize| field.path.replace('#', &number.to_string());
            (0..count).map(move |number| (at(number), at((number + 1) % count)))
        })
    };
    of("outputs", plan.outputs.len()).chain(of("loads", plan.loads.len())).collect()
}

#[track_caller]
fn check(name: &str) {
    let mut plan = example(name);
    let mut memory = Memory::default();
    report_after(&mut memory, &plan);
    for (place, next) in edits(&plan) {
        let old = plan.get(&place).unwrap_or_default().to_owned();
        let new = plan.get(&next).unwrap_or_default().to_owned();
        for text in [new.as_str(), "", old.as_str()] {
            assert!(plan.set(&place, text), "{place} is in the plan");
            let remembered = report_after(&mut memory, &plan);
            assert!(remembered == report(&plan), "{name}: {place} is {text:?}");
        }
    }
}

#[test]
fn after_any_edit_of_an_output_or_a_load() {
    check("never");
    check("level-unknown");
    check("milliamperes");
    check("switching");
}

#[test]
fn after_an_entry_is_taken_out() {
    let plan = example("pairs");
    for at in 0..plan.outputs.len().min(plan.loads.len()) {
        let mut memory = Memory::default();
        report_after(&mut memory, &plan);
        let mut changed = plan.clone();
        changed.outputs.remove(at);
        assert!(report_after(&mut memory, &changed) == report(&changed), "without output {at}");
        changed.loads.remove(at);
        assert!(report_after(&mut memory, &changed) == report(&changed), "without load {at}");
        assert!(report_after(&mut memory, &plan) == report(&plan), "with both again");
    }
}

#[test]
fn after_an_edit_of_what_all_stand_in() {
    let mut plan = example("shared");
    let mut memory = Memory::default();
    for (place, text) in [
        ("conditions.charging", "15.5 V"),
        ("conditions.dead_supply", "20 ohm"),
        ("conditions.dead_feed", "20 ohm"),
        ("conditions.hot", "60 C"),
    ] {
        report_after(&mut memory, &plan);
        assert!(plan.set(place, text), "{place} is in the plan");
        assert!(report_after(&mut memory, &plan) == report(&plan), "{place}");
    }
}
