//! Sentences on true-size paper crockery.

/// Sentences by id.
#[rustfmt::skip]
pub(super) const SENTENCES: &[(&str, &str)] = &[
    ("crockery", "Paper crockery at true size"),
    ("crockery-title", "{title}: paper crockery at true size"),
    ("crockery-bar", "100 mm"),
    ("crockery-print", "Print at 100%, not fitted to the page, and measure the bar: it must be 100 mm long."),
    ("crockery-thing", "{numbers} {name}"),
    ("crockery-cut", "{size} cm, cut {count}"),
    ("crockery-part", "{thing}: row {row} of {rows}, column {column} of {columns}"),
    ("crockery-join", "Cut along the broken lines and lay the next sheet on the strip beside them."),
    ("crockery-page", "{page} of {pages}"),
];
