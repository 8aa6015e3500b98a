//! Firing one channel after the other: what is certain by now, and which test tells most.

use std::collections::BTreeMap;

use super::{
    Layout, Target, Wired,
    slips::{Likely, Slip},
};

/// What answered when a channel was fired alone.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Fired {
    /// Those that answered; none where nothing did.
    pub targets: Vec<Target>,
    /// Whether it was said that nothing else answered.
    pub nothing_else: bool,
}

/// What answered, by channel.
pub type Taps = BTreeMap<u32, Fired>;

/// Where the testing stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    /// The usual slips, the plan itself among them, that agree with all that answered.
    pub likely: Vec<Slip>,
    /// The channels that still have to be fired, in the order of the plan.
    pub left: Vec<u32>,
    /// Channels where more answered than the plan has on one: they are fired again first.
    pub crowded: Vec<u32>,
    /// Channels where fewer answered than there should have.
    pub silent: Vec<u32>,
    /// The channel to fire next: the test that tells most. None where all is certain.
    pub next: Option<u32>,
    /// The last channel, and what it must reach since nothing else is left for it.
    pub must_be: Option<(u32, Vec<Target>)>,
    /// Channels still to be fired that can't reach what the plan has on them: it answered to another one.
    pub certainly_wrong: Vec<u32>,
    /// The last two channels and what is left for them, one each: it is this way round or the other.
    pub either: Option<[(u32, Target); 2]>,
}

/// Where the testing stands after these taps.
///
/// The next test is the one that splits the usual slips that still fit into the smallest groups: the sum of the squares
/// of the groups, which is how many are left on average times how many there are (information theory, from memory). It
/// takes as few taps on average as any way of asking, which a test proves by trying all of them. Where none of them
/// fits, the ring is followed: the channel that is meant for the cylinder that answered to another one.
pub fn standing(layout: &Layout, usual: &[Likely], taps: &Taps, twice: &Taps) -> Standing {
    let again: Vec<u32> = twice.keys().copied().collect();
    let slots = layout.slots();
    let fired = |channel: u32| taps.get(&channel);
    let is_done = |channel: u32, size: usize| {
        fired(channel).is_some_and(|it| it.nothing_else || it.targets.len() >= size)
    };
    let of_size = |test: &dyn Fn(&Fired, usize) -> bool| -> Vec<u32> {
        let found = |slot: &&super::Slot| {
            fired(slot.channel).is_some_and(|it| test(it, slot.targets.len()))
        };
        slots.iter().filter(found).map(|slot| slot.channel).collect()
    };
    let crowded = of_size(&|it, size| it.targets.len() > size);
    let silent = of_size(&|it, size| it.nothing_else && it.targets.len() < size);
    let undone = slots.iter().filter(|slot| !is_done(slot.channel, slot.targets.len()));
    let left: Vec<u32> = undone.map(|slot| slot.channel).collect();
    let fits: Vec<&Likely> = usual.iter().filter(|it| agrees(it, taps)).collect();
    let must_be = match left.as_slice() {
        [last] if crowded.is_empty() && silent.is_empty() && again.is_empty() => {
            last_of(layout, taps, *last)
        }
        _ => None,
    };
    let begun = left.iter().copied().find(|channel| fired(*channel).is_some());
    let next = again
        .first()
        .or(crowded.first())
        .copied()
        .or(begun)
        .or_else(|| tells_most(&fits, &left))
        .or_else(|| ring(layout, taps, &left))
        .or(left.first().copied());
    Standing {
        likely: fits.iter().map(|it| it.slip).collect(),
        next: next.filter(|_| must_be.is_none()),
        certainly_wrong: certainly_wrong(layout, taps, twice, &left, &crowded),
        either: either(layout, taps, &left).filter(|_| crowded.is_empty() && silent.is_empty()),
        left,
        crowded,
        silent,
        must_be,
    }
}

