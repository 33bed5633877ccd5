//! The frame: the veil outside it, its pencil line, ticks, top and light.
use glam::{DVec2, dvec2};
use svg::node::element::{Group, Path};

use super::edge::{lined, looped, row};
use super::lettering::centred;
use super::view::View;
use crate::drawing::path::{PathData, short};
use crate::drawing::{PENCIL, Pen};
use crate::layout::Layout;
use crate::shape::frame_outline;
use crate::words::say;

/// How far the world outside the frame fades towards the sheet.
const FADE: f64 = 0.56;
/// How far the veil reaches, mm: past the largest layout.
const FAR: f64 = 30_000.0;

/// The frame and what is written round it.
pub(super) fn frame(layout: &Layout, view: &View, pen: &Pen) -> Group {
    let corners = frame_outline(&layout.frame);
    let unit = pen.weight;
    let up = (corners[0] - corners[3]).normalize_or_zero();
    let tip = (corners[0] + corners[1]) * 0.5 + up * unit * 19.0;
    let top = centred(&say("drawing-top", &[]), tip + up * unit * 6.0, unit * 11.0);
    Group::new()
        .add(veil(&corners, view))
        .add(lined(looped(&corners), PENCIL, unit * 0.8, None))
        .add(on_paper(ticks(&corners, up, tip, unit), view, unit))
        .add(top.set("fill", view.ink).set("font-style", "italic"))
        .add(on_paper(window(layout, unit), view, unit))
}

/// Everything but the frame, faded.
fn veil(corners: &[DVec2], view: &View) -> Path {
    let mut data = looped(&[
        dvec2(-FAR, -FAR),
        dvec2(FAR, -FAR),
        dvec2(FAR, FAR),
        dvec2(-FAR, FAR),
    ]);
    data.append(looped(corners));
    Path::new()
        .set("d", data.finish())
        .set("fill-rule", "evenodd")
        .set("fill", view.paper)
        .set("fill-opacity", FADE)
}

/// A line in the ink of the paper.
fn on_paper(data: PathData, view: &View, width: f64) -> Path {
    Path::new()
        .set("d", data.finish())
        .set("fill", "none")
        .set("stroke", view.ink)
        .set("stroke-width", short(width))
}

/// Ticks past the corners and the arrow to the top of the picture.
fn ticks(corners: &[DVec2], up: DVec2, tip: DVec2, unit: f64) -> PathData {
    let mut data = PathData::default();
    for (n, &corner) in corners.iter().enumerate() {
        for other in [corners[(n + 1) % 4], corners[(n + 3) % 4]] {
            let out = (corner - other).normalize_or_zero() * unit;
            row(&mut data, &[corner + out * 5.0, corner + out * 14.0]);
        }
    }
    let wing = up.perp() * unit * 4.0;
    let back = tip - up * unit * 5.0;
    row(&mut data, &[tip - up * unit * 12.0, tip]);
    row(&mut data, &[back - wing, tip, back + wing]);
    data
}

/// The side the light comes from, marked outside the frame.
fn window(layout: &Layout, unit: f64) -> PathData {
    let towards = layout.light.clock.direction();
    let centre = layout.frame.at.vec();
    let half = dvec2(f64::from(layout.frame.width), layout.frame.height()) * 0.5;
    let reach = (half.x / towards.x.abs().max(1e-6)).min(half.y / towards.y.abs().max(1e-6));
    let at = centre + towards * reach + towards * unit * 16.0;
    let across = towards.perp() * unit * 22.0;
    let mut data = PathData::default();
    for back in [0.0, unit * 4.0] {
        let pane = at + towards * back;
        row(&mut data, &[pane - across, pane + across]);
    }
    for n in [-0.6, 0.0, 0.6] {
        let from = at + across * n - towards * unit * 3.0;
        row(&mut data, &[from, from - towards * unit * 9.0]);
    }
    data
}
