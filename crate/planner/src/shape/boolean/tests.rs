use proptest::prelude::*;

use super::*;
use crate::shape::{Bounds, CHORD_ERROR, disc};

fn square(x: f64, y: f64, side: f64) -> Region {
    let min = DVec2::new(x, y);
    let corners = Bounds {
        min,
        max: min + side,
    }
    .corners();
    Region::from_polygon(&corners).expect("a square")
}

#[test]
fn overlapping_squares() {
    let (a, b) = (square(0.0, 0.0, 10.0), square(5.0, 5.0, 10.0));
    assert_eq!(union(&[&a, &b]).expect("union").area(), 175.0, "union");
    assert_eq!(
        intersection(&a, &b).expect("both").area(),
        25.0,
        "intersection"
    );
    assert_eq!(
        difference(&a, &[&b]).expect("rest").area(),
        75.0,
        "difference"
    );
}

#[test]
fn equal_squares() {
    let a = square(3.0, 4.0, 10.0);
    assert_eq!(union(&[&a, &a]).expect("union").area(), 100.0, "union");
    assert_eq!(
        intersection(&a, &a).expect("both").area(),
        100.0,
        "intersection"
    );
    assert!(
        difference(&a, &[&a]).expect("rest").is_empty(),
        "nothing left"
    );
}

#[test]
fn squares_that_share_a_side_or_a_corner() {
    let a = square(0.0, 0.0, 10.0);
    for (b, at) in [
        (square(10.0, 0.0, 10.0), "side"),
        (square(10.0, 10.0, 10.0), "corner"),
    ] {
        assert!(
            intersection(&a, &b).expect("both").is_empty(),
            "no area shared at a {at}"
        );
        assert_eq!(
            union(&[&a, &b]).expect("union").area(),
            200.0,
            "both whole at a {at}"
        );
        assert_eq!(
            difference(&a, &[&b]).expect("rest").area(),
            100.0,
            "untouched at a {at}"
        );
    }
}

#[test]
fn square_within_a_square_leaves_a_hole() {
    let ring = difference(&square(0.0, 0.0, 10.0), &[&square(2.0, 2.0, 4.0)]).expect("ring");
    assert_eq!(ring.rings().len(), 2, "an outline and a hole");
    assert_eq!(ring.area(), 84.0, "100 less 16");
    assert!(!ring.contains(DVec2::splat(4.0)), "the hole is outside");
    let filled = union(&[&ring, &square(2.0, 2.0, 4.0)]).expect("filled");
    assert_eq!(filled.area(), 100.0, "put back");
}

#[test]
fn empty_regions() {
    let (a, none) = (square(0.0, 0.0, 10.0), Region::empty());
    assert_eq!(
        union(&[&a, &none]).expect("union").area(),
        100.0,
        "nothing added"
    );
    assert!(union(&[]).expect("union").is_empty(), "of nothing");
    assert!(
        intersection(&a, &none).expect("both").is_empty(),
        "with nothing"
    );
    assert_eq!(
        difference(&a, &[]).expect("rest").area(),
        100.0,
        "nothing taken"
    );
    assert!(
        difference(&none, &[&a]).expect("rest").is_empty(),
        "from nothing"
    );
}

#[test]
fn dust_is_dropped() {
    let (a, b) = (square(0.0, 0.0, 10.0), square(0.000_005, 0.0, 10.0));
    assert!(
        difference(&a, &[&b]).expect("rest").is_empty(),
        "a 5 nm strip is dust"
    );
}

