//! What is offered as a cure while it is not known what counts as on, and for a load that can hurt someone.

use proptest::prelude::*;
use quietpin_core::{
    budget::Budget,
    fields::outputs,
    output::{
        Alternative, Change, FarEnd, OnLevel, Output, Prefer, Spare, Stage, Suppression, Wiring,
        alternatives, judge,
    },
    plan::{Plan, parse},
    quantity::{Band, volts},
    report::{Answer, report},
    schema::Part,
};

use super::{
    common::solved,
    laws::{any_wiring, apply, car, moved, turned},
};

/// The plan of a valve that lets a gas into the engine, on a half-bridge of which the setting is not known.
fn gas_valve() -> Plan {
    let path = format!("{}/plans/outputs-gas-valve.json", env!("CARGO_MANIFEST_DIR"));
    parse(&std::fs::read_to_string(path).expect("the file")).expect("a plan")
}

fn answer(plan: &Plan) -> Answer {
    let report = report(plan);
    let section = report.sections.iter().find(|it| it.id == "outputs").expect("the section");
    (*section.answers[0]).clone()
}

fn set(plan: &mut Plan, path: &str, text: &str) {
    assert!(plan.set(path, text), "{path} is a field");
}

/// With battery as on and the diode fitted the valve has 14.7 V at rest: a diode cures nothing of that.
#[test]
fn a_diode_is_no_cure_for_a_valve_that_is_live_at_one_of_the_levels() {
    let mut plan = gas_valve();
    let texts: Vec<_> = answer(&plan).to_do.iter().map(|it| it.text.clone()).collect();
    assert!(texts.iter().all(|it| !it.contains("diode")), "{texts:#?}");
    assert!(texts.iter().any(|it| it.starts_with("Make sure that ground")), "{texts:#?}");
    let other = "If battery counts as on, move its other end to ground";
    assert!(texts.iter().any(|it| it.starts_with(other)), "what cures the other: {texts:#?}");
    set(&mut plan, "outputs.0.on_level", "battery");
    set(&mut plan, "loads.0.suppression", "diode");
    let live = answer(&plan);
    assert_eq!(live.verdict.message.code, "outputs.no-live-at-rest", "{:?}", live.why);
    assert!(live.why.as_ref().is_some_and(|it| it.text.contains("14.")), "{:?}", live.why);
}

#[test]
fn what_a_cure_needs_as_on_is_measured_first() {
    let mut plan = gas_valve();
    // to the controller's 5 V it is live with either level, for one and the same reason
    set(&mut plan, "loads.0.far_end", "5v");
    let answer = answer(&plan);
    assert_eq!(answer.to_do[0].code, "outputs.do-measure", "{:#?}", answer.to_do);
    let needs = answer.to_do.iter().filter(|it| it.code == "outputs.do-if-level").count();
    assert!(needs >= 2, "one for each level: {:#?}", answer.to_do);
}

/// The codes of the cures, in order.
fn cures(plan: &Plan) -> Vec<&'static str> {
    let codes = answer(plan).to_do.into_iter().map(|it| it.code);
    codes.filter(|it| !it.starts_with("outputs.do-prove-")).collect()
}

#[test]
fn for_a_load_that_can_hurt_a_wire_comes_before_a_setting() {
    let mut plan = gas_valve();
    set(&mut plan, "outputs.0.on_level", "battery");
    let dangerous = cures(&plan);
    assert_eq!(
        (dangerous[0], dangerous.last()),
        ("outputs.do-end", Some(&"outputs.do-level")),
        "wires"
    );
    set(&mut plan, "loads.0.unasked", "costly");
    assert_eq!(cures(&plan)[0], "outputs.do-level", "least work");
}

#[test]
fn for_a_load_that_can_hurt_an_output_that_no_setting_turns_round_comes_first() {
    let mut plan = gas_valve();
    let spare = plan.add(Part::Outputs);
    plan.put(outputs::NAME.at(spare), "B2");
    plan.put(outputs::STAGE.at(spare), "open-drain");
    plan.put(outputs::CLAMP.at(spare), "45 V");
    plan.put(outputs::CLAMP_ENERGY.at(spare), "5 J");
    for level in ["", "battery"] {
        set(&mut plan, "outputs.0.on_level", level);
        let found = cures(&plan);
        let first = found.iter().find(|it| **it != "outputs.do-measure");
        assert_eq!(first, Some(&"outputs.do-spare"), "on {level:?}: {found:?}");
    }
}

