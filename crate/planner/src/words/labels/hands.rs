//! Whose a hand is and where its person sits or stands.

/// Labels by id.
pub(super) const LABELS: &[(&str, &str)] = &[
    ("comes-from", "Comes from"),
    ("comes-from-back", "An hour back"),
    ("comes-from-on", "An hour on"),
    ("comes-from-nowhere", "no place yet"),
    ("seat-stand", "Let them stand"),
    ("seat-sit", "Let them sit"),
    ("stature", "How tall"),
    ("stature-usual", "usual"),
    ("stature-less", "{by} shorter"),
    ("stature-more", "{by} taller"),
    ("ring", "Ring"),
    ("ring-none", "none"),
    ("ring-left", "left hand"),
    ("ring-right", "right hand"),
    ("released", "Agreed in writing to be photographed"),
];
