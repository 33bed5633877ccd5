//! An outline walked in short pieces, each with its way out.

use glam::DVec2;

use super::polygon::edges;

/// A short piece of an outline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// Its middle.
    pub mid: DVec2,
    /// Unit vector away from the inside.
    pub outward: DVec2,
    /// Its length, mm.
    pub length: f64,
}

/// A positive ring cut into pieces no longer than `longest` mm, none of which
/// turns a corner. A negative ring, a hole, gives normals into the hole, which
/// are away from the material. Sides of no length are passed over.
#[must_use]
pub fn walk(ring: &[DVec2], longest: f64) -> Vec<Step> {
    let mut steps = Vec::with_capacity(ring.len());
    for (a, b) in edges(ring) {
        let side = b - a;
        let length = side.length();
        if !(length > 0.0 && longest > 0.0) {
            continue;
        }
        let count = (length / longest).ceil().max(1.0);
        let outward = -side.perp() / length;
        for i in 0..count as usize {
            let mid = a + side * ((i as f64 + 0.5) / count);
            steps.push(Step {
                mid,
                outward,
                length: length / count,
            });
        }
    }
    steps
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shape::{CHORD_ERROR, Region, difference, disc, perimeter, rect};

    #[test]
    fn pieces_add_up_and_point_outward() {
        let ring = disc(DVec2::new(40.0, 60.0), 30.0, CHORD_ERROR);
        let region = Region::from_polygon(&ring).expect("a disc");
        let steps = walk(&ring, 2.0);
        let total: f64 = steps.iter().map(|s| s.length).sum();
        assert!(
            (total - perimeter(&ring)).abs() < 1e-9,
            "whole outline, got {total}"
        );
        for step in &steps {
            assert!(step.length <= 2.0, "no piece over 2 mm");
            assert!((step.outward.length() - 1.0).abs() < 1e-12, "unit normal");
            assert!(
                !region.contains(step.mid + step.outward * 0.5),
                "outward is outside"
            );
            assert!(
                region.contains(step.mid - step.outward * 0.5),
                "inward is inside"
            );
        }
    }

    #[test]
    fn holes_point_into_the_hole() {
        let boxed = |side| {
            let polygon = rect(DVec2::ZERO, DVec2::splat(side), 0.0, 0.0, CHORD_ERROR);
            Region::from_polygon(&polygon).expect("a box")
        };
        let ring = difference(&boxed(40.0), &[&boxed(20.0)]).expect("a ring");
        let steps: Vec<_> = (ring.rings().iter())
            .flat_map(|outline| walk(outline, 5.0))
            .collect();
        assert_eq!(
            steps.iter().map(|s| s.length).sum::<f64>(),
            240.0,
            "both outlines"
        );
        for step in steps {
            assert!(
                !ring.contains(step.mid + step.outward),
                "away from the material"
            );
        }
    }

    #[test]
    fn nothing_to_walk() {
        assert!(walk(&[], 1.0).is_empty(), "no ring");
        assert!(walk(&[DVec2::ONE; 3], 1.0).is_empty(), "one place");
        assert!(
            walk(&[DVec2::ZERO, DVec2::X, DVec2::Y], 0.0).is_empty(),
            "no step"
        );
    }
}
