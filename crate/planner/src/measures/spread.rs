//! How evenly mass lies in the two halves of a picture, and in all its cells.

use glam::DVec2;

use super::balance::has_area;
use crate::shape::{Region, area_on_side};

/// An area and how heavily each part of it weighs.
#[derive(Clone, Copy, Debug)]
pub struct SpreadMass<'a> {
    /// The visible area, within the picture, in the picture's axes.
    pub region: &'a Region,
    /// Mass per unit of area.
    pub density: f64,
}

/// Preference for balance: eight sub-measures, each 0 (even) to 100, of how
/// unlike in mass two equal halves of the picture are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// Left against right.
    pub left_right: f64,
    /// Top against bottom.
    pub top_bottom: f64,
    /// Either side of the diagonal from the top left.
    pub falling: f64,
    /// Either side of the diagonal from the top right.
    pub rising: f64,
    /// Middle half of the width against the two outer quarters.
    pub columns: f64,
    /// Middle half of the height against the two outer quarters.
    pub rows: f64,
    /// The band along the falling diagonal against the two corners.
    pub along_falling: f64,
    /// The band along the rising diagonal against the two corners.
    pub along_rising: f64,
}

impl Spread {
    /// APB, the mean of the eight: 0 for balanced and evenly spread, 50 for
    /// one disc in the very middle.
    #[must_use]
    pub fn apb(&self) -> f64 {
        (self.left_right
            + self.top_bottom
            + self.falling
            + self.rising
            + self.columns
            + self.rows
            + self.along_falling
            + self.along_rising)
            / 8.0
    }

    /// Spread score S2, the complement of [`Spread::apb`].
    #[must_use]
    pub fn score(&self) -> f64 {
        100.0 - self.apb()
    }
}

/// Assessment of preference for balance by exact areas instead of pixels;
/// `None` without a picture or without mass.
///
/// Wilson & Chatterjee (2005), *Empirical Studies of the Arts* 23(2):165–180,
/// doi:10.2190/B1LR-MVF3-F36X-XR64, by the procedure published with Redies et
/// al. (2025), doi:10.3758/s13428-025-02632-3. In a picture that is not square
/// the diagonals run from corner to corner (our choice): u = x / width,
/// v = y / height.
#[must_use]
pub fn spread(size: DVec2, masses: &[SpreadMass]) -> Option<Spread> {
    if !has_area(size) {
        return None;
    }
    let total = masses
        .iter()
        .map(|m| m.density * m.region.area())
        .sum::<f64>();
    if !(total > 0.0 && total.is_finite()) {
        return None;
    }
    let (u, v) = (DVec2::X / size.x, DVec2::Y / size.y);
    let side = |normal, offset| mass_on_side(masses, normal, offset) / total;
    let halves = |normal, offset| unlike(side(normal, offset));
    let band = |normal, from, to| unlike(side(normal, to) - side(normal, from));
    // A band along a diagonal covers half the picture when each corner outside
    // it has legs of 1/sqrt 2.
    let legs = 1.0 - std::f64::consts::FRAC_1_SQRT_2;
    let spread = Spread {
        left_right: halves(u, 0.5),
        top_bottom: halves(v, 0.5),
        falling: halves(u - v, 0.0),
        rising: halves(u + v, 1.0),
        columns: band(u, 0.25, 0.75),
        rows: band(v, 0.25, 0.75),
        along_falling: band(u - v, -legs, legs),
        along_rising: band(u + v, 1.0 - legs, 1.0 + legs),
    };
    spread.apb().is_finite().then_some(spread)
}

/// Percent by which a share differs from the rest.
fn unlike(share: f64) -> f64 {
    (2.0 * share - 1.0).abs() * 100.0
}

fn mass_on_side(masses: &[SpreadMass], normal: DVec2, offset: f64) -> f64 {
    let area = |region: &Region| -> f64 {
        region
            .rings()
            .iter()
            .map(|ring| area_on_side(ring, normal, offset))
            .sum()
    };
    masses.iter().map(|m| m.density * area(m.region)).sum()
}

