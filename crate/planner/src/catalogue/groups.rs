//! The catalogue by what one looks for, so that everything in it can be found
//! without a word typed.
use super::entry::{Entry, Kind};

/// A group of things that are looked for together.
#[derive(Debug)]
pub struct Group {
    /// Its id.
    pub id: &'static str,
    /// What it is called.
    pub name: &'static str,
    holds: Holds,
}

/// What a group holds.
#[derive(Debug)]
enum Holds {
    /// Everything of these sorts that no list names.
    Kinds(&'static [Kind]),
    /// These entries, by id.
    Listed(&'static [&'static str]),
    /// Cloths.
    Linens,
}

use Holds::{Kinds, Linens, Listed};

#[rustfmt::skip]
static GROUPS: [Group; 14] = [
    group("plates", "plates and bowls", Kinds(&[Kind::Vessel])),
    group("pots", "pots and pans", Listed(&[
        "enamel-pot", "pale-lined-pot", "frying-pan", "roasting-tin", "half-sheet-pan", "pie-dish", "gratin-dish",
        "oval-casserole", "iron-casserole", "copper-pot", "clay-pot", "soup-tureen", "iron-skillet", "saucepan",
        "milk-pan", "wok", "tagine", "loaf-tin", "cake-tin", "tart-tin", "ring-tin", "muffin-tin", "baking-tray",
        "colander", "steamer-basket",
    ])),
    group("boards", "boards and trays", Kinds(&[Kind::Board])),
    group("glasses", "glasses and jugs", Kinds(&[Kind::Glass])),
    group("cutlery", "cutlery", Kinds(&[Kind::Cutlery])),
    group("small", "candles and small things", Kinds(&[Kind::Candle, Kind::Object])),
    group("linens", "linens", Linens),
    group("meat-fish", "meat and fish", Listed(&[
        "mussels", "roast-fish", "roast-chicken", "steak-slices", "meatballs", "sausages", "prawns", "oysters", "clams",
        "salmon-fillet", "cured-ham", "skewers",
    ])),
    group("vegetables", "vegetables", Listed(&[
        "olives", "aubergine", "tomato-salad", "leaf-salad", "roast-potatoes", "roast-carrots", "asparagus",
        "green-beans", "peas", "broccoli", "cauliflower", "mushrooms", "beetroot", "corn-cobs", "grilled-peppers",
        "courgette", "cucumber", "radishes", "avocado", "cherry-tomatoes", "garlic", "red-onion", "chillies", "spinach",
        "artichokes", "pumpkin-wedges",
    ])),
    group("fruit", "fruit", Listed(&[
        "lemon-wedges", "citrus-half", "berries", "fig-halves", "grapes", "peach-halves", "cherries", "apple-slices",
        "melon-slices", "watermelon", "strawberries", "orange-slices", "grapefruit", "pomegranate", "kiwi-slices",
        "banana-slices", "plums", "lemon-slices",
    ])),
    group("bread", "bread and cakes", Listed(&[
        "loaf", "torn-bread", "bread-slice", "flatbreads", "pancakes", "croissants", "bread-rolls", "toast", "baguette",
        "pizza", "focaccia", "savoury-tart", "fruit-tart", "chocolate-cake", "cake-slices", "brownies", "biscuits",
        "meringues", "chocolate", "waffles", "doughnuts", "ice-cream", "crackers",
    ])),
    group("eggs-cheese", "eggs and cheese", Listed(&[
        "egg-halves", "fried-eggs", "omelette", "cheese-wedge", "feta", "mozzarella", "soft-cheese", "butter",
        "tofu-cubes",
    ])),
    group("bowls", "bowls and sauces", Kinds(&[Kind::Food])),
    group("scatter", "scatter", Kinds(&[Kind::Scatter])),
];

const fn group(id: &'static str, name: &'static str, holds: Holds) -> Group {
    Group { id, name, holds }
}

/// Every group, in the order it is offered.
#[must_use]
pub fn groups() -> &'static [Group] {
    &GROUPS
}

impl Group {
    /// Whether an entry is looked for here. What a list names is in that group
    /// alone.
    #[must_use]
    pub fn has(&self, entry: &Entry) -> bool {
        match self.holds {
            Listed(ids) => ids.contains(&entry.id),
            Kinds(kinds) => {
                kinds.contains(&entry.kind) && !GROUPS.iter().any(|g| g.lists(entry.id))
            }
            Linens => false,
        }
    }

    /// Whether linens are looked for here.
    #[must_use]
    pub const fn has_linens(&self) -> bool {
        matches!(self.holds, Linens)
    }

    fn lists(&self, id: &str) -> bool {
        matches!(self.holds, Listed(ids) if ids.contains(&id))
    }
}

/// The group of this id.
#[must_use]
pub fn group_of_id(id: &str) -> Option<&'static Group> {
    GROUPS.iter().find(|group| group.id == id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{foods, linens, props};

    #[test]
    fn everything_is_in_one_group() {
        for entry in props().iter().chain(foods()) {
            let found: Vec<&str> = groups()
                .iter()
                .filter(|group| group.has(entry))
                .map(|group| group.id)
                .collect();
            assert_eq!(found.len(), 1, "{} in {found:?}", entry.id);
        }
        let cloths = groups().iter().filter(|group| group.has_linens()).count();
        assert_eq!((cloths, linens().is_empty()), (1, false), "linens too");
    }

    #[test]
    fn lists_name_what_there_is_and_no_group_is_too_long_to_look_through() {
        for group in groups() {
            if let Listed(ids) = group.holds {
                for id in ids {
                    let known = props().iter().chain(foods()).any(|entry| entry.id == *id);
                    assert!(known, "{}: {id}", group.id);
                }
            }
            let all = props().iter().chain(foods());
            let count = all.filter(|entry| group.has(entry)).count();
            assert!(count <= 40, "{}: {count}", group.id);
            assert!(count > 0 || group.has_linens(), "{} is empty", group.id);
        }
    }
}
