//! The convex hull.

use glam::DVec2;

use crate::order;

/// Convex hull as a positive polygon without points in the middle of a side.
///
/// Points all in one line give their two ends, one point itself, none nothing;
/// points that are not finite are left out. Andrew's monotone chain (1979).
#[must_use]
pub fn hull(points: &[DVec2]) -> Vec<DVec2> {
    let mut sorted: Vec<DVec2> = points.iter().copied().filter(|p| p.is_finite()).collect();
    order::sort(&mut sorted, |a, b| {
        a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y))
    });
    sorted.dedup();
    if sorted.len() < 3 {
        return sorted;
    }
    let mut hull = half(sorted.iter().copied());
    let mut back = half(sorted.iter().rev().copied());
    hull.pop();
    back.pop();
    hull.append(&mut back);
    hull
}

/// One side of the hull, from the first point to the last.
fn half(points: impl Iterator<Item = DVec2>) -> Vec<DVec2> {
    let mut chain: Vec<DVec2> = Vec::new();
    for p in points {
        while let [.., a, b] = chain[..] {
            if (b - a).perp_dot(p - b) > 0.0 {
                break;
            }
            chain.pop();
        }
        chain.push(p);
    }
    chain
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shape::signed_area;

    #[test]
    fn square_with_inner_and_edge_points_is_its_corners() {
        let points = [
            (0.0, 0.0),
            (2.0, 0.0),
            (4.0, 0.0),
            (4.0, 4.0),
            (0.0, 4.0),
            (1.0, 2.0),
            (0.0, 0.0),
        ]
        .map(DVec2::from);
        let hull = hull(&points);
        assert_eq!(hull.len(), 4, "four corners, got {hull:?}");
        assert_eq!(signed_area(&hull), 16.0, "positive and whole");
    }

    #[test]
    fn degenerate_points_have_a_degenerate_hull() {
        assert!(hull(&[]).is_empty(), "nothing");
        assert_eq!(hull(&[DVec2::ONE; 3]), vec![DVec2::ONE], "one place");
        let line: Vec<_> = (0..5).map(|i| DVec2::splat(f64::from(i))).collect();
        assert_eq!(
            hull(&line),
            vec![DVec2::ZERO, DVec2::splat(4.0)],
            "the two ends"
        );
        assert_eq!(hull(&[DVec2::NAN, DVec2::ONE]), vec![DVec2::ONE], "no NaN");
    }
}
