//! The fewest exposures when several people are on set: actions that do not
//! get in each other's way are shot together.
//!
//! Each exposure takes at most as many actions as there are people, no two of
//! them at odds. That is a colouring of the graph of what is at odds with
//! classes of limited size, solved exactly over all sets of actions.

/// More actions than this are not solved exactly. Our choice.
const MOST_EXACT: usize = 14;

/// Actions by number, exposure by exposure, as few exposures as can be, the
/// actions of each and the exposures in rising order; none for more actions
/// than 14. `at_odds` tells which two cannot be shot together.
#[must_use]
pub fn fewest(
    actions: usize,
    people: usize,
    at_odds: &dyn Fn(usize, usize) -> bool,
) -> Option<Vec<Vec<usize>>> {
    if actions > MOST_EXACT {
        return None;
    }
    if actions == 0 {
        return Some(Vec::new());
    }
    let people = people.max(1);
    let rows: Vec<u32> = (0..actions)
        .map(|a| {
            let odds = (0..actions).filter(|&b| b != a && at_odds(a.min(b), a.max(b)));
            odds.map(|b| 1 << b).sum()
        })
        .collect();
    let all = (1_u32 << actions) - 1;
    let fits = |set: u32| {
        set.count_ones() as usize <= people
            && (0..actions).all(|a| set >> a & 1 == 0 || set & rows[a] == 0)
    };
    // How few exposures each set of actions takes, and the set of the last.
    let mut least: Vec<(u32, u32)> = vec![(0, 0); all as usize + 1];
    for set in 1..=all {
        let lowest = set & set.wrapping_neg();
        let rest = set & !lowest;
        let mut best = (u32::MAX, 0);
        // Every part of the rest, shot together with the lowest.
        let mut part = rest;
        loop {
            let together = part | lowest;
            if fits(together) {
                let count = least[(set & !together) as usize].0 + 1;
                if count < best.0 {
                    best = (count, together);
                }
            }
            if part == 0 {
                break;
            }
            part = (part - 1) & rest;
        }
        least[set as usize] = best;
    }
    let mut out = Vec::new();
    let mut left = all;
    while left != 0 {
        let together = least[left as usize].1;
        out.push((0..actions).filter(|a| together >> a & 1 == 1).collect());
        left &= !together;
    }
    Some(out)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_person_shoots_every_action_by_itself() {
        let found = fewest(3, 1, &|_, _| false).expect("few");
        assert_eq!(found, [vec![0], vec![1], vec![2]]);
    }

    #[test]
    fn two_people_halve_what_is_not_at_odds() {
        let found = fewest(4, 2, &|a, b| (a, b) == (0, 1)).expect("few");
        assert_eq!(found.len(), 2, "{found:?}");
        let apart = |a: usize, b: usize| !found.iter().any(|e| e.contains(&a) && e.contains(&b));
        assert!(apart(0, 1), "{found:?}");
    }

    #[test]
    fn none_and_too_many() {
        assert_eq!(fewest(0, 2, &|_, _| true), Some(Vec::new()));
        assert_eq!(fewest(15, 2, &|_, _| true), None, "not exactly");
        let all = fewest(3, 0, &|_, _| false).expect("few");
        assert_eq!(all.len(), 3, "nobody is still one");
    }
}
