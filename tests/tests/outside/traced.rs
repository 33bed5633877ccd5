//! Traced outlines against `shapely` (tests/reference/generate_traced.py).
use glam::DVec2;
use outside_checks::Table;
use planner::shape::{Bounds, TraceFault, area, is_simple, perimeter, traced};

fn line(text: &str) -> Vec<DVec2> {
    let place = |text: &str| {
        let (x, y) = text.split_once(' ').expect("two numbers");
        DVec2::new(x.parse().expect("x"), y.parse().expect("y"))
    };
    text.split(';').map(place).collect()
}

/// Tolerances: area within 0.5% and 0.15 mm along the outline, as each corner is
/// rounded by up to 0.7 mm this way or that; width and depth within 2 mm, one of
/// them from rounding on either side; the way round within 1%, or 6% where the
/// end of the stroke ran back along its beginning, a gap too thin to keep. What
/// `shapely` finds in several parts is refused.
#[test]
fn outlines_of_strokes_have_the_area_and_size_that_shapely_finds() {
    let table = Table::read("traced.csv");
    assert_eq!(table.len(), 100, "strokes");
    let (mut refused, mut astray) = (0, 0);
    for row in table.rows() {
        let found = traced(&line(row.text("line")), row.number("scale"));
        let expected = row.number("area");
        if expected == 0.0 {
            assert_eq!(found, Err(TraceFault::Crosses), "{}", row.place());
            refused += 1;
            continue;
        }
        let found = found.unwrap_or_else(|fault| panic!("{}: {fault:?}", row.place()));
        assert!(is_simple(&found) && found.len() <= 200, "{}", row.place());
        let found: Vec<DVec2> = found.iter().map(|p| p.vec()).collect();
        let round = row.number("perimeter");
        let off = (area(&found) - expected).abs();
        assert!(
            off <= expected * 0.005 + round * 0.15,
            "{}: {off} mm² off {expected}",
            row.place()
        );
        let sides = Bounds::around(&found).expect("points").size();
        for (side, name) in [(sides.x, "width"), (sides.y, "depth")] {
            let expected = row.number(name);
            assert!(
                (side - expected).abs() <= 2.0,
                "{}: {side} of {expected}",
                row.place()
            );
        }
        let length = perimeter(&found);
        astray += usize::from((length / round - 1.0).abs() > 0.01);
        assert!(
            (length / round - 1.0).abs() <= 0.06,
            "{}: {length} of {round}",
            row.place()
        );
    }
    assert_eq!(refused, 10, "lines of eight");
    assert!(astray <= 2, "{astray} outlines of another length");
}
