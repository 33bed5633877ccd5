//! Bread: a scored loaf crust up, a slice cut side up, a torn piece, crumbs.

use glam::{DVec2, dvec2};

use super::spot::Spot;
use super::{Plan, Tones};
use crate::drawing::sketch::{Rows, Sketch};
use crate::drawing::tone::rgb;
use crate::figure::blob::{pebble, round};
use crate::figure::form::Face;
use crate::figure::outline::{inset, middle, polar};

pub(super) fn draw(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    let spot = &plan.spots[0];
    match plan.face {
        Face::Cut => slice(s, &plan.pieces[0], spot, tones),
        Face::Torn => torn(s, &plan.pieces[0], spot, tones),
        Face::Usual | Face::Skin => loaf(s, &plan.pieces[0], spot, tones),
    }
}

fn loaf(s: &mut Sketch, edge: &[DVec2], spot: &Spot, tones: &Tones) {
    let half = spot.half;
    s.fill(edge, tones.of(1, 0x5a3218));
    // The dome: each lighter tone lies nearer the window.
    let dome = |s: &mut Sketch, share: DVec2, up: f64, jitter: f64, tone, opacity| {
        let at = spot.at + s.lit * half.y * up;
        let loop_ = round(&mut s.dice, at, half * share, spot.turn, jitter, 26, 2.3);
        s.wash(&loop_, tone, opacity);
    };
    dome(
        s,
        dvec2(0.93, 0.84),
        0.06,
        0.035,
        tones.of(2, 0x7b4722),
        0.0,
    );
    dome(s, dvec2(0.76, 0.56), 0.20, 0.07, tones.of(2, 0x99602f), 0.9);
    dome(
        s,
        dvec2(0.46, 0.24),
        0.34,
        0.12,
        tones.of(2, 0xb27a41),
        0.55,
    );

    // Rings of flour left by the proving basket.
    let mut rings = Rows::new();
    for k in [0.9, 0.74, 0.56, 0.36] {
        let start = s.dice.angle();
        for i in 0..3 {
            let from = start + 2.1 * f64::from(i);
            let to = from + s.dice.between(0.9, 1.7);
            rings.push(
                (0..=8)
                    .map(|j| {
                        let p = polar(from + (to - from) * f64::from(j) / 8.0) * k;
                        spot.point(p.x, p.y * 0.95)
                    })
                    .collect(),
            );
        }
    }
    s.lines(&rings, rgb(0xe9d3ac), 1.5, 0.20);

    let (mut gaps, mut crumb, mut ears) = (Rows::new(), Rows::new(), Rows::new());
    let cuts = (half.x / 40.0).round().clamp(3.0, 6.0);
    for i in 0..cuts as usize {
        let u = (i as f64 + 0.5) / cuts * 2.0 - 1.0;
        let room = (1.0 - u * u * 0.62).max(0.1);
        let cut = Spot {
            at: spot.point(u * 0.76, s.dice.about(0.03)),
            turn: spot.turn + 1.08 + s.dice.about(0.05),
            half: dvec2(
                half.y * 0.72 * room * s.dice.between(0.92, 1.05),
                half.x * 0.068,
            ),
        };
        let lens = [
            [-1.0, 0.0],
            [-0.5, -0.75],
            [0.0, -1.0],
            [0.5, -0.8],
            [1.0, 0.0],
            [0.5, 0.6],
            [0.0, 0.85],
            [-0.5, 0.5],
        ];
        crumb.push(cut.row(&lens));
        gaps.push(cut.row(&lens.map(|[x, y]| [x * 1.07, y * 1.4 + 0.12])));
        ears.push(cut.row(&[[-0.9, -0.3], [-0.4, -0.92], [0.1, -1.08], [0.84, -0.5]]));
    }
    s.fills(&gaps, tones.of(0, 0x341b0d), 0.0, 0.0);
    s.fills(&crumb, rgb(0xd9b685), 0.0, 0.0);
    s.lines(&ears, rgb(0xf3dcae), 1.0, 0.0);

    let mut blisters = Rows::new();
    for _ in 0..s.some(14) {
        let p = s.dice.disc() * 0.88;
        let at = spot.point(p.x, p.y);
        let along = polar(s.dice.angle()) * half.y * 0.1;
        blisters.push(vec![at, at + along + along.perp() * 0.35, at + along * 1.9]);
    }
    s.lines(&blisters, tones.of(0, 0x2c170c), 0.6, 0.75);
    let flour: Vec<DVec2> = (0..s.some(64))
        .map(|_| {
            let p = s.dice.cloud() * 0.45;
            spot.point(p.x, p.y)
        })
        .collect();
    s.dots(&flour, rgb(0xf1e3c8), 1.3, 0.75);
    s.ink(edge, 1.5);
}

