//! What no proposal may break, and by how much a layout breaks it.
//!
//! Measured against the layout the search began with: what overlapped or stuck
//! out there may go on doing so, and no further. From above, as things stand.
use std::collections::{BTreeMap, BTreeSet};

use glam::DVec2;

use super::bodies::{Body, bodies, is_strewn};
use crate::layout::{Crop, Id, Item, Layout, Linen, Point, Turn};
use crate::readings::copy_space;
use crate::scene::{crop_outline, joints, silhouette};
use crate::seats::stand_at;
use crate::shape::{
    Bounds, CHORD_ERROR, Region, difference, frame_outline, intersection, table_outline,
};

/// A place setting may slide this far along its edge, mm. Our choice: a
/// fifth of what is usual from plate to plate.
pub const SETTING_SLIDES: f64 = 120.0;
/// How far its distance to the edge may change by rounding, mm.
const SETTING_SLACK: f64 = 2.0;
/// Area that counts as none, mm²: what rounding to whole mm and half degrees
/// makes of a touch.
const NONE: f64 = 60.0;
/// An area broken into weighs as a length by this breadth, mm.
const BREADTH: f64 = 10.0;
/// What a locked or deformed thing weighs, as a length, mm.
const WHOLE: f64 = 1_000.0;

/// The limits of a search.
pub struct Limits {
    bodies: Vec<Body>,
    of: BTreeMap<Id, usize>,
    start: Layout,
    /// Outlines at the start by thing.
    outlines: BTreeMap<Id, Region>,
    /// What overlapped at the start, mm².
    overlaps: BTreeMap<(Id, Id), f64>,
    table: Region,
    frame: Region,
    crops: Vec<CropLimit>,
    /// How far short of and too near its target each hand is at the start.
    reach: BTreeMap<Id, [f64; 2]>,
}

struct CropLimit {
    crop: Id,
    /// Past the frame, mm².
    outside: f64,
    /// Of each thing it must show: cut off, mm².
    cut: Vec<(Id, f64)>,
    /// Copy space taken, mm².
    taken: f64,
}

impl Limits {
    /// The limits of what may be made of a layout.
    #[must_use]
    pub fn of(layout: &Layout) -> Self {
        let mut outlines = BTreeMap::new();
        for item in layout.items.iter().filter(|i| !is_strewn(i)) {
            outlines.extend(outline(item).map(|o| (item.id, o)));
        }
        let all = bodies(layout);
        let mut of = BTreeMap::new();
        for (n, body) in all.iter().enumerate() {
            of.extend(body.things.iter().map(|id| (*id, n)));
        }
        let mut limits = Self {
            bodies: all,
            of,
            table: region(&table_outline(&layout.table, CHORD_ERROR)),
            frame: region(&frame_outline(&layout.frame)),
            overlaps: BTreeMap::new(),
            crops: Vec::new(),
            reach: BTreeMap::new(),
            start: layout.clone(),
            outlines,
        };
        limits.overlaps = limits.overlaps_of(&limits.outlines, &|_| true);
        let each = layout.crops.iter();
        limits.crops = each
            .map(|c| limits.crop(layout, c, &limits.outlines))
            .collect();
        let hands = layout.hands.iter();
        limits.reach = hands
            .filter_map(|h| Some((h.id, reach(layout, h.id)?)))
            .collect();
        limits
    }

    /// What moves as one in the layout it began with.
    pub(super) fn bodies(&self) -> &[Body] {
        &self.bodies
    }

    /// The body a thing belongs to.
    pub(super) fn body_of(&self, id: Id) -> Option<usize> {
        self.of.get(&id).copied()
    }

    /// Whether nothing is broken.
    #[must_use]
    pub fn hold(&self, after: &Layout) -> bool {
        self.breach(after) <= 0.0
    }

