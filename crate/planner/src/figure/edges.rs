//! Silhouettes of single pieces of food.

use core::f64::consts::PI;

use glam::{DVec2, dvec2};

use super::blob::round;
use super::dice::Dice;
use super::form::Face;
use super::outline::{ellipse, mirrored, polar, resampled, table, wrapped};
use super::spot::Spot;

/// Upper side from stalk end to blossom end.
pub(crate) const AUBERGINE: [[i8; 2]; 9] = [
    [-72, 0],
    [-67, -30],
    [-52, -50],
    [-26, -72],
    [6, -95],
    [38, -100],
    [72, -80],
    [94, -42],
    [100, 0],
];

/// The silhouette with the stalk.
pub(crate) fn aubergine_edge(spot: &Spot) -> Vec<DVec2> {
    let mut upper = vec![[-100, -9], [-86, -15], [-76, -16]];
    upper.extend(&AUBERGINE[1..]);
    let mut points = mirrored(&upper, DVec2::ONE);
    // The row starts beside the axis, so its mirror image closes the stalk.
    points.push(dvec2(-1.0, 0.09));
    resampled(&spot.put(&points), 44, true)
}

/// A slice of a tin-free loaf: flat base, domed top.
pub(crate) const SLICE: [[i8; 2]; 11] = [
    [-94, 52],
    [-100, -8],
    [-80, -66],
    [-34, -98],
    [26, -98],
    [76, -66],
    [100, -10],
    [92, 54],
    [66, 86],
    [0, 98],
    [-66, 86],
];

/// The silhouette of the loaf's face.
pub(crate) fn loaf_edge(dice: &mut Dice, spot: &Spot, face: Face) -> Vec<DVec2> {
    match face {
        Face::Cut => resampled(&spot.put(&table(&SLICE, DVec2::ONE)), 30, true),
        Face::Torn => round(dice, spot.at, spot.half, spot.turn, 0.1, 22, 2.2),
        Face::Usual | Face::Skin => round(dice, spot.at, spot.half, spot.turn, 0.03, 40, 2.35),
    }
}

/// The silhouette of a wedge of cheese, its point to the left.
pub(crate) fn cheese_edge(spot: &Spot) -> Vec<DVec2> {
    let wedge = [
        [-100, 4],
        [-98, -4],
        [66, -98],
        [86, -84],
        [100, 0],
        [86, 84],
        [66, 98],
    ];
    let loop_ = spot.put(&table(&wedge, DVec2::ONE));
    resampled(&loop_, 40, true)
}

/// A wedge as it is designed: the cut along y = 0, the peel at y = 1; brought
/// into the unit square.
pub(crate) fn wedge_point(x: f64, y: f64) -> DVec2 {
    dvec2(x, (y - 0.42) / 0.58)
}

pub(crate) fn wedge_unit() -> Vec<DVec2> {
    let mut points: Vec<DVec2> = (0..=14)
        .map(|i| {
            let t = PI * f64::from(i) / 14.0;
            wedge_point(-libm::cos(t), libm::pow(libm::sin(t), 0.85))
        })
        .collect();
    for x in [0.8, 0.4, 0.0, -0.4, -0.8] {
        points.push(wedge_point(x, -0.16 * (1.0 - x * x)));
    }
    points
}

/// The silhouette of a wedge.
pub(crate) fn wedge_edge(spot: &Spot) -> Vec<DVec2> {
    spot.put(&wedge_unit())
}

/// The silhouette of a half or whole fruit.
pub(crate) fn half_edge(dice: &mut Dice, spot: &Spot) -> Vec<DVec2> {
    round(dice, spot.at, spot.half, spot.turn, 0.025, 26, 2.0)
}

/// The silhouette, blunt end to the right.
pub(crate) fn egg_edge(spot: &Spot) -> Vec<DVec2> {
    let unit: Vec<DVec2> = ellipse(DVec2::ZERO, DVec2::ONE, 22)
        .iter()
        .map(|p| dvec2(p.x, p.y * (1.0 + 0.12 * p.x)) * dvec2(1.0, 0.97))
        .collect();
    spot.put(&unit)
}

/// Upper side of the body from the nose to the root of the tail.
pub(crate) const FISH: [[i8; 2]; 9] = [
    [-100, 0],
    [-92, -34],
    [-68, -66],
    [-26, -78],
    [20, -66],
    [52, -38],
    [74, -17],
    [76, -8],
    [76, 0],
];

pub(crate) const FISH_TAIL: [[i8; 2]; 8] = [
    [70, -10],
    [84, -44],
    [100, -80],
    [94, -26],
    [91, 0],
    [95, 28],
    [100, 76],
    [84, 42],
];

/// Fins on the back and under the belly.
pub(crate) const FISH_FINS: [[[i8; 2]; 4]; 3] = [
    [[-30, -70], [-6, -100], [30, -88], [34, -52]],
    [[6, 66], [18, 90], [38, 80], [40, 48]],
    [[-44, 60], [-34, 100], [-16, 92], [-20, 66]],
];

