//! Things moved and turned.
use std::collections::BTreeSet;

use glam::DVec2;

use super::stack::{above, along};
use super::{Act, Refused, called, hold, name_of};
use crate::layout::{Id, Layout, Point, Turn};

/// Where one thing lies, to be changed.
pub(super) struct Lying<'a> {
    pub id: Id,
    pub at: &'a mut Point,
    pub turn: &'a mut Turn,
    pub locked: &'a mut bool,
}

impl Lying<'_> {
    /// Turns it about a place, half degrees clockwise.
    pub(super) fn turn(&mut self, about: DVec2, half_degrees: i32) {
        let (sin, cos) = libm::sincos(f64::from(half_degrees).to_radians() * 0.5);
        let off = DVec2::new(cos, sin).rotate(self.at.vec() - about);
        *self.at = Point::nearest(about + off);
        *self.turn = self.turn.plus(half_degrees);
    }
}

/// The layout with each of these items and linens changed.
pub(super) fn each(
    layout: &Layout,
    ids: &BTreeSet<Id>,
    change: &mut dyn FnMut(&mut Lying<'_>),
) -> Layout {
    let mut after = layout.clone();
    for o in after.items.iter_mut().filter(|o| ids.contains(&o.id)) {
        change(&mut Lying {
            id: o.id,
            at: &mut o.at,
            turn: &mut o.turn,
            locked: &mut o.locked,
        });
    }
    for o in after.linens.iter_mut().filter(|o| ids.contains(&o.id)) {
        change(&mut Lying {
            id: o.id,
            at: &mut o.at,
            turn: &mut o.turn,
            locked: &mut o.locked,
        });
    }
    after
}

/// Moves a thing, its group unless it is taken `alone`, and what stands on them,
/// mm.
///
/// # Errors
/// When one of them is locked.
pub fn move_by(layout: &Layout, id: Id, alone: bool, by: [i32; 2]) -> Result<Act, Refused> {
    let along = along(layout, id, alone);
    let moved = |at: &mut Point| *at = at.moved(by[0], by[1]);
    let mut after = each(layout, &along, &mut |lying| moved(lying.at));
    let hands = after.hands.iter_mut().filter(|o| o.id == id);
    hands.for_each(|o| moved(&mut o.target));
    hold::follow(&mut after, id);
    let crops = after.crops.iter_mut().filter(|o| o.id == id);
    crops.for_each(|o| moved(&mut o.at));
    let cards = after.cards.iter_mut().filter(|o| o.id == id);
    cards.for_each(|o| moved(&mut o.at));
    Act::between(called("done-moved", &name_of(layout, id)), layout, &after)
}

/// Turns a thing by half degrees clockwise; what stands on it goes round its
/// middle with it.
///
/// # Errors
/// When one of them is locked.
pub fn turn_by(layout: &Layout, id: Id, half_degrees: i32) -> Result<Act, Refused> {
    let centre = layout.items.iter().find(|o| o.id == id).map(|o| o.at);
    let stack = above(layout, &BTreeSet::from([id]));
    let mut after = each(layout, &stack, &mut |lying| {
        // A linen has nothing on it that would go round.
        let about = centre.unwrap_or(*lying.at).vec();
        lying.turn(about, half_degrees);
    });
    let cards = after.cards.iter_mut().filter(|o| o.id == id);
    cards.for_each(|o| o.turn = o.turn.plus(half_degrees));
    Act::between(called("done-turned", &name_of(layout, id)), layout, &after)
}
