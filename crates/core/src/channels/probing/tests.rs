use std::collections::BTreeMap;

use proptest::prelude::*;

use super::*;
use crate::{
    channels::{Check, Habit, Ignition, Injection, cures, slips::usual},
    engine::{Engine, EngineKind, Spacing},
};

/// Firing orders in use for 4 to 8 cylinders: in-line engines and a cross-plane V8 (engine textbooks, from memory; also
/// in `tests/reference/firing_orders.json`).
const ORDERS: [&[u32]; 5] = [
    &[1, 3, 4, 2],
    &[1, 2, 4, 5, 3],
    &[1, 5, 3, 6, 2, 4],
    &[1, 3, 5, 7, 2, 4, 6],
    &[1, 8, 4, 3, 6, 5, 7, 2],
];

fn engine(order: &[u32]) -> Engine {
    let cylinders = u32::try_from(order.len()).expect("a few");
    Engine::new(EngineKind::FourStroke, cylinders, order, &Spacing::Even).expect("an engine")
}

fn layouts(engine: &Engine, mode: Ignition) -> (Layout, Layout) {
    let of = |habit| Layout::ignition(engine, mode, habit).expect("a layout");
    (of(Habit::ByOrder), of(Habit::ByCylinder))
}

/// What a channel reaches.
fn answer(wired: &Wired, channel: u32) -> Vec<Target> {
    wired.iter().filter(|(_, on)| **on == channel).map(|(target, _)| *target).collect()
}

fn fire(taps: &mut Taps, wired: &Wired, channel: u32) {
    taps.insert(channel, Fired { targets: answer(wired, channel), nothing_else: false });
}

/// Follows the advice until all is certain; the channels fired, in order.
fn follow(layout: &Layout, usual: &[Likely], wired: &Wired) -> (Vec<u32>, Wired) {
    let (mut taps, mut fired) = (Taps::new(), Vec::new());
    let mut now = standing(layout, usual, &taps, &Taps::new());
    while let Some(next) = now.next {
        assert!(!fired.contains(&next), "channel {next} is fired twice");
        fire(&mut taps, wired, next);
        fired.push(next);
        now = standing(layout, usual, &taps, &Taps::new());
    }
    let seen = taps.iter().flat_map(|(&on, it)| it.targets.iter().map(move |&target| (target, on)));
    (fired, completed(&seen.collect(), &now))
}

/// Taps until a single one of the usual ways is left, following the advice.
fn taps_to_single_out(layout: &Layout, usual: &[Likely], wired: &Wired) -> usize {
    let mut taps = Taps::new();
    for count in 0.. {
        let now = standing(layout, usual, &taps, &Taps::new());
        if now.likely.len() == 1 {
            return count;
        }
        fire(&mut taps, wired, now.next.expect("several are left, so there is a test"));
    }
    0
}

/// The fewest taps in all that any way of asking needs to single out each of these: tries every test at every turn.
fn fewest_in_all(
    ways: &[usize],
    answers: &[Vec<Vec<Target>>],
    seen: &mut BTreeMap<Vec<usize>, usize>,
) -> usize {
    if ways.len() == 1 {
        return 0;
    }
    if let Some(known) = seen.get(ways) {
        return *known;
    }
    let channels = answers.first().map_or(0, Vec::len);
    let cost = |channel: usize| {
        let mut groups: BTreeMap<&[Target], Vec<usize>> = BTreeMap::new();
        for &way in ways {
            groups.entry(&answers[way][channel]).or_default().push(way);
        }
        (groups.len() > 1).then_some(groups)
    };
    let split: Vec<_> = (0..channels).filter_map(cost).collect();
    let best = split
        .into_iter()
        .map(|groups| {
            let rest: usize = groups.values().map(|it| fewest_in_all(it, answers, seen)).sum();
            ways.len() + rest
        })
        .min()
        .expect("two ways differ somewhere");
    seen.insert(ways.to_vec(), best);
    best
}

