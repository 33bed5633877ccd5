//! The sheet itself, what goes wrong on it, the picture, findings, first visit.

/// Labels by id.
pub(super) const LABELS: &[(&str, &str)] = &[
    // The sheet and its places.
    ("laying-table", "Laying the table…"),
    ("untitled-table", "A laid table"),
    ("places", "Places"),
    ("place-table", "Table"),
    ("place-hands", "Hands"),
    ("place-camera", "Camera & light"),
    ("place-crops", "Crops"),
    ("place-papers", "Papers"),
    ("undo", "Undo"),
    ("redo", "Redo"),
    ("done", "Done"),
    ("understood", "Understood"),
    ("use-newer-page", "Use the newer page"),
    (
        "newer-page-ready",
        "A newer page lies ready. Your layouts stay as they are.",
    ),
    (
        "only-shown",
        "Another tab is working on this layout. Here it is only shown.",
    ),
    (
        "only-shown-refused",
        "Another tab has this layout open, so this one only shows it. Nothing was changed.",
    ),
    (
        "newer-file",
        "A newer planner made this file. Here it is only shown, so that nothing of it is lost.",
    ),
    (
        "newer-file-refused",
        "A newer planner made this file, so this one only shows it. Nothing was changed; the newer page can.",
    ),
    (
        "newer-link",
        "A newer planner made this link. What this one understands of it is shown, and nothing of it is kept.",
    ),
    ("saving", "saving"),
    ("not-saved", "not saved"),
    ("saved-on-phone", "saved on this phone"),
    ("saved-on-computer", "saved on this computer"),
    // What a remedy did, as the line beside "Undo" says it.
    ("linen-laid", "the {linen}, laid"),
    ("remedy-done", "done: {act}"),
    ("act-said", "{act}. {sentence}"),
    ("act-said-alone", "{act}."),
    // What went wrong.
    ("refused-act", "{why} Nothing was changed."),
    (
        "stopped-act",
        "That act stopped the planner. The layout is as it was before it; the act is set aside.",
    ),
    (
        "stopped-reading",
        "The findings of this layout could not be worked out. The layout itself is kept; the last act can be taken back.",
    ),
    (
        "refused-saving",
        "This device refused to save ({why}). The layout is still open here; keep a copy as a file under Papers.",
    ),
    (
        "link-not-read",
        "The link could not be read ({why}). Nothing here was changed; ask for it again, or for the file.",
    ),
    (
        "kept-not-read",
        "“{title}” could not be read ({why}). It is set aside, still kept here as it was.",
    ),
    (
        "store-not-read",
        "What was kept here could not be read ({why}). Nothing kept was removed.",
    ),
    (
        "layout-aside",
        "“{title}” stopped the planner and is set aside. It is still kept here as it was.",
    ),
    (
        "step-aside",
        "The step “{step}” of “{title}” stopped the planner twice and is set aside with what followed it.",
    ),
    ("aside-save", "Save what is set aside"),
    (
        "not-started",
        "The planner did not start: {why}. Nothing kept here was changed; reload to try again.",
    ),
    (
        "file-not-opened",
        "{file} was not opened. Your work is as it was. What is wrong with the file:",
    ),
    (
        "picture-not-made",
        "The picture was not made ({why}). The layout is untouched.",
    ),
    ("no-storage", "the browser keeps nothing for this page"),
    (
        "newer-keeps",
        "a newer page of the planner keeps the layouts now; reload this one to go on with it",
    ),
    ("not-our-address", "not an address of this page: {address}"),
    ("no-canvas", "this browser gives no canvas"),
    ("no-picture", "no picture came back"),
    // The picture.
    (
        "picture-label",
        "The picture from above. Arrow keys move what is chosen by 1 cm, with Shift by 1 mm; the list of things below does the same.",
    ),
    ("which-one", "Which one?"),
    ("fit-view", "Whole picture"),
    ("view", "How the picture is seen"),
    ("view-larger", "Enlarge the picture"),
    ("view-smaller", "Make the picture smaller"),
    ("view-left", "See what lies left"),
    ("view-right", "See what lies right"),
    ("view-up", "See what lies above"),
    ("view-down", "See what lies below"),
    // Findings.
    ("findings", "Findings"),
    (
        "no-findings",
        "Nothing in this layout asks for another look.",
    ),
    ("reading", "reading the table…"),
    ("notes-more", "and {count:1 note|{count} notes}"),
    ("notes-fewer", "fewer notes"),
    (
        "notes-rest",
        "Also read: what holds, and what is a matter of taste",
    ),
    ("state-wont-work", "won’t work"),
    ("state-intended", "intended"),
    ("state-holds", "holds"),
    ("mean-it", "I mean it so"),
    ("working-title", "How this is worked out"),
    ("grade-physics", "Rests on physics or arithmetic."),
    ("grade-published", "Rests on a published measure."),
    ("grade-practice", "Rests on common practice; no source."),
    ("grade-ours", "The threshold is our choice."),
    ("scores", "Scores out of 100"),
    ("scores-in", "in {crop}"),
    ("score-balance", "Balance"),
    ("score-triangle", "Triangle"),
    ("score-separation", "Separation"),
    ("corners", "A triangle of"),
    ("corners-dishes", "hero and main dishes"),
    ("corners-tips", "fingertips"),
    ("corners-accents", "accents"),
    (
        "corners-no-tips",
        "There are not three fingertips in the picture.",
    ),
    (
        "corners-no-accents",
        "No accent comes three times in the picture.",
    ),
    ("score-rises", "rises"),
    ("score-falls", "falls"),
    ("move-changes", "What this move changes"),
    ("move-changes-nothing", "This move changes no finding."),
    ("better", "better"),
    ("worse", "worse"),
    // First visit.
    ("first-asks", "What this table asks for"),
    ("first-nothing", "A laid table, drawn true to size."),
    ("first-changed", "What changed"),
    (
        "first-loses",
        "The {thing} loses {now} now; it lost {before}.",
    ),
    ("now-yours", "Now yours"),
];
