//! Parts of one kind are described once: outputs by the names of several, loads and relays by what they are like.

use quietpin_core::{
    fields::{loads, outputs, relays},
    plan::Plan,
    read::State,
    report::{Report, report},
    schema::{Part, Place},
};

/// Eight switches to ground with three loads, each output described by itself or all by one record.
fn eight(is_one_record: bool) -> Plan {
    let mut plan = Plan::default();
    let names: Vec<_> = (1..=8).map(|number| format!("D{number}")).collect();
    let described = if is_one_record { vec!["D1 to D8".to_owned()] } else { names };
    for name in &described {
        let at = plan.add(Part::Outputs);
        plan.put(outputs::NAME.at(at), name);
        plan.put(outputs::STAGE.at(at), "open-drain");
        plan.put(outputs::CURRENT_LIMIT.at(at), "2 A");
        plan.put(outputs::PULL_UP.at(at), "1k");
    }
    for (output, kind, far_end) in
        [("D3", "solenoid", "battery"), ("D8", "lamp", "ground"), ("d5", "led", "ignition")]
    {
        let at = plan.add(Part::Loads);
        plan.put(loads::NAME.at(at), &format!("part on {output}"));
        plan.put(loads::OUTPUT.at(at), output);
        plan.put(loads::KIND.at(at), kind);
        plan.put(loads::FAR_END.at(at), far_end);
    }
    plan
}

fn said(report: &Report) -> String {
    serde_json::to_string(&(&report.findings, &report.sections)).expect("a report can be written")
}

#[test]
fn a_record_that_names_eight_outputs_is_eight_outputs() {
    let (one, each) = (report(&eight(true)), report(&eight(false)));
    assert_eq!(said(&one), said(&each));
    assert!(
        !one.findings.is_empty(),
        "something is said of a lamp at ground on a switch to ground"
    );
}

#[test]
fn a_finding_about_one_of_several_outputs_leads_to_their_record() {
    let mut plan = eight(true);
    let bridge = plan.add(Part::Outputs);
    plan.put(outputs::NAME.at(bridge), "H1 to H4");
    plan.put(outputs::STAGE.at(bridge), "half-bridge");
    plan.put(loads::OUTPUT.at(0), "H3");
    let report = report(&plan);
    let path = outputs::ON_LEVEL.at(bridge).path();
    assert!(report.findings.iter().any(|it| it.subject == path), "{:?}", report.findings);
}

#[test]
fn a_name_that_two_records_have_is_told_and_more_outputs_than_are_read_are_told() {
    let mut plan = eight(true);
    let other = plan.add(Part::Outputs);
    plan.put(outputs::NAME.at(other), "C1, D7");
    let codes = |plan: &Plan| -> Vec<_> {
        report(plan).findings.iter().map(|it| (it.message.code, it.subject.clone())).collect()
    };
    let twice = ("outputs.output-named-twice", outputs::NAME.at(other).path());
    assert!(codes(&plan).contains(&twice), "{:?}", codes(&plan));
    plan.put(outputs::NAME.at(other), "C1 to C60");
    assert!(codes(&plan).contains(&("field.too-many", "outputs".to_owned())), "{:?}", codes(&plan));
}

/// Two valves, the second like the first; `typed` gives the second the texts of the first instead.
fn valves(is_typed: bool) -> Plan {
    let mut plan = eight(true);
    plan.set_count(Part::Loads, 0);
    let texts: [(Place, &str); 4] = [
        (loads::KIND.place(), "solenoid"),
        (loads::RESISTANCE.place(), "14 ohm"),
        (loads::SUPPRESSION.place(), "diode"),
        (loads::UNASKED.place(), "harmless"),
    ];
    for (name, output) in [("intake valve", "D1"), ("outlet valve", "D2")] {
        let at = plan.add(Part::Loads);
        plan.put(loads::NAME.at(at), name);
        plan.put(loads::OUTPUT.at(at), output);
        plan.put(loads::FAR_END.at(at), "ignition");
        if at == 0 || is_typed {
            for (place, text) in texts {
                plan.put(place.at(at), text);
            }
        } else {
            plan.put(loads::LIKE.at(at), "Intake valve");
        }
    }
    plan
}

#[test]
fn a_load_that_is_like_another_is_answered_as_if_it_were_typed() {
    let (like, typed) = (report(&valves(false)), report(&valves(true)));
    assert_eq!(said(&like), said(&typed));
    let standing = &like.fields[&loads::RESISTANCE.at(1).path()];
    assert_eq!(standing.state, State::Assumed, "nothing was typed there");
    assert_eq!(standing.basis.as_deref(), Some("as “intake valve”"));
}

#[test]
fn what_can_not_be_read_is_told_where_it_was_typed() {
    let mut plan = valves(false);
    plan.put(loads::RESISTANCE.at(0), "14 mH");
    let report = report(&plan);
    let told: Vec<_> = report
        .findings
        .iter()
        .filter(|it| it.message.code.starts_with("field."))
        .map(|it| it.subject.clone())
        .collect();
    assert_eq!(told, [loads::RESISTANCE.at(0).path()]);
    assert_eq!(report.fields[&loads::RESISTANCE.at(1).path()].problem, None);
}

#[test]
fn what_is_like_nothing_says_so_and_the_rest_is_answered() {
    let mut plan = valves(false);
    plan.put(loads::LIKE.at(1), "horn");
    let lost = report(&plan);
    let finding = |report: &Report, code| {
        report.findings.iter().any(|it| it.message.code == code && it.subject == "loads.1.like")
    };
    assert!(finding(&lost, "field.no-such-model"));
    assert!(lost.fields["loads.1.like"].problem.is_some(), "and at its field");
    plan.put(loads::LIKE.at(1), "outlet valve");
    assert!(finding(&report(&plan), "field.like-itself"));
}

#[test]
fn relays_of_one_kind_share_coil_and_contact() {
    let mut plan = valves(false);
    for (name, resistance, like) in [("pump relay", "70 ohm", ""), ("fan relay", "", "pump relay")]
    {
        let at = plan.add(Part::Relays);
        plan.put(relays::NAME.at(at), name);
        plan.put(relays::RESISTANCE.at(at), resistance);
        plan.put(relays::LIKE.at(at), like);
        plan.put(relays::OUTPUT.at(at), if at == 0 { "D4" } else { "D5" });
        plan.put(relays::FAR_END.at(at), "ignition");
    }
    let standing = &report(&plan).fields[&relays::RESISTANCE.at(1).path()];
    let read = standing.value.as_ref().map(|value| value.shown.as_str());
    assert_eq!((read, standing.basis.as_deref()), (Some("70 Ω"), Some("as “pump relay”")));
}
