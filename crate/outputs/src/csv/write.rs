//! Lists out.
use csv::{QuoteStyle, Terminator, WriterBuilder};

use super::{GUARD, computes};

/// Says that what follows is UTF-8. Spreadsheets open a file without it in
/// their system's own old letters and break every accent; what reads lists by
/// program knows it well (Python's `utf-8-sig`).
const MARK: &str = "\u{feff}";

/// Rows as CSV: commas, lines ended as RFC 4180 has them, quotes where needed,
/// and no cell that a spreadsheet would compute.
#[must_use]
pub fn csv(rows: &[Vec<String>]) -> Vec<u8> {
    let mut writer = WriterBuilder::new()
        .terminator(Terminator::CRLF)
        .quote_style(QuoteStyle::Necessary)
        .flexible(true)
        .from_writer(MARK.as_bytes().to_vec());
    for row in rows {
        let cells = row.iter().map(|cell| guarded(cell));
        // Memory takes every row.
        if writer.write_record(cells).is_err() {
            break;
        }
    }
    writer.into_inner().unwrap_or_default()
}

/// A cell that is read as words or as a plain number.
fn guarded(cell: &str) -> String {
    if computes(cell) {
        format!("{GUARD}{cell}")
    } else {
        cell.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(cell: &str) -> String {
        let out = csv(&[vec![cell.to_owned(), "x".to_owned()]]);
        let text = String::from_utf8(out).expect("UTF-8");
        text.strip_prefix(MARK).expect("the mark").to_owned()
    }

    #[test]
    fn what_would_be_computed_is_guarded() {
        for cell in [
            "=1+1", "+1", "-1+2", "@SUM(A1)", "\t=1", "\r=1", "  =1", "\"=1\"", "'=1", "＝1",
            "-cmd", "-1e5", "--1", "-", "-.5", "-1.",
        ] {
            let out = line(cell);
            let start = out.trim_start_matches('"');
            assert!(start.starts_with('\''), "{cell:?} became {out:?}");
        }
    }

    #[test]
    fn numbers_and_words_stay_as_they_are() {
        for cell in ["-12", "-0.5", "14", "3.25", "Pot", "a=b", "12 - 14", "’s"] {
            assert_eq!(line(cell), format!("{cell},x\r\n"));
        }
    }

    #[test]
    fn quotes_commas_and_lines_are_quoted() {
        assert_eq!(line("a \"b\", c"), "\"a \"\"b\"\", c\",x\r\n");
        assert_eq!(line("two\nlines"), "\"two\nlines\",x\r\n");
    }
}
