//! Glass: the rim, what is in it, the window mirrored, and the light it lets
//! through onto the table.

use glam::{DVec2, dvec2};

use super::Ware;
use crate::drawing::sketch::Sketch;
use crate::drawing::tone::{WHITE, deeper, lighter, mixed};
use crate::figure::blob::round;
use crate::figure::outline::{arc, bearing, ellipse};

/// Opacity of bare glass.
const BARE: f64 = 0.45;

/// The coloured patch of light beyond a glass, away from the window.
fn caustic(s: &mut Sketch<'_>, half: DVec2, tone: [u8; 3]) {
    let away = -s.lit;
    let patch = round(
        &mut s.dice,
        away * half * 1.15,
        half * dvec2(0.62, 0.44),
        bearing(away),
        0.08,
        14,
        2.0,
    );
    s.wash(&patch, mixed(tone, WHITE, 0.25), 0.4);
}

/// The window seen in the surface.
fn mirrored(s: &mut Sketch<'_>, half: DVec2, opacity: f64) {
    let pane = [
        dvec2(-0.52, -0.14),
        dvec2(-0.28, -0.48),
        dvec2(-0.06, -0.36),
        dvec2(-0.32, -0.02),
    ];
    // The pane is designed for a window at ten o'clock and turns with it.
    let turn = bearing(s.lit) - bearing(dvec2(-0.866, -0.5));
    let pane: Vec<DVec2> = pane
        .iter()
        .map(|p| crate::figure::outline::polar(turn).rotate(*p) * half)
        .collect();
    s.polygons(&[pane], WHITE, 0.0, opacity);
}

/// A tumbler or stemmed glass from above.
pub(super) fn glass(s: &mut Sketch<'_>, half: DVec2, ware: &Ware) {
    let liquid = ware.well.unwrap_or([0xcf, 0xdc, 0xdc]);
    caustic(s, half, lighter(liquid));
    let edge = round(&mut s.dice, DVec2::ZERO, half, 0.0, 0.008, 30, 2.0);
    s.wash(&edge, ware.rim, BARE);
    let top = round(&mut s.dice, DVec2::ZERO, half * 0.83, 0.0, 0.012, 26, 2.0);
    s.fill(&top, liquid);
    let depth = -s.lit * half * 0.14;
    let deep = round(&mut s.dice, depth, half * 0.58, 0.0, 0.04, 20, 2.0);
    s.wash(&deep, lighter(liquid), 0.8);
    let far = s.facing(DVec2::ZERO, half * 0.78, 2.5, 3.7);
    s.lines(&[far], lighter(lighter(liquid)), 1.2, 0.9);
    mirrored(s, half, 0.6);
    s.ink(&edge, 1.0);
    s.rim_light(DVec2::ZERO, half * 0.93, WHITE, 1.4);
}

/// A carafe or bottle standing upright: shoulder, oil below, neck and mouth.
pub(super) fn carafe(s: &mut Sketch<'_>, half: DVec2, ware: &Ware) {
    let inside = ware.well.unwrap_or(ware.rim);
    caustic(s, half, lighter(inside));
    let edge = round(&mut s.dice, DVec2::ZERO, half, 0.0, 0.006, 34, 2.0);
    s.wash(&edge, mixed(inside, WHITE, 0.7), 0.75);
    let oil = round(&mut s.dice, DVec2::ZERO, half * 0.88, 0.0, 0.012, 30, 2.0);
    s.wash(&oil, inside, 0.95);
    let bright = round(
        &mut s.dice,
        -s.lit * half * 0.2,
        half * 0.6,
        0.0,
        0.05,
        22,
        2.0,
    );
    s.wash(&bright, lighter(inside), 0.9);
    let spot = round(
        &mut s.dice,
        -s.lit * half * 0.36,
        half * 0.3,
        0.0,
        0.08,
        16,
        2.0,
    );
    s.wash(&spot, lighter(lighter(inside)), 0.8);
    let shoulder = arc(DVec2::ZERO, half * 0.62, 0.0, core::f64::consts::TAU, 20);
    s.lines(&[shoulder], deeper(inside), 0.6, 0.6);
    s.ink(&edge, 1.05);
    let neck = ellipse(DVec2::ZERO, half * 0.36, 20);
    s.fills(&[neck], mixed(inside, WHITE, 0.75), 0.9, 0.0);
    let mouth = ellipse(DVec2::ZERO, half * 0.21, 16);
    s.fill(&mouth, deeper(deeper(inside)));
    s.rim_light(DVec2::ZERO, half * 0.9, WHITE, 1.5);
    s.rim_light(DVec2::ZERO, half * 0.31, WHITE, 1.0);
}
