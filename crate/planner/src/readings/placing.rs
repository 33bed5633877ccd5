//! What the readings say of where things stand, for whoever tries one place
//! after another and wants no words.
use super::rules::SPACING_CROP;
use super::study::{Study, Words};
use super::{balance, crops, space, spacing, triangle};
use crate::layout::Id;
use glam::DVec2;

/// Every dish by falling mass, with its centre in the picture, mm.
pub(crate) fn weighed(study: &Study<'_>) -> Vec<(Id, f64, DVec2)> {
    triangle::ranked(study)
}

/// How much there is to say against where things stand: of gaps, of what crops
/// keep of them and of space for type; and how many crops have a line that
/// only just touches something.
pub(crate) fn misplaced(study: &Study<'_>) -> (usize, usize) {
    study.say_only(Words::None);
    let all = [spacing::read, crops::read, space::read];
    let found = all.iter().flat_map(|read| read(study, false));
    let things = |id: &Id| study.item(*id).is_some();
    let (mut against, mut brushed) = (0, 0);
    for f in found.filter(|f| f.is_pressing() && f.about.iter().any(things)) {
        let line = std::ptr::eq(f.rule, &SPACING_CROP);
        *if line { &mut brushed } else { &mut against } += 1;
    }
    study.say_only(Words::All);
    (against, brushed)
}

/// Balance and Triangle of the whole frame; 0 where there is none.
pub(crate) fn structure(study: &Study<'_>) -> [f64; 2] {
    [balance::score(study), triangle::score(study)].map(Option::unwrap_or_default)
}