/// Brute force over every adaptive way of asking: none needs fewer taps on average.
#[test]
fn no_way_of_asking_singles_a_slip_out_with_fewer_taps() {
    for order in ORDERS {
        let engine = engine(order);
        let (layout, other) = layouts(&engine, Ignition::Sequential);
        let usual = usual(&engine, &layout, Some(&other));
        let channels: Vec<u32> = layout.slots().iter().map(|slot| slot.channel).collect();
        let answers: Vec<Vec<_>> = usual
            .iter()
            .map(|it| channels.iter().map(|&channel| answer(&it.wired, channel)).collect())
            .collect();
        let ways: Vec<usize> = (0..usual.len()).collect();
        let fewest = fewest_in_all(&ways, &answers, &mut BTreeMap::new());
        let ours: usize =
            usual.iter().map(|it| taps_to_single_out(&layout, &usual, &it.wired)).sum();
        assert_eq!(ours, fewest, "{order:?}: {} usual ways", usual.len());
    }
}

/// A channel is silent where less answered than should have, and that was said to be all.
#[test]
fn a_channel_that_answered_in_full_is_not_silent_and_one_that_waits_is_not_either() {
    let engine = engine(ORDERS[2]);
    let (layout, _) = layouts(&engine, Ignition::PairedDouble);
    let slot = layout.slots()[0].clone();
    let [one, _] = slot.targets[..] else { panic!("two on a channel: {slot:?}") };
    let after = |targets: Vec<Target>, nothing_else: bool| {
        let taps = Taps::from([(slot.channel, Fired { targets, nothing_else })]);
        standing(&layout, &[], &taps, &Taps::new())
    };
    let all = after(slot.targets.clone(), true);
    assert!(all.silent.is_empty() && !all.left.contains(&slot.channel), "{all:?}");
    let told = after(vec![one], true);
    assert_eq!(told.silent, [slot.channel]);
    assert!(!told.left.contains(&slot.channel), "that was all: {told:?}");
    let waits = after(vec![one], false);
    assert!(waits.silent.is_empty(), "{waits:?}");
    assert_eq!(waits.next, Some(slot.channel), "the one begun is gone on with");
    let full = after(slot.targets.clone(), false);
    assert!(!full.left.contains(&slot.channel), "as many as can answer: {full:?}");
}

/// Until every wiring but one is ruled out, every way of asking takes as many taps as channels less one: each tap rules
/// out all but one in as many as there are channels left, `n! = n (n - 1) … 2`. Counted over all wirings.
#[test]
fn certainty_takes_the_cylinders_less_one_whatever_the_wiring() {
    for order in &ORDERS[..3] {
        let engine = engine(order);
        let (layout, other) = layouts(&engine, Ignition::Sequential);
        let usual = usual(&engine, &layout, Some(&other));
        for wired in all_wirings(&layout) {
            let (fired, known) = follow(&layout, &usual, &wired);
            assert_eq!((fired.len(), known), (order.len() - 1, wired));
        }
    }
}

fn all_wirings(layout: &Layout) -> Vec<Wired> {
    let targets = layout.targets();
    let mut channels: Vec<Vec<u32>> = vec![Vec::new()];
    for _ in &targets {
        channels = channels
            .iter()
            .flat_map(|start| {
                let free = (1..=layout.channels()).filter(move |it| !start.contains(it));
                free.map(move |next| [start.as_slice(), &[next]].concat())
            })
            .collect();
    }
    channels.into_iter().map(|it| targets.iter().copied().zip(it).collect()).collect()
}

#[test]
fn a_slip_is_named_after_a_few_taps() {
    let engine = engine(&[1, 5, 3, 6, 2, 4]);
    let (layout, other) = layouts(&engine, Ignition::Sequential);
    let usual = usual(&engine, &layout, Some(&other));
    let by_cylinder = &usual.iter().find(|it| it.slip == Slip::OtherHabit).expect("is usual").wired;
    let mut taps = Taps::new();
    for _ in 0..2 {
        let next = standing(&layout, &usual, &taps, &Taps::new()).next.expect("a test");
        fire(&mut taps, by_cylinder, next);
    }
    assert_eq!(standing(&layout, &usual, &taps, &Taps::new()).likely, [Slip::OtherHabit]);
}

