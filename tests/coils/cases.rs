//! Tables, and cases worked by hand.

use quietpin_core::{
    channels::Ignition,
    coil::{
        CoilInputs, answer,
        cures::CoilCures,
        feed::{CoilFeed, CoilFeedParts},
        held::BurningPart,
        pattern::Pattern,
    },
    conditions::Conditions,
    engine::{Engine, EngineKind, Spacing},
    quantity::{
        Band, CrankAngle, Holds, Measure, amperes, celsius, henries, ohms, seconds, share, volts,
    },
};
use quietpin_tests::{Checked, Worst, reference, rows};

use super::{bare, even, exact, near, running, typed};

const EIGHT: [u32; 8] = [1, 8, 4, 3, 6, 5, 7, 2];

/// Source: `ignition_dwell_energy.csv`.
pub(crate) fn dwells() -> Checked {
    let mut worst = Worst::default();
    for row in rows("ignition_dwell_energy.csv") {
        let inputs = CoilInputs {
            resistance: Band::exact(ohms(row.number("R_total_ohm"))),
            inductance: Band::exact(henries(row.number("L_H"))),
            wanted: amperes(row.number("I_target_A")),
            ..bare(row.number("V_supply"))
        };
        let found = answer(&inputs).expect("there is such a coil");
        let dwell = found.dwells.first().expect("one supply").nominal;
        let listed = row.text("dwell_ms_exact");
        if listed.is_empty() {
            assert_eq!(dwell, None, "{}: never reached", row.place());
            assert_eq!(found.falls_short, Holds::Always, "{}", row.place());
            continue;
        }
        let ms = dwell.map(|dwell| dwell.base() * 1e3);
        worst.check(
            &row.place(),
            ms,
            row.number("dwell_ms_exact"),
            1e-8 * row.number("dwell_ms_exact"),
        );
        let mj = found.charge.energy.base() * 1e3;
        worst.check(
            &row.place(),
            Some(mj),
            row.number("energy_mJ"),
            1e-8 * row.number("energy_mJ"),
        );
    }
    let against = "a table computed from V/R (1 − exp(−tR/L)) and ½LI²";
    worst.checked("coils", "Dwell and energy of a coil", against, "ms, mJ")
}

#[test]
fn the_dwell_and_the_energy_are_those_of_the_table() {
    dwells();
}

/// Source: `available_time` of `ignition_facts.json`.
#[test]
fn there_is_as_much_time_as_the_facts_say() {
    let facts: serde_json::Value =
        serde_json::from_str(&reference("ignition_facts.json")).expect("ignition_facts.json");
    let eight = even(EngineKind::FourStroke, &EIGHT);
    for (mode, fact) in [
        (Ignition::Sequential, "rpm_7000_sequential_ms"),
        (Ignition::EveryTurn, "rpm_7000_wasted_ms"),
        (Ignition::PairedSingle, "rpm_7000_wasted_ms"),
        (Ignition::PairedDouble, "rpm_7000_wasted_ms"),
    ] {
        let found = answer(&running(14.0, &eight, mode, 7000.0)).expect("a coil");
        let available = found.at_speed.expect("it runs").available.base() * 1e3;
        let listed = facts["available_time"][fact].as_f64().expect("a number");
        near(fact, available, listed, 1e-12);
    }
    // one coil for all eight: an eighth of two turns, 120 / 7000 / 8 s
    let found = answer(&running(14.0, &eight, Ignition::Distributor, 7000.0)).expect("a coil");
    near(
        "one coil",
        found.at_speed.expect("it runs").available.base(),
        120.0 / 7000.0 / 8.0,
        1e-12,
    );
}

#[track_caller]
fn check_pattern(
    engine: &Engine,
    mode: Ignition,
    coils: u32,
    least: f64,
    at_once: [(f64, u32); 2],
) {
    let pattern = Pattern::new(engine, mode);
    assert_eq!(pattern.coils(), coils, "{mode:?}");
    near("least", pattern.least().degrees(), least, 1e-12);
    for (dwell, expected) in at_once {
        assert_eq!(pattern.most_at_once(CrankAngle::new(dwell)), expected, "{mode:?}, {dwell}°");
    }
}

