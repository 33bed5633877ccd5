//! What shines in the starters, and what it mirrors.
use super::{FETCHED, harbour_supper};
use crate::layout::{Layout, open};
use crate::readings::{Finding, State, Study, report};

fn fetched(name: &str) -> Layout {
    let file = FETCHED.iter().find(|(n, _)| *n == name).expect("a starter");
    open(file.1).expect("opens")
}

fn glare(layout: &Layout) -> Vec<Finding> {
    let found = report(&Study::new(layout), true).findings.into_iter();
    found.filter(|f| f.reading == "glare").collect()
}

/// The finding of this key and the table after its remedy.
fn cured(layout: &Layout, key: &str) -> Finding {
    let all = glare(layout);
    let told: Vec<&String> = all.iter().map(|f| &f.sentence).collect();
    let found = all.iter().find(|f| f.key == key);
    let f = found
        .unwrap_or_else(|| panic!("no {key}: {told:?}"))
        .clone();
    assert_eq!(f.state, State::LookAgain, "{}", f.sentence);
    let remedy = f.remedy.as_ref();
    let remedy = remedy.unwrap_or_else(|| panic!("nothing cures it: {}", f.sentence));
    let mut after = layout.clone();
    remedy.edit.apply_checked(&mut after).expect("it fits");
    let still = glare(&after).into_iter().find(Finding::is_pressing);
    assert!(still.is_none(), "{still:?}");
    f
}

#[test]
fn the_slab_of_citrus_breakfast_mirrors_the_window() {
    let f = cured(&fetched("citrus-breakfast"), "glare:table:light");
    assert!(f.sentence.contains("mirrors the window"), "{}", f.sentence);
    println!(
        "{} {:?}",
        f.sentence,
        f.remedy.map(|r| (r.act, r.predicted))
    );
}

#[test]
fn the_middle_bowl_of_noodle_night_mirrors_camera_and_arm() {
    let f = cured(&fetched("noodle-night"), "glare:camera:arm");
    assert!(f.sentence.contains("camera and the arm"), "{}", f.sentence);
    println!(
        "{} {:?}",
        f.sentence,
        f.remedy.map(|r| (r.act, r.predicted))
    );
}

/// The tumblers stand too far from under the lens to mirror it.
#[test]
fn the_tumblers_of_harbour_supper_mirror_the_camera_only_under_the_lens() {
    let mut layout = harbour_supper();
    for f in glare(&layout) {
        println!("{}", f.sentence);
        assert!(!f.is_pressing(), "{}", f.sentence);
    }
    let tumbler = layout.items.iter_mut().find(|i| i.name == "wine tumbler");
    tumbler.expect("there").at = crate::layout::Point::new(1000, 430);
    let f = glare(&layout).into_iter().find(Finding::is_pressing);
    let f = f.expect("under the lens");
    assert!(f.sentence.contains("mirrors the camera"), "{}", f.sentence);
    println!(
        "{} {:?}",
        f.sentence,
        f.remedy.map(|r| (r.act, r.predicted))
    );
}
