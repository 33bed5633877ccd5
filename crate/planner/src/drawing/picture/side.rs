//! The set from the side, to scale: table, camera, arm, mast, feet, weights,
//! ceiling and light, in the upright plane through mast and lens; without a
//! mast, in the one across the picture. In ink alone, so that it prints in
//! black.
use glam::{DVec2, dvec2};
use svg::node::element::Group;

use super::cut::document;
use super::edge::row;
use super::frame::on_paper;
use super::lettering::lettering;
use super::view::{Keyed, View};
use crate::drawing::path::{PathData, tenth};
use crate::layout::{CardKind, Item, Layout, RigKind};
use crate::light::Source;
use crate::optics::{Lens, View as Seen};
use crate::rig::{ABOVE_CAMERA, HUB_HEIGHT, Stand};
use crate::scene::card_foot;
use crate::shape::{CHORD_ERROR, frame_outline, table_outline};
use crate::words::{Arg, length, mass, say};

/// Pixels across the sketch, which set the weight of its lines.
const ACROSS: f64 = 340.0;
/// Height of its lettering, pixels.
const LETTERS: f64 = 12.5;
/// A light farther from the lens than this is left out, mm.
const FAR: f64 = 3_500.0;
/// Breadth of a letter in shares of its height, rounded up.
const BREADTH: f64 = 0.56;
/// Half of a tick, mm.
const TICK: f64 = 35.0;
/// What is lower than this is left off the table, mm: it would be a line.
const STANDS_UP: f64 = 60.0;
/// How tall the photographer is drawn, mm.
const TALL: f64 = 1_700.0;

/// The sketch being made.
struct Sketch {
    fine: PathData,
    bold: PathData,
    dashed: PathData,
    /// Words, where they stand, and how they are anchored.
    words: Vec<(String, DVec2, &'static str)>,
    low: DVec2,
    high: DVec2,
}

/// Which line.
#[derive(Clone, Copy)]
enum Line {
    Fine,
    Bold,
    Dashed,
}

impl Sketch {
    fn path(&mut self, line: Line) -> &mut PathData {
        match line {
            Line::Fine => &mut self.fine,
            Line::Bold => &mut self.bold,
            Line::Dashed => &mut self.dashed,
        }
    }

    /// A line through places to the side and above the floor.
    fn row(&mut self, line: Line, places: &[DVec2]) {
        for p in places {
            self.low = self.low.min(*p);
            self.high = self.high.max(*p);
        }
        let drawn: Vec<DVec2> = places.iter().map(|p| dvec2(p.x, -p.y)).collect();
        row(self.path(line), &drawn);
    }

    fn looped(&mut self, line: Line, places: &[DVec2]) {
        self.row(line, &[places, &places[..1]].concat());
    }

    /// A box about a middle.
    fn boxed(&mut self, line: Line, at: DVec2, half: DVec2) {
        let corners = [
            at - half,
            at + dvec2(half.x, -half.y),
            at + half,
            at + dvec2(-half.x, half.y),
        ];
        self.looped(line, &corners);
    }

    /// A measured length, with ticks across its ends.
    fn measure(&mut self, from: DVec2, to: DVec2) {
        self.row(Line::Fine, &[from, to]);
        let tick = (to - from).perp().normalize_or_zero() * TICK;
        for end in [from, to] {
            self.row(Line::Fine, &[end - tick, end + tick]);
        }
    }

    fn say(&mut self, words: String, at: DVec2, anchor: &'static str) {
        self.words.push((words, dvec2(at.x, -at.y), anchor));
    }

