use proptest::prelude::*;

use super::*;
use crate::{
    budget::Budget,
    cranking::{
        Starts, Sync, Wheel, cost::tests::usual, noise as false_edges, stop as stops,
        survey as surveys,
    },
    quantity::{Band, share},
};

/// Firings of even engines, odd ones, and two that fire together.
const FIRINGS: &[&[f64]] = &[
    &[0.0],
    &[0.0, 180.0],
    &[0.0, 90.0],
    &[0.0, 0.0, 240.0],
    &[0.0, 120.0, 240.0, 360.0, 480.0, 600.0],
    &[0.0, 90.0, 240.0, 330.0, 480.0, 570.0],
];

fn band(low: f64, high: f64) -> impl Strategy<Value = (f64, f64)> {
    prop_oneof![
        3 => (low..=high).prop_map(|it| (it, it)),
        2 => (low..=high, low..=high).prop_map(|(one, other)| (one.min(other), one.max(other))),
        1 => Just((low, high)),
        1 => Just((low, low)),
    ]
}

/// The wheel, how it is read, and what the first spark waits for.
fn reading() -> impl Strategy<Value = (Wheel, u32, Average, u32, Sync)> {
    let positions = prop_oneof![1_u32..5, 5_u32..70, Just(36), Just(60), Just(120), Just(360)];
    let averaging = prop_oneof![4 => Just(1_u32), 3 => 2_u32..7, 1 => 7_u32..80];
    let confirmation = prop_oneof![2 => Just(2_u32), 1 => Just(1), 1 => 3_u32..21];
    let average = prop_oneof![Just(Average::Blocks), Just(Average::Sliding)];
    let sync = prop_oneof![3 => Just(Sync::Gap), 1 => Just(Sync::Cam)];
    (positions, 0_u32..11, 0.0..360.0_f64, averaging, average, confirmation, sync).prop_map(
        |(positions, missing, mark, averaging, average, confirmation, sync)| {
            let mark_to_first = CrankAngle::new(mark);
            let missing = missing.min(positions - 1);
            let wheel = Wheel { positions, missing, mark_to_first };
            let average = if averaging == 1 { Average::Blocks } else { average };
            (wheel, averaging, average, confirmation, sync)
        },
    )
}

