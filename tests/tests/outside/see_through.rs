//! The transparent plan against an independent camera.
use glam::DVec2;
use outside_checks::{Row, Table};
use planner::drawing::{Shown, see_through};
use planner::layout::{Layout, open};
use planner::shape::on_side;

fn laid(row: Row<'_>) -> Layout {
    let [a, b, x, y, width, turn] = row.numbers("frame")[..] else {
        panic!("{}: frame", row.place());
    };
    let items: Vec<String> = row
        .lists("things")
        .iter()
        .enumerate()
        .map(|(n, thing)| {
            format!(
                r#"{{"id":{},"prop":"nothing-known","at":[{},{}],"height":{},"size":{{"shape":"disc","diameter":{}}}}}"#,
                n + 1,
                thing[0],
                thing[1],
                thing[3],
                thing[2]
            )
        })
        .collect();
    let file = format!(
        r#"{{"format":"overspread-layout","version":0,"id":"00000000000000aa","next_id":99,
        "table":{{"width":4000,"depth":3000}},
        "camera":{{"format":"{}","focal":{},"pixels":[{}]}},
        "frame":{{"ratio":[{a},{b}],"at":[{x},{y}],"width":{width},"turn":{turn}}},
        "items":[{}]}}"#,
        row.text("sensor"),
        row.text("focal"),
        row.text("pixels").replace(' ', ","),
        items.join(",")
    );
    open(&file).unwrap_or_else(|problems| panic!("{}: {problems:?}", row.place()))
}

/// The closed lines of the first path in a group of the picture: absolute
/// moves, relative lines.
fn rings(svg: &str, group: &str) -> Vec<Vec<DVec2>> {
    let from = svg.find(&format!("id=\"{group}\"")).expect("the group");
    let data = svg[from..].split_once(" d=\"").expect("a path").1;
    let data = data.split_once('"').expect("its end").0;
    let loops = data.split('Z').filter(|ring| !ring.is_empty());
    loops
        .map(|ring| {
            let spaced = ring.replace('-', " -").replace(['M', 'l'], " ");
            let numbers: Vec<f64> = spaced
                .split_whitespace()
                .map(|n| n.parse().expect("a number"))
                .collect();
            let mut at = DVec2::ZERO;
            let steps = numbers.chunks_exact(2).map(DVec2::from_slice);
            let line = steps.map(|step| {
                at += step;
                at
            });
            line.collect()
        })
        .collect()
}

/// How far a place is from a closed line.
fn away(p: DVec2, ring: &[DVec2]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    let sides = ring.iter().zip(next);
    sides
        .map(|(a, b)| on_side(p, *a, *b).distance(p))
        .fold(f64::INFINITY, f64::min)
}

/// OpenCV 5.0's `projectPoints`, 60 tables: full frame, four thirds, medium
/// format and phone, frames lying, upright, square and turned. Round outlines
/// are drawn with 0.05 mm to spare and to a tenth of a pixel; OpenCV's corners
/// are 2° apart. So an outline may be off by a tenth of a mm, and half a pixel.
#[test]
fn outlines_lie_where_another_camera_sees_them() {
    let table = Table::read("see_through.csv");
    assert_eq!(table.len(), 60, "tables");
    let (mut compared, mut upright) = (0, 0);
    for row in table.rows() {
        let layout = laid(row);
        let plan = see_through(&layout, Shown::All).expect("a lens that shows it");
        let [long, short] = row.numbers("pixels")[..] else {
            panic!("{}: pixels", row.place());
        };
        let lies = f64::from(layout.frame.width) >= layout.frame.height();
        let size = if lies { [long, short] } else { [short, long] };
        assert_eq!(plan.pixels.map(f64::from), size, "{}", row.place());
        upright += usize::from(!lies);
        let drawn = rings(&plan.svg, "things");
        let high = layout.frame.height();
        let wide = f64::from(layout.frame.width);
        let allowed = 0.5 + 0.1 * long / wide.max(high);
        for hull in row.lists("seen") {
            let hull: Vec<DVec2> = hull.chunks_exact(2).map(DVec2::from_slice).collect();
            let middle = hull.iter().sum::<DVec2>() / hull.len() as f64;
            let span = |ring: &[DVec2]| {
                let far = ring.iter().map(|p| p.distance(middle));
                far.fold(0.0, f64::max)
            };
            let near = |ring: &&Vec<DVec2>| (span(ring) / span(&hull) - 1.0).abs() < 0.2;
            let ring = drawn.iter().find(near);
            let ring = ring.unwrap_or_else(|| panic!("{}: no outline", row.place()));
            for p in &hull {
                let off = away(*p, ring);
                assert!(off <= allowed, "{}: {p} is off by {off} px", row.place());
                compared += 1;
            }
            // And nothing is drawn that is not there: OpenCV's corners taken
            // as a line lie within the round by as much as 2° leave.
            // 1 − cos 4°.
            let slack = allowed + span(&hull) * 0.0025;
            for p in ring {
                let off = away(*p, &hull);
                assert!(off <= slack, "{}: drawn {off} px off", row.place());
            }
        }
    }
    assert!(compared > 5_000 && upright > 10, "{compared}, {upright}");
}
