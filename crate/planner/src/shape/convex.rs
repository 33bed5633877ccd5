//! Convex polygons: whether one is, and their Minkowski sum.

use glam::DVec2;

use super::polygon::edges;

/// Whether the polygon is positive, convex and goes round once; points in the
/// middle of a straight side are allowed, repeated points are not.
#[must_use]
pub fn is_convex(polygon: &[DVec2]) -> bool {
    if polygon.len() < 3 {
        return false;
    }
    let sides: Vec<DVec2> = edges(polygon).map(|(a, b)| b - a).collect();
    let last = sides[sides.len() - 1];
    let pairs = || {
        std::iter::once(last)
            .chain(sides.iter().copied())
            .zip(sides.iter().copied())
    };
    // A star also turns one way throughout; it changes its heading more often.
    let flips = |of: fn(DVec2) -> f64| {
        let signs: Vec<bool> = sides
            .iter()
            .map(|s| of(*s))
            .filter(|c| *c != 0.0)
            .map(|c| c > 0.0)
            .collect();
        signs
            .iter()
            .zip(signs.iter().cycle().skip(1))
            .filter(|(a, b)| a != b)
            .count()
    };
    sides.iter().all(|s| *s != DVec2::ZERO)
        && pairs().all(|(a, b)| a.perp_dot(b) > 0.0 || (a.perp_dot(b) == 0.0 && a.dot(b) > 0.0))
        && flips(|s| s.x) <= 2
        && flips(|s| s.y) <= 2
}

/// Minkowski sum of two positive convex polygons: every point of one added to
/// every point of the other. Empty when either is.
///
/// Both polygons are merged side by side in order of direction, from their
/// topmost point on.
#[must_use]
pub fn convex_sum(a: &[DVec2], b: &[DVec2]) -> Vec<DVec2> {
    if a.is_empty() || b.is_empty() {
        return Vec::new();
    }
    let (first_a, first_b) = (lowest(a), lowest(b));
    let at = |p: &[DVec2], first: usize, i: usize| p[(first + i) % p.len()];
    let (mut i, mut j) = (0, 0);
    let mut sum = Vec::with_capacity(a.len() + b.len());
    while i < a.len() || j < b.len() {
        let (pa, pb) = (at(a, first_a, i), at(b, first_b, j));
        sum.push(pa + pb);
        let side_a = at(a, first_a, i + 1) - pa;
        let side_b = at(b, first_b, j + 1) - pb;
        let turn = side_a.perp_dot(side_b);
        if j == b.len() || (i < a.len() && turn > 0.0) {
            i += 1;
        } else if i == a.len() || turn < 0.0 {
            j += 1;
        } else {
            i += 1;
            j += 1;
        }
    }
    sum
}

/// Index of the point with the least y, then the least x.
fn lowest(polygon: &[DVec2]) -> usize {
    let by_y = |&i: &usize, &j: &usize| {
        let (p, q) = (polygon[i], polygon[j]);
        p.y.total_cmp(&q.y).then(p.x.total_cmp(&q.x))
    };
    (0..polygon.len()).min_by(by_y).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shape::{Bounds, CHORD_ERROR, disc, hull, rect, signed_area};

    #[test]
    fn convexity_needs_one_turn_the_positive_way() {
        let square = rect(DVec2::ZERO, DVec2::ONE, 0.0, 30.0, CHORD_ERROR);
        assert!(is_convex(&square), "a turned square");
        let mut reversed = square.clone();
        reversed.reverse();
        assert!(!is_convex(&reversed), "negative");
        let star: Vec<_> = (0..5)
            .map(|i| super::super::rotation(f64::from(i) * 144.0))
            .collect();
        assert!(!is_convex(&star), "a pentagram goes round twice");
        assert!(is_convex(&disc(DVec2::ONE, 40.0, CHORD_ERROR)), "a disc");
        let dart = [(0.0, 0.0), (4.0, 0.0), (1.0, 1.0), (0.0, 4.0)].map(DVec2::from);
        assert!(!is_convex(&dart), "a dart");
        let spike = [(0.0, 0.0), (4.0, 0.0), (2.0, 0.0), (0.0, 0.0)].map(DVec2::from);
        assert!(!is_convex(&spike), "there and back");
        assert!(!is_convex(&[DVec2::ZERO, DVec2::X]), "a line");
    }

    #[test]
    fn sum_of_two_boxes_is_the_bigger_box() {
        let a = rect(
            DVec2::new(10.0, 0.0),
            DVec2::new(4.0, 2.0),
            0.0,
            0.0,
            CHORD_ERROR,
        );
        let b = rect(
            DVec2::new(0.0, 5.0),
            DVec2::new(6.0, 8.0),
            0.0,
            0.0,
            CHORD_ERROR,
        );
        let sum = convex_sum(&a, &b);
        let bounds = Bounds::around(&sum).expect("points");
        assert_eq!(bounds.size(), DVec2::new(10.0, 10.0), "sizes add");
        assert_eq!(bounds.centre(), DVec2::new(10.0, 5.0), "places add");
        assert_eq!(sum.len(), 4, "parallel sides are merged: {sum:?}");
    }

    #[test]
    fn sum_is_the_hull_of_all_sums() {
        let a = disc(DVec2::new(3.0, 1.0), 20.0, 0.5);
        let b = rect(DVec2::ZERO, DVec2::new(30.0, 7.0), 2.0, 23.0, 0.1);
        let all: Vec<_> = a
            .iter()
            .flat_map(|p| b.iter().map(move |q| *p + *q))
            .collect();
        let (sum, hull) = (signed_area(&convex_sum(&a, &b)), signed_area(&hull(&all)));
        assert!((sum - hull).abs() < 1e-9 * hull, "{sum} against {hull}");
    }

    #[test]
    fn sum_with_nothing_is_nothing() {
        assert!(convex_sum(&[], &[DVec2::ONE]).is_empty(), "empty");
        assert_eq!(
            convex_sum(&[DVec2::ONE], &[DVec2::ONE]),
            vec![DVec2::splat(2.0)],
            "points"
        );
    }
}
