//! What must hold for any coil on any engine.

use proptest::prelude::*;
use quietpin_core::{
    channels::Ignition,
    coil::{
        CoilInputs, answer,
        feed::{CoilFeed, CoilFeedParts},
    },
    conditions::Conditions,
    engine::{Engine, EngineKind, Spacing},
    quantity::{Band, Measure, amperes, celsius, henries, ohms, seconds, volts},
};

use super::{bare, running};

const MODES: [Ignition; 5] = [
    Ignition::Sequential,
    Ignition::EveryTurn,
    Ignition::PairedSingle,
    Ignition::PairedDouble,
    Ignition::Distributor,
];

prop_compose! {
    fn coils()(
        cylinders in 1..=12_u32,
        mode in prop::sample::select(MODES.to_vec()),
        kind in prop::sample::select(vec![EngineKind::FourStroke, EngineKind::TwoStroke]),
        resistance in 0.2..2.0,
        inductance in 0.5e-3..8e-3,
        wanted in 2.0..9.0,
        drop in 0.0..2.0,
        limit in prop::option::of(3.0..15.0),
        speed in 100.0..14000.0,
        spark in 0.0..2e-3,
    ) -> CoilInputs {
        let order: Vec<u32> = (1..=cylinders).collect();
        let engine = Engine::new(kind, cylinders, &order, &Spacing::Even).expect("an engine");
        let spread = |middle: f64, make: fn(f64) -> _| Band::with_tolerance(make(middle), 0.1);
        CoilInputs {
            resistance: spread(resistance, ohms),
            inductance: Band::with_tolerance(henries(inductance), 0.1),
            wanted: amperes(wanted),
            drop: Band::exact(volts(drop)),
            limit: limit.map(|limit| Band::exact(amperes(limit))),
            spark: Band::exact(seconds(spark)),
            conditions: Conditions::between(Band { low: volts(8.0), nominal: volts(12.6), high: volts(14.8) }, Band { low: celsius(-20.0), nominal: celsius(20.0), high: celsius(100.0) }),
            ..running(14.0, &engine, mode, speed)
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(500) })]

    /// More supply never takes longer, and the shortest is no longer than the longest.
    #[test]
    fn more_supply_charges_sooner(inputs in coils()) {
        let found = answer(&inputs).expect("a coil");
        for pair in found.dwells.windows(2) {
            let [one, more] = pair else { continue };
            if let (Some(time), Some(sooner)) = (one.nominal, more.nominal) {
                prop_assert!(sooner <= time, "{one:?}, then {more:?}");
            }
            prop_assert!(one.nominal.is_none() || more.nominal.is_some(), "{one:?}, then {more:?}");
        }
        for dwell in &found.dwells {
            if let (Some(least), Some(most)) = (dwell.least, dwell.most) {
                prop_assert!(least <= most, "{dwell:?}");
            }
        }
    }

    /// What the coils take on average, times the supply, is the heat in coils and igniters and the energy of the sparks.
    #[test]
    fn the_power_that_is_taken_goes_into_heat_and_sparks(inputs in coils()) {
        let Some(at) = answer(&inputs).expect("a coil").at_speed else { return Ok(()) };
        let (pattern, speed) = (inputs.pattern.as_ref().expect("given"), inputs.speed.expect("given"));
        let taken = &at.taken;
        let power = taken.mean.base() * inputs.conditions.supply.high.base();
        let per_second = f64::from(taken.coils) * 6.0 * speed.base() / pattern.mean_degrees();
        let heat = f64::from(taken.coils) * (taken.in_coil.base() + taken.in_igniter.base());
        // every coil has the current wanted at the end, but where there is no time for it
        let is_cut = at.available < at.needed;
        let sparks = per_second * 0.5 * inputs.inductance.nominal.base() * inputs.wanted.base().powi(2);
        if is_cut {
            prop_assert!(power <= (heat + sparks) * (1.0 + 1e-9), "{power} W, {heat} W and {sparks} W");
        } else {
            prop_assert!((power - heat - sparks).abs() <= 1e-9 * power, "{power} W, {heat} W and {sparks} W");
        }
    }

    /// The highest instant is no less than the mean, no coil carries more than the current wanted, and more relays
    /// never have more to carry each.
    #[test]
    fn more_relays_share_what_one_carries(inputs in coils(), relays in 1..6_u32) {
        let Some(at) = answer(&inputs).expect("a coil").at_speed else { return Ok(()) };
        let taken = &at.taken;
        prop_assert!(taken.peak.base() >= taken.mean.base() * (1.0 - 1e-9), "{taken:?}");
        prop_assert!(
            taken.peak.base() <= f64::from(taken.at_once) * inputs.wanted.base() * (1.0 + 1e-9), "{taken:?}"
        );
        let feed = |relays| {
            CoilFeed::new(taken, &CoilFeedParts { relays, relay: None, fuse: None, lead: None, hot: celsius(100.0), others: amperes(0.0) })
        };
        let (one, more) = (feed(relays), feed(relays + 1));
        prop_assert!(more.mean <= one.mean && more.peak <= one.peak, "{one:?}, {more:?}");
        // a square's mean is no less than the mean's square, and no more than the highest
        prop_assert!(one.effective.base() >= one.mean.base() * (1.0 - 1e-2), "{one:?}");
        prop_assert!(one.effective.base() <= one.peak.base() * (1.0 + 1e-9), "{one:?}");
        prop_assert!(more.effective.base() <= one.effective.base() * (1.0 + 1e-9), "{one:?}, {more:?}");
        prop_assert!(feed(1).peak.base() >= taken.peak.base() * (1.0 - 1e-12), "{taken:?}");
    }
}

/// One supply is one row, two are two and each whole volt between.
#[test]
fn each_supply_stands_once_in_the_table_of_dwells() {
    let rows = |low: f64, high: f64| {
        let supply = Band::between(volts(low), volts(high));
        let conditions = Conditions::between(supply, Band::exact(celsius(20.0)));
        answer(&CoilInputs { conditions, ..bare(12.0) }).expect("a coil").dwells.len()
    };
    for (low, high, count) in [(12.5, 12.5, 1), (12.0, 12.0, 1), (12.5, 12.7, 2), (11.5, 14.2, 5)] {
        assert_eq!(rows(low, high), count, "{low} V to {high} V");
    }
}
