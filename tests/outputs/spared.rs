//! What is spared: coils that a relay cuts as the engine stands, and lamps on a leak.
//!
//! Source: beside each test.

use quietpin_core::{
    fields::relays,
    finding::Severity,
    plan::{Plan, parse},
    report::report,
};

/// A coil that is held on burns behind its fuse, unless a relay cuts it as the engine stands.
#[test]
fn a_relay_that_cuts_the_coils_at_rest_is_said_to_save_them() {
    let mut plan = quietpin_core::demo();
    let severity = |plan: &Plan| {
        let report = report(plan);
        let found = report.findings.iter().find(|it| it.message.code == "coils.fuse-bears-held");
        found.map(|it| it.severity)
    };
    let why = |plan: &Plan| {
        let answers = report(plan).sections.into_iter().flat_map(|it| it.answers);
        let feed = answers.into_iter().find(|it| it.subject == "coils.feed");
        feed.and_then(|it| it.why.as_ref().map(|it| it.text.clone())).unwrap_or_default()
    };
    assert_eq!(severity(&plan), None, "the relay is switched at a speed");
    assert!(why(&plan).contains("the relay saves a coil that stays on"), "{}", why(&plan));
    plan.put(relays::SWITCHED_BY.at(0), "otherwise");
    assert_eq!(severity(&plan), None, "nothing holds one on");
    assert!(why(&plan).contains("would keep a coil on"), "{}", why(&plan));
}

/// By hand: 12 V less the diode's 2 V over 1 Mohm and 680 ohm are 10 uA, over 4.7 kohm and 680 ohm 1.9 mA.
#[test]
fn a_leak_of_microamperes_lights_no_lamp_and_a_pull_up_of_kilohms_does() {
    let codes = |pull_up: &str, leakage: &str| -> Vec<_> {
        let plan = parse(&format!(
            r#"{{"quietpin": 2,
                "outputs": [{{"name": "D1", "stage": "open-drain", "pull_down": "{pull_up}", "leakage": "{leakage}"}}],
                "loads": [{{"name": "lamp", "output": "D1", "far_end": "ignition", "kind": "led", "unasked": "harmless"}}]}}"#
        ))
        .expect("a plan");
        let report = report(&plan);
        report
            .findings
            .iter()
            .filter(|it| it.severity < Severity::Note)
            .map(|it| it.message.code)
            .collect()
    };
    assert_eq!(codes("", "10 uA"), [""; 0]);
    assert!(codes("4.7k", "").contains(&"outputs.live-at-rest"), "{:?}", codes("4.7k", ""));
}
