//! Sentences on the sheet that comes with the mask guides.

/// Sentences by id.
#[rustfmt::skip]
pub(super) const SENTENCES: &[(&str, &str)] = &[
    ("guides-title", "Mask guides"),
    ("guides-size", "{wide} × {high} pixels"),
    ("guides-size-usual", "{wide} × {high} pixels, as usual for this sensor"),
    ("guides-ground", "{exposure}, at the bottom: white all over"),
    ("guides-stack", "Lay the exposures on each other in the order of these files, the lowest number at the bottom. Each file masks its own exposure: white shows it, black hides it."),
    ("guides-wide", "They are wide on purpose, for hands never land on the line: paint the final mask within the white. Whole lines are where a guide is half white, broken ones where it ends."),
];
