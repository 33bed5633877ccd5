//! A layout as keyed groups of drawing, bottom to top.
use glam::{DVec2, dvec2};
use planner::drawing::{INK, PENCIL, Pen, rgb, shadow};
use planner::layout::{ExposureKind, Id, Item, Layout, Role};
use planner::readings::Mark;
use planner::scene::{arm, crop_outline, flag, linen_outline};
use planner::shape::{CHORD_ERROR, frame_outline, outline, table_outline};
use svg::node::element::{Circle, Group, Line, Path, Text};

use crate::paint::{filled, hex, inked, line, thing};

/// One group of the drawing.
pub(crate) struct Keyed {
    pub(crate) key: String,
    pub(crate) group: Group,
    /// Where it is put, mm; groups about their own centre have one.
    pub(crate) transform: Option<[f64; 2]>,
}

/// Whose hands are drawn.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Shown {
    All,
    None,
    /// Those of one exposure with hands, counted from 0.
    Nth(usize),
}

/// How a layout is drawn.
#[derive(Clone)]
pub(crate) struct View {
    /// Mm on the table to a pixel.
    pub(crate) per_pixel: f64,
    pub(crate) shown: Shown,
    /// Marks of findings, in mm.
    pub(crate) marks: Vec<Mark>,
    /// Without crops and frame, as a client sees it.
    pub(crate) clean: bool,
    pub(crate) fine: bool,
    /// What the sheet and the ink on it are filled with.
    pub(crate) paper: String,
    pub(crate) ink: String,
}

impl Default for View {
    fn default() -> Self {
        Self {
            per_pixel: 3.0,
            shown: Shown::All,
            marks: Vec::new(),
            clean: false,
            fine: false,
            paper: "var(--sheet)".into(),
            ink: "var(--ink)".into(),
        }
    }
}

/// Weight of an ink line, px.
const WEIGHT: f64 = 1.1;
/// How far the world outside the frame fades towards the sheet.
const FADE: f64 = 0.56;
/// Crops and warnings are drawn in these on the picture.
const GREASE: [u8; 3] = rgb(0xff6f4d);
const STITCH: [u8; 3] = rgb(0xff8a57);
const TAPE: [u8; 3] = rgb(0xf0e2b6);
const PAPER: [u8; 3] = rgb(0xfdf9ee);

/// Every group of the drawing.
pub(crate) fn groups(layout: &Layout, view: &View) -> Vec<Keyed> {
    let fall = -layout.light.clock.direction();
    let weight = WEIGHT * view.per_pixel;
    let pen = Pen { weight, fall, fine: view.fine };
    let mut all = Vec::new();
    let mut push = |key: String, group: Group, transform: Option<DVec2>| {
        let transform = transform.map(|at| at.to_array());
        all.push(Keyed { key, group, transform });
    };
    push("surface".into(), surface(layout, &pen), None);
    for linen in &layout.linens {
        let edge = linen_outline(linen);
        push(format!("linen-{}", linen.id.0), cloth(&edge, linen.colour.0, &pen), None);
    }
    for item in in_paint_order(layout) {
        let at = item.at.vec();
        let shade = outline(&item.size, DVec2::ZERO, item.turn.degrees(), CHORD_ERROR);
        if item.height > 0 && item.on.is_none() {
            let (offset, spread) = thrown(layout, item.height, fall);
            let group = shadow(&shade, offset, f64::from(item.height), spread);
            push(format!("shadow-{}", item.id.0), group, Some(at));
        }
        push(format!("item-{}", item.id.0), thing(item, &pen), Some(at));
    }
    let shot = match view.shown {
        Shown::Nth(n) => exposure(layout, n),
        Shown::All | Shown::None => None,
    };
    let hands = layout.hands.iter().filter(|hand| match view.shown {
        Shown::All => true,
        Shown::None => false,
        Shown::Nth(_) => Some(hand.exposure) == shot,
    });
    let flags: Vec<(String, DVec2)> = hands
        .map(|hand| {
            let group = reaching(layout, hand, &pen);
            push(format!("hand-{}", hand.id.0), group, None);
            let arm = arm(layout, hand);
            (flag(layout, hand), arm.wrist - arm.along * 34.0)
        })
        .collect();
    if !view.clean {
        push("frame".into(), frame(layout, view, &pen), None);
        push("marks".into(), marks(&view.marks, &pen), None);
        push("crops".into(), crops(layout, &pen), None);
    }
    push("tags".into(), tags(layout, view, &flags), None);
    all
}

