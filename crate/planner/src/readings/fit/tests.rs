use crate::layout::{Layout, LayoutId, LinenState, Point, TableShape};
use crate::readings::samples::{after, laid, said};
use crate::readings::{Mark, State};

/// A board of 1200 × 900 mm under a 3:2 frame of 1050 × 700 mm.
fn empty() -> Layout {
    Layout::empty(LayoutId(1))
}

#[test]
fn a_frame_off_one_side_runs_over_by_just_that() {
    let mut layout = empty();
    layout.frame.at = Point::new(447, 450);
    let f = said(&layout, "fit:board").expect("78 mm of floor on the left");
    assert!(
        (f.figure - 78.0).abs() < 1e-9,
        "525 - 447 mm, got {}",
        f.figure
    );
    assert!(!f.marks.is_empty(), "the strip is drawn");
    let slid = after(&layout, &f);
    assert_eq!(slid.frame.at, Point::new(525, 450), "back by 78 mm");
    assert!(said(&slid, "fit:board").is_none(), "no floor is left");
}

#[test]
fn a_millimetre_of_floor_is_said_and_less_is_not() {
    let mut layout = empty();
    layout.frame.at = Point::new(525, 450);
    assert!(said(&layout, "fit:board").is_none(), "edge on edge");
    layout.frame.at = Point::new(524, 450);
    let f = said(&layout, "fit:board").expect("1 mm of floor");
    assert_eq!((f.state, f.rank), (State::LookAgain, 1), "{}", f.sentence);
}

#[test]
fn a_frame_off_at_a_corner_has_a_sane_figure() {
    let mut layout = empty();
    layout.frame.at = Point::new(495, 310);
    let f = said(&layout, "fit:board").expect("30 and 40 mm off");
    assert!(
        (f.figure - 50.0).abs() < 1e-9,
        "the 3-4-5 corner, got {}",
        f.figure
    );
}

