use proptest::prelude::*;

use super::*;
use crate::{
    engine::{Engine, EngineKind, Spacing},
    finding::Severity,
    permutation::Permutation,
    quantity::CrankAngle,
};

fn engine(kind: EngineKind, order: &[u32]) -> Engine {
    let cylinders = u32::try_from(order.len()).expect("few");
    Engine::new(kind, cylinders, order, &Spacing::Even).expect("an engine")
}

fn six() -> Engine {
    engine(EngineKind::FourStroke, &[1, 5, 3, 6, 2, 4])
}

fn odd_six() -> Engine {
    let angles = [0.0, 90.0, 240.0, 330.0, 480.0, 570.0].map(CrankAngle::new).to_vec();
    let order = [1, 6, 5, 4, 3, 2];
    Engine::new(EngineKind::FourStroke, 6, &order, &Spacing::Angles(angles)).expect("an engine")
}

/// The connection in which channel k reaches the k-th of these cylinders.
fn wired(cylinders: &[u32]) -> Wired {
    cylinders.iter().copied().map(Target::only).zip(1..).collect()
}

fn sequential(engine: &Engine) -> Layout {
    Layout::ignition(engine, Ignition::Sequential, Habit::ByCylinder).expect("always possible")
}

#[track_caller]
fn check_order(mode: Ignition, habit: Habit, order: &[u32], expected: &[&[u32]]) {
    let layout =
        Layout::ignition(&engine(EngineKind::FourStroke, order), mode, habit).expect("a layout");
    let by_channel: Vec<Vec<u32>> = (1..=layout.channels())
        .filter_map(|channel| layout.slot(channel))
        .map(|slot| slot.targets.iter().map(|target| target.cylinder).collect())
        .collect();
    assert_eq!(by_channel, expected, "{mode:?} {habit:?}");
}

#[track_caller]
fn check_effect(degrees: f64, effect: Effect) {
    assert_eq!(
        Effect::of_spark(EngineKind::FourStroke, PlugPosition::Only, CrankAngle::new(degrees)),
        effect,
        "{degrees}"
    );
}

#[test]
fn both_habits_number_the_channels() {
    let order = &[1, 4, 2, 6, 3, 5];
    let (cylinder, firing) = (Habit::ByCylinder, Habit::ByOrder);
    check_order(Ignition::Sequential, cylinder, order, &[&[1], &[2], &[3], &[4], &[5], &[6]]);
    check_order(Ignition::Sequential, firing, order, &[&[1], &[4], &[2], &[6], &[3], &[5]]);
    check_order(Ignition::PairedDouble, cylinder, order, &[&[1, 6], &[2, 5], &[4, 3]]);
    check_order(Ignition::PairedDouble, firing, order, &[&[1, 6], &[4, 3], &[2, 5]]);
}

#[test]
fn the_order_to_enter_is_that_of_the_channels() {
    let order = |habit| {
        let layout = Layout::ignition(&six(), Ignition::Sequential, habit).expect("a layout");
        layout.order(PlugPosition::Only)
    };
    assert_eq!(order(Habit::ByOrder), [1, 2, 3, 4, 5, 6]);
    assert_eq!(order(Habit::ByCylinder), [1, 5, 3, 6, 2, 4]);
}

#[test]
fn a_rotary_has_leading_plugs_and_then_trailing_ones() {
    let two = engine(EngineKind::Rotary, &[1, 2]);
    let layout = Layout::ignition(&two, Ignition::Sequential, Habit::ByOrder).expect("a layout");
    let texts: Vec<_> = layout.slots().iter().map(|it| it.targets[0].to_string()).collect();
    assert_eq!(texts, ["1L", "2L", "1T", "2T"]);
    assert_eq!(layout.order(PlugPosition::Trailing), [3, 4]);
    let need = Need::ignition(&two, Ignition::Sequential).expect("possible");
    assert_eq!((need.channels, need.needs_cam), (4, false), "a turn is the cycle");
}

