//! What must hold for any output and any load.

use proptest::prelude::*;
use quietpin_core::{
    budget::{Allowance, Budget},
    output::{
        Change, FarEnd, KeyState, Load, LoadKind, OnLevel, Output, Partner, Pin, Prefer, PullRail,
        Pulse, Spare, Stage, SupplyCorner, Suppression, Surroundings, Trouble, Wiring,
        alternatives, judge, rest,
    },
    quantity::{Band, Measure, amperes, hertz, joules, ohms, share, volts},
};

use super::common::{at, bench, corner, solved};

fn stage() -> impl Strategy<Value = Stage> {
    prop::sample::select(Stage::ALL.to_vec())
}

fn level() -> impl Strategy<Value = OnLevel> {
    prop::sample::select(OnLevel::BOTH.to_vec())
}

fn far_end() -> impl Strategy<Value = FarEnd> {
    prop::sample::select(FarEnd::ALL.to_vec())
}

/// A resistance between two, even by its logarithm.
fn ohm(low: f64, high: f64) -> impl Strategy<Value = f64> {
    (low.ln()..high.ln()).prop_map(f64::exp)
}

/// Anything across a winding, most often nothing that is known.
fn suppression() -> impl Strategy<Value = Suppression> {
    prop_oneof![
        4 => Just(Suppression::Unknown),
        1 => Just(Suppression::None),
        1 => any::<bool>().prop_map(|is_right_way| Suppression::Diode { is_right_way }),
        1 => ohm(50.0, 2000.0).prop_map(|it| Suppression::Resistor(Band::with_tolerance(ohms(it), 0.05))),
    ]
}

/// Pulses of any frequency and duty.
fn pulse() -> impl Strategy<Value = Pulse> {
    (ohm(1.0, 20e3), 0.05..0.9, 0.0..0.09).prop_map(|(frequency, duty, more)| Pulse {
        frequency: Band::with_tolerance(hertz(frequency), 0.02),
        duty: Band::between(share(duty), share(duty + more)),
    })
}

prop_compose! {
    fn load()(
        kind in prop::sample::select(LoadKind::ALL.to_vec()),
        far_end in far_end(),
        low in ohm(0.5, 300.0),
        spread in 1.0..1.5,
        suppression in suppression(),
        pulse in prop::option::weighted(0.2, pulse()),
    ) -> Load {
        let resistance = Band::between(ohms(low), ohms(low * spread));
        let usual = Load::usual(kind, far_end);
        let is_wound = usual.inductance.high.base() > 0.0;
        let suppression = if is_wound { suppression } else { Suppression::None };
        Load { resistance, suppression, pulse, ..usual }
    }
}

prop_compose! {
    fn wiring()(
        stage in stage(),
        level in level(),
        loads in prop_oneof![6 => prop::collection::vec(load(), 1), 2 => prop::collection::vec(load(), 2), 1 => prop::collection::vec(load(), 3)],
        pull_up in prop::option::of((ohm(100.0, 1e5), prop::sample::select(vec![
            PullRail::Battery, PullRail::Controller, PullRail::FiveVolt, PullRail::ThreeVolt,
        ]))),
        pull_down in prop::option::weighted(0.2, ohm(100.0, 1e5)),
        limit in prop::option::of(0.1..20.0),
        leakage in prop::option::weighted(0.2, 1e-6..1e-3),
        clamp in prop::option::of((35.0..60.0, ohm(1e-3, 0.3))),
        pulse_limit in prop::option::of(ohm(10.0, 20e3)),
    ) -> Wiring {
        let mut output = Output { on_level: Some(level), ..Output::plain(stage) };
        output.pull_up = pull_up.map(|(ohm, rail)| (Band::with_tolerance(ohms(ohm), 0.05), rail));
        output.pull_down = pull_down.map(|ohm| Band::with_tolerance(ohms(ohm), 0.05));
        output.leakage = leakage.map(|most| Band::between(amperes(0.1 * most), amperes(most)));
        output.current_limit = limit.map(|limit| Band::exact(amperes(limit)));
        output.clamp = clamp.map(|(clamp, _)| Band::exact(volts(clamp)));
        output.clamp_energy = clamp.map(|(_, energy)| Band::exact(joules(energy)));
        output.pulse_limit = pulse_limit.map(|limit| Band::exact(hertz(limit)));
        let level = output.levels()[0];
        Wiring::alone(output, level, loads)
    }
}

