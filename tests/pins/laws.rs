//! What holds of every plan.

use proptest::prelude::*;
use quietpin_core::{
    plan::Plan,
    report::{Tone, report},
};
use quietpin_tests::typed;

use super::{answer, proposed};

/// An output: its stage, and what it carries.
type AnyOutput = (usize, f64);

/// A load: whether it goes to ground, its resistance, and whether it is planned on the output of the same number.
type AnyLoad = (bool, f64, bool);

fn drawn() -> impl Strategy<Value = (Vec<AnyOutput>, Vec<AnyLoad>)> {
    let output = (0_usize..3, prop::sample::select(vec![1.0, 3.0, 8.0]));
    let load = (any::<bool>(), prop::sample::select(vec![3.0, 8.0, 20.0, 60.0]), any::<bool>());
    (prop::collection::vec(output, 1..6), prop::collection::vec(load, 1..5))
}

fn plan_of((outputs, loads): &(Vec<AnyOutput>, Vec<AnyLoad>)) -> Plan {
    let mut typed: Vec<(String, String)> = Vec::new();
    let mut put = |path: String, text: &str| typed.push((path, text.to_owned()));
    for (at, (stage, limit)) in outputs.iter().enumerate() {
        let stage = ["open-drain", "high-side", "half-bridge"][*stage];
        put(format!("outputs.{at}.name"), &format!("P{at}"));
        put(format!("outputs.{at}.stage"), stage);
        put(format!("outputs.{at}.on_level"), "battery");
        put(format!("outputs.{at}.current_limit"), &format!("{limit} A"));
    }
    for (at, (is_grounded, ohm, is_planned)) in loads.iter().enumerate() {
        put(format!("loads.{at}.name"), &format!("load {at}"));
        put(format!("loads.{at}.kind"), "resistor");
        put(format!("loads.{at}.far_end"), if *is_grounded { "ground" } else { "ignition" });
        put(format!("loads.{at}.resistance"), &format!("{ohm} ohm"));
        if *is_planned && at < outputs.len() {
            put(format!("loads.{at}.output"), &format!("P{at}"));
        }
    }
    let typed: Vec<_> = typed.iter().map(|(path, text)| (path.as_str(), text.as_str())).collect();
    typed::planned(&typed, &[])
}

fn is_impossible(plan: &Plan) -> bool {
    let verdict = answer(&report(plan)).verdict.message.code;
    ["pins.too-few-outputs", "pins.none-suits"].contains(&verdict)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 32, failure_persistence: None, ..Default::default() })]

    /// What is proposed is right by the question of rest as well, and then nothing more is proposed.
    #[test]
    fn what_is_proposed_suits_and_is_the_last_word(drawn in drawn()) {
        let plan = plan_of(&drawn);
        let edits = proposed(&report(&plan));
        prop_assume!(!edits.is_empty());
        let mut done = plan;
        for (path, text) in &edits {
            prop_assert!(done.set(path, text), "{}", path);
        }
        let after = report(&done);
        prop_assert_eq!(answer(&after).verdict.tone, Tone::Good);
        let bad: Vec<_> = typed::answers(&after, "outputs")
            .into_iter()
            .filter(|it| it.verdict.tone == Tone::Bad)
            .map(|it| it.subject.clone())
            .collect();
        prop_assert_eq!(bad, Vec::<String>::new());
    }

    /// One output more is never one too many.
    #[test]
    fn another_output_makes_it_no_worse(drawn in drawn(), more in (0_usize..3, 1.0_f64..9.0)) {
        let (mut outputs, loads) = drawn;
        let before = is_impossible(&plan_of(&(outputs.clone(), loads.clone())));
        outputs.push(more);
        let after = is_impossible(&plan_of(&(outputs, loads)));
        prop_assert!(before || !after);
    }

    /// Of each set that is named there are fewer outputs that suit than loads: without any of its loads the others can be placed.
    #[test]
    fn what_is_named_competes_and_is_no_larger_than_it_must_be(drawn in drawn()) {
        let (outputs, mut loads) = drawn;
        for load in &mut loads {
            load.2 = false;
        }
        let plan = plan_of(&(outputs.clone(), loads.clone()));
        let found = report(&plan).findings;
        let of_pins = found.iter().find(|it| ["pins.too-few", "pins.too-few-more", "pins.no-output"].contains(&it.message.code));
        prop_assume!(of_pins.is_some());
        let text = of_pins.map(|it| it.message.text.clone()).unwrap_or_default();
        // what can be nowhere else is told after those that compete
        let text = text.split(" compete").next().unwrap_or_default().to_owned();
        let is_named = |at: &usize| text.to_lowercase().contains(&format!("load {at}"));
        let named: Vec<usize> = (0..loads.len()).filter(is_named).collect();
        let only = |of: &[usize]| {
            let kept = of.iter().filter_map(|at| loads.get(*at).copied()).collect();
            plan_of(&(outputs.clone(), kept))
        };
        prop_assert!(is_impossible(&only(&named)), "{}", text);
        for left_out in &named {
            let others: Vec<usize> = named.iter().copied().filter(|it| it != left_out).collect();
            prop_assert!(others.is_empty() || !is_impossible(&only(&others)), "{} without {}", text, left_out);
        }
    }
}
