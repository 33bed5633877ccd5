//! Cut-paper discs for hero and main dishes, pointed flags for hands.
use glam::{DVec2, dvec2};
use svg::node::element::{Circle, Group, Text};

use super::edge::filled;
use super::lettering::centred;
use crate::drawing::INK;
use crate::drawing::path::{short, tenth};
use crate::drawing::tone::{Tone, hex, rgb};
use crate::layout::{Hand, Item, Layout, Role};
use crate::optics::View;
use crate::scene;

const PAPER: Tone = rgb(0xfdf9ee);
/// Half the extents of a disc's box and of a flag's, pixels.
const DISC: DVec2 = dvec2(11.0, 11.0);
const FLAG: DVec2 = dvec2(16.0, 9.0);
/// How far up the forearm a flag hangs, mm from the wrist.
const FLAG_BACK: f64 = 34.0;

/// Where the disc of a dish lies: low and to the left, past the rim, off the
/// face of the food and off the seam of a lost edge.
fn disc_at(layout: &Layout, item: &Item, eye: View, px: f64) -> DVec2 {
    let [w, d] = item.size.extent().map(|mm| f64::from(mm) * 0.5);
    let aside = dvec2(-0.65, 0.76);
    let rim = item.at.vec() + aside * dvec2(w, d);
    eye.project(rim, scene::rise(layout, item).top) + aside * (9.0 * px)
}

/// Where the flag of a hand hangs.
fn flag_at(layout: &Layout, hand: &Hand, eye: View) -> DVec2 {
    let arm = scene::arm(layout, hand);
    eye.project(arm.wrist - arm.along * FLAG_BACK, f64::from(hand.height))
}

/// The dishes that wear a disc.
fn dishes(layout: &Layout) -> impl Iterator<Item = &Item> {
    let tagged = |i: &&Item| matches!(i.role, Role::Hero | Role::Support);
    layout.items.iter().filter(tagged)
}

/// Middles and half extents of all tags, which nothing else written may cover.
pub(super) fn taken(layout: &Layout, hands: &[&Hand], eye: View, px: f64) -> Vec<(DVec2, DVec2)> {
    let discs = dishes(layout).map(|item| (disc_at(layout, item, eye, px), DISC * px));
    let flags = hands
        .iter()
        .map(|hand| (flag_at(layout, hand, eye), FLAG * px));
    discs.chain(flags).collect()
}

/// The tags of the dishes and of `hands`, `px` mm to a pixel.
pub(super) fn tags(layout: &Layout, hands: &[&Hand], eye: View, px: f64) -> Group {
    let mut group = Group::new();
    for item in dishes(layout) {
        let at = disc_at(layout, item, eye, px);
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
        let at = flag_at(layout, hand, eye);
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
