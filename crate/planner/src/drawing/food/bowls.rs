//! What fills a bowl: noodles in broth, soup, rice.

use core::f64::consts::PI;

use glam::{DVec2, dvec2};

use super::spot::Spot;
use super::{Plan, Tones, eggs, herbs};
use crate::drawing::sketch::{Rows, Sketch};
use crate::drawing::tone::{WHITE, rgb};
use crate::figure::blob::{pebble, round};
use crate::figure::outline::{arc, placed, polar};

/// Spots of fat or light floating on a liquid, as small rings.
fn eyes(s: &mut Sketch, spot: &Spot, count: usize) -> Rows {
    (0..count)
        .map(|_| {
            let p = s.dice.disc() * 0.88;
            let r = spot.half.min_element() * s.dice.between(0.02, 0.05);
            arc(spot.point(p.x, p.y), DVec2::splat(r), 0.0, 5.6, 7)
        })
        .collect()
}

pub(super) fn noodles(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    let spot = &plan.spots[0];
    let unit = spot.half.min_element();
    s.fill(&plan.edge, tones.of(0, 0xa86a26));
    let pool = round(
        &mut s.dice,
        spot.at - s.lit * unit * 0.05,
        spot.half * 0.9,
        spot.turn,
        0.02,
        26,
        2.0,
    );
    s.fill(&pool, tones.of(0, 0xc0842f));
    let shine = round(
        &mut s.dice,
        spot.at + s.lit * unit * 0.3,
        spot.half * 0.46,
        spot.turn,
        0.07,
        20,
        2.0,
    );
    s.wash(&shine, tones.of(0, 0xd39b4c), 0.7);
    let fat = eyes(s, spot, 14);
    s.lines(&fat, tones.of(2, 0xf3cf8a), 0.5, 0.8);
    // A nest: bundles of strands laid round, each over the last.
    let first = s.dice.angle();
    for bundle in 0..4 {
        let mut strands = Rows::new();
        let at = spot.point(
            -0.02 + 0.09 * f64::from(bundle - 1),
            0.12 - 0.05 * f64::from(bundle),
        );
        let lean = spot.turn - 0.45 + 0.5 * f64::from(bundle);
        let from = first + 1.9 * f64::from(bundle);
        for i in 0..10 {
            let r = unit * (0.12 + 0.066 * f64::from(i)) * s.dice.between(0.97, 1.03);
            let start = from + s.dice.about(0.5);
            let row = arc(
                DVec2::ZERO,
                dvec2(r, r * 0.74),
                start,
                start + s.dice.between(1.8, 3.3),
                10,
            );
            strands.push(placed(&row, at, lean, DVec2::ONE));
        }
        s.strands(
            &strands,
            (tones.of(0, 0x7d5320), 2.5),
            (tones.of(1, 0xefd79a), 1.5),
        );
        let thin: Rows = strands
            .iter()
            .step_by(2)
            .map(|r| r[2..7].to_vec())
            .collect();
        s.lines(&thin, tones.of(2, 0xfdf3d2), 0.5, 0.9);
    }
    let sheet = [[-1.0, -1.0], [0.92, -1.06], [1.0, 0.94], [-0.9, 1.04]].map(DVec2::from);
    let nori = placed(
        &sheet,
        spot.point(-0.52, -0.46),
        spot.turn - 0.5,
        dvec2(0.2, 0.27) * unit,
    );
    let grain = [[-0.6, -0.9], [-0.5, 0.9]].map(DVec2::from);
    let grain = placed(
        &grain,
        spot.point(-0.52, -0.46),
        spot.turn - 0.5,
        dvec2(0.2, 0.27) * unit,
    );
    s.polygons(&[nori], rgb(0x1f2f29), 0.8, 0.0);
    s.lines(&[grain], rgb(0x3f5a4d), 0.8, 0.8);
    let egg = Spot {
        at: spot.point(0.42, -0.34),
        turn: spot.turn - 0.5,
        half: dvec2(0.3, 0.225) * unit,
    };
    eggs::halves(
        s,
        &[egg],
        &[crate::figure::edges::egg_edge(&egg)],
        &Tones::plain(super::Food::Eggs),
    );
    let mut rings = Rows::new();
    for _ in 0..s.some(16) {
        let p = s.dice.cloud() * dvec2(0.24, 0.17) + dvec2(0.1, 0.36);
        let r = dvec2(0.055, 0.045) * unit;
        rings.push(arc(spot.point(p.x, p.y), r, 0.3, 6.2, 7));
    }
    s.strands(&rings, (rgb(0x2f5f28), 1.7), (rgb(0x9cc46a), 0.8));
    let edge = s.facing(spot.at, spot.half * 0.94, PI - 0.5, PI + 0.3);
    s.lines(&[edge], tones.of(2, 0xf7dfa6), 1.2, 0.8);
}

