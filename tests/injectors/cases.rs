//! Cases worked by hand.

use quietpin_core::{
    injector::{
        Class, DriverKind, InjectorInputs, On, answer,
        ballast::{BallastFit, BallastPlace, Resistor},
        branch::{self, Ballast},
        carrying::Carries,
        controlled::Serves,
    },
    quantity::{Area, Band, Holds, Measure, amperes, henries, metres, ohms, volts},
};

use super::{bare, limited};

#[track_caller]
fn near(what: &str, found: impl Measure, expected: f64, tolerance: f64) {
    let found = found.base();
    assert!((found - expected).abs() <= tolerance, "{what}: {found}, not {expected}");
}

#[track_caller]
fn plain(
    inputs: &InjectorInputs,
) -> (quietpin_core::injector::carrying::Carrying, quietpin_core::injector::InjectorCures) {
    match answer(inputs).on {
        On::PlainSwitch(carrying, cures) => (carrying, *cures),
        other => panic!("not a plain switch with a limit: {other:?}"),
    }
}

#[track_caller]
fn offered(fit: Option<BallastFit>) -> Resistor {
    match fit {
        Some(BallastFit::Offered(resistor)) => *resistor,
        other => panic!("no resistor is offered: {other:?}"),
    }
}

/// Source: *College Physics* of openstax.org, section 21.1, series circuit of 1.00, 6.00 and 13.0 Ω at 12.0 V: 0.600 A. The numbers
/// from memory, the sum exact.
#[test]
fn a_textbook_series_circuit_comes_out() {
    let mut inputs = bare(13.0);
    inputs.output.on_resistance = Band::exact(ohms(1.0));
    inputs.corners = inputs
        .corners
        .map(|corner| quietpin_core::conditions::Corner { supply: volts(12.0), ..corner });
    let ballast = Ballast { each: Band::exact(ohms(6.0)), ..Ballast::NONE };
    let at_20 = branch::at_corners(&inputs, &ballast)[2];
    near("current", at_20.output.nominal, 0.600, 1e-12);
}

/// By hand: 14 Ω at -20 °C are 14 × 0.8428 = 11.7992 Ω, two in parallel 5.8996 Ω; 14.8 V / 5.8996 Ω = 2.5086 A.
/// At rest 12.6 V / 7 Ω = 1.8 A. Copper: IEC 60028.
#[test]
fn two_of_14_ohm_are_a_hair_over_two_and_a_half_amperes_in_hard_cold() {
    let inputs = InjectorInputs { per_output: 2, count: Some(6), ..limited(14.0, 2.5, 0.35) };
    let found = answer(&inputs);
    near("at rest", found.usual().output.nominal, 1.8, 1e-12);
    near("hard cold", found.highest.output.high, 2.508644654, 1e-8);
    let (carrying, cures) = plain(&inputs);
    assert_eq!(carrying.carries, Carries::NotEverywhere);
    assert_eq!(carrying.over, Holds::AtSome(vec!["charging, cold".into()]), "only there");
    let fewer = cures.fewer.expect("one on each output fits");
    assert_eq!((fewer.per_output, fewer.outputs), (1, Some(6)), "one each, six outputs");
    // 2.508645 / 0.9 = 2.7874
    near("limit needed", found.limit_needed.limit, 2.8, 1e-12);
}

/// By hand: with 2 m of 1 mm² each, 2/58 × 0.8428 = 0.02906 Ω more: 2 × 14.8 / 11.82826 = 2.50248 A; with 4 m 2.49635 A, which is
/// 0.15 % below 2.5 A.
#[test]
fn the_wire_of_a_long_harness_leaves_them_just_within_the_limit_and_without_margin() {
    let mut inputs = InjectorInputs { per_output: 2, ..limited(14.0, 2.5, 0.35) };
    inputs.wire.length = Band::exact(metres(4.0));
    inputs.wire.area = Band::exact(Area::from_base(1e-6));
    let (carrying, cures) = plain(&inputs);
    near("hard cold", carrying.highest, 2.49634, 1e-4);
    assert_eq!(carrying.carries, Carries::NoMargin);
    assert_eq!(carrying.over, Holds::Never);
    assert_eq!(cures.each, None, "nothing asks for a resistor");
}