#[test]
fn bad_polygons_are_refused() {
    let far = [DVec2::ZERO, DVec2::X * 40_000.0, DVec2::Y];
    assert_eq!(
        Region::from_polygon(&far),
        Err(ShapeError::TooFar {
            found: 40_000.0,
            limit: COORDINATE_LIMIT
        }),
        "too far"
    );
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let polygon = [DVec2::ZERO, DVec2::X, DVec2::splat(bad)];
        assert_eq!(
            Region::from_polygon(&polygon),
            Err(ShapeError::NotFinite),
            "{bad}"
        );
    }
    let long = vec![DVec2::ZERO; POLYGON_VERTEX_LIMIT + 1];
    assert!(
        matches!(
            Region::from_polygon(&long),
            Err(ShapeError::TooManyPoints { .. })
        ),
        "too long"
    );
    let round = Region::from_polygon(&disc(DVec2::ZERO, 900.0, 1e-4)).expect("a fine disc");
    let many: Vec<&Region> = std::iter::repeat_n(&round, 400).collect();
    assert!(
        matches!(union(&many), Err(ShapeError::TooManyPoints { .. })),
        "too many together"
    );
}

#[test]
fn plate_on_a_board_leaves_the_board_less_the_plate() {
    let board = square(0.0, 0.0, 950.0);
    let plate = Region::from_polygon(&disc(DVec2::splat(400.0), 135.0, CHORD_ERROR)).expect("disc");
    let rest = difference(&board, &[&plate]).expect("rest").area();
    let expected = 950.0 * 950.0 - std::f64::consts::PI * 135.0 * 135.0;
    assert!((rest - expected).abs() < 0.01, "{rest} against {expected}");
}

/// Found by the test after this one: another library lost a fifth of the area.
#[test]
fn crossing_polygon_less_a_triangle_adds_up() {
    let region = |points: &[(f64, f64)]| {
        let points: Vec<DVec2> = points.iter().copied().map(DVec2::from).collect();
        Region::from_polygon(&points).expect("in limits")
    };
    let a = region(&[(0.0, 2.0), (4.0, 4.0), (3.0, 0.0)]);
    let b = region(&[
        (3.0, 2.0),
        (0.0, 0.0),
        (1.0, -1.0),
        (2.0, 3.0),
        (4.0, 1.0),
        (0.0, -1.0),
    ]);
    let both = intersection(&a, &b).expect("both").area();
    let rest = difference(&a, &[&b]).expect("rest").area();
    assert!(
        (b.area() - 4.904_762).abs() < 1e-3,
        "loops by shapely, got {}",
        b.area()
    );
    assert!(
        (both - 2.707_143).abs() < 1e-3,
        "both by shapely, got {both}"
    );
    assert!(
        (rest - 4.292_857).abs() < 1e-3,
        "rest by shapely, got {rest}"
    );
}

/// Small whole coordinates: repeated points, points on sides, sides on sides.
fn tangled() -> impl Strategy<Value = Vec<DVec2>> {
    let at = (-4i32..5, -4i32..5).prop_map(|(x, y)| DVec2::new(f64::from(x), f64::from(y)));
    prop::collection::vec(at, 0..14)
}

proptest! {
    #[test]
    fn tangled_polygons_add_up(a in tangled(), b in tangled()) {
        let a = Region::from_polygon(&a).expect("in limits");
        let b = Region::from_polygon(&b).expect("in limits");
        let both = intersection(&a, &b).expect("both").area();
        let rest = difference(&a, &[&b]).expect("rest").area();
        let all = union(&[&a, &b]).expect("union").area();
        prop_assert!((both + rest - a.area()).abs() < 1e-2, "parts of a: {both} {rest} {}", a.area());
        prop_assert!((all + both - a.area() - b.area()).abs() < 1e-2, "sum: {all} {both}");
    }

    #[test]
    fn wild_coordinates_never_panic(
        a in prop::collection::vec((-3e4f64..3e4, -3e4f64..3e4), 0..40),
        b in prop::collection::vec((-3e4f64..3e4, -3e4f64..3e4), 0..40),
    ) {
        let region = |points: Vec<(f64, f64)>| {
            let points: Vec<DVec2> = points.into_iter().map(DVec2::from).collect();
            Region::from_polygon(&points).expect("in limits")
        };
        let (a, b) = (region(a), region(b));
        let both = intersection(&a, &b).expect("both").area();
        prop_assert!(both <= a.area().min(b.area()) * (1.0 + 1e-6) + 1.0, "no more than either");
    }
}
