//! The list and the calendar are those that Python's csv and PyPI's icalendar
//! read as `tests/reference/formats.csv` says (`generate_papers.py`).
mod samples;

/// FNV-1a, as the generator computes it.
fn fnv(bytes: &[u8]) -> String {
    let mix = |mixed: u64, byte: &u8| (mixed ^ u64::from(*byte)).wrapping_mul(0x100_0000_01b3);
    format!("{:016x}", bytes.iter().fold(0xcbf2_9ce4_8422_2325, mix))
}

#[test]
fn formats_are_those_that_were_read() {
    let table = include_str!("../../../tests/reference/formats.csv");
    for (kind, bytes) in [("csv", samples::list()), ("ics", samples::calendar())] {
        let row = table.lines().find(|line| line.starts_with(kind));
        let judged = row.and_then(|row| row.split(',').nth(1));
        assert_eq!(
            judged,
            Some(fnv(&bytes).as_str()),
            "{kind}: run generate_papers.py"
        );
    }
}