/// By hand: 12 Ω at -20 °C 10.1136 Ω: 1.46338 A of 3 A, 51.22 % left. Hot cranking: 8 / 15.7728 = 0.50720 A.
#[test]
fn a_high_impedance_injector_fits_an_ordinary_output() {
    let inputs = limited(12.0, 3.0, 0.4);
    let (carrying, _) = plain(&inputs);
    assert_eq!(carrying.carries, Carries::WithMargin);
    near("margin", carrying.margin, 1.0 - 1.463376 / 3.0, 1e-6);
    let found = answer(&inputs);
    near("hot cranking", found.lowest.injector.low, 0.507202, 1e-6);
    assert_eq!(found.may_not_open, Holds::Never);
    // 0.4 A × 15.7728 Ω
    near("opens from", found.opens_from.supply, 6.30912, 1e-9);
    assert_eq!(found.class, Class::HighImpedance);
}

/// By hand: 2.4 Ω at -20 °C 2.02272 Ω; 14.8 V / 2.5 A = 5.92 Ω wants 3.89728 Ω, / 0.95 = 4.10240 Ω: 4.7 Ω (E12).
/// Worst case with 4.465 Ω: 14.8 / 6.48772 = 2.28123 A. Heat: rest 2.02272 Ω < 4.465 Ω, so 2.28123² × 4.465 = 23.236 W, and
/// twice that is 46.5 W: 50 W. Hot cranking: 8 / (3.15456 + 4.935) = 0.98893 A.
/// At most for 0.8 A: (10 - 3.15456) / 1.05 = 6.51947 Ω.
#[test]
fn a_resistor_is_found_for_a_low_impedance_injector() {
    let inputs = limited(2.4, 2.5, 0.8);
    let resistor = offered(plain(&inputs).1.each);
    near("least", resistor.bounds.least, 4.102400, 1e-5);
    near("most", resistor.bounds.most, 6.519467, 1e-5);
    near("value", resistor.value, 4.7, 1e-12);
    near("worst", resistor.carrying.highest, 2.281232, 1e-5);
    near("heat", resistor.heat, 23.2359, 1e-3);
    near("rating", resistor.rating, 50.0, 1e-12);
    near("left", resistor.least_current, 0.988929, 1e-5);
    assert_eq!(resistor.least_at.name, "cranking, hot");
    // 2.28 of 2.5 A leaves 8.75 %; 5.6 Ω leaves 14.8 / (2.02272 + 5.32) = 2.0156 A, 19 %, below the 6.52 Ω allowed
    near("roomier", resistor.roomier.expect("there is one").value, 5.6, 1e-12);
}

/// By hand, two of 2.4 Ω on 3 A. Each: 2 × 14.8 / 3 - 2.02272 = 7.84395 Ω, / 0.95 = 8.25679: 10 Ω. Shared: half of that,
/// 4.12839: 4.7 Ω, through which flow 14.8 / (1.01136 + 4.465) = 2.70250 A: 32.61 W, so 100 W.
/// At 0.5 A they may have (16 - 3.15456) / 1.05 = 12.23375 Ω each.
#[test]
fn one_resistor_for_two_injectors_has_half_the_ohms_and_more_than_the_heat() {
    let inputs = InjectorInputs { per_output: 2, ..limited(2.4, 3.0, 0.5) };
    let (_, cures) = plain(&inputs);
    let (each, shared) = (offered(cures.each), offered(cures.shared));
    assert_eq!((each.place, shared.place), (BallastPlace::EachInjector, BallastPlace::EachOutput));
    near("each least", each.bounds.least, 8.256785, 1e-5);
    near("each most", each.bounds.most, 12.233752, 1e-5);
    near("each", each.value, 10.0, 1e-12);
    near("shared least", shared.bounds.least, 4.128393, 1e-5);
    near("shared", shared.value, 4.7, 1e-12);
    near("shared heat", shared.heat, 32.6098, 1e-3);
    near("shared rating", shared.rating, 100.0, 1e-12);
}

