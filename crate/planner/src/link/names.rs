//! Catalogue ids that a link writes as one number.

/// The ids, in the order of their numbers from 1. Links in the world refer to
/// these places: append only.
#[rustfmt::skip]
pub(super) static PROPS: [&str; 73] = [
    "charcoal-planks", "oak", "light-oak", "walnut", "painted-board", "pale-marble", "slate",
    "linen-cloth", "steel", "terracotta", "plain-board",
    "dinner-plate", "charger", "small-plate", "bread-plate", "soup-bowl", "serving-bowl",
    "small-bowl", "rect-platter", "oval-platter", "enamel-pot", "pale-lined-pot", "frying-pan",
    "roasting-tin", "round-dish", "oval-dish", "rect-dish", "salt-bowl", "wooden-board",
    "slate-board", "wine-tumbler", "water-glass", "wine-glass", "coupe", "oil-carafe", "jug",
    "mug", "coffee-cup", "bottle", "glass-vase", "taper-candle", "fork", "knife", "spoon",
    "serving-spoon", "chopsticks", "pepper-mill", "ramekin", "half-sheet-pan",
    "mussels", "lemon-wedges", "citrus-half", "loaf", "torn-bread", "bread-slice", "olives",
    "aubergine", "herbs", "crumbs", "tomato-salad", "leaf-salad", "noodles", "egg-halves", "rice",
    "roast-fish", "berries", "cheese-wedge", "nuts", "soup", "roast-potatoes", "salt",
    "roast-carrots", "herb-scatter",
];

/// The number of an id, if it has one.
pub(super) fn number(id: &str) -> Option<u64> {
    PROPS
        .iter()
        .position(|known| *known == id)
        .map(|at| at as u64 + 1)
}

/// The id of a number from 1.
pub(super) fn id(number: u64) -> Option<&'static str> {
    let at = usize::try_from(number.checked_sub(1)?).ok()?;
    PROPS.get(at).copied()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{foods, props, surfaces};

    #[test]
    fn every_id_of_the_catalogue_has_a_number_of_its_own() {
        let known = surfaces().iter().map(|s| s.id);
        let known = known.chain(props().iter().chain(foods()).map(|e| e.id));
        for name in known {
            let n = number(name).unwrap_or_else(|| panic!("append `{name}`"));
            assert_eq!(id(n), Some(name), "{n}");
        }
        assert_eq!(id(0), None, "counted from 1");
        assert_eq!(id(PROPS.len() as u64 + 1), None, "past the end");
    }
}
