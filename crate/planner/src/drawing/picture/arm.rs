//! An arm over the table: its shadow, what it holds, hand and sleeve.
use glam::DVec2;
use svg::node::element::Group;

use super::cast::thrown;
use crate::drawing::{INK, Limb, Pen, held, limb, raised};
use crate::layout::{Hand, Layout};
use crate::scene::arm;
use crate::shape::{CHORD_ERROR, Region, frame_outline, table_outline};

/// The arm that reaches in with one hand.
pub(super) fn reaching(layout: &Layout, hand: &Hand, pen: &Pen) -> Group {
    let person = layout.people.iter().find(|p| p.id == hand.person);
    let look = Limb {
        seed: u32::from(hand.id.0),
        skin: person.map_or(INK, |p| p.skin.0),
        sleeve: person.map_or(INK, |p| p.sleeve.colour.0),
        action: hand.action,
        palm: hand.palm,
    };
    let arm = arm(layout, hand);
    let vessel = layout.items.iter().find(|i| Some(i.id) == hand.holds);
    let vessel = vessel.map(|item| f64::from(item.size.extent()[0]));
    let (offset, spread) = thrown(layout, hand.height, pen.fall);
    let table = table_outline(&layout.table, CHORD_ERROR);
    let table = Region::from_polygon(&table).unwrap_or_default();
    let ground = Some((&table, DVec2::ZERO));
    Group::new()
        .add(raised(&arm.hand, offset, spread, ground))
        .add(held(&arm, hand.action, look.seed, vessel, pen))
        .add(limb(&arm, &look, &frame_outline(&layout.frame), pen))
}
