//! Each limit of the judgement, from both sides of it.
//!
//! What a limit is stands beside its constant, with its source; here its number stands once more, so that neither moves alone.

use super::*;
use crate::{
    output::{
        Dead, DeadFlow, OnLevel, Output, PinBranch, Pulse, Stage, SupplyCorner, Suppression,
        Surroundings, rest,
    },
    quantity::{Band, celsius, henries, hertz, ohms, share, volts, watts},
};

/// A relay's coil from permanent battery to a switch to ground, pulsed; a battery at rest.
fn wiring() -> Wiring {
    let output = Output {
        current_limit: Some(Band::exact(amperes(2.0))),
        ..Output::plain(Stage::OpenDrain)
    };
    let pulse = Pulse { frequency: Band::exact(hertz(100.0)), duty: Band::exact(share(0.5)) };
    let load = Load { pulse: Some(pulse), ..Load::usual(LoadKind::RelayCoil, FarEnd::Battery) };
    Wiring::alone(output, OnLevel::Ground, vec![load])
}

fn rested() -> SupplyCorner {
    SupplyCorner {
        name: "at rest, 20 °C",
        supply: volts(12.6),
        temperature: celsius(20.0),
        is_cranking: false,
        is_charging: false,
    }
}

fn solved(wiring: &Wiring, state: KeyState) -> SolvedCorner {
    let at = rested();
    let dead = Band::exact(ohms(47.0));
    let around = Surroundings { corners: vec![at], nominal: at, dead_rail: dead, dead_feed: dead };
    let rest = rest(wiring, 0, &around).expect("there is a load");
    rest.state(state).expect("it is met").nominal.clone()
}

/// What is wrong where this is all that a corner is changed by.
fn with(state: KeyState, change: impl FnOnce(&mut Wiring, &mut SolvedCorner)) -> Vec<Trouble> {
    let mut wiring = wiring();
    let mut solved = solved(&wiring, state);
    let is_pulsed = state == KeyState::Pulsed;
    solved.operating.pulsing = solved.operating.pulsing.filter(|_| is_pulsed);
    solved.operating.dead.clear();
    solved.operating.from_battery = amperes(0.0);
    change(&mut wiring, &mut solved);
    troubles_at(&wiring, 0, state, &solved)
}

fn flow(dead: Dead, volt: f64, ampere: f64) -> DeadFlow {
    DeadFlow { dead, voltage: volts(volt), resistance: ohms(47.0), current: amperes(ampere) }
}

fn branch(part: PinPart, ampere: f64) -> PinBranch {
    PinBranch { part, behind: volts(0.0), resistance: ohms(0.05), current: amperes(ampere) }
}

/// The trouble begins at the limit: a twentieth more has it, a twentieth less has not.
#[track_caller]
fn check(trouble: Trouble, limit: f64, troubles: impl Fn(f64) -> Vec<Trouble>) {
    let (more, less) = (troubles(limit * 1.05), troubles(limit * 0.95));
    assert!(more.contains(&trouble), "{trouble:?} at {}: {more:?}", limit * 1.05);
    assert!(!less.contains(&trouble), "{trouble:?} at {}: {less:?}", limit * 0.95);
}

/// The same of a limit that has the trouble itself.
#[track_caller]
fn check_from(trouble: Trouble, limit: f64, troubles: impl Fn(f64) -> Vec<Trouble>) {
    let at = troubles(limit);
    assert!(at.contains(&trouble), "{trouble:?} at {limit} itself: {at:?}");
    check(trouble, limit, troubles);
}

/// The same of a limit up to which all is well.
#[track_caller]
fn check_beyond(trouble: Trouble, limit: f64, troubles: impl Fn(f64) -> Vec<Trouble>) {
    let at = troubles(limit);
    assert!(!at.contains(&trouble), "{trouble:?} at {limit} itself: {at:?}");
    check(trouble, limit, troubles);
}

