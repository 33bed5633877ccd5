//! The shelf as rows of a list, out and in. Columns are known by their names, in
//! any order; a row that is amiss is told with its line, and the others are read.
use super::thing::{MAX_COUNT, ShelfThing, short};
use crate::catalogue::{linens, props};
use crate::layout::{Finish, LayoutId, MAX_HEIGHT, MAX_NAME, MAX_SIZE, Srgb, Units, clean_text};
use crate::words::{Arg, fixed, rounded, say};

/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Column {
    Id,
    Name,
    What,
    Width,
    Depth,
    Height,
    Colour,
    Inside,
    Finish,
    Count,
    Place,
}

use Column::{Colour, Count, Depth, Finish as Shine, Height, Id, Inside, Name, Place, What, Width};

/// The columns as they are written.
const WRITTEN: [(Column, &str); 11] = [
    (Name, "shelf-col-name"),
    (What, "shelf-col-what"),
    (Width, "shelf-col-width"),
    (Depth, "shelf-col-depth"),
    (Height, "shelf-col-height"),
    (Colour, "shelf-col-colour"),
    (Inside, "shelf-col-inside"),
    (Shine, "shelf-col-finish"),
    (Count, "shelf-col-count"),
    (Place, "shelf-col-place"),
    (Id, "shelf-col-id"),
];

/// Words a column is also known by; our choice.
const KNOWN: &[(Column, &[&str])] = &[
    (Id, &["id"]),
    (Name, &["name", "item", "thing", "prop", "title"]),
    (What, &["what", "kind", "type", "catalogue", "catalog"]),
    (Width, &["width", "across", "diameter", "size", "w"]),
    (Depth, &["depth", "down", "length", "deep", "d"]),
    (Height, &["height", "high", "tall", "h"]),
    (Colour, &["colour", "color", "outside"]),
    (Inside, &["inside", "inner", "well"]),
    (Shine, &["finish", "shine", "surface"]),
    (Count, &["count", "quantity", "qty", "number", "pieces"]),
    (
        Place,
        &["place", "where", "lives", "location", "shelf", "box"],
    ),
];

/// Colours by their words, as the papers name them; the shades are our choice,
/// each well within what its word is said of.
const SHADES: [(&str, u32); 20] = [
    ("colour-black", 0x20_2020),
    ("colour-dark-grey", 0x50_5050),
    ("colour-grey", 0x88_8888),
    ("colour-pale-grey", 0xc8_c8c8),
    ("colour-white", 0xf4_f4f2),
    ("colour-dark-green", 0x2c_4a2c),
    ("colour-green", 0x5c_8a4c),
    ("colour-pale-green", 0xb4_d4a4),
    ("colour-dark-blue", 0x1c_3058),
    ("colour-blue", 0x3c_6ca4),
    ("colour-pale-blue", 0xa4_c4e0),
    ("colour-dark-red", 0x70_1420),
    ("colour-red", 0xc0_2c30),
    ("colour-pink", 0xe8_a0ac),
    ("colour-yellow", 0xe8_c840),
    ("colour-dark-brown", 0x48_2c18),
    ("colour-brown", 0x8c_5a30),
    ("colour-orange", 0xd8_7828),
    ("colour-tan", 0xc0_9c74),
    ("colour-cream", 0xec_dcb8),
];

const FINISHES: [(Finish, &str, &[&str]); 5] = [
    (Finish::Matt, "finish-matt", &["matte", "mat"]),
    (Finish::Satin, "finish-satin", &["silk", "semi-gloss"]),
    (
        Finish::Gloss,
        "finish-gloss",
        &["gloss", "shiny", "polished"],
    ),
    (Finish::Clear, "finish-clear", &["clear", "glass"]),
    (Finish::Liquid, "finish-liquid", &["liquid"]),
];

/// A length in mm as a column in these units has it.
fn figure(mm: i32, units: Units) -> String {
    match units {
        Units::Cm => fixed(f64::from(mm) / 10.0, 1),
        Units::In => fixed(f64::from(mm) / 25.4, 2),
    }
}

/// The shelf as a list, its heading first.
#[must_use]
pub fn records(shelf: &[ShelfThing], units: Units) -> Vec<Vec<String>> {
    let unit = say(
        if units == Units::In {
            "unit-in"
        } else {
            "unit-cm"
        },
        &[],
    );
    let head = WRITTEN.map(|(_, id)| say(id, &[("unit", Arg::Text(unit.clone()))]));
    let finish = |thing: &ShelfThing| {
        let known = FINISHES.iter().find(|(is, ..)| *is == thing.finish);
        known.map_or_else(String::new, |(_, id, _)| say(id, &[]))
    };
    let rows = shelf.iter().map(|thing| {
        let cell = |(column, _)| match column {
            Id => thing.id.to_string(),
            Name => thing.name.clone(),
            What => thing.prop.clone(),
            Width => figure(thing.size[0], units),
            Depth => figure(thing.size[1], units),
            Height if thing.is_linen() => String::new(),
            Height => figure(thing.height, units),
            Colour => thing.colour.to_string(),
            Inside => thing.inside.map_or_else(String::new, |c| c.to_string()),
            Shine if thing.is_linen() => String::new(),
            Shine => finish(thing),
            Count => thing.count.to_string(),
            Place => thing.place.clone(),
        };
        WRITTEN.map(cell).to_vec()
    });
    std::iter::once(head.to_vec()).chain(rows).collect()
}

