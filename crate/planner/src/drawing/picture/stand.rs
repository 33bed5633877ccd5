//! Arm, stand and photographer from above: thin ink outside the frame, white
//! pencil inside it.
use glam::{DVec2, dvec2};
use svg::node::element::Group;

use super::edge::{lined, row};
use super::frame::on_paper;
use super::lettering::{UNDER, centred};
use super::view::View;
use crate::drawing::path::PathData;
use crate::drawing::{PENCIL, Pen};
use crate::layout::Layout;
use crate::rig::Stand;
use crate::shape::{Bounds, CHORD_ERROR, contains, disc, frame_outline};
use crate::words::say;

/// Half the breadth of an arm and of a mast, mm.
const HALF: f64 = 18.0;
/// Radius of the ring where the photographer stands, mm: half a shoulder's
/// breadth.
const PERSON: f64 = 230.0;

/// The lines of it, each from place to place.
fn lines(layout: &Layout) -> Vec<[DVec2; 2]> {
    let mut out = Vec::new();
    let mut ring = |at: DVec2, radius: f64| {
        let round = disc(at, radius, CHORD_ERROR * 4.0);
        for n in 0..round.len() {
            out.push([round[n], round[(n + 1) % round.len()]]);
        }
    };
    if let Some(at) = layout.rig.photographer {
        ring(at.vec(), PERSON);
    }
    let Some(stand) = Stand::of(layout) else {
        return out;
    };
    for mast in &stand.masts {
        ring(*mast, HALF * 1.6);
    }
    let rig = &layout.rig;
    if let (Some(weight), 1) = (rig.counterweight, stand.masts.len()) {
        let at = stand.masts[0] - stand.along * f64::from(weight.behind);
        ring(at, HALF * 2.6);
    }
    if let Some(bag) = rig.bag {
        for place in stand.bag_places(bag.hung) {
            ring(place, HALF * 4.0);
        }
    }
    let aside = stand.along.perp() * HALF;
    let [tip, end] = stand.arm;
    out.push([tip + aside, end + aside]);
    out.push([tip - aside, end - aside]);
    out.push([tip + aside, tip - aside]);
    out.push([end + aside, end - aside]);
    for (mast, feet) in stand.masts.iter().zip(&stand.feet) {
        for foot in feet {
            out.push([*mast, *foot]);
        }
    }
    out
}

/// What all of it takes up.
#[must_use]
pub fn stand_span(layout: &Layout) -> Option<Bounds> {
    Bounds::around(&lines(layout).concat())
}

/// The drawing of it.
pub(super) fn stand(layout: &Layout, view: &View, pen: &Pen) -> Group {
    let corners = frame_outline(&layout.frame);
    let [mut inside, mut outside] = [PathData::default(), PathData::default()];
    for [from, to] in lines(layout) {
        // In pieces, so that each lies on one side of the frame's edge.
        let pieces = ((from.distance(to) / 20.0) as usize).clamp(1, 200);
        let at = |n: usize| from.lerp(to, n as f64 / pieces as f64);
        for n in 0..pieces {
            let (a, b) = (at(n), at(n + 1));
            let data = if contains(&corners, (a + b) * 0.5) {
                &mut inside
            } else {
                &mut outside
            };
            row(data, &[a, b]);
        }
    }
    let unit = pen.weight;
    let mut group = Group::new().add(on_paper(outside, view, unit * 0.9));
    if !inside.is_empty() {
        group = group
            .add(lined(inside.clone(), UNDER, unit * 2.7, None).set("stroke-opacity", "0.6"))
            .add(lined(inside, PENCIL, unit, None));
    }
    if let Some(at) = layout.rig.photographer {
        let words = say("drawing-photographer", &[]);
        let at = at.vec() + dvec2(0.0, unit * 4.0);
        let text = centred(&words, at, unit * 11.0);
        group = group.add(text.set("fill", view.ink).set("font-style", "italic"));
    }
    group
}