fn exposure(layout: &Layout, place: usize) -> Option<Id> {
    let mut shots = layout.exposures.iter().filter(|e| e.kind == ExposureKind::Hands);
    shots.nth(place).map(|e| e.id)
}

/// Items on the table in their order, each followed by what lies on it.
fn in_paint_order(layout: &Layout) -> Vec<&Item> {
    let mut order = Vec::with_capacity(layout.items.len());
    let mut waiting: Vec<&Item> = layout.items.iter().filter(|i| i.on.is_none()).rev().collect();
    while let Some(item) = waiting.pop() {
        order.push(item);
        waiting.extend(layout.items.iter().filter(|i| i.on == Some(item.id)).rev());
    }
    order
}

/// How far the top of a thing throws its shadow, and half the blur at its tip:
/// similar triangles from the middle and the edges of the light.
fn thrown(layout: &Layout, height: i32, fall: DVec2) -> (DVec2, f64) {
    let light = &layout.light;
    let h = f64::from(height);
    let above = (f64::from(light.height_above_table) - h).max(1.0);
    let offset = fall * f64::from(light.distance) * h / above;
    (offset, f64::from(light.width) * h / above * 0.5)
}

fn surface(layout: &Layout, pen: &Pen) -> Group {
    let edge = table_outline(&layout.table, CHORD_ERROR);
    let tone = layout.table.surface.colour.0;
    let mut group = Group::new().add(filled(&edge, tone));
    let wooden = ["charcoal-planks", "oak", "light-oak", "walnut", "painted-board"];
    if wooden.contains(&layout.table.surface.prop.as_str()) {
        group = group.add(planks(layout, tone, pen));
    }
    group.add(inked(&edge, pen.weight, pen.fall))
}

/// Joints and grain of planks, bowed a little as drawn by hand.
fn planks(layout: &Layout, tone: [u8; 3], pen: &Pen) -> Group {
    let [width, depth] = [layout.table.width, layout.table.depth].map(f64::from);
    let step = 190.0;
    let mut group = Group::new().set("fill", "none");
    let mut joints = String::new();
    let mut grain = String::new();
    let rows = (depth / step).ceil() as usize;
    for row in 0..rows {
        let y = row as f64 * step;
        if row > 0 {
            let bow = 2.0 * libm::sin(row as f64 * 1.7);
            joints.push_str(&format!("M0 {y:.1}Q{:.1} {:.1} {width:.1} {y:.1}", width / 2.0, y + bow));
        }
        for n in 0..if pen.fine { 6 } else { 4 } {
            let seed = (row * 7 + n * 3) as f64;
            let from = width * (0.5 + 0.48 * libm::sin(seed * 2.3));
            let at = (y + step * (0.15 + 0.14 * n as f64)).min(depth - 4.0);
            let long = 120.0 + 140.0 * libm::fabs(libm::sin(seed));
            let to = (from + long).min(width - 8.0);
            let mid = (from + to) / 2.0;
            grain.push_str(&format!("M{from:.1} {at:.1}Q{mid:.1} {:.1} {to:.1} {at:.1}", at + 3.0));
        }
    }
    let shade = |by: f64| tone.map(|c| (f64::from(c) * by).min(255.0) as u8);
    group = group.add(
        Path::new().set("d", grain).set("stroke", hex(shade(1.28))).set("stroke-width", pen.weight * 0.5),
    );
    group.add(Path::new().set("d", joints).set("stroke", hex(shade(0.55))).set("stroke-width", pen.weight * 0.9))
}

