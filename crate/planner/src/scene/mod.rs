//! What a layout means in space: outlines in paint order, colours, what is
//! seen of each from above or through the lens, and what lies where.
mod alike;
mod card;
mod frame;
mod hands;
mod hold;
mod in_way;
mod known;
mod laid;
mod lit;
mod nearer;
mod pieces;
mod pose;
mod ring;
mod rise;
mod seated;
mod seen_as;
mod silhouette;
mod sitter;
mod spine;
mod tallest;
mod things;
mod way;
mod works;

pub use card::{card_at, card_foot, card_outline, card_seen};
pub use frame::{crop_outline, linen_drop, linen_form, linen_outline, linen_seen, linen_span};
pub use hands::{Arm, FOREARM, HAND_BREADTH, HAND_LENGTH, arm, thumb_direction};
pub use hold::held_at;
pub use in_way::InTheWay;
pub use lit::Lit;
pub use nearer::in_view_order;
pub use pieces::{Ground, PartKind, Piece, REACH, Scene};
pub use pose::{Joint, Pose, digit, hand_outline, pose};
pub use ring::{LightSpot, Ring};
pub use rise::{Rise, narrowed, profile_of, rise, sections, vessel_of};
pub use seated::{Joints, USUAL_STATURE, body_of, joints, seat_of};
pub use seen_as::{lifted, seen_outline};
pub use silhouette::{inner, silhouette};
pub use tallest::{even_focus, tallest};
pub use things::{
    Layer, Stacks, effective_role, exposure_name, exposure_number, flag, in_paint_order, letter,
    root,
};
pub use way::{Goal, HALF_WAY, Way, way_between, ways};
pub use works::{BREAD, KNIFE, LEMON, SPOON, SPOON_AHEAD, STREWN, knife_at, worked_with};
