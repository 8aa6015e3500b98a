use crate::{
    fields::engine,
    plan::Plan,
    read::{self, Reader, State},
};

fn plan(cylinders: &str, order: &str) -> Plan {
    let mut plan = Plan::default();
    plan.put(engine::CYLINDERS, cylinders);
    plan.put(engine::ORDER, order);
    plan
}

fn odd(order: &str, angles: &str) -> Plan {
    let mut plan = plan("", order);
    plan.put(engine::SPACING, "angles");
    plan.put(engine::ANGLES, angles);
    plan
}

#[track_caller]
fn check_order(plan: &Plan, expected: &[u32]) {
    let mut reader = Reader::new(plan);
    let engine = read::engine(&mut reader);
    let (_, findings) = reader.into_parts();
    assert_eq!(engine.map(|it| it.order()).as_deref(), Some(expected), "{findings:?}");
    assert!(findings.is_empty(), "{findings:?}");
}

#[track_caller]
fn check_found(plan: &Plan, path: &str, code: &str) {
    let mut reader = Reader::new(plan);
    let engine = read::engine(&mut reader);
    let (fields, findings) = reader.into_parts();
    assert_eq!(engine.is_some(), path == "engine.banks", "banks alone leave an engine");
    let found: Vec<_> = findings.iter().map(|it| (it.subject.as_str(), it.message.code)).collect();
    assert_eq!(found, [(path, code)], "{findings:?}");
    assert!(!findings[0].message.text.contains('{'), "a gap is left: {}", findings[0].message.text);
    assert_eq!(fields[path].state, State::Unreadable, "{path}");
}

#[test]
fn orders_are_read_as_people_write_them() {
    let six = &[1, 5, 3, 6, 2, 4];
    for order in
        ["1-5-3-6-2-4", "1, 5, 3, 6, 2, 4", "1,5,3,6,2,4", "1 5 3 6 2 4", "153624", "1>5>3>6>2>4"]
    {
        check_order(&plan("6", order), six);
        check_order(&plan("", order), six);
    }
    let mut two = plan("2", "");
    two.put(engine::SPACING, "even");
    check_order(&two, &[1, 2]);
    check_order(&odd("1 2", "0, 270"), &[1, 2]);
}

#[test]
fn angles_typed_without_their_choice_are_used() {
    let mut plan = odd("1-2", "0 270");
    plan.put(engine::SPACING, "");
    let mut reader = Reader::new(&plan);
    let engine = read::engine(&mut reader).expect("an engine");
    assert!(!engine.is_even(), "{engine:?}");
    assert_eq!(reader.into_parts().0["engine.spacing"].state, State::Assumed, "and said");
}

#[test]
fn each_mistake_is_named_at_its_field() {
    check_found(&plan("0", "1-3-4-2"), "engine.cylinders", "field.too-small");
    check_found(&plan("17", "1-3-4-2"), "engine.cylinders", "field.too-large");
    check_found(&plan("-4", "1-3-4-2"), "engine.cylinders", "field.not-whole");
    check_found(&plan("four", "1-3-4-2"), "engine.cylinders", "field.not-whole");
    check_found(&plan("4", "1-3-4-3"), "engine.order", "engine.order-twice");
    check_found(&plan("4", "1-3-4"), "engine.order", "engine.order-length");
    check_found(&plan("4", "1-3-4-2-2"), "engine.order", "engine.order-length");
    check_found(&plan("4", "1-3-5-2"), "engine.order", "engine.order-stray");
    check_found(&plan("4", "1-3-x-2"), "engine.order", "engine.order-unreadable");
    check_found(&plan("4", "1-3-2.5-2"), "engine.order", "engine.order-unreadable");
    check_found(&plan("4", "1e300"), "engine.order", "engine.order-unreadable");
    check_found(&plan("4", "NaN"), "engine.order", "engine.order-unreadable");
    check_found(&plan("4", "--"), "engine.order", "engine.order-unreadable");
    let seventeen = "1-2-3-4-5-6-7-8-9-10-11-12-13-14-15-16-17";
    check_found(&plan("", seventeen), "engine.order", "engine.cylinders-many");
}

#[test]
fn each_mistake_in_the_angles_is_named() {
    let order = "1-2-3-4-5-6";
    let found = |angles, code| check_found(&odd(order, angles), "engine.angles", code);
    found("0 90 240 330 480", "engine.angles-count");
    found("0 90 240 330 480 720", "engine.angles-beyond");
    found("0 90 330 240 480 570", "engine.angles-falling");
    found("10 90 240 330 480 570", "engine.angles-first");
    found("0 90 240 x 480 570", "engine.angles-unreadable");
    found("90 150 90 150 90 150", "engine.angles-are-intervals");
}

#[test]
fn order_and_angles_are_both_named_at_once() {
    let plan = odd("1-2-2", "0 300 200");
    let mut reader = Reader::new(&plan);
    assert!(read::engine(&mut reader).is_none(), "no engine");
    let codes: Vec<_> = reader.into_parts().1.iter().map(|it| it.message.code).collect();
    assert_eq!(codes, ["engine.order-twice", "engine.angles-falling"]);
}

#[test]
fn banks_that_do_not_fit_leave_the_engine() {
    let with = |banks: &str| {
        let mut plan = plan("4", "1-3-2-4");
        plan.put(engine::BANKS, banks);
        plan
    };
    check_order(&with("1 2 / 3 4"), &[1, 3, 2, 4]);
    check_found(&with("1 2 / 3"), "engine.banks", "engine.banks-missing");
    check_found(&with("1 2 / 2 4"), "engine.banks", "engine.banks-stray");
    check_found(&with("left / right"), "engine.banks", "engine.banks-unreadable");
    check_found(&with(";"), "engine.banks", "engine.banks-unreadable");
}

#[test]
fn what_deserves_a_second_look_is_said() {
    let codes = |plan: &Plan| {
        let mut reader = Reader::new(plan);
        assert!(read::engine(&mut reader).is_some(), "still an engine");
        let (_, findings) = reader.into_parts();
        findings.iter().map(|it| it.message.code).collect::<Vec<_>>()
    };
    assert_eq!(codes(&odd("1-2-3", "0 240 240")), ["engine.fire-together"]);
    let mut six = plan("6", "1-2-3-4-5-6");
    six.put(engine::BANKS, "1 3 5 / 2 4 6");
    assert_eq!(codes(&six), ["engine.even-assumed"]);
    six.put(engine::SPACING, "even");
    assert!(codes(&six).is_empty(), "said to be even");
}
