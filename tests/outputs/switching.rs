//! Turn-off and pulses, worked by hand: `L di/dt = V - R i` and the volt-second balance of a buck converter, the
//! textbook way (University Physics, vol. 2, section 14.4). A freewheel diode is 0.7 V and 0.05 ohm: common practice,
//! no source.

use quietpin_core::{
    output::{
        Catcher, FarEnd, Following, KeyState, Load, LoadKind, OnLevel, Pulse, Pulsing, Stage,
        Suppression, Trouble, Wiring, judge, kick,
    },
    quantity::{Band, Measure, henries, hertz, joules, ohms, share, volts},
};

use super::common::{bench, load, solved, wiring};

const V: f64 = 12.6;

/// A valve of 24 ohm and 30 mH to the ignition switch, on a switch of 0.1 ohm.
fn valve(suppression: Suppression) -> Load {
    let inductance = Band::exact(henries(0.03));
    Load { inductance, suppression, ..load(LoadKind::Solenoid, 24.0, FarEnd::Ignition) }
}

fn diode() -> Suppression {
    Suppression::Diode { is_right_way: true }
}

fn pulsed(mut load: Load, frequency: f64, duty: f64) -> Load {
    let (frequency, duty) = (Band::exact(hertz(frequency)), Band::exact(share(duty)));
    load.pulse = Some(Pulse { frequency, duty });
    load
}

fn on_a_switch(load: Load) -> Wiring {
    wiring(Stage::OpenDrain, OnLevel::Ground, load)
}

#[track_caller]
fn near(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance * expected.abs(), "{found} and not {expected}");
}

fn turned_off(wiring: &Wiring) -> quietpin_core::output::Kick {
    let rest = solved(wiring, &bench(V, 47.0));
    let on = &rest.state(KeyState::On).expect("solved").nominal;
    kick(wiring, on, wiring.loads[0].inductance.nominal).expect("a winding")
}

fn pulsing(wiring: &Wiring) -> Pulsing {
    let rest = solved(wiring, &bench(V, 47.0));
    let state = rest.state(KeyState::Pulsed).expect("it is pulsed");
    state.nominal.operating.pulsing.expect("it is pulsed")
}

fn troubles(wiring: &Wiring) -> Vec<Trouble> {
    let judgement = judge(&solved(wiring, &bench(V, 47.0)), |_| true);
    judgement.found.iter().map(|it| it.trouble).collect()
}

#[test]
fn a_clamp_takes_what_the_coil_holds_and_what_the_supply_adds() {
    let mut wiring = on_a_switch(valve(Suppression::None));
    wiring.output.clamp = Some(Band::exact(volts(42.0)));
    let kick = turned_off(&wiring);
    assert_eq!(kick.path.map(|it| it.catcher), Some(Catcher::Clamp));
    // the current starts at 12.6 / 24.1 A and runs against 42 - 12.6 = 29.4 V through 24 ohm
    let (start, net, r, l) = (V / 24.1, 29.4, 24.0, 0.03);
    let lasts = l / r * (1.0_f64 + start * r / net).ln();
    let charge = l * start / r - net / r * lasts;
    near(kick.in_output.base(), 42.0 * charge, 1e-9);
    // the winding's heat is what is left of the stored and the delivered energy
    let stored = 0.5 * l * start * start;
    assert!(kick.in_output.base() < stored + V * charge, "the winding takes a share");
    // it lets go at 0.6 V / 24 ohm
    let low = 0.6 / 24.0;
    let lets_go = l / r * ((start * r + net) / (low * r + net)).ln();
    near(kick.lets_go.expect("it does").base(), lets_go, 1e-9);
}

#[test]
fn a_diode_makes_a_valve_let_go_later_than_a_resistor_and_a_clamp() {
    let mut clamped = on_a_switch(valve(Suppression::None));
    clamped.output.clamp = Some(Band::exact(volts(42.0)));
    let resistor = Suppression::Resistor(Band::exact(ohms(150.0)));
    let of = |wiring: &Wiring| turned_off(wiring).lets_go.expect("it does").base();
    let (diode, resistor, clamp) =
        (of(&on_a_switch(valve(diode()))), of(&on_a_switch(valve(resistor))), of(&clamped));
    assert!(clamp < resistor && resistor < diode, "{clamp} s, {resistor} s, {diode} s");
    // 24 and 150 ohm side by side on 0.1 ohm; then the current dies through 150 ohm and its own 24
    let beside = 24.0 * 150.0 / 174.0;
    let start = V * beside / (beside + 0.1) / 24.0;
    near(resistor, 0.03 / 174.0 * (start / (0.6 / 24.0)).ln(), 1e-9);
}