/// A cloth with its stitched hem and a fold across the middle.
fn cloth(edge: &[DVec2], tone: [u8; 3], pen: &Pen) -> Group {
    let centre = edge.iter().sum::<DVec2>() / edge.len().max(1) as f64;
    let span = edge.iter().map(|p| p.distance(centre)).fold(1.0, f64::max);
    let hem: Vec<DVec2> = edge
        .iter()
        .map(|p| centre + (*p - centre) * (1.0 - 9.0 / span))
        .collect();
    let deep = tone.map(|c| (f64::from(c) * 0.82) as u8);
    let stitched = Path::new()
        .set("d", line(&hem, true))
        .set("fill", "none")
        .set("stroke", hex(deep))
        .set("stroke-width", pen.weight * 0.7)
        .set("stroke-dasharray", format!("{:.1} {:.1}", pen.weight * 4.0, pen.weight * 2.5));
    let mut group = Group::new().add(filled(edge, tone)).add(stitched);
    if let [a, b, c, d] = edge {
        for t in [0.26, 0.5, 0.74] {
            let (from, to) = (a.lerp(*b, t), d.lerp(*c, t));
            let fold = Line::new()
                .set("x1", from.x.round()).set("y1", from.y.round())
                .set("x2", to.x.round()).set("y2", to.y.round());
            group = group.add(fold.set("stroke", hex(deep)).set("stroke-width", pen.weight * 0.8));
        }
    }
    group.add(inked(edge, pen.weight, pen.fall))
}

/// An arm over the table: sleeve, forearm, hand.
fn reaching(layout: &Layout, hand: &planner::layout::Hand, pen: &Pen) -> Group {
    let arm = arm(layout, hand);
    let person = layout.people.iter().find(|p| p.id == hand.person);
    let skin = person.map_or(INK, |p| p.skin.0);
    let cloth = person.map_or(INK, |p| p.sleeve.colour.0);
    let mut group = Group::new();
    for (part, tone, opacity) in [
        (&arm.forearm, skin, 0.86), (&arm.hand, skin, 0.9), (&arm.sleeve, cloth, 0.88),
    ] {
        if part.len() < 3 {
            continue;
        }
        group = group.add(filled(part, tone).set("fill-opacity", opacity));
        let edge = if tone == cloth { PENCIL } else { INK };
        let outline = Path::new().set("d", line(part, true)).set("fill", "none");
        group = group.add(outline.set("stroke", hex(edge)).set("stroke-width", pen.weight * 0.95));
    }
    group
}