/// Common practice, no source: 20 mA keep a controller alive, and 1 mA does where they lift its supply to 3 V; less than 1 mA is
/// nothing. A sensor's supply has 5 mA on it. A tenth of what a parked car takes, 5 mA, is too much for one output.
#[test]
fn what_flows_into_something_dead_counts_from_its_limit_on() {
    let into_rail = |volt: f64, ampere: f64| {
        with(KeyState::KeyOff, |_, it| it.operating.dead = vec![flow(Dead::Supply, volt, ampere)])
    };
    check_from(Trouble::WakesController, 0.020, |ampere| into_rail(1.0, ampere));
    check_from(Trouble::WakesController, 3.0, |volt| into_rail(volt, 0.010));
    check_from(Trouble::WakesController, 0.001, |ampere| into_rail(5.0, ampere));
    check_from(Trouble::LeaksIntoController, 0.001, |ampere| into_rail(1.0, ampere));
    check_from(Trouble::DrainsBattery, 0.005, |ampere| {
        with(KeyState::KeyOff, |_, it| it.operating.from_battery = amperes(ampere))
    });
    check_beyond(Trouble::LiftsLogicRail, 0.005, |ampere| {
        with(KeyState::Off, |_, it| it.operating.into_logic_rail = amperes(ampere))
    });
    check_beyond(Trouble::KeepsFeedAlive, 0.020, |ampere| {
        with(KeyState::FeedLost, |_, it| {
            it.operating.dead = vec![flow(Dead::Feed, 1.0, ampere)];
        })
    });
}

/// Common practice, no source: one ampere into a dead feed, or 6 V on it, drive what hangs there; through a diode 3 V do.
#[test]
fn a_dead_feed_is_driven_by_amperes_or_by_volts() {
    let into_feed = |volt: f64, ampere: f64, by_diode: f64| {
        with(KeyState::Off, |_, it| {
            it.operating.dead = vec![flow(Dead::Ignition, volt, ampere)];
            it.operating.branches = vec![branch(PinPart::Suppressor(0), by_diode)];
        })
    };
    let trouble = Trouble::DrivesDeadFeed;
    check_from(trouble, 1.0, |ampere| into_feed(2.0, ampere, 0.0));
    check_from(trouble, 6.0, |volt| into_feed(volt, 0.5, 0.0));
    check_from(trouble, 0.020, |ampere| into_feed(8.0, ampere, 0.0));
    check_from(trouble, 3.0, |volt| into_feed(volt, 0.0, 0.5));
    check_from(trouble, 0.001, |by_diode| into_feed(4.0, 0.0, by_diode));
}

/// Common practice, no source: more than an ampere through the diode across a load that is on is a short.
#[test]
fn a_diode_that_carries_more_than_an_ampere_shorts_what_drives_it() {
    check_beyond(Trouble::ShortedByDiode, 1.0, |ampere| {
        with(KeyState::On, |wiring, it| {
            wiring.loads[0].suppression = Suppression::Diode { is_right_way: true };
            it.operating.branches = vec![branch(PinPart::Suppressor(0), -ampere)];
        })
    });
}

/// The corners differ by a tenth: what holds a load in by no more than that beyond what holds it in at rest is the same thing.
#[test]
fn what_differs_by_a_tenth_is_one_cause() {
    let found = |trouble, state| {
        let worst = solved(&wiring(), KeyState::Off);
        Found { trouble, state, holds: Holds::Always, worst }
    };
    let at_rest = found(Trouble::MayStayIn, KeyState::Off);
    let later = found(Trouble::MayStayInKeyOff, KeyState::KeyOff);
    for (times, is_same) in [(1.05, true), (1.1, true), (1.15, false)] {
        let bad = |it: &Found| if it.trouble == Trouble::MayStayIn { 1.0 } else { times };
        assert_eq!(is_same_cause(&later, &at_rest, &bad), is_same, "{times}");
    }
}

/// What catches the spike of each pulse is no short, nor is a resistor there, nor a diode through which nothing flows.
#[test]
fn only_a_diode_that_conducts_while_the_load_is_on_for_good_shorts_it() {
    let diode = Suppression::Diode { is_right_way: true };
    let shorted = |state, suppression, ampere: f64| {
        let found = with(state, |wiring, it| {
            wiring.loads[0].suppression = suppression;
            it.operating.branches = vec![branch(PinPart::Suppressor(0), -ampere)];
        });
        found.contains(&Trouble::ShortedByDiode)
    };
    assert!(shorted(KeyState::On, diode, 2.0));
    assert!(!shorted(KeyState::On, diode, 0.0), "nothing flows");
    assert!(!shorted(KeyState::Pulsed, diode, 2.0), "the spike");
    assert!(!shorted(KeyState::On, Suppression::Resistor(Band::exact(ohms(5.0))), 2.0));
}

