//! What people may type, and what is said to it.

use proptest::prelude::*;
use quietpin_core::{plan::Plan, report::report, schema::Part};
use quietpin_tests::typed::check_refused;

use super::{answer, plan};

/// The finding at the field; the question is still answered.
#[track_caller]
fn check(path: &str, text: &str, finding: &str) {
    let plan = plan(&[(path, text)]);
    let report = report(&plan);
    check_refused(&plan, &report, path, finding);
    assert_eq!(answer(&report).subject, "pins", "{path}");
}

#[test]
fn what_is_none_of_a_group_or_a_choice_is_named() {
    check("outputs.0.group_limit", "5 V", "field.wrong-unit");
    check("outputs.0.group_limit", "0 A", "field.too-small");
    check("outputs.0.group_limit", "600 A", "field.too-large");
    check("outputs.0.group_limit", "much", "field.no-number");
    check("outputs.0.group_pulse", "two", "field.unknown-choice");
    check("loads.0.keeps", "perhaps", "field.unknown-choice");
}

fn of_pins(plan: &Plan) -> usize {
    let found = report(plan).findings;
    found.iter().filter(|it| it.message.code.starts_with("pins.")).count()
}

#[test]
fn blanks_alarm_nobody() {
    assert_eq!(of_pins(&Plan::default()), 0);
    for path in ["outputs.0.stage", "loads.0.far_end", "loads.0.kind", "loads.0.resistance"] {
        assert_eq!(of_pins(&plan(&[(path, "")])), 0, "{path}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..Default::default() })]

    #[test]
    fn no_text_stops_the_report(text in "\\PC{0,12}", at in 0_usize..64) {
        let places: Vec<_> = Part::Outputs.places().chain(Part::Loads.places()).collect();
        let place = places[at % places.len()].at(0);
        let mut plan = plan(&[]);
        plan.put(place, &text);
        prop_assert_eq!(answer(&report(&plan)).subject, "pins");
    }
}
