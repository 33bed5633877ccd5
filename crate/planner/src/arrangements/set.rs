//! What can be arranged: dishes that go anywhere, place settings that slide
//! along their edge, and what stays where it is.
use std::collections::BTreeSet;

use glam::DVec2;

use crate::catalogue::is_strewn;
use crate::commands::moving;
use crate::commands::room::{Body, Room};
use crate::layout::{Crop, Id, Item, Layout, Point, Role, TableShape};
use crate::measures::{NEAR_TANGENT, PointMass};
use crate::optics::View;
use crate::readings::{Study, weighed};
use crate::scene::{crop_outline, rise, root};
use crate::shape::Bounds;

/// Least air between things, mm, where a hundredth of the diagonal is less.
/// Our choice.
const AIR: f64 = 20.0;
/// Air beyond what reads as only just missing, mm: places are whole
/// millimetres, and outlines stand out of their sizes by so much.
const BEYOND: f64 = 3.0;
/// How far a setting may stand out of the frame and still be slid, mm.
const OUT: f64 = 1.0;

/// What a body is to an arrangement.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Part {
    /// Goes anywhere.
    Dish,
    /// Slides along the near, far, left or right edge.
    Setting(usize),
    /// Stays.
    Fixed,
}

/// A table to be arranged.
pub(super) struct Set {
    /// All that stands on it, and areas kept free.
    pub(super) bodies: Vec<Body>,
    pub(super) parts: Vec<Part>,
    /// The items that move with each body.
    items: Vec<BTreeSet<Id>>,
    /// What weighs in the picture: how much, which body it goes with, and where
    /// it lies of that body's place.
    weights: Vec<(f64, usize, DVec2)>,
    /// The body the hero is in, among the dishes.
    pub(super) hero: Option<usize>,
    /// The frame, as far as there is table under it.
    pub(super) room: Room,
    /// Air between things, mm.
    pub(super) air: f64,
    /// Top left of the frame, and its size.
    pub(super) corner: DVec2,
    pub(super) size: DVec2,
}

impl Set {
    /// What of a layout can be arranged.
    pub(super) fn of(layout: &Layout) -> Self {
        let size = DVec2::new(f64::from(layout.frame.width), layout.frame.height());
        let corner = layout.frame.at.vec() - size * 0.5;
        let mut set = Self {
            bodies: Vec::new(),
            parts: Vec::new(),
            items: Vec::new(),
            weights: Vec::new(),
            hero: None,
            room: room(layout, corner, size),
            air: AIR.max(NEAR_TANGENT * size.length()) + BEYOND,
            corner,
            size,
        };
        set.take_things(layout);
        set.keep_to_crops(layout);
        let study = Study::new(layout);
        for (id, mass, at) in weighed(&study) {
            if let Some(n) = set.items.iter().position(|ids| ids.contains(&id)) {
                set.weights.push((mass, n, at + corner - set.bodies[n].at));
            }
        }
        set
    }

    fn take_things(&mut self, layout: &Layout) {
        let view = View::of(layout);
        let mut taken: BTreeSet<Id> = BTreeSet::new();
        for item in &layout.items {
            if item.on.is_some() || is_strewn(&item.prop) || taken.contains(&item.id) {
                continue;
            }
            let along = moving(layout, item.id);
            taken.extend(&along);
            let of: Vec<&Item> = layout
                .items
                .iter()
                .filter(|i| along.contains(&i.id))
                .collect();
            let standing = of.iter().filter(|i| i.on.is_none() && !is_strewn(&i.prop));
            let tall = |bottom: &Item| {
                let stack = of.iter().filter(|i| root(layout, i.id) == bottom.id);
                stack.map(|i| rise(layout, i).top).fold(0.0, f64::max)
            };
            let things: Vec<(&Item, f64)> = standing.map(|i| (*i, tall(i))).collect();
            let mut body = Body::seen(&things, view);
            let part = self.part(layout, &of, &body);
            body.free = match part {
                Part::Dish => DVec2::ONE,
                Part::Setting(edge) if edge < 2 => DVec2::X,
                Part::Setting(_) => DVec2::Y,
                Part::Fixed => DVec2::ZERO,
            };
            if part == Part::Dish && of.iter().any(|i| i.role == Role::Hero) {
                self.hero.get_or_insert(self.bodies.len());
            }
            self.bodies.push(body);
            self.parts.push(part);
            self.items.push(along);
        }
    }

    fn part(&self, layout: &Layout, of: &[&Item], body: &Body) -> Part {
        if of.iter().any(|i| i.locked) {
            return Part::Fixed;
        }
        let main = |i: &&Item| matches!(i.role, Role::Hero | Role::Support);
        if of.iter().all(|i| i.group.is_none()) || of.iter().any(main) {
            return Part::Dish;
        }
        let box_ = body.bounds();
        let out = (self.corner - box_.min).max(box_.max - self.corner - self.size);
        if !layout.seats.is_empty() || out.max_element() > OUT {
            return Part::Fixed;
        }
        let share = (box_.centre() - self.corner) / self.size;
        let from_edge = [1.0 - share.y, share.y, share.x, 1.0 - share.x];
        let mut edge = 0;
        for n in 1..4 {
            if from_edge[n] < from_edge[edge] {
                edge = n;
            }
        }
        Part::Setting(edge)
    }

