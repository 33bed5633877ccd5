//! Linens, by what they are for.
use super::entry::Evidence;
use crate::layout::{LinenKind, Srgb};

/// The usual linen of one kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LinenEntry {
    /// What it is for.
    pub kind: LinenKind,
    /// Its trade name in English.
    pub name: &'static str,
    /// Width and depth when laid flat, mm.
    pub size: [i32; 2],
    /// Its colour; a guess.
    pub colour: Srgb,
    /// Narrowest and widest it usually comes, mm.
    pub range: [i32; 2],
    /// How well the size is founded.
    pub evidence: Evidence,
}

static LINENS: [LinenEntry; 4] = [
    LinenEntry {
        kind: LinenKind::Runner,
        name: "runner",
        size: [360, 1_800],
        colour: Srgb::hex(0xd8_c8a5),
        range: [250, 400],
        evidence: Evidence::Published("runners"),
    },
    LinenEntry {
        kind: LinenKind::Cloth,
        name: "tablecloth",
        size: [1_500, 1_500],
        colour: Srgb::hex(0xeb_e8e2),
        range: [900, 3_500],
        evidence: Evidence::TradePractice,
    },
    LinenEntry {
        kind: LinenKind::Mat,
        name: "place mat",
        size: [500, 360],
        colour: Srgb::hex(0xd2_c4b4),
        range: [300, 510],
        evidence: Evidence::TradePractice,
    },
    LinenEntry {
        kind: LinenKind::Napkin,
        name: "napkin",
        size: [460, 460],
        colour: Srgb::hex(0x5f_778a),
        range: [125, 660],
        evidence: Evidence::Published("napkins"),
    },
];

/// Every kind of linen with its usual size.
#[must_use]
pub fn linens() -> &'static [LinenEntry] {
    &LINENS
}

/// The usual linen of this kind.
#[must_use]
pub fn linen(kind: LinenKind) -> &'static LinenEntry {
    match kind {
        LinenKind::Runner => &LINENS[0],
        LinenKind::Cloth => &LINENS[1],
        LinenKind::Mat => &LINENS[2],
        LinenKind::Napkin => &LINENS[3],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::source;

    #[test]
    fn each_kind_gets_its_own_linen_within_its_range() {
        for l in linens() {
            assert_eq!(linen(l.kind), l, "{}", l.name);
            assert!(
                (l.range[0]..=l.range[1]).contains(&l.size[0]),
                "{} is usual",
                l.name
            );
            if let Evidence::Published(key) = l.evidence {
                assert!(source(key).is_some(), "{}: {key}", l.name);
            }
        }
    }
}