prop_compose! {
    /// An output with one other that hangs together with it through a load, and something on that one.
    fn joined()(
        wiring in wiring(),
        between in load(),
        is_back in any::<bool>(),
        is_asked_about in any::<bool>(),
        stage in stage(),
        level in level(),
        there in prop::option::of(load()),
    ) -> Wiring {
        let output = Output { on_level: Some(level), ..Output::plain(stage) };
        let level = output.levels()[0];
        let mut wiring = Wiring { loads: vec![wiring.loads[0].clone()], ..wiring };
        let (pin, own) = if is_back { (0, level) } else { (1, wiring.level) };
        let between = Load { far_end: FarEnd::Output, partner: Some(Partner { pin, level: own }), ..between };
        let mut loads: Vec<_> = there.into_iter().collect();
        match (is_back, is_asked_about) {
            (true, _) => loads.push(between),
            (false, true) => wiring.loads = vec![between],
            (false, false) => wiring.loads.push(between),
        }
        wiring.beyond = vec![Pin { output, level, loads }];
        wiring
    }
}

pub(crate) fn any_wiring() -> impl Strategy<Value = Wiring> {
    prop_oneof![4 => wiring(), 1 => joined()]
}

fn cranking(at: SupplyCorner) -> SupplyCorner {
    SupplyCorner { is_cranking: true, ..at }
}

pub(crate) fn car() -> Surroundings {
    let nominal = corner("at rest, 20 °C", 12.6, 20.0);
    Surroundings {
        corners: vec![
            cranking(corner("cranking, cold", 8.0, -20.0)),
            cranking(corner("cranking, hot", 8.0, 100.0)),
            nominal,
            corner("at rest, hot", 12.6, 100.0),
            corner("charging, cold", 14.8, -20.0),
            corner("charging, hot", 14.8, 100.0),
        ],
        nominal,
        dead_rail: Band { low: ohms(5.0), nominal: ohms(47.0), high: ohms(1000.0) },
        dead_feed: Band { low: ohms(5.0), nominal: ohms(47.0), high: ohms(1000.0) },
    }
}

/// A value inside a band, exact.
fn inside<Q: Measure>(band: &Band<Q>, share: f64) -> Band<Q> {
    let (low, high) = (band.low.base(), band.high.base());
    Band::exact(Q::from_base(low + share * (high - low)))
}

/// The same wiring and car at a random point inside the corners.
fn somewhere(wiring: &Wiring, car: &Surroundings, share: &[f64; 8]) -> (Wiring, Surroundings) {
    let mut wiring = wiring.clone();
    let beyond = wiring.beyond.iter_mut().flat_map(|pin| &mut pin.loads);
    for (load, share) in wiring.loads.iter_mut().chain(beyond).zip(share) {
        load.resistance = inside(&load.resistance, *share);
        load.inductance = inside(&load.inductance, share * share);
        if let Suppression::Resistor(band) = &mut load.suppression {
            *band = inside(band, 1.0 - share);
        }
        if let Some(pulse) = &mut load.pulse {
            pulse.frequency = inside(&pulse.frequency, 1.0 - share);
            pulse.duty = inside(&pulse.duty, *share);
        }
    }
    let output = &mut wiring.output;
    output.pull_up = output.pull_up.map(|(band, rail)| (inside(&band, share[2]), rail));
    output.pull_down = output.pull_down.map(|band| inside(&band, share[3]));
    output.leakage = output.leakage.map(|band| inside(&band, 1.0 - share[2]));
    let at = corner("inside", 12.6 + share[4] * 2.2, -20.0 + share[5] * 120.0);
    let around = Surroundings {
        corners: vec![at],
        nominal: at,
        dead_rail: inside(&car.dead_rail, share[6] * share[6]),
        dead_feed: inside(&car.dead_feed, share[7] * share[7]),
    };
    (wiring, around)
}

fn troubles(wiring: &Wiring, around: &Surroundings) -> Vec<Trouble> {
    judge(&solved(wiring, around), |_| true).found.iter().map(|it| it.trouble).collect()
}

/// A diode stays on its wires: with plus and minus changed it is the other way round.
pub(crate) fn moved(load: &Load, far_end: FarEnd) -> Load {
    let is_plus_at_pin = |far_end| match far_end {
        FarEnd::Ground => true,
        FarEnd::Output => load.partner.is_some_and(|it| it.level == OnLevel::Battery),
        _ => false,
    };
    let is_flipped = is_plus_at_pin(load.far_end) != is_plus_at_pin(far_end);
    let suppression = match load.suppression {
        Suppression::Diode { is_right_way } => {
            Suppression::Diode { is_right_way: is_right_way != is_flipped }
        }
        other => other,
    };
    Load { far_end, suppression, ..load.clone() }
}

