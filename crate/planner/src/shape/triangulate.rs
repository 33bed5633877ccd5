//! Polygons cut into triangles.

use glam::DVec2;

use super::signed_area;

/// A polygon that does not cross itself, cut into positive triangles that
/// cover it. Fewer than three points, or no area, give none.
///
/// Ear clipping (Meisters, 1975); where rounding or a crossing leaves no ear,
/// the first corner goes all the same, so that it always ends.
#[must_use]
pub fn triangulate(polygon: &[DVec2]) -> Vec<[DVec2; 3]> {
    let mut left: Vec<DVec2> = polygon.to_vec();
    if signed_area(&left) < 0.0 {
        left.reverse();
    }
    left.dedup();
    let mut triangles = Vec::new();
    while left.len() >= 3 {
        let n = left.len();
        let corner = |i: usize| [left[(i + n - 1) % n], left[i], left[(i + 1) % n]];
        let ear = (0..n).find(|&i| is_ear(corner(i), &left)).unwrap_or(0);
        let triangle = corner(ear);
        if signed_area(&triangle) > 0.0 {
            triangles.push(triangle);
        }
        left.remove(ear);
    }
    triangles
}

fn is_ear(triangle: [DVec2; 3], polygon: &[DVec2]) -> bool {
    let [a, b, c] = triangle;
    let turn = (b - a).perp_dot(c - b);
    // A corner in a straight line is an ear of no area and may always go.
    if turn <= 0.0 {
        return turn == 0.0 && (b - a).dot(c - b) >= 0.0;
    }
    polygon
        .iter()
        .all(|p| triangle.contains(p) || !blocks(triangle, *p))
}

/// Whether the point lies in the triangle or on its outline.
fn blocks([a, b, c]: [DVec2; 3], p: DVec2) -> bool {
    let on_left = |from: DVec2, to: DVec2| (to - from).perp_dot(p - from) >= 0.0;
    on_left(a, b) && on_left(b, c) && on_left(c, a)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shape::area;

    fn covered(polygon: &[DVec2]) -> f64 {
        triangulate(polygon).iter().map(|t| signed_area(t)).sum()
    }

    #[test]
    fn comb_is_covered_whole() {
        let mut comb = vec![DVec2::new(0.0, 10.0), DVec2::new(0.0, 0.0)];
        for i in 0..6 {
            let x = f64::from(i) * 2.0;
            comb.extend([(x + 1.0, 8.0), (x + 2.0, 0.0)].map(DVec2::from));
        }
        comb.push(DVec2::new(12.0, 10.0));
        let expected = area(&comb);
        assert!(
            (covered(&comb) - expected).abs() < 1e-9,
            "{} of {expected}",
            covered(&comb)
        );
        comb.reverse();
        assert!((covered(&comb) - expected).abs() < 1e-9, "either direction");
    }

    #[test]
    fn points_within_a_side_are_harmless() {
        let square = [
            (0.0, 0.0),
            (2.0, 0.0),
            (4.0, 0.0),
            (4.0, 4.0),
            (0.0, 4.0),
            (0.0, 2.0),
        ];
        assert_eq!(covered(&square.map(DVec2::from)), 16.0, "the whole square");
    }

    #[test]
    fn degenerate_polygons_have_no_triangles() {
        let line = [DVec2::ZERO, DVec2::X, DVec2::X * 3.0, DVec2::X * 2.0];
        for polygon in [&[][..], &line[..2], &line[..], &[DVec2::ONE; 6][..]] {
            assert!(triangulate(polygon).is_empty(), "nothing in {polygon:?}");
        }
    }

    #[test]
    fn bow_tie_ends() {
        let tie = [(0.0, 0.0), (4.0, 4.0), (4.0, 0.0), (0.0, 4.0)].map(DVec2::from);
        assert!(triangulate(&tie).len() <= 2, "it ends");
    }
}
