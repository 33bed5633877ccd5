use std::fs;
use std::path::Path;

/// A committed table of reference values: a CSV with one line of names,
/// without quotes.
#[derive(Debug)]
pub struct Table {
    name: String,
    names: Vec<String>,
    rows: Vec<Vec<String>>,
}

impl Table {
    /// Reads `tests/reference/<name>`.
    ///
    /// # Panics
    /// When the file is missing or a line has not as many fields as the first:
    /// a check without its data must fail.
    #[must_use]
    pub fn read(name: &str) -> Self {
        let path = Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("reference")
            .join(name);
        let text = fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
        let mut lines = text
            .lines()
            .map(|line| line.split(',').map(str::to_owned).collect::<Vec<_>>());
        let names = lines.next().unwrap_or_default();
        let rows: Vec<Vec<String>> = lines.collect();
        for (i, row) in rows.iter().enumerate() {
            assert_eq!(row.len(), names.len(), "{name}, row {}: fields", i + 1);
        }
        Self {
            name: name.to_owned(),
            names,
            rows,
        }
    }

    /// The rows after the line of names.
    pub fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        (0..self.rows.len()).map(|index| Row { table: self, index })
    }

    /// How many rows there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.rows.len()
    }

    /// Whether there are none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }
}

/// One row of a table.
#[derive(Clone, Copy, Debug)]
pub struct Row<'a> {
    table: &'a Table,
    index: usize,
}

impl<'a> Row<'a> {
    /// The field of this name.
    ///
    /// # Panics
    /// When there is none.
    #[must_use]
    pub fn text(self, name: &str) -> &'a str {
        let column = self.table.names.iter().position(|n| n == name);
        let column = column.unwrap_or_else(|| panic!("{}: no column {name}", self.table.name));
        &self.table.rows[self.index][column]
    }

    /// The field of this name as a number.
    ///
    /// # Panics
    /// When it is not one.
    #[must_use]
    pub fn number(self, name: &str) -> f64 {
        self.parsed(self.text(name))
    }

    /// The field of this name as numbers parted by spaces.
    ///
    /// # Panics
    /// When one of them is not a number.
    #[must_use]
    pub fn numbers(self, name: &str) -> Vec<f64> {
        self.text(name)
            .split_whitespace()
            .map(|n| self.parsed(n))
            .collect()
    }

    /// The field of this name as lists of numbers, the lists parted by bars.
    ///
    /// # Panics
    /// When one of them is not a number.
    #[must_use]
    pub fn lists(self, name: &str) -> Vec<Vec<f64>> {
        let list = |l: &str| l.split_whitespace().map(|n| self.parsed(n)).collect();
        self.text(name).split('|').map(list).collect()
    }

    /// Where this row stands, for messages.
    #[must_use]
    pub fn place(self) -> String {
        format!("{}, row {}", self.table.name, self.index + 1)
    }

    fn parsed(self, text: &str) -> f64 {
        text.parse()
            .unwrap_or_else(|e| panic!("{}: {text:?}: {e}", self.place()))
    }
}
