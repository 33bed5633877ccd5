//! The table of words. `{name}` marks a named place.

/// Sentences by id.
pub const SENTENCES: &[(&str, &str)] = &[
    ("list", "{rest} and {last}"),
    ("place-top-left", "top left"),
    ("place-top", "top"),
    ("place-top-right", "top right"),
    ("place-left", "left"),
    ("place-middle", "middle"),
    ("place-right", "right"),
    ("place-bottom-left", "bottom left"),
    ("place-bottom", "bottom"),
    ("place-bottom-right", "bottom right"),
    ("ground-board", "board"),
    ("ground-floor", "floor"),
    (
        "separation-hero",
        "The {thing} loses {share} of its outline against the {ground}.",
    ),
    (
        "separation-many",
        "{count} things sink into the {ground}: {things}.",
    ),
    ("separation-two", "The {things} sink into the {ground}."),
    (
        "separation-inside",
        "The {thing} still sink into their own {ground}: {share} of their outline is lost.",
    ),
    (
        "separation-inside-one",
        "The {thing} still sinks into its own {ground}: {share} of its outline is lost.",
    ),
    ("name-pale-lined", "{thing}, pale-lined"),
    (
        "separation-pale",
        "By colour alone the edge of the {thing} is thin against the {ground}: {share} is lost; side light may draw it.",
    ),
    (
        "separation-cuff",
        "{share} of the sleeve’s outline in {flag} vanishes on the {ground}, so the hand looks severed.",
    ),
    (
        "separation-hand",
        "The hand in {flag} loses {share} of its outline against the {ground}.",
    ),
    ("act-lay", "Lay the {linen}"),
    ("act-swap-pale", "Swap to a pale-lined {thing}"),
    ("act-move-onto", "Move the {thing} onto the {linen}"),
    ("act-roll", "Roll the sleeves up"),
    ("predicted", "{before} to {after}"),
    (
        "fit-board",
        "The frame runs {over} past the {ground} and shows the floor.",
    ),
    (
        "fit-margin",
        "The {ground} leaves only {over} round the frame; a tenth of its width is usual.",
    ),
    (
        "fit-ceiling",
        "The camera needs {needed} above the floor, {over} more than the ceiling gives. The stand’s manual, local rules and a qualified grip decide what may hang there.",
    ),
    (
        "fit-holds",
        "The lens stands {height} above the table, {room} under the ceiling. The stand’s manual, local rules and a qualified grip decide what may hang there.",
    ),
    ("clear-by", "clear by {room}"),
    ("crop-cuts-must", "“{crop}” cuts the {thing} by {over}."),
    ("crop-misses", "“{crop}” leaves the {thing} out."),
    (
        "crop-gutter",
        "The gutter of “{crop}” runs through the {thing}.",
    ),
    (
        "crop-no-bleed",
        "“{crop}” has {room} for bleed at its tightest edge and needs {needed}.",
    ),
    ("act-slide-crop", "Slide “{crop}” to keep it"),
    ("act-tighten", "Tighten “{crop}”"),
    ("balance-lean", "Most of the weight sits {place}."),
    ("triangle-none", "No clear three dishes stand out."),
    (
        "hero-rank",
        "The {thing} is the hero but only number {rank} in visual weight.",
    ),
    (
        "working-part",
        "{thing} against the {ground}: {share} of the outline lost, mean difference {difference}",
    ),
    (
        "working-guess",
        "Colours are catalogue guesses unless marked; a photo of board and pot together would settle it.",
    ),
    (
        "working-separation",
        "HyAB difference just outside every piece of outline, before light; where both sides are darker than L* 40 tone alone counts; lost means under 20.",
    ),
    (
        "working-balance",
        "Visible area times contrast; score 100·exp(−5·distance), over chroma weights 0, 0.25 and 1: {low} to {high}.",
    ),
    (
        "working-triangle",
        "Three heaviest dishes; quality and area of their triangle against 0.75 and 0.11.",
    ),
    (
        "working-fit",
        "Thin lens: distance = focal length × (1 + frame width ÷ sensor width).",
    ),
    (
        "working-crop",
        "Outline of each thing against the crop’s edges, in cm on the table.",
    ),
    ("drawing-top", "top"),
    ("drawing-crop", "crop"),
    ("drawing-gutter", "gutter"),
    ("drawing-window", "window"),
    ("drawing-folded", "{name}, folded"),
    ("drawing-version", "version {number}"),
    ("drawing-version-dated", "version {number} · {date}"),
    ("working-hero", "Visible area times contrast, ranked."),
];
