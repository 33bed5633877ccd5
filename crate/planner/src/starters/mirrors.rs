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

#[test]
fn the_wine_of_harbour_supper_mirrors_the_arm() {
    let opens = harbour_supper();
    let f = cured(&opens, "glare:arm");
    let told = f.sentence.contains("wine tumbler") && f.sentence.contains("the arm");
    assert!(told, "{}", f.sentence);
    let act = &f.remedy.as_ref().expect("cured").act;
    assert!(act.starts_with("Move the wine tumbler"), "{act}");
}

/// What lies under the lens mirrors the camera itself.
#[test]
fn a_tumbler_under_the_lens_mirrors_the_camera() {
    let mut layout = harbour_supper();
    layout.rig.at = None;
    let pressing = |l: &Layout| glare(l).into_iter().find(Finding::is_pressing);
    assert!(pressing(&layout).is_none(), "no arm to mirror");
    let tumbler = layout.items.iter_mut().find(|i| i.name == "wine tumbler");
    tumbler.expect("there").at = crate::layout::Point::new(1000, 430);
    let f = pressing(&layout).expect("under the lens");
    assert!(f.sentence.contains("mirrors the camera"), "{}", f.sentence);
}
