//! A hand and its forearm at true size, first form: from the entry on the
//! frame's edge straight to the fingertips.
use glam::DVec2;

use crate::layout::{Hand, Layout, Palm, Point, Side, SleeveLength};
use crate::shape::{frame_outline, hull};

/// Length of a hand, mm: the mean of the men's and women's medians of ANSUR II
/// (NATICK/TR-15/007, 2014: 193 and 180).
pub const HAND_LENGTH: f64 = 186.0;
/// Breadth of a hand, mm: likewise (88 and 78).
pub const HAND_BREADTH: f64 = 83.0;
/// Wrist and elbow diameters and the length between them, mm: ANSUR II wrist
/// circumference and forearm circumference over π, and forearm-hand length
/// less hand length, means of the men's and women's (56/49, 99/84, 287/259).
pub const FOREARM: [f64; 3] = [52.0, 92.0, 272.0];
/// A relaxed hand with the fingers a little apart: hundredths of its length
/// from the wrist, and of its breadth towards the thumb. Drawn by us.
const HAND: [[i8; 2]; 32] = [
    [0, -30],
    [15, -40],
    [35, -50],
    [52, -51],
    [62, -48],
    [75, -45],
    [82, -36],
    [76, -28],
    [63, -27],
    [85, -27],
    [94, -17],
    [89, -7],
    [67, -5],
    [92, -3],
    [102, 8],
    [95, 19],
    [68, 19],
    [89, 22],
    [96, 32],
    [89, 42],
    [67, 46],
    [53, 52],
    [59, 64],
    [71, 77],
    [76, 88],
    [67, 95],
    [51, 88],
    [35, 70],
    [21, 50],
    [10, 37],
    [4, 32],
    [0, 30],
];

/// One arm as it lies over the table.
#[derive(Clone, Debug, PartialEq)]
pub struct Arm {
    /// Where it crosses the frame's edge.
    pub entry: DVec2,
    /// The fingertips.
    pub tip: DVec2,
    /// The wrist.
    pub wrist: DVec2,
    /// The elbow, often outside the frame.
    pub elbow: DVec2,
    /// Unit vector from elbow to fingertips.
    pub along: DVec2,
    /// Outline of the hand.
    pub hand: Vec<DVec2>,
    /// Outline of the bare forearm; empty under a long sleeve.
    pub forearm: Vec<DVec2>,
    /// Outline of the sleeve; empty when bare.
    pub sleeve: Vec<DVec2>,
}

/// The unit vector towards the thumb. From above, palm down and fingers away
/// from the sitter, a right hand's thumb is on the sitter's left; palm up
/// turns it over (anatomy).
#[must_use]
pub fn thumb_direction(along: DVec2, side: Side, palm: Palm) -> DVec2 {
    let left = DVec2::new(along.y, -along.x);
    if (side == Side::Right) == (palm == Palm::Down) {
        left
    } else {
        -left
    }
}

/// The arm of a hand.
#[must_use]
pub fn arm(layout: &Layout, hand: &Hand) -> Arm {
    let entry = on_edge(layout, hand.entry);
    let tip = hand.target.vec();
    let along = (tip - entry).normalize_or(DVec2::Y);
    let across = along.perp();
    let thumb = thumb_direction(along, hand.side, hand.palm);
    let wrist = tip - along * HAND_LENGTH;
    let [narrow, wide, reach] = FOREARM;
    let elbow = wrist - along * reach;
    let hand_points: Vec<DVec2> = HAND
        .iter()
        .map(|[x, y]| {
            wrist
                + along * (f64::from(*x) / 100.0 * HAND_LENGTH)
                + thumb * (f64::from(*y) / 100.0 * HAND_BREADTH)
        })
        .collect();
    let person = layout.people.iter().find(|p| p.id == hand.person);
    let length = person.map_or(SleeveLength::Long, |p| p.sleeve.length);
    let limb = |a: DVec2, ra: f64, b: DVec2, rb: f64| {
        hull(&[
            a + across * ra,
            a - across * ra,
            b - across * rb,
            b + across * rb,
        ])
    };
    let whole = |grow: f64| {
        let far = elbow - along * reach;
        let mut points = limb(wrist, narrow * 0.5 + grow, elbow, wide * 0.5 + grow);
        points.extend(limb(elbow, wide * 0.5 + grow, far, wide * 0.62 + grow));
        hull(&points)
    };
    let (forearm, sleeve) = match length {
        SleeveLength::Bare => (whole(0.0), Vec::new()),
        SleeveLength::Long => (Vec::new(), whole(7.0)),
        SleeveLength::Rolled => {
            let fold = wrist - along * (reach * 0.8);
            let far = elbow - along * reach;
            let bare = limb(wrist, narrow * 0.5, fold, wide * 0.48);
            (bare, limb(fold, wide * 0.5 + 8.0, far, wide * 0.62 + 8.0))
        }
    };
    Arm {
        entry,
        tip,
        wrist,
        elbow,
        along,
        hand: rounded(&rounded(&hand_points)),
        forearm,
        sleeve,
    }
}

