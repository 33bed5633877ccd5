//! Seeded shapes that no machine cut: rounds, lines and scatters.

use core::f64::consts::TAU;

use glam::{DVec2, dvec2};

use super::dice::Dice;
use super::outline::{placed, polar};

/// Turn between neighbours on a sunflower head, radians.
const GOLDEN: f64 = 2.399_963_229_728_653;

/// A hand-made round: an ellipse (`power` 2) or a rounded box (above 2) with
/// harmonics 2, 3 and 5 of strength `jitter` and a quarter of that at random
/// per point. `count` points, starting at 3 o'clock before the turn.
pub(crate) fn round(
    dice: &mut Dice,
    at: DVec2,
    half: DVec2,
    turn: f64,
    jitter: f64,
    count: usize,
    power: f64,
) -> Vec<DVec2> {
    let phase = [dice.angle(), dice.angle(), dice.angle()];
    let points: Vec<DVec2> = (0..count)
        .map(|i| {
            let t = TAU * i as f64 / count as f64;
            let wave = 0.6 * libm::sin(2.0 * t + phase[0])
                + 0.5 * libm::sin(3.0 * t + phase[1])
                + 0.35 * libm::sin(5.0 * t + phase[2]);
            let k = 1.0 + jitter * wave + 0.25 * dice.about(jitter);
            let p = polar(t);
            if power == 2.0 {
                return p * k;
            }
            let swell = |c: f64| libm::copysign(libm::pow(c.abs(), 2.0 / power), c);
            dvec2(swell(p.x), swell(p.y)) * k
        })
        .collect();
    placed(&points, at, turn, half)
}

/// A small round piece: ten points, a little uneven.
pub(crate) fn pebble(dice: &mut Dice, at: DVec2, half: DVec2, turn: f64) -> Vec<DVec2> {
    round(dice, at, half, turn, 0.07, 9, 2.0)
}

/// A line from `a` to `b` that bows by up to `bow` mm, as a hand rules it.
pub(crate) fn ruled(dice: &mut Dice, a: DVec2, b: DVec2, steps: usize, bow: f64) -> Vec<DVec2> {
    let across = (b - a).normalize_or_zero().perp();
    let phase = dice.angle();
    let waves = dice.between(0.6, 1.6);
    (0..=steps)
        .map(|i| {
            let u = i as f64 / steps as f64;
            let k = bow * libm::sin(phase + u * TAU * waves) + 0.3 * dice.about(bow);
            a.lerp(b, u) + across * k
        })
        .collect()
}

/// A ruled rectangle, `steps` pieces a side, its corners rounded by about
/// `corner` mm where it is drawn smooth.
pub(crate) fn sheet(
    dice: &mut Dice,
    half: DVec2,
    steps: usize,
    bow: f64,
    corner: f64,
) -> Vec<DVec2> {
    let corners = [
        dvec2(-half.x, -half.y),
        dvec2(half.x, -half.y),
        half,
        dvec2(-half.x, half.y),
    ];
    let mut points = Vec::with_capacity(4 * steps);
    for i in 0..4 {
        let mut side = ruled(dice, corners[i], corners[(i + 1) % 4], steps, bow);
        side.pop();
        let along = (corners[(i + 1) % 4] - corners[i]).normalize_or_zero() * corner;
        side[0] = corners[i] + along;
        side.insert(0, corners[i]);
        side.push(corners[(i + 1) % 4] - along);
        points.append(&mut side);
    }
    points
}

/// `count` places spread evenly over an ellipse, like seeds on a sunflower,
/// each shaken by `shake` of its distance to the next.
pub(crate) fn sunflower(dice: &mut Dice, half: DVec2, count: usize, shake: f64) -> Vec<DVec2> {
    let start = dice.angle();
    let gap = (1.0 / count.max(1) as f64).sqrt();
    (0..count)
        .map(|i| {
            let r = ((i as f64 + 0.5) / count as f64).sqrt();
            let p = polar(start + GOLDEN * i as f64) * r + dice.disc() * gap * shake;
            half * p / p.length().max(1.0)
        })
        .collect()
}
