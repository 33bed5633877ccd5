//! The food list: what is cooked and poured, when, and for how long it looks
//! right.
use serde::Serialize;

use super::alike::{holds_drink, ids, is_food, numbers, rows, spare};
use super::list::List;
use super::pull::counted;
use super::told::source;
use crate::catalogue::{Evidence, allergens, holds, is_strewn};
use crate::exposures::{Founded, Running, hold_of, running};
use crate::layout::{Id, Item, Layout, Source};
use crate::words::{Arg, listed, running_time, say};

/// One row: food that is the same.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Dish {
    /// Which things.
    pub ids: Vec<Id>,
    /// Their numbers in the picture.
    pub numbers: String,
    /// What it is called.
    pub name: String,
    /// How many are for the camera.
    pub count: usize,
    /// How many more are in reserve.
    pub spare: u16,
    /// What stands in for it; empty for real food from the start.
    pub stand_in: String,
    /// When it goes on the set, from the first exposure on; empty where no
    /// exposure shows it.
    pub from: String,
    /// When it is to be shot by; empty for what keeps.
    pub by: String,
    /// How long it looks right, and what says so.
    pub hold: String,
    /// What keeps it fresh meanwhile.
    pub refresh: String,
    /// What some must not eat that is usually in it.
    pub allergens: String,
    /// Where it comes from.
    pub source: Option<Source>,
    /// The same in a word.
    pub come: String,
    /// Where it lives.
    pub shelf: String,
}

/// All food and drink, in the order of numbers.
#[must_use]
pub fn food(layout: &Layout) -> Vec<Dish> {
    let run = running(layout);
    let all = rows(layout, &is_food);
    all.iter().map(|row| dish(&run, row)).collect()
}

fn dish(run: &Running, row: &[&Item]) -> Dish {
    let chief = row[0];
    let on_set = || {
        run.foods
            .iter()
            .filter(|f| row.iter().any(|i| i.id == f.item))
    };
    let from = on_set().map(|f| f.from).min();
    let by = on_set().filter_map(crate::exposures::OnSet::by).min();
    Dish {
        ids: ids(row),
        numbers: numbers(row),
        name: if holds_drink(chief) {
            say("food-in", &[("thing", Arg::Name(chief.name.clone()))])
        } else {
            chief.name.clone()
        },
        count: row.len(),
        spare: spare(row),
        stand_in: chief.stand_in.clone(),
        from: from.map(running_time).unwrap_or_default(),
        by: by.map(running_time).unwrap_or_default(),
        hold: hold(chief),
        refresh: refresh(&chief.prop).map_or_else(String::new, |id| say(id, &[])),
        allergens: allergy(&chief.prop),
        source: chief.stock.source,
        come: source(&chief.stock),
        shelf: chief.stock.shelf.clone(),
    }
}

/// How long it looks right, and what that rests on.
fn hold(item: &Item) -> String {
    let Some((minutes, founded)) = hold_of(item) else {
        return say("food-keeps", &[]);
    };
    let ground = match founded {
        Founded::Told => "food-told",
        Founded::Catalogue(Evidence::Published(_)) => "food-published",
        Founded::Catalogue(Evidence::TradePractice) => "food-practice",
        Founded::Catalogue(Evidence::Guess) => "food-guess",
    };
    say(ground, &[("minutes", Arg::Text(minutes.to_string()))])
}

/// What keeps a food fresh on the set (common practice, no source).
fn refresh(prop: &str) -> Option<&'static str> {
    Some(match prop {
        "ice-cream" => "refresh-cold",
        "leaf-salad" | "spinach" | "rocket" | "herbs" | "herb-scatter" | "petals" => "refresh-mist",
        "aubergine" | "grilled-peppers" | "roast-chicken" | "roast-fish" | "salmon-fillet"
        | "steak-slices" | "mushrooms" | "roast-potatoes" | "roast-carrots" | "sausages"
        | "meatballs" | "mussels" | "prawns" | "clams" | "olives" | "penne" | "spaghetti"
        | "noodles" | "cheese-wedge" | "cured-ham" => "refresh-oil",
        "apple-slices" | "avocado" | "banana-slices" => "refresh-lemon",
        _ if holds(prop).is_some_and(|hold| hold.minutes <= 15) => "refresh-new",
        _ if is_strewn(prop) => return None,
        _ => "refresh-none",
    })
}

/// The allergens of a food, or who to ask.
pub(super) fn allergy(prop: &str) -> String {
    let Some(found) = allergens(prop) else {
        return say("allergens-ask", &[]);
    };
    if found.is_empty() {
        return say("allergens-none", &[]);
    }
    let names: Vec<String> = found.iter().map(|one| say(one, &[])).collect();
    listed(&names)
}

/// The food list as a paper has it.
pub(super) fn food_list(layout: &Layout) -> List {
    let mut list = List::of(
        "",
        &[
            ("col-number", 13),
            ("col-food", 38),
            ("col-camera", 15),
            ("col-spare", 12),
            ("col-stand-in", 27),
            ("col-cook", 15),
            ("col-on-set", 15),
            ("col-shoot-by", 15),
            ("col-hold", 34),
            ("col-refresh", 33),
            ("col-allergens", 37),
            ("col-from", 20),
        ],
    );
    for dish in food(layout) {
        let come = match (dish.come.is_empty(), dish.shelf.is_empty()) {
            (false, false) => {
                let args = [
                    ("source", Arg::Text(dish.come)),
                    ("shelf", Arg::Name(dish.shelf)),
                ];
                say("list-from", &args)
            }
            _ => dish.come + &dish.shelf,
        };
        list.rows.push(vec![
            dish.numbers,
            dish.name,
            dish.count.to_string(),
            counted(dish.spare),
            dish.stand_in,
            String::new(),
            dish.from,
            dish.by,
            dish.hold,
            dish.refresh,
            dish.allergens,
            come,
        ]);
    }
    list
}
