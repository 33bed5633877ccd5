//! Both sides of every threshold, and each remedy.
use crate::layout::{
    Card, CardKind, Extra, Finish, Id, Item, Layout, LightShape, MAX_CARDS, Point, Role, Turn,
};
use crate::readings::samples::{after, cured, laid, read, said};
use crate::readings::{Finding, State, Study, live, report};

/// Soup in the middle of the picture, right under the lens, so wide.
fn soup(diameter: i32) -> Layout {
    laid(&format!(
        r##""items":[{{"id":1,"number":1,"name":"soup","prop":"soup","height":0,"at":[600,450],
        "finish":"liquid","size":{{"shape":"disc","diameter":{diameter}}},"role":"support"}}]"##
    ))
}

/// A polished table by a window so far away at nine o'clock.
fn polished(distance: i32) -> Layout {
    let mut layout = laid("");
    layout.table.surface.finish = Finish::Gloss;
    layout.table.surface.name = "marble".into();
    layout.light.clock = Turn::from_degrees(270.0);
    layout.light.distance = distance;
    layout
}

fn pressing(layout: &Layout) -> Vec<Finding> {
    let all = read(layout).into_iter();
    all.filter(|f| f.reading == "glare" && f.is_pressing())
        .collect()
}

#[test]
fn a_tenth_of_a_liquid_mirrored_is_said_and_a_hundredth_is_told() {
    // A camera 140 mm across is mirrored in a disc of 70.
    let mut seen = [false; 3];
    for diameter in [(180..260), (660..740)].into_iter().flatten().step_by(4) {
        let share = 4900.0 / f64::from(diameter * diameter);
        let layout = soup(diameter);
        let [most, some] = ["glare:camera", "glare:camera:some"].map(|k| said(&layout, k));
        // Corners of round things are off by a thousandth.
        for (edge, is_said) in [
            (0.1, most.is_some()),
            (0.01, most.is_some() || some.is_some()),
        ] {
            if (share / edge - 1.0_f64).abs() > 0.005 {
                assert_eq!(is_said, share >= edge, "{share} of {diameter}");
            }
        }
        if let Some(f) = most.as_ref().or(some.as_ref()) {
            assert!(
                (f.figure / (share * 100.0) - 1.0).abs() < 0.005,
                "{}",
                f.figure
            );
        }
        seen[usize::from(most.is_some()) * 2 + usize::from(some.is_some())] = true;
    }
    assert_eq!(seen, [true; 3], "all three were tried");
}

#[test]
fn a_gravy_nobody_looks_at_is_said_but_only_main_dishes_of_glaze_are() {
    let plate = |role: Role| {
        let mut layout = laid(
            r#""items":[{"id":1,"number":1,"name":"plate","prop":"small-plate","height":20,
            "at":[600,450],"finish":"gloss","size":{"shape":"disc","diameter":180,"rim":16}}]"#,
        );
        layout.items[0].role = role;
        pressing(&layout).len()
    };
    assert_eq!([plate(Role::Hero), plate(Role::Filler)], [1, 0], "glaze");
    let mut layout = soup(200);
    layout.items[0].role = Role::Filler;
    assert_eq!(pressing(&layout).len(), 1, "a liquid always is");
    layout.items[0].finish = Finish::Satin;
    assert_eq!(pressing(&layout).len(), 0, "and nothing that only gleams");
}

#[test]
fn a_fiftieth_of_the_picture_mirrored_by_the_table_is_said_and_half_a_hundredth_told() {
    let mut seen = [false; 3];
    for distance in (300..1500).step_by(20) {
        let mut layout = polished(distance);
        let found = said(&layout, "glare:table:light");
        let which = match &found {
            None => 0,
            Some(f) if f.state == State::Holds => 1,
            Some(_) => 2,
        };
        if let Some(f) = &found {
            assert_eq!(which == 2, f.figure >= 2.0, "{}% mirrored", f.figure);
            assert!(f.figure >= 0.5, "{}% mirrored", f.figure);
            assert!(f.sentence.contains("mirrors the window"), "{}", f.sentence);
        }
        seen[which] = true;
        layout.table.surface.finish = Finish::Satin;
        let gleam = said(&layout, "glare:table:light");
        assert_eq!(gleam.is_some(), which > 0, "as large");
        assert!(gleam.is_none_or(|f| f.state == State::Holds), "but soft");
        layout.table.surface.finish = Finish::Matt;
        assert!(said(&layout, "glare:table:light").is_none(), "matt");
    }
    assert_eq!(seen, [true; 3], "all three were tried");
}

