//! One thing of the table as nodes about its own centre.
use glam::{DVec2, dvec2};
use planner::catalogue::{self, Kind};
use planner::drawing::{Food, Form, INK, Pen, Prop, Tone, Ware, food, ink_width, prop};
use planner::layout::{Face, Item, Part, Parts, Size};
use planner::shape::{CHORD_ERROR, outline};
use svg::node::element::{Group, Path};

/// `#rrggbb`.
pub(crate) fn hex(tone: Tone) -> String {
    let [r, g, b] = tone;
    format!("#{r:02x}{g:02x}{b:02x}")
}

/// A loop or a line, coordinates to 0.1 mm.
pub(crate) fn line(points: &[DVec2], closed: bool) -> String {
    let mut d = String::new();
    for (n, p) in points.iter().enumerate() {
        let sign = if n == 0 { 'M' } else { 'L' };
        d.push_str(&format!("{sign}{:.1} {:.1}", p.x, p.y));
    }
    if closed {
        d.push('Z');
    }
    d
}

/// A filled loop.
pub(crate) fn filled(points: &[DVec2], tone: Tone) -> Path {
    Path::new()
        .set("d", line(points, true))
        .set("fill", hex(tone))
}

/// The ink round a loop: it swells away from the window and thins towards it.
pub(crate) fn inked(points: &[DVec2], weight: f64, fall: DVec2) -> Path {
    let n = points.len();
    let area: f64 = (0..n)
        .map(|i| points[i].perp_dot(points[(i + 1) % n]))
        .sum();
    let side = if area < 0.0 { -1.0 } else { 1.0 };
    let (mut outer, mut inner) = (Vec::with_capacity(n), Vec::with_capacity(n));
    for (i, &p) in points.iter().enumerate() {
        let along = points[(i + 1) % n] - points[(i + n - 1) % n];
        let normal = -along.perp().normalize_or_zero() * side;
        let wave = libm::sin(i as f64 * 0.7);
        let width = ink_width(weight, normal.dot(fall), wave);
        outer.push(p + normal * width * 0.6);
        inner.push(p - normal * width * 0.4);
    }
    Path::new()
        .set("d", line(&outer, true) + &line(&inner, true))
        .set("fill", hex(INK))
        .set("fill-rule", "evenodd")
}

/// Which drawn food a catalogue id is; the rest are heaps of their tones.
fn drawn(prop: &str) -> Option<Food> {
    Some(match prop {
        "mussels" => Food::Mussels,
        "lemon-wedges" => Food::LemonWedges,
        "citrus-half" => Food::Citrus,
        "loaf" | "torn-bread" | "bread-slice" => Food::Loaf,
        "olives" | "berries" => Food::Olives,
        "aubergine" => Food::Aubergine,
        "herbs" => Food::Herbs,
        "crumbs" | "nuts" => Food::Crumbs,
        "salt" => Food::Salt,
        _ => return None,
    })
}

fn tones(part: Option<&Part>) -> Vec<Tone> {
    part.map_or_else(Vec::new, |part| {
        part.colours.iter().map(|tone| tone.srgb.0).collect()
    })
}

/// A thing's own colours, the catalogue's where it has none.
fn colours(item: &Item) -> Parts {
    let usual = catalogue::prop(&item.prop)
        .map(catalogue::parts_of)
        .unwrap_or_default();
    Parts {
        rim: item.parts.rim.clone().or(usual.rim),
        well: item.parts.well.clone().or(usual.well),
        food: item.parts.food.clone().or(usual.food),
    }
}

/// The thing at true size about the origin, turned.
pub(crate) fn thing(item: &Item, pen: &Pen) -> Group {
    let parts = colours(item);
    let edible = catalogue::prop(&item.prop).is_some_and(|entry| entry.kind.is_food());
    if edible {
        morsel(item, &parts, pen)
    } else {
        vessel(item, &parts, pen)
    }
}

fn morsel(item: &Item, parts: &Parts, pen: &Pen) -> Group {
    let given = tones(parts.food.as_ref());
    let [w, d] = item.size.extent().map(f64::from);
    let mut form = Form::new(u32::from(item.id.0), dvec2(w, d) * 0.5, item.turn.radians());
    form.face = match item.face {
        Face::Crust => planner::drawing::Face::Skin,
        Face::Cut if item.prop == "torn-bread" => planner::drawing::Face::Torn,
        Face::Cut => planner::drawing::Face::Cut,
        Face::Usual | Face::Open | Face::Closed => planner::drawing::Face::Usual,
    };
    match drawn(&item.prop) {
        Some(kind) => food(kind, &form, &given, pen),
        None => heap(
            item.id.0,
            dvec2(w, d) * 0.5,
            item.turn.radians(),
            &given,
            pen,
        ),
    }
}

