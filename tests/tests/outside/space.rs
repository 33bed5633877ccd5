//! The largest empty places against a brute-force search over rasters and
//! grids (tests/reference/generate_space.py), and contrast of type against
//! published values.
use glam::{DVec2, dvec2};
use outside_checks::Table;
use planner::colour::{contrast, contrast_of, lab, luminance_of};
use planner::layout::Srgb;
use planner::shape::{Bounds, Region, disc, largest_circle, largest_rectangle, rect};

fn things(text: &str) -> Vec<Region> {
    let thing = |text: &str| {
        let (kind, rest) = text.split_once(' ').expect("a kind");
        let n: Vec<f64> = rest
            .split(' ')
            .map(|n| n.parse().expect("a number"))
            .collect();
        let at = dvec2(n[0], n[1]);
        let outline = if kind == "disc" {
            disc(at, n[2], 0.01)
        } else {
            rect(at, dvec2(n[2], n[3]), 0.0, n[4], 0.01)
        };
        Region::from_polygon(&outline).expect("a thing")
    };
    text.split(';').map(thing).collect()
}

/// Tolerances: a raster of 2 mm says where a side stops within 2 mm on either
/// side; we look in cells of 6 mm and push sides out, and may settle for a
/// rectangle up to 3% smaller. Circles within the 0.5 mm the search stops at
/// and 0.1 mm of chords.
#[test]
fn largest_empty_places_of_random_layouts() {
    let table = Table::read("space.csv");
    assert_eq!(table.len(), 200, "layouts");
    let sheet = Bounds {
        min: DVec2::ZERO,
        max: dvec2(600.0, 400.0),
    };
    for row in table.rows() {
        let things = things(row.text("things"));
        let found = largest_rectangle(sheet, &things, DVec2::ZERO).expect("room");
        let size = found.size();
        let (area, expected) = (size.x * size.y, row.number("rectangle"));
        let raster = 2.0 * (size.x + size.y) * 2.0;
        assert!(
            area > expected * 0.97 - raster && area < expected + raster,
            "{}: {area} of {expected}",
            row.place()
        );
        let corners = Region::from_polygon(&found.corners()).expect("a box");
        for thing in &things {
            let both = planner::shape::intersection(&corners, thing).expect("sound");
            assert!(
                both.area() < 0.5,
                "{}: not empty: {}",
                row.place(),
                both.area()
            );
        }
        let (at, radius) = largest_circle(sheet, &things).expect("room");
        let expected = row.number("radius");
        assert!(
            (radius - expected).abs() < 0.6,
            "{}: {radius} of {expected} at {at}",
            row.place()
        );
    }
}

/// Contrast ratios as printed with WCAG's examples and technique G18: #767676
/// on white is the lightest grey of 4.5 to 1, #949494 of 3 to 1 (from memory;
/// recomputed with the formula as printed). Tolerance: the digits given.
#[test]
fn contrast_as_published() {
    let white = Srgb::hex(0xff_ffff);
    for (colour, ratio) in [
        (0x00_0000, 21.0),
        (0x76_7676, 4.54),
        (0x77_7777, 4.48),
        (0x94_9494, 3.03),
        (0x95_9595, 2.99),
        (0xff_0000, 4.0),
        (0x00_00ff, 8.59),
    ] {
        let found = contrast(Srgb::hex(colour), white);
        assert!((found - ratio).abs() < 0.006, "{colour:06x}: {found}");
    }
}

/// Luminance from L* gives the same ratio as luminance from sRGB; the two
/// matrices differ in the fifth digit. Tolerance 0.001 of the ratio.
#[test]
fn contrast_from_lightness_is_contrast_from_colour() {
    let white = Srgb::hex(0xff_ffff);
    for step in 0..64_u32 {
        let colour = Srgb::hex(step.wrapping_mul(0x03_a7c1) & 0xff_ffff);
        let by_colour = contrast(colour, white);
        let by_light = contrast_of(luminance_of(lab(colour).l), 1.0);
        assert!(
            (by_colour - by_light).abs() < 0.001 * by_colour,
            "{colour}: {by_colour} and {by_light}"
        );
    }
}
