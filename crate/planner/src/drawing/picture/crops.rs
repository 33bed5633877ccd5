//! The crops over the picture, each named on a strip of tape.
use glam::{DVec2, dvec2};
use svg::node::element::Group;

use super::edge::{filled, lined, looped, row};
use super::lettering::centred;
use crate::drawing::path::{PathData, short};
use crate::drawing::tone::{Tone, hex, rgb};
use crate::drawing::{INK, Pen};
use crate::figure::outline::bounds;
use crate::layout::{Crop, Layout};
use crate::scene::crop_outline;
use crate::words::say;

/// Crops are drawn in grease pencil on the picture.
const GREASE: Tone = rgb(0xff6f4d);
const FOLD: Tone = rgb(0xcfe3ee);
const TAPE: Tone = rgb(0xf0e2b6);

/// Every crop of the layout.
pub(super) fn crops(layout: &Layout, pen: &Pen) -> Group {
    let mut group = Group::new();
    for crop in &layout.crops {
        group = group.add(one(layout, crop, pen.weight));
    }
    group
}

fn one(layout: &Layout, crop: &Crop, unit: f64) -> Group {
    let corners = crop_outline(layout, crop);
    let (low, high) = bounds(&corners);
    let dash = Some([14.0 * unit, 7.0 * unit]);
    let mut group = Group::new().add(lined(looped(&corners), GREASE, unit * 1.2, dash));
    let at = dvec2(high.x - unit * 40.0, high.y);
    let plain = say("drawing-crop", &[]);
    let text = if crop.name.is_empty() {
        &plain
    } else {
        &crop.name
    };
    let half = dvec2(text.chars().count() as f64 * 3.2 + 9.0, 9.0) * unit;
    let tape = [
        at - half,
        at + dvec2(half.x, -half.y),
        at + half,
        at + dvec2(-half.x, half.y),
    ];
    let name = centred(text, at + dvec2(0.0, unit * 4.0), unit * 12.0);
    group = group
        .add(filled(&tape, TAPE))
        .add(name.set("fill", hex(INK)));
    if crop.gutter > 0 {
        group = group.add(fold((low + high) * 0.5, low.y, high.y, unit));
    }
    group
}

/// The fold of a double page: long and short dashes.
fn fold(centre: DVec2, from: f64, to: f64, unit: f64) -> svg::node::element::Path {
    let mut data = PathData::default();
    row(&mut data, &[dvec2(centre.x, from), dvec2(centre.x, to)]);
    let dash = [12.0, 3.0, 1.5, 3.0].map(|n| short(n * unit)).join(" ");
    lined(data, FOLD, unit, None).set("stroke-dasharray", dash)
}
