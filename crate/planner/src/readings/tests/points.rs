//! What points where.
use crate::layout::{Id, Layout, Point, Turn};
use crate::readings::samples::{after, disc, laid, said};
use crate::readings::{State, Study, live};

/// Three dishes and a frying pan of 200 mm at a place, its handle, 190 mm
/// from its middle, to the right before it is turned.
fn pan(x: i32, half_degrees: i32) -> Layout {
    let dishes = [
        disc(1, 400, 250, 160, "hero"),
        disc(2, 350, 640, 160, "support"),
        disc(3, 600, 680, 160, "support"),
    ];
    let items = dishes.join(",");
    let mut layout = laid(&format!(
        r##""items":[{items},{{"id":4,"number":4,"name":"frying pan","prop":"frying-pan",
        "at":[{x},450],"size":{{"shape":"disc","diameter":200,"rim":8}},
        "parts":{{"rim":{{"colours":[{{"srgb":"#20242a","share":100}}]}}}}}}]"##
    ));
    layout.items[3].turn = Turn::from_half_degrees(half_degrees);
    layout
}

#[test]
fn a_handle_near_the_edge_points_out_and_one_farther_in_does_not() {
    // The frame ends at 1,125 mm; 15% of its diagonal are 189 mm.
    let near = 0.15 * libm::hypot(1050.0, 700.0);
    let mut seen = [false; 2];
    for x in (600..930).step_by(3) {
        let layout = pan(x, 0);
        let f = said(&layout, "direction:right");
        let room = 1125.0 - f64::from(x) - 190.0;
        assert_eq!(f.is_some(), room < near, "{room} mm to the edge");
        seen[usize::from(f.is_some())] = true;
    }
    assert_eq!(seen, [true; 2], "both sides were tried");
    assert!(
        said(&pan(850, 360), "direction:right").is_none(),
        "turned in"
    );
    let f = said(&pan(850, 360), "direction").expect("nothing points out");
    assert_eq!(f.state, State::Holds, "{}", f.sentence);
}

#[test]
fn a_thing_that_points_out_is_turned_to_the_hero_or_the_middle() {
    let layout = pan(850, 0);
    let f = said(&layout, "direction:right").expect("it points out");
    assert!(f.taste && f.state == State::LookAgain, "an observation");
    assert_eq!(
        (f.figure, f.about.as_slice()),
        (1.0, &[Id(4)][..]),
        "one thing"
    );
    let then = after(&layout, &f);
    assert!(said(&then, "direction:right").is_none(), "turned in");
    let turn = then.items[3].turn.degrees();
    // The middle of the picture lies due left; the hero, upper left, is nearer.
    assert!(
        (180.0..210.0).contains(&turn) || (150.0..=180.0).contains(&turn),
        "{turn}"
    );
    let drag = live(&Study::new(&layout));
    let left_out = drag.findings.iter().all(|d| d.reading != "direction");
    assert!(left_out, "not looked for while something is dragged");
}

#[test]
fn a_tip_near_the_copy_space_points_into_it_and_one_farther_off_does_not() {
    let mut layout = pan(850, 360);
    layout.crops = laid(
        r#""crops":[{"id":9,"name":"post","ratio":[3,2],"at":[600,450],"width":1050,
        "copy":{"area":[300,-250,300,150],"wording":"Supper"}}]"#,
    )
    .crops;
    let spoon = laid(
        r##""items":[{"id":5,"number":5,"name":"spoon","prop":"spoon","at":[0,0],
        "size":{"shape":"rect","width":40,"depth":200,"corner":16,"rim":0},
        "parts":{"rim":{"colours":[{"srgb":"#20242a","share":100}]}}}]"##,
    );
    layout.items.extend(spoon.items);
    layout.items[4].turn = Turn::from_half_degrees(180);
    // Lying to the right, its tip 100 mm from its middle; the space begins at 750.
    let near = 0.15 * libm::hypot(1050.0, 700.0);
    let mut seen = [false; 2];
    for x in (430..640).step_by(3) {
        layout.items[4].at = Point::new(x, 200);
        let f = said(&layout, "direction:9:copy");
        let room = 750.0 - f64::from(x) - 100.0;
        assert_eq!(f.is_some(), room < near, "{room} mm to the copy space");
        seen[usize::from(f.is_some())] = true;
        if let Some(f) = f {
            assert!(!f.taste && f.rank == 3, "said unasked");
        }
    }
    assert_eq!(seen, [true; 2], "both sides were tried");
    layout.items[4].at = Point::new(620, 200);
    let f = said(&layout, "direction:9:copy").expect("it points in");
    assert!(said(&after(&layout, &f), &f.key).is_none(), "turned away");
    layout.items[4].at = Point::new(720, 200);
    let lies_in = said(&layout, "direction:9:copy");
    assert!(lies_in.is_none(), "what lies in it is said once, as taken");
    assert!(said(&layout, "space:9:copy").is_some(), "as taken");
}
