//! The plan over a test photo, and two frames compared.

/// Labels by id.
#[rustfmt::skip]
pub(super) const LABELS: &[(&str, &str)] = &[
    ("test", "Plan over a test photo"),
    ("test-what", "Load a photo of the set, tap the middle of the rims of two to four things that stand well apart, and see what has drifted. The photo stays in this page."),
    ("test-choose", "A photo of the set"),
    ("test-keys", "The photo: arrows move the cross-hair, Shift makes them fine, Enter tells the place"),
    ("test-tap-mark", "Mark {number} of up to 4: tap the middle of {thing}, at its rim."),
    ("test-tap-thing", "Tap the middle of {thing}, at its rim, where it stands in the photo."),
    ("test-thing", "Which thing"),
    ("test-next", "A tap tells"),
    ("test-mark", "a mark"),
    ("test-measure", "where a thing stands"),
    ("test-back", "Take the last mark back"),
    ("test-drifts", "What was measured"),
    ("test-follow", "Move it there"),
    ("test-away", "Put the photo away"),
    ("test-few", "Two things have to stand on the table first."),
    ("bump-choose", "Another frame of the same set, to see whether the camera was bumped"),
    ("bump-sizes", "The two photos differ in size, so they are not two frames of one camera."),
    ("bump-lost", "{count:1 mark is|{count} marks are} not found in the second frame within a few hundred of the camera’s pixels, or look like all about them. Take marks on rims or corners that stand free."),
    ("bump-show", "Shown"),
    ("bump-first", "the first"),
    ("bump-second", "the second"),
    ("bump-apart", "what differs"),
];
