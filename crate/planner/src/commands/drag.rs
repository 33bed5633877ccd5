//! A drag or a turn in hand: what moves, where it comes to rest, its figure.
use std::collections::BTreeSet;

use glam::DVec2;

use super::again::bounds;
use super::many::{free, move_picked, turn_picked};
use super::snap::{Snap, snap};
use super::stack::{along, moving_all, stays};
use super::{Act, Refused, move_by, turn_by};
use crate::layout::{Frame, Hand, Id, Layout, Units};
use crate::scene::{Scene, card_outline};
use crate::shape::{Bounds, Region, frame_outline, gap_within};
use crate::words::{Arg, length, rounded, say};

/// What a hand takes.
enum What {
    /// One thing, alone or with its group.
    One(Id, bool),
    /// All that is picked.
    Picked(Vec<Id>),
}

/// What is in hand.
pub struct Drag {
    what: What,
    /// Everything that moves along.
    moves: BTreeSet<Id>,
    /// Its outline; of several things there is none.
    outline: Vec<DVec2>,
    bounds: Bounds,
    others: Vec<Region>,
    boxes: Vec<Bounds>,
    centres: [Bounds; 2],
    /// How far it has come, mm, snapped.
    by: DVec2,
    /// How far it has turned, half degrees.
    half_degrees: i32,
    snapped: Snap,
}

impl Drag {
    /// Takes hold of a thing, `alone` or with its group; nothing when it is not there, or something that
    /// would move along is locked.
    #[must_use]
    pub fn of(layout: &Layout, scene: &Scene, id: Id, alone: bool) -> Option<Self> {
        let moves = along(layout, id, alone);
        if stays(layout, &moves) {
            return None;
        }
        let outline = taken_by(layout, scene, id)?;
        let bounds = Bounds::around(&outline)?;
        let mut drag = Self::beside(layout, scene, What::One(id, alone), moves, bounds);
        drag.outline = outline;
        Some(drag)
    }

    /// Takes hold of all that is picked and free to move, resting it by the box
    /// round it; nothing when all of it is locked.
    #[must_use]
    pub fn of_picked(layout: &Layout, scene: &Scene, ids: &[Id]) -> Option<Self> {
        let moves = moving_all(layout, &free(layout, ids).ok()?);
        let bounds = bounds(layout, &moves)?;
        let picked = What::Picked(ids.to_vec());
        Some(Self::beside(layout, scene, picked, moves, bounds))
    }

    /// What is in hand among its neighbours.
    fn beside(
        layout: &Layout,
        scene: &Scene,
        what: What,
        moves: BTreeSet<Id>,
        bounds: Bounds,
    ) -> Self {
        // What lies on something else is no neighbour, and neither is a linen.
        let neighbour = |other: &Id| {
            let item = layout.items.iter().find(|i| i.id == *other);
            !moves.contains(other) && item.is_some_and(|i| i.on.is_none())
        };
        let others: Vec<Region> = scene
            .touchable
            .iter()
            .filter(|(other, _)| neighbour(other))
            .filter_map(|(_, outline)| Region::from_polygon(outline).ok())
            .collect();
        let boxes = others.iter().filter_map(Region::bounds).collect();
        let table = Bounds {
            min: DVec2::ZERO,
            max: DVec2::new(f64::from(layout.table.width), f64::from(layout.table.depth)),
        };
        Self {
            what,
            moves,
            outline: Vec::new(),
            bounds,
            others,
            boxes,
            centres: [framed(&layout.frame), table],
            by: DVec2::ZERO,
            half_degrees: 0,
            snapped: Snap::default(),
        }
    }

    /// Moves it by this much from where it was taken, mm, resting it against
    /// its neighbours within `reach` mm.
    pub fn move_to(&mut self, by: DVec2, reach: f64) {
        let moved = Bounds {
            min: self.bounds.min + by,
            max: self.bounds.max + by,
        };
        self.snapped = snap(moved, &self.boxes, &self.centres, reach);
        self.by = (by + self.snapped.by).round();
    }

