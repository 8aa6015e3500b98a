use super::*;
use crate::{
    circuit::work::work_for,
    output::{
        FarEnd, LoadKind, OnLevel, Partner, Pin, PullRail, Pulse, Stage, SupplyCorner,
        Surroundings, rest,
    },
    quantity::{Band, amperes, celsius, henries, hertz, ohms, share, volts},
};

fn around() -> Surroundings {
    let at = |is_cranking, supply| SupplyCorner {
        name: "",
        supply: volts(supply),
        temperature: celsius(20.0),
        is_cranking,
        is_charging: false,
    };
    let dead = Band { low: ohms(5.0), nominal: ohms(47.0), high: ohms(1000.0) };
    Surroundings {
        corners: vec![at(true, 9.0), at(false, 12.6), at(false, 14.5)],
        nominal: at(false, 12.6),
        dead_rail: dead,
        dead_feed: dead,
    }
}

/// An output with everything that may be spread.
fn output(stage: Stage) -> Output {
    Output {
        on_resistance: Band::between(ohms(0.05), ohms(0.2)),
        pull_up: Some((Band::between(ohms(900.0), ohms(1100.0)), PullRail::FiveVolt)),
        leakage: Some(Band::between(amperes(0.0), amperes(1e-4))),
        clamp: Some(Band::exact(volts(40.0))),
        ..Output::plain(stage)
    }
}

/// A load with everything that may be spread.
fn load(kind: LoadKind, far_end: FarEnd, is_pulsed: bool) -> Load {
    let frequency = Band::between(hertz(50.0), hertz(300.0));
    let duty = Band::between(share(0.1), share(0.9));
    Load {
        suppression: Suppression::Resistor(Band::between(ohms(500.0), ohms(700.0))),
        pulse: is_pulsed.then_some(Pulse { frequency, duty }),
        ..Load::usual(kind, far_end)
    }
}

/// Outputs in a chain, with a load between each two, and one more at the end of it.
fn chain(stage: Stage, joined: usize, kind: LoadKind, is_pulsed: bool) -> Wiring {
    let between = |at: usize| Load {
        partner: Some(Partner { pin: at + 1, level: OnLevel::Battery }),
        ..load(kind, FarEnd::Output, is_pulsed)
    };
    let pin = |at: usize| Pin {
        output: output(stage),
        level: OnLevel::Battery,
        loads: if at + 1 < joined {
            vec![between(at)]
        } else {
            vec![load(kind, FarEnd::Ignition, false)]
        },
    };
    let first = if joined > 1 { between(0) } else { load(kind, FarEnd::Relay, is_pulsed) };
    Wiring {
        output: output(stage),
        level: OnLevel::Battery,
        loads: vec![first],
        beyond: (1..joined).map(pin).collect(),
    }
}

fn wirings() -> impl Iterator<Item = Wiring> {
    let kinds = [LoadKind::RelayCoil, LoadKind::Motor, LoadKind::Led];
    let all = Stage::ALL.into_iter().flat_map(move |stage| kinds.map(|kind| (stage, kind)));
    all.flat_map(|(stage, kind)| {
        [1, 2, 3].into_iter().flat_map(move |joined| {
            let (spread, pulsed) =
                (chain(stage, joined, kind, false), chain(stage, joined, kind, true));
            let mut unclamped = pulsed.clone();
            unclamped.output.clamp = None;
            [spread.exact(), pulsed.exact(), pulsed, unclamped, spread]
        })
    })
}

#[test]
fn as_many_corners_are_counted_as_are_written_down() {
    for wiring in wirings() {
        let load = wiring.loads.first().expect("a load");
        for state in KeyState::ALL.into_iter().filter(|state| state.concerns(&wiring, load)) {
            let counted = corner::count(state, &wiring, 0, &around());
            let points = corner::points(state, &wiring, 0, &around());
            let hottest = points.iter().filter(|it| it.is_hottest).count();
            assert_eq!(counted.hottest, count(hottest), "{state:?}: {wiring:?}");
            assert_eq!(counted.usual, count(points.len() - hottest), "{state:?}: {wiring:?}");
        }
    }
}