/// The veil outside the frame, its pencil line, ticks and the top mark.
fn frame(layout: &Layout, view: &View, pen: &Pen) -> Group {
    let corners = frame_outline(&layout.frame);
    let far = 30_000;
    let veil = format!("M-{far} -{far}H{far}V{far}H-{far}Z{}", line(&corners, true));
    let veil = Path::new().set("d", veil).set("fill-rule", "evenodd");
    let border = Path::new().set("d", line(&corners, true)).set("fill", "none");
    let mut group = Group::new()
        .add(veil.set("fill", view.paper.as_str()).set("fill-opacity", FADE))
        .add(border.set("stroke", hex(PENCIL)).set("stroke-width", pen.weight * 0.8));
    let unit = pen.weight;
    let mut ticks = String::new();
    for (n, &corner) in corners.iter().enumerate() {
        for other in [corners[(n + 1) % 4], corners[(n + 3) % 4]] {
            let out = (corner - other).normalize_or_zero();
            ticks.push_str(&line(&[corner + out * unit * 5.0, corner + out * unit * 14.0], false));
        }
    }
    let up = (corners[0] - corners[3]).normalize_or_zero();
    let top = (corners[0] + corners[1]) * 0.5 + up * unit * 7.0;
    let tip = top + up * unit * 12.0;
    let wing = up.perp() * unit * 4.0;
    ticks.push_str(&line(&[top, tip], false));
    ticks.push_str(&line(&[tip - up * unit * 5.0 - wing, tip, tip - up * unit * 5.0 + wing], false));
    let ticks = Path::new().set("d", ticks).set("fill", "none").set("stroke", view.ink.as_str());
    group = group.add(ticks.set("stroke-width", unit));
    let label = tip + up * unit * 6.0;
    group = group.add(words("top", label, unit * 11.0).set("fill", view.ink.as_str()).set("font-style", "italic"));
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
    let pane = |back: f64| line(&[at + towards * back - across, at + towards * back + across], false);
    let mut d = pane(0.0) + &pane(unit * 4.0);
    for n in [-0.6, 0.0, 0.6] {
        let from = at + across * n - towards * unit * 3.0;
        d.push_str(&line(&[from, from - towards * unit * 9.0], false));
    }
    let mark = Path::new().set("d", d).set("fill", "none").set("stroke", view.ink.as_str());
    Group::new().add(mark.set("stroke-width", unit))
}

fn words(text: &str, at: DVec2, size: f64) -> Text {
    Text::new(text)
        .set("x", format!("{:.1}", at.x))
        .set("y", format!("{:.1}", at.y))
        .set("font-size", format!("{size:.1}"))
        .set("text-anchor", "middle")
        .set("font-family", "Palatino, 'Palatino Linotype', P052, 'Noto Serif', Georgia, serif")
}

