//! Roast roots: potatoes in a heap, carrots side by side.

use glam::{DVec2, dvec2};

use super::salads::{gaps, middle_of};
use super::{Plan, Tones, herbs};
use crate::drawing::sketch::{Rows, Sketch};
use crate::drawing::tone::rgb;
use crate::figure::blob::{pebble, round};
use crate::figure::edges::CARROT;
use crate::figure::outline::{mirrored, polar};

/// Roast potatoes: gold, crisp brown edges, a cut face to most.
pub(super) fn potatoes(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    gaps(s, plan, 0.3);
    const LAYERS: usize = 3;
    for layer in 0..LAYERS.min(plan.spots.len()) {
        let (mut faces, mut crisp, mut lights) = (Rows::new(), Rows::new(), Rows::new());
        for spot in plan.layer(layer, LAYERS) {
            let at = spot.at + s.lit * spot.half.y * 0.08;
            faces.push(round(
                &mut s.dice,
                at,
                spot.half * 0.78,
                spot.turn,
                0.08,
                14,
                2.2,
            ));
            for _ in 0..3 {
                let p = polar(s.dice.angle()) * s.dice.between(0.4, 0.72);
                let size =
                    dvec2(s.dice.between(0.1, 0.26), s.dice.between(0.06, 0.12)) * spot.half.y;
                let turn = s.dice.angle();
                crisp.push(pebble(&mut s.dice, spot.point(p.x, p.y), size, turn));
            }
            lights.push(s.facing(spot.at, spot.half * 0.58, -0.5, 0.3));
        }
        s.fills(&plan.loops(layer, LAYERS), tones.of(0, 0x9a602a), 0.8, 0.0);
        s.fills(
            &faces,
            tones.of(1, [0xcc9444, 0xd6a14e, 0xc28a3a][layer]),
            0.0,
            0.0,
        );
        s.fills(&crisp, tones.of(0, 0x7a4a1e), 0.0, 0.75);
        s.lines(&lights, tones.of(2, 0xf3dc9c), 1.2, 0.9);
    }
    let (at, half) = middle_of(plan);
    herbs::picked(s, at, half * 0.8, 12, 6.0, [rgb(0x4a6b3a), rgb(0x86a06a)]);
    let salt: Vec<DVec2> = (0..s.some(30))
        .map(|_| at + s.dice.disc() * half * 0.85)
        .collect();
    s.dots(&salt, rgb(0xfffaf0), 0.9, 0.9);
}

/// Roast carrots side by side.
pub(super) fn carrots(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    let (mut bodies, mut tops, mut lit, mut rings, mut char_) = (
        Rows::new(),
        Rows::new(),
        Rows::new(),
        Rows::new(),
        Rows::new(),
    );
    let body = mirrored(&CARROT, DVec2::ONE);
    for spot in &plan.spots {
        bodies.push(spot.put(&body));
        tops.push(spot.row(&[[-0.74, -0.3], [-1.0, -0.2], [-1.0, 0.16], [-0.74, 0.3]]));
        let up = if spot.own(s.lit).y < 0.0 { -1.0 } else { 1.0 };
        lit.push(spot.row(&[
            [-0.6, up * 0.5],
            [0.0, up * 0.42],
            [0.7, up * 0.12],
            [0.0, up * 0.1],
            [-0.6, up * 0.12],
        ]));
        for _ in 0..5 {
            let x = s.dice.between(-0.6, 0.55);
            let h = 0.7 * (0.95 - x.max(-0.4) * 0.6);
            rings.push(spot.row(&[[x, -h], [x + 0.03, -h * 0.45]]));
            rings.push(spot.row(&[[x + 0.12, h * 0.9], [x + 0.15, h * 0.4]]));
        }
        for _ in 0..3 {
            let at = spot.point(s.dice.between(-0.6, 0.6), s.dice.about(0.4));
            char_.push(pebble(
                &mut s.dice,
                at,
                dvec2(0.34, 0.16) * spot.half.y,
                spot.turn,
            ));
        }
    }
    s.fills(&tops, rgb(0x7f9a4a), 0.7, 0.0);
    s.fills(&bodies, tones.of(1, 0xd9752a), 0.0, 0.0);
    s.fills(&lit, tones.of(2, 0xf0a04e), 0.0, 0.9);
    s.fills(&char_, rgb(0x5a2a10), 0.0, 0.6);
    s.lines(&rings, tones.of(0, 0x8a4416), 0.7, 0.8);
    s.ink_all(&bodies, 0.95);
    let (at, half) = middle_of(plan);
    if plan.spots.len() > 1 {
        herbs::picked(s, at, half * 0.8, 10, 6.0, [rgb(0x3f6b2c), rgb(0x7ea24a)]);
        let salt: Vec<DVec2> = (0..s.some(24))
            .map(|_| at + s.dice.disc() * half * 0.85)
            .collect();
        s.dots(&salt, rgb(0xfffaf0), 0.8, 0.9);
    }
}
