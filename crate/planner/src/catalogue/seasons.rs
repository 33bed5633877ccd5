//! In which months a food is at its best and sold fresh, and what is fetched on
//! the day itself.
//!
//! Months are from memory, of the temperate north (middle Europe), no source:
//! markets differ by weeks and by land, and much is grown under glass or flown
//! in. What is sold all the year round is not here.

/// First and last month of the northern half, and the catalogue's foods; a
/// season may run over the turn of the year.
#[rustfmt::skip]
static SEASONS: [([i32; 2], &[&str]); 12] = [
    ([4, 6], &["asparagus"]),
    ([5, 7], &["peas", "radishes"]),
    ([5, 8], &["strawberries"]),
    ([6, 8], &["cherries", "berries"]),
    ([6, 9], &["courgette", "green-beans", "peach-halves", "cherry-tomatoes"]),
    ([7, 9], &["tomato-salad", "aubergine", "cucumber", "grilled-peppers", "melon-slices", "watermelon"]),
    ([7, 10], &["corn-cobs"]),
    ([8, 10], &["fig-halves", "grapes", "plums"]),
    ([9, 12], &["pumpkin-wedges"]),
    ([9, 4], &["mussels", "oysters", "clams"]),
    ([10, 2], &["pomegranate"]),
    ([6, 11], &["artichokes", "broccoli", "beetroot"]),
];

/// Greens, berries, flowers and ice come on the day of the shoot, when all else
/// is in the house the day before: a food stylist's account.
#[rustfmt::skip]
const ON_THE_DAY: [&str; 11] = [
    "herbs", "herb-scatter", "leaf-salad", "spinach", "rocket", "berries", "strawberries",
    "petals", "flower-bunch", "bud-vase", "citrus-drink",
];

/// First and last month of a food in the northern half; none for what is sold
/// all the year round.
#[must_use]
pub fn season_of(prop: &str) -> Option<[i32; 2]> {
    let found = SEASONS.iter().find(|(_, foods)| foods.contains(&prop));
    found.map(|(months, _)| *months)
}

/// Whether a month lies in a season, which may run over the turn of the year.
#[must_use]
pub const fn in_season([from, to]: [i32; 2], month: i32) -> bool {
    if from <= to {
        from <= month && month <= to
    } else {
        month >= from || month <= to
    }
}

/// Whether it comes on the day of the shoot and not the day before.
#[must_use]
pub fn on_the_day(prop: &str) -> bool {
    ON_THE_DAY.contains(&prop)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::prop;

    #[test]
    fn every_food_with_a_season_is_in_the_catalogue_once() {
        let foods: Vec<&str> = SEASONS.iter().flat_map(|(_, all)| *all).copied().collect();
        for (n, id) in foods.iter().enumerate() {
            assert!(prop(id).is_some_and(|e| e.kind.is_food()), "{id}");
            assert!(!foods[..n].contains(id), "{id} stands twice");
        }
        for id in ON_THE_DAY {
            assert!(prop(id).is_some(), "{id}");
        }
    }

    #[test]
    fn a_season_may_run_over_the_turn_of_the_year() {
        let months = |season| {
            (1..=12)
                .filter(|m| in_season(season, *m))
                .collect::<Vec<_>>()
        };
        assert_eq!(months([4, 6]), [4, 5, 6]);
        assert_eq!(months([11, 2]), [1, 2, 11, 12]);
        assert_eq!(months([5, 5]), [5]);
        assert_eq!(months([1, 12]).len(), 12);
        assert_eq!(season_of("mussels"), Some([9, 4]));
        assert_eq!(season_of("loaf"), None);
    }
}
