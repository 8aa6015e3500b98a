//! Sorting with one piece of code for all types.
//!
//! The standard library's sort is compiled anew for every type and every order: some three kilobytes each in
//! the page. Here it is compiled once, for the numbers of the places.

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

/// The places from 0 up to `count`, in the order that `compare` gives them.
fn places(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<_> = (0..count).collect();
    places.sort_by(|one, other| compare(*one, *other));
    places
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

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