#[test]
fn paired_firing_without_companions_is_refused_with_the_reason() {
    let refused = Layout::ignition(&odd_six(), Ignition::PairedDouble, Habit::ByOrder);
    let nearest = Some((4, CrankAngle::new(-30.0)));
    assert_eq!(refused, Err(UnfitLayout::NoCompanion { cylinder: 1, nearest }));
    let possible: Vec<_> = within(&odd_six(), 6).into_iter().map(|(mode, _)| mode).collect();
    assert_eq!(possible, [Ignition::Sequential, Ignition::EveryTurn, Ignition::Distributor]);
}

#[test]
fn what_fits_the_channels_there_are() {
    let fits = |channels| within(&six(), channels).first().map(|(mode, _)| *mode);
    assert_eq!(fits(6), Some(Ignition::Sequential));
    assert_eq!(fits(4), Some(Ignition::PairedSingle));
    assert_eq!(fits(2), Some(Ignition::Distributor));
    assert_eq!(fits(0), None);
}

#[test]
fn a_spark_does_by_its_stroke() {
    check_effect(0.0, Effect::Right);
    check_effect(-0.005, Effect::Right);
    check_effect(-18.0, Effect::Early);
    check_effect(-60.0, Effect::KickBack);
    check_effect(-120.0, Effect::KickBack);
    check_effect(-180.0, Effect::InletBackfire);
    check_effect(-240.0, Effect::InletBackfire);
    check_effect(30.0, Effect::LateBurn);
    check_effect(180.0, Effect::LateBurn);
    check_effect(240.0, Effect::ExhaustPop);
    check_effect(360.0, Effect::Overlap);
}

/// Once in two turns of a four-stroke is told by the cam alone; each turn of a two-stroke is alike.
#[test]
fn injection_needs_the_cam_where_each_injector_opens_once_a_cycle() {
    let needs_cam = |kind, mode| {
        let engine = Engine::new(kind, 4, &[1, 3, 4, 2], &Spacing::Even).expect("an engine");
        Need::injection(&engine, mode).expect("possible").needs_cam
    };
    assert!(needs_cam(EngineKind::FourStroke, Injection::EachOnce));
    assert!(!needs_cam(EngineKind::FourStroke, Injection::Companions));
    assert!(!needs_cam(EngineKind::FourStroke, Injection::Together));
    assert!(!needs_cam(EngineKind::TwoStroke, Injection::EachOnce));
}

#[test]
fn coils_need_the_cam_where_each_fires_once_a_cycle() {
    let needs_cam = |kind, mode| {
        Need::ignition(&engine(kind, &[1, 3, 4, 2]), mode).expect("possible").needs_cam
    };
    assert!(needs_cam(EngineKind::FourStroke, Ignition::Sequential));
    assert!(!needs_cam(EngineKind::FourStroke, Ignition::PairedSingle));
    assert!(!needs_cam(EngineKind::FourStroke, Ignition::EveryTurn));
    assert!(!needs_cam(EngineKind::TwoStroke, Ignition::Sequential));
}

/// Common practice, no source: no advance is 60 degrees; a two-stroke's exhaust port opens 85 to 110 degrees after the top. By
/// the geometry of a rotor its apex has passed the trailing plug within half a turn, 150 degrees of it taken.
#[test]
fn the_classes_of_a_spark_begin_at_their_angles() {
    let of =
        |kind, position, degrees: f64| Effect::of_spark(kind, position, CrankAngle::new(degrees));
    for (degrees, effect) in [(-62.0, Effect::KickBack), (-58.0, Effect::Early)] {
        check_effect(degrees, effect);
    }
    for (degrees, effect) in [
        (112.0, Effect::OpenPorts),
        (-112.0, Effect::OpenPorts),
        (108.0, Effect::LateBurn),
        (-108.0, Effect::KickBack),
    ] {
        assert_eq!(of(EngineKind::TwoStroke, PlugPosition::Only, degrees), effect, "{degrees}");
    }
    let (rotary, trailing) = (EngineKind::Rotary, PlugPosition::Trailing);
    assert_eq!(of(rotary, trailing, 152.0), Effect::NextChamber);
    assert_eq!(of(rotary, trailing, 148.0), Effect::LateBurn);
    assert_eq!(of(rotary, PlugPosition::Leading, 152.0), Effect::LateBurn);
}

