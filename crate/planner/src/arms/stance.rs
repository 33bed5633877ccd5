//! Where a person's shoulders are: on a chair or standing, upright or leaning
//! over the table.
use glam::{DVec2, DVec3};

use super::body::Body;
use crate::layout::Side;

/// A chair's seat above the floor, mm (common practice, no source).
const SEAT: f64 = 450.0;
/// Left between belly and table, mm (common practice, no source).
const GAP: f64 = 25.0;
/// The shoulder joint lies this far before the plane of the back, mm (our
/// estimate).
const BEFORE_BACK: f64 = 80.0;
/// From hip to shoulder, in statures: shoulder and hip heights of Drillis and
/// Contini (1966), 0.818 and 0.530.
const TRUNK: f64 = 0.288;
/// Farther than this nobody leans over a laid table, degrees. Our choice.
pub const MAX_LEAN: f64 = 30.0;

/// How someone sits or stands at a table's edge.
#[derive(Clone, Copy, Debug)]
pub struct Stance {
    /// Where the edge is before them, mm on the table.
    pub at: DVec2,
    /// Which way they look, of length 1.
    pub inward: DVec2,
    /// Whether they sit.
    pub seated: bool,
    /// Their body.
    pub body: Body,
    /// The table above the floor, mm.
    pub table: f64,
}

impl Stance {
    /// A shoulder over the table plane, mm, leaning forward about the hip by
    /// so many degrees.
    #[must_use]
    pub fn shoulder(&self, side: Side, lean: f64) -> DVec3 {
        let body = &self.body;
        let (behind, above) = if self.seated {
            (body.belly + GAP - BEFORE_BACK, SEAT + body.sitting)
        } else {
            (body.belly * 0.5, body.standing)
        };
        let trunk = TRUNK * body.stature;
        let (sin, cos) = libm::sincos(lean.to_radians());
        let forward = trunk * sin - behind;
        // y runs down, so a sitter's right is a quarter turn clockwise.
        let right = self.inward.perp();
        let aside = match side {
            Side::Right => body.shoulder,
            Side::Left => -body.shoulder,
        };
        let at = self.at + self.inward * forward + right * aside;
        at.extend(above - trunk * (1.0 - cos) - self.table)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at_the_edge(stature: f64, seated: bool) -> Stance {
        Stance {
            at: DVec2::ZERO,
            inward: -DVec2::Y,
            seated,
            body: Body::of(stature),
            table: 750.0,
        }
    }

    /// Fingertips past the edge of a table of 750 mm, straight ahead of the
    /// shoulder.
    fn reach(stance: &Stance, lean: f64) -> f64 {
        let shoulder = stance.shoulder(Side::Right, lean);
        let arm = stance.body.arm();
        (arm * arm - shoulder.z * shoulder.z).sqrt() - shoulder.y
    }

    /// Worked out from ANSUR II means: seated men 536 mm past the edge, women
    /// 510; upright on their feet 268 and 331, for the taller stand the higher.
    #[test]
    fn fingertips_reach_as_far_past_the_edge_as_worked_out() {
        for (stature, seated, expected) in [
            (1755.0, true, 536.0),
            (1626.0, true, 510.0),
            (1755.0, false, 268.0),
            (1626.0, false, 331.0),
        ] {
            let got = reach(&at_the_edge(stature, seated), 0.0);
            assert!((got - expected).abs() < 6.0, "{stature} {seated}: {got}");
        }
    }

    /// A lean of 30° about the hip: shoulder 235 mm forward and 63 mm lower
    /// (women's mean stature × 0.288, Drillis and Contini 1966).
    #[test]
    fn a_lean_brings_the_shoulder_forward_and_down() {
        let stance = at_the_edge(1628.5, true);
        let [up, over] = [0.0, MAX_LEAN].map(|lean| stance.shoulder(Side::Left, lean));
        assert!((up.y - over.y - 235.0).abs() < 1.0, "{up} {over}");
        assert!((up.z - over.z - 63.0).abs() < 1.0, "{up} {over}");
    }

    #[test]
    fn the_right_shoulder_is_on_the_sitters_right() {
        // Someone at the near edge looks up the picture: right is to the right.
        let near = at_the_edge(1700.0, true);
        assert!(near.shoulder(Side::Right, 0.0).x > 150.0, "right");
        assert!(near.shoulder(Side::Left, 0.0).x < -150.0, "left");
    }
}
