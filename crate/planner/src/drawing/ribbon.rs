//! Ink lines as filled ribbons whose width follows the light.

use core::f64::consts::TAU;

use glam::DVec2;

use super::path::PathData;
use crate::figure::outline::normals;

/// Width of an outline where its outward normal makes `facing` = n·s with the
/// way shadows fall; `wave` in [-1, 1] is the hand's unsteadiness.
///
/// The line swells away from the window and thins towards it.
pub(super) fn ink_width(weight: f64, facing: f64, wave: f64) -> f64 {
    weight * (0.62 + 0.75 * facing.max(0.0) - 0.18 * (-facing).max(0.0) + 0.12 * wave)
}

/// The ink outline of a smooth loop through `points`.
pub(super) fn outline(points: &[DVec2], weight: f64, fall: DVec2, phase: f64) -> PathData {
    let [outer, inner] = edges(points, weight, fall, phase);
    let mut path = PathData::default();
    path.smooth(outer.into_iter());
    path.smooth(inner.into_iter().rev());
    path
}

/// The ink outline of a loop that keeps its corners and straight sides.
pub(super) fn cornered(points: &[DVec2], weight: f64, fall: DVec2) -> PathData {
    let mut path = PathData::default();
    for edge in edges(points, weight, fall, 0.0) {
        path.polygon(edge.into_iter());
    }
    path
}

/// The two edges of an ink outline round `points`: three fifths of the width
/// outside, two fifths inside.
fn edges(points: &[DVec2], weight: f64, fall: DVec2, phase: f64) -> [Vec<DVec2>; 2] {
    let mut outer = Vec::with_capacity(points.len());
    let mut inner = Vec::with_capacity(points.len());
    for (i, (&p, n)) in points.iter().zip(normals(points)).enumerate() {
        // Whole waves round the loop, so that the end meets the beginning.
        let waves = (points.len() as f64 / 9.0).ceil();
        let wave = libm::sin(phase + TAU * waves * i as f64 / points.len() as f64);
        let width = ink_width(weight, n.dot(fall), wave);
        outer.push(p + n * width * 0.6);
        inner.push(p - n * width * 0.4);
    }
    [outer, inner]
}

/// The side of a loop turned from the window, up to `depth` mm in: to be filled
/// even-odd.
pub(super) fn shade(points: &[DVec2], fall: DVec2, depth: f64) -> PathData {
    let inner = points.iter().zip(normals(points)).map(|(&p, n)| {
        let away = n.dot(fall).max(0.0);
        p - n * (depth * away)
    });
    let inner: Vec<DVec2> = inner.collect();
    let mut path = PathData::default();
    path.smooth(points.iter().copied());
    path.smooth(inner.into_iter().rev());
    path
}

/// A stroke of a loaded brush along an open row: `weight` wide in the middle,
/// `ends` of that at its two ends.
pub(super) fn stroke(points: &[DVec2], weight: f64, ends: [f64; 2]) -> PathData {
    let n = points.len();
    let mut path = PathData::default();
    if n < 2 {
        return path;
    }
    let mut left = Vec::with_capacity(n);
    let mut right = Vec::with_capacity(n);
    for (i, &p) in points.iter().enumerate() {
        let along = points[(i + 1).min(n - 1)] - points[i.saturating_sub(1)];
        let across = along.normalize_or_zero().perp();
        let u = i as f64 / (n - 1) as f64;
        let start = ends[0] + (1.0 - ends[0]) * u * 4.0;
        let end = ends[1] + (1.0 - ends[1]) * (1.0 - u) * 3.0;
        let half = 0.5 * weight * start.min(end).min(1.0);
        left.push(p + across * half);
        right.push(p - across * half);
    }
    right.reverse();
    path.open(&left);
    path.line_to(right[0]);
    path.onward(&right);
    path.close();
    path
}

#[cfg(test)]
mod tests {
    use glam::dvec2;

    use super::*;

    #[test]
    fn width_swells_away_from_the_window() {
        let cases = [(1.0, 1.37), (0.0, 0.62), (-1.0, 0.44), (0.5, 0.995)];
        for (facing, width) in cases {
            let got = ink_width(2.0, facing, 0.0);
            assert!((got - 2.0 * width).abs() < 1e-12, "n·s = {facing}: {got}");
        }
        let unsteady = ink_width(1.0, 0.0, 1.0) - ink_width(1.0, 0.0, -1.0);
        assert!((unsteady - 0.24).abs() < 1e-12, "the hand adds ±0.12");
    }

    #[test]
    fn a_stroke_of_one_point_is_nothing() {
        let path = stroke(&[dvec2(1.0, 1.0)], 2.0, [0.2, 0.2]);
        assert!(path.is_empty(), "one point has no direction");
    }
}