/// With the two wires of the load in each other's place, where that is said too.
pub(crate) fn turned(mut wiring: Wiring, is_turned: bool) -> Wiring {
    if let Suppression::Diode { is_right_way } = &mut wiring.loads[0].suppression {
        *is_right_way = *is_right_way != is_turned;
    }
    wiring
}

pub(crate) fn apply(wiring: &Wiring, change: Change) -> Option<Wiring> {
    let mut new = wiring.clone();
    let load = wiring.loads.first()?.clone();
    let alone = |output: Output, level: Option<OnLevel>, load: Load| {
        let level = level.unwrap_or(output.levels()[0]);
        Some(Wiring::alone(output, level, vec![load]))
    };
    match change {
        Change::Level(level) => new.level = level,
        Change::FarEnd(far_end) => new.loads[0] = moved(&load, far_end),
        Change::LevelAndFarEnd(level, far_end) => {
            new.level = level;
            new.loads[0] = moved(&load, far_end);
        }
        Change::PullDown(resistance, _) => {
            new.output.pull_down = Some(Band::with_tolerance(resistance, 0.05));
        }
        Change::Bleeder(resistance, _) => {
            let resistance = Band::with_tolerance(resistance, 0.05);
            let far_end = load.far_end;
            new.loads.push(Load { resistance, ..Load::usual(LoadKind::Resistor, far_end) });
        }
        Change::FeedDiode => new.loads[0].has_feed_diode = true,
        Change::CoilDiode(_) => {
            new.loads[0].suppression = Suppression::Diode { is_right_way: true };
        }
        Change::Slower(limit) => {
            let pulse = new.loads[0].pulse.as_mut().expect("it is pulsed");
            pulse.frequency = Band::exact(limit);
        }
        Change::Turn => new.loads[0].suppression = Suppression::Diode { is_right_way: true },
        Change::NoDiode => new.loads[0].suppression = Suppression::None,
        Change::Stage(stage, far_end) => {
            return alone(Output::plain(stage), None, moved(&load, far_end));
        }
        Change::Relay(far_end) => {
            let coil = Load::relay_coil(far_end);
            return Some(Wiring::alone(wiring.output.clone(), wiring.level, vec![coil]));
        }
        Change::SpareWithDiode { far_end, .. } => {
            let suppression = Suppression::Diode { is_right_way: true };
            let load = Load { suppression, ..moved(&load, far_end) };
            return alone(Output::plain(Stage::OpenDrain), None, load);
        }
        Change::Spare { far_end, level, .. } => {
            return alone(Output::plain(Stage::OpenDrain), level, moved(&load, far_end));
        }
    }
    Some(new)
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(300) })]

    /// With the key on, ground for battery and each switch for the other gives the mirrored voltages.
    #[test]
    fn the_mirror_image_gives_the_mirrored_answer(
        stage in prop::sample::select(vec![Stage::OpenDrain, Stage::HighSide, Stage::HalfBridge]),
        level in level(),
        ohm in ohm(1.0, 300.0),
        pull in prop::option::of(ohm(100.0, 1e5)),
    ) {
        let load = |far_end| super::common::load(LoadKind::Solenoid, ohm, far_end);
        let mut one = super::common::wiring(stage, level, load(FarEnd::Ground));
        let mirrored = match stage {
            Stage::OpenDrain => Stage::HighSide,
            Stage::HighSide => Stage::OpenDrain,
            both_ways => both_ways,
        };
        let mut other = super::common::wiring(mirrored, level.other(), load(FarEnd::Battery));
        one.output.pull_up = pull.map(|ohm| (Band::exact(ohms(ohm)), PullRail::Battery));
        other.output.pull_down = pull.map(|ohm| Band::exact(ohms(ohm)));
        let around = bench(12.6, 47.0);
        for state in [KeyState::Starting, KeyState::Off, KeyState::On] {
            let (v, i) = at(&solved(&one, &around), state);
            let (mirrored_v, mirrored_i) = at(&solved(&other, &around), state);
            prop_assert!((v + mirrored_v).abs() < 1e-9, "{state:?}: {v} V and {mirrored_v} V");
            prop_assert!((i + mirrored_i).abs() < 1e-9, "{state:?}: {i} A and {mirrored_i} A");
        }
    }

    /// What is never found at a corner is not found at any point between the corners either.
    #[test]
    fn never_at_the_corners_is_never_inside(
        wiring in any_wiring(),
        shares in prop::collection::vec(prop::array::uniform8(0.0..1.0), 8),
    ) {
        let car = car();
        let at_corners = judge(&solved(&wiring, &car), |_| true);
        let found: Vec<_> = at_corners.found.iter().map(|it| it.trouble).collect();
        for share in &shares {
            let (exact, around) = somewhere(&wiring, &car, share);
            let inside = troubles(&exact, &around);
            for trouble in [
                Trouble::LiveAtRest, Trouble::LiveAtKeyOn, Trouble::LiveKeyOff,
                Trouble::ActsWithOther, Trouble::TooMuchCurrent, Trouble::Inrush, Trouble::WakesController,
                Trouble::KickTooStrong, Trouble::TooFast, Trouble::ShortedByDiode, Trouble::KicksHeat,
                Trouble::ActsWithoutFeed, Trouble::ActsWithoutGround, Trouble::ActsWithoutSupply,
            ] {
                let is_fault = trouble.needs_fault();
                let is_live = |it: &Trouble| matches!(
                    it, Trouble::LiveAtRest | Trouble::LiveAtKeyOn | Trouble::LiveKeyOff
                );
                let may_stay = |it: &Trouble| matches!(
                    it, Trouble::MayStayIn | Trouble::MayStayInAtRestart
                );
                let is_said = found.contains(&trouble)
                    || (is_fault && found.iter().any(is_live))
                    || (is_fault && found.iter().any(may_stay))
                    || (matches!(trouble, Trouble::ActsWithOther | Trouble::LiveAtKeyOn)
                        && found.contains(&Trouble::LiveAtRest))
                    || (trouble == Trouble::KickTooStrong && found.contains(&Trouble::KickPerhapsTooStrong))
                    || (matches!(trouble, Trouble::KicksHeat | Trouble::KickTooStrong)
                        && found.contains(&Trouble::KicksMelt))
                    || (is_live(&trouble) && found.contains(&Trouble::OverVoltage))
                    || (trouble == Trouble::Inrush && found.contains(&Trouble::TooMuchCurrent))
                    || (trouble == Trouble::TooMuchCurrent && found.contains(&Trouble::ShortedByDiode));
                prop_assert!(is_said || !inside.contains(&trouble), "{trouble:?} at {share:?}, not at {found:?}");
            }
            let is_bearable = inside.iter().all(|it| it.is_bearable());
            prop_assert!(!at_corners.is_clean() || is_bearable, "clean, but {inside:?} at {share:?}");
        }
    }

    /// Every alternative that is offered is clean when it is carried out.
    #[test]
    fn an_alternative_that_is_offered_solves_clean(
        wiring in wiring(),
        prefer in prop::sample::select(vec![Prefer::LeastWork, Prefer::Wires]),
    ) {
        let car = car();
        let spare = Spare { number: 7, output: Output::plain(Stage::OpenDrain) };
        for offered in alternatives(&[&wiring], 0, &[spare], &car, prefer, (&Budget::unlimited(), &[])) {
            let changed = apply(&wiring, offered.change).expect("a load");
            let changed = turned(changed, offered.is_turned);
            let judgement = judge(&solved(&changed, &car), |_| true);
            prop_assert!(judgement.is_clean(), "{:?} gives {:?}", offered.change, judgement.head());
        }
    }

    /// So is one that is offered where the work ends before all were tried: what was not solved to its end is not offered.
    #[test]
    fn what_is_offered_solves_clean_where_not_all_is_tried(
        wiring in wiring(),
        prefer in prop::sample::select(vec![Prefer::LeastWork, Prefer::Wires]),
        steps in 0_u64..3_000_000,
    ) {
        let car = car();
        let spare = Spare { number: 7, output: Output::plain(Stage::OpenDrain) };
        let budget = Budget::new(Allowance { most: steps, share: steps });
        for offered in alternatives(&[&wiring], 0, &[spare], &car, prefer, (&budget, &[])) {
            let changed = apply(&wiring, offered.change).expect("a load");
            let changed = turned(changed, offered.is_turned);
            let judgement = judge(&solved(&changed, &car), |_| true);
            prop_assert!(judgement.is_clean(), "{:?} gives {:?}", offered.change, judgement.head());
        }
        prop_assert!(budget.spent() <= steps, "{} of {steps}", budget.spent());
    }

    /// What is pulsed lies, on average, between what it gets off and what it gets on, and swings about its mean.
    #[test]
    fn a_pulsed_load_lies_between_off_and_on(wiring in wiring(), pulse in pulse()) {
        let mut wiring = wiring;
        wiring.loads[0].pulse = Some(pulse);
        let rest = rest(&wiring, 0, &car()).expect("a load");
        let pulsed = rest.state(KeyState::Pulsed).expect("it is pulsed");
        for it in pulsed.corners.iter().filter_map(|it| it.operating.pulsing) {
            let (least, mean, most) = (it.least.base(), it.mean.base(), it.most.base());
            let slack = 1e-9 * it.on_final.base().max(1e-3);
            prop_assert!(most <= it.on_final.base() + slack, "{it:?}");
            prop_assert!(least >= it.floor.base() - slack, "{it:?}");
            prop_assert!(it.path.is_none() || (least <= mean + slack && mean <= most + slack), "{it:?}");
            prop_assert!(it.in_output.base() >= 0.0 && it.heat.base() >= 0.0, "{it:?}");
        }
    }

    /// More supply never means less current in a load that is on.
    #[test]
    fn more_supply_never_means_less_current_when_on(wiring in wiring(), low in 6.0..15.0, more in 0.0..5.0) {
        // against a fixed 5 V, more supply on the other side may well mean less
        let stands_on_5_v = |load: &Load| load.far_end == FarEnd::FiveVolt;
        prop_assume!(!wiring.loads.iter().any(stands_on_5_v));

        // against a logic stage's 5 V, more supply may light a filament, which then has ten times the resistance
        let may_stay_dark = |load: &Load| load.kind == LoadKind::Lamp;
        let is_logic = wiring.output.stage == Stage::Logic;
        prop_assume!(!(is_logic && wiring.loads.iter().any(may_stay_dark)));
        prop_assume!(wiring.loads.len() == 1);
        prop_assume!(!matches!(
            wiring.output.pull_up,
            Some((_, PullRail::FiveVolt | PullRail::ThreeVolt))
        ));
        let (_, less) = at(&solved(&wiring, &bench(low, 47.0)), KeyState::On);
        let (_, current) = at(&solved(&wiring, &bench(low + more, 47.0)), KeyState::On);
        prop_assert!(current.abs() >= less.abs() - 1e-12, "{less} A, then {current} A");
    }

    /// A pair that is driven the other way round gives the mirrored answer.
    #[test]
    fn a_bridge_pair_is_its_own_mirror_image(
        ohm in ohm(1.0, 300.0), on in ohm(0.01, 2.0), level in level(), supply in 8.0..15.0,
    ) {
        let pair = |level: OnLevel| {
            let mut output = Output { on_level: Some(level), ..Output::plain(Stage::HalfBridge) };
            output.on_resistance = Band::exact(ohms(on));
            let partner = Some(Partner { pin: 1, level });
            let load = Load { partner, ..super::common::load(LoadKind::Solenoid, ohm, FarEnd::Output) };
            let beyond = vec![Pin { output: output.clone(), level, loads: Vec::new() }];
            Wiring { output, level, loads: vec![load], beyond }
        };
        let around = bench(supply, 47.0);
        for state in [KeyState::Starting, KeyState::Off, KeyState::On, KeyState::OtherOn] {
            let (v, i) = at(&solved(&pair(level), &around), state);
            let (other_v, other_i) = at(&solved(&pair(level.other()), &around), state);
            prop_assert!((v + other_v).abs() < 1e-9 && (i + other_i).abs() < 1e-9, "{state:?}");
        }
    }

    /// In every solution what flows out of the pin sums to nothing.
    #[test]
    fn the_currents_at_the_pin_sum_to_nothing(wiring in any_wiring()) {
        let rest = rest(&wiring, 0, &car()).expect("a load");
        for solved in rest.states.iter().flat_map(|state| &state.corners) {
            let sum: f64 = solved.operating.branches.iter().map(|it| it.current.base()).sum();
            let size: f64 = solved.operating.branches.iter().map(|it| it.current.base().abs()).sum();
            prop_assert!(sum.abs() <= 1e-9 * size.max(1e-3), "{sum} A of {size} A");
        }
    }
}

#[test]
fn a_load_that_is_not_there_has_no_answer() {
    let wiring =
        super::common::wiring(Stage::OpenDrain, OnLevel::Ground, Load::relay_coil(FarEnd::Ground));
    assert!(rest(&wiring, 1, &car()).is_none(), "there is one load");
    let found =
        alternatives(&[&wiring], 1, &[], &car(), Prefer::LeastWork, (&Budget::unlimited(), &[]));
    assert!(found.is_empty(), "there is one load");
    assert!(
        alternatives(&[], 0, &[], &car(), Prefer::LeastWork, (&Budget::unlimited(), &[]))
            .is_empty(),
        "there is none"
    );
}
