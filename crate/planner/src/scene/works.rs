//! How far what a hand works with reaches: the pieces that are drawn under its
//! fingers, which stand in no list of things.
use glam::{DVec2, dvec2};

use super::hands::Arm;
use crate::layout::{Action, Hand, Layout};
use crate::shape::{CHORD_ERROR, disc, hull};

/// Half the extents of a torn piece of bread in a hand, mm (our choice).
pub const BREAD: DVec2 = dvec2(44.0, 34.0);
/// Half the breadth of half a lemon, mm (our choice).
pub const LEMON: f64 = 30.0;
/// Half the extents of a serving spoon, mm (our choice).
pub const SPOON: DVec2 = dvec2(112.0, 25.0);
/// How far ahead of the fingertips a spoon's middle lies, mm.
pub const SPOON_AHEAD: f64 = SPOON.x * 0.55;
/// How far from the fingertips grains fall, mm (our choice).
pub const STREWN: f64 = 68.0;
/// Half the extents of a cook's knife with its blade all but upright, mm (our
/// choice).
pub const KNIFE: DVec2 = dvec2(160.0, 14.0);
/// How far the knife is turned in the fist from along the hand, radians, and
/// how far its middle lies past the tip of the forefinger on its back, mm (our
/// choice).
const KNIFE_TURN: f64 = 0.5;
const KNIFE_AHEAD: f64 = 12.0;
/// Drops fall no farther from the fingertips than this, in half breadths of
/// the vessel that pours, and so much more, mm.
const POURED: [f64; 2] = [2.9, 18.0];
/// How far from round such an outline may be, mm.
const ROUND: f64 = CHORD_ERROR * 4.0;
/// Half the breadth of a vessel that is not told of, mm.
const VESSEL: f64 = 40.0;

/// Where the middle of a knife lies in a hand, and the unit vector along its
/// blade.
#[must_use]
pub fn knife_at(arm: &Arm) -> (DVec2, DVec2) {
    let (sin, cos) = libm::sincos(KNIFE_TURN);
    let way = arm.fingers * cos + arm.thumb * sin;
    (arm.tip + way * KNIFE_AHEAD, way)
}

/// A convex outline within which all that lies that a hand works with, over
/// the table; nothing for a hand that works with nothing of its own.
#[must_use]
pub fn worked_with(layout: &Layout, hand: &Hand, arm: &Arm) -> Option<Vec<DVec2>> {
    let vessel = layout.items.iter().find(|i| Some(i.id) == hand.holds);
    let [wide, deep] = vessel.map_or([VESSEL * 2.0; 2], |v| v.size.extent().map(f64::from));
    let half = wide.max(deep) * 0.5;
    if hand.action == Action::Cut {
        let (middle, way) = knife_at(arm);
        let ends = [-KNIFE.x, KNIFE.x].map(|x| disc(middle + way * x, KNIFE.y, ROUND));
        return Some(hull(&ends.concat()));
    }
    // From how far behind the fingertips to how far ahead, and how broad.
    let (from, to, breadth) = match hand.action {
        Action::Tear => (0.0, 0.0, BREAD.x),
        Action::Squeeze => (0.0, 0.0, LEMON),
        Action::Spoon => (SPOON_AHEAD - SPOON.x, SPOON_AHEAD + SPOON.x, SPOON.y),
        Action::Sprinkle => (0.0, 0.0, STREWN),
        Action::Pour => (-half * 1.1, half * POURED[0] + POURED[1], half),
        Action::Cut
        | Action::Hold
        | Action::Lift
        | Action::Pass
        | Action::Place
        | Action::Reach
        | Action::Rest => return None,
    };
    let round = |ahead: f64| disc(arm.tip + arm.fingers * ahead, breadth, ROUND);
    Some(hull(&[round(from), round(to)].concat()))
}
