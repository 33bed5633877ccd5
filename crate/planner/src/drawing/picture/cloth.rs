//! A linen about its own centre, on the table or waiting beside it.
use glam::{DVec2, dvec2};
use svg::node::element::{ClipPath, Group, Path};

use super::lettering::lettering;
use super::named;
use super::view::View;
use crate::drawing::path::{PathData, short};
use crate::drawing::tone::hex;
use crate::drawing::{INK, Pen, cloth as drawn};
use crate::figure::outline::bounds;
use crate::layout::{Layout, Linen, LinenState};
use crate::scene::{linen_form, linen_outline, linen_seen};
use crate::shape::{CHORD_ERROR, contains, frame_outline, table_outline};
use crate::words::{Arg, say};

/// Height of a caption, in weights of the pen.
const WORDS: f64 = 10.5;
/// Width of the line where a linen folds over the edge, in weights of the pen.
const FOLD: f64 = 1.3;
/// How dark a caption is beside the full ink.
const QUIET: f64 = 0.75;

/// One linen as it lies: cut along the edge of the table where it hangs down.
pub(super) fn cloth(layout: &Layout, linen: &Linen, pen: &Pen) -> Group {
    let form = linen_form(linen);
    let group = drawn(linen.kind, linen.state, &form, linen.colour.0, pen);
    let seen = linen_seen(&layout.table, linen);
    if seen.len() == linen_outline(linen).len() {
        return group;
    }
    let mut data = PathData::default();
    data.polygon(seen.iter().map(|p| *p - linen.at.vec()));
    let data = data.finish();
    // The fold over the edge is a line of its own, dark as any edge.
    let fold = Path::new()
        .set("d", data.as_str())
        .set("fill", "none")
        .set("stroke", hex(INK))
        .set("stroke-width", short(pen.weight * FOLD));
    let name = named("hang", linen.id.0);
    let clip = ClipPath::new()
        .set("id", name.as_str())
        .add(Path::new().set("d", data));
    let shown = group.set("clip-path", format!("url(#{name})"));
    Group::new().add(clip).add(shown).add(fold)
}

/// Whether a linen lies beside the table.
pub(super) fn is_aside(layout: &Layout, linen: &Linen) -> bool {
    !contains(&table_outline(&layout.table, CHORD_ERROR), linen.at.vec())
}

/// How far past the frame a waiting linen is still shown at rest, mm.
const NEAR: f64 = 400.0;

/// The corners of the box round what waits near the frame, with room for its
/// caption; nothing when nothing does.
#[must_use]
pub fn waiting(layout: &Layout) -> Option<[DVec2; 2]> {
    let (low, high) = bounds(&frame_outline(&layout.frame));
    let boxes = layout
        .linens
        .iter()
        .filter(|linen| is_aside(layout, linen))
        .map(|linen| bounds(&linen_outline(linen)))
        .filter(|(from, to)| {
            let off = (low - *from).max(*to - high);
            off.max_element() < NEAR
        });
    boxes
        .reduce(|a, b| (a.0.min(b.0), a.1.max(b.1)))
        .map(|(from, to)| [from, to])
}

/// A linen that waits beside the table, with what it is called to its left,
/// or under it where the picture ends there.
pub(super) fn aside(layout: &Layout, linen: &Linen, view: &View, pen: &Pen) -> Group {
    let group = cloth(layout, linen, pen);
    if linen.name.is_empty() {
        return group;
    }
    let name = ("name", Arg::Name(linen.name.clone()));
    let text = match linen.state {
        LinenState::Folded => say("drawing-folded", &[name]),
        _ => linen.name.clone(),
    };
    let size = pen.weight * WORDS;
    let (low, high) = bounds(&linen_outline(linen));
    let half = (high - low) * 0.5;
    let long = text.chars().count() as f64 * size * 0.5;
    let left = bounds(&frame_outline(&layout.frame)).0.x;
    let fits = low.x - size - long > left;
    let (at, anchor) = if fits {
        (dvec2(-half.x - size, size * 0.3), "end")
    } else {
        (dvec2(0.0, half.y + size * 1.3), "middle")
    };
    let caption = lettering(&text, DVec2::round(at), size)
        .set("text-anchor", anchor)
        .set("font-style", "italic")
        .set("fill", view.ink)
        .set("fill-opacity", short(QUIET));
    group.add(caption)
}
