//! The crops over the picture, each named on a strip of tape.
use glam::{DVec2, dvec2};
use svg::node::element::{Group, Path};

use super::edge::{hatched, lined, looped, row};
use super::lettering::{UNDER, cased, tape, tape_half};
use super::view::Trims;
use crate::drawing::path::{PathData, short};
use crate::drawing::tone::{Tone, rgb};
use crate::drawing::{PENCIL, Pen};
use crate::figure::outline::bounds;
use crate::layout::{CopySpace, Crop, Layout};
use crate::scene::crop_outline;
use crate::shape::frame_outline;
use crate::words::say;

/// Crops are drawn in grease pencil on the picture.
pub(super) const GREASE: Tone = rgb(0xff6f4d);
pub(super) const FOLD: Tone = rgb(0xcfe3ee);
/// Height of a name on tape, in weights of the pen.
const NAME: f64 = 12.0;
/// Dashes of each crop in turn, in weights of the pen, so that no two
/// neighbours have the same line.
const DASHES: [&[f64]; 4] = [
    &[14.0, 7.0],
    &[20.0, 5.0, 3.0, 5.0],
    &[6.0, 5.0],
    &[12.0, 4.0, 2.5, 4.0, 2.5, 4.0],
];
/// Where along an edge of its crop a tape may lie, from the left.
const PLACES: [f64; 5] = [0.84, 0.5, 0.16, 0.67, 0.33];

/// A middle and half extents.
type Box = (DVec2, DVec2);

/// A drawing that crops are laid over.
pub(super) struct Under<'a> {
    pub(super) layout: &'a Layout,
    pub(super) trims: Trims,
    /// Where a place on the table plane lies in the drawing.
    pub(super) place: &'a dyn Fn(DVec2) -> DVec2,
    /// Least and greatest corner of where names may lie.
    pub(super) room: (DVec2, DVec2),
    /// Weight of a line.
    pub(super) unit: f64,
}

impl<'a> Under<'a> {
    /// The table plane itself, drawn in lines of this weight.
    pub(super) fn plain(layout: &'a Layout, trims: Trims, unit: f64) -> Self {
        let (low, high) = bounds(&frame_outline(&layout.frame));
        Self {
            layout,
            trims,
            place: &|p| p,
            // Names at the top and at the bottom may stand past the frame.
            room: (
                dvec2(low.x, f64::NEG_INFINITY),
                dvec2(high.x, f64::INFINITY),
            ),
            unit,
        }
    }

    fn crops(&self) -> impl Iterator<Item = (usize, &Crop)> {
        let all = self.layout.crops.iter().enumerate();
        all.filter(|(_, crop)| self.trims.has(crop.id))
    }

    /// The corners of a crop in the drawing, its top-left first.
    pub(super) fn corners(&self, crop: &Crop) -> Vec<DVec2> {
        let mut corners: Vec<DVec2> = crop_outline(self.layout, crop)
            .into_iter()
            .map(self.place)
            .collect();
        // A rectangle is told from its bottom right on.
        corners.rotate_left(2);
        corners
    }
}

/// These crops of the layout; no name covers what is `taken`.
pub(super) fn crops(layout: &Layout, trims: Trims, taken: Vec<Box>, pen: &Pen) -> Group {
    let under = Under::plain(layout, trims, pen.weight);
    laid_over(&under, taken)
}

/// The crops over a drawing; no name covers what is `taken`.
pub(super) fn laid_over(under: &Under<'_>, taken: Vec<Box>) -> Group {
    let unit = under.unit;
    let mut group = Group::new();
    for (n, crop) in under.crops() {
        let corners = under.corners(crop);
        group = trimmed(group, &corners, n, unit);
        if let Some(copy) = &crop.copy {
            group = space(group, &corners, crop, copy, unit);
        }
        if crop.gutter > 0 {
            group = fold(group, folded(&corners), unit);
        }
    }
    let named = tapes(under, taken);
    let named = named.iter().filter(|(name, ..)| !name.is_empty());
    for (n, (name, at, _)) in named.enumerate() {
        group = group.add(tape(name, *at, NAME * unit, n));
    }
    group
}

/// The upper and the lower end of the fold between these corners.
pub(super) fn folded(corners: &[DVec2]) -> Ends {
    [
        (corners[0] + corners[1]) * 0.5,
        (corners[2] + corners[3]) * 0.5,
    ]
}

/// What is written on each tape, its middle and half extents, after what was
/// `taken`, which has no words.
pub(super) fn tapes(under: &Under<'_>, taken: Vec<Box>) -> Vec<(String, DVec2, DVec2)> {
    let mut laid: Vec<(String, DVec2, DVec2)> = taken
        .into_iter()
        .map(|(at, half)| (String::new(), at, half))
        .collect();
    let mut lay = |text: String, edge: Ends| {
        let half = tape_half(&text, NAME * under.unit);
        let at = free(edge, half, under.room, &laid);
        laid.push((text, at, half));
    };
    for (_, crop) in under.crops() {
        let corners = under.corners(crop);
        if crop.gutter > 0 {
            lay(say("drawing-gutter", &[]), folded(&corners));
        }
        let name = if crop.name.is_empty() {
            say("drawing-crop", &[])
        } else {
            crop.name.clone()
        };
        let (low, high) = bounds(&corners);
        lay(name, [low, high]);
    }
    laid
}

