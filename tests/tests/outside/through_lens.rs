//! What the lens sees against two independent programs: OpenCV's pinhole
//! camera, and rays cast one by one.
use glam::DVec2;
use outside_checks::{Row, Table};
use planner::layout::{Layout, open};
use planner::optics::View;
use planner::scene::Scene;
use planner::shape::{contains, frame_outline};

/// OpenCV 5.0's `projectPoints`, 1,600 points at heights from the cloth to
/// four fifths of the way to the lens, 1e-4 mm: its figures are written to six
/// places.
#[test]
fn points_above_the_table_are_seen_where_a_pinhole_camera_sees_them() {
    let table = Table::read("projection.csv");
    let mut compared = 0;
    for row in table.rows() {
        let under = DVec2::from_slice(&row.numbers("under"));
        let height = row.number("height");
        let view = View::Lens { under, height };
        let (points, seen) = (row.numbers("points"), row.numbers("seen"));
        for (point, seen) in points.chunks(3).zip(seen.chunks(2)) {
            let found = view.project(DVec2::from_slice(point), point[2]);
            let off = found.distance(DVec2::from_slice(seen));
            assert!(off <= 1e-4, "{}: {found} is off by {off} mm", row.place());
            compared += 1;
        }
    }
    assert_eq!(compared, 1_600, "points");
}

/// In the order of the generator: by name.
const PROPS: [&str; 5] = [
    "bottle",
    "nothing-known",
    "oil-carafe",
    "water-glass",
    "wine-glass",
];
const ACROSS: usize = 90;
const DOWN: usize = 60;

/// In the order of the generator of piled things.
const PILED: [&str; 6] = [
    "nothing-known",
    "bottle",
    "nothing-known",
    "nothing-known",
    "serving-bowl",
    "water-glass",
];

/// The table of a row with these things on it, numbered from 1.
fn table(row: Row<'_>, items: &[String]) -> Layout {
    let [width, depth, focal] = ["width", "depth", "focal"].map(|name| row.number(name));
    let file = format!(
        r#"{{"format":"overspread-layout","version":0,"id":"00000000000000aa","next_id":99,
        "table":{{"width":{width},"depth":{depth}}},"camera":{{"focal":{focal}}},
        "frame":{{"ratio":[3,2],"at":[{},{}],"width":{width}}},"items":[{}]}}"#,
        width / 2.0,
        depth / 2.0,
        items.join(",")
    );
    open(&file).unwrap_or_else(|problems| panic!("{}: {problems:?}", row.place()))
}

/// Round things, each on the table.
fn laid(row: Row<'_>) -> Layout {
    let things = row.lists("things");
    let items: Vec<String> = things
        .iter()
        .enumerate()
        .map(|(n, thing)| {
            format!(
                r#"{{"id":{},"prop":"{}","at":[{},{}],"height":{},"size":{{"shape":"disc","diameter":{}}}}}"#,
                n + 1,
                PROPS[thing[0] as usize],
                thing[1],
                thing[2],
                thing[4],
                thing[3]
            )
        })
        .collect();
    table(row, &items)
}

/// Boxes, round things and bowls, on the table or on one another.
fn piled(row: Row<'_>) -> Layout {
    let things = row.lists("things");
    let items: Vec<String> = things
        .iter()
        .enumerate()
        .map(|(n, thing)| {
            let [kind, x, y, wide, deep, height, turn, on] = thing[..] else {
                panic!("{}: {thing:?}", row.place());
            };
            let size = match kind as usize {
                0 => format!(r#""rect","width":{wide},"depth":{deep}"#),
                4 => format!(r#""disc","diameter":{wide},"rim":12"#),
                _ => format!(r#""disc","diameter":{wide}"#),
            };
            let on = if on > 0.0 {
                format!(r#""on":{on},"#)
            } else {
                String::new()
            };
            format!(
                r#"{{"id":{},"prop":"{}","at":[{x},{y}],{on}"turn":{turn},"height":{height},"size":{{"shape":{size}}}}}"#,
                n + 1,
                PILED[kind as usize]
            )
        })
        .collect();
    table(row, &items)
}

/// The thing each ray of the generator met, 0 for the table.
fn met(row: Row<'_>) -> Vec<u16> {
    let runs = row.text("seen").split_whitespace();
    let run = |run: &str| {
        let (id, count) = run.split_once('*')?;
        Some(vec![id.parse().ok()?; count.parse().ok()?])
    };
    let ids = runs.flat_map(|r| run(r).unwrap_or_else(|| panic!("{}: {r}", row.place())));
    ids.collect()
}

/// 200 tables of up to two dozen things that stand up. A pixel may differ only
/// where a change of thing passes within 2 mm of its middle, which the
/// generator finds by casting round it: what leans by under 1.5 mm is drawn
/// flat, and round outlines are drawn with 0.05 mm to spare. So no more may
/// differ than lie there, and of all pixels no more than one in 250.
#[test]
fn each_pixel_shows_the_thing_its_ray_meets_first() {
    agrees("rays.csv", laid);
}

/// The same of 200 tables with boxes turned any way, boards, things standing on
/// boards, and bowls whose mouths show what lies in them.
#[test]
fn each_pixel_shows_what_its_ray_meets_of_things_piled_up() {
    agrees("piled.csv", piled);
}

fn agrees(name: &str, laid: fn(Row<'_>) -> Layout) {
    let table = Table::read(name);
    assert_eq!(table.len(), 200, "scenes");
    let (mut pixels, mut apart) = (0, 0);
    for row in table.rows() {
        let layout = laid(row);
        let view = View::of(&layout);
        let View::Lens { height, .. } = view else {
            panic!("{}: no lens", row.place());
        };
        assert!(
            (height - row.number("lens")).abs() < 1e-5,
            "{}: lens",
            row.place()
        );
        let shown = frame_outline(&layout.frame);
        let scene = Scene::within(&layout, None, view, &shown, None);
        let [width, depth] = [row.number("width"), row.number("depth")];
        let step = DVec2::new(width / ACROSS as f64, depth / DOWN as f64);
        let met = met(row);
        assert_eq!(met.len(), ACROSS * DOWN, "{}: pixels", row.place());
        let mut differ = 0;
        for (n, expected) in met.iter().enumerate() {
            let at = DVec2::new((n % ACROSS) as f64 + 0.5, (n / ACROSS) as f64 + 0.5) * step;
            let top = scene.pieces.iter().rev().find(|p| contains(&p.outline, at));
            let found = top.map_or(0, |piece| piece.owner.0);
            differ += usize::from(found != *expected);
        }
        let allowed = row.number("edge") * met.len() as f64;
        assert!(
            differ as f64 <= allowed,
            "{}: {differ} pixels differ, {allowed:.0} lie at an edge",
            row.place()
        );
        pixels += met.len();
        apart += differ;
    }
    let share = apart as f64 / pixels as f64;
    assert!(share <= 1.0 / 250.0, "{share} of all pixels");
}
