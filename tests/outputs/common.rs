//! Outputs and loads for the tests.

use quietpin_core::{
    output::{
        FarEnd, KeyState, Load, LoadKind, OnLevel, Output, PullRail, Rest, Stage, SupplyCorner,
        Surroundings, Trouble, Wiring, judge, rest,
    },
    quantity::{Band, celsius, ohms, volts},
};

/// A battery at rest and 20 °C, nothing else; dead supplies and feeds of this resistance.
pub(crate) fn bench(supply_v: f64, dead_ohm: f64) -> Surroundings {
    let at = corner("at rest, 20 °C", supply_v, 20.0);
    let dead = Band::exact(ohms(dead_ohm));
    Surroundings { corners: vec![at], nominal: at, dead_rail: dead, dead_feed: dead }
}

pub(crate) fn corner(name: &'static str, supply_v: f64, temperature_c: f64) -> SupplyCorner {
    SupplyCorner {
        name,
        supply: volts(supply_v),
        temperature: celsius(temperature_c),
        is_cranking: false,
        is_charging: false,
    }
}

pub(crate) fn load(kind: LoadKind, ohm: f64, far_end: FarEnd) -> Load {
    Load { resistance: Band::exact(ohms(ohm)), ..Load::usual(kind, far_end) }
}

pub(crate) fn wiring(stage: Stage, level: OnLevel, load: Load) -> Wiring {
    let output = Output { on_level: Some(level), ..Output::plain(stage) };
    Wiring::alone(output, level, vec![load])
}

pub(crate) fn pulled_up(mut wiring: Wiring, ohm: f64, rail: PullRail) -> Wiring {
    wiring.output.pull_up = Some((Band::exact(ohms(ohm)), rail));
    wiring
}

pub(crate) fn solved(wiring: &Wiring, around: &Surroundings) -> Rest {
    rest(wiring, 0, around).expect("there is such a load")
}

/// Pin less far end, and the current from the pin, in volts and amperes.
pub(crate) fn at(rest: &Rest, state: KeyState) -> (f64, f64) {
    use quietpin_core::quantity::Measure;
    let flow = rest.state(state).and_then(|it| it.nominal.load()).expect("solved");
    (flow.voltage.base(), flow.current.base())
}

/// Solves the wiring on a bench of 12.6 V and compares the voltage across the load.
#[track_caller]
pub(crate) fn check(wiring: &Wiring, dead_ohm: f64, state: KeyState, volts: f64) {
    let (found, _) = at(&solved(wiring, &bench(12.6, dead_ohm)), state);
    assert!((found - volts).abs() <= 1e-9 * 12.6, "{state:?}: {found} V instead of {volts} V");
}

#[track_caller]
pub(crate) fn check_verdict(wiring: &Wiring, dead_ohm: f64, expected: Option<Trouble>) {
    let judgement = judge(&solved(wiring, &bench(12.6, dead_ohm)), |_| true);
    assert_eq!(judgement.head().map(|found| found.trouble), expected, "{:?}", judgement.found);
}
