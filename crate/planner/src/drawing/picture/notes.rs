//! Remarks as small squares of paper, numbered as they came.
use glam::{DVec2, dvec2};
use svg::node::element::{Circle, Group};

use super::edge::filled;
use super::lettering::centred;
use crate::answers::spot;
use crate::drawing::INK;
use crate::drawing::path::{short, tenth};
use crate::drawing::tone::{Tone, hex, rgb};
use crate::layout::Layout;
use crate::optics::View;

const PAPER: Tone = rgb(0xf0e2b6);
/// Grease pencil.
const GREASE: Tone = rgb(0xb5361c);
/// Half a square's side, and how far the next on the same thing lies, pixels.
const HALF: f64 = 9.5;
const NEXT: DVec2 = dvec2(15.0, -4.0);

/// The notes not yet seen to, `px` mm to a pixel: up and to the right of the
/// middle of a thing, so that its number stays to be read.
pub(super) fn notes(layout: &Layout, eye: View, px: f64) -> Group {
    let mut group = Group::new();
    let mut placed: Vec<DVec2> = Vec::new();
    for (n, remark) in layout.head.remarks.iter().enumerate() {
        let Some((at, high)) = spot(layout, remark).filter(|_| !remark.done) else {
            continue;
        };
        let point = eye.project(at, high);
        let mut middle = point + dvec2(HALF, -HALF) * px;
        while placed.iter().any(|p| p.distance(middle) < HALF * px) {
            middle += NEXT * px;
        }
        placed.push(middle);
        let half = HALF * px;
        // Each lies a little askew, this way or that.
        let tilt = half * if n % 2 == 0 { 0.06 } else { -0.06 };
        let square = [
            middle + dvec2(-half, -half + tilt),
            middle + dvec2(half, -half - tilt),
            middle + dvec2(half, half - tilt),
            middle + dvec2(-half, half + tilt),
        ];
        let dot = Circle::new()
            .set("cx", tenth(point.x))
            .set("cy", tenth(point.y))
            .set("r", tenth(2.6 * px))
            .set("fill", hex(GREASE))
            .set("stroke", hex(PAPER))
            .set("stroke-width", short(0.8 * px));
        let paper = filled(&square, PAPER)
            .set("stroke", hex(GREASE))
            .set("stroke-width", short(1.2 * px));
        let low = middle + dvec2(0.0, 4.4 * px);
        let written = centred(&(n + 1).to_string(), low, 12.5 * px)
            .set("fill", hex(INK))
            .set("font-weight", "bold");
        group = group.add(paper).add(dot).add(written);
    }
    group
}