pub(super) fn soup(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    let spot = &plan.spots[0];
    let unit = spot.half.min_element();
    s.fill(&plan.edge, tones.of(0, 0xb85a1c));
    let pool = round(
        &mut s.dice,
        spot.at - s.lit * unit * 0.03,
        spot.half * 0.93,
        spot.turn,
        0.02,
        26,
        2.0,
    );
    s.fill(&pool, tones.of(1, 0xcf6f22));
    let sheen = round(
        &mut s.dice,
        spot.at - s.lit * unit * 0.14,
        spot.half * 0.68,
        spot.turn,
        0.06,
        22,
        2.0,
    );
    s.wash(&sheen, tones.of(1, 0xdf8738), 0.8);
    let mut swirl = Rows::new();
    for k in 0..2 {
        let row: Vec<DVec2> = (0..12)
            .map(|i| {
                let r = 0.08 + 0.05 * f64::from(i);
                let p = polar(f64::from(i) * 0.52 + PI * f64::from(k)) * r;
                spot.point(p.x, p.y * 0.92)
            })
            .collect();
        swirl.push(row);
    }
    s.brush(&swirl, 4.6, tones.of(2, 0xfbf0da), [0.3, 0.1]);
    let lights: Rows = swirl.iter().map(|row| row[3..8].to_vec()).collect();
    s.lines(&lights, WHITE, 1.2, 0.0);
    let mut seeds = Rows::new();
    for _ in 0..14 {
        let p = s.dice.cloud() * 0.3;
        let turn = s.dice.angle();
        let size = dvec2(0.065, 0.034) * unit;
        seeds.push(pebble(&mut s.dice, spot.point(p.x, p.y), size, turn));
    }
    s.fills(&seeds, rgb(0x50682d), 0.5, 0.0);
    let oil = eyes(s, spot, 9);
    s.lines(&oil, tones.of(2, 0xf8c98d), 0.8, 0.8);
    herbs::picked(
        s,
        spot.at,
        spot.half * 0.26,
        7,
        unit * 0.08,
        [rgb(0x3f6b2c), rgb(0x7ea24a)],
    );
    let edge = s.facing(spot.at, spot.half * 0.86, -0.5, 0.3);
    s.lines(&[edge], tones.of(2, 0xffd9a6), 1.6, 0.9);
}

pub(super) fn rice(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    let spot = &plan.spots[0];
    let unit = spot.half.min_element();
    s.fills(
        std::slice::from_ref(&plan.edge),
        tones.of(0, 0xd8ceb8),
        0.6,
        0.0,
    );
    for (share, up, tone) in [(0.86, 0.06, 0xe9e1cf), (0.56, 0.2, 0xf8f3e6)] {
        let at = spot.at + s.lit * unit * up;
        let mound = round(&mut s.dice, at, spot.half * share, spot.turn, 0.06, 24, 2.0);
        s.fill(&mound, tones.of(1, tone));
    }
    let mut grains = Rows::new();
    let mut dark = Rows::new();
    for i in 0..s.some(130) {
        let p = s.dice.disc() * 0.93;
        let along = polar(s.dice.angle()) * s.dice.between(3.0, 4.2);
        let at = spot.point(p.x, p.y);
        let row = vec![at - along, at + along.perp() * 0.12, at + along];
        if i % 3 == 0 {
            dark.push(row)
        } else {
            grains.push(row)
        }
    }
    s.lines(&dark, tones.of(0, 0xb3a688), 1.3, 0.8);
    s.strands(
        &grains,
        (tones.of(0, 0xa89a7d), 1.9),
        (tones.of(1, 0xfffdf5), 1.25),
    );
    let mut sesame = Rows::new();
    for _ in 0..s.some(26) {
        let p = s.dice.cloud() * 0.36;
        let turn = s.dice.angle();
        let at = spot.point(p.x, p.y);
        sesame.push(vec![at, at + polar(turn) * 1.6]);
    }
    s.lines(&sesame, rgb(0x2b221c), 1.1, 0.0);
}
