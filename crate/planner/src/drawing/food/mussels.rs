//! Mussels: blue-black shells, pearl inside, orange flesh, a little broth.

use core::f64::consts::{PI, TAU};

use glam::{DVec2, dvec2};

use super::{Plan, Tones, citrus, herbs};
use crate::drawing::food::spot::Spot;
use crate::drawing::sketch::{Rows, Sketch};
use crate::drawing::tone::rgb;
use crate::figure::blob::{round, sunflower};
use crate::figure::outline::{bearing, placed, polar};

/// Length of a shell, mm.
const SHELL: f64 = 74.0;
/// Layers in which open shells overlap.
const LAYERS: usize = 4;

/// One valve of unit length with its hinge at the origin, `breadth` wide and
/// bent aside by `bend` at its far end.
fn valve(breadth: f64, bend: f64) -> Vec<DVec2> {
    (0..13)
        .map(|i| {
            let t = TAU * f64::from(i) / 13.0;
            let x = (1.0 - libm::cos(t)) / 2.0;
            let swell = libm::pow(libm::sin(t / 2.0).abs(), 0.75);
            dvec2(x, breadth / 2.0 * libm::sin(t) * swell + bend * x * x)
        })
        .collect()
}

/// Shapes of one layer of open shells, by tone.
#[derive(Default)]
struct Layer {
    shells: Rows,
    sheen: Rows,
    pearl: Rows,
    flesh: Rows,
    plump: Rows,
    crease: Rows,
}

impl Layer {
    /// One open mussel, hinge at `hinge`, opening along `turn`.
    fn open(&mut self, s: &mut Sketch, hinge: DVec2, turn: f64, length: f64) {
        let gape = s.dice.between(0.30, 0.46);
        let (near, far) = (turn + gape * 0.35, turn - gape * 1.75);
        let put = |unit: &[DVec2], turn: f64| placed(unit, hinge, turn, DVec2::splat(length));
        let bowl = valve(0.5, 0.05);
        self.shells.push(put(&valve(0.46, -0.06), far));
        self.shells.push(put(&bowl, near));
        let back = [[0.22, -0.02], [0.5, -0.12], [0.82, -0.10]].map(DVec2::from);
        self.sheen.push(put(&back, far));
        let within = |kx: f64, dx: f64, ky: f64| -> Vec<DVec2> {
            bowl.iter()
                .map(|p| dvec2(p.x * kx + dx, p.y * ky))
                .collect()
        };
        self.pearl.push(put(&within(0.9, 0.06, 0.84), near));
        self.flesh.push(put(&within(0.74, 0.16, 0.72), near));
        self.plump.push(put(&within(0.46, 0.28, 0.34), near));
        let fold = [[0.3, 0.0], [0.46, 0.05], [0.62, 0.0], [0.76, 0.05]].map(DVec2::from);
        self.crease.push(put(&fold, near));
    }
}

pub(super) fn draw(s: &mut Sketch, plan: &Plan, tones: &Tones) {
    let Spot { at, half, turn } = plan.spots[0];
    let least = half.min_element();
    let length = SHELL.min(least * 0.66);
    s.fill(&plan.edge, tones.of(0, 0x191c22));
    let broth = round(&mut s.dice, at, half * 0.94, turn, 0.05, 26, 2.0);
    s.fill(&broth, rgb(0x7a5a34));
    let room = half - length * 0.44;
    let places = half.x * half.y * PI / (length * length * 0.33);
    let closed = (places * 0.62).clamp(3.0, 26.0) as usize;
    let open = (places * 0.62).clamp(3.0, 26.0) as usize;

    let mut shells = Rows::new();
    let mut sheen = Rows::new();
    let unit = valve(0.5, 0.07);
    for p in sunflower(&mut s.dice, room * 0.96, closed, 0.6) {
        let turn = s.dice.angle();
        let hinge = p - polar(turn) * length * 0.42;
        let put = |unit: &[DVec2]| placed(unit, hinge, turn, DVec2::splat(length * 0.9));
        shells.push(put(&unit));
        sheen.push(put(
            &[[0.2, -0.06], [0.45, -0.13], [0.75, -0.09]].map(DVec2::from)
        ));
        sheen.push(put(
            &[[0.35, 0.06], [0.6, 0.08], [0.8, 0.07]].map(DVec2::from)
        ));
    }
    s.fills(&shells, tones.of(0, 0x232f49), 0.75, 0.0);
    s.lines(&sheen, tones.of(0, 0x5a6d97), 0.7, 0.8);

    let mut layers: [Layer; LAYERS] = Default::default();
    for (i, p) in sunflower(&mut s.dice, room, open, 0.45)
        .into_iter()
        .enumerate()
    {
        // Round the rim the shells lie along it, and none pokes out.
        let side = if s.dice.chance(0.5) { 1.0 } else { -1.0 };
        let turn = bearing(p) + side * s.dice.between(1.1, 2.2);
        let hinge = p - polar(turn) * length * 0.45;
        let size = length * s.dice.between(0.9, 1.08);
        layers[i % LAYERS].open(s, hinge, turn, size);
    }
    for (i, layer) in layers.iter().enumerate() {
        s.fills(&layer.shells, tones.of(0, 0x202b44), 0.9, 0.0);
        s.lines(&layer.sheen, tones.of(0, 0x7388b4), 0.85, 0.9);
        s.fills(&layer.pearl, tones.of(2, 0xb7bfd0), 0.0, 0.0);
        let flesh = [0xec8a30, 0xf29a3c, 0xe57d28, 0xf0933a][i];
        s.fills(&layer.flesh, tones.of(1, flesh), 0.5, 0.0);
        s.fills(&layer.plump, tones.of(1, 0xf7b862), 0.0, 0.8);
        s.lines(&layer.crease, tones.of(1, 0x8f3d12), 0.75, 0.0);
    }
    herbs::picked(s, at, half * 0.8, 26, 7.0, [rgb(0x3f6b2c), rgb(0x7ea24a)]);
    if least > 80.0 {
        let wedge = |place: DVec2, turn| Spot {
            at: at + place * half,
            turn,
            half: dvec2(33.0, 17.0),
        };
        let pair = [
            wedge(dvec2(-0.52, 0.36), -0.42),
            wedge(dvec2(0.46, -0.42), 0.66),
        ];
        citrus::wedges(s, &pair, &Tones::plain(super::Food::LemonWedges));
    }
}
