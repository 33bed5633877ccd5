//! Measures of composition against their published form: figures computed once
//! from the formulas, a second implementation in exact fractions, and rasters.
use glam::DVec2;
use outside_checks::Table;
use planner::measures::{
    PointMass, Spread, SpreadMass, Weighed, balance_score, balance_score_of, centroid, dcm,
    homogeneity, object_balance, offset, score_band, spread, triangle, triangle_score,
};
use planner::shape::{Region, disc, visible};

fn close(found: f64, expected: f64, tolerance: f64, what: &str) {
    assert!(
        (found - expected).abs() <= tolerance,
        "{what}: found {found}, expected {expected} within {tolerance}"
    );
}

fn round(x: f64, y: f64, radius: f64) -> Region {
    // A hundredth of the usual chord error: the sheet is one unit wide.
    let polygon = disc(DVec2::new(x, y), radius, 1e-3);
    Region::from_polygon(&polygon).expect("a disc")
}

/// Seven layouts of equal discs on a unit square, mass = area: DCM, S1, balance
/// by lever arms, APB and homogeneity, computed once from the formulas (APB and
/// homogeneity from a raster of 1,000 pixels). Tolerance: the last digit, and
/// 0.1 where a raster of that size rounds.
#[test]
fn seven_layouts() {
    type Layout<'a> = (&'a str, &'a [(f64, f64, f64)], [f64; 5]);
    let third = 1.0 / 3.0;
    let layouts: [Layout; 7] = [
        ("middle", &[(0.5, 0.5, 0.1)], [0.0, 100.0, 1.0, 50.0, 30.10]),
        (
            "right",
            &[(0.75, 0.5, 0.1)],
            [50.0, 28.65, 0.5, 59.42, 35.47],
        ),
        (
            "large and small",
            &[(0.3, 0.5, 0.2), (0.7, 0.5, 0.1)],
            [24.0, 54.88, 0.625, 48.05, 66.09],
        ),
        (
            "lever",
            &[(0.4, 0.5, 0.2), (0.9, 0.5, 0.1)],
            [0.0, 100.0, 1.0, 37.51, 66.09],
        ),
        (
            "four",
            &[
                (0.25, 0.25, 0.1),
                (0.75, 0.25, 0.1),
                (0.25, 0.75, 0.1),
                (0.75, 0.75, 0.1),
            ],
            [0.0, 100.0, 1.0, 0.0, 70.94],
        ),
        (
            "three",
            &[
                (third, third, 0.1),
                (2.0 * third, third, 0.1),
                (0.5, 2.0 * third, 0.1),
            ],
            [11.11, 75.75, 0.75, 40.79, 71.43],
        ),
        (
            "corner",
            &[(0.1, 0.1, 0.1)],
            [113.14, 1.83, 0.0, 87.5, 30.10],
        ),
    ];
    // In thousandths, so that the geometry works in its usual range.
    let size = DVec2::splat(1000.0);
    for (name, discs, [off, score, levers, apb, even]) in layouts {
        let regions: Vec<Region> = discs
            .iter()
            .map(|(x, y, r)| round(x * 1000.0, y * 1000.0, r * 1000.0))
            .collect();
        let masses: Vec<PointMass> = regions
            .iter()
            .map(|r| PointMass {
                at: r.centroid().expect("a disc"),
                mass: r.area(),
            })
            .collect();
        let centre = centroid(&masses).expect("mass");
        close(
            dcm(offset(size, centre).expect("a picture")),
            off,
            0.005,
            name,
        );
        close(
            balance_score(size, centre).expect("a picture"),
            score,
            0.005,
            name,
        );
        close(
            object_balance(size, &masses).expect("mass"),
            levers,
            5e-4,
            name,
        );
        let weights: Vec<SpreadMass> = regions
            .iter()
            .map(|region| SpreadMass {
                region,
                density: 1.0,
            })
            .collect();
        close(spread(size, &weights).expect("mass").apb(), apb, 0.1, name);
        let all: Vec<&Region> = regions.iter().collect();
        close(homogeneity(size, &all).expect("area"), even, 0.1, name);
    }
}

/// `generate_balance.py`: exact fractions, 1e-6.
#[test]
fn balance_of_random_layouts() {
    let table = Table::read("balance.csv");
    assert_eq!(table.len(), 1000, "layouts");
    for row in table.rows() {
        let size = DVec2::new(row.number("width"), row.number("height"));
        let parts: Vec<Weighed> = row
            .lists("parts")
            .iter()
            .map(|p| Weighed {
                at: DVec2::new(p[0], p[1]),
                area: p[2],
                delta_l: p[3],
                delta_c: p[4],
                emphasis: 1.0,
            })
            .collect();
        let masses: Vec<PointMass> = parts.iter().map(|p| p.mass(1.0)).collect();
        let off = offset(size, centroid(&masses).expect("mass")).expect("a picture");
        let what = row.place();
        close(off.dx, row.number("dx"), 1e-6, &what);
        close(off.dy, row.number("dy"), 1e-6, &what);
        close(dcm(off), row.number("dcm"), 1e-6, &what);
        let scores = [(0.0, "s0"), (0.25, "s25"), (1.0, "s100")].map(|(weight, name)| {
            let found = balance_score_of(size, &parts, weight).expect("mass");
            close(found, row.number(name), 1e-6, &format!("{what} {name}"));
            found
        });
        let [low, high] = score_band(size, &parts).expect("mass");
        assert_eq!(
            low,
            scores.into_iter().fold(f64::INFINITY, f64::min),
            "{what}: band"
        );
        assert_eq!(high, scores.into_iter().fold(0.0, f64::max), "{what}: band");
        close(
            object_balance(size, &masses).expect("mass"),
            row.number("levers"),
            1e-6,
            &what,
        );
    }
}