fn slice(s: &mut Sketch, edge: &[DVec2], spot: &Spot, tones: &Tones) {
    let at = middle(edge);
    s.fill(edge, tones.of(0, 0x7b4722));
    s.fill(
        &inset(edge, at, DVec2::splat(0.89), DVec2::ZERO),
        tones.of(2, 0xefdcb4),
    );
    let shade = -s.lit * spot.half.y * 0.08;
    s.wash(
        &inset(edge, at, dvec2(0.7, 0.62), shade),
        tones.of(2, 0xe3c898),
        0.7,
    );
    holes(s, spot, 18, dvec2(0.74, 0.66), tones);
    s.ink(edge, 1.3);
}

fn torn(s: &mut Sketch, edge: &[DVec2], spot: &Spot, tones: &Tones) {
    let half = spot.half;
    s.fill(edge, tones.of(0, 0x6d3d1c));
    let crumb = round(
        &mut s.dice,
        spot.point(0.1, -0.04),
        half * 0.84,
        spot.turn,
        0.14,
        18,
        2.0,
    );
    s.fill(&crumb, tones.of(2, 0xecd7ae));
    let deep = round(
        &mut s.dice,
        spot.point(0.18, 0.1),
        half * 0.48,
        spot.turn,
        0.15,
        12,
        2.0,
    );
    s.wash(&deep, tones.of(1, 0xd9bd8a), 0.7);
    // Torn fibres point the way it was pulled.
    let mut fibres = Rows::new();
    for _ in 0..s.some(9) {
        let p = s.dice.disc() * 0.6;
        fibres.push(spot.row(&[[p.x, p.y], [p.x + 0.14, p.y * 1.1], [p.x + 0.26, p.y * 1.3]]));
    }
    s.lines(&fibres, tones.of(2, 0xf8ebcd), 0.8, 0.9);
    holes(s, spot, 8, dvec2(0.6, 0.5), tones);
    s.ink(edge, 1.0);
}

/// Holes in the crumb, each with a shaded lip on its lit side.
fn holes(s: &mut Sketch, spot: &Spot, count: usize, spread: DVec2, tones: &Tones) {
    let (mut loops, mut lips) = (Rows::new(), Rows::new());
    let unit = spot.half.min_element();
    for _ in 0..count {
        let p = s.dice.disc() * spread;
        let at = spot.point(p.x, p.y);
        let size = unit * s.dice.between(0.05, 0.15);
        let turn = spot.turn + s.dice.about(0.7);
        loops.push(pebble(&mut s.dice, at, dvec2(size, size * 0.62), turn));
        lips.push(s.facing(at, dvec2(size, size * 0.62) * 0.8, -0.8, 0.8));
    }
    s.fills(&loops, tones.of(1, 0xbd9660), 0.0, 0.0);
    s.lines(&lips, tones.of(1, 0x8d6534), 0.55, 0.9);
}

/// Crumbs fallen about.
pub(super) fn crumbs(s: &mut Sketch, spot: &Spot, tones: &Tones) {
    let area = spot.half.x * spot.half.y;
    let count = s.some((area / 190.0).clamp(5.0, 90.0) as usize);
    let mut loops = Rows::new();
    for _ in 0..count {
        let p = s.dice.cloud() / 2.0;
        let size = dvec2(s.dice.between(1.5, 4.5), s.dice.between(1.4, 3.0));
        let turn = s.dice.angle();
        let at = spot.point(p.x, p.y);
        loops.push(round(&mut s.dice, at, size, turn, 0.2, 6, 2.0));
    }
    s.polygons(&loops, tones.of(0, 0xe2c693), 0.25, 0.0);
}