#[test]
fn what_lies_on_the_table_covers_what_it_mirrors() {
    let mut layout = polished(600);
    let bare = said(&layout, "glare:table:light").expect("mirrored").figure;
    layout.linens =
        laid(r#""linens":[{"id":60,"name":"cloth","at":[600,450],"size":[1200,900]}]"#).linens;
    assert!(said(&layout, "glare:table:light").is_none(), "under cloth");
    layout.linens[0].size = [1200, 300];
    let part = said(&layout, "glare:table:light").expect("in part").figure;
    assert!(part > 0.2 * bare && part < 0.8 * bare, "{part} of {bare}");
}

#[test]
fn rims_that_catch_the_light_are_told_and_matt_ones_are_not() {
    let mut layout = laid(
        r#""items":[{"id":1,"number":1,"name":"carafe","prop":"oil-carafe","height":250,
        "at":[700,400],"finish":"clear","size":{"shape":"disc","diameter":96}}]"#,
    );
    let f = said(&layout, "glare:rims").expect("one is round and shines");
    assert_eq!((f.figure, f.state), (1.0, State::Holds), "{}", f.sentence);
    layout.items[0].finish = Finish::Matt;
    assert!(said(&layout, "glare:rims").is_none(), "matt");
}

#[test]
fn a_glass_under_the_lens_is_moved_out_of_the_camera() {
    let layout = soup(160);
    let f = said(&layout, "glare:camera").expect("mirrored");
    assert!(f.working.iter().any(|w| w.contains("polariser")), "{f:?}");
    let then = after(&layout, &f);
    let by = then.items[0].at.vec().distance(layout.items[0].at.vec());
    assert!((60.0..=200.0).contains(&by), "a small move, {by} mm");
    assert!(pressing(&then).is_empty(), "{:?}", pressing(&then));
}

#[test]
fn where_there_is_no_room_two_bowls_of_a_size_change_places() {
    let mut layout = soup(160);
    let mut more = |id: u16, x: i32, y: i32, prop: &str| {
        let mut item: Item = layout.items[0].clone();
        (item.id, item.at) = (Id(id), Point::new(x, y));
        (item.prop, item.name) = (prop.into(), prop.into());
        item.finish = Finish::Matt;
        layout.items.push(item);
    };
    for (n, (x, y)) in [(420, 450), (780, 450), (600, 270), (600, 630)]
        .into_iter()
        .enumerate()
    {
        more(10 + n as u16, x, y, "porridge");
    }
    let f = said(&layout, "glare:camera").expect("mirrored");
    let act = &f.remedy.as_ref().expect("a cure").act;
    assert!(act.contains("change places"), "{act}");
    assert!(pressing(&after(&layout, &f)).is_empty());
}

#[test]
fn a_black_card_beyond_the_frame_takes_the_window_out_of_the_table() {
    let layout = polished(600);
    let f = said(&layout, "glare:table:light").expect("mirrored");
    let then = after(&layout, &f);
    assert_eq!(then.cards.len(), 1, "{:?}", f.remedy);
    assert_eq!(then.cards[0].kind, CardKind::Black);
    let left = f.remedy.as_ref().map(|r| r.after);
    assert_eq!(left, Some(0.0), "all of it");
    let frame = crate::shape::frame_outline(&then.frame);
    assert!(!crate::shape::contains(&frame, then.cards[0].at.vec()));
}

