//! A linen with its stitched hem and its folds.
use glam::DVec2;
use svg::node::element::Group;

use super::edge::{filled, inked, lined, looped, row};
use crate::drawing::Pen;
use crate::drawing::outline::middle;
use crate::drawing::path::PathData;
use crate::layout::Linen;
use crate::scene::linen_outline;

/// How far the hem's stitches lie inside the edge, mm.
const HEM: f64 = 9.0;

/// One linen.
pub(super) fn cloth(linen: &Linen, pen: &Pen) -> Group {
    let edge = linen_outline(linen);
    let tone = linen.colour.0;
    let centre = middle(&edge);
    let span = edge.iter().map(|p| p.distance(centre)).fold(1.0, f64::max);
    let hem: Vec<DVec2> = edge
        .iter()
        .map(|p| centre + (*p - centre) * (1.0 - HEM / span))
        .collect();
    let deep = tone.map(|c| (f64::from(c) * 0.82) as u8);
    let unit = pen.weight;
    let stitches = Some([unit * 4.0, unit * 2.5]);
    let mut group =
        Group::new()
            .add(filled(&edge, tone))
            .add(lined(looped(&hem), deep, unit * 0.7, stitches));
    if let [a, b, c, d] = edge[..] {
        let mut folds = PathData::default();
        for t in [0.26, 0.5, 0.74] {
            row(&mut folds, &[a.lerp(b, t), d.lerp(c, t)]);
        }
        group = group.add(lined(folds, deep, unit * 0.8, None));
    }
    group.add(inked(&edge, pen))
}
