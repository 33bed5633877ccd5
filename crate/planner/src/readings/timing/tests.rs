use super::super::finding::{Finding, Grade, State};
use super::super::study::Study;
use super::read;
use crate::layout::{Exposure, ExposureKind, Id, Layout, open};

/// A clean exposure, hands at nothing for ten minutes, hands at the loaf for
/// ten: 3, 4 to 14, 14 to 24.
fn laid(loaf: &str, more: &str) -> Layout {
    let text = format!(
        r#"{{"format":"overspread-layout","version":0,"id":"0000000000000001","next_id":90,
        "table":{{"width":1600,"depth":900}},"frame":{{"at":[800,450],"width":1300}},
        "items":[{{"id":1,"name":"loaf","prop":"loaf","at":[500,400],"size":{{"shape":"disc","diameter":90}}{loaf}}}],
        "seats":[{{"id":30,"at":[0,400]}}],"people":[{{"id":32,"seat":30}}],
        "exposures":[{{"id":40,"kind":"clean"}},{{"id":41}},{{"id":42}}],
        "hands":[{{"id":50,"person":32,"exposure":41,"entry":[150,400],"target":[700,700]}},
          {{"id":51,"person":32,"exposure":42,"entry":[150,400],"target":[480,400]}}]{more}}}"#
    );
    open(&text).expect("a sound layout")
}

fn holding(minutes: i32) -> Layout {
    laid(&format!(r#","hold_minutes":{minutes}"#), "")
}

fn said(layout: &Layout, key: &str) -> Option<Finding> {
    let all = read(&Study::new(layout), true);
    all.into_iter().find(|f| f.key == key)
}

fn cured(layout: &Layout, key: &str) -> (String, Layout) {
    let f = said(layout, key).expect("said");
    let remedy = f.remedy.expect("a remedy");
    let mut after = layout.clone();
    remedy.edit.apply_checked(&mut after).expect("it fits");
    let left = said(&after, key).map_or(0.0, |f| f.figure);
    assert_eq!(left, remedy.after, "as promised: {}", remedy.act);
    (remedy.act, after)
}

#[test]
fn food_a_minute_past_its_time_is_said() {
    assert!(said(&holding(24), "timing:hold").is_none(), "just enough");
    let f = said(&holding(23), "timing:hold").expect("a minute");
    assert_eq!((f.state, f.rank, f.figure), (State::LookAgain, 3, 1.0));
    let main = laid(r#","hold_minutes":23,"role":"hero""#, "");
    let f_main = said(&main, "timing:hold").expect("a minute");
    assert_eq!(f_main.rank, 2, "a main dish");
    assert_eq!((&f.about[..], f.grade), (&[Id(1)][..], Grade::Physics));
    assert_eq!(
        f.sentence,
        "In this order the loaf will be on the set for 24 min and look right for 23: shoot by 0:23."
    );
    let (act, after) = cured(&holding(23), "timing:hold");
    assert_eq!(act, "Shoot what dies early first");
    assert_eq!(after.exposures[1].id, Id(42), "the hands at it first");
}

#[test]
fn what_no_order_saves_is_stood_in_for_or_shot_faster() {
    // Both hands are at it now: 3 minutes and ten and ten, one way between.
    let mut both = holding(22);
    both.hands[0].target = both.hands[1].target;
    let (act, after) = cured(&both, "timing:hold");
    assert_eq!(act, "Take 8 min for exposure 1");
    assert!(said(&after, "timing:hold").is_none(), "it fits then");
    // One hour of hands at nothing, before one more frame at the end.
    let mut waits = holding(20);
    waits.exposures[1].minutes = Some(60);
    let more = Exposure::new(Id(43), ExposureKind::Insurance);
    waits.exposures.push(more);
    let (act, after) = cured(&waits, "timing:hold");
    assert_eq!(act, "Let something stand in for loaf until it must be real");
    assert_eq!(after.items[0].stand_in, "stand-in");
    assert_eq!(after.exposures[0].id, Id(41), "what needs no real food");
    assert!(said(&after, "timing:hold").is_none(), "it fits then");
}

#[test]
fn food_that_dies_within_its_own_exposure_wont_work() {
    assert!(said(&holding(10), "timing:alone").is_none(), "just enough");
    let f = said(&holding(9), "timing:alone").expect("a minute short");
    assert_eq!((f.state, f.figure), (State::WontWork, 1.0), "as is told");
    assert!(said(&holding(9), "timing:hold").is_none(), "said once");
    let mut usual = laid("", "");
    usual.items[0].prop = "penne".into();
    let f = said(&usual, "timing:alone:usual").expect("five minutes");
    assert_eq!(f.state, State::LookAgain, "the catalogue only guesses");
    assert_eq!(f.grade, Grade::OurChoice);
}

#[test]
fn food_out_for_more_than_two_hours_is_said() {
    let long = |minutes: i32| {
        let mut layout = laid("", "");
        layout.exposures[1].minutes = Some(minutes);
        said(&layout, "timing:eat").expect("told").state
    };
    assert_eq!(long(106), State::Holds, "120 in all");
    assert_eq!(long(107), State::LookAgain, "121");
    let f = said(&laid("", ""), "timing:eat").expect("told");
    assert!(f.sentence.contains("local food rules"), "{}", f.sentence);
}

#[test]
fn when_each_food_must_be_shot_is_told() {
    let f = said(&holding(23), "timing:by").expect("told");
    assert_eq!((f.state, f.figure), (State::Holds, 23.0));
    assert_eq!(
        f.sentence,
        "To be shot, from the first exposure on: loaf by 0:23."
    );
    assert!(said(&laid("", ""), "timing:by").is_none(), "it keeps");
    let bare = Layout::empty(crate::layout::LayoutId(1));
    assert!(read(&Study::new(&bare), true).is_empty(), "nothing yet");
}

#[test]
fn the_day_to_shoot_by_is_told() {
    let lead = |dates: &str| {
        let layout = laid("", &format!(r#","dates":{{{dates}}}"#));
        said(&layout, "timing:lead").map(|f| f.sentence)
    };
    assert_eq!(
        lead(r#""on_sale":"2026-09-01""#).as_deref(),
        Some("On sale 1 September 2026 in print: shoot by 1 May 2026, in spring.")
    );
    assert_eq!(
        lead(r#""on_sale":"2026-03-01","medium":"web","hemisphere":"south""#).as_deref(),
        Some("Online 1 March 2026: shoot by 1 February 2026, in summer.")
    );
    assert_eq!(lead(r#""medium":"web""#), None, "no day is told");
}