    /// How far to either side drawing and words reach, with letters so high.
    fn sides(&self, letter: f64) -> [f64; 2] {
        let mut ends = [self.low.x, self.high.x];
        for (words, at, anchor) in &self.words {
            let wide = words.chars().count() as f64 * letter * BREADTH;
            let from = match *anchor {
                "start" => at.x,
                _ => at.x - wide * 0.5,
            };
            ends = [ends[0].min(from), ends[1].max(from + wide)];
        }
        ends
    }
}

/// Whether a thing stands on the table itself, high enough to be seen.
fn stands_up(item: &Item) -> bool {
    item.on.is_none() && f64::from(item.height) >= STANDS_UP
}

/// The sketch: what it shows, left, top, width and height in mm, and the
/// drawing; `None` when the lens cannot show the frame.
#[must_use]
pub fn side(layout: &Layout, view: &View) -> Option<([f64; 4], Group)> {
    let Seen::Lens { under, height } = Seen::of(layout) else {
        return None;
    };
    let stand = Stand::of(layout);
    // The mast stands on the right.
    let right = stand
        .as_ref()
        .map_or_else(|| layout.frame.turn.plus(180).direction(), |s| -s.along);
    let to_side = |p: DVec2| (p - under).dot(right);
    let top = f64::from(layout.table.height);
    let mut sketch = Sketch {
        fine: PathData::default(),
        bold: PathData::default(),
        dashed: PathData::default(),
        words: Vec::new(),
        low: DVec2::ZERO,
        high: DVec2::ZERO,
    };
    let span = |line: &[DVec2]| {
        let sides = line.iter().map(|p| to_side(*p));
        sides.fold((f64::INFINITY, -f64::INFINITY), |s, x| {
            (s.0.min(x), s.1.max(x))
        })
    };
    table(
        layout,
        span(&table_outline(&layout.table, CHORD_ERROR)),
        &mut sketch,
    );
    for item in layout.items.iter().filter(|i| stands_up(i)) {
        let [wide, deep] = item.size.extent().map(f64::from);
        let half = dvec2((wide + deep) * 0.25, f64::from(item.height) * 0.5);
        let at = dvec2(to_side(item.at.vec()), top + half.y);
        sketch.boxed(Line::Fine, at, half);
    }
    for card in &layout.cards {
        let [a, b] = card_foot(card).map(&to_side);
        let high = top + f64::from(card.height);
        let line = match card.kind {
            CardKind::White => Line::Fine,
            CardKind::Black => Line::Bold,
        };
        let corners = [dvec2(a, top), dvec2(b, top), dvec2(b, high), dvec2(a, high)];
        sketch.looped(line, &corners);
    }
    let lens = top + height;
    let sensor = top + Lens::of(&layout.camera).sensor_height(height)?;
    let frame = span(&frame_outline(&layout.frame));
    sketch.row(
        Line::Dashed,
        &[dvec2(frame.0, top), dvec2(0.0, lens), dvec2(frame.1, top)],
    );
    sketch.boxed(Line::Bold, dvec2(0.0, sensor + 15.0), dvec2(70.0, 45.0));
    let barrel = (sensor - 30.0 + lens) * 0.5;
    sketch.boxed(
        Line::Bold,
        dvec2(0.0, barrel),
        dvec2(35.0, (sensor - 30.0 - lens).abs() * 0.5),
    );
    lit(layout, &to_side, top, &mut sketch);
    match &stand {
        Some(stand) => stood(layout, stand, &to_side, &mut sketch),
        None => hung(layout, sensor, &mut sketch),
    }
    let units = layout.head.units;
    let told = |id: &str, mm: f64| say(id, &[("length", Arg::Text(length(mm, units)))]);
    if let Some(p) = layout.rig.photographer {
        let at = to_side(p.vec());
        sketch.row(Line::Fine, &[dvec2(at, 0.0), dvec2(at, TALL - 230.0)]);
        let head = [0.0_f64, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0].map(|n| {
            let (sin, cos) = libm::sincos(n * core::f64::consts::FRAC_PI_4);
            dvec2(at + cos * 90.0, TALL - 115.0 + sin * 115.0)
        });
        sketch.looped(Line::Fine, &head);
    }
    let (low, high) = (sketch.low, sketch.high);
    let ceiling = f64::from(layout.rig.ceiling);
    let px = (high.x - low.x + 240.0) / (ACROSS - 20.0);
    let letter = LETTERS * px;
    // The lens over the table, the ceiling over the floor.
    sketch.measure(dvec2(0.0, top), dvec2(0.0, lens - 40.0));
    let third = dvec2(0.0, top + height * 0.33);
    sketch.say(told("side-lens", height), third, "middle");
    let left = low.x - 120.0;
    sketch.measure(dvec2(left, 0.0), dvec2(left, ceiling));
    let above = dvec2(left - TICK, ceiling + letter * 0.5);
    sketch.say(told("side-ceiling", ceiling), above, "start");
    let ends = sketch.sides(letter);
    for z in [0.0, ceiling] {
        sketch.row(Line::Bold, &[dvec2(ends[0], z), dvec2(ends[1], z)]);
    }
    let area = [
        ends[0] - 10.0 * px,
        -ceiling.max(sketch.high.y) - letter * 1.8,
        ends[1] - ends[0] + 20.0 * px,
        ceiling.max(sketch.high.y) + letter * 4.6,
    ];
    Some((area, finished(sketch, view, px)))
}

/// The lines and words as nodes.
fn finished(sketch: Sketch, view: &View, px: f64) -> Group {
    let dashes = [5.0 * px, 4.0 * px].map(tenth).join(" ");
    let mut group = Group::new()
        .add(on_paper(sketch.dashed, view, px * 0.8).set("stroke-dasharray", dashes))
        .add(on_paper(sketch.fine, view, px * 0.9))
        .add(on_paper(sketch.bold, view, px * 1.9));
    for (words, at, anchor) in sketch.words {
        let text = lettering(&words, at, LETTERS * px);
        // On paper of its own, so that no line runs through it.
        let text = text.set("text-anchor", anchor).set("fill", view.ink);
        group = group.add(
            text.set("stroke", view.paper)
                .set("stroke-width", tenth(4.0 * px))
                .set("stroke-linejoin", "round")
                .set("paint-order", "stroke"),
        );
    }
    group
}

/// The table on two legs.
fn table(layout: &Layout, (left, right): (f64, f64), sketch: &mut Sketch) {
    let top = f64::from(layout.table.height);
    let thick = 30.0_f64.min(top);
    let middle = dvec2((left + right) * 0.5, top - thick * 0.5);
    sketch.boxed(Line::Bold, middle, dvec2((right - left) * 0.5, thick * 0.5));
    for x in [left * 0.85 + right * 0.15, left * 0.15 + right * 0.85] {
        sketch.row(Line::Fine, &[dvec2(x, top - thick), dvec2(x, 0.0)]);
    }
}

/// The light where it stands.
fn lit(layout: &Layout, to_side: &dyn Fn(DVec2) -> f64, top: f64, sketch: &mut Sketch) {
    let source = Source::of(layout);
    if to_side(source.centre.truncate()).abs() > FAR {
        return;
    }
    let corner = |u: f64, v: f64| {
        let p = source.point(u, v);
        dvec2(to_side(p.truncate()), (p.z + top).max(0.0))
    };
    let corners = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)].map(|(u, v)| corner(u, v));
    sketch.looped(Line::Bold, &corners);
    let middle = corners.iter().sum::<DVec2>() * 0.25;
    sketch.say(say("side-light", &[]), middle, "middle");
}

