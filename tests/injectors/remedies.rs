//! The remedies side by side.

use proptest::prelude::*;
use quietpin_core::{
    injector::{
        InjectorCures, InjectorInputs, On, answer,
        ballast::BallastPlace,
        carrying::Carries,
        feed::{InjectorFeed, Share},
        remedy::{Means, Remedy},
    },
    quantity::{Band, Holds, Measure, amperes, joules, ohms},
    tables::{fuses, preferred::Series},
};
use quietpin_tests::Checked;

use super::{
    laws::{any_inputs, tried},
    limited,
};

#[track_caller]
fn cures(inputs: &InjectorInputs) -> InjectorCures {
    match answer(inputs).on {
        On::PlainSwitch(_, cures) => *cures,
        other => panic!("not a plain switch with a limit: {other:?}"),
    }
}

fn resistors(cures: &InjectorCures) -> Vec<(f64, Series, BallastPlace)> {
    let rows = cures.side_by_side.rows.iter();
    let of = |row: &Remedy| match &row.means {
        Means::Resistor(it) => Some((it.value.base(), it.series, it.place)),
        _ => None,
    };
    rows.filter_map(of).collect()
}

/// By hand, 2.4 Ω on 2.5 A: 4.1024 Ω at least, so 4.3 Ω (E24) and 4.7 Ω (E12), neither with margin; 10 % of it want 14.8 / 2.25 =
/// 6.57778 - 2.02272 = 4.55506 / 0.95 = 4.79480: 5.1 Ω (E24) and 5.6 Ω (E12).
#[test]
fn both_series_stand_beside_each_other() {
    let found = cures(&limited(2.4, 2.5, 0.8));
    let values: Vec<_> =
        resistors(&found).iter().map(|(value, series, _)| (*value, *series)).collect();
    let e = |value: f64, series| (value, series);
    assert_eq!(values.len(), 4, "{values:?}");
    for expected in
        [e(4.3, Series::E24), e(5.1, Series::E24), e(4.7, Series::E12), e(5.6, Series::E12)]
    {
        let is_there =
            values.iter().any(|it| (it.0 - expected.0).abs() < 1e-9 && it.1 == expected.1);
        assert!(is_there, "{expected:?} is not among {values:?}");
    }
    // 8 / (3.15456 + 1.05 × 5.1) = 0.9399 A are more than a tenth above 0.8 A; the smaller values leave the output no margin
    let taken = found.side_by_side.taken().expect("one works");
    let Means::Resistor(taken) = &taken.means else { panic!("{:?}", taken.means) };
    assert!((taken.value.base() - 5.1).abs() < 1e-9, "{:?}", taken.value);
}

/// By hand, 2.4 Ω on 2 A, opened by 1 A: at least (14.8 / 2 - 2.02272) / 0.95 = 5.66029, at most (8 - 3.15456) / 1.05 = 4.61470: no
/// resistor. A driver is the one to take: 1 A opens one, and 8 / 3.15456 = 2.536 A flow.
#[test]
fn where_resistors_starve_a_driver_is_taken() {
    let mut inputs = limited(2.4, 2.0, 1.0);
    inputs.count = Some(8);
    let found = cures(&inputs);
    assert_eq!(resistors(&found), [], "none is offered");
    let taken = found.side_by_side.taken().expect("a driver works");
    let Means::Driver { least, peak, most, hold, channels, fuse } = taken.means else {
        panic!("{:?}", taken.means)
    };
    assert!((least.base() - 1.0).abs() < 1e-12, "{least:?}");
    assert!((most.base() - 8.0 / 3.15456).abs() < 1e-9, "{most:?}");
    // √(1 A × 2.536 A) = 1.59 A: the next round figure inside is 2 A
    assert!((peak.base() - 2.0).abs() < 1e-9, "{peak:?}");
    // 8 × 0.5 A = 4 A, and 4 / 0.75 = 5.33 A: the next blade fuse has 7.5 A
    assert_eq!((channels, fuse.map(Measure::base)), (Some(8), Some(7.5)), "{hold:?}");
}

/// Six injectors in pairs on three outputs: one on each would do, but wants six outputs. With six there it is the one to take, with
/// three it is no way out.
#[test]
fn outputs_that_are_not_there_are_not_offered() {
    let pairs = InjectorInputs { per_output: 2, count: Some(6), ..limited(14.0, 2.5, 0.35) };
    let fewer = |there| {
        let found = cures(&InjectorInputs { outputs_there: there, ..pairs.clone() });
        let taken = found.side_by_side.taken().map(|it| matches!(it.means, Means::Fewer { .. }));
        (found.fewer.is_some(), taken)
    };
    assert_eq!(fewer(None), (true, Some(true)), "nothing is known of the outputs");
    assert_eq!(fewer(Some(6)), (true, Some(true)));
    let (is_offered, taken) = fewer(Some(3));
    assert!(!is_offered && taken != Some(true), "three outputs don't take six alone");
}

