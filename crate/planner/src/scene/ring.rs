//! The ring round the table on which it is shown, and told, where the light
//! stands: a way out from the table's middle is an hour of the light.
use glam::DVec2;

use crate::layout::{Layout, Turn};
use crate::shape::{Bounds, frame_outline};

/// Least from table and frame to the ring, mm. Our choice.
const MARGIN: f64 = 110.0;
/// Points of the ring.
const POINTS: i32 = 72;

/// A box with round corners about the table's middle, clear of the table and
/// the frame: |x|⁸ + |y|⁸ = 1 in shares of its half sides.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ring {
    /// The table's middle.
    pub centre: DVec2,
    half: DVec2,
}

/// Where the light is shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LightSpot {
    /// The place: its own, or on the ring where it stands farther out.
    pub at: DVec2,
    /// Whether it stands farther out than it is shown.
    pub farther: bool,
}

impl Ring {
    /// The ring of a layout.
    #[must_use]
    pub fn of(layout: &Layout) -> Self {
        let size = DVec2::new(f64::from(layout.table.width), f64::from(layout.table.depth));
        let centre = size * 0.5;
        let mut half = centre;
        for corner in frame_outline(&layout.frame) {
            half = half.max((corner - centre).abs());
        }
        // Where both sides are reached at once, at a corner, the ring passes
        // 2^(1/8) farther out.
        let corner = 2.0_f64.sqrt().sqrt().sqrt();
        Self {
            centre,
            half: half * corner + MARGIN,
        }
    }

    /// Where a way out from the middle meets it.
    #[must_use]
    pub fn towards(&self, way: DVec2) -> DVec2 {
        self.centre + way / self.level(way).max(f64::MIN_POSITIVE)
    }

    /// How far out a place is, in shares of the ring that way.
    #[must_use]
    pub fn share(&self, place: DVec2) -> f64 {
        self.level(place - self.centre)
    }

    fn level(&self, way: DVec2) -> f64 {
        let eighth = |v: f64| {
            let fourth = v * v * v * v;
            fourth * fourth
        };
        let v = way / self.half;
        (eighth(v.x) + eighth(v.y)).sqrt().sqrt().sqrt()
    }

    /// Its line.
    #[must_use]
    pub fn outline(&self) -> Vec<DVec2> {
        (0..POINTS)
            .map(|n| self.towards(Turn::from_half_degrees(n * 720 / POINTS).direction()))
            .collect()
    }

    /// What it takes up.
    #[must_use]
    pub fn bounds(&self) -> Bounds {
        Bounds {
            min: self.centre - self.half,
            max: self.centre + self.half,
        }
    }

    /// Where a light of this layout is shown when it stands at an hour.
    #[must_use]
    pub fn light(&self, layout: &Layout, clock: Turn) -> LightSpot {
        let own = self.centre + clock.direction() * f64::from(layout.light.distance);
        let farther = self.share(own) > 1.0;
        let at = if farther {
            self.towards(clock.direction())
        } else {
            own
        };
        LightSpot { at, farther }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::LayoutId;
    use crate::shape::{CHORD_ERROR, table_outline};

    #[test]
    fn the_ring_lies_clear_of_table_and_frame() {
        let mut layout = Layout::empty(LayoutId(1));
        for (width, turn) in [(1_000, 0.0), (1_000, 90.0), (1_600, 30.0)] {
            layout.frame.width = width;
            layout.frame.turn = Turn::from_degrees(turn);
            let ring = Ring::of(&layout);
            let table = table_outline(&layout.table, CHORD_ERROR);
            for p in frame_outline(&layout.frame).iter().chain(&table) {
                assert!(ring.share(*p) < 1.0, "{p} inside, {width} at {turn}°");
                let out = ring.towards(*p - ring.centre).distance(*p);
                assert!(out >= MARGIN - 1e-6, "{out} mm clear");
            }
        }
    }

    #[test]
    fn a_way_out_meets_the_ring_once_and_that_way() {
        let ring = Ring::of(&Layout::empty(LayoutId(1)));
        for n in 0..720 {
            let way = Turn::from_half_degrees(n).direction();
            let at = ring.towards(way);
            assert!((ring.share(at) - 1.0).abs() < 1e-9, "on it");
            assert!((at - ring.centre).normalize().distance(way) < 1e-9, "there");
        }
    }

    #[test]
    fn a_light_within_the_ring_is_shown_where_it_stands_and_one_beyond_on_it() {
        let mut layout = Layout::empty(LayoutId(1));
        let ring = Ring::of(&layout);
        let nine = Turn::from_degrees(270.0);
        layout.light.distance = 500;
        let near = ring.light(&layout, nine);
        assert!(!near.farther && near.at.distance(DVec2::new(100.0, 450.0)) < 1e-9);
        layout.light.distance = 1_800;
        let far = ring.light(&layout, nine);
        assert!(far.farther && (ring.share(far.at) - 1.0).abs() < 1e-9);
    }
}
