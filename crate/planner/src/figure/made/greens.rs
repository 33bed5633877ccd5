//! Vegetables.
use super::Coat::{Along, Bars, Body, Core, Inset, Light, Part, Patches, Rings, Row, Seeds, Spokes};
use super::Cut::{Box, Lobed, Loop, Round, Sides};
use super::Hue::{Own, Set};
use super::Lie::{Heap, Ranks};
use super::Top::{Dots, Herbs};
use super::{Recipe, cuts};

const A: super::Hue = Own(0, 0);
const B: super::Hue = Own(1, 0);
const C: super::Hue = Own(2, 0);

pub(super) const RECIPES: &[Recipe] = &[
    Recipe { id: "asparagus", lie: Ranks([92.0, 7.5]), cut: Sides(cuts::SPEAR), coats: &[
        Body(B, 0.9), Row(&[[-92, -24], [20, -26]], C, 1.1), Part(&[[46, 0], [58, -80], [82, -74], [98, 0], [82, 74], [58, 80]], A, 0.4),
        Row(&[[60, -50], [72, 0], [60, 50]], Own(0, 1), 0.6), Row(&[[76, -46], [86, 0], [76, 46]], Own(0, 1), 0.6), Row(&[[-40, -40], [-30, 0], [-40, 40]], A, 0.5), Row(&[[0, -44], [10, 0], [0, 44]], A, 0.5),
    ], tops: &[Dots(24, 0xff_faf0, 0.9)] },
    Recipe { id: "green-beans", lie: Heap([52.0, 6.0], 120.0, 34), cut: Loop(cuts::POD), coats: &[
        Body(B, 0.75), Row(&[[-80, 10], [-20, -34], [30, -38], [80, 0]], C, 0.9), Row(&[[-100, 50], [-88, 30]], A, 1.0),
    ], tops: &[Dots(20, 0xff_faf0, 0.9)] },
    Recipe { id: "peas", lie: Heap([5.0, 4.8], 86.0, 130), cut: Round(3), coats: &[
        Body(B, 0.5), Inset(62.0, C, 18.0), Light(50.0, Set(0xf0_f8d8), 0.6),
    ], tops: &[Herbs(6)] },
    Recipe { id: "broccoli", lie: Heap([28.0, 24.0], 96.0, 16), cut: Lobed(9), coats: &[
        Body(A, 0.9), Inset(82.0, B, 8.0), Seeds(34, [10.0, 76.0], C, 1.3), Seeds(26, [30.0, 90.0], Own(0, -1), 1.2), Inset(34.0, C, 26.0),
    ], tops: &[Dots(16, 0xff_faf0, 0.9)] },
    Recipe { id: "cauliflower", lie: Heap([28.0, 25.0], 96.0, 16), cut: Lobed(9), coats: &[
        Body(A, 0.9), Inset(84.0, B, 8.0), Patches(7, 17.0, C, 95.0), Seeds(22, [20.0, 86.0], A, 1.2), Patches(3, 9.0, Set(0x8a_5524), 55.0),
    ], tops: &[Herbs(10)] },
    Recipe { id: "mushrooms", lie: Heap([20.0, 17.0], 88.0, 22), cut: Sides(cuts::MUSHROOM), coats: &[
        Body(A, 0.85), Inset(84.0, B, 4.0), Part(&[[-84, 0], [-80, -20], [-4, -18], [20, -60], [56, -70], [84, -30], [88, 0], [84, 30], [56, 70], [20, 60], [-4, 18], [-80, 20]], C, 0.0),
        Row(&[[0, -40], [10, -14], [10, 14], [0, 40]], A, 0.8), Light(80.0, Own(1, 2), 0.9),
    ], tops: &[Herbs(12)] },
    Recipe { id: "beetroot", lie: Heap([30.0, 26.0], 96.0, 16), cut: Round(4), coats: &[
        Body(A, 0.85), Inset(90.0, B, 3.0), Rings(&[74.0, 54.0, 34.0], C, 0.8), Light(82.0, Set(0xf0_a0b8), 0.9),
    ], tops: &[Herbs(9), Dots(14, 0xff_faf0, 0.9)] },
    Recipe { id: "corn-cobs", lie: Ranks([80.0, 24.0]), cut: Box(2), coats: &[
        Body(A, 1.0), Inset(92.0, B, 6.0), Along(5, A, 0.7), Bars(16, A, 0.7), Row(&[[-80, -30], [80, -30]], C, 1.4), Patches(6, 8.0, Set(0x8a_5524), 70.0),
        Part(&[[-100, 0], [-112, -24], [-96, -44], [-92, 0], [-96, 44], [-112, 24]], Set(0x8f_a85a), 0.6),
    ], tops: &[Dots(18, 0xff_faf0, 0.9)] },
    Recipe { id: "grilled-peppers", lie: Heap([44.0, 15.0], 110.0, 18), cut: Loop(cuts::FILLET), coats: &[
        Body(A, 0.85), Inset(82.0, B, 8.0), Patches(4, 13.0, Set(0x3a_1a10), 70.0), Row(&[[-70, -30], [0, -50], [60, -40]], C, 1.2),
    ], tops: &[Herbs(9)] },
    Recipe { id: "courgette", lie: Heap([24.0, 21.0], 112.0, 22), cut: Round(3), coats: &[
        Body(A, 0.8), Inset(86.0, B, 0.0), Core([0.0, 0.0], [48.0, 46.0], C, 0.0), Seeds(12, [20.0, 44.0], A, 0.8), Bars(3, Set(0x8a_5a2a), 1.0),
    ], tops: &[Herbs(9), Dots(16, 0xff_faf0, 0.9)] },
    Recipe { id: "cucumber", lie: Heap([21.0, 20.0], 112.0, 24), cut: Round(2), coats: &[
        Body(A, 0.8), Inset(88.0, C, 0.0), Core([0.0, 0.0], [56.0, 54.0], B, 0.0), Seeds(16, [24.0, 48.0], Own(2, 1), 1.1), Light(76.0, Set(0xff_ffff), 0.8),
    ], tops: &[Herbs(8)] },
    Recipe { id: "radishes", lie: Heap([16.0, 13.5], 84.0, 24), cut: Sides(cuts::DROP), coats: &[
        Body(B, 0.85), Part(&[[-100, 0], [-60, -40], [-50, 0], [-60, 40]], C, 0.0), Inset(50.0, Own(1, 1), 14.0), Row(&[[96, -16], [120, -30], [126, -14]], Set(0x5d_8a3a), 1.6), Row(&[[96, 10], [124, 22]], Set(0x7e_a24a), 1.6), Light(62.0, Set(0xff_e8ee), 1.0),
    ], tops: &[] },
    Recipe { id: "avocado", lie: Ranks([54.0, 36.0]), cut: Sides(cuts::PEAR), coats: &[
        Body(A, 1.1), Inset(89.0, B, 0.0), Inset(72.0, C, 0.0), Core([30.0, 0.0], [34.0, 46.0], Set(0x7a_4a2a), 0.7), Core([26.0, -8.0], [18.0, 24.0], Set(0x9a_6a40), 0.0),
    ], tops: &[Dots(22, 0xa0_3a22, 0.9)] },
    Recipe { id: "cherry-tomatoes", lie: Heap([14.0, 13.5], 84.0, 34), cut: Round(3), coats: &[
        Body(A, 0.8), Inset(78.0, B, 10.0), Spokes(5, [0.0, 34.0], Set(0x4a_7a35), 1.3), Light(62.0, C, 1.2),
    ], tops: &[] },
    Recipe { id: "garlic", lie: Heap([25.0, 24.0], 84.0, 12), cut: Sides(cuts::DROP), coats: &[
        Body(B, 0.9), Inset(84.0, C, 6.0), Row(&[[-90, 0], [-20, -40], [84, -34]], A, 0.8), Row(&[[-90, 0], [-20, 0], [94, 0]], A, 0.8), Row(&[[-90, 0], [-20, 40], [84, 34]], A, 0.8),
    ], tops: &[] },
    Recipe { id: "red-onion", lie: Heap([30.0, 28.0], 104.0, 14), cut: Round(4), coats: &[
        Body(A, 0.8), Inset(90.0, C, 0.0), Rings(&[80.0, 60.0, 40.0, 20.0], B, 1.1), Light(84.0, Set(0xff_ffff), 0.7),
    ], tops: &[] },
    Recipe { id: "chillies", lie: Heap([46.0, 9.0], 92.0, 18), cut: Loop(cuts::POD), coats: &[
        Body(A, 0.85), Row(&[[-76, 14], [-20, -38], [30, -42], [76, -6]], C, 1.2), Row(&[[-96, 54], [-126, 80]], Set(0x5d_8a3a), 2.0), Row(&[[-60, 40], [-20, -2], [26, -10]], B, 0.9),
    ], tops: &[] },
    Recipe { id: "spinach", lie: Heap([36.0, 24.0], 150.0, 26), cut: Sides(cuts::LEAF), coats: &[
        Body(A, 0.65), Inset(70.0, B, 6.0), Row(&[[-100, 0], [0, 3], [84, 0]], C, 0.8), Row(&[[-20, 2], [20, -50]], C, 0.5), Row(&[[0, 2], [40, 46]], C, 0.5),
    ], tops: &[] },
    Recipe { id: "artichokes", lie: Ranks([46.0, 34.0]), cut: Sides(cuts::FAN), coats: &[
        Body(A, 1.0), Inset(88.0, B, 0.0), Spokes(11, [26.0, 88.0], A, 0.9), Part(&[[-60, 0], [-30, -30], [10, -26], [24, 0], [10, 26], [-30, 30]], C, 0.4), Patches(3, 8.0, Set(0x5a_3218), 60.0),
    ], tops: &[Herbs(8)] },
    Recipe { id: "pumpkin-wedges", lie: Heap([66.0, 26.0], 92.0, 10), cut: Loop(cuts::SLICE), coats: &[
        Body(A, 0.95), Inset(88.0, B, -6.0), Inset(60.0, C, -8.0), Patches(5, 9.0, Set(0x7a_3a12), 65.0), Row(&[[-66, -20], [-30, -60], [0, -70]], Own(2, 1), 1.1),
    ], tops: &[Herbs(10), Dots(18, 0xff_faf0, 0.9)] },
];
