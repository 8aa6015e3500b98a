//! Starts worked by hand, the published tooth frequencies, and laws of the speed-switched relay.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "a case worked by hand has an answer, or the test ends"
)]

mod bounds;
mod curves;
mod otherwise;
mod relays;
mod uneven;

use proptest::prelude::*;
use quietpin_core::{
    cranking::{
        Average, CrankingAnswer, CrankingInputs, PullIn, Relay, Release, Starts, Sync, Wheel,
        answer, cost, trace,
    },
    quantity::{Band, CrankAngle, Measure, RotationalSpeed, celsius, rpm, seconds, share, volts},
};
use quietpin_tests::Checked;

/// An even six at 200 rpm (1200 degrees a second) without dips or run-up; a relay that acts at once.
fn plain() -> CrankingInputs {
    CrankingInputs {
        firings: (0..6).map(|n| CrankAngle::new(120.0 * f64::from(n))).collect(),
        cycle: CrankAngle::new(720.0),
        speed: Band::exact(rpm(200.0)),
        slow: Vec::new(),
        kick_back: CrankAngle::new(30.0),
        stick: seconds(1.5),
        dip: Band::exact(share(0.0)),
        run_up: Band::exact(seconds(0.0)),
        wheel: Wheel { positions: 60, missing: 2, mark_to_first: CrankAngle::new(90.0) },
        sync: Sync::Gap,
        averaging: 1,
        average: Average::Blocks,
        confirmation: 1,
        threshold: Some(rpm(100.0)),
        release: Release::Share(share(0.6)),
        stall_timeout: Band::exact(seconds(1.0)),
        relay: Relay {
            pull_in_time: Band::exact(seconds(0.0)),
            drop_out_time: Band::exact(seconds(0.0)),
            pull_in_voltage: Band::exact(volts(7.2)),
            drop_out_voltage: None,
            feed_loss: Band::exact(volts(0.0)),
            switched: None,
        },
        dwell: seconds(0.0),
        rocking: Band::exact(rpm(30.0)),
        idle: rpm(800.0),
        run_down: Band::exact(seconds(1.0)),
        supply: volts(8.0),
        hot_supply: volts(8.0),
        temperature: Band { low: celsius(-20.0), nominal: celsius(20.0), high: celsius(100.0) },
    }
}

fn wheel(positions: u32, missing: u32, mark_deg: f64) -> Wheel {
    Wheel { positions, missing, mark_to_first: CrankAngle::new(mark_deg) }
}

fn answered(inputs: &CrankingInputs) -> CrankingAnswer {
    answer(inputs).expect("an engine that turns")
}

fn followed(inputs: &CrankingInputs) -> Starts {
    Starts::follow(inputs).expect("an engine that turns")
}

fn serves(inputs: &CrankingInputs, threshold: RotationalSpeed) -> bool {
    followed(inputs).serves(inputs, threshold)
}

#[track_caller]
fn check(got: f64, expected: f64, tolerance: f64) {
    assert!((got - expected).abs() <= tolerance, "{got}, not {expected}");
}

/// Source: f = rpm x positions / 60; see `reference/SOURCES.md`.
pub(crate) fn teeth() -> Checked {
    let mut reader = csv::Reader::from_path(concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/reference/crank_tooth_frequency.csv"
    ))
    .expect("the file is there");
    let mut rows = 0;
    for row in reader.records().map(|row| row.expect("a row")) {
        let number = |column: usize| row[column].parse::<f64>().expect("a number");
        let whole = |column: usize| row[column].parse::<u32>().expect("a whole number");
        let inputs = CrankingInputs {
            wheel: wheel(whole(1), whole(1) - whole(2), 90.0),
            speed: Band::exact(rpm(number(3))),
            threshold: Some(rpm(number(3) / 2.0)),
            stall_timeout: Band::exact(seconds(10.0)),
            ..plain()
        };
        let curve = trace(&inputs, &answered(&inputs), 0).expect("a curve");
        let times: Vec<f64> = curve.measured.iter().map(|reading| reading.0).collect();
        let steps: Vec<f64> = times.windows(2).map(|pair| pair[1] - pair[0]).collect();
        let short = steps.iter().copied().fold(f64::INFINITY, f64::min);
        let long = steps.iter().copied().fold(0.0, f64::max);
        let same = |got: f64, expected: f64| (got / expected - 1.0).abs() < 1e-5;
        let degrees = 6.0 * number(3);
        let teeth = usize::try_from(whole(2)).expect("a count");
        let turn = times[teeth] - times[0];
        assert!(
            same(1.0 / short, number(4))
                && same(f64::from(u32::try_from(teeth).unwrap_or(u32::MAX)) / turn, number(5))
                && same(short * 1e6, number(6))
                && same(short * degrees, number(7))
                && same(long * degrees, number(8)),
            "row {row:?}: {short} s, {long} s, turn {turn} s"
        );
        rows += 1;
    }
    assert_eq!(rows, 56, "rows of the table");
    let apart = "less than 1.0e-5 of each".to_owned();
    let (what, against) = ("Readings of the speed", "a table computed from rpm × positions / 60");
    Checked { question: "cranking", what, against, cases: 5 * rows, apart }
}