/// By hand: 2.5 A less ten percent at 14.8 V are 6.5778 Ω at -20 °C, 7.805 Ω at 20 °C: 8 Ω. Such injectors are opened by
/// √(1.5 / 8) = 0.433 A, and get 8 / 10.515 = 0.761 A hot.
#[test]
fn other_injectors_are_told_by_their_resistance() {
    let found = cures(&limited(2.4, 2.5, 0.8));
    let others = found.side_by_side.rows.iter().find_map(|row| match &row.means {
        Means::Others { least, .. } => Some((least.base(), row.works())),
        _ => None,
    });
    assert_eq!(others, Some((8.0, true)));
}

/// A clamp that would not bear the energy asks for a cure, though the current is within the limit; and no row that it would not
/// survive is said to work.
#[test]
fn a_weak_clamp_asks_for_a_cure() {
    let mut inputs = limited(12.0, 3.0, 0.35);
    inputs.per_output = 2;
    inputs.inductance = Some(Band::exact(quietpin_core::quantity::henries(12e-3)));
    // one takes 14.35 mJ, two 28.69 mJ
    inputs.output.clamp.energy = Some(joules(20e-3));
    let found = answer(&inputs);
    assert_eq!(found.turn_off.bears_energy, Some(false));
    let found = cures(&inputs);
    let rows = &found.side_by_side.rows;
    assert!(!rows[0].works() && !rows[0].is_borne, "as planned it does not");
    let taken = found.side_by_side.taken().expect("one on each output does");
    assert!(matches!(taken.means, Means::Fewer { per_output: 1, .. }), "{:?}", taken.means);
}

/// By hand: 14.8 V / 12 Ω = 1.233333 A each at most (charging, 20 °C), six of them at a duty of 85 % 6 × 1.233333 × √0.85 = 6.82246 A RMS,
/// / 0.75 = 9.09662 A: a fuse of 10 A. A second set of 2.4 Ω injectors on a driver that holds 1 A takes 6 A more: 12.82246 A, 17.09662 A,
/// 20 A.
#[test]
fn the_feed_carries_both_sets() {
    let first = InjectorInputs { count: Some(6), ..limited(12.0, 3.0, 0.35) };
    let mut second = InjectorInputs { count: Some(6), ..limited(2.4, 2.0, 0.8) };
    second.output.stage = quietpin_core::injector::DriverKind::CurrentControlled;
    second.output.hold = Some(Band::exact(amperes(1.0)));
    let duty = Measure::from_base(0.85);
    let share = |inputs: &InjectorInputs| {
        Share::of(inputs, &answer(inputs), duty).expect("the count is known")
    };
    let alone = InjectorFeed::of(vec![share(&first)], amperes(0.0));
    assert!((alone.total.base() - 6.82246).abs() < 1e-5, "{:?}", alone.total);
    assert_eq!(alone.fuse.map(Measure::base), Some(10.0));
    let both = InjectorFeed::of(vec![share(&first), share(&second)], amperes(0.0));
    assert!((both.total.base() - 12.82246).abs() < 1e-5, "{:?}", both.total);
    assert_eq!(both.fuse.map(Measure::base), Some(20.0));
    assert!(both.is_carried_by(amperes(20.0)) && !both.is_carried_by(amperes(17.09)));
    assert_eq!(
        Share::of(&limited(12.0, 3.0, 0.35), &answer(&first), duty),
        None,
        "how many is not known"
    );
}

/// By hand, eight of 2.4 Ω on 2 A, opened by 1 A: a driver that holds 0.5 A is taken, so 8 × 0.5 = 4 A flow in the feed, not the
/// 8 × 7.3 A that the battery would push as planned.
#[test]
fn the_feed_is_that_of_the_remedy_where_the_outputs_can_not_carry_them() {
    let inputs = InjectorInputs { count: Some(8), ..limited(2.4, 2.0, 1.0) };
    let duty = Measure::from_base(0.85);
    let share = Share::of(&inputs, &answer(&inputs), duty).expect("a driver is taken");
    assert!(share.is_cured, "as planned the outputs burn");
    assert!((share.current.base() - 4.0).abs() < 1e-12, "{:?}", share.current);
}