    /// Turns it, degrees; returns the turn taken: whole degrees, and the
    /// quarter turns hold within two.
    pub fn turn_to(&mut self, degrees: f64) -> f64 {
        let quarter = (degrees / 90.0).round() * 90.0;
        let taken = if (degrees - quarter).abs() < 2.0 {
            quarter
        } else {
            degrees.round()
        };
        self.half_degrees = (taken * 2.0) as i32;
        taken
    }

    /// How far it has come, mm.
    #[must_use]
    pub const fn by(&self) -> DVec2 {
        self.by
    }

    /// How far it has turned, half degrees.
    #[must_use]
    pub const fn half_degrees(&self) -> i32 {
        self.half_degrees
    }

    /// The one thing in hand; none of several that were picked.
    #[must_use]
    pub const fn one(&self) -> Option<Id> {
        match &self.what {
            What::One(id, _) => Some(*id),
            What::Picked(_) => None,
        }
    }

    /// The hand in hand as it reaches now; none when it is something else.
    #[must_use]
    pub fn reaching(&self, layout: &Layout) -> Option<Hand> {
        let id = self.one()?;
        let mut hand = layout.hands.iter().find(|h| h.id == id)?.clone();
        hand.target = hand.target.moved(self.by.x as i32, self.by.y as i32);
        Some(hand)
    }

    /// What it rests against.
    #[must_use]
    pub const fn rest(&self) -> Snap {
        self.snapped
    }

    /// What the drag or the turn has come to.
    ///
    /// # Errors
    /// When something that would change is locked.
    pub fn drop(&self, layout: &Layout) -> Result<Act, Refused> {
        let by = [self.by.x as i32, self.by.y as i32];
        match (&self.what, self.half_degrees) {
            (What::One(id, alone), 0) => move_by(layout, *id, *alone, by),
            (What::One(id, _), turn) => turn_by(layout, *id, turn),
            (What::Picked(ids), 0) => move_picked(layout, ids, by),
            (What::Picked(ids), turn) => turn_picked(layout, ids, turn),
        }
    }

    /// Whether a keyed group of the drawing moves along.
    #[must_use]
    pub fn takes(&self, key: &str) -> bool {
        let (kind, id) = key.split_once('-').unwrap_or((key, ""));
        let named = matches!(kind, "item" | "linen" | "shadow" | "hand" | "tag" | "card");
        named && id.parse().is_ok_and(|id| self.moves.contains(&Id(id)))
    }

    /// Where it is and how far from its nearest neighbour, or how far turned.
    #[must_use]
    pub fn words(&self, frame: &Frame, units: Units) -> String {
        if self.half_degrees != 0 {
            let degrees = f64::from(self.half_degrees) * 0.5;
            return say("drag-turn", &[("degrees", Arg::Text(rounded(degrees)))]);
        }
        let spoken = |mm: f64| Arg::Text(length(mm, units));
        let off = self.bounds.centre() + self.by - framed(frame).min;
        let place = [("across", spoken(off.x)), ("down", spoken(off.y))];
        match self.nearest() {
            None => say("drag-place", &place),
            Some(near) => {
                let [across, down] = place;
                say("drag-place-gap", &[across, down, ("gap", spoken(near))])
            }
        }
    }

    /// Distance to the nearest neighbour, mm; nothing when they overlap.
    fn nearest(&self) -> Option<f64> {
        let own: Vec<DVec2> = self.outline.iter().map(|p| *p + self.by).collect();
        let own = Region::from_polygon(&own).ok()?;
        let mut near = f64::INFINITY;
        for other in &self.others {
            if let Some(gap) = gap_within(&own, other, near) {
                near = gap.distance;
            }
        }
        (near > 0.0 && near.is_finite()).then_some(near)
    }
}

/// The outline a finger takes a thing or a card by.
#[must_use]
pub fn taken_by(layout: &Layout, scene: &Scene, id: Id) -> Option<Vec<DVec2>> {
    let thing = scene.touchable.iter().find(|(owner, _)| *owner == id);
    let card = || layout.cards.iter().find(|card| card.id == id);
    let thing = thing.map(|(_, outline)| outline.clone());
    thing.or_else(|| card().map(card_outline))
}

fn framed(frame: &Frame) -> Bounds {
    let outline = frame_outline(frame);
    Bounds::around(&outline).unwrap_or(Bounds {
        min: frame.at.vec(),
        max: frame.at.vec(),
    })
}
