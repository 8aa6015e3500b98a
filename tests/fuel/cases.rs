//! Cases whose numbers are published or worked out by hand.

use quietpin_core::{
    fuel::{
        DeliveryEnd, FuelInputs, InjectionPace, Limit, Regulator, answer,
        flow::{InjectorSet, Rated},
    },
    quantity::{Band, Density, Holds, MassFlow, Measure, Power, Pressure, VolumeRate},
};
use serde_json::Value;

use super::{bare, exact, near, once_a_cycle, typed};

/// Source: `sizing_example` of `fuel_facts.json`: 200 hp at 0.5 lb/(hp h) are 100 lb/h; a quarter of it is 25 lb/h, and open
/// for 80 percent of the time an injector must pass 31.25 lb/h.
#[test]
fn a_published_sizing_comes_out() {
    let file = quietpin_tests::reference("fuel_facts.json");
    let facts: Value = serde_json::from_str(&file).expect("fuel_facts.json");
    let example = &facts["sizing_example"];
    let inputs = FuelInputs { power: Some(exact("200 hp")), ..bare() };
    let found = answer(&inputs);
    near("power", found.nominal.feeds.base(), typed::<Power>("200 hp").base(), 1e-12);
    near("duty", found.nominal.duty.expect("a power is wanted").base(), 0.8, 1e-12);
    assert_eq!(found.runs_out, Holds::Never, "at the limit, not above it");
    for (density, key) in
        [("0.72 kg/l", "cc_per_min_at_0.720"), ("0.745 kg/l", "cc_per_min_at_0.745")]
    {
        let each: VolumeRate = found.nominal.each[0] / typed::<Density>(density);
        let cc = each / typed::<VolumeRate>("1 cc/min");
        near(key, cc.base(), example[key].as_f64().expect(key), 1e-9);
    }
}

/// By hand: 120 s / 6000 = 20 ms from pulse to pulse (`cycle_time` of `fuel_facts.json`), of which 1 ms is dead: 5 percent.
/// The flow alone takes 80 percent, together 85. At a limit of 80 percent 75 are left: 200 hp · 0.75 / 0.8 = 187.5 hp.
#[test]
fn dead_time_is_counted_into_the_open_time() {
    let inputs = FuelInputs {
        power: Some(exact("200 hp")),
        dead_time: exact("1 ms"),
        pace: Some(once_a_cycle("6000 rpm")),
        ..bare()
    };
    let found = answer(&inputs);
    near("window", found.nominal.window.expect("a speed").base(), 0.02, 1e-12);
    near("duty", found.nominal.duty.expect("a power").base(), 0.85, 1e-12);
    near("power", found.nominal.feeds.base(), typed::<Power>("187.5 hp").base(), 1e-12);
    assert_eq!(found.runs_out, Holds::Always);
    // larger by 80 / 75: 33.33 lb/h, rounded up to 34; and (80 / 75)² · 3 bar = 3.413 bar, rounded up to 3.5
    let larger = found.cures.larger.expect("there is time");
    let Rated::Mass(flow) = larger.flow else { panic!("it was stated as a mass") };
    near("flow", flow.nominal.base(), typed::<MassFlow>("34 lb/h").base(), 1e-9);
    let pressure = found.cures.pressure.expect("there is time");
    near("pressure", pressure.rail.base(), 3.5e5, 1e-9);
    assert!(!pressure.is_beyond, "half as much again is allowed");
}

/// By hand: every turn at 9000 rpm is 60 / 9000 = 6.667 ms, of which 1 ms is 15 percent. 160 hp take 64 percent of the time by
/// flow alone: 79 with the dead time, within 80. 170 hp take 68 and 83: too much; once a cycle 68 and 7.5 are 75.5, enough.
/// What ends it is the time: (0.8 - 0.68) · 60 / 1 ms = 7200 rpm.
#[test]
fn every_turn_the_dead_time_may_be_what_ends_it() {
    let every_turn = Some(InjectionPace { speed: exact("9000 rpm"), turns: 1, turns_of_cycle: 2 });
    let inputs = |power| FuelInputs {
        power: Some(exact(power)),
        dead_time: exact("1 ms"),
        pace: every_turn,
        ..bare()
    };
    let enough = answer(&inputs("160 hp"));
    near("duty", enough.nominal.duty.expect("a power").base(), 0.79, 1e-9);
    assert_eq!(enough.runs_out, Holds::Never);
    let found = answer(&inputs("170 hp"));
    assert_eq!(found.limit_at(DeliveryEnd::Nominal), Limit::DeadTime);
    assert!(found.cures.in_sequence, "75.5 percent is enough");
    near("speed", found.nominal.reaches.expect("the time ends it").base(), 7200.0, 1e-9);
    assert_eq!(
        answer(&inputs("210 hp")).limit_at(DeliveryEnd::Nominal),
        Limit::Flow,
        "84 percent by flow alone"
    );
}

