//! Boards and turned wood; slate.

use glam::{DVec2, dvec2};

use super::{Ware, glint};
use crate::drawing::sketch::{Rows, Sketch};
use crate::drawing::tone::{PENCIL, deeper, lighter};
use crate::figure::blob::{round, ruled};
use crate::figure::outline::arc;

/// A wooden board: grain, a knot, a hole to hang it by.
pub(super) fn board(s: &mut Sketch<'_>, half: DVec2, ware: &Ware) {
    let edge = round(&mut s.dice, DVec2::ZERO, half, 0.0, 0.004, 44, 9.0);
    s.fill(&edge, ware.rim);
    let count = s.some(9);
    let mut piles = [Rows::new(), Rows::new()];
    for i in 0..count {
        let y = half.y * (1.8 * (i as f64 + 0.5) / count as f64 - 0.9);
        let ends = [-0.92, 0.92].map(|x| dvec2(half.x * x, y));
        piles[i % 2].push(ruled(&mut s.dice, ends[0], ends[1], 8, half.y * 0.03));
    }
    s.lines(&piles[0], deeper(ware.rim), 0.8, 0.7);
    s.lines(&piles[1], lighter(ware.rim), 0.8, 0.8);
    let knot = half * dvec2(-0.36, 0.24);
    let rings: Rows = [1.0, 0.5]
        .iter()
        .map(|k| arc(knot, half.y * dvec2(0.12, 0.055) * *k, 0.0, 6.2, 12))
        .collect();
    s.lines(&rings, deeper(deeper(ware.rim)), 0.8, 0.8);
    let r = DVec2::splat(half.y * 0.08);
    let hole = round(
        &mut s.dice,
        dvec2(half.x * 0.86, 0.0),
        r,
        0.0,
        0.02,
        12,
        2.0,
    );
    s.fills(&[hole], deeper(deeper(ware.rim)), 0.6, 0.0);
    s.ink(&edge, 1.4);
    glint(s, half);
}

/// Slate: a chipped edge, riven steps, a trace of chalk.
pub(super) fn slate(s: &mut Sketch<'_>, half: DVec2, ware: &Ware, edge: &[DVec2]) {
    s.fill(edge, ware.rim);
    let (mut steps, mut lips) = (Rows::new(), Rows::new());
    for _ in 0..s.some(9) {
        let at = s.dice.disc() * half * 0.8;
        let reach = half.min_element() * s.dice.between(0.14, 0.34);
        let from = s.dice.angle();
        let row = arc(at, reach * dvec2(1.0, 0.4), from, from + 2.6, 8);
        lips.push(row.iter().map(|p| *p + s.lit * 2.0).collect());
        steps.push(row);
    }
    s.lines(&steps, deeper(deeper(ware.rim)), 0.8, 0.7);
    s.lines(&lips, lighter(ware.rim), 0.7, 0.8);
    let dust: Vec<DVec2> = (0..s.some(26))
        .map(|_| s.dice.disc() * half * 0.9)
        .collect();
    s.dots(&dust, PENCIL, 0.7, 0.35);
    s.ink(edge, 1.2);
    glint(s, half);
}

/// A mill from above: shoulders, neck, knob.
pub(super) fn mill(s: &mut Sketch<'_>, half: DVec2, ware: &Ware) {
    for (i, share) in [1.0, 0.74, 0.5, 0.24].into_iter().enumerate() {
        let ring = round(&mut s.dice, DVec2::ZERO, half * share, 0.0, 0.008, 30, 2.0);
        let tone = match i {
            0 | 2 => ware.rim,
            1 => deeper(ware.rim),
            _ => lighter(lighter(ware.rim)),
        };
        s.fill(&ring, tone);
        s.ink(&ring, if i == 0 { 1.3 } else { 0.7 });
        if share > 0.3 {
            s.rim_light(
                DVec2::ZERO,
                half * (share - 0.09),
                lighter(lighter(ware.rim)),
                0.9,
            );
        }
    }
}
