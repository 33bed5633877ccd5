//! Cut-paper discs for hero and main dishes, pointed flags for hands.
use glam::{DVec2, dvec2};
use svg::node::element::{Circle, Group, Text};

use super::edge::filled;
use super::lettering::centred;
use crate::drawing::INK;
use crate::drawing::path::{short, tenth};
use crate::drawing::tone::{Tone, hex, rgb};
use crate::layout::{Hand, Layout, Role};
use crate::scene;

const PAPER: Tone = rgb(0xfdf9ee);
/// How far up the forearm a flag hangs, mm from the wrist.
const FLAG_BACK: f64 = 34.0;

/// The tags of the dishes and of `hands`, `px` mm to a pixel.
pub(super) fn tags(layout: &Layout, hands: &[&Hand], px: f64) -> Group {
    let mut group = Group::new();
    let dishes = layout
        .items
        .iter()
        .filter(|i| matches!(i.role, Role::Hero | Role::Support));
    for item in dishes {
        let [w, d] = item.size.extent().map(|mm| f64::from(mm) * 0.5);
        // Low and to the left, on the rim, off the face of the food.
        let at = item.at.vec() + dvec2(-0.62 * w, 0.72 * d);
        let disc = Circle::new()
            .set("cx", tenth(at.x))
            .set("cy", tenth(at.y))
            .set("r", tenth(11.0 * px));
        group = group
            .add(
                disc.set("fill", hex(PAPER))
                    .set("stroke", hex(INK))
                    .set("stroke-width", short(0.8 * px)),
            )
            .add(written(&item.number.to_string(), at, 13.0, px));
    }
    for hand in hands {
        let arm = scene::arm(layout, hand);
        let at = arm.wrist - arm.along * FLAG_BACK;
        let half = dvec2(13.0, 9.0) * px;
        let flag = [
            at - half,
            at + dvec2(half.x, -half.y),
            at + dvec2(half.x + 6.0 * px, 0.0),
            at + half,
            at + dvec2(-half.x, half.y),
        ];
        let paper = filled(&flag, PAPER).set("stroke", hex(INK));
        group = group
            .add(paper.set("stroke-width", short(0.8 * px)))
            .add(written(&scene::flag(layout, hand), at, 12.0, px));
    }
    group
}

fn written(text: &str, at: DVec2, size: f64, px: f64) -> Text {
    centred(text, at + dvec2(0.0, 4.6 * px), size * px)
        .set("fill", hex(INK))
        .set("font-weight", "bold")
}