/// Where nothing is wound, or neither a clamp nor another switch carries the current on, nothing inside the output is heated by it.
#[test]
fn what_cannot_get_hot_is_not_looked_for_where_it_is_hottest() {
    let hottest = |stage, has_clamp: bool, inductance: f64| {
        let mut output = output(stage);
        output.clamp = output.clamp.filter(|_| has_clamp);
        let inductance = Band::exact(henries(inductance));
        let load = Load { inductance, ..load(LoadKind::Solenoid, FarEnd::Battery, true) };
        let wiring = Wiring::alone(output, OnLevel::Ground, vec![load]);
        corner::count(KeyState::Pulsed, &wiring, 0, &around()).hottest > 0
    };
    assert!(hottest(Stage::OpenDrain, true, 0.01) && hottest(Stage::HalfBridge, false, 0.01));
    assert!(!hottest(Stage::OpenDrain, false, 0.01), "one switch alone");
    assert!(!hottest(Stage::OpenDrain, true, 0.0), "no winding on a clamp");
    assert!(!hottest(Stage::HalfBridge, false, 0.0), "no winding on two switches");
}

/// Frequency and inductance smooth the current together, so that either leaves its rhythm as free as both.
#[test]
fn a_rhythm_costs_by_what_is_free_in_it() {
    let cost = |frequency: f64, inductance: f64| {
        let mut wiring = Wiring::alone(
            output(Stage::HalfBridge),
            OnLevel::Ground,
            vec![load(LoadKind::Solenoid, FarEnd::Battery, true)],
        );
        let load = wiring.loads.first_mut().expect("a load");
        load.inductance = Band::between(henries(0.01), henries(0.01 * inductance));
        let pulse = load.pulse.as_mut().expect("it is pulsed");
        pulse.frequency = Band::between(hertz(100.0), hertz(100.0 * frequency));
        let nominal = Point::nominal(around().nominal, 0, Contact::Closed);
        point(KeyState::Pulsed, &wiring, &Point { is_hottest: true, ..nominal })
    };
    let [none, one, other, both] = [(1.0, 1.0), (2.0, 1.0), (1.0, 2.0), (2.0, 2.0)]
        .map(|(frequency, inductance)| cost(frequency, inductance));
    assert!(none < both && one == both && other == both, "{none} {one} {other} {both}");
}

#[test]
fn as_many_circuits_are_counted_as_are_solved() {
    for wiring in [Stage::OpenDrain, Stage::HalfBridge].map(|it| chain(it, 2, LoadKind::Led, false))
    {
        let solved = rest(&wiring, 0, &around()).expect("a load");
        let corners = solved.states.iter().map(|state| state.corners.len());
        assert_eq!(circuits(&wiring, 0, &around()), count(corners.sum()), "{wiring:?}");
    }
}

#[test]
fn whatever_hangs_together_more_costs_more() {
    let cost = |joined, is_pulsed| {
        resting(&chain(Stage::HalfBridge, joined, LoadKind::Motor, is_pulsed), 0, &around())
    };
    let rising: Vec<_> = [1, 2, 3, 4, 8, 16, 32, 64].map(|joined| cost(joined, false)).into();
    assert!(rising.is_sorted_by(|one, next| one < next), "{rising:?}");
    assert!(cost(64, true) > cost(64, false), "a pulsed load is solved on and off");
    let chain = chain(Stage::HalfBridge, 4, LoadKind::Motor, false);
    assert!(
        resting(&chain.exact(), 0, &around()) * 10 < resting(&chain, 0, &around()),
        "numbers without a range have few corners"
    );
}

/// What a load's corners share is worked out once, and what two of them have alike is solved once.
#[test]
fn corners_share_what_is_joined_to_what_and_none_is_solved_twice() {
    let solved = |wiring: &Wiring| {
        let (found, work) = work_for(|| rest(wiring, 0, &around()).expect("a load"));
        let corners: usize = found.states.iter().map(|state| state.corners.len()).sum();
        (count(corners), work)
    };
    let (corners, work) = solved(&chain(Stage::HalfBridge, 1, LoadKind::RelayCoil, false));
    assert!(work.networks * 4 < corners * 3, "{work:?} for {corners} corners");
    assert!(work.layouts * 8 < work.networks, "{work:?}");
    // on and off are solved once for all rhythms
    let (corners, work) = solved(&chain(Stage::OpenDrain, 1, LoadKind::Solenoid, true));
    assert!(work.networks * 5 < corners * 3, "{work:?} for {corners} corners");
}
