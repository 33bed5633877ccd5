//! Outlines as nodes: filled, inked, drawn as a line.
use glam::DVec2;
use svg::node::element::Path;

use crate::drawing::Pen;
use crate::drawing::path::PathData;
use crate::drawing::ribbon;
use crate::drawing::sketch::{Look, path_node};
use crate::drawing::tone::{INK, Tone};
use crate::figure::outline::bounds;
use crate::order;

/// A loop with straight sides.
pub(super) fn looped(points: &[DVec2]) -> PathData {
    let mut data = PathData::default();
    data.polygon(points.iter().copied());
    data
}

/// Adds a line with straight pieces.
pub(super) fn row(data: &mut PathData, points: &[DVec2]) {
    data.straight(points.iter().copied());
}

/// A filled loop.
pub(super) fn filled(points: &[DVec2], tone: Tone) -> Path {
    let look = Look {
        fill: Some(tone),
        ..Look::default()
    };
    path_node(looped(points), &look)
}

/// The ink round a loop: it swells away from the window and thins towards it.
pub(super) fn inked(points: &[DVec2], pen: &Pen) -> Path {
    let look = Look {
        fill: Some(INK),
        even_odd: true,
        ..Look::default()
    };
    path_node(ribbon::cornered(points, pen.weight, pen.fall), &look)
}

/// An open drawing in one line, `width` mm wide.
pub(super) fn lined(data: PathData, tone: Tone, width: f64, dash: Option<[f64; 2]>) -> Path {
    let look = Look {
        stroke: Some((tone, width)),
        dash,
        ..Look::default()
    };
    path_node(data, &look)
}

/// Adds slanting lines inside a loop, `step` mm apart.
pub(super) fn hatched(data: &mut PathData, loop_: &[DVec2], step: f64) {
    let half = core::f64::consts::FRAC_1_SQRT_2;
    hatched_along(data, &[loop_], step, DVec2::new(half, -half));
}

/// Adds lines along a direction inside loops and outside their holes, `step` mm
/// apart.
pub(super) fn hatched_along(data: &mut PathData, loops: &[&[DVec2]], step: f64, back: DVec2) {
    // Turned so that the lines lie level.
    let turn = DVec2::new(back.x, -back.y);
    let turned = loops
        .iter()
        .map(|ring| ring.iter().map(|p| turn.rotate(*p)).collect());
    let turned: Vec<Vec<DVec2>> = turned.collect();
    let (low, high) = bounds(&turned.concat());
    let rows = ((high.y - low.y) / step).floor().clamp(0.0, 400.0);
    for n in 1..=rows as i32 {
        let y = low.y + (high.y - low.y) * f64::from(n) / (rows + 1.0);
        let mut cuts: Vec<f64> = Vec::new();
        for ring in &turned {
            for (i, &a) in ring.iter().enumerate() {
                let b = ring[(i + 1) % ring.len()];
                if (a.y <= y) != (b.y <= y) {
                    cuts.push(a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y));
                }
            }
        }
        order::sort(&mut cuts, f64::total_cmp);
        for pair in cuts.chunks_exact(2) {
            let ends = [DVec2::new(pair[0], y), DVec2::new(pair[1], y)];
            row(data, &ends.map(|p| back.rotate(p)));
        }
    }
}
