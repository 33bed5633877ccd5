//! Cutlery and kitchen tools, lying with their heads to the right.
use super::Coat::{Along, Bars, Body, Core, Inset, Part, Row};
use super::Cut::Sides;
use super::Hue::{Own, Set};
use super::Lie::Whole;
use super::Recipe;

const A: super::Hue = Own(0, 0);
const LIT: super::Hue = Own(0, 3);
const DEEP: super::Hue = Own(0, -2);
const WOOD: super::Hue = Set(0x5a_3d28);

/// A small knife without a bolster.
const SMALL_KNIFE: &[[i8; 2]] = &[[-100, 0], [-98, -54], [-30, -60], [0, -44], [12, -84], [70, -92], [92, -60], [100, 0]];
/// A broad blade with a point.
const COOK: &[[i8; 2]] = &[[-100, 0], [-98, -34], [-60, -40], [-22, -32], [-18, -100], [40, -88], [82, -44], [100, 0]];
/// A long parallel blade.
const LONG: &[[i8; 2]] = &[[-100, 0], [-98, -62], [-40, -70], [-34, -50], [-30, -90], [84, -86], [98, -40], [100, 0]];
/// A shaft that ends in a round.
const LADLE: &[[i8; 2]] = &[[-100, 0], [-98, -14], [30, -9], [42, -40], [56, -88], [76, -100], [94, -70], [100, 0]];
/// A shaft that ends in a long blade.
const SLICE: &[[i8; 2]] = &[[-100, 0], [-98, -20], [-10, -14], [0, -30], [14, -80], [84, -100], [94, -60], [100, 0]];
/// Two arms.
const TONGS: &[[i8; 2]] = &[[-100, 0], [-98, -30], [-60, -44], [40, -62], [70, -88], [94, -84], [100, -30], [100, 0]];
/// A pin with two handles.
const PIN: &[[i8; 2]] = &[[-100, 0], [-98, -34], [-72, -42], [-68, -96], [-60, -100], [60, -100], [68, -96], [72, -42], [98, -34], [100, 0]];
/// A wire head.
const WHISK: &[[i8; 2]] = &[[-100, 0], [-98, -22], [-20, -20], [0, -24], [40, -84], [72, -100], [94, -60], [100, 0]];
/// Two broad tines.
const CARVING: &[[i8; 2]] = &[[-100, 0], [-98, -60], [-30, -62], [-20, -26], [20, -30], [34, -90], [100, -70], [100, -30], [60, -20], [52, 0]];