/// A heap of pieces in the food's tones, in the shares the tones stand in.
fn heap(seed: u16, half: DVec2, turn: f64, tones: &[Tone], pen: &Pen) -> Group {
    let mut group = Group::new();
    let Some(&base) = tones.first() else {
        return group;
    };
    let mut dice = Dice(u32::from(seed).wrapping_mul(0x9e37_79b9) | 1);
    let (sin, cos) = libm::sincos(turn);
    let axis = dvec2(cos, sin);
    let rim: Vec<DVec2> = (0..40)
        .map(|i| {
            let (s, c) = libm::sincos(f64::from(i) * std::f64::consts::TAU / 40.0);
            axis.rotate(dvec2(c, s) * half * (0.96 + 0.05 * dice.next()))
        })
        .collect();
    group = group.add(filled(&rim, base));
    let piece = half.min_element() * 0.24;
    let count = if pen.fine { 34 } else { 20 };
    let mut paths = vec![String::new(); tones.len()];
    for n in 0..count {
        // Even over the disc: the sunflower's spiral (Vogel 1979).
        let radius = ((f64::from(n) + 0.5) / f64::from(count)).sqrt() * 0.84;
        let (s, c) = libm::sincos(f64::from(n) * 2.399_963 + dice.next());
        let at = axis.rotate(dvec2(c, s) * half * radius);
        let lean = dice.next() * std::f64::consts::TAU;
        let loops: Vec<DVec2> = (0..9)
            .map(|i| {
                let (s, c) = libm::sincos(f64::from(i) * std::f64::consts::TAU / 9.0 + lean);
                at + dvec2(c * 1.35, s) * piece * (0.8 + 0.35 * dice.next())
            })
            .collect();
        let tone = (n as usize * 2 + 1) % tones.len();
        paths[tone].push_str(&line(&loops, true));
    }
    for (d, tone) in paths.into_iter().zip(tones) {
        let path = Path::new().set("d", d).set("fill", hex(*tone));
        group = group.add(
            path.set("stroke", hex(INK))
                .set("stroke-width", pen.weight * 0.32),
        );
    }
    group.add(inked(&rim, pen.weight * 0.8, pen.fall))
}

/// Which drawn prop a catalogue id is; the rest are outlines of their size.
fn prop_of(id: &str, kind: Kind) -> Option<Prop> {
    Some(match (id, kind) {
        ("enamel-pot" | "pale-lined-pot", _) => Prop::Pot,
        ("mug" | "coffee-cup", _) => Prop::Cup,
        ("oil-carafe" | "bottle", _) => Prop::Carafe,
        ("fork", _) => Prop::Fork,
        ("knife", _) => Prop::Knife,
        ("spoon" | "serving-spoon", _) => Prop::Spoon,
        ("chopsticks", _) => Prop::Chopsticks,
        ("wooden-board", _) => Prop::Board,
        (_, Kind::Candle) => Prop::Candle,
        (_, Kind::Glass) => Prop::Glass,
        (_, Kind::Vessel | Kind::Board) => Prop::Dish,
        _ => return None,
    })
}

fn vessel(item: &Item, parts: &Parts, pen: &Pen) -> Group {
    let kind = catalogue::prop(&item.prop).map_or(Kind::Object, |entry| entry.kind);
    let rim = tones(parts.rim.as_ref()).first().copied().unwrap_or(INK);
    let well = tones(parts.well.as_ref()).first().copied();
    let [w, d] = item.size.extent().map(f64::from);
    let mut group = Group::new();
    match prop_of(&item.prop, kind) {
        Some(kind) => {
            let form = Form::new(u32::from(item.id.0), dvec2(w, d) * 0.5, item.turn.radians());
            let ware = Ware {
                rim,
                well,
                rim_width: f64::from(item.size.rim()),
                square: matches!(item.size, Size::Rect { .. }),
            };
            group = group.add(prop(kind, &form, &ware, pen));
        }
        None => {
            let edge = outline(&item.size, DVec2::ZERO, item.turn.degrees(), CHORD_ERROR);
            group = group
                .add(filled(&edge, rim))
                .add(inked(&edge, pen.weight, pen.fall));
        }
    }
    if let Some(part) = parts.food.as_ref() {
        let half = (dvec2(w, d) - DVec2::splat(f64::from(2 * item.size.rim()))) * 0.43;
        let turn = item.turn.radians();
        group = group.add(heap(item.id.0, half, turn, &tones(Some(part)), pen));
    }
    group
}

/// Small even chances from a seed: one step of a multiplicative generator
/// (Park and Miller's, modulus 2³¹ − 1).
struct Dice(u32);

impl Dice {
    fn next(&mut self) -> f64 {
        let next = u64::from(self.0 % 0x7fff_fffe + 1) * 48_271 % 0x7fff_ffff;
        self.0 = next as u32;
        next as f64 / f64::from(0x7fff_ffffu32)
    }
}
