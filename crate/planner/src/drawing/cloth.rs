//! Linen: weave, hem, folds, and the side of each fold that turns away.

use glam::{DVec2, dvec2};
use svg::node::element::Group;

use super::pen::Pen;
use super::ribbon;
use super::sketch::{Look, Rows, Sketch};
use super::tone::{Tone, deeper, lighter, mixed};
use crate::figure::blob::ruled;
use crate::figure::cloth::{is_strip, plan, rays};
use crate::figure::dice::{Dice, EDGE, INSIDE};
use crate::figure::form::Form;
use crate::figure::outline::{inset, resampled};
use crate::layout::{LinenKind, LinenState};

/// The tones of one cloth.
struct Tones {
    flat: Tone,
    deep: Tone,
    pale: Tone,
}

/// A cloth in mm about its own centre, already turned.
#[must_use]
pub fn cloth(kind: LinenKind, state: LinenState, form: &Form, tone: Tone, pen: &Pen) -> Group {
    let form = form.sound();
    let (edge, frame) = plan(state, &form);
    let mut s = Sketch::new(pen, Dice::new(form.seed, INSIDE), frame);
    let tones = Tones {
        flat: tone,
        deep: mixed(deeper(tone), [0x8e, 0x7a, 0x52], 0.2),
        pale: lighter(tone),
    };
    contact(&mut s, &edge, state);
    let half = form.half;
    match state {
        LinenState::Flat => flat(&mut s, &edge, half, kind, &tones),
        LinenState::Folded => folded(&mut s, &edge, half, &tones),
        LinenState::Thrown if !is_strip(half) => thrown(&mut s, &edge, half, form.seed, &tones),
        LinenState::Bunched | LinenState::Thrown => waved(&mut s, &edge, half, state, &tones),
    }
    s.ink(&edge, if state == LinenState::Flat { 1.1 } else { 1.2 });
    s.done()
}

/// The thin line of shade where cloth lies on the table.
fn contact(s: &mut Sketch<'_>, edge: &[DVec2], state: LinenState) {
    let lift = match state {
        LinenState::Flat => 3.0,
        LinenState::Folded => 9.0,
        LinenState::Bunched | LinenState::Thrown => 7.0,
    };
    for (share, opacity) in [(1.0, 0.16), (0.5, 0.22)] {
        let away = -s.lit * (lift * share);
        let shade: Vec<DVec2> = edge.iter().map(|p| *p + away).collect();
        s.wash(&shade, super::tone::SHADE, opacity);
    }
}

/// Threads and slubs that show here and there, dark and light, in rows so that
/// none of the cloth stays bare.
fn weave(s: &mut Sketch<'_>, half: DVec2, tones: &Tones) {
    let (mut dark, mut light) = (Rows::new(), Rows::new());
    let upright = half.y > half.x;
    let (long, short) = (half.max_element(), half.min_element());
    let put = |x: f64, y: f64| if upright { dvec2(y, x) } else { dvec2(x, y) };
    let rows = s.some((short / 9.0).clamp(4.0, 30.0) as usize);
    let step = (long / 3.2).clamp(30.0, 260.0);
    for i in 0..rows {
        let y = short * (2.0 * (i as f64 + 0.5) / rows as f64 - 1.0) * 0.96;
        let mut x = -long + s.dice.between(4.0, step);
        while x < long * 0.97 {
            let end = (x + step * s.dice.between(0.12, 0.55)).min(long - 4.0);
            let row = vec![put(x, y), put(end, y + s.dice.about(1.4))];
            if s.dice.chance(0.55) {
                &mut dark
            } else {
                &mut light
            }
            .push(row);
            x = end + step * s.dice.between(0.35, 1.6);
        }
    }
    for i in 0..s.some((long / 11.0).clamp(5.0, 90.0) as usize) {
        let (x, y) = (
            long * s.dice.about(0.96),
            short * s.dice.between(-0.95, 0.6),
        );
        let run = short * s.dice.between(0.08, 0.34);
        let row = vec![put(x, y), put(x + s.dice.about(1.6), y + run)];
        if i % 2 == 0 { &mut dark } else { &mut light }.push(row);
    }
    s.lines(&dark, tones.deep, 0.5, 0.7);
    s.lines(&light, tones.pale, 0.6, 0.85);
}

/// Stitches a finger's breadth inside two sides or all four.
fn hem(s: &mut Sketch<'_>, rows: &[Vec<DVec2>], tones: &Tones) {
    s.dashes(rows, deeper(tones.deep), 0.7, 0.8, Some([3.4, 2.4]));
}