pub(super) const RECIPES: &[Recipe] = &[
    Recipe { id: "butter-knife", lie: Whole, cut: Sides(SMALL_KNIFE), coats: &[Body(A, 0.9), Row(&[[-92, -20], [80, -40]], LIT, 1.0), Row(&[[4, -40], [4, 40]], DEEP, 0.7)], tops: &[] },
    Recipe { id: "steak-knife", lie: Whole, cut: Sides(SMALL_KNIFE), coats: &[Body(A, 0.9), Part(&[[-100, -50], [-40, -64], [2, -46], [2, 46], [-40, 64], [-100, 50]], WOOD, 0.6), Row(&[[14, -56], [84, -60]], LIT, 0.9), Row(&[[-70, 0], [-68, 2]], LIT, 1.6), Row(&[[-30, 0], [-28, 2]], LIT, 1.6)], tops: &[] },
    Recipe { id: "cheese-knife", lie: Whole, cut: Sides(COOK), coats: &[Body(A, 0.9), Part(&[[-100, -32], [-60, -40], [-22, -32], [-22, 32], [-60, 40], [-100, 32]], WOOD, 0.6), Core([16.0, 0.0], [10.0, 22.0], Set(0x1a_1410), 0.3), Core([46.0, 0.0], [9.0, 18.0], Set(0x1a_1410), 0.3), Row(&[[-12, -74], [40, -68], [78, -36]], LIT, 0.9)], tops: &[] },
    Recipe { id: "cook-knife", lie: Whole, cut: Sides(COOK), coats: &[Body(A, 1.1), Part(&[[-100, -32], [-60, -40], [-22, -32], [-22, 32], [-60, 40], [-100, 32]], Set(0x2a_2422), 0.7), Row(&[[-12, -74], [40, -68], [80, -34]], LIT, 1.2), Row(&[[-14, 20], [60, 22], [90, 6]], DEEP, 0.6)], tops: &[] },
    Recipe { id: "bread-knife", lie: Whole, cut: Sides(LONG), coats: &[Body(A, 1.0), Part(&[[-100, -60], [-64, -74], [-34, -52], [-34, 52], [-64, 74], [-100, 60]], WOOD, 0.7), Row(&[[-26, -46], [86, -44]], LIT, 1.1), Bars(1, DEEP, 0.4), Row(&[[-26, 74], [-16, 60], [-6, 74], [4, 60], [14, 74], [24, 60], [34, 74], [44, 60], [54, 74], [64, 60], [74, 74], [84, 60]], DEEP, 0.7)], tops: &[] },
    Recipe { id: "ladle", lie: Whole, cut: Sides(LADLE), coats: &[Body(A, 1.0), Core([70.0, 0.0], [23.0, 74.0], DEEP, 0.6), Core([72.0, 4.0], [17.0, 56.0], Own(0, -1), 0.0), Row(&[[-96, -3], [30, -3]], LIT, 1.0), Row(&[[54, -60], [66, -76]], LIT, 1.2)], tops: &[] },
    Recipe { id: "cake-slice", lie: Whole, cut: Sides(SLICE), coats: &[Body(A, 1.0), Inset(86.0, Own(0, 1), 0.0), Row(&[[-96, -4], [0, -4]], LIT, 1.0), Along(1, DEEP, 0.5), Row(&[[24, -50], [70, -62]], LIT, 1.2)], tops: &[] },
    Recipe { id: "tongs", lie: Whole, cut: Sides(TONGS), coats: &[Body(A, 1.0), Part(&[[-88, 0], [-40, -18], [60, -34], [100, -14], [100, 14], [60, 34], [-40, 18]], DEEP, 0.5), Row(&[[-90, -28], [40, -52], [84, -70]], LIT, 1.0)], tops: &[] },
    Recipe { id: "whisk", lie: Whole, cut: Sides(WHISK), coats: &[Row(&[[-2, -16], [40, -80], [74, -94], [98, -30], [98, 30], [74, 94], [40, 80], [-2, 16]], A, 1.0), Row(&[[-2, -10], [46, -44], [94, -20], [94, 20], [46, 44], [-2, 10]], A, 0.9), Row(&[[0, 0], [98, 0]], A, 0.9), Part(&[[-100, -20], [-20, -20], [2, -22], [2, 22], [-20, 20], [-100, 20]], A, 0.8), Row(&[[-94, -6], [-6, -6]], LIT, 1.0)], tops: &[] },
    Recipe { id: "rolling-pin", lie: Whole, cut: Sides(PIN), coats: &[Body(A, 1.2), Inset(88.0, Own(0, 1), 3.0), Row(&[[-68, -90], [-68, 90]], DEEP, 0.8), Row(&[[68, -90], [68, 90]], DEEP, 0.8), Row(&[[-58, -50], [50, -54]], LIT, 1.4), Row(&[[-56, 30], [56, 34]], DEEP, 0.5)], tops: &[] },
    Recipe { id: "carving-fork", lie: Whole, cut: Sides(CARVING), coats: &[Body(A, 1.0), Part(&[[-100, -56], [-60, -66], [-26, -58], [-26, 58], [-60, 66], [-100, 56]], WOOD, 0.7), Row(&[[-20, -8], [30, -14]], LIT, 0.9), Row(&[[44, -72], [94, -60]], LIT, 0.8)], tops: &[] },
    Recipe { id: "honey-dipper", lie: Whole, cut: Sides(&[[-100, 0], [-98, -24], [40, -20], [48, -80], [70, -100], [92, -76], [100, 0]]), coats: &[Body(A, 1.0), Inset(80.0, Own(0, 1), 2.0), Row(&[[54, -80], [54, 80]], DEEP, 1.2), Row(&[[66, -90], [66, 90]], DEEP, 1.2), Row(&[[78, -84], [78, 84]], DEEP, 1.2), Row(&[[-94, -6], [36, -6]], LIT, 0.9)], tops: &[] },
    Recipe { id: "wooden-spoon", lie: Whole, cut: Sides(&[[-100, 0], [-98, -26], [36, -18], [48, -64], [72, -100], [94, -62], [100, 0]]), coats: &[Body(A, 1.0), Core([72.0, 0.0], [20.0, 66.0], Own(0, -1), 0.5), Core([74.0, 6.0], [15.0, 50.0], A, 0.0), Row(&[[-94, -6], [34, -5]], LIT, 1.0)], tops: &[] },
];
