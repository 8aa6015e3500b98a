//! Things in the wrong places, and the fewest exchanges of two that put them right.

/// A rearrangement of the places `0..n`: what stands at place `i` belongs at place `images[i]`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Permutation(Vec<usize>);

impl Permutation {
    /// From the image of each place; nothing where they are not the places `0..n`, each once.
    pub fn new(images: Vec<usize>) -> Option<Self> {
        let mut sorted = images.clone();
        crate::sorted::by(&mut sorted, Ord::cmp);
        sorted.into_iter().eq(0..images.len()).then_some(Self(images))
    }

    /// How many places hold something that belongs elsewhere.
    pub fn out_of_place(&self) -> usize {
        self.0.iter().enumerate().filter(|(place, image)| place != *image).count()
    }

    /// The cycles, those of one place too: from each place to where what stands there belongs.
    pub fn cycles(&self) -> Vec<Vec<usize>> {
        let mut seen = vec![false; self.0.len()];
        let mut cycles = Vec::new();
        for start in 0..self.0.len() {
            let mut cycle = Vec::new();
            let mut place = start;
            while let Some(mark) = seen.get_mut(place).filter(|mark| !**mark) {
                *mark = true;
                cycle.push(place);
                place = self.0.get(place).copied().unwrap_or(start);
            }
            if !cycle.is_empty() {
                cycles.push(cycle);
            }
        }
        cycles
    }

    /// The fewest exchanges of two that put everything in its place: `n - c`, with `c` the number of cycles.
    ///
    /// An exchange within a cycle can at best split it in two, and `n` cycles are the end.
    pub fn fewest(&self) -> usize {
        self.0.len() - self.cycles().len()
    }

    /// What a row of exchanges does to the things at `0..n`.
    ///
    /// Nothing where an exchange names a place that there isn't.
    pub fn of_exchanges(n: usize, exchanges: &[(usize, usize)]) -> Option<Self> {
        let mut things: Vec<usize> = (0..n).collect();
        for &(one, other) in exchanges {
            if one.max(other) >= n {
                return None;
            }
            things.swap(one, other);
        }
        let mut images = vec![0; n];
        for (place, thing) in things.into_iter().enumerate() {
            *images.get_mut(thing)? = place;
        }
        Self::new(images)
    }
}

/// The fewest exchanges of two places that turn `found` into `wanted`, in the order in which to do them.
///
/// A label may stand several times: things with the same label are as good as each other. Nothing where the
/// two are not made of the same labels. With all labels different this is [`Permutation::fewest`]. With
/// repeated labels it searches all ways of telling equal things apart; two places that hold each other's
/// label are exchanged first, which never costs more (whatever rings they were in close up again behind them).
///
/// ```
/// use quietpin_core::permutation::fewest_exchanges;
/// assert_eq!(fewest_exchanges(&[2, 3, 1], &[1, 2, 3]), Some(vec![(0, 2), (1, 2)]));
/// assert_eq!(fewest_exchanges(&[1, 1], &[1, 2]), None);
/// ```
pub fn fewest_exchanges(found: &[u32], wanted: &[u32]) -> Option<Vec<(usize, usize)>> {
    let (mut one, mut other) = (found.to_vec(), wanted.to_vec());
    crate::sorted::by(&mut one, Ord::cmp);
    crate::sorted::by(&mut other, Ord::cmp);
    (one == other).then(|| search(found.to_vec(), wanted))
}

fn search(mut found: Vec<u32>, wanted: &[u32]) -> Vec<(usize, usize)> {
    let mut done = Vec::new();
    while let Some((one, other)) = holding_each_others(&found, wanted) {
        found.swap(one, other);
        done.push((one, other));
    }
    let Some(first) = wrong(&found, wanted).next() else { return done };
    let best = candidates(&found, wanted, first)
        .into_iter()
        .map(|other| {
            let mut next = found.clone();
            next.swap(first, other);
            let mut exchanges = vec![(first, other)];
            exchanges.extend(search(next, wanted));
            exchanges
        })
        .min_by_key(Vec::len);
    done.extend(best.unwrap_or_default());
    done
}

fn wrong<'a>(found: &'a [u32], wanted: &'a [u32]) -> impl Iterator<Item = usize> + 'a {
    let pairs = found.iter().zip(wanted).enumerate();
    pairs.filter(|(_, (found, wanted))| found != wanted).map(|(place, _)| place)
}

fn holding_each_others(found: &[u32], wanted: &[u32]) -> Option<(usize, usize)> {
    let places: Vec<usize> = wrong(found, wanted).collect();
    let crossed = |one: usize, other: usize| {
        found.get(one) == wanted.get(other) && found.get(other) == wanted.get(one)
    };
    places.iter().enumerate().find_map(|(at, &one)| {
        let other = places.iter().skip(at + 1).find(|&&other| crossed(one, other))?;
        Some((one, *other))
    })
}

