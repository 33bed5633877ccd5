//! Cutlery: steel and one white line. The tip points to the right before the
//! turn.

use glam::{DVec2, dvec2};

use super::Ware;
use crate::drawing::sketch::{Rows, Sketch};
use crate::drawing::tone::{WHITE, deeper, lighter, rgb};
use crate::figure::outline::{ellipse, table};

fn streak(s: &mut Sketch<'_>, half: DVec2, from: f64, to: f64) {
    let row = vec![half * dvec2(from, -0.14), half * dvec2(to, -0.1)];
    s.lines(&[row], WHITE, 0.9, 0.9);
}

pub(super) fn fork(s: &mut Sketch<'_>, half: DVec2, ware: &Ware, body: &[DVec2]) {
    s.polygons(&[body.to_vec()], ware.rim, 0.8, 0.0);
    // The gaps between the tines, dark from the root to the tips.
    let gaps: Rows = [-0.5, 0.0, 0.5]
        .iter()
        .map(|&y| {
            vec![
                half * dvec2(1.01, y * 1.06 - 0.14),
                half * dvec2(0.62, y - 0.1),
                half * dvec2(0.58, y),
                half * dvec2(0.62, y + 0.1),
                half * dvec2(1.01, y * 1.06 + 0.14),
            ]
        })
        .collect();
    s.polygons(&gaps, rgb(0x2a_2622), 0.0, 0.0);
    streak(s, half, -0.9, 0.3);
}

pub(super) fn knife(s: &mut Sketch<'_>, half: DVec2, ware: &Ware, shape: &[Vec<DVec2>]) {
    s.fills(&shape[..1], ware.rim, 0.8, 0.0);
    s.fills(&shape[1..], rgb(0x6a_4a30), 0.8, 0.0);
    let edge = vec![half * dvec2(0.1, -0.2), half * dvec2(0.86, -0.5)];
    s.lines(&[edge], WHITE, 0.9, 0.9);
    let grain = vec![half * dvec2(-0.9, -0.1), half * dvec2(-0.1, -0.12)];
    s.lines(&[grain], rgb(0x9a_7450), 0.7, 0.9);
}

pub(super) fn spoon(s: &mut Sketch<'_>, half: DVec2, ware: &Ware, shape: &[Vec<DVec2>]) {
    s.fills(&shape[..1], ware.rim, 0.8, 0.0);
    s.fills(&shape[1..], ware.rim, 0.8, 0.0);
    let hollow = ellipse(half * dvec2(0.72, 0.04), half * dvec2(0.22, 0.7), 16);
    s.fill(&hollow, deeper(ware.rim));
    s.rim_light(half * dvec2(0.7, 0.0), half * dvec2(0.24, 0.8), WHITE, 0.9);
    streak(s, half * dvec2(1.0, 0.5), -0.9, 0.3);
}

pub(super) fn chopsticks(s: &mut Sketch<'_>, half: DVec2, ware: &Ware, shape: &[Vec<DVec2>]) {
    s.polygons(shape, ware.rim, 0.8, 0.0);
    let line = |y: f64| vec![half * dvec2(-0.9, y * 0.62), half * dvec2(0.6, y * 0.92)];
    s.lines(
        &[line(-0.64), line(0.56)],
        lighter(lighter(ware.rim)),
        0.7,
        0.9,
    );
    let ends: Rows = shape
        .iter()
        .map(|stick| {
            let cut = |a: DVec2, b: DVec2| a.lerp(b, 0.78);
            vec![
                cut(stick[0], stick[1]),
                stick[1],
                stick[2],
                cut(stick[3], stick[2]),
            ]
        })
        .collect();
    s.polygons(&ends, rgb(0x28_201d), 0.0, 0.0);
    // They lie on a rest.
    let rest = table(
        &[
            [-78, -94],
            [-66, -100],
            [-64, 0],
            [-66, 100],
            [-78, 94],
            [-74, 0],
        ],
        half * dvec2(1.0, 1.6),
    );
    s.fills(&[rest], rgb(0xb9_c4bd), 0.7, 0.0);
}
