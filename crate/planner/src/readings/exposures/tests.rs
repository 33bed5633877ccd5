use super::super::finding::{Finding, State};
use super::super::study::Study;
use super::read;
use crate::layout::{As, ExposureKind, Id, Layout, open};

/// A carafe and a loaf; A pours from the carafe in exposure 1 and two hands of
/// exposure 2 are at the loaf.
fn laid(poured: &str, torn: &str, clean: bool) -> Layout {
    let first = if clean {
        r#"{"id":5,"kind":"clean"},"#
    } else {
        ""
    };
    let text = format!(
        r##"{{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":40,
        "table":{{"width":1600,"depth":900}},"frame":{{"at":[800,450],"width":1300}},
        "items":[
          {{"id":1,"name":"carafe","prop":"oil-carafe","at":[500,400],"size":{{"shape":"disc","diameter":90}}}},
          {{"id":3,"name":"loaf","prop":"loaf","at":[900,400],"size":{{"shape":"oval","width":300,"depth":160}}}}],
        "people":[{{"id":4}}],
        "exposures":[{first}{{"id":6,"states":[{poured}]}},{{"id":7,"states":[{torn}]}}],
        "hands":[{{"id":8,"person":4,"exposure":6,"entry":[0,0],"target":[700,400],"holds":1}},
          {{"id":9,"person":4,"exposure":7,"pair":10,"entry":[0,0],"target":[900,380],"holds":3}},
          {{"id":10,"person":4,"exposure":7,"pair":9,"side":"left","entry":[0,0],"target":[920,380],"holds":3}}]}}"##
    );
    open(&text).expect("a sound layout")
}

const AWAY: &str = r#"{"item":1,"state":"absent"}"#;
const UP: &str = r#"{"item":3,"state":"absent"}"#;

fn about(layout: &Layout, end: &str) -> Option<Finding> {
    let all = read(&Study::new(layout), true);
    all.into_iter().find(|f| f.key.ends_with(end))
}

fn cured(layout: &Layout, end: &str) -> Layout {
    let f = about(layout, end).expect("said");
    let remedy = f.remedy.as_ref().expect("a remedy");
    assert_eq!(remedy.after, 0.0, "all of it");
    let mut after = layout.clone();
    remedy.edit.apply_checked(&mut after).expect("it fits");
    assert!(about(&after, end).is_none(), "{}", remedy.act);
    after
}

#[test]
fn what_is_held_cannot_stand_in_its_place() {
    let layout = laid("", UP, true);
    let f = about(&layout, ":twice").expect("the carafe");
    assert_eq!((f.state, f.rank), (State::WontWork, 1));
    assert_eq!(f.about, [Id(1)]);
    assert!(
        f.sentence
            .contains("carafe stands in its place in exposure 1"),
        "{}",
        f.sentence
    );
    let after = cured(&layout, ":twice");
    assert_eq!(after.exposures[1].states[0].is, As::Absent);
    assert!(
        about(&laid(AWAY, UP, true), ":twice").is_none(),
        "it is taken up"
    );
}

#[test]
fn a_thing_held_by_two_hands_that_are_no_pair_is_said() {
    let mut layout = laid(AWAY, UP, true);
    assert!(about(&layout, ":held").is_none(), "a pair may");
    layout.hands[1].pair = None;
    layout.hands[2].pair = None;
    let f = about(&layout, ":held").expect("two hands");
    assert!(f.sentence.contains("loaf"), "{}", f.sentence);
}

#[test]
fn a_state_of_a_gone_thing_is_told_and_kept() {
    let mut layout = laid(AWAY, UP, true);
    assert!(about(&layout, ":gone").is_none(), "all are there");
    layout.items.remove(1);
    layout.hands.truncate(1);
    let f = about(&layout, ":gone").expect("the loaf is gone");
    assert_eq!(f.figure, 1.0);
    let after = cured(&layout, ":gone");
    assert!(after.exposures[2].states.is_empty(), "forgotten when asked");
    assert_eq!(
        open(&layout.to_json()).expect("opens"),
        layout,
        "kept till then"
    );
}

#[test]
fn an_exposure_without_hands_is_said() {
    let mut layout = laid(AWAY, UP, true);
    assert!(about(&layout, ":idle").is_none(), "all have hands");
    layout.hands.remove(0);
    assert_eq!(cured(&layout, ":idle").exposures.len(), 2, "taken out");
}

