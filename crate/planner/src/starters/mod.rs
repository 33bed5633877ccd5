//! The layouts that come with the planner.
use crate::layout::{Layout, open};

/// The main starter: a late-summer fish supper on a dark board. All of it is
/// invented.
const HARBOUR_SUPPER: &str = include_str!("../../../../static/starters/harbour-supper.spread.json");

/// The starters that are fetched when they are chosen, by the name of the file.
#[cfg(test)]
const FETCHED: [(&str, &str); 2] = [
    (
        "citrus-breakfast",
        include_str!("../../../../static/starters/citrus-breakfast.spread.json"),
    ),
    (
        "noodle-night",
        include_str!("../../../../static/starters/noodle-night.spread.json"),
    ),
];

/// Harbour supper as it opens on the first visit.
#[must_use]
pub fn harbour_supper() -> Layout {
    open(HARBOUR_SUPPER).unwrap_or_else(|p| unreachable!("a test opens this file: {p:?}"))
}

#[cfg(test)]
mod breakfast;
#[cfg(test)]
mod mirrors;
#[cfg(test)]
mod story;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::Role;
    use crate::readings::{State, Study, report};

    #[test]
    fn it_is_the_canonical_file_of_itself() {
        let again = harbour_supper().to_json() + "\n";
        assert!(
            again == HARBOUR_SUPPER,
            "saving what was opened changes the file"
        );
    }

    #[test]
    fn every_other_starter_is_the_canonical_file_of_itself_and_is_whole() {
        let mut ids = vec![harbour_supper().id];
        for (name, file) in FETCHED {
            let layout = open(file).unwrap_or_else(|problems| panic!("{name}: {problems:?}"));
            assert!(layout.to_json() + "\n" == file, "saving {name} changes it");
            assert!(!ids.contains(&layout.id), "{name} has an id of its own");
            ids.push(layout.id);
            for item in &layout.items {
                let known = crate::catalogue::prop(&item.prop).is_some();
                assert!(known, "{name}: {}", item.prop);
            }
            let surface = &layout.table.surface.prop;
            assert!(
                crate::catalogue::surface(surface).is_some(),
                "{name}: {surface}"
            );
            let findings = report(&Study::new(&layout), false).findings;
            assert!(!findings.is_empty(), "{name} has something to say");
        }
    }

    /// Trade practice, no source: a normal spread must fit a common room.
    #[test]
    fn the_camera_fits_and_says_who_decides() {
        let findings = report(&Study::new(&harbour_supper()), false).findings;
        let fit = findings
            .iter()
            .find(|f| f.key == "fit:ceiling")
            .expect("always said");
        assert!(fit.sentence.contains("qualified grip"), "{}", fit.sentence);
    }

    #[test]
    fn food_on_a_dish_that_must_be_shown_is_checked_too() {
        let mut layout = harbour_supper();
        let food = layout.items.iter().find(|i| i.name == "seared aubergine");
        let food = food.expect("it is there").id;
        let post = layout
            .crops
            .iter()
            .position(|c| c.name == "4:5 post")
            .expect("a crop");
        layout.crops[post].must_show = vec![food];
        let key = format!("crops:{}:cut:{}", layout.crops[post].id.0, food.0);
        let findings = report(&Study::new(&layout), false).findings;
        let cut = findings
            .iter()
            .find(|f| f.key == key)
            .expect("it is cut away");
        assert_eq!(
            (cut.state, cut.rank),
            (State::WontWork, 1),
            "{}",
            cut.sentence
        );
    }

    #[test]
    fn a_hero_lying_on_a_dish_is_read_and_no_hero_is_no_fault() {
        let mut layout = harbour_supper();
        let said = |layout: &Layout| {
            let findings = report(&Study::new(layout), false).findings;
            findings.into_iter().find(|f| f.reading == "hero")
        };
        for item in &mut layout.items {
            item.role = if item.name == "olives" {
                Role::Hero
            } else {
                Role::Filler
            };
        }
        let olives = said(&layout).expect("a small bowl is not the heaviest");
        assert!(olives.sentence.contains("olives"), "{}", olives.sentence);
        for item in &mut layout.items {
            item.role = Role::Filler;
        }
        assert!(said(&layout).is_none(), "a picture may have no hero");
    }
}
