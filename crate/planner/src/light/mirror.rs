//! A level mirror under a lens.
//!
//! Angle in equals angle out: behind a level surface at height `s` every point
//! at height `z` has its image at `2s − z`, and the lens sees it through the
//! place where the straight line to that image meets the surface. With the
//! lens `a` above the surface and the point `b`, that place lies `a/(a + b)` of
//! the way from under the lens to under the point.
use glam::{DVec2, DVec3};

/// Refraction of what lies on tables: water and what is cooked in it. Glass and
/// glaze are 1.5 and mirror 4% straight down instead of 2%.
pub const WATER: f64 = 1.33;

/// A level surface that mirrors, and the lens over it. Lengths in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mirror {
    /// The place under the lens.
    pub under: DVec2,
    /// The lens above the surface.
    pub above: f64,
    /// The surface above the table.
    pub level: f64,
}

impl Mirror {
    /// The surface at a height under a lens at another; none unless the lens
    /// stands above it.
    #[must_use]
    pub fn under_lens(under: DVec2, lens: f64, level: f64) -> Option<Self> {
        let above = lens - level;
        let sound = above > 1.0 && above.is_finite() && level.is_finite() && under.is_finite();
        sound.then_some(Self {
            under,
            above,
            level,
        })
    }

    /// Where on the surface a point at or above it is mirrored.
    #[must_use]
    pub fn place(&self, p: DVec3) -> DVec2 {
        let share = self.above / (self.above + (p.z - self.level).max(0.0));
        self.under + (p.truncate() - self.under) * share
    }

    /// Where a flat outline in space is mirrored: what of it stands above the
    /// surface, from the places that lie on the side it faces.
    #[must_use]
    pub fn patch(&self, outline: &[DVec3], facing: Option<(DVec3, DVec3)>) -> Vec<DVec2> {
        let above = clipped(outline, |p| p.z - self.level);
        let places: Vec<DVec3> = above
            .iter()
            .map(|p| self.place(*p).extend(self.level))
            .collect();
        let seen = match facing {
            Some((at, way)) => clipped(&places, |p| (*p - at).dot(way)),
            None => places,
        };
        seen.iter().map(|p| p.truncate()).collect()
    }

    /// Cosine of the angle off upright at which the lens meets a place.
    #[must_use]
    pub fn upright(&self, place: DVec2) -> f64 {
        self.above / libm::hypot(self.above, place.distance(self.under))
    }
}

/// What of a convex outline has a positive `side` (Sutherland and Hodgman
/// 1974, against one plane).
pub(super) fn clipped(outline: &[DVec3], side: impl Fn(&DVec3) -> f64) -> Vec<DVec3> {
    let mut out = Vec::with_capacity(outline.len() + 2);
    for (n, b) in outline.iter().enumerate() {
        let a = &outline[(n + outline.len() - 1) % outline.len()];
        let (from, to) = (side(a), side(b));
        if (from > 0.0) != (to > 0.0) {
            out.push(a.lerp(*b, from / (from - to)));
        }
        if to > 0.0 {
            out.push(*b);
        }
    }
    out
}

/// Shares that a dielectric mirrors of light met at this cosine off upright,
/// across and along the plane of incidence (Fresnel, in any optics textbook).
#[must_use]
pub fn fresnel(cosine: f64, index: f64) -> [f64; 2] {
    let cos = cosine.clamp(0.0, 1.0);
    let inner = (1.0 - (1.0 - cos * cos) / (index * index)).sqrt();
    let share = |a: f64, b: f64| ((a - b) / (a + b)) * ((a - b) / (a + b));
    [share(cos, index * inner), share(index * cos, inner)]
}

#[cfg(test)]
mod tests {
    use super::*;
    use glam::{dvec2, dvec3};

    #[test]
    fn the_lens_itself_is_mirrored_right_under_it_at_half_its_size() {
        let mirror = Mirror::under_lens(dvec2(10.0, 20.0), 1500.0, 90.0).expect("above");
        assert_eq!(mirror.place(dvec3(10.0, 20.0, 1500.0)), dvec2(10.0, 20.0));
        assert_eq!(mirror.place(dvec3(80.0, 20.0, 1500.0)), dvec2(45.0, 20.0));
    }

    /// A light 70 cm off the lens that reaches from 100 to 200 cm, the lens at
    /// 160 cm: seen between 31 and 43 cm (by angle in and angle out).
    #[test]
    fn an_upright_light_is_mirrored_in_a_band() {
        let mirror = Mirror::under_lens(DVec2::ZERO, 1600.0, 0.0).expect("above");
        for (z, at) in [(2000.0, 311.0), (1000.0, 431.0)] {
            let seen = mirror.place(dvec3(700.0, 0.0, z));
            assert!((seen.x - at).abs() < 1.0, "{z}: {seen}");
        }
    }

    #[test]
    fn what_lies_below_the_surface_or_behind_the_light_mirrors_nothing() {
        let mirror = Mirror::under_lens(DVec2::ZERO, 1600.0, 100.0).expect("above");
        let sheet = |z: f64| [(-1.0, z), (1.0, z), (1.0, z + 50.0), (-1.0, z + 50.0)];
        let at = |x: f64, z: f64| sheet(z).map(|(y, z)| dvec3(x, y * 200.0, z));
        assert!(mirror.patch(&at(500.0, 20.0), None).is_empty(), "below");
        assert_eq!(mirror.patch(&at(500.0, 80.0), None).len(), 4, "in part");
        let back = Some((dvec3(500.0, 0.0, 200.0), DVec3::X));
        assert!(mirror.patch(&at(500.0, 200.0), back).is_empty(), "behind");
        assert!(mirror.patch(&[], None).is_empty(), "nothing");
        for lens in [100.0, 50.0, f64::NAN, f64::INFINITY] {
            assert_eq!(Mirror::under_lens(DVec2::ZERO, lens, 100.0), None, "{lens}");
        }
    }

    /// Water mirrors 2.0% straight down and glass 4.0%; at Brewster's angle
    /// (53.1° for water) nothing of the one polarisation.
    #[test]
    fn little_is_mirrored_straight_down_and_unpolarised() {
        for (index, share) in [(WATER, 0.0200), (1.5, 0.0400)] {
            let [across, along] = fresnel(1.0, index);
            assert!((across - share).abs() < 1e-4 && (across - along).abs() < 1e-12);
        }
        let brewster = libm::cos(libm::atan(WATER));
        assert!(fresnel(brewster, WATER)[1] < 1e-12, "all across");
        assert!((fresnel(0.0, WATER)[0] - 1.0).abs() < 1e-9, "grazing");
    }
}
