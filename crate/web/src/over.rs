//! What lies over the things: frame, marks, crops, tags.
use glam::{DVec2, dvec2};
use planner::drawing::{INK, PENCIL, Pen, rgb};
use planner::layout::{Layout, Role};
use planner::readings::Mark;
use planner::scene::crop_outline;
use planner::shape::frame_outline;
use svg::node::element::{Circle, Group, Path, Text};

use crate::compose::View;
use crate::paint::{filled, hex, line};

/// How far the world outside the frame fades towards the sheet.
const FADE: f64 = 0.56;
/// Crops and warnings are drawn in these on the picture.
const GREASE: [u8; 3] = rgb(0xff6f4d);
const STITCH: [u8; 3] = rgb(0xff8a57);
const TAPE: [u8; 3] = rgb(0xf0e2b6);
const PAPER: [u8; 3] = rgb(0xfdf9ee);

/// The veil outside the frame, its pencil line, ticks and the top mark.
pub(crate) fn frame(layout: &Layout, view: &View, pen: &Pen) -> Group {
    let corners = frame_outline(&layout.frame);
    let far = 30_000;
    let veil = format!("M-{far} -{far}H{far}V{far}H-{far}Z{}", line(&corners, true));
    let veil = Path::new().set("d", veil).set("fill-rule", "evenodd");
    let border = Path::new()
        .set("d", line(&corners, true))
        .set("fill", "none");
    let mut group = Group::new()
        .add(
            veil.set("fill", view.paper.as_str())
                .set("fill-opacity", FADE),
        )
        .add(
            border
                .set("stroke", hex(PENCIL))
                .set("stroke-width", pen.weight * 0.8),
        );
    let unit = pen.weight;
    let mut ticks = String::new();
    for (n, &corner) in corners.iter().enumerate() {
        for other in [corners[(n + 1) % 4], corners[(n + 3) % 4]] {
            let out = (corner - other).normalize_or_zero();
            ticks.push_str(&line(
                &[corner + out * unit * 5.0, corner + out * unit * 14.0],
                false,
            ));
        }
    }
    let up = (corners[0] - corners[3]).normalize_or_zero();
    let top = (corners[0] + corners[1]) * 0.5 + up * unit * 7.0;
    let tip = top + up * unit * 12.0;
    let wing = up.perp() * unit * 4.0;
    ticks.push_str(&line(&[top, tip], false));
    ticks.push_str(&line(
        &[
            tip - up * unit * 5.0 - wing,
            tip,
            tip - up * unit * 5.0 + wing,
        ],
        false,
    ));
    let ticks = Path::new()
        .set("d", ticks)
        .set("fill", "none")
        .set("stroke", view.ink.as_str());
    group = group.add(ticks.set("stroke-width", unit));
    let label = tip + up * unit * 6.0;
    group = group.add(
        words("top", label, unit * 11.0)
            .set("fill", view.ink.as_str())
            .set("font-style", "italic"),
    );
    group.add(window(layout, view, unit))
}

/// The side the light comes from, marked outside the frame.
fn window(layout: &Layout, view: &View, unit: f64) -> Group {
    let towards = layout.light.clock.direction();
    let centre = layout.frame.at.vec();
    let half = dvec2(f64::from(layout.frame.width), layout.frame.height()) * 0.5;
    let reach = (half.x / towards.x.abs().max(1e-6)).min(half.y / towards.y.abs().max(1e-6));
    let at = centre + towards * reach + towards * unit * 16.0;
    let across = towards.perp() * unit * 22.0;
    let pane = |back: f64| {
        line(
            &[at + towards * back - across, at + towards * back + across],
            false,
        )
    };
    let mut d = pane(0.0) + &pane(unit * 4.0);
    for n in [-0.6, 0.0, 0.6] {
        let from = at + across * n - towards * unit * 3.0;
        d.push_str(&line(&[from, from - towards * unit * 9.0], false));
    }
    let mark = Path::new()
        .set("d", d)
        .set("fill", "none")
        .set("stroke", view.ink.as_str());
    Group::new().add(mark.set("stroke-width", unit))
}

fn words(text: &str, at: DVec2, size: f64) -> Text {
    Text::new(text)
        .set("x", format!("{:.1}", at.x))
        .set("y", format!("{:.1}", at.y))
        .set("font-size", format!("{size:.1}"))
        .set("text-anchor", "middle")
        .set(
            "font-family",
            "Palatino, 'Palatino Linotype', P052, 'Noto Serif', Georgia, serif",
        )
}

