//! The thin lens against textbook problems and against arithmetic from the
//! same formulas done apart.
use glam::DVec2;
use planner::optics::{
    Sensor, coverage, distance_for_width, image_distance, magnification, object_distance,
    sensor_to_object,
};

fn close(found: Option<f64>, expected: f64, tolerance: f64, what: &str) {
    let found = found.unwrap_or_else(|| panic!("{what}: no figure"));
    assert!(
        (found - expected).abs() <= tolerance,
        "{what}: found {found}, expected {expected} within {tolerance}"
    );
}

/// OpenStax, *College Physics* 25.6: a 50.0 mm lens 51.0 mm from the film.
#[test]
fn lens_drawn_out_by_a_millimetre() {
    close(object_distance(50.0, 51.0), 2550.0, 0.5, "object distance");
    close(magnification(50.0, 2550.0), 0.02, 5e-5, "magnification");
    close(
        magnification(50.0, 2550.0).map(|m| 20.0 / m),
        1000.0,
        0.5,
        "object of a 20 mm image",
    );
    close(
        sensor_to_object(50.0, 0.02),
        2601.0,
        0.5,
        "sensor to object, by arithmetic",
    );
}

/// Hecht, *Optics*, problem 5.14, and the same at 8 m.
#[test]
fn image_of_something_far() {
    close(image_distance(50.0, 10_000.0), 50.251, 5e-4, "at 10 m");
    close(image_distance(50.0, 8_000.0), 50.314, 5e-4, "at 8 m");
    close(magnification(50.0, 8_000.0), 0.0063, 5e-5, "at 8 m");
}

/// Full frame at 1.5 m, by arithmetic.
#[test]
fn coverage_at_a_metre_and_a_half() {
    close(magnification(50.0, 1500.0), 0.034_48, 5e-6, "50 mm");
    for (focal, width, height) in [
        (50.0, 1044.0, 696.0),
        (35.0, 1506.9, 1004.6),
        (24.0, 2214.0, 1476.0),
    ] {
        let seen = coverage(Sensor::FULL_FRAME.size(), focal, 1500.0);
        close(
            seen.map(|s| s.x),
            width,
            0.05,
            &format!("{focal} mm, width"),
        );
        close(
            seen.map(|s| s.y),
            height,
            0.05,
            &format!("{focal} mm, height"),
        );
    }
}

/// Distance for a wanted width, by arithmetic, to the millimetre.
#[test]
fn distance_for_five_widths() {
    let columns: [(Sensor, f64, [f64; 5]); 9] = [
        (
            Sensor::FULL_FRAME,
            24.0,
            [424.0, 624.0, 824.0, 1024.0, 1224.0],
        ),
        (
            Sensor::FULL_FRAME,
            35.0,
            [618.0, 910.0, 1202.0, 1493.0, 1785.0],
        ),
        (
            Sensor::FULL_FRAME,
            50.0,
            [883.0, 1300.0, 1717.0, 2133.0, 2550.0],
        ),
        (Sensor::APS_C, 24.0, [637.0, 943.0, 1250.0, 1556.0, 1862.0]),
        (Sensor::APS_C, 35.0, [929.0, 1375.0, 1822.0, 2269.0, 2716.0]),
        (
            Sensor::APS_C_SMALL,
            24.0,
            [670.0, 993.0, 1315.0, 1638.0, 1961.0],
        ),
        (
            Sensor::APS_C_SMALL,
            35.0,
            [977.0, 1448.0, 1918.0, 2389.0, 2860.0],
        ),
        (
            Sensor::FOUR_THIRDS,
            24.0,
            [856.0, 1273.0, 1689.0, 2105.0, 2521.0],
        ),
        (
            Sensor::MEDIUM,
            50.0,
            [735.0, 1077.0, 1420.0, 1762.0, 2105.0],
        ),
    ];
    for (sensor, focal, distances) in columns {
        for (width, expected) in [600.0, 900.0, 1200.0, 1500.0, 1800.0]
            .into_iter()
            .zip(distances)
        {
            let what = format!("{width} mm wide, {focal} mm on {} mm", sensor.width);
            close(
                distance_for_width(sensor.width, focal, width),
                expected,
                0.5,
                &what,
            );
        }
    }
    close(
        distance_for_width(36.0, 50.0, 1200.0),
        1716.7,
        0.05,
        "one more digit",
    );
}

/// Nothing sharp in front of the focal point.
#[test]
fn no_picture_too_close() {
    assert_eq!(
        coverage(DVec2::new(36.0, 24.0), 50.0, 50.0),
        None,
        "at the focal length"
    );
}
