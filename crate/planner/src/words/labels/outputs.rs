//! Papers saved as files of other formats.

/// Labels by id.
pub(super) const LABELS: &[(&str, &str)] = &[
    ("output-pdf", "Save as PDF"),
    ("output-csv", "Save as CSV"),
    ("output-csv-of", "{list} as CSV"),
    ("output-progress", "How far the file is"),
    ("output-stop", "Stop"),
    ("output-ready", "The file is ready."),
    (
        "output-letters",
        "The file is ready. Its font has no shape for {letters}; an empty box stands for each. Printing from the browser has them.",
    ),
    (
        "output-not-here",
        "What makes this file is not on this phone yet and there is no network. Open the planner once with a network, or print from the browser instead.",
    ),
    (
        "output-single",
        "A single file from a disk saves no PDF, list or calendar. Print from the browser instead, or open the planner online once.",
    ),
    ("output-not-made", "The file was not made ({why})."),
    ("output-print", "Print instead"),
    ("crockery", "Paper crockery"),
    (
        "crockery-what",
        "The outline of every dish and prop at true size, to cut out and lay on the table before anything is hired. Print it at 100% and measure the bar on each page: it must be 100 mm long.",
    ),
    (
        "crockery-none",
        "Nothing has an outline to cut: food is not cut out.",
    ),
    ("crockery-pages", "{count:1 page|{count} pages}."),
];