#[test]
fn crops_that_keep_off_the_floor_make_it_a_note() {
    let crop = |at: &str| {
        let crops =
            format!(r#""crops":[{{"id":1,"name":"post","ratio":[1,1],"at":{at},"width":400}}]"#);
        let mut layout = laid(&crops);
        layout.frame.at = Point::new(447, 450);
        said(&layout, "fit:board").expect("78 mm of floor")
    };
    let spared = crop("[500,450]");
    assert_eq!(spared.rank, 3, "{}", spared.sentence);
    assert!(spared.sentence.contains("no crop"), "{}", spared.sentence);
    let shown = crop("[150,450]");
    assert_eq!(shown.rank, 1, "{}", shown.sentence);
    assert!(shown.sentence.contains("post"), "{}", shown.sentence);
}

#[test]
fn corners_off_a_round_table_are_seen_and_may_be_meant() {
    let mut layout = empty();
    layout.table.shape = TableShape::Round;
    layout.table.depth = 1200;
    layout.frame.at = Point::new(600, 600);
    let f = said(&layout, "fit:board").expect("its corners show floor");
    let corner = f64::sqrt(525.0 * 525.0 + 350.0 * 350.0);
    assert!(
        (f.figure - (corner - 600.0)).abs() < 0.1,
        "got {}",
        f.figure
    );
    assert!(f.sentence.contains("corners"), "{}", f.sentence);
    layout.intended = vec![crate::layout::Accepted {
        finding: f.key.clone(),
        figure: f.figure.round() as i32,
        extra: crate::layout::Extra::new(),
    }];
    let meant = said(&layout, "fit:board").expect("still so");
    assert_eq!(meant.state, State::Intended, "the user means it");
    layout.frame.width += 40;
    let again = said(&layout, "fit:board").expect("more floor");
    assert_eq!(again.state, State::LookAgain, "it really changed");
}

#[test]
fn a_bigger_board_is_the_last_resort_and_keeps_the_picture() {
    let mut layout = laid(r#""crops":[{"id":1,"ratio":[3,2],"at":[600,450],"width":1050}]"#);
    layout.frame.width = 1500;
    layout.crops[0].width = 1500;
    let f = said(&layout, "fit:board").expect("wider than the board");
    assert!(
        f.remedy
            .as_ref()
            .is_some_and(|r| r.act.starts_with("Make the board")),
        "{:?}",
        f.remedy
    );
    let grown = after(&layout, &f);
    let moved = grown.frame.at.x - layout.frame.at.x;
    assert_eq!(
        grown.crops[0].at.x - layout.crops[0].at.x,
        moved,
        "all move together"
    );
    assert!(said(&grown, "fit:board").is_none(), "no floor is left");
    assert!(said(&grown, "fit:margin").is_none(), "with the usual room");
}

#[test]
fn margin_is_said_below_a_tenth_and_not_above() {
    let mut layout = empty();
    let note = said(&layout, "fit:margin").expect("75 mm of 1050 is under a tenth");
    assert!(note.taste, "a note, silent until asked");
    layout.frame.width = 990;
    assert!(
        said(&layout, "fit:margin").is_none(),
        "105 mm of 990 is over"
    );
}

#[test]
fn a_cloth_that_is_the_ground_must_fill_the_frame() {
    let mut layout = laid(
        r#""linens":[{"id":1,"name":"linen cloth","kind":"cloth","at":[600,450],"size":[1000,1400]}]"#,
    );
    let f = said(&layout, "fit:cloth:1").expect("25 mm of board on either side");
    assert!(
        (f.figure - 25.0).abs() < 1e-9,
        "1050 less 1000, halved: {}",
        f.figure
    );
    assert!(matches!(f.marks[0], Mark::Overrun { .. }), "hatched");
    layout.linens[0].size = [1100, 800];
    assert!(said(&layout, "fit:cloth:1").is_none(), "it fills the frame");
    layout.linens[0].size = [400, 1400];
    assert!(
        said(&layout, "fit:cloth:1").is_none(),
        "a strip is no ground"
    );
    layout.linens[0].size = [1000, 1400];
    layout.linens[0].state = LinenState::Folded;
    assert!(said(&layout, "fit:cloth:1").is_none(), "folded away");
}

#[test]
fn a_low_ceiling_wont_work_and_says_who_decides() {
    let mut layout = empty();
    layout.rig.ceiling = 2000;
    let f = said(&layout, "fit:ceiling").expect("always said");
    assert_eq!(f.state, State::WontWork, "{}", f.sentence);
    assert!(
        f.sentence.contains("qualified grip"),
        "the caution: {}",
        f.sentence
    );
    let shorter = after(&layout, &f);
    assert!(shorter.camera.focal < layout.camera.focal, "a shorter lens");
    let holds = said(&shorter, "fit:ceiling").expect("always said");
    assert_eq!(holds.state, State::Holds, "{}", holds.sentence);
    let promised = f.remedy.expect("a remedy").after;
    assert!((holds.figure - promised).abs() < 1e-9, "as promised");
}

#[test]
fn a_ceiling_is_in_doubt_within_a_twentieth_and_wont_work_below_nothing() {
    let mut layout = empty();
    // 50 mm on full frame over 1050 mm: lens at 1508.3 mm, image at 51.7 mm.
    let needed = 750.0 + 1_508.333_3 + 51.714_3 + 100.0;
    let state = |layout: &Layout| said(layout, "fit:ceiling").expect("always said").state;
    layout.rig.ceiling = needed as i32;
    assert_eq!(state(&layout), State::WontWork, "a fraction of a mm short");
    layout.rig.ceiling = needed as i32 + 1;
    assert_eq!(state(&layout), State::LookAgain, "less than lenses differ");
    layout.rig.ceiling = (needed + 1_508.4 * 0.05) as i32;
    assert_eq!(state(&layout), State::LookAgain, "just within a twentieth");
    layout.rig.ceiling += 1;
    assert_eq!(state(&layout), State::Holds, "just beyond it");
}

#[test]
fn a_lens_must_clear_the_tallest_thing() {
    // 24 mm on full frame over 600 mm: the lens stands at 424 mm.
    let tall = |height: i32| {
        let items = format!(
            r#""items":[{{"id":1,"name":"candle","prop":"taper-candle","at":[600,450],
            "size":{{"shape":"disc","diameter":80}},"height":{height}}}]"#
        );
        let mut layout = laid(&items);
        layout.frame.width = 600;
        layout.camera.focal = 24;
        layout
    };
    assert!(said(&tall(274), "fit:lens").is_none(), "150 mm clear");
    let near = said(&tall(275), "fit:lens").expect("149 mm clear");
    assert_eq!(near.state, State::LookAgain, "{}", near.sentence);
    let through = said(&tall(425), "fit:lens").expect("taller than the lens");
    assert_eq!(through.state, State::WontWork, "{}", through.sentence);
    let longer = after(&tall(425), &through);
    assert!(longer.camera.focal > 24, "a longer lens stands higher");
    assert!(said(&longer, "fit:lens").is_none(), "and clears it");
}

