//! A line traced over a photo made into the outline of a thing: closed,
//! without a crossing, in whole millimetres about its own middle.
use glam::DVec2;

use super::polygon::{edges, perimeter, signed_area};
use super::{Bounds, Region, area, thinned};
use crate::layout::{MAX_OUTLINE, Point};

/// How far the line is thinned, mm (our choice: with rounding to whole mm
/// nothing lies much over a millimetre off what was traced).
const THIN: f64 = 0.5;
/// Points nearer than this to the one before say nothing more, mm.
const STEP: f64 = 0.25;
/// Most points that go into the plane geometry.
const MOST: usize = 2_000;
/// Share of what the line goes round that may be left out as loops where it
/// runs over itself (our choice): a finger that closes its round a little late.
const LOOPS: f64 = 0.05;
/// Shortest and longest side of a traced thing, mm (our choice).
pub const TRACED_SIDES: [i32; 2] = [10, 2_000];
/// Narrowest it may be on average, mm: under it the points lie on a line.
const LEAST_BREADTH: f64 = 2.0;
/// Two marks nearer than this measure nothing, px.
const LEAST_MARKS: f64 = 8.0;

/// Why a line is no outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TraceFault {
    /// Fewer than three points, or not one of them a place.
    Few,
    /// The two marks lie together, or the length between them is none.
    Scale,
    /// It goes round nothing.
    Flat,
    /// It is smaller or larger than a thing on a table; so wide and deep, mm.
    Sides([i32; 2]),
    /// It crosses itself so that it is not one shape.
    Crosses,
}

/// Millimetres in a pixel, from two marks in a photo and the true length
/// between them, mm.
///
/// # Errors
/// When they measure nothing.
pub fn scale_of(marks: [DVec2; 2], length: f64) -> Result<f64, TraceFault> {
    let apart = marks[0].distance(marks[1]);
    let measured = apart >= LEAST_MARKS && length > 0.0;
    let scale = length / apart;
    if measured && scale.is_finite() && scale > 0.0 {
        Ok(scale)
    } else {
        Err(TraceFault::Scale)
    }
}

/// A stroke of the finger as the fewest points that keep it within
/// `tolerance`, without the end that runs up to its beginning again.
#[must_use]
pub fn stroke(line: &[DVec2], tolerance: f64) -> Vec<DVec2> {
    let mut points = thinned(&apart(line, tolerance), tolerance);
    while let [first, .., last] = points.as_slice()
        && points.len() > 3
        && first.distance(*last) < tolerance * 4.0
    {
        points.pop();
    }
    points
}

/// The outline of a thing from points traced round it in a photo and the
/// millimetres in a pixel. Its area is that within the traced line to within
/// 0.75 mm times its length, as far as rounding to whole millimetres can move
/// it; loops of up to a twentieth of it are left out.
///
/// # Errors
/// When there is no such outline.
pub fn traced(line: &[DVec2], scale: f64) -> Result<Vec<Point>, TraceFault> {
    if !(scale.is_finite() && scale > 0.0) {
        return Err(TraceFault::Scale);
    }
    let line: Vec<DVec2> = line.iter().map(|p| *p * scale).collect();
    let finite = line.iter().all(|p| p.is_finite());
    let bounds = Bounds::around(&line).filter(|_| finite && line.len() >= 3);
    let bounds = bounds.ok_or(TraceFault::Few)?;
    held(bounds.size())?;
    let middle = bounds.centre();
    let about: Vec<DVec2> = line.iter().map(|p| *p - middle).collect();
    let ring = outer(&apart(&about, STEP))?;
    if area(&ring) < bounds.size().max_element() * LEAST_BREADTH {
        return Err(TraceFault::Flat);
    }
    whole(fewer(&ring))
}

/// An outline larger or smaller by `factor`, its shape kept to the millimetre.
///
/// # Errors
/// When it would be too small or too large, or a part of it too thin.
pub fn scaled(points: &[Point], factor: f64) -> Result<Vec<Point>, TraceFault> {
    let ring: Vec<DVec2> = points.iter().map(|p| p.vec() * factor).collect();
    let bounds = Bounds::around(&ring).ok_or(TraceFault::Few)?;
    held(bounds.size())?;
    whole(ring)
}

/// Refuses what is smaller or larger than a thing on a table.
fn held(sides: DVec2) -> Result<(), TraceFault> {
    let [least, most] = TRACED_SIDES.map(f64::from);
    let longest = sides.max_element();
    if longest >= least && longest <= most {
        return Ok(());
    }
    Err(TraceFault::Sides(
        sides.to_array().map(|side| side.min(1e9) as i32),
    ))
}

