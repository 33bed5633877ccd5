//! The prop pull list: what is fetched for the picture, and where from.
use serde::Serialize;

use super::alike::{ids, numbers, rows, spare};
use super::list::{List, TICK};
use super::told::{linen_looks, linen_tag, looks, sides, size, source, used};
use crate::catalogue::{kind_of, linen, surface};
use crate::dates::props_by;
use crate::layout::{Id, Layout, Linen, Source, Srgb};
use crate::order;
use crate::shelf::{Need, ShelfThing, find, tones};
use crate::words::{Arg, say};

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
    /// What the shelf has of them, in words; empty for an empty shelf.
    pub have: String,
    /// How many the shelf lacks.
    pub lacks: usize,
}

/// Everything that is pulled: things that are no food, in the order of their
/// numbers, then linens, then the surface; with what the shelf has of it.
#[must_use]
pub fn pull(layout: &Layout, shelf: &[ShelfThing]) -> Vec<Pull> {
    let mut all = pulled(layout);
    if shelf.is_empty() {
        return all;
    }
    let needs: Vec<Need> = all.iter().map(|row| need(layout, row)).collect();
    for (row, found) in all.iter_mut().zip(find(&needs, shelf)) {
        (row.have, row.lacks) = (found.told(), found.lacks());
    }
    all
}

/// What a row asks for, those in reserve too.
fn need(layout: &Layout, row: &Pull) -> Need {
    let count = row.count + usize::from(row.spare);
    let name = row.name.clone();
    let of = |id: &Id| layout.items.iter().find(|o| o.id == *id);
    let cloth = |id: &Id| layout.linens.iter().find(|o| o.id == *id);
    match (
        row.ids.first().and_then(of),
        row.ids.first().and_then(cloth),
    ) {
        (Some(item), _) => Need {
            name,
            prop: item.prop.clone(),
            size: item.size.extent(),
            height: item.height,
            colour: tones(item).0,
            count,
        },
        (None, cloth) => Need {
            name,
            prop: cloth.map_or_else(String::new, |o| linen(o.kind).name.into()),
            size: cloth.map_or([0; 2], |o| o.size),
            height: 0,
            colour: cloth.map_or_else(Srgb::default, |o| o.colour),
            count,
        },
    }
}

/// What the shelf has of everything that is pulled, in words; empty for an empty
/// shelf.
#[must_use]
pub fn shelf_told(rows: &[Pull]) -> String {
    if rows.iter().all(|row| row.have.is_empty()) {
        return String::new();
    }
    let need: usize = rows.iter().map(|r| r.count + usize::from(r.spare)).sum();
    let lacks: usize = rows.iter().map(|row| row.lacks).sum();
    let text = |count: usize| Arg::Text(count.to_string());
    let id = if lacks == 0 {
        "shelf-told-all"
    } else {
        "shelf-told"
    };
    let args = [
        ("have", text(need - lacks)),
        ("need", text(need)),
        ("lacks", text(lacks)),
    ];
    say(id, &args)
}

/// Everything that is pulled, row by row.
pub(super) fn pulled(layout: &Layout) -> Vec<Pull> {
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
        have: String::new(),
        lacks: 0,
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
            have: String::new(),
            lacks: 0,
            ids,
        }
    });
    things.chain(cloths).collect()
}

/// The pull list as a paper has it.
pub(super) fn pull_list(layout: &Layout, shelf: &[ShelfThing]) -> List {
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
    for row in pull(layout, shelf) {
        let lives = match (row.shelf.is_empty(), row.have.is_empty()) {
            (false, false) => say(
                "list-lives-have",
                &[
                    ("shelf", Arg::Name(row.shelf)),
                    ("have", Arg::Text(row.have)),
                ],
            ),
            _ => row.shelf + &row.have,
        };
        list.rows.push(vec![
            row.numbers,
            row.name,
            row.size,
            row.looks,
            row.count.to_string(),
            counted(row.spare),
            row.used,
            row.from,
            lives,
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
