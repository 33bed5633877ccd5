//! The plan of a set sheet: outlines to scale, seen from above, in black, with
//! the numbers of the papers.
use glam::{DVec2, dvec2};
use svg::node::element::{Group, Polygon};

use super::letters::width;
use super::press::{ruled, written};
use super::told::{linen_tag, tag};
use crate::layout::{Item, Layout, Role, Units};
use crate::scene::{Layer, in_paint_order, linen_span, silhouette};
use crate::shape::{Bounds, CHORD_ERROR, frame_outline, table_outline};
use crate::words::{Arg, fixed, length, say};

/// Numbers on the plan, mm: 12.2 pt.
const NUMBER: f64 = 4.3;
/// Letters round it, mm.
const LETTERS: f64 = 3.2;
/// Room for what is written round the plan, mm.
const ROUND: f64 = 8.0;
/// What lies farther past frame and table than this is not on the plan, mm.
const PAST: f64 = 400.0;

/// The plan within a width and a height, and how high it comes out.
pub(super) fn plan(layout: &Layout, wide: f64, most: f64) -> (Group, f64) {
    let table = table_outline(&layout.table, CHORD_ERROR);
    let frame = frame_outline(&layout.frame);
    let core = Bounds::around(&[table.clone(), frame.clone()].concat());
    let core = core.unwrap_or(Bounds {
        min: DVec2::ZERO,
        max: DVec2::ONE,
    });
    let near = core.grown(PAST);
    let mut all = core;
    let items = layout.items.iter().map(silhouette);
    for outline in items.chain(layout.linens.iter().map(linen_span)) {
        if let Some(own) = Bounds::around(&outline).filter(|own| near.meets(*own)) {
            all = all.joined(own);
        }
    }
    all = Bounds {
        min: all.min.max(near.min),
        max: all.max.min(near.max),
    };
    let room = dvec2(wide - 2.0 * ROUND, most - 2.0 * ROUND - LETTERS);
    let scale = (room / all.size()).min_element();
    let drawn = all.size() * scale;
    let from = dvec2((wide - drawn.x) * 0.5, ROUND);
    let to = |p: DVec2| from + (p - all.min) * scale;
    let shape = |outline: &[DVec2], weight: &str, fill: &str| {
        let mut points = String::new();
        for p in outline {
            let p = to(*p);
            points.push_str(&fixed(p.x, 2));
            points.push(',');
            points.push_str(&fixed(p.y, 2));
            points.push(' ');
        }
        Polygon::new()
            .set("points", points)
            .set("fill", fill)
            .set("stroke", "#000")
            .set("stroke-width", weight)
    };
    let mut group = Group::new().add(shape(&table, "0.5", "#fff"));
    for layer in in_paint_order(layout) {
        group = group.add(match layer {
            Layer::Linen(linen) => {
                shape(&linen_span(linen), "0.2", "#fff").set("stroke-dasharray", "1 0.6")
            }
            Layer::Item(item) => {
                let weight = if item.role == Role::Hero {
                    "0.7"
                } else {
                    "0.25"
                };
                shape(&silhouette(item), weight, "#fff")
            }
        });
    }
    group = group.add(shape(&frame, "0.3", "none").set("stroke-dasharray", "3 1.2"));
    group = named(group, layout, &to, scale);
    let whole = Bounds {
        min: from,
        max: from + drawn,
    };
    group = marks(group, layout, &to, &frame, whole);
    let low = from.y + drawn.y;
    (bar(group, layout, scale, low), low + ROUND + LETTERS)
}

/// The numbers, each on its thing or beside it with a line to it.
fn named(mut group: Group, layout: &Layout, to: &dyn Fn(DVec2) -> DVec2, scale: f64) -> Group {
    let mut all: Vec<(String, DVec2, f64)> = Vec::new();
    // What lies in the middle of another has that one's number beside its own in
    // the list.
    let told = |item: &Item| {
        let below = layout.items.iter().find(|o| Some(o.id) == item.on);
        below.is_some_and(|o| to(o.at.vec()).distance(to(item.at.vec())) < NUMBER)
    };
    for item in layout.items.iter().filter(|item| !told(item)) {
        let [w, d] = item.size.extent().map(f64::from);
        all.push((tag(layout, item), to(item.at.vec()), w.max(d) * 0.5 * scale));
    }
    for linen in &layout.linens {
        // Off its middle, where things stand.
        let corner = linen_span(linen).first().copied().unwrap_or_default();
        let at = linen.at.vec().lerp(corner, 0.8);
        all.push((linen_tag(layout, linen.id), to(at), 0.0));
    }
    let mut taken: Vec<Bounds> = Vec::new();
    for (text, at, _) in &all {
        let half = dvec2(width(text, NUMBER, true) * 0.5 + 0.5, NUMBER * 0.45);
        let free = |p: DVec2| {
            let own = Bounds {
                min: p - half,
                max: p + half,
            };
            (!taken.iter().any(|other| other.meets(own))).then_some((p, own))
        };
        let ways = (0..RINGS * 12).map(|n| {
            let (sin, cos) = libm::sincos(f64::from(n % 12) * std::f64::consts::FRAC_PI_6);
            let far = f64::from(n / 12 + 1) * NUMBER * 0.7;
            *at + dvec2(cos, sin) * far
        });
        let found = std::iter::once(*at).chain(ways).find_map(free);
        let own = Bounds {
            min: *at - half,
            max: *at + half,
        };
        let (p, own) = found.unwrap_or((*at, own));
        taken.push(own);
        if p.distance(*at) > NUMBER {
            group = group.add(ruled(at.to_array(), p.to_array(), 0.15));
        }
        let left = p - dvec2(half.x - 0.5, -NUMBER * 0.36);
        let name = written(text, left.to_array(), NUMBER, true, f64::INFINITY);
        // A white edge, so that it shows on lines of any thickness.
        group = group.add(
            name.set("stroke", "#fff")
                .set("stroke-width", "0.9")
                .set("paint-order", "stroke"),
        );
    }
    group
}