#[test]
fn teeth_pass_as_often_as_the_table_says() {
    teeth();
}

/// By hand: 2 readings of 3 intervals of 60 / (200 * 60) s = 5 ms are 30 ms after the first tooth; the first tooth
/// is a pitch away at most, 5 ms; the relay takes 10 ms.
#[test]
fn at_a_constant_speed_power_takes_confirmation_times_averaging_teeth() {
    let inputs = CrankingInputs {
        wheel: wheel(60, 0, 91.0),
        sync: Sync::Cam,
        averaging: 3,
        confirmation: 2,
        relay: Relay { pull_in_time: Band::exact(seconds(0.01)), ..plain().relay },
        ..plain()
    };
    let corner = answered(&inputs).corners[0].clone();
    let latest = corner.latest.expect("it closes");
    // the worst start stands a hundredth of a degree past a tooth
    let first_tooth = 5.99 / 1200.0;
    check(latest.closed.base(), first_tooth + 0.03 + 0.01, 1e-9);
    check(latest.turned.degrees(), 5.99 + 36.0 + 12.0, 1e-6);
    let earliest = corner.earliest_power.expect("it closes");
    assert!(earliest.base() >= 0.04 - 1e-9, "{earliest:?}: before the readings are complete");
    // one at every tooth: the second of two is there a tooth after the first, four intervals in all
    let sliding = CrankingInputs { average: Average::Sliding, ..inputs };
    let latest = answered(&sliding).corners[0].latest.expect("it closes");
    check(latest.closed.base(), first_tooth + 0.02 + 0.01, 1e-9);
}

/// By hand: from rest at an even rate, the k-th degree is passed at sqrt(2 T k / 1200). With one reading of 20 to
/// 30 degrees the speed read is 10 / 6 degrees over that time; T = 0.6 s.
#[test]
fn in_the_run_up_the_reading_lags_the_speed() {
    let inputs = CrankingInputs {
        run_up: Band::exact(seconds(0.6)),
        wheel: wheel(36, 0, 90.0),
        sync: Sync::Cam,
        ..plain()
    };
    let answer = answered(&inputs);
    let curve = trace(&inputs, &answer, 0).expect("a curve");
    let start = answer.corners[0].latest.expect("it closes").start.degrees();
    let passed = |k: f64| (2.0 * 0.6 * k / 1200.0).sqrt();
    let to_tooth = 10.0 - start.rem_euclid(10.0);
    for (n, reading) in (0_u32..5).zip(&curve.measured) {
        let (from, to) = (to_tooth + 10.0 * f64::from(n), to_tooth + 10.0 * f64::from(n + 1));
        check(reading.0, passed(to), 1e-9);
        check(reading.1, 10.0 / 6.0 / (passed(to) - passed(from)), 1e-6);
    }
}

/// By hand: with a tooth at each top dead centre and one midway, every interval of 60 degrees takes 50 ms whatever
/// the dip, by symmetry: a controller reads 200 rpm throughout.
#[test]
fn six_teeth_on_an_even_six_hide_the_dips() {
    let inputs = CrankingInputs {
        wheel: wheel(6, 0, 0.0),
        sync: Sync::Cam,
        dip: Band::exact(share(0.4)),
        threshold: Some(rpm(199.9)),
        ..plain()
    };
    let corner = answered(&inputs).corners[0].clone();
    check(corner.slowest.base(), 120.0, 1e-9);
    check(corner.slowest_reading.base(), 200.0, 1e-9);
    assert!(corner.closes, "every reading is 200 rpm");
    let above = CrankingInputs { threshold: Some(rpm(200.1)), ..inputs };
    assert!(answered(&above).corners[0].latest.is_none(), "no reading is 200.1 rpm");
}

