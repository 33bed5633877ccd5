//! Small things in heaps: berries and nuts, each kind in its own paths.

use core::f64::consts::TAU;

use glam::{DVec2, dvec2};

use super::salads::{gaps, leaves, middle_of};
use super::spot::Spot;
use super::{Plan, Tones};
use crate::drawing::sketch::{Rows, Sketch};
use crate::drawing::tone::rgb;
use crate::figure::blob::pebble;
use crate::figure::edges::sort;
use crate::figure::outline::{arc, placed, polar};

/// The pieces of one sort.
fn of_sort(plan: &Plan, wanted: usize) -> impl Iterator<Item = (&Spot, &Vec<DVec2>)> {
    let chosen = move |(i, _): &(usize, _)| sort(*i) == wanted;
    plan.spots
        .iter()
        .zip(&plan.pieces)
        .enumerate()
        .filter(chosen)
        .map(|(_, pair)| pair)
}

fn loops(plan: &Plan, wanted: usize) -> Rows {
    of_sort(plan, wanted)
        .map(|(_, piece)| piece.clone())
        .collect()
}

pub(super) fn berries(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    gaps(s, plan, 0.34);
    let (mut caps, mut seeds) = (Rows::new(), Vec::new());
    for (spot, _) in of_sort(plan, 2) {
        for k in [-1.3, -0.5, 0.5, 1.3] {
            caps.push(spot.row(&[
                [-1.15, 0.0],
                [-0.8, -0.36 * k - 0.1],
                [-0.3, -0.6 * k],
                [-0.7, -0.2 * k],
            ]));
        }
        for _ in 0..9 {
            let p = s.dice.disc() * dvec2(0.8, 0.62) + dvec2(0.1, 0.0);
            seeds.push(spot.point(p.x, p.y));
        }
    }
    s.fills(&loops(plan, 2), tones.of(2, 0xc4281f), 0.8, 0.0);
    s.dots(&seeds, rgb(0xf4cf7d), 0.8, 0.0);
    s.fills(&caps, rgb(0x5d8a3a), 0.45, 0.0);

    let (mut beads, mut bead_lights) = (Rows::new(), Rows::new());
    for (spot, _) in of_sort(plan, 1) {
        for k in 0..7 {
            let p = if k < 6 {
                polar(TAU * f64::from(k) / 6.0) * 0.56
            } else {
                DVec2::ZERO
            };
            let at = spot.point(p.x, p.y);
            let r = spot.half * 0.36;
            beads.push(pebble(&mut s.dice, at, r, spot.turn));
            bead_lights.push(vec![at + s.lit * r.x * 0.35, at + s.lit * r.x * 0.6]);
        }
    }
    s.fills(&loops(plan, 1), tones.of(1, 0x6d1230), 0.8, 0.0);
    s.fills(&beads, tones.of(1, 0xa31d43), 0.45, 0.0);
    s.lines(&bead_lights, rgb(0xf2a0b2), 0.9, 0.0);

    let (mut bloom, mut crowns) = (Rows::new(), Rows::new());
    for (spot, _) in of_sort(plan, 0) {
        let at = spot.at + s.lit * spot.half * 0.16;
        bloom.push(pebble(&mut s.dice, at, spot.half * 0.52, spot.turn));
        let at = spot.at - s.lit * spot.half * 0.18;
        let star = (0..10).map(|k| {
            let r = if k % 2 == 0 { 0.32 } else { 0.14 };
            at + polar(TAU * f64::from(k) / 10.0) * spot.half * r
        });
        crowns.push(star.collect());
    }
    s.fills(&loops(plan, 0), tones.of(0, 0x333d70), 0.8, 0.0);
    s.fills(&bloom, tones.of(0, 0x6476a6), 0.0, 0.8);
    s.polygons(&crowns, tones.of(0, 0x171c3a), 0.0, 0.0);
    if plan.spots.len() > 4 {
        let (at, half) = middle_of(plan);
        leaves(
            s,
            at,
            half * 0.7,
            3,
            (half.min_element() * 0.24).min(16.0),
            [rgb(0x4a7a35), rgb(0x7ba04b)],
        );
    }
}

pub(super) fn nuts(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    let mut folds = Rows::new();
    for (spot, _) in of_sort(plan, 2) {
        folds.push(spot.row(&[[-0.9, 0.0], [0.0, 0.12], [0.9, 0.0]]));
        for (x, side) in [
            (-0.45, -1.0),
            (0.1, -1.0),
            (0.55, -1.0),
            (-0.5, 1.0),
            (0.0, 1.0),
            (0.5, 1.0),
        ] {
            folds.push(spot.row(&[
                [x, side * 0.95],
                [x + side * -0.14, side * 0.58],
                [x + side * 0.1, side * 0.24],
            ]));
        }
    }
    s.fills(&loops(plan, 2), tones.of(2, 0xc8a06a), 0.8, 0.0);
    s.lines(&folds, tones.of(0, 0x6d4520), 0.75, 0.0);
    let mut grain = Rows::new();
    for (spot, _) in of_sort(plan, 0) {
        for y in [-0.45, 0.0, 0.45] {
            grain.push(spot.row(&[[-0.75, y * 0.7], [0.0, y * 1.3], [0.8, y * 0.5]]));
        }
    }
    s.fills(&loops(plan, 0), tones.of(1, 0x9a5f2f), 0.8, 0.0);
    s.lines(&grain, tones.of(0, 0x5e3214), 0.5, 0.9);
    let mut caps = Rows::new();
    for (spot, _) in of_sort(plan, 1) {
        let r = DVec2::splat(spot.half.y * 1.05);
        let mut cap = arc(DVec2::ZERO, r, -0.9, 0.9, 6);
        cap.extend(arc(r * dvec2(0.4, 0.0), r * 0.72, 0.9, -0.9, 4));
        caps.push(placed(&cap, spot.at, spot.turn, DVec2::ONE));
    }
    s.fills(&loops(plan, 1), tones.of(1, 0xb0743c), 0.8, 0.0);
    s.fills(&caps, tones.of(2, 0xdcc39a), 0.35, 0.0);
    let lights: Rows = plan
        .spots
        .iter()
        .map(|spot| s.facing(spot.at, DVec2::splat(spot.half.y * 0.55), -0.4, 0.3))
        .collect();
    s.lines(&lights, rgb(0xf4dcb4), 0.9, 0.85);
}
