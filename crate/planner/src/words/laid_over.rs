//! Sentences of the plan laid over a test photo.

/// Sentences by id.
#[rustfmt::skip]
pub(super) const SENTENCES: &[(&str, &str)] = &[
    ("drift-there", "{thing} stands in its place, to {by}."),
    ("drift-off", "{thing} stands {by} {way} of its place."),
    ("frame-there", "The frame lies where it was planned, to {by} at its worst corner ({pixels} pixels)."),
    ("frame-off", "The frame is {by} off on the table at its worst corner, {pixels} pixels of the camera."),
    ("marks-count", "Two to four things have to be told in the photo first."),
    ("marks-line", "The marks lie together or on one line; take things far apart."),
    ("marks-order", "The marks do not follow each other as on the plan; look which thing each was."),
    ("bump-still", "The camera stood still, to {pixels} pixels ({by} mm on the table)."),
    ("bump-moved", "The camera moved: {pixels} pixels at the worst corner, {by} mm on the table. Shoot a new clean exposure, then go on."),
    ("bump-steady", "The light is the same."),
    ("bump-lighter", "The marks are {stops} stops lighter: look for what changed in the light."),
    ("bump-darker", "The marks are {stops} stops darker: look for what changed in the light."),
];