pub(crate) fn marks(marks: &[Mark], pen: &Pen) -> Group {
    let mut group = Group::new().set("fill", "none");
    for mark in marks {
        let d = match mark {
            Mark::LostEdge { line: run } => stitched(run, pen.weight),
            Mark::Gap { from, to, .. } => {
                let bar = (*to - *from).normalize_or(DVec2::X).perp() * pen.weight * 6.0;
                line(&[*from - bar, *from + bar], false)
                    + &line(&[*to - bar, *to + bar], false)
                    + &line(&[*from, *to], false)
            }
            Mark::Overrun { outline, .. } => line(outline, true),
            Mark::Arrow { from, to } => {
                let back = (*from - *to).normalize_or(DVec2::X) * pen.weight * 8.0;
                let wing = back.perp() * 0.5;
                line(&[*from, *to], false)
                    + &line(&[*to + back + wing, *to, *to + back - wing], false)
            }
            Mark::Triangle { corners } => line(corners, true),
            Mark::Ring { at, radius } => {
                let r = *radius;
                format!(
                    "M{:.1} {:.1}a{r:.1} {r:.1} 0 1 0 {:.1} 0a{r:.1} {r:.1} 0 1 0 {:.1} 0",
                    at.x - r,
                    at.y,
                    2.0 * r,
                    -2.0 * r
                )
            }
        };
        for (tone, width, opacity) in [(rgb(0x1a1613), 3.0, 0.6), (STITCH, 1.0, 1.0)] {
            let path = Path::new().set("d", d.as_str()).set("stroke", hex(tone));
            group = group.add(
                path.set("stroke-width", pen.weight * width)
                    .set("stroke-opacity", opacity),
            );
        }
    }
    group
}

/// A lost edge: a line along it with cross-ticks, as if it needed sewing.
fn stitched(run: &[DVec2], unit: f64) -> String {
    let mut d = line(run, false);
    let (step, half) = (7.6 * unit, 4.5 * unit);
    let mut left = step / 2.0;
    for pair in run.windows(2) {
        let along = pair[1] - pair[0];
        let (long, dir) = (along.length(), along.normalize_or_zero());
        while left < long {
            let at = pair[0] + dir * left;
            let across = dir.perp() * half;
            d.push_str(&line(&[at - across, at + across], false));
            left += step;
        }
        left -= long;
    }
    d
}

pub(crate) fn crops(layout: &Layout, pen: &Pen) -> Group {
    let mut group = Group::new();
    let unit = pen.weight;
    for crop in &layout.crops {
        let corners = crop_outline(layout, crop);
        let path = Path::new()
            .set("d", line(&corners, true))
            .set("fill", "none");
        let dash = format!("{:.1} {:.1}", 14.0 * unit, 7.0 * unit);
        group = group.add(
            path.set("stroke", hex(GREASE))
                .set("stroke-width", unit * 1.2)
                .set("stroke-dasharray", dash),
        );
        let centre = corners.iter().sum::<DVec2>() / corners.len().max(1) as f64;
        let low = corners.iter().map(|p| p.y).fold(f64::MIN, f64::max);
        let at = dvec2(
            corners.iter().map(|p| p.x).fold(f64::MIN, f64::max) - unit * 40.0,
            low,
        );
        let text = if crop.name.is_empty() {
            "crop"
        } else {
            crop.name.as_str()
        };
        let half = dvec2(text.chars().count() as f64 * 3.2 + 9.0, 9.0) * unit;
        let tape = [
            at - half,
            at + dvec2(half.x, -half.y),
            at + half,
            at + dvec2(-half.x, half.y),
        ];
        group = group.add(filled(&tape, TAPE));
        group =
            group.add(words(text, at + dvec2(0.0, unit * 4.0), unit * 12.0).set("fill", hex(INK)));
        if crop.gutter > 0 {
            let high = corners.iter().map(|p| p.y).fold(f64::MAX, f64::min);
            let fold = line(&[dvec2(centre.x, high), dvec2(centre.x, low)], false);
            let dash = format!(
                "{:.1} {:.1} {:.1} {:.1}",
                12.0 * unit,
                3.0 * unit,
                1.5 * unit,
                3.0 * unit
            );
            group = group.add(
                Path::new()
                    .set("d", fold)
                    .set("stroke", "#cfe3ee")
                    .set("stroke-width", unit)
                    .set("stroke-dasharray", dash),
            );
        }
    }
    group
}

/// Cut-paper discs for hero and main dishes, pointed flags for hands.
pub(crate) fn tags(layout: &Layout, view: &View, flags: &[(String, DVec2)]) -> Group {
    let px = view.per_pixel;
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
            .set("cx", at.x.round())
            .set("cy", at.y.round())
            .set("r", (11.0 * px).round());
        group = group.add(
            disc.set("fill", hex(PAPER))
                .set("stroke", hex(INK))
                .set("stroke-width", 0.8 * px),
        );
        let text = words(
            &item.number.to_string(),
            at + dvec2(0.0, 4.6 * px),
            13.0 * px,
        );
        group = group.add(text.set("fill", hex(INK)).set("font-weight", "bold"));
    }
    for (name, at) in flags {
        let half = dvec2(13.0, 9.0) * px;
        let flag = [
            *at - half,
            *at + dvec2(half.x, -half.y),
            *at + dvec2(half.x + 6.0 * px, 0.0),
            *at + half,
            *at + dvec2(-half.x, half.y),
        ];
        group = group.add(
            filled(&flag, PAPER)
                .set("stroke", hex(INK))
                .set("stroke-width", 0.8 * px),
        );
        let text = words(name, *at + dvec2(0.0, 4.6 * px), 12.0 * px);
        group = group.add(text.set("fill", hex(INK)).set("font-weight", "bold"));
    }
    group
}
