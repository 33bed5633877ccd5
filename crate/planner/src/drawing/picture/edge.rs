//! Outlines as nodes: filled, inked, drawn as a line.
use glam::DVec2;
use svg::node::element::Path;

use crate::drawing::Pen;
use crate::drawing::path::PathData;
use crate::drawing::ribbon;
use crate::drawing::sketch::{Look, path_node};
use crate::drawing::tone::{INK, Tone};

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