/// By hand: about the valley the angle is 1200 t - 420 (0.1 / 2 pi) sin(2 pi t / 0.1) degrees. Solved for 30
/// degrees by bisection outside the project: 0.03026804633081376 s, which reads 165.19070789546973 rpm.
#[test]
fn a_reading_across_a_dip_is_the_angle_over_the_time() {
    let inputs = CrankingInputs {
        wheel: wheel(12, 0, 0.0),
        sync: Sync::Cam,
        dip: Band::exact(share(0.35)),
        ..plain()
    };
    let corner = answered(&inputs).corners[0].clone();
    check(corner.slowest.base(), 130.0, 1e-9);
    check(corner.slowest_reading.base(), 165.19070789546973, 1e-9);
}

/// By hand: at a constant 200 rpm the gap of two teeth takes 15 ms, which is 200 rpm over three positions, but
/// 66.7 rpm over one.
#[test]
fn a_gap_is_no_stall_but_for_a_controller_that_takes_it_for_a_tooth() {
    let inputs = CrankingInputs { release: Release::At(rpm(70.0)), ..plain() };
    let corner = answered(&inputs).corners[0].clone();
    check(corner.slowest_reading.base(), 200.0, 1e-9);
    check(corner.longest_interval.base(), 0.015, 1e-12);
    assert_eq!(corner.openings.count, 0, "the gap is read as three positions");
    assert!(corner.openings_with_gap_as_tooth.count > 0, "66.7 rpm is below the release");
    let lower = CrankingInputs { release: Release::At(rpm(66.0)), ..inputs.clone() };
    assert_eq!(
        answered(&lower).corners[0].openings_with_gap_as_tooth.count,
        0,
        "66.7 is above 66 rpm"
    );
    let twice = CrankingInputs { confirmation: 2, ..inputs };
    assert_eq!(
        answered(&twice).corners[0].openings_with_gap_as_tooth.count,
        0,
        "one slow tooth in a row"
    );
}

/// By hand, 36-1 at 1200 degrees a second: from just before the last tooth but one the gap is told after 30
/// degrees, from just after it only after 390 less the nudge; top dead centre is 90 degrees later.
#[test]
fn the_first_spark_waits_for_the_gap_up_to_a_turn_and_more() {
    let inputs = CrankingInputs { wheel: wheel(36, 1, 90.0), ..plain() };
    let (first, last) = answered(&inputs).corners[0].spark.expect("there is a gap");
    check(first.base(), (30.0 + 0.01 + 90.0) / 1200.0, 1e-9);
    check(last.base(), (390.0 - 0.01 + 90.0) / 1200.0, 1e-9);
    let with_cam = CrankingInputs { sync: Sync::Cam, ..inputs };
    let (first, last) = answered(&with_cam).corners[0].spark.expect("there is a cam");
    check(first.base(), (30.0 + 0.01 + 90.0) / 1200.0, 1e-9);
    check(last.base(), (750.0 - 0.01 + 90.0) / 1200.0, 1e-9);
}

#[test]
fn a_wheel_without_a_gap_gives_no_spark_by_its_gap() {
    let inputs = CrankingInputs { wheel: wheel(36, 0, 90.0), ..plain() };
    assert_eq!(answered(&inputs).corners[0].spark, None, "all teeth are alike");
    let one_tooth = CrankingInputs { wheel: wheel(1, 0, 90.0), ..plain() };
    assert!(answered(&one_tooth).corners[0].spark.is_some(), "one tooth is its own mark");
}

/// By hand: power after one 5 ms interval at most 5 + 15 ms from any start (across the gap), and with a dwell of
/// 150 ms no spark before 170 ms is kept: from the best start those at 100 ms are lost.
#[test]
fn sparks_before_dwell_are_lost_and_counted() {
    let inputs = CrankingInputs { wheel: wheel(36, 1, 90.0), dwell: seconds(0.15), ..plain() };
    let corner = answered(&inputs).corners[0].clone();
    assert_eq!(corner.lost, 1, "120 degrees are 100 ms: the next spark is kept");
    check(corner.delay.base(), 0.1, 1e-9);
    // power after a tooth and a pitch, 10.01 degrees from the best start
    check(corner.margin.expect("both").base(), (120.01 - 10.01) / 1200.0 - 0.15, 1e-9);
}