#[test]
fn each_state_of_the_food_wants_a_clean_exposure() {
    let cut = r##"{"item":3,"state":"changed","parts":{"food":{"colours":[{"srgb":"#ffffff","share":100,"origin":"guess"}]}}}"##;
    assert!(
        about(&laid(AWAY, UP, true), "exposures:clean").is_none(),
        "one state"
    );
    let f = about(&laid(AWAY, cut, true), "exposures:clean").expect("cut bread");
    assert_eq!(f.figure, 1.0, "the state after");
    let after = cured(&laid(AWAY, cut, true), "exposures:clean");
    let kinds: Vec<ExposureKind> = after.exposures.iter().map(|e| e.kind).collect();
    let (clean, hands) = (ExposureKind::Clean, ExposureKind::Hands);
    assert_eq!(kinds, [clean, hands, hands, clean], "last, as it is left");
    let none = cured(&laid(AWAY, UP, false), "exposures:clean");
    assert_eq!(none.exposures[0].kind, clean, "first, before any hand");
}

const CUT: &str = r##"{"item":3,"state":"changed","parts":{"food":{"colours":[{"srgb":"#ffffff","share":100,"origin":"guess"}]}}}"##;

#[test]
fn an_order_that_costs_more_than_it_must_is_said() {
    // Hands 2 cut the loaf after hands 1 have shown it whole: as told.
    let told = laid(AWAY, CUT, true);
    let f = about(&told, ":order").expect("told when all is");
    assert_eq!(f.state, State::Holds, "{}", f.sentence);
    let mut back = told.clone();
    back.exposures.reverse();
    let f = about(&back, ":order").expect("it cannot be shot so");
    assert!(
        f.is_pressing() && f.sentence.contains("cannot be shot"),
        "{}",
        f.sentence
    );
    let remedy = f.remedy.expect("the other way round");
    let mut after = back.clone();
    remedy.edit.apply_checked(&mut after).expect("it fits");
    assert!(!about(&after, ":order").expect("still told").is_pressing());
}

#[test]
fn food_changed_in_two_ways_is_needed_twice() {
    let other = CUT.replace("#ffffff", "#101010");
    let f = about(&laid(&other, CUT, true), ":food").expect("two loaves");
    assert!(
        f.sentence.contains("exposure 1 and exposure 2"),
        "{}",
        f.sentence
    );
    assert!(about(&laid(AWAY, CUT, true), ":food").is_none(), "one loaf");
}

/// Two arms from the left edge, one above the other, in two exposures.
fn two_arms(second: i32) -> Layout {
    let text = format!(
        r#"{{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":40,
        "table":{{"width":1600,"depth":900}},"frame":{{"at":[800,450],"width":1300}},
        "light":{{"clock":0,"distance":1200,"height_above_table":1500,"width":600,"height":600}},
        "seats":[{{"id":1,"at":[0,250]}},{{"id":2,"at":[0,{second}]}}],
        "people":[{{"id":3,"seat":1}},{{"id":4,"seat":2}}],
        "exposures":[{{"id":6}},{{"id":7}}],
        "hands":[{{"id":8,"person":3,"exposure":6,"entry":[0,0],"target":[520,300]}},
          {{"id":9,"person":4,"exposure":7,"entry":[0,0],"target":[520,{second}]}}]}}"#
    );
    open(&text).expect("a sound layout")
}

#[test]
fn exposures_that_want_the_same_square_centimetre_clash() {
    let over = about(&two_arms(330), ":clash").expect("arm over arm");
    assert!(over.sentence.contains("overlaps"), "{}", over.sentence);
    assert_eq!((over.state, over.rank), (State::LookAgain, 2));
    assert!(about(&two_arms(800), ":clash").is_none(), "far apart");
    let by_shadow = (300..800).rev().find_map(|y| about(&two_arms(y), ":clash"));
    let by_shadow = by_shadow.expect("somewhere only the shadow reaches");
    assert!(
        by_shadow.sentence.contains("shadow"),
        "{}",
        by_shadow.sentence
    );
    assert!(by_shadow.figure >= 1.0, "{}", by_shadow.figure);
}

#[test]
fn a_place_farther_along_the_edge_parts_exposures() {
    let shadow = (300..800)
        .rev()
        .map(two_arms)
        .find(|l| about(l, ":clash").is_some());
    let layout = shadow.expect("a clash");
    let f = about(&layout, ":clash").expect("said");
    let remedy = f.remedy.as_ref().expect("a remedy");
    assert!(remedy.act.starts_with("Move "), "{}", remedy.act);
    let mut after = layout.clone();
    remedy.edit.apply_checked(&mut after).expect("it fits");
    assert!(about(&after, ":clash").is_none(), "{}", remedy.act);
}

