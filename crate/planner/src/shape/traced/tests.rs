use std::f64::consts::TAU;

use glam::dvec2;
use proptest::prelude::*;

use super::*;
use crate::shape::{area, disc};

/// An L of 240 by 180 mm with arms of 60, at two pixels a millimetre.
const L: [(f64, f64); 6] = [
    (100.0, 100.0),
    (220.0, 100.0),
    (220.0, 340.0),
    (580.0, 340.0),
    (580.0, 460.0),
    (100.0, 460.0),
];

fn vectors(points: &[Point]) -> Vec<DVec2> {
    points.iter().map(|p| p.vec()).collect()
}

fn sides(points: &[Point]) -> DVec2 {
    Bounds::around(&vectors(points)).expect("points").size()
}

#[test]
fn corners_tapped_either_way_round_are_the_outline() {
    let mut line = L.map(DVec2::from).to_vec();
    let one = traced(&line, 0.5).expect("an L");
    assert_eq!(one.len(), 6, "its corners: {one:?}");
    assert_eq!(sides(&one), dvec2(240.0, 180.0), "half of 480 by 360");
    assert_eq!(
        area(&vectors(&one)),
        60.0 * 180.0 + 180.0 * 60.0,
        "to the mm²"
    );
    assert_eq!(
        one.iter().map(|p| p.x).min(),
        Some(-120),
        "about its middle"
    );
    line.reverse();
    let mut other = traced(&line, 0.5).expect("an L");
    other.sort();
    let mut one = one;
    one.sort();
    assert_eq!(one, other, "the other way round");
}

#[test]
fn a_drawn_round_is_thinned_and_keeps_its_area() {
    for radius in [12.0, 60.0, 140.0, 900.0] {
        let line = disc(dvec2(3000.0, 50.0), radius * 3.0, 0.01);
        let found = traced(&line, 1.0 / 3.0).expect("a disc");
        let (is, was) = (area(&vectors(&found)), area(&line) / 9.0);
        // Whole millimetres round a small disc by half of one.
        let allowed = if radius < 20.0 { 0.04 } else { 0.006 };
        assert!((is / was - 1.0).abs() < allowed, "{radius}: {is} of {was}");
        assert!(
            found.len() <= MAX_OUTLINE && found.len() >= 8,
            "{radius}: {}",
            found.len()
        );
    }
}

#[test]
fn a_round_closed_late_leaves_its_loop_out_and_an_eight_is_refused() {
    let round = |from: f64, to: f64| {
        (0..=200).map(move |i| {
            let t = from + (to - from) * f64::from(i) / 200.0;
            // A little wider on the way, so that the end crosses the beginning.
            let (sin, cos) = libm::sincos(t);
            dvec2(cos, sin) * (100.0 + 6.0 * libm::sin(t * 0.5))
        })
    };
    let line: Vec<DVec2> = round(0.0, TAU * 1.04).collect();
    let found = traced(&line, 1.0).expect("a round");
    assert!(is_simple(&found), "no crossing is left");
    let eight: Vec<DVec2> = (0..100)
        .map(|i| {
            let (sin, cos) = libm::sincos(TAU * f64::from(i) / 100.0);
            dvec2(cos, sin * cos) * 100.0
        })
        .collect();
    assert_eq!(traced(&eight, 1.0), Err(TraceFault::Crosses), "two shapes");
    let tie = [(0.0, 0.0), (90.0, 80.0), (90.0, 0.0), (0.0, 80.0)].map(DVec2::from);
    assert_eq!(traced(&tie, 1.0), Err(TraceFault::Crosses), "a bow tie");
}

#[test]
fn what_goes_round_nothing_is_refused_each_with_its_reason() {
    let line = |points: &[(f64, f64)]| points.iter().copied().map(DVec2::from).collect::<Vec<_>>();
    let triangle = line(&[(0.0, 0.0), (100.0, 0.0), (0.0, 100.0)]);
    for (points, scale, fault) in [
        (line(&[]), 1.0, TraceFault::Few),
        (line(&[(0.0, 0.0), (90.0, 20.0)]), 1.0, TraceFault::Few),
        (
            line(&[(0.0, 0.0), (f64::NAN, 20.0), (9.0, 9.0)]),
            1.0,
            TraceFault::Few,
        ),
        (
            line(&[(0.0, 0.0), (f64::INFINITY, 20.0), (9.0, 9.0)]),
            1.0,
            TraceFault::Few,
        ),
        (
            line(&[(0.0, 0.0), (50.0, 50.0), (99.0, 99.0)]),
            1.0,
            TraceFault::Flat,
        ),
        (
            line(&[(0.0, 0.0), (50.0, 1.0), (99.0, 0.0)]),
            1.0,
            TraceFault::Flat,
        ),
        (vec![dvec2(5.0, 5.0); 9], 1.0, TraceFault::Sides([0, 0])),
        (triangle.clone(), 0.05, TraceFault::Sides([5, 5])),
        (triangle.clone(), 21.0, TraceFault::Sides([2100, 2100])),
        (
            triangle.clone(),
            1e300,
            TraceFault::Sides([1_000_000_000; 2]),
        ),
        (triangle.clone(), 0.0, TraceFault::Scale),
        (triangle.clone(), -1.0, TraceFault::Scale),
        (triangle.clone(), f64::NAN, TraceFault::Scale),
    ] {
        assert_eq!(traced(&points, scale), Err(fault), "{points:?} at {scale}");
    }
}

