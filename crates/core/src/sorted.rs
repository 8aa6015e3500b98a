//! Sorting with one piece of code for all types.
//!
//! The standard library's sort is compiled anew for every type and every order: ten kilobytes of the page. Most lists
//! here are short, but what bounds the thresholds of a long start can be thousands.

use std::cmp::Ordering;

/// Sorts `items` by `compare`; what compares as equal keeps its order.
pub(crate) fn by<T>(items: &mut Vec<T>, compare: impl Fn(&T, &T) -> Ordering) {
    let order = places(items.len(), &|one, other| match (items.get(one), items.get(other)) {
        (Some(one), Some(other)) => compare(one, other),
        _ => Ordering::Equal,
    });
    let mut taken: Vec<_> = items.drain(..).map(Some).collect();
    items.extend(order.into_iter().filter_map(|place| taken.get_mut(place)?.take()));
}

/// The places from 0 up to `count`, in the order that `compare` gives them: runs that are in order are merged two by
/// two, the earlier place first where both are equal. The comparisons grow with `count` times its logarithm.
fn places(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..count).collect();
    let mut width = 1;
    while width < count {
        let mut merged = Vec::with_capacity(count);
        for pair in places.chunks(2 * width) {
            let (mut one, mut other) = pair.split_at(width.min(pair.len()));
            while let (Some((&first, one_left)), Some((&second, other_left))) =
                (one.split_first(), other.split_first())
            {
                if compare(first, second) == Ordering::Greater {
                    merged.push(second);
                    other = other_left;
                } else {
                    merged.push(first);
                    one = one_left;
                }
            }
            merged.extend_from_slice(one);
            merged.extend_from_slice(other);
        }
        places = merged;
        width *= 2;
    }
    places
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn a_long_list_is_compared_little_more_often_than_it_must_be() {
        const COUNT: usize = 10_000;
        let compared = std::cell::Cell::new(0);
        // a step that shares no factor with the count meets every number once
        let mut items: Vec<usize> = (0..COUNT).map(|n| n * 7919 % COUNT).collect();
        by(&mut items, |one, other| {
            compared.set(compared.get() + 1);
            one.cmp(other)
        });
        assert!(items.is_sorted(), "in order");
        assert!(compared.get() < 14 * COUNT, "{} comparisons", compared.get());
    }

    proptest! {
        #[test]
        fn it_sorts_as_the_standard_library_does(items in prop::collection::vec((0_u8..9, any::<u32>()), 0..40)) {
            let (mut ours, mut theirs) = (items.clone(), items);
            by(&mut ours, |one, other| one.0.cmp(&other.0));
            theirs.sort_by_key(|item| item.0);
            prop_assert_eq!(ours, theirs);
        }
    }
}
