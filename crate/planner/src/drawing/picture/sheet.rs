//! The picture as a sheet that stands alone: title, version and date, the
//! drawing with its crops, and the numbered list.
use glam::{DVec2, dvec2};
use svg::node::element::{Rectangle, Text};

use super::cut::{area, document};
use super::groups;
use super::lettering::lettering;
use super::view::{INKED, PAPER, Shown, Trims, View};
use crate::answers::said;
use crate::drawing::path::tenth;
use crate::layout::Layout;
use crate::optics;
use crate::order;
use crate::readings::cautions;
use crate::words::{Arg, say};

/// Pixels across the picture on the sheet, which sets the weight of its lines.
const ACROSS: f64 = 1_100.0;
/// Room above the picture, pixels, of which the last part shows the world past
/// the frame; below the picture as much of that world, then the list.
const HEAD: f64 = 150.0;
const PAST: f64 = 58.0;
const FOOT: f64 = 62.0;
const MARGIN: f64 = 60.0;
const ROW: f64 = 26.0;
/// Height of a line of the cautions at the foot, and the letters it takes.
const LINE: f64 = 22.0;
const SHORT: usize = 170;

/// The sheet with the hands of `shown`, seen from `eye`.
#[must_use]
pub fn sheet(layout: &Layout, shown: Shown, eye: optics::View) -> String {
    let [x, y, width, height] = area(layout, None).unwrap_or_default();
    let px = width / ACROSS;
    let view = View {
        per_pixel: px * 1.5,
        shown,
        eye,
        fine: true,
        crops: Trims::All,
        ..View::default()
    };
    let numbered = numbered(layout);
    let rows = numbered.len().div_ceil(2);
    let cautions: Vec<String> = cautions(layout)
        .into_iter()
        .filter(|c| c.is_short(SHORT))
        .map(|c| c.line)
        .collect();
    let lines = cautions.len() as f64;
    let left = x - MARGIN * px;
    let across = width + 2.0 * MARGIN * px;
    let (top, end) = (y - HEAD * px, y + height + FOOT * px);
    let list = end + (68.0 + rows as f64 * ROW) * px;
    let bottom = list + (34.0 + lines * LINE) * px;
    let whole = [left, top, across, bottom - top];
    let size = [whole[2] / px, whole[3] / px];
    let mut out = document(whole, size, vec![]).add(blank(whole));
    for keyed in groups(layout, &view) {
        out = out.add(keyed.placed());
    }
    // The world past the frame ends at the paper's margin.
    out = out
        .add(blank([left, top, across, (HEAD - PAST) * px]))
        .add(blank([left, end, across, bottom - end]));
    let line = |text: &str, at: DVec2, size: f64| lettering(text, at, size * px).set("fill", INKED);
    let title = line(&layout.head.title, dvec2(x, top + 56.0 * px), 40.0);
    out = out.add(title.set("font-style", "italic")).add(line(
        &standing(layout),
        dvec2(x, top + 84.0 * px),
        18.0,
    ));
    for (place, (number, name)) in numbered.iter().enumerate() {
        let (column, row) = (place / rows, place % rows);
        let at = dvec2(
            x + column as f64 * width * 0.5,
            end + (30.0 + row as f64 * ROW) * px,
        );
        let bold = |text: Text| text.set("font-weight", "bold");
        out = out.add(bold(line(&number.to_string(), at, 18.0))).add(line(
            name,
            at + dvec2(40.0 * px, 0.0),
            18.0,
        ));
    }
    for (n, caution) in cautions.iter().enumerate() {
        let at = dvec2(x, list + n as f64 * LINE * px);
        out = out.add(line(caution, at, 15.0).set("font-style", "italic"));
    }
    out.to_string()
}

/// Bare paper.
pub(super) fn blank(area: [f64; 4]) -> Rectangle {
    let [x, y, width, height] = area.map(tenth);
    Rectangle::new()
        .set("x", x)
        .set("y", y)
        .set("width", width)
        .set("height", height)
        .set("fill", PAPER)
}

/// Numbers and names of what stands on the table, each number once.
fn numbered(layout: &Layout) -> Vec<(u16, &str)> {
    let on_table = layout.items.iter().filter(|item| item.on.is_none());
    let mut all: Vec<(u16, &str)> = on_table.map(|i| (i.number, i.name.as_str())).collect();
    order::sort(&mut all, Ord::cmp);
    all.dedup_by_key(|(number, _)| *number);
    all
}

/// Which version this is, and what was answered.
fn standing(layout: &Layout) -> String {
    let version = version(layout);
    let Some(answer) = &layout.head.revision.answer else {
        return version;
    };
    let args = [
        ("version", Arg::Text(version)),
        ("answer", Arg::Text(said(answer))),
    ];
    say("drawing-answered", &args)
}

/// Which version this is, and of when.
#[must_use]
pub fn version(layout: &Layout) -> String {
    let revision = &layout.head.revision;
    let number = ("number", Arg::Text(revision.number.to_string()));
    let date = ("date", Arg::Text(revision.date.clone()));
    match (revision.number, revision.date.is_empty()) {
        (0, _) => revision.date.clone(),
        (_, true) => say("drawing-version", &[number]),
        (_, false) => say("drawing-version-dated", &[number, date]),
    }
}
