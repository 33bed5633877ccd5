//! A roast fish: back, belly, scores, char.

use glam::{DVec2, dvec2};

use super::{Plan, Tones};
use crate::drawing::sketch::{Rows, Sketch};
use crate::drawing::tone::{INK, rgb};
use crate::figure::blob::pebble;
use crate::figure::edges::{FISH, FISH_FINS, FISH_TAIL};
use crate::figure::outline::{arc, ellipse, mirrored, resampled, table};

pub(super) fn draw(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    let body = resampled(&mirrored(&FISH, DVec2::ONE), 30, true);
    let (mut bodies, mut trim, mut backs, mut bellies) =
        (Rows::new(), Rows::new(), Rows::new(), Rows::new());
    let (mut cuts, mut lips, mut char_, mut fine, mut scales) = (
        Rows::new(),
        Rows::new(),
        Rows::new(),
        Rows::new(),
        Rows::new(),
    );
    let (mut eyes, mut pupils) = (Rows::new(), Rows::new());
    for spot in &plan.spots {
        bodies.push(spot.put(&body));
        trim.push(spot.put(&table(&FISH_TAIL, DVec2::ONE)));
        trim.extend(
            FISH_FINS
                .iter()
                .map(|fin| spot.put(&table(fin, DVec2::ONE))),
        );
        backs.push(
            spot.put(
                &body
                    .iter()
                    .map(|p| dvec2(p.x * 0.98, (p.y * 0.42 - 0.42).max(p.y)))
                    .collect::<Vec<_>>(),
            ),
        );
        bellies.push(
            spot.put(
                &body
                    .iter()
                    .map(|p| dvec2(p.x * 0.8, p.y * 0.38 + 0.3))
                    .collect::<Vec<_>>(),
            ),
        );
        for x in [-0.34, -0.1, 0.14, 0.36] {
            let h = 0.56 - 0.42 * f64::max(x, 0.0);
            let cut = [[x - 0.05, -h], [x + 0.03, 0.0], [x + 0.09, h]];
            cuts.push(spot.row(&cut));
            lips.push(spot.row(&cut.map(|[x, y]| [x + 0.024, y + 0.02])));
        }
        for _ in 0..9 {
            let p = s.dice.disc() * dvec2(0.62, 0.5);
            let size = dvec2(s.dice.between(0.06, 0.14), s.dice.between(0.05, 0.1)) * spot.half.y;
            let turn = spot.turn + s.dice.about(0.6);
            char_.push(pebble(&mut s.dice, spot.point(p.x, p.y), size, turn));
        }
        for i in 0..s.some(26) {
            let x = -0.5 + 0.045 * i as f64;
            let y = -0.3 + 0.5 * s.dice.unit();
            scales.push(spot.row(&[[x, y - 0.08], [x + 0.025, y], [x, y + 0.08]]));
        }
        fine.push(spot.put(&arc(dvec2(-0.68, 0.0), dvec2(0.09, 0.58), -1.2, 1.2, 8)));
        fine.push(spot.row(&[[-0.99, 0.08], [-0.9, 0.14]]));
        for k in [-0.6, -0.3, 0.0, 0.3, 0.6] {
            fine.push(spot.row(&[[0.8, k * 0.3], [0.93, k * 0.86]]));
        }
        for k in [0.0, 0.14, 0.28] {
            fine.push(spot.row(&[[-0.14 + k, -0.78], [-0.02 + k, -0.92]]));
        }
        let eye = spot.point(-0.84, -0.2);
        let r = DVec2::splat(spot.half.y * 0.13);
        eyes.push(ellipse(eye, r, 10));
        pupils.push(ellipse(eye, r * 0.5, 8));
    }
    s.fills(&trim, tones.of(0, 0x6f5a3c), 0.8, 0.0);
    s.fills(&bodies, tones.of(1, 0xa99a78), 0.0, 0.0);
    s.fills(&backs, tones.of(0, 0x6f7268), 0.0, 0.8);
    s.fills(&bellies, tones.of(2, 0xd6c294), 0.0, 0.85);
    s.lines(&scales, tones.of(0, 0x5b5340), 0.4, 0.6);
    s.fills(&char_, rgb(0x5a3416), 0.0, 0.55);
    s.lines(&cuts, rgb(0x4a2c14), 2.2, 0.0);
    s.lines(&lips, tones.of(2, 0xecd9ae), 0.9, 0.0);
    s.lines(&fine, INK, 0.65, 0.8);
    s.fills(&eyes, rgb(0xf2ead5), 0.7, 0.0);
    s.fills(&pupils, rgb(0x1a1512), 0.0, 0.0);
    s.ink_all(&bodies, 1.2);
}