/// Rings of places tried round a thing for its number.
const RINGS: i32 = 7;

/// The corner all is measured from, the top of the picture, the side of the
/// light, and where the lens hangs.
fn marks(
    mut group: Group,
    layout: &Layout,
    to: &dyn Fn(DVec2) -> DVec2,
    frame: &[DVec2],
    drawn: Bounds,
) -> Group {
    let corner = to(DVec2::ZERO);
    for axis in [DVec2::X, DVec2::Y] {
        let tip = corner + axis * 9.0;
        group = group
            .add(ruled(corner.to_array(), tip.to_array(), 0.5))
            .add(arrow(tip, axis));
    }
    let at = |p: DVec2, text: &str, size: f64| {
        let left = p - dvec2(width(text, size, false) * 0.5, -size * 0.35);
        written(text, left.to_array(), size, false, f64::INFINITY)
            .set("stroke", "#fff")
            .set("stroke-width", "0.7")
            .set("paint-order", "stroke")
    };
    group = group
        .add(at(corner - dvec2(2.2, 2.2), "0", LETTERS))
        .add(at(corner + dvec2(11.5, -2.4), "x", LETTERS))
        .add(at(corner + dvec2(-2.2, 11.5), "y", LETTERS));
    // The lens, as a cross.
    let lens = to(layout.frame.at.vec());
    for half in [dvec2(2.0, 0.0), dvec2(0.0, 2.0)] {
        group = group.add(ruled(
            (lens - half).to_array(),
            (lens + half).to_array(),
            0.3,
        ));
    }
    let [left, right, _, below] = [0, 1, 2, 3].map(|n| to(frame[n]));
    let up = (left - below).normalize_or_zero();
    let top = (left + right) * 0.5;
    group = group
        .add(ruled(top.to_array(), (top + up * 3.5).to_array(), 0.4))
        .add(arrow(top + up * 3.5, up))
        .add(at(top + up * 6.2, &say("drawing-top", &[]), LETTERS));
    // The light, at the edge of the drawing on its side, clear of the corner.
    let towards = layout.light.clock.direction();
    let half = drawn.size() * 0.5 + DVec2::splat(3.5);
    let far = (half / towards.abs().max(DVec2::splat(1e-6))).min_element();
    let mut out = drawn.centre() + towards * far;
    let close = |p: DVec2, to: DVec2| p.distance(to) < CLEAR;
    if close(out, corner) || close(out, top + up * 6.2) {
        let along = if half.x * towards.y.abs() < half.y * towards.x.abs() {
            DVec2::Y
        } else {
            DVec2::X
        };
        out += along * CLEAR;
    }
    group
        .add(ruled(
            (out - towards * 1.5).to_array(),
            (out - towards * 6.0).to_array(),
            0.4,
        ))
        .add(arrow(out - towards * 6.0, -towards))
        .add(at(out, &say("drawing-window", &[]), LETTERS))
}

/// Marks keep so far from each other, mm.
const CLEAR: f64 = 17.0;

/// The tip of an arrow.
fn arrow(tip: DVec2, way: DVec2) -> Polygon {
    let wing = way.perp() * 0.9;
    let points: Vec<String> = [tip + way * 1.4, tip - wing, tip + wing]
        .iter()
        .map(|p| [fixed(p.x, 2), fixed(p.y, 2)].join(","))
        .collect();
    Polygon::new().set("points", points.join(" "))
}

/// The bar that says the scale, below the plan.
fn bar(group: Group, layout: &Layout, scale: f64, low: f64) -> Group {
    let units = layout.head.units;
    let mm = match units {
        Units::Cm => 500.0,
        Units::In => 20.0 * 25.4,
    };
    let long = mm * scale;
    let y = low + ROUND + LETTERS * 0.4;
    let ratio = Arg::Text(fixed(1.0 / scale, 1));
    let args = [("ratio", ratio), ("length", Arg::Text(length(mm, units)))];
    let mut group = group.add(ruled([0.0, y], [long, y], 0.4));
    for x in [0.0, long * 0.5, long] {
        group = group.add(ruled([x, y - 1.2], [x, y + 1.2], 0.3));
    }
    let text = say("sheet-scale", &args);
    group.add(written(
        &text,
        [long + 3.0, y + 1.0],
        LETTERS,
        false,
        f64::INFINITY,
    ))
}
