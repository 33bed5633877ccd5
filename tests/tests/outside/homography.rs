//! Planes fitted to marks against OpenCV (tests/reference/generate_homography.py).
use glam::DVec2;
use outside_checks::Table;
use planner::shape::Homography;

fn pairs(text: &str) -> Vec<[DVec2; 2]> {
    let each = text.split(';').map(|pair| {
        let numbers: Vec<f64> = pair
            .split(' ')
            .map(|n| n.parse().expect("a number"))
            .collect();
        [
            DVec2::from_slice(&numbers),
            DVec2::from_slice(&numbers[2..]),
        ]
    });
    each.collect()
}

/// Tolerance 0.02 px: OpenCV reads three or four marks as 32-bit numbers, and is
/// asked for places far outside them.
#[test]
fn planes_fitted_to_marks_are_those_that_opencv_finds() {
    let table = Table::read("homography.csv");
    assert_eq!(table.len(), 160, "fits");
    for row in table.rows() {
        let marks = pairs(row.text("marks"));
        let found = Homography::fitted(&marks).unwrap_or_else(|f| panic!("{}: {f}", row.place()));
        for [place, expected] in pairs(row.text("asked")) {
            let off = found.at(place).map(|at| at.distance(expected));
            let off = off.unwrap_or_else(|| panic!("{}: {place} has no place", row.place()));
            assert!(off <= 0.02, "{}: {place} off by {off} px", row.place());
        }
    }
}
