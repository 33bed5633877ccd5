//! Writes one SVG sheet with hands for every action, either side up, and cloth
//! in every state, to look at.
//!
//! `cargo run -p planner --example hand_sheet > sheet.svg`

use glam::{DVec2, dvec2};
use planner::drawing::{Form, Limb, Pen, cloth, held, limb, rgb};
use planner::layout::{
    Action, Hand, Id, Layout, LinenKind, LinenState, Palm, Person, Point, Side, Sleeve,
    SleeveLength, open,
};
use planner::scene::arm;
use planner::shape::frame_outline;
use svg::Document;
use svg::node::element::{Group, Rectangle, Text};

const CELL: DVec2 = dvec2(460.0, 480.0);
const COLUMNS: usize = Action::ALL.len();

fn empty() -> Layout {
    let text = r#"{"format":"overspread-layout","version":0,"id":"0000000000000001",
        "next_id":9,"table":{"width":4000},"frame":{"at":[0,0],"width":9000,"ratio":[1,1]},
        "people":[{"id":1}],"exposures":[{"id":2}],
        "hands":[{"id":3,"person":1,"exposure":2,"entry":[0,4500],"target":[0,0]}]}"#;
    open(text).unwrap_or_else(|p| unreachable!("a sound layout: {p:?}"))
}

fn main() {
    let pen = Pen {
        weight: 2.4,
        fall: dvec2(0.866, 0.5),
        fine: true,
    };
    let mut sheet = Group::new();
    let rows = [
        (
            Side::Right,
            Palm::Down,
            SleeveLength::Long,
            0xc8_9b7b,
            0x19_1614,
        ),
        (
            Side::Left,
            Palm::Down,
            SleeveLength::Rolled,
            0x8d_5a3b,
            0xd8_d2c4,
        ),
        (
            Side::Right,
            Palm::Up,
            SleeveLength::Bare,
            0xf0_cdae,
            0x5f_778a,
        ),
    ];
    for (r, (side, palm, length, skin, sleeve)) in rows.into_iter().enumerate() {
        for (c, action) in Action::ALL.into_iter().enumerate() {
            let at = dvec2(c as f64 + 0.5, r as f64 + 0.28) * CELL;
            let mut layout = empty();
            let person: &mut Person = &mut layout.people[0];
            person.sleeve = Sleeve {
                length,
                ..person.sleeve
            };
            let hand: &mut Hand = &mut layout.hands[0];
            (hand.action, hand.side, hand.palm) = (action, side, palm);
            hand.target = Point::new(0, 0);
            hand.id = Id(3 + c as u16);
            let arm = arm(&layout, &layout.hands[0]);
            let look = Limb {
                seed: u32::from(layout.hands[0].id.0),
                skin: rgb(skin),
                sleeve: rgb(sleeve),
                action,
                palm,
            };
            let within = frame_outline(&layout.frame);
            sheet = sheet
                .add(placed(held(&arm, action, look.seed, None, &pen), at))
                .add(placed(limb(&arm, &look, &within, &pen), at));
            sheet = sheet.add(
                Text::new(format!("{action:?} {side:?} {palm:?}"))
                    .set("x", at.x)
                    .set("y", at.y - 105.0)
                    .set("font-size", 20)
                    .set("fill", "#f6ecd8")
                    .set("text-anchor", "middle"),
            );
        }
    }
    let states = [
        LinenState::Flat,
        LinenState::Folded,
        LinenState::Bunched,
        LinenState::Thrown,
    ];
    for (i, state) in states.into_iter().enumerate() {
        let y = 3.25 * CELL.y + 330.0 * i as f64;
        let shrink = match state {
            LinenState::Flat => dvec2(1.0, 1.0),
            LinenState::Folded => dvec2(0.25, 0.5),
            LinenState::Bunched => dvec2(0.7, 0.6),
            LinenState::Thrown => dvec2(0.75, 0.7),
        };
        for (kind, at, half, tone) in [
            (LinenKind::Runner, 800.0, dvec2(760.0, 150.0), 0xd8_c8a5),
            (LinenKind::Napkin, 1900.0, dvec2(150.0, 150.0), 0x5f_778a),
            (LinenKind::Mat, 2350.0, dvec2(220.0, 150.0), 0xd2_c4b4),
            (LinenKind::Cloth, 3050.0, dvec2(400.0, 150.0), 0xeb_e8e2),
        ] {
            let form = Form::new(i as u32 + 3, half * shrink, -0.06);
            let group = cloth(kind, state, &form, rgb(tone), &pen);
            sheet = sheet.add(placed(group, dvec2(at, y)));
        }
    }
    let size = dvec2(CELL.x * COLUMNS as f64, 3.25 * CELL.y + 1180.0);
    let paper = Rectangle::new()
        .set("width", size.x)
        .set("height", size.y)
        .set("fill", "#46423d");
    let document = Document::new()
        .set("viewBox", (0, 0, size.x as i32, size.y as i32))
        .add(paper)
        .add(sheet);
    println!("{document}");
}

fn placed(group: Group, at: DVec2) -> Group {
    Group::new()
        .set("transform", format!("translate({:.1} {:.1})", at.x, at.y))
        .add(group)
}
