//! What a visible part weighs in the picture, and where masses balance.

use glam::DVec2;

/// Least contrast anything weighs with, so that a white plate on a white cloth
/// still weighs something. Our choice; between 0 and 0.25 it changes nothing.
pub const CONTRAST_FLOOR: f64 = 0.10;
/// Weights of chroma against lightness between which the score is shown: none
/// (Hübner & Fillinger 2016), Moon & Spencer's (from memory), and HyAB's.
/// Nobody has calibrated it.
pub const CHROMA_WEIGHTS: [f64; 3] = [0.0, 0.25, 1.0];

/// A mass at a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PointMass {
    /// Where it acts.
    pub at: DVec2,
    /// How much, in any unit.
    pub mass: f64,
}

/// A visible part and what it is weighed by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weighed {
    /// Centre of its visible area.
    pub at: DVec2,
    /// Its visible area.
    pub area: f64,
    /// |ΔL*| to what lies just outside, weighted by outline length.
    pub delta_l: f64,
    /// Distance on the a*b* plane to what lies just outside, likewise.
    pub delta_c: f64,
    /// The user's emphasis, 1 for none.
    pub emphasis: f64,
}

impl Weighed {
    /// Its mass: area × contrast × emphasis.
    ///
    /// For greys on an even ground this is the lightness-contrast mass of
    /// Hübner & Fillinger, at equal contrasts it is area, and chroma adds
    /// weight (Alexander & Shansky 1976).
    #[must_use]
    pub fn mass(self, chroma_weight: f64) -> PointMass {
        let contrast = contrast(self.delta_l + chroma_weight * self.delta_c);
        PointMass {
            at: self.at,
            mass: self.area * contrast * self.emphasis,
        }
    }
}

/// What a difference of colour weighs, from the floor to 1.
#[must_use]
pub fn contrast(difference: f64) -> f64 {
    (difference / 100.0).clamp(CONTRAST_FLOOR, 1.0)
}

/// Centre of all masses; `None` when they add up to nothing.
#[must_use]
pub fn centroid(masses: &[PointMass]) -> Option<DVec2> {
    let total: f64 = masses.iter().map(|m| m.mass).sum();
    let moment: DVec2 = masses.iter().map(|m| m.at * m.mass).sum();
    let at = moment / total;
    (total > 0.0 && at.is_finite()).then_some(at)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn contrast_has_a_floor_and_a_ceiling() {
        assert_eq!(contrast(0.0), 0.10, "the floor");
        assert_eq!(contrast(35.0), 0.35, "in between");
        assert_eq!(contrast(140.0), 1.0, "the ceiling");
    }

    #[test]
    fn mass_is_area_times_contrast_times_emphasis() {
        let plate = Weighed {
            at: DVec2::ONE,
            area: 200.0,
            delta_l: 20.0,
            delta_c: 40.0,
            emphasis: 1.5,
        };
        for (weight, expected) in [(0.0, 60.0), (0.25, 90.0), (1.0, 180.0)] {
            let mass = plate.mass(weight).mass;
            assert!(
                (mass - expected).abs() < 1e-9,
                "chroma weight {weight}: {mass}"
            );
        }
    }

    #[test]
    fn centroid_is_the_lever_point() {
        let masses = [(0.0, 3.0), (8.0, 1.0)].map(|(x, mass)| PointMass {
            at: DVec2::new(x, 1.0),
            mass,
        });
        assert_eq!(
            centroid(&masses),
            Some(DVec2::new(2.0, 1.0)),
            "a quarter of the way"
        );
    }

    #[test]
    fn nothing_has_no_centroid() {
        let at = DVec2::ONE;
        assert_eq!(centroid(&[]), None, "no masses");
        for mass in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            assert_eq!(centroid(&[PointMass { at, mass }]), None, "mass {mass}");
        }
    }
}
