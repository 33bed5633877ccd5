use crate::layout::{Layout, Point, Turn};
use crate::readings::samples::{after, disc, laid, read, said};
use crate::readings::{Finding, Mark, State};

/// A hero of 200 mm in the middle at (600, 450) and one crop, 600 mm wide at
/// (`x`, 450).
fn cropped(x: i32, crop: &str) -> Layout {
    let hero = disc(1, 600, 450, 200, "hero");
    laid(&format!(
        r#""items":[{hero}],"crops":[{{"id":9,"name":"page","at":[{x},450],"width":600,{crop}}}]"#
    ))
}

fn label(f: &Finding) -> String {
    let label = f.marks.iter().find_map(|m| match m {
        Mark::Overrun { label, .. } => Some(label.clone()),
        _ => None,
    });
    label.unwrap_or_default()
}

#[test]
fn a_millimetre_cut_is_said_and_of_a_must_wont_work() {
    // The crop's left edge is at x - 300, the hero's at 500.
    assert!(
        said(&cropped(800, r#""ratio":[1,1]"#), "crops:9:cut:1").is_none(),
        "on the edge"
    );
    let cut = said(&cropped(801, r#""ratio":[1,1]"#), "crops:9:cut:1").expect("1 mm");
    assert_eq!(
        (cut.state, cut.rank),
        (State::LookAgain, 2),
        "{}",
        cut.sentence
    );
    let must = cropped(850, r#""ratio":[1,1],"must_show":[1]"#);
    let cut = said(&must, "crops:9:cut:1").expect("50 mm");
    assert_eq!(
        (cut.state, cut.rank),
        (State::WontWork, 1),
        "{}",
        cut.sentence
    );
    assert!(
        (cut.figure - 50.0).abs() < 0.1,
        "850 - 300 - 500: {}",
        cut.figure
    );
    assert_eq!(label(&cut), "5 cm", "the lost part is marked");
    let slid = after(&must, &cut);
    assert!(said(&slid, "crops:9:cut:1").is_none(), "the slide keeps it");
}

#[test]
fn several_things_lost_by_one_crop_are_one_sentence() {
    let dishes = [
        disc(1, 200, 450, 160, "hero"),
        disc(2, 1000, 450, 160, "support"),
    ]
    .join(",");
    let layout = laid(&format!(
        r#""items":[{dishes}],"crops":[{{"id":9,"name":"tall","ratio":[9,16],"at":[600,450],
        "width":300,"must_show":[1,2]}}]"#
    ));
    let asks: Vec<Finding> = read(&layout)
        .into_iter()
        .filter(|f| f.reading == "crops" && f.is_pressing())
        .collect();
    assert_eq!(asks.len(), 1, "one cause: {asks:?}");
    assert!(
        asks[0].sentence.contains("dish 1 and dish 2"),
        "{}",
        asks[0].sentence
    );
    assert!(asks[0].remedy.is_none(), "no slide keeps both");
    let note = said(&layout, "crops:9:all").expect("every placement is told");
    assert!(note.sentence.contains("left out: 2"), "{}", note.sentence);
}

#[test]
fn a_crop_past_the_frame_wont_work() {
    // The frame ends at 1125; the crop reaches x + 300.
    assert!(
        said(&cropped(825, r#""ratio":[1,1]"#), "crops:9:outside").is_none(),
        "edge on edge"
    );
    let layout = cropped(826, r#""ratio":[1,1]"#);
    let out = said(&layout, "crops:9:outside").expect("1 mm past");
    assert_eq!(
        (out.state, out.rank),
        (State::WontWork, 1),
        "{}",
        out.sentence
    );
    let tall = cropped(600, r#""ratio":[1,2]"#);
    let out = said(&tall, "crops:9:outside").expect("1200 mm high in a frame of 700");
    assert!(
        (out.figure - 250.0).abs() < 1e-9,
        "above and below: {}",
        out.figure
    );
    assert!(
        out.remedy.is_none(),
        "it would have to shrink by more than a quarter"
    );
}

#[test]
fn a_millimetre_in_the_gutter_is_said() {
    // Scale 600 / 400: a gutter of 20 mm is a strip of 30 mm about the fold.
    let page = |x: i32| cropped(x, r#""print":[400,300],"gutter":20"#);
    // The hero spans 500 to 700; the strip x - 15 to x + 15.
    assert!(
        said(&page(715), "crops:9:gutter:1").is_none(),
        "strip beside the hero"
    );
    let caught = said(&page(714), "crops:9:gutter:1").expect("1 mm in");
    assert!((caught.figure - 1.0).abs() < 0.1, "1 mm: {}", caught.figure);
    let layout = page(690);
    let caught = said(&layout, "crops:9:gutter:1").expect("25 mm in");
    assert_eq!(
        (caught.state, caught.rank),
        (State::LookAgain, 2),
        "{}",
        caught.sentence
    );
    assert_eq!(label(&caught), "2.5 cm", "marked");
    let slid = after(&layout, &caught);
    assert_eq!(slid.items, layout.items, "the crop moves, not the dish");
    assert!(
        said(&slid, "crops:9:gutter:1").is_none(),
        "out of the strip"
    );
}

#[test]
fn a_dish_moves_out_of_the_gutter_when_the_page_cannot_slide() {
    let hero = disc(1, 600, 450, 100, "hero");
    let layout = laid(&format!(
        r#""items":[{hero}],"crops":[{{"id":9,"name":"page","at":[600,450],"width":1050,
        "print":[420,280],"gutter":20,"must_show":[1]}}]"#
    ));
    let caught = said(&layout, "crops:9:gutter:1").expect("in the fold");
    assert!(
        (caught.figure - 50.0).abs() < 0.1,
        "the whole strip: {}",
        caught.figure
    );
    let moved = after(&layout, &caught);
    assert_ne!(moved.items[0].at, layout.items[0].at, "the dish moves");
    assert!(said(&moved, "crops:9:gutter:1").is_none(), "clear of it");
}

#[test]
fn a_slide_out_of_a_cut_does_not_end_in_the_gutter() {
    // Cut by 10 mm on the left; the nearest place that keeps it clears the
    // gutter too.
    let hero = disc(1, 390, 450, 120, "hero");
    let layout = laid(&format!(
        r#""items":[{hero}],"crops":[{{"id":9,"name":"page","at":[640,450],"width":600,
        "print":[400,300],"gutter":120,"must_show":[1]}}]"#
    ));
    let cut = said(&layout, "crops:9:cut:1").expect("10 mm");
    let slid = after(&layout, &cut);
    let left: Vec<String> = read(&slid)
        .into_iter()
        .filter(|f| f.reading == "crops" && f.is_pressing() && f.rule.name != "pixels to the inch")
        .map(|f| f.sentence)
        .collect();
    assert!(left.is_empty(), "nothing else is spoiled: {left:?}");
}

#[test]
fn half_a_millimetre_of_bleed_missing_is_said() {
    // Scale 2: 3 mm of bleed need 6 mm on the table; the frame ends at 1125.
    let page = |x: i32| {
        let mut layout = cropped(x, r#""print":[300,200],"bleed":3"#);
        layout.items.clear();
        layout
    };
    assert!(said(&page(819), "crops:9:bleed").is_none(), "6 mm of room");
    let layout = page(820);
    let short = said(&layout, "crops:9:bleed").expect("5 mm of room");
    assert!(
        (short.figure - 1.0).abs() < 1e-9,
        "1 mm missing: {}",
        short.figure
    );
    assert!(
        said(&after(&layout, &short), "crops:9:bleed").is_none(),
        "tightened"
    );
}

#[test]
fn half_a_millimetre_in_the_safe_margin_is_said() {
    // Scale 2: 10 mm are 20 mm on the table; the crop is 600 × 400.
    let page = |dx: i32| {
        let copy = format!(
            r#""print":[300,200],"safe":10,"copy":{{"area":[{dx},100,200,60],"wording":"Supper"}}"#
        );
        cropped(600, &copy)
    };
    assert!(
        said(&page(180), "crops:9:safe:copy").is_none(),
        "180 + 100 = 300 - 20"
    );
    let layout = page(181);
    let near = said(&layout, "crops:9:safe:copy").expect("1 mm in");
    assert_eq!(
        (near.state, near.rank),
        (State::LookAgain, 2),
        "{}",
        near.sentence
    );
    assert!(
        said(&after(&layout, &near), "crops:9:safe:copy").is_none(),
        "moved in"
    );
    let cut = said(&page(230), "crops:9:safe:copy").expect("past the trim");
    assert!(cut.sentence.contains("past its trim"), "{}", cut.sentence);
}

#[test]
fn a_must_show_thing_in_the_safe_margin_is_said_apart_from_a_cut() {
    // The crop's left edge is at 300 mm + its shift; the hero starts at 500.
    let page = |x: i32| cropped(x, r#""print":[300,200],"safe":10,"must_show":[1]"#);
    assert!(
        said(&page(780), "crops:9:safe:1").is_none(),
        "20 mm of room"
    );
    assert!(
        said(&page(790), "crops:9:safe:1").is_some(),
        "10 mm of room"
    );
    assert!(
        said(&page(830), "crops:9:safe:1").is_none(),
        "a cut is said as a cut"
    );
    assert!(
        said(&page(830), "crops:9:cut:1").is_some(),
        "a cut is said as a cut"
    );
}

#[test]
fn a_turned_camera_changes_nothing_about_a_centred_crop() {
    let mut layout = cropped(600, r#""ratio":[1,1]"#);
    layout.items[0].at = Point::new(600, 200);
    let straight = said(&layout, "crops:9:cut:1")
        .expect("cut at the top")
        .figure;
    layout.frame.turn = Turn::from_degrees(180.0);
    let turned = said(&layout, "crops:9:cut:1")
        .expect("cut at the bottom")
        .figure;
    assert!((straight - turned).abs() < 0.01, "{straight} and {turned}");
}

/// A frame of 1050 × 700 mm on 6000 × 4000 pixels: 5.714 pixels a mm.
#[test]
fn under_three_hundred_pixels_to_the_inch_is_said() {
    // 600 mm are 3428.6 pixels, on 290 mm of print 300.3 to the inch.
    let page = |wide: i32| cropped(600, &format!(r#""print":[{wide},200],"bleed":3"#));
    let enough = said(&page(290), "crops:9:size").expect("always told");
    assert_eq!(enough.state, State::Holds, "{}", enough.sentence);
    assert!(
        enough.sentence.contains("3429 × 2365"),
        "{}",
        enough.sentence
    );
    let few = said(&page(291), "crops:9:size").expect("always told");
    assert_eq!(
        (few.state, few.rank),
        (State::LookAgain, 3),
        "{}",
        few.sentence
    );
    assert!(few.sentence.contains("only 299 ppi"), "{}", few.sentence);
    assert!((few.figure - 299.27).abs() < 0.01, "{}", few.figure);
    // 297 and 206 mm with bleed.
    assert!(few.working[1].contains("3508 × 2433"), "{:?}", few.working);
}

#[test]
fn fewer_pixels_than_a_screen_takes_is_said() {
    let post = |width: i32| {
        let mut layout = cropped(600, r#""ratio":[8,10]"#);
        layout.crops[0].width = width;
        said(&layout, "crops:9:size").expect("always told")
    };
    // 1080 ÷ 5.714 are 189 mm.
    let enough = post(190);
    assert_eq!(enough.state, State::Holds, "{}", enough.sentence);
    assert!(
        enough.sentence.contains("1080 × 1350"),
        "{}",
        enough.sentence
    );
    let few = post(188);
    assert_eq!(
        (few.state, few.rank),
        (State::LookAgain, 3),
        "{}",
        few.sentence
    );
    let any = said(&cropped(600, r#""ratio":[7,5]"#), "crops:9:size").expect("always told");
    assert_eq!(
        any.state,
        State::Holds,
        "no size is usual: {}",
        any.sentence
    );
    assert!(!any.sentence.contains("usual"), "{}", any.sentence);
}

#[test]
fn a_crop_cuts_what_the_lens_sees() {
    // 300 mm high at 850: the lens at 1508.3 sees its far edge at 600 + 270 ×
    // 1508.3 ÷ 1208.3 = 937.0.
    let at = |edge: i32| {
        let mut layout = cropped(edge - 300, r#""ratio":[1,1]"#);
        layout.items[0].at = Point::new(850, 450);
        layout.items[0].size = crate::layout::open(
            r#"{"format":"overspread-layout","version":0,"id":"00000000000000aa","next_id":9,
            "table":{"width":900},"frame":{"at":[1,1],"width":900},
            "items":[{"id":1,"at":[0,0],"size":{"shape":"disc","diameter":40}}]}"#,
        )
        .expect("opens")
        .items[0]
            .size
            .clone();
        layout.items[0].height = 300;
        layout.items[0].prop = "nothing-known".into();
        said(&layout, "crops:9:cut:1")
    };
    assert!(at(938).is_none(), "inside");
    let cut = at(930).expect("its top is cut");
    assert!((cut.figure - 7.0).abs() < 0.2, "{}", cut.figure);
}
