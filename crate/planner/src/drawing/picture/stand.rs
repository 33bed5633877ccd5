//! Arm, stand and photographer from above: thin ink outside the frame, white
//! pencil inside it.
use glam::{DVec2, dvec2};
use svg::node::element::Group;

use super::edge::{lined, row};
use super::frame::on_paper;
use super::lettering::{UNDER, centred};
use super::view::{Keyed, View};
use crate::commands::PERSON_REACH;
use crate::drawing::path::{PathData, tenth};
use crate::drawing::{PENCIL, Pen};
use crate::layout::Layout;
use crate::rig::Stand;
use crate::scene::ways;
use crate::shape::{Bounds, CHORD_ERROR, contains, disc, frame_outline};
use crate::words::say;

/// Half the breadth of an arm and of a mast, mm.
const HALF: f64 = 18.0;

/// Lines from place to place.
type Lines = Vec<[DVec2; 2]>;

fn ring(out: &mut Lines, at: DVec2, radius: f64) {
    let round = disc(at, radius, CHORD_ERROR * 4.0);
    for n in 0..round.len() {
        out.push([round[n], round[(n + 1) % round.len()]]);
    }
}

/// The arm, then each mast with its legs and what hangs on it: what moves as
/// one when a stand is put elsewhere.
fn parts(layout: &Layout) -> Vec<(&'static str, Lines)> {
    let Some(stand) = Stand::of(layout) else {
        return Vec::new();
    };
    let rig = &layout.rig;
    let aside = stand.along.perp() * HALF;
    let [tip, end] = stand.arm;
    let arm = vec![
        [tip + aside, end + aside],
        [tip - aside, end - aside],
        [tip + aside, tip - aside],
        [end + aside, end - aside],
    ];
    let mut out = vec![("arm", arm)];
    let bags = rig.bag.map(|bag| stand.bag_places(bag.hung));
    let bags = bags.unwrap_or_default();
    let each = bags.len() / stand.masts.len();
    for (n, (mast, feet)) in stand.masts.iter().zip(&stand.feet).enumerate() {
        let mut own: Lines = feet.iter().map(|foot| [*mast, *foot]).collect();
        ring(&mut own, *mast, HALF * 1.6);
        if let (Some(weight), 1) = (rig.counterweight, stand.masts.len()) {
            let at = *mast - stand.along * f64::from(weight.behind);
            ring(&mut own, at, HALF * 2.6);
        }
        for place in &bags[n * each..(n + 1) * each] {
            ring(&mut own, *place, HALF * 4.0);
        }
        out.push((["mast-0", "mast-1"][n.min(1)], own));
    }
    out
}

/// The ring where the photographer stands.
fn person(layout: &Layout) -> Lines {
    let mut out = Lines::new();
    if let Some(at) = layout.rig.photographer {
        ring(&mut out, at.vec(), PERSON_REACH);
    }
    out
}

/// The middles of the ways to the stand and round the table, from the ring on.
fn walks(layout: &Layout) -> Vec<Vec<DVec2>> {
    let from_ring = |mut line: Vec<DVec2>| {
        if let [from, next, ..] = line[..] {
            line[0] = from + (next - from).clamp_length_max(PERSON_REACH);
        }
        line
    };
    ways(layout)
        .into_iter()
        .map(|way| from_ring(way.line))
        .collect()
}

/// What all of it takes up; the ways too where they are shown.
#[must_use]
pub fn stand_span(layout: &Layout, walked: bool) -> Option<Bounds> {
    let parts = parts(layout).into_iter().flat_map(|part| part.1);
    let all: Lines = parts.chain(person(layout)).collect();
    let mut points = all.concat();
    if walked {
        points.extend(walks(layout).concat());
    }
    Bounds::around(&points)
}

/// The drawing of it, as groups that can be dragged.
pub(super) fn stand(layout: &Layout, view: &View, pen: &Pen) -> Vec<Keyed> {
    let keyed = |key: &str, group: Group| Keyed {
        key: key.into(),
        group,
        at: None,
    };
    let corners = frame_outline(&layout.frame);
    let mut all = Vec::new();
    for (key, lines) in parts(layout) {
        all.push(keyed(key, drawn(&lines, &corners, view, pen.weight)));
    }
    let Some(at) = layout.rig.photographer else {
        return all;
    };
    let unit = pen.weight;
    // Where the light is told they would only be in the way.
    if !view.lit {
        let mut steps = PathData::default();
        for line in walks(layout) {
            row(&mut steps, &line);
        }
        let dots = [0.1, 6.0].map(|n| tenth(n * unit)).join(" ");
        let steps = on_paper(steps, view, unit * 1.6).set("stroke-dasharray", dots);
        all.push(keyed("ways", Group::new().add(steps)));
    }
    let words = say("drawing-photographer", &[]);
    let text = centred(&words, at.vec() + dvec2(0.0, unit * 4.0), unit * 11.0);
    let group = drawn(&person(layout), &corners, view, unit);
    let text = text.set("fill", view.ink).set("font-style", "italic");
    all.push(keyed("photographer", group.add(text)));
    all
}

/// Lines in the ink of the paper, in white pencil within the frame.
fn drawn(lines: &[[DVec2; 2]], corners: &[DVec2], view: &View, unit: f64) -> Group {
    let [mut inside, mut outside] = [PathData::default(), PathData::default()];
    for [from, to] in lines {
        // In pieces, so that each lies on one side of the frame's edge.
        let pieces = ((from.distance(*to) / 20.0) as usize).clamp(1, 200);
        let at = |n: usize| from.lerp(*to, n as f64 / pieces as f64);
        for n in 0..pieces {
            let (a, b) = (at(n), at(n + 1));
            let data = if contains(corners, (a + b) * 0.5) {
                &mut inside
            } else {
                &mut outside
            };
            row(data, &[a, b]);
        }
    }
    let group = Group::new().add(on_paper(outside, view, unit * 0.9));
    if inside.is_empty() {
        return group;
    }
    group
        .add(lined(inside.clone(), UNDER, unit * 2.7, None).set("stroke-opacity", "0.6"))
        .add(lined(inside, PENCIL, unit, None))
}
