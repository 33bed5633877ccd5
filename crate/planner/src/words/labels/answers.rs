//! Remarks a client makes, the answer that comes back, and what becomes of both.

/// Labels by id.
pub(super) const LABELS: &[(&str, &str)] = &[
    // What a client is asked.
    (
        "remark-how",
        "Tap the picture to remark on a thing or a place.",
    ),
    ("remark-on", "Remark on"),
    ("remark-of-place", "Remark on a place"),
    ("remark-text", "Your remark"),
    ("remark-done", "Done"),
    ("remark-edit", "Change remark {number}"),
    ("remark-edit-short", "change"),
    ("remark-delete", "Delete remark {number}"),
    ("remark-delete-short", "delete"),
    ("remark-deleted", "A remark is deleted."),
    ("remark-put-back", "Put it back"),
    ("remark-move", "Move its place"),
    ("remark-left", "left"),
    ("remark-right", "right"),
    ("remark-up", "up"),
    ("remark-down", "down"),
    (
        "remarks-full",
        "No more than {count} remarks go into one answer.",
    ),
    ("reply-by", "Your name, if you like"),
    ("reply-from", "From: {name}"),
    ("reply-choice", "Which of the two"),
    ("reply-line", "{number}. {about}: {text}"),
    (
        "reply-here",
        "What you write stays on this device until you send it. It goes nowhere else.",
    ),
    (
        "reply-unkept",
        "This device keeps nothing ({why}): send the reply before you leave this page.",
    ),
    (
        "reply-link",
        "The same as a link, which opens on the table that was sent",
    ),
    ("reply-send-link", "Send the link alone"),
    // What the photographer sees.
    ("remarks", "Remarks"),
    ("answer", "An answer"),
    ("answer-none", "No remarks."),
    (
        "answer-now",
        "It answers version {version}, the one sent last.",
    ),
    (
        "answer-older",
        "It answers version {version}; the table is now at version {now}.",
    ),
    (
        "answer-unsent",
        "It answers version {version}, which was not sent from this phone: the table here is at version {now}.",
    ),
    (
        "answer-elsewhere",
        "It answers a table that is not on this phone. It is kept here to be read; opened on a phone that has the table, its remarks find their things.",
    ),
    ("answer-choice", "Chosen of the two: {choice}."),
    ("answer-take", "Put it on the table"),
    ("answer-taken-already", "It is on the table already."),
    ("answer-later", "Keep it for later"),
    ("answer-throw", "Throw it away"),
    (
        "answer-too-many",
        "{count:1 remark does|{count} remarks do} not fit beside those already there.",
    ),
    (
        "answer-not-read",
        "This answer was not read, and what is open stays as it is.\n{why}",
    ),
    ("answer-not-kept", "The answer was not kept ({why})."),
    ("answers-kept", "Answers kept to be read"),
    ("answer-read", "Read the answer of {when}"),
    ("answer-since", "What changed since version {version}"),
    (
        "answer-since-unkept",
        "Version {version} is not kept here, so what changed since cannot be told.",
    ),
    ("done-remark", "remark {number} ticked"),
    ("done-remark-gone", "remark {number} deleted"),
    ("remark-tick", "Remark {number} is seen to"),
    ("remark-show", "Show remarks on the picture"),
    ("version-sent", "sent as version {number}"),
];
