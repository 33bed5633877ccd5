//! Adding things, those of one's own, and new tables.

/// Labels by id.
pub(super) const LABELS: &[(&str, &str)] = &[
    // Adding.
    ("add", "Add a thing"),
    (
        "add-search",
        "Trade name or size, such as “coupe 26” or “runner”",
    ),
    ("add-found", "Found"),
    (
        "add-nothing",
        "Nothing by that name. Make it as your own below.",
    ),
    ("add-own", "Own dish or prop"),
    ("add-across", "Across, {unit}"),
    ("add-down", "Down, {unit}"),
    ("own-shape", "Its shape is"),
    ("own-round", "round"),
    ("own-oval", "oval"),
    ("own-rect", "rectangular"),
    ("own-traced", "traced over a photo"),
    ("own-sort", "It is"),
    ("own-sort-dish", "a dish"),
    ("own-sort-board", "a board or tray"),
    ("own-sort-other", "something else"),
    ("add-it", "Add it"),
    ("own-dish", "own dish"),
    ("own-prop", "own prop"),
    // Traced over a photo.
    (
        "trace-advice",
        "Take the photo from straight above, with a ruler or anything of known length beside the prop at the height of its rim: from the side, or with the ruler lower, the size comes out wrong. The photo stays on this device and is not kept.",
    ),
    ("trace-photo", "A photo of the prop from straight above"),
    ("trace-aim", "The finger"),
    ("trace-edge", "sets points round the edge"),
    ("trace-stroke", "draws round the edge"),
    ("trace-known", "marks a known length"),
    (
        "trace-tap",
        "Tap round the edge of the prop, point by point. Tap a point again to move or remove it.",
    ),
    (
        "trace-draw",
        "Go once round the edge of the prop with the finger; it closes by itself.",
    ),
    (
        "trace-marks",
        "Now choose “marks a known length” and tap both ends of it.",
    ),
    ("trace-ends", "Tap both ends of the known length."),
    ("trace-length", "Say how long it is between the two marks."),
    (
        "trace-keys",
        "The photo. Arrow keys move the cross-hair, with Shift by a single pixel; Enter sets a point or picks the one there, Delete removes it, Backspace takes the last step back, plus and minus enlarge. Two fingers enlarge and move it.",
    ),
    ("trace-zoom", "Photo enlarged"),
    ("trace-times", "{times} times"),
    ("trace-smaller", "Show more of the photo"),
    ("trace-larger", "Enlarge the photo"),
    ("trace-point", "The point picked"),
    ("trace-remove", "Remove this point"),
    ("trace-back", "Take the last point back"),
    ("trace-true", "True length between the marks, {unit}"),
    ("trace-found", "It is {width} wide and {depth} deep."),
    (
        "trace-missing",
        "The outline is not finished: trace the edge, mark a known length and say how long it is. Nothing was added.",
    ),
    (
        "add-range",
        "A dish is {least} to {most} across. Nothing was added.",
    ),
    ("add-done", "Done adding"),
    ("add-groups", "Look through"),
    ("add-back", "All groups"),
    ("add-last", "Added last"),
    ("add-more", "{count:1 more|{count} more}"),
    ("favourites", "Favourites"),
    ("favourite", "Favourite: {thing}"),
    (
        "favourite-lost",
        "This browser keeps no favourites ({why}). They last until the page is closed.",
    ),
    // New tables.
    ("starters", "Laid tables to start from"),
    (
        "starters-lost",
        "The laid tables could not be had ({why}). An empty board and your own dishes can be laid all the same.",
    ),
    ("new-empty", "An empty board"),
    ("new-dishes", "From my dishes"),
    ("lay-board", "Lay the board"),
    // Surfaces.
    ("surfaces", "Surfaces"),
    ("surface-pick", "Surface: {surface}"),
];
