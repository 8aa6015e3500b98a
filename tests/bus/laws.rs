//! What must hold for any bus.

use proptest::prelude::*;
use quietpin_core::{
    bus::{
        frame::IdentifierKind,
        load::{PeriodicFrame, judged, of_frames},
        reach::{highest_rate, of_branch, of_bus},
    },
    quantity::{Band, Measure, bits_per_second, metres, seconds},
};

fn frame() -> impl Strategy<Value = PeriodicFrame> {
    (any::<bool>(), 0..=8_u32, 1e-3..1.0).prop_map(|(is_long, bytes, period)| {
        let kind = if is_long { IdentifierKind::Extended } else { IdentifierKind::Standard };
        PeriodicFrame::of_bytes(kind, (bytes, bytes), Band::exact(seconds(period)))
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(1000) })]

    #[test]
    fn one_more_frame_never_lowers_the_load(
        frames in prop::collection::vec(frame(), 0..10), more in frame(), rate in 5e3..1e6,
    ) {
        let rate = bits_per_second(rate);
        let load = of_frames(&frames, rate);
        let with = of_frames(frames.iter().chain([&more]), rate);
        prop_assert!(with.low > load.low && with.nominal > load.nominal && with.high > load.high);
        prop_assert!(judged(&with) <= judged(&load));
        prop_assert!(load.low <= load.nominal && load.nominal <= load.high);
    }

    #[test]
    fn a_longer_wire_never_raises_the_rate(
        long in 0.1..5000.0, longer in 0.0..1000.0, branch in 0.0..50.0, more in 0.0..10.0, rate in 5e3..1e6, slower in 0.1..1.0,
    ) {
        let rate = bits_per_second(rate);
        let of = |long: f64, branch: f64| highest_rate(rate, metres(long), metres(branch));
        let first = of(long, branch);
        for other in [of(long + longer, branch), of(long, branch + more)] {
            prop_assert!(other.map(Measure::base) <= first.map(Measure::base), "{first:?} {other:?}");
        }
        let (fast, slow) = (of_bus(rate), of_bus(rate * slower));
        prop_assert!(slow.sure >= fast.sure && slow.perhaps >= fast.perhaps && fast.perhaps >= fast.sure);
        prop_assert!(slow.suits(metres(long)) >= fast.suits(metres(long)));
        prop_assert!(fast.suits(metres(long + longer)) <= fast.suits(metres(long)));
        let (fast, slow) = (of_branch(rate), of_branch(rate * slower));
        prop_assert!(slow.sure >= fast.sure && slow.perhaps >= fast.perhaps && fast.perhaps >= fast.sure);
    }
}
