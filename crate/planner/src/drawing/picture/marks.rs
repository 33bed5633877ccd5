//! Marks of findings: where on the drawing to look. Each is told by its line,
//! not by its colour: a seam, dashes, bars, hatching, an arrow, long dashes, a
//! dotted ring, short dashes round a group, close hatching on a pale patch, a
//! slow wave for equal light; what exposures add by `adding`. All lie on a dark casing, so that they show on any ground and
//! in print.
use glam::DVec2;
use svg::node::element::Group;

use super::adding;
use super::edge::{filled, hatched, lined, looped, row};
use super::lettering::{UNDER, cased};
use crate::drawing::path::{PathData, short};
use crate::drawing::tone::{Tone, WHITE, rgb};
use crate::drawing::{PENCIL, Pen};
use crate::figure::outline::{ellipse, middle};
use crate::readings::Mark;
use crate::shape::rect;

const STITCH: Tone = rgb(0xff8a57);
const STOPS: Tone = rgb(0xf3d27a);
/// Height of the words of a mark, in weights of the pen.
pub(super) const WORDS: f64 = 11.0;
/// Height of a stop line's figure, in the same.
const STOP_WORDS: f64 = 13.0;
/// Breadth of a letter in shares of its height, and room on either side of a
/// figure in the same.
const LETTER: [f64; 2] = [0.5, 0.5];
/// Where along a stop line its figure may stand, in shares of it.
const SPOTS: [f64; 7] = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];
/// Length and height of a stop line's wave and the step it is drawn in, in
/// weights of the pen.
const WAVE: [f64; 3] = [34.0, 2.2, 3.0];
/// Runs of a lost edge that begin this near to where the last one ended, mm,
/// are one edge of which a share is lost: its dark line goes on between them.
const BRIDGE: f64 = 75.0;
/// From this length on, in weights of the pen, a run is sewn with cross-ticks;
/// shorter ones would look like stray crosses and stay plain dashes.
const SEWN: f64 = 30.0;

/// All marks, each a light line over a dark one.
pub(super) fn marks(marks: &[Mark], pen: &Pen) -> Group {
    let unit = pen.weight;
    let mut group = Group::new();
    let runs = marks.iter().filter_map(|mark| match mark {
        Mark::LostEdge { line } => Some(line.as_slice()),
        _ => None,
    });
    let runs: Vec<&[DVec2]> = runs.collect();
    if !runs.is_empty() {
        group = lost(group, &runs, unit);
    }
    group = adding::added(group, marks, unit);
    let mut figures: Vec<DVec2> = Vec::new();
    for mark in marks {
        match mark {
            Mark::LostEdge { .. } | Mark::Added { .. } => {}
            Mark::StopLine { line, label } => {
                group = stop_line(group, line, label, unit, &mut figures);
            }
            _ => group = one(group, mark, unit),
        }
    }
    group
}

/// Half of what a stop line's figure takes up along its line.
fn half_figure(label: &str, unit: f64) -> f64 {
    let letters = label.chars().count() as f64;
    (letters * LETTER[0] * 0.5 + LETTER[1]) * STOP_WORDS * unit
}

/// A stop line, with its figure where it is clear of those before it; where it
/// is nowhere, the lines beside it tell.
fn stop_line(
    group: Group,
    line: &[DVec2],
    label: &str,
    unit: f64,
    figures: &mut Vec<DVec2>,
) -> Group {
    let whole: f64 = line.windows(2).map(|p| p[0].distance(p[1])).sum();
    if whole < WAVE[0] * unit {
        return group;
    }
    let half = half_figure(label, unit);
    let clear = |at: DVec2| {
        let near = |other: &DVec2| {
            let off = (at - *other).abs();
            off.x < half * 2.0 && off.y < STOP_WORDS * unit * 1.2
        };
        !figures.iter().any(near)
    };
    let spots = SPOTS.iter().map(|share| share * whole);
    let fits = |at: &f64| (half..=whole - half).contains(at);
    let spot = spots.filter(|_| !label.is_empty()).filter(fits);
    let spot = spot
        .map(|at| (at, along(line, at)))
        .find(|(_, p)| clear(*p));
    let mut data = PathData::default();
    waved(
        &mut data,
        line,
        unit,
        spot.map(|(at, _)| [at - half, at + half]),
    );
    let under = lined(data.clone(), UNDER, unit * 3.0, None);
    let group = group
        .add(under.set("stroke-opacity", short(0.66)))
        .add(lined(data, STOPS, unit, None));
    let Some((_, at)) = spot else { return group };
    figures.push(at);
    let size = STOP_WORDS * unit;
    group.add(cased(label, at + DVec2::Y * (size * 0.34), size, PENCIL))
}

