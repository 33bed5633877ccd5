//! The story Citrus breakfast tells: floor at the corners, a window mirrored
//! and too near, edges that shadow draws.
use super::FETCHED;
use super::story::{cured, read, said};
use std::sync::LazyLock;

use crate::layout::{Layout, open};
use crate::readings::Finding;

fn breakfast() -> Layout {
    let file = FETCHED.iter().find(|(name, _)| *name == "citrus-breakfast");
    open(file.expect("a starter").1).expect("opens")
}

/// What is found when it opens; all its remedies are sought once.
static OPENING: LazyLock<Vec<Finding>> = LazyLock::new(|| read(&breakfast()));

fn opening(key: &str) -> Finding {
    let found = OPENING.iter().find(|f| f.key == key);
    found.unwrap_or_else(|| panic!("no {key}")).clone()
}

/// Follows the remedies of a finding until it presses no more, and says how
/// many it took.
fn steps_to_hold(key: &str) -> usize {
    let mut layout = cured(&breakfast(), &opening(key));
    for step in 1..4 {
        match said(&layout, key).filter(Finding::is_pressing) {
            None => return step,
            Some(f) => layout = cured(&layout, &f),
        }
    }
    panic!(
        "{key} presses after four remedies: {:?}",
        said(&layout, key)
    );
}

#[test]
fn the_floor_shows_at_the_corners_and_a_larger_slab_hides_it() {
    let opens = breakfast();
    let floor = |f: &&Finding| f.is_pressing() && f.sentence.contains("show the floor");
    let f = OPENING.iter().find(floor);
    let f = f.expect("a round table, a square corner");
    assert!(f.sentence.contains("floor"), "{}", f.sentence);
    let after = read(&cured(&opens, f));
    assert!(after.iter().find(floor).is_none(), "hidden");
}

#[test]
fn bowls_near_the_window_blow_out_and_the_far_side_greys() {
    let blown = opening("light:whites");
    assert!(blown.is_pressing(), "{}", blown.sentence);
    assert!(blown.sentence.contains("bowl"), "{}", blown.sentence);
    let falls = opening("light");
    assert!(falls.is_pressing(), "{}", falls.sentence);
    for key in ["light:whites", "light"] {
        println!("{key}: {} remedies", steps_to_hold(key));
    }
}

#[test]
fn what_shadow_draws_is_not_told_of_as_thin() {
    let saved = opening("separation:drawn");
    assert!(!saved.is_pressing(), "{}", saved.sentence);
    for id in saved.about {
        let own = |f: &&Finding| f.key == format!("separation:{}:Rim", id.0) && f.is_pressing();
        let told = OPENING.iter().find(own);
        assert!(told.is_none(), "{told:?}");
    }
}