#[test]
fn only_the_lenses_at_hand_are_offered() {
    let mut layout = empty();
    layout.rig.ceiling = 2000;
    layout.camera.lenses = vec![60, 28, 50];
    let f = said(&layout, "fit:ceiling").expect("always said");
    assert_eq!(after(&layout, &f).camera.focal, 28, "the one there is");
    let which = said(&layout, "fit:lenses").expect("always said");
    assert!(which.sentence.ends_with("in mm: 28."), "{}", which.sentence);
    assert_eq!(
        which.working.len(),
        4,
        "each with its height: {:?}",
        which.working
    );
    layout.camera.lenses = vec![50, 60];
    let which = said(&layout, "fit:lenses").expect("always said");
    assert!(which.sentence.starts_with("None"), "{}", which.sentence);
}

#[test]
fn a_lower_board_makes_room_for_a_lens_that_is_the_only_one() {
    let mut layout = empty();
    layout.camera.lenses = vec![50];
    // 1508.3 mm of lens, 51.7 behind it, 100 of body, a twentieth of 1508.3.
    layout.rig.ceiling = 2_400;
    let f = said(&layout, "fit:ceiling").expect("always said");
    let lower = after(&layout, &f);
    assert_eq!(lower.table.height, 660, "2400 - 1660 - 75.4, in whole cm");
    let then = said(&lower, "fit:ceiling").expect("always said");
    assert_eq!(then.state, State::Holds, "{}", then.sentence);
    assert_eq!(
        f.remedy.expect("a remedy").after,
        then.figure,
        "as promised"
    );
    layout.rig.ceiling = 1_900;
    let f = said(&layout, "fit:ceiling").expect("always said");
    assert_eq!(after(&layout, &f).table.height, 50, "on the floor");
    layout.rig.ceiling = 1_700;
    let f = said(&layout, "fit:ceiling").expect("always said");
    let floor = f.remedy.as_ref().is_some_and(|r| r.act.contains("floor"));
    assert!(!floor, "not low enough: {:?}", f.remedy);
}

#[test]
fn a_narrow_picture_is_cut_out_of_the_sensor() {
    let mut layout = empty();
    layout.frame.ratio = crate::layout::Ratio {
        width: 1,
        height: 1,
    };
    layout.frame.width = 700;
    // 700 mm fill the sensor's 24: as high as 1050 mm on its 36.
    let f = said(&layout, "fit:ceiling").expect("always said");
    layout.frame.ratio = crate::layout::Ratio {
        width: 3,
        height: 2,
    };
    layout.frame.width = 1_050;
    let wide = said(&layout, "fit:ceiling").expect("always said");
    assert!(
        (f.figure - wide.figure).abs() < 1e-6,
        "{} and {}",
        f.figure,
        wide.figure
    );
}

#[test]
fn a_phone_stands_by_the_length_it_is_quoted_with() {
    let mut layout = empty();
    layout.camera.format = crate::layout::Format::Phone;
    layout.camera.focal = 26;
    layout.frame.ratio = crate::layout::Ratio {
        width: 4,
        height: 3,
    };
    layout.frame.width = 1_331;
    // 1.331 times its distance across at 26 mm, and the lens itself 7 mm long.
    let f = said(&layout, "fit:ceiling").expect("always said");
    let room = 2_600.0 - 750.0 - 1_000.0 - 100.0;
    assert!((f.figure - room).abs() < 20.0, "{}", f.figure);
}