/// A spark that comes just when the coils are ready is not lost.
#[test]
fn a_spark_at_the_end_of_the_dwell_is_kept() {
    let with = |dwell: f64| {
        let inputs = CrankingInputs { wheel: wheel(36, 1, 90.0), dwell: seconds(dwell), ..plain() };
        answered(&inputs).corners[0].clone()
    };
    let margin = |dwell: f64| with(dwell).margin.expect("it closes").base();
    // what is left of it is taken off until none is, to the last digit
    let mut dwell = margin(0.0);
    for _ in 0..8 {
        dwell += margin(dwell);
    }
    check(margin(dwell), 0.0, 0.0);
    assert_eq!(with(dwell).lost, 0, "it is in time");
    check(with(dwell).delay.base(), 0.0, 0.0);
    assert_eq!(with(dwell + 1e-6).lost, 1, "a microsecond later it is lost");
    assert_eq!(with(dwell - 1e-6).lost, 0, "and before it is not");
}

#[test]
fn a_threshold_above_the_crest_never_closes() {
    let inputs =
        CrankingInputs { dip: Band::exact(share(0.35)), threshold: Some(rpm(271.0)), ..plain() };
    let answer = answered(&inputs);
    // the crest is 200 * 1.35 = 270 rpm
    assert!(!answer.corners[0].closes, "no reading exceeds the crest");
    assert_eq!(answer.corners[0].earliest_power, None, "from no start");
    assert!(!serves(&inputs, rpm(271.0)), "it can't work");
}

#[test]
fn a_release_in_the_ripple_opens_once_a_compression() {
    let inputs = CrankingInputs {
        dip: Band::exact(share(0.35)),
        threshold: Some(rpm(200.0)),
        release: Release::At(rpm(180.0)),
        ..plain()
    };
    let answer = answered(&inputs);
    // six dips a cycle, of two turns: ten a second at 200 rpm
    check(answer.corners[0].openings.a_second, 10.0, 1e-9);
    assert_eq!(answer.works, None, "130 rpm is read in each dip: a release of 180 always lets go");
    let lower = Release::Share(share(0.6));
    let band = followed(&inputs).works_with(&inputs, lower).expect("a lower release works");
    check(band.low, 30.0, 1e-9);
    check(band.high, answer.corners[0].slowest_reading.base(), 1e-9);
}

#[test]
fn a_stall_timeout_shorter_than_the_gap_leaves_no_threshold() {
    let inputs = CrankingInputs { stall_timeout: Band::exact(seconds(0.0149)), ..plain() };
    let answer = answered(&inputs);
    assert_eq!(answer.works, None, "the gap takes 15 ms");
    assert!(answer.corners[0].openings.count > 0, "it cuts power once a turn");
    let longer = CrankingInputs { stall_timeout: Band::exact(seconds(0.0151)), ..plain() };
    assert!(answered(&longer).works.is_some(), "15.1 ms is enough");
    let serves = |inputs: &CrankingInputs| serves(inputs, rpm(100.0));
    assert!(serves(&longer) && !serves(&inputs), "and so it is for one threshold alone");
    let above = CrankingInputs { release: Release::At(rpm(120.0)), ..plain() };
    assert!(!serves(&above), "it would let go above where it pulls in");
    assert!(!self::serves(&plain(), rpm(29.0)), "rocking reaches 30 rpm");
}

/// By hand: from 800 rpm in one second, 120 rpm is passed at 0.85 s; there the pitch of 6 degrees takes 8.3 ms and
/// more after, so the first reading below is complete within three pitches.
#[test]
fn power_goes_when_a_dying_engine_passes_the_release() {
    let inputs = CrankingInputs {
        wheel: wheel(60, 0, 90.0),
        release: Release::At(rpm(120.0)),
        threshold: Some(rpm(130.0)),
        ..plain()
    };
    let stop = answered(&inputs).stop.expect("there is a threshold");
    assert!((0.85..0.875).contains(&stop.off_after.base()), "{stop:?}");
    check(stop.on_at_rest.base(), 0.0, 0.0);
}