/// A loop with its corners cut once (Chaikin 1974, a quarter from each end).
fn rounded(points: &[DVec2]) -> Vec<DVec2> {
    let next = |i: usize| points[(i + 1) % points.len()];
    let cut = |(i, p): (usize, &DVec2)| [p.lerp(next(i), 0.25), p.lerp(next(i), 0.75)];
    points.iter().enumerate().flat_map(cut).collect()
}

/// The place on the frame's edge nearest to `p`.
fn on_edge(layout: &Layout, p: Point) -> DVec2 {
    let corners = frame_outline(&layout.frame);
    let mut best = (f64::INFINITY, p.vec());
    for (n, a) in corners.iter().enumerate() {
        let b = corners[(n + 1) % corners.len()];
        let side = b - *a;
        let t = ((p.vec() - *a).dot(side) / side.length_squared().max(1e-9)).clamp(0.0, 1.0);
        let at = *a + side * t;
        let away = at.distance(p.vec());
        if away < best.0 {
            best = (away, at);
        }
    }
    best.1
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::open;

    const LAID: &str = r#"{"format":"overspread-layout","version":0,"id":"0000000000000001",
        "next_id":9,"table":{"width":1200},"frame":{"at":[600,450],"width":1050},
        "people":[{"id":1}],"exposures":[{"id":2}],
        "hands":[{"id":3,"person":1,"exposure":2,"entry":[600,800],"target":[600,400]}]}"#;

    #[test]
    fn thumbs_lie_where_anatomy_puts_them() {
        // Source: anatomy; a sitter at 6 o'clock reaches up the picture.
        let up = -DVec2::Y;
        let left = thumb_direction(up, Side::Right, Palm::Down);
        assert!(
            left.x < -0.9,
            "right hand from 6 o'clock: thumb to picture left, got {left}"
        );
        let from_twelve = thumb_direction(DVec2::Y, Side::Right, Palm::Down);
        assert!(
            from_twelve.x > 0.9,
            "right hand from 12: thumb right, got {from_twelve}"
        );
        let from_nine = thumb_direction(DVec2::X, Side::Right, Palm::Down);
        assert!(
            from_nine.y < -0.9,
            "right hand from 9: thumb to the top, got {from_nine}"
        );
        let over = thumb_direction(up, Side::Right, Palm::Up);
        assert!(over.x > 0.9, "palm up turns it over");
        let other = thumb_direction(up, Side::Left, Palm::Down);
        assert!(other.x > 0.9, "left hand is the mirror image");
    }

    #[test]
    fn a_hand_is_as_long_and_broad_as_measured() {
        let layout = open(LAID).expect("a sound layout");
        let hand = &layout.hands[0];
        let arm = arm(&layout, hand);
        let along = |p: &DVec2| (*p - arm.wrist).dot(arm.along);
        let reach = arm.hand.iter().map(along).fold(f64::MIN, f64::max);
        assert!((reach - HAND_LENGTH).abs() < 8.0, "fingertips at {reach}");
        let thumb = thumb_direction(arm.along, hand.side, hand.palm);
        let out = arm
            .hand
            .iter()
            .map(|p| (*p - arm.wrist).dot(thumb))
            .fold(f64::MIN, f64::max);
        let other = arm
            .hand
            .iter()
            .map(|p| (*p - arm.wrist).dot(-thumb))
            .fold(f64::MIN, f64::max);
        assert!(
            out > other + 20.0,
            "the thumb stands out on its own side: {out} against {other}"
        );
    }
}
