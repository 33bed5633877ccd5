//! Sentences about what the search proposes.

/// Sentences by id.
#[rustfmt::skip]
pub(super) const SENTENCES: &[(&str, &str)] = &[
    ("propose-least", "As little moved as helps"),
    ("propose-dishes", "The dishes laid anew"),
    ("propose-around", "The dishes stay, all about them gives way"),
    ("propose-free", "Anything moved that may be"),
    ("propose-cure", "A way out"),
    ("propose-gone", "No longer: {sentence}"),
    ("propose-less", "Less: {sentence}"),
    ("propose-more", "More: {sentence}"),
    ("propose-new", "New: {sentence}"),
];
