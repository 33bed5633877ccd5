//! What no proposal may break, and by how much a layout breaks it.
//!
//! Measured against the layout the search began with: what overlapped or stuck
//! out there may go on doing so, and no further. From above, as things stand.
use std::rc::Rc;

use glam::DVec2;

use super::bodies::{Body, bodies};
use crate::catalogue::is_strewn;
use crate::layout::{Crop, Hand, Id, Item, Layout, Linen, Point, Turn};
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
    start: Layout,
    /// By the place of each thing in the list: the body it belongs to, and its
    /// outline at the start; none for what is strewn.
    of: Vec<Option<usize>>,
    outlines: Outlines,
    /// What overlapped at the start, mm².
    overlaps: Vec<Overlap>,
    table: Region,
    frame: Region,
    crops: Vec<CropLimit>,
    /// How far short of and too near its target each hand is at the start.
    reach: Vec<Option<[f64; 2]>>,
}

/// The outline of each thing and the box round it.
type Outlines = Vec<Option<Rc<(Region, Bounds)>>>;

/// Two things by their places, and how much of them overlaps, mm².
struct Overlap {
    pair: (usize, usize),
    area: f64,
}

struct CropLimit {
    crop: Id,
    /// Past the frame, mm².
    outside: f64,
    /// Of each thing it must show: cut off, mm².
    cut: Vec<f64>,
    /// Copy space taken, mm².
    taken: f64,
}

impl Limits {
    /// The limits of what may be made of a layout.
    #[must_use]
    pub fn of(layout: &Layout) -> Self {
        let bodies = bodies(layout);
        let body = |item: &Item| bodies.iter().position(|b| b.things.contains(&item.id));
        let mut limits = Self {
            of: layout.items.iter().map(body).collect(),
            outlines: layout.items.iter().map(outline).collect(),
            bodies,
            table: region(&table_outline(&layout.table, CHORD_ERROR)),
            frame: region(&frame_outline(&layout.frame)),
            overlaps: Vec::new(),
            crops: Vec::new(),
            reach: layout.hands.iter().map(|h| reach(layout, h)).collect(),
            start: layout.clone(),
        };
        limits.overlaps = limits.overlaps_of(&limits.outlines, &|_| true);
        let each = layout.crops.iter();
        limits.crops = each
            .map(|c| limits.crop(layout, c, &limits.outlines))
            .collect();
        limits
    }

    /// What moves as one in the layout it began with.
    pub(super) fn bodies(&self) -> &[Body] {
        &self.bodies
    }

    /// The body a thing belongs to.
    pub(super) fn body_of(&self, id: Id) -> Option<usize> {
        self.bodies.iter().position(|b| b.things.contains(&id))
    }

    /// Whether nothing is broken.
    #[must_use]
    pub fn hold(&self, after: &Layout) -> bool {
        self.breach(after) <= 0.0
    }

    /// By how much a layout breaks them, as a length in mm; 0 when they hold.
    #[must_use]
    pub fn breach(&self, after: &Layout) -> f64 {
        if !self.same_things(after) {
            return WHOLE;
        }
        let items = self.start.items.iter().zip(&after.items);
        let moved: Vec<bool> = items
            .map(|(was, is)| (was.at, was.turn) != (is.at, is.turn))
            .collect();
        let mut broken = 0.0;
        for (n, item) in self.start.items.iter().enumerate() {
            let free = self.of[n].is_some_and(|n| self.bodies[n].free);
            if moved[n] && (item.locked || !free) {
                broken += WHOLE;
            }
        }
        broken += self.deformed(after, &moved);
        let mut outlines = self.outlines.clone();
        for (n, item) in after.items.iter().enumerate() {
            if moved[n] {
                outlines[n] = outline(item);
            }
        }
        broken += self.stands(&outlines, &moved);
        if moved.contains(&true) || after.crops != self.start.crops {
            let limits = after.crops.iter().zip(&self.crops);
            broken += limits
                .map(|(crop, was)| was.exceeded(&self.crop(after, crop, &outlines)))
                .sum::<f64>();
        }
        broken + self.out_of_reach(after)
    }

    /// Whether it has the same things, cloths, crops and hands in the same
    /// order, and no locked cloth is another.
    fn same_things(&self, after: &Layout) -> bool {
        let start = &self.start;
        let linen = |a: &Linen, b: &Linen| a.id == b.id && (!a.locked || a == b);
        start.items.len() == after.items.len()
            && start
                .items
                .iter()
                .zip(&after.items)
                .all(|(a, b)| a.id == b.id)
            && start.linens.len() == after.linens.len()
            && start
                .linens
                .iter()
                .zip(&after.linens)
                .all(|(a, b)| linen(a, b))
            && start.crops.len() == after.crops.len()
            && start.hands.len() == after.hands.len()
            && start
                .hands
                .iter()
                .zip(&after.hands)
                .all(|(a, b)| a.id == b.id)
    }