/// Worked by hand: an eight fires every 90 degrees, so a charge of 126 (3 ms at 7000 a minute) overlaps the next one; by
/// pairs two coils end together every 90 degrees of one turn.
#[test]
fn as_many_coils_are_charged_at_once_as_the_firing_order_makes() {
    let eight = even(EngineKind::FourStroke, &EIGHT);
    check_pattern(&eight, Ignition::Sequential, 8, 720.0, [(89.0, 1), (126.0, 2)]);
    check_pattern(&eight, Ignition::EveryTurn, 8, 360.0, [(89.0, 2), (126.0, 4)]);
    check_pattern(&eight, Ignition::PairedDouble, 4, 360.0, [(89.0, 1), (126.0, 2)]);
    check_pattern(&eight, Ignition::Distributor, 1, 90.0, [(45.0, 1), (89.0, 1)]);
    let three = even(EngineKind::FourStroke, &[1, 2, 3]);
    // every turn: 0, 240 and 480 degrees are 0, 240 and 120 of one turn
    check_pattern(&three, Ignition::EveryTurn, 3, 360.0, [(119.0, 1), (121.0, 2)]);
    // a rotary of two rotors: leading and trailing end together, 180 degrees apart
    let rotary = even(EngineKind::Rotary, &[1, 2]);
    check_pattern(&rotary, Ignition::Sequential, 4, 360.0, [(179.0, 2), (181.0, 4)]);
    // a two-stroke twin that fires both at once
    let together = Spacing::Angles(vec![CrankAngle::new(0.0), CrankAngle::new(0.0)]);
    let twin = Engine::new(EngineKind::TwoStroke, 2, &[1, 2], &together).expect("it is built");
    check_pattern(&twin, Ignition::Sequential, 2, 360.0, [(10.0, 2), (359.0, 2)]);
    // an odd-fire twin, 310 and 410 degrees: one coil has 310 at the least
    let uneven = Spacing::Angles(vec![CrankAngle::new(0.0), CrankAngle::new(310.0)]);
    let twin = Engine::new(EngineKind::FourStroke, 2, &[1, 2], &uneven).expect("it is built");
    check_pattern(&twin, Ignition::Distributor, 1, 310.0, [(90.0, 1), (300.0, 1)]);
    near("mean", Pattern::new(&twin, Ignition::Distributor).mean_degrees(), 360.0, 1e-12);
}

/// Worked by hand: 14 V over 0.5 ohm and 4 mH; 7.5 A after 8 ms ln(1 / (1 - 3.75 / 14)) = 2.494 ms.
#[test]
fn dwell_runs_out_where_the_time_is_the_time_that_is_needed() {
    let eight = even(EngineKind::FourStroke, &EIGHT);
    let inputs =
        CoilInputs { spark: exact("1 ms"), ..running(14.0, &eight, Ignition::Distributor, 3000.0) };
    let at = answer(&inputs).expect("a coil").at_speed.expect("it runs");
    let dwell = -8e-3 * f64::ln_1p(-3.75 / 14.0);
    near("needed", at.needed.base(), dwell, 1e-12);
    near("available", at.available.base(), 5e-3 - 1e-3, 1e-12);
    // 90 degrees in 3.494 ms: 15 / 3.494 ms turns a minute
    near("runs out", at.runs_out.base(), 15.0 / (dwell + 1e-3), 1e-12);
    near("duty", at.duty.base(), dwell / 5e-3, 1e-12);
    // charged for 49.9 % of the time
    for (limit, is_over) in [(0.48, true), (0.52, false)] {
        let limited = CoilInputs { duty_limit: Some(share(limit)), ..inputs.clone() };
        assert_eq!(at.is_over_duty(&limited), is_over, "{limit}");
        assert_eq!(at.is_enough(&limited), !is_over, "{limit}");
    }
}

