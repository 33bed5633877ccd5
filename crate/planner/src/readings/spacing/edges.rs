//! A thing against the edge of something convex it lies on or beside.
use glam::DVec2;

use crate::shape::signed_area;

/// How an outline lies to a convex edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Lies {
    /// How far inside its outermost place is, mm; negative is outside.
    pub(super) least: f64,
    /// How far inside its innermost place is, mm.
    pub(super) most: f64,
    /// The outermost place and the place on the edge nearest to it.
    pub(super) outermost: [DVec2; 2],
    /// The innermost place, likewise.
    pub(super) innermost: [DVec2; 2],
}

/// How far inside a convex outline each corner of `thing` lies: the distance
/// to the nearest side's line, which for a place inside is the distance to the
/// edge itself. `None` when either has no corners.
pub(super) fn lies(thing: &[DVec2], edge: &[DVec2]) -> Option<Lies> {
    let turn = signed_area(edge).signum();
    let sides: Vec<(DVec2, DVec2)> = (0..edge.len())
        .map(|n| (edge[n], edge[(n + 1) % edge.len()] - edge[n]))
        .filter(|(_, side)| side.length_squared() > 0.0)
        .map(|(a, side)| (a, side.normalize().perp() * turn))
        .collect();
    let mut found: Option<Lies> = None;
    for p in thing {
        let depths = sides
            .iter()
            .map(|(a, inward)| ((*p - *a).dot(*inward), *inward));
        let (depth, inward) = depths.min_by(|a, b| a.0.total_cmp(&b.0))?;
        let place = [*p, *p - inward * depth];
        let lies = found.get_or_insert(Lies {
            least: depth,
            most: depth,
            outermost: place,
            innermost: place,
        });
        if depth < lies.least {
            (lies.least, lies.outermost) = (depth, place);
        }
        if depth > lies.most {
            (lies.most, lies.innermost) = (depth, place);
        }
    }
    found
}
