//! Versions of a layout kept on this device, and two layouts beside each other.

/// Labels by id.
pub(super) const LABELS: &[(&str, &str)] = &[
    ("versions", "Versions"),
    (
        "versions-what",
        "A version is this table as it stands now, kept here under a name: to compare with later, or to go back to.",
    ),
    ("version-name", "Name of this version"),
    ("version-keep", "Keep this as a version"),
    ("version-number", "version {number}"),
    (
        "versions-full",
        "No more than {count} versions of one table are kept here. Delete one to keep another.",
    ),
    (
        "versions-newer",
        "A table of a newer planner keeps no versions here.",
    ),
    (
        "version-compare",
        "Compare “{name}” with the table as it is now",
    ),
    ("version-compare-short", "compare"),
    ("version-back", "Go back to “{name}”"),
    ("version-back-short", "go back to it"),
    ("version-delete", "Delete “{name}”"),
    ("version-kept", "“{name}” is kept."),
    ("version-deleted", "“{name}” is deleted."),
    ("version-not-kept", "The version was not kept ({why})."),
    ("version-now", "the table as it is now"),
    ("done-version-back", "back to “{name}”"),
    ("two-choose", "Compare any two"),
    ("two-first", "First"),
    ("two-second", "Second"),
    ("two-show", "Put them beside each other"),
    ("two", "Beside each other"),
    ("two-back", "Back to the table"),
    ("two-reading", "Reading both…"),
    ("two-not-read", "They were not compared ({why})."),
    (
        "two-own",
        "These are two tables of their own. What changed is told between versions of one table.",
    ),
    ("two-changes", "What changed"),
    ("two-none", "Nothing changed."),
    ("two-findings", "Findings"),
    ("two-only", "Only in {name}"),
    ("two-both", "In both"),
    ("two-free", "Neither has anything that needs another look."),
    (
        "two-as-before",
        "{count:1 finding is|{count} findings are} as before",
    ),
    ("two-before", "Before: {sentence}"),
    ("two-score", "{before}, then {after}"),
    (
        "two-picture",
        "{name}, seen from above. Both pictures move and enlarge together.",
    ),
];
