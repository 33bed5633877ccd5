//! An arm over the table: its shadow, what it holds, hand and sleeve.
use glam::DVec2;
use svg::node::element::Group;

use super::thing::thing;
use super::view::{enlarged, translation};
use crate::drawing::{INK, Limb, Pen, held, limb, raised};
use crate::exposures::state_of;
use crate::layout::{Action, As, Hand, Id, Item, Layout};
use crate::light::Source;
use crate::optics::View;
use crate::scene::{Arm, arm, held_at, silhouette};
use crate::shape::{CHORD_ERROR, Region, frame_outline, table_outline};

/// What is held this near to its place is drawn there already, mm (our choice).
const IN_PLACE: f64 = 10.0;

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
    let InHand { own, does, vessel } = in_hand(layout, hand, &arm);
    let (offset, spread) = shadow_of(layout, hand, &arm);
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
    if let Some((item, at)) = own {
        let at = translation(at);
        reach = reach.add(Group::new().set("transform", at).add(thing(item, pen)));
    }
    let reach = reach
        .add(held(&arm, does, look.seed, vessel.as_deref(), pen))
        .add(limb(&arm, &look, &frame, pen));
    let lifted = match eye {
        View::Above => reach,
        View::Lens { .. } => Group::new()
            .set("transform", translation(shift) + &enlarged(scale))
            .add(reach),
    };
    Group::new().add(shadow).add(lifted)
}

/// What is drawn under the fingers.
struct InHand<'a> {
    /// A dish that is nowhere on the table, and where its middle is.
    own: Option<(&'a Item, DVec2)>,
    /// What is drawn of the action.
    does: Action,
    /// The outline of what it is done with.
    vessel: Option<Vec<DVec2>>,
}

/// What of a hand's action is drawn under it, with what it holds where it holds
/// it. Of two hands on one thing the first has it, and what is still in its
/// place is drawn there already.
fn in_hand<'a>(layout: &'a Layout, hand: &Hand, arm: &Arm) -> InHand<'a> {
    let mut found = InHand {
        own: None,
        does: hand.action,
        vessel: None,
    };
    let Some((item, to)) = held_at(layout, hand, arm) else {
        return found;
    };
    let by = to - item.at.vec();
    let pours = hand.action == Action::Pour;
    let other = |h: &Hand| Some(h.id) == hand.pair && h.holds == hand.holds && h.id < hand.id;
    if layout.hands.iter().any(other) {
        found.does = Action::Hold;
    } else if !pours && absent(layout, hand, item.id) {
        (found.does, found.own) = (Action::Hold, Some((item, to)));
    } else if pours || by.length() > IN_PLACE {
        found.vessel = Some(silhouette(item).iter().map(|p| *p + by).collect());
    }
    found
}

/// Whether a thing is told not to be there in the exposure of a hand.
fn absent(layout: &Layout, hand: &Hand, item: Id) -> bool {
    let own = layout.exposures.iter().find(|e| e.id == hand.exposure);
    own.is_some_and(|e| state_of(e, item) == As::Absent)
}

/// How far a hand throws its shadow, and half the blur of it, by similar
/// triangles from where it is: one near the light throws it less far.
fn shadow_of(layout: &Layout, hand: &Hand, arm: &Arm) -> (DVec2, f64) {
    let source = Source::of(layout);
    let height = f64::from(hand.height);
    let share = height / (source.centre.z - height).max(1.0);
    let middle = (arm.wrist + arm.tip) * 0.5;
    let offset = (middle - source.centre.truncate()) * share;
    (offset, source.across.length() * share)
}
