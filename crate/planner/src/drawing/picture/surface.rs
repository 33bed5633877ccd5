//! The table or board, with its joints and grain.
use glam::{DVec2, dvec2};
use svg::node::element::Group;

use super::edge::{filled, inked, lined};
use crate::drawing::Pen;
use crate::drawing::path::PathData;
use crate::drawing::tone::Tone;
use crate::layout::{Layout, Table};
use crate::shape::{CHORD_ERROR, table_outline};

/// Surfaces made of planks, by catalogue id.
const WOODEN: [&str; 5] = [
    "charcoal-planks",
    "oak",
    "light-oak",
    "walnut",
    "painted-board",
];
/// Breadth of a plank, mm (our choice).
const PLANK: f64 = 190.0;

/// The surface everything lies on.
pub(super) fn surface(layout: &Layout, pen: &Pen) -> Group {
    let table = &layout.table;
    let edge = table_outline(table, CHORD_ERROR);
    let tone = table.surface.colour.0;
    let mut group = Group::new().add(filled(&edge, tone));
    if WOODEN.contains(&table.surface.prop.as_str()) {
        group = group.add(planks(table, tone, pen));
    }
    group.add(inked(&edge, pen))
}

/// Joints and grain of planks, bowed a little as drawn by hand.
fn planks(table: &Table, tone: Tone, pen: &Pen) -> Group {
    let [width, depth] = [table.width, table.depth].map(f64::from);
    let (mut joints, mut grain) = (PathData::default(), PathData::default());
    let bowed = |data: &mut PathData, from: DVec2, to: DVec2, bow: f64| {
        data.move_to(from);
        data.quad_to((from + to) * 0.5 + dvec2(0.0, bow), to);
    };
    let rows = (depth / PLANK).ceil() as usize;
    for row in 0..rows {
        let y = row as f64 * PLANK;
        if row > 0 {
            let bow = 2.0 * libm::sin(row as f64 * 1.7);
            bowed(&mut joints, dvec2(0.0, y), dvec2(width, y), bow);
        }
        for n in 0..pen.some(6) {
            let seed = (row * 7 + n * 3) as f64;
            let from = width * (0.5 + 0.48 * libm::sin(seed * 2.3));
            let at = (y + PLANK * (0.15 + 0.14 * n as f64)).min(depth - 4.0);
            let long = 120.0 + 140.0 * libm::fabs(libm::sin(seed));
            let to = (from + long).min(width - 8.0);
            bowed(&mut grain, dvec2(from, at), dvec2(to, at), 3.0);
        }
    }
    let shade = |by: f64| tone.map(|c| (f64::from(c) * by).min(255.0) as u8);
    Group::new()
        .add(lined(grain, shade(1.28), pen.weight * 0.5, None))
        .add(lined(joints, shade(0.55), pen.weight * 0.9, None))
}
