//! An arm over the table: sleeve, forearm, hand.
use svg::node::element::Group;

use crate::drawing::{INK, Limb, Pen, limb};
use crate::layout::{Hand, Layout};
use crate::scene::arm;

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
    limb(&arm(layout, hand), &look, pen)
}