#[test]
fn what_contradicts_itself_is_fired_again_first() {
    let engine = engine(&[1, 3, 4, 2]);
    let (layout, _) = layouts(&engine, Ignition::Sequential);
    let both = |cylinders: &[u32]| Fired {
        targets: cylinders.iter().map(|&it| Target::only(it)).collect(),
        nothing_else: false,
    };
    let crowded = standing(&layout, &[], &Taps::from([(2, both(&[3, 4]))]), &Taps::new());
    assert_eq!((crowded.crowded, crowded.next), (vec![2], Some(2)));
    let twice = Taps::from([(3, Fired::default()), (4, Fired::default())]);
    let again = standing(&layout, &[], &Taps::from([(1, both(&[1]))]), &twice);
    assert_eq!(again.next, Some(3));
}

#[test]
fn a_dead_coil_tells_nothing_of_the_leads_and_nothing_is_concluded_from_it() {
    let engine = engine(&[1, 3, 4, 2]);
    let (layout, other) = layouts(&engine, Ignition::Sequential);
    let usual = usual(&engine, &layout, Some(&other));
    let mut taps = Taps::new();
    for (channel, cylinder) in [(1, 1), (2, 3)] {
        taps.insert(channel, Fired { targets: vec![Target::only(cylinder)], nothing_else: true });
    }
    taps.insert(3, Fired { targets: Vec::new(), nothing_else: true });
    let now = standing(&layout, &usual, &taps, &Taps::new());
    assert_eq!((now.silent, now.next, now.must_be), (vec![3], Some(4), None));
    assert!(now.likely.contains(&Slip::None), "it may still be as planned");
}

fn any_wiring() -> impl Strategy<Value = (usize, Ignition, Vec<u32>)> {
    let modes = prop_oneof![
        Just(Ignition::Sequential),
        Just(Ignition::EveryTurn),
        Just(Ignition::PairedSingle),
        Just(Ignition::Distributor),
    ];
    (0..ORDERS.len(), modes).prop_flat_map(|(at, mode)| {
        let cylinders: Vec<u32> = (1..).take(ORDERS[at].len()).collect();
        (Just(at), Just(mode), Just(cylinders).prop_shuffle())
    })
}

proptest! {
    /// Any permutation of the leads is found by following the advice, in no more taps than cylinders less one, and a
    /// cure of it, carried out, leaves everything right.
    #[test]
    fn any_permutation_is_diagnosed_and_repaired((at, mode, shuffled) in any_wiring()) {
        let order = ORDERS[at];
        let engine = engine(order);
        prop_assume!(!mode.is_paired() || engine.has_companions());
        let (layout, other) = layouts(&engine, mode);
        let usual = usual(&engine, &layout, Some(&other));
        let image = |target: &Target| {
            let cylinder = shuffled[usize::try_from(target.cylinder - 1).unwrap()];
            layout.channel_of(Target::only(cylinder)).unwrap()
        };
        let wired: Wired = layout.targets().iter().map(|it| (*it, image(it))).collect();
        let (fired, known) = follow(&layout, &usual, &wired);
        prop_assert!(fired.len() < order.len(), "{} taps for {order:?}", fired.len());
        prop_assert_eq!(&known, &wired);
        let has_order = mode != Ignition::Distributor;
        let found = cures(&engine, &layout, &known, has_order, Check::ignition);
        prop_assert!(!found.is_empty() || Check::ignition(&engine, &layout, &wired).is_right());
        for cure in found {
            let (layout, wired) = cure.applied(&layout, &wired);
            prop_assert!(Check::ignition(&engine, &layout, &wired).is_right(), "{cure:?}");
        }
    }

    /// The same of injectors on pairs of channels.
    #[test]
    fn injectors_in_pairs_are_found_too(shuffled in Just((1..=6).collect::<Vec<u32>>()).prop_shuffle()) {
        let engine = engine(ORDERS[2]);
        let layout = Layout::injection(&engine, Injection::Companions, Habit::ByOrder).unwrap();
        let usual = usual(&engine, &layout, None);
        let image = |target: &Target| {
            let cylinder = shuffled[usize::try_from(target.cylinder - 1).unwrap()];
            layout.channel_of(Target::only(cylinder)).unwrap()
        };
        let wired: Wired = layout.targets().iter().map(|it| (*it, image(it))).collect();
        let (fired, known) = follow(&layout, &usual, &wired);
        prop_assert!(fired.len() <= 2, "{} taps for three channels", fired.len());
        prop_assert_eq!(known, wired);
    }
}
