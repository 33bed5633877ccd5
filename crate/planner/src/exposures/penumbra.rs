//! The penumbra on the table: every place that loses some light to what is in
//! its way, and how wide the soft edge is.
//!
//! A point at a height is thrown onto the table from each corner of the source;
//! the hull of all throws of a convex plate is every place that loses light to
//! it. The edge is as wide as the throws of one point lie apart, and along the
//! way of low light that is far wider than across it.
use glam::DVec2;

use crate::layout::{Frame, LightShape};
use crate::light::Source;
use crate::shape::hull;

/// Corners of a round source. Our choice; the hull stays within 1% of the disc.
const ROUND: usize = 24;
/// A source this little above an arm throws its shadow without end; it is cut
/// at so many frame diagonals.
const FAR: f64 = 1.0;

/// How far a shadow is followed, mm.
pub(super) fn farthest(frame: &Frame) -> f64 {
    DVec2::new(f64::from(frame.width), frame.height()).length() * FAR
}

/// Where the corners of the source throw a point at a height, no farther than
/// `most`.
fn throws(source: &Source, p: DVec2, height: f64, most: f64) -> impl Iterator<Item = DVec2> {
    let corners = match source.shape {
        LightShape::Window => 4,
        LightShape::Disc => ROUND,
    };
    let source = *source;
    (0..corners).map(move |n| {
        let (u, v) = match source.shape {
            LightShape::Window => [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)][n],
            LightShape::Disc => {
                let turn = core::f64::consts::TAU * n as f64 / ROUND as f64;
                let (sin, cos) = libm::sincos(turn);
                (cos, sin)
            }
        };
        let lamp = source.point(u, v);
        let above = lamp.z - height;
        let way = p - lamp.truncate();
        // From beside or below what throws it a shadow runs on and on.
        let reach = if above > 1.0 {
            height / above
        } else {
            f64::INFINITY
        };
        p + way.normalize_or_zero() * (way.length() * reach).min(most)
    })
}

/// Every place of the table that loses light to a convex plate at a height,
/// followed no farther than `most`.
pub(super) fn thrown(source: &Source, plate: &[DVec2], height: f64, most: f64) -> Vec<DVec2> {
    let mut all: Vec<DVec2> = plate.to_vec();
    for p in plate {
        all.extend(throws(source, *p, height, most));
    }
    hull(&all)
}

/// How wide the soft edge of the shadow is that something at a height over a
/// place throws, mm: along the way the light comes, and across it; followed no
/// farther than across the frame.
#[must_use]
pub fn soft_edge(source: &Source, frame: &Frame, at: DVec2, height: f64) -> DVec2 {
    let along = (at - source.centre.truncate()).normalize_or(DVec2::X);
    let turned = throws(source, at, height, farthest(frame)).map(|p| {
        let off = p - at;
        DVec2::new(off.dot(along), off.dot(along.perp()))
    });
    let (mut least, mut most) = (DVec2::INFINITY, DVec2::NEG_INFINITY);
    for p in turned {
        (least, most) = (least.min(p), most.max(p));
    }
    most - least
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::exposures::added;
    use crate::layout::{Layout, open};
    use crate::scene::{Lit, arm};
    use crate::shape::Bounds;

    /// A round source of 90 cm, 120 cm from a hand 15 cm up and 35° above it:
    /// 983 mm level and 688 mm up, turned to where its ray meets the table, 214
    /// mm past the hand.
    fn lit() -> Layout {
        open(
            r#"{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":20,
            "table":{"width":3000,"depth":2000},"frame":{"at":[1500,1000],"width":2600},
            "light":{"clock":0,"distance":1197,"height_above_table":838,"shape":"disc","width":900},
            "people":[{"id":1,"sleeve":{"length":"bare"}}],"exposures":[{"id":2}],
            "hands":[{"id":3,"person":1,"exposure":2,"entry":[200,786],"target":[1500,786],"height":150}]}"#,
        )
        .expect("a sound layout")
    }

    #[test]
    fn a_soft_edge_is_far_wider_along_the_light_than_across() {
        // The source's lower edge throws 150 · 1241 ÷ 320 = 582 mm past the hand,
        // its upper one 150 · 725 ÷ 1057 = 103: 480 along. Tolerance 1 cm.
        // Across, the short formula, height over the sine of the elevation ×
        // source ÷ distance, gives 196: that of the source's middle. The lower
        // half of the source throws farther and so wider.
        let layout = lit();
        let source = Source::of(&layout);
        let hand = DVec2::new(1500.0, 786.0);
        let edge = soft_edge(&source, &layout.frame, hand, 150.0);
        assert!((edge.x - 480.0).abs() < 10.0, "along: {}", edge.x);
        let all: Vec<DVec2> = throws(&source, hand, 150.0, 3_000.0).collect();
        let middle = (all[0].x - all[ROUND / 2].x).abs();
        assert!((middle - 196.0).abs() < 2.0, "of its middle: {middle}");
        assert!((196.0..240.0).contains(&edge.y), "across: {}", edge.y);
        assert!(edge.x > 2.0 * edge.y, "far wider along: {edge}");
    }

    #[test]
    fn what_an_exposure_adds_is_as_wide_as_its_arm_and_the_soft_edge() {
        let layout = lit();
        let arm = arm(&layout, &layout.hands[0]);
        let own = Bounds::around(&arm.hand).expect("a hand");
        let shadow = added(&layout)[0].shadow.bounds().expect("a shadow");
        // The light comes from the top: its far edge lies so far past the hand.
        let far = 150.0 * 1241.0 / 319.0;
        let past = shadow.max.y - own.max.y;
        assert!((past - far).abs() < 40.0, "{past} past the hand, {far}");
    }

    #[test]
    fn light_comes_back_over_the_width_of_the_edge_and_not_before() {
        let layout = lit();
        let lit = Lit::of(&layout);
        let lost = |y: f64| {
            let place = DVec2::new(1400.0, y).extend(0.0);
            1.0 - lit.share_past_arms(place, layout.exposures[0].id)
        };
        // 103 to 584 mm past an edge at 786 to 870: nothing before, all after.
        assert!(lost(800.0) < 0.02, "{}", lost(800.0));
        assert!(lost(1000.0) > 0.05, "{}", lost(1000.0));
        assert!(lost(1480.0) < 0.02, "{}", lost(1480.0));
        let soft = (900..1460).step_by(20).map(|y| lost(f64::from(y)));
        assert!(
            soft.clone().all(|x| x < 0.6),
            "nowhere dark: it is all edge"
        );
        assert!(soft.fold(0.0, f64::max) > 0.1, "but seen");
    }
}