/// A pressed crease from side to side: a turned side, a dark and a light line.
fn creases(s: &mut Sketch<'_>, half: DVec2, places: &[DVec2], tones: &Tones) {
    let (mut bands, mut dark, mut light) = (Rows::new(), Rows::new(), Rows::new());
    for &place in places {
        // One of the two coordinates is where it lies, the other is open.
        let lies_x = place.y == 0.0;
        let (a, b, step) = if lies_x {
            (
                dvec2(place.x, -half.y + 2.0),
                dvec2(place.x + 3.0, half.y - 2.0),
                dvec2(1.0, 0.0),
            )
        } else {
            (
                dvec2(-half.x + 2.0, place.y),
                dvec2(half.x - 2.0, place.y + 3.0),
                dvec2(0.0, 1.0),
            )
        };
        let wide = 22.0_f64.min(half.min_element() * 0.16);
        bands.push(vec![a, a + step * wide, b + step * (wide * 0.8), b]);
        let line = ruled(&mut s.dice, a, b, 8, 1.6);
        light.push(line.iter().map(|p| *p - step * 4.0).collect());
        dark.push(line);
    }
    s.polygons(&bands, tones.deep, 0.0, 0.34);
    s.lines(&dark, deeper(tones.deep), 0.7, 0.8);
    s.lines(&light, lighter(tones.pale), 0.8, 0.9);
}

fn flat(s: &mut Sketch<'_>, edge: &[DVec2], half: DVec2, kind: LinenKind, tones: &Tones) {
    if kind == LinenKind::Runner {
        fringe(s, half, tones);
    }
    s.polygons(&[edge.to_vec()], tones.flat, 0.0, 0.0);
    weave(s, half, tones);
    let long_x = half.x >= half.y;
    let along = |t: f64| {
        if long_x {
            dvec2(half.x * t, 0.0)
        } else {
            dvec2(0.0, half.y * t)
        }
    };
    let places: Vec<DVec2> = match kind {
        LinenKind::Mat => Vec::new(),
        LinenKind::Napkin => vec![along(0.02)],
        _ => [-0.72, -0.36, 0.06, 0.42, 0.76].map(along).to_vec(),
    };
    creases(s, half, &places, tones);
    let inner = half - DVec2::splat((half.min_element() * 0.09).min(13.0));
    let corner = |x: f64, y: f64| inner * dvec2(x, y);
    let sides: Rows = [
        [(-1.0, -1.0), (1.0, -1.0)],
        [(1.0, 1.0), (-1.0, 1.0)],
        [(1.0, -1.0), (1.0, 1.0)],
        [(-1.0, 1.0), (-1.0, -1.0)],
    ]
    .iter()
    .map(|side| side.iter().map(|&(x, y)| corner(x, y)).collect())
    .collect();
    // A runner's short ends are fringed instead.
    let ends = match (kind, long_x) {
        (LinenKind::Runner, true) => 0..2,
        (LinenKind::Runner, false) => 2..4,
        _ => 0..4,
    };
    hem(s, &sides[ends], tones);
}

/// Threads left long at the two short ends.
fn fringe(s: &mut Sketch<'_>, half: DVec2, tones: &Tones) {
    let short = half.min_element();
    let count = s.some((short / 6.5) as usize);
    let mut rows = Rows::new();
    for end in [-1.0, 1.0] {
        for i in 0..count {
            let v = short * (2.0 * (i as f64 + 0.5) / count as f64 - 1.0);
            let reach = s.dice.between(10.0, 22.0);
            let (long, slip) = (half.max_element() - 2.0, s.dice.about(4.0));
            let row = [dvec2(end * long, v), dvec2(end * (long + reach), v + slip)];
            rows.push(if half.x >= half.y {
                row.to_vec()
            } else {
                row.map(|p| dvec2(p.y, p.x)).to_vec()
            });
        }
    }
    s.lines(&rows, tones.deep, 0.9, 0.0);
}

fn folded(s: &mut Sketch<'_>, edge: &[DVec2], half: DVec2, tones: &Tones) {
    // The layers below look out on the side away from the window.
    for step in [1.0, 0.5] {
        let below: Vec<DVec2> = edge.iter().map(|p| *p - s.lit * (7.0 * step)).collect();
        s.fills(&[below], tones.deep, 0.7, 0.0);
    }
    s.fill(edge, tones.flat);
    weave(s, half * 0.97, tones);
    let upright = half.y > half.x;
    let place = if upright {
        dvec2(0.0, half.y * 0.02)
    } else {
        dvec2(half.x * 0.02, 0.0)
    };
    creases(s, half * 0.985, &[place], tones);
    let away = if s.lit.y < 0.0 { 1.0 } else { -1.0 };
    let side = |x: f64| half * dvec2(x, 0.84 * away);
    hem(s, &[vec![side(-0.95), side(0.95)]], tones);
    // Along the fold the cloth is round and catches the light.
    let roll = |x: f64| half * dvec2(x, -0.9 * away);
    let bright = ruled(&mut s.dice, roll(-0.93), roll(0.93), 8, 1.0);
    s.lines(&[bright], lighter(tones.pale), 1.3, 0.8);
}

