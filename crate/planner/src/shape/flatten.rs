//! Curves and turned rectangles as polygons, as fine as asked for.

use std::f64::consts::{FRAC_PI_4, PI};

use glam::DVec2;

/// How far a flattened curve may lie from the true one, mm. Our choice: a
/// twentieth of a millimetre is a tenth of a pixel in a 24 MP frame 2 m wide.
pub const CHORD_ERROR: f64 = 0.05;

/// Most straight pieces in a quarter turn, whatever the size and tolerance.
const QUARTER_LIMIT: usize = 256;

/// Cosine and sine of a turn in degrees, exact at every quarter, so that a
/// table turned by 90° keeps whole millimetres. On the y-down table a positive
/// turn is clockwise.
#[must_use]
pub fn rotation(degrees: f64) -> DVec2 {
    let quarters = (degrees / 90.0).round();
    let (sin, cos) = libm::sincos((degrees - quarters * 90.0).to_radians());
    match quarters.rem_euclid(4.0) as u8 {
        0 => DVec2::new(cos, sin),
        1 => DVec2::new(-sin, cos),
        2 => DVec2::new(-cos, -sin),
        _ => DVec2::new(sin, -cos),
    }
}

/// A polygon drawn about the origin, turned by `turn` degrees clockwise and
/// moved to `at`. The direction of its points is kept.
#[must_use]
pub fn placed(polygon: &[DVec2], at: DVec2, turn: f64) -> Vec<DVec2> {
    let rotation = rotation(turn);
    polygon.iter().map(|p| at + rotation.rotate(*p)).collect()
}

/// A disc about `centre`, all sizes in mm. See [`oval`].
#[must_use]
pub fn disc(centre: DVec2, radius: f64, tolerance: f64) -> Vec<DVec2> {
    oval(centre, DVec2::splat(radius * 2.0), 0.0, tolerance)
}

/// An ellipse `size` across about `centre`, turned by `turn` degrees
/// clockwise, nowhere more than `tolerance` from the true curve.
///
/// The corners stand a little outside the curve, so that the polygon has
/// exactly the ellipse's area and needs fewer points than one inside it; its
/// outermost points may therefore exceed `size` by the tolerance. A size that
/// is not positive or not finite gives no points.
#[must_use]
pub fn oval(centre: DVec2, size: DVec2, turn: f64, tolerance: f64) -> Vec<DVec2> {
    let half = size * 0.5;
    if !usable(half, tolerance) {
        return Vec::new();
    }
    // With n corners and t = pi/n, equal area puts the corners of the unit
    // disc at sqrt(2t / sin 2t), about t²/3 outside, and the sides' middles
    // t²/6 inside. 1.05 covers the terms left out down to eight corners.
    let steps = PI / (3.0 * tolerance / (1.05 * half.max_element())).sqrt();
    let quarter = ((steps / 4.0).ceil() as usize).clamp(2, QUARTER_LIMIT);
    let t = FRAC_PI_4 / quarter as f64;
    let reach = (2.0 * t / libm::sin(2.0 * t)).sqrt();
    let first = (0..quarter).map(|i| {
        let (sin, cos) = libm::sincos(2.0 * t * i as f64);
        DVec2::new(cos, sin) * reach
    });
    let round: Vec<DVec2> = quarters(&first.collect::<Vec<_>>())
        .map(|p| p * half)
        .collect();
    placed(&round, centre, turn)
}

/// A rectangle `size` across about `centre` with corners rounded to radius
/// `corner` (at most half the short side; 0 for sharp ones), turned by `turn`
/// degrees clockwise. Rounded corners are inscribed, at most `tolerance`
/// inside the true arc. A size that is not positive or not finite gives no
/// points.
#[must_use]
pub fn rect(centre: DVec2, size: DVec2, corner: f64, turn: f64, tolerance: f64) -> Vec<DVec2> {
    let half = size * 0.5;
    if !usable(half, tolerance) {
        return Vec::new();
    }
    let radius = corner.max(0.0).min(half.min_element());
    let inner = half - radius;
    let arc: Vec<DVec2> = if radius > 0.0 {
        let span = libm::acos((1.0 - tolerance / radius).max(-1.0));
        let steps = ((FRAC_PI_4 / span).ceil() as usize).clamp(1, QUARTER_LIMIT);
        (0..=steps)
            .map(|i| {
                // The far end is exact, so that sides stay straight.
                rotation(90.0 * i as f64 / steps as f64) * radius
            })
            .collect()
    } else {
        vec![DVec2::ZERO]
    };
    let signs = [(1.0, 1.0), (-1.0, 1.0), (-1.0, -1.0), (1.0, -1.0)].map(DVec2::from);
    let mut points: Vec<DVec2> = quarters(&arc)
        .enumerate()
        .map(|(i, p)| inner * signs[i / arc.len()] + p)
        .collect();
    points.dedup();
    if points.first() == points.last() {
        points.pop();
    }
    placed(&points, centre, turn)
}

