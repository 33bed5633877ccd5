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
const CELADON: &[Tone] = &[tone(0x8f_a59a, 100)];
const CELADON_WELL: &[Tone] = &[tone(0xb4_c4b6, 100)];
const CREAM: &[Tone] = &[tone(0xe9_e0cc, 100)];
const RUST: &[Tone] = &[tone(0x9a_4a2a, 100)];
const COPPER: &[Tone] = &[tone(0xa8_663c, 100)];
const CLAY: &[Tone] = &[tone(0xa5_603c, 100)];
const CLAY_WELL: &[Tone] = &[tone(0xb9_764e, 100)];
const GRANITE: &[Tone] = &[tone(0x6a_6a68, 100)];
const BAMBOO: &[Tone] = &[tone(0xc9_a66a, 100)];
const YOLK: &[Tone] = &[tone(0xef_d988, 100)];
const GRAVY: &[Tone] = &[tone(0x6a_3a1c, 100)];
const SUGAR: &[Tone] = &[tone(0xfb_f8f0, 100)];
const MARBLE: &[Tone] = &[tone(0xde_dddb, 100)];
const SLATE: &[Tone] = &[tone(0x54_5a60, 100)];
const STRAW: &[Tone] = &[tone(0xe4_d68a, 100)];
const AMBER: &[Tone] = &[tone(0xb0_661c, 100)];
const FOAM: &[Tone] = &[tone(0xf4_e8c8, 100)];
const TEA: &[Tone] = &[tone(0x8a_4a18, 100)];
const LEMONADE: &[Tone] = &[tone(0xe6_dc9a, 100)];
const JUICE: &[Tone] = &[tone(0xe8_9a2a, 100)];
const VINEGAR: &[Tone] = &[tone(0x4a_2014, 100)];
const MILK: &[Tone] = &[tone(0xf6_f3ea, 100)];
const PICKLE: &[Tone] = &[tone(0xa8_a850, 100)];
const SPICE: &[Tone] = &[tone(0xa8_481e, 100)];
const BLOSSOM: &[Tone] = &[tone(0xe0_a0a8, 100)];
const GREENERY: &[Tone] = &[tone(0x4a_7035, 100)];
const STRAWY: &[Tone] = &[tone(0xa8_945c, 100)];
const LINEN: &[Tone] = &[tone(0xd9_d3c6, 100)];
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
static PROPS: [Entry; 144] = [
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
    row("luncheon-plate", "luncheon plate", Vessel, disc(240, 26), 22, STONEWARE, STONEWARE_WELL, Satin, [229, 254], Published("dinnerware")),
    row("saucer", "saucer", Vessel, disc(150, 20), 22, WHITE, WHITE, Satin, [140, 160], TradePractice),
    row("square-plate", "square plate", Vessel, rect(230, 230, 10, 22), 20, WHITE, WHITE, Satin, [160, 300], Guess),
    row("oval-plate", "oval plate", Vessel, oval(300, 220, 30), 25, WHITE, WHITE, Satin, [240, 360], Guess),
    row("pasta-bowl", "pasta bowl", Vessel, disc(250, 34), 50, STONEWARE, STONEWARE_WELL, Satin, [220, 290], Guess),
    row("cereal-bowl", "cereal bowl", Vessel, disc(160, 6), 60, SLATE_BLUE, SLATE_BLUE_WELL, Satin, [140, 180], Guess),
    row("rice-bowl", "rice bowl", Vessel, disc(115, 4), 60, DARK_GLAZE, WHITE, Satin, [105, 130], Guess),
    row("noodle-bowl", "noodle bowl", Vessel, disc(200, 6), 85, CELADON, CELADON_WELL, Satin, [170, 230], Guess),
    row("dip-bowl", "dip bowl", Vessel, disc(85, 5), 35, WHITE, WHITE, Gloss, [60, 100], Guess),
    row("salad-bowl", "wooden salad bowl", Vessel, disc(290, 10), 100, WOOD, DARK_WOOD, Matt, [220, 360], Guess),
    row("pie-dish", "pie dish", Vessel, disc(230, 14), 40, CREAM, CREAM, Gloss, [200, 280], TradePractice),
    row("gratin-dish", "gratin dish", Vessel, oval(260, 170, 10), 55, CREAM, CREAM, Gloss, [180, 360], Guess),
    row("oval-casserole", "oval casserole", Vessel, oval(300, 230, 8), 130, RUST, CREAM, Gloss, [240, 360], Guess),
    row("iron-casserole", "cast-iron casserole", Vessel, disc(260, 9), 160, RUST, CREAM, Gloss, [200, 320], TradePractice),
    row("copper-pot", "copper pot", Vessel, disc(220, 6), 120, COPPER, STEEL, Gloss, [160, 300], Guess),
    row("clay-pot", "clay pot", Vessel, disc(220, 12), 110, CLAY, CLAY_WELL, Matt, [150, 300], Guess),
    row("soup-tureen", "soup tureen", Vessel, oval(280, 230, 10), 170, WHITE, WHITE, Gloss, [240, 340], Guess),
    row("iron-skillet", "cast-iron skillet", Vessel, disc(260, 9), 50, IRON, IRON, Matt, [150, 320], Guess),
    row("saucepan", "saucepan", Vessel, disc(200, 5), 110, STEEL, STEEL, Gloss, [140, 240], Guess),
    row("milk-pan", "small milk pan", Vessel, disc(140, 5), 80, PALE_ENAMEL, WHITE, Gloss, [110, 160], Guess),
    row("wok", "wok", Vessel, disc(330, 5), 90, IRON, IRON, Satin, [280, 380], Guess),
    row("tagine", "lidded clay cooking dish", Vessel, disc(270, 12), 200, CLAY, CLAY_WELL, Gloss, [220, 330], Guess),
    row("loaf-tin", "loaf tin", Vessel, rect(250, 125, 14, 8), 70, STEEL, STEEL, Satin, [200, 310], Guess),
    row("cake-tin", "cake tin", Vessel, disc(230, 5), 65, STEEL, STEEL, Satin, [150, 280], Guess),
    row("tart-tin", "fluted tart tin", Vessel, disc(250, 10), 28, STEEL, STEEL, Satin, [90, 300], Guess),
    row("ring-tin", "ring tin", Vessel, disc(240, 12), 90, COPPER, COPPER, Gloss, [180, 270], Guess),
    row("muffin-tin", "muffin tin", Vessel, rect(270, 185, 14, 0), 30, STEEL, STEEL, Satin, [240, 360], Guess),
    row("baking-tray", "baking tray", Vessel, rect(400, 300, 16, 10), 20, IRON, IRON, Satin, [300, 460], Guess),
    row("colander", "colander", Vessel, disc(250, 12), 110, PALE_ENAMEL, WHITE, Gloss, [180, 300], Guess),
    row("mortar", "mortar with its pestle", Vessel, disc(150, 18), 90, GRANITE, GRANITE, Matt, [90, 220], Guess),
    row("steamer-basket", "steamer basket", Vessel, disc(250, 14), 60, BAMBOO, BAMBOO, Matt, [150, 300], Guess),
    row("bread-basket", "bread basket", Vessel, disc(260, 24), 90, BAMBOO, WOOD, Matt, [180, 340], Guess),
    row("butter-dish", "butter dish", Vessel, rect(180, 110, 10, 10), 35, WHITE, YOLK, Gloss, [140, 210], Guess),
    row("sauce-boat", "sauce boat", Vessel, oval(210, 95, 8), 80, WHITE, GRAVY, Gloss, [160, 240], Guess),
    row("sugar-bowl", "sugar bowl", Vessel, disc(95, 5), 70, WHITE, SUGAR, Gloss, [75, 120], Guess),
    row("egg-cup", "egg in its cup", Vessel, disc(50, 4), 85, WHITE, WHITE, Gloss, [45, 60], Guess),
    row("cake-stand", "cake stand", Vessel, disc(280, 8), 130, WHITE, WHITE, Gloss, [200, 340], Guess),
    row("round-board", "round board", Board, disc(320, 6), 22, WOOD, WOOD, Matt, [200, 450], Guess),
    row("paddle-board", "board with a handle", Board, rect(420, 220, 20, 6), 20, WOOD, WOOD, Matt, [250, 600], Guess),
    row("long-board", "long serving board", Board, rect(700, 180, 20, 6), 22, DARK_WOOD, DARK_WOOD, Matt, [450, 1200], Guess),
    row("marble-slab", "marble slab", Board, rect(400, 300, 6, 0), 18, MARBLE, MARBLE, Gloss, [250, 600], Guess),
    row("handled-tray", "tray with handles", Board, rect(460, 320, 20, 10), 50, DARK_WOOD, WOOD, Satin, [300, 600], Guess),
    row("cooling-rack", "cooling rack", Board, rect(400, 280, 8, 0), 25, STEEL, NONE, Gloss, [250, 460], Guess),
    row("crate", "wooden crate", Board, rect(400, 300, 4, 12), 150, WOOD, DARK_WOOD, Matt, [250, 600], Guess),
    row("slate-coaster", "slate coaster", Board, rect(100, 100, 2, 0), 6, SLATE, SLATE, Matt, [90, 110], Guess),
    row("red-wine-glass", "large glass of red wine", Glass, disc(95, 2), 225, GLASS, WINE, Liquid, [80, 110], TradePractice),
    row("white-wine-glass", "glass of white wine", Glass, disc(78, 2), 205, GLASS, STRAW, Liquid, [70, 90], TradePractice),
    row("flute", "flute", Glass, disc(65, 2), 220, GLASS, STRAW, Liquid, [50, 70], Published("glasses")),
    row("cordial-glass", "cordial glass", Glass, disc(55, 2), 100, GLASS, AMBER, Liquid, [45, 65], Published("glasses")),
    row("goblet", "water goblet", Glass, disc(85, 2), 170, GLASS, WATER, Liquid, [75, 95], TradePractice),
    row("highball", "tall tumbler", Glass, disc(65, 2), 150, GLASS, WATER, Liquid, [58, 75], TradePractice),
    row("tasting-glass", "tasting glass", Glass, disc(65, 2), 155, GLASS, STRAW, Liquid, [63, 67], Published("tasting")),
    row("beer-glass", "glass of beer", Glass, disc(80, 3), 150, GLASS, FOAM, Liquid, [65, 95], Guess),
    row("tea-glass", "glass of mint tea", Glass, disc(65, 3), 90, GLASS, TEA, Liquid, [55, 80], Guess),
    row("citrus-drink", "iced drink with citrus", Glass, disc(80, 3), 120, GLASS, LEMONADE, Liquid, [65, 95], Guess),
    row("juice-glass", "glass of juice", Glass, disc(65, 2), 100, GLASS, JUICE, Liquid, [55, 75], Guess),
    row("teacup", "teacup and saucer", Glass, disc(145, 30), 65, WHITE, TEA, Liquid, [130, 160], Guess),
    row("espresso-cup", "espresso cup and saucer", Glass, disc(115, 26), 60, DARK_GLAZE, COFFEE, Liquid, [100, 130], Guess),
    row("decanter", "decanter of red wine", Glass, disc(190, 40), 240, GLASS, WINE, Clear, [150, 220], Guess),
    row("vinegar-bottle", "bottle of vinegar", Glass, disc(60, 16), 220, GLASS, VINEGAR, Clear, [50, 80], Guess),
    row("milk-bottle", "bottle of milk", Glass, disc(80, 16), 220, GLASS, MILK, Clear, [65, 95], Guess),
    row("glass-pitcher", "pitcher of water", Glass, disc(140, 6), 230, GLASS, WATER, Clear, [110, 170], Guess),
    row("milk-jug", "milk jug", Glass, disc(85, 5), 100, WHITE, MILK, Liquid, [65, 110], Guess),
    row("creamer", "cream jug", Glass, oval(120, 70, 6), 75, WHITE, MILK, Liquid, [90, 150], Guess),
    row("teapot", "teapot", Glass, oval(230, 150, 8), 140, CELADON, CELADON_WELL, Gloss, [180, 280], Guess),
    row("coffee-pot", "stove-top coffee pot", Glass, oval(170, 100, 6), 200, STEEL, STEEL, Gloss, [130, 210], Guess),
    row("preserving-jar", "preserving jar", Glass, disc(95, 8), 130, GLASS, PICKLE, Clear, [70, 120], Guess),
    row("spice-jar", "spice jar", Glass, disc(50, 4), 100, GLASS, SPICE, Clear, [40, 65], Guess),
    row("ceramic-vase", "ceramic vase", Glass, disc(110, 8), 220, CELADON, DARK_GLAZE, Satin, [60, 180], Guess),
    row("tea-light", "tea light", Candle, disc(40, 2), 18, STEEL, WAX, Satin, [38, 60], Guess),
    row("pillar-candle", "pillar candle", Candle, disc(75, 6), 130, WAX, WAX, Satin, [50, 100], Guess),
    row("lantern", "lantern", Candle, rect(140, 140, 8, 10), 260, IRON, GLASS, Satin, [90, 200], Guess),
    row("dessert-fork", "dessert fork", Cutlery, rect(22, 165, 9, 0), 13, STEEL, NONE, Gloss, [18, 25], Published("dessert")),
    row("dessert-knife", "dessert knife", Cutlery, rect(18, 205, 7, 0), 9, STEEL, NONE, Gloss, [15, 22], Guess),
    row("dessert-spoon", "dessert spoon", Cutlery, rect(38, 180, 16, 0), 16, STEEL, NONE, Gloss, [32, 42], Guess),
    row("teaspoon", "teaspoon", Cutlery, rect(32, 145, 14, 0), 14, STEEL, NONE, Gloss, [26, 36], TradePractice),
    row("coffee-spoon", "coffee spoon", Cutlery, rect(24, 115, 10, 0), 12, STEEL, NONE, Gloss, [20, 28], Guess),
    row("soup-spoon", "soup spoon", Cutlery, rect(48, 195, 20, 0), 18, STEEL, NONE, Gloss, [40, 55], TradePractice),
    row("rice-spoon", "flat-bottomed soup spoon", Cutlery, rect(45, 135, 18, 0), 22, WHITE, NONE, Gloss, [38, 52], Guess),
    row("place-fork", "place fork", Cutlery, rect(25, 190, 10, 0), 15, STEEL, NONE, Gloss, [19, 28], Published("cutlery")),
    row("place-knife", "place knife", Cutlery, rect(20, 235, 8, 0), 10, STEEL, NONE, Gloss, [17, 25], Published("cutlery")),
    row("fish-fork", "fish fork", Cutlery, rect(26, 188, 10, 0), 14, STEEL, NONE, Gloss, [20, 28], Published("dessert")),
    row("fish-knife", "fish knife", Cutlery, rect(24, 210, 9, 0), 9, STEEL, NONE, Gloss, [20, 28], Guess),
    row("serving-fork", "serving fork", Cutlery, rect(40, 230, 14, 0), 20, BRASS, NONE, Gloss, [30, 50], TradePractice),
    row("butter-knife", "butter knife", Cutlery, rect(20, 160, 7, 0), 9, STEEL, NONE, Gloss, [16, 24], Guess),
    row("steak-knife", "steak knife", Cutlery, rect(22, 225, 8, 0), 12, STEEL, NONE, Gloss, [18, 26], Guess),
    row("cheese-knife", "cheese knife", Cutlery, rect(32, 220, 8, 0), 14, STEEL, NONE, Gloss, [24, 40], Guess),
    row("cook-knife", "cook's knife", Cutlery, rect(46, 330, 8, 0), 22, STEEL, NONE, Gloss, [36, 55], Guess),
    row("bread-knife", "bread knife", Cutlery, rect(36, 340, 8, 0), 22, STEEL, NONE, Gloss, [28, 45], Guess),
    row("ladle", "ladle", Cutlery, rect(90, 310, 20, 0), 50, STEEL, NONE, Gloss, [70, 110], Guess),
    row("cake-slice", "cake slice", Cutlery, rect(60, 260, 10, 0), 22, STEEL, NONE, Gloss, [45, 75], Guess),
    row("tongs", "tongs", Cutlery, rect(50, 260, 10, 0), 25, STEEL, NONE, Gloss, [35, 70], Guess),
    row("whisk", "whisk", Cutlery, rect(70, 270, 20, 0), 60, STEEL, NONE, Gloss, [50, 90], Guess),
    row("rolling-pin", "rolling pin", Cutlery, rect(60, 430, 20, 0), 60, WOOD, NONE, Matt, [40, 75], Guess),
    row("carving-fork", "carving fork", Cutlery, rect(28, 280, 8, 0), 20, STEEL, NONE, Gloss, [22, 36], Guess),
    row("wooden-spoon", "wooden spoon", Cutlery, rect(60, 300, 20, 0), 20, WOOD, NONE, Matt, [45, 75], Guess),
    row("honey-dipper", "honey dipper", Cutlery, rect(34, 165, 12, 0), 30, WOOD, NONE, Matt, [26, 45], Guess),
    row("chopstick-rest", "chopstick rest", Object, rect(60, 18, 6, 0), 12, CELADON, NONE, Gloss, [40, 80], Guess),
    row("napkin-ring", "napkin ring", Object, rect(48, 38, 6, 0), 40, BRASS, NONE, Satin, [40, 60], Guess),
    row("place-card", "place card", Object, rect(90, 55, 2, 0), 30, WHITE, NONE, Matt, [70, 110], Guess),
    row("salt-shaker", "salt shaker", Object, disc(45, 6), 80, STEEL, WHITE, Gloss, [35, 60], Guess),
    row("bud-vase", "flower in a bud vase", Object, disc(90, 6), 200, GLASS, BLOSSOM, Satin, [50, 140], Guess),
    row("flower-bunch", "bunch of flowers", Object, disc(240, 6), 260, GREENERY, BLOSSOM, Matt, [140, 400], Guess),
    row("herb-pot", "pot of herbs", Object, disc(170, 8), 220, CLAY, GREENERY, Matt, [110, 260], Guess),
    row("folded-napkin", "folded napkin", Object, rect(115, 230, 3, 4), 8, LINEN, NONE, Matt, [80, 170], TradePractice),
    row("dried-wreath", "dried wreath", Object, disc(320, 10), 50, STRAWY, BLOSSOM, Matt, [200, 450], Guess),
];

/// Every prop, in the order it is offered.
#[must_use]
pub fn props() -> &'static [Entry] {
    &PROPS
}