/// The place so far along a line.
fn along(line: &[DVec2], far: f64) -> DVec2 {
    let mut left = far;
    for pair in line.windows(2) {
        let long = pair[0].distance(pair[1]);
        if left <= long {
            return pair[0].lerp(pair[1], left / long.max(f64::MIN_POSITIVE));
        }
        left -= long;
    }
    line.last().copied().unwrap_or_default()
}

/// All lost edges: one dark line along each, the lost runs light on it.
fn lost(group: Group, runs: &[&[DVec2]], unit: f64) -> Group {
    let (mut dark, mut light) = (PathData::default(), PathData::default());
    let mut chain: Vec<DVec2> = Vec::new();
    for run in runs {
        let near = |end: &DVec2| run.first().is_some_and(|p| p.distance(*end) < BRIDGE);
        if !chain.last().is_some_and(near) {
            row(&mut dark, &chain);
            chain.clear();
        }
        chain.extend(*run);
        sewn(&mut light, run, unit);
    }
    row(&mut dark, &chain);
    let under = lined(dark, UNDER, unit * 3.2, None).set("stroke-opacity", short(0.66));
    group
        .add(under)
        .add(lined(light, STITCH, unit * 1.15, None))
}

/// A lost run: a line along it, with cross-ticks as if it needed sewing.
fn sewn(data: &mut PathData, run: &[DVec2], unit: f64) {
    row(data, run);
    let whole: f64 = run.windows(2).map(|p| p[0].distance(p[1])).sum();
    if whole < SEWN * unit {
        return;
    }
    let (step, half) = (7.6 * unit, 4.2 * unit);
    let mut left = step / 2.0;
    for pair in run.windows(2) {
        let along = pair[1] - pair[0];
        let (long, dir) = (along.length(), along.normalize_or_zero());
        while left < long {
            let at = pair[0] + dir * left;
            let across = dir.perp() * half;
            row(data, &[at - across, at + across]);
            left += step;
        }
        left -= long;
    }
}

/// A slow wave along a line, broken from one place along it to another.
fn waved(data: &mut PathData, line: &[DVec2], unit: f64, gap: Option<[f64; 2]>) {
    let mut run = Vec::new();
    let (mut done, mut next) = (0.0, 0.0);
    for pair in line.windows(2) {
        let (along, long) = (
            (pair[1] - pair[0]).normalize_or_zero(),
            pair[0].distance(pair[1]),
        );
        while next <= done + long {
            let on = pair[0] + along * (next - done);
            let swing = libm::sin(next / (WAVE[0] * unit) * core::f64::consts::TAU);
            if gap.is_some_and(|[from, to]| (from..to).contains(&next)) {
                row(data, &run);
                run.clear();
            } else {
                run.push(on + along.perp() * (swing * WAVE[1] * unit));
            }
            next += WAVE[2] * unit;
        }
        done += long;
    }
    row(data, &run);
}