    /// By how much a layout breaks them, as a length in mm; 0 when they hold.
    #[must_use]
    pub fn breach(&self, after: &Layout) -> f64 {
        let mut moved = BTreeSet::new();
        let mut broken = 0.0;
        let before: BTreeMap<Id, &Item> = self.start.items.iter().map(|i| (i.id, i)).collect();
        for item in &after.items {
            match before.get(&item.id) {
                Some(was) if was.at == item.at && was.turn == item.turn => {}
                Some(was) => {
                    moved.insert(item.id);
                    if was.locked || self.fixed(item.id) {
                        broken += WHOLE;
                    }
                }
                None => broken += WHOLE,
            }
        }
        let all_there = after.items.len() == self.start.items.len();
        if !all_there || self.linen_broken(after) {
            broken += WHOLE;
        }
        broken += self.deformed(after, &moved);
        let mut outlines = self.outlines.clone();
        for item in after.items.iter().filter(|i| moved.contains(&i.id)) {
            if let Some(own) = outlines.get_mut(&item.id) {
                *own = outline(item).unwrap_or_default();
            }
        }
        broken += self.stands(&outlines, &moved);
        if !moved.is_empty() || after.crops != self.start.crops {
            let limits = after.crops.iter().zip(&self.crops);
            broken += limits
                .map(|(crop, was)| was.exceeded(&self.crop(after, crop, &outlines)))
                .sum::<f64>();
        }
        broken + self.out_of_reach(after)
    }

    /// Whether it belongs to a body that stays where it is.
    fn fixed(&self, id: Id) -> bool {
        self.of.get(&id).is_none_or(|n| !self.bodies[*n].free)
    }

    fn linen_broken(&self, after: &Layout) -> bool {
        let same = |a: &Linen, b: &Linen| a.id == b.id && (!a.locked || a == b);
        let mut pairs = self.start.linens.iter().zip(&after.linens);
        after.linens.len() != self.start.linens.len() || !pairs.all(|(a, b)| same(a, b))
    }

    /// How far what moves as one has been pulled apart, and place settings
    /// from their edge.
    fn deformed(&self, after: &Layout, moved: &BTreeSet<Id>) -> f64 {
        let now: BTreeMap<Id, &Item> = after.items.iter().map(|i| (i.id, i)).collect();
        let was: BTreeMap<Id, &Item> = self.start.items.iter().map(|i| (i.id, i)).collect();
        let mut broken = 0.0;
        for body in &self.bodies {
            if body.things.is_disjoint(moved) {
                continue;
            }
            let (Some(a), Some(b)) = (was.get(&body.chief), now.get(&body.chief)) else {
                broken += WHOLE;
                continue;
            };
            let turned = b.turn.half_degrees() - a.turn.half_degrees();
            for id in &body.things {
                let (Some(own), Some(is)) = (was.get(id), now.get(id)) else {
                    broken += WHOLE;
                    continue;
                };
                let expected = turned_about(a.at.vec(), own.at, turned) + b.at.vec() - a.at.vec();
                // Each of several turns is rounded to whole mm.
                let off = (expected - is.at.vec()).length();
                if off > 3.0 || own.turn.plus(turned) != is.turn || own.on != is.on {
                    broken += off + 1.0;
                }
            }
            if body.setting {
                broken += slid(&self.start, a.at, b.at, turned);
            }
        }
        broken
    }

    /// What overlaps, sticks out of the table or left the frame, as a length.
    fn stands(&self, outlines: &BTreeMap<Id, Region>, moved: &BTreeSet<Id>) -> f64 {
        let mut broken = 0.0;
        for (pair, area) in self.overlaps_of(outlines, &|id| moved.contains(&id)) {
            let was = self.overlaps.get(&pair).copied().unwrap_or(0.0);
            broken += past(area, was);
        }
        for id in moved {
            let (Some(was), Some(is)) = (self.outlines.get(id), outlines.get(id)) else {
                continue;
            };
            for room in [&self.table, &self.frame] {
                broken += past(outside(is, room), outside(was, room));
            }
        }
        broken
    }

    /// What overlaps of two bodies where one of the two is asked for.
    fn overlaps_of(
        &self,
        outlines: &BTreeMap<Id, Region>,
        asked: &dyn Fn(Id) -> bool,
    ) -> BTreeMap<(Id, Id), f64> {
        let boxes: Vec<(Id, Bounds, &Region)> = outlines
            .iter()
            .filter_map(|(id, o)| Some((*id, o.bounds()?, o)))
            .collect();
        let mut out = BTreeMap::new();
        for (n, (a, box_a, own)) in boxes.iter().enumerate() {
            for (b, box_b, other) in &boxes[n + 1..] {
                if !(asked(*a) || asked(*b)) || self.of.get(a) == self.of.get(b) {
                    continue;
                }
                if !box_a.meets(*box_b) {
                    continue;
                }
                let area = intersection(own, other).map_or(0.0, |r| r.area());
                if area > 0.0 {
                    out.extend([((*a, *b), area)]);
                }
            }
        }
        out
    }

