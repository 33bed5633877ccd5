//! The story Citrus breakfast tells: floor at the corners, a window mirrored
//! and too near, edges that shadow draws.
use super::FETCHED;
use super::story::{cured, read, said};
use crate::layout::{Layout, open};
use crate::readings::Finding;

fn breakfast() -> Layout {
    let file = FETCHED.iter().find(|(name, _)| *name == "citrus-breakfast");
    open(file.expect("a starter").1).expect("opens")
}

/// Follows the remedies of a finding until it presses no more, and says how
/// many it took.
fn steps_to_hold(key: &str) -> usize {
    let mut layout = breakfast();
    for step in 0..4 {
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
    let floor = |l: &Layout| {
        let fit = |f: &Finding| f.is_pressing() && f.sentence.contains("show the floor");
        read(l).into_iter().find(fit)
    };
    let f = floor(&opens).expect("a round table, a square corner");
    assert!(f.sentence.contains("floor"), "{}", f.sentence);
    assert!(floor(&cured(&opens, &f)).is_none(), "hidden");
}

#[test]
fn bowls_near_the_window_blow_out_and_the_far_side_greys() {
    let opens = breakfast();
    let blown = said(&opens, "light:whites").expect("whites");
    assert!(blown.is_pressing(), "{}", blown.sentence);
    assert!(blown.sentence.contains("bowl"), "{}", blown.sentence);
    let falls = said(&opens, "light").expect("a fall");
    assert!(falls.is_pressing(), "{}", falls.sentence);
    for key in ["light:whites", "light"] {
        println!("{key}: {} remedies", steps_to_hold(key));
    }
}

#[test]
fn what_shadow_draws_is_not_told_of_as_thin() {
    let opens = breakfast();
    let saved = said(&opens, "separation:drawn").expect("some are drawn by shadow");
    assert!(!saved.is_pressing(), "{}", saved.sentence);
    for id in saved.about {
        let own = |f: &Finding| f.key == format!("separation:{}:Rim", id.0) && f.is_pressing();
        let told = read(&opens).into_iter().find(own);
        assert!(told.is_none(), "{told:?}");
    }
}
