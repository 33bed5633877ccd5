//! Writes one SVG sheet with everything the drawing room can draw, to look at.
//!
//! `cargo run -p planner --example food_sheet > sheet.svg`

use glam::{DVec2, dvec2};
use planner::catalogue::plain_profile;
use planner::drawing::{Food, Form, Pen, food, food_pieces, shadows};
use svg::Document;
use svg::node::element::{Group, Rectangle, Text};

const CELL: DVec2 = dvec2(400.0, 330.0);
const COLUMNS: usize = 6;

fn placed(group: Group, at: DVec2) -> Group {
    Group::new()
        .set("transform", format!("translate({:.1} {:.1})", at.x, at.y))
        .add(group)
}

fn main() {
    let pen = Pen {
        weight: 1.9,
        fall: dvec2(0.866, 0.5),
        fine: true,
    };
    let foods = [
        (Food::Mussels, 124.0, 124.0),
        (Food::LemonWedges, 100.0, 80.0),
        (Food::Loaf, 150.0, 85.0),
        (Food::Olives, 75.0, 75.0),
        (Food::Aubergine, 145.0, 95.0),
        (Food::TomatoSalad, 112.0, 112.0),
        (Food::Herbs, 100.0, 50.0),
        (Food::Noodles, 105.0, 105.0),
        (Food::Eggs, 80.0, 55.0),
        (Food::Rice, 95.0, 95.0),
        (Food::Fish, 160.0, 55.0),
        (Food::Berries, 80.0, 80.0),
        (Food::Citrus, 80.0, 60.0),
        (Food::Cheese, 125.0, 70.0),
        (Food::Nuts, 75.0, 75.0),
        (Food::Soup, 100.0, 100.0),
        (Food::LeafSalad, 112.0, 112.0),
        (Food::Potatoes, 100.0, 100.0),
        (Food::Carrots, 90.0, 75.0),
        (Food::LemonWedges, 34.0, 16.0),
        (Food::Aubergine, 98.0, 42.0),
        (Food::Salt, 35.0, 35.0),
        (Food::Crumbs, 80.0, 60.0),
        (Food::HerbScatter, 80.0, 60.0),
    ];
    let mut sheet = Group::new();
    for (i, (kind, x, y)) in foods.into_iter().enumerate() {
        let at = dvec2((i % COLUMNS) as f64 + 0.5, (i / COLUMNS) as f64 + 0.5) * CELL;
        let form = Form::new(i as u32 + 3, dvec2(x, y), 0.2 * (i as f64 - 2.0));
        let pieces = food_pieces(kind, &form);
        let drawn = food(kind, &form, &[], &pen);
        let loose = [Food::Salt, Food::Crumbs, Food::HerbScatter, Food::Herbs].contains(&kind);
        let shade = if loose {
            Group::new()
        } else {
            shadows(&pieces, pen.fall * 12.0, 30.0, 6.0, plain_profile(), None)
        };
        let nodes = drawn.get_children().len();
        let name = Text::new(format!("{kind:?} {nodes}"))
            .set("x", at.x)
            .set("y", at.y + 150.0)
            .set("font-size", 22)
            .set("text-anchor", "middle");
        sheet = sheet
            .add(placed(shade, at))
            .add(placed(drawn, at))
            .add(name);
    }
    let size = CELL * dvec2(COLUMNS as f64, 4.0);
    let paper = Rectangle::new()
        .set("width", size.x)
        .set("height", size.y)
        .set("fill", "#f3ecdd");
    let document = Document::new()
        .set("viewBox", (0, 0, size.x as i32, size.y as i32))
        .add(paper)
        .add(sheet);
    println!("{document}");
}
