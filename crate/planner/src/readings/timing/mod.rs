//! Timing: does the food last as long as the exposures take, and when is it
//! all to be shot?
//!
//! Exposures follow each other in the order they are told in, each as long as
//! is said or usual, with the minutes it takes to carry things and to walk in
//! between. Food stands from when it goes on the set to the end of the last
//! exposure that shows it. How long it looks right is the user's word, or the
//! catalogue's, which says what that rests on.
mod holds;
mod lead;
mod remedy;
#[cfg(test)]
mod tests;

use super::finding::Finding;
use super::study::Study;

/// The findings about time; of food none before there are exposures.
pub(super) fn read(study: &Study<'_>, settled: bool) -> Vec<Finding> {
    let mut out = holds::read(study, settled);
    out.extend(lead::read(study));
    out
}
