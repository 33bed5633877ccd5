//! Mask guides.

/// Labels by id.
pub(super) const LABELS: &[(&str, &str)] = &[
    ("guides", "Mask guides"),
    (
        "guides-what",
        "A grey picture for each exposure: white where it is to be seen, with room round its hands, soft in their shadow. Final masks are painted within it.",
    ),
    (
        "guides-none",
        "There is nothing to combine yet: guides need a clean exposure, hands, and a lens that shows the frame.",
    ),
    (
        "guides-size",
        "{count:1 file|{count} files} of {wide} × {high} pixels, your camera’s own.",
    ),
    (
        "guides-size-usual",
        "{count:1 file|{count} files} of {wide} × {high} pixels, as usual for this sensor. Your camera’s own are told under Camera & light.",
    ),
    ("guides-make", "Make the guides"),
    ("guides-progress", "How far the guides are"),
    ("guides-stop", "Stop"),
    (
        "guides-ready",
        "{count:1 guide|{count} guides} and their overview are ready, {mega} MB.",
    ),
    (
        "guides-older",
        "These guides are of the layout as it was before the last change.",
    ),
    ("guides-save", "Save them in one zip file"),
    ("guides-not-made", "The guides were not made ({why})."),
    ("guides-show", "Show where each goes"),
    (
        "guides-overview",
        "Where each exposure is seen in the combined picture, with the names of the files",
    ),
    ("guides-print", "Print this sheet"),
];
