//! Dishes, glasses, cutlery and what else stands on a table.
use super::entry::Evidence::{Guess, Published, TradePractice};
use super::entry::Kind::{Board, Candle, Cutlery, Glass, Object, Vessel};
use super::entry::{Entry, Evidence, Kind, disc, oval, rect, tone};
use crate::layout::{Face, Finish, Size, Tone};

const STONEWARE: &[Tone] = &[tone(0xe4_dcca, 100)];
const STONEWARE_WELL: &[Tone] = &[tone(0xee_e7d8, 100)];
const WHITE: &[Tone] = &[tone(0xec_e8df, 100)];
const DARK_ENAMEL: &[Tone] = &[tone(0x2c_323a, 100)];
const PALE_ENAMEL: &[Tone] = &[tone(0xc8_d3df, 100)];
const DARK_GLAZE: &[Tone] = &[tone(0x3a_3d42, 100)];
const SLATE_BLUE: &[Tone] = &[tone(0x5f_778a, 100)];
const SLATE_BLUE_WELL: &[Tone] = &[tone(0x8f_a5b3, 100)];
const WINE: &[Tone] = &[tone(0x4f_0f1f, 70), tone(0x7c_1e30, 30)];
const OIL: &[Tone] = &[tone(0xb9_8a12, 50), tone(0xdc_b032, 50)];
const GLASS: &[Tone] = &[tone(0xc5_d0cc, 100)];
const WATER: &[Tone] = &[tone(0xb4_c3c2, 100)];
const STEEL: &[Tone] = &[tone(0xa9_adae, 100)];
const WOOD: &[Tone] = &[tone(0x9b_7046, 100)];
const DARK_WOOD: &[Tone] = &[tone(0x5a_3d28, 100)];
const IRON: &[Tone] = &[tone(0x26_2423, 100)];
const WAX: &[Tone] = &[tone(0xee_e2c4, 100)];
const BRASS: &[Tone] = &[tone(0x8f_6d33, 60), tone(0x6d_4f20, 40)];
const COFFEE: &[Tone] = &[tone(0x2a_1a14, 100)];
const GREEN_GLASS: &[Tone] = &[tone(0x2e_3a26, 100)];
const NONE: &[Tone] = &[];

#[expect(clippy::too_many_arguments, reason = "one row of a table")]
const fn row(
    id: &'static str,
    name: &'static str,
    kind: Kind,
    size: Size,
    height: i32,
    rim: &'static [Tone],
    well: &'static [Tone],
    finish: Finish,
    range: [i32; 2],
    evidence: Evidence,
) -> Entry {
    let face = Face::Usual;
    Entry {
        id,
        name,
        kind,
        size,
        height,
        rim,
        well,
        food: NONE,
        finish,
        face,
        range,
        evidence,
    }
}

use Finish::{Clear, Gloss, Liquid, Matt, Satin};

