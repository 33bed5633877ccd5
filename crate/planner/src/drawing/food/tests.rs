//! What every food must keep to, whatever its shape.

use glam::{DVec2, dvec2};
use svg::node::Node;

use super::*;
use crate::figure::outline::{area, bounds};
use crate::figure::{EDGE_POINTS, food_outline};

const SIZES: [DVec2; 4] = [
    dvec2(118.0, 118.0),
    dvec2(150.0, 85.0),
    dvec2(45.0, 90.0),
    dvec2(20.0, 20.0),
];

fn pen() -> Pen {
    Pen {
        weight: 2.4,
        fall: dvec2(0.866, 0.5),
        fine: true,
    }
}

fn crosses(a: DVec2, b: DVec2, c: DVec2, d: DVec2) -> bool {
    let side = |p: DVec2, q: DVec2, r: DVec2| (q - p).perp_dot(r - p);
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}

#[test]
fn outlines_fill_their_extents_and_no_more() {
    for kind in Food::all() {
        for half in SIZES {
            let edge = food_outline(kind, &Form::new(11, half, 0.0));
            assert_eq!(edge.len(), EDGE_POINTS, "{kind:?} at {half}");
            let (low, high) = bounds(&edge);
            let off = (high - low - half * 2.0).abs() / half;
            assert!(
                off.max_element() < 0.06,
                "{kind:?} at {half} spans {}",
                high - low
            );
        }
    }
}

#[test]
fn outlines_are_simple_loops() {
    for kind in Food::all() {
        for half in SIZES {
            let edge = food_outline(kind, &Form::new(4, half, 0.7));
            assert!(
                area(&edge).abs() > half.x * half.y,
                "{kind:?} at {half}: too thin"
            );
            let n = edge.len();
            for i in 0..n {
                for j in i + 2..n {
                    let cut = crosses(edge[i], edge[i + 1], edge[j], edge[(j + 1) % n]);
                    assert!(!cut, "{kind:?} at {half}: sides {i} and {j} cross");
                }
            }
        }
    }
}

#[test]
fn the_same_seed_draws_the_same_and_another_does_not() {
    for kind in Food::all() {
        let draw = |seed| food(kind, &Form::new(seed, SIZES[0], 0.3), &[], &pen()).to_string();
        assert_eq!(draw(5), draw(5), "{kind:?} is seeded");
        assert_ne!(draw(5), draw(6), "{kind:?}: two of them differ");
    }
}

#[test]
fn numbers_are_sound_at_any_size_and_kept_to_a_tenth() {
    for kind in Food::all() {
        for half in [dvec2(0.0, -3.0), dvec2(f64::NAN, 40.0), dvec2(900.0, 3.0)] {
            let text = food(kind, &Form::new(2, half, f64::INFINITY), &[], &pen()).to_string();
            assert!(
                !text.contains("NaN") && !text.contains("inf"),
                "{kind:?} at {half}"
            );
            for data in text.split(" d=\"").skip(1) {
                let data = data.split('"').next().unwrap_or_default();
                let fine = data
                    .split('.')
                    .skip(1)
                    .find(|tail| tail.len() > 1 && tail.as_bytes()[1].is_ascii_digit());
                assert!(
                    fine.is_none(),
                    "{kind:?} at {half}: finer than 0.1 in {data}"
                );
            }
        }
    }
}

#[test]
fn a_dish_is_at_most_forty_nodes() {
    for kind in Food::all() {
        for half in SIZES {
            let drawn = food(kind, &Form::new(9, half, 0.0), &[], &pen());
            let nodes = drawn.get_children().map_or(0, |all| all.len());
            assert!(nodes <= 40, "{kind:?} at {half} takes {nodes} nodes");
            assert!(nodes > 0, "{kind:?} at {half} draws nothing");
        }
    }
}

#[test]
fn one_given_colour_recolours_the_chief_tone() {
    let form = Form::new(3, SIZES[0], 0.0);
    let blood = food(Food::Citrus, &form, &[rgb(0xb02020)], &pen()).to_string();
    assert!(blood.contains("#b02020"), "the peel takes the given colour");
    assert!(
        blood.contains("#f6cf45"),
        "what is not given keeps its tone"
    );
}
