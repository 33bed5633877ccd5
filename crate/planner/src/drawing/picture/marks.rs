//! Marks of findings: where on the drawing to look.
use glam::DVec2;
use svg::node::element::Group;

use super::edge::{lined, looped, row};
use crate::drawing::Pen;
use crate::drawing::path::PathData;
use crate::drawing::tone::{Tone, rgb};
use crate::figure::outline::ellipse;
use crate::readings::Mark;

const STITCH: Tone = rgb(0xff8a57);
/// What a mark is lined with below, so that it shows on any ground.
const UNDER: Tone = rgb(0x1a1613);

/// All marks, each a light line over a dark one.
pub(super) fn marks(marks: &[Mark], pen: &Pen) -> Group {
    let mut group = Group::new();
    for mark in marks {
        let under = lined(shape(mark, pen.weight), UNDER, pen.weight * 3.0, None);
        group = group.add(under.set("stroke-opacity", 0.6)).add(lined(
            shape(mark, pen.weight),
            STITCH,
            pen.weight,
            None,
        ));
    }
    group
}

fn shape(mark: &Mark, unit: f64) -> PathData {
    let mut data = PathData::default();
    match mark {
        Mark::LostEdge { line } => stitched(&mut data, line, unit),
        Mark::Gap { from, to, .. } => {
            let bar = (*to - *from).normalize_or(DVec2::X).perp() * unit * 6.0;
            row(&mut data, &[*from - bar, *from + bar]);
            row(&mut data, &[*to - bar, *to + bar]);
            row(&mut data, &[*from, *to]);
        }
        Mark::Overrun { outline, .. } => data = looped(outline),
        Mark::Arrow { from, to } => {
            let back = (*from - *to).normalize_or(DVec2::X) * unit * 8.0;
            let wing = back.perp() * 0.5;
            row(&mut data, &[*from, *to]);
            row(&mut data, &[*to + back + wing, *to, *to + back - wing]);
        }
        Mark::Triangle { corners } => data = looped(corners),
        Mark::Ring { at, radius } => {
            data.smooth(ellipse(*at, DVec2::splat(*radius), 24).into_iter());
        }
    }
    data
}

/// A lost edge: a line along it with cross-ticks, as if it needed sewing.
fn stitched(data: &mut PathData, run: &[DVec2], unit: f64) {
    row(data, run);
    let (step, half) = (7.6 * unit, 4.5 * unit);
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
