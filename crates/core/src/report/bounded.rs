//! What is too much is not begun, whatever is typed; it is said, and never good.

use super::*;
use crate::questions::{cranking, outputs};
use crate::schema::Part;

fn typed(mut plan: Plan, fields: &[(&str, &str)]) -> Plan {
    for (path, text) in fields {
        assert!(plan.set(path, text), "{path} is no place in the plan");
    }
    plan
}

/// A single whose start is as long as it can be, with so many further relays.
fn start(relays: usize, fields: &[(&str, &str)]) -> Plan {
    let mut plan = Plan::default();
    plan.set_count(Part::Relays, 1 + relays);
    for at in 1..=relays {
        plan.set(&format!("relays.{at}.purpose"), "pump");
        plan.set(&format!("relays.{at}.relay_on_at"), "100 rpm");
    }
    let basis = [
        ("engine.cylinders", "1"),
        ("engine.order", "1"),
        ("cranking.speed", "900 to 1000 rpm"),
        ("relays.0.purpose", "coils"),
        ("relays.0.relay_on_at", "100 rpm"),
        ("wheels.crank_teeth", "360"),
        ("cranking.run_up", "0 to 5000 ms"),
    ];
    typed(typed(plan, &basis), fields)
}

/// So many half-bridges with motors between them.
fn chain(joined: usize, fields: &[(&str, &str)]) -> Plan {
    let mut plan = Plan::default();
    plan.set_count(Part::Outputs, joined);
    plan.set_count(Part::Loads, joined - 1);
    for at in 0..joined {
        plan.set(&format!("outputs.{at}.name"), &format!("HB{at}"));
        plan.set(&format!("outputs.{at}.stage"), "half-bridge");
        for (field, text) in fields {
            plan.set(&format!("outputs.{at}.{field}"), text);
        }
        plan.set(&format!("loads.{at}.output"), &format!("HB{at}"));
        plan.set(&format!("loads.{at}.kind"), "motor");
        plan.set(&format!("loads.{at}.far_end"), "output");
        plan.set(&format!("loads.{at}.far_output"), &format!("HB{}", at + 1));
    }
    plan
}

const SPREAD: &[(&str, &str)] =
    &[("pull_up", "5 to 20 kohm"), ("leakage", "0 to 1 mA"), ("on_resistance", "0.05 to 0.2 ohm")];

fn codes(report: &Report) -> Vec<&'static str> {
    report.findings.iter().map(|finding| finding.message.code).collect()
}

/// The tones of the answers about a part of the plan.
fn tones(report: &Report, part: &str) -> Vec<Tone> {
    let answers = report.sections.iter().flat_map(|section| &section.answers);
    let about = answers.filter(|answer| answer.subject.starts_with(part));
    about.map(|answer| answer.verdict.tone).collect()
}

/// Plans at the limits of the fields that cost most.
fn at_the_limits() -> Vec<Plan> {
    let most = [
        ("cranking.cold_speed", "1000 rpm"),
        ("cranking.weak_speed", "1000 rpm"),
        ("cranking.confirmation", "20"),
        ("cranking.dip", "0 to 95 %"),
    ];
    let stop = [("cranking.idle", "5000 rpm"), ("cranking.run_down", "50 to 20000 ms")];
    let edges = [("cranking.averaging", "360"), ("cranking.confirmation", "20")];
    vec![
        start(0, &most),
        start(64, &most),
        start(64, &[&most[..], &stop, &edges].concat()),
        start(8, &[("cranking.run_up", "0 ms")]),
        start(
            64,
            &[&stop[..], &[("cranking.run_up", "0 ms"), ("wheels.crank_teeth", "60")]].concat(),
        ),
        chain(3, SPREAD),
        chain(12, SPREAD),
        chain(64, SPREAD),
    ]
}

#[test]
fn at_the_limits_of_the_fields_no_more_is_spent_than_there_is() {
    for plan in at_the_limits() {
        let mut memory = Memory::detailed();
        report_after(&mut memory, &plan);
        let (cranking, outputs) = (memory.cranking.spent(), memory.outputs.spent());
        assert!(cranking <= cranking::MOST, "{cranking} steps for {plan:?}");
        assert!(outputs <= outputs::MOST, "{outputs} steps for {plan:?}");
    }
}

#[test]
fn usual_plans_spend_little_of_it() {
    let relays = |count: usize| {
        let usual = [("engine.cylinders", "6"), ("cranking.speed", "200 rpm")];
        let plan = start(
            count,
            &[&usual[..], &[("wheels.crank_teeth", "60"), ("cranking.run_up", "")]].concat(),
        );
        typed(plan, &[("engine.order", "1-5-3-6-2-4")])
    };
    let demo = crate::plan::parse(include_str!("../demo.json")).expect("the demo can be read");
    for plan in [demo, relays(4), chain(2, &[]), chain(4, &[("on_level", "battery")])] {
        let mut memory = Memory::detailed();
        report_after(&mut memory, &plan);
        let (cranking, outputs) = (memory.cranking.spent(), memory.outputs.spent());
        assert!(
            10 * cranking <= cranking::MOST && 3 * outputs <= outputs::MOST,
            "{cranking}, {outputs}"
        );
    }
}

/// Deep dips, and a release close below the threshold: each relay opens at every dip of a start that takes as long as it may.
const CHATTERS: &[(&str, &str)] = &[
    ("engine.cylinders", "16"),
    ("engine.order", "1-2-3-4-5-6-7-8-9-10-11-12-13-14-15-16"),
    ("cranking.speed", "1000 rpm"),
    ("cranking.cold_speed", "1000 rpm"),
    ("cranking.weak_speed", "1000 rpm"),
    ("cranking.run_up", "4990 to 5000 ms"),
    ("cranking.dip", "90 to 95 %"),
];

