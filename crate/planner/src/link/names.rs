//! Catalogue ids that a link writes as one number.

/// The ids, in the order of their numbers from 1. Links in the world refer to
/// these places: append only.
#[rustfmt::skip]
pub(super) static PROPS: [&str; 293] = [
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
    "roast-chicken", "steak-slices", "meatballs", "sausages", "prawns", "oysters", "clams",
    "salmon-fillet", "cured-ham", "dumplings", "rice-rolls", "fried-eggs", "penne", "spaghetti",
    "couscous", "curry", "bean-stew", "hummus", "yogurt", "green-sauce", "miso-soup", "tofu-cubes", "feta", "mozzarella", "soft-cheese", "butter", "omelette", "skewers", "asparagus",
    "green-beans", "peas", "broccoli", "cauliflower", "mushrooms", "beetroot", "corn-cobs",
    "grilled-peppers", "courgette", "cucumber", "radishes", "avocado", "cherry-tomatoes",
    "garlic", "red-onion", "chillies", "spinach", "artichokes", "pumpkin-wedges", "fig-halves",
    "grapes", "peach-halves", "cherries", "apple-slices", "melon-slices", "watermelon",
    "strawberries", "orange-slices", "grapefruit", "pomegranate", "kiwi-slices", "banana-slices", "plums", "lemon-slices", "flatbreads", "pancakes", "croissants", "bread-rolls",
    "toast", "baguette", "pizza", "focaccia", "savoury-tart", "fruit-tart", "chocolate-cake",
    "cake-slices", "brownies", "biscuits", "meringues", "chocolate", "waffles", "doughnuts",
    "granola", "porridge", "honey", "jam", "ice-cream", "crackers", "petals", "seeds", "icing-sugar", "chilli-flakes", "peppercorns", "bay-leaves", "rocket",
    "luncheon-plate", "saucer", "square-plate", "oval-plate", "pasta-bowl", "cereal-bowl",
    "rice-bowl", "noodle-bowl", "dip-bowl", "salad-bowl", "pie-dish", "gratin-dish",
    "oval-casserole", "iron-casserole", "copper-pot", "clay-pot", "soup-tureen", "iron-skillet",
    "saucepan", "milk-pan", "wok", "tagine", "loaf-tin", "cake-tin", "tart-tin", "ring-tin",
    "muffin-tin", "baking-tray", "colander", "mortar", "steamer-basket", "bread-basket",
    "butter-dish", "sauce-boat", "sugar-bowl", "egg-cup", "cake-stand", "round-board",
    "paddle-board", "long-board", "marble-slab", "handled-tray", "cooling-rack", "crate",
    "slate-coaster", "red-wine-glass", "white-wine-glass", "flute", "cordial-glass", "goblet",
    "highball", "tasting-glass", "beer-glass", "tea-glass", "citrus-drink", "juice-glass",
    "teacup", "espresso-cup", "decanter", "vinegar-bottle", "milk-bottle", "glass-pitcher",
    "milk-jug", "creamer", "teapot", "coffee-pot", "preserving-jar", "spice-jar",
    "ceramic-vase", "tea-light", "pillar-candle", "lantern", "dessert-fork", "dessert-knife",
    "dessert-spoon", "teaspoon", "coffee-spoon", "soup-spoon", "rice-spoon", "place-fork",
    "place-knife", "fish-fork", "fish-knife", "serving-fork", "butter-knife", "steak-knife",
    "cheese-knife", "cook-knife", "bread-knife", "ladle", "cake-slice", "tongs", "whisk",
    "rolling-pin", "carving-fork", "wooden-spoon", "honey-dipper", "chopstick-rest",
    "napkin-ring", "place-card", "salt-shaker", "bud-vase", "flower-bunch", "herb-pot",
    "dried-wreath",
    "pine", "white-washed", "black-board", "navy-board", "white-board", "blush-board",
    "black-marble", "travertine", "granite", "terrazzo", "concrete", "plaster", "zinc",
    "copper", "dark-linen", "oat-linen", "brown-paper", "cork", "white-tiles", "blue-tiles",
    "folded-napkin",
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
