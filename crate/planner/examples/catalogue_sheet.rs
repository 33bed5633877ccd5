//! Writes one SVG sheet with every prop and food of the catalogue as it is
//! first put down, to look at.
//!
//! `cargo run -p planner --example catalogue_sheet > sheet.svg`

use glam::{DVec2, dvec2};
use planner::catalogue::{foods, item_from, props};
use planner::drawing::{View, groups};
use planner::layout::{Id, Layout, LayoutId, Point};
use svg::Document;
use svg::node::element::{Rectangle, Text};

const CELL: DVec2 = dvec2(420.0, 420.0);
const COLUMNS: usize = 10;

fn main() {
    let mut layout = Layout::empty(LayoutId(1));
    let all: Vec<_> = props().iter().chain(foods()).collect();
    let place = |i: usize| dvec2((i % COLUMNS) as f64 + 0.5, (i / COLUMNS) as f64 + 0.46) * CELL;
    for (i, entry) in all.iter().enumerate() {
        let at = Point::nearest(place(i));
        let number = i as u16 + 1;
        layout.items.push(item_from(entry, Id(number), number, at));
    }
    let rows = all.len().div_ceil(COLUMNS);
    let size = CELL * dvec2(COLUMNS as f64, rows as f64);
    // Shadows end at the table's edge, so the table is as large as the sheet.
    (layout.table.width, layout.table.depth) = (size.x as i32, size.y as i32);
    let view = View {
        per_pixel: 2.0,
        frame: false,
        tags: false,
        fine: true,
        ..View::default()
    };
    let paper = Rectangle::new()
        .set("width", size.x)
        .set("height", size.y)
        .set("fill", "#d9cdb4");
    let mut document = Document::new()
        .set("viewBox", (0, 0, size.x as i32, size.y as i32))
        .add(paper);
    for keyed in groups(&layout, &view) {
        if keyed.key != "surface" {
            document = document.add(keyed.placed());
        }
    }
    for (i, entry) in all.iter().enumerate() {
        let at = place(i);
        let name = Text::new(entry.id)
            .set("x", at.x)
            .set("y", at.y + 220.0)
            .set("font-size", 28)
            .set("text-anchor", "middle");
        document = document.add(name);
    }
    println!("{document}");
}
