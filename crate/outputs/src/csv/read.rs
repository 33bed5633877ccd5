//! Lists in: whatever a spreadsheet saved, with every row that cannot be read
//! told by its line.
use csv::{ByteRecord, ReaderBuilder};

use super::{GUARD, Limits, computes};

/// What a file holds.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Sheet {
    /// Names of the columns.
    pub head: Vec<String>,
    /// Each row that was read with the line it begins on, as long as the
    /// heading; rows without a word are left out.
    pub rows: Vec<(u64, Vec<String>)>,
    /// Each row that was not.
    pub faults: Vec<RowFault>,
}

/// A row that is left out, and why.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("line {line}: {what}")]
pub struct RowFault {
    /// The line it begins on, from 1.
    pub line: u64,
    /// What is wrong with it.
    pub what: What,
}

/// What is wrong with a row.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum What {
    /// More cells than the heading has.
    #[error("{found} cells under {named} columns")]
    Cells {
        /// How many it has.
        found: usize,
        /// How many have a name.
        named: usize,
    },
    /// A cell that is too long.
    #[error("column {column} has {found} letters, at most {most} are read")]
    Long {
        /// Which, from 1.
        column: usize,
        /// How many letters it has.
        found: usize,
        /// How many it may have.
        most: usize,
    },
    /// A cell whose letters are no UTF-8.
    #[error("column {column} is no text in UTF-8")]
    Letters {
        /// Which, from 1.
        column: usize,
    },
}

/// Why nothing of a file is read.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum CsvFault {
    /// It is too long.
    #[error("the file has {found} bytes, at most {most} are read")]
    Bytes {
        /// How long it is.
        found: usize,
        /// How long it may be.
        most: usize,
    },
    /// It has no heading.
    #[error("the first line names no columns")]
    Head,
    /// It has too many columns.
    #[error("the first line names {found} columns, at most {most} are read")]
    Columns {
        /// How many it has.
        found: usize,
        /// How many it may have.
        most: usize,
    },
    /// It has too many rows.
    #[error("the file has more than {most} rows")]
    Rows {
        /// How many it may have.
        most: usize,
    },
    /// A heading that cannot be read.
    #[error("the first line is not read: {0}")]
    Heading(What),
    /// It is no list.
    #[error("the file is no list: its letters have two bytes each; save it as CSV in UTF-8")]
    Wide,
}

/// Reads a list. Commas, semicolons or tabs divide it, whichever the first line
/// has most of.
///
/// # Errors
/// When it has no heading or more than `limits` allow.
pub fn csv_read(bytes: &[u8], limits: &Limits) -> Result<Sheet, CsvFault> {
    if bytes.len() > limits.bytes {
        return Err(CsvFault::Bytes {
            found: bytes.len(),
            most: limits.bytes,
        });
    }
    if bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]) {
        return Err(CsvFault::Wide);
    }
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    let mut reader = ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(divider(bytes))
        .from_reader(bytes);
    let mut record = ByteRecord::new();
    let (mut seen, mut line) = (0, 1);
    let mut sheet = Sheet::default();
    // Reading from memory never fails, and rows of any length are taken.
    while reader.read_byte_record(&mut record).unwrap_or(false) {
        let begins = record.position().map_or(seen, |at| at.byte() as usize);
        let begins = begins + ends(&bytes[begins..]);
        line += lines(&bytes[seen..begins]);
        seen = begins;
        let cells = cells(&record, limits);
        if sheet.head.is_empty() {
            sheet.head = heading(cells, limits)?;
            continue;
        }
        if sheet.rows.len() + sheet.faults.len() >= limits.rows {
            return Err(CsvFault::Rows { most: limits.rows });
        }
        match cells.and_then(|cells| fitted(cells, sheet.head.len())) {
            Ok(row) if row.iter().all(String::is_empty) => {}
            Ok(row) => sheet.rows.push((line, row)),
            Err(what) => sheet.faults.push(RowFault { line, what }),
        }
    }
    if sheet.head.is_empty() {
        return Err(CsvFault::Head);
    }
    Ok(sheet)
}

/// How many bytes of ends of lines `bytes` begins with: the library tells where
/// the row before stopped.
fn ends(bytes: &[u8]) -> usize {
    let more = bytes.iter().position(|b| !matches!(b, b'\r' | b'\n'));
    more.unwrap_or(bytes.len())
}

/// How many lines end within `bytes`.
fn lines(bytes: &[u8]) -> u64 {
    let pairs = bytes.windows(2).filter(|pair| pair == b"\r\n").count();
    let all = bytes.iter().filter(|b| matches!(b, b'\r' | b'\n')).count();
    (all - pairs) as u64
}

/// What divides cells.
fn divider(bytes: &[u8]) -> u8 {
    let line = bytes.split(|b| matches!(b, b'\r' | b'\n')).next();
    let count = |divider: u8| {
        let within = line.into_iter().flatten();
        within.filter(|&&b| b == divider).count()
    };
    // The first of those that are as many.
    let mut best = b',';
    for other in [b';', b'\t'] {
        if count(other) > count(best) {
            best = other;
        }
    }
    best
}

