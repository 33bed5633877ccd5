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
    ("add-own", "Own dish"),
    ("add-across", "Across, {unit}"),
    ("add-down", "Down, {unit}"),
    ("own-shape", "Shape of the dish"),
    ("own-round", "round"),
    ("own-oval", "oval"),
    ("own-rect", "rectangular"),
    ("add-it", "Add it"),
    ("own-dish", "own dish"),
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
    // Things of one's own.
    ("mine", "Mine"),
    ("mine-keep", "Keep it under “Mine”"),
    ("mine-kept", "“{thing}” is kept under “Mine”."),
    (
        "mine-not-kept",
        "“{thing}” was not kept under “Mine” ({why}). It still stands on this table; save the table as a file under Papers.",
    ),
    (
        "mine-not-read",
        "What was kept under “Mine” could not be read ({why}). Nothing kept was removed.",
    ),
    ("mine-delete", "Delete “{thing}” from “Mine”"),
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
