//! Olives: near-black, one softer tone, one small light each.

use glam::{DVec2, dvec2};

use super::{Plan, Tones};
use crate::drawing::sketch::{Rows, Sketch};
use crate::drawing::tone::{SHADE, rgb};
use crate::figure::blob::round;

pub(super) fn draw(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    // The gaps of the heap are dark with oil and shade.
    s.wash(&plan.edge, SHADE, 0.45);
    const LAYERS: usize = 3;
    for layer in 0..LAYERS.min(plan.spots.len()) {
        let spots = plan.layer(layer, LAYERS);
        s.fills(&plan.loops(layer, LAYERS), tones.of(0, 0x2f2430), 0.65, 0.0);
        let (mut soft, mut pits, mut lights) = (Rows::new(), Rows::new(), Rows::new());
        for (i, spot) in spots.iter().enumerate() {
            let up = s.lit * spot.half.y * 0.2;
            let at = spot.at + up;
            soft.push(round(
                &mut s.dice,
                at,
                spot.half * 0.6,
                spot.turn,
                0.06,
                8,
                2.0,
            ));
            if i % 2 == 0 {
                let end = spot.point(0.62, s.dice.about(0.2));
                pits.push(round(
                    &mut s.dice,
                    end,
                    dvec2(2.0, 1.5),
                    spot.turn,
                    0.1,
                    6,
                    2.0,
                ));
            }
            lights.push(s.facing(spot.at, spot.half * 0.55, -0.45, 0.35));
        }
        s.fills(&soft, tones.of(1, 0x4b3a4c), 0.0, 0.0);
        s.fills(&pits, tones.of(0, 0x120c10), 0.0, 0.0);
        s.lines(&lights, rgb(0xe9dfe6), 0.95, 0.0);
    }
    if plan.spots.len() > 6 {
        let least = plan.spots[0].half.y;
        let half = plan
            .spots
            .iter()
            .fold(DVec2::ZERO, |m, spot| m.max(spot.at.abs()));
        let green = [rgb(0x58763a), rgb(0x8fa75a)];
        super::herbs::picked(s, DVec2::ZERO, half, 5, least * 0.5, green);
    }
}
