//! Where the rim or shoulder of a round thing catches the light.
//!
//! A rolled rim or a round shoulder is taken as part of a ring of round
//! section: its outer half has a normal for every direction upward and outward,
//! so the light shows where the normal halves the angle between light and lens.
//! No more is claimed than that place: real glass throws many lights.
use glam::{DVec2, DVec3};

/// Rounds until the place stands still to under a tenth of a millimetre.
const ROUNDS: usize = 4;

/// The place on a ring about `centre`, `radius` to the middle of its section
/// of radius `tube`, where a lens sees a light mirrored; none when the light
/// stands so that no side is the nearer one, or below the ring.
#[must_use]
pub fn catches(centre: DVec3, radius: f64, tube: f64, lens: DVec3, light: DVec3) -> Option<DVec3> {
    let mut at = centre;
    for _ in 0..ROUNDS {
        let ways = (light - at).normalize_or_zero() + (lens - at).normalize_or_zero();
        let normal = ways.normalize_or_zero();
        let out = normal.truncate().normalize_or(DVec2::ZERO);
        if normal.z <= 0.0 || out == DVec2::ZERO || light.z <= centre.z {
            return None;
        }
        at = centre + out.extend(0.0) * radius + normal * tube;
    }
    at.is_finite().then_some(at)
}

#[cfg(test)]
mod tests {
    use super::*;
    use glam::dvec3;

    /// Against every direction of the ring tried one by one.
    #[test]
    fn the_place_is_where_angle_in_is_angle_out() {
        let (centre, lens) = (dvec3(300.0, 100.0, 90.0), dvec3(0.0, 0.0, 1400.0));
        for light in [
            dvec3(-800.0, -500.0, 900.0),
            dvec3(1500.0, 200.0, 400.0),
            dvec3(300.0, 900.0, 2000.0),
        ] {
            let found = catches(centre, 38.0, 4.0, lens, light).expect("caught");
            let mut best = (f64::INFINITY, DVec3::ZERO);
            for n in 0..720 {
                for m in 0..180 {
                    let (s, c) = libm::sincos(f64::from(n).to_radians() * 0.5);
                    let (up, out) = libm::sincos(f64::from(m).to_radians() * 0.5);
                    let normal = dvec3(c * out, s * out, up);
                    let at = centre + dvec3(c, s, 0.0) * 38.0 + normal * 4.0;
                    let ways = (light - at).normalize() + (lens - at).normalize();
                    let off = libm::acos(ways.normalize().dot(normal).clamp(-1.0, 1.0));
                    if off < best.0 {
                        best = (off, at);
                    }
                }
            }
            let apart = best.1.distance(found);
            assert!(apart < 1.0, "{light}: {apart} mm from {}", best.1);
        }
    }

    #[test]
    fn a_light_straight_over_the_lens_or_below_the_rim_is_caught_nowhere() {
        let over = dvec3(0.0, 0.0, 1400.0);
        let far = dvec3(0.0, 0.0, 2000.0);
        assert_eq!(catches(DVec3::ZERO, 40.0, 4.0, over, far), None, "over");
        let low = dvec3(900.0, 0.0, -10.0);
        assert_eq!(catches(DVec3::ZERO, 40.0, 4.0, over, low), None, "below");
        assert_eq!(catches(DVec3::NAN, 40.0, 4.0, over, far), None, "nowhere");
    }
}
