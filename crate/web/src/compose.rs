//! A layout as keyed groups of drawing, bottom to top.
use glam::DVec2;
use planner::catalogue::{self, Kind};
use planner::drawing::{INK, PENCIL, Pen, shadow};
use planner::layout::{ExposureKind, Id, Item, Layout};
use planner::readings::Mark;
use planner::scene::{arm, crop_outline, flag, linen_outline};
use planner::shape::{CHORD_ERROR, frame_outline, outline, table_outline};
use svg::node::element::{Group, Line, Path};

use crate::over::{crops, frame, marks, tags};
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
    pub(crate) crops: bool,
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
            crops: false,
            fine: false,
            paper: "var(--sheet)".into(),
            ink: "var(--ink)".into(),
        }
    }
}

/// Weight of an ink line, px.
const WEIGHT: f64 = 1.1;
/// Every group of the drawing.
pub(crate) fn groups(layout: &Layout, view: &View) -> Vec<Keyed> {
    let fall = -layout.light.clock.direction();
    let weight = WEIGHT * view.per_pixel;
    let pen = Pen {
        weight,
        fall,
        fine: view.fine,
    };
    let mut all = Vec::new();
    let mut push = |key: String, group: Group, transform: Option<DVec2>| {
        let transform = transform.map(|at| at.to_array());
        all.push(Keyed {
            key,
            group,
            transform,
        });
    };
    push("surface".into(), surface(layout, &pen), None);
    for linen in &layout.linens {
        let edge = linen_outline(linen);
        push(
            format!("linen-{}", linen.id.0),
            cloth(&edge, linen.colour.0, &pen),
            None,
        );
    }
    for item in in_paint_order(layout) {
        let at = item.at.vec();
        let shade = outline(&item.size, DVec2::ZERO, item.turn.degrees(), CHORD_ERROR);
        let strewn = catalogue::prop(&item.prop).is_some_and(|entry| entry.kind == Kind::Scatter);
        if item.height > 0 && item.on.is_none() && !strewn {
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
    }
    if view.crops {
        push("crops".into(), crops(layout, &pen), None);
    }
    push("tags".into(), tags(layout, view, &flags), None);
    all
}

fn exposure(layout: &Layout, place: usize) -> Option<Id> {
    let mut shots = layout
        .exposures
        .iter()
        .filter(|e| e.kind == ExposureKind::Hands);
    shots.nth(place).map(|e| e.id)
}

/// Items on the table in their order, each followed by what lies on it.
fn in_paint_order(layout: &Layout) -> Vec<&Item> {
    let mut order = Vec::with_capacity(layout.items.len());
    let mut waiting: Vec<&Item> = layout
        .items
        .iter()
        .filter(|i| i.on.is_none())
        .rev()
        .collect();
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
    let wooden = [
        "charcoal-planks",
        "oak",
        "light-oak",
        "walnut",
        "painted-board",
    ];
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
            joints.push_str(&format!(
                "M0 {y:.1}Q{:.1} {:.1} {width:.1} {y:.1}",
                width / 2.0,
                y + bow
            ));
        }
        for n in 0..if pen.fine { 6 } else { 4 } {
            let seed = (row * 7 + n * 3) as f64;
            let from = width * (0.5 + 0.48 * libm::sin(seed * 2.3));
            let at = (y + step * (0.15 + 0.14 * n as f64)).min(depth - 4.0);
            let long = 120.0 + 140.0 * libm::fabs(libm::sin(seed));
            let to = (from + long).min(width - 8.0);
            let mid = (from + to) / 2.0;
            grain.push_str(&format!(
                "M{from:.1} {at:.1}Q{mid:.1} {:.1} {to:.1} {at:.1}",
                at + 3.0
            ));
        }
    }
    let shade = |by: f64| tone.map(|c| (f64::from(c) * by).min(255.0) as u8);
    group = group.add(
        Path::new()
            .set("d", grain)
            .set("stroke", hex(shade(1.28)))
            .set("stroke-width", pen.weight * 0.5),
    );
    group.add(
        Path::new()
            .set("d", joints)
            .set("stroke", hex(shade(0.55)))
            .set("stroke-width", pen.weight * 0.9),
    )
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
        .set(
            "stroke-dasharray",
            format!("{:.1} {:.1}", pen.weight * 4.0, pen.weight * 2.5),
        );
    let mut group = Group::new().add(filled(edge, tone)).add(stitched);
    if let [a, b, c, d] = edge {
        for t in [0.26, 0.5, 0.74] {
            let (from, to) = (a.lerp(*b, t), d.lerp(*c, t));
            let fold = Line::new()
                .set("x1", from.x.round())
                .set("y1", from.y.round())
                .set("x2", to.x.round())
                .set("y2", to.y.round());
            group = group.add(
                fold.set("stroke", hex(deep))
                    .set("stroke-width", pen.weight * 0.8),
            );
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
        (&arm.forearm, skin, 0.86),
        (&arm.hand, skin, 0.9),
        (&arm.sleeve, cloth, 0.88),
    ] {
        if part.len() < 3 {
            continue;
        }
        group = group.add(filled(part, tone).set("fill-opacity", opacity));
        let edge = if tone == cloth { PENCIL } else { INK };
        let outline = Path::new().set("d", line(part, true)).set("fill", "none");
        group = group.add(
            outline
                .set("stroke", hex(edge))
                .set("stroke-width", pen.weight * 0.95),
        );
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
    let high = points
        .iter()
        .fold(DVec2::NEG_INFINITY, |high, p| high.max(*p));
    [low.x, low.y, high.x - low.x, high.y - low.y]
}