/// A napkin dropped: folds fan out from a ridge to its tips and bays.
fn thrown(s: &mut Sketch<'_>, edge: &[DVec2], half: DVec2, seed: u32, tones: &Tones) {
    s.fill(edge, tones.flat);
    let ridge = [dvec2(-0.1, -0.06) * half, dvec2(0.16, 0.06) * half];
    let (mut dark, mut light, mut lines) = (Rows::new(), Rows::new(), Rows::new());
    let deep = deeper(deeper(tones.flat));
    for (i, ray) in rays(&mut Dice::new(seed, EDGE)).iter().enumerate() {
        let end = *ray * half * 0.94;
        let root = if end.x < 0.0 { ridge[0] } else { ridge[1] };
        let start = root.lerp(end, 0.12);
        let middle = root.lerp(end, 0.55) + end.perp() * 0.07;
        let across = (end - root).perp().normalize_or_zero() * half.min_element() * 0.1;
        // A side of a fold is light where it looks at the window.
        let facing = across.dot(s.lit) > 0.0;
        let (near, far) = if facing == (i % 2 == 0) {
            (0.5, 1.0)
        } else {
            (-0.5, -1.0)
        };
        let wedge = vec![
            start,
            middle + across * near,
            end + across * far,
            end - across * 0.4,
        ];
        if i % 2 == 0 { &mut light } else { &mut dark }.push(wedge);
        if i % 2 == 0 || i == 3 || i == 9 {
            lines.push(vec![start, middle, end]);
        }
    }
    s.polygons(&dark, deep, 0.0, 0.6);
    s.polygons(&light, lighter(tones.pale), 0.0, 0.45);
    lines.push(vec![ridge[0], DVec2::ZERO, ridge[1]]);
    s.brush(&lines, 1.2, mixed(deep, super::tone::INK, 0.4), [0.3, 0.2]);
    let mut stitched = inset(edge, DVec2::ZERO, DVec2::splat(0.93), DVec2::ZERO);
    stitched.push(stitched[0]);
    s.dashes(
        &[stitched],
        lighter(lighter(tones.pale)),
        0.7,
        0.75,
        Some([3.0, 2.2]),
    );
}

/// Cloth in waves: every fold has a lit and a turned side.
fn waved(s: &mut Sketch<'_>, edge: &[DVec2], half: DVec2, state: LinenState, tones: &Tones) {
    s.fill(edge, tones.flat);
    let still = if state == LinenState::Bunched {
        0.72
    } else {
        0.5
    };
    weave(
        s,
        half * dvec2(
            if half.x > half.y { 0.94 } else { still },
            if half.x > half.y { still } else { 0.94 },
        ),
        tones,
    );
    let upright = half.y > half.x;
    let count = if state == LinenState::Bunched { 9 } else { 6 };
    let (mut dark, mut light, mut lines) = (Rows::new(), Rows::new(), Rows::new());
    for i in 0..count {
        let at = -0.86 + 1.72 * (f64::from(i) + 0.5) / f64::from(count) + s.dice.about(0.05);
        let most = if state == LinenState::Bunched {
            0.66
        } else {
            0.3
        };
        let (from, to) = (
            -s.dice.between(0.4, 1.0) * most,
            s.dice.between(0.4, 1.0) * most,
        );
        let lean = s.dice.about(0.06);
        let wide = s.dice.between(0.025, 0.05);
        let place = |x: f64, y: f64| half * if upright { dvec2(y, x) } else { dvec2(x, y) };
        let spine = |shift: f64| {
            vec![
                place(at, from),
                place(at + lean + shift, (from + to) * 0.5),
                place(at + lean * 0.4, to),
            ]
        };
        let fold = spine(0.0);
        let wedge = |shift: f64| {
            let mut loop_ = fold.clone();
            loop_.push(place(at + lean + shift, (from + to) * 0.5));
            loop_
        };
        dark.push(wedge(wide));
        light.push(wedge(-wide));
        lines.push(fold);
    }
    s.fills(&dark, tones.deep, 0.0, 0.8);
    s.fills(&light, lighter(tones.pale), 0.0, 0.7);
    s.brush(&lines, 1.0, deeper(deeper(tones.deep)), [0.2, 0.2]);
    let shade = ribbon_shade(s, edge);
    s.put(
        shade,
        &Look {
            fill: Some(tones.deep),
            opacity: 0.6,
            even_odd: true,
            ..Look::default()
        },
    );
}

/// The edge that turns away from the window.
fn ribbon_shade(s: &Sketch<'_>, edge: &[DVec2]) -> super::path::PathData {
    let turned: Vec<DVec2> = resampled(edge, 60, true)
        .iter()
        .map(|&p| s.on_page(p))
        .collect();
    ribbon::shade(&turned, s.pen.fall, 9.0)
}
