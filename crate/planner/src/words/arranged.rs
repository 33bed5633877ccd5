//! Names of starting arrangements.

/// Sentences by id.
#[rustfmt::skip]
pub(super) const SENTENCES: &[(&str, &str)] = &[
    ("arranged-ring", "Round the hero"),
    ("arranged-diagonal", "Corner to corner"),
    ("arranged-side", "To one side"),
];