/// `generate_spread.py`: rasters of 1,000 pixels a side and more, every measure
/// within 0.5 as the two ways to count should be.
#[test]
fn measures_by_area_against_rasters() {
    let table = Table::read("spread.csv");
    assert_eq!(table.len(), 100, "layouts");
    for row in table.rows() {
        let size = DVec2::new(row.number("width"), row.number("height"));
        let discs = row.lists("discs");
        let whole: Vec<Region> = discs.iter().map(|d| round(d[0], d[1], d[2])).collect();
        let corners = [
            DVec2::ZERO,
            DVec2::new(size.x, 0.0),
            size,
            DVec2::new(0.0, size.y),
        ];
        let frame = Region::from_polygon(&corners).expect("a frame");
        let seen = visible(&whole, &frame).expect("within limits");
        let masses: Vec<SpreadMass> = seen
            .iter()
            .zip(&discs)
            .map(|(region, d)| SpreadMass {
                region,
                density: d[3],
            })
            .collect();
        let found = spread(size, &masses).expect("mass");
        let Spread {
            left_right,
            top_bottom,
            falling,
            rising,
            columns,
            rows,
            along_falling,
            along_rising,
        } = found;
        for (value, name) in [
            (left_right, "left_right"),
            (top_bottom, "top_bottom"),
            (falling, "falling"),
            (rising, "rising"),
            (columns, "columns"),
            (rows, "rows"),
            (along_falling, "along_falling"),
            (along_rising, "along_rising"),
            (found.apb(), "apb"),
        ] {
            close(
                value,
                row.number(name),
                0.5,
                &format!("{} {name}", row.place()),
            );
        }
        let all: Vec<&Region> = seen.iter().collect();
        let even = homogeneity(size, &all).expect("area");
        close(
            even,
            row.number("homogeneity"),
            0.5,
            &format!("{} homogeneity", row.place()),
        );
        let points: Vec<PointMass> = masses
            .iter()
            .filter_map(|m| {
                Some(PointMass {
                    at: m.region.centroid()?,
                    mass: m.region.area() * m.density,
                })
            })
            .collect();
        let centre = centroid(&points).expect("mass");
        let score = balance_score(size, centre).expect("a picture");
        let levers = object_balance(size, &points).expect("mass");
        for (value, name) in [
            (dcm(offset(size, centre).expect("a picture")), "dcm"),
            (score, "score"),
            (levers * 100.0, "levers"),
        ] {
            close(
                value,
                row.number(name),
                0.5,
                &format!("{} {name}", row.place()),
            );
        }
    }
}

/// A triangle with these angles, degrees.
fn by_angles(first: f64, second: f64) -> [DVec2; 3] {
    let at = |degrees: f64| DVec2::from_angle(degrees.to_radians());
    // The law of sines, from a base of one.
    let side = at(second).y / at(first + second).y;
    [DVec2::ZERO, DVec2::X, at(first) * side]
}

/// Quality, radius ratio and smallest angle of eight triangles, computed once
/// from the formulas; last digit.
#[test]
fn eight_triangles() {
    let right = [DVec2::ZERO, DVec2::new(3.0, 0.0), DVec2::new(0.0, 4.0)];
    for (name, corners, quality, ratio, angle) in [
        ("equilateral", by_angles(60.0, 60.0), 1.0, 1.0, 60.0),
        (
            "right isosceles",
            by_angles(90.0, 45.0),
            0.8660,
            0.8284,
            45.0,
        ),
        ("36-72-72", by_angles(72.0, 72.0), 0.8548, 0.8541, 36.0),
        ("3-4-5", right, 0.8314, 0.8, 36.87),
        ("30-60-90", by_angles(30.0, 60.0), 0.75, 0.7321, 30.0),
        ("30-30-120", by_angles(30.0, 30.0), 0.6, 0.4641, 30.0),
        ("20-80-80", by_angles(80.0, 80.0), 0.5587, 0.5740, 20.0),
        ("15-15-150", by_angles(15.0, 15.0), 0.3022, 0.1317, 15.0),
    ] {
        let found = triangle(corners).expect("a triangle");
        close(found.quality, quality, 5.1e-5, name);
        close(found.radius_ratio, ratio, 5.1e-5, name);
        close(found.min_angle, angle, 0.005, name);
    }
}

/// Three power points of the thirds make a right isosceles triangle of 0.0556
/// of the picture, so the score is all area.
#[test]
fn three_power_points() {
    let (size, third) = (DVec2::splat(90.0), 30.0);
    let corners = [(third, third), (2.0 * third, third), (third, 2.0 * third)].map(DVec2::from);
    let found = triangle(corners).expect("a triangle");
    close(found.area / (size.x * size.y), 0.0556, 5e-5, "area");
    let score = triangle_score(size, corners).expect("a triangle");
    close(score, 100.0 * (0.5f64 / 9.0 / 0.11).sqrt(), 1e-9, "score");
}
