//! The layouts that come with the planner.
use crate::layout::{Layout, open};

/// The main starter: a late-summer fish supper on a dark board. All of it is
/// invented.
const HARBOUR_SUPPER: &str = include_str!("../../../../static/starters/harbour-supper.spread.json");

/// Harbour supper as it opens on the first visit.
#[must_use]
pub fn harbour_supper() -> Layout {
    open(HARBOUR_SUPPER).unwrap_or_else(|p| unreachable!("a test opens this file: {p:?}"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::readings::{Study, report};

    #[test]
    fn it_is_the_canonical_file_of_itself() {
        let again = harbour_supper().to_json() + "\n";
        assert!(
            again == HARBOUR_SUPPER,
            "saving what was opened changes the file"
        );
    }

    #[test]
    fn the_pot_shouts_and_the_runner_about_halves_what_it_loses() {
        let layout = harbour_supper();
        let first = report(&Study::new(&layout), true).findings.remove(0);
        assert!(
            first.sentence.starts_with("The mussel pot loses"),
            "{}",
            first.sentence
        );
        let cure = first.remedy.expect("a cure");
        assert_eq!(cure.act, "Lay the oat runner", "the cure");
        assert!(
            first.figure > 90.0,
            "nearly all of the pot's edge is lost: {}",
            first.figure
        );
        assert!(
            (35.0..60.0).contains(&cure.after),
            "about halved: {}",
            cure.after
        );
    }
}