fn usable(half: DVec2, tolerance: f64) -> bool {
    half.is_finite() && half.min_element() > 0.0 && tolerance > 0.0
}

/// A first quarter of points followed by the same turned by 90°, 180°, 270°:
/// exact turns, so that round things are exactly symmetric.
fn quarters(first: &[DVec2]) -> impl Iterator<Item = DVec2> + '_ {
    (0..4).flat_map(move |q| {
        first.iter().map(move |p| match q {
            0 => *p,
            1 => p.perp(),
            2 => -*p,
            _ => -p.perp(),
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shape::{Bounds, area, centroid, signed_area};

    #[test]
    fn disc_has_the_area_and_centre_of_a_disc() {
        for radius in [0.5, 0.93, 4.0, 125.0, 900.0] {
            let disc = disc(DVec2::new(30.0, -70.0), radius, CHORD_ERROR);
            let error = signed_area(&disc) / (PI * radius * radius) - 1.0;
            assert!(error.abs() < 1e-12, "radius {radius}: area off by {error}");
            let centre = centroid(&disc).expect("a disc has a middle");
            assert!(
                centre.distance(DVec2::new(30.0, -70.0)) < 1e-9,
                "centre {centre}"
            );
        }
    }

    #[test]
    fn dinner_plate_takes_few_points() {
        let points = disc(DVec2::ZERO, 135.0, CHORD_ERROR).len();
        assert!(
            (80..=100).contains(&points),
            "27 cm plate has {points} points"
        );
    }

    #[test]
    fn quarter_turns_are_exact() {
        for (turn, expected) in [
            (0.0, DVec2::X),
            (90.0, DVec2::Y),
            (180.0, -DVec2::X),
            (-90.0, -DVec2::Y),
        ] {
            assert_eq!(rotation(turn), expected, "at {turn} degrees");
        }
        let oblique = rotation(100.0);
        assert!(
            (libm::atan2(oblique.y, oblique.x).to_degrees() - 100.0).abs() < 1e-12,
            "100"
        );
    }

    #[test]
    fn sharp_rectangle_is_four_corners() {
        let rect = rect(
            DVec2::new(5.0, 5.0),
            DVec2::new(4.0, 2.0),
            0.0,
            90.0,
            CHORD_ERROR,
        );
        let bounds = Bounds::around(&rect).expect("four corners");
        assert_eq!(rect.len(), 4, "no rounding");
        assert_eq!(
            (bounds.min, bounds.max),
            (DVec2::new(4.0, 3.0), DVec2::new(6.0, 7.0)),
            "box"
        );
        assert_eq!(signed_area(&rect), 8.0, "positive");
    }

    #[test]
    fn rounded_rectangle_keeps_its_sides_and_loses_its_corners() {
        let rect = rect(DVec2::ZERO, DVec2::new(200.0, 100.0), 30.0, 0.0, 0.001);
        let bounds = Bounds::around(&rect).expect("points");
        assert_eq!(
            bounds.size(),
            DVec2::new(200.0, 100.0),
            "sides stay where they are"
        );
        let expected = 20_000.0 - (4.0 - PI) * 900.0;
        assert!(
            (area(&rect) - expected).abs() < 0.2,
            "{} against {expected}",
            area(&rect)
        );
    }

    #[test]
    fn corner_beyond_the_half_side_makes_a_round_end() {
        let round = rect(DVec2::ZERO, DVec2::splat(100.0), 999.0, 0.0, 0.001);
        assert!(
            (area(&round) - PI * 2500.0).abs() < 0.5,
            "a disc, got {}",
            area(&round)
        );
        let repeated = round.iter().zip(round.iter().skip(1)).any(|(a, b)| a == b);
        assert!(!repeated && round.first() != round.last(), "no point twice");
    }

    #[test]
    fn no_size_no_points() {
        for size in [
            DVec2::ZERO,
            DVec2::new(-1.0, 5.0),
            DVec2::splat(f64::NAN),
            DVec2::INFINITY,
        ] {
            assert!(
                oval(DVec2::ZERO, size, 0.0, CHORD_ERROR).is_empty(),
                "oval of {size}"
            );
            assert!(
                rect(DVec2::ZERO, size, 1.0, 0.0, CHORD_ERROR).is_empty(),
                "rect of {size}"
            );
        }
    }
}
