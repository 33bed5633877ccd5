//! A hand and its arm at true size: from a shoulder by the elbow, or in their
//! first form from the entry on the frame's edge straight to the fingertips.
use glam::{DVec2, DVec3};

use super::pose::{hand_outline, pose};
use super::seated::{Joints, joints};
use super::spine::Spine;
use crate::layout::{Hand, Layout, Palm, Point, Side, SleeveLength};
use crate::shape::{contains, frame_outline, on_side};

/// Length of a hand, mm: the mean of the men's and women's medians of ANSUR II
/// (NATICK/TR-15/007, 2014: 193 and 180).
pub const HAND_LENGTH: f64 = 186.0;
/// Breadth of a hand, mm: likewise (88 and 78).
pub const HAND_BREADTH: f64 = 83.0;
/// Wrist and elbow diameters and the length between them, mm: ANSUR II wrist
/// circumference and forearm circumference over π, and forearm-hand length
/// less hand length, means of the men's and women's (56/49, 99/84, 287/259).
pub const FOREARM: [f64; 3] = [52.0, 92.0, 272.0];
/// How much wider than the arm a sleeve lies, mm at the cuff and above.
const EASE: [f64; 2] = [10.0, 8.0];
/// A limb of no more stations than this is straight.
const STRAIGHT: usize = 6;
/// The cuff of a long sleeve ends this far above the wrist, mm.
const CUFF: f64 = 22.0;

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
    /// Unit vector from elbow to wrist.
    pub along: DVec2,
    /// Unit vector from the wrist along the hand.
    pub fingers: DVec2,
    /// Unit vector across the hand, towards the thumb.
    pub thumb: DVec2,
    /// How long the hand is, over [`HAND_LENGTH`].
    pub scale: f64,
    /// Outline of the hand.
    pub hand: Vec<DVec2>,
    /// Outline of the bare forearm; empty under a long sleeve.
    pub forearm: Vec<DVec2>,
    /// Outline of the sleeve; empty when bare.
    pub sleeve: Vec<DVec2>,
    /// The middle of the sleeve's end on the arm; the wrist when bare.
    pub cuff: DVec2,
}

impl Arm {
    /// A place of the hand's own plane on the table: mm from the wrist towards
    /// the fingertips and towards the thumb.
    #[must_use]
    pub fn place(&self, own: DVec2) -> DVec2 {
        self.wrist + (self.fingers * own.x + self.thumb * own.y) * self.scale
    }
}