    /// How far what moves as one has been pulled apart, and place settings
    /// from their edge.
    fn deformed(&self, after: &Layout, moved: &[bool]) -> f64 {
        let mut broken = 0.0;
        for (n, body) in self.bodies.iter().enumerate() {
            let own: Vec<usize> = (0..moved.len())
                .filter(|m| self.of[*m] == Some(n))
                .collect();
            if !own.iter().any(|m| moved[*m]) {
                continue;
            }
            let chief = own.iter().find(|m| self.start.items[**m].id == body.chief);
            let Some(chief) = chief else {
                continue;
            };
            let (a, b) = (&self.start.items[*chief], &after.items[*chief]);
            let turned = b.turn.half_degrees() - a.turn.half_degrees();
            for m in &own {
                let (was, is) = (&self.start.items[*m], &after.items[*m]);
                let expected = turned_about(a.at.vec(), was.at, turned) + b.at.vec() - a.at.vec();
                // Each of several turns is rounded to whole mm.
                let off = (expected - is.at.vec()).length();
                if off > 3.0 || was.turn.plus(turned) != is.turn || was.on != is.on {
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
    fn stands(&self, outlines: &Outlines, moved: &[bool]) -> f64 {
        let mut broken = 0.0;
        for overlap in self.overlaps_of(outlines, &|n| moved[n]) {
            let was = self.overlaps.iter().find(|o| o.pair == overlap.pair);
            broken += past(overlap.area, was.map_or(0.0, |o| o.area));
        }
        for (n, (was, is)) in self.outlines.iter().zip(outlines).enumerate() {
            let (true, Some(was), Some(is)) = (moved[n], was, is) else {
                continue;
            };
            for room in [&self.table, &self.frame] {
                broken += past(outside(&is.0, room), outside(&was.0, room));
            }
        }
        broken
    }

    /// What overlaps of two bodies where one of the two is asked for.
    fn overlaps_of(&self, outlines: &Outlines, asked: &dyn Fn(usize) -> bool) -> Vec<Overlap> {
        let mut out = Vec::new();
        for (n, own) in outlines.iter().enumerate() {
            for (m, other) in outlines.iter().enumerate().skip(n + 1) {
                let (Some(own), Some(other)) = (own, other) else {
                    continue;
                };
                let apart = self.of[n] == self.of[m] || !(asked(n) || asked(m));
                if apart || !own.1.meets(other.1) {
                    continue;
                }
                let area = intersection(&own.0, &other.0).map_or(0.0, |r| r.area());
                if area > 0.0 {
                    let pair = (n, m);
                    out.push(Overlap { pair, area });
                }
            }
        }
        out
    }

    /// How a crop stands to the frame, to what it must show and to its copy
    /// space.
    fn crop(&self, layout: &Layout, crop: &Crop, outlines: &Outlines) -> CropLimit {
        let trim = region(&crop_outline(layout, crop));
        let cut = crop.must_show.iter().map(|id| {
            let n = layout.items.iter().position(|i| i.id == *id);
            let own = n.and_then(|n| outlines[n].as_ref());
            own.map_or(0.0, |own| outside(&own.0, &trim))
        });
        let copy = copy_space(&layout.frame, crop).map(|area| region(&area));
        let taken = copy.and_then(|copy| {
            let room = copy.bounds()?;
            let near = outlines.iter().flatten().filter(|o| o.1.meets(room));
            let within = near.map(|o| intersection(&o.0, &copy).map_or(0.0, |r| r.area()));
            Some(within.sum())
        });
        CropLimit {
            crop: crop.id,
            outside: outside(&trim, &self.frame),
            cut: cut.collect(),
            taken: taken.unwrap_or(0.0),
        }
    }

    /// How much farther hands are from reaching than they were.
    fn out_of_reach(&self, after: &Layout) -> f64 {
        if after.hands == self.start.hands && after.seats == self.start.seats {
            return 0.0;
        }
        let mut broken = 0.0;
        for (hand, was) in after.hands.iter().zip(&self.reach) {
            match (was, reach(after, hand)) {
                (None, _) => {}
                (Some(_), None) => broken += WHOLE,
                (Some(was), Some(is)) => {
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
        let cut = self.cut.iter().zip(&now.cut).map(|(a, b)| past(*b, *a));
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

/// The outline of a thing; none of what is strewn.
fn outline(item: &Item) -> Option<Rc<(Region, Bounds)>> {
    if is_strewn(&item.prop) {
        return None;
    }
    let own = Region::from_polygon(&silhouette(item)).ok()?;
    let bounds = own.bounds()?;
    Some(Rc::new((own, bounds)))
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
fn reach(layout: &Layout, hand: &Hand) -> Option<[f64; 2]> {
    let joints = joints(layout, hand)?;
    Some([joints.short.max(0.0), joints.close.max(0.0)])
}
