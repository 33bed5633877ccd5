//! A wedge of cheese: paste, a shaded face, rind, holes.

use glam::{DVec2, dvec2};

use super::{Plan, Tones};
use crate::drawing::sketch::{Rows, Sketch};
use crate::figure::blob::pebble;
use crate::figure::outline::table;

pub(super) fn draw(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    let spot = &plan.spots[0];
    let piece = &plan.pieces[0];
    s.polygons(std::slice::from_ref(piece), tones.of(1, 0xefd78f), 0.0, 0.0);
    let shade = spot.row(&[[-0.86, 0.1], [0.7, 0.86], [0.8, 0.36], [-0.1, 0.1]]);
    s.polygons(&[shade], tones.of(0, 0xdcbc66), 0.0, 0.7);
    let rind = [
        [66, -92],
        [86, -82],
        [100, 0],
        [86, 82],
        [66, 92],
        [80, 50],
        [84, 0],
        [80, -50],
    ];
    let rind = spot.put(&table(&rind, DVec2::ONE));
    s.fills(&[rind], tones.of(0, 0xa86a33), 0.6, 0.0);
    let (mut holes, mut lips) = (Rows::new(), Rows::new());
    for (x, y, r) in [
        (0.0, -0.1, 0.17),
        (0.32, 0.36, 0.22),
        (0.4, -0.36, 0.14),
        (-0.3, 0.1, 0.11),
        (0.58, 0.05, 0.15),
        (0.18, -0.3, 0.1),
        (-0.52, -0.02, 0.08),
    ] {
        let at = spot.point(x, y);
        let r = dvec2(r, r * 0.75) * spot.half.y;
        let turn = s.dice.angle();
        holes.push(pebble(&mut s.dice, at, r, turn));
        lips.push(s.facing(at, r * 0.8, -0.8, 0.7));
    }
    s.fills(&holes, tones.of(0, 0xc79d46), 0.5, 0.0);
    s.lines(&lips, tones.of(0, 0x8b6424), 0.8, 0.0);
    let ridge = spot.row(&[[-0.9, -0.02], [0.0, -0.46], [0.6, -0.78]]);
    s.lines(&[ridge], tones.of(1, 0xfff3cc), 1.0, 0.9);
    s.ink(piece, 1.25);
}
