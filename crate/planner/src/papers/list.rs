//! A list: named columns, and rows of text in them.
use crate::words::say;

/// A box to tick with a pen.
pub(super) const TICK: &str = "☐";

/// A list as it stands on a paper.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct List {
    /// What it is a list of; empty where the paper's own name says it.
    pub title: String,
    /// What each column is called, and how much of the paper it takes beside
    /// the others.
    pub columns: Vec<(String, u16)>,
    /// The rows, each with a text for every column.
    pub rows: Vec<Vec<String>>,
}

impl List {
    /// A list with columns called by these sentences.
    pub(super) fn of(title: &str, columns: &[(&str, u16)]) -> Self {
        let name = |id: &str| {
            if id.is_empty() {
                String::new()
            } else {
                say(id, &[])
            }
        };
        Self {
            title: name(title),
            columns: columns.iter().map(|(id, wide)| (name(id), *wide)).collect(),
            rows: Vec::new(),
        }
    }

    /// Its head and rows as plain text, ticks left empty: what a table of
    /// another program takes.
    #[must_use]
    pub fn records(&self) -> Vec<Vec<String>> {
        let head = self.columns.iter().map(|(name, _)| name.clone()).collect();
        let plain = |cell: &String| {
            if cell == TICK {
                String::new()
            } else {
                cell.clone()
            }
        };
        let rows = self.rows.iter();
        let rows = rows.map(|row| row.iter().map(plain).collect());
        std::iter::once(head).chain(rows).collect()
    }
}
