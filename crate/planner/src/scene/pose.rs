//! How a hand is held for what it does: joints at true size, seen from above.
use core::f64::consts::PI;
use std::sync::OnceLock;

use glam::{DVec2, dvec2};

use crate::figure::merged;
use crate::layout::Action;
use crate::shape::hull;

/// A joint: mm from the wrist towards the fingertips, mm towards the thumb,
/// and the breadth of the digit there in mm.
pub type Joint = [i16; 3];

/// The joints of the digits of one hand: thumb, index, middle, ring, little,
/// each from its root to its tip. Drawn by us; lengths and breadths are those
/// of the hand of [`super::HAND_LENGTH`], shorter where a finger bends down.
#[derive(Debug)]
pub struct Pose {
    /// What touches the target: mm along the hand and towards the thumb.
    pub tip: [i16; 2],
    /// How far the hand turns at the wrist, degrees towards the little finger.
    pub bend: i16,
    /// Thumb first, little finger last.
    pub digits: [[Joint; 4]; 5],
}

/// Circles whose hull is the back of the hand: along, towards the thumb,
/// breadth.
const BACK: [Joint; 8] = [
    [-12, 13, 27],
    [-12, -13, 27],
    [32, 25, 32],
    [86, 30, 24],
    [94, 9, 25],
    [90, -12, 24],
    [80, -31, 21],
    [30, -27, 28],
];

