//! The thin lens against textbook problems and against arithmetic from the
//! same formulas done apart.
use glam::DVec2;
use planner::layout::{Layout, LayoutId, open};
use planner::optics::{
    SENSORS, Sensor, View, airy, coverage, depth_of_field, distance_for_width, focus_for,
    hyperfocal, image_distance, magnification,
};
use planner::readings::{Finding, State, Study, report};

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
    close(image_distance(50.0, 2550.0), 51.0, 5e-5, "image distance");
    close(magnification(50.0, 2550.0), 0.02, 5e-5, "magnification");
    close(
        magnification(50.0, 2550.0).map(|m| 20.0 / m),
        1000.0,
        0.5,
        "object of a 20 mm image",
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

/// An encyclopaedia's example and US Army course SS0507, *Depth of field*: the
/// plain f²/(N·c), one focal length less than the lens's own; near limit half
/// of the distance when focused there. Two more by arithmetic.
#[test]
fn hyperfocal_distances() {
    let h = hyperfocal(50.0, 8.0, 0.03);
    close(Some(h), 10_467.0, 0.5, "with the focal length");
    close(Some(h - 50.0), 10_417.0, 0.5, "without");
    let sharp = depth_of_field(50.0, 8.0, 0.03, h);
    close(sharp.map(|s| s.near), 5_233.0, 0.5, "half of it");
    assert!(sharp.is_some_and(|s| s.far.is_infinite()), "for ever");
    let foot = 12.0;
    let h = hyperfocal(2.0, 8.0, 0.002) - 2.0;
    close(Some(h / foot), 20.8, 0.05, "2 in at f/8, in feet");
    let near = depth_of_field(2.0, 8.0, 0.002, h + 2.0).map(|s| s.near / foot);
    close(
        near,
        10.4,
        0.1,
        "its near limit: half of the plain figure and 1 in",
    );
    for (focal, stop, plain) in [(35.0, 8.0, 5_104.2), (24.0, 11.0, 1_745.5)] {
        let h = hyperfocal(focal, stop, 0.03) - focal;
        close(Some(h), plain, 0.05, &format!("{focal} mm at f/{stop}"));
    }
}

/// Exact limits by arithmetic, and against the usual close-up form
/// 2·N·c·(m + 1)/m² (Ray, *Applied Photographic Optics*, from memory), which
/// leaves out a term of 2%.
#[test]
fn depth_of_field_at_a_metre_and_a_half() {
    for (focal, blur, near, far) in [
        (50.0, 0.03, 1_316.7, 1_742.6),
        (25.0, 0.015, 1_169.0, 2_092.6),
    ] {
        let sharp = depth_of_field(focal, 8.0, blur, 1_500.0);
        close(sharp.map(|s| s.near), near, 0.05, "near");
        close(sharp.map(|s| s.far), far, 0.05, "far");
    }
    let sharp = depth_of_field(50.0, 8.0, 0.03, 1_500.0).expect("sound");
    close(Some(sharp.far - sharp.near), 425.9, 0.05, "total");
    let m = magnification(50.0, 1_500.0).expect("in front");
    let usual = 2.0 * 8.0 * 0.03 * (m + 1.0) / (m * m);
    close(
        Some(usual),
        sharp.far - sharp.near,
        0.025 * 425.9,
        "the usual form",
    );
}

/// The blur disc itself, worked out from image distances: both limits reach
/// just the blur allowed, to 1e-9 of it, for every sensor.
#[test]
fn at_the_limits_the_blur_disc_is_just_what_is_allowed() {
    for sensor in SENSORS {
        let blur = sensor.sharp_blur();
        for (focal, near, far) in [
            (24.0, 700.0, 1_000.0),
            (50.0, 1_300.0, 1_700.0),
            (85.0, 2_000.0, 2_250.0),
        ] {
            let (distance, stop) = focus_for(focal, blur, near, far).expect("sound");
            let image = |s: f64| focal * s / (s - focal);
            for limit in [near, far] {
                let disc = focal / stop * (image(limit) - image(distance)).abs() / image(limit);
                close(
                    Some(disc / blur),
                    1.0,
                    1e-9,
                    &format!("{focal} mm at {limit}"),
                );
            }
        }
    }
}

/// Hecht, *Optics* (from memory): first dark ring at 550 nm, far away, µm.
#[test]
fn airy_discs() {
    for (stop, expected) in [
        (5.6, 7.5),
        (8.0, 10.7),
        (11.0, 14.8),
        (16.0, 21.5),
        (22.0, 29.5),
    ] {
        close(
            Some(airy(stop, 0.0) * 1e3),
            expected,
            0.05,
            &format!("f/{stop}"),
        );
    }
    close(Some(airy(8.0, 0.0) * 1e3), 10.74, 0.005, "f/8");
}

/// Relief displacement: Hicks, *Handbook of Civil Engineering Calculations*,
/// fig. 30 (flying height 2269 m, radii 71.68 and 76.61 mm, tower 146 m), and
/// two survey problems (50 m at 1250 m and 6.35 cm: 0.254 cm; 7.2 of 100 mm at
/// 1000 m: 72 m). Last by arithmetic: a wine glass 24 cm high, 60 cm off.
#[test]
fn leans() {
    let lean = |height: f64, z: f64, radius: f64| {
        let view = View::Lens {
            under: DVec2::ZERO,
            height,
        };
        view.project(DVec2::new(radius, 0.0), z).x - radius
    };
    close(
        Some(71.68 + lean(2_269.0, 146.0, 71.68)),
        76.61,
        0.05,
        "the tower",
    );
    close(Some(lean(1_250.0, 50.0, 6.35 - 0.254)), 0.254, 5e-4, "50 m");
    close(Some(lean(1_000.0, 72.0, 100.0 - 7.2)), 7.2, 5e-4, "72 m");
    close(Some(lean(1_500.0, 240.0, 600.0)), 114.0, 0.5, "from 1.5 m");
    close(Some(lean(2_200.0, 240.0, 600.0)), 73.0, 0.5, "from 2.2 m");
}

/// What the planner says of one printed crop, so many mm of a frame 1050 mm
/// wide of 3:2.
fn printed(pixels: [i32; 2], print: [i32; 2], width: i32) -> Finding {
    let text = Layout::empty(LayoutId(1)).to_json();
    let mut layout = open(&text).expect("opens");
    layout.camera.pixels = Some(pixels);
    let mut file: serde_json::Value = serde_json::from_str(&layout.to_json()).expect("JSON");
    let at = [layout.frame.at.x, layout.frame.at.y];
    file["next_id"] = 10.into();
    file["crops"] = serde_json::json!([{
        "id": 9, "name": "page", "print": print, "at": at, "width": width
    }]);
    let layout = open(&file.to_string()).expect("opens");
    let said = report(&Study::new(&layout), false).findings;
    let found = said.into_iter().find(|f| f.key == "crops:9:size");
    found.expect("the size is told")
}

/// Publishers' pages on paper sizes: A4 at 300 ppi is 2480 × 3508 pixels, a
/// double page with bleed of 17.0 × 11.125 in 5100 × 3338, prints being in
/// whole mm (6 pixels). 3200 pixels on 8 in are 400 ppi, 9504 on 17.0 in 559,
/// 0.5% for the same reason. One arc-minute is 300 ppi at 11.46 in, 291 at 30
/// cm: told in whole cm.
#[test]
fn pixels_and_inches() {
    let a4 = printed([6_000, 4_000], [210, 297], 420);
    assert!(a4.working[1].contains("2480 × 3508"), "{:?}", a4.working);
    let double = printed([6_000, 4_000], [432, 283], 1_050);
    assert!(
        double.working[1].contains("5102 × 3343"),
        "{:?}",
        double.working
    );
    assert!(
        (double.figure - 352.9).abs() < 0.5,
        "24 MP: {}",
        double.figure
    );
    let post = printed([6_000, 4_000], [203, 254], 560);
    assert!((post.figure - 400.0).abs() < 2.0, "{}", post.figure);
    let wide = printed([9_504, 6_336], [432, 288], 1_050);
    assert!((wide.figure - 559.0).abs() < 1.0, "{}", wide.figure);
    let just = printed([5_100, 3_400], [432, 288], 1_050);
    assert!(
        just.working[1].contains("from 29 cm"),
        "11.46 in: {:?}",
        just.working
    );
    assert_eq!(just.state, State::LookAgain, "299.9: {}", just.sentence);
}