/// By hand: nothing is read below 0 rpm, so the time-out of a second after the last tooth decides. The last tooth
/// passes at standstill at the latest.
#[test]
fn a_release_of_nought_leaves_it_to_the_timeout() {
    let inputs = CrankingInputs { release: Release::At(rpm(0.0)), ..plain() };
    let stop = answered(&inputs).stop.expect("there is a threshold");
    assert!(stop.on_at_rest.base() > 0.9 && stop.on_at_rest.base() <= 1.0, "{stop:?}");
}

/// What is just enough is enough: a relay pulls in at its pull-in voltage, and stays in at its drop-out voltage.
#[test]
fn a_relay_gets_what_it_needs_where_that_is_just_what_it_needs() {
    let coil = Band::exact(celsius(20.0));
    let relay = |drop_out: f64| Relay { drop_out_voltage: Some(volts(drop_out)), ..plain().relay };
    let lets_go = |drop_out| {
        quietpin_core::cranking::lets_go(&relay(drop_out), (volts(8.0), volts(8.0)), coil)
    };
    assert_eq!(lets_go(8.0), None, "8 V hold it");
    assert_eq!(lets_go(8.001), Some((volts(8.0), volts(8.001))));
    let pulls_in = |supply: f64| {
        let inputs = CrankingInputs {
            supply: volts(supply),
            hot_supply: volts(supply),
            temperature: coil,
            ..plain()
        };
        answered(&inputs).relay.pull_in
    };
    let [sure, just, short] = [7.3, 7.2, 7.1].map(pulls_in);
    assert_eq!(just, sure, "7.2 V pull it in");
    assert_ne!(short, sure, "7.1 V do not");
}

/// A run-down that is spread is followed at both its ends.
#[test]
fn a_spread_run_down_is_counted_twice() {
    let cost = |run_down| cost::stopping(&CrankingInputs { run_down, ..plain() });
    let (exact, spread) = (Band::exact(seconds(1.0)), Band::between(seconds(0.5), seconds(2.0)));
    assert_eq!(cost(spread), 2 * cost(exact));
}

/// By hand: of a falling speed the mean over the same teeth is below the release soonest where one is read at every tooth; read in blocks
/// of 20 teeth, the first block below it may end up to 19 teeth later, and never sooner.
#[test]
fn a_dying_engine_is_noticed_later_where_its_speed_is_read_in_blocks() {
    let off = |average| {
        let inputs = CrankingInputs {
            wheel: wheel(60, 0, 90.0),
            averaging: 20,
            average,
            release: Release::At(rpm(400.0)),
            threshold: Some(rpm(410.0)),
            ..plain()
        };
        answered(&inputs).stop.expect("there is a threshold").off_after.base()
    };
    let (blocks, sliding) = (off(Average::Blocks), off(Average::Sliding));
    // 19 teeth of 6 degrees take 48 ms at 2400 degrees a second, and more as it falls
    assert!((0.01..0.08).contains(&(blocks - sliding)), "{blocks} s and {sliding} s");
}

/// Typical data of the relay: 7.2 V at 20 degrees is 7.2 * (1 + 0.00393 * 80) = 9.46368 V at 100.
#[test]
fn a_hot_relay_may_not_pull_in_on_a_cranking_battery() {
    let relay = answered(&plain()).relay;
    check(relay.needed.high.base(), 9.46368, 1e-9);
    assert_eq!(relay.pull_in, PullIn::NotHot, "8 V is enough cold, not hot");
}

fn engines() -> impl Strategy<Value = (Vec<CrankAngle>, CrankAngle)> {
    let even = (1_u32..=12, prop_oneof![Just(720.0), Just(360.0)]).prop_map(|(count, cycle)| {
        let angle = |n| CrankAngle::new(cycle * f64::from(n) / f64::from(count));
        ((0..count).map(angle).collect(), CrankAngle::new(cycle))
    });
    let odd = Just((
        [0.0, 90.0, 240.0, 330.0, 480.0, 570.0].map(CrankAngle::new).to_vec(),
        CrankAngle::new(720.0),
    ));
    prop_oneof![4 => even, 1 => odd]
}