/// A camera that hangs from the ceiling, or nobody said from what.
fn hung(layout: &Layout, sensor: f64, sketch: &mut Sketch) {
    if layout.rig.kind == RigKind::Ceiling {
        let ceiling = f64::from(layout.rig.ceiling);
        sketch.row(
            Line::Bold,
            &[dvec2(0.0, sensor + 60.0), dvec2(0.0, ceiling)],
        );
    }
}

/// Arm, masts, legs and weights.
fn stood(layout: &Layout, stand: &Stand, to_side: &dyn Fn(DVec2) -> f64, sketch: &mut Sketch) {
    let (rig, units) = (&layout.rig, layout.head.units);
    let arm = stand.arm_height;
    let ends = stand.arm.map(|p| dvec2(to_side(p), arm));
    sketch.row(Line::Bold, &ends);
    let hanger = [dvec2(0.0, arm), dvec2(0.0, arm - ABOVE_CAMERA + 60.0)];
    sketch.row(Line::Bold, &hanger);
    for (mast, feet) in stand.masts.iter().zip(&stand.feet) {
        let x = to_side(*mast);
        // As high as it reaches, at most to the arm.
        let high = arm.min(f64::from(rig.mast_height));
        sketch.row(Line::Bold, &[dvec2(x, 0.0), dvec2(x, high)]);
        for foot in feet {
            sketch.row(
                Line::Bold,
                &[dvec2(x, HUB_HEIGHT), dvec2(to_side(*foot), 0.0)],
            );
        }
    }
    let told = |id: &str, mm: f64| say(id, &[("length", Arg::Text(length(mm, units)))]);
    let weighs = |id: &str, g: i32| say(id, &[("mass", Arg::Text(mass(f64::from(g), units)))]);
    let x = to_side(stand.masts[0]);
    sketch.say(
        told("side-reach", stand.reach),
        dvec2(x * 0.5, arm + 45.0),
        "middle",
    );
    sketch.say(told("side-arm", arm), dvec2(x + 45.0, arm + 45.0), "start");
    if let (Some(weight), 1) = (rig.counterweight, stand.masts.len()) {
        let at = dvec2(x + f64::from(weight.behind), arm - 90.0);
        for n in 0..3 {
            sketch.boxed(
                Line::Bold,
                at,
                dvec2(50.0, 80.0) * (1.0 - f64::from(n) * 0.3),
            );
        }
        sketch.say(
            weighs("side-weight", weight.mass),
            at + dvec2(70.0, -60.0),
            "start",
        );
    }
    if let Some(bag) = rig.bag {
        for place in stand.bag_places(bag.hung) {
            let out = |m: &DVec2| place.distance(*m);
            let out = stand.masts.iter().map(out).fold(f64::INFINITY, f64::min);
            let radius = f64::from(rig.foot_radius);
            let high = crate::rig::leg_height(out, radius).max(60.0);
            let at = dvec2(to_side(place), high);
            let sack = [
                at,
                at + dvec2(75.0, -60.0),
                at + dvec2(90.0, -0.8 * high),
                at + dvec2(-90.0, -0.8 * high),
                at + dvec2(-75.0, -60.0),
            ];
            sketch.looped(Line::Bold, &sack);
        }
        let places = stand.bag_places(bag.hung);
        let outer = places.iter().map(|p| to_side(*p)).fold(x, f64::max);
        let at = dvec2(outer + 110.0, HUB_HEIGHT * 0.5);
        sketch.say(weighs("side-bag", bag.mass), at, "start");
    }
    let Some(found) = stand.tipping() else { return };
    // The plumb line of the centre of mass, with a cross in a ring.
    let at = dvec2(to_side(found.centre.truncate()), found.centre.z);
    sketch.row(Line::Dashed, &[at, dvec2(at.x, 0.0)]);
    sketch.boxed(Line::Fine, at, DVec2::splat(40.0));
    sketch.row(Line::Fine, &[at - dvec2(60.0, 0.0), at + dvec2(60.0, 0.0)]);
    sketch.row(Line::Fine, &[at - dvec2(0.0, 60.0), at + dvec2(0.0, 60.0)]);
    sketch.say(say("side-centre", &[]), dvec2(at.x, -170.0), "middle");
}

/// The sketch as a file that stands alone.
#[must_use]
pub fn side_file(layout: &Layout) -> Option<String> {
    let view = View::default();
    let (area, group) = side(layout, &view)?;
    let across = 1_100.0;
    let high = area[3] * across / area[2].max(1.0);
    let [x, y, width, height] = area;
    let paper = svg::node::element::Rectangle::new()
        .set("x", x)
        .set("y", y)
        .set("width", width)
        .set("height", height)
        .set("fill", view.paper);
    let keyed = Keyed {
        key: "side".into(),
        group: Group::new().add(paper).add(group),
        at: None,
    };
    Some(document(area, [across, high], vec![keyed]).to_string())
}