/// Source: ISO 8820-3, ratings of types C, F and E, as in `reference/fuses_blade.json`.
pub(crate) fn sold() -> Checked {
    let text = include_str!("../reference/fuses_blade.json");
    let file: serde_json::Value = serde_json::from_str(text).expect("JSON");
    let rows = file["ratings_A"].as_object().expect("ratings");
    let mut ratings: Vec<f64> = rows
        .iter()
        .filter(|(style, _)| *style != "confidence")
        .flat_map(|(_, all)| {
            all.as_array().expect("a list").iter().map(|it| it.as_f64().expect("a number"))
        })
        .collect();
    ratings.sort_by(f64::total_cmp);
    ratings.dedup_by(|one, other| (*one - *other).abs() < 1e-9);
    assert_eq!(ratings, fuses::RATINGS_A.to_vec(), "the ratings that are sold");
    let against = "ISO 8820-3, ratings of types C, F and E";
    Checked::exact("injectors", "Fuses as they are sold", against, ratings.len())
}

#[test]
fn the_fuses_are_those_that_are_sold() {
    sold();
}

proptest! {
    /// A row that is said to work does: from first principles, at both ends of every tolerance and at every corner.
    #[test]
    fn what_is_said_to_work_works(inputs in any_inputs()) {
        let limit = inputs.output.limit.expect("any_inputs gives one").low.base();
        let opening = inputs.opening_current.expect("any_inputs gives one").high.base();
        let On::PlainSwitch(carrying, cures) = answer(&inputs).on else { panic!("a plain switch") };
        let rows = &cures.side_by_side.rows;
        prop_assert_eq!(rows.is_empty(), carrying.has_margin(), "rows where there is nothing to cure");
        for row in rows.iter().filter(|row| row.works()) {
            let found = match &row.means {
                Means::AsWired => tried(&inputs, limit, opening, 0.0, BallastPlace::EachInjector),
                Means::Fewer { per_output, .. } => {
                    let fewer = InjectorInputs { per_output: *per_output, ..inputs.clone() };
                    tried(&fewer, limit * 0.9, opening, 0.0, BallastPlace::EachInjector)
                }
                Means::Resistor(it) => tried(&inputs, limit, opening, it.value.base(), it.place),
                Means::FewerWithResistor { per_output, resistor, .. } => {
                    let fewer = InjectorInputs { per_output: *per_output, ..inputs.clone() };
                    tried(&fewer, limit, opening, resistor.value.base(), BallastPlace::EachInjector)
                }
                Means::Output { limit } => {
                    tried(&inputs, limit.base() * 0.9, opening, 0.0, BallastPlace::EachInjector)
                }
                Means::Others { least, .. } => {
                    let share = inputs.resistance.high.base() / inputs.resistance.nominal.base() - 1.0;
                    let mut others = inputs.clone();
                    others.resistance = Band::with_tolerance(ohms(least.base()), share);
                    let opening = (1.5 / least.base()).sqrt();
                    tried(&others, limit * 0.9, opening, 0.0, BallastPlace::EachInjector)
                }
                Means::Driver { least, most, .. } => (least.base() >= opening, most.base() >= least.base()),
            };
            prop_assert_eq!(found, (true, true), "{:?}", row.means);
        }
        let taken = cures.side_by_side.taken();
        prop_assert!(taken.is_none_or(Remedy::works), "{taken:?}");
        let others = rows.iter().skip(1).any(|row| {
            let is_shared = matches!(&row.means, Means::Resistor(it) if it.place == BallastPlace::EachOutput);
            row.works() && !is_shared
        });
        prop_assert_eq!(taken.is_some(), others, "one works and none is taken");
        let margins = rows.iter().filter(|row| row.carries == Some(Carries::WithMargin));
        for row in margins.filter(|row| !matches!(row.means, Means::Output { .. })) {
            prop_assert!(row.highest.base() <= limit * 0.9 * (1.0 + 1e-9), "{row:?}");
        }
        prop_assert!(rows.iter().all(|row| row.missed != Holds::Always || !row.works()));
    }
}

/// A resistor for each injector is told before one that all of an output share.
#[test]
fn what_each_injector_has_for_itself_stands_first() {
    let inputs = InjectorInputs { per_output: 2, ..limited(2.4, 5.0, 0.8) };
    let places: Vec<_> = resistors(&cures(&inputs)).iter().map(|it| it.2).collect();
    let shared = |it: &BallastPlace| *it == BallastPlace::EachOutput;
    assert!(places.is_sorted_by_key(shared), "{places:?}");
    assert!(places.iter().any(shared) && !places.iter().all(shared), "{places:?}");
}
