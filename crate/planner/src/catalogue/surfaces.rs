//! Tables and boards to lay a spread on.
use crate::layout::{Finish, Srgb};

/// What a surface shows from above, which decides how it is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grain {
    /// Nothing.
    Plain,
    /// One board with quiet grain.
    Board,
    /// Planks with grain, knots and joints.
    Planks,
    /// Painted planks, worn at the joints.
    Painted,
    /// Clouds and veins, as in marble.
    Veined,
    /// Split in layers, as slate is.
    Riven,
    /// Cloth.
    Woven,
    /// Brushed metal.
    Brushed,
    /// Square tiles.
    Tiled,
}

/// One surface.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SurfaceEntry {
    /// Its id, which also says how it is drawn.
    pub id: &'static str,
    /// Its trade name in English.
    pub name: &'static str,
    /// Its mean colour; a guess the user should check against a photo.
    pub colour: Srgb,
    /// How it shines.
    pub finish: Finish,
    /// What it shows from above.
    pub grain: Grain,
}

const fn row(
    id: &'static str,
    name: &'static str,
    rgb: u32,
    finish: Finish,
    grain: Grain,
) -> SurfaceEntry {
    SurfaceEntry {
        id,
        name,
        colour: Srgb::hex(rgb),
        finish,
        grain,
    }
}

use Finish::{Gloss, Matt, Satin};

#[rustfmt::skip]
static SURFACES: [SurfaceEntry; 11] = [
    row("charcoal-planks", "charcoal-stained board", 0x42_3e39, Matt, Grain::Planks),
    row("oak", "mid oak", 0xa2_7c59, Matt, Grain::Planks),
    row("light-oak", "light oak", 0xc3_9f7b, Matt, Grain::Planks),
    row("walnut", "walnut", 0x68_4d3b, Satin, Grain::Planks),
    row("painted-board", "painted board", 0x90_9980, Matt, Grain::Painted),
    row("pale-marble", "polished pale marble", 0xde_dddb, Gloss, Grain::Veined),
    row("slate", "slate", 0x54_5a60, Matt, Grain::Riven),
    row("linen-cloth", "linen cloth", 0xeb_e8e2, Matt, Grain::Woven),
    row("steel", "brushed steel", 0x9c_a0a1, Satin, Grain::Brushed),
    row("terracotta", "terracotta", 0xa6_6748, Matt, Grain::Tiled),
    row("plain-board", "plain board", 0xc3_9f7b, Matt, Grain::Board),
];

/// Every surface, in the order it is offered.
#[must_use]
pub fn surfaces() -> &'static [SurfaceEntry] {
    &SURFACES
}

/// The surface of this id.
#[must_use]
pub fn surface(id: &str) -> Option<&'static SurfaceEntry> {
    SURFACES.iter().find(|s| s.id == id)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn surfaces_are_found_by_their_own_id_only() {
        for s in surfaces() {
            assert_eq!(surface(s.id), Some(s), "{} is single", s.id);
        }
        assert_eq!(surface("no-such"), None, "unknown");
        assert!(surfaces().len() >= 10, "enough surfaces");
    }
}
