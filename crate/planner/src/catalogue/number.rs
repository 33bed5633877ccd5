//! Whether what a thing is called is one or several.
use super::{foods, props};
use crate::words::noun;

/// Whether a name speaks of several, as "roast potatoes" does, or of one, as
/// "dark platter" does; `None` when its noun is none of the catalogue's.
#[must_use]
pub fn is_several(name: &str) -> Option<bool> {
    let own = noun(name);
    let mut all = props().iter().chain(foods());
    // Glass and citrus are one; a test lists all that are several.
    let one = ["ss", "us"].iter().any(|end| own.ends_with(end));
    all.any(|entry| noun(entry.name) == own)
        .then(|| own.ends_with('s') && !one)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_plural_of_the_catalogue_is_known() {
        let several: Vec<&str> = props()
            .iter()
            .chain(foods())
            .map(|entry| entry.name)
            .filter(|name| is_several(name).expect("its own noun"))
            .collect();
        let known = [
            "chopsticks",
            "tongs",
            "mussels",
            "lemon wedges",
            "black olives",
            "crumbs",
            "noodles",
            "halved eggs",
            "berries",
            "nuts",
            "roast potatoes",
            "roast carrots",
            "picked herb leaves",
            "salt flakes",
            "meatballs in sauce",
            "sausages",
            "prawns",
            "oysters",
            "clams",
            "slices of cured ham",
            "dumplings",
            "rice rolls",
            "fried eggs",
            "cubes of bean curd",
            "grilled skewers",
            "green beans",
            "peas",
            "sliced mushrooms",
            "sweetcorn cobs",
            "grilled peppers",
            "radishes",
            "cherry tomatoes",
            "garlic bulbs",
            "red onion rings",
            "red chillies",
            "leaves of spinach",
            "grilled artichokes",
            "halved figs",
            "grapes",
            "halved peaches",
            "cherries",
            "slices of melon",
            "wedges of watermelon",
            "strawberries",
            "slices of orange",
            "slices of kiwi",
            "slices of banana",
            "plums",
            "slices of lemon",
            "flatbreads",
            "pancakes",
            "croissants",
            "bread rolls",
            "slices of cake",
            "brownies",
            "biscuits",
            "meringues",
            "pieces of chocolate",
            "waffles",
            "doughnuts",
            "scoops of ice cream",
            "crackers",
            "flower petals",
            "seeds",
            "chilli flakes",
            "peppercorns",
            "bay leaves",
            "rocket leaves",
        ];
        assert_eq!(several, known, "and no other");
    }

    #[test]
    fn a_name_of_ones_own_goes_by_its_noun_or_is_left_open() {
        for (name, several) in [
            ("mussel pot", Some(false)),
            ("pot of mussels", Some(false)),
            ("mussel pot, pale-lined", Some(false)),
            ("glass of water", Some(false)),
            ("black olives", Some(true)),
            ("grandmother’s pickles", None),
            ("", None),
        ] {
            assert_eq!(is_several(name), several, "{name:?}");
        }
    }
}