/// Homogeneity, 0 to 100: how evenly the area fills ten columns and ten rows
/// of the picture, as the mean of two entropies. `None` without a picture or
/// without area.
///
/// Hübner & Fillinger (2016), by the procedure published with Redies et al.
/// (2025). Every region counts alike, whatever its density, as the original
/// counts black pixels.
#[must_use]
pub fn homogeneity(size: DVec2, regions: &[&Region]) -> Option<f64> {
    if !has_area(size) {
        return None;
    }
    let masses: Vec<SpreadMass> = regions
        .iter()
        .map(|region| SpreadMass {
            region,
            density: 1.0,
        })
        .collect();
    let columns = entropy(&strips(&masses, DVec2::X / size.x))?;
    let rows = entropy(&strips(&masses, DVec2::Y / size.y))?;
    Some((columns + rows) * 50.0)
}

const STRIPS: usize = 10;

/// Area in each of ten equal strips across the picture.
fn strips(masses: &[SpreadMass], normal: DVec2) -> [f64; STRIPS] {
    let mut before = 0.0;
    std::array::from_fn(|i| {
        let upto = mass_on_side(masses, normal, (i + 1) as f64 / STRIPS as f64);
        let strip = (upto - before).max(0.0);
        before = upto;
        strip
    })
}

/// Entropy as a share of the greatest possible.
fn entropy(strips: &[f64; STRIPS]) -> Option<f64> {
    let total: f64 = strips.iter().sum();
    let terms = strips.iter().map(|s| s / total).filter(|p| *p > 0.0);
    let sum: f64 = terms.map(|p| -p * libm::log(p)).sum();
    (total > 0.0 && total.is_finite()).then(|| sum / libm::log(STRIPS as f64))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shape::{Bounds, CHORD_ERROR, disc};

    const SIZE: DVec2 = DVec2::new(1000.0, 800.0);

    fn boxed(x0: f64, y0: f64, x1: f64, y1: f64) -> Region {
        let corners = Bounds {
            min: DVec2::new(x0, y0),
            max: DVec2::new(x1, y1),
        }
        .corners();
        Region::from_polygon(&corners).expect("a box")
    }

    #[test]
    fn full_picture_is_even() {
        let all = boxed(0.0, 0.0, SIZE.x, SIZE.y);
        let even = spread(
            SIZE,
            &[SpreadMass {
                region: &all,
                density: 2.0,
            }],
        )
        .expect("mass");
        assert!(even.apb().abs() < 1e-9, "no half differs: {even:?}");
        let full = homogeneity(SIZE, &[&all]).expect("area");
        assert!((full - 100.0).abs() < 1e-9, "all strips alike: {full}");
    }

    #[test]
    fn left_half_is_all_left() {
        let left = boxed(0.0, 0.0, 500.0, SIZE.y);
        let found = spread(
            SIZE,
            &[SpreadMass {
                region: &left,
                density: 1.0,
            }],
        )
        .expect("mass");
        assert!((found.left_right - 100.0).abs() < 1e-9, "left: {found:?}");
        assert!(
            found.top_bottom.abs() < 1e-9,
            "top and bottom alike: {found:?}"
        );
        assert!(
            (found.falling - 50.0).abs() < 1e-9,
            "three quarters below: {found:?}"
        );
    }

    #[test]
    fn disc_in_the_middle_is_balanced_and_not_spread() {
        let disc = disc(SIZE * 0.5, 60.0, CHORD_ERROR);
        let disc = Region::from_polygon(&disc).expect("a disc");
        let found = spread(
            SIZE,
            &[SpreadMass {
                region: &disc,
                density: 1.0,
            }],
        )
        .expect("mass");
        assert!(
            (found.apb() - 50.0).abs() < 1e-6,
            "four halves alike, four not: {found:?}"
        );
        assert!((found.score() - 50.0).abs() < 1e-6, "the complement");
    }

    #[test]
    fn nothing_is_not_spread() {
        assert_eq!(spread(SIZE, &[]), None, "no masses");
        assert_eq!(homogeneity(SIZE, &[]), None, "no areas");
        let disc = boxed(0.0, 0.0, 1.0, 1.0);
        for density in [0.0, f64::NAN, f64::INFINITY] {
            assert_eq!(
                spread(
                    SIZE,
                    &[SpreadMass {
                        region: &disc,
                        density
                    }]
                ),
                None,
                "{density}"
            );
        }
        let region = Region::empty();
        assert_eq!(homogeneity(SIZE, &[&region]), None, "an empty area");
        assert_eq!(homogeneity(DVec2::ZERO, &[&disc]), None, "no picture");
    }
}