    /// How a crop stands to the frame, to what it must show and to its copy
    /// space.
    fn crop(&self, layout: &Layout, crop: &Crop, outlines: &BTreeMap<Id, Region>) -> CropLimit {
        let trim = region(&crop_outline(layout, crop));
        let cut = crop.must_show.iter().filter_map(|id| {
            let own = outlines.get(id)?;
            Some((*id, outside(own, &trim)))
        });
        let copy = copy_space(&layout.frame, crop).map(|area| region(&area));
        let taken = copy.map_or(0.0, |copy| {
            let within = |own: &Region| intersection(own, &copy).map_or(0.0, |r| r.area());
            outlines.values().map(within).sum()
        });
        CropLimit {
            crop: crop.id,
            outside: outside(&trim, &self.frame),
            cut: cut.collect(),
            taken,
        }
    }

    /// How much farther hands are from reaching than they were.
    fn out_of_reach(&self, after: &Layout) -> f64 {
        if after.hands == self.start.hands && after.seats == self.start.seats {
            return 0.0;
        }
        let mut broken = 0.0;
        for (id, was) in &self.reach {
            match reach(after, *id) {
                None => broken += WHOLE,
                Some(is) => {
                    broken += (0..2).map(|n| (is[n] - was[n] - 0.5).max(0.0)).sum::<f64>();
                }
            }
        }
        broken
    }
}

impl CropLimit {
    fn exceeded(&self, now: &Self) -> f64 {
        if now.crop != self.crop {
            return WHOLE;
        }
        let cut = self.cut.iter().zip(&now.cut).map(|(a, b)| past(b.1, a.1));
        cut.sum::<f64>() + past(now.outside, self.outside) + past(now.taken, self.taken)
    }
}

/// What an area is past what it was, as a length.
fn past(area: f64, was: f64) -> f64 {
    if area > was + NONE {
        (area - was) / BREADTH
    } else {
        0.0
    }
}

fn region(outline: &[DVec2]) -> Region {
    Region::from_polygon(outline).unwrap_or_default()
}

fn outline(item: &Item) -> Option<Region> {
    Region::from_polygon(&silhouette(item)).ok()
}

/// How much of an outline lies outside, mm².
fn outside(own: &Region, room: &Region) -> f64 {
    difference(own, &[room]).map_or(0.0, |r| r.area())
}

fn turned_about(about: DVec2, at: Point, half_degrees: i32) -> DVec2 {
    let turn = Turn::from_half_degrees(half_degrees);
    let (sin, cos) = libm::sincos(turn.radians());
    about + DVec2::new(cos, sin).rotate(at.vec() - about)
}

/// How far a setting has come from where it belongs, as a length.
fn slid(layout: &Layout, was: Point, is: Point, turned: i32) -> f64 {
    let stand = |at: Point| stand_at(&layout.table, at.vec());
    let (from, to) = (stand(was), stand(is));
    let depth = |at: Point, edge: DVec2| (at.vec() - edge).length();
    let aside = (depth(is, to.at) - depth(was, from.at)).abs();
    let far = (is.vec() - was.vec()).length();
    let mut broken = (far - SETTING_SLIDES).max(0.0);
    if aside > SETTING_SLACK {
        broken += aside;
    }
    if turned != 0 || (far > 0.0 && (!from.slides || from.inward != to.inward)) {
        broken += WHOLE;
    }
    broken
}

/// How far a hand is short of its target and too near to it, mm.
fn reach(layout: &Layout, hand: Id) -> Option<[f64; 2]> {
    let hand = layout.hands.iter().find(|h| h.id == hand)?;
    let joints = joints(layout, hand)?;
    Some([joints.short.max(0.0), joints.close.max(0.0)])
}
