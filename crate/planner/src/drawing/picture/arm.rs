//! An arm over the table: its shadow, what it holds, hand and sleeve.
use glam::DVec2;
use svg::node::element::Group;

use super::cast::thrown;
use super::thing::thing;
use super::view::{enlarged, translation};
use crate::drawing::{INK, Limb, Pen, held, limb, raised};
use crate::layout::{Action, Hand, Layout};
use crate::optics::View;
use crate::scene::arm;
use crate::shape::{CHORD_ERROR, Region, frame_outline, table_outline};

/// The arm that reaches in with one hand.
pub(super) fn reaching(layout: &Layout, hand: &Hand, eye: View, pen: &Pen) -> Group {
    let person = layout.people.iter().find(|p| p.id == hand.person);
    let look = Limb {
        seed: u32::from(hand.id.0),
        skin: person.map_or(INK, |p| p.skin.0),
        sleeve: person.map_or(INK, |p| p.sleeve.colour.0),
        action: hand.action,
        palm: hand.palm,
    };
    let arm = arm(layout, hand);
    let own = layout.items.iter().find(|i| Some(i.id) == hand.holds);
    let vessel = own.map(|item| f64::from(item.size.extent()[0]));
    let (offset, spread) = thrown(layout, hand.height, pen.fall);
    let table = table_outline(&layout.table, CHORD_ERROR);
    let table = Region::from_polygon(&table).unwrap_or_default();
    let ground = Some((&table, DVec2::ZERO));
    let shadow = raised(&arm.hand, offset, spread, ground);
    // The frame as it lies at the height of the hand, where the arm is cut.
    let height = f64::from(hand.height);
    let (scale, shift) = (eye.scale(height), eye.project(DVec2::ZERO, height));
    let frame: Vec<DVec2> = frame_outline(&layout.frame)
        .iter()
        .map(|corner| (*corner - shift) / scale)
        .collect();
    let mut reach = Group::new();
    // What is held as it is lies under the fingers.
    if let Some(item) = own.filter(|_| hand.action == Action::Hold) {
        let at = translation(arm.tip);
        reach = reach.add(Group::new().set("transform", at).add(thing(item, pen)));
    }
    let reach = reach
        .add(held(&arm, hand.action, look.seed, vessel, pen))
        .add(limb(&arm, &look, &frame, pen));
    let lifted = match eye {
        View::Above => reach,
        View::Lens { .. } => Group::new()
            .set("transform", translation(shift) + &enlarged(scale))
            .add(reach),
    };
    Group::new().add(shadow).add(lifted)
}