/// A row that was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GoodRow {
    /// The line it stands on.
    pub line: u32,
    /// What it says; of a thing the shelf has, that thing changed.
    pub thing: ShelfThing,
    /// Whether the shelf has it already.
    pub there: bool,
}

/// A row that was not, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BadRow {
    /// The line it stands on.
    pub line: u32,
    /// Why, in words.
    pub why: String,
}

/// What came of a list.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Taken {
    /// Rows that were read.
    pub good: Vec<GoodRow>,
    /// Rows that were not.
    pub bad: Vec<BadRow>,
    /// Columns nobody knows.
    pub passed_over: Vec<String>,
}

/// A column with the mm of one of its numbers.
type Head = (usize, Column, f64);

/// What a column of this name holds, and the mm of its unit where it tells one.
fn known(name: &str) -> Option<(Column, Option<f64>)> {
    let lower = clean_text(name).to_ascii_lowercase();
    let mut words = lower
        .split(|c: char| c.is_ascii() && !c.is_ascii_alphanumeric() && c != '"')
        .filter(|word| !word.is_empty());
    let first = words.next()?;
    let column = KNOWN.iter().find(|(_, names)| names.contains(&first))?.0;
    Some((column, words.find_map(unit)))
}

/// Millimetres to one of a unit.
fn unit(word: &str) -> Option<f64> {
    match word {
        "cm" => Some(10.0),
        "mm" => Some(1.0),
        "in" | "inch" | "inches" | "\"" | "″" => Some(25.4),
        _ => None,
    }
}

/// A number with a point or a comma, and a unit after it where there is one:
/// "26", "26,5", "10.5 in".
fn number(text: &str) -> Option<(f64, Option<f64>)> {
    let digits = text.trim_end_matches(|c: char| !c.is_ascii_digit());
    let rest = text[digits.len()..].trim();
    let mm = if rest.is_empty() {
        None
    } else {
        Some(unit(rest)?)
    };
    let (whole, part) = digits.split_once(['.', ',']).unwrap_or((digits, ""));
    let all = |text: &str| text.len() <= 6 && text.bytes().all(|b| b.is_ascii_digit());
    if whole.is_empty() || !all(whole) || !all(part) {
        return None;
    }
    let tens = [1.0, 10.0, 100.0, 1e3, 1e4, 1e5, 1e6];
    let part = f64::from(part.parse::<u32>().unwrap_or(0)) / tens[part.len()];
    Some((f64::from(whole.parse::<u32>().ok()?) + part, mm))
}

fn because(id: &str, found: &str) -> String {
    say(id, &[("found", Arg::Name(found.into()))])
}

/// A length of a cell, mm.
fn length(found: &str, mm: f64, range: [i32; 2]) -> Result<i32, String> {
    let (figure, own) = number(found).ok_or_else(|| because("row-length", found))?;
    let length = figure * own.unwrap_or(mm);
    let whole = length.round();
    if whole < f64::from(range[0]) || whole > f64::from(range[1]) {
        let [least, most] = range.map(|mm| Arg::Text(rounded(f64::from(mm) / 10.0)));
        let found = ("found", Arg::Name(found.into()));
        return Err(say("row-range", &[found, ("least", least), ("most", most)]));
    }
    Ok(whole as i32)
}

fn colour(found: &str) -> Result<Srgb, String> {
    let lower = found
        .to_ascii_lowercase()
        .replace("gray", "grey")
        .replace("light ", "pale ");
    let word = SHADES.iter().find(|(id, _)| say(id, &[]) == lower);
    let word = word.map(|(_, hex)| Srgb::hex(*hex));
    word.or_else(|| Srgb::parse(&lower))
        .ok_or_else(|| because("row-colour", found))
}

fn finish(found: &str) -> Result<Finish, String> {
    let lower = found.to_ascii_lowercase();
    let known = |(_, id, names): &&(Finish, &str, &[&str])| {
        say(id, &[]) == lower || names.contains(&lower.as_str())
    };
    let found = FINISHES.iter().find(known).map(|(finish, ..)| *finish);
    found.ok_or_else(|| because("row-finish", &lower))
}