/// Worked by hand: with 9 V of 14 V left at its limit of 10 A, an igniter takes 9 V · 10 A for as long as it holds it; a
/// coil that is held on without a limit comes to 14 V / 0.5 ohm.
#[test]
fn a_coil_held_on_carries_all_that_its_resistance_or_its_igniter_lets_through() {
    let free = answer(&bare(14.0)).expect("a coil").held;
    near("current", free.current.nominal.base(), 28.0, 1e-12);
    near("coil", free.in_coil.nominal.base(), 392.0, 1e-12);
    near("igniter", free.in_igniter.base(), 0.0, 1e-12);
    // 0.1 kg of copper, 387 J/(kg K), 100 K: 3870 J at 392 W
    near("rises", free.rises_in.nominal.base(), 3870.0 / 392.0, 1e-12);
    // 50 g and 150 g
    near("soonest", free.rises_in.low.base(), 1935.0 / 392.0, 1e-12);
    near("latest", free.rises_in.high.base(), 5805.0 / 392.0, 1e-12);
    let limit = Some(exact("10 A"));
    let held = answer(&CoilInputs { limit, ..bare(14.0) }).expect("a coil").held;
    near("current", held.current.nominal.base(), 10.0, 1e-12);
    near("igniter", held.in_igniter.base(), 90.0, 1e-12);
    // 3870 J at the coil's 50 W, 387 J at the igniter's 90 W
    assert_eq!(held.first.0, BurningPart::Igniter);
    near("first", held.first.1.base(), 387.0 / 90.0, 1e-12);
}

/// Worked by hand, a tenth of a second for the start being common practice without a source: 14 V over 0.5 ohm and 50 mH, whose time
/// constant that is, come to 28 A (1 − 1/e) = 17.7 A.
#[test]
fn a_coil_is_charged_for_a_tenth_of_a_second_while_the_controller_starts() {
    let slow = CoilInputs { inductance: exact("50 mH"), ..bare(14.0) };
    let charge = answer(&slow).expect("a coil").at_key_on;
    near("current", charge.current.base(), 28.0 * -f64::exp_m1(-1.0), 1e-9);
}

/// Worked by hand: 28 A (1 − exp(−t / 8 ms)) is what 90 degrees leave time for; the tenth below it is offered, where that is six
/// tenths of the 7.5 A wanted, 4.5 A, or more. A coil that is to have less than it gets is offered none.
#[test]
fn a_lower_current_is_offered_in_tenths_of_an_ampere_where_it_still_makes_a_spark() {
    let eight = even(EngineKind::FourStroke, &EIGHT);
    let less = |reached: f64| {
        let time = -8e-3 * f64::ln_1p(-reached / 28.0);
        let inputs = running(14.0, &eight, Ignition::Distributor, 15.0 / time);
        CoilCures::of(&inputs, None).less
    };
    let (current, energy) = less(5.27).expect("it is enough");
    near("current", current.base(), 5.2, 1e-9);
    near("energy", energy.base(), 0.5 * 4e-3 * 5.2 * 5.2, 1e-9);
    assert!(less(4.75).is_some(), "4.7 A are 63 %");
    assert_eq!(less(4.35), None, "4.3 A are 57 %");
    assert_eq!(less(7.6), None, "there is time for all of it");
}

/// A coil can't be charged beyond what its igniter holds.
#[test]
fn a_limit_below_the_current_wanted_is_never_passed() {
    let limit = Some(exact("7 A"));
    let found = answer(&CoilInputs { limit, ..bare(14.0) }).expect("a coil");
    assert_eq!(found.falls_short, Holds::Always);
    assert_eq!(found.dwells.first().and_then(|it| it.nominal), None);
}

