//! A page of paper crockery: title, bar, and what it is all drawn with.
use glam::{DVec2, dvec2};
use svg::Document;
use svg::node::element::{Group, Line, Rectangle, Text};

use crate::layout::Layout;
use crate::words::{Arg, fixed, say};

/// What no printer reaches, 10 mm, and the marks about a corner, mm.
pub(super) const MARGIN: f64 = 11.5;
/// Height of the lines above the outlines and of the bar below, mm.
pub(super) const HEAD: f64 = 12.0;
pub(super) const FOOT: f64 = 14.0;
/// Letters beside the outlines, mm.
pub(super) const SMALL: f64 = 3.2;
/// A check bar is so long and so thick, mm.
const BAR: f64 = 100.0;
const THICK: f64 = 1.5;

pub(super) fn line(from: DVec2, to: DVec2) -> Line {
    Line::new()
        .set("x1", mm(from.x))
        .set("y1", mm(from.y))
        .set("x2", mm(to.x))
        .set("y2", mm(to.y))
        .set("stroke", "#000")
}

pub(super) fn rectangle(at: DVec2, size: DVec2) -> Rectangle {
    Rectangle::new()
        .set("x", mm(at.x))
        .set("y", mm(at.y))
        .set("width", mm(size.x))
        .set("height", mm(size.y))
}

pub(super) fn letters(text: &str, at: DVec2, size: f64, anchor: &str) -> Text {
    Text::new(text)
        .set("x", mm(at.x))
        .set("y", mm(at.y))
        .set("font-size", mm(size))
        .set("text-anchor", anchor)
}

/// A length to the hundredth of a millimetre.
pub(super) fn mm(value: f64) -> String {
    fixed(value, 2)
}

/// A page with what stands on all of them.
pub(super) fn page(
    layout: &Layout,
    [wide, high]: [f64; 2],
    body: Group,
    told: &str,
    [n, pages]: [usize; 2],
) -> String {
    let count = |n: usize| Arg::Text(n.to_string());
    let numbered = say(
        "crockery-page",
        &[("page", count(n)), ("pages", count(pages))],
    );
    let top = MARGIN + SMALL;
    let title = match layout.head.title.as_str() {
        "" => say("crockery", &[]),
        title => say("crockery-title", &[("title", Arg::Name(title.into()))]),
    };
    let mut head = Group::new()
        .add(letters(&title, dvec2(MARGIN, top), SMALL, "start"))
        .add(letters(&numbered, dvec2(wide - MARGIN, top), SMALL, "end"));
    if !told.is_empty() {
        let below = dvec2(MARGIN, top + SMALL * 1.4);
        head = head.add(letters(told, below, SMALL, "start"));
    }
    let bar = dvec2(MARGIN, high - MARGIN - 6.0);
    let end = bar + dvec2(BAR, 0.0);
    // Full, so that there is no doubt which edge of a line counts.
    let mut foot = Group::new()
        .add(rectangle(bar, dvec2(BAR, THICK)))
        .add(letters(
            &say("crockery-bar", &[]),
            end + dvec2(3.0, 1.0),
            SMALL,
            "start",
        ))
        .add(letters(
            &say("crockery-print", &[]),
            dvec2(MARGIN, high - MARGIN),
            SMALL,
            "start",
        ));
    if !told.is_empty() {
        let beside = end + dvec2(18.0, -4.0);
        let at = dvec2(wide - MARGIN, beside.y);
        foot = foot.add(letters(&say("crockery-join", &[]), at, SMALL * 0.8, "end"));
    }
    let shift = ["translate(", &mm(MARGIN), " ", &mm(MARGIN + HEAD), ")"].concat();
    Document::new()
        .set("width", mm(wide) + "mm")
        .set("height", mm(high) + "mm")
        .set("viewBox", ["0 0", &mm(wide), &mm(high)].join(" "))
        .set("font-family", "'Noto Serif', Georgia, serif")
        .set("fill", "#000")
        .add(rectangle(DVec2::ZERO, dvec2(wide, high)).set("fill", "#fff"))
        .add(head)
        .add(body.set("transform", shift))
        .add(foot)
        .to_string()
}
