//! Paper crockery: the outline of every dish and prop at true size, to be cut
//! out and laid on the table before anything is hired.
//!
//! Small outlines share a page; one that is larger than a page goes over
//! several, which overlap by [`LAP`] and are told by row and column. Every page
//! has a bar to measure, as printers shrink pages unasked.
mod page;

use glam::{DVec2, dvec2};
use svg::node::element::{Circle, ClipPath, Group, Line, Path};

use self::page::{FOOT, HEAD, MARGIN, SMALL, letters, line, mm, page, rectangle};
use crate::catalogue::kind_of;
use crate::figure::thing_outline;
use crate::layout::{Item, Layout, Turn};
use crate::order;
use crate::words::{Arg, fixed, say};

/// How far two sheets of one outline overlap, mm.
const LAP: f64 = 10.0;
/// Between outlines on one sheet, mm: room for scissors and a name.
const GAP: f64 = 6.0;
/// Letters that are read on the table, mm.
const LARGE: f64 = 5.0;

/// An outline that is to be cut out, once or several times.
struct Pattern {
    /// From its top left corner on, mm.
    points: Vec<DVec2>,
    /// Breadth and height, mm.
    size: DVec2,
    numbers: Vec<String>,
    name: String,
    count: usize,
}

/// The pages on paper of this breadth and height in mm, each an SVG that stands
/// alone; none when nothing has an outline to cut.
#[must_use]
pub fn crockery(layout: &Layout, paper: [f64; 2]) -> Vec<String> {
    let room = dvec2(
        paper[0] - 2.0 * MARGIN,
        paper[1] - 2.0 * MARGIN - HEAD - FOOT,
    );
    let mut small: Vec<Pattern> = Vec::new();
    let mut large: Vec<Pattern> = Vec::new();
    for pattern in patterns(layout) {
        let pattern = laid(pattern, room);
        let fits = pattern.size.cmple(room).all();
        if fits { &mut small } else { &mut large }.push(pattern);
    }
    let mut bodies = packed(&small, room);
    for pattern in &large {
        bodies.extend(tiled(pattern, room));
    }
    let pages = bodies.len();
    let each = bodies.into_iter().enumerate();
    each.map(|(n, (body, line))| page(layout, paper, body, &line, [n + 1, pages]))
        .collect()
}

/// Every distinct outline, in the order of its first number.
fn patterns(layout: &Layout) -> Vec<Pattern> {
    let dishes = layout.items.iter().filter(|i| !kind_of(&i.prop).is_food());
    let mut items: Vec<&Item> = dishes.collect();
    order::sort(&mut items, |a, b| (a.number, a.id).cmp(&(b.number, b.id)));
    let mut kinds: Vec<(&Item, Pattern)> = Vec::new();
    for item in items {
        let number = item.number.to_string();
        let same = kinds.iter_mut();
        let mut same = same.filter(|(first, _)| first.prop == item.prop && first.size == item.size);
        if let Some((_, pattern)) = same.next() {
            pattern.count += 1;
            if pattern.numbers.last() != Some(&number) {
                pattern.numbers.push(number);
            }
            continue;
        }
        let straight = Item {
            turn: Turn::default(),
            ..item.clone()
        };
        let pattern = Pattern {
            points: thing_outline(&straight),
            size: DVec2::ZERO,
            numbers: vec![number],
            name: item.name.clone(),
            count: 1,
        };
        kinds.push((item, pattern));
    }
    kinds.into_iter().map(|(_, pattern)| pattern).collect()
}

/// Sheets that an extent of `size` takes, in steps of what they do not share.
fn sheets(size: f64, room: f64) -> usize {
    if size <= room {
        return 1;
    }
    ((size - LAP) / (room - LAP)).ceil() as usize
}

/// The outline from its corner on, turned on its side where that saves sheets.
fn laid(mut pattern: Pattern, room: DVec2) -> Pattern {
    let [low, high] = span(&pattern.points);
    let size = high - low;
    let upright = sheets(size.x, room.x) * sheets(size.y, room.y);
    let turned = sheets(size.y, room.x) * sheets(size.x, room.y) < upright;
    for point in &mut pattern.points {
        let from = *point - low;
        *point = if turned {
            dvec2(size.y - from.y, from.x)
        } else {
            from
        };
    }
    pattern.size = if turned { dvec2(size.y, size.x) } else { size };
    pattern
}

fn span(points: &[DVec2]) -> [DVec2; 2] {
    let low = points.iter().copied().reduce(DVec2::min);
    let high = points.iter().copied().reduce(DVec2::max);
    [low, high].map(Option::unwrap_or_default)
}

/// Outlines row by row, the deepest first, as many as a page takes, and what is
/// said above them.
fn packed(small: &[Pattern], room: DVec2) -> Vec<(Group, String)> {
    let mut left: Vec<&Pattern> = small.iter().collect();
    order::sort(&mut left, |a, b| b.size.y.total_cmp(&a.size.y));
    let mut pages = Vec::new();
    let (mut group, mut at, mut row) = (Group::new(), DVec2::ZERO, 0.0_f64);
    for pattern in left {
        let deep = pattern.size.y + caption(pattern);
        if at.x > 0.0 && at.x + breadth(pattern) > room.x {
            at = dvec2(0.0, at.y + row + GAP);
            row = 0.0;
        }
        if at.y > 0.0 && at.y + deep > room.y {
            pages.push((std::mem::replace(&mut group, Group::new()), String::new()));
            (at, row) = (DVec2::ZERO, 0.0);
        }
        group = group.add(whole(pattern, at));
        at.x += breadth(pattern) + GAP;
        row = row.max(deep);
    }
    if at != DVec2::ZERO {
        pages.push((group, String::new()));
    }
    pages
}

