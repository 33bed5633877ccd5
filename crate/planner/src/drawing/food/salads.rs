//! Salads: tomato slices with basil and red onion; mixed leaves.

use core::f64::consts::TAU;

use glam::{DVec2, dvec2};

use super::{Plan, Tones};
use crate::drawing::sketch::{Rows, Sketch};
use crate::drawing::tone::{SHADE, Tone, rgb};
use crate::figure::blob::round;
use crate::figure::edges::LEAF;
use crate::figure::outline::{arc, placed, polar, table};

/// Layers in which pieces overlap.
const LAYERS: usize = 3;

/// Basil and other broad leaves: two greens and a vein.
pub(super) fn leaves(
    s: &mut Sketch,
    at: DVec2,
    half: DVec2,
    count: usize,
    size: f64,
    greens: [Tone; 2],
) {
    let mut piles = [Rows::new(), Rows::new()];
    let mut veins = Rows::new();
    let unit = table(&LEAF, dvec2(1.0, 0.56));
    for i in 0..count {
        let p = at + s.dice.disc() * half;
        let turn = s.dice.angle();
        let size = DVec2::splat(size * s.dice.between(0.75, 1.15));
        let put = |points: &[DVec2]| placed(points, p, turn, size);
        piles[i % 2].push(put(&unit));
        veins.push(put(
            &[[-0.85, 0.0], [0.0, 0.04], [0.8, 0.0]].map(DVec2::from)
        ));
        veins.push(put(&[[-0.3, 0.0], [0.05, -0.3]].map(DVec2::from)));
        veins.push(put(&[[0.0, 0.0], [0.3, 0.26]].map(DVec2::from)));
    }
    for (pile, green) in piles.iter().zip(greens) {
        s.fills(pile, green, 0.6, 0.0);
    }
    s.lines(&veins, rgb(0x20381a), 0.5, 0.8);
}

pub(super) fn tomato(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    s.wash(&plan.edge, tones.of(0, 0x7a2418), 0.55);
    for layer in 0..LAYERS.min(plan.spots.len()) {
        // One layer of a yellow sort keeps the reds apart.
        let yellow = layer == 1;
        let tone = |red: u32, gold: u32| {
            let tone = tones.of(1, red);
            if yellow {
                crate::drawing::tone::mixed(tone, rgb(gold), 0.86)
            } else {
                tone
            }
        };
        s.fills(
            &plan.loops(layer, LAYERS),
            tone(0xbd301f, 0xe0a12c),
            0.85,
            0.0,
        );
        let (mut flesh, mut cells, mut seeds) = (Rows::new(), Rows::new(), Vec::new());
        let mut lights = Rows::new();
        for spot in plan.layer(layer, LAYERS) {
            flesh.push(round(
                &mut s.dice,
                spot.at,
                spot.half * 0.85,
                spot.turn,
                0.04,
                14,
                2.0,
            ));
            let start = s.dice.angle();
            for i in 0..5 {
                let a = start + TAU * f64::from(i) / 5.0;
                let p = polar(a) * 0.5;
                let at = spot.point(p.x, p.y);
                let cell = spot.half * dvec2(0.25, 0.17);
                cells.push(round(
                    &mut s.dice,
                    at,
                    cell,
                    spot.turn + a + TAU / 4.0,
                    0.1,
                    9,
                    2.0,
                ));
                for k in [-0.24, 0.02, 0.26] {
                    let p = polar(a + k) * s.dice.between(0.43, 0.57);
                    seeds.push(spot.point(p.x, p.y));
                }
            }
            lights.push(s.facing(spot.at, spot.half * 0.9, -0.5, 0.3));
        }
        s.fills(&flesh, tone(0xd0432d, 0xeab74a), 0.0, 0.0);
        s.fills(&cells, tone(0xef8353, 0xf5d287), 0.0, 0.9);
        s.dots(&seeds, rgb(0xf9e6b0), 1.0, 0.0);
        s.lines(&lights, rgb(0xffe3cf), 0.9, 0.8);
    }
    let (at, half) = middle_of(plan);
    let mut onion = Rows::new();
    for _ in 0..5 {
        let p = at + s.dice.disc() * half * 0.6;
        let from = s.dice.angle();
        let r = dvec2(0.2, 0.15) * half.min_element();
        onion.push(arc(p, r, from, from + s.dice.between(3.2, 5.0), 10));
    }
    s.strands(&onion, (rgb(0x6d2450), 2.2), (rgb(0xc890b0), 0.9));
    let size = (half.min_element() * 0.2).min(24.0);
    let greens = [tones.of(2, 0x3d7031), tones.of(2, 0x5f9140)];
    leaves(s, at, half * 0.68, 6, size, greens);
}

pub(super) fn leaf(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    s.wash(&plan.edge, tones.of(0, 0x2c4420), 0.8);
    let greens = [
        tones.of(0, 0x466b31),
        tones.of(1, 0x6a963f),
        tones.of(2, 0xa6c268),
    ];
    let hearts = [
        tones.of(0, 0x5c8540),
        tones.of(1, 0x8ab058),
        tones.of(2, 0xcadc96),
    ];
    for layer in 0..LAYERS.min(plan.spots.len()) {
        let loops = plan.loops(layer, LAYERS);
        s.fills(&loops, greens[layer], 0.6, 0.0);
        let (mut inner, mut veins) = (Rows::new(), Rows::new());
        for (spot, loop_) in plan.layer(layer, LAYERS).iter().zip(&loops) {
            inner.push(
                loop_
                    .iter()
                    .map(|p| spot.at + (*p - spot.at) * 0.6 + s.lit * 2.0)
                    .collect(),
            );
            veins.push(spot.row(&[[-0.9, 0.0], [0.0, 0.06], [0.75, 0.0]]));
            for (x, y) in [(-0.4, 0.45), (0.0, -0.48), (0.2, 0.4)] {
                veins.push(spot.row(&[[x, 0.03], [x + 0.3, y]]));
            }
        }
        s.fills(&inner, hearts[layer], 0.0, 0.85);
        s.lines(&veins, rgb(0xdfe9b8), 0.6, 0.8);
    }
    let (at, half) = middle_of(plan);
    let (mut rims, mut hearts) = (Rows::new(), Rows::new());
    for _ in 0..6 {
        let p = at + s.dice.disc() * half * 0.75;
        let r = DVec2::splat((half.min_element() * 0.13).min(12.0));
        rims.push(round(&mut s.dice, p, r, 0.0, 0.03, 12, 2.0));
        hearts.push(round(&mut s.dice, p, r * 0.82, 0.0, 0.04, 10, 2.0));
    }
    s.fills(&rims, rgb(0xc23358), 0.6, 0.0);
    s.fills(&hearts, rgb(0xfaf0ea), 0.0, 0.0);
}

/// Middle and half extents of all pieces.
pub(super) fn middle_of(plan: &Plan) -> (DVec2, DVec2) {
    let (low, high) = crate::figure::outline::bounds(&plan.edge);
    ((low + high) / 2.0, (high - low) / 2.0)
}

/// The dark between the pieces of a heap.
pub(super) fn gaps(s: &mut Sketch, plan: &Plan, opacity: f64) {
    if plan.spots.len() > 1 {
        s.wash(&plan.edge, SHADE, opacity);
    }
}