#[test]
fn a_half_bridge_catches_the_kick_with_its_other_switch() {
    let wiring = wiring(Stage::HalfBridge, OnLevel::Ground, valve(Suppression::None));
    let kick = turned_off(&wiring);
    assert_eq!(kick.path.map(|it| it.catcher), Some(Catcher::Switch));
    near(
        kick.lets_go.expect("it does").base(),
        0.03 / 24.1 * ((V / 24.1) / (0.6 / 24.0)).ln(),
        1e-9,
    );
}

/// By hand: a logic output stands at its own 5 V when its upper switch takes over, so that a winding to 5 V runs on against nothing,
/// through 10 ohm and its own 100; 8 ohm beside it ask for less than that switch, 12 ohm for more.
#[test]
fn a_logic_output_catches_a_kick_at_its_five_volts() {
    let of = |suppression| {
        let inductance = Band::exact(henries(0.03));
        let load =
            Load { inductance, suppression, ..load(LoadKind::Solenoid, 100.0, FarEnd::FiveVolt) };
        let mut wiring = wiring(Stage::Logic, OnLevel::Ground, load);
        wiring.output.on_resistance = Band::exact(ohms(10.0));
        turned_off(&wiring)
    };
    let caught = |ohm| of(Suppression::Resistor(Band::exact(ohms(ohm)))).path.map(|it| it.catcher);
    assert_eq!(caught(8.0), Some(Catcher::Resistor));
    assert_eq!(caught(12.0), Some(Catcher::Switch));
    let bare = of(Suppression::None);
    assert_eq!(bare.path.map(|it| it.catcher), Some(Catcher::Switch));
    let (start, low) = (5.0 / 110.0, 0.6 / 100.0);
    near(bare.lets_go.expect("it does").base(), 0.03 / 110.0 * f64::ln(start / low), 1e-9);
}

#[test]
fn nothing_catches_the_kick_of_a_bare_coil_on_a_bare_switch() {
    let bare = on_a_switch(valve(Suppression::None));
    assert_eq!(turned_off(&bare).path, None);
    let found = troubles(&bare);
    assert!(found.contains(&Trouble::KickUncaught), "{found:?}");
    let caught = troubles(&on_a_switch(valve(diode())));
    assert!(!caught.contains(&Trouble::KickUncaught), "{caught:?}");
}

#[test]
fn a_clamp_that_may_take_less_is_a_no() {
    let mut wiring = on_a_switch(valve(Suppression::None));
    wiring.output.clamp = Some(Band::exact(volts(42.0)));
    let taken = turned_off(&wiring).in_output.base();
    let mut bears = |joule: f64| {
        wiring.output.clamp_energy = Some(Band::exact(joules(joule)));
        !troubles(&wiring).contains(&Trouble::KickTooStrong)
    };
    assert!(bears(1.001 * taken) && !bears(0.999 * taken), "{taken} J");
}

/// The energy goes with the inductance: what lies between that of the least and that of the most is not sure.
#[test]
fn a_clamp_between_the_least_and_the_most_kick_is_a_doubt() {
    let mut wiring = on_a_switch(valve(Suppression::None));
    wiring.output.clamp = Some(Band::exact(volts(42.0)));
    let most = turned_off(&wiring).in_output.base();
    let exact = wiring.loads[0].inductance.nominal;
    wiring.loads[0].inductance = Band { low: exact * 0.5, nominal: exact, high: exact };
    let mut found = |joule: f64| {
        wiring.output.clamp_energy = Some(Band::exact(joules(joule)));
        let found = troubles(&wiring);
        (found.contains(&Trouble::KickTooStrong), found.contains(&Trouble::KickPerhapsTooStrong))
    };
    assert_eq!(found(1.001 * most), (false, false));
    assert_eq!(found(0.999 * most), (false, true));
    assert_eq!(found(0.501 * most), (false, true));
    assert_eq!(found(0.499 * most), (true, false));
}

