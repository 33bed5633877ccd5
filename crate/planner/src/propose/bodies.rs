//! What the search moves as one: a vessel and what lies in it, a group, a place
//! setting; and the hands that reach for it.
use std::collections::BTreeSet;

use glam::DVec2;

use crate::catalogue::is_strewn;
use crate::commands::moving;
use crate::layout::{As, Id, Item, Layout, Point, Turn};
use crate::scene::silhouette;
use crate::shape::contains;

/// What moves as one.
#[derive(Clone, Debug)]
pub(super) struct Body {
    /// The lowest of it, by which it is named.
    pub(super) chief: Id,
    /// All of its things.
    pub(super) things: BTreeSet<Id>,
    /// The hands whose fingertips lie over it.
    pub(super) hands: BTreeSet<Id>,
    /// Whether it is a place setting, which belongs before its sitter.
    pub(super) setting: bool,
    /// Whether it may be moved at all: nothing of it is locked or told to lie
    /// elsewhere in an exposure.
    pub(super) free: bool,
    /// Whether it may be turned on the spot: one thing with what lies on it.
    pub(super) turns: bool,
}

/// Every body of a layout, in the order of their chiefs. What is strewn is
/// none: it stays where it is.
pub(super) fn bodies(layout: &Layout) -> Vec<Body> {
    let mut chiefs: Vec<&Item> = layout
        .items
        .iter()
        .filter(|i| i.on.is_none() && !is_strewn(&i.prop))
        .collect();
    crate::order::sort(&mut chiefs, |a, b| a.id.cmp(&b.id));
    let mut seen: BTreeSet<Id> = BTreeSet::new();
    let mut out = Vec::new();
    for item in chiefs {
        if seen.contains(&item.id) {
            continue;
        }
        let things = moving(layout, item.id);
        seen.extend(things.iter().copied());
        let own = || layout.items.iter().filter(|i| things.contains(&i.id));
        let roots = own().filter(|i| i.on.is_none()).count();
        let alike = own().all(|i| i.number == item.number);
        let seated = |g: Id| layout.seats.iter().any(|s| s.setting == Some(g));
        let elsewhere = layout.exposures.iter().flat_map(|e| &e.states);
        let elsewhere = elsewhere.filter(|s| s.is == As::Moved);
        let outlines: Vec<Vec<DVec2>> = own().map(silhouette).collect();
        let reaches = |at: DVec2| outlines.iter().any(|o| contains(o, at));
        let hands = layout.hands.iter().filter(|h| reaches(h.target.vec()));
        out.push(Body {
            chief: item.id,
            // All of a place setting goes by one number.
            setting: item.group.is_some_and(seated) || (roots > 1 && alike),
            free: own().all(|i| !i.locked) && !elsewhere.clone().any(|s| things.contains(&s.item)),
            turns: roots == 1,
            hands: hands.map(|h| h.id).collect(),
            things,
        });
    }
    out
}

impl Body {
    /// The layout with it moved, mm, and its hands with it.
    pub(super) fn moved(&self, layout: &Layout, by: [i32; 2]) -> Layout {
        let mut after = layout.clone();
        for item in after.items.iter_mut() {
            if self.things.contains(&item.id) {
                item.at = item.at.moved(by[0], by[1]);
            }
        }
        for hand in after.hands.iter_mut() {
            if self.hands.contains(&hand.id) {
                hand.target = hand.target.moved(by[0], by[1]);
            }
        }
        after
    }

    /// One thing and what lies on it, turned about its middle by half degrees.
    pub(super) fn turned(&self, layout: &Layout, half_degrees: i32) -> Layout {
        let about = self.at(layout);
        let (sin, cos) = libm::sincos(Turn::from_half_degrees(half_degrees).radians());
        let mut after = layout.clone();
        for item in after.items.iter_mut() {
            if self.things.contains(&item.id) {
                let off = DVec2::new(cos, sin).rotate(item.at.vec() - about);
                item.at = Point::nearest(about + off);
                item.turn = item.turn.plus(half_degrees);
            }
        }
        after
    }

    /// Where its chief stands.
    pub(super) fn at(&self, layout: &Layout) -> DVec2 {
        let chief = layout.items.iter().find(|i| i.id == self.chief);
        chief.map_or(DVec2::ZERO, |i| i.at.vec())
    }
}
