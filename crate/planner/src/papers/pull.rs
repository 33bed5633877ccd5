//! The prop pull list: what is fetched for the picture, and where from.
use serde::Serialize;

use super::alike::{ids, numbers, rows, spare};
use super::list::{List, TICK};
use super::told::{linen_looks, linen_tag, looks, sides, size, source, used};
use crate::catalogue::{kind_of, surface};
use crate::dates::props_by;
use crate::layout::{Id, Layout, Linen, Source};
use crate::order;
use crate::words::say;

/// One row: things that are the same.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Pull {
    /// Which they are.
    pub ids: Vec<Id>,
    /// Their numbers in the picture.
    pub numbers: String,
    /// What they are called.
    pub name: String,
    /// How large one is.
    pub size: String,
    /// Its colour and shine.
    pub looks: String,
    /// How many there are in the picture.
    pub count: usize,
    /// How many more are in reserve.
    pub spare: u16,
    /// Where in the picture, and in which exposures.
    pub used: String,
    /// Where they come from.
    pub source: Option<Source>,
    /// The same in a word.
    pub from: String,
    /// Where they live.
    pub shelf: String,
}

/// Everything that is pulled: things that are no food, in the order of their
/// numbers, then linens, then the surface.
#[must_use]
pub fn pull(layout: &Layout) -> Vec<Pull> {
    let units = layout.head.units;
    let things = rows(layout, &|item| !kind_of(&item.prop).is_food());
    let things = things.iter().map(|row| Pull {
        ids: ids(row),
        numbers: numbers(row),
        name: row[0].name.clone(),
        size: size(row[0], units),
        looks: looks(row[0]),
        count: row.len(),
        spare: spare(row),
        used: used(layout, &ids(row)),
        source: row[0].stock.source,
        from: source(&row[0].stock),
        shelf: row[0].stock.shelf.clone(),
    });
    let mut cloths: Vec<Vec<&Linen>> = Vec::new();
    let mut linens: Vec<&Linen> = layout.linens.iter().collect();
    order::sort(&mut linens, |a, b| a.id.cmp(&b.id));
    for linen in linens {
        let key = |l: &Linen| {
            (
                l.name.clone(),
                l.kind as u8,
                l.state as u8,
                l.size,
                l.colour.0,
            )
        };
        let own = |l: &Linen| (l.stock.source, l.stock.shelf.clone());
        let same = |row: &&mut Vec<&Linen>| key(row[0]) == key(linen) && own(row[0]) == own(linen);
        match cloths.iter_mut().find(same) {
            Some(row) => row.push(linen),
            None => cloths.push(vec![linen]),
        }
    }
    let cloths = cloths.iter().map(|row| {
        let ids: Vec<Id> = row.iter().map(|linen| linen.id).collect();
        let tags: Vec<String> = ids.iter().map(|id| linen_tag(layout, *id)).collect();
        Pull {
            numbers: tags.join(", "),
            name: row[0].name.clone(),
            size: sides(row[0].size.map(f64::from), units),
            looks: linen_looks(row[0]),
            count: row.len(),
            spare: row.iter().map(|l| l.stock.spare).max().unwrap_or(0),
            used: used(layout, &ids),
            source: row[0].stock.source,
            from: source(&row[0].stock),
            shelf: row[0].stock.shelf.clone(),
            ids,
        }
    });
    things.chain(cloths).collect()
}

/// The pull list as a paper has it.
pub(super) fn pull_list(layout: &Layout) -> List {
    let mut list = List::of(
        "",
        &[
            ("col-number", 13),
            ("col-item", 34),
            ("col-size", 38),
            ("col-looks", 32),
            ("col-count", 9),
            ("col-spare", 12),
            ("col-used", 40),
            ("col-source", 15),
            ("col-shelf", 23),
            ("col-by", 20),
            ("col-pulled", 13),
            ("col-out", 9),
            ("col-back", 10),
            ("col-condition", 22),
        ],
    );
    let by = props_by(layout).unwrap_or_default();
    let tick = || TICK.to_string();
    for row in pull(layout) {
        list.rows.push(vec![
            row.numbers,
            row.name,
            row.size,
            row.looks,
            row.count.to_string(),
            counted(row.spare),
            row.used,
            row.from,
            row.shelf,
            by.clone(),
            tick(),
            tick(),
            tick(),
            String::new(),
        ]);
    }
    let table = &layout.table;
    let extent = [table.width, table.depth].map(f64::from);
    let name = &table.surface.name;
    let name = match surface(&table.surface.prop) {
        _ if !name.is_empty() => name.clone(),
        Some(known) => known.name.into(),
        None => say("ground-board", &[]),
    };
    list.rows.push(vec![
        say("list-surface", &[]),
        name,
        sides(extent, layout.head.units),
        super::told::colour(table.surface.colour),
        "1".into(),
        String::new(),
        say("list-under-all", &[]),
        String::new(),
        String::new(),
        by,
        tick(),
        tick(),
        tick(),
        String::new(),
    ]);
    list
}

/// A count, or nothing for none.
pub(super) fn counted(count: u16) -> String {
    if count == 0 {
        String::new()
    } else {
        count.to_string()
    }
}
