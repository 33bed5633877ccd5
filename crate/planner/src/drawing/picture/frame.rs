//! The frame: the veil outside it, its pencil line, ticks, top and light, and
//! the arms that reach in from outside.
use glam::{DVec2, dvec2};
use svg::node::element::{Group, Path, Text};

use super::edge::{lined, looped, row};
use super::lettering::{centred, lettering};
use super::view::View;
use crate::drawing::path::{PathData, short};
use crate::drawing::{PENCIL, Pen};
use crate::layout::{Hand, Layout};
use crate::optics::View as Seen;
use crate::scene::{arm, lifted};
use crate::shape::{contains, frame_outline};
use crate::words::say;

/// How far the world outside the frame fades towards the sheet.
const FADE: f64 = 0.56;
/// How far the veil reaches, mm: past the largest layout.
const FAR: f64 = 30_000.0;
/// Half the length of the sash of the window mark, in weights of the pen.
const SASH: f64 = 12.0;

/// The frame and what is drawn and written round it.
pub(super) fn frame(layout: &Layout, hands: &[&Hand], view: &View, pen: &Pen) -> Group {
    let corners = frame_outline(&layout.frame);
    let unit = pen.weight;
    let up = (corners[0] - corners[3]).normalize_or_zero();
    let tip = (corners[0] + corners[1]) * 0.5 + up * unit * 19.0;
    let top = centred(&say("drawing-top", &[]), tip + up * unit * 6.0, unit * 11.0);
    let group = Group::new()
        .add(veil(&corners, view))
        .add(on_paper(
            arms(layout, hands, view, &corners),
            view,
            unit * 0.75,
        ))
        .add(lined(looped(&corners), PENCIL, unit * 0.8, None))
        .add(on_paper(ticks(&corners, unit), view, unit));
    // The ring of hours says both.
    if view.lit && view.eye == Seen::Above {
        return group;
    }
    let (sash, label) = window(layout, &corners, unit);
    group
        .add(on_paper(arrow(up, tip, unit), view, unit))
        .add(top.set("fill", view.ink).set("font-style", "italic"))
        .add(on_paper(sash, view, unit))
        .add(label.set("fill", view.ink).set("font-style", "italic"))
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
pub(super) fn on_paper(data: PathData, view: &View, width: f64) -> Path {
    Path::new()
        .set("d", data.finish())
        .set("fill", "none")
        .set("stroke", view.ink)
        .set("stroke-linecap", "round")
        .set("stroke-width", short(width))
}

/// The two sides of each arm outside the frame: thin, the shoulder open.
fn arms(layout: &Layout, hands: &[&Hand], view: &View, corners: &[DVec2]) -> PathData {
    let mut data = PathData::default();
    for hand in hands {
        let arm = arm(layout, hand);
        let limb = if arm.sleeve.is_empty() {
            &arm.forearm
        } else {
            &arm.sleeve
        };
        let limb = lifted(limb, view.eye, f64::from(hand.height));
        let half = (limb.len() - 2) / 2;
        for side in [&limb[..half], &limb[half..2 * half]] {
            for pair in side.windows(2) {
                // In pieces, so that each lies on one side of the frame's edge.
                for i in 0..10 {
                    let at = |n: i32| pair[0].lerp(pair[1], f64::from(n) / 10.0);
                    let (a, b) = (at(i), at(i + 1));
                    if !contains(corners, (a + b) * 0.5) {
                        row(&mut data, &[a, b]);
                    }
                }
            }
        }
    }
    data
}

/// Ticks past the corners.
fn ticks(corners: &[DVec2], unit: f64) -> PathData {
    let mut data = PathData::default();
    for (n, &corner) in corners.iter().enumerate() {
        for other in [corners[(n + 1) % 4], corners[(n + 3) % 4]] {
            let out = (corner - other).normalize_or_zero() * unit;
            row(&mut data, &[corner + out * 5.0, corner + out * 14.0]);
        }
    }
    data
}

/// The arrow to the top of the picture.
fn arrow(up: DVec2, tip: DVec2, unit: f64) -> PathData {
    let mut data = PathData::default();
    let wing = up.perp() * unit * 4.0;
    let back = tip - up * unit * 5.0;
    row(&mut data, &[tip - up * unit * 12.0, tip]);
    row(&mut data, &[back - wing, tip, back + wing]);
    data
}

/// The side the light comes from: a sash and three rays above the picture, or
/// below it where the light comes from there, with its name beside it.
fn window(layout: &Layout, corners: &[DVec2], unit: f64) -> (PathData, Text) {
    let towards = layout.light.clock.direction();
    let low = corners.iter().fold(DVec2::INFINITY, |low, p| low.min(*p));
    let high = corners
        .iter()
        .fold(-DVec2::INFINITY, |high, p| high.max(*p));
    let (middle, half) = ((low + high) * 0.5, (high - low) * 0.5);
    // On the ray from the middle, slid along so that it stays in the picture
    // and clear of the arrow to the top.
    let room = (half.x - unit * (SASH + 6.0)).max(0.0);
    let least = (unit * 44.0).min(room);
    let slid = towards.x * half.x * 1.2;
    let aside = slid.abs().clamp(least, room) * if slid > 0.0 { 1.0 } else { -1.0 };
    let below = towards.y > 0.3;
    // The board may end just past the picture: the sash stands clear of that
    // edge too, where there is room for it.
    let board = if below {
        f64::from(layout.table.depth) - high.y
    } else {
        low.y
    };
    let away = if (0.0..unit * 14.0).contains(&board) {
        (board + unit * 15.0).max(unit * 16.0)
    } else {
        unit * 16.0
    };
    let at = dvec2(
        middle.x + aside,
        if below { high.y + away } else { low.y - away },
    );
    let across = towards.perp() * unit * SASH;
    let deep = towards * unit * 3.6;
    let at = at + towards * unit * 3.0;
    let mut data = looped(&[
        at - across,
        at + across,
        at + across + deep,
        at - across + deep,
    ]);
    row(&mut data, &[at, at + deep]);
    for n in [-0.62, 0.0, 0.62] {
        let from = at + across * n - towards * unit * 3.0;
        let long = if n == 0.0 { 12.0 } else { 8.0 };
        let end = from - towards * unit * long;
        row(&mut data, &[from, end]);
        if n == 0.0 {
            let back = end + towards * unit * 3.4;
            let wing = towards.perp() * unit * 2.4;
            row(&mut data, &[back - wing, end, back + wing]);
        }
    }
    // The name stands on the side of the picture's middle.
    let side = if aside > 0.0 { -1.0 } else { 1.0 };
    let start = at + dvec2(side * unit * (SASH + 5.0), unit * 2.0);
    let name = lettering(&say("drawing-window", &[]), start, unit * 11.0);
    let anchor = if side < 0.0 { "end" } else { "start" };
    (data, name.set("text-anchor", anchor))
}