/// The two ends of what a tape names: a crop's corners, or a fold's ends.
pub(super) type Ends = [DVec2; 2];

/// A place for a tape over an edge of what it names, clear of those laid.
fn free(
    [from, to]: Ends,
    half: DVec2,
    (low, high): (DVec2, DVec2),
    laid: &[(String, DVec2, DVec2)],
) -> DVec2 {
    // Where it has no room at all it lies against the end.
    let most = high - half;
    let within = |p: DVec2| p.clamp((low + half).min(most), most);
    let clear = |at: &DVec2| {
        laid.iter().all(|(_, other, size)| {
            let gap = (*at - *other).abs() - (half + *size) * 1.06;
            gap.max_element() > 0.0
        })
    };
    let edges = [to.y, from.y];
    let places = edges
        .iter()
        .flat_map(|&y| PLACES.map(|t| within(dvec2(from.x + (to.x - from.x) * t, y))));
    let first = within(dvec2(from.x + (to.x - from.x) * PLACES[0], to.y));
    // Where all are taken, the next free row above the lower edge.
    let rows = (1..12).map(|n| first - dvec2(0.0, half.y * 2.2 * f64::from(n)));
    places.chain(rows).find(clear).unwrap_or(first)
}

/// A line over a dark casing.
pub(super) fn over(group: Group, data: [PathData; 2], tone: Tone, width: f64, dash: &str) -> Group {
    let [below, above] = data;
    let dashed = |path: Path| {
        if dash.is_empty() {
            path
        } else {
            path.set("stroke-dasharray", dash)
        }
    };
    let under = lined(below, UNDER, width * 2.5, None).set("stroke-opacity", short(0.6));
    group
        .add(dashed(under))
        .add(dashed(lined(above, tone, width, None)))
}

pub(super) fn dashes(pattern: &[f64], unit: f64) -> String {
    let lengths: Vec<String> = pattern.iter().map(|n| short(n * unit)).collect();
    lengths.join(" ")
}

/// The trim: dashes, and strong corners laid by hand.
fn trimmed(group: Group, corners: &[DVec2], n: usize, unit: f64) -> Group {
    let line = || looped(corners);
    let dash = dashes(DASHES[n % DASHES.len()], unit);
    let group = over(group, [line(), line()], GREASE, unit * 1.1, &dash);
    let mut marks = PathData::default();
    for (i, &corner) in corners.iter().enumerate() {
        let towards = |other: usize| {
            let side = corners[other % corners.len()] - corner;
            side.normalize_or_zero() * (side.length() * 0.2).min(17.0 * unit)
        };
        let (next, last) = (towards(i + 1), towards(i + corners.len() - 1));
        row(&mut marks, &[corner + next, corner, corner + last]);
    }
    group.add(lined(marks, GREASE, unit * 2.6, None))
}

/// The fold of a double page: long, dot, dot, and a caret outside each end.
fn fold(group: Group, [from, to]: Ends, unit: f64) -> Group {
    let line = || {
        let mut data = PathData::default();
        row(&mut data, &[from, to]);
        data
    };
    let dash = dashes(&[12.0, 3.0, 1.0, 3.0, 1.0, 3.0], unit);
    let group = over(group, [line(), line()], FOLD, unit, &dash);
    let down = (to - from).normalize_or(DVec2::Y) * unit;
    let carets = || {
        let mut data = PathData::default();
        for (end, out) in [(from, -down), (to, down)] {
            let tip = end + out * 3.0;
            let wing = down.perp() * 5.0;
            row(
                &mut data,
                &[tip + out * 6.0 + wing, tip, tip + out * 6.0 - wing],
            );
        }
        data
    };
    over(group, [carets(), carets()], FOLD, unit, "")
}

/// Copy space: a dotted box, hatched, with its words.
fn space(group: Group, corners: &[DVec2], crop: &Crop, copy: &CopySpace, unit: f64) -> Group {
    let (middle, area) = ((corners[0] + corners[2]) * 0.5, copy.area);
    // A mm of the table, as long as it is in the drawing.
    let across = (corners[1] - corners[0]) / f64::from(crop.width);
    let place = |x: f64, y: f64| middle + across * x + across.perp() * y;
    let (dx, dy) = (f64::from(area.dx), f64::from(area.dy));
    let half = dvec2(f64::from(area.width), f64::from(area.depth)) * 0.5;
    let box_: Vec<DVec2> = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
        .iter()
        .map(|&(x, y)| place(dx + half.x * x, dy + half.y * y))
        .collect();
    let mut lines = PathData::default();
    hatched(&mut lines, &box_, unit * 8.0);
    let hatch = lined(lines, PENCIL, unit * 0.5, None).set("stroke-opacity", short(0.4));
    let dots = dashes(&[0.1, 3.0], unit);
    let group = over(
        group.add(hatch),
        [looped(&box_), looped(&box_)],
        PENCIL,
        unit * 0.8,
        &dots,
    );
    if copy.wording.is_empty() {
        return group;
    }
    let at = place(dx, dy) + dvec2(0.0, unit * NAME * 0.34);
    group.add(cased(&copy.wording, at, unit * NAME, PENCIL).set("font-style", "italic"))
}
