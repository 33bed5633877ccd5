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
    /// Flecks of stone, cork or sand.
    Flecked,
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
static SURFACES: [SurfaceEntry; 31] = [
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
    row("pine", "scrubbed pine", 0xd2_ad78, Matt, Grain::Planks),
    row("white-washed", "white-washed board", 0xd9_d3c7, Matt, Grain::Planks),
    row("black-board", "black-stained board", 0x26_2422, Matt, Grain::Planks),
    row("navy-board", "navy painted board", 0x30_3b52, Matt, Grain::Painted),
    row("white-board", "white painted board", 0xe6_e2d9, Satin, Grain::Painted),
    row("blush-board", "blush painted board", 0xd8_b4a6, Matt, Grain::Painted),
    row("black-marble", "polished black marble", 0x2b_2b2e, Gloss, Grain::Veined),
    row("travertine", "honed travertine", 0xcd_bda2, Matt, Grain::Veined),
    row("granite", "flecked granite", 0x6e_6c6a, Satin, Grain::Flecked),
    row("terrazzo", "terrazzo", 0xd6_cfc4, Satin, Grain::Flecked),
    row("concrete", "cast concrete", 0x9b_9893, Matt, Grain::Flecked),
    row("plaster", "plastered board", 0xc9_c1b4, Matt, Grain::Flecked),
    row("zinc", "zinc sheet", 0x83_878a, Satin, Grain::Brushed),
    row("copper", "aged copper sheet", 0x8a_5a3c, Satin, Grain::Brushed),
    row("dark-linen", "dark linen cloth", 0x3a_3d42, Matt, Grain::Woven),
    row("oat-linen", "oat linen cloth", 0xd2_c4b4, Matt, Grain::Woven),
    row("brown-paper", "brown paper", 0xb5_9062, Matt, Grain::Plain),
    row("cork", "cork", 0xb2_8453, Matt, Grain::Flecked),
    row("white-tiles", "white tiles", 0xe4_e2dc, Gloss, Grain::Tiled),
    row("blue-tiles", "blue tiles", 0x4e_6a80, Gloss, Grain::Tiled),
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
        assert!(surfaces().len() >= 25, "enough surfaces");
    }
}