/// The places that hold what `place` wants, one for each label that they want themselves: others are alike.
fn candidates(found: &[u32], wanted: &[u32], place: usize) -> Vec<usize> {
    let mut kinds = Vec::new();
    let holds = |other: &usize| found.get(*other) == wanted.get(place);
    wrong(found, wanted)
        .filter(holds)
        .filter(|other| {
            let kind = wanted.get(*other);
            let new = !kinds.contains(&kind);
            kinds.push(kind);
            new
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[track_caller]
    fn check(found: &[u32], wanted: &[u32], expected: usize) {
        let exchanges = fewest_exchanges(found, wanted).expect("the same labels");
        assert_eq!(exchanges.len(), expected, "{found:?} to {wanted:?}: {exchanges:?}");
    }

    /// The fewest exchanges by trying all of them, breadth first.
    fn by_trying_all(found: &[u32], wanted: &[u32]) -> usize {
        let mut front = vec![found.to_vec()];
        let mut seen = std::collections::BTreeSet::from([found.to_vec()]);
        for count in 0.. {
            if front.iter().any(|it| it == wanted) {
                return count;
            }
            let mut next = Vec::new();
            for state in &front {
                for one in 0..state.len() {
                    for other in one + 1..state.len() {
                        let mut state = state.clone();
                        state.swap(one, other);
                        if seen.insert(state.clone()) {
                            next.push(state);
                        }
                    }
                }
            }
            front = next;
        }
        usize::MAX
    }

    #[test]
    fn places_and_exchanges_are_two_numbers() {
        let ring = Permutation::new(vec![1, 2, 3, 4, 0, 5]).expect("a permutation");
        assert_eq!((ring.out_of_place(), ring.fewest()), (5, 4), "one ring of five");
        let rings = Permutation::new(vec![1, 0, 3, 4, 2, 5]).expect("a permutation");
        assert_eq!((rings.out_of_place(), rings.fewest()), (5, 3), "a ring of two, one of three");
        assert_eq!(rings.cycles(), [vec![0, 1], vec![2, 3, 4], vec![5]]);
    }

    #[test]
    fn what_is_no_rearrangement_is_refused() {
        assert_eq!(Permutation::new(vec![0, 0]), None);
        assert_eq!(Permutation::new(vec![0, 2]), None);
        assert_eq!(Permutation::of_exchanges(2, &[(0, 2)]), None);
    }

    #[test]
    fn equal_things_need_no_exchange() {
        check(&[1, 2, 3], &[1, 2, 3], 0);
        check(&[1, 1, 2, 2], &[2, 2, 1, 1], 2);
        check(&[1, 2, 1, 2], &[2, 1, 2, 1], 2);
        check(&[1, 2, 2, 3, 3, 1], &[1, 1, 2, 2, 3, 3], 2);
    }

    #[test]
    fn nothing_at_all_is_in_order() {
        check(&[], &[], 0);
    }

    proptest! {
        #[test]
        fn exchanges_cure_and_are_as_few_as_the_cycles_say(
            images in Just((0..16).collect::<Vec<usize>>()).prop_shuffle()
        ) {
            let found: Vec<u32> = images.iter().map(|&it| u32::try_from(it).unwrap()).collect();
            let wanted: Vec<u32> = (0..16).collect();
            let exchanges = fewest_exchanges(&found, &wanted).unwrap();
            let permutation = Permutation::new(images).unwrap();
            prop_assert_eq!(exchanges.len(), permutation.fewest());
            prop_assert_eq!(Permutation::of_exchanges(16, &exchanges).unwrap(), permutation);
            let mut cured = found;
            for (one, other) in exchanges {
                cured.swap(one, other);
            }
            prop_assert_eq!(cured, wanted);
        }

        #[test]
        fn with_equal_things_no_way_is_shorter(
            wanted in proptest::collection::vec(0..3_u32, 0..7).prop_flat_map(|labels| {
                (Just(labels.clone()), Just(labels).prop_shuffle())
            })
        ) {
            let (wanted, found) = wanted;
            let exchanges = fewest_exchanges(&found, &wanted).unwrap();
            prop_assert_eq!(exchanges.len(), by_trying_all(&found, &wanted));
        }

        #[test]
        fn pairs_need_no_more_than_when_told_apart(
            found in Just((0..16_u32).collect::<Vec<u32>>()).prop_shuffle()
        ) {
            let pair = |labels: &[u32]| labels.iter().map(|it| it / 2).collect::<Vec<_>>();
            let wanted: Vec<u32> = (0..16).collect();
            let apart = fewest_exchanges(&found, &wanted).unwrap().len();
            let alike = fewest_exchanges(&pair(&found), &pair(&wanted)).unwrap().len();
            prop_assert!(alike <= apart, "{} for pairs, {} for singles", alike, apart);
        }
    }
}
