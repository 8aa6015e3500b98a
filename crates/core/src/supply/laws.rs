//! What holds of every wire and every fuse.

use proptest::prelude::*;

use super::{
    blow::{carries, longest, shortest},
    laid::{Insulation, LaidWire},
    short::{FuseOutcome, FuseRace, FusedRun, check, largest_fuse, least_area},
};
use crate::{
    math,
    quantity::{Area, Band, Current, Measure, Time, amperes, celsius, metres, ohms, volts},
    tables::{fuses::RATINGS_A, wires::SIZES},
};

/// Rounding, as a share.
const HAIR: f64 = 1e-9;

fn mm2(size: f64) -> Area {
    Measure::from_base(size * 1e-6)
}

/// Each ratio between the two as likely.
fn even(low: f64, high: f64) -> impl Strategy<Value = f64> {
    (0.0..1.0).prop_map(move |share| low * math::pow(high / low, share))
}

fn insulation() -> impl Strategy<Value = Insulation> {
    prop::sample::select(Insulation::ALL.to_vec())
}

fn wire() -> impl Strategy<Value = LaidWire> {
    (even(0.13, 120.0), insulation(), -40.0..140.0, 1_u32..30).prop_map(
        |(size, insulation, air, bundled)| LaidWire {
            area: mm2(size),
            insulation,
            ambient: celsius(air),
            bundled,
        },
    )
}

/// A current that matters for a wire: a third of what the table lets it bear alone, to a dead short.
fn with_current() -> impl Strategy<Value = (LaidWire, Current)> {
    (wire(), even(0.3, 100.0))
        .prop_map(|(wire, times)| (wire, crate::tables::wires::bears(wire.area) * times))
}

fn rating() -> impl Strategy<Value = f64> {
    prop::sample::select(RATINGS_A.to_vec())
}

/// Runs of which about half are sound.
fn run() -> impl Strategy<Value = FusedRun> {
    let supply = (9.0..13.0, 0.0..4.0, even(0.003, 0.3), even(1.0, 5.0), even(0.001, 0.1));
    (wire(), rating(), even(0.2, 60.0), supply).prop_map(
        |(wire, fuse, length, (low, wider, before, spread, back))| FusedRun {
            fuse: amperes(fuse),
            wire,
            length: metres(length),
            back: ohms(back),
            source: Band::between(volts(low), volts(low + wider)),
            before: Band::between(ohms(before), ohms(before * spread)),
        },
    )
}

/// A wire that is thicker, or in cooler air, or among fewer others, or better insulated.
fn improved(
    wire: LaidWire,
    (thicker, cooler, fewer, better): (f64, f64, u32, Insulation),
) -> [LaidWire; 4] {
    [
        LaidWire { area: wire.area * thicker, ..wire },
        LaidWire { ambient: celsius(wire.ambient.base() - cooler), ..wire },
        LaidWire { bundled: wire.bundled.saturating_sub(fewer).max(1), ..wire },
        LaidWire { insulation: wire.insulation.max(better), ..wire },
    ]
}

fn s(time: Option<Time>) -> f64 {
    time.map_or(f64::INFINITY, Measure::base)
}

/// Whether the first is no worse than the second, to a hair.
fn no_less(one: f64, other: f64) -> bool {
    one >= other * (1.0 - HAIR)
}

