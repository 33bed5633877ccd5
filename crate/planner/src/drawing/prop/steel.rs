//! Cutlery: steel and one white line. The tip points to the right before the
//! turn.

use glam::{DVec2, dvec2};

use super::Ware;
use crate::drawing::sketch::Sketch;
use crate::drawing::tone::{WHITE, deeper, rgb};
use crate::figure::outline::{ellipse, mirrored, table};

fn streak(s: &mut Sketch<'_>, half: DVec2, from: f64, to: f64) {
    s.lines(
        &[vec![half * dvec2(from, -0.14), half * dvec2(to, -0.1)]],
        WHITE,
        0.9,
        0.9,
    );
}

/// Handle and neck shared by fork and spoon, in hundredths of the half size.
const SHAFT: [[i8; 2]; 5] = [[-100, -40], [-50, -34], [10, -24], [34, -26], [40, -30]];

pub(super) fn fork(s: &mut Sketch<'_>, half: DVec2, ware: &Ware) {
    let mut body = SHAFT.to_vec();
    body.extend([[46, -70], [60, -100]]);
    let body = mirrored(&body, half);
    let tines: Vec<Vec<DVec2>> = [-0.8, -0.27, 0.27, 0.8]
        .into_iter()
        .map(|y| {
            let (a, b) = (y - 0.17, y + 0.17);
            vec![
                half * dvec2(0.56, a),
                half * dvec2(1.0, a * 0.95),
                half * dvec2(1.0, b * 0.95),
                half * dvec2(0.56, b),
            ]
        })
        .collect();
    s.polygons(&tines, ware.rim, 0.7, 0.0);
    s.fills(&[body], ware.rim, 0.8, 0.0);
    streak(s, half, -0.9, 0.3);
}

pub(super) fn knife(s: &mut Sketch<'_>, half: DVec2, ware: &Ware) {
    let blade = table(
        &[
            [2, -50],
            [50, -92],
            [90, -84],
            [100, -20],
            [93, 50],
            [2, 60],
        ],
        half,
    );
    let handle = table(
        &[
            [-100, -60],
            [-50, -70],
            [3, -55],
            [3, 58],
            [-50, 64],
            [-100, 60],
        ],
        half,
    );
    s.fills(&[blade], ware.rim, 0.8, 0.0);
    s.fills(&[handle], rgb(0x6a4a30), 0.8, 0.0);
    s.lines(
        &[vec![half * dvec2(0.1, -0.2), half * dvec2(0.86, -0.5)]],
        WHITE,
        0.9,
        0.9,
    );
}

pub(super) fn spoon(s: &mut Sketch<'_>, half: DVec2, ware: &Ware) {
    let shaft = mirrored(&SHAFT, half * dvec2(1.25, 0.55));
    s.fills(&[shaft], ware.rim, 0.8, 0.0);
    let bowl = ellipse(half * dvec2(0.7, 0.0), half * dvec2(0.3, 1.0), 20);
    s.fills(&[bowl], ware.rim, 0.8, 0.0);
    let hollow = ellipse(half * dvec2(0.72, 0.04), half * dvec2(0.22, 0.7), 16);
    s.fill(&hollow, deeper(ware.rim));
    s.rim_light(half * dvec2(0.7, 0.0), half * dvec2(0.24, 0.8), WHITE, 0.9);
    streak(s, half * dvec2(1.0, 0.5), -0.9, 0.3);
}

pub(super) fn chopsticks(s: &mut Sketch<'_>, half: DVec2, ware: &Ware) {
    let stick = |y: f64| {
        vec![
            half * dvec2(-1.0, y * 0.6 - 0.12),
            half * dvec2(1.0, y - 0.2),
            half * dvec2(1.0, y + 0.2),
            half * dvec2(-1.0, y * 0.6 + 0.12),
        ]
    };
    s.polygons(&[stick(-0.6), stick(0.6)], ware.rim, 0.8, 0.0);
    let line = |y: f64| vec![half * dvec2(-0.9, y * 0.62), half * dvec2(0.6, y * 0.92)];
    s.lines(
        &[line(-0.64), line(0.56)],
        crate::drawing::tone::lighter(ware.rim),
        0.8,
        0.9,
    );
}
