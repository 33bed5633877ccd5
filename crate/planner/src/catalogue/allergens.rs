//! What may be in a food that some people must not eat: the fourteen groups of
//! Regulation (EU) No 1169/2011, Annex II.
//!
//! Which groups a dish belongs to is from memory of how it is usually made,
//! and no more: the cook and the packets know. A food nobody speaks of here has
//! no answer, which is not "none".

/// Each group by its sentence, with the foods and drinks it is usually in, in
/// the order of the annex. No dish of the catalogue usually has lupin.
#[rustfmt::skip]
static IN: &[(&str, &[&str])] = &[
    ("allergen-gluten", &["loaf", "torn-bread", "bread-slice", "crumbs", "noodles", "penne", "spaghetti", "couscous", "dumplings", "miso-soup", "meatballs", "flatbreads", "pancakes", "croissants", "bread-rolls", "toast", "baguette", "pizza", "focaccia", "savoury-tart", "fruit-tart", "chocolate-cake", "cake-slices", "brownies", "biscuits", "waffles", "doughnuts", "granola", "porridge", "crackers", "beer-glass", "sausages"]),
    ("allergen-crustaceans", &["prawns"]),
    ("allergen-eggs", &["egg-halves", "fried-eggs", "omelette", "egg-cup", "noodles", "meatballs", "pancakes", "croissants", "savoury-tart", "fruit-tart", "chocolate-cake", "cake-slices", "brownies", "biscuits", "meringues", "waffles", "doughnuts", "ice-cream"]),
    ("allergen-fish", &["roast-fish", "salmon-fillet", "rice-rolls", "miso-soup"]),
    ("allergen-peanuts", &["nuts", "granola"]),
    ("allergen-soya", &["miso-soup", "tofu-cubes", "rice-rolls", "dumplings", "chocolate"]),
    ("allergen-milk", &["cheese-wedge", "yogurt", "feta", "mozzarella", "soft-cheese", "butter", "butter-dish", "omelette", "pancakes", "croissants", "pizza", "savoury-tart", "fruit-tart", "chocolate-cake", "cake-slices", "brownies", "biscuits", "chocolate", "waffles", "doughnuts", "porridge", "ice-cream", "milk-bottle", "milk-jug", "creamer"]),
    ("allergen-nuts", &["nuts", "granola", "brownies", "chocolate", "chocolate-cake"]),
    ("allergen-celery", &["soup", "bean-stew"]),
    ("allergen-mustard", &["curry"]),
    ("allergen-sesame", &["hummus", "seeds", "rice-rolls", "crackers"]),
    ("allergen-sulphites", &["wine-tumbler", "wine-glass", "red-wine-glass", "white-wine-glass", "flute", "tasting-glass", "decanter", "vinegar-bottle", "cordial-glass", "prawns", "sausages", "cured-ham"]),
    ("allergen-molluscs", &["mussels", "oysters", "clams"]),
];

/// Foods and drinks usually made of none of them.
#[rustfmt::skip]
static NONE: &[&str] = &["lemon-wedges", "citrus-half", "olives", "aubergine", "herbs", "tomato-salad", "leaf-salad", "rice", "berries", "roast-potatoes", "roast-carrots", "herb-scatter", "salt", "roast-chicken", "steak-slices", "asparagus", "green-beans", "peas", "broccoli", "cauliflower", "mushrooms", "beetroot", "corn-cobs", "grilled-peppers", "courgette", "cucumber", "radishes", "avocado", "cherry-tomatoes", "garlic", "red-onion", "chillies", "spinach", "artichokes", "pumpkin-wedges", "fig-halves", "grapes", "peach-halves", "cherries", "apple-slices", "melon-slices", "watermelon", "strawberries", "orange-slices", "grapefruit", "pomegranate", "kiwi-slices", "banana-slices", "plums", "lemon-slices", "honey", "jam", "icing-sugar", "chilli-flakes", "peppercorns", "bay-leaves", "rocket", "oil-carafe", "water-glass", "goblet", "highball", "glass-pitcher", "tea-glass", "teacup", "coffee-cup", "espresso-cup", "mug", "citrus-drink", "juice-glass"];

/// The sentences of the groups a food or drink is usually of; nothing where
/// nobody says.
#[must_use]
pub fn allergens(prop: &str) -> Option<Vec<&'static str>> {
    let has = |row: &&(&str, &[&str])| row.1.contains(&prop);
    let found: Vec<&str> = IN.iter().filter(has).map(|row| row.0).collect();
    (!found.is_empty() || NONE.contains(&prop)).then_some(found)
}

/// The sentences of the groups any of these is usually of, in the order of the
/// annex.
#[must_use]
pub fn allergens_in(props: &[&str]) -> Vec<&'static str> {
    let has = |row: &&(&str, &[&str])| row.1.iter().any(|food| props.contains(food));
    IN.iter().filter(has).map(|row| row.0).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::prop;

    #[test]
    fn what_is_spoken_of_is_in_the_catalogue_and_in_one_list() {
        for food in IN.iter().flat_map(|row| row.1).chain(NONE) {
            assert!(prop(food).is_some(), "{food}");
        }
        let listed = |food: &&&str| IN.iter().any(|row| row.1.contains(*food));
        assert_eq!(NONE.iter().find(listed), None, "none and some");
    }

    #[test]
    fn a_food_has_its_groups_or_none_or_nobody_knows() {
        assert_eq!(allergens("mussels"), Some(vec!["allergen-molluscs"]));
        assert_eq!(allergens("olives"), Some(Vec::new()), "none");
        assert_eq!(allergens("skewers"), None, "nobody knows what is on them");
        let two = allergens_in(&["mussels", "loaf", "olives"]);
        assert_eq!(two, ["allergen-gluten", "allergen-molluscs"]);
    }
}