/// By hand: 3 bar less 1 bar of boost is 2 bar; √(2 / 3) = 0.8165 of the flow. With a hose to the manifold nothing is lost.
#[test]
fn boost_takes_its_part_where_the_regulator_does_not_follow_it() {
    let inputs = |regulator| FuelInputs { boost: exact("1 bar"), regulator, ..bare() };
    let (fixed, follows) =
        (answer(&inputs(Regulator::Fixed)), answer(&inputs(Regulator::Referenced)));
    near("drop", fixed.nominal.drop.base(), 2e5, 1e-12);
    let ratio = fixed.nominal.all / follows.nominal.all;
    near("the share left", ratio.base(), 0.816496580927726, 1e-12);
    assert!(!fixed.is_stopped() && !follows.is_stopped(), "fuel flows");
    let stopped = FuelInputs { boost: exact("3 bar"), regulator: Regulator::Fixed, ..bare() };
    assert!(answer(&stopped).is_stopped(), "3 bar against 3 bar");
    near("flow", answer(&stopped).nominal.all.base(), 0.0, 1e-12);
}

/// By hand: an orifice of 550 cc/min with a fluid of 0.745 kg/l passes 550 · √(0.745 / 0.7824) = 536.7 cc/min of E85, which are
/// 536.7 / 60 · 0.7824 = 6.998 g/s. Source: orifice equation.
#[test]
fn a_heavier_fuel_flows_slower_and_weighs_more() {
    let flow = Rated::Volume(exact("550 cc/min"));
    let inputs = FuelInputs {
        sets: vec![InjectorSet { count: 1, flow }],
        density: exact("0.7824 kg/l"),
        ..bare()
    };
    let each = answer(&inputs).nominal.each[0];
    near("grams a second", each.base() * 1e3, 6.998, 1e-4);
    let volume: VolumeRate = each / typed::<Density>("0.7824 kg/l");
    near("cc/min", (volume / typed::<VolumeRate>("1 cc/min")).base(), 536.7, 1e-4);
}

#[test]
fn sets_add_up() {
    let [one] = bare().sets[..] else { panic!("one set") };
    let half = InjectorSet { count: 2, ..one };
    let inputs = FuelInputs { sets: vec![half, half], ..bare() };
    near("flow", answer(&inputs).nominal.all.base(), answer(&bare()).nominal.all.base(), 1e-12);
}

#[test]
fn only_the_lean_end_decides_between_enough_and_perhaps() {
    let spread = Band::with_tolerance(typed::<Pressure>("3 bar"), 0.1);
    let inputs = FuelInputs { rail: spread, power: Some(exact("200 hp")), ..bare() };
    let found = answer(&inputs);
    assert_eq!(found.runs_out, Holds::AtSome(vec!["all at its leanest".into()]));
    assert_eq!(found.limit_at(DeliveryEnd::Nominal), Limit::None);
    let cured = found.cures.pressure.expect("a little more");
    let rail = Band::with_tolerance(cured.rail, 0.1);
    assert_eq!(answer(&FuelInputs { rail, ..inputs }).runs_out, Holds::Never, "the cure cures");
}

/// By hand, as above: 170 hp every turn reach 7200 rpm. An engine makes little of its power below half its highest speed, so that it is
/// the dead time that ends it up to 14 400 rpm, and the flow beyond. Without a dead time no speed does.
#[test]
fn the_dead_time_ends_it_where_half_the_speed_is_reached() {
    let inputs = |speed: f64, dead: &str| {
        let speed = Band::exact(quietpin_core::quantity::rpm(speed));
        FuelInputs {
            power: Some(exact("170 hp")),
            dead_time: exact(dead),
            pace: Some(InjectionPace { speed, turns: 1, turns_of_cycle: 2 }),
            ..bare()
        }
    };
    let reaches = answer(&inputs(9000.0, "1 ms")).nominal.reaches.expect("a speed").base();
    near("speed", reaches, 7200.0, 1e-9);
    for (times, limit) in [(2.01, Limit::Flow), (2.0, Limit::DeadTime), (1.99, Limit::DeadTime)] {
        let found = answer(&inputs(times * reaches, "1 ms"));
        assert_eq!(found.limit_at(DeliveryEnd::Nominal), limit, "{times}");
    }
    assert_eq!(answer(&inputs(9000.0, "0 ms")).nominal.reaches, None);
    // 200 hp take all of the limit by flow alone
    let all = FuelInputs { power: Some(exact("200 hp")), ..inputs(9000.0, "1 ms") };
    assert!(answer(&all).nominal.reaches.is_none_or(|it| it.base() < 1e-6), "no time is left");
}
