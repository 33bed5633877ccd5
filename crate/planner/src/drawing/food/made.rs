//! Food made of like pieces: coat over coat, layer over layer of the heap.

use core::f64::consts::TAU;

use glam::{DVec2, dvec2};

use super::salads::{gaps, leaves, middle_of};
use super::{Plan, herbs};
use crate::drawing::coats::{Layer, paint};
use crate::drawing::sketch::Sketch;
use crate::drawing::tone::{Tone, rgb};
use crate::figure::made::{Lie, Recipe, Top};
use crate::figure::outline::polar;

/// Layers of a heap, so that pieces overlap without a path for each.
const LAYERS: usize = 3;
const GREENS: [Tone; 2] = [rgb(0x3f6b2c), rgb(0x7ea24a)];

pub(super) fn draw(s: &mut Sketch, plan: &Plan, recipe: &Recipe, own: &[Tone]) {
    let heaped = matches!(recipe.lie, Lie::Heap(..)) && plan.spots.len() > LAYERS;
    // Long pieces lie open: what shows between them is what they lie on.
    let stout = plan
        .spots
        .iter()
        .all(|spot| spot.half.x < spot.half.y * 1.7);
    if heaped && stout {
        gaps(s, plan, 0.3);
    }
    let layers = if heaped { LAYERS } else { 1 };
    for layer in 0..layers {
        let pieces = plan.loops(layer, layers);
        let spots = plan.layer(layer, layers);
        for coat in recipe.coats {
            let layer = Layer {
                spots: &spots,
                pieces: &pieces,
                own,
                cut: recipe.cut,
            };
            paint(s, coat, &layer);
        }
    }
    for top in recipe.tops {
        finish(s, plan, top);
    }
}

fn finish(s: &mut Sketch, plan: &Plan, top: &Top) {
    let (at, half) = middle_of(plan);
    let small = half.min_element();
    match *top {
        Top::Herbs(count) => {
            herbs::picked(
                s,
                at,
                half * 0.72,
                usize::from(count),
                (small * 0.08).clamp(3.0, 7.0),
                GREENS,
            );
        }
        Top::Leaves(count) => {
            leaves(
                s,
                at,
                half * 0.6,
                usize::from(count),
                (small * 0.2).clamp(5.0, 20.0),
                GREENS,
            );
        }
        Top::Dots(count, code, k) => {
            let dots: Vec<DVec2> = (0..s.some(usize::from(count)))
                .map(|_| at + s.dice.disc() * half * 0.8)
                .collect();
            s.dots(&dots, rgb(code), f64::from(k), 0.9);
        }
        Top::Drizzle(turns, code, k) => {
            let turn = s.dice.angle();
            let steps = 9 * u32::from(turns);
            let row: Vec<DVec2> = (0..=steps)
                .map(|i| {
                    let u = f64::from(i) / f64::from(steps);
                    let x = 1.5 * u - 0.75;
                    let y = 0.5 * libm::sin(TAU * u * f64::from(turns)) * (1.0 - x * x * 0.8);
                    at + half * polar(turn).rotate(dvec2(x, y)) * s.dice.between(0.92, 1.0)
                })
                .collect();
            s.brush(&[row], f64::from(k), rgb(code), [0.4, 0.3]);
        }
    }
}
