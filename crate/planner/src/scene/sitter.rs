//! The bodies of those who reach in, as the light meets them.
use glam::DVec2;

use super::seated::{joints, seat_of};
use crate::layout::{Hand, Id, Layout, Side};
use crate::light::Occluder;
use crate::shape::{CHORD_ERROR, oval};

/// Across both shoulders with their flesh, over the distance of their joints:
/// ANSUR II (NATICK/TR-15/007, 2014), bideltoid over biacromial breadth, the
/// same to 0.01 for the means of women and men (450.3/365.3, 510.4/415.7).
const FLESH: f64 = 1.23;
/// A head across, mm (from memory: ANSUR II, means near 150).
const HEAD: f64 = 150.0;

/// Trunk and head of everyone with a place at the table who has hands in an
/// exposure, each once an exposure. Legs are under the table.
pub(super) fn bodies(layout: &Layout) -> Vec<(Id, Occluder)> {
    let mut done: Vec<(Id, Id)> = Vec::new();
    let mut out = Vec::new();
    for hand in &layout.hands {
        let Some(seat) = seat_of(layout, hand) else {
            continue;
        };
        let whose = (hand.exposure, seat.id);
        if done.contains(&whose) {
            continue;
        }
        done.push(whose);
        out.extend(body(layout, hand).into_iter().map(|o| (hand.exposure, o)));
    }
    out
}

fn body(layout: &Layout, hand: &Hand) -> Vec<Occluder> {
    let Some(joints) = joints(layout, hand) else {
        return Vec::new();
    };
    let build = &joints.body;
    let right = joints.inward.perp();
    let out = match hand.side {
        Side::Right => right,
        Side::Left => -right,
    };
    let middle = joints.shoulder.truncate() - out * build.shoulder;
    let height = joints.shoulder.z;
    if height <= 0.0 {
        return Vec::new();
    }
    let wide = DVec2::new(build.shoulder * 2.0 * FLESH, build.belly);
    let turn = libm::atan2(right.y, right.x).to_degrees();
    let trunk = oval(middle, wide, turn, CHORD_ERROR);
    let head = oval(middle, DVec2::splat(HEAD), 0.0, CHORD_ERROR);
    let crown = height + build.stature - build.standing;
    let solids = [
        Occluder::new(hand.id, &trunk, middle, vec![[0.0, 1.0], [height, 1.0]]),
        Occluder::new(hand.id, &head, middle, vec![[height, 1.0], [crown, 1.0]]),
    ];
    solids.into_iter().flatten().collect()
}
