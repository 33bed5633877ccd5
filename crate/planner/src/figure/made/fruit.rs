//! Fruit.
use super::Coat::{Bars, Body, Core, Inset, Light, Part, Patches, Rings, Row, Seeds, Spokes};
use super::Cut::{Loop, Round, Sides};
use super::Hue::{Own, Set};
use super::Lie::{Heap, Ranks};
use super::Top::Leaves;
use super::{Recipe, cuts};

const A: super::Hue = Own(0, 0);
const B: super::Hue = Own(1, 0);
const C: super::Hue = Own(2, 0);

pub(super) const RECIPES: &[Recipe] = &[
    Recipe { id: "fig-halves", lie: Heap([25.0, 21.0], 88.0, 14), cut: Sides(cuts::DROP), coats: &[
        Body(A, 0.9), Inset(87.0, C, 0.0), Core([18.0, 0.0], [56.0, 64.0], B, 0.0), Seeds(26, [6.0, 52.0], Set(0xf0_cf9a), 0.9), Spokes(16, [46.0, 66.0], Own(1, 1), 0.5),
    ], tops: &[] },
    Recipe { id: "grapes", lie: Heap([11.5, 10.0], 96.0, 46), cut: Round(3), coats: &[
        Body(A, 0.75), Inset(74.0, B, 12.0), Light(56.0, C, 1.0),
    ], tops: &[Leaves(2)] },
    Recipe { id: "peach-halves", lie: Heap([33.0, 32.0], 88.0, 12), cut: Round(3), coats: &[
        Body(A, 0.95), Inset(90.0, B, 0.0), Core([0.0, 0.0], [44.0, 40.0], Set(0xa8_3a2a), 0.0), Core([0.0, 0.0], [32.0, 28.0], Set(0x6a_2a1a), 0.6), Spokes(12, [42.0, 60.0], Set(0xb8_4a30), 0.7), Light(80.0, C, 1.1),
    ], tops: &[Leaves(3)] },
    Recipe { id: "cherries", lie: Heap([12.5, 12.0], 70.0, 26), cut: Round(3), coats: &[
        Body(A, 0.8), Inset(74.0, B, 10.0), Row(&[[-10, -20], [30, -80], [70, -126]], Set(0x7a_8a3a), 0.9), Light(58.0, C, 1.1),
    ], tops: &[] },
    Recipe { id: "apple-slices", lie: Heap([34.0, 16.0], 110.0, 18), cut: Loop(cuts::SLICE), coats: &[
        Body(A, 0.85), Inset(88.0, C, -8.0), Row(&[[-60, 60], [0, 30], [60, 60]], B, 1.0), Core([0.0, 30.0], [9.0, 14.0], Set(0x5a_3218), 0.0),
    ], tops: &[] },
    Recipe { id: "melon-slices", lie: Ranks([78.0, 34.0]), cut: Loop(cuts::SLICE), coats: &[
        Body(A, 1.0), Inset(92.0, Own(0, 2), -3.0), Inset(82.0, B, -7.0), Row(&[[-64, 60], [-30, 42], [0, 36], [30, 42], [64, 60]], C, 2.0), Row(&[[-60, 0], [-20, -34], [20, -36]], Own(1, 1), 1.2),
    ], tops: &[Leaves(3)] },
    Recipe { id: "watermelon", lie: Heap([64.0, 48.0], 92.0, 9), cut: Sides(cuts::WEDGE), coats: &[
        Body(A, 1.0), Inset(93.0, Set(0xe8_e6c0), -1.0), Inset(85.0, B, -4.0), Patches(9, 4.0, Set(0x24_1a14), 95.0), Row(&[[-60, -10], [0, -24], [50, -40]], C, 1.2),
    ], tops: &[Leaves(2)] },
    Recipe { id: "strawberries", lie: Heap([19.0, 15.0], 88.0, 30), cut: Sides(cuts::DROP), coats: &[
        Body(A, 0.85), Inset(80.0, B, 6.0), Seeds(16, [12.0, 74.0], Set(0xf4_cf7d), 0.9), Part(&[[66, 0], [84, -62], [92, -30], [122, -34], [108, 0], [122, 34], [92, 30], [84, 62]], Set(0x5d_8a3a), 0.5), Light(56.0, C, 0.9),
    ], tops: &[] },
    Recipe { id: "orange-slices", lie: Heap([34.0, 33.0], 104.0, 14), cut: Round(2), coats: &[
        Body(A, 0.9), Inset(91.0, C, 0.0), Inset(84.0, B, 0.0), Spokes(9, [10.0, 84.0], C, 1.2), Core([0.0, 0.0], [11.0, 10.0], C, 0.0), Light(66.0, Own(1, 2), 0.8),
    ], tops: &[Leaves(2)] },
    Recipe { id: "grapefruit", lie: Heap([50.0, 49.0], 92.0, 8), cut: Round(2), coats: &[
        Body(A, 1.0), Inset(93.0, C, 0.0), Inset(84.0, B, 0.0), Spokes(11, [10.0, 84.0], C, 1.4), Core([0.0, 0.0], [12.0, 11.0], C, 0.0), Light(66.0, Own(1, 2), 1.0),
    ], tops: &[Leaves(2)] },
    Recipe { id: "pomegranate", lie: Heap([46.0, 43.0], 88.0, 8), cut: Round(4), coats: &[
        Body(A, 1.0), Inset(89.0, C, 0.0), Seeds(34, [8.0, 76.0], Own(1, -1), 3.4), Seeds(34, [10.0, 74.0], B, 2.4), Spokes(6, [0.0, 86.0], C, 1.3),
    ], tops: &[] },
    Recipe { id: "kiwi-slices", lie: Heap([24.0, 21.0], 104.0, 20), cut: Round(3), coats: &[
        Body(A, 0.85), Inset(90.0, B, 0.0), Core([0.0, 0.0], [26.0, 22.0], C, 0.0), Seeds(20, [34.0, 48.0], Set(0x24_1a14), 1.2), Spokes(18, [50.0, 80.0], C, 0.4),
    ], tops: &[] },
    Recipe { id: "banana-slices", lie: Heap([17.0, 16.0], 104.0, 26), cut: Round(3), coats: &[
        Body(B, 0.75), Inset(78.0, C, 0.0), Seeds(9, [12.0, 30.0], A, 1.1), Rings(&[52.0], B, 0.5),
    ], tops: &[] },
    Recipe { id: "plums", lie: Heap([26.0, 23.0], 88.0, 14), cut: Round(3), coats: &[
        Body(A, 0.95), Inset(80.0, B, 8.0), Row(&[[-90, 6], [-20, 24], [50, 22], [90, 4]], A, 1.0), Light(62.0, C, 1.5),
    ], tops: &[Leaves(2)] },
    Recipe { id: "lemon-slices", lie: Heap([27.0, 26.0], 104.0, 16), cut: Round(2), coats: &[
        Body(A, 0.85), Inset(90.0, C, 0.0), Inset(82.0, B, 0.0), Spokes(9, [10.0, 82.0], C, 1.1), Bars(1, C, 0.4),
    ], tops: &[Leaves(2)] },
];
