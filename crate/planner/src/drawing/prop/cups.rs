//! Mug, cup on its saucer, jug: thrown rounds with a handle.

use glam::{DVec2, dvec2};

use super::{Ware, dish, lit};
use crate::drawing::sketch::Sketch;
use crate::drawing::tone::{SHADE, deeper, lighter, mixed, rgb};
use crate::figure::blob::round;

/// Coffee or what else stands in it: crema at the edge, one small light.
fn drink(s: &mut Sketch<'_>, at: DVec2, half: DVec2, tone: [u8; 3]) {
    let top = round(&mut s.dice, at, half, 0.0, 0.01, 26, 2.0);
    s.fills(&[top], tone, 0.5, 0.0);
    let crema = mixed(tone, rgb(0xb5_7a3c), 0.55);
    let ring = round(&mut s.dice, at, half * 0.9, 0.0, 0.03, 22, 2.0);
    s.wash(&ring, crema, 0.8);
    let heart = round(
        &mut s.dice,
        at - s.lit * half * 0.06,
        half * 0.74,
        0.0,
        0.06,
        20,
        2.0,
    );
    s.fill(&heart, tone);
    let light = s.facing(at, half * 0.6, -0.5, 0.3);
    s.lines(&[light], lighter(lighter(crema)), 1.1, 0.8);
}

/// A round wall with its inside, at `at`.
fn wall(s: &mut Sketch<'_>, at: DVec2, r: f64, ware: &Ware, fill: [u8; 3], is_drink: bool) {
    let edge = round(&mut s.dice, at, DVec2::splat(r), 0.0, 0.006, 36, 2.0);
    s.fill(&edge, ware.rim);
    let wide = ware.rim_width.clamp(r * 0.06, r * 0.2);
    let inside = DVec2::splat(r - wide);
    let deep = round(&mut s.dice, at, inside, 0.0, 0.006, 32, 2.0);
    s.fills(&[deep], deeper(fill), 0.5, 0.0);
    if is_drink {
        drink(s, at - s.lit * wide * 0.4, inside * 0.9, fill);
    } else {
        let floor = at - s.lit * r * 0.22;
        let low = round(&mut s.dice, floor, inside * 0.7, 0.0, 0.01, 26, 2.0);
        s.fills(&[low], fill, 0.4, 0.0);
    }
    s.ink(&edge, 1.2);
    s.rim_light(at, DVec2::splat(r - wide * 0.5), lit(ware.rim), 1.3);
}

fn ear(s: &mut Sketch<'_>, ear: &[DVec2], ware: &Ware) {
    s.fill(ear, ware.rim);
    s.ink(ear, 1.1);
    let mid = crate::figure::outline::middle(ear);
    let hole = crate::figure::outline::inset(ear, mid, dvec2(0.5, 0.36), DVec2::ZERO);
    s.wash(&hole, SHADE, 0.4);
}

pub(super) fn mug(s: &mut Sketch<'_>, half: DVec2, ware: &Ware, shape: &[Vec<DVec2>]) {
    let r = half.min_element();
    ear(s, &shape[1], ware);
    let well = ware.well.unwrap_or_else(|| deeper(ware.rim));
    wall(s, dvec2(r - half.x, 0.0), r, ware, well, true);
}

pub(super) fn cup(s: &mut Sketch<'_>, half: DVec2, ware: &Ware) {
    let saucer = Ware {
        well: Some(ware.rim),
        rim_width: half.min_element() * 0.2,
        ..*ware
    };
    dish(s, half, &saucer, 1.3);
    let r = (half.min_element() - ware.rim_width).max(half.min_element() * 0.45);
    let shade = round(
        &mut s.dice,
        -s.lit * r * 0.3,
        DVec2::splat(r * 1.04),
        0.0,
        0.01,
        24,
        2.0,
    );
    s.wash(&shade, SHADE, 0.22);
    let at = dvec2(r * 1.22, 0.0);
    let handle = round(&mut s.dice, at, dvec2(0.34, 0.2) * r, 0.0, 0.02, 14, 2.6);
    ear(s, &handle, ware);
    let well = ware.well.unwrap_or_else(|| deeper(ware.rim));
    let thin = Ware {
        rim_width: r * 0.08,
        ..*ware
    };
    wall(s, DVec2::ZERO, r, &thin, well, true);
}

pub(super) fn jug(s: &mut Sketch<'_>, half: DVec2, ware: &Ware, shape: &[Vec<DVec2>]) {
    ear(s, &shape[1], ware);
    s.fill(&shape[2], ware.rim);
    s.ink(&shape[2], 1.1);
    let well = ware.well.unwrap_or_else(|| deeper(ware.rim));
    wall(
        s,
        DVec2::ZERO,
        half.min_element() * 0.8,
        ware,
        deeper(well),
        false,
    );
    // The lip runs on into the spout.
    let throat = [[-0.66, -0.2], [-0.88, 0.0], [-0.66, 0.2]];
    let throat = throat.map(|[x, y]| half * dvec2(x, y)).to_vec();
    s.fills(&[throat], deeper(well), 0.4, 0.0);
}
