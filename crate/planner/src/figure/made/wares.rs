//! Vessels, boards, glass and small things that are more than a plain dish.
//! `A` is their outside and rim, `B` their inside.
use super::Coat::{Along, Bars, Body, Core, Inset, Light, Part, Patches, Rings, Row, Seeds, Spokes, Studs};
use super::Cut::{Box, Lobed, Loop, Round, Sheet, Sides};
use super::Hue::{Own, Set};
use super::Lie::Whole;
use super::{Recipe, cuts};

const A: super::Hue = Own(0, 0);
const B: super::Hue = Own(1, 0);
const LIT: super::Hue = Own(0, 2);
const DEEP: super::Hue = Own(0, -1);
const SHADE: super::Hue = Set(0x1a_1410);
const GLINT: super::Hue = Set(0xff_f6e2);

pub(super) const RECIPES: &[Recipe] = &[
    // Boards, trays and baskets.
    Recipe { id: "round-board", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.4), Inset(95.0, Own(0, 1), 1.5), Along(9, DEEP, 0.6), Rings(&[92.0], DEEP, 0.6), Light(94.0, LIT, 1.2),
    ], tops: &[] },
    Recipe { id: "paddle-board", lie: Whole, cut: Sides(cuts::PADDLE), coats: &[
        Body(A, 1.4), Inset(95.0, Own(0, 1), 1.0), Row(&[[-90, -50], [-20, -58], [40, -46]], DEEP, 0.7), Row(&[[-92, -16], [-10, -22], [50, -12]], DEEP, 0.7), Row(&[[-92, 22], [0, 16], [50, 24]], DEEP, 0.7), Row(&[[-90, 58], [-10, 52], [40, 60]], DEEP, 0.7),
        Core([88.0, 0.0], [4.0, 7.0], SHADE, 0.5), Row(&[[-90, -88], [-20, -94], [44, -90]], LIT, 1.2),
    ], tops: &[] },
    Recipe { id: "long-board", lie: Whole, cut: Sheet, coats: &[
        Body(A, 1.4), Inset(96.0, Own(0, 1), 1.0), Along(6, DEEP, 0.7), Patches(2, 16.0, DEEP, 70.0), Row(&[[-92, -84], [60, -86]], LIT, 1.2),
    ], tops: &[] },
    Recipe { id: "marble-slab", lie: Whole, cut: Sheet, coats: &[
        Body(A, 1.3), Inset(97.0, Own(0, 1), 1.0), Row(&[[-96, -30], [-40, -54], [0, -10], [50, -38], [96, -6]], DEEP, 1.2), Row(&[[-70, 90], [-30, 40], [20, 60], [70, 20], [96, 30]], DEEP, 0.8), Row(&[[-40, -54], [-20, -96]], DEEP, 0.6), Row(&[[-90, -88], [50, -90]], GLINT, 1.2),
    ], tops: &[] },
    Recipe { id: "handled-tray", lie: Whole, cut: Sheet, coats: &[
        Body(A, 1.5), Inset(93.0, DEEP, 0.0), Inset(91.0, B, 1.0), Along(5, Own(1, -1), 0.5),
        Part(&[[-97, -26], [-93, -26], [-93, 26], [-97, 26]], SHADE, 0.4), Part(&[[97, -26], [93, -26], [93, 26], [97, 26]], SHADE, 0.4), Row(&[[-88, -96], [60, -97]], LIT, 1.2),
    ], tops: &[] },
    Recipe { id: "cake-stand", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.4), Inset(94.0, Own(0, 1), 1.0), Rings(&[88.0, 85.0], DEEP, 0.6), Light(92.0, GLINT, 1.8), Core([0.0, 0.0], [6.0, 6.0], DEEP, 0.0),
    ], tops: &[] },
    Recipe { id: "bread-basket", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.5), Rings(&[96.0, 90.0], DEEP, 1.6), Spokes(46, [84.0, 99.0], DEEP, 0.9), Inset(82.0, Own(0, -2), 0.0), Inset(78.0, B, 2.0), Rings(&[68.0, 54.0, 40.0, 26.0], Own(1, -1), 1.0), Spokes(22, [8.0, 76.0], Own(1, -1), 0.7), Light(93.0, LIT, 1.3),
    ], tops: &[] },
    Recipe { id: "steamer-basket", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.5), Rings(&[94.0], DEEP, 1.0), Inset(88.0, Own(0, -2), 0.0), Inset(85.0, B, 2.0), Along(13, Own(1, -2), 1.0), Part(&[[-10, -98], [10, -98], [10, -84], [-10, -84]], DEEP, 0.6), Part(&[[-10, 98], [10, 98], [10, 84], [-10, 84]], DEEP, 0.6), Light(92.0, LIT, 1.5),
    ], tops: &[] },
    Recipe { id: "cooling-rack", lie: Whole, cut: Sheet, coats: &[
        Rings(&[98.0], A, 2.2), Along(3, A, 1.3), Bars(15, A, 1.0), Row(&[[-96, -98], [40, -98]], LIT, 0.9),
    ], tops: &[] },
    Recipe { id: "crate", lie: Whole, cut: Sheet, coats: &[
        Body(A, 1.5), Inset(90.0, Own(0, -2), 0.0), Inset(88.0, DEEP, 1.0), Along(4, Own(0, -2), 1.8), Row(&[[-98, -94], [98, -94]], DEEP, 0.8), Row(&[[-98, 94], [98, 94]], DEEP, 0.8), Row(&[[-90, -97], [60, -97]], LIT, 1.2),
    ], tops: &[] },
    // Pots and tins.
    Recipe { id: "muffin-tin", lie: Whole, cut: Sheet, coats: &[
        Body(A, 1.4), Inset(96.0, Own(0, 1), 1.0),
        Core([-66.0, -48.0], [27.0, 40.0], DEEP, 0.9), Core([0.0, -48.0], [27.0, 40.0], DEEP, 0.9), Core([66.0, -48.0], [27.0, 40.0], DEEP, 0.9), Core([-66.0, 48.0], [27.0, 40.0], DEEP, 0.9), Core([0.0, 48.0], [27.0, 40.0], DEEP, 0.9), Core([66.0, 48.0], [27.0, 40.0], DEEP, 0.9),
        Core([-65.0, -46.0], [21.0, 31.0], B, 0.0), Core([1.0, -46.0], [21.0, 31.0], B, 0.0), Core([67.0, -46.0], [21.0, 31.0], B, 0.0), Core([-65.0, 50.0], [21.0, 31.0], B, 0.0), Core([1.0, 50.0], [21.0, 31.0], B, 0.0), Core([67.0, 50.0], [21.0, 31.0], B, 0.0),
        Row(&[[-90, -96], [50, -96]], LIT, 1.2),
    ], tops: &[] },
    Recipe { id: "tart-tin", lie: Whole, cut: Round(0), coats: &[
        Body(A, 1.2), Spokes(48, [91.0, 100.0], DEEP, 0.9), Inset(91.0, DEEP, 0.0), Inset(89.0, B, 2.0), Rings(&[84.0], Own(1, -1), 0.5), Light(94.0, LIT, 1.4),
    ], tops: &[] },
    Recipe { id: "ring-tin", lie: Whole, cut: Lobed(10), coats: &[
        Body(A, 1.4), Inset(93.0, DEEP, 0.0), Inset(90.0, B, 2.0), Spokes(16, [34.0, 90.0], Own(1, -1), 0.8), Core([0.0, 0.0], [28.0, 28.0], A, 1.0), Core([0.0, 0.0], [18.0, 18.0], SHADE, 0.5), Light(94.0, LIT, 1.6),
    ], tops: &[] },
    Recipe { id: "tagine", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.6), Inset(88.0, Own(0, 1), 3.0), Inset(60.0, A, 6.0), Inset(56.0, Own(0, 1), 8.0), Inset(30.0, A, 10.0), Inset(26.0, Own(0, 1), 12.0), Core([0.0, 0.0], [10.0, 10.0], Own(0, -2), 0.8), Rings(&[94.0], DEEP, 0.7), Light(80.0, LIT, 1.8),
    ], tops: &[] },
    Recipe { id: "colander", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.5), Inset(92.0, DEEP, 0.0), Inset(89.0, B, 2.0), Studs(44, 4.0, SHADE, 0.0), Light(95.0, LIT, 1.6),
    ], tops: &[] },
    Recipe { id: "mortar", lie: Whole, cut: Round(3), coats: &[
        Body(A, 1.6), Inset(76.0, DEEP, 0.0), Inset(70.0, B, 3.0), Seeds(30, [0.0, 60.0], DEEP, 1.0),
        Part(&[[-16, 22], [10, -4], [62, -74], [80, -86], [92, -74], [80, -60], [30, 10], [2, 34]], Own(0, 1), 0.9), Light(90.0, LIT, 1.5),
    ], tops: &[] },
    Recipe { id: "sauce-boat", lie: Whole, cut: Loop(cuts::BOAT), coats: &[
        Body(A, 1.3), Core([-8.0, 0.0], [60.0, 66.0], DEEP, 0.7), Core([-6.0, 3.0], [54.0, 58.0], B, 0.0), Row(&[[52, 40], [86, 30], [90, -10], [60, -34]], A, 2.2), Row(&[[-60, -60], [-20, -82], [20, -78]], LIT, 1.4),
    ], tops: &[] },
    Recipe { id: "butter-dish", lie: Whole, cut: Box(2), coats: &[
        Body(A, 1.3), Inset(88.0, DEEP, 0.0), Inset(85.0, Own(0, 1), 1.0), Inset(62.0, Own(1, -1), 0.0), Inset(59.0, B, 3.0), Row(&[[-86, -90], [50, -92]], LIT, 1.3),
    ], tops: &[] },
    Recipe { id: "egg-cup", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.2), Inset(78.0, DEEP, 0.0), Inset(74.0, Set(0xe6_c9a4), 3.0), Inset(50.0, Set(0xf2_dcbc), 12.0), Light(88.0, LIT, 1.2),
    ], tops: &[] },
    // What pours, and what is drunk from.
    Recipe { id: "teapot", lie: Whole, cut: Loop(cuts::TEAPOT), coats: &[
        Body(A, 1.4), Core([-2.0, 0.0], [66.0, 88.0], A, 0.9), Core([-2.0, -2.0], [46.0, 62.0], Own(0, 1), 0.9), Core([-2.0, -2.0], [11.0, 15.0], DEEP, 0.8), Row(&[[-40, -50], [-20, -66], [10, -68]], LIT, 1.8), Row(&[[78, -10], [96, 0]], DEEP, 1.0),
    ], tops: &[] },
    Recipe { id: "coffee-pot", lie: Whole, cut: Loop(cuts::TEAPOT), coats: &[
        Body(A, 1.4), Core([-2.0, 0.0], [58.0, 80.0], B, 0.9), Core([-2.0, 0.0], [14.0, 19.0], SHADE, 0.8), Spokes(8, [16.0, 56.0], Own(1, -1), 0.9), Light(52.0, LIT, 1.6),
    ], tops: &[] },
    Recipe { id: "creamer", lie: Whole, cut: Loop(cuts::BOAT), coats: &[
        Body(A, 1.2), Core([-8.0, 0.0], [52.0, 62.0], DEEP, 0.6), Core([-6.0, 3.0], [46.0, 54.0], Set(0xf6_f0e0), 0.0), Row(&[[52, 34], [84, 24], [84, -12], [58, -28]], A, 2.0), Row(&[[-50, -58], [-10, -78]], LIT, 1.3),
    ], tops: &[] },
    Recipe { id: "preserving-jar", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.2), Rings(&[90.0], Set(0xa0_5a20), 1.8), Inset(84.0, Own(0, 1), 0.0), Inset(74.0, B, 3.0), Row(&[[80, -14], [112, -10], [112, 10], [80, 14]], Set(0x9a_9c9a), 1.4), Light(70.0, GLINT, 1.8),
    ], tops: &[] },
    Recipe { id: "spice-jar", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.1), Inset(86.0, Own(0, 1), 2.0), Inset(66.0, B, 0.0), Seeds(40, [0.0, 60.0], Own(1, -1), 1.0), Light(82.0, GLINT, 1.2),
    ], tops: &[] },
    Recipe { id: "tea-glass", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.0), Inset(90.0, B, 0.0), Inset(70.0, Own(1, 1), 4.0), Patches(3, 16.0, Set(0x5f_8a3a), 90.0), Light(82.0, GLINT, 1.6),
    ], tops: &[] },
    Recipe { id: "citrus-drink", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.0), Inset(90.0, B, 0.0), Core([20.0, 16.0], [44.0, 44.0], Set(0xf6_cf45), 0.6), Core([20.0, 16.0], [36.0, 36.0], Set(0xfb_ecb0), 0.0), Patches(4, 20.0, Set(0xee_f4f2), 70.0), Row(&[[-30, 20], [-70, 120]], Set(0xc8_3a2a), 1.8), Light(84.0, GLINT, 1.6),
    ], tops: &[] },
    Recipe { id: "beer-glass", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.1), Inset(90.0, Set(0xd8_962a), 0.0), Inset(82.0, B, 2.0), Patches(16, 10.0, Own(1, -1), 45.0), Patches(12, 6.0, GLINT, 80.0), Light(86.0, GLINT, 1.4),
    ], tops: &[] },
    // Candles, flowers and small things.
    Recipe { id: "tea-light", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.1), Inset(84.0, B, 0.0), Inset(50.0, Own(1, 1), 0.0), Core([0.0, 0.0], [18.0, 26.0], Set(0xff_c84a), 0.4), Core([0.0, 0.0], [8.0, 14.0], Set(0xff_f2c0), 0.0), Light(90.0, LIT, 1.0),
    ], tops: &[] },
    Recipe { id: "pillar-candle", lie: Whole, cut: Round(3), coats: &[
        Body(A, 1.4), Inset(88.0, B, 2.0), Inset(54.0, Own(1, -1), 0.0), Core([0.0, 0.0], [14.0, 20.0], Set(0xff_c84a), 0.4), Core([0.0, 0.0], [6.0, 11.0], Set(0xff_f2c0), 0.0), Light(84.0, GLINT, 1.2),
    ], tops: &[] },
    Recipe { id: "lantern", lie: Whole, cut: Sheet, coats: &[
        Body(A, 1.5), Inset(80.0, Own(0, 1), 2.0), Row(&[[-84, -84], [84, 84]], DEEP, 1.2), Row(&[[-84, 84], [84, -84]], DEEP, 1.2), Core([0.0, 0.0], [30.0, 30.0], B, 1.0), Rings(&[24.0], SHADE, 1.6), Row(&[[-70, -88], [50, -90]], LIT, 1.2),
    ], tops: &[] },
    Recipe { id: "bud-vase", lie: Whole, cut: Lobed(6), coats: &[
        Row(&[[-60, 70], [-10, 10], [0, 0]], Set(0x5d_8a3a), 1.8), Body(B, 0.8), Inset(78.0, Own(1, 1), 6.0), Spokes(18, [26.0, 88.0], Own(1, -1), 0.6), Core([0.0, 0.0], [22.0, 22.0], Set(0xe0_b032), 0.5), Seeds(14, [0.0, 18.0], Set(0x9a_6a1e), 0.9),
    ], tops: &[] },
    Recipe { id: "flower-bunch", lie: Whole, cut: Lobed(9), coats: &[
        Body(Set(0x4a_7035), 0.8), Patches(22, 13.0, Set(0x6f_9640), 95.0), Patches(14, 9.0, Set(0x38_5a2c), 95.0), Studs(15, 16.0, B, 0.6), Studs(15, 9.0, Own(1, 2), 0.0), Studs(9, 6.0, Set(0xe0_b032), 0.4),
    ], tops: &[] },
    Recipe { id: "herb-pot", lie: Whole, cut: Lobed(10), coats: &[
        Body(Set(0x3f_6b2c), 0.8), Patches(26, 15.0, Set(0x57_8a3a), 95.0), Patches(22, 11.0, Set(0x7e_a24a), 95.0), Patches(10, 7.0, Set(0x2f_4f24), 90.0), Part(&[[60, 74], [86, 50], [92, 60], [70, 84]], A, 0.7),
    ], tops: &[] },
    Recipe { id: "dried-wreath", lie: Whole, cut: Lobed(10), coats: &[
        Body(A, 0.9), Patches(40, 10.0, Own(0, 1), 90.0), Patches(30, 8.0, DEEP, 90.0), Patches(12, 7.0, B, 95.0), Core([0.0, 0.0], [46.0, 46.0], DEEP, 0.7), Core([0.0, 0.0], [42.0, 42.0], Set(0xb8_a684), 0.0),
    ], tops: &[] },
    Recipe { id: "chopstick-rest", lie: Whole, cut: Box(3), coats: &[
        Body(A, 1.1), Inset(78.0, Own(0, 1), 6.0), Row(&[[-60, 0], [0, 20], [60, 0]], DEEP, 0.8), Row(&[[-70, -60], [40, -66]], LIT, 1.2),
    ], tops: &[] },
    Recipe { id: "napkin-ring", lie: Whole, cut: Sheet, coats: &[
        Body(A, 1.2), Inset(86.0, Own(0, 1), 2.0), Row(&[[-80, -40], [80, -40]], LIT, 1.4), Row(&[[-84, 60], [84, 60]], DEEP, 0.9),
    ], tops: &[] },
    Recipe { id: "folded-napkin", lie: Whole, cut: Sheet, coats: &[
        Body(A, 0.9), Inset(90.0, Own(0, 1), 1.0), Row(&[[-92, 84], [0, 88], [92, 84]], DEEP, 0.8), Row(&[[84, -94], [80, 0], [84, 94]], DEEP, 0.7), Row(&[[-86, 96], [-84, -94]], LIT, 1.0), Row(&[[-40, -90], [-34, 10], [-42, 88]], DEEP, 0.35),
    ], tops: &[] },
    Recipe { id: "place-card", lie: Whole, cut: Sheet, coats: &[
        Body(A, 0.9), Row(&[[-92, -96], [92, -96]], DEEP, 1.0), Row(&[[-56, 0], [-20, -14], [10, 10], [40, -10], [58, 4]], Set(0x4a_4038), 0.9),
    ], tops: &[] },
    Recipe { id: "salt-shaker", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.2), Inset(80.0, Own(0, 1), 4.0), Inset(56.0, B, 0.0), Seeds(9, [6.0, 40.0], SHADE, 1.1), Light(76.0, LIT, 1.3),
    ], tops: &[] },
];
