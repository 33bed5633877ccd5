//! Sorting, all of it by one sort.
//!
//! The standard sorts are compiled anew for every kind of element and every
//! comparison, 4 to 6 kB of the module each. Here places are sorted instead,
//! by one comparison passed as a pointer, and the elements then swapped into
//! them. A map or set is filled by `extend` for the same reason: `collect`
//! sorts first.
use std::cmp::Ordering;

/// Sorts a list; what compares equal keeps its order.
pub fn sort<T>(list: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    let mut from = places(list.len(), &|a, b| compare(&list[a], &list[b]));
    // Along each cycle of the permutation every swap settles one place.
    for start in 0..from.len() {
        let mut at = start;
        while from[at] != start {
            let next = from[at];
            list.swap(at, next);
            from[at] = at;
            at = next;
        }
        from[at] = at;
    }
}

/// The numbers below `count` in the order of what they stand for.
fn places(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..count).collect();
    places.sort_by(|a, b| compare(*a, *b));
    places
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn it_sorts_as_the_standard_library_does(list: Vec<(u8, u8)>) {
            let (mut ours, mut theirs) = (list.clone(), list);
            sort(&mut ours, |a, b| a.0.cmp(&b.0));
            theirs.sort_by_key(|pair| pair.0);
            prop_assert_eq!(ours, theirs, "same order, equals in place");
        }
    }
}
