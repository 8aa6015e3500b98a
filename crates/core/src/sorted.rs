//! Sorting with one piece of code for all types.
//!
//! The standard library's sort is compiled anew for every type and every order, and is made for millions of
//! items: ten kilobytes of the page. The lists here are short, or nearly in order already.

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

/// The places from 0 up to `count`, in the order that `compare` gives them: each is put in behind the last that
/// is not greater.
fn places(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = Vec::with_capacity(count);
    for place in 0..count {
        let is_after = |other: &usize| compare(*other, place) == Ordering::Greater;
        let greater = places.iter().rev().take_while(|other| is_after(other)).count();
        places.insert(places.len() - greater, place);
    }
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
