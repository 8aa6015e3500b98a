//! A report that remembers the one before says the same as one that starts afresh.

use quietpin_core::{
    plan::{Plan, parse},
    report::{Memory, report, report_after},
    schema::{Part, Place},
};

fn example(name: &str) -> Plan {
    let path = format!("{}/plans/outputs-{name}.json", env!("CARGO_MANIFEST_DIR"));
    parse(&std::fs::read_to_string(path).expect("the file")).expect("a plan")
}

/// Every place of a list's fields, with the same place of the next entry: what stands there is typed here.
fn edits(plan: &Plan) -> Vec<(Place, Place)> {
    let of = |list: Part| {
        let count = plan.count(list);
        list.places().flat_map(move |place| {
            (0..count).map(move |number| (place.at(number), place.at((number + 1) % count)))
        })
    };
    of(Part::Outputs).chain(of(Part::Loads)).collect()
}

#[track_caller]
fn check(name: &str) {
    let mut plan = example(name);
    let mut memory = Memory::detailed();
    // many fields are blank in one entry and the next: a plan that has just been answered afresh is not answered so again
    let before = (plan.clone(), report_after(&mut memory, &plan));
    assert!(before.1 == report(&plan), "{name} as it is");
    let mut last = before.clone();
    for (place, next) in edits(&plan) {
        let (old, new) = (plan.text(place).to_owned(), plan.text(next).to_owned());
        let path = place.path();
        for text in [new.as_str(), "", old.as_str()] {
            assert!(plan.put(place, text), "{path} is in the plan");
            let remembered = report_after(&mut memory, &plan);
            if plan != before.0 && plan != last.0 {
                last = (plan.clone(), report(&plan));
            }
            let afresh = if plan == before.0 { &before.1 } else { &last.1 };
            assert!(remembered == *afresh, "{name}: {path} is {text:?}");
        }
    }
}

#[test]
fn after_any_edit_where_a_load_never_closes() {
    check("never");
}

#[test]
fn after_any_edit_where_a_level_is_unknown() {
    check("level-unknown");
}

#[test]
fn after_any_edit_where_milliamperes_decide() {
    check("milliamperes");
}

#[test]
fn after_any_edit_where_loads_are_switched() {
    check("switching");
}

#[test]
fn after_an_entry_is_taken_out() {
    let plan = example("pairs");
    for at in 0..plan.count(Part::Outputs).min(plan.count(Part::Loads)) {
        let mut memory = Memory::detailed();
        report_after(&mut memory, &plan);
        let mut changed = plan.clone();
        changed.remove(Part::Outputs, at);
        assert!(report_after(&mut memory, &changed) == report(&changed), "without output {at}");
        changed.remove(Part::Loads, at);
        assert!(report_after(&mut memory, &changed) == report(&changed), "without load {at}");
        assert!(report_after(&mut memory, &plan) == report(&plan), "with both again");
    }
}

#[test]
fn after_an_edit_of_what_all_stand_in() {
    let mut plan = example("shared");
    let mut memory = Memory::detailed();
    for (place, text) in [
        ("battery.charging", "15.5 V"),
        ("controller.supply_off", "20 ohm"),
        ("switched_feeds.off_resistance", "20 ohm"),
        ("temperatures.hot", "60 C"),
    ] {
        report_after(&mut memory, &plan);
        assert!(plan.set(place, text), "{place} is in the plan");
        assert!(report_after(&mut memory, &plan) == report(&plan), "{place}");
    }
}
