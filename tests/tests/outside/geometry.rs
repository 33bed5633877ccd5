//! Plane geometry against shapely 2.2.0, and flattened curves against the true
//! ones.
use glam::DVec2;
use outside_checks::{Row, Table};
use planner::shape::{
    Bounds, CHORD_ERROR, Region, clearing_move, disc, gap, hull, intersection, oval, rect, union,
    visible,
};

fn polygon(numbers: &[f64]) -> Vec<DVec2> {
    numbers
        .chunks(2)
        .map(|xy| DVec2::new(xy[0], xy[1]))
        .collect()
}

fn region(polygon: &[DVec2]) -> Region {
    Region::from_polygon(polygon).expect("within limits")
}

/// 1e-6 of the area or 0.01 mm², whichever is larger.
fn same_area(found: f64, expected: f64, what: &str) {
    let tolerance = (expected * 1e-6).max(0.01);
    assert!(
        (found - expected).abs() <= tolerance,
        "{what}: found {found}, expected {expected}"
    );
}

fn scene(row: Row) -> Vec<Vec<DVec2>> {
    row.lists("polygons").iter().map(|p| polygon(p)).collect()
}

fn scenes() -> Table {
    let table = Table::read("scenes.csv");
    assert_eq!(table.len(), 1000, "scenes");
    table
}

#[test]
fn visible_areas_of_random_scenes() {
    for row in scenes().rows() {
        let pieces: Vec<Region> = scene(row).iter().map(|p| region(p)).collect();
        let frame = region(&polygon(&row.numbers("frame")));
        let seen = visible(&pieces, &frame).expect("within limits");
        let expected = row.numbers("visible");
        assert_eq!(seen.len(), expected.len(), "{}: pieces", row.place());
        for (found, expected) in seen.iter().zip(expected) {
            same_area(found.area(), expected, &row.place());
        }
    }
}

#[test]
fn overlaps_of_random_polygons() {
    for row in scenes().rows() {
        let scene = scene(row);
        let (a, b) = (region(&scene[0]), region(&scene[1]));
        let both = intersection(&a, &b).expect("within limits").area();
        same_area(both, row.number("overlap"), &row.place());
        let all = union(&[&a, &b]).expect("within limits").area();
        same_area(
            all,
            a.area() + b.area() - row.number("overlap"),
            &row.place(),
        );
    }
}

/// 0.001 mm: tenfold what rounding to 1/32768 mm can add up to.
#[test]
fn gaps_and_depths_of_random_polygons() {
    for row in scenes().rows() {
        let scene = scene(row);
        let gap = gap(&region(&scene[0]), &region(&scene[1]))
            .expect("both there")
            .distance;
        let expected = row.number("gap");
        assert!(
            (gap - expected).abs() < 1e-3,
            "{}: gap {gap}, not {expected}",
            row.place()
        );
        let depth = clearing_move(&scene[0], &scene[1])
            .expect("within limits")
            .length();
        let expected = row.number("depth");
        assert!(
            (depth - expected).abs() < 1e-3,
            "{}: depth {depth}, not {expected}",
            row.place()
        );
    }
}

#[test]
fn cleared_polygons_no_longer_overlap() {
    for row in scenes().rows().take(300) {
        let scene = scene(row);
        let away = clearing_move(&scene[0], &scene[1]).expect("within limits");
        let moved = region(&scene[0]).moved(away);
        let both = intersection(&moved, &region(&scene[1]))
            .expect("within limits")
            .area();
        assert!(both < 0.1, "{}: {both} mm² left after {away}", row.place());
    }
}

#[test]
fn hulls_of_random_scenes() {
    for row in scenes().rows() {
        let found = hull(&scene(row).concat());
        same_area(
            planner::shape::area(&found),
            row.number("hull"),
            &row.place(),
        );
    }
}

/// How far `p` is from the polygon's outline.
fn from_outline(polygon: &[DVec2], p: DVec2) -> f64 {
    let mut least = f64::INFINITY;
    for (i, &a) in polygon.iter().enumerate() {
        let d = polygon[(i + 1) % polygon.len()] - a;
        let t = ((p - a).dot(d) / d.length_squared()).clamp(0.0, 1.0);
        least = least.min((a + d * t).distance(p));
    }
    least
}

/// The most a flattened curve may be off, mm; what else is checked here takes
/// the planner's polygons as they are.
const FLATTENED: f64 = 0.05;

/// Every true point is near the polygon and every point of the polygon near a
/// true one: discs exactly by their radius, the others by dense sampling.
#[test]
fn flattened_curves_stay_within_the_chord_error() {
    for radius in [1.0, 7.5, 32.5, 135.0, 600.0, 2500.0] {
        let disc = disc(DVec2::ZERO, radius, CHORD_ERROR);
        for (i, &a) in disc.iter().enumerate() {
            let middle = (a + disc[(i + 1) % disc.len()]) * 0.5;
            for p in [a, middle] {
                let error = (p.length() - radius).abs();
                assert!(error <= FLATTENED, "radius {radius}: off by {error}");
            }
        }
    }
    for size in [
        DVec2::new(360.0, 260.0),
        DVec2::new(60.0, 220.0),
        DVec2::new(900.0, 30.0),
    ] {
        let oval = oval(DVec2::ZERO, size, 0.0, CHORD_ERROR);
        for i in 0..4000 {
            let t = f64::from(i) / 4000.0 * std::f64::consts::TAU;
            let p = DVec2::from_angle(t) * size * 0.5;
            let error = from_outline(&oval, p);
            assert!(error <= FLATTENED, "{size}: off by {error} at {p}");
        }
    }
    let (size, corner) = (DVec2::new(300.0, 200.0), 60.0);
    let rounded = rect(DVec2::ZERO, size, corner, 0.0, CHORD_ERROR);
    for i in 0..1000 {
        let t = f64::from(i) / 1000.0 * std::f64::consts::FRAC_PI_2;
        let p = size * 0.5 - corner + DVec2::from_angle(t) * corner;
        let error = from_outline(&rounded, p);
        assert!(error <= FLATTENED, "corner: off by {error} at {p}");
    }
    let sides = Bounds::around(&rounded).expect("points").size();
    assert_eq!(sides, size, "straight sides stay");
}