/// The catalogue's id of this id or name, or the name of a linen.
fn what(text: &str) -> Option<&'static str> {
    let lower = text.to_ascii_lowercase();
    let linen = linens().iter().map(|l| l.name).find(|name| *name == lower);
    let prop = || {
        props()
            .iter()
            .find(|e| e.id == lower || e.name.to_ascii_lowercase() == lower)
    };
    linen.or_else(|| prop().map(|e| e.id))
}

/// Reads a list: its heading, and rows with the line each stands on. `units`
/// are those of lengths whose column tells none; a row with the id of a thing of
/// the shelf changes that thing.
///
/// # Errors
/// When no column says what a thing is, in words.
pub fn read(
    head: &[String],
    rows: &[(u32, Vec<String>)],
    units: Units,
    shelf: &[ShelfThing],
) -> Result<Taken, String> {
    let mut taken = Taken::default();
    let mut columns: Vec<Head> = Vec::new();
    let usual = if units == Units::In { 25.4 } else { 10.0 };
    for (n, name) in head.iter().enumerate() {
        match known(name) {
            Some((column, _)) if columns.iter().any(|(_, own, _)| *own == column) => {
                taken.passed_over.push(short(name));
            }
            Some((column, mm)) => columns.push((n, column, mm.unwrap_or(usual))),
            None if name.is_empty() => {}
            None => taken.passed_over.push(short(name)),
        }
    }
    if !columns.iter().any(|(_, c, _)| matches!(c, Name | What)) {
        return Err(say("rows-no-columns", &[]));
    }
    let mut lines: Vec<(LayoutId, u32)> = Vec::new();
    for (line, cells) in rows {
        let read = row(&columns, cells, shelf).and_then(|(thing, there)| {
            let twice = lines.iter().find(|(id, _)| there && *id == thing.id);
            match twice {
                Some((_, first)) => Err(because("row-twice", &first.to_string())),
                None => Ok((thing, there)),
            }
        });
        let line = *line;
        match read {
            Ok((thing, there)) => {
                lines.push((thing.id, line));
                taken.good.push(GoodRow { line, thing, there });
            }
            Err(why) => taken.bad.push(BadRow { line, why }),
        }
    }
    Ok(taken)
}

/// A thing as a row says it, and whether the shelf has it.
fn row(
    columns: &[Head],
    cells: &[String],
    shelf: &[ShelfThing],
) -> Result<(ShelfThing, bool), String> {
    let cell = |wanted: Column| {
        let at = columns.iter().find(|(_, column, _)| *column == wanted);
        let at = at.and_then(|(n, _, mm)| Some((cells.get(*n)?.trim(), *mm)));
        at.filter(|(text, _)| !text.is_empty())
    };
    let text = |wanted: Column| cell(wanted).map(|(text, _)| text);
    let id = text(Id).and_then(|id| shelf.iter().find(|t| t.id.to_string() == id));
    let [name, is] = [Name, What].map(text);
    let usual = |is: &str| ShelfThing::usual(LayoutId(0), what(is)?);
    let (mut thing, there) = match (id, is.or(name)) {
        (Some(own), _) => (own.clone(), true),
        (None, None) => return Err(say("row-empty", &[])),
        (None, Some(told)) => {
            let id = if is.is_some() {
                "row-unknown"
            } else {
                "row-what"
            };
            (usual(told).ok_or_else(|| because(id, told))?, false)
        }
    };
    if let Some(name) = name {
        if name.chars().count() > MAX_NAME {
            return Err(because("row-long", &short(name)));
        }
        thing.name = short(name);
    }
    let length = |wanted: Column, range: [i32; 2]| {
        cell(wanted)
            .map(|(text, mm)| length(text, mm, range))
            .transpose()
    };
    let width = length(Width, [1, MAX_SIZE])?;
    // Of what is round, one figure is told.
    let depth = length(Depth, [1, MAX_SIZE])?;
    let depth = depth.or(width.filter(|_| thing.size[0] == thing.size[1]));
    thing.size = [
        width.unwrap_or(thing.size[0]),
        depth.unwrap_or(thing.size[1]),
    ];
    if let Some(high) = length(Height, [0, MAX_HEIGHT])?.filter(|_| !thing.is_linen()) {
        thing.height = high;
    }
    if let Some(told) = text(Colour) {
        thing.colour = colour(told)?;
    }
    if let Some(told) = text(Inside) {
        thing.inside = Some(colour(told)?).filter(|inside| *inside != thing.colour);
    }
    if let Some(told) = text(Shine).filter(|_| !thing.is_linen()) {
        thing.finish = finish(told)?;
    }
    if let Some(told) = text(Count) {
        let count = number(told).filter(|(n, unit)| unit.is_none() && n.fract() == 0.0);
        let count = count.filter(|(n, _)| (1.0..=f64::from(MAX_COUNT)).contains(n));
        thing.count = count.ok_or_else(|| because("row-count", told))?.0 as u16;
    }
    if let Some(place) = text(Place) {
        thing.place = short(place);
    }
    Ok((thing, there))
}

#[cfg(test)]
mod tests;
