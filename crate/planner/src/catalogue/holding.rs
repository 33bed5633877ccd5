//! How long food looks right on a set, and how long it may stand there before
//! nobody should eat it.
//!
//! A food that keeps for hours, or of which nobody gives a figure, has none
//! here: whoever knows better says so of the thing itself.
use super::entry::Evidence::{self, Guess, Published, TradePractice};

/// How long a food looks right on a set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hold {
    /// Minutes.
    pub minutes: i32,
    /// How well that is founded.
    pub evidence: Evidence,
}

/// Food may stand between cold and hot (4 to 60 °C) for so long in all before
/// it is thrown away, minutes: USDA (2016); half as long above 32 °C.
pub const DANGER_ZONE: i32 = 120;
/// Chilled food may stand above 8 °C once for less than this, minutes: UK
/// rules (NISR 2006/3, schedule 4, paragraph 5).
pub const CHILLED: i32 = 240;
/// Hot food may stand below 63 °C once for less than this, minutes: UK rules
/// (SI 2005/2059, schedule 4, paragraph 7).
pub const HOT: i32 = 120;
/// Where time alone keeps food safe it is thrown away after this, minutes: US
/// Food Code 3-501.19.
pub const TIME_ALONE: i32 = 240;

/// Minutes, what they rest on, and the catalogue's foods they are of.
#[rustfmt::skip]
static HOLDS: [(i32, Evidence, &[&str]); 11] = [
    // Frozen on dry ice first; at once from the freezer far less.
    (10, Published("dry-ice"), &["ice-cream"]),
    // Foam on black coffee visibly changes within 2.5 to 3 minutes.
    (3, Published("crema"), &["espresso-cup"]),
    // Leaves: 5 to 15 once dressed or torn.
    (10, TradePractice, &["leaf-salad", "spinach", "rocket"]),
    // Soft herbs and petals: 5 to 10.
    (10, TradePractice, &["herbs", "herb-scatter", "petals"]),
    // What skins over: 5 to 10.
    (10, TradePractice, &["curry", "bean-stew", "soup", "porridge", "meatballs", "green-sauce"]),
    // Ice melts in 10 to 20.
    (15, TradePractice, &["citrus-drink"]),
    // Cheese sweats and cured meat shines in 20 to 40.
    (30, TradePractice, &["cheese-wedge", "soft-cheese", "cured-ham"]),
    // Cut crumb dries in 30 to 60.
    (45, TradePractice, &["torn-bread", "bread-slice", "toast"]),
    // Cut apple browns to the eye in 10 to 30, avocado and banana in 20 to 60.
    (20, Guess, &["apple-slices", "avocado", "banana-slices"]),
    // Pasta sticks and dulls; melted cheese sets.
    (5, Guess, &["penne", "spaghetti", "noodles"]),
    // A roast shrinks and wrinkles; oiled again it does for half an hour.
    (30, Guess, &["roast-chicken"]),
];

/// How long the food of this id looks right on a set; none for what keeps for
/// hours and what nobody gives a figure of.
#[must_use]
pub fn holds(prop: &str) -> Option<Hold> {
    let row = HOLDS.iter().find(|row| row.2.contains(&prop))?;
    Some(Hold {
        minutes: row.0,
        evidence: row.1,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{prop, source};

    #[test]
    fn every_food_that_holds_is_in_the_catalogue_once_with_its_source() {
        let mut seen: Vec<&str> = Vec::new();
        for (minutes, evidence, foods) in &HOLDS {
            assert!(*minutes > 0, "{foods:?}");
            for food in *foods {
                assert!(prop(food).is_some(), "{food} is sold");
                assert!(!seen.contains(food), "{food} twice");
                seen.push(food);
                assert_eq!(holds(food).map(|h| h.minutes), Some(*minutes), "{food}");
            }
            if let Published(key) = evidence {
                assert!(source(key).is_some(), "{key}");
            }
        }
        assert_eq!(holds("loaf"), None, "it keeps for hours");
        assert_eq!(holds("no-such"), None, "unknown");
    }
}
