//! The thin lens at close distance. Distances are from the front principal
//! point, which real lenses do not mark, and lenses that focus inside grow
//! shorter close up: allow about 5 % (from memory). Distortion is left out.
//! OpenStax, *College Physics* 25.6, gives the formulas.
use glam::DVec2;

/// Image size over object size of a lens of focal length `focal` at `distance`
/// from the object, both mm; `None` unless `distance` > `focal` > 0.
#[must_use]
pub fn magnification(focal: f64, distance: f64) -> Option<f64> {
    let m = focal / (distance - focal);
    (focal > 0.0 && distance > focal && m.is_finite()).then_some(m)
}

/// What a sensor of `sensor` mm sees of a plane at `distance` mm, in mm.
/// `None` as for [`magnification`].
#[must_use]
pub fn coverage(sensor: DVec2, focal: f64, distance: f64) -> Option<DVec2> {
    magnification(focal, distance).map(|m| sensor / m)
}

/// Distance in mm at which a sensor `sensor_width` mm wide sees `width` mm;
/// `None` unless all are positive and finite.
#[must_use]
pub fn distance_for_width(sensor_width: f64, focal: f64, width: f64) -> Option<f64> {
    let distance = focal * (1.0 + width / sensor_width);
    let positive = sensor_width > 0.0 && focal > 0.0 && width > 0.0;
    (positive && distance.is_finite()).then_some(distance)
}

/// Distance in mm from the rear principal point to the sharp image.
/// `None` as for [`magnification`].
#[must_use]
pub fn image_distance(focal: f64, distance: f64) -> Option<f64> {
    magnification(focal, distance).map(|m| focal * (1.0 + m))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn coverage_and_distance_undo_each_other() {
        for width in [1.0, 600.0, 2400.0] {
            let distance = distance_for_width(36.0, 35.0, width).expect("positive");
            let seen = coverage(DVec2::new(36.0, 24.0), 35.0, distance).expect("in front");
            assert!(
                (seen.x - width).abs() < 1e-9 * width,
                "{width} came back as {}",
                seen.x
            );
            assert!(
                (seen.y - width / 1.5).abs() < 1e-9 * width,
                "same shape as the sensor"
            );
        }
    }

    #[test]
    fn life_size_is_at_two_focal_lengths_on_either_side() {
        assert_eq!(
            magnification(50.0, 100.0),
            Some(1.0),
            "at twice the focal length"
        );
        assert_eq!(
            image_distance(50.0, 100.0),
            Some(100.0),
            "as far behind as in front"
        );
    }

    #[test]
    fn no_image_from_within_the_focal_length() {
        for (focal, distance) in [
            (50.0, 50.0),
            (50.0, 20.0),
            (0.0, 100.0),
            (-50.0, 100.0),
            (f64::NAN, 100.0),
            (50.0, f64::NAN),
            (f64::INFINITY, f64::INFINITY),
        ] {
            assert_eq!(
                magnification(focal, distance),
                None,
                "{focal} at {distance}"
            );
            assert_eq!(
                image_distance(focal, distance),
                None,
                "{focal} at {distance}"
            );
            assert_eq!(
                coverage(DVec2::ONE, focal, distance),
                None,
                "{focal} at {distance}"
            );
        }
    }

    #[test]
    fn no_distance_for_no_width() {
        for width in [0.0, -5.0, f64::NAN, f64::INFINITY] {
            assert_eq!(distance_for_width(36.0, 50.0, width), None, "width {width}");
        }
        assert_eq!(distance_for_width(0.0, 50.0, 100.0), None, "no sensor");
    }
}
