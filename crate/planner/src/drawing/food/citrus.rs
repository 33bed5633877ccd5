//! Lemons and other citrus: wedges, halves and whole fruit.

use core::f64::consts::TAU;

use glam::{DVec2, dvec2};

use super::spot::Spot;
use super::{Plan, Tones};
use crate::drawing::sketch::{Rows, Sketch};
use crate::figure::blob::round;
use crate::figure::edges::{wedge_point, wedge_unit};
use crate::figure::form::Face;
use crate::figure::outline::polar;

/// Wedges lying on a cut: peel, pith, four cells of flesh.
pub(super) fn wedges(s: &mut Sketch, spots: &[Spot], tones: &Tones) {
    let unit = wedge_unit();
    let pith: Vec<DVec2> = unit
        .iter()
        .map(|p| dvec2(p.x * 0.92, p.y * 0.85 - 0.05))
        .collect();
    let (mut peels, mut piths, mut cells) = (Rows::new(), Rows::new(), Rows::new());
    let (mut lights, mut shade) = (Rows::new(), Rows::new());
    for spot in spots {
        peels.push(spot.put(&unit));
        piths.push(spot.put(&pith));
        for i in 0..4 {
            let from = -0.80 + 0.41 * f64::from(i);
            let to = from + 0.36;
            let low = |u: f64| 0.66 * (1.0 - u * u * 0.8).max(0.0).sqrt();
            let cell = [
                wedge_point(from * 0.93, -0.05),
                wedge_point(to * 0.93, -0.05),
                wedge_point(to * 0.84, low(to)),
                wedge_point((from + to) * 0.42, low((from + to) / 2.0) + 0.04),
                wedge_point(from * 0.84, low(from)),
            ];
            cells.push(spot.put(&cell));
            let mid = (from + to) * 0.44;
            let light = [wedge_point(mid, 0.12), wedge_point(mid * 0.95, 0.36)];
            lights.push(spot.put(&light));
        }
        let rim = [
            wedge_point(0.72, 0.66),
            wedge_point(0.3, 0.93),
            wedge_point(-0.3, 0.93),
        ];
        shade.push(spot.put(&rim));
    }
    s.fills(&peels, tones.of(0, 0xe9b21f), 0.9, 0.0);
    s.lines(&shade, tones.of(0, 0xc48a12), 0.8, 0.8);
    s.fills(&piths, tones.of(2, 0xfbf2d2), 0.0, 0.0);
    s.fills(&cells, tones.of(1, 0xf6cf45), 0.0, 0.0);
    s.lines(&lights, tones.of(2, 0xfff8d8), 0.85, 0.9);
}

/// Halves cut side up, or whole fruit where the skin is up; in three layers,
/// so that crowded ones overlap.
pub(super) fn halves(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    const LAYERS: usize = 3;
    for layer in 0..LAYERS.min(plan.spots.len()) {
        let edges = plan.loops(layer, LAYERS);
        let spots = plan.layer(layer, LAYERS);
        s.fills(&edges, tones.of(0, 0xe9b21f), 0.0, 0.0);
        if plan.face == Face::Skin {
            whole(s, &spots, tones);
        } else {
            cut(s, &spots, tones);
        }
        s.ink_all(&edges, 1.0);
    }
}

fn cut(s: &mut Sketch, spots: &[Spot], tones: &Tones) {
    let (mut piths, mut cells, mut lights) = (Rows::new(), Rows::new(), Rows::new());
    for spot in spots {
        piths.push(round(
            &mut s.dice,
            spot.at,
            spot.half * 0.89,
            spot.turn,
            0.02,
            20,
            2.0,
        ));
        let start = s.dice.unit();
        for i in 0..9 {
            let from = start + TAU * f64::from(i) / 9.0 + 0.06;
            let to = from + TAU / 9.0 - 0.12;
            let mid = (from + to) / 2.0;
            let corner = |reach: f64, a: f64| {
                let p = polar(a) * reach;
                spot.point(p.x, p.y)
            };
            cells.push(vec![
                corner(0.12, mid),
                corner(0.46, from),
                corner(0.77, from + 0.02),
                corner(0.84, mid),
                corner(0.77, to - 0.02),
                corner(0.46, to),
            ]);
            let drop = mid + s.dice.about(0.1);
            lights.push(vec![corner(0.42, drop), corner(0.66, drop + 0.04)]);
            if i % 2 == 0 {
                lights.push(vec![corner(0.56, drop - 0.14), corner(0.72, drop - 0.12)]);
            }
        }
    }
    s.fills(&piths, tones.of(2, 0xfbf2d6), 0.0, 0.0);
    s.fills(&cells, tones.of(1, 0xf6cf45), 0.0, 0.0);
    s.lines(&lights, tones.of(1, 0xfff3b8), 0.9, 0.9);
}

fn whole(s: &mut Sketch, spots: &[Spot], tones: &Tones) {
    let mut round_tops = Rows::new();
    let mut pores = Vec::new();
    let mut lights = Rows::new();
    for spot in spots {
        let up = s.lit * spot.half * 0.14;
        let body = round(
            &mut s.dice,
            spot.at + up,
            spot.half * 0.74,
            spot.turn,
            0.04,
            18,
            2.0,
        );
        round_tops.push(body);
        for _ in 0..22 {
            let p = s.dice.disc() * 0.82;
            pores.push(spot.point(p.x, p.y));
        }
        lights.push(s.facing(spot.at, spot.half * 0.62, -0.4, 0.3));
    }
    s.fills(&round_tops, tones.of(1, 0xf4c636), 0.0, 0.0);
    s.dots(&pores, tones.of(0, 0xb98710), 0.6, 0.6);
    s.lines(&lights, tones.of(2, 0xfff3b8), 1.6, 0.9);
}
