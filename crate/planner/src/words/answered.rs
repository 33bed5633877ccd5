//! What a client answered.

/// Sentences by id.
pub(super) const SENTENCES: &[(&str, &str)] = &[
    ("answer-yes", "Yes"),
    ("answer-changes", "Yes with changes"),
    ("answer-no", "No"),
    ("answer-uncounted", "{said}"),
    ("answer-uncounted-by", "{said}: {by}"),
    ("answer-version", "{said}, to version {version}"),
    ("answer-version-by", "{said}, to version {version}: {by}"),
    ("answer-taken", "answer put on the table"),
    ("drawing-answered", "{version} · {answer}"),
    ("remark-place", "at a bare place, {place}"),
    ("remark-thing", "{tag}, {thing}"),
    ("remark-tag", "{tag}, not on the table any more"),
    ("remark-gone", "a thing that is not on the table any more"),
];
