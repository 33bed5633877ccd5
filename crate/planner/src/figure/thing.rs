//! What a thing of a layout looks like from above, by its catalogue id.

use glam::{DVec2, dvec2};

use super::food::{Food, food_outline};
use super::form::{Face, Form};
use crate::layout::{self, Item, Size};
use crate::shape::{CHORD_ERROR, outline};

/// Which food a catalogue id is.
#[must_use]
pub fn food_of(prop: &str) -> Option<Food> {
    Some(match prop {
        "mussels" => Food::Mussels,
        "lemon-wedges" => Food::LemonWedges,
        "citrus-half" => Food::Citrus,
        "loaf" | "torn-bread" | "bread-slice" => Food::Loaf,
        "olives" => Food::Olives,
        "aubergine" => Food::Aubergine,
        "herbs" => Food::Herbs,
        "herb-scatter" => Food::HerbScatter,
        "crumbs" => Food::Crumbs,
        "salt" => Food::Salt,
        "tomato-salad" => Food::TomatoSalad,
        "leaf-salad" => Food::LeafSalad,
        "noodles" => Food::Noodles,
        "egg-halves" => Food::Eggs,
        "rice" => Food::Rice,
        "roast-fish" => Food::Fish,
        "berries" => Food::Berries,
        "cheese-wedge" => Food::Cheese,
        "nuts" => Food::Nuts,
        "soup" => Food::Soup,
        "roast-potatoes" => Food::Potatoes,
        "roast-carrots" => Food::Carrots,
        _ => return None,
    })
}

/// Size and pose of an item about its own centre.
#[must_use]
pub fn form_of(item: &Item) -> Form {
    let [w, d] = item.size.extent().map(f64::from);
    let half = dvec2(w, d) * 0.5;
    let mut form = Form::new(u32::from(item.id.0), half, item.turn.radians());
    form.face = match (item.face, item.prop.as_str()) {
        (layout::Face::Crust, _) => Face::Skin,
        (_, "torn-bread") => Face::Torn,
        (layout::Face::Cut, _) | (_, "bread-slice") => Face::Cut,
        _ => Face::Usual,
    };
    form
}

/// The outline of an item about its own centre: that of its food where it is
/// drawn as one, else that of its size.
#[must_use]
pub fn thing_outline(item: &Item) -> Vec<DVec2> {
    match food_of(&item.prop) {
        Some(food) if !matches!(item.size, Size::Outline { .. }) => {
            food_outline(food, &form_of(item))
        }
        _ => outline(&item.size, DVec2::ZERO, item.turn.degrees(), CHORD_ERROR),
    }
}