/// Common practice, no source: a relay of 30 A for each bank of four coils on a V8, fed by heavy leads of about 4.5 m.
///
/// By hand, at 7000 turns a minute and 14 V, 2.494 ms of dwell are 104.7 degrees of 90: two coils at once, the second one
/// charged for 14.7 degrees (0.351 ms) when the first one ends.
#[test]
fn a_relay_of_30_amperes_for_four_coils_suits_coils_like_these() {
    let eight = even(EngineKind::FourStroke, &EIGHT);
    let inputs = running(14.0, &eight, Ignition::Sequential, 7000.0);
    let at = answer(&inputs).expect("a coil").at_speed.expect("it runs");
    assert_eq!(at.taken.at_once, 2);
    let dwell = -8e-3 * f64::ln_1p(-3.75 / 14.0);
    let second = -28.0 * f64::exp_m1((90.0 / 42000.0 - dwell) / 8e-3);
    near("peak", at.taken.peak.base(), 7.5 + second, 1e-9);
    // the charge of one dwell: 28 A (t - 8 ms (1 - exp(-t / 8 ms))) = 28 t - 8 ms 7.5 A
    let charge = 28.0 * dwell - 8e-3 * 7.5;
    near("mean", at.taken.mean.base(), 8.0 * charge / (120.0 / 7000.0), 1e-9);
    let parts = CoilFeedParts {
        relays: 2,
        relay: Some(amperes(30.0)),
        fuse: Some(amperes(20.0)),
        lead: Some((typed("4.5 m"), typed("6 mm2"))),
        hot: celsius(20.0),
        others: amperes(0.0),
    };
    let feed = CoilFeed::new(&at.taken, &parts);
    assert_eq!(feed.coils, 4);
    // both coils may be of one bank; 4.5 m of 6 mm² have up to 1.16 · 4.5 / (58 · 6) = 15 milliohm (IEC 60228, class 5)
    near("peak", feed.peak.base(), at.taken.peak.base(), 1e-12);
    near("mean", feed.mean.base(), at.taken.mean.base() / 2.0, 1e-12);
    near(
        "drop",
        feed.drop.expect("a lead").base(),
        feed.peak.base() * 1.16 * 4.5 / (58.0 * 6.0),
        1e-9,
    );
    assert!(feed.is_switched_by(amperes(30.0)) && feed.is_fused_by(amperes(20.0)));
    // alone in its quarter of the time a coil heats by the integral of its square, (V/R)² (t − 2 τ (1 − e) + τ/2 (1 − e²))
    let alone = CoilFeed::new(&at.taken, &CoilFeedParts { relays: 8, ..parts });
    let left = f64::exp(-dwell / 8e-3);
    let square = 784.0 * (dwell - 16e-3 * (1.0 - left) + 4e-3 * (1.0 - left * left));
    near("effective", alone.effective.base(), (square / (120.0 / 7000.0)).sqrt(), 1e-12);
    near("least", feed.least.base(), feed.effective.base() / 0.75, 1e-12);
    // four of them, three times overlapping by 14.7 degrees: in small steps of the period
    let steps = 200_000_u32;
    let current =
        |age: f64| if (0.0..dwell).contains(&age) { -28.0 * f64::exp_m1(-age / 8e-3) } else { 0.0 };
    let total = |step: u32| {
        let time = 120.0 / 7000.0 * f64::from(step) / f64::from(steps);
        let each = |coil: u32| current(time - f64::from(coil) * 90.0 / 42000.0);
        (0..4).map(each).sum::<f64>().powi(2)
    };
    let mean_square = (0..steps).map(total).sum::<f64>() / f64::from(steps);
    near("effective", feed.effective.base(), mean_square.sqrt(), 1e-3);
    assert!(!feed.is_switched_by(amperes(5.0)), "{feed:?}");
}