    /// Keeps the hero, and what it must show, within a crop.
    fn keep_whole(&mut self, layout: &Layout, crop: &Crop, all: Bounds) {
        let hero = |i: &&Item| i.role == Role::Hero || crop.must_show.contains(&i.id);
        for item in layout.items.iter().filter(hero) {
            for (body, ids) in self.bodies.iter_mut().zip(&self.items) {
                if ids.contains(&item.id) {
                    let room = body.within.unwrap_or(self.room);
                    body.within = Some(Room {
                        low: room.low.max(all.min),
                        high: room.high.min(all.max),
                    });
                }
            }
        }
    }

    /// Takes in what crops keep: things whole, and space for type.
    fn keep_to_crops(&mut self, layout: &Layout) {
        for crop in &layout.crops {
            let Some(all) = Bounds::around(&crop_outline(layout, crop)) else {
                continue;
            };
            self.keep_whole(layout, crop, all);
            let Some(copy) = &crop.copy else { continue };
            let of = |x: i32, y: i32| DVec2::new(f64::from(x), f64::from(y));
            let at = all.centre() + of(copy.area.dx, copy.area.dy);
            let half = of(copy.area.width, copy.area.depth) * 0.5;
            self.keep_clear(Bounds {
                min: at - half,
                max: at + half,
            });
        }
    }

    /// Keeps an area clear of everything.
    pub(super) fn keep_clear(&mut self, area: Bounds) {
        self.bodies.push(Body::kept_free(area));
        self.parts.push(Part::Fixed);
        self.items.push(BTreeSet::new());
    }

    /// The dishes, the hero first, then by falling weight.
    pub(super) fn dishes(&self) -> Vec<usize> {
        let mut out: Vec<usize> = self.hero.into_iter().collect();
        let dish = |n: &usize| self.parts[*n] == Part::Dish;
        let heavy = self.weights.iter().map(|w| w.1).filter(dish);
        for n in heavy.chain((0..self.bodies.len()).filter(dish)) {
            if !out.contains(&n) {
                out.push(n);
            }
        }
        out
    }

    /// The settings at an edge, by where they stand along it.
    pub(super) fn settings(&self, edge: usize) -> Vec<usize> {
        let axis = usize::from(edge > 1);
        let here = |n: &usize| self.parts[*n] == Part::Setting(edge);
        let mut out: Vec<usize> = (0..self.bodies.len()).filter(here).collect();
        crate::order::sort(&mut out, |a, b| {
            self.bodies[*a].at[axis].total_cmp(&self.bodies[*b].at[axis])
        });
        out
    }

    /// The room the settings leave in the middle of the frame.
    pub(super) fn inner(&self) -> Room {
        let mut inner = self.room;
        for edge in 0..4 {
            for n in self.settings(edge) {
                let own = self.bodies[n].bounds();
                match edge {
                    0 => inner.high.y = inner.high.y.min(own.min.y),
                    1 => inner.low.y = inner.low.y.max(own.max.y),
                    2 => inner.low.x = inner.low.x.max(own.max.x),
                    _ => inner.high.x = inner.high.x.min(own.min.x),
                }
            }
        }
        inner
    }

    /// Where every body is.
    pub(super) fn places(&self) -> Vec<DVec2> {
        self.bodies.iter().map(|b| b.at).collect()
    }

    /// What weighs, were the bodies there; the heaviest first, in the frame.
    pub(super) fn masses(&self, places: &[DVec2]) -> Vec<PointMass> {
        let point = |(mass, n, off): &(f64, usize, DVec2)| PointMass {
            at: places[*n] + *off - self.corner,
            mass: *mass,
        };
        self.weights.iter().map(point).collect()
    }

    /// The layout with every body in its place.
    pub(super) fn put(&self, layout: &Layout, bodies: &[Body]) -> Layout {
        let mut after = layout.clone();
        for ((was, now), ids) in self.bodies.iter().zip(bodies).zip(&self.items) {
            let by = Point::nearest(now.at - was.at);
            for item in after.items.iter_mut().filter(|i| ids.contains(&i.id)) {
                item.at = item.at.moved(by.x, by.y);
            }
        }
        after
    }
}

/// Whether it stands on the table, is no crumb, no part of a group, and may
/// be moved.
pub(super) fn is_dish(item: &Item) -> bool {
    item.on.is_none() && item.group.is_none() && !item.locked && !is_strewn(&item.prop)
}

/// The frame where there is table under all of it, or as much about the
/// table's middle as has.
fn room(layout: &Layout, corner: DVec2, size: DVec2) -> Room {
    let table = &layout.table;
    let middle = table.centre().vec();
    let extent = DVec2::new(f64::from(table.width), f64::from(table.depth));
    let (mut low, mut high) = (corner, corner + size);
    if table.shape == TableShape::Round {
        let far = (low - middle).abs().max((high - middle).abs()).length();
        let share = (extent.x * 0.5 / far.max(1.0)).min(1.0);
        low = middle + (low - middle) * share;
        high = middle + (high - middle) * share;
    }
    Room {
        low: low.max(DVec2::ZERO),
        high: high.min(extent),
    }
}