#[test]
fn a_diode_the_wrong_way_round_is_a_dead_short() {
    let wrong = on_a_switch(valve(Suppression::Diode { is_right_way: false }));
    assert_eq!(troubles(&wrong)[0], Trouble::ShortedByDiode);
    // 12.6 V over 0.1 ohm and the diode
    let rest = solved(&wrong, &bench(V, 47.0));
    let on = &rest.state(KeyState::On).expect("solved").nominal.operating;
    assert!(on.switch_current().base() > (V - 0.7) / 0.15, "{:?}", on.switch_current());
    assert!(!troubles(&on_a_switch(valve(diode()))).contains(&Trouble::ShortedByDiode));
}

#[test]
fn fast_pulses_give_a_valve_its_duty_less_the_diodes_share() {
    let it = pulsing(&on_a_switch(pulsed(valve(diode()), 20e3, 0.4)));
    // volt-second balance: D (V - i 24.1) = (1 - D) (0.7 + i 24.05)
    let mean = (0.4 * V - 0.6 * 0.7) / (0.4 * 24.1 + 0.6 * 24.05);
    near(it.mean.base(), mean, 1e-4);
    // ripple: (V - i R) D T / L
    near(it.most.base() - it.least.base(), (V - 24.1 * mean) * 0.4 / 20e3 / 0.03, 1e-2);
    assert_eq!(
        it.following(volts(5.0), volts(1.0)),
        Following::Rests,
        "5.0 V is more than it gets"
    );
    assert_eq!(it.following(volts(4.0), volts(1.0)), Following::Stays);
}

#[test]
fn slow_pulses_work_a_valve_each_time() {
    let it = pulsing(&on_a_switch(pulsed(valve(diode()), 10.0, 0.5)));
    near(it.most.base(), V / 24.1, 1e-9);
    assert!(it.least.base().abs() < 1e-12, "it has fallen: {it:?}");
    assert_eq!(it.following(volts(9.0), volts(1.0)), Following::EachPulse);
}

#[test]
fn a_clamp_gets_hot_by_what_it_takes_that_often() {
    let mut wiring = on_a_switch(pulsed(valve(Suppression::None), 50.0, 0.5));
    wiring.output.clamp = Some(Band::exact(volts(42.0)));
    let (it, once) = (pulsing(&wiring), turned_off(&wiring));
    // ten milliseconds are eight time constants: each pulse ends at the full current
    near(it.heat.base(), 50.0 * once.in_output.base(), 1e-2);
}

#[test]
fn a_resistance_follows_at_once() {
    let it =
        pulsing(&on_a_switch(pulsed(load(LoadKind::Resistor, 6.0, FarEnd::Ignition), 100.0, 0.3)));
    near(it.mean.base(), 0.3 * V / 6.1, 1e-9);
    near(it.most.base(), V / 6.1, 1e-9);
}

#[test]
fn an_output_pulsed_beyond_its_limit_is_a_no_and_a_faster_one_is_not() {
    let mut wiring = on_a_switch(pulsed(valve(diode()), 300.0, 0.5));
    wiring.output.pulse_limit = Some(Band::exact(hertz(100.0)));
    assert_eq!(troubles(&wiring)[0], Trouble::TooFast);
    wiring.output.pulse_limit = Some(Band::exact(hertz(1000.0)));
    assert!(!troubles(&wiring).contains(&Trouble::TooFast));
}

#[test]
fn a_pulsed_relay_chatters_when_its_current_dies_between_the_pulses() {
    let relay = Load { suppression: diode(), ..load(LoadKind::RelayCoil, 85.0, FarEnd::Ignition) };
    let slow = troubles(&on_a_switch(pulsed(relay.clone(), 4.0, 0.5)));
    assert!(slow.contains(&Trouble::Chatters), "{slow:?}");
    let fast = troubles(&on_a_switch(pulsed(relay, 20e3, 0.9)));
    assert!(!fast.contains(&Trouble::Chatters), "{fast:?}");
}