/// Starts of all kinds, short enough that all of them can be followed reading by reading.
pub(in crate::cranking) fn start() -> impl Strategy<Value = CrankingInputs> {
    let speeds = (band(20.0, 400.0), prop::option::of(20.0..400.0_f64));
    let course = (band(0.0, 0.95), band(0.0, 1.2), prop::sample::select(FIRINGS));
    let release = prop_oneof![
        3 => (0.1..=1.0_f64).prop_map(|it| Release::Share(share(it))),
        1 => Just(Release::Share(share(1.0))),
        1 => (1.0..200.0_f64).prop_map(|it| Release::At(rpm(it))),
    ];
    let timeout = prop_oneof![3 => Just((1.0, 1.0)), 1 => band(0.01, 0.3)];
    let relay = (prop::option::weighted(0.9, 0.1..1.4_f64), release, timeout);
    let times = (band(0.0, 0.03), band(0.0, 0.03), 0.0..0.3_f64);
    (speeds, course, reading(), relay, times, any::<bool>()).prop_map(
        |(speeds, course, reading, relay, times, is_one_turn)| {
            let exactly = |(low, high): (f64, f64)| Band::between(seconds(low), seconds(high));
            let speed = Band::between(rpm(speeds.0.0), rpm(speeds.0.1));
            let usual = usual();
            let mut inputs = CrankingInputs {
                firings: course.2.iter().copied().map(CrankAngle::new).collect(),
                cycle: CrankAngle::new(720.0),
                speed,
                dip: Band::between(share(course.0.0), share(course.0.1)),
                run_up: exactly(course.1),
                wheel: reading.0,
                averaging: reading.1,
                average: reading.2,
                confirmation: reading.3,
                sync: reading.4,
                threshold: relay.0.map(|it| speed.low * it),
                release: relay.1,
                stall_timeout: exactly(relay.2),
                dwell: seconds(times.2),
                ..usual
            };
            inputs.relay.pull_in_time = exactly(times.0);
            inputs.relay.drop_out_time = exactly(times.1);
            if is_one_turn && course.2.iter().all(|it| *it < 360.0) {
                inputs.cycle = CrankAngle::new(360.0);
            }
            let slow = speeds.1.map(|it| crate::cranking::Slow { name: "cold", speed: rpm(it) });
            inputs.slow.extend(slow);
            inputs
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    /// The bands, the corners with all that happens at them, and which corners bound the bands.
    #[test]
    fn what_is_left_out_decides_nothing(inputs in start()) {
        let starts = Starts::follow(&inputs).expect("an engine that turns");
        let of_all = survey(&inputs, inputs.release).expect("an engine that turns");
        let found = surveys::survey(&starts, &inputs, inputs.release, &Budget::unlimited());
        let found = found.expect("it may take what it takes");
        for (one, other) in found.corners.iter().zip(&of_all.corners) {
            prop_assert_eq!(one, other);
        }
        prop_assert_eq!(found, of_all);
    }

    /// Which thresholds and releases work, wherever they are asked about.
    #[test]
    fn what_works_is_the_same(inputs in start(), shares in prop::collection::vec(0.05..1.3_f64, 6)) {
        let starts = Starts::follow(&inputs).expect("an engine that turns");
        for below in [0.3, 0.6, 1.0] {
            let release = Release::Share(share(below));
            let of_all = survey(&inputs, release).and_then(|it| it.works);
            prop_assert_eq!(surveys::works_with(&starts, &inputs, release), of_all);
        }
        let mut ends = Vec::new();
        if let Some(band) = surveys::works_with(&starts, &inputs, inputs.release) {
            ends.extend([band.low, band.high].map(|end| [end * (1.0 - 1e-12), end, end * (1.0 + 1e-12)]));
        }
        let shares = shares.iter().map(|it| inputs.speed.low.base() * it);
        for threshold in shares.chain(ends.into_iter().flatten()).map(rpm) {
            let serves = serves(&inputs, threshold);
            prop_assert_eq!(surveys::serves(&starts, &inputs, threshold), serves, "{:?}", threshold);
            let releases = releases(&inputs, threshold);
            prop_assert_eq!(surveys::releases(&starts, &inputs, threshold), releases);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    #[test]
    fn a_stop_is_the_same_tooth_by_tooth(
        inputs in start(),
        (idle, run_down) in (100.0..5000.0_f64, 0.05..3.0_f64),
        from in 0_u32..24,
        share in prop_oneof![0.0..1.1_f64, 0.0..0.1_f64],
    ) {
        let fall = Fall { from: idle * 6.0, duration_s: run_down };
        let from_deg = 15.0 * f64::from(from);
        let found = stops::command_off_s(&inputs, fall, from_deg, idle * share);
        let expected = command_off_s(&inputs, fall, from_deg, idle * share);
        prop_assert_eq!(found.to_bits(), expected.to_bits(), "{}, not {}", found, expected);
    }

    #[test]
    fn false_edges_are_the_same_interval_by_interval(
        (averaging, confirmation) in (1_u32..40, 1_u32..21),
        is_sliding in any::<bool>(),
        over in prop_oneof![0.9..2.1_f64, (0_u32..12).prop_map(|n| f64::from(n) / 6.0)],
        edges in 0_u32..65,
    ) {
        let average = if is_sliding { Average::Sliding } else { Average::Blocks };
        let inputs = CrankingInputs { averaging, average, confirmation, ..usual() };
        let threshold = inputs.rocking.high * over;
        let found = false_edges::closes(&inputs, threshold, edges);
        prop_assert_eq!(found, closes(&inputs, threshold, edges));
    }
}
