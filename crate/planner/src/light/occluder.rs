//! What stands in the light: piles of level, convex sections.
use glam::{DVec2, DVec3};

use crate::layout::Id;
use crate::shape::{area, hull, is_convex, thinned, triangulate};

/// Outlines are thinned by as little as this share of their reach before they
/// throw a shadow, and by no more than the second figure, mm. Our choice: the
/// shadow's edge is blurred far wider.
const THINNED: [f64; 2] = [0.008, 2.0];
const FEW: usize = 8;

/// A solid between level sections, each one outline scaled about one axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Occluder {
    /// Whose it is.
    pub owner: Id,
    /// The bottom of the stack that stands in: its own when it stands free.
    pub stack: Id,
    /// Its convex parts about the axis.
    parts: Vec<Vec<DVec2>>,
    /// Its axis.
    pub(super) axis: DVec2,
    /// Its reach about the axis, at its widest.
    pub(super) reach: f64,
    /// Heights and scales, the lowest first.
    levels: Vec<[f64; 2]>,
}

impl Occluder {
    /// A solid of an outline at each of these heights, scaled about `axis`;
    /// the heights climb. A single level is a plate. `None` without area.
    #[must_use]
    pub fn new(owner: Id, outline: &[DVec2], axis: DVec2, levels: Vec<[f64; 2]>) -> Option<Self> {
        let own: Vec<DVec2> = outline.iter().map(|p| *p - axis).collect();
        let far = |points: &[DVec2]| points.iter().map(|p| p.length()).fold(0.0, f64::max);
        // What has few corners needs them all.
        let thin = if own.len() > FEW {
            // Corners left out are made up for in area.
            let thin = thinned(&own, (far(&own) * THINNED[0]).min(THINNED[1]));
            let lost = (area(&own) / area(&thin).max(f64::MIN_POSITIVE)).sqrt();
            thin.into_iter()
                .map(|p| p * lost.clamp(1.0, 1.02))
                .collect()
        } else {
            own.clone()
        };
        let parts: Vec<Vec<DVec2>> = if is_convex(&thin) {
            vec![thin]
        } else {
            triangulate(&thin).into_iter().map(|t| t.to_vec()).collect()
        };
        let widest = levels.iter().map(|l| l[1]).fold(0.0, f64::max);
        let reach = far(&own) * widest;
        (reach > 0.0 && !parts.is_empty()).then_some(Self {
            owner,
            stack: owner,
            parts,
            axis,
            reach,
            levels,
        })
    }

    /// The same in a stack.
    #[must_use]
    pub fn in_stack(self, stack: Id) -> Self {
        Self { stack, ..self }
    }

    /// Its top.
    #[must_use]
    pub fn top(&self) -> f64 {
        self.levels.last().map_or(0.0, |l| l[0])
    }

    /// Whether a place lies inside the solid, under its top.
    #[must_use]
    pub fn holds(&self, place: DVec3) -> bool {
        let Some(scale) = self.scale_at(place.z) else {
            return false;
        };
        let own = place.truncate() - self.axis;
        let inside = |part: &Vec<DVec2>| {
            let scaled: Vec<DVec2> = part.iter().map(|p| *p * scale).collect();
            crate::shape::contains(&scaled, own)
        };
        own.length() < self.reach && self.parts.iter().any(inside)
    }

    /// How wide it is at a height between its foot and its top.
    fn scale_at(&self, z: f64) -> Option<f64> {
        let pair = self
            .levels
            .windows(2)
            .find(|w| w[0][0] <= z && z < w[1][0])?;
        let share = (z - pair[0][0]) / (pair[1][0] - pair[0][0]);
        Some(pair[0][1] + (pair[1][1] - pair[0][1]) * share)
    }

    /// Its convex solids above a height, each as a lower and an upper ring of
    /// corners that answer each other.
    pub(super) fn solids(&self, floor: f64, each: &mut dyn FnMut(&[DVec3], &[DVec3])) {
        let ring = |part: &[DVec2], [z, scale]: [f64; 2], out: &mut Vec<DVec3>| {
            out.clear();
            out.extend(part.iter().map(|p| (self.axis + *p * scale).extend(z)));
        };
        let (mut low, mut high) = (Vec::new(), Vec::new());
        if let [only] = self.levels[..] {
            for part in self.parts.iter().filter(|_| only[0] > floor) {
                ring(part, only, &mut low);
                each(&low, &low);
            }
            return;
        }
        for pair in self.levels.windows(2) {
            if pair[1][0] <= floor {
                continue;
            }
            let foot = match self.scale_at(floor) {
                Some(scale) if pair[0][0] < floor => [floor, scale],
                _ => pair[0],
            };
            for part in &self.parts {
                ring(part, foot, &mut low);
                ring(part, pair[1], &mut high);
                each(&low, &high);
            }
        }
    }

    /// Its level sections above a height: what can be looked through where it
    /// is the inside of a vessel.
    pub(super) fn sections_above(&self, floor: f64, each: &mut dyn FnMut(&[DVec3])) {
        let mut ring = Vec::new();
        for [z, scale] in self.levels.iter().filter(|level| level[0] > floor) {
            for part in &self.parts {
                ring.clear();
                ring.extend(part.iter().map(|p| (self.axis + *p * *scale).extend(*z)));
                each(&ring);
            }
        }
    }

    /// An upright sheet from the table up: its foot from end to end.
    #[must_use]
    pub fn sheet(owner: Id, ends: [DVec2; 2], thick: f64, height: f64) -> Option<Self> {
        let axis = (ends[0] + ends[1]) * 0.5;
        let side = (ends[1] - ends[0]).normalize_or_zero().perp() * (thick * 0.5);
        let corners = [
            ends[0] - side,
            ends[1] - side,
            ends[1] + side,
            ends[0] + side,
        ];
        Self::new(
            owner,
            &hull(&corners),
            axis,
            vec![[0.0, 1.0], [height, 1.0]],
        )
    }
}