/// A motor on a clamp, whose band of inductance is wide: at both ends of it the clamp stays below a watt, between them
/// it does not. The heat at the place found here is worked once more from its own swing, `f L` times what falls.
#[test]
fn a_clamp_may_be_hottest_between_the_ends_of_a_band() {
    let pulsed_at = |milli: [f64; 2]| {
        let [low, high] = milli.map(|it| henries(it * 1e-3));
        let inductance = Band { low, nominal: low, high };
        let load = Load {
            inductance,
            suppression: Suppression::None,
            ..load(LoadKind::Motor, 3.759, FarEnd::FiveVolt)
        };
        let mut wiring = on_a_switch(pulsed(load, 4290.0, 0.81148));
        wiring.output.clamp = Some(Band::exact(volts(35.0)));
        wiring
    };
    let heats = |milli| troubles(&pulsed_at(milli)).contains(&Trouble::KicksHeat);
    assert!(!heats([0.1, 0.1]) && !heats([2.0, 2.0]), "either end by itself is cool");
    assert!(heats([0.7, 0.7]), "between them it is not");
    assert!(heats([0.1, 2.0]), "so the band is not either");
    let judgement = judge(&solved(&pulsed_at([0.1, 2.0]), &bench(V, 47.0)), |_| true);
    let found = judgement.found.iter().find(|it| it.trouble == Trouble::KicksHeat);
    let it = found.expect("it is hot").worst.operating.pulsing.expect("it is pulsed");
    let path = it.path.expect("a clamp");
    // what is stored and what the 5 V still push, less what the winding turns to heat, goes into the clamp
    let fell = it.inductance.base() * (it.most - it.least).base();
    let charge = (fell - path.net.base() * it.fallen.expect("it falls to nothing").base())
        / -it.winding.base();
    near(it.heat.base(), it.frequency.base() * path.drop.base() * charge.abs(), 1e-9);
}

/// Where nothing flows, or nothing is wound, nothing kicks.
#[test]
fn only_a_current_in_a_winding_kicks() {
    let wiring = on_a_switch(valve(Suppression::None));
    let rest = solved(&wiring, &bench(V, 47.0));
    let on = &rest.state(KeyState::On).expect("solved").nominal;
    assert!(kick(&wiring, on, henries(0.03)).is_some(), "half an ampere in a winding");
    assert!(kick(&wiring, on, henries(0.0)).is_none(), "no winding");
    let off = &rest.state(KeyState::Off).expect("solved").nominal;
    assert!(kick(&wiring, off, henries(0.03)).is_none(), "no current");
}

/// A load acts from its pull-in on, and lets go below its drop-out.
#[test]
fn a_pulsed_load_acts_at_the_very_voltage_from_which_it_does() {
    let mut pulsing = pulsing(&on_a_switch(pulsed(valve(diode()), 200.0, 0.5)));
    let (least, most) = (pulsing.driving(pulsing.least), pulsing.driving(pulsing.most));
    assert!(least.base() > 0.0 && least < most, "{pulsing:?}");
    let more = |it| it + volts(1e-6);
    assert_eq!(pulsing.following(most, least), Following::Stays, "both are reached");
    assert_eq!(pulsing.following(more(most), least), Following::Rests);
    assert_eq!(pulsing.following(most, more(least)), Following::EachPulse);
    pulsing.least = quietpin_core::quantity::amperes(0.0);
    assert_eq!(pulsing.following(most, volts(-1.0)), Following::EachPulse, "nothing is left");
}

/// What a controller that outlives the key is told to switch on is no state of rest: by hand, a half-bridge that rests at ground lets
/// nothing through a valve on a dead feed, and one that is switched to battery drives 12.6 V through 24 ohm and 47.
#[test]
fn what_is_switched_on_after_the_key_is_off_is_no_rest() {
    let mut wiring = wiring(Stage::HalfBridge, OnLevel::Battery, valve(Suppression::None));
    wiring.output.outlives_key = Some(true);
    let rest = solved(&wiring, &bench(V, 47.0));
    let state = rest.state(KeyState::Outlived).expect("it hangs on the key");
    let driven = state.corners.iter().filter_map(|it| it.load()).map(|it| it.current.base().abs());
    let most = driven.fold(0.0, f64::max);
    near(most, V / (24.0 + 47.0), 0.01);
    let current = state.current().expect("solved");
    assert!(current.low.base().abs().max(current.high.base().abs()) < 1e-6, "{current:?}");
}