/// Whether a name is written within an outline; one that is too slight has it
/// below.
fn holds_name(pattern: &Pattern) -> bool {
    pattern.size.cmpge(dvec2(55.0, 24.0)).all()
}

/// Room for the name below an outline, mm.
fn caption(pattern: &Pattern) -> f64 {
    if holds_name(pattern) { 0.0 } else { 9.0 }
}

/// Breadth of an outline with its name, mm.
fn breadth(pattern: &Pattern) -> f64 {
    if holds_name(pattern) {
        return pattern.size.x;
    }
    let longest = named(pattern)
        .chars()
        .count()
        .max(told(pattern).chars().count());
    pattern.size.x.max(longest as f64 * SMALL * 0.55)
}

/// What an outline is called.
fn named(pattern: &Pattern) -> String {
    let args = [
        ("numbers", Arg::Text(pattern.numbers.join(", "))),
        ("name", Arg::Name(pattern.name.clone())),
    ];
    say("crockery-thing", &args)
}

/// How large it is and how often it is cut.
fn told(pattern: &Pattern) -> String {
    let [wide, high] = [pattern.size.x, pattern.size.y].map(|mm| fixed(mm / 10.0, 1));
    let args = [
        ("size", Arg::Text([wide, high].join(" × "))),
        ("count", Arg::Text(pattern.count.to_string())),
    ];
    say("crockery-cut", &args)
}

/// An outline with its name in it or below it.
fn whole(pattern: &Pattern, at: DVec2) -> Group {
    let (middle, size, step) = if holds_name(pattern) {
        (at + pattern.size * 0.5, LARGE, LARGE * 1.3)
    } else {
        let below = dvec2(breadth(pattern) * 0.5, pattern.size.y + SMALL * 1.1);
        (at + below, SMALL, SMALL * 1.25)
    };
    let line = |text: String, down: f64| letters(&text, middle + dvec2(0.0, down), size, "middle");
    Group::new()
        .add(contour(pattern, at))
        .add(line(named(pattern), 0.0))
        .add(line(told(pattern), step))
}

fn contour(pattern: &Pattern, at: DVec2) -> Path {
    let mut data = String::new();
    for (n, point) in pattern.points.iter().enumerate() {
        data.push(if n == 0 { 'M' } else { 'L' });
        let p = *point + at;
        data += &[mm(p.x), mm(p.y)].join(" ");
    }
    Path::new()
        .set("d", data + "Z")
        .set("fill", "none")
        .set("stroke", "#000")
        .set("stroke-width", "0.35")
        .set("stroke-linejoin", "round")
}

/// An outline over several sheets: each shows its own part, and is to be cut
/// where the next one is laid on.
fn tiled(pattern: &Pattern, room: DVec2) -> Vec<(Group, String)> {
    let columns = sheets(pattern.size.x, room.x);
    let rows = sheets(pattern.size.y, room.y);
    let step = room - LAP;
    let mut pages = Vec::new();
    for (row, column) in (0..rows).flat_map(|row| (0..columns).map(move |column| (row, column))) {
        let from = dvec2(column as f64 * step.x, row as f64 * step.y);
        let clip = ClipPath::new()
            .set("id", "sheet")
            .add(rectangle(DVec2::ZERO, room));
        let middle = pattern.size * 0.5 - from;
        let part = Group::new()
            .set("clip-path", "url(#sheet)")
            .add(contour(pattern, -from))
            .add(letters(&named(pattern), middle, LARGE, "middle"))
            .add(letters(
                &told(pattern),
                middle + dvec2(0.0, LARGE * 1.3),
                LARGE,
                "middle",
            ));
        let mut group = Group::new().add(clip).add(part);
        if column + 1 < columns {
            group = group.add(cut(dvec2(step.x, 0.0), dvec2(step.x, room.y)));
        }
        if row + 1 < rows {
            group = group.add(cut(dvec2(0.0, step.y), dvec2(room.x, step.y)));
        }
        let across = joins(column, columns, step.x, room.x);
        for (x, y) in joins(row, rows, step.y, room.y)
            .into_iter()
            .flat_map(|y| across.iter().map(move |&x| (x, y)))
        {
            group = group.add(mark(dvec2(x, y)));
        }
        let count = |n: usize| Arg::Text(n.to_string());
        let args = [
            ("thing", Arg::Text(named(pattern))),
            ("row", count(row + 1)),
            ("rows", count(rows)),
            ("column", count(column + 1)),
            ("columns", count(columns)),
        ];
        pages.push((group, say("crockery-part", &args)));
    }
    pages
}

/// A line to cut along.
fn cut(from: DVec2, to: DVec2) -> Line {
    line(from, to)
        .set("stroke-width", "0.2")
        .set("stroke-dasharray", "3 2")
}

/// Where marks of a sheet lie along one side so that each falls on one of the
/// sheet beside it: at both ends of every strip they share.
fn joins(nth: usize, of: usize, step: f64, room: f64) -> Vec<f64> {
    let mut at = Vec::new();
    if nth > 0 {
        at.extend([0.0, LAP]);
    }
    if nth + 1 < of {
        at.extend([step, room]);
    }
    if at.is_empty() {
        at.extend([0.0, room]);
    }
    at
}

/// A mark that falls on one of the next sheet.
fn mark(at: DVec2) -> Circle {
    Circle::new()
        .set("cx", mm(at.x))
        .set("cy", mm(at.y))
        .set("r", "1.2")
        .set("fill", "none")
        .set("stroke", "#000")
        .set("stroke-width", "0.2")
}
