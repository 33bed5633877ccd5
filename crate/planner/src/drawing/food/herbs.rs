//! Herbs: sprigs, picked leaves; and flakes of salt.

use glam::{DVec2, dvec2};

use super::Tones;
use super::spot::Spot;
use crate::drawing::sketch::{Rows, Sketch};
use crate::drawing::tone::{Tone, rgb};
use crate::figure::outline::{placed, table};

/// One leaflet from its stalk.
const LEAFLET: [[i8; 2]; 6] = [[0, 0], [50, -42], [105, -20], [120, 0], [105, 20], [50, 42]];
/// Three leaflets about `turn`, `size` mm long.
fn leaf(into: &mut Rows, at: DVec2, turn: f64, size: f64) {
    let unit = table(&LEAFLET, DVec2::ONE);
    for k in [-1.08, 0.0, 1.08] {
        into.push(placed(&unit, at, turn + k, DVec2::splat(size)));
    }
}

/// Picked leaves scattered over an oval, two greens.
pub(super) fn picked(
    s: &mut Sketch,
    at: DVec2,
    half: DVec2,
    count: usize,
    size: f64,
    greens: [Tone; 2],
) {
    let mut piles = [Rows::new(), Rows::new()];
    for _ in 0..s.some(count) {
        let p = at + s.dice.disc() * half;
        let pile = usize::from(s.dice.chance(0.4));
        let turn = s.dice.angle();
        let size = size * s.dice.between(0.7, 1.2);
        leaf(&mut piles[pile], p, turn, size);
    }
    for (pile, green) in piles.iter().zip(greens) {
        s.polygons(pile, green, 0.0, 0.0);
    }
}

/// A sprig: a curved stem, leaves in pairs, smaller towards the tip.
pub(super) fn sprig(s: &mut Sketch, spot: &Spot, tones: &Tones) {
    let length = spot.half.x * 2.0;
    let mut piles = [Rows::new(), Rows::new()];
    let mut stems = vec![spot.row(&[[-1.0, 0.1], [-0.3, -0.08], [0.4, 0.06], [0.86, 0.0]])];
    let pairs = (length / 17.0).round().clamp(3.0, 9.0) as usize;
    for i in 0..pairs {
        let u = i as f64 / pairs as f64;
        let x = -0.42 + 1.22 * u;
        for side in [-1.0, 1.0] {
            let reach = side * (0.62 - 0.42 * u) * s.dice.between(0.85, 1.1);
            let at = dvec2(x + 0.06, reach);
            stems.push(spot.row(&[[x - 0.08, 0.0], [at.x, at.y]]));
            let turn = spot.turn + side * (1.0 - 0.5 * u) + s.dice.about(0.2);
            let size = (spot.half.y * 0.42).min(17.0) * (1.12 - 0.5 * u);
            let pile = (i + usize::from(side > 0.0)) % 2;
            leaf(&mut piles[pile], spot.point(at.x, at.y * 0.7), turn, size);
        }
    }
    let tip = spot.point(0.84, 0.0);
    leaf(
        &mut piles[1],
        tip,
        spot.turn,
        (spot.half.y * 0.34).min(12.0),
    );
    s.brush(&stems, 0.8, rgb(0x4d6b2f), [0.9, 0.5]);
    s.polygons(&piles[0], tones.of(0, 0x3f6b2c), 0.28, 0.0);
    s.polygons(&piles[1], tones.of(1, 0x6f9640), 0.28, 0.0);
}

/// Leaves fallen about.
pub(super) fn scatter(s: &mut Sketch, spot: &Spot, tones: &Tones) {
    let count = (spot.half.x * spot.half.y / 260.0).clamp(4.0, 60.0) as usize;
    let greens = [tones.of(0, 0x3f6b2c), tones.of(1, 0x7ea24a)];
    picked(s, spot.at, spot.half * 0.94, count, 7.0, greens);
}

/// Flakes of salt fallen about.
pub(super) fn salt(s: &mut Sketch, spot: &Spot, tones: &Tones) {
    let count = s.some((spot.half.x * spot.half.y / 60.0).clamp(8.0, 110.0) as usize);
    let flakes: Vec<DVec2> = (0..count)
        .map(|_| {
            let p = s.dice.cloud() / 2.0;
            spot.point(p.x, p.y)
        })
        .collect();
    s.dots(&flakes, tones.of(0, 0xfffaf0), 1.0, 0.85);
}
