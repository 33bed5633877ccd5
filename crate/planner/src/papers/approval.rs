//! The layout as the client says yes or no to it: the picture with its crops,
//! what is in it, and lines for the answer.
use svg::node::element::{ClipPath, Group, Rectangle};

use super::alike::{ids, numbers, rows};
use super::list::List;
use super::press::{BODY, Block, written};
use super::shots::{doing, shot_list};
use super::told::{linen_tag, sides};
use crate::drawing::{Trims, View, cut};
use crate::layout::Layout;
use crate::optics;
use crate::scene::flag;
use crate::words::{Arg, clock, fixed, listed, say};

/// Pixels across the picture, which set the weight of its lines.
const ACROSS: f64 = 700.0;
/// How much more than the frame is shown on every side, so that names of crops
/// on its edges are whole.
const PAST: f64 = 0.025;
/// What the picture ends at, by name.
const EDGE: &str = "picture-edge";
/// Highest the picture may be, mm.
const MOST: f64 = 118.0;

pub(super) fn blocks(layout: &Layout, wide: f64) -> Vec<Block> {
    let mut out = Vec::new();
    let view = View {
        crops: Trims::All,
        eye: optics::View::of(layout),
        paper: "#fff",
        ink: "#000",
        ..View::default()
    };
    if let Some(part) = cut(layout, None, ACROSS, &view) {
        let [x, y, w, h] = part.area;
        let past = w * PAST;
        let area = [x - past, y - past, w + 2.0 * past, h + 2.0 * past];
        let scale = (wide / area[2]).min((MOST - 6.0) / area[3]);
        let [across, high] = [area[2] * scale, area[3] * scale];
        let mm = |n: f64| fixed(n, 2);
        let edge = Rectangle::new()
            .set("x", mm(area[0]))
            .set("y", mm(area[1]))
            .set("width", mm(area[2]))
            .set("height", mm(area[3]));
        let clip = ClipPath::new().set("id", EDGE).add(edge);
        let mut picture = Group::new().set("clip-path", format!("url(#{EDGE})"));
        for keyed in part.groups {
            picture = picture.add(keyed.placed());
        }
        let (dx, dy) = (
            (wide - across) * 0.5 - area[0] * scale,
            6.0 - area[1] * scale,
        );
        let placed = format!(
            "translate({} {}) scale({})",
            fixed(dx, 3),
            fixed(dy, 3),
            fixed(scale, 6)
        );
        let picture = Group::new().set("transform", placed).add(clip).add(picture);
        let light = layout.light.clock.degrees() - layout.frame.turn.degrees();
        let top = say("approval-top", &[("clock", Arg::Text(clock(light)))]);
        let drawn = Group::new()
            .add(written(&top, [0.0, 4.0], BODY, false, wide))
            .add(picture);
        out.push(Block::Drawing(drawn, high + 6.0));
    }
    out.push(Block::List(things(layout), 3));
    let mut hands: Vec<String> = Vec::new();
    for hand in &layout.hands {
        let args = [
            ("flag", Arg::Text(flag(layout, hand))),
            ("action", Arg::Text(doing(hand))),
        ];
        let line = say("approval-hand", &args);
        if !hands.contains(&line) {
            hands.push(line);
        }
    }
    if !hands.is_empty() {
        let list = ("list", Arg::Text(listed(&hands)));
        out.push(Block::Words(say("approval-hands", &[list])));
    }
    let mut shots = shot_list(layout);
    shots.title = say("approval-crops", &[]);
    // Nothing to write into: what is noted and ticked is for the shoot.
    shots.columns.truncate(SAID);
    for row in &mut shots.rows {
        row.truncate(SAID);
    }
    out.push(Block::List(shots, 1));
    let size = [layout.table.width, layout.table.depth].map(f64::from);
    let args = [("size", Arg::Text(sides(size, layout.head.units)))];
    out.push(Block::Words(say("approval-note", &args)));
    let all = |ids: &[&str]| ids.iter().map(|id| say(id, &[])).collect::<Vec<_>>();
    out.push(Block::Ticks(all(&[
        "approval-yes",
        "approval-changes",
        "approval-no",
    ])));
    out.push(Block::Blanks(all(&["approval-remarks"])));
    for _ in 0..2 {
        out.push(Block::Blanks(vec![String::new()]));
    }
    out.push(Block::Blanks(all(&["approval-name", "approval-date"])));
    out
}

/// Columns of the shot list that say what is planned.
const SAID: usize = 6;

/// What stands on the table, each sort once.
fn things(layout: &Layout) -> List {
    let columns = [("col-number", 12), ("col-thing", 40), ("col-count", 8)];
    let mut list = List::of("", &columns);
    for row in rows(layout, &|_| true) {
        let count = ids(&row).len().to_string();
        list.rows
            .push(vec![numbers(&row), row[0].name.clone(), count]);
    }
    for linen in &layout.linens {
        let tag = linen_tag(layout, linen.id);
        list.rows.push(vec![tag, linen.name.clone(), "1".into()]);
    }
    list
}
