//! Writes one SVG sheet with every surface of the catalogue, to look at.
//!
//! `cargo run -p planner --example surface_sheet > sheet.svg`

use glam::{DVec2, dvec2};
use planner::catalogue::surfaces;
use planner::drawing::{Pen, surface};
use planner::shape::{CHORD_ERROR, disc, rect};
use svg::Document;
use svg::node::element::{Group, Text};

const CELL: DVec2 = dvec2(1100.0, 800.0);
const COLUMNS: usize = 4;

fn main() {
    let pen = Pen {
        weight: 2.4,
        fall: dvec2(0.866, 0.5),
        fine: true,
    };
    let mut sheet = Group::new();
    for (i, entry) in surfaces().iter().enumerate() {
        let at = dvec2((i % COLUMNS) as f64, (i / COLUMNS) as f64) * CELL;
        let edge = if i == 3 {
            disc(CELL / 2.0, 360.0, CHORD_ERROR)
        } else {
            rect(CELL / 2.0, CELL - 80.0, 6.0, 0.0, CHORD_ERROR)
        };
        let place = format!("translate({:.1} {:.1})", at.x, at.y);
        let drawn = surface(entry.grain, &edge, entry.colour.0, &pen);
        let name = Text::new(entry.id)
            .set("x", 60)
            .set("y", 32)
            .set("font-size", 30);
        let cell = Group::new().set("transform", place);
        sheet = sheet.add(cell.add(drawn).add(name));
    }
    let rows = surfaces().len().div_ceil(COLUMNS);
    let size = CELL * dvec2(COLUMNS as f64, rows as f64);
    let document = Document::new()
        .set("viewBox", (0, 0, size.x as i32, size.y as i32))
        .add(sheet);
    println!("{document}");
}