#[test]
fn two_marks_measure_what_lies_between_them() {
    let marks = [dvec2(10.0, 10.0), dvec2(310.0, 410.0)];
    assert_eq!(scale_of(marks, 250.0), Ok(0.5), "500 px are 250 mm");
    for (marks, length) in [
        (marks, 0.0),
        (marks, -5.0),
        (marks, f64::NAN),
        (marks, f64::INFINITY),
        ([marks[0]; 2], 250.0),
        ([marks[0], marks[0] + 3.0], 250.0),
        ([marks[0], DVec2::NAN], 250.0),
    ] {
        assert_eq!(
            scale_of(marks, length),
            Err(TraceFault::Scale),
            "{marks:?} {length}"
        );
    }
}

#[test]
fn a_stroke_becomes_few_points_without_its_overlap() {
    let line: Vec<DVec2> = disc(dvec2(400.0, 400.0), 300.0, 0.01);
    let mut late = line.clone();
    late.push(line[0] + 1.0);
    let points = stroke(&late, 3.0);
    assert!((8..40).contains(&points.len()), "{}", points.len());
    let last = points.last().expect("points");
    assert!(last.distance(points[0]) >= 12.0, "closed once");
    assert!(stroke(&[], 3.0).is_empty(), "nothing stays nothing");
}

#[test]
fn simple_means_no_side_touches_another() {
    let simple = |points: &[(i32, i32)]| {
        is_simple(
            &points
                .iter()
                .map(|(x, y)| Point::new(*x, *y))
                .collect::<Vec<_>>(),
        )
    };
    assert!(simple(&[(0, 0), (4, 0), (4, 4), (0, 4)]), "a square");
    assert!(
        simple(&[(0, 0), (2, 0), (4, 0), (4, 4)]),
        "straight on at a corner"
    );
    for (points, what) in [
        (&[(0, 0), (4, 4), (4, 0), (0, 4)][..], "a bow tie"),
        (
            &[(0, 0), (4, 0), (4, 4), (2, 0), (0, 4)],
            "a corner on a side",
        ),
        (&[(0, 0), (4, 0), (2, 0), (2, 4)], "a side folded back"),
        (&[(0, 0), (4, 0), (4, 4), (4, 0), (0, 4)], "a spike"),
        (&[(0, 0), (4, 0)], "a line"),
        (&[(0, 0), (0, 0), (4, 0), (4, 4)], "a point twice"),
    ] {
        assert!(!simple(points), "{what}");
    }
}

/// A blob by its radius at even angles, px, as a finger might trace it.
fn blob() -> impl Strategy<Value = Vec<DVec2>> {
    prop::collection::vec(60.0..400.0_f64, 5..150).prop_map(|radii| {
        let n = radii.len() as f64;
        let at = |(i, r): (usize, &f64)| {
            let (sin, cos) = libm::sincos(TAU * i as f64 / n);
            dvec2(cos, sin) * *r + 500.0
        };
        radii.iter().enumerate().map(at).collect()
    })
}

proptest! {
    #[test]
    fn a_traced_blob_keeps_place_and_area(line in blob(), scale in 0.1..2.0_f64) {
        let true_line: Vec<DVec2> = line.iter().map(|p| *p * scale).collect();
        // Spikes thinner than the rounding may be cut off and say so.
        if let Ok(found) = traced(&line, scale) {
            prop_assert!(is_simple(&found) && found.len() <= MAX_OUTLINE);
            let got = vectors(&found);
            prop_assert!(signed_area(&got) > 0.0, "inside to the left");
            let off = (area(&got) - area(&true_line)).abs();
            prop_assert!(off <= 0.75 * perimeter(&true_line), "{off}");
            let span = Bounds::around(&got).expect("points");
            prop_assert!(span.centre().abs().max_element() <= 0.5, "about its middle");
            let was = Bounds::around(&true_line).expect("points").size();
            let wider = (span.size() - was).abs().max_element();
            prop_assert!(wider <= 4.0, "{wider} mm wider or narrower");
        }
    }

    #[test]
    fn whatever_is_scribbled_is_an_outline_or_refused(
        line in prop::collection::vec(prop::array::uniform2(-50.0..700.0_f64), 0..60),
        scale in 0.01..5.0_f64,
    ) {
        let line: Vec<DVec2> = line.into_iter().map(DVec2::from).collect();
        if let Ok(found) = traced(&line, scale) {
            prop_assert!(is_simple(&found) && found.len() <= MAX_OUTLINE);
        }
        prop_assert!(stroke(&line, 2.0).len() <= line.len());
    }
}