/// The channels left whose own answered to another one. Where more answered than can be, one may have been misheard; of what
/// answered to two, one did, and it is neither of the others.
fn certainly_wrong(
    layout: &Layout,
    taps: &Taps,
    twice: &Taps,
    left: &[u32],
    crowded: &[u32],
) -> Vec<u32> {
    let once = taps.iter().filter(|(channel, _)| !crowded.contains(channel));
    let answered: Vec<&Target> = once.chain(twice).flat_map(|(_, it)| &it.targets).collect();
    let is_elsewhere = |slot: &&super::Slot| {
        let own = taps.get(&slot.channel).map_or(&[][..], |it| &it.targets);
        let is_lost = |it: &&Target| answered.contains(it) && !own.contains(it);
        left.contains(&slot.channel)
            && !twice.contains_key(&slot.channel)
            && slot.targets.iter().any(|it| is_lost(&it))
    };
    layout.slots().iter().filter(is_elsewhere).map(|slot| slot.channel).collect()
}

/// What is left for the last two channels, where each has one to reach.
fn either(layout: &Layout, taps: &Taps, left: &[u32]) -> Option<[(u32, Target); 2]> {
    let &[one, other] = left else { return None };
    let is_single = |channel| layout.slot(channel).is_some_and(|it| it.targets.len() == 1);
    let seen = |target: &Target| taps.values().any(|it| it.targets.contains(target));
    let rest: Vec<Target> = layout.targets().into_iter().filter(|it| !seen(it)).collect();
    match rest.as_slice() {
        // before the first is fired that is no news
        &[a, b] if layout.slots().len() > 2 && is_single(one) && is_single(other) => {
            Some([(one, a), (other, b)])
        }
        _ => None,
    }
}

/// Whether a slip agrees with what answered. A channel to which too little answered tells nothing of the leads: its coil
/// may be dead.
fn agrees(likely: &Likely, taps: &Taps) -> bool {
    let on = |channel: u32| likely.wired.values().filter(move |it| **it == channel).count();
    taps.iter().all(|(&channel, fired)| {
        let all_there = fired.targets.iter().all(|it| likely.wired.get(it) == Some(&channel));
        all_there && fired.targets.len() <= on(channel)
    })
}

/// The channel that splits these into the smallest groups; none where none of them tells any two apart.
fn tells_most(fits: &[&Likely], left: &[u32]) -> Option<u32> {
    let score = |channel: u32| {
        let reached = |it: &&Likely| -> Vec<Target> {
            it.wired.iter().filter(|(_, on)| **on == channel).map(|(target, _)| *target).collect()
        };
        let mut reached: Vec<Vec<Target>> = fits.iter().map(reached).collect();
        crate::sorted::by(&mut reached, Ord::cmp);
        reached.chunk_by(|one, other| one == other).map(|it| it.len() * it.len()).sum::<usize>()
    };
    let best = left.iter().map(|&channel| (score(channel), channel)).min_by_key(|it| it.0)?;
    (best.0 < fits.len() * fits.len()).then_some(best.1)
}

/// The channel that is meant for something that answered to another one.
fn ring(layout: &Layout, taps: &Taps, left: &[u32]) -> Option<u32> {
    let meant = taps.values().flat_map(|it| &it.targets).filter_map(|it| layout.channel_of(*it));
    meant.into_iter().find(|channel| left.contains(channel))
}

/// What is left for the last channel, where it is as much as it should reach.
fn last_of(layout: &Layout, taps: &Taps, last: u32) -> Option<(u32, Vec<Target>)> {
    let seen = |target: &Target| taps.values().any(|it| it.targets.contains(target));
    let rest: Vec<Target> = layout.targets().into_iter().filter(|it| !seen(it)).collect();
    let begun = taps.get(&last).map_or(0, |it| it.targets.len());
    let size = layout.slot(last)?.targets.len();
    (!rest.is_empty() && begun == 0 && rest.len() == size).then_some((last, rest))
}

/// The connection that follows: what was seen, and what the last channel must reach.
pub fn completed(wired: &Wired, standing: &Standing) -> Wired {
    let mut wired = wired.clone();
    if let Some((channel, targets)) = &standing.must_be {
        wired.extend(targets.iter().map(|&target| (target, *channel)));
    }
    wired
}

#[cfg(test)]
mod tests;