#[test]
fn exchanged_plugs_are_found_with_their_errors() {
    let (engine, layout) = (six(), sequential(&six()));
    // 5 fires at 120 and 3 at 240; their leads are exchanged
    let check = Check::ignition(&engine, &layout, &wired(&[1, 2, 5, 4, 3, 6]));
    let wrong: Vec<_> = check
        .wrong()
        .iter()
        .map(|it| (it.target.cylinder, it.error().unwrap().degrees(), it.effect))
        .collect();
    assert_eq!(wrong, [(3, -120.0, Effect::KickBack), (5, 120.0, Effect::LateBurn)]);
    assert_eq!(check.wrong()[0].effect.severity(), Some(Severity::Danger));
}

#[test]
fn companion_swap_is_hidden_by_firing_every_turn() {
    let engine = six();
    let every =
        Layout::ignition(&engine, Ignition::EveryTurn, Habit::ByCylinder).expect("a layout");
    let swapped = wired(&[6, 2, 3, 4, 5, 1]);
    let check = Check::ignition(&engine, &every, &swapped);
    assert!(check.is_right(), "no effect: {check:?}");
    let hidden: Vec<_> = check
        .hidden(&engine, &every, Ignition::EveryTurn)
        .iter()
        .map(|it| it.target.cylinder)
        .collect();
    assert_eq!(hidden, [1, 6]);
    let later = Check::ignition(&engine, &sequential(&engine), &swapped);
    let effects: Vec<_> = later.wrong().iter().map(|it| it.effect).collect();
    assert_eq!(effects, [Effect::Overlap; 2], "360 out in sequence");
}

#[test]
fn equal_errors_are_one_setting() {
    let (engine, layout) = (six(), sequential(&six()));
    // every lead on the companion
    let cures = cures(&engine, &layout, &wired(&[6, 5, 4, 3, 2, 1]), true, Check::ignition);
    assert_eq!(cures[0], Cure::Setting(CrankAngle::new(360.0)));
    assert_eq!(cures[1], Cure::Order(vec![6, 2, 4, 1, 5, 3]));
    assert!(
        matches!(&cures[2], Cure::Exchange { exchanges, out_of_place: 6 } if exchanges.len() == 3)
    );
}

#[test]
fn leads_one_tower_round_are_turned_back() {
    let engine = six();
    let layout =
        Layout::ignition(&engine, Ignition::Distributor, Habit::ByOrder).expect("a layout");
    assert_eq!(layout.channels(), 1, "one coil");
    let cures = cures(&engine, &layout, &wired(&[5, 3, 6, 2, 4, 1]), false, Check::ignition);
    assert_eq!(cures[0], Cure::Setting(CrankAngle::new(-120.0)), "each fires one interval early");
    assert_eq!(cures.len(), 2, "a distributor is told no order: {cures:?}");
}

#[test]
fn pairs_are_cured_by_the_order_of_the_pairs_or_by_few_exchanges() {
    let engine = six();
    let pairs = Layout::ignition(&engine, Ignition::PairedDouble, Habit::ByOrder).expect("pairs");
    let reach = |groups: &[(u32, u32)]| -> Wired {
        let both = groups.iter().zip(1..);
        both.flat_map(|(&(a, b), channel)| [(Target::only(a), channel), (Target::only(b), channel)])
            .collect()
    };
    let turned = cures(&engine, &pairs, &reach(&[(1, 6), (3, 4), (5, 2)]), true, Check::ignition);
    assert_eq!(turned[0], Cure::Order(vec![1, 3, 2]));
    let torn = cures(&engine, &pairs, &reach(&[(1, 5), (6, 2), (3, 4)]), true, Check::ignition);
    assert_eq!(torn.len(), 1, "no order mends a torn pair: {torn:?}");
    assert!(
        matches!(&torn[0], Cure::Exchange { exchanges, out_of_place: 2 } if exchanges.len() == 1)
    );
}

