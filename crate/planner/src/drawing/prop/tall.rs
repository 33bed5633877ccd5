//! A taper candle in its holder.

use core::f64::consts::PI;

use glam::{DVec2, dvec2};

use super::Ware;
use crate::drawing::sketch::Sketch;
use crate::drawing::tone::{deeper, lighter, rgb};
use crate::figure::blob::round;
use crate::figure::outline::ellipse;

pub(super) fn candle(s: &mut Sketch<'_>, half: DVec2, ware: &Ware) {
    // The glow first, in two flat rings, so that the holder stands in it.
    for (reach, opacity) in [(2.3, 0.06), (1.5, 0.1)] {
        s.wash(
            &ellipse(DVec2::ZERO, half * reach, 28),
            rgb(0xffcf70),
            opacity,
        );
    }
    let handle = round(
        &mut s.dice,
        half * dvec2(-0.86, 0.72),
        half * dvec2(0.44, 0.28),
        2.44,
        0.03,
        14,
        2.0,
    );
    s.fills(&[handle], ware.rim, 0.9, 0.0);
    let edge = round(&mut s.dice, DVec2::ZERO, half, 0.0, 0.01, 30, 2.0);
    s.fill(&edge, ware.rim);
    let pan = round(&mut s.dice, DVec2::ZERO, half * 0.8, 0.0, 0.012, 26, 2.0);
    s.fills(&[pan], deeper(ware.rim), 0.6, 0.0);
    let shine = round(
        &mut s.dice,
        s.lit * half * 0.14,
        half * 0.56,
        0.0,
        0.05,
        20,
        2.0,
    );
    s.wash(&shine, lighter(ware.rim), 0.6);
    s.ink(&edge, 1.2);
    s.rim_light(DVec2::ZERO, half * 0.9, rgb(0xffe7a8), 1.4);
    let wax = round(&mut s.dice, DVec2::ZERO, half * 0.32, 0.0, 0.02, 18, 2.0);
    s.fill(&wax, rgb(0xefe3c6));
    let side = s.facing(DVec2::ZERO, half * 0.25, PI - 0.9, PI + 0.9);
    s.lines(&[side], rgb(0xcdbb92), 1.4, 0.9);
    s.ink(&wax, 0.9);
    lit(s, half);
}

/// The flame over the middle of the wax.
pub(super) fn lit(s: &mut Sketch<'_>, half: DVec2) {
    let flame = [
        dvec2(-0.16, 0.02),
        dvec2(-0.1, -0.14),
        dvec2(0.06, -0.3),
        dvec2(0.12, -0.52),
        dvec2(0.18, -0.26),
        dvec2(0.18, -0.04),
        dvec2(0.06, 0.1),
        dvec2(-0.08, 0.1),
    ];
    let flame: Vec<DVec2> = flame.iter().map(|p| *p * half).collect();
    s.fills(std::slice::from_ref(&flame), rgb(0xf4a62c), 0.6, 0.0);
    let core: Vec<DVec2> = flame
        .iter()
        .map(|p| *p * 0.5 + half * dvec2(0.03, -0.03))
        .collect();
    s.fill(&core, rgb(0xfff1b8));
}
