//! Starts that go otherwise, false edges, releases and named corners: cases worked by hand.

use quietpin_core::{
    cranking::{CrankingInputs, Event, Happening, Release, Slow, Sync, events, noise},
    quantity::{Band, CrankAngle, Measure, RotationalSpeed, rpm, seconds, share},
    timeline::Interval,
};

use super::{answered, check, followed, plain, wheel};

fn releases(inputs: &CrankingInputs, threshold: RotationalSpeed) -> Option<Interval> {
    followed(inputs).releases(inputs, threshold)
}

/// A wheel of 36 even teeth, and a tooth at each top dead centre.
fn even_wheel() -> CrankingInputs {
    CrankingInputs { wheel: wheel(36, 0, 0.0), sync: Sync::Cam, ..plain() }
}

fn event(inputs: &CrankingInputs, happening: Happening) -> Event {
    let all = events(inputs);
    all.into_iter().find(|it| it.happening == happening).expect("each is simulated")
}

/// By hand: thrown back by 30 degrees at 1200 degrees a second, it stands after 2 * 30 / 1200 s = 50 ms. Backwards pass
/// the tooth at the top itself and those 10, 20 and 30 degrees before it: 4 edges, and 4 again forwards: 8 too many. The
/// first whole tooth backwards takes 0.05 (1 - sqrt(2/3)) s = 9.175 ms: 181.65 rpm.
#[test]
fn thrown_back_the_sensor_counts_teeth_that_are_no_progress() {
    let kicked = event(&even_wheel(), Happening::KickBack);
    assert_eq!(kicked.teeth_too_many, 8, "four there, four back");
    let first_s = 0.05 * (1.0 - (2.0_f64 / 3.0).sqrt());
    check(kicked.fastest_back.base(), 10.0 / 6.0 / first_s, 1e-6);
    assert!(kicked.closes, "in the end it turns");
    let none = CrankingInputs { kick_back: CrankAngle::new(0.0), ..even_wheel() };
    assert!(event(&none, Happening::KickBack).powered.base() < 1e-9, "nothing is thrown back");
}

/// An engine needs way to be thrown back by a compression, 60 degrees of it: common practice, no source. Of the three starts, 0, 240 and
/// 480 degrees, the one that runs farthest to its top has power last. By hand: with tops at 0 and 63 degrees that is 240, which runs to
/// 720; with one at 57 in its place the first start is not thrown back there, and runs to 720 as well, 240 degrees or 0.2 s farther.
#[test]
fn a_compression_that_throws_the_engine_back_is_a_sixth_of_a_turn_away_at_the_least() {
    let power = |top| {
        let firings = [0.0, top].map(CrankAngle::new).to_vec();
        event(&CrankingInputs { firings, ..even_wheel() }, Happening::KickBack).power.base()
    };
    for reached in [60.0, 63.0] {
        let (before, after) = (power(57.0), power(reached));
        assert!((before - after - 0.2).abs() < 0.01, "{reached}: {before} s and {after} s");
    }
}

/// By hand: the last tooth passes within a tooth (8.33 ms) before the stop; a second later power goes. With a stand shorter
/// than the time-out it stays on for as long as that lasts.
#[test]
fn a_starter_that_sticks_leaves_power_until_the_timeout() {
    let stuck = event(&even_wheel(), Happening::Sticks);
    let powered = stuck.powered.base();
    assert!((1.0 - 0.00834..=1.0).contains(&powered), "{powered}");
    assert_eq!(stuck.openings, 1, "the time-out opens it");
    let short = CrankingInputs { stick: seconds(0.4), ..even_wheel() };
    let stuck =
        event(&CrankingInputs { release: Release::At(rpm(1.0)), ..short }, Happening::Sticks);
    check(stuck.powered.base(), 0.4, 1e-9);
    assert_eq!(stuck.openings, 0, "a slow tooth of 0.4 s reads 4 rpm, above the release");
}

/// By hand: a turn from rest at an even rate ends after 2 * 360 / 1200 s = 0.6 s. The relay wants 100 rpm over one tooth:
/// half the speed is reached after 0.3 s, and within two teeth more it is confirmed.
#[test]
fn a_slow_first_turn_brings_power_late() {
    let slow = event(&even_wheel(), Happening::SlowFirstTurn);
    let power = slow.power.base();
    assert!((0.3..0.34).contains(&power), "{power}");
    assert_eq!(slow.openings, 0, "the speed only rises");
}

