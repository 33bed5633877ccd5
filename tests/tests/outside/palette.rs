//! What is seen of each thing and the shares of the picture's colours, against
//! a painter of its own that fills the same outlines over each other pixel by
//! pixel (`reference/painter.py`, 1,500 pixels across).
use outside_checks::python;
use outside_checks::tree::read;
use planner::colour::Shade;
use planner::layout::{Layout, open};
use planner::readings::{Finding, Study, report};
use planner::scene::{PartKind, Scene};
use planner::shape::frame_outline;
use serde_json::{Value, json};

/// Pixels across.
const ACROSS: u32 = 1_500;

fn tones(shades: &[Shade]) -> Value {
    let tone = |s: &Shade| json!([s.lab.l, s.lab.a, s.lab.b, s.share]);
    shades.iter().map(tone).collect()
}

/// What the painter makes of a scene.
fn painted(layout: &Layout, scene: &Scene) -> Value {
    let corners = frame_outline(&layout.frame);
    let [top_left, top_right, _, bottom_left] = corners[..] else {
        panic!("a frame has four corners");
    };
    let pair = |p: glam::DVec2| json!([p.x, p.y]);
    let mut pieces = vec![json!({ "outline": [], "tones": tones(&scene.floor) })];
    pieces.extend(scene.pieces.iter().map(|piece| {
        let outline: Value = piece.outline.iter().map(|p| pair(*p)).collect();
        json!({ "outline": outline, "tones": tones(&piece.shades) })
    }));
    let asked = json!({ "corners": [pair(top_left), pair(top_right), pair(bottom_left)],
        "across": ACROSS, "pieces": pieces });
    let answer = python::answer("painter.py", asked.to_string());
    serde_json::from_str(&answer).expect("JSON")
}

/// The starters, and a table where cloth lies over what stands on it.
fn layouts() -> Vec<(&'static str, Layout)> {
    let file = |path: &str| open(&read(path)).expect("a sound file");
    let mut over = file("../static/starters/harbour-supper.spread.json");
    let linen = over.linens.first_mut().expect("a runner");
    (linen.at, linen.state) = (over.frame.at, planner::layout::LinenState::Flat);
    linen.over = over.items.iter().map(|item| item.id).collect();
    vec![
        (
            "harbour supper",
            file("../static/starters/harbour-supper.spread.json"),
        ),
        (
            "citrus breakfast",
            file("../static/starters/citrus-breakfast.spread.json"),
        ),
        (
            "noodle night",
            file("../static/starters/noodle-night.spread.json"),
        ),
        ("under cloth", over),
    ]
}

fn numbers(value: &Value) -> Vec<f64> {
    let all = value.as_array().expect("a list").iter();
    all.map(|n| n.as_f64().expect("a number")).collect()
}

/// Whole percents of the swatches told, the largest first.
fn told(finding: &Finding) -> Vec<f64> {
    let shares = finding.working.iter().filter_map(|line| {
        let (_, after) = line.split_once(": #")?;
        let (before, _) = after.split_once("% of the picture")?;
        before.split(", ").nth(1)?.parse().ok()
    });
    shares.collect()
}

/// Tolerance for what is seen of one piece: its edge passes through pixels,
/// each right to half a pixel at random; a tenth of a pixel along all of its
/// edge is more than that comes to, and 0.02% of the picture for the smallest.
#[test]
fn what_is_seen_of_each_piece_is_what_a_painter_leaves_of_it() {
    for (name, layout) in layouts() {
        let scene = Scene::of(&layout, None);
        let seen = numbers(&painted(&layout, &scene)["seen"]);
        let all = scene.frame.area();
        let pixel = f64::from(layout.frame.width) / f64::from(ACROSS);
        let mut cloth = 0.0;
        for (n, piece) in scene.pieces.iter().enumerate() {
            let (ours, theirs) = (scene.seen(n).area() / all, seen[n + 1]);
            let edge = planner::shape::perimeter(&piece.outline) * pixel * 0.1 / all;
            assert!(
                (ours - theirs).abs() < edge + 0.0002,
                "{name}, {:?} of {:?}: {ours} and {theirs}",
                piece.part,
                piece.owner
            );
            if piece.part == PartKind::Linen {
                cloth += theirs;
            }
        }
        if name == "under cloth" {
            assert!(cloth > 0.1, "the cloth covers things: {cloth}");
        }
    }
}

/// Tolerances: 0.1% of the picture for the share of warm tones, which has all
/// its digits; 0.6% for the swatches, which are told in whole percents.
#[test]
fn shares_of_colours_are_those_a_painter_counts() {
    for (name, layout) in layouts() {
        let theirs = painted(&layout, Study::new(&layout).scene());
        let findings = report(&Study::new(&layout), true).findings;
        let ours = findings.iter().find(|f| f.key == "colour");
        let ours = ours.unwrap_or_else(|| panic!("{name}: colours are told"));
        let warm = theirs["families"]["warm"].as_f64().expect("a number") * 100.0;
        assert!(
            (ours.figure - warm).abs() < 0.1,
            "{name}, warm: {} and {warm}",
            ours.figure
        );
        let (swatches, groups) = (told(ours), numbers(&theirs["groups"]));
        assert!(swatches.len() >= 4, "{name}: {:?}", ours.working);
        for (n, share) in swatches.iter().enumerate() {
            let counted = groups[n] * 100.0;
            assert!(
                (share - counted).abs() < 0.6,
                "{name}, swatch {n}: {share} and {counted}"
            );
        }
    }
}