/// The points at least `step` apart from each other along the line; farther
/// where there would be too many.
fn apart(line: &[DVec2], step: f64) -> Vec<DVec2> {
    let mut step = step;
    loop {
        let mut kept: Vec<DVec2> = Vec::new();
        for p in line {
            if kept.last().is_none_or(|last| last.distance(*p) >= step) {
                kept.push(*p);
            }
        }
        if kept.len() <= MOST {
            return kept;
        }
        step *= 2.0;
    }
}

/// The one ring round nearly all that the line goes round.
fn outer(line: &[DVec2]) -> Result<Vec<DVec2>, TraceFault> {
    let region = Region::from_polygon(line).map_err(|_| TraceFault::Few)?;
    let rings = region.rings();
    let all: f64 = rings.iter().map(|ring| area(ring)).sum();
    let largest = rings.iter().max_by(|a, b| area(a).total_cmp(&area(b)));
    let largest = largest.ok_or(TraceFault::Flat)?;
    if area(largest) < all * (1.0 - LOOPS) {
        return Err(TraceFault::Crosses);
    }
    Ok(largest.clone())
}

/// The ring thinned to the points a layout holds, and let out by what corners
/// left out of its curves took off its area.
fn fewer(ring: &[DVec2]) -> Vec<DVec2> {
    let mut tolerance = THIN;
    let mut thin = thinned(ring, tolerance);
    while thin.len() > MAX_OUTLINE {
        tolerance *= 1.25;
        thin = thinned(ring, tolerance);
    }
    let by = (signed_area(ring) - signed_area(&thin)) / perimeter(&thin).max(1.0);
    let n = thin.len();
    let normals: Vec<DVec2> = edges(&thin)
        .map(|(a, b)| -(b - a).perp().normalize_or_zero())
        .collect();
    let out = |i: usize| {
        // The side before a corner comes first among its two.
        let (before, after) = (normals[i], normals[(i + 1) % n]);
        // A sharp corner does not run away from its point.
        (before + after) / (1.0 + before.dot(after)).max(0.25)
    };
    (0..n).map(|i| thin[i] + out(i) * by).collect()
}

/// In whole millimetres about the middle. Where rounding lets two sides touch,
/// what they cut off is left out.
fn whole(ring: Vec<DVec2>) -> Result<Vec<Point>, TraceFault> {
    let mut ring = ring;
    let mut middle = Bounds::around(&ring).map_or(DVec2::ZERO, Bounds::centre);
    // Each round leaves out at least a corner where sides touched.
    for _ in 0..4 {
        let mut points: Vec<Point> = ring.iter().map(|p| Point::nearest(*p - middle)).collect();
        points.dedup();
        while points.len() > 1 && points.first() == points.last() {
            points.pop();
        }
        if is_simple(&points) {
            return Ok(points);
        }
        ring = outer(&points.iter().map(|p| p.vec()).collect::<Vec<_>>())?;
        // A half would round all of it outwards.
        middle = Bounds::around(&ring).map_or(DVec2::ZERO, |b| b.centre().round());
    }
    Err(TraceFault::Crosses)
}

/// Whether no two sides touch but at the corner they share; exact.
#[must_use]
pub fn is_simple(points: &[Point]) -> bool {
    let n = points.len();
    let side = |i: usize| (points[i % n], points[(i + 1) % n]);
    let folds = |i: usize| {
        let ((a, b), (_, c)) = (side(i), side(i + 1));
        a == b || (turn(a, b, c) == 0 && along(a, b, b, c) <= 0)
    };
    let meet = |i: usize, j: usize| {
        let ((a, b), (c, d)) = (side(i), side(j));
        let (s, t) = (turn(a, b, c).signum(), turn(a, b, d).signum());
        let (u, v) = (turn(c, d, a).signum(), turn(c, d, b).signum());
        let on = |a: Point, b: Point, p: Point| along(p, a, p, b) <= 0;
        (s * t < 0 && u * v < 0)
            || (s == 0 && on(a, b, c))
            || (t == 0 && on(a, b, d))
            || (u == 0 && on(c, d, a))
            || (v == 0 && on(c, d, b))
    };
    n >= 3
        && !(0..n).any(folds)
        && !(0..n).any(|i| (i + 2..n).any(|j| (j + 1) % n != i && meet(i, j)))
}

/// From one place to another.
fn way(from: Point, to: Point) -> [i64; 2] {
    [(to.x, from.x), (to.y, from.y)].map(|(to, from)| i64::from(to) - i64::from(from))
}

/// Twice the area of a triangle, by the way it turns.
fn turn(a: Point, b: Point, c: Point) -> i64 {
    let ([x, y], [u, v]) = (way(a, b), way(a, c));
    x * v - y * u
}

/// How far two ways go the same way.
fn along(a: Point, b: Point, c: Point, d: Point) -> i64 {
    let ([x, y], [u, v]) = (way(a, b), way(c, d));
    x * u + y * v
}

#[cfg(test)]
mod tests;