/// By hand: 2.4 Ω ±5 % on 1.5 A wants (14.8 / 1.5 - 1.92158) / 0.95 = 8.36325 Ω, and 1.2 A at 8 V hot allows
/// (8 / 1.2 - 3.31229) / 1.05 = 3.19464 Ω.
#[test]
fn a_resistor_that_starves_the_injector_is_not_offered() {
    let mut inputs = limited(2.4, 1.5, 1.2);
    inputs.resistance = Band::with_tolerance(ohms(2.4), 0.05);
    let Some(BallastFit::Starves(bounds)) = plain(&inputs).1.each else {
        panic!("a resistor is offered")
    };
    near("least", bounds.least, 8.363246, 1e-5);
    near("most", bounds.most, 3.194644, 1e-5);
    assert_eq!((bounds.least_at.name, bounds.most_at.name), ("charging, cold", "cranking, hot"));
}

/// By hand: three of 2.4 Ω on 3.8 A: each wants (3 × 14.8 / 3.8 - 2.02272) / 0.95 = 10.16991 Ω, opening at 0.8 A allows
/// 6.51947 Ω; two want (2 × 14.8 / 3.8 - 2.02272) / 0.95 = 6.07026 Ω and get 6.8 Ω, too much; one (14.8 / 3.8 - 2.02272) / 0.95 =
/// 1.97054 Ω and gets 2.2 Ω.
#[test]
fn fewer_on_an_output_and_a_resistor_each_may_do_what_neither_does_alone() {
    let inputs = InjectorInputs { per_output: 3, count: Some(6), ..limited(2.4, 3.8, 0.8) };
    let (_, cures) = plain(&inputs);
    assert_eq!(cures.fewer, None, "one alone takes 7.3 A");
    let both = cures.both.expect("one with a resistor fits");
    assert_eq!((both.per_output, both.outputs), (1, Some(6)));
    near("value", both.resistor.value, 2.2, 1e-12);
}

/// By hand: between 5.66 Ω (14.8 V, 2 A, 2.02 Ω cold, / 0.95 gives 5.66030) and 6.51947 Ω (0.8 A at 8 V hot) lies no E12 value:
/// 5.6 is too little, 6.8 too much.
#[test]
fn a_gap_without_a_value_of_the_series_is_said_to_be_one() {
    let inputs = limited(2.4, 2.0, 0.8);
    let Some(BallastFit::NoValue(bounds)) = plain(&inputs).1.each else { panic!("not a gap") };
    near("least", bounds.least, 5.660295, 1e-5);
    near("most", bounds.most, 6.519467, 1e-5);
}

/// By hand: 0.2 Ω on 30 A wants (14.8 / 30 - 0.16856) / 0.95 = 0.34187: 0.39 Ω; 0.3705 Ω and 0.16856 Ω carry 27.453 A:
/// 279.2 W, and no usual resistor is rated 558 W.
#[test]
fn a_resistor_hotter_than_any_that_is_sold_is_not_offered() {
    let inputs = limited(0.2, 30.0, 1.0);
    let Some(BallastFit::TooHot(_, heat)) = plain(&inputs).1.each else {
        panic!("a resistor is offered")
    };
    near("heat", heat, 279.24, 0.05);
}

fn channel(resistance: f64, per_output: u32, peak: Option<f64>) -> InjectorInputs {
    let mut inputs = InjectorInputs { per_output, ..bare(resistance) };
    inputs.output.stage = DriverKind::CurrentControlled;
    inputs.output.limit = peak.map(|peak| Band::exact(amperes(peak)));
    inputs.opening_current = Some(Band::exact(amperes(1.0)));
    inputs
}

