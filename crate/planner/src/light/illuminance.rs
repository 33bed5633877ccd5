//! How much light of a source reaches a surface, nothing standing in its way.
//!
//! A flat, evenly bright source that sheds light by the cosine law lights a
//! small surface with normal n by L/2·Σ θᵢ·(gᵢ·n) over its sides: θᵢ the angle
//! under which side i is seen, gᵢ the unit normal of the plane through the side
//! and the surface (Lambert, *Photometria*, 1760). What lies under the
//! surface's own plane is cut off first. A disc is a polygon of equal area.
use core::f64::consts::TAU;

use glam::DVec3;

use super::Source;
use crate::layout::LightShape;

/// Corners a disc is given.
const CORNERS: usize = 48;

/// Light on a surface at `place` with this unit normal, for a source of
/// luminance 1: π under an even sky. Never negative, always finite; nothing
/// behind the source's face.
#[must_use]
pub fn illuminance(source: &Source, place: DVec3, normal: DVec3) -> f64 {
    if (place - source.centre).dot(source.facing) <= 0.0 {
        return 0.0;
    }
    let corners = above(&corners(source), place, normal);
    let mut sum = 0.0;
    for (n, a) in corners.iter().enumerate() {
        let b = corners[(n + 1) % corners.len()];
        let across = a.cross(b);
        let wide = across.length();
        if wide > 0.0 {
            sum += libm::atan2(wide, a.dot(b)) / wide * across.dot(normal);
        }
    }
    let lit = 0.5 * sum.abs();
    if lit.is_finite() { lit } else { 0.0 }
}

/// Light in stops over a reference; `None` where either is dark.
#[must_use]
pub fn stops(light: f64, reference: f64) -> Option<f64> {
    (light > 0.0 && reference > 0.0).then(|| libm::log2(light / reference))
}

/// The outline of a source.
fn corners(source: &Source) -> Vec<DVec3> {
    match source.shape {
        LightShape::Window => [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
            .map(|(u, v)| source.point(u, v))
            .to_vec(),
        LightShape::Disc => {
            let step = TAU / CORNERS as f64;
            // The corners stand a little out, so that the area is the disc's.
            let out = (step / libm::sin(step)).sqrt();
            let corner = |n: usize| {
                let (sin, cos) = libm::sincos(step * n as f64);
                source.point(cos * out, sin * out)
            };
            (0..CORNERS).map(corner).collect()
        }
    }
}

/// The part of a polygon above the surface's plane, seen from the place.
fn above(corners: &[DVec3], place: DVec3, normal: DVec3) -> Vec<DVec3> {
    let mut out = Vec::with_capacity(corners.len() + 1);
    for (n, corner) in corners.iter().enumerate() {
        let (a, b) = (*corner - place, corners[(n + 1) % corners.len()] - place);
        let (high, next) = (a.dot(normal), b.dot(normal));
        if high >= 0.0 {
            out.push(a);
        }
        if (high > 0.0 && next < 0.0) || (high < 0.0 && next > 0.0) {
            out.push(a + (b - a) * (high / (high - next)));
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use core::f64::consts::PI;

    use glam::dvec3;

    use super::*;

    fn overhead(shape: LightShape, half: f64, above: f64) -> Source {
        Source {
            centre: dvec3(0.0, 0.0, above),
            facing: -DVec3::Z,
            across: DVec3::X * half,
            up: DVec3::Y * half,
            shape,
        }
    }

    #[test]
    fn a_surface_turned_away_or_behind_the_source_is_dark() {
        let source = overhead(LightShape::Disc, 500.0, 1000.0);
        assert!(illuminance(&source, DVec3::ZERO, DVec3::Z) > 0.0);
        assert_eq!(illuminance(&source, DVec3::ZERO, -DVec3::Z), 0.0);
        assert_eq!(illuminance(&source, DVec3::Z * 2000.0, DVec3::Z), 0.0);
        assert_eq!(illuminance(&source, source.centre, DVec3::Z), 0.0);
    }

    #[test]
    fn right_under_a_huge_source_it_is_as_light_as_under_the_sky() {
        let source = overhead(LightShape::Window, 1e6, 100.0);
        let lit = illuminance(&source, DVec3::ZERO, DVec3::Z);
        assert!((lit - PI).abs() < 1e-3, "{lit}");
    }

    #[test]
    fn a_surface_that_sees_half_a_source_loses_what_lies_under_it() {
        let source = overhead(LightShape::Window, 400.0, 1000.0);
        let upright = illuminance(&source, DVec3::ZERO, DVec3::X);
        // Half of the source is cut off by the surface's own plane.
        let mut right = source;
        right.centre.x = 200.0;
        right.across = DVec3::X * 200.0;
        let half = illuminance(&right, DVec3::ZERO, DVec3::X);
        assert!((upright - half).abs() < 1e-12, "{upright} and {half}");
    }

    #[test]
    fn stops_are_doublings_and_darkness_has_none() {
        assert_eq!(stops(4.0, 1.0), Some(2.0));
        assert_eq!(stops(0.0, 1.0), None);
        assert_eq!(stops(1.0, 0.0), None);
    }
}