/// Body, tail and fins.
pub(crate) fn fish_parts(spot: &Spot) -> Vec<Vec<DVec2>> {
    let mut parts = vec![mirrored(&FISH, DVec2::ONE), table(&FISH_TAIL, DVec2::ONE)];
    parts.extend(FISH_FINS.iter().map(|fin| table(fin, DVec2::ONE)));
    parts.iter().map(|part| spot.put(part)).collect()
}

/// The silhouette: body, tail and fins wrapped in one loop.
pub(crate) fn fish_edge(spot: &Spot) -> Vec<DVec2> {
    // Rays from the middle find the narrow root of the tail.
    wrapped(&fish_parts(spot), 48, 0.0)
}

/// Upper half of a sprig's silhouette, unit square.
pub(crate) const SPRIG: [[i8; 2]; 8] = [
    [-100, 0],
    [-60, -12],
    [-48, -70],
    [-10, -100],
    [34, -86],
    [70, -62],
    [92, -38],
    [100, 0],
];

/// The silhouette of a sprig.
pub(crate) fn sprig_edge(spot: &Spot) -> Vec<DVec2> {
    let loop_ = mirrored(&SPRIG, DVec2::ONE);
    resampled(&spot.put(&loop_), 40, true)
}

/// The silhouette of one olive.
pub(crate) fn olive_edge(dice: &mut Dice, spot: &Spot) -> Vec<DVec2> {
    round(dice, spot.at, spot.half, spot.turn, 0.03, 12, 2.0)
}

/// The silhouette of a potato half.
pub(crate) fn potato_edge(dice: &mut Dice, spot: &Spot) -> Vec<DVec2> {
    round(dice, spot.at, spot.half, spot.turn, 0.07, 16, 2.3)
}

/// Upper side of a carrot from its top to its tip.
pub(crate) const CARROT: [[i8; 2]; 8] = [
    [-78, 0],
    [-76, -60],
    [-62, -96],
    [-30, -90],
    [20, -66],
    [64, -40],
    [94, -14],
    [100, 0],
];

/// The silhouette of a carrot with a stub of its green.
pub(crate) fn carrot_edge(spot: &Spot) -> Vec<DVec2> {
    let mut upper = vec![[-100, -14], [-84, -20]];
    upper.extend(&CARROT[1..]);
    let mut points = mirrored(&upper, DVec2::ONE);
    points.push(dvec2(-1.0, 0.14));
    resampled(&spot.put(&points), 32, true)
}

/// A broad leaf, tip to the right, unit square.
pub(crate) const LEAF: [[i8; 2]; 10] = [
    [-100, 0],
    [-70, -52],
    [-24, -92],
    [28, -86],
    [70, -48],
    [100, 0],
    [68, 52],
    [22, 94],
    [-28, 86],
    [-72, 48],
];

/// The silhouette of a slice of tomato.
pub(crate) fn slice_edge(dice: &mut Dice, spot: &Spot) -> Vec<DVec2> {
    round(dice, spot.at, spot.half, spot.turn, 0.045, 18, 2.0)
}

/// The silhouette of one frilled leaf.
pub(crate) fn leaf_edge(dice: &mut Dice, spot: &Spot) -> Vec<DVec2> {
    let frill: Vec<DVec2> = table(&LEAF, DVec2::ONE)
        .iter()
        .flat_map(|&p| {
            [
                p * dice.between(0.9, 1.0),
                p.rotate(polar(0.22)) * dice.between(0.72, 0.9),
            ]
        })
        .collect();
    spot.put(&frill)
}

pub(crate) const ALMOND: [[i8; 2]; 8] = [
    [-100, 0],
    [-58, -84],
    [8, -100],
    [64, -62],
    [100, 0],
    [64, 62],
    [8, 100],
    [-58, 84],
];

pub(crate) const STRAWBERRY: [[i8; 2]; 9] = [
    [-88, 0],
    [-78, -68],
    [-36, -98],
    [34, -74],
    [96, -14],
    [96, 14],
    [34, 74],
    [-36, 98],
    [-78, 68],
];

/// Which of the three sorts a piece is.
pub(crate) fn sort(i: usize) -> usize {
    [0, 1, 0, 2, 0, 1, 2][i % 7]
}

/// The silhouette of the `i`th berry: blueberry, raspberry or strawberry.
pub(crate) fn berry_edge(dice: &mut Dice, spot: &Spot, i: usize) -> Vec<DVec2> {
    match sort(i) {
        0 => round(dice, spot.at, spot.half * 0.82, spot.turn, 0.03, 12, 2.0),
        1 => round(dice, spot.at, spot.half * 0.96, spot.turn, 0.07, 14, 2.0),
        _ => spot.put(&table(&STRAWBERRY, dvec2(1.35, 1.15))),
    }
}

/// The silhouette of the `i`th nut: almond, hazelnut or walnut.
pub(crate) fn nut_edge(dice: &mut Dice, spot: &Spot, i: usize) -> Vec<DVec2> {
    match sort(i) {
        0 => spot.put(&table(&ALMOND, DVec2::ONE)),
        1 => round(
            dice,
            spot.at,
            DVec2::splat(spot.half.y * 1.05),
            spot.turn,
            0.04,
            12,
            2.0,
        ),
        _ => round(
            dice,
            spot.at,
            spot.half * dvec2(1.1, 1.3),
            spot.turn,
            0.1,
            16,
            2.0,
        ),
    }
}
