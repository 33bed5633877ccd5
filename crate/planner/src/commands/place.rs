//! Things moved and turned.
use std::collections::BTreeSet;

use glam::DVec2;

use super::stack::{above, along};
use super::{Act, Refused, called, name_of};
use crate::layout::{Id, Layout, Point};

/// Moves a thing, its group unless it is taken `alone`, and what stands on them,
/// mm.
///
/// # Errors
/// When one of them is locked.
pub fn move_by(layout: &Layout, id: Id, alone: bool, by: [i32; 2]) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let along = along(layout, id, alone);
    let moved = |at: &mut Point| *at = at.moved(by[0], by[1]);
    let items = after.items.iter_mut().filter(|o| along.contains(&o.id));
    items.for_each(|o| moved(&mut o.at));
    let linens = after.linens.iter_mut().filter(|o| o.id == id);
    linens.for_each(|o| moved(&mut o.at));
    let hands = after.hands.iter_mut().filter(|o| o.id == id);
    hands.for_each(|o| moved(&mut o.target));
    let crops = after.crops.iter_mut().filter(|o| o.id == id);
    crops.for_each(|o| moved(&mut o.at));
    Act::between(called("done-moved", &name_of(layout, id)), layout, &after)
}

/// Turns a thing by half degrees clockwise; what stands on it goes round its
/// middle with it.
///
/// # Errors
/// When one of them is locked.
pub fn turn_by(layout: &Layout, id: Id, half_degrees: i32) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let centre = layout.items.iter().find(|o| o.id == id).map(|o| o.at);
    let (sin, cos) = libm::sincos(f64::from(half_degrees).to_radians() * 0.5);
    let stack = above(layout, &BTreeSet::from([id]));
    for item in after.items.iter_mut().filter(|o| stack.contains(&o.id)) {
        if let Some(centre) = centre {
            let off = item.at.vec() - centre.vec();
            let round = DVec2::new(cos, sin).rotate(off);
            item.at = Point::nearest(centre.vec() + round);
        }
        item.turn = item.turn.plus(half_degrees);
    }
    for linen in after.linens.iter_mut().filter(|o| o.id == id) {
        linen.turn = linen.turn.plus(half_degrees);
    }
    Act::between(called("done-turned", &name_of(layout, id)), layout, &after)
}
