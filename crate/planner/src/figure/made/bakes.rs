//! Bread, pastry, cakes and sweets.
use super::Coat::{Along, Bars, Body, Core, Inset, Light, Part, Patches, Rings, Row, Seeds, Spokes, Studs};
use super::Cut::{Box, Lobed, Loop, Round, Sides};
use super::Hue::{Own, Set};
use super::Lie::{Heap, Ranks, Whole};
use super::Top::{Dots, Drizzle, Herbs, Leaves};
use super::{Recipe, cuts};

const A: super::Hue = Own(0, 0);
const B: super::Hue = Own(1, 0);
const C: super::Hue = Own(2, 0);

pub(super) const RECIPES: &[Recipe] = &[
    Recipe { id: "flatbreads", lie: Heap([96.0, 86.0], 120.0, 5), cut: Round(5), coats: &[
        Body(B, 1.0), Inset(93.0, C, 3.0), Patches(12, 8.0, A, 85.0), Patches(7, 12.0, Own(1, -1), 60.0), Patches(8, 3.0, Own(0, -1), 90.0),
    ], tops: &[Herbs(9)] },
    Recipe { id: "pancakes", lie: Heap([62.0, 60.0], 120.0, 6), cut: Round(3), coats: &[
        Body(C, 1.0), Inset(95.0, A, 1.0), Inset(84.0, B, 4.0), Patches(7, 9.0, A, 55.0), Light(78.0, C, 1.1),
    ], tops: &[Drizzle(3, 0xa8_5a14, 3.0), Dots(16, 0xff_faf0, 1.0)] },
    Recipe { id: "croissants", lie: Heap([64.0, 38.0], 96.0, 8), cut: Loop(cuts::CRESCENT), coats: &[
        Body(A, 1.1), Inset(90.0, B, 6.0), Row(&[[-86, 34], [-66, 60]], A, 1.3), Row(&[[-74, -30], [-44, 22]], A, 1.4), Row(&[[-40, -80], [-20, 4]], A, 1.4), Row(&[[40, -80], [20, 4]], A, 1.4), Row(&[[74, -30], [44, 22]], A, 1.4), Row(&[[86, 34], [66, 60]], A, 1.3),
        Row(&[[-30, -70], [0, -78], [28, -70]], C, 2.2), Row(&[[-62, -34], [-50, -54]], C, 1.8), Row(&[[52, -54], [62, -34]], C, 1.8),
    ], tops: &[] },
    Recipe { id: "bread-rolls", lie: Heap([42.0, 38.0], 92.0, 9), cut: Round(4), coats: &[
        Body(A, 1.1), Inset(88.0, B, 8.0), Inset(52.0, C, 22.0), Row(&[[-50, -8], [0, 8], [50, -6]], Set(0xe6_cf9f), 2.4), Light(66.0, Own(2, 1), 1.3),
    ], tops: &[Dots(40, 0xf2_e6cc, 0.9)] },
    Recipe { id: "toast", lie: Heap([58.0, 50.0], 120.0, 6), cut: Box(4), coats: &[
        Body(A, 1.0), Inset(91.0, B, 0.0), Inset(72.0, C, 4.0), Patches(9, 5.0, A, 55.0),
    ], tops: &[] },
    Recipe { id: "baguette", lie: Whole, cut: Sides(&[[-100, 0], [-94, -40], [-70, -84], [-20, -100], [40, -98], [78, -78], [96, -36], [100, 0]]), coats: &[
        Body(A, 1.2), Inset(90.0, B, 8.0), Row(&[[-70, 30], [-44, -44]], C, 4.4), Row(&[[-36, 44], [-10, -50]], C, 4.6), Row(&[[0, 48], [26, -50]], C, 4.6), Row(&[[36, 44], [62, -44]], C, 4.4),
        Patches(7, 8.0, Own(0, -1), 40.0),
    ], tops: &[Dots(50, 0xf2_e6cc, 0.8)] },
    Recipe { id: "pizza", lie: Whole, cut: Round(3), coats: &[
        Body(A, 1.2), Inset(95.0, Own(2, -1), 2.0), Inset(83.0, B, 0.0), Patches(26, 14.0, C, 92.0), Patches(16, 9.0, Own(2, 1), 90.0), Patches(12, 5.0, A, 75.0), Spokes(8, [0.0, 100.0], Set(0x5a_2a14), 0.7), Light(92.0, Set(0xf0_d8a0), 1.6),
    ], tops: &[Leaves(6)] },
    Recipe { id: "focaccia", lie: Whole, cut: Box(2), coats: &[
        Body(A, 1.2), Inset(93.0, B, 3.0), Patches(30, 8.0, Own(1, -1), 80.0), Patches(26, 6.0, C, 85.0), Seeds(12, [10.0, 80.0], Set(0x2f_2430), 3.0), Light(88.0, C, 1.3),
    ], tops: &[Herbs(16), Dots(50, 0xff_faf0, 1.0)] },
    Recipe { id: "savoury-tart", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.2), Spokes(44, [90.0, 100.0], Own(0, -1), 0.9), Inset(90.0, Own(0, 1), 0.0), Inset(86.0, B, 0.0), Patches(18, 9.0, C, 85.0), Studs(10, 9.0, Set(0xb0_3a2a), 0.5), Patches(14, 5.0, A, 55.0),
    ], tops: &[Herbs(14)] },
    Recipe { id: "fruit-tart", lie: Whole, cut: Round(1), coats: &[
        Body(A, 1.2), Spokes(44, [89.0, 100.0], Own(0, -1), 0.9), Inset(89.0, C, 0.0), Studs(26, 13.0, B, 0.6), Studs(9, 10.0, Set(0x33_3d70), 0.6),
    ], tops: &[Leaves(5), Dots(30, 0xff_faf0, 1.0)] },
    Recipe { id: "chocolate-cake", lie: Whole, cut: Loop(cuts::WHEEL), coats: &[
        Body(A, 1.2), Inset(93.0, B, 4.0), Rings(&[80.0, 64.0, 48.0], Own(1, 1), 1.0), Row(&[[8, 0], [97, -26]], C, 2.6), Row(&[[8, 0], [72, 69]], C, 3.2), Light(86.0, Own(1, 2), 1.4),
    ], tops: &[Dots(50, 0xf2_e6da, 0.9)] },
    Recipe { id: "cake-slices", lie: Heap([62.0, 40.0], 96.0, 8), cut: Sides(cuts::WEDGE), coats: &[
        Body(A, 1.0), Inset(90.0, B, 0.0), Row(&[[-80, 4], [84, 44]], C, 1.6), Row(&[[-70, 0], [88, 2]], Own(1, 1), 0.9), Core([72.0, -16.0], [13.0, 24.0], Set(0xb8_2f3f), 0.5),
    ], tops: &[Dots(16, 0xff_faf0, 0.9)] },
    Recipe { id: "brownies", lie: Ranks([30.0, 29.0]), cut: Box(4), coats: &[
        Body(A, 0.95), Inset(88.0, B, 4.0), Patches(6, 10.0, A, 80.0), Row(&[[-60, -20], [-10, -30], [20, 0], [60, -14]], C, 0.9), Row(&[[-40, 40], [0, 30], [50, 52]], C, 0.7),
    ], tops: &[Dots(24, 0xff_faf0, 1.0)] },
    Recipe { id: "biscuits", lie: Heap([31.0, 30.0], 104.0, 18), cut: Round(3), coats: &[
        Body(A, 0.95), Inset(88.0, B, 4.0), Patches(7, 11.0, C, 95.0), Light(76.0, Own(1, 2), 1.0),
    ], tops: &[] },
    Recipe { id: "meringues", lie: Heap([30.0, 28.0], 92.0, 12), cut: Lobed(8), coats: &[
        Body(A, 0.85), Inset(86.0, B, 6.0), Inset(60.0, A, 10.0), Inset(52.0, C, 14.0), Inset(24.0, A, 20.0), Inset(18.0, C, 24.0),
    ], tops: &[] },
    Recipe { id: "chocolate", lie: Heap([20.0, 15.0], 88.0, 22), cut: Box(2), coats: &[
        Body(A, 0.9), Inset(76.0, B, 6.0), Rings(&[76.0], Own(0, -1), 0.5), Light(76.0, C, 1.0),
    ], tops: &[] },
    Recipe { id: "waffles", lie: Heap([66.0, 60.0], 112.0, 5), cut: Box(4), coats: &[
        Body(A, 1.1), Inset(92.0, B, 3.0), Along(5, A, 1.9), Bars(6, A, 1.9), Light(86.0, C, 1.2),
    ], tops: &[Dots(60, 0xff_faf0, 1.0), Leaves(3)] },
    Recipe { id: "doughnuts", lie: Heap([42.0, 41.0], 92.0, 9), cut: Round(2), coats: &[
        Body(A, 1.1), Inset(90.0, B, 4.0), Core([0.0, 0.0], [32.0, 31.0], A, 0.7), Core([0.0, 2.0], [24.0, 22.0], Set(0x3a_2414), 0.0), Seeds(18, [44.0, 80.0], C, 1.4), Light(70.0, Set(0xff_f0e6), 1.4),
    ], tops: &[] },
    Recipe { id: "granola", lie: Heap([9.0, 7.0], 120.0, 60), cut: Box(12), coats: &[
        Body(A, 0.5), Inset(76.0, B, 8.0), Light(50.0, C, 0.8),
    ], tops: &[Dots(26, 0x7a_1f38, 2.4)] },
    Recipe { id: "porridge", lie: Whole, cut: Round(2), coats: &[
        Body(A, 0.5), Inset(92.0, B, 5.0), Seeds(60, [4.0, 88.0], A, 1.4), Seeds(40, [4.0, 84.0], C, 1.4), Studs(9, 8.0, Set(0x7a_1f38), 0.5),
    ], tops: &[Drizzle(2, 0xb9_7a1e, 1.8)] },
    Recipe { id: "honey", lie: Whole, cut: Round(1), coats: &[
        Body(A, 0.5), Inset(92.0, B, 5.0), Rings(&[62.0, 34.0], C, 1.0), Light(78.0, Set(0xff_f4d0), 1.6),
    ], tops: &[] },
    Recipe { id: "jam", lie: Whole, cut: Round(2), coats: &[
        Body(A, 0.5), Inset(90.0, B, 5.0), Patches(14, 10.0, A, 80.0), Seeds(18, [10.0, 80.0], Set(0xe8_b87a), 0.7), Light(76.0, C, 1.6),
    ], tops: &[] },
    Recipe { id: "ice-cream", lie: Heap([30.0, 29.0], 88.0, 7), cut: Round(5), coats: &[
        Body(A, 0.95), Inset(86.0, B, 8.0), Row(&[[-60, 20], [-10, 40], [50, 26]], A, 0.9), Row(&[[-40, -10], [10, 8], [60, -10]], A, 0.7), Patches(5, 6.0, Own(0, -1), 70.0), Inset(40.0, C, 26.0),
    ], tops: &[Leaves(2)] },
    Recipe { id: "crackers", lie: Heap([29.0, 28.0], 112.0, 18), cut: Box(2), coats: &[
        Body(A, 0.85), Inset(90.0, B, 2.0), Seeds(9, [20.0, 64.0], A, 1.1), Light(84.0, C, 0.8), Part(&[[-60, 60], [0, 66], [60, 60], [0, 76]], Own(1, -1), 0.0),
    ], tops: &[Dots(30, 0x2b_221c, 0.8)] },
];