fn protects(run: &FusedRun) -> bool {
    check(run).outcome == FuseOutcome::Protects
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1000, ..ProptestConfig::default() })]

    #[test]
    fn a_wire_bears_more_for_less_long((wire, current) in with_current(), times in even(1.0, 3.0)) {
        prop_assert!(no_less(s(wire.bears_for(current)), s(wire.bears_for(current * times))));
    }

    #[test]
    fn a_wire_that_is_thicker_cooler_less_bundled_or_better_insulated_is_never_worse(
        (wire, current) in with_current(),
        (thicker, cooler, fewer, better) in (even(1.0, 4.0), 0.0..80.0, 0_u32..20, insulation()),
    ) {
        for other in improved(wire, (thicker, cooler, fewer, better)) {
            prop_assert!(no_less(s(other.bears_for(current)), s(wire.bears_for(current))), "{other:?}");
            prop_assert!(no_less(other.bears().base(), wire.bears().base()), "{other:?}");
            let hot = |wire: LaidWire| wire.settles_at(current).map_or(f64::INFINITY, Measure::base);
            prop_assert!(hot(other) <= hot(wire) + 1e-6, "{other:?} is hotter");
        }
    }

    #[test]
    fn what_a_wire_bears_brings_it_to_what_its_insulation_lasts_at(wire in wire()) {
        let (bears, lasting) = (wire.bears(), wire.insulation.lasting().base());
        if wire.ambient.base() < lasting {
            let settled = wire.settles_at(bears).expect("it settles").base();
            prop_assert!((settled - lasting).abs() < 1e-6, "{settled} °C");
            prop_assert_eq!(wire.bears_for(bears), None);
            prop_assert!(wire.bears_for(bears * 1.001).is_some());
        } else {
            prop_assert!(bears.base() <= 0.0);
        }
    }

    #[test]
    fn a_fuse_bears_more_for_less_long_and_a_larger_one_no_less(
        (rating, larger) in (rating(), rating()),
        (current, times) in (even(0.5, 3000.0), even(1.0, 3.0)),
    ) {
        let (current, more, rated) = (amperes(current), amperes(current * times), amperes(rating));
        prop_assert!(no_less(s(longest(rated, current)), s(longest(rated, more))));
        prop_assert!(no_less(shortest(rated, current).base(), shortest(rated, more).base()));
        let larger = amperes(larger.max(rating));
        prop_assert!(no_less(s(longest(larger, current)), s(longest(rated, current))));
        prop_assert!(no_less(shortest(larger, current).base(), shortest(rated, current).base()));
        prop_assert!(s(longest(rated, current)) >= shortest(rated, current).base());
    }

    #[test]
    fn what_a_fuse_carries_for_long_it_does_not_blow_at(rating in rating(), air in -40.0..200.0) {
        let carried = carries(amperes(rating), celsius(air));
        prop_assert_eq!(longest(amperes(rating), carried), None);
        prop_assert!(carried.base() <= carries(amperes(rating), celsius(air - 10.0)).base());
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, ..ProptestConfig::default() })]

    #[test]
    fn a_longer_wire_never_has_a_higher_short(run in run(), longer in even(1.0, 5.0)) {
        let other = FusedRun { length: run.length * longer, ..run };
        prop_assert!(other.far() <= run.far());
        prop_assert!(run.far() <= run.behind());
        prop_assert!(protects(&run) || !protects(&other));
    }

    #[test]
    fn a_wire_that_is_thicker_or_laid_better_is_never_less_protected(
        run in run(),
        (thicker, cooler, fewer, better) in (even(1.0, 4.0), 0.0..80.0, 0_u32..20, insulation()),
    ) {
        let less = check(&run);
        for wire in improved(run.wire, (thicker, cooler, fewer, better)) {
            let more = check(&FusedRun { wire, ..run });
            prop_assert!(no_less(more.far.base(), less.far.base()));
            prop_assert!(no_less(more.worst.margin, less.worst.margin * (1.0 - 1e-6)));
            let protects = |it: FuseOutcome| it == FuseOutcome::Protects;
            prop_assert!(protects(more.outcome) || !protects(less.outcome));
        }
    }

    #[test]
    fn a_bigger_fuse_never_protects_more(run in run(), other in rating()) {
        let bigger = FusedRun { fuse: amperes(other.max(run.fuse.base())), ..run };
        prop_assert!(protects(&run) || !protects(&bigger));
        if check(&run).worst.is_lost() {
            prop_assert!(check(&bigger).worst.is_lost());
        }
    }

    #[test]
    fn the_largest_fuse_passes_and_the_next_does_not(run in run()) {
        let found = largest_fuse(&run).map_or(0.0, Measure::base);
        for rating in RATINGS_A {
            let tried = protects(&FusedRun { fuse: amperes(rating), ..run });
            prop_assert_eq!(tried, rating <= found, "{} A of {} A", rating, found);
        }
    }

    #[test]
    fn the_least_wire_passes_and_the_next_does_not(run in run()) {
        let found = least_area(&run).map_or(f64::INFINITY, |area| area.base() * 1e6);
        for size in SIZES {
            let wire = LaidWire { area: mm2(size), ..run.wire };
            let tried = protects(&FusedRun { wire, ..run });
            prop_assert_eq!(tried, size >= found * (1.0 - HAIR), "{} mm² of {}", size, found);
        }
    }

    /// The search against one that looks at thousands of places; where the wire bears it many times as long, no last digit is looked for.
    #[test]
    fn no_fault_is_worse_than_the_worst(run in run()) {
        let worst = check(&run).worst.margin;
        let hair = if worst < 5.0 { 1e-4 } else { 0.1 };
        let (from, to) = (run.fuse * 1.1, run.behind());
        for place in 0..=3000 {
            let share = f64::from(place) / 3000.0;
            let current = amperes(from.base() * math::pow((to / from).base(), share));
            if current <= to {
                let tried = FuseRace::at(&run, current).margin;
                prop_assert!(no_less(tried, worst * (1.0 - hair)), "{current:?}: {tried} of {worst}");
            }
        }
    }
}

/// The laws above say little where all runs come out alike.
#[test]
fn runs_at_random_come_out_in_every_way() {
    use proptest::{strategy::ValueTree, test_runner::TestRunner};
    let mut runner = TestRunner::deterministic();
    let mut counts = [0; 3];
    let mut inside = 0;
    for _ in 0..300 {
        let run = run().new_tree(&mut runner).expect("a run").current();
        let found = check(&run);
        counts[found.outcome as usize] += 1;
        let first = run.fuse * 1.1;
        let is_inside =
            found.worst.current > first * 1.001 && found.worst.current < run.behind() * 0.999;
        inside += usize::from(found.worst.is_lost() && is_inside);
    }
    assert!(counts.iter().all(|count| *count > 30), "{counts:?}");
    assert!(inside > 0, "the worst fault is not always at an end");
}
