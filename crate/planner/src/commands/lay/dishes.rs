//! The dishes that can be picked for a table laid in one go.

/// A dish that can be picked: what it is called and the things it is made of,
/// the lowest first.
pub(super) struct Dish {
    pub(super) key: &'static str,
    pub(super) name: &'static str,
    /// Catalogue ids; each later one lies on the first.
    pub(super) props: &'static [&'static str],
}

const fn dish(key: &'static str, name: &'static str, props: &'static [&'static str]) -> Dish {
    Dish { key, name, props }
}

/// Every dish, in the order it is offered.
#[rustfmt::skip]
pub(super) static DISHES: [Dish; 41] = [
    dish("mussels", "pot of mussels", &["enamel-pot", "mussels"]),
    dish("aubergine", "seared aubergine", &["oval-platter", "aubergine"]),
    dish("loaf", "dark-crusted loaf", &["loaf"]),
    dish("tomato-salad", "tomato salad", &["serving-bowl", "tomato-salad"]),
    dish("leaf-salad", "leaf salad", &["serving-bowl", "leaf-salad"]),
    dish("fish", "roast fish", &["roasting-tin", "roast-fish"]),
    dish("potatoes", "roast potatoes", &["frying-pan", "roast-potatoes"]),
    dish("soup", "bowl of soup", &["soup-bowl", "soup"]),
    dish("noodles", "noodles", &["noodle-bowl", "noodles"]),
    dish("rice", "rice", &["serving-bowl", "rice"]),
    dish("olives", "black olives", &["small-bowl", "olives"]),
    dish("cheese", "cheese on a board", &["wooden-board", "cheese-wedge"]),
    dish("chicken", "roast chicken", &["oval-platter", "roast-chicken"]),
    dish("steak", "sliced steak", &["wooden-board", "steak-slices"]),
    dish("meatballs", "meatballs in sauce", &["iron-casserole", "meatballs"]),
    dish("salmon", "salmon fillets", &["rect-platter", "salmon-fillet"]),
    dish("prawns", "prawns", &["iron-skillet", "prawns"]),
    dish("oysters", "oysters", &["half-sheet-pan", "oysters"]),
    dish("pizza", "pizza on a board", &["round-board", "pizza"]),
    dish("pasta", "spaghetti", &["pasta-bowl", "spaghetti"]),
    dish("curry", "curry", &["copper-pot", "curry"]),
    dish("stew", "bean stew", &["clay-pot", "bean-stew"]),
    dish("dumplings", "basket of dumplings", &["steamer-basket", "dumplings"]),
    dish("rolls", "rice rolls on slate", &["slate-board", "rice-rolls"]),
    dish("hummus", "hummus", &["small-plate", "hummus"]),
    dish("flatbreads", "flatbreads", &["flatbreads"]),
    dish("focaccia", "flat oil bread", &["focaccia"]),
    dish("carrots", "roast carrots", &["rect-platter", "roast-carrots"]),
    dish("beans", "green beans", &["oval-plate", "green-beans"]),
    dish("peppers", "grilled peppers", &["oval-plate", "grilled-peppers"]),
    dish("pumpkin", "roast pumpkin", &["roasting-tin", "pumpkin-wedges"]),
    dish("pancakes", "pancakes", &["dinner-plate", "pancakes"]),
    dish("croissants", "croissants", &["bread-basket", "croissants"]),
    dish("eggs", "fried eggs", &["iron-skillet", "fried-eggs"]),
    dish("granola", "granola", &["cereal-bowl", "granola"]),
    dish("berries", "berries", &["small-bowl", "berries"]),
    dish("grapefruit", "halved grapefruit", &["serving-bowl", "grapefruit"]),
    dish("figs", "halved figs", &["small-plate", "fig-halves"]),
    dish("cake", "chocolate cake", &["cake-stand", "chocolate-cake"]),
    dish("tart", "fruit tart", &["fruit-tart"]),
    dish("meringues", "meringues", &["cake-stand", "meringues"]),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::prop;

    #[test]
    fn every_dish_is_made_of_what_is_sold_and_picked_by_one_key() {
        for (i, dish) in DISHES.iter().enumerate() {
            for id in dish.props {
                assert!(prop(id).is_some(), "{}: {id}", dish.key);
            }
            let twice = DISHES[..i].iter().any(|other| other.key == dish.key);
            assert!(!twice, "{} twice", dish.key);
        }
    }
}
