//! How deep the picture is sharp.
//!
//! Thin lens and blur disc: a point prints as sharp when its disc on the sensor,
//! `(f/N)·|v_d − v_s|/v_d`, is no larger than `c`. The limits below follow
//! exactly; distances are from the lens. Diffraction after Hecht, *Optics*
//! (from memory). All lengths in mm.

/// The f-numbers lenses are marked with, in tenths: thirds of a stop, as they
/// are commonly rounded.
pub const STOPS: [i32; 31] = [
    10, 11, 12, 14, 16, 18, 20, 22, 25, 28, 32, 35, 40, 45, 50, 56, 63, 71, 80, 90, 100, 110, 130,
    140, 160, 180, 200, 220, 250, 290, 320,
];

/// Distances between which things are sharp; `far` is infinite from the
/// hyperfocal distance on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sharp {
    /// Nearest.
    pub near: f64,
    /// Farthest.
    pub far: f64,
}

/// The hyperfocal distance of a lens of focal length `focal` at f-number
/// `stop`: focused there, all is sharp from half of it on.
#[must_use]
pub fn hyperfocal(focal: f64, stop: f64, blur: f64) -> f64 {
    focal * focal / (stop * blur) + focal
}

/// What is sharp when focused at `distance`; `None` unless that is in front of
/// the focal point and everything is positive and finite.
#[must_use]
pub fn depth_of_field(focal: f64, stop: f64, blur: f64, distance: f64) -> Option<Sharp> {
    let sound = focal > 0.0 && stop > 0.0 && blur > 0.0 && distance > focal;
    let h = hyperfocal(focal, stop, blur);
    if !sound || !h.is_finite() || !distance.is_finite() {
        return None;
    }
    let near = distance * (h - focal) / (h + distance - 2.0 * focal);
    let far = if distance >= h {
        f64::INFINITY
    } else {
        distance * (h - focal) / (h - distance)
    };
    Some(Sharp { near, far })
}

/// Where to focus, and the f-number that then makes `near` and `far` just
/// sharp. `None` unless `focal` < `near` ≤ `far` and all is finite.
#[must_use]
pub fn focus_for(focal: f64, blur: f64, near: f64, far: f64) -> Option<(f64, f64)> {
    let sound = focal > 0.0 && blur > 0.0 && near > focal && far >= near && far.is_finite();
    if !sound {
        return None;
    }
    let distance = 2.0 * near * far / (near + far);
    let stop = focal * focal * (far - near) / (blur * (distance - focal) * (far + near));
    stop.is_finite().then_some((distance, stop))
}

/// Diameter of the disc a point is spread into by the aperture alone, to its
/// first dark ring, in green light of 550 nm.
#[must_use]
pub fn airy(stop: f64, magnification: f64) -> f64 {
    2.44 * 550e-6 * stop * (1.0 + magnification)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn focused_between_two_limits_both_are_just_sharp() {
        let (distance, stop) = focus_for(50.0, 0.03, 1300.0, 1700.0).expect("sound");
        let sharp = depth_of_field(50.0, stop, 0.03, distance).expect("sound");
        assert!((sharp.near - 1300.0).abs() < 1e-6, "{sharp:?}");
        assert!((sharp.far - 1700.0).abs() < 1e-6, "{sharp:?}");
    }

    #[test]
    fn nothing_to_hold_needs_no_stopping_down() {
        let (distance, stop) = focus_for(50.0, 0.03, 1500.0, 1500.0).expect("sound");
        assert_eq!((distance, stop), (1500.0, 0.0));
    }

    #[test]
    fn beyond_the_hyperfocal_distance_it_is_sharp_for_ever() {
        let h = hyperfocal(24.0, 16.0, 0.03);
        let sharp = depth_of_field(24.0, 16.0, 0.03, h).expect("sound");
        assert!(sharp.far.is_infinite(), "{sharp:?}");
        assert!((sharp.near - h / 2.0).abs() < 1e-6, "half of it: {sharp:?}");
    }

    #[test]
    fn there_is_no_answer_to_a_senseless_question() {
        for (focal, stop, blur, distance) in [
            (50.0, 8.0, 0.03, 50.0),
            (50.0, 0.0, 0.03, 1500.0),
            (50.0, 8.0, 0.0, 1500.0),
            (f64::NAN, 8.0, 0.03, 1500.0),
            (50.0, 8.0, 0.03, f64::INFINITY),
        ] {
            assert_eq!(depth_of_field(focal, stop, blur, distance), None);
        }
        for (near, far) in [(40.0, 1500.0), (1500.0, 1400.0), (1500.0, f64::INFINITY)] {
            assert_eq!(focus_for(50.0, 0.03, near, far), None, "{near} to {far}");
        }
    }
}