#[rustfmt::skip]
static POSES: [Pose; 12] = [
    // Tearing: bread between thumb and fingertips.
    Pose { tip: [136, 58], bend: 12, digits: [
        [[10, 14, 34], [58, 52, 27], [96, 69, 22], [120, 68, 17]],
        [[86, 28, 24], [114, 40, 23], [132, 49, 20], [140, 60, 16]],
        [[92, 8, 25], [126, 20, 23], [144, 31, 20], [150, 44, 16]],
        [[88, -13, 24], [122, -7, 22], [140, 4, 19], [146, 17, 15]],
        [[78, -31, 20], [106, -31, 19], [124, -22, 16], [130, -11, 13]],
    ] },
    // Squeezing: the fingers closed round the fruit, the thumb across it.
    Pose { tip: [118, 48], bend: 8, digits: [
        [[10, 14, 34], [56, 50, 28], [88, 62, 23], [112, 54, 18]],
        [[86, 28, 24], [112, 41, 23], [127, 42, 21], [131, 32, 17]],
        [[92, 8, 25], [122, 18, 24], [137, 22, 21], [138, 14, 17]],
        [[88, -13, 24], [117, -7, 23], [131, -2, 20], [132, -10, 16]],
        [[78, -31, 20], [102, -30, 19], [115, -25, 17], [117, -32, 14]],
    ] },
    // Pouring: a fist round a neck, the thumb laid along it.
    Pose { tip: [122, 42], bend: 10, digits: [
        [[10, 14, 34], [60, 44, 28], [96, 54, 23], [122, 60, 17]],
        [[86, 28, 24], [113, 40, 23], [122, 53, 20], [116, 62, 17]],
        [[92, 8, 25], [122, 18, 24], [133, 32, 21], [129, 43, 18]],
        [[88, -13, 24], [117, -6, 23], [129, 7, 20], [127, 19, 17]],
        [[78, -31, 20], [101, -29, 19], [113, -17, 17], [112, -6, 14]],
    ] },
    // Sprinkling: all tips together, pointing down.
    Pose { tip: [124, 32], bend: 6, digits: [
        [[10, 14, 34], [60, 47, 27], [95, 52, 22], [119, 42, 17]],
        [[86, 28, 24], [113, 36, 22], [126, 35, 19], [131, 31, 15]],
        [[92, 9, 25], [120, 16, 23], [133, 21, 19], [136, 24, 15]],
        [[88, -12, 24], [113, -5, 22], [126, 6, 18], [131, 15, 14]],
        [[78, -31, 20], [101, -28, 19], [114, -16, 16], [119, -5, 13]],
    ] },
    // Spooning: the handle lies over the middle finger, held by two tips.
    Pose { tip: [150, 42], bend: 10, digits: [
        [[10, 14, 34], [58, 46, 27], [96, 56, 22], [124, 52, 17]],
        [[86, 28, 24], [122, 41, 22], [142, 45, 18], [152, 45, 15]],
        [[92, 8, 25], [126, 18, 23], [144, 27, 20], [150, 34, 16]],
        [[88, -13, 24], [117, -7, 23], [130, 1, 20], [129, 11, 16]],
        [[78, -31, 20], [101, -29, 19], [113, -20, 17], [112, -10, 14]],
    ] },
    // Holding a dish: fingers together along it, the thumb over its rim.
    Pose { tip: [160, 24], bend: 0, digits: [
        [[10, 14, 34], [58, 54, 27], [88, 74, 22], [112, 84, 17]],
        [[86, 28, 24], [128, 35, 21], [151, 37, 18], [167, 36, 15]],
        [[92, 9, 24], [136, 14, 21], [160, 16, 19], [175, 16, 15]],
        [[88, -12, 23], [128, -7, 20], [150, -4, 17], [165, -3, 14]],
        [[78, -31, 20], [108, -29, 18], [125, -25, 15], [138, -22, 13]],
    ] },
    // Reaching: the fingers stretched, a little apart.
    Pose { tip: [186, 6], bend: 0, digits: [
        [[10, 14, 34], [60, 52, 27], [90, 67, 22], [111, 76, 16]],
        [[86, 29, 24], [131, 38, 20], [156, 42, 17], [172, 44, 14]],
        [[92, 9, 25], [138, 10, 21], [164, 9, 18], [179, 8, 14]],
        [[88, -12, 24], [131, -18, 20], [154, -22, 17], [169, -25, 14]],
        [[78, -31, 20], [110, -39, 18], [127, -45, 15], [140, -49, 13]],
    ] },
    // Resting: the fingers side by side, bent a little.
    Pose { tip: [168, 10], bend: 4, digits: [
        [[10, 14, 34], [58, 48, 27], [88, 57, 22], [109, 58, 16]],
        [[86, 29, 24], [124, 33, 21], [146, 32, 18], [159, 28, 14]],
        [[92, 9, 25], [131, 11, 22], [153, 10, 19], [166, 7, 15]],
        [[88, -12, 24], [124, -13, 21], [145, -14, 18], [157, -15, 14]],
        [[78, -31, 20], [105, -35, 18], [120, -37, 15], [131, -37, 13]],
    ] },
    // Cutting: a fist round the handle, the forefinger laid along the back.
    Pose { tip: [157, 61], bend: 14, digits: [
        [[10, 14, 34], [58, 50, 28], [92, 66, 23], [117, 70, 17]],
        [[86, 28, 24], [121, 43, 21], [143, 54, 18], [157, 61, 15]],
        [[92, 8, 25], [122, 19, 24], [133, 34, 21], [128, 46, 17]],
        [[88, -13, 24], [117, -6, 23], [129, 8, 20], [126, 20, 17]],
        [[78, -31, 20], [101, -29, 19], [113, -17, 17], [112, -5, 14]],
    ] },
    // Passing: the rim between the thumb and fingers spread under it.
    Pose { tip: [136, 74], bend: 4, digits: [
        [[10, 14, 34], [58, 55, 27], [89, 78, 22], [112, 93, 17]],
        [[86, 29, 24], [125, 44, 21], [146, 54, 18], [159, 60, 15]],
        [[92, 9, 25], [134, 18, 22], [157, 24, 19], [171, 27, 15]],
        [[88, -12, 24], [128, -12, 21], [150, -12, 18], [164, -12, 14]],
        [[78, -31, 20], [107, -38, 18], [123, -43, 15], [135, -46, 13]],
    ] },
    // Setting down: tips and thumb at the rim, about to let go.
    Pose { tip: [142, 58], bend: 0, digits: [
        [[10, 14, 34], [60, 49, 27], [97, 66, 22], [123, 74, 16]],
        [[86, 28, 24], [118, 37, 22], [137, 41, 18], [147, 42, 14]],
        [[92, 8, 25], [128, 14, 22], [148, 18, 18], [158, 19, 14]],
        [[88, -13, 24], [121, -12, 21], [139, -10, 18], [148, -9, 14]],
        [[78, -31, 20], [105, -34, 18], [120, -34, 15], [129, -34, 12]],
    ] },
    // Lifting: the fingers closed under the dish, the thumb along its rim.
    Pose { tip: [130, 52], bend: 0, digits: [
        [[10, 14, 34], [58, 48, 27], [95, 60, 22], [125, 60, 17]],
        [[86, 28, 24], [117, 37, 23], [131, 39, 20], [136, 36, 16]],
        [[92, 8, 25], [125, 15, 23], [141, 17, 20], [146, 15, 16]],
        [[88, -13, 24], [119, -10, 22], [134, -8, 19], [139, -9, 15]],
        [[78, -31, 20], [103, -31, 19], [116, -29, 16], [121, -29, 13]],
    ] },
];

/// How a hand is held for an action.
#[must_use]
pub fn pose(action: Action) -> &'static Pose {
    &POSES[place(action)]
}