#[rustfmt::skip]
static PROPS: [Entry; 38] = [
    row("dinner-plate", "dinner plate", Vessel, disc(270, 30), 25, STONEWARE, STONEWARE_WELL, Satin, [250, 280], Published("dinnerware")),
    row("charger", "charger", Vessel, disc(320, 40), 20, DARK_GLAZE, DARK_GLAZE, Satin, [300, 330], Published("dinnerware")),
    row("small-plate", "dessert plate", Vessel, disc(210, 22), 20, STONEWARE, STONEWARE_WELL, Satin, [180, 220], Published("dinnerware")),
    row("bread-plate", "bread plate", Vessel, disc(160, 16), 18, WHITE, WHITE, Satin, [150, 170], Published("dinnerware")),
    row("soup-bowl", "soup bowl", Vessel, disc(220, 18), 60, STONEWARE, STONEWARE_WELL, Satin, [200, 230], TradePractice),
    row("serving-bowl", "serving bowl", Vessel, disc(280, 12), 110, SLATE_BLUE, SLATE_BLUE_WELL, Satin, [250, 320], TradePractice),
    row("small-bowl", "small bowl", Vessel, disc(110, 6), 50, SLATE_BLUE, SLATE_BLUE_WELL, Satin, [80, 150], TradePractice),
    row("rect-platter", "rectangular platter", Vessel, rect(360, 200, 14, 16), 25, DARK_GLAZE, DARK_GLAZE, Matt, [250, 450], TradePractice),
    row("oval-platter", "oval platter", Vessel, oval(360, 260, 26), 30, DARK_GLAZE, DARK_GLAZE, Matt, [300, 450], TradePractice),
    row("enamel-pot", "enamel pot", Vessel, disc(260, 8), 160, DARK_ENAMEL, DARK_ENAMEL, Gloss, [200, 300], TradePractice),
    row("pale-lined-pot", "pale-lined enamel pot", Vessel, disc(260, 8), 160, DARK_ENAMEL, PALE_ENAMEL, Gloss, [200, 300], TradePractice),
    row("frying-pan", "frying pan", Vessel, disc(280, 10), 50, IRON, IRON, Satin, [200, 320], Guess),
    row("roasting-tin", "roasting tin", Vessel, rect(380, 280, 30, 12), 60, STEEL, STEEL, Satin, [300, 460], Guess),
    row("round-dish", "own round dish", Vessel, disc(240, 14), 40, STONEWARE, STONEWARE_WELL, Satin, [10, 1000], Guess),
    row("oval-dish", "own oval dish", Vessel, oval(320, 220, 18), 40, STONEWARE, STONEWARE_WELL, Satin, [10, 1000], Guess),
    row("rect-dish", "own rectangular dish", Vessel, rect(320, 220, 16, 14), 40, STONEWARE, STONEWARE_WELL, Satin, [10, 1000], Guess),
    row("salt-bowl", "salt bowl", Vessel, disc(70, 6), 40, DARK_WOOD, WHITE, Matt, [50, 100], Guess),
    row("wooden-board", "wooden board", Board, rect(450, 300, 20, 6), 25, WOOD, WOOD, Matt, [200, 600], TradePractice),
    row("slate-board", "slate board", Board, rect(350, 250, 4, 4), 8, &[tone(0x54_5a60, 100)], &[tone(0x54_5a60, 100)], Matt, [200, 500], Guess),
    row("wine-tumbler", "tumbler of red wine", Glass, disc(80, 3), 95, GLASS, WINE, Liquid, [65, 95], TradePractice),
    row("water-glass", "glass of water", Glass, disc(80, 3), 95, GLASS, WATER, Liquid, [65, 95], TradePractice),
    row("wine-glass", "stemmed glass of red wine", Glass, disc(85, 2), 215, GLASS, WINE, Liquid, [65, 100], TradePractice),
    row("coupe", "coupe", Glass, disc(100, 2), 140, GLASS, WATER, Clear, [90, 110], Published("glasses")),
    row("oil-carafe", "oil carafe", Glass, disc(75, 6), 250, GLASS, OIL, Clear, [60, 110], Guess),
    row("jug", "jug", Glass, disc(120, 6), 180, STONEWARE, STONEWARE_WELL, Satin, [90, 160], Guess),
    row("mug", "mug", Glass, oval(120, 85, 4), 95, STONEWARE, COFFEE, Liquid, [105, 135], TradePractice),
    row("coffee-cup", "cup and saucer", Glass, disc(150, 35), 70, WHITE, COFFEE, Liquid, [140, 160], TradePractice),
    row("bottle", "bottle", Glass, disc(75, 20), 300, GREEN_GLASS, GREEN_GLASS, Clear, [60, 95], Guess),
    row("glass-vase", "glass vase", Glass, disc(90, 4), 180, GLASS, WATER, Clear, [60, 150], Guess),
    row("taper-candle", "taper candle in a holder", Candle, disc(80, 20), 300, BRASS, WAX, Satin, [60, 120], TradePractice),
    row("fork", "dinner fork", Cutlery, rect(25, 197, 10, 0), 15, STEEL, NONE, Gloss, [19, 28], Published("cutlery")),
    row("knife", "dinner knife", Cutlery, rect(20, 245, 8, 0), 10, STEEL, NONE, Gloss, [17, 25], Published("cutlery")),
    row("spoon", "table spoon", Cutlery, rect(42, 200, 18, 0), 18, STEEL, NONE, Gloss, [30, 50], TradePractice),
    row("serving-spoon", "serving spoon", Cutlery, rect(60, 240, 26, 0), 22, BRASS, NONE, Gloss, [45, 70], TradePractice),
    row("chopsticks", "chopsticks", Cutlery, rect(22, 230, 3, 0), 8, DARK_WOOD, NONE, Satin, [14, 60], Guess),
    row("pepper-mill", "pepper mill", Object, disc(60, 10), 200, DARK_WOOD, NONE, Satin, [45, 75], Guess),
    row("ramekin", "ramekin", Vessel, disc(90, 5), 45, WHITE, WHITE, Gloss, [80, 100], TradePractice),
    row("half-sheet-pan", "half sheet pan", Vessel, rect(457, 330, 20, 12), 25, STEEL, STEEL, Satin, [440, 470], TradePractice),
];

/// Every prop, in the order it is offered.
#[must_use]
pub fn props() -> &'static [Entry] {
    &PROPS
}
