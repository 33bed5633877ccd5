//! Halved eggs: white, a step of grey-white, two yolks of one yolk.

use glam::DVec2;

use super::Tones;
use super::spot::Spot;
use crate::drawing::sketch::{Rows, Sketch};
use crate::drawing::tone::rgb;
use crate::figure::blob::round;
use crate::figure::outline::polar;

pub(super) fn halves(s: &mut Sketch, spots: &[Spot], edges: &[Vec<DVec2>], tones: &Tones) {
    let (mut shade, mut rims, mut yolks, mut lights) =
        (Rows::new(), Rows::new(), Rows::new(), Rows::new());
    let mut grains = Vec::new();
    for (spot, edge) in spots.iter().zip(edges) {
        let away = s.lit * spot.half.y * -0.06;
        shade.push(
            edge.iter()
                .map(|p| spot.at + (*p - spot.at) * 0.87 + away)
                .collect(),
        );
        let at = spot.point(0.1, 0.0);
        let r = DVec2::splat(spot.half.y * 0.6);
        rims.push(round(&mut s.dice, at, r, 0.0, 0.05, 16, 2.0));
        let up = at + s.lit * r.x * 0.05;
        yolks.push(round(&mut s.dice, up, r * 0.86, 0.0, 0.06, 16, 2.0));
        lights.push(s.facing(at, r * 0.56, -0.6, 0.4));
        for _ in 0..4 {
            let p = polar(s.dice.angle()) * spot.half.y * s.dice.between(0.1, 0.8);
            grains.push(spot.at + p);
        }
    }
    s.fills(edges, tones.of(2, 0xfbf6e9), 0.0, 0.0);
    s.fills(&shade, tones.of(2, 0xefe5cf), 0.0, 0.0);
    s.fills(&rims, tones.of(0, 0xc9701b), 0.0, 0.0);
    s.fills(&yolks, tones.of(1, 0xee9a2c), 0.0, 0.0);
    s.lines(&lights, tones.of(1, 0xffe2a2), 1.4, 0.0);
    s.dots(&grains, rgb(0x4a3d30), 0.7, 0.8);
    s.ink_all(edges, 0.95);
}
