//! The triangle of the three heaviest masses and its score, S4.

use glam::DVec2;

use super::balance::has_area;
use crate::order;

/// Quality from which a triangle counts in full: that of 30-60-90. Our choice;
/// there is no reason to ask for an equilateral one.
pub const FULL_QUALITY: f64 = 0.75;
/// Share of the picture from which a triangle's area counts in full: the upper
/// quartile of random triangles. Our choice.
pub const FULL_AREA: f64 = 0.11;
/// Ratio of the third mass to the fourth below which no three stand out. Our
/// choice.
pub const CLEAR_DOMINANCE: f64 = 1.25;

/// What shape a triangle is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Triangle {
    /// Area, never negative.
    pub area: f64,
    /// 4√3 area over the sum of squared sides: 1 equilateral, 0 in a line.
    /// Bank & Smith (1997), *SIAM J. Numer. Anal.* 34:979 (from memory).
    pub quality: f64,
    /// Twice the inscribed radius over the circumscribed one: 1 equilateral.
    pub radius_ratio: f64,
    /// Its smallest angle, degrees.
    pub min_angle: f64,
}

/// Measures a triangle; `None` when two corners coincide or one is not finite.
/// Corners in a line make a triangle without area or quality.
#[must_use]
pub fn triangle(corners: [DVec2; 3]) -> Option<Triangle> {
    let [p, q, r] = corners;
    let mut sides = [q.distance(r), r.distance(p), p.distance(q)];
    order::sort(&mut sides, f64::total_cmp);
    let [a, b, c] = sides;
    if !(a > 0.0 && c.is_finite()) {
        return None;
    }
    let area = (q - p).perp_dot(r - p).abs() * 0.5;
    let squares = a * a + b * b + c * c;
    // Angle opposite the shortest side; atan2 stays exact for slivers.
    let min_angle = libm::atan2(4.0 * area, b * b + c * c - a * a).to_degrees();
    let found = Triangle {
        area,
        quality: 4.0 * 3.0f64.sqrt() * area / squares,
        radius_ratio: 16.0 * area * area / (a * b * c * (a + b + c)),
        min_angle,
    };
    (found.quality.is_finite() && found.radius_ratio.is_finite()).then_some(found)
}

/// Triangle score S4, 0 to 100, of the three dominants in a picture of `size`:
/// the geometric mean of quality and area, each counting in full from
/// [`FULL_QUALITY`] and [`FULL_AREA`]. `None` as for [`triangle`] and without
/// a picture.
///
/// A craft convention: McManus & Kitson (1995) found no preference for it.
#[must_use]
pub fn triangle_score(size: DVec2, corners: [DVec2; 3]) -> Option<f64> {
    if !has_area(size) {
        return None;
    }
    let found = triangle(corners)?;
    let quality = (found.quality / FULL_QUALITY).min(1.0);
    let area = (found.area / (FULL_AREA * size.x * size.y)).min(1.0);
    Some(100.0 * (quality * area).sqrt())
}

/// How far the third-largest mass stands above the fourth; `None` with fewer
/// than four masses that weigh anything: three are then clear by themselves,
/// fewer are no triangle.
#[must_use]
pub fn dominance(masses: &[f64]) -> Option<f64> {
    let mut sorted: Vec<f64> = masses
        .iter()
        .copied()
        .filter(|m| *m > 0.0 && m.is_finite())
        .collect();
    order::sort(&mut sorted, |a, b| b.total_cmp(a));
    Some(*sorted.get(2)? / *sorted.get(3)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    const SIZE: DVec2 = DVec2::new(100.0, 100.0);

    fn corners(points: [(f64, f64); 3]) -> [DVec2; 3] {
        points.map(DVec2::from)
    }

    #[test]
    fn corners_in_a_line_score_nothing() {
        let line = corners([(0.0, 0.0), (1.0, 1.0), (5.0, 5.0)]);
        let found = triangle(line).expect("three places");
        assert_eq!(
            (found.area, found.quality, found.min_angle),
            (0.0, 0.0, 0.0),
            "flat"
        );
        assert_eq!(
            triangle_score(SIZE, line),
            Some(0.0),
            "no triangle to speak of"
        );
    }

    #[test]
    fn large_good_triangle_scores_in_full() {
        let score = triangle_score(SIZE, corners([(10.0, 80.0), (90.0, 80.0), (50.0, 20.0)]));
        assert_eq!(
            score,
            Some(100.0),
            "0.24 of the picture and nearly equilateral"
        );
    }

    #[test]
    fn small_triangle_loses_by_area() {
        // 3-4-5 counts in full by shape; its 6 of 100 × 100 is small.
        let score = triangle_score(SIZE, corners([(0.0, 0.0), (3.0, 0.0), (0.0, 4.0)]));
        let expected = 100.0 * (6.0f64 / 1100.0).sqrt();
        assert!(
            (score.expect("a triangle") - expected).abs() < 1e-9,
            "{score:?}"
        );
    }

    #[test]
    fn order_of_corners_does_not_matter() {
        let [p, q, r] = corners([(1.0, 2.0), (31.0, 8.0), (9.0, 40.0)]);
        for other in [[q, r, p], [r, q, p]] {
            let (x, y) = (triangle([p, q, r]), triangle(other));
            let (x, y) = (x.expect("a triangle"), y.expect("a triangle"));
            assert!((x.quality - y.quality).abs() < 1e-12, "{x:?} and {y:?}");
        }
    }

    #[test]
    fn no_triangle() {
        let (a, b) = (DVec2::ZERO, DVec2::ONE);
        assert_eq!(triangle([a, a, b]), None, "two in one place");
        assert_eq!(triangle([a, a, a]), None, "all in one place");
        assert_eq!(triangle([a, b, DVec2::NAN]), None, "not a place");
        assert_eq!(
            triangle_score(DVec2::ZERO, [a, b, DVec2::X]),
            None,
            "no picture"
        );
    }

    #[test]
    fn dominance_is_third_over_fourth() {
        assert_eq!(
            dominance(&[1.0, 8.0, 4.0, 2.0, 16.0]),
            Some(2.0),
            "4 over 2"
        );
        assert_eq!(dominance(&[3.0; 9]), Some(1.0), "no clear three");
        assert_eq!(dominance(&[5.0, 4.0, 3.0]), None, "only three");
        assert_eq!(
            dominance(&[5.0, 4.0, 3.0, 0.0, f64::NAN]),
            None,
            "three that weigh"
        );
        assert_eq!(dominance(&[]), None, "none");
    }
}