#[test]
fn two_leads_on_one_channel_are_moved_rather_than_exchanged() {
    let (engine, layout) = (six(), sequential(&six()));
    let mut wired = wired(&[1, 2, 3, 4, 5, 6]);
    wired.insert(Target::only(6), 5);
    let found = cures(&engine, &layout, &wired, true, Check::ignition);
    assert_eq!(found, [Cure::Rewire(vec![Move { target: Target::only(6), from: 5, to: 6 }])]);
}

#[test]
fn a_channel_beyond_the_plan_never_fires_and_can_be_entered() {
    let (engine, layout) = (six(), sequential(&six()));
    let mut wired = wired(&[1, 2, 3, 4, 5, 6]);
    wired.insert(Target::only(6), 8);
    let check = Check::ignition(&engine, &layout, &wired);
    assert_eq!(check.wrong()[0].effect, Effect::Never);
    let found = cures(&engine, &layout, &wired, true, Check::ignition);
    assert_eq!(found[0], Cure::Order(vec![1, 5, 3, 8, 2, 4]));
}

#[test]
fn a_part_unseen_gets_errors_but_no_cure() {
    let (engine, layout) = (six(), sequential(&six()));
    let mut wired = wired(&[1, 2, 5, 4, 3, 6]);
    wired.remove(&Target::only(6));
    let check = Check::ignition(&engine, &layout, &wired);
    assert_eq!((check.wrong().len(), check.unseen.len()), (2, 1));
    assert!(cures(&engine, &layout, &wired, true, Check::ignition).is_empty(), "not seen in full");
}

#[test]
fn leading_and_trailing_exchanged_are_told() {
    let two = engine(EngineKind::Rotary, &[1, 2]);
    let layout = Layout::ignition(&two, Ignition::Sequential, Habit::ByOrder).expect("a layout");
    let mut wired: Wired =
        layout.slots().iter().map(|slot| (slot.targets[0], slot.channel)).collect();
    wired.insert(Target { position: PlugPosition::Leading, cylinder: 1 }, 3);
    wired.insert(Target { position: PlugPosition::Trailing, cylinder: 1 }, 1);
    let check = Check::ignition(&two, &layout, &wired);
    let effects: Vec<_> = check.wrong().iter().map(|it| it.effect).collect();
    assert_eq!(effects, [Effect::OtherPosition; 2]);
    let found = cures(&two, &layout, &wired, true, Check::ignition);
    assert_eq!(found[0], Cure::Order(vec![3, 2, 1, 4]));
}

#[test]
fn injectors_on_the_other_bank_are_a_mild_fault() {
    let banks = vec![vec![1, 2, 3], vec![4, 5, 6]];
    let engine = six().with_banks(banks).expect("banks");
    let layout =
        Layout::injection(&engine, Injection::ByBank, Habit::ByOrder).expect("banks are known");
    let mut wired: Wired = (1..=6).map(|it| (Target::only(it), 1 + (it - 1) / 3)).collect();
    assert!(Check::injection(&engine, &layout, &wired).is_right(), "as planned");
    wired.insert(Target::only(3), 2);
    wired.insert(Target::only(4), 1);
    let check = Check::injection(&engine, &layout, &wired);
    assert_eq!(check.wrong()[0].effect.severity(), Some(Severity::Doubt));
    let found = cures(&engine, &layout, &wired, true, Check::injection);
    assert!(matches!(&found[..], [Cure::Exchange { exchanges, .. }] if exchanges.len() == 1));
}

