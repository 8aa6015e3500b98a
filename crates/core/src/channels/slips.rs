//! The ways in which a harness is usually connected wrong, to be told apart at the car.

use super::{Layout, PlugPosition, Target, Wired};
use crate::engine::Engine;

/// What may have gone wrong when the leads were put on. The list is common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slip {
    /// Nothing.
    None,
    /// Numbered by the other habit.
    OtherHabit,
    /// Every lead sits so many places on in the order of firing.
    Onward(usize),
    /// Every lead sits on the channel of the cylinder opposite.
    Banks,
    /// The cylinders were counted from the other end.
    OtherEnd,
    /// Leading and trailing plugs are exchanged.
    Positions,
    /// The leads of two are exchanged.
    Exchange(Target, Target),
}

/// A slip, and the connection that it makes.
#[derive(Clone, Debug, PartialEq)]
pub struct Likely {
    /// What went wrong.
    pub slip: Slip,
    /// What is then connected to what.
    pub wired: Wired,
}

/// The usual slips, the plan itself first; of those that make the same connection the first.
pub fn usual(engine: &Engine, layout: &Layout, other: Option<&Layout>) -> Vec<Likely> {
    let targets = layout.targets();
    let by = |image: &dyn Fn(Target) -> Option<Target>| {
        let channel = |&target: &Target| Some((target, layout.channel_of(image(target)?)?));
        targets.iter().map(channel).collect::<Option<Wired>>()
    };
    let cylinders = engine.cylinders();
    let mut found: Vec<Likely> = Vec::new();
    let mut add = |slip, wired: Option<Wired>| {
        crate::counted::count(|done| done.connections += 1);
        if let Some(wired) = wired.filter(|wired| found.iter().all(|it| it.wired != *wired)) {
            found.push(Likely { slip, wired });
        }
    };
    add(Slip::None, by(&Some));
    add(Slip::OtherHabit, other.and_then(|other| planned(other, &targets)));
    for places in 1..layout.slots().len() {
        add(Slip::Onward(places), onward(layout, places));
    }
    add(Slip::Banks, by(&|target| Some(Target { cylinder: opposite(engine, target)?, ..target })));
    let mirrored = |target: Target| cylinders.checked_add(1)?.checked_sub(target.cylinder);
    add(Slip::OtherEnd, by(&|target| Some(Target { cylinder: mirrored(target)?, ..target })));
    add(Slip::Positions, by(&|target| Some(Target { position: swapped(target), ..target })));
    for (at, &one) in targets.iter().enumerate() {
        for &two in targets.iter().skip(at + 1) {
            let image = |target| match target {
                it if it == one => Some(two),
                it if it == two => Some(one),
                it => Some(it),
            };
            add(Slip::Exchange(one, two), by(&image));
        }
    }
    found
}

fn planned(layout: &Layout, targets: &[Target]) -> Option<Wired> {
    targets.iter().map(|&target| Some((target, layout.channel_of(target)?))).collect()
}

/// What each slot is to reach, on the channel of the slot so many places on: among those of the same plugs.
fn onward(layout: &Layout, places: usize) -> Option<Wired> {
    let mut wired = Wired::new();
    for position in [PlugPosition::Only, PlugPosition::Leading, PlugPosition::Trailing] {
        let slots: Vec<_> = layout
            .slots()
            .iter()
            .filter(|slot| slot.targets.iter().any(|target| target.position == position))
            .collect();
        for (at, slot) in slots.iter().enumerate() {
            let channel = slots.get((at + places) % slots.len())?.channel;
            wired.extend(slot.targets.iter().map(|&target| (target, channel)));
        }
    }
    Some(wired)
}

/// The cylinder in the same row of the other one of two banks.
fn opposite(engine: &Engine, target: Target) -> Option<u32> {
    let [one, other] = engine.banks() else { return None };
    let across = |from: &[u32], to: &[u32]| {
        let row = from.iter().position(|&it| it == target.cylinder)?;
        to.get(row).copied()
    };
    across(one, other).or_else(|| across(other, one))
}

fn swapped(target: Target) -> PlugPosition {
    match target.position {
        PlugPosition::Only => PlugPosition::Only,
        PlugPosition::Leading => PlugPosition::Trailing,
        PlugPosition::Trailing => PlugPosition::Leading,
    }
}