#[test]
fn what_two_people_can_shoot_together_is_told() {
    let f = about(&two_arms(800), ":fewest").expect("far apart, two people");
    assert_eq!((f.state, f.figure), (State::Holds, 1.0), "{}", f.sentence);
    assert!(about(&two_arms(330), ":fewest").is_none(), "arm over arm");
    let mut alone = two_arms(800);
    alone.hands[1].person = alone.hands[0].person;
    assert!(about(&alone, ":fewest").is_none(), "one person");
}

#[test]
fn thirty_hands_in_one_exposure_are_read_and_none_is_lost() {
    let hand = |n: u16| {
        format!(
            r#"{{"id":{},"person":3,"exposure":6,"entry":[{},0],"target":[{},{}]}}"#,
            100 + n,
            200 + 40 * n,
            200 + 40 * n,
            200 + 15 * n
        )
    };
    let hands: Vec<String> = (0..30).map(hand).collect();
    let text = format!(
        r#"{{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":200,
        "table":{{"width":1600,"depth":900}},"frame":{{"at":[800,450],"width":1300}},
        "people":[{{"id":3}}],"exposures":[{{"id":6}},{{"id":7}}],"hands":[{}]}}"#,
        hands.join(",")
    );
    let layout = open(&text).expect("a sound layout");
    assert_eq!(layout.hands.len(), 30);
    assert_eq!(
        open(&layout.to_json()).as_ref(),
        Ok(&layout),
        "all are kept"
    );
    let report = crate::readings::report(&Study::new(&layout), false);
    let twice = report.findings.iter().find(|f| f.key == "hands:3:6:twice");
    assert!(
        twice.is_some_and(|f| f.state == State::WontWork),
        "one person"
    );
    assert!(about(&layout, ":7:idle").is_some(), "the other has none");
    let finite = report.findings.iter().all(|f| f.figure.is_finite());
    assert!(finite, "every figure is one");
}

#[test]
fn what_this_table_is_worth_in_case_is_told_and_added() {
    let mut layout = laid(AWAY, UP, true);
    let f = about(&layout, ":insurance").expect("three kinds");
    assert_eq!((f.state, f.figure), (State::Holds, 3.0), "{}", f.sentence);
    assert!(
        !f.sentence.contains("mirror"),
        "all is matt: {}",
        f.sentence
    );
    layout.items[0].finish = crate::layout::Finish::Clear;
    layout.items[1].prop = "soup".into();
    let f = about(&layout, ":insurance").expect("and two more");
    assert_eq!(f.figure, 5.0, "{}", f.sentence);
    assert!(f.sentence.contains("carafe mirror"), "{}", f.sentence);
    let after = cured(&layout, ":insurance");
    let count = |kind| after.exposures.iter().filter(|e| e.kind == kind).count();
    let kinds = [
        ExposureKind::Card,
        ExposureKind::Empty,
        ExposureKind::NoGlare,
        ExposureKind::Steam,
        ExposureKind::Insurance,
    ];
    assert_eq!(kinds.map(count), [1; 5], "each once");
    layout.hands.clear();
    assert!(about(&layout, ":insurance").is_none(), "before any hand");
}

#[test]
fn a_seam_over_glass_costs_more_than_over_the_board() {
    let mut layout = two_arms(800);
    assert!(about(&layout, ":seam").is_none(), "bare board");
    let bowls = (0..30).map(|n| {
        let (id, number, x, y) = (20 + n, 1 + n, 180 + 90 * (n % 5), 150 + 90 * (n / 5));
        format!(
            r#"{{"id":{id},"number":{number},"prop":"small-bowl","at":[{x},{y}],"size":{{"shape":"disc","diameter":80,"rim":6}}}}"#
        )
    });
    let items = format!("\"items\": [{}]", bowls.collect::<Vec<_>>().join(","));
    let text = layout.to_json().replacen("\"items\": []", &items, 1);
    let text = text.replacen("\"next_id\": 40", "\"next_id\": 60", 1);
    let text = text.replacen("\"next_number\": 1", "\"next_number\": 60", 1);
    layout = open(&text).expect("a sound layout");
    assert_eq!(layout.items.len(), 30, "bowls all round the arm");
    let cost = |l: &Layout| about(l, "6:seam").map_or(0.0, |f| f.figure);
    let rims = cost(&layout);
    for item in &mut layout.items {
        item.finish = crate::layout::Finish::Clear;
    }
    let glass = cost(&layout);
    assert!(glass > rims, "{glass} over glass, {rims} over rims");
    let f = about(&layout, "6:seam").expect("said");
    assert!(f.sentence.contains("over glass"), "{}", f.sentence);
    for item in &mut layout.items {
        item.at.x += 800;
    }
    assert!(about(&layout, "6:seam").is_none(), "out of its way");
}
