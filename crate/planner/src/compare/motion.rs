//! What moved as one.
use crate::layout::{Item, Point};
use crate::shape::rotation;

/// How far whole millimetres may stray from a turn of the whole, mm.
const ROUNDED: f64 = 2.0;

/// An item on both sides.
#[derive(Clone, Copy)]
pub(super) struct Pair<'a> {
    pub(super) old: &'a Item,
    pub(super) new: &'a Item,
}

impl Pair<'_> {
    /// By how many half degrees it turned, 0 to 719.
    pub(super) fn half(self) -> i32 {
        let by = self.new.turn.half_degrees() - self.old.turn.half_degrees();
        by.rem_euclid(720)
    }

    /// Whether it lies elsewhere or otherwise.
    pub(super) fn moves(self) -> bool {
        self.old.at != self.new.at || self.half() != 0
    }

    /// Where it was and is, if it moved.
    pub(super) fn path(self) -> Option<[Point; 2]> {
        (self.old.at != self.new.at).then_some([self.old.at, self.new.at])
    }

    /// Whether both moved as one stiff thing.
    fn stiff(self, other: Self) -> bool {
        let before = other.old.at.vec() - self.old.at.vec();
        let after = other.new.at.vec() - self.new.at.vec();
        self.half() == other.half()
            && match self.half() {
                0 => before == after,
                half => {
                    let turned = rotation(f64::from(half) * 0.5).rotate(before);
                    turned.distance(after) <= ROUNDED
                }
            }
    }

    /// Whether both go together, and went together.
    pub(super) fn together(self, other: Self) -> bool {
        let below = |a: Self, b: Self| b.old.on == Some(a.old.id) && b.new.on == Some(a.new.id);
        let grouped = self.new.group.is_some()
            && self.new.group == other.new.group
            && self.old.group == other.old.group;
        if below(self, other) || below(other, self) || grouped {
            return self.stiff(other);
        }
        let by = |pair: Self| pair.new.at.vec() - pair.old.at.vec();
        alike(self.new, other.new) && self.half() == other.half() && by(self) == by(other)
    }

    /// Whether one came to lie where the other was, and the other way round.
    pub(super) fn swapped(self, other: Self) -> bool {
        let met = |a: Point, b: Point| a.vec().distance(b.vec()) <= ROUNDED;
        self.path().is_some() && met(self.new.at, other.old.at) && met(other.new.at, self.old.at)
    }
}

/// Whether two things share a number and a name.
pub(super) fn alike(a: &Item, b: &Item) -> bool {
    a.number == b.number && a.name == b.name
}

/// The places below `count`, those together that are linked by some chain.
pub(super) fn clusters(count: usize, linked: &dyn Fn(usize, usize) -> bool) -> Vec<Vec<usize>> {
    let mut left: Vec<usize> = (0..count).collect();
    let mut all = Vec::new();
    while !left.is_empty() {
        let mut cluster = vec![left.remove(0)];
        let mut next = 0;
        while let Some(&at) = cluster.get(next) {
            let mut stay = Vec::with_capacity(left.len());
            for other in left {
                if linked(at, other) {
                    cluster.push(other);
                } else {
                    stay.push(other);
                }
            }
            left = stay;
            next += 1;
        }
        all.push(cluster);
    }
    all
}
