//! What goes and what comes when a table changes its season: the rows of the
//! pull list and the food list that are not the same, and no others.
use serde::Serialize;

use super::alike::{ids, is_food, numbers, rows};
use super::food::allergy;
use super::list::List;
use super::pull::pulled;
use super::told::{colour, looks, sides, size};
use crate::catalogue::kind_of;
use crate::layout::{Id, Item, Layout};
use crate::words::say;

/// Food that would go, and what would come for it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Going {
    /// Which things.
    pub ids: Vec<Id>,
    /// Their numbers in the picture.
    pub numbers: String,
    /// What they are.
    pub name: String,
    /// What comes.
    pub instead: String,
}

/// What of one table is not the same in the other.
fn only(of: &Layout, other: &Layout) -> Layout {
    let mut left = of.clone();
    left.items.retain(|i| !other.items.contains(i));
    left.linens.retain(|l| !other.linens.contains(l));
    left
}

/// Food that goes from one table to the other, row by row.
#[must_use]
pub fn going(before: &Layout, after: &Layout) -> Vec<Going> {
    let left = only(before, after);
    let food = rows(&left, &|i| kind_of(&i.prop).is_food());
    let each = food.iter().filter_map(|row| {
        let new = after.items.iter().find(|i| i.id == row[0].id)?;
        Some(Going {
            ids: ids(row),
            numbers: numbers(row),
            name: row[0].name.clone(),
            instead: new.name.clone(),
        })
    });
    each.collect()
}

/// Rows that go out or come in.
fn told(layout: &Layout, change: &str, list: &mut List) {
    let units = layout.head.units;
    let change = say(change, &[]);
    for row in rows(layout, &is_food) {
        let one: &Item = row[0];
        list.rows.push(vec![
            change.clone(),
            say("swap-food", &[]),
            numbers(&row),
            one.name.clone(),
            size(one, units),
            looks(one),
            row.len().to_string(),
            allergy(&one.prop),
        ]);
    }
    for row in pulled(layout) {
        list.rows.push(vec![
            change.clone(),
            say("swap-prop", &[]),
            row.numbers,
            row.name,
            row.size,
            row.looks,
            row.count.to_string(),
            String::new(),
        ]);
    }
}

/// Everything that goes out and comes in, and nothing that stays.
#[must_use]
pub fn difference(before: &Layout, after: &Layout) -> List {
    let mut list = List::of(
        "",
        &[
            ("col-change", 10),
            ("col-kind", 10),
            ("col-number", 13),
            ("col-item", 34),
            ("col-size", 38),
            ("col-looks", 32),
            ("col-count", 9),
            ("col-allergens", 37),
        ],
    );
    for (this, other, change) in [(before, after, "swap-out"), (after, before, "swap-in")] {
        told(&only(this, other), change, &mut list);
        let [own, its] = [this, other].map(|l| &l.table.surface);
        if own.prop != its.prop || own.colour != its.colour {
            let extent = [this.table.width, this.table.depth].map(f64::from);
            list.rows.push(vec![
                say(change, &[]),
                say("swap-prop", &[]),
                say("list-surface", &[]),
                own.name.clone(),
                sides(extent, this.head.units),
                colour(own.colour),
                "1".into(),
                String::new(),
            ]);
        }
    }
    list
}
