//! One level strip of a source and the light it sheds on a level surface.
use glam::DVec3;

use super::Source;
use crate::layout::LightShape;

/// Places along a strip at which the light it sheds is worked out.
const KNOTS: usize = 5;

/// A strip across a source as seen from a place.
#[derive(Clone, Copy, Debug)]
pub(super) struct Strip {
    /// How far it reaches to either side, in halves of the source.
    half: f64,
    /// Light shed from its beginning up to each knot.
    shed: [f64; KNOTS],
}

impl Strip {
    /// The strip at `v`, −1 to 1 from the lower to the upper edge.
    pub(super) fn of(source: &Source, place: DVec3, v: f64) -> Self {
        let half = Self::half_at(source, v);
        let mut shed = [0.0; KNOTS];
        let mut before = 0.0;
        for k in 0..KNOTS {
            let u = half * (2.0 * k as f64 / (KNOTS - 1) as f64 - 1.0);
            let ray = source.point(u, v) - place;
            let far = ray.length_squared().max(1.0);
            let light = ray.z.max(0.0) * -ray.dot(source.facing) / (far * far);
            if k > 0 {
                shed[k] = shed[k - 1] + (light + before) * half;
            }
            before = light;
        }
        Self { half, shed }
    }

    /// How far the strip at `v` reaches to either side, in halves of the source.
    pub(super) fn half_at(source: &Source, v: f64) -> f64 {
        match source.shape {
            LightShape::Window => 1.0,
            LightShape::Disc => (1.0 - v * v).max(0.0).sqrt(),
        }
    }

    /// A stretch cut to the strip; nothing when it lies beside it.
    pub(super) fn within(&self, [from, to]: [f64; 2]) -> Option<[f64; 2]> {
        let span = [from, to].map(|u| u.clamp(-self.half, self.half));
        (span[1] > span[0]).then_some(span)
    }

    /// The light of all of it.
    pub(super) const fn all(&self) -> f64 {
        self.shed[KNOTS - 1]
    }

    /// The light of these stretches of it, which are sorted for it.
    pub(super) fn of_stretches(&self, stretches: &mut [[f64; 2]]) -> f64 {
        // By both ends, so that the order of the things does not show.
        crate::order::sort(stretches, |a, b| {
            a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1]))
        });
        let (mut light, mut end) = (0.0, f64::NEG_INFINITY);
        for [from, to] in stretches {
            let from = from.max(end);
            if *to > from {
                light += self.shed_to(*to) - self.shed_to(from);
                end = *to;
            }
        }
        light
    }

    /// Light shed from its beginning up to a place on it.
    fn shed_to(&self, u: f64) -> f64 {
        if self.half <= 0.0 {
            return 0.0;
        }
        let at = (u / self.half + 1.0) * 0.5 * (KNOTS - 1) as f64;
        let k = (at.max(0.0) as usize).min(KNOTS - 2);
        let [a, b] = [self.shed[k], self.shed[k + 1]];
        a + (b - a) * (at - k as f64).clamp(0.0, 1.0)
    }
}
