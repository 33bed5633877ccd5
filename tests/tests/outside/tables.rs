//! Whole tables from the layout to the scores, against a second program built
//! from the definitions (`reference/generate_tables.py`).
use outside_checks::{Row, Table};
use planner::layout::{Layout, LayoutId, open};
use planner::readings::{Scores, Study, report};
use serde_json::{Value, json};

fn colour(rgb: &[f64]) -> String {
    let [r, g, b] = [rgb[0], rgb[1], rgb[2]].map(|c| c as u8);
    format!("#{r:02x}{g:02x}{b:02x}")
}

/// One dish: what it lies on, two tones with their shares, its corners.
fn dish(id: usize, numbers: &[f64]) -> Value {
    let tone = |at: usize| {
        let share = numbers[at + 3];
        (share > 0.0).then(|| json!({ "srgb": colour(&numbers[at..]), "share": share }))
    };
    let tones: Vec<Value> = [1, 5].into_iter().filter_map(tone).collect();
    let (x, y) = (numbers[9], numbers[10]);
    let corners = numbers[9..].chunks(2).map(|p| [p[0] - x, p[1] - y]);
    let points: Vec<[f64; 2]> = corners.collect();
    let mut item = json!({
        "id": id, "at": [x, y], "height": 0, "size": { "shape": "outline", "points": points },
        "parts": { "food": { "colours": tones } }
    });
    if numbers[0] > 0.0 {
        item["on"] = json!(numbers[0]);
    }
    item
}

fn laid(row: Row) -> Layout {
    let mut file: Value =
        serde_json::from_str(&Layout::empty(LayoutId(1)).to_json()).expect("JSON");
    let frame = row.numbers("frame");
    file["table"] = json!({ "width": 1200, "depth": 900,
        "surface": { "colour": colour(&row.numbers("table")) } });
    file["floor"] = json!({ "colour": colour(&row.numbers("floor")) });
    file["frame"] = json!({ "ratio": [3, 2], "at": [frame[0], frame[1]], "width": frame[2] });
    let dishes = row.lists("dishes");
    let items: Vec<Value> = (1..).zip(&dishes).map(|(id, d)| dish(id, d)).collect();
    file["next_id"] = json!(items.len() + 1);
    file["items"] = json!(items);
    open(&file.to_string()).unwrap_or_else(|p| panic!("{}: {p:?}", row.place()))
}

/// Outlines are walked in steps of up to 6 mm whose ground is looked up 1 mm
/// outside, so an outline's mean is off by up to such a step at each change of
/// ground: a point of 100 in the scores.
const TOLERANCE: f64 = 1.0;
/// Two dishes whose masses are this close may change places by the same.
const CLEAR: f64 = 1.02;

#[test]
fn scores_of_random_tables() {
    let table = Table::read("tables.csv");
    assert_eq!(table.len(), 1000, "tables");
    let mut triangles = 0;
    for row in table.rows() {
        let layout = laid(row);
        let Scores {
            balance, triangle, ..
        } = report(&Study::new(&layout), false)
            .scores
            .expect("three dishes");
        let expected = row.number("balance");
        let found = balance.expect("something weighs");
        assert!(
            (found - expected).abs() <= TOLERANCE,
            "{}: balance {found}, not {expected}",
            row.place()
        );
        let expected = row.number("triangle");
        if expected < 0.0 {
            assert_eq!(triangle, None, "{}: two dishes in the frame", row.place());
            continue;
        }
        if row.number("clear") < CLEAR {
            continue;
        }
        triangles += 1;
        let found = triangle.expect("three dishes");
        assert!(
            (found - expected).abs() <= TOLERANCE,
            "{}: triangle {found}, not {expected}",
            row.place()
        );
    }
    assert!(triangles > 800, "{triangles} triangles compared");
}
