//! Whether a fuse protects the wire and the contact behind it.
//!
//! Source: `tests/reference/wire_thinwall_current.csv`, a cable distributor's table of thin-wall cable in free air; ISO 8820-3
//! (110 % of a fuse's rating for 100 hours), from memory.

use quietpin_core::{
    fields::relays,
    finding::Severity,
    plan::{Plan, parse},
    quantity::{Area, Measure},
    report::report,
    tables::wires,
};
use quietpin_tests::{Checked, Worst, rows};

fn plan(fuse: &str, size: &str, rating: &str) -> Plan {
    let mut plan = parse(include_str!("../plans/feeds-fuse-over-wire.json")).expect("a plan");
    plan.put(relays::FUSE.at(1), fuse);
    plan.put(relays::LEAD_SIZE.at(1), size);
    plan.put(relays::RATING.at(1), rating);
    plan
}

/// What is said of the fan relay's fuse.
fn told(plan: &Plan) -> Option<(&'static str, Severity)> {
    let report = report(plan);
    let found = report.findings.iter().find(|it| it.subject == relays::FUSE.at(1).path());
    found.map(|it| (it.message.code, it.severity))
}

pub(crate) fn bears() -> Checked {
    let mut worst = Worst::default();
    for row in rows("wire_thinwall_current.csv") {
        let area: Area = Measure::from_base(row.number("nominal_mm2") * 1e-6);
        let (found, expected) = (wires::bears(area).base(), row.number("nominal_current_A"));
        worst.check(&row.place(), Some(found), expected, 1e-6);
    }
    let against = "a cable distributor's table of thin-wall cable, ISO 6722, in free air";
    worst.checked("feeds", "What a wire carries continuously", against, "A")
}

#[test]
fn a_wire_bears_what_the_published_table_says() {
    bears();
}

/// By hand: 110 % of 25 A is 27.5 A, of 30 A 33 A, of 40 A 44 A; 2.5 mm² bears 29 A.
#[test]
fn a_very_thin_wire_behind_a_big_fuse_is_a_danger() {
    assert_eq!(told(&plan("25 A", "2.5 mm2", "70 A")), None);
    let danger = Some(("feeds.fuse-over-wire", Severity::Danger));
    assert_eq!(told(&plan("40 A", "2.5 mm2", "70 A")), danger);
    let doubt = Some(("feeds.fuse-near-wire", Severity::Doubt));
    assert_eq!(told(&plan("30 A", "2.5 mm2", "70 A")), doubt, "33 A in a wire for 29 A");
    assert_eq!(told(&plan("60 A", "2.5 mm2", "30 A")), danger, "the fire before the contact");
    let mut unknown = plan("60 A", "", "");
    unknown.put(relays::LIKE.at(1), "");
    assert_eq!(told(&unknown), None, "nothing is said where nothing is known");
}

#[test]
fn a_fuse_larger_than_the_contact_is_a_fault() {
    assert_eq!(told(&plan("40 A", "10 mm2", "40 A")), None);
    let fault = Some(("feeds.fuse-over-contact", Severity::Fault));
    assert_eq!(told(&plan("40 A", "10 mm2", "30 A")), fault);
}

#[test]
fn the_cure_that_is_offered_leaves_nothing_to_say() {
    let plan = plan("60 A", "2.5 mm2", "20 A");
    let report = report(&plan);
    let found = report.findings.iter().find(|it| it.subject == relays::FUSE.at(1).path());
    let cure = &found.expect("it is found").remedies[0];
    assert!(cure.text.contains("20 A"), "the contact bears less than the wire: {}", cure.text);
    assert_eq!(told(&plan.edited(&cure.edits).expect("it has its place")), None);
}

/// No verdict on a feed is green beside its own fuse's Danger or Fault.
#[test]
fn the_verdict_on_the_injectors_feed_knows_of_its_wire_and_contact() {
    let code = |size: &str, fuse: &str| {
        let mut plan = quietpin_core::whole_car();
        plan.put(relays::LEAD_SIZE.at(2), size);
        plan.put(relays::FUSE.at(2), fuse);
        let report = report(&plan);
        let mut answers = report.sections.iter().flat_map(|section| &section.answers);
        answers
            .find(|it| it.subject == "injector_feed")
            .expect("it is answered")
            .verdict
            .message
            .code
    };
    assert_eq!(code("4 mm2", "30 A"), "injectors.feed-good");
    assert_eq!(code("0.5 mm2", "25 A"), "injectors.feed-fuse-big");
    assert_eq!(code("10 mm2", "40 A"), "injectors.feed-fuse-big");
}
