//! What cures a wrong connection, cheapest first. Each cure is applied and checked before it is offered.

use super::{Check, Layout, Target, Wired};
use crate::{engine::Engine, permutation::fewest_exchanges, quantity::CrankAngle};

/// A lead that goes to another channel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Move {
    /// What it reaches.
    pub target: Target,
    /// The channel that it is on.
    pub from: u32,
    /// The channel where it belongs.
    pub to: u32,
}

/// One way to put everything right.
#[derive(Clone, Debug, PartialEq)]
pub enum Cure {
    /// All errors are the same: everything earlier by this angle, which may be negative.
    Setting(CrankAngle),
    /// The channels in the places of the firing order, entered in the controller instead.
    Order(Vec<u32>),
    /// Exchanges of two leads, in the order in which to make them.
    Exchange {
        /// Whose leads.
        exchanges: Vec<(Target, Target)>,
        /// How many leads are out of place: another number than that of the exchanges.
        out_of_place: usize,
    },
    /// Leads that go to other channels, where exchanges alone can't do it.
    Rewire(Vec<Move>),
}

/// The cures of a connection that is seen in full, cheapest first; none where all is right or a part unseen.
///
/// `has_order`: whether the controller can be told another order (not where a distributor hands the sparks
/// round). The check is the one that found the errors.
pub fn cures(
    engine: &Engine,
    layout: &Layout,
    wired: &Wired,
    has_order: bool,
    check: fn(&Engine, &Layout, &Wired) -> Check,
) -> Vec<Cure> {
    let found = check(engine, layout, wired);
    if !found.unseen.is_empty() || found.is_right() {
        return Vec::new();
    }
    let order = if has_order { order(layout, wired) } else { None };
    let moves = exchange(layout, wired).unwrap_or_else(|| rewire(layout, wired));
    [setting(&found), order, Some(moves)]
        .into_iter()
        .flatten()
        .filter(|cure| {
            let (layout, wired) = cure.applied(layout, wired);
            check(engine, &layout, &wired).is_right()
        })
        .collect()
}

impl Cure {
    /// What there is after the cure.
    pub fn applied(&self, layout: &Layout, wired: &Wired) -> (Layout, Wired) {
        let (layout, mut wired) = match self {
            Self::Setting(angle) => (layout.earlier_by(*angle), wired.clone()),
            Self::Order(channels) => (layout.with_channels(channels), wired.clone()),
            Self::Exchange { .. } | Self::Rewire(_) => (layout.clone(), wired.clone()),
        };
        match self {
            Self::Setting(_) | Self::Order(_) => {}
            Self::Exchange { exchanges, .. } => {
                for (one, other) in exchanges {
                    if let (Some(&a), Some(&b)) = (wired.get(one), wired.get(other)) {
                        wired.insert(*one, b);
                        wired.insert(*other, a);
                    }
                }
            }
            Self::Rewire(moves) => {
                wired.extend(moves.iter().map(|it| (it.target, it.to)));
            }
        }
        (layout, wired)
    }
}

/// An angle by which every cylinder is wrong.
fn setting(check: &Check) -> Option<Cure> {
    let first = check.reached.first()?;
    let shared = first.sparks.iter().map(|spark| spark.error).find(|error| {
        let has = |spark: &super::ChannelAction| spark.error.is_near(*error);
        check.reached.iter().all(|reached| reached.sparks.iter().any(has))
    })?;
    Some(Cure::Setting(shared))
}

/// The channel that reaches what each place of the order is to reach, where each place has one.
fn order(layout: &Layout, wired: &Wired) -> Option<Cure> {
    let channel = |targets: &[Target]| {
        let channel = wired.get(targets.first()?)?;
        let reached = wired.iter().filter(|(_, it)| *it == channel);
        let same = reached.clone().count() == targets.len()
            && reached.into_iter().all(|(target, _)| targets.contains(target));
        same.then_some(*channel)
    };
    let channels = layout.slots().iter().map(|slot| channel(&slot.targets));
    channels.collect::<Option<_>>().map(Cure::Order)
}

/// The fewest exchanges, where each channel reaches as many targets as it should.
fn exchange(layout: &Layout, wired: &Wired) -> Option<Cure> {
    let targets = layout.targets();
    let found: Vec<u32> = targets.iter().filter_map(|it| wired.get(it).copied()).collect();
    let wanted: Vec<u32> = targets.iter().filter_map(|it| layout.channel_of(*it)).collect();
    let out_of_place = found.iter().zip(&wanted).filter(|(found, wanted)| found != wanted).count();
    let exchanges = fewest_exchanges(&found, &wanted)?
        .into_iter()
        .filter_map(|(one, other)| Some((*targets.get(one)?, *targets.get(other)?)))
        .collect();
    Some(Cure::Exchange { exchanges, out_of_place })
}

/// Every lead that is not on its channel, moved there.
fn rewire(layout: &Layout, wired: &Wired) -> Cure {
    let moved = |(&target, &from): (&Target, &u32)| {
        let to = layout.channel_of(target).filter(|&to| to != from)?;
        Some(Move { target, from, to })
    };
    Cure::Rewire(wired.iter().filter_map(moved).collect())
}
