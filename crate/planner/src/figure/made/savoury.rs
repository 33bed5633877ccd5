//! Meat, fish, dumplings, pasta and what is spooned from a bowl.
use super::Coat::{Along, Bars, Body, Core, Inset, Light, Part, Patches, Rings, Row, Seeds, Spokes, Strands, Studs};
use super::Cut::{Box, Lobed, Loop, Round, Sides};
use super::Hue::{Own, Set};
use super::Lie::{Heap, Ranks, Whole};
use super::Top::{Dots, Drizzle, Herbs, Leaves};
use super::{Recipe, cuts};

const A: super::Hue = Own(0, 0);
const B: super::Hue = Own(1, 0);
const C: super::Hue = Own(2, 0);

pub(super) const RECIPES: &[Recipe] = &[
    Recipe { id: "roast-chicken", lie: Whole, cut: Sides(cuts::BIRD), coats: &[
        Body(A, 1.4), Inset(90.0, B, 5.0),
        Part(&[[-84, 4], [-60, -50], [-20, -62], [18, -44], [30, 0], [18, 44], [-20, 62], [-60, 50]], C, 0.0),
        Part(&[[24, -44], [52, -72], [78, -50], [94, -32], [78, -26], [50, -22]], C, 0.0),
        Part(&[[24, 44], [52, 72], [78, 50], [94, 32], [78, 26], [50, 22]], C, 0.0),
        Row(&[[22, -30], [44, -24], [78, -24], [96, -32]], A, 1.0), Row(&[[22, 30], [44, 24], [78, 24], [96, 32]], A, 1.0),
        Row(&[[-80, 0], [-40, -5], [10, 0], [26, 0]], A, 0.9), Row(&[[-40, -84], [-24, -58], [-34, -40]], A, 0.9),
        Row(&[[-40, 84], [-24, 58], [-34, 40]], A, 0.9),
        Patches(12, 7.0, Own(0, -1), 55.0), Row(&[[-64, -34], [-40, -48], [-10, -48]], Own(2, 2), 1.8), Row(&[[50, -58], [66, -52]], Own(2, 2), 1.6),
    ], tops: &[Herbs(9), Dots(26, 0xff_faf0, 0.9)] },
    Recipe { id: "steak-slices", lie: Ranks([58.0, 15.0]), cut: Box(4), coats: &[
        Body(A, 0.9), Inset(88.0, B, 0.0), Core([4.0, 0.0], [74.0, 56.0], C, 0.0),
        Bars(3, Own(2, 1), 0.5), Light(70.0, Set(0xff_e0d0), 0.8),
    ], tops: &[Dots(30, 0xff_faf0, 0.9), Herbs(7)] },
    Recipe { id: "meatballs", lie: Heap([20.0, 19.0], 84.0, 24), cut: Round(5), coats: &[
        Body(A, 0.8), Inset(74.0, B, 12.0), Patches(5, 12.0, Own(0, -1), 80.0), Light(60.0, C, 1.2),
    ], tops: &[Drizzle(2, 0x9a_3320, 2.6), Herbs(12)] },
    Recipe { id: "sausages", lie: Ranks([70.0, 15.0]), cut: Box(3), coats: &[
        Body(A, 1.0), Inset(80.0, B, 16.0), Bars(5, Own(0, -2), 1.3), Light(58.0, C, 1.3),
    ], tops: &[Herbs(6)] },
    Recipe { id: "prawns", lie: Heap([30.0, 23.0], 92.0, 18), cut: Loop(cuts::PRAWN), coats: &[
        Body(B, 0.85), Inset(72.0, C, 8.0),
        Row(&[[-62, -40], [-38, -20]], A, 1.0), Row(&[[-26, -88], [-14, -38]], A, 1.0), Row(&[[28, -88], [18, -24]], A, 1.0), Row(&[[66, -46], [40, -12]], A, 1.0),
        Part(&[[64, 60], [98, 66], [84, 90], [70, 66], [58, 92], [46, 66]], A, 0.5),
    ], tops: &[Herbs(12), Dots(16, 0xc0_3a20, 1.0)] },
    Recipe { id: "oysters", lie: Heap([48.0, 33.0], 88.0, 12), cut: Lobed(7), coats: &[
        Body(A, 0.95), Inset(84.0, C, 3.0), Core([6.0, 4.0], [58.0, 52.0], B, 0.5), Rings(&[92.0], Own(0, 1), 0.5),
        Core([14.0, -2.0], [26.0, 22.0], Own(1, -1), 0.0), Light(36.0, Set(0xff_ffff), 1.3),
    ], tops: &[Dots(14, 0x2f_2a28, 0.8)] },
    Recipe { id: "clams", lie: Heap([21.0, 17.0], 90.0, 30), cut: Sides(cuts::FAN), coats: &[
        Body(B, 0.8), Inset(76.0, C, 0.0), Rings(&[82.0, 62.0, 42.0], A, 0.5), Spokes(5, [30.0, 88.0], A, 0.3),
    ], tops: &[Herbs(16)] },
    Recipe { id: "salmon-fillet", lie: Ranks([78.0, 40.0]), cut: Loop(cuts::FILLET), coats: &[
        Body(A, 1.0), Inset(92.0, B, 2.0), Bars(6, C, 1.2), Patches(4, 10.0, A, 70.0),
        Row(&[[-74, -30], [-40, -60], [10, -74]], Own(2, 1), 1.5),
    ], tops: &[Herbs(10), Dots(24, 0xff_faf0, 0.9)] },
    Recipe { id: "cured-ham", lie: Heap([44.0, 34.0], 130.0, 12), cut: Loop(cuts::FOLD), coats: &[
        Body(C, 0.7), Inset(84.0, B, 2.0), Row(&[[-70, -30], [-20, 4], [30, -14], [78, 20]], C, 1.3), Row(&[[-60, 50], [0, 44], [60, 56]], A, 0.7), Row(&[[-40, -50], [10, -40], [60, -66]], A, 0.7),
    ], tops: &[] },
    Recipe { id: "dumplings", lie: Heap([37.0, 23.0], 96.0, 16), cut: Loop(cuts::MOON), coats: &[
        Body(B, 0.95), Inset(74.0, C, 10.0),
        Row(&[[-74, -14], [-52, 18]], A, 0.8), Row(&[[-44, -64], [-30, -16]], A, 0.8), Row(&[[0, -86], [0, -28]], A, 0.8), Row(&[[44, -64], [30, -16]], A, 0.8), Row(&[[74, -14], [52, 18]], A, 0.8),
        Part(&[[-70, 70], [0, 58], [70, 70], [50, 94], [-50, 94]], A, 0.0),
    ], tops: &[Dots(22, 0x2b_221c, 0.9), Herbs(8)] },
    Recipe { id: "rice-rolls", lie: Heap([19.0, 18.5], 92.0, 24), cut: Round(2), coats: &[
        Body(A, 0.9), Inset(86.0, B, 0.0), Seeds(14, [52.0, 78.0], Own(1, -1), 1.0), Core([-6.0, 0.0], [34.0, 30.0], C, 0.5),
        Core([20.0, 16.0], [16.0, 15.0], Set(0x7e_a24a), 0.3), Light(80.0, Set(0xff_ffff), 0.6),
    ], tops: &[] },
    Recipe { id: "fried-eggs", lie: Heap([52.0, 46.0], 92.0, 6), cut: Lobed(5), coats: &[
        Body(C, 0.9), Rings(&[94.0], A, 1.1), Inset(86.0, Own(2, 1), 2.0), Core([2.0, -2.0], [36.0, 38.0], A, 0.6), Core([0.0, -4.0], [29.0, 31.0], B, 0.0),
        Light(24.0, Set(0xff_ffff), 1.4),
    ], tops: &[Dots(20, 0x2f_2a28, 0.8)] },
    Recipe { id: "penne", lie: Heap([22.0, 7.5], 150.0, 44), cut: Box(2), coats: &[
        Body(B, 0.75), Along(3, A, 0.4), Core([92.0, 0.0], [9.0, 62.0], A, 0.3), Light(40.0, C, 0.9),
    ], tops: &[Drizzle(3, 0xb0_3a2a, 3.2), Leaves(5)] },
    Recipe { id: "spaghetti", lie: Whole, cut: Round(6), coats: &[
        Body(A, 0.8), Strands(80, A, B), Strands(30, A, C), Patches(9, 13.0, Set(0xa8_3220), 92.0), Patches(9, 7.0, Set(0xc4_4a2c), 95.0),
    ], tops: &[Leaves(5), Dots(30, 0xfb_f3dc, 1.1)] },
    Recipe { id: "couscous", lie: Whole, cut: Round(5), coats: &[
        Body(A, 0.7), Inset(86.0, B, 8.0), Inset(56.0, C, 20.0), Seeds(150, [2.0, 94.0], Own(0, -1), 1.0), Seeds(120, [2.0, 90.0], Own(2, 1), 1.2),
        Patches(10, 5.0, Set(0x8e_1f33), 95.0), Patches(8, 5.0, Set(0xc9_8a3a), 95.0),
    ], tops: &[Herbs(14)] },
    Recipe { id: "curry", lie: Whole, cut: Round(1), coats: &[
        Body(A, 0.6), Inset(94.0, B, 2.0), Patches(14, 15.0, Own(1, -1), 90.0), Patches(12, 12.0, C, 90.0), Patches(16, 3.0, Own(2, 1), 80.0), Light(84.0, C, 1.4),
    ], tops: &[Drizzle(2, 0xf6_ead0, 2.4), Herbs(14)] },
    Recipe { id: "bean-stew", lie: Whole, cut: Round(1), coats: &[
        Body(A, 0.6), Inset(94.0, B, 2.0), Patches(30, 9.0, C, 95.0), Patches(14, 8.0, Own(0, -1), 90.0), Patches(8, 7.0, Set(0xd0_6a26), 95.0), Light(84.0, Own(2, 1), 1.3),
    ], tops: &[Herbs(12)] },
    Recipe { id: "hummus", lie: Whole, cut: Round(3), coats: &[
        Body(A, 0.7), Inset(90.0, B, 6.0), Rings(&[78.0, 56.0, 34.0], A, 1.4), Rings(&[70.0, 48.0, 26.0], C, 1.2), Patches(5, 14.0, Set(0xb9_8a1e), 70.0), Patches(9, 6.0, Set(0xd8_bd84), 95.0),
    ], tops: &[Dots(30, 0xa0_3a22, 1.0), Herbs(9)] },
    Recipe { id: "yogurt", lie: Whole, cut: Round(2), coats: &[
        Body(A, 0.5), Inset(92.0, B, 5.0), Rings(&[74.0, 46.0], A, 1.2), Rings(&[66.0, 38.0], C, 1.2),
    ], tops: &[Drizzle(2, 0xc9_8a1e, 1.6), Leaves(2)] },
    Recipe { id: "green-sauce", lie: Whole, cut: Round(2), coats: &[
        Body(A, 0.5), Inset(92.0, B, 4.0), Patches(18, 6.0, C, 80.0), Patches(14, 5.0, Own(0, -1), 80.0), Light(76.0, C, 1.2),
    ], tops: &[] },
    Recipe { id: "miso-soup", lie: Whole, cut: Round(1), coats: &[
        Body(A, 0.5), Inset(93.0, B, 3.0), Patches(8, 13.0, Own(1, 1), 70.0), Patches(7, 9.0, C, 95.0), Seeds(14, [10.0, 80.0], Set(0x2d_3f2c), 1.8), Light(84.0, C, 1.3),
    ], tops: &[Herbs(8)] },
    Recipe { id: "tofu-cubes", lie: Heap([13.0, 12.0], 84.0, 28), cut: Box(3), coats: &[
        Body(B, 0.8), Inset(82.0, C, 8.0), Row(&[[-70, 76], [76, 80]], A, 1.2), Light(74.0, Set(0xff_ffff), 0.8),
    ], tops: &[Herbs(8)] },
    Recipe { id: "feta", lie: Heap([14.0, 12.0], 70.0, 24), cut: Box(8), coats: &[
        Body(B, 0.8), Inset(84.0, C, 6.0), Patches(3, 10.0, A, 80.0),
    ], tops: &[Herbs(9), Dots(14, 0x2f_2a28, 0.8)] },
    Recipe { id: "mozzarella", lie: Heap([34.0, 30.0], 80.0, 9), cut: Round(7), coats: &[
        Body(A, 0.8), Inset(88.0, B, 6.0), Inset(58.0, C, 14.0), Light(70.0, Set(0xff_ffff), 1.3),
    ], tops: &[Leaves(4), Dots(16, 0x2f_2a28, 0.8)] },
    Recipe { id: "soft-cheese", lie: Whole, cut: Loop(cuts::WHEEL), coats: &[
        Body(B, 1.1), Inset(90.0, C, 4.0), Row(&[[8, 0], [97, -26]], A, 2.6), Row(&[[8, 0], [72, 69]], A, 3.2), Patches(14, 5.0, Own(1, -1), 50.0), Rings(&[95.0], A, 0.6),
    ], tops: &[] },
    Recipe { id: "butter", lie: Whole, cut: Box(3), coats: &[
        Body(A, 0.9), Inset(88.0, B, 6.0), Along(4, C, 0.8), Light(86.0, Set(0xff_ffff), 1.2),
    ], tops: &[Dots(14, 0xff_faf0, 0.9)] },
    Recipe { id: "omelette", lie: Whole, cut: Loop(cuts::MOON), coats: &[
        Body(A, 1.0), Inset(90.0, B, 5.0), Patches(16, 8.0, Own(0, -1), 50.0), Row(&[[-90, 72], [-40, 84], [40, 84], [90, 72]], C, 2.2), Row(&[[-60, -30], [-20, -66], [20, -70]], C, 1.5),
    ], tops: &[Herbs(14)] },
    Recipe { id: "skewers", lie: Ranks([105.0, 19.0]), cut: Box(6), coats: &[
        Row(&[[-118, 0], [118, 0]], Set(0x8a_6a40), 1.6), Body(A, 0.9), Inset(84.0, B, 8.0), Studs(6, 30.0, C, 0.6), Bars(6, Own(0, -2), 1.1), Light(56.0, Own(1, 2), 1.0),
    ], tops: &[Herbs(8)] },
];
