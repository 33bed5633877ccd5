//! How far places of the picture are from what an exposure adds.
use glam::DVec2;

use crate::optics::Pixels;
use crate::shape::Region;

/// A side of an outline.
#[derive(Clone, Copy, Debug)]
pub(super) struct Side {
    from: DVec2,
    by: DVec2,
    /// One over its length squared; 0 for a point.
    per: f64,
}

impl Side {
    fn new(from: DVec2, to: DVec2) -> Self {
        let by = to - from;
        let long = by.length_squared();
        let per = if long > 0.0 { 1.0 / long } else { 0.0 };
        Self { from, by, per }
    }

    /// Its distance from a place, squared.
    fn away(&self, p: DVec2) -> f64 {
        let off = p - self.from;
        let t = (off.dot(self.by) * self.per).clamp(0.0, 1.0);
        (off - self.by * t).length_squared()
    }
}

/// The least distance from some sides; without any, infinite.
pub(super) fn nearest(sides: &[Side], p: DVec2) -> f64 {
    let mut least = f64::INFINITY;
    for side in sides {
        least = least.min(side.away(p));
    }
    least.sqrt()
}

/// What an exposure adds, in mm of the picture from its top left corner.
#[derive(Clone, Debug)]
pub(super) struct Zone {
    sides: Vec<Side>,
}

impl Zone {
    pub(super) fn of(solid: &Region, pixels: &Pixels) -> Self {
        let at = |p: DVec2| pixels.pixel(p) / pixels.per_mm();
        let mut sides = Vec::new();
        for ring in solid.rings() {
            for (n, p) in ring.iter().enumerate() {
                sides.push(Side::new(at(*p), at(ring[(n + 1) % ring.len()])));
            }
        }
        Self { sides }
    }

    /// How far a place is from the outline, less than 0 inside it.
    pub(super) fn signed(&self, p: DVec2) -> f64 {
        let mut inside = false;
        for side in &self.sides {
            let (a, b) = (side.from, side.from + side.by);
            if (a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) * side.by.x / side.by.y {
                inside = !inside;
            }
        }
        let away = nearest(&self.sides, p);
        if inside { -away } else { away }
    }

    /// The sides that come within `reach` of a place.
    pub(super) fn near(&self, p: DVec2, reach: f64) -> Vec<Side> {
        let reach = reach * reach;
        let near = self.sides.iter().filter(|s| s.away(p) <= reach);
        near.copied().collect()
    }
}