impl Arm {
    /// Its parts as light meets them, each nearly convex: the hand, and a bent
    /// limb in two.
    #[must_use]
    pub fn plates(&self) -> Vec<Vec<DVec2>> {
        let mut out = vec![self.hand.clone()];
        for limb in [&self.forearm, &self.sleeve] {
            let stations = limb.len().saturating_sub(2) / 2;
            if stations <= STRAIGHT {
                out.extend((!limb.is_empty()).then(|| limb.clone()));
                continue;
            }
            let middle = stations / 2;
            for (from, to) in [(0, middle), (middle, stations - 1)] {
                let mut part = limb[from..=to].to_vec();
                part.extend(&limb[2 * stations - 1 - to..2 * stations - from]);
                out.push(part);
            }
        }
        out
    }
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
///
/// That of someone at their place comes from a shoulder; without a place, from
/// the entry on the frame's edge straight to the fingertips.
#[must_use]
pub fn arm(layout: &Layout, hand: &Hand) -> Arm {
    if let Some(joints) = joints(layout, hand) {
        return seated(layout, hand, &joints);
    }
    let entry = on_edge(layout, hand.entry);
    let tip = hand.target.vec();
    let straight = (tip - entry).normalize_or(DVec2::Y);
    let side = thumb_direction(straight, hand.side, hand.palm);
    let pose = pose(hand.action);
    let (sin, cos) = libm::sincos(f64::from(pose.bend).to_radians());
    let fingers = straight * cos - side * sin;
    let thumb = side * cos + straight * sin;
    let [x, y] = pose.tip.map(f64::from);
    let wrist = tip - fingers * x - thumb * y;
    // A wrist bends so far and no farther; close to the edge the arm comes in
    // as the hand points.
    let back = (wrist - entry).normalize_or(straight);
    let along = if back.dot(straight) > 0.8 {
        back
    } else {
        straight
    };
    let [narrow, wide, reach] = FOREARM;
    let spine = Spine::straight(wrist, along, reach * 2.0, [narrow, wide], reach);
    let way = Way {
        entry,
        tip,
        wrist,
        elbow: wrist - along * reach,
        along,
        fingers,
        thumb,
        scale: 1.0,
    };
    clothed(layout, hand, way, &spine)
}

/// The arm of someone at their place.
fn seated(layout: &Layout, hand: &Hand, joints: &Joints) -> Arm {
    let body = &joints.body;
    let [wrist, elbow, shoulder] =
        [joints.wrist, joints.elbow, joints.shoulder].map(DVec3::truncate);
    let spine = Spine::bent(wrist, elbow, shoulder, [body.wrist, body.widest]);
    let scale = body.hand / HAND_LENGTH;
    let [x, y] = pose(hand.action).tip.map(|mm| f64::from(mm) * scale);
    let way = Way {
        entry: into_frame(layout, &spine).unwrap_or_else(|| on_edge(layout, hand.entry)),
        tip: wrist + joints.fingers * x + joints.thumb * y,
        wrist,
        elbow,
        along: (wrist - elbow).normalize_or(joints.inward),
        fingers: joints.fingers,
        thumb: joints.thumb,
        scale,
    };
    clothed(layout, hand, way, &spine)
}

/// How an arm lies, before it is clothed.
struct Way {
    entry: DVec2,
    tip: DVec2,
    wrist: DVec2,
    elbow: DVec2,
    along: DVec2,
    fingers: DVec2,
    thumb: DVec2,
    scale: f64,
}

/// Hand, bare forearm and sleeve about the middle line.
fn clothed(layout: &Layout, hand: &Hand, way: Way, spine: &Spine) -> Arm {
    let own = hand_outline(hand.action).iter().map(|p| *p * way.scale);
    let outline = own.map(|p| way.wrist + way.fingers * p.x + way.thumb * p.y);
    let person = layout.people.iter().find(|p| p.id == hand.person);
    let length = person.map_or(SleeveLength::Long, |p| p.sleeve.length);
    let far = spine.length();
    let (forearm, sleeve, from) = match length {
        SleeveLength::Bare => (spine.limb(-6.0, far, [0.0; 2]), Vec::new(), 0.0),
        SleeveLength::Long => (Vec::new(), spine.limb(CUFF, far, EASE), CUFF),
        SleeveLength::Rolled => {
            let fold = spine.reach * 0.8;
            let bare = spine.limb(-6.0, fold + 20.0, [0.0; 2]);
            (bare, spine.limb(fold, far, [EASE[0] + 4.0, EASE[1]]), fold)
        }
    };
    Arm {
        entry: way.entry,
        tip: way.tip,
        wrist: way.wrist,
        elbow: way.elbow,
        along: way.along,
        fingers: way.fingers,
        thumb: way.thumb,
        scale: way.scale,
        hand: outline.collect(),
        forearm,
        sleeve,
        cuff: spine.at(from).0,
    }
}

/// Where the middle line of an arm first leaves the frame, from the wrist on;
/// none when the wrist is outside it or all of the arm within.
fn into_frame(layout: &Layout, spine: &Spine) -> Option<DVec2> {
    const STEP: f64 = 5.0;
    let corners = frame_outline(&layout.frame);
    let steps = (spine.length() / STEP) as i32;
    let mut along = (0..=steps).map(|n| spine.at(f64::from(n) * STEP).0);
    let inside = |p: &DVec2| contains(&corners, *p);
    along.next().filter(inside)?;
    let out = along.find(|p| !inside(p))?;
    Some(on_frame(&corners, out))
}

/// The place on the frame's edge nearest to `p`.
fn on_edge(layout: &Layout, p: Point) -> DVec2 {
    on_frame(&frame_outline(&layout.frame), p.vec())
}

fn on_frame(corners: &[DVec2], p: DVec2) -> DVec2 {
    let mut best = (f64::INFINITY, p);
    for (n, a) in corners.iter().enumerate() {
        let b = corners[(n + 1) % corners.len()];
        let at = on_side(p, *a, b);
        let away = at.distance(p);
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
        let along = |p: &DVec2| (*p - arm.wrist).dot(arm.fingers);
        let reach = arm.hand.iter().map(along).fold(f64::MIN, f64::max);
        assert!((reach - HAND_LENGTH).abs() < 8.0, "fingertips at {reach}");
        let thumb = arm.thumb;
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