fn starts() -> impl Strategy<Value = CrankingInputs> {
    let wheels = prop_oneof![
        Just((60, 2)),
        Just((36, 1)),
        Just((24, 0)),
        Just((12, 1)),
        Just((4, 1)),
        Just((1, 0)),
    ];
    let release = prop_oneof![
        3 => (0.1..0.95_f64).prop_map(|it| Release::Share(share(it))),
        1 => (0.0..150.0_f64).prop_map(|it| Release::At(rpm(it))),
    ];
    let speeds = (60.0..400.0_f64, 0.0..0.5_f64, 0.0..0.9_f64, 0.0..0.3_f64, 0.0..1.5_f64);
    let settings = (1_u32..=6, 1_u32..=4, 0.0..60.0_f64, 10.0..400.0_f64, 0.0..360.0_f64);
    (engines(), wheels, release, speeds, settings).prop_map(
        |((firings, cycle), (positions, missing), release, speeds, settings)| {
            let (speed, faster, dip, deeper, run_up) = speeds;
            let (averaging, confirmation, rocking, threshold, mark) = settings;
            CrankingInputs {
                firings,
                cycle,
                speed: Band::between(rpm(speed), rpm(speed * (1.0 + faster))),
                dip: Band::between(share(dip), share((dip + deeper).min(0.95))),
                run_up: Band::exact(seconds(run_up)),
                wheel: wheel(positions, missing, mark),
                sync: if positions == 24 { Sync::Cam } else { Sync::Gap },
                averaging,
                confirmation,
                threshold: Some(rpm(threshold)),
                release,
                rocking: Band::exact(rpm(rocking)),
                stall_timeout: Band::exact(seconds(2.0)),
                ..plain()
            }
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1000))]

    /// The band against thresholds that are asked about one by one; the core holds both to starts simulated reading by reading.
    #[test]
    fn inside_the_band_a_threshold_works_and_just_outside_it_does_not(
        inputs in starts(),
        place in 0.0..1.0_f64,
    ) {
        let starts = followed(&inputs);
        let serves = |threshold: RotationalSpeed| starts.serves(&inputs, threshold);
        let answer = answered(&inputs);
        let asked = inputs.threshold.expect("given");
        let Some(band) = answer.works else {
            prop_assert!(!serves(asked), "no band, but {asked:?} works");
            return Ok(());
        };
        let middle = band.low + (band.high - band.low) * place.max(1e-6);
        for inside in [band.low.max(1e-3) * (1.0 + 1e-9), middle, band.high * (1.0 - 1e-9)] {
            if band.holds(inside) {
                prop_assert!(serves(rpm(inside)), "{inside} in {band:?} fails");
            }
        }
        for outside in [band.low * (1.0 - 1e-9), band.high * (1.0 + 1e-9)] {
            prop_assert!(!serves(rpm(outside)), "{outside} off {band:?} works");
        }
        prop_assert_eq!(serves(asked), band.holds(asked.base()), "{:?} and {:?}", asked, band);
        if let Some(prompt) = answer.prompt {
            let set = CrankingInputs { threshold: Some(rpm(prompt.high * (1.0 - 1e-9))), ..inputs.clone() };
            let lost = answered(&set).corners.iter().map(|corner| corner.lost).max();
            prop_assert_eq!(lost, Some(0), "{:?} loses a spark", prompt);
        }
    }
}

fn latest(inputs: &CrankingInputs, threshold: RotationalSpeed) -> Vec<f64> {
    let set = CrankingInputs { threshold: Some(threshold), ..inputs.clone() };
    let never = |corner: &quietpin_core::cranking::StartCorner| {
        corner.latest.filter(|_| corner.closes).map_or(f64::INFINITY, |it| it.closed.base())
    };
    answered(&set).corners.iter().map(never).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// With a relay that acts at once, so that no opening can hide a closing.
    #[test]
    fn a_higher_threshold_never_closes_earlier(inputs in starts(), more in 1.0..3.0_f64) {
        let threshold = inputs.threshold.expect("given");
        let (one, other) = (latest(&inputs, threshold), latest(&inputs, threshold * more));
        for (one, other) in one.iter().zip(&other) {
            prop_assert!(other >= one, "{one} s at {threshold:?}, {other} s above");
        }
    }

    #[test]
    fn the_same_start_gives_the_same_answer(inputs in starts()) {
        prop_assert_eq!(answer(&inputs), answer(&inputs));
    }
}