/// By hand: midway edges double 30 rpm to 60. One false edge makes two readings of it, which is enough for one or two
/// readings in a row; three in a row need two edges. With two intervals in a reading, one edge within makes three half
/// readings of 2 / 1.5: 40 rpm.
#[test]
fn false_edges_double_the_speed_that_is_read() {
    let with = |confirmation, averaging, threshold: f64| {
        let inputs = CrankingInputs { confirmation, averaging, ..plain() };
        noise(&inputs, rpm(threshold))
    };
    assert_eq!(with(1, 1, 50.0).edges, Some(1));
    assert_eq!(with(2, 1, 50.0).edges, Some(1));
    assert_eq!(with(3, 1, 50.0).edges, Some(2));
    assert_eq!(with(2, 1, 60.1).edges, None, "above twice the speed");
    assert_eq!(with(2, 1, 29.0).edges, Some(0), "it pulls in without any");
    assert_eq!(with(1, 2, 39.0).edges, Some(1));
    check(with(2, 1, 50.0).above.base(), 60.0, 1e-12);
    assert_eq!(with(3, 4, 50.0).burst, 12, "so many edges make three readings of four");
}

/// By hand: at 200 rpm without dips every reading is 200 rpm, and the release may be anything from the rocking speed up to
/// the threshold; with a dip to 165.19 rpm (see the reading across a dip) that is the end.
#[test]
fn releases_reach_from_rocking_up_to_the_dips() {
    let band = releases(&even_wheel(), rpm(100.0)).expect("some work");
    check(band.low, 30.0, 1e-12);
    check(band.high, 100.0, 1e-9);
    let dips =
        CrankingInputs { wheel: wheel(12, 0, 0.0), dip: Band::exact(share(0.35)), ..even_wheel() };
    let band = releases(&dips, rpm(200.0)).expect("some work");
    check(band.high, 165.190_707_895_469_73, 1e-9);
    let rocks = CrankingInputs { rocking: Band::exact(rpm(120.0)), ..even_wheel() };
    assert!(releases(&rocks, rpm(110.0)).is_none(), "none lies above the rocking speed");
}

#[test]
fn the_band_is_bounded_by_the_slowest_corner_and_says_its_name() {
    let slow = |name, speed| Slow { name, speed: rpm(speed) };
    let inputs = CrankingInputs {
        slow: vec![slow("cold, thick oil", 150.0), slow("weak battery", 120.0)],
        dip: Band::between(share(0.2), share(0.4)),
        ..even_wheel()
    };
    let answer = answered(&inputs);
    assert_eq!(answer.bounds.high, "weak battery, deep dips");
    let names: Vec<_> = answer.corners.iter().map(|corner| corner.name.as_str()).collect();
    for name in ["nominal", "cold, thick oil, deep dips", "warm, thin oil, shallow dips"] {
        assert!(names.contains(&name), "{name} is not among {names:?}");
    }
    let high = answer.works.expect("some work").high;
    assert!((72.0..90.0).contains(&high), "120 rpm less 40 % and a little: {high}");
    let crest = followed(&inputs).readings_at_corners();
    let most = crest.iter().map(|it| it.1.base()).fold(0.0, f64::max);
    assert!((265.0..=280.0).contains(&most), "200 rpm and 40 % more at most: {most}");
}

/// By hand: six cylinders fire every 120 degrees, so one is always within 180 degrees before its top; a single cylinder is
/// so for a quarter of its cycle.
#[test]
fn the_contact_closes_on_a_compression_of_some_cylinder() {
    let six = answered(&even_wheel()).corners[0].closings;
    assert!(six.0 > 0 && six.0 == six.1, "{six:?}");
    let one = CrankingInputs { firings: vec![CrankAngle::new(0.0)], ..even_wheel() };
    let one = answered(&one).corners[0].closings;
    assert!((4..=7).contains(&one.1) && one.0 == 22, "a quarter of the starts: {one:?}");
}