#[track_caller]
fn check_channel(inputs: &InjectorInputs, expected: Serves) {
    match answer(inputs).on {
        On::CurrentControlled(found) => assert_eq!(found.serves, expected, "{found:?}"),
        other => panic!("not a channel: {other:?}"),
    }
}

/// By hand: 2 Ω is 2.6288 Ω at 100 °C and 1.6856 Ω at -20 °C: 8 V push 3.0432 A at least, 14.8 V 8.78 A at most; 12 Ω never more
/// than 1.4634 A.
#[test]
fn a_channel_is_judged_by_whether_its_peak_is_reached_and_shared_enough() {
    check_channel(&channel(2.0, 1, Some(3.0)), Serves::Always);
    check_channel(&channel(2.0, 1, Some(3.1)), Serves::PeakNotEverywhere);
    check_channel(&channel(2.0, 1, Some(8.7)), Serves::PeakNotEverywhere);
    check_channel(&channel(2.0, 1, Some(8.8)), Serves::PeakNowhere);
    check_channel(&channel(2.0, 1, Some(0.9)), Serves::TooSmall);
    check_channel(&channel(2.0, 2, Some(1.9)), Serves::TooSmall);
    check_channel(&channel(2.0, 2, Some(2.0)), Serves::Always);
    check_channel(&channel(2.0, 2, Some(6.1)), Serves::PeakNotEverywhere);
    check_channel(&channel(12.0, 1, Some(4.0)), Serves::AsPlainSwitch);
    check_channel(&channel(12.0, 1, None), Serves::UnknownPeak);
}

/// By hand: 1.5 W in 2.4 Ω flow at √0.625 = 0.790569 A, in 12 Ω at √0.125 = 0.353553 A. Common practice, no source.
#[test]
fn an_opening_current_is_taken_where_none_is_given() {
    near("2.4 Ω", answer(&bare(2.4)).opening.current.high, 0.790569, 1e-6);
    near("12 Ω", answer(&bare(12.0)).opening.current.high, 0.353553, 1e-6);
    assert!(!answer(&bare(12.0)).opening.is_given, "it is said to be assumed");
}

/// By hand: 2.4 mH and 2.4 Ω at 12.6 V and 20 °C, to 0.8 A: -1 ms × ln(1 - 0.8 × 2.4 / 12.6) = 0.165324 ms. Hot cranking, 3.15456 Ω at
/// 8 V: -0.760803 ms × ln(1 - 0.8 × 3.15456 / 8) = 0.288346 ms. Source of the law: University Physics, vol. 2, section 14.4.
#[test]
fn the_time_to_open_follows_from_the_inductance() {
    let mut inputs = limited(2.4, 2.5, 0.8);
    inputs.inductance = Some(Band::exact(henries(2.4e-3)));
    let rises = answer(&inputs).rises;
    near("at rest", rises[2].nominal.expect("it opens"), 0.165324e-3, 1e-8);
    near("hot cranking", rises[1].longest.expect("it opens"), 0.288346e-3, 1e-8);
    inputs.opening_current = Some(Band::exact(amperes(3.0)));
    let rises = answer(&inputs).rises;
    assert_eq!(rises[1].longest, None, "8 V push only 2.5 A through hot copper");
}

/// The borders of 5 and 10 Ω: common practice, no source.
#[test]
fn the_trade_knows_low_and_high_impedance() {
    for (resistance, class) in [
        (2.4, Class::LowImpedance),
        (4.99, Class::LowImpedance),
        (5.0, Class::Between),
        (10.0, Class::Between),
        (10.1, Class::HighImpedance),
        (16.0, Class::HighImpedance),
    ] {
        assert_eq!(Class::of(ohms(resistance)), class, "{resistance} Ω");
    }
}
