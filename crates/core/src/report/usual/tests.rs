//! What is told once, counted and named.

use super::*;
use crate::{
    demo,
    finding::{Moment, Severity},
    plan::Plan,
    report::report,
    whole_car,
};

fn typed(texts: &[(&str, &str)]) -> Plan {
    let mut plan = whole_car();
    for (path, text) in texts {
        assert!(plan.set(path, text), "{path} is no place");
    }
    plan
}

#[test]
fn a_plan_without_a_word_has_its_usual_report() {
    let usual = usual(&report(&Plan::default()));
    assert!(usual.facts.is_empty(), "nothing is wrong");
    assert!(usual.enter.is_empty() && usual.buy.is_empty() && usual.pins.is_empty());
    assert!(usual.questions.iter().all(|it| it.tone == Tone::Open));
}

#[test]
fn outputs_that_read_alike_stand_in_one_line() {
    let usual = usual(&report(&whole_car()));
    let lines: Vec<_> = usual.pins.iter().map(|it| it.about.join(", ")).collect();
    assert_eq!(lines, ["D1 to D12", "H1 to H6", "S1 to S4", "L1, L2"]);
}

#[test]
fn the_same_of_several_loads_is_told_once_and_each_is_named() {
    let usual = usual(&report(&typed(&[
        ("loads.0.suppression", "none"),
        ("outputs.0.clamp", ""),
        ("outputs.0.clamp_energy", ""),
        ("loads.1.suppression", "none"),
    ])));
    let named = |name: &str| {
        usual
            .facts
            .iter()
            .filter(|it| it.about == name || it.also.iter().any(|also| also == name))
            .count()
    };
    assert!(named("boost valve") >= 1 && named("canister valve") >= 1, "{:?}", usual.facts);
    let mut codes: Vec<_> = usual.facts.iter().map(|it| (it.code, it.severity)).collect();
    let all = codes.len();
    codes.sort_unstable();
    codes.dedup();
    assert_eq!(codes.len(), all, "each once: {codes:?}");
}

#[test]
fn what_is_grave_is_told_by_when_it_strikes() {
    let facts = usual(&report(&demo())).facts;
    let grave = facts.iter().filter(|it| it.severity <= Severity::Fault);
    let moments: Vec<_> = grave.map(|it| it.moment).collect();
    assert_eq!(moments, [Moment::KeyOn, Moment::Cranking, Moment::Running, Moment::Running]);
}

#[test]
fn a_cure_is_said_once() {
    let facts = usual(&report(&demo())).facts;
    // two crossed leads, one order to enter
    let again: Vec<_> = facts.iter().flat_map(|it| &it.cures).filter_map(|it| it.said_at).collect();
    assert_eq!(again, [1]);
}

#[test]
fn what_a_relay_takes_from_another_is_no_usual_value() {
    let assumed = usual(&report(&whole_car())).assumed;
    let pump = assumed.iter().find(|it| it.path == "relays.1.resistance");
    assert!(pump.is_some_and(|it| it.is_as_another), "it is like the coil relay");
    assert!(
        assumed.iter().all(|it| it.path != "loads.0.suppression_resistance"),
        "a diode is no resistor"
    );
}