/// The heading: nothing is named past its last word.
fn heading(cells: Result<Vec<String>, What>, limits: &Limits) -> Result<Vec<String>, CsvFault> {
    let mut head = cells.map_err(CsvFault::Heading)?;
    while head.last().is_some_and(String::is_empty) {
        head.pop();
    }
    match head.len() {
        0 => Err(CsvFault::Head),
        found if found > limits.columns => Err(CsvFault::Columns {
            found,
            most: limits.columns,
        }),
        _ => Ok(head),
    }
}

/// A row as long as the heading: what is short of it is empty.
fn fitted(mut cells: Vec<String>, named: usize) -> Result<Vec<String>, What> {
    while cells.len() > named && cells.last().is_some_and(String::is_empty) {
        cells.pop();
    }
    if cells.len() > named {
        let found = cells.len();
        return Err(What::Cells { found, named });
    }
    cells.resize(named, String::new());
    Ok(cells)
}

/// The cells of a row as words, without what guards them from being computed.
fn cells(record: &ByteRecord, limits: &Limits) -> Result<Vec<String>, What> {
    let mut out = Vec::with_capacity(record.len());
    for (n, cell) in record.iter().enumerate() {
        let column = n + 1;
        let text = std::str::from_utf8(cell).map_err(|_| What::Letters { column })?;
        let found = text.chars().count();
        if found > limits.letters {
            let most = limits.letters;
            return Err(What::Long {
                column,
                found,
                most,
            });
        }
        let bare = text.strip_prefix(GUARD).filter(|rest| computes(rest));
        out.push(bare.unwrap_or(text).trim().to_owned());
    }
    Ok(out)
}

#[cfg(test)]
mod tests {
    use super::super::csv;
    use super::*;

    const LIMITS: Limits = Limits {
        bytes: 1000,
        rows: 4,
        columns: 3,
        letters: 12,
    };

    fn read(text: &str) -> Result<Sheet, CsvFault> {
        csv_read(text.as_bytes(), &LIMITS)
    }

    #[test]
    fn what_was_written_is_read() {
        let rows = [
            vec!["name".to_owned(), "cm".to_owned()],
            vec!["=Pot, \"big\"".to_owned(), "-4".to_owned()],
        ];
        let sheet = csv_read(&csv(&rows), &LIMITS).expect("a list");
        assert_eq!(sheet.head, rows[0]);
        assert_eq!(sheet.rows, [(2, rows[1].clone())]);
        assert!(sheet.faults.is_empty(), "{:?}", sheet.faults);
    }

    #[test]
    fn semicolons_and_tabs_divide_too() {
        for text in ["a;b,c;d\r\n1;2;3", "a\tb,c\td\n1\t2\t3\n\n\n"] {
            let sheet = read(text).expect("a list");
            assert_eq!(sheet.head, ["a", "b,c", "d"], "{text}");
            assert_eq!(sheet.rows[0].1, ["1", "2", "3"], "{text}");
        }
    }

    #[test]
    fn odd_rows_are_told_and_the_others_read() {
        let sheet = csv_read(b"a,b\n1\n1,2,3\n1,\xff\n,\n", &LIMITS).expect("a list");
        assert_eq!(
            sheet.rows,
            [(2, vec!["1".into(), String::new()])],
            "a short row is filled"
        );
        let told: Vec<String> = sheet.faults.iter().map(ToString::to_string).collect();
        let cells = "line 3: 3 cells under 2 columns";
        assert_eq!(told, [cells, "line 4: column 2 is no text in UTF-8"]);
        let sheet = read("a\r\n\r\n\"1\n2\"\r\n1234567890123\r\n").expect("a list");
        let long = "line 5: column 1 has 13 letters, at most 12 are read";
        assert_eq!(sheet.faults[0].to_string(), long);
    }

    #[test]
    fn too_much_and_nothing_are_refused() {
        let most = LIMITS;
        let over = "a".repeat(most.bytes + 1);
        let found = over.len();
        assert_eq!(
            read(&over),
            Err(CsvFault::Bytes {
                found,
                most: most.bytes
            })
        );
        assert_eq!(read("a\n1\n2\n3\n4\n").map(|s| s.rows.len()), Ok(4));
        assert_eq!(read("a\n1\n2\n3\n4\n5\n"), Err(CsvFault::Rows { most: 4 }));
        assert_eq!(
            read("a,b,c,d\n"),
            Err(CsvFault::Columns { found: 4, most: 3 })
        );
        assert_eq!(read(""), Err(CsvFault::Head), "empty");
        assert_eq!(read(",,\n1,2,3"), Err(CsvFault::Head), "no names");
        assert_eq!(
            csv_read(b"\xff\xfea\0", &most),
            Err(CsvFault::Wide),
            "two bytes a letter"
        );
    }
}
