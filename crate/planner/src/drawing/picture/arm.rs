//! An arm over the table: sleeve, forearm, hand.
use svg::node::element::Group;

use super::edge::{filled, lined, looped};
use crate::drawing::{INK, PENCIL, Pen};
use crate::layout::{Hand, Layout};
use crate::scene;

/// The arm that reaches in with one hand.
pub(super) fn reaching(layout: &Layout, hand: &Hand, pen: &Pen) -> Group {
    let arm = scene::arm(layout, hand);
    let person = layout.people.iter().find(|p| p.id == hand.person);
    let skin = person.map_or(INK, |p| p.skin.0);
    let cloth = person.map_or(INK, |p| p.sleeve.colour.0);
    let mut group = Group::new();
    for (part, tone, line, opacity) in [
        (&arm.forearm, skin, INK, 0.86),
        (&arm.hand, skin, INK, 0.9),
        (&arm.sleeve, cloth, PENCIL, 0.88),
    ] {
        if part.len() < 3 {
            continue;
        }
        group = group
            .add(filled(part, tone).set("fill-opacity", opacity))
            .add(lined(looped(part), line, pen.weight * 0.95, None));
    }
    group
}
