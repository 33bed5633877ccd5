//! Lines of equal light on the table, in half stops from the hero's, or
//! from the middle of a picture without one.
use glam::DVec2;

use super::super::finding::Mark;
use super::super::study::Study;
use super::{counted_from, dishes};
use crate::words::{Arg, fixed, say};

/// Cells across the picture's longer side.
const CELLS: usize = 28;
/// A line for every so many stops.
const STEP: f64 = 0.5;
/// No more lines than this on either side of the hero's: a light on the table
/// itself would cover it with them.
const MOST: i32 = 12;

/// Stop lines over the picture; cards count, dishes throw no shadow on them.
/// They are left out while something is dragged.
pub(in super::super) fn stop_lines(study: &Study<'_>) -> Vec<Mark> {
    if !study.tells_all() {
        return Vec::new();
    }
    let (reference, hero) = counted_from(study, &dishes(study));
    let (picture, lit) = (study.picture(), study.lit());
    let cell = picture.size.max_element() / CELLS as f64;
    let count = (picture.size / cell).ceil().max(DVec2::ONE);
    let (nx, ny) = (count.x as usize, count.y as usize);
    let step = picture.size / count;
    let at = |x: usize, y: usize| picture.on_table(step * DVec2::new(x as f64, y as f64));
    let mut field = Vec::with_capacity((nx + 1) * (ny + 1));
    for y in 0..=ny {
        for x in 0..=nx {
            let light = lit.open(at(x, y).extend(0.0));
            field.push(crate::light::stops(light, reference));
        }
    }
    let value = |x: usize, y: usize| field[y * (nx + 1) + x];
    let known = field.iter().flatten();
    let (low, high) = known.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| {
        (l.min(*v), h.max(*v))
    });
    let mut marks = Vec::new();
    for n in -MOST..=MOST {
        let level = f64::from(n) * STEP;
        if level <= low || level >= high {
            continue;
        }
        let mut pieces = Vec::new();
        for y in 0..ny {
            for x in 0..nx {
                let corners = [(x, y), (x + 1, y), (x + 1, y + 1), (x, y + 1)];
                cross(
                    &corners.map(|(x, y)| (at(x, y), value(x, y))),
                    level,
                    &mut pieces,
                );
            }
        }
        let label = if n == 0 {
            say(
                if hero.is_some() {
                    "stops-hero"
                } else {
                    "stops-middle"
                },
                &[],
            )
        } else {
            let figure = fixed(level.abs(), u32::from(n % 2 != 0));
            let id = if n > 0 { "stops-over" } else { "stops-under" };
            say(id, &[("stops", Arg::Text(figure))])
        };
        // The longest line of a level bears its figure.
        let mut lines = joined(pieces);
        crate::order::sort(&mut lines, |a, b| b.len().cmp(&a.len()));
        for (k, line) in lines.into_iter().enumerate() {
            let label = if k == 0 { label.clone() } else { String::new() };
            marks.push(Mark::StopLine { line, label });
        }
    }
    marks
}

/// Where a level runs through a cell (marching squares; a saddle is cut by two
/// pieces as its corners come).
fn cross(corners: &[(DVec2, Option<f64>); 4], level: f64, out: &mut Vec<[DVec2; 2]>) {
    let mut ends: Vec<DVec2> = Vec::new();
    for (n, (from, a)) in corners.iter().enumerate() {
        let (to, b) = corners[(n + 1) % 4];
        let (Some(a), Some(b)) = (*a, b) else {
            return;
        };
        if (a < level) != (b < level) {
            ends.push(*from + (to - *from) * ((level - a) / (b - a)));
        }
    }
    out.extend(ends.chunks_exact(2).map(|pair| [pair[0], pair[1]]));
}

/// Pieces put end to end.
fn joined(mut pieces: Vec<[DVec2; 2]>) -> Vec<Vec<DVec2>> {
    const SAME: f64 = 1e-6;
    let mut lines = Vec::new();
    while let Some(first) = pieces.pop() {
        let mut line = first.to_vec();
        for _ in 0..2 {
            while let Some(end) = line.last().copied() {
                let meets = |p: &[DVec2; 2]| p.iter().any(|q| q.distance(end) < SAME);
                let Some(n) = pieces.iter().position(meets) else {
                    break;
                };
                let [a, b] = pieces.swap_remove(n);
                line.push(if a.distance(end) < SAME { b } else { a });
            }
            line.reverse();
        }
        lines.push(line);
    }
    lines
}