#[test]
fn a_load_that_can_hurt_and_rests_by_a_setting_has_a_caution() {
    let mut plan = gas_valve();
    let cautions =
        |plan: &Plan| -> Vec<_> { answer(plan).cautions.iter().map(|it| it.code).collect() };
    set(&mut plan, "outputs.0.on_level", "ground");
    assert!(cautions(&plan).contains(&"outputs.caution-setting"), "a half-bridge");
    set(&mut plan, "outputs.0.stage", "open-drain");
    assert!(!cautions(&plan).contains(&"outputs.caution-setting"), "nothing is set there");
}

/// The same wiring with another level as on; nothing is done to its wires.
fn set_to(wiring: &Wiring, level: OnLevel) -> Wiring {
    let mut wiring = Wiring { level, ..wiring.clone() };
    for load in &mut wiring.loads {
        let Some(partner) = &mut load.partner else { continue };
        let is_flipped = partner.level != level;
        partner.level = level;
        if let Suppression::Diode { is_right_way } = &mut load.suppression {
            *is_right_way = *is_right_way != is_flipped;
        }
    }
    wiring
}

prop_compose! {
    /// An output that drives both ways, of which it is not known what counts as on.
    fn of_unknown_level()(
        wiring in any_wiring(),
        stage in prop::sample::select(vec![Stage::HalfBridge, Stage::Logic]),
    ) -> Wiring {
        let mut wiring = wiring;
        let on_resistance = Output::plain(stage).on_resistance;
        wiring.output = Output { stage, on_level: None, on_resistance, ..wiring.output };
        wiring
    }
}

/// A free output that catches what its load kicks back.
fn spare() -> Output {
    Output { clamp: Some(Band::exact(volts(45.0))), ..Output::plain(Stage::OpenDrain) }
}

fn offered(wiring: &Wiring, prefer: Prefer) -> Vec<Alternative> {
    let [ground, battery] = OnLevel::BOTH.map(|level| set_to(wiring, level));
    let spares = [Spare { number: 7, output: spare() }];
    alternatives(&[&ground, &battery], 0, &spares, &car(), prefer, (&Budget::unlimited(), &[]))
}

/// What an alternative makes of the wiring, if that level counts as on; nothing where the load stays between two
/// outputs and one of them is another.
fn carried_out(wiring: &Wiring, change: Change, level: OnLevel) -> Option<Wiring> {
    let load = &wiring.loads[0];
    match change {
        Change::Spare { .. } | Change::SpareWithDiode { .. } | Change::Stage(..)
            if load.far_end == FarEnd::Output =>
        {
            None
        }
        Change::Spare { far_end, .. } => {
            Some(Wiring::alone(spare(), OnLevel::Ground, vec![moved(load, far_end)]))
        }
        Change::SpareWithDiode { far_end, .. } => {
            let suppression = Suppression::Diode { is_right_way: true };
            let load = quietpin_core::output::Load { suppression, ..moved(load, far_end) };
            Some(Wiring::alone(spare(), OnLevel::Ground, vec![load]))
        }
        Change::Stage(..) => apply(wiring, change),
        // whatever is fitted stays as it was fitted
        _ => Some(set_to(&apply(wiring, change)?, level)),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(300) })]

    #[test]
    fn what_is_offered_while_the_level_is_unknown_solves_clean_at_each_level_that_it_allows(
        wiring in of_unknown_level(),
        prefer in prop::sample::select(vec![Prefer::LeastWork, Prefer::Wires]),
    ) {
        for it in offered(&wiring, prefer) {
            let needed = if let Change::Level(level) = it.change { Some(level) } else { it.level };
            for level in needed.map_or(OnLevel::BOTH.to_vec(), |only| vec![only]) {
                // what is said for one level is done with that level in view
                let before = set_to(&wiring, needed.unwrap_or(OnLevel::Ground));
                let Some(now) = carried_out(&before, it.change, level) else { continue };
                let now = turned(now, it.is_turned);
                let judgement = judge(&solved(&now, &car()), |_| true);
                prop_assert!(judgement.is_clean(), "{it:?} with {level:?}: {:?}", judgement.head());
            }
        }
    }

    #[test]
    fn what_is_said_for_one_level_is_said_only_where_the_load_needs_a_cure(wiring in of_unknown_level()) {
        for it in offered(&wiring, Prefer::LeastWork) {
            let Some(level) = it.level else { continue };
            let judgement = judge(&solved(&set_to(&wiring, level), &car()), |_| true);
            prop_assert!(!judgement.is_clean(), "{it:?}");
        }
    }
}
