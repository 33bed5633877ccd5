//! Plain plane geometry on closed and open rows of points.

use core::f64::consts::TAU;

use glam::{DVec2, dvec2};

use crate::shape::hull;

/// The unit vector at `angle` radians from 3 o'clock, clockwise on the page.
pub(crate) fn polar(angle: f64) -> DVec2 {
    let (sin, cos) = libm::sincos(angle);
    dvec2(cos, sin)
}

/// The angle of `v`, radians clockwise from 3 o'clock.
pub(crate) fn bearing(v: DVec2) -> f64 {
    libm::atan2(v.y, v.x)
}

/// Points of an elliptical arc about `at` between two parameters, `steps`
/// pieces long.
pub(crate) fn arc(at: DVec2, half: DVec2, from: f64, to: f64, steps: usize) -> Vec<DVec2> {
    (0..=steps)
        .map(|i| at + half * polar(from + (to - from) * i as f64 / steps as f64))
        .collect()
}

/// A closed ellipse of `count` points.
pub(crate) fn ellipse(at: DVec2, half: DVec2, count: usize) -> Vec<DVec2> {
    let mut points = arc(at, half, 0.0, TAU, count);
    points.pop();
    points
}

/// `points` scaled, then turned by `turn` radians, then moved to `at`.
pub(crate) fn placed(points: &[DVec2], at: DVec2, turn: f64, scale: DVec2) -> Vec<DVec2> {
    let axis = polar(turn);
    points
        .iter()
        .map(|&p| at + axis.rotate(p * scale))
        .collect()
}

/// A row of points written in hundredths of `scale`.
pub(crate) fn table(hundredths: &[[i8; 2]], scale: DVec2) -> Vec<DVec2> {
    hundredths
        .iter()
        .map(|&[x, y]| dvec2(f64::from(x), f64::from(y)) / 100.0 * scale)
        .collect()
}

/// A row of points and its mirror image across the x axis, as one loop. The
/// row runs from one end of the axis to the other.
pub(crate) fn mirrored(hundredths: &[[i8; 2]], scale: DVec2) -> Vec<DVec2> {
    let mut points = table(hundredths, scale);
    for i in (1..hundredths.len() - 1).rev() {
        points.push(points[i] * dvec2(1.0, -1.0));
    }
    points
}

/// `points` drawn `factor` towards the point `about`, then moved by `shift`.
pub(crate) fn inset(points: &[DVec2], about: DVec2, factor: DVec2, shift: DVec2) -> Vec<DVec2> {
    points
        .iter()
        .map(|&p| about + (p - about) * factor + shift)
        .collect()
}

/// Signed area of a loop; positive where it runs clockwise on the page.
pub(crate) fn area(points: &[DVec2]) -> f64 {
    let mut sum = 0.0;
    let mut before = points.last().copied().unwrap_or_default();
    for &p in points {
        sum += before.perp_dot(p);
        before = p;
    }
    sum / 2.0
}

/// The middle of a row of points, each counted once.
pub(crate) fn middle(points: &[DVec2]) -> DVec2 {
    points.iter().sum::<DVec2>() / points.len().max(1) as f64
}

/// Outward unit normals of a loop at its corners.
pub(crate) fn normals(points: &[DVec2]) -> Vec<DVec2> {
    let side = if area(points) < 0.0 { -1.0 } else { 1.0 };
    let n = points.len();
    (0..n)
        .map(|i| {
            let along = points[(i + 1) % n] - points[(i + n - 1) % n];
            -along.perp().normalize_or_zero() * side
        })
        .collect()
}

/// The smallest and largest coordinates among `points`.
pub(crate) fn bounds(points: &[DVec2]) -> (DVec2, DVec2) {
    points
        .iter()
        .fold((DVec2::INFINITY, DVec2::NEG_INFINITY), |(low, high), &p| {
            (low.min(p), high.max(p))
        })
}

/// `count` points at equal steps along a row; closed rows return to the start,
/// open ones keep both ends.
pub(crate) fn resampled(points: &[DVec2], count: usize, closed: bool) -> Vec<DVec2> {
    let n = points.len();
    if n < 2 || count < 2 {
        return points.to_vec();
    }
    let sides = if closed { n } else { n - 1 };
    let mut reach = vec![0.0];
    for i in 0..sides {
        reach.push(reach[i] + points[i].distance(points[(i + 1) % n]));
    }
    let gaps = if closed { count } else { count - 1 };
    let mut side = 0;
    (0..count)
        .map(|i| {
            let s = reach[sides] * i as f64 / gaps as f64;
            while side + 1 < sides && reach[side + 1] < s {
                side += 1;
            }
            let length = reach[side + 1] - reach[side];
            let u = if length > 0.0 {
                ((s - reach[side]) / length).clamp(0.0, 1.0)
            } else {
                0.0
            };
            points[side].lerp(points[(side + 1) % n], u)
        })
        .collect()
}

/// How far a ray from `from` along the unit vector `along` reaches before it
/// last leaves `loop_`; 0 where it never meets it.
fn ray_reach(loop_: &[DVec2], from: DVec2, along: DVec2) -> f64 {
    let mut far: f64 = 0.0;
    let mut a = loop_.last().copied().unwrap_or_default();
    for &b in loop_ {
        let side = b - a;
        let turn = along.perp_dot(side);
        if turn != 0.0 {
            let t = (a - from).perp_dot(side) / turn;
            let u = (a - from).perp_dot(along) / turn;
            if (0.0..=1.0).contains(&u) {
                far = far.max(t);
            }
        }
        a = b;
    }
    far
}

/// One simple loop of `count` points around many pieces, drawn in between
/// them but never below `floor` of the way out to their hull.
pub(crate) fn wrapped(pieces: &[Vec<DVec2>], count: usize, floor: f64) -> Vec<DVec2> {
    let around = hull(&pieces.concat());
    let (low, high) = bounds(&around);
    let at = (low + high) / 2.0;
    let span = high - low;
    (0..count)
        .map(|i| {
            let along = (polar(TAU * i as f64 / count as f64) * span).normalize_or(DVec2::X);
            let outer = ray_reach(&around, at, along);
            let inner = pieces
                .iter()
                .map(|piece| ray_reach(piece, at, along))
                .fold(outer * floor, f64::max);
            at + along * inner
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn normals_point_outward_either_way_round() {
        let mut ring = ellipse(DVec2::ZERO, dvec2(3.0, 2.0), 12);
        for _ in 0..2 {
            for (p, n) in ring.iter().zip(normals(&ring)) {
                assert!(p.dot(n) > 0.0, "normal at {p} points inward");
            }
            ring.reverse();
        }
    }

    #[test]
    fn resampled_open_rows_keep_their_ends() {
        let row = resampled(&[DVec2::ZERO, DVec2::X, dvec2(1.0, 3.0)], 5, false);
        assert_eq!(row[0], DVec2::ZERO, "first point");
        assert_eq!(row[4], dvec2(1.0, 3.0), "last point");
        assert_eq!(row[1], DVec2::X, "steps of one");
    }

    #[test]
    fn wrapped_holds_every_piece_on_its_rays() {
        let pieces = [
            ellipse(dvec2(-3.0, 0.0), DVec2::ONE, 16),
            ellipse(dvec2(3.0, 0.0), DVec2::ONE, 16),
        ];
        let around = wrapped(&pieces, 48, 0.86);
        assert!((around[0].x - 4.0).abs() < 0.05, "reaches the right piece");
        assert!(around[12].y < 1.0, "draws in between the pieces");
    }
}