/// By hand: at 14 000 turns a minute 2.494 ms of dwell are 209.5 degrees of the 360 after which each of two coils is charged again, half
/// a turn apart: each overlaps the other at both its ends. In small steps of the period.
#[test]
fn two_coils_that_overlap_at_both_ends_heat_by_both() {
    let four = even(EngineKind::FourStroke, &[1, 3, 4, 2]);
    let inputs = running(14.0, &four, Ignition::PairedDouble, 14_000.0);
    let at = answer(&inputs).expect("a coil").at_speed.expect("it runs");
    let (hot, others) = (celsius(20.0), amperes(0.0));
    let parts = CoilFeedParts { relays: 1, relay: None, fuse: None, lead: None, hot, others };
    let feed = CoilFeed::new(&at.taken, &parts);
    let dwell = -8e-3 * f64::ln_1p(-3.75 / 14.0);
    let (steps, period) = (200_000_u32, 60.0 / 14_000.0);
    let current = |age: f64| {
        let age = age.rem_euclid(period);
        if age < dwell { -28.0 * f64::exp_m1(-age / 8e-3) } else { 0.0 }
    };
    let total = |step: u32| {
        let time = period * f64::from(step) / f64::from(steps);
        (current(time) + current(time - period / 2.0)).powi(2)
    };
    let mean_square = (0..steps).map(total).sum::<f64>() / f64::from(steps);
    near("effective", feed.effective.base(), mean_square.sqrt(), 1e-3);
}

/// The charge, and the heat, that small steps of `L di/dt = V - i R` come to.
#[test]
fn charge_and_heat_are_what_small_steps_of_the_equation_come_to() {
    let limit = Some(exact("7.2 A"));
    let inputs = CoilInputs { drop: exact("1 V"), limit, wanted: amperes(7.0), ..bare(14.0) };
    let found = answer(&inputs).expect("a coil").charge;
    let (steps, dwell) = (200_000_u32, found.time.base());
    let step = dwell / f64::from(steps);
    let slope = |current: f64| (13.0 - current * 0.5) / 4e-3;
    let (mut current, mut charge, mut heat) = (0.0_f64, 0.0_f64, 0.0_f64);
    for _ in 0..steps {
        let middle = current + slope(current) * step / 2.0;
        charge += middle * step;
        heat += middle * middle * 0.5 * step;
        current += slope(middle) * step;
    }
    near("current", found.current.base(), current, 1e-8);
    near("in the coil", found.in_coil.base(), heat, 1e-8);
    near("in the igniter", found.in_igniter.base(), charge, 1e-8);
}

/// Every whole volt between the ends has a row, and a wider band of temperatures a wider one of dwells.
#[test]
fn each_supply_has_its_row() {
    let conditions = Conditions::between(
        Band { low: volts(8.0), nominal: volts(12.6), high: volts(14.8) },
        Band { low: celsius(-20.0), nominal: celsius(20.0), high: celsius(100.0) },
    );
    let found = answer(&CoilInputs { conditions, ..bare(14.0) }).expect("a coil");
    let supplies: Vec<_> = found.dwells.iter().map(|it| it.supply.base()).collect();
    assert_eq!(supplies, [8.0, 9.0, 10.0, 11.0, 12.0, 13.0, 14.0, 14.8]);
    let narrow = Conditions::between(
        Band { low: volts(10.5), nominal: volts(12.6), high: volts(13.0) },
        Band::exact(celsius(20.0)),
    );
    let between = answer(&CoilInputs { conditions: narrow, ..bare(14.0) }).expect("a coil");
    let supplies: Vec<_> = between.dwells.iter().map(|it| it.supply.base()).collect();
    assert_eq!(supplies, [10.5, 11.0, 12.0, 13.0]);
    for dwell in &found.dwells {
        let (least, nominal) = (dwell.least.expect("cold"), dwell.nominal.expect("20 °C"));
        let most = dwell.most.map_or(f64::INFINITY, Measure::base);
        assert!(least < nominal && nominal.base() < most, "{dwell:?}");
        let (low, high) = dwell.current.expect("it is reached");
        assert!(low.base() < 7.5 && high.base() > 7.5, "{dwell:?}");
    }
    assert!(seconds(0.0) < found.charge.time);
}