/// By hand: what a data sheet rates to 2 A is known to three hundredths.
#[test]
fn a_hair_over_the_limit_of_an_output_is_told_as_such() {
    let carrying = |ampere: f64| {
        with(KeyState::On, |_, it| {
            it.operating.branches = vec![branch(PinPart::LowerSwitch, ampere)];
            it.point.phase = Phase::Running;
        })
    };
    for (ampere, expected) in [
        (1.9, None),
        (2.0, None),
        (2.04, Some(Trouble::AtLimit)),
        (2.1, Some(Trouble::TooMuchCurrent)),
    ] {
        let found = carrying(ampere);
        let found =
            found.into_iter().find(|it| [Trouble::AtLimit, Trouble::TooMuchCurrent].contains(it));
        assert_eq!(found, expected, "{ampere} A");
    }
}

/// Common practice, no source: a switch without a heat sink gets rid of a watt, and none of five.
#[test]
fn a_switch_is_hot_from_a_watt_on_and_melts_from_five() {
    let heated = |watt: f64| {
        with(KeyState::Pulsed, |_, it| {
            let pulsing = it.operating.pulsing.as_mut().expect("it is pulsed");
            pulsing.heat = watts(watt);
        })
    };
    check_beyond(Trouble::KicksHeat, 1.0, heated);
    check_beyond(Trouble::KicksMelt, 5.0, heated);
    assert!(!heated(5.5).contains(&Trouble::KicksHeat), "one of both is told");
}

/// From memory: a clamp whose data are not known takes 25 to 100 mJ, 50 between, and none of an output takes 300.
#[test]
fn a_kick_counts_from_the_joules_that_a_clamp_bears() {
    let kicked = |joule: f64| {
        with(KeyState::On, |wiring, it| {
            let one = henries(1.0);
            let energy = kick(wiring, it, one).expect("it is wound").in_output.base();
            // as much more energy as inductance
            wiring.loads[0].inductance = Band::exact(one * (joule / energy));
        })
    };
    check(Trouble::KickBeyondUsual, 0.05, kicked);
    check(Trouble::KickBeyondAny, 0.3, kicked);
}

/// From memory: the 5 V of a controller have 50 mA left.
#[test]
fn the_five_volts_have_fifty_milliamperes_for_a_load() {
    check_beyond(Trouble::LoadsLogicRail, 0.05, |ampere| {
        with(KeyState::On, |wiring, it| {
            wiring.loads[0].far_end = FarEnd::FiveVolt;
            it.operating.loads[0].current = amperes(ampere);
        })
    });
}

/// A relay may stay in from 0.48 V on and is sure to from 1.2 V on (`reference/relay_facts.json`): with a fuse pulled the latter counts.
#[test]
fn without_its_feed_a_relay_counts_as_held_where_most_of_its_kind_stay_in() {
    check(Trouble::ActsWithoutFeed, 1.2, |volt| {
        with(KeyState::FeedLost, |_, it| it.operating.loads[0].voltage = volts(-volt))
    });
}

/// A valve that none of its kind moves below 5 V is live at rest on a battery, and not on one of 3 V.
#[test]
fn what_holds_at_each_corner_holds_always() {
    let output = Output::plain(Stage::HalfBridge);
    let valve = Load::usual(LoadKind::Solenoid, FarEnd::Ground);
    let wiring = Wiring::alone(output, OnLevel::Ground, vec![valve]);
    let corner = |name, supply| SupplyCorner { name, supply: volts(supply), ..rested() };
    let holds = |supply: f64| {
        let corners = vec![corner("one", 12.6), corner("other", supply)];
        let dead = Band::exact(ohms(47.0));
        let around = Surroundings { corners, nominal: rested(), dead_rail: dead, dead_feed: dead };
        let judgement = judge(&rest(&wiring, 0, &around).expect("there is a load"), |_| true);
        let found = judgement.found.into_iter().find(|it| it.trouble == Trouble::LiveAtRest);
        found.expect("it is live").holds
    };
    assert_eq!(holds(14.0), Holds::Always);
    assert_eq!(holds(3.0), Holds::AtSome(vec!["one".to_owned()]));
}

/// By hand: a supply of 5 V is within a tenth, 5.5 V; an input that bears 10 V is told of beyond 11.
#[test]
fn an_input_bears_what_it_is_made_for_and_a_tenth_more() {
    let across = |volt: f64, bears: Option<f64>| {
        with(KeyState::On, |wiring, it| {
            // with a pull-up to the battery of its own it would bear that
            wiring.loads[0].far_end = FarEnd::Ground;
            wiring.loads[0].kind = LoadKind::LogicInput;
            wiring.loads[0].bears = bears.map(volts);
            it.operating.loads[0].voltage = volts(-volt);
        })
    };
    check(Trouble::PerhapsOverVoltage, 5.5, |volt| across(volt, None));
    check(Trouble::OverVoltage, 11.0, |volt| across(volt, Some(10.0)));
}