fn engines() -> impl Strategy<Value = Engine> {
    let kinds = prop_oneof![
        Just(EngineKind::FourStroke),
        Just(EngineKind::TwoStroke),
        Just(EngineKind::Rotary)
    ];
    let orders = (1..=16_u32).prop_flat_map(|n| Just((1..=n).collect::<Vec<u32>>()).prop_shuffle());
    prop_oneof![(kinds, orders).prop_map(|(kind, order)| engine(kind, &order)), Just(odd_six())]
}

/// An engine, a way to fire it, and all its leads shuffled.
fn shuffled() -> impl Strategy<Value = (Engine, Ignition, Layout, Wired)> {
    let modes = proptest::sample::select(&Ignition::ALL[..]);
    let habits = prop_oneof![Just(Habit::ByOrder), Just(Habit::ByCylinder)];
    let laid_out = (engines(), modes, habits).prop_filter_map("no companions", |(e, m, h)| {
        let layout = Layout::ignition(&e, m, h).ok()?;
        Some((e, m, layout))
    });
    laid_out.prop_flat_map(|(engine, mode, layout)| {
        let targets = layout.targets();
        let channels: Vec<u32> = targets.iter().filter_map(|it| layout.channel_of(*it)).collect();
        Just(channels).prop_shuffle().prop_map(move |channels| {
            let wired = targets.iter().copied().zip(channels).collect();
            (engine.clone(), mode, layout.clone(), wired)
        })
    })
}

proptest! {
    #[test]
    fn every_shuffle_is_diagnosed_and_every_cure_cures((engine, mode, layout, wired) in shuffled()) {
        let has_order = mode != Ignition::Distributor;
        let found = Check::ignition(&engine, &layout, &wired);
        let cures = cures(&engine, &layout, &wired, has_order, Check::ignition);
        prop_assert_eq!(cures.is_empty(), found.is_right(), "each fault has a cure");
        for cure in &cures {
            let (layout, wired) = cure.applied(&layout, &wired);
            let left = Check::ignition(&engine, &layout, &wired);
            prop_assert!(left.is_right(), "{:?} leaves {:?}", cure, left.wrong());
        }
        let one_each = layout.slots().iter().all(|slot| slot.targets.len() == 1);
        if has_order && one_each && !found.is_right() {
            let offered = cures.iter().any(|it| matches!(it, Cure::Order(_)));
            prop_assert!(offered, "single channels can always be renamed");
        }
    }

    #[test]
    fn errors_lie_within_half_a_cycle_and_add_up((engine, _, layout, wired) in shuffled()) {
        let half = layout.cycle().degrees() / 2.0;
        for reached in Check::ignition(&engine, &layout, &wired).reached {
            let own = engine.angle_of(reached.target.cylinder).unwrap();
            for spark in reached.sparks {
                let error = spark.error.degrees();
                prop_assert!(error > -half && error <= half, "{} of {}", error, half);
                let back = (own + spark.error - spark.at).as_error(layout.cycle());
                prop_assert!(back.is_near(CrankAngle::default()), "{:?}", spark);
            }
        }
    }

    #[test]
    fn planted_exchanges_are_found_again(swaps in proptest::collection::vec((0..6_usize, 0..6_usize), 0..4)) {
        let (engine, layout) = (six(), sequential(&six()));
        let mut cylinders: Vec<u32> = (1..=6).collect();
        for &(one, other) in &swaps {
            cylinders.swap(one, other);
        }
        let planted = Permutation::of_exchanges(6, &swaps).unwrap();
        let cures = cures(&engine, &layout, &wired(&cylinders), true, Check::ignition);
        let found = cures.iter().find_map(|cure| match cure {
            Cure::Exchange { exchanges, out_of_place } => Some((*out_of_place, exchanges.len())),
            _ => None,
        });
        prop_assert_eq!(found.unwrap_or((0, 0)), (planted.out_of_place(), planted.fewest()));
    }
}