/// So many relays that open again and again.
fn chattering(relays: usize) -> Plan {
    let mut plan = start(relays, CHATTERS);
    for at in 0..=relays {
        plan.set(&format!("relays.{at}.relay_on_at"), "300 rpm");
        plan.set(&format!("relays.{at}.relay_off_below"), "299 rpm");
    }
    plan
}

#[test]
fn a_start_that_takes_as_long_as_it_may_is_looked_at_whole() {
    for plan in [start(0, CHATTERS), start(15, &[("cranking.confirmation", "20")]), chattering(0)] {
        let codes = codes(&report(&plan));
        assert!(!codes.contains(&"cranking.unsearched"), "{plan:?}");
    }
}

#[test]
fn relays_that_are_too_much_together_are_left_open_with_all_that_needs_no_search() {
    let found = report(&chattering(63));
    let unsearched = codes(&found).iter().filter(|it| **it == "cranking.unsearched").count();
    assert!(unsearched > 0, "{:?}", codes(&found));
    let open = tones(&found, "relays").iter().filter(|tone| **tone == Tone::Open).count();
    assert!(open > 0 && open <= unsearched, "{open} of {unsearched}");
    // wrong whatever a search would find
    let never = typed(chattering(63), &[("relays.63.relay_on_at", "4000 rpm")]);
    let found = report(&never);
    assert_eq!(tones(&found, "relays.63"), [Tone::Bad]);
}

#[test]
fn loads_that_hang_together_too_much_are_left_open_and_the_others_answered() {
    let mut plan = chain(12, SPREAD);
    plan.add(Part::Outputs);
    plan.add(Part::Loads);
    let plan = typed(
        plan,
        &[
            ("outputs.12.name", "LS1"),
            ("outputs.12.stage", "open-drain"),
            ("outputs.12.current_limit", "2 A"),
            ("loads.11.output", "LS1"),
            ("loads.11.far_end", "ignition"),
            ("loads.11.suppression", "diode"),
        ],
    );
    let found = report(&plan);
    assert_eq!(tones(&found, "loads.11"), [Tone::Good], "it hangs on its own");
    let joined: Vec<_> = tones(&found, "loads").into_iter().take(11).collect();
    assert_eq!(joined, [Tone::Open; 11]);
    let too_much: Vec<_> =
        found.findings.iter().filter(|it| it.message.code == "outputs.too-much-together").collect();
    assert_eq!(too_much.len(), 11, "each is said");
    assert!(too_much.iter().all(|it| it.severity == Severity::Doubt && it.remedies.len() == 1));
    // the offer holds: numbers in place of ranges
    let mut exact = plan;
    for at in 0..12 {
        for (field, text) in
            [("pull_up", "10 kohm"), ("leakage", "0.5 mA"), ("on_resistance", "0.1")]
        {
            exact.set(&format!("outputs.{at}.{field}"), text);
        }
        exact.set(&format!("loads.{at}.resistance"), "2 ohm");
        exact.set(&format!("loads.{at}.inductance"), "1 mH");
    }
    let exact = typed(exact, &[("loads.11.resistance", "80"), ("loads.11.inductance", "300")]);
    assert!(!tones(&report(&exact), "loads.0").contains(&Tone::Open), "it is solved");
}

#[test]
fn what_is_remembered_changes_no_report_where_not_all_is_searched() {
    let (mut plan, mut memory) = (chain(10, SPREAD), Memory::detailed());
    let start = start(1, &[("wheels.crank_teeth", "60"), ("cranking.run_up", "")]);
    for part in [Part::Engine, Part::Cranking, Part::Relays] {
        plan.take(part, &start);
    }
    let check = |memory: &mut Memory, plan: &Plan, after: &str| {
        assert_eq!(report_after(memory, plan), report(plan), "after {after}");
    };
    check(&mut memory, &plan, "nothing");
    let edits = [
        ("loads.0.unasked", "dangerous"),
        // two apart from the others, and together again
        ("loads.1.far_end", "ground"),
        ("loads.1.far_end", "output"),
        ("cranking.run_up", "5 s"),
        ("cranking.averaging", "360"),
        ("cranking.confirmation", "20"),
        ("relays.0.relay_on_at", "150"),
        ("cranking.run_up", "0.3 s"),
        ("loads.3.resistance", "2 ohm"),
    ];
    for (path, text) in edits {
        assert!(plan.set(path, text), "{path} is no place in the plan");
        check(&mut memory, &plan, path);
    }
    // more answers leave less for each
    for more in 2..5 {
        plan.add(Part::Relays);
        plan.set(&format!("relays.{more}.purpose"), "pump");
        plan.set(&format!("relays.{more}.relay_on_at"), "100");
        plan.add(Part::Loads);
        check(&mut memory, &plan, "another relay and another load");
    }
    plan.remove(Part::Loads, 0);
    plan.remove(Part::Relays, 1);
    check(&mut memory, &plan, "one less of each");
}

/// What the demo takes, its first cures tried: counted, since a time hangs on the machine.
#[test]
fn the_demo_solves_no_more_networks_than_it_needs() {
    let demo = include_str!("../../../../tests/plans/demo.json");
    let plan = crate::plan::parse(demo).expect("a plan");
    let (_, work) = crate::circuit::work::work_for(|| report(&plan));
    // a third of them to try its loads on other outputs
    assert!(work.networks <= 850, "{work:?}");
    assert!(work.layouts <= 300, "{work:?}");
}