fn marks(marks: &[Mark], pen: &Pen) -> Group {
    let mut group = Group::new().set("fill", "none");
    for mark in marks {
        let d = match mark {
            Mark::LostEdge { line: run } => stitched(run, pen.weight),
            Mark::Gap { from, to, .. } => {
                let bar = (*to - *from).normalize_or(DVec2::X).perp() * pen.weight * 6.0;
                line(&[*from - bar, *from + bar], false) + &line(&[*to - bar, *to + bar], false)
                    + &line(&[*from, *to], false)
            }
            Mark::Overrun { outline, .. } => line(outline, true),
            Mark::Arrow { from, to } => {
                let back = (*from - *to).normalize_or(DVec2::X) * pen.weight * 8.0;
                let wing = back.perp() * 0.5;
                line(&[*from, *to], false) + &line(&[*to + back + wing, *to, *to + back - wing], false)
            }
            Mark::Triangle { corners } => line(corners, true),
            Mark::Ring { at, radius } => {
                let r = *radius;
                format!("M{:.1} {:.1}a{r:.1} {r:.1} 0 1 0 {:.1} 0a{r:.1} {r:.1} 0 1 0 {:.1} 0", at.x - r, at.y, 2.0 * r, -2.0 * r)
            }
        };
        for (tone, width, opacity) in [(rgb(0x1a1613), 3.0, 0.6), (STITCH, 1.0, 1.0)] {
            let path = Path::new().set("d", d.as_str()).set("stroke", hex(tone));
            group = group.add(path.set("stroke-width", pen.weight * width).set("stroke-opacity", opacity));
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

fn crops(layout: &Layout, pen: &Pen) -> Group {
    let mut group = Group::new();
    let unit = pen.weight;
    for crop in &layout.crops {
        let corners = crop_outline(layout, crop);
        let path = Path::new().set("d", line(&corners, true)).set("fill", "none");
        let dash = format!("{:.1} {:.1}", 14.0 * unit, 7.0 * unit);
        group = group.add(
            path.set("stroke", hex(GREASE)).set("stroke-width", unit * 1.2).set("stroke-dasharray", dash),
        );
        let centre = corners.iter().sum::<DVec2>() / corners.len().max(1) as f64;
        let low = corners.iter().map(|p| p.y).fold(f64::MIN, f64::max);
        let at = dvec2(corners.iter().map(|p| p.x).fold(f64::MIN, f64::max) - unit * 40.0, low);
        let text = if crop.name.is_empty() { "crop" } else { crop.name.as_str() };
        let half = dvec2(text.chars().count() as f64 * 3.2 + 9.0, 9.0) * unit;
        let tape = [at - half, at + dvec2(half.x, -half.y), at + half, at + dvec2(-half.x, half.y)];
        group = group.add(filled(&tape, TAPE));
        group = group.add(words(text, at + dvec2(0.0, unit * 4.0), unit * 12.0).set("fill", hex(INK)));
        if crop.gutter > 0 {
            let high = corners.iter().map(|p| p.y).fold(f64::MAX, f64::min);
            let fold = line(&[dvec2(centre.x, high), dvec2(centre.x, low)], false);
            let dash = format!("{:.1} {:.1} {:.1} {:.1}", 12.0 * unit, 3.0 * unit, 1.5 * unit, 3.0 * unit);
            group = group.add(
                Path::new().set("d", fold).set("stroke", "#cfe3ee").set("stroke-width", unit).set("stroke-dasharray", dash),
            );
        }
    }
    group
}

/// Cut-paper discs for hero and main dishes, pointed flags for hands.
fn tags(layout: &Layout, view: &View, flags: &[(String, DVec2)]) -> Group {
    let px = view.per_pixel;
    let mut group = Group::new();
    let dishes = layout.items.iter().filter(|i| matches!(i.role, Role::Hero | Role::Support));
    for item in dishes {
        let [w, d] = item.size.extent().map(|mm| f64::from(mm) * 0.5);
        // Low and to the left, on the rim, off the face of the food.
        let at = item.at.vec() + dvec2(-0.62 * w, 0.72 * d);
        let disc = Circle::new().set("cx", at.x.round()).set("cy", at.y.round()).set("r", (11.0 * px).round());
        group = group.add(disc.set("fill", hex(PAPER)).set("stroke", hex(INK)).set("stroke-width", 0.8 * px));
        let text = words(&item.number.to_string(), at + dvec2(0.0, 4.6 * px), 13.0 * px);
        group = group.add(text.set("fill", hex(INK)).set("font-weight", "bold"));
    }
    for (name, at) in flags {
        let half = dvec2(13.0, 9.0) * px;
        let flag = [
            *at - half, *at + dvec2(half.x, -half.y), *at + dvec2(half.x + 6.0 * px, 0.0), *at + half,
            *at + dvec2(-half.x, half.y),
        ];
        group = group.add(filled(&flag, PAPER).set("stroke", hex(INK)).set("stroke-width", 0.8 * px));
        let text = words(name, *at + dvec2(0.0, 4.6 * px), 12.0 * px);
        group = group.add(text.set("fill", hex(INK)).set("font-weight", "bold"));
    }
    group
}

/// Everything a picture of the layout covers: the frame.
pub(crate) fn framed(layout: &Layout) -> [f64; 4] {
    let corners = frame_outline(&layout.frame);
    around(&corners)
}

/// What one crop covers.
pub(crate) fn cropped(layout: &Layout, id: Id) -> Option<[f64; 4]> {
    let crop = layout.crops.iter().find(|crop| crop.id == id)?;
    Some(around(&crop_outline(layout, crop)))
}

/// Left, top, width and height of the box round points, mm.
fn around(points: &[DVec2]) -> [f64; 4] {
    let low = points.iter().fold(DVec2::INFINITY, |low, p| low.min(*p));
    let high = points.iter().fold(DVec2::NEG_INFINITY, |high, p| high.max(*p));
    [low.x, low.y, high.x - low.x, high.y - low.y]
}
