//! Where cloth hangs over the edge of the table and what is seen of it,
//! against shapely (`reference/generate_linen.py`), and a printed rule.
use outside_checks::Table;
use planner::layout::{Layout, LayoutId, Linen, Point, TableShape, Turn, open};
use planner::scene::{linen_drop, linen_seen};
use planner::shape::area;

/// An empty table with a flat runner on it.
fn with_runner(table: &str, [width, depth, corner]: [i32; 3], size: [i32; 2]) -> (Layout, Linen) {
    let mut file: serde_json::Value =
        serde_json::from_str(&Layout::empty(LayoutId(1)).to_json()).expect("JSON");
    file["next_id"] = 2.into();
    file["linens"] = serde_json::json!([{ "id": 1, "kind": "runner", "at": [0, 0], "size": size }]);
    let mut layout = open(&file.to_string()).expect("a sound file");
    layout.table.shape = if table == "round" {
        TableShape::Round
    } else {
        TableShape::Rect
    };
    (layout.table.width, layout.table.depth, layout.table.corner) = (width, depth, corner);
    let mut linen = layout.linens.remove(0);
    linen.at = layout.table.centre();
    (layout, linen)
}

/// Tolerances: 1 mm for a drop, as arcs are chords to a tenth of a millimetre
/// here and a slanting middle line stretches that; 3 mm along the whole hem for
/// what is seen, as hems are ruled by hand, a few millimetres off straight.
#[test]
fn drops_and_what_is_seen_are_those_of_plain_geometry() {
    let table = Table::read("linen.csv");
    assert_eq!(table.len(), 200, "runners");
    let mut hanging = 0;
    for row in table.rows() {
        let whole = |name: &str| row.number(name) as i32;
        let sides = ["width", "depth", "corner"].map(whole);
        let (layout, mut linen) =
            with_runner(row.text("table"), sides, ["size_x", "size_y"].map(whole));
        linen.at = Point::new(whole("x"), whole("y"));
        linen.turn = Turn::from_degrees(row.number("turn"));
        let found = linen_drop(&layout.table, &linen);
        for (ours, theirs) in found
            .into_iter()
            .zip(["drop_low", "drop_high"].map(|n| row.number(n)))
        {
            assert!(
                (ours - theirs).abs() < 1.0,
                "{}: hangs {ours}, not {theirs}",
                row.place()
            );
            hanging += usize::from(theirs > 0.0);
        }
        let hem = 2.0 * (row.number("size_x") + row.number("size_y"));
        let (ours, theirs) = (area(&linen_seen(&layout.table, &linen)), row.number("seen"));
        assert!(
            (ours - theirs).abs() < 3.0 * hem,
            "{}: {ours} of {theirs} mm² seen",
            row.place()
        );
    }
    assert!(hanging > 100, "ends that hang: {hanging}");
}

/// A runner of 72 in on a table of 60 in drops 6 in at either end, one of
/// 80 in drops 10 in: trade practice, from a guide on the web (weak).
/// Tolerance: a millimetre, as sides are whole ones.
#[test]
fn a_runner_is_as_long_as_the_table_and_twice_its_drop() {
    for (long, drop) in [(72.0, 6.0), (80.0, 10.0)] {
        let mm = |inches: f64| (inches * 25.4).round() as i32;
        let (layout, linen) = with_runner("rect", [mm(60.0), mm(36.0), 0], [mm(long), mm(12.0)]);
        for end in linen_drop(&layout.table, &linen) {
            assert!(
                (end / 25.4 - drop).abs() < 1.0 / 25.4,
                "{long} in drops {end} mm"
            );
        }
    }
}