#[test]
fn with_cards_enough_the_light_is_turned_and_from_overhead_the_table_is_matt() {
    let mut layout = polished(600);
    layout.frame.width = 600;
    layout.frame.at = Point::new(400, 450);
    let card = |id: u16| Card {
        id: Id(id),
        kind: CardKind::White,
        at: Point::new(3000, 3000),
        turn: Turn::ZERO,
        width: 100,
        height: 100,
        extra: Extra::new(),
    };
    layout.cards = (40..40 + MAX_CARDS as u16).map(card).collect();
    let f = said(&layout, "glare:table:light").expect("mirrored");
    let then = after(&layout, &f);
    assert_ne!(then.light.clock, layout.light.clock, "{:?}", f.remedy);
    assert!(pressing(&then).is_empty());
    let mut layout = polished(0);
    layout.light.shape = LightShape::Disc;
    layout.light.height_above_table = 2500;
    let f = said(&layout, "glare:table:light").expect("mirrored");
    assert_eq!(after(&layout, &f).table.surface.finish, Finish::Matt);
}

#[test]
fn what_stands_over_the_lens_or_under_the_table_breaks_nothing() {
    let mut layout = soup(200);
    layout.items[0].height = 2_000;
    layout.table.surface.finish = Finish::Gloss;
    layout.light.height_above_table = -900;
    layout.light.width = 0;
    layout.rig.photographer = Some(Point::new(600, 450));
    layout.rig.at = Some(Point::new(600, 450));
    for f in read(&layout) {
        assert!(f.figure.is_finite(), "{f:?}");
        // What is not finite is written as null.
        let marks = serde_json::to_string(&f.marks).expect("JSON");
        assert!(!marks.contains("null"), "{marks}");
    }
}

#[test]
fn a_drag_reads_the_same_figures_as_rest() {
    let layout = soup(200);
    let moving = live(&Study::new(&layout));
    let rest = said(&layout, "glare:camera").expect("mirrored");
    let found = moving.findings.iter().find(|f| f.key == rest.key);
    assert_eq!(found.map(|f| f.figure), Some(rest.figure));
}

#[test]
fn with_a_crop_in_view_it_is_of_what_the_crop_keeps() {
    // The camera is mirrored in 70 mm of a disc of 200: 12.25% of it, and of
    // the half that a crop keeps, whose edge runs through its middle, as much.
    let mut layout = laid(
        r##""items":[{"id":1,"number":1,"name":"soup","prop":"soup","height":0,"at":[600,450],
        "finish":"liquid","size":{"shape":"disc","diameter":200},"role":"support"}],
        "crops":[{"id":9,"name":"left","ratio":[1,1],"at":[350,450],"width":500},
        {"id":10,"name":"off","ratio":[1,1],"at":[315,450],"width":500},
        {"id":11,"name":"away","ratio":[1,1],"at":[250,450],"width":300}]"##,
    );
    let figure = |layout: &Layout, crop: u16| {
        let study = Study::new(layout).viewing(Id(crop));
        let found = report(&study, true).findings;
        found.into_iter().find(|f| f.key == "glare:camera")
    };
    let whole = said(&layout, "glare:camera").expect("an eighth");
    assert!((whole.figure - 12.25).abs() < 0.1, "{}", whole.figure);
    let half = figure(&layout, 9).expect("an eighth of the half");
    assert!((half.figure - 12.25).abs() < 0.1, "{}", half.figure);
    let first = half.working.first().expect("lines");
    assert!(first.contains("“left”"), "{first}");
    // Cut 35 mm left of its middle, nothing of the mirrored camera is kept.
    assert!(figure(&layout, 10).is_none(), "beside the mirrored camera");
    assert!(figure(&layout, 11).is_none(), "beside the soup");
    // A remedy is of the crop too, and keeps its word there.
    let remedy = half.remedy.clone().expect("it can be moved");
    let then = cured(&layout, &half);
    let left = figure(&then, 9).map_or(0.0, |f| f.figure);
    assert!(
        (left - remedy.after).abs() < 1e-9 || left == 0.0,
        "{left}: {remedy:?}"
    );
    layout.crops.clear();
    assert!(
        figure(&layout, 9).is_some(),
        "no such crop: the whole frame"
    );
}
