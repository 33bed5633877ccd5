//! Papers for the page: PDF page by page, so that the worker can tell how far it
//! is and be ended between two, and lists as CSV.
use outputs::{Event, Limits, Maker, Meta, Sheet, csv_read};
use wasm_bindgen::prelude::*;

/// A document in the making.
#[wasm_bindgen]
#[derive(Default)]
pub struct Document {
    maker: Maker,
}

/// A document.
#[wasm_bindgen]
pub struct Made {
    bytes: Vec<u8>,
    missing: String,
}

#[wasm_bindgen]
impl Document {
    /// A document without pages.
    #[wasm_bindgen(constructor)]
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a drawing as a page.
    ///
    /// # Errors
    /// When it holds what would be left out of the page.
    pub fn page(&mut self, svg: &str) -> Result<(), JsError> {
        self.maker.page(svg).map_err(JsError::from)
    }

    /// The document, under this title.
    #[must_use]
    pub fn finish(self, title: &str) -> Made {
        let made = self.maker.finish(&Meta {
            title,
            language: "en",
        });
        Made {
            bytes: made.bytes,
            missing: made.missing.into_iter().collect(),
        }
    }
}

#[wasm_bindgen]
impl Made {
    /// The file.
    #[wasm_bindgen(getter)]
    #[must_use]
    pub fn bytes(&self) -> Vec<u8> {
        self.bytes.clone()
    }

    /// Letters the serif has no shape of.
    #[wasm_bindgen(getter)]
    #[must_use]
    pub fn missing(&self) -> String {
        self.missing.clone()
    }
}

/// A list as CSV: its cells row by row, and how many each row has.
#[wasm_bindgen]
#[must_use]
pub fn csv(cells: Vec<String>, columns: usize) -> Vec<u8> {
    let rows: Vec<Vec<String>> = cells.chunks(columns.max(1)).map(<[_]>::to_vec).collect();
    outputs::csv(&rows)
}

/// Days as a calendar file: of each its UID, the day and the day after as
/// `YYYY-MM-DD`, what it is called and what is to be known about it; and when the
/// file is made, year to second of UTC.
#[wasm_bindgen]
#[must_use]
pub fn ics(cells: Vec<String>, stamp: &[u16]) -> String {
    let events: Vec<Event> = cells.chunks_exact(5).map(event).collect();
    let mut made = [0; 6];
    made.iter_mut()
        .zip(stamp)
        .for_each(|(to, from)| *to = *from);
    outputs::ics(&events, made)
}

fn event(cells: &[String]) -> Event {
    let day = |text: &str| {
        let mut parts = text.split('-').map(|part| part.parse().unwrap_or(0));
        [(); 3].map(|()| parts.next().unwrap_or(0))
    };
    Event {
        uid: cells[0].clone(),
        day: day(&cells[1]),
        next: day(&cells[2]),
        summary: cells[3].clone(),
        description: cells[4].clone(),
    }
}

/// A list that was read.
#[wasm_bindgen]
pub struct Listed {
    sheet: Sheet,
}

#[wasm_bindgen]
impl Listed {
    /// Reads a list.
    ///
    /// # Errors
    /// When it has no heading or is too long, in words.
    #[wasm_bindgen(constructor)]
    pub fn new(bytes: &[u8]) -> Result<Self, JsError> {
        Ok(Self {
            sheet: csv_read(bytes, &Limits::LIST)?,
        })
    }

    /// Names of the columns.
    #[must_use]
    pub fn head(&self) -> Vec<String> {
        self.sheet.head.clone()
    }

    /// The cells of all rows, one row after another.
    #[must_use]
    pub fn cells(&self) -> Vec<String> {
        let rows = self.sheet.rows.iter();
        rows.flat_map(|(_, row)| row.clone()).collect()
    }

    /// The line each row begins on.
    #[must_use]
    pub fn lines(&self) -> Vec<u32> {
        let rows = self.sheet.rows.iter();
        rows.map(|(line, _)| *line as u32).collect()
    }

    /// The line of each row that was not read.
    #[must_use]
    pub fn fault_lines(&self) -> Vec<u32> {
        self.sheet.faults.iter().map(|f| f.line as u32).collect()
    }

    /// Why each of them was not.
    #[must_use]
    pub fn faults(&self) -> Vec<String> {
        let faults = self.sheet.faults.iter();
        faults.map(|f| f.what.to_string()).collect()
    }
}
