//! Sorting by whole-number keys, then by a comparison.
use std::cmp::Ordering;

/// Where `i_overlay` looks for the bounds on keys, getters and comparisons.
pub mod key {
    use std::cmp::Ordering;

    /// Gets a key.
    pub trait KeyFn<T, K>: Fn(&T) -> K + Copy {}
    impl<T, K, F: Fn(&T) -> K + Copy> KeyFn<T, K> for F {}

    /// Compares.
    pub trait CmpFn<T>: Fn(&T, &T) -> Ordering + Copy {}
    impl<T, F: Fn(&T, &T) -> Ordering + Copy> CmpFn<T> for F {}

    /// A whole number to sort by.
    pub trait SortKey: Copy + Ord {}
    impl<K: Copy + Ord> SortKey for K {}
}

/// One key, then a comparison.
pub mod one_key_cmp {
    use super::key::{CmpFn, KeyFn, SortKey};

    /// Sorts by one key, then by a comparison.
    pub trait OneKeyAndCmpSort<T> {
        /// Sorts; neither a thread nor a buffer is needed.
        fn sort_by_one_key_then_by_and_buffer<K: SortKey>(
            &mut self,
            parallel: bool,
            buffer: &mut Vec<T>,
            key: impl KeyFn<T, K>,
            compare: impl CmpFn<T>,
        );
    }

    impl<T> OneKeyAndCmpSort<T> for [T] {
        fn sort_by_one_key_then_by_and_buffer<K: SortKey>(
            &mut self,
            _: bool,
            _: &mut Vec<T>,
            key: impl KeyFn<T, K>,
            compare: impl CmpFn<T>,
        ) {
            super::sort(self, |a, b| key(a).cmp(&key(b)).then_with(|| compare(a, b)));
        }
    }
}

/// Two keys.
pub mod two_keys {
    use super::key::{KeyFn, SortKey};

    /// Sorts by two keys.
    pub trait TwoKeysSort<T> {
        /// Sorts; no thread is needed.
        fn sort_by_two_keys<K1: SortKey, K2: SortKey>(
            &mut self,
            parallel: bool,
            first: impl KeyFn<T, K1>,
            second: impl KeyFn<T, K2>,
        );
    }

    impl<T> TwoKeysSort<T> for [T] {
        fn sort_by_two_keys<K1: SortKey, K2: SortKey>(
            &mut self,
            _: bool,
            first: impl KeyFn<T, K1>,
            second: impl KeyFn<T, K2>,
        ) {
            let keys = |e: &T| (first(e), second(e));
            super::sort(self, |a, b| keys(a).cmp(&keys(b)));
        }
    }
}

/// Two keys, then a comparison.
pub mod two_keys_cmp {
    use super::key::{CmpFn, KeyFn, SortKey};

    /// Sorts by two keys, then by a comparison.
    pub trait TwoKeysAndCmpSort<T> {
        /// Sorts; no thread is needed.
        fn sort_by_two_keys_then_by<K1: SortKey, K2: SortKey>(
            &mut self,
            parallel: bool,
            first: impl KeyFn<T, K1>,
            second: impl KeyFn<T, K2>,
            compare: impl CmpFn<T>,
        );
    }

    impl<T> TwoKeysAndCmpSort<T> for [T] {
        fn sort_by_two_keys_then_by<K1: SortKey, K2: SortKey>(
            &mut self,
            _: bool,
            first: impl KeyFn<T, K1>,
            second: impl KeyFn<T, K2>,
            compare: impl CmpFn<T>,
        ) {
            let keys = |e: &T| (first(e), second(e));
            super::sort(self, |a, b| {
                keys(a).cmp(&keys(b)).then_with(|| compare(a, b))
            });
        }
    }
}

/// Sorts places and swaps the elements into them.
fn sort<T>(list: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    // Lists mostly come sorted already.
    if list.is_sorted_by(|a, b| compare(a, b).is_le()) {
        return;
    }
    let mut from = places(list.len(), &|a, b| compare(&list[a], &list[b]));
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
    use super::one_key_cmp::OneKeyAndCmpSort;
    use super::two_keys::TwoKeysSort;
    use super::two_keys_cmp::TwoKeysAndCmpSort;

    /// Triples in an order that only looks like chance.
    fn strewn() -> Vec<(i32, i32, usize)> {
        let place = |n: usize| ((n * 7 % 5) as i32, (n * 11 % 3) as i32, n * 13 % 97);
        (0..97).map(place).collect()
    }

    #[test]
    fn keys_go_before_the_comparison() {
        let mut wanted = strewn();
        wanted.sort_by_key(|e| (e.0, e.1, std::cmp::Reverse(e.2)));
        let mut got = strewn();
        got.sort_by_two_keys_then_by(false, |e| e.0, |e| e.1, |a, b| b.2.cmp(&a.2));
        assert_eq!(got, wanted, "two keys, then falling");
        wanted.sort_by_key(|e| (e.1, e.2));
        got.sort_by_one_key_then_by_and_buffer(
            false,
            &mut Vec::new(),
            |e| e.1,
            |a, b| a.2.cmp(&b.2),
        );
        assert_eq!(got, wanted, "one key, then rising");
    }

    #[test]
    fn what_is_equal_stays_in_order() {
        let (mut got, mut wanted) = (strewn(), strewn());
        wanted.sort_by_key(|e| (e.0, e.1));
        got.sort_by_two_keys(false, |e| e.0, |e| e.1);
        assert_eq!(got, wanted, "stable");
        got.sort_by_two_keys(false, |e| e.0, |e| e.1);
        assert_eq!(got, wanted, "again");
    }
}
