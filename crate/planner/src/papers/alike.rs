//! Things that are one row of a list: alike in all that has them pulled, bought
//! or cooked, wherever they stand.
use crate::catalogue::{allergens, kind_of};
use crate::layout::{Finish, Id, Item, Layout};
use crate::order;

/// Whether a thing is something to eat or drink, itself or as what stands in
/// it; what it is in stays a prop all the same.
pub(super) fn is_food(item: &Item) -> bool {
    kind_of(&item.prop).is_food() || holds_drink(item)
}

/// Whether it is a vessel that something to eat or drink comes in.
pub(super) fn holds_drink(item: &Item) -> bool {
    let kind = kind_of(&item.prop);
    !kind.is_food() && (item.finish == Finish::Liquid || allergens(&item.prop).is_some())
}

/// Whether two things are the same on a list.
fn same(a: &Item, b: &Item) -> bool {
    let told = |i: &Item| (i.height, i.finish, i.face, i.hold_minutes);
    a.name == b.name
        && a.prop == b.prop
        && a.size == b.size
        && told(a) == told(b)
        && a.parts == b.parts
        && a.stand_in == b.stand_in
        && (&a.stock.source, &a.stock.shelf) == (&b.stock.source, &b.stock.shelf)
}

/// The things that are so, by rows, in the order of their numbers.
pub(super) fn rows<'a>(layout: &'a Layout, so: &dyn Fn(&Item) -> bool) -> Vec<Vec<&'a Item>> {
    let mut items: Vec<&Item> = layout.items.iter().filter(|i| so(i)).collect();
    order::sort(&mut items, |a, b| (a.number, a.id).cmp(&(b.number, b.id)));
    let mut rows: Vec<Vec<&Item>> = Vec::new();
    for item in items {
        match rows.iter_mut().find(|row| same(row[0], item)) {
            Some(row) => row.push(item),
            None => rows.push(vec![item]),
        }
    }
    rows
}

/// Their ids.
pub(super) fn ids(row: &[&Item]) -> Vec<Id> {
    row.iter().map(|item| item.id).collect()
}

/// Their numbers, each once, and those that follow each other as from and to.
pub(super) fn numbers(row: &[&Item]) -> String {
    let mut runs: Vec<[u16; 2]> = Vec::new();
    for number in row.iter().map(|item| item.number) {
        match runs.last_mut() {
            Some(run) if number <= run[1] => {}
            Some(run) if number == run[1] + 1 => run[1] = number,
            _ => runs.push([number, number]),
        }
    }
    let told = runs.iter().map(|[from, to]| {
        let mut text = from.to_string();
        if to > from {
            text.push_str(if to - from > 1 { "–" } else { ", " });
            text.push_str(&to.to_string());
        }
        text
    });
    told.collect::<Vec<_>>().join(", ")
}

/// How many of them are in reserve.
pub(super) fn spare(row: &[&Item]) -> u16 {
    row.iter().map(|item| item.stock.spare).max().unwrap_or(0)
}
