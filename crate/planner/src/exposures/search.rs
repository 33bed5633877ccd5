//! The search for the order that takes least.
//!
//! Dynamic programming over sets of exposures shot so far and the last of
//! them (Held and Karp 1962). How long food has stood depends on the way there
//! as well, so of each set and last every way is kept that no other beats in
//! all: what it took so far, and how long each food that is still needed has
//! been on the set.
use super::order::{Change, Taken};

/// Ways kept in all; with more the search is given up. Our choice.
const MOST_WAYS: usize = 60_000;

/// Food that goes on the set and is needed in the same exposures.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Stood {
    /// The exposures before which it is on the set.
    pub(super) on_set: u64,
    /// The exposures that show it.
    pub(super) real: u64,
    /// How long it looks right, minutes.
    pub(super) hold: i32,
    /// The last exposures that some food of this `on_set` is needed in.
    pub(super) class: usize,
}

/// Everything the search has to know, exposures by their places in the list.
#[derive(Clone, Debug, Default)]
pub(super) struct Search {
    /// What must come before each.
    pub(super) first: Vec<u64>,
    /// What had better come before each.
    pub(super) rather: Vec<u64>,
    /// How long each takes, minutes.
    pub(super) minutes: Vec<i32>,
    /// From each to each.
    pub(super) step: Vec<Vec<Change>>,
    /// How long that takes, minutes.
    pub(super) between: Vec<Vec<i32>>,
    /// Food swapped in: the exposures it is needed in, and the minutes each takes.
    pub(super) swaps: Vec<(u64, i32)>,
    /// Food that does not keep.
    pub(super) stood: Vec<Stood>,
    /// How many different `on_set` there are.
    pub(super) classes: usize,
}

/// A way to shoot a set of exposures.
#[derive(Clone, Debug)]
struct Way {
    taken: Taken,
    /// How often a later one jumped the queue.
    jumps: u32,
    /// How long each class of food has been on the set, minutes.
    elapsed: Vec<i32>,
    /// The last but one, and which of its ways.
    back: Option<(usize, usize)>,
}

impl Way {
    fn key(&self) -> ((i32, u32, u32), u32) {
        (self.taken.weight(), self.jumps)
    }

    fn beats(&self, other: &Self) -> bool {
        let sooner = |(a, b): (&i32, &i32)| a <= b;
        self.key() <= other.key() && self.elapsed.iter().zip(&other.elapsed).all(sooner)
    }
}

impl Search {
    /// The way on from one to the next.
    fn on(&self, way: &Way, shot: u64, last: Option<usize>, next: usize) -> Way {
        let then = shot | 1 << next;
        let step = last.map_or(Change::default(), |last| self.step[last][next]);
        let mut wait = last.map_or(0, |last| self.between[last][next]);
        for (real, minutes) in &self.swaps {
            wait += i32::from(real & shot == 0 && real >> next & 1 == 1) * minutes;
        }
        let minutes = self.minutes[next];
        let mut taken = way.taken;
        taken.change.moves += step.moves;
        taken.change.walks += step.walks;
        taken.early += (self.rather[next] & !then).count_ones();
        let mut elapsed = vec![0; self.classes];
        for food in &self.stood {
            let class = food.class;
            if food.on_set & then == 0 {
                continue;
            }
            // Not before it is on the set.
            let before = if food.on_set & shot == 0 {
                0
            } else {
                way.elapsed[class] + wait
            };
            let stood = before + minutes;
            if food.real & !then != 0 {
                elapsed[class] = stood;
            } else if food.real >> next & 1 == 1 {
                taken.over += (stood - food.hold).max(0);
            }
        }
        let waiting = (0..next).filter(|n| shot >> n & 1 == 0).count();
        Way {
            taken,
            jumps: way.jumps + waiting as u32,
            elapsed,
            back: None,
        }
    }

    /// What shooting them in this order takes; none when one comes too early.
    pub(super) fn taken(&self, order: &[usize]) -> Option<Taken> {
        let (mut shot, mut last) = (0, None);
        let mut way = self.start();
        for &next in order {
            if self.first[next] & !shot != 0 {
                return None;
            }
            way = self.on(&way, shot, last, next);
            (shot, last) = (shot | 1 << next, Some(next));
        }
        Some(way.taken)
    }

    fn start(&self) -> Way {
        Way {
            taken: Taken::default(),
            jumps: 0,
            elapsed: vec![0; self.classes],
            back: None,
        }
    }

    /// The order that takes least, and what it takes; none when there are too
    /// many ways.
    pub(super) fn best(&self) -> Option<(Vec<usize>, Taken)> {
        let n = self.first.len();
        if n == 0 {
            return Some((Vec::new(), Taken::default()));
        }
        let all = (1_usize << n) - 1;
        // The ways to each set and last of it.
        let mut ways: Vec<Vec<Way>> = vec![Vec::new(); (all + 1) * n];
        let mut kept = 0;
        for next in (0..n).filter(|next| self.first[*next] == 0) {
            ways[(1 << next) * n + next].push(self.on(&self.start(), 0, None, next));
        }
        for set in 1..=all {
            let shot = set as u64;
            for last in (0..n).filter(|last| set >> last & 1 == 1) {
                let here = core::mem::take(&mut ways[set * n + last]);
                for next in (0..n).filter(|next| set >> next & 1 == 0) {
                    if self.first[next] & !shot != 0 {
                        continue;
                    }
                    let there = &mut ways[(set | 1 << next) * n + next];
                    for (from, way) in here.iter().enumerate() {
                        let mut on = self.on(way, shot, Some(last), next);
                        on.back = Some((last, from));
                        if there.iter().any(|known| known.beats(&on)) {
                            continue;
                        }
                        let before = there.len();
                        there.retain(|known| !on.beats(known));
                        kept = kept + 1 + there.len() - before;
                        there.push(on);
                    }
                }
                if kept > MOST_WAYS {
                    return None;
                }
                ways[set * n + last] = here;
            }
        }
        let ends = (0..n).flat_map(|last| {
            let here = ways[all * n + last].iter().enumerate();
            here.map(move |(at, way)| (way.key(), last, at))
        });
        let (_, mut last, mut at) = ends.min()?;
        let taken = ways[all * n + last][at].taken;
        let (mut order, mut set) = (vec![last], all);
        while let Some((back, from)) = ways[set * n + last][at].back {
            set &= !(1 << last);
            (last, at) = (back, from);
            order.push(last);
        }
        order.reverse();
        Some((order, taken))
    }
}
