//! Lists as CSV (RFC 4180), out and in.
mod limits;
mod read;
mod write;

pub use limits::Limits;
pub use read::{CsvFault, RowFault, Sheet, What, csv_read};
pub use write::csv;

/// What a spreadsheet may take for a formula at the beginning of a cell; the
/// wide forms are read as the narrow ones by some.
const FORMULA: [char; 11] = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];

/// What stands before a formula so that it is read as words.
const GUARD: char = '\'';

/// Whether a spreadsheet may compute a cell: it begins with what a formula
/// begins with, after blanks and quotes too, and is no plain number.
fn computes(cell: &str) -> bool {
    let inside = cell.trim_start_matches([' ', '"', '\'']);
    inside.starts_with(FORMULA) && !is_number(cell)
}

/// Whether a cell is a plain number: digits, with a minus before them and a
/// point within them at most.
fn is_number(cell: &str) -> bool {
    let digits = cell.strip_prefix('-').unwrap_or(cell);
    let (whole, part) = digits.split_once('.').unwrap_or((digits, "0"));
    let all = |text: &str| !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
    all(whole) && all(part)
}
