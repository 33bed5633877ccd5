//! An area on the table with its holes: what all measures of visible parts are
//! taken from.

use glam::DVec2;

use super::boolean::{self, check};
use super::polygon::{edges, moments, perimeter, signed_area};
use super::{Bounds, ShapeError, is_convex};

/// An area on the table, possibly in several parts and with holes.
///
/// Its rings never cross; outer rings have a positive area, holes a negative
/// one, so that sums over rings are right without asking which is which.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Region {
    rings: Vec<Vec<DVec2>>,
    // Asked for at every pair of pieces, so it is kept.
    bounds: Option<Bounds>,
}

impl Region {
    /// No area at all.
    #[must_use]
    pub const fn empty() -> Self {
        Self {
            rings: Vec::new(),
            bounds: None,
        }
    }

    /// The area a polygon goes round, whichever way it goes and even where it
    /// crosses itself. A polygon of fewer than three points or without area
    /// gives the empty region.
    ///
    /// # Errors
    /// When a coordinate is not finite or too far away, or there are too many
    /// points.
    pub fn from_polygon(polygon: &[DVec2]) -> Result<Self, ShapeError> {
        check(&[polygon])?;
        if is_convex(polygon) {
            return Ok(Self::from_rings(vec![polygon.to_vec()]));
        }
        boolean::enclosed(polygon)
    }

    /// Rings that already obey the rules above.
    pub(super) fn from_rings(rings: Vec<Vec<DVec2>>) -> Self {
        let bounds = rings
            .iter()
            .filter_map(|r| Bounds::around(r))
            .reduce(Bounds::joined);
        Self { rings, bounds }
    }

    /// The outer rings and the holes.
    #[must_use]
    pub fn rings(&self) -> &[Vec<DVec2>] {
        &self.rings
    }

    /// Whether there is no area.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.rings.is_empty()
    }

    /// Area in mm².
    #[must_use]
    pub fn area(&self) -> f64 {
        self.rings
            .iter()
            .map(|r| signed_area(r))
            .sum::<f64>()
            .max(0.0)
    }

    /// Length of all outlines, those of holes included, mm.
    #[must_use]
    pub fn perimeter(&self) -> f64 {
        self.rings.iter().map(|r| perimeter(r)).sum()
    }

    /// Centre of area; `None` when there is none.
    #[must_use]
    pub fn centroid(&self) -> Option<DVec2> {
        let origin = *self.rings.first()?.first()?;
        let moments: DVec2 = self.rings.iter().map(|r| moments(r, origin)).sum();
        let at = origin + moments / self.area();
        at.is_finite().then_some(at)
    }

    /// The smallest box around it; `None` when it is empty.
    #[must_use]
    pub const fn bounds(&self) -> Option<Bounds> {
        self.bounds
    }

    /// Whether the point lies inside; on the outline either may be said.
    #[must_use]
    pub fn contains(&self, p: DVec2) -> bool {
        let near = self.bounds.is_some_and(|b| b.holds(p));
        near && self.rings.iter().filter(|r| super::contains(r, p)).count() % 2 == 1
    }

    /// The same area moved by `by` mm.
    #[must_use]
    pub fn moved(&self, by: DVec2) -> Self {
        let moved = |ring: &Vec<DVec2>| ring.iter().map(|p| *p + by).collect();
        Self::from_rings(self.rings.iter().map(moved).collect())
    }

    /// The same area carried point by point; `carry` turns and moves, no more.
    #[must_use]
    pub fn carried(&self, carry: impl Fn(DVec2) -> DVec2) -> Self {
        let carried = |ring: &Vec<DVec2>| ring.iter().map(|p| carry(*p)).collect();
        Self::from_rings(self.rings.iter().map(carried).collect())
    }

    /// All sides of all rings.
    pub(super) fn sides(&self) -> impl Iterator<Item = (DVec2, DVec2)> + '_ {
        self.rings.iter().flat_map(|r| edges(r))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn either_direction_gives_the_same_area() {
        let dart = [(0.0, 0.0), (4.0, 0.0), (1.0, 1.0), (0.0, 4.0)].map(DVec2::from);
        let mut reversed = dart;
        reversed.reverse();
        for polygon in [dart, reversed] {
            let region = Region::from_polygon(&polygon).expect("a dart");
            assert_eq!(region.area(), 4.0, "always positive");
            assert!(region.contains(DVec2::new(0.5, 0.5)), "inside");
            assert!(!region.contains(DVec2::new(2.0, 2.0)), "in the notch");
        }
    }

    #[test]
    fn bow_tie_counts_both_wings() {
        let tie = [(0.0, 0.0), (4.0, 4.0), (4.0, 0.0), (0.0, 4.0)].map(DVec2::from);
        let region = Region::from_polygon(&tie).expect("a bow tie");
        assert_eq!(region.area(), 8.0, "two triangles of 4");
        assert_eq!(region.centroid(), Some(DVec2::splat(2.0)), "the knot");
        assert!(
            region.rings().iter().all(|r| signed_area(r) > 0.0),
            "no holes"
        );
    }

    #[test]
    fn degenerate_polygons_are_empty() {
        for polygon in [
            &[][..],
            &[DVec2::ONE][..],
            &[DVec2::ZERO, DVec2::X][..],
            &[DVec2::ONE; 5][..],
            &[DVec2::ZERO, DVec2::X * 5.0, DVec2::X * 2.0][..],
        ] {
            let region = Region::from_polygon(polygon).expect("harmless");
            assert!(region.is_empty(), "{polygon:?} encloses nothing");
            assert_eq!(region.bounds(), None, "no box");
            assert_eq!(region.centroid(), None, "no centre");
            assert_eq!(region.area(), 0.0, "no area");
        }
    }

    #[test]
    fn moved_region_keeps_its_area() {
        let region = Region::from_polygon(
            &Bounds {
                min: DVec2::ZERO,
                max: DVec2::ONE,
            }
            .corners(),
        )
        .expect("a square")
        .moved(DVec2::new(7.0, -3.0));
        assert_eq!(region.centroid(), Some(DVec2::new(7.5, -2.5)), "moved");
        assert_eq!(region.area(), 1.0, "same size");
    }
}
