//! Area, length, middle and inside of one polygon.

use glam::DVec2;

/// Each point with the one after it, round the polygon.
pub(super) fn edges(polygon: &[DVec2]) -> impl Iterator<Item = (DVec2, DVec2)> + '_ {
    let last = polygon.last().copied();
    last.into_iter()
        .chain(polygon.iter().copied())
        .zip(polygon.iter().copied())
}

/// Shoelace area in mm²: positive or negative by direction, 0 for fewer than
/// three points. Where a polygon crosses itself its loops count by their
/// winding.
#[must_use]
pub fn signed_area(polygon: &[DVec2]) -> f64 {
    // Measured from its own first point: coordinates far from the origin
    // would otherwise eat the digits of a small area.
    let Some(&origin) = polygon.first() else {
        return 0.0;
    };
    let doubled: f64 = edges(polygon)
        .map(|(a, b)| (a - origin).perp_dot(b - origin))
        .sum();
    doubled * 0.5
}

/// Area in mm², never negative.
#[must_use]
pub fn area(polygon: &[DVec2]) -> f64 {
    signed_area(polygon).abs()
}

/// Length of the closed outline, mm.
#[must_use]
pub fn perimeter(polygon: &[DVec2]) -> f64 {
    edges(polygon).map(|(a, b)| a.distance(b)).sum()
}

/// First moments of the polygon about `origin`, in mm³, signed as its area.
pub(super) fn moments(polygon: &[DVec2], origin: DVec2) -> DVec2 {
    edges(polygon)
        .map(|(a, b)| {
            let (a, b) = (a - origin, b - origin);
            (a + b) * a.perp_dot(b)
        })
        .sum::<DVec2>()
        / 6.0
}

/// Centre of area; `None` when the polygon encloses nothing.
#[must_use]
pub fn centroid(polygon: &[DVec2]) -> Option<DVec2> {
    let origin = *polygon.first()?;
    let at = origin + moments(polygon, origin) / signed_area(polygon);
    at.is_finite().then_some(at)
}

/// Whether the point lies inside by the even-odd rule. A point on the outline
/// itself may be called either.
#[must_use]
pub fn contains(polygon: &[DVec2], p: DVec2) -> bool {
    // Asked for more often than anything else, hence a bare loop.
    let mut inside = false;
    let Some(mut a) = polygon.last() else {
        return inside;
    };
    for b in polygon {
        if (a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) * (b.x - a.x) / (b.y - a.y) {
            inside = !inside;
        }
        a = b;
    }
    inside
}

/// Signed area in mm² of the part of the polygon with `normal · p < offset`.
///
/// Sutherland & Hodgman clipping (1974) against one line; where a concave
/// polygon falls apart, its pieces stay joined by edges that lie on the line
/// there and back, which add nothing to the area.
#[must_use]
pub fn area_on_side(polygon: &[DVec2], normal: DVec2, offset: f64) -> f64 {
    let Some(&origin) = polygon.first() else {
        return 0.0;
    };
    let mut sum = Shoelace::new(origin);
    for (a, b) in edges(polygon) {
        let (from, to) = (normal.dot(a) - offset, normal.dot(b) - offset);
        if (from < 0.0) != (to < 0.0) {
            sum.push(a + (b - a) * (from / (from - to)));
        }
        if to < 0.0 {
            sum.push(b);
        }
    }
    sum.closed()
}

/// A shoelace sum fed point by point.
struct Shoelace {
    origin: DVec2,
    first: Option<DVec2>,
    last: DVec2,
    doubled: f64,
}

impl Shoelace {
    fn new(origin: DVec2) -> Self {
        Self {
            origin,
            first: None,
            last: DVec2::ZERO,
            doubled: 0.0,
        }
    }

    fn push(&mut self, p: DVec2) {
        let p = p - self.origin;
        match self.first {
            None => self.first = Some(p),
            Some(_) => self.doubled += self.last.perp_dot(p),
        }
        self.last = p;
    }

    fn closed(self) -> f64 {
        self.first.map_or(0.0, |first| {
            (self.doubled + self.last.perp_dot(first)) * 0.5
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square() -> Vec<DVec2> {
        [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)]
            .map(DVec2::from)
            .to_vec()
    }

    #[test]
    fn square_has_its_area_centre_and_outline() {
        assert_eq!(signed_area(&square()), 100.0, "10 by 10");
        assert_eq!(centroid(&square()), Some(DVec2::splat(5.0)), "the middle");
        assert_eq!(perimeter(&square()), 40.0, "four sides");
    }

    #[test]
    fn reversed_square_is_negative_with_the_same_centre() {
        let mut reversed = square();
        reversed.reverse();
        assert_eq!(signed_area(&reversed), -100.0, "the other way round");
        assert_eq!(centroid(&reversed), Some(DVec2::splat(5.0)), "the middle");
    }

    #[test]
    fn far_away_square_keeps_its_digits() {
        let far: Vec<_> = square().iter().map(|p| *p + DVec2::splat(1e7)).collect();
        assert_eq!(signed_area(&far), 100.0, "position must not cost digits");
    }

    #[test]
    fn degenerate_polygons_enclose_nothing() {
        let line = [DVec2::ZERO, DVec2::X, DVec2::X * 2.0];
        for polygon in [
            &[][..],
            &line[..1],
            &line[..2],
            &line[..],
            &[DVec2::ONE; 4][..],
        ] {
            assert_eq!(area(polygon), 0.0, "no area in {polygon:?}");
            assert_eq!(centroid(polygon), None, "no centre in {polygon:?}");
            assert!(
                !contains(polygon, DVec2::splat(0.5)),
                "nothing inside {polygon:?}"
            );
        }
    }

    #[test]
    fn point_is_inside_by_even_odd() {
        assert!(contains(&square(), DVec2::new(1.0, 9.0)), "inside");
        assert!(!contains(&square(), DVec2::new(11.0, 5.0)), "to the right");
        assert!(!contains(&square(), DVec2::new(5.0, -1.0)), "above");
    }

    #[test]
    fn line_cuts_a_concave_polygon_by_area() {
        // A U of three 2-wide bars: below y = 2 the base, above it two arms.
        let u = [
            (0.0, 0.0),
            (6.0, 0.0),
            (6.0, 6.0),
            (4.0, 6.0),
            (4.0, 2.0),
            (2.0, 2.0),
            (2.0, 6.0),
            (0.0, 6.0),
        ]
        .map(DVec2::from);
        assert_eq!(area_on_side(&u, DVec2::Y, 2.0), 12.0, "the base");
        assert_eq!(
            area_on_side(&u, DVec2::Y, 4.0),
            20.0,
            "base and half of both arms"
        );
        assert_eq!(
            area_on_side(&u, -DVec2::Y, -4.0),
            8.0,
            "the ends of both arms"
        );
        assert_eq!(area_on_side(&u, DVec2::Y, -1.0), 0.0, "nothing below");
        assert_eq!(area_on_side(&u, DVec2::Y, 9.0), 28.0, "all of it");
    }
}