/// Worked by hand: in this order 1, 3, 5 and 7 fire at 0, 270, 450 and 540 degrees, 90 apart at the least, 180 twice and 270;
/// the other bank at 90, 180, 360 and 630. So a charge of 126 degrees has two of one bank together only where they are 90
/// apart, and one of 80 never. On average each bank takes half.
#[test]
fn each_bank_takes_what_its_own_coils_take() {
    let banks = vec![vec![1, 3, 5, 7], vec![2, 4, 6, 8]];
    let eight = even(EngineKind::FourStroke, &EIGHT).with_banks(banks).expect("two banks");
    let by_bank = Pattern::by_bank(&eight, Ignition::Sequential);
    for (bank, pattern) in &by_bank {
        assert_eq!(pattern.coils(), 4, "{bank:?}");
        assert_eq!(pattern.most_at_once(CrankAngle::new(80.0)), 1, "{bank:?}");
        assert_eq!(pattern.most_at_once(CrankAngle::new(126.0)), 2, "{bank:?}");
    }
    assert!(Pattern::by_bank(&eight, Ignition::Distributor).is_empty(), "one coil serves both");
    let inputs =
        CoilInputs { banks: by_bank, ..running(14.0, &eight, Ignition::Sequential, 7000.0) };
    let at = answer(&inputs).expect("a coil").at_speed.expect("a speed");
    let parts = CoilFeedParts {
        relays: 1,
        relay: None,
        fuse: None,
        lead: None,
        hot: celsius(20.0),
        others: amperes(0.0),
    };
    for (_, taken) in &at.banks {
        near("mean", taken.mean.base(), at.taken.mean.base() / 2.0, 1e-12);
        let (bank, all) = (CoilFeed::new(taken, &parts), CoilFeed::new(&at.taken, &parts));
        assert!(bank.peak <= all.peak && bank.effective < all.effective, "{bank:?}");
    }
}

/// Worked by hand: a coil for eight cylinders, 14 V over 0.5 ohm and 4 mH to 7.5 A in 2.494 ms with a spark of 1 ms, has just
/// time for it at 15 / 3.494 ms = 4293 turns a minute. Above that its dwell is cut, and with it what it takes: at 7000 there
/// are 2.143 ms from spark to spark, 1.143 ms of them for the dwell.
#[test]
fn a_feed_is_sized_at_the_speed_at_which_the_coils_take_most() {
    let eight = even(EngineKind::FourStroke, &EIGHT);
    let at = |speed: f64| {
        let inputs = CoilInputs {
            spark: exact("1 ms"),
            ..running(14.0, &eight, Ignition::Distributor, speed)
        };
        answer(&inputs).expect("a coil").at_speed.expect("it runs").taken
    };
    let dwell = -8e-3 * f64::ln_1p(-3.75 / 14.0);
    near("the speed", at(7000.0).at.base(), 15.0 / (dwell + 1e-3), 1e-12);
    // one charge in each period: 28 t − 8 ms 7.5 A
    let charge = 28.0 * dwell - 8e-3 * 7.5;
    near("mean", at(7000.0).mean.base(), charge / (dwell + 1e-3), 1e-9);
    near("as at any higher one", at(9000.0).mean.base(), at(7000.0).mean.base(), 1e-12);
    // by hand, with the dwell cut at 7000
    let cut = 90.0 / 42000.0 - 1e-3;
    let less = 28.0 * (cut - 8e-3 * -f64::exp_m1(-cut / 8e-3)) / (90.0 / 42000.0);
    assert!(less < at(7000.0).mean.base(), "{less} A at 7000 a minute are not the most");
    assert!(at(3000.0).mean.base() < at(4000.0).mean.base(), "below it, more with speed");
}
