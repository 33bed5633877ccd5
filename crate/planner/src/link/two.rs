//! Two versions in one link, to choose between: the second is written as what
//! it has that the first has not.
use super::bytes::{Bad, Bytes, put_signed, put_varint};
use super::envelope::{MAX_LINK, wrap};
use super::phrases::{get_text, put_text};
use super::write::{Linked, joined, sections_of};
use crate::layout::{Layout, clean_text};
use crate::order;

/// The number of the section.
pub(super) const TWO: u64 = 19;
/// Longest name of a version, in bytes as written.
const MAX_NAMED: u64 = 320;
/// Fewest bytes worth copying: to say so takes two or three.
const WORTH: usize = 4;
/// Places looked at for the longest copy of what comes next.
const TRIED: usize = 32;

/// The other version a link carries.
#[derive(Clone, Debug, PartialEq)]
pub struct Other {
    /// What the first and the other are called.
    pub names: [String; 2],
    /// The other.
    pub layout: Layout,
}

/// Writes two versions as one link; older planners read the first.
#[must_use]
pub fn link_two(first: &Layout, other: &Layout, names: [&str; 2]) -> Linked {
    let (mut sections, mut losses) = sections_of(first);
    let (second, lost) = sections_of(other);
    losses.extend(lost);
    // Only what stands before the other version can be copied from.
    let after = sections.split_off(&TWO);
    let old = joined(&sections);
    let mut bytes = Vec::new();
    for name in names {
        put_text(&mut bytes, name);
    }
    put_steps(&mut bytes, &old, &joined(&second));
    sections.insert(TWO, bytes);
    sections.extend(after);
    Linked {
        fragment: wrap(&joined(&sections)),
        losses,
    }
}

/// Four bytes as one number; none where fewer are left.
fn four(bytes: &[u8], at: usize) -> Option<u32> {
    let four = bytes.get(at..at + WORTH)?;
    Some(u32::from_le_bytes(four.try_into().ok()?))
}

/// How many bytes are alike from here on.
fn alike(a: &[u8], b: &[u8]) -> usize {
    a.iter().zip(b).take_while(|(a, b)| a == b).count()
}

/// Writes `new` as bytes of its own and stretches of `old`.
fn put_steps(out: &mut Vec<u8>, old: &[u8], new: &[u8]) {
    let mut places: Vec<(u32, usize)> = (0..old.len())
        .filter_map(|at| Some((four(old, at)?, at)))
        .collect();
    order::sort(&mut places, Ord::cmp);
    // Where the last stretch ended, and where bytes of its own began.
    let (mut end, mut own, mut at) = (0, 0, 0);
    while at < new.len() {
        let key = four(new, at);
        let from = places.partition_point(|place| Some(place.0) < key);
        let same = places[from..]
            .iter()
            .take_while(|place| Some(place.0) == key);
        // First where both would go on had they the same bytes between.
        let onward = (end + at - own).min(old.len());
        let tried = same.take(TRIED).map(|place| place.1);
        let mut best = (0, 0);
        for start in std::iter::once(onward).chain(tried) {
            let long = alike(&old[start..], &new[at..]);
            if long > best.0 {
                best = (long, start);
            }
        }
        let (long, start) = best;
        if long < WORTH {
            at += 1;
            continue;
        }
        put_own(out, &new[own..at]);
        put_varint(out, (long as u64) << 1 | 1);
        put_signed(out, start as i64 - end as i64);
        (end, at) = (start + long, at + long);
        own = at;
    }
    put_own(out, &new[own..]);
}

fn put_own(out: &mut Vec<u8>, bytes: &[u8]) {
    if !bytes.is_empty() {
        put_varint(out, (bytes.len() as u64) << 1);
        out.extend(bytes);
    }
}

/// Names and sections of the other version, written against those of the
/// first.
pub(super) fn get_two(old: &[u8], bytes: &[u8]) -> Result<([String; 2], Vec<u8>), Bad> {
    let mut from = Bytes(bytes);
    let mut name = || get_text(&mut from, MAX_NAMED).map(|text| clean_text(&text));
    let names = [name()?, name()?];
    let mut new: Vec<u8> = Vec::new();
    let mut end = 0_i64;
    while !from.is_empty() {
        let step = from.varint()?;
        let long = step >> 1;
        // A short step may name a long stretch, again and again.
        if long > (MAX_LINK - new.len()) as u64 {
            return Err(Bad::Many);
        }
        let stretch = match (long, step & 1) {
            (0, _) => return Err(Bad::Number),
            (_, 0) => from.take(long)?,
            _ => {
                let start = end + from.signed()?;
                end = start + long as i64;
                let range = usize::try_from(start).ok().zip(usize::try_from(end).ok());
                let found = range.and_then(|(start, end)| old.get(start..end));
                found.ok_or(Bad::Short)?
            }
        };
        new.extend_from_slice(stretch);
    }
    Ok((names, new))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn what_is_written_against_another_comes_back(
            old in prop::collection::vec(0..6_u8, 0..200),
            new in prop::collection::vec(0..6_u8, 0..200),
        ) {
            let mut bytes = vec![0, 0];
            put_steps(&mut bytes, &old, &new);
            let (names, back) = get_two(&old, &bytes).expect("reads");
            prop_assert_eq!(back, new);
            prop_assert_eq!(names, [String::new(), String::new()]);
        }

        #[test]
        fn any_bytes_do_no_harm(
            old in prop::collection::vec(any::<u8>(), 0..60),
            bytes in prop::collection::vec(any::<u8>(), 0..60),
        ) {
            if let Ok((_, new)) = get_two(&old, &bytes) {
                prop_assert!(new.len() <= MAX_LINK);
            }
        }
    }

    #[test]
    fn a_stretch_named_again_and_again_comes_to_an_end() {
        let old = vec![7; 5_000];
        let mut bytes = vec![0, 0];
        for n in 0..201 {
            put_varint(&mut bytes, 5_000 << 1 | 1);
            put_signed(&mut bytes, if n == 0 { 0 } else { -5_000 });
        }
        assert_eq!(get_two(&old, &bytes), Err(Bad::Many));
    }
}
