//! Limits and usual values of injectors, from both sides.
//!
//! All are common practice without a source; the arithmetic stands beside each.

use quietpin_core::{
    injector::{
        InjectorInputs, ballast,
        branch::{self, Ballast, CurrentEnd, InjectorBranch},
        carrying::Carrying,
        controlled::PeakWindow,
        opening::Opening,
    },
    quantity::{Band, Measure, amperes, ohms, watts},
    working::Working,
};

use super::{bare, usual};

/// By hand: a resistor of 10 W is loaded to 5 W, one of 25 W to 12.5 W.
#[test]
fn a_resistor_is_loaded_to_half_of_what_it_is_sold_for() {
    let ratings = [5.0, 10.0, 25.0, 50.0, 100.0, 250.0];
    let rating =
        |heat: f64| ballast::rating(watts(heat), &mut Working::new()).map(|it| it.base().round());
    let larger = ratings.into_iter().skip(1).map(Some).chain([None]);
    for (sold, next) in ratings.into_iter().zip(larger) {
        assert_eq!(rating(sold * 0.48), Some(sold), "{sold} W");
        assert_eq!(rating(sold * 0.52), next, "above {sold} W");
    }
}

/// By hand: 1.5 W in 2.4 Ω are √(1.5 / 2.4) = 0.791 A; with twice the watts 1.118 A.
#[test]
fn what_is_taken_to_open_an_injector_may_be_half_of_its_watts() {
    let opening = Opening::of(&bare(2.4));
    assert!((opening.current.nominal.base() - 0.790_569).abs() < 1e-6, "{opening:?}");
    assert!((opening.surely().base() - 1.118_034).abs() < 1e-6, "{opening:?}");
}

/// By hand: the margin is −2.8 % where the most is 1.028 of the limit, and −3.2 % where it is 1.032.
#[test]
fn three_hundredths_over_a_limit_are_a_hair() {
    let corners = branch::at_corners(&bare(2.4), &Ballast::NONE);
    let most = branch::highest(&corners).output.high.base();
    for (over, is_hair) in [(1.028, true), (1.032, false)] {
        let found = Carrying::of(&corners, amperes(most / over));
        assert_eq!(found.is_hair, is_hair, "{over}: {found:?}");
    }
}

/// By hand: 2 A keep 5 % from an end at 1.901 A, and 4.7 % from one at 1.910 A; there it is 2.1 A. Between 1.09 A and 1.228 A with
/// their 5 % lies 1.15 A, a multiple of 0.05, and no tenth.
#[test]
fn a_peak_is_round_and_keeps_a_twentieth_from_the_ends_of_its_window() {
    let best = |least: f64, most: f64| {
        let [most_at, ..] = usual().corners();
        let (least, most) = (amperes(least), amperes(most));
        PeakWindow { least, most, most_at, working: Vec::new() }.best().base()
    };
    for (least, most, expected) in
        [(2.0 / 1.052, 2.3, 2.0), (2.0 / 1.047, 2.3, 2.1), (1.09, 1.228, 1.15)]
    {
        let found = best(least, most);
        assert!((found - expected).abs() < 1e-9, "{least} to {most}: {found} A");
    }
    let is_open = |least: f64, most: f64| {
        let [most_at, ..] = usual().corners();
        let (least, most) = (amperes(least), amperes(most));
        PeakWindow { least, most, most_at, working: Vec::new() }.is_open()
    };
    assert!(is_open(1.0, 2.0) && is_open(2.0, 2.0) && !is_open(2.0, 1.0), "any, one, none");
    // the upper end alike: 2 A are 5.2 % below 2.11 A, and 4.8 % below 2.1 A
    assert!((best(1.7, 2.0 / 0.948) - 2.0).abs() < 1e-9, "within");
    assert!((best(1.7, 2.0 / 0.952) - 1.9).abs() < 1e-9, "too near: {}", best(1.7, 2.0 / 0.952));
}

#[test]
fn where_no_resistor_is_there_is_no_heat_of_one() {
    assert!(ballast::heat_of_fitted(&bare(2.4)).is_none(), "none is fitted");
}

/// Ohm's law: what is in line with one injector stands once in its circuit, and what all share as often as there are of them.
#[test]
fn a_current_is_worked_by_the_resistors_that_are_there() {
    let formula = |per_output: u32, ballast: &Ballast| {
        let inputs = InjectorInputs { per_output, ..bare(2.4) };
        let [corner, ..] = usual().corners();
        let branch = InjectorBranch::at(&inputs, &corner, CurrentEnd::Most, ballast, &mut None);
        let mut working = Some(Working::new());
        branch.current(&mut working);
        let steps = working.map(Working::into_steps).unwrap_or_default();
        steps.last().map_or("", |it| it.symbols).replace("R_T + R_w + R_c", "R")
    };
    let ohm = Band::exact(ohms(4.7));
    let each = Ballast { each: ohm, ..Ballast::NONE };
    let shared = Ballast { shared: ohm, ..Ballast::NONE };
    for (per_output, ballast, expected) in [
        (1, &Ballast::NONE, "I = V / (R + R_on)"),
        (1, &each, "I = V / (R + R_b + R_on)"),
        (2, &Ballast::NONE, "I = V / (R + n × R_on)"),
        (2, &each, "I = V / (R + R_b + n × R_on)"),
        (2, &shared, "I = V / (R + n × (R_b + R_on))"),
    ] {
        assert_eq!(formula(per_output, ballast), expected, "{per_output} and {ballast:?}");
    }
}
