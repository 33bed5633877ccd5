//! Cloth as it lies: cut straight, folded, pushed together or dropped.

use core::f64::consts::TAU;

use glam::{DVec2, dvec2};

use super::blob::{round, sheet};
use super::dice::{Dice, EDGE};
use super::form::{Form, Frame};
use super::outline::resampled;
use crate::layout::LinenState;

/// Tips of a dropped napkin, degrees clockwise from 3 o'clock, and how far out
/// each lies in hundredths.
const TIPS: [[i16; 2]; 8] = [
    [12, 105],
    [58, 74],
    [96, 100],
    [148, 70],
    [190, 112],
    [232, 66],
    [280, 96],
    [322, 78],
];
/// From here on a cloth is a strip and is dropped in waves, not in a star.
const STRIP: f64 = 2.4;
/// Points along one long side of a strip in waves.
const STATIONS: usize = 22;

/// Whether a cloth of this half size lies in waves when dropped.
pub(crate) fn is_strip(half: DVec2) -> bool {
    half.max_element() > STRIP * half.min_element()
}

/// Rays of a dropped napkin: where each tip and each bay between two tips
/// lies, in the unit square.
pub(crate) fn rays(dice: &mut Dice) -> Vec<DVec2> {
    let mut rays = Vec::with_capacity(16);
    for (i, [angle, out]) in TIPS.iter().enumerate() {
        let [next, far] = TIPS[(i + 1) % 8];
        let next = next + if i == 7 { 360 } else { 0 };
        let at = |degrees: f64, k: f64| {
            let (sin, cos) = libm::sincos(degrees.to_radians());
            dvec2(cos, sin) * (k / 112.0)
        };
        rays.push(at(f64::from(*angle), f64::from(*out)));
        let between = f64::from(angle + next) / 2.0 + dice.about(4.0);
        rays.push(at(between, f64::from(out + far) * 0.43));
    }
    rays
}

/// The loop in the designed frame, before it is brought to its extents.
fn designed(dice: &mut Dice, state: LinenState, half: DVec2) -> Vec<DVec2> {
    match state {
        LinenState::Flat => {
            let steps = (half.max_element() / 90.0).ceil().clamp(4.0, 16.0);
            sheet(dice, half, steps as usize, 1.8, 4.0)
        }
        LinenState::Folded => round(dice, DVec2::ZERO, half, 0.0, 0.005, 44, 9.0),
        LinenState::Thrown if !is_strip(half) => {
            let tips = rays(dice);
            let mut points = resampled(&tips, 60, true);
            for p in &mut points {
                *p = *p * half + dvec2(dice.about(1.2), dice.about(1.2));
            }
            points
        }
        LinenState::Bunched | LinenState::Thrown => waves(dice, state, half),
    }
}

/// A strip that lies in waves; a bunched one is pushed together in short ones.
fn waves(dice: &mut Dice, state: LinenState, half: DVec2) -> Vec<DVec2> {
    let upright = half.y > half.x;
    let size = if upright { dvec2(half.y, half.x) } else { half };
    let (count, swing, scallop) = match state {
        LinenState::Bunched => (1.3, 0.1, 0.13),
        _ => (0.85, 0.34, 0.03),
    };
    let phase = [dice.angle(), dice.angle(), dice.angle()];
    let mut edge = |side: f64, n: usize| {
        (0..=STATIONS)
            .map(|i| {
                let u = i as f64 / STATIONS as f64;
                let spine = swing * libm::sin(phase[0] + TAU * count * u);
                let bite = scallop * libm::sin(phase[n] + TAU * 6.5 * u);
                let y = spine + side * (1.0 - swing - scallop) + side * bite + dice.about(0.02);
                dvec2((2.0 * u - 1.0) * size.x, y * size.y)
            })
            .collect::<Vec<DVec2>>()
    };
    let mut points = edge(-1.0, 1);
    points.extend(edge(1.0, 2).into_iter().rev());
    if upright {
        // Turned by a quarter, so that the loop keeps its direction.
        points.iter_mut().for_each(|p| *p = dvec2(-p.y, p.x));
    }
    points
}

/// The plan of a cloth: its loop in the designed frame and the way from there.
pub(crate) fn plan(state: LinenState, form: &Form) -> (Vec<DVec2>, Frame) {
    let form = form.sound();
    let edge = designed(&mut Dice::new(form.seed, EDGE), state, form.half);
    let frame = Frame::fitted(&edge, &form);
    (edge, frame)
}

/// The outline of a cloth about its centre, turned: it reaches exactly its
/// extents.
#[must_use]
pub fn cloth_outline(state: LinenState, form: &Form) -> Vec<DVec2> {
    let (edge, frame) = plan(state, form);
    edge.iter().map(|&p| frame.apply(p)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figure::outline::{area, bounds};
    use crate::shape::Region;

    #[test]
    fn every_state_is_one_simple_loop_that_reaches_its_extents() {
        let states = [
            LinenState::Flat,
            LinenState::Folded,
            LinenState::Bunched,
            LinenState::Thrown,
        ];
        for half in [
            dvec2(1032.0, 175.0),
            dvec2(110.0, 105.0),
            dvec2(90.0, 500.0),
        ] {
            for state in states {
                for seed in 1..12 {
                    let edge = cloth_outline(state, &Form::new(seed, half, 0.0));
                    let (low, high) = bounds(&edge);
                    let off = (high - half).abs().max((low + half).abs()).max_element();
                    assert!(off < 1e-6, "{state:?} {half}: {off} off its extents");
                    let whole = Region::from_polygon(&edge).expect("sound").area();
                    let own = area(&edge);
                    assert!(
                        (whole - own).abs() < 0.002 * whole,
                        "{state:?} {half} crosses itself: {own} of {whole}"
                    );
                }
            }
        }
    }
}