const fn place(action: Action) -> usize {
    match action {
        Action::Tear => 0,
        Action::Squeeze => 1,
        Action::Pour => 2,
        Action::Sprinkle => 3,
        Action::Spoon => 4,
        Action::Hold => 5,
        Action::Reach => 6,
        Action::Rest => 7,
        Action::Cut => 8,
        Action::Pass => 9,
        Action::Place => 10,
        Action::Lift => 11,
    }
}

/// Outline of a hand about its wrist, x towards the fingertips, y towards the
/// thumb.
#[must_use]
pub fn hand_outline(action: Action) -> &'static [DVec2] {
    static OUTLINES: OnceLock<Vec<Vec<DVec2>>> = OnceLock::new();
    let all = OUTLINES.get_or_init(|| POSES.iter().map(whole).collect());
    &all[place(action)]
}

/// The back of the hand and the digits in one loop.
fn whole(pose: &Pose) -> Vec<DVec2> {
    let mut parts = vec![back()];
    parts.extend(pose.digits.iter().map(digit));
    merged(&parts)
}

/// The back of the hand with the root of the wrist.
fn back() -> Vec<DVec2> {
    let circles = BACK.iter().flat_map(|&[x, y, breadth]| {
        let at = dvec2(f64::from(x), f64::from(y));
        (0..12).map(move |i| at + turned(PI * f64::from(i) / 6.0) * (f64::from(breadth) * 0.5))
    });
    hull(&circles.collect::<Vec<_>>())
}

fn turned(angle: f64) -> DVec2 {
    let (sin, cos) = libm::sincos(angle);
    dvec2(cos, sin)
}

/// A digit from one side of its root round its tip to the other.
#[must_use]
pub fn digit(joints: &[Joint; 4]) -> Vec<DVec2> {
    let at = |i: usize| dvec2(f64::from(joints[i][0]), f64::from(joints[i][1]));
    let half = |i: usize| f64::from(joints[i][2]) * 0.5;
    // The turns in between are rounded, as flesh does over a bone.
    let mut spine = Vec::with_capacity(7);
    for i in 0..3 {
        let on = |t: f64| {
            (
                at(i).lerp(at(i + 1), t),
                half(i) + (half(i + 1) - half(i)) * t,
            )
        };
        spine.extend(if i == 0 {
            vec![on(0.0), on(0.7)]
        } else {
            vec![on(0.3), on(0.7)]
        });
    }
    spine.push((at(3), half(3)));
    let n = spine.len();
    let across = |i: usize| {
        let along = spine[(i + 1).min(n - 1)].0 - spine[i.saturating_sub(1)].0;
        along.normalize_or(DVec2::X).perp()
    };
    let side = |i: usize, sign: f64| spine[i].0 + across(i) * (spine[i].1 * sign);
    let mut loop_: Vec<DVec2> = (0..n).map(|i| side(i, -1.0)).collect();
    let (tip, r) = spine[n - 1];
    let out = across(n - 1);
    for i in 1..6 {
        let (sin, cos) = libm::sincos(PI * f64::from(i) / 6.0);
        loop_.push(tip - out * (r * cos) - out.perp() * (r * 1.12 * sin));
    }
    loop_.extend((0..n).rev().map(|i| side(i, 1.0)));
    loop_
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::{HAND_BREADTH, HAND_LENGTH};
    use crate::shape::area;

    #[test]
    fn every_pose_is_one_loop_no_larger_than_a_hand() {
        for pose in &POSES {
            let outline = whole(pose);
            let reach = outline.iter().map(|p| p.x).fold(f64::MIN, f64::max);
            assert!(reach <= HAND_LENGTH + 3.0, "{:?} reaches {reach}", pose.tip);
            let knuckles = outline.iter().filter(|p| p.x > 75.0 && p.y < 0.0);
            let little = knuckles.map(|p| p.y).fold(f64::MAX, f64::min);
            assert!(little > -HAND_BREADTH, "{:?}: {little}", pose.tip);
            let size = area(&outline);
            assert!(
                (7_000.0..17_500.0).contains(&size),
                "{:?}: {size} mm²",
                pose.tip
            );
        }
    }

    #[test]
    fn what_touches_the_target_lies_on_or_at_the_hand() {
        for pose in &POSES {
            let tip = dvec2(f64::from(pose.tip[0]), f64::from(pose.tip[1]));
            let near = whole(pose)
                .iter()
                .map(|p| p.distance(tip))
                .fold(f64::MAX, f64::min);
            assert!(near < 20.0, "{:?} is {near} mm off", pose.tip);
        }
    }

    #[test]
    fn the_thumb_is_the_first_digit_and_lies_on_its_side() {
        for pose in &POSES {
            let [thumb, .., little] = &pose.digits;
            assert!(thumb[1][1] > 0 && little[0][1] < 0, "{:?}", pose.tip);
        }
    }
}
