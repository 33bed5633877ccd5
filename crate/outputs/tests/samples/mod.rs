//! A list and a calendar with what is hard in them.
use outputs::{Event, csv, ics};

/// Formulas, numbers, quotes, lines and letters of several alphabets.
pub(crate) fn list() -> Vec<u8> {
    let rows = [
        ["name", "size", "note"],
        ["mussel pot", "-4", "-12.5"],
        ["=1+1", "+49 30", "@SUM(A1)"],
        ["-cmd", "\t=2", "  =3"],
        [
            "bowl, \"deep\"",
            "two\nlines",
            "Crème brûlée, Żółć, Ψωμί, 魚",
        ],
        ["", "0", "'s"],
    ];
    let rows: Vec<Vec<String>> = rows
        .iter()
        .map(|row| row.map(String::from).to_vec())
        .collect();
    csv(&rows)
}

/// Words to be escaped, a line to be folded, ends of months and years.
pub(crate) fn calendar() -> Vec<u8> {
    let day = |uid: &str, day, next, summary: &str| Event {
        uid: uid.into(),
        day,
        next,
        summary: summary.into(),
        description: String::new(),
    };
    let events = [
        day(
            "a1-brief",
            [2026, 12, 31],
            [2027, 1, 1],
            "Brief; shapes, rights\\terms",
        ),
        day(
            "a1-order",
            [2028, 2, 28],
            [2028, 2, 29],
            "Order fish and bread",
        ),
        day(
            "a1-shoot",
            [2028, 2, 29],
            [2028, 3, 1],
            "Shoot “Harbour supper”: a long line of words, with ümlauts and 魚, that has to be folded more than once before it ends",
        ),
    ];
    ics(&events, [2026, 11, 26, 9, 30, 0]).into_bytes()
}
