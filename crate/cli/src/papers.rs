//! The papers of a layout as files.
use std::io::Error;
use std::path::Path;

use lexopt::ValueExt as _;
use outputs::{Meta, csv, pdf};
use planner::drawing::{Shown, sheet};
use planner::layout::Layout;
use planner::optics::View;
use planner::papers::{Paper, Sheet, crockery, lists, pages as sheet_pages};

use crate::calendar::calendar;
use crate::draw::boxes;

/// A paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    /// The picture with its list.
    Picture,
    /// One of the sheets and lists.
    Sheet(Sheet),
    /// Outlines at true size.
    Crockery,
    /// Days for a calendar.
    Dates,
}

/// Every paper by the word it is asked for with.
fn kinds() -> Vec<(&'static str, Kind)> {
    let sheets = Sheet::ALL.map(|sheet| (sheet.key(), Kind::Sheet(sheet)));
    let mut all = vec![("picture", Kind::Picture)];
    all.extend(sheets);
    all.push(("crockery", Kind::Crockery));
    all.push(("dates", Kind::Dates));
    all
}

/// Which papers are wanted, and how.
#[derive(Debug, Default, PartialEq, Eq)]
pub(crate) struct Wish {
    letter: bool,
    only: Vec<Kind>,
    svg: bool,
    csv: bool,
    pdf: bool,
    ics: bool,
}

impl Wish {
    /// Whether an option is one of these.
    pub(crate) fn knows(name: &str) -> bool {
        ["paper", "only", "svg", "csv", "pdf", "ics"].contains(&name)
    }

    /// Takes an option over.
    ///
    /// # Errors
    /// When its value is missing or unknown.
    pub(crate) fn option(
        &mut self,
        name: &str,
        parser: &mut lexopt::Parser,
    ) -> Result<(), lexopt::Error> {
        match name {
            "paper" => {
                self.letter = match parser.value()?.string()?.as_str() {
                    "a4" => false,
                    "letter" => true,
                    _ => return Err("--paper is a4 or letter".into()),
                }
            }
            "only" => {
                let word = parser.value()?.string()?;
                let all = kinds();
                let found = all.iter().find(|(key, _)| *key == word);
                let (_, kind) = found.ok_or_else(|| {
                    let all: Vec<&str> = all.iter().map(|(key, _)| *key).collect();
                    lexopt::Error::from(format!("--only is one of {}", all.join(", ")))
                })?;
                self.only.push(*kind);
            }
            "svg" => self.svg = true,
            "csv" => self.csv = true,
            "ics" => self.ics = true,
            _ => self.pdf = true,
        }
        Ok(())
    }

    const fn paper(&self) -> Paper {
        if self.letter {
            Paper::Letter
        } else {
            Paper::A4
        }
    }
}

/// A file by its name.
pub(crate) type Made = (String, Vec<u8>);

/// Every file that is wanted.
///
/// # Errors
/// When a drawing cannot be made a PDF.
pub(crate) fn files(layout: &Layout, wish: &Wish) -> Result<Vec<Made>, String> {
    let all = !(wish.svg || wish.csv || wish.pdf || wish.ics);
    let mut files = Vec::new();
    let wanted = kinds().into_iter();
    for (key, kind) in wanted.filter(|(_, k)| wish.only.is_empty() || wish.only.contains(k)) {
        if kind == Kind::Dates {
            if wish.ics || all {
                files.extend(dates(layout, wish));
            }
            continue;
        }
        if wish.csv || all {
            files.extend(tables(layout, key, kind));
        }
        let pages = pages(layout, kind, wish);
        if pages.is_empty() {
            eprintln!("{key}: nothing stands on it");
            continue;
        }
        if wish.svg {
            for (n, page) in pages.iter().enumerate() {
                files.push((format!("{key}-{}.svg", n + 1), page.clone().into_bytes()));
            }
        }
        if wish.pdf || all {
            let pages: Vec<&str> = pages.iter().map(String::as_str).collect();
            let meta = Meta {
                title: &layout.head.title,
                language: "en",
            };
            let made = pdf(&pages, &meta).map_err(|fault| format!("{key}: {fault}"))?;
            if let Some(note) = boxes(&made.missing) {
                eprintln!("{key}: {note}");
            }
            files.push((format!("{key}.pdf"), made.bytes));
        }
    }
    Ok(files)
}

/// The pages of a paper.
fn pages(layout: &Layout, kind: Kind, wish: &Wish) -> Vec<String> {
    match kind {
        Kind::Picture => vec![sheet(layout, Shown::All, View::of(layout))],
        Kind::Sheet(sheet) => sheet_pages(layout, sheet, wish.paper()),
        Kind::Crockery => crockery(layout, wish.paper().size()),
        Kind::Dates => Vec::new(),
    }
}

/// The calendar, where a day is told or one was asked for.
fn dates(layout: &Layout, wish: &Wish) -> Option<Made> {
    let Some((bytes, warnings)) = calendar(layout) else {
        if wish.ics || wish.only.contains(&Kind::Dates) {
            eprintln!("dates: it is not told when it is on sale or online");
        }
        return None;
    };
    for warning in warnings {
        eprintln!("dates: {warning}");
    }
    Some(("dates.ics".into(), bytes))
}

/// The lists of a paper, a file each.
fn tables(layout: &Layout, key: &str, kind: Kind) -> Vec<Made> {
    let Kind::Sheet(sheet) = kind else {
        return Vec::new();
    };
    let all = lists(layout, sheet);
    let several = all.len() > 1;
    let each = all.iter().enumerate().map(|(n, list)| {
        let name = if several {
            format!("{key}-{}.csv", n + 1)
        } else {
            format!("{key}.csv")
        };
        (name, csv(&list.records()))
    });
    each.collect()
}

/// Writes them into a folder.
///
/// # Errors
/// The name of what cannot be written, and why.
pub(crate) fn written(files: &[Made], dir: &Path) -> Result<(), (String, Error)> {
    let told = |path: &Path, error| (path.display().to_string(), error);
    std::fs::create_dir_all(dir).map_err(|error| told(dir, error))?;
    for (name, bytes) in files {
        let path = dir.join(name);
        std::fs::write(&path, bytes).map_err(|error| told(&path, error))?;
    }
    Ok(())
}