fn one(group: Group, mark: &Mark, unit: f64) -> Group {
    if let Mark::Label { at, text } = mark {
        let at = *at + DVec2::Y * (unit * WORDS * 0.34);
        return group.add(cased(text, at, unit * WORDS, PENCIL));
    }
    if let Mark::Swatch {
        at,
        side,
        tone,
        label,
    } = mark
    {
        let corners = rect(*at, DVec2::splat(*side), 0.0, 0.0, 1.0);
        let [r, g, b] = tone.0.map(u32::from);
        let under = lined(looped(&corners), UNDER, unit * 3.0, None);
        let at = *at - DVec2::Y * (side * 0.5 + unit * WORDS * 0.6);
        return group
            .add(filled(&corners, rgb(r << 16 | g << 8 | b)))
            .add(under)
            .add(lined(looped(&corners), PENCIL, unit, None))
            .add(cased(label, at, unit * WORDS, PENCIL));
    }
    if let Mark::Glare { outline } = mark {
        return glare(group, outline, unit);
    }
    let (shape, dash, words) = drawn(mark, unit);
    let tone = match mark {
        Mark::Overrun { .. } => STITCH,
        _ => PENCIL,
    };
    let width = if dash.is_some() { 1.4 } else { 1.0 };
    let under = lined(shape.clone(), UNDER, unit * 3.0, None);
    let group = group
        .add(under.set("stroke-opacity", short(0.66)))
        .add(lined(shape, tone, unit * width, dash));
    match words {
        // Over hatching, and over food, only paper on a dark case can be read.
        Some((text, at)) if !text.is_empty() => group.add(cased(text, at, unit * WORDS, PENCIL)),
        _ => group,
    }
}

/// What is mirrored: a pale patch, close hatching and a line round it.
fn glare(group: Group, outline: &[DVec2], unit: f64) -> Group {
    let mut lines = looped(outline);
    hatched(&mut lines, outline, unit * 4.5);
    let under = lined(looped(outline), UNDER, unit * 3.0, None);
    group
        .add(filled(outline, WHITE).set("fill-opacity", short(0.42)))
        .add(under.set("stroke-opacity", short(0.66)))
        .add(lined(lines, WHITE, unit * 0.9, None))
}

/// A mark's lines, how they are dashed, its words and where they stand.
type Drawn<'a> = (PathData, Option<[f64; 2]>, Option<(&'a str, DVec2)>);

fn drawn(mark: &Mark, unit: f64) -> Drawn<'_> {
    let mut data = PathData::default();
    match mark {
        Mark::LostEdge { line } => {
            sewn(&mut data, line, unit);
            (data, None, None)
        }
        Mark::Gap { from, to, label } => {
            let across = (*to - *from).normalize_or(DVec2::X).perp() * unit;
            for end in [*from, *to] {
                row(&mut data, &[end - across * 7.0, end + across * 7.0]);
            }
            row(&mut data, &[*from, *to]);
            // Above the bars, whichever way they stand.
            let up = if across.y > 0.0 { -across } else { across };
            let at = (*from + *to) * 0.5 + up * 11.0;
            (data, None, Some((label, at)))
        }
        Mark::Overrun { outline, label } | Mark::Area { outline, label } => {
            data = looped(outline);
            hatched(&mut data, outline, unit * 7.0);
            let at = middle(outline) + DVec2::Y * (unit * WORDS * 0.34);
            (data, None, Some((label, at)))
        }
        Mark::Arrow { from, to } => {
            let back = (*from - *to).normalize_or(DVec2::X) * unit * 9.0;
            let wing = back.perp() * 0.5;
            row(&mut data, &[*from, *to]);
            row(&mut data, &[*to + back + wing, *to, *to + back - wing]);
            data.smooth(ellipse(*from, DVec2::splat(unit * 3.0), 10).into_iter());
            (data, None, None)
        }
        Mark::StopLine { line, .. } => (looped(line), None, None),
        Mark::Tip { from, to } => {
            row(&mut data, &[*from, *to]);
            data.smooth(ellipse(*to, DVec2::splat(unit * 3.0), 10).into_iter());
            (data, Some([0.1 * unit, 4.5 * unit]), None)
        }
        Mark::Triangle { corners } => {
            data = looped(corners);
            (data, Some([12.0 * unit, 5.0 * unit]), None)
        }
        Mark::Group { outline } => {
            data = looped(outline);
            (data, Some([2.0 * unit, 6.0 * unit]), None)
        }
        Mark::Glare { outline } | Mark::Added { outline, .. } => (looped(outline), None, None),
        Mark::Ghost { outline } => (looped(outline), Some([7.0 * unit, 3.5 * unit]), None),
        Mark::Label { at, text } => (data, None, Some((text, *at))),
        Mark::Swatch { at, label, .. } => (data, None, Some((label, *at))),
        Mark::Ring { at, radius } => {
            data.smooth(ellipse(*at, DVec2::splat(*radius), 28).into_iter());
            (data, Some([0.1 * unit, 4.5 * unit]), None)
        }
    }
}
