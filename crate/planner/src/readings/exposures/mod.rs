//! Exposures: can they be shot one after another and put together?
//!
//! Every thing has a state in every exposure. What a hand holds cannot stand
//! in its place as well; nothing is held twice; each state of the food has an
//! exposure without hands to fall back on; no two want the same place of the
//! picture.
mod clash;
mod fewest;
mod insurance;
mod order;
mod remedy;
mod seam;
mod shown;
mod states;
#[cfg(test)]
mod tests;

pub use insurance::insurance;
pub(super) use order::in_this_order;
pub use shown::region_marks;

use super::finding::Finding;
use super::study::Study;

/// What of them depends on where things and people are: what a search can mend.
pub(super) fn placed(study: &Study<'_>) -> Vec<Finding> {
    let mut out = Vec::new();
    for exposure in &study.layout().exposures {
        out.extend(states::in_two_places(study, exposure, false));
    }
    out.extend(clash::read(study, false));
    out
}

/// The findings about exposures; none before there are any.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let layout = study.layout();
    let mut out = Vec::new();
    for exposure in &layout.exposures {
        out.extend(states::gone(study, exposure, settled));
        out.extend(states::in_two_places(study, exposure, settled));
        out.extend(states::held_by_two(study, exposure));
        out.extend(states::without_hands(study, exposure, settled));
    }
    out.extend(states::no_clean(study, settled));
    out.extend(clash::read(study, settled));
    out.extend(fewest::read(study));
    out.extend(seam::read(study));
    out.extend(insurance::read(study, settled));
    out.extend(order::read(study, settled));
    out
}
