//! What must hold for any battery and any drain.

use proptest::prelude::*;
use quietpin_core::{
    battery::{standstill, until_half},
    quantity::{Band, ampere_hours, amperes},
    report::{Memory, report, report_after},
};

use super::{cases::HEATER, figure, plan};

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(200) })]

    /// More drain never lasts longer, and more capacity never shorter.
    #[test]
    fn more_drain_never_lasts_longer(
        capacity in 1.0..500.0, more_capacity in 0.0..100.0, drain in 0.0..10.0, more in 0.0..10.0,
    ) {
        let band = |ah: f64| Band::with_tolerance(ampere_hours(ah), 0.1);
        let current = |a: f64| Band::with_tolerance(amperes(a), 0.2);
        let time = until_half(&band(capacity), &current(drain));
        let sooner = until_half(&band(capacity), &current(drain + more));
        let later = until_half(&band(capacity + more_capacity), &current(drain));
        prop_assert!(time.low <= time.nominal && time.nominal <= time.high);
        prop_assert!(sooner.low <= time.low && sooner.nominal <= time.nominal && sooner.high <= time.high);
        prop_assert!(later.low >= time.low && later.high >= time.high);
        prop_assert!(standstill(sooner.low) <= standstill(time.low));
    }

    /// Two outputs that nothing joins draw what each draws alone.
    #[test]
    fn two_separate_outputs_draw_the_sum_of_each_alone(
        one in 100..5000_u32, other in 100..5000_u32, up in 100..5000_u32,
    ) {
        let (one, other, up) = (format!("{one} ohm"), format!("{other} ohm"), format!("{up} ohm"));
        let pulled = |at: usize, down: &str| {
            let at = |field: &str| format!("outputs.{at}.{field}");
            [
                (at("stage"), "open-drain".to_owned()),
                (at("pull_up"), up.clone()),
                (at("pull_up_rail"), "battery".to_owned()),
                (at("pull_down"), down.to_owned()),
            ]
        };
        let drain = |typed: &[(String, String)]| {
            let typed: Vec<_> = typed.iter().map(|(path, text)| (path.as_str(), text.as_str())).collect();
            figure(&report(&plan(&typed)), "standing.figure-drain")
        };
        let both = drain(&[pulled(0, &one), pulled(1, &other)].concat());
        let sum = drain(&pulled(0, &one)).zip(drain(&pulled(0, &other))).map(|(one, other)| one + other);
        let apart = both.zip(sum).map(|(both, sum)| (both - sum).abs());
        prop_assert!(apart.is_some_and(|apart| apart < 1e-12), "{both:?} instead of {sum:?}");
    }
}

/// By hand: a heater on permanent battery draws through its half-bridge into the dead supply, less the more it has itself.
#[test]
fn what_is_remembered_of_a_load_goes_when_the_load_is_another() {
    let with = |ohm: &str| plan(&[&HEATER[..], &[("loads.0.resistance", ohm)]].concat());
    let mut memory = Memory::detailed();
    let drains: Vec<_> = ["5 ohm", "50 ohm", "500 ohm", "500 ohm", "5 ohm"]
        .map(|ohm| figure(&report_after(&mut memory, &with(ohm)), "standing.figure-drain"))
        .to_vec();
    let [five, fifty, more, same, again] = drains.as_slice() else { return };
    assert!(five > fifty && fifty > more && more == same && five == again, "{drains:?}");
}
