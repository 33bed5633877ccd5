//! An arm that comes from a person at their place: shoulder, elbow, wrist.
use glam::{DVec2, DVec3};

use super::hands::thumb_direction;
use super::pose::pose;
use crate::arms::{Body, MAX_LEAN, Reach, Stance, bend};
use crate::layout::{Hand, Layout, Seat, Side, Table, TableShape};
use crate::seats::stand_at;

/// A person of whom no stature is told, mm: halfway between the medians of the
/// women and the men of ANSUR II (1626 and 1755).
pub const USUAL_STATURE: f64 = 1690.0;
/// A lean is tried in such steps, degrees.
const STEP: f64 = 5.0;
/// Rounds in which the wrist finds its place: it lies where the hand's way
/// puts it, and that follows the forearm. They close in on it by a fifth or
/// less a round.
const ROUNDS: usize = 12;

/// The joints of an arm, and what it takes to reach.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joints {
    /// The shoulder, mm, z above the table top.
    pub shoulder: DVec3,
    /// The elbow.
    pub elbow: DVec3,
    /// The wrist.
    pub wrist: DVec3,
    /// Unit vector from the wrist along the hand.
    pub fingers: DVec2,
    /// Unit vector across the hand, towards the thumb.
    pub thumb: DVec2,
    /// Whose body it is of.
    pub body: Body,
    /// The way into the table from the place at its edge.
    pub inward: DVec2,
    /// How far they lean over the table, degrees.
    pub lean: f64,
    /// How far the elbow is bent from straight, degrees.
    pub flexion: f64,
    /// How far the fingertips stay short of the target, mm.
    pub short: f64,
    /// How much nearer than the elbow bends the target is, mm.
    pub close: f64,
}

/// The place a hand comes from: its own, or its person's.
#[must_use]
pub fn seat_of<'a>(layout: &'a Layout, hand: &Hand) -> Option<&'a Seat> {
    let person = layout.people.iter().find(|p| p.id == hand.person);
    let seat = hand.seat.or_else(|| person?.seat)?;
    layout.seats.iter().find(|s| s.id == seat)
}

/// The body of the person a hand is of.
#[must_use]
pub fn body_of(layout: &Layout, hand: &Hand) -> Body {
    let person = layout.people.iter().find(|p| p.id == hand.person);
    let stature = person.and_then(|p| p.stature);
    Body::of(stature.map_or(USUAL_STATURE, f64::from))
}

/// The joints of a hand's arm; none for a hand without a place at the table.
/// Someone leans as far as they must to reach, and no farther than anybody
/// would.
#[must_use]
pub fn joints(layout: &Layout, hand: &Hand) -> Option<Joints> {
    let seat = seat_of(layout, hand)?;
    let stand = stand_at(&layout.table, seat.at.vec());
    let stance = Stance {
        at: stand.at,
        inward: stand.inward,
        seated: !seat.standing,
        body: body_of(layout, hand),
        table: f64::from(layout.table.height),
    };
    let steps = (MAX_LEAN / STEP) as i32;
    let mut leans = (0..=steps).map(|n| f64::from(n) * STEP);
    let upright = reaching(layout, hand, &stance, 0.0);
    if upright.short <= 0.0 {
        return Some(upright);
    }
    leans.next();
    let leaning = leans.map(|lean| reaching(layout, hand, &stance, lean));
    let mut nearest = upright;
    for joints in leaning {
        if joints.short <= 0.0 {
            return Some(joints);
        }
        if joints.short < nearest.short {
            nearest = joints;
        }
    }
    Some(nearest)
}

fn reaching(layout: &Layout, hand: &Hand, stance: &Stance, lean: f64) -> Joints {
    let body = stance.body;
    let shoulder = stance.shoulder(hand.side, lean);
    let scale = body.hand / super::HAND_LENGTH;
    let tip = hand.target.vec();
    let rise = f64::from(hand.height).max(body.wrist * 0.5);
    let pose = pose(hand.action);
    let (sin, cos) = libm::sincos(f64::from(pose.bend).to_radians());
    let links = [body.upper, body.forearm];
    let right = stance.inward.perp();
    let outward = if hand.side == Side::Right {
        right
    } else {
        -right
    };
    let over = |p: DVec2| within(&layout.table, p);
    let mut along = (tip - shoulder.truncate()).normalize_or(stance.inward);
    let mut found = None;
    for _ in 0..ROUNDS {
        let side = thumb_direction(along, hand.side, hand.palm);
        let fingers = along * cos - side * sin;
        let thumb = side * cos + along * sin;
        let [x, y] = pose.tip.map(|mm| f64::from(mm) * scale);
        let wrist = (tip - fingers * x - thumb * y).extend(rise);
        let reach = bend(shoulder, wrist, links, outward, &over, body.widest * 0.5);
        let (elbow, wrist, flexion, short, close) = match reach {
            Reach::Bent(arm) => (arm.elbow, wrist, arm.flexion, 0.0, 0.0),
            Reach::TooFar(by) => {
                let way = (wrist - shoulder).normalize();
                let elbow = shoulder + way * body.upper;
                (elbow, elbow + way * body.forearm, 0.0, by, 0.0)
            }
            Reach::TooNear(by) => {
                let back = shoulder + (outward.extend(-1.0)).normalize() * body.upper;
                (back, wrist, crate::arms::MAX_FLEXION, 0.0, by)
            }
        };
        along = (wrist - elbow).truncate().normalize_or(along);
        found = Some(Joints {
            shoulder,
            elbow,
            wrist,
            fingers,
            thumb,
            body,
            inward: stance.inward,
            lean,
            flexion,
            short,
            close,
        });
    }
    found.unwrap_or_else(|| unreachable!("there are rounds"))
}

/// Whether a place lies over the table.
fn within(table: &Table, p: DVec2) -> bool {
    let size = DVec2::new(f64::from(table.width), f64::from(table.depth));
    match table.shape {
        TableShape::Round => p.distance(size * 0.5) < size.x * 0.5,
        TableShape::Rect => p.cmpgt(DVec2::ZERO).all() && p.cmplt(size).all(),
    }
}
