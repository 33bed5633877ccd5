//! What a thing of a layout looks like from above, by its catalogue id.

use glam::{DVec2, dvec2};

use super::food::{Food, food_outline};
use super::form::{Face, Form};
use super::made;
use super::prop::{prop_of, prop_outline};
use crate::catalogue;
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
        _ => {
            let place = made::recipes().position(|recipe| recipe.id == prop)?;
            Food::Made(place as u8)
        }
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

/// The outline of an item about its own centre: that of its food or its prop
/// where it is drawn as more than the outline of its size.
#[must_use]
pub fn thing_outline(item: &Item) -> Vec<DVec2> {
    let plain = || outline(&item.size, DVec2::ZERO, item.turn.degrees(), CHORD_ERROR);
    if matches!(item.size, Size::Outline { .. }) {
        return plain();
    }
    let form = form_of(item);
    if let Some(food) = food_of(&item.prop) {
        return food_outline(food, &form);
    }
    let kind = catalogue::kind_of(&item.prop);
    let own = prop_of(&item.prop, kind).and_then(|prop| prop_outline(prop, &form));
    own.unwrap_or_else(plain)
}
