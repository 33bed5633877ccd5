//! Aubergine: seared halves scored crosswise, or whole with the skin up.

use glam::{DVec2, dvec2};

use super::{Plan, Tones};
use crate::drawing::sketch::{Rows, Sketch};
use crate::drawing::tone::rgb;
use crate::figure::blob::pebble;
use crate::figure::edges::AUBERGINE;
use crate::figure::form::Face;
use crate::figure::outline::{mirrored, resampled, table};

const STALK: [[i8; 2]; 10] = [
    [-60, -24],
    [-72, -15],
    [-86, -16],
    [-99, -11],
    [-100, 10],
    [-86, 14],
    [-72, 14],
    [-60, 24],
    [-62, 8],
    [-62, -8],
];

pub(super) fn draw(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    let body = resampled(&mirrored(&AUBERGINE, DVec2::ONE), 26, true);
    let loops: Rows = plan.spots.iter().map(|spot| spot.put(&body)).collect();
    let stalks: Rows = plan
        .spots
        .iter()
        .map(|spot| spot.put(&table(&STALK, DVec2::ONE)))
        .collect();
    s.fills(&loops, tones.of(0, 0x3d2145), 0.0, 0.0);
    if plan.face == Face::Skin {
        skins(s, plan, tones);
    } else {
        flesh(s, plan, &body, tones);
    }
    s.fills(&stalks, rgb(0x7f8a45), 0.75, 0.0);
    s.ink_all(&loops, 1.1);
}

fn flesh(s: &mut Sketch, plan: &Plan, body: &[DVec2], tones: &Tones) {
    let within = |kx: f64, dx: f64, ky: f64| -> Vec<DVec2> {
        body.iter()
            .map(|p| dvec2(p.x * kx + dx, p.y * ky))
            .collect()
    };
    let (rim, heart) = (within(0.9, 0.03, 0.8), within(0.76, 0.05, 0.58));
    let (mut rims, mut hearts) = (Rows::new(), Rows::new());
    let (mut scores, mut lips, mut char_marks) = (Rows::new(), Rows::new(), Rows::new());
    let mut oil = Rows::new();
    for spot in &plan.spots {
        rims.push(spot.put(&rim));
        hearts.push(spot.put(&heart));
        for side in [-1.0, 1.0] {
            for (i, reach) in [0.46, 0.6, 0.7, 0.62].into_iter().enumerate() {
                let x = -0.40 + 0.33 * i as f64;
                let bow = s.dice.about(0.02);
                let slant = side * 0.17;
                let line = [[x - slant, -reach], [x + bow, 0.0], [x + slant, reach]];
                scores.push(spot.row(&line));
                lips.push(spot.row(&line.map(|[x, y]| [x + 0.022, y + 0.05])));
            }
        }
        for _ in 0..7 {
            let p = s.dice.disc() * dvec2(0.6, 0.6) + dvec2(0.1, 0.0);
            let unit = spot.half.y;
            let size = dvec2(s.dice.between(0.10, 0.22), s.dice.between(0.07, 0.12)) * unit;
            let turn = s.dice.angle();
            char_marks.push(pebble(&mut s.dice, spot.point(p.x, p.y), size, turn));
        }
        oil.push(s.facing(spot.point(0.3, 0.0), spot.half * dvec2(0.3, 0.5), -0.5, 0.2));
    }
    s.fills(&rims, tones.of(2, 0xdcb069), 0.0, 0.0);
    s.fills(&hearts, tones.of(1, 0xb67a36), 0.0, 0.8);
    s.fills(&char_marks, rgb(0x2d150b), 0.0, 0.65);
    s.lines(&lips, tones.of(2, 0xe7bb74), 0.7, 0.75);
    s.lines(&scores, rgb(0x5b2f12), 1.1, 0.0);
    s.lines(&oil, tones.of(2, 0xf9e2ad), 0.9, 0.9);
}

fn skins(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    let (mut sides, mut lights) = (Rows::new(), Rows::new());
    for spot in &plan.spots {
        let up = if spot.own(s.lit).y < 0.0 { -1.0 } else { 1.0 };
        sides.push(spot.row(&[
            [-0.55, up * 0.06],
            [-0.3, up * 0.5],
            [0.2, up * 0.74],
            [0.7, up * 0.52],
            [0.84, up * 0.1],
            [0.3, up * 0.24],
        ]));
        lights.push(spot.row(&[[-0.1, up * 0.5], [0.25, up * 0.58], [0.55, up * 0.48]]));
    }
    s.fills(&sides, tones.of(0, 0x5c3a68), 0.0, 0.0);
    s.lines(&lights, rgb(0xe3d3ea), 1.3, 0.9);
}
