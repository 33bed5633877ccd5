//! Pages set one after another: head, words, lists, pictures, lines to write on.
//!
//! All of it in mm, black on white. What does not fit goes on to the next page,
//! and a list takes its head along.
use svg::node::element::{Element, Group, Line, Rectangle, SVG, Text};

use super::letters::{lines, width};
use super::list::{List, TICK};
use crate::words::{Arg, fixed, say};

/// What nothing is printed in, mm.
const MARGIN: f64 = 10.0;
/// Body letters, mm: 9.1 pt.
pub(super) const BODY: f64 = 3.2;
/// From line to line, in shares of the letters.
const LEADING: f64 = 1.22;
/// Headings, mm.
const HEADING: f64 = 4.2;
/// The paper's name at the top, mm.
const NAME: f64 = 5.2;
/// From the margin to what stands below the head, mm.
const HEAD: f64 = 15.0;
/// Air within the cells of a list and below a block, mm.
pub(super) const AIR: f64 = 1.1;
/// Between strips of a list that runs in several, mm.
const BETWEEN: f64 = 5.0;
/// Lines to write on stand so far apart, mm.
const RULED: f64 = 8.0;
/// A line of a share so great of its column is told its length.
const FULL: f64 = 0.9;

/// What stands on the pages, in its order.
#[derive(Clone)]
pub(super) enum Block {
    /// The heading of a part.
    Heading(String),
    /// A paragraph.
    Words(String),
    /// A list, in so many strips beside each other.
    List(List, usize),
    /// A drawing that is so high.
    Drawing(Group, f64),
    /// A line to write on after each of these, all in one row; nothing before
    /// a line that takes the whole of it.
    Blanks(Vec<String>),
    /// Boxes to tick, all in one row.
    Ticks(Vec<String>),
    /// What follows begins a page.
    Break,
}

/// What stands at the head of every page.
pub(super) struct Head {
    /// The paper's name.
    pub name: String,
    /// Of which table.
    pub title: String,
    /// Which version of it, and of when.
    pub version: String,
}

/// Pages being set.
pub(super) struct Press {
    /// Width and height.
    paper: [f64; 2],
    pages: Vec<Group>,
    page: Group,
    y: f64,
}

fn number(mm: f64) -> String {
    fixed(mm, 2)
}

/// Words on a page. A line that nearly fills `most` is told how long it is.
pub(super) fn written(text: &str, at: [f64; 2], size: f64, bold: bool, most: f64) -> Text {
    let node = Text::new(text)
        .set("x", number(at[0]))
        .set("y", number(at[1]))
        .set("font-size", number(size));
    let node = if bold {
        node.set("font-weight", "bold")
    } else {
        node
    };
    let wide = width(text, size, bold);
    if wide > most * FULL {
        node.set("textLength", number(wide))
            .set("lengthAdjust", "spacingAndGlyphs")
    } else {
        node
    }
}

/// A straight line.
pub(super) fn ruled(from: [f64; 2], to: [f64; 2], weight: f64) -> Line {
    Line::new()
        .set("x1", number(from[0]))
        .set("y1", number(from[1]))
        .set("x2", number(to[0]))
        .set("y2", number(to[1]))
        .set("stroke", "#000")
        .set("stroke-width", number(weight))
}

/// How many rows of these heights stand in strips that are so high.
fn filled(highs: &[f64], across: usize, most: f64) -> usize {
    let mut next = 0;
    for _ in 0..across.max(1) {
        let mut high = 0.0;
        while next < highs.len() && (high == 0.0 || high + highs[next] <= most + 0.01) {
            high += highs[next];
            next += 1;
        }
    }
    next
}

/// A box to tick, on a line of words that begins at `at`.
fn box_at(at: [f64; 2]) -> Rectangle {
    let side = BODY * 0.95;
    Rectangle::new()
        .set("x", number(at[0] + 0.2))
        .set("y", number(at[1] - side * 0.86))
        .set("width", number(side))
        .set("height", number(side))
        .set("fill", "none")
        .set("stroke", "#000")
        .set("stroke-width", "0.25")
}

impl Press {
    /// Blank paper of this size.
    pub(super) fn new(paper: [f64; 2]) -> Self {
        Self {
            paper,
            pages: Vec::new(),
            page: Group::new(),
            y: MARGIN + HEAD,
        }
    }

    /// How high what stands below the head may be.
    pub(super) fn high(&self) -> f64 {
        self.paper[1] - 2.0 * MARGIN - HEAD
    }

    /// How wide what is printed may be.
    pub(super) fn wide(&self) -> f64 {
        self.paper[0] - 2.0 * MARGIN
    }

    fn left(&self) -> f64 {
        self.paper[1] - MARGIN - self.y
    }

    fn turn_over(&mut self) {
        self.pages.push(std::mem::take(&mut self.page));
        self.y = MARGIN + HEAD;
    }

    /// Begins a page where so much does not fit on this one and may on the
    /// next.
    fn room(&mut self, high: f64) {
        if high > self.left() && self.y > MARGIN + HEAD {
            self.turn_over();
        }
    }

    fn put(&mut self, node: impl Into<Element>) {
        // Nothing is lost: the group is put back with one more in it.
        let page = std::mem::take(&mut self.page);
        self.page = page.add(node.into());
    }

    /// How much of a page so wide these take where it never ends, mm.
    pub(super) fn taken(wide: f64, blocks: Vec<Block>) -> f64 {
        let mut press = Self::new([wide + 2.0 * MARGIN, f64::from(u16::MAX)]);
        let top = press.y;
        press.set(blocks);
        press.y - top
    }

    /// Sets one block after another.
    pub(super) fn set(&mut self, blocks: Vec<Block>) {
        for block in blocks {
            self.block(block);
        }
    }

    fn block(&mut self, block: Block) {
        match block {
            Block::Heading(text) => {
                // Never the last on its page.
                self.room(HEADING * 2.0 + BODY * 4.0);
                self.y += HEADING * 1.4;
                let most = self.wide();
                self.put(written(&text, [MARGIN, self.y], HEADING, true, most));
                self.y += HEADING * 0.5;
            }
            Block::Words(text) => {
                let most = self.wide();
                for line in lines(&text, BODY, false, most) {
                    self.room(BODY * LEADING);
                    self.y += BODY * LEADING;
                    self.put(written(&line, [MARGIN, self.y], BODY, false, most));
                }
                self.y += AIR;
            }
            Block::List(list, across) => self.list(&list, across),
            Block::Drawing(group, high) => {
                self.room(high);
                let mut by = String::from("translate(");
                by.push_str(&number(MARGIN));
                by.push(' ');
                by.push_str(&number(self.y));
                by.push(')');
                self.put(group.set("transform", by));
                self.y += high + AIR;
            }
            Block::Blanks(names) => self.blanks(&names),
            Block::Ticks(names) => self.ticks(&names),
            Block::Break => self.turn_over(),
        }
    }

    fn blanks(&mut self, names: &[String]) {
        self.room(RULED);
        self.y += RULED;
        let each = self.wide() / names.len().max(1) as f64;
        for (n, name) in names.iter().enumerate() {
            let x = MARGIN + each * n as f64;
            let long = width(name, BODY, false);
            self.put(written(name, [x, self.y], BODY, false, each));
            let from = x + long + if name.is_empty() { 0.0 } else { 1.5 };
            let y = self.y + 0.6;
            self.put(ruled([from, y], [x + each - 2.0, y], 0.2));
        }
        self.y += 2.0 * AIR;
    }

    fn ticks(&mut self, names: &[String]) {
        let all = names.iter().map(|name| width(name, BODY, false) + 12.0);
        let all: Vec<f64> = all.collect();
        let mut x = MARGIN;
        self.room(RULED);
        self.y += RULED * 0.8;
        for (name, long) in names.iter().zip(all) {
            if x > MARGIN && x + long > self.paper[0] - MARGIN {
                self.room(RULED);
                self.y += RULED * 0.8;
                x = MARGIN;
            }
            self.put(box_at([x, self.y]));
            let most = self.wide() - 5.0;
            self.put(written(name, [x + 5.0, self.y], BODY, false, most));
            x += long;
        }
        self.y += AIR;
    }

    /// Sets a list, its columns in the shares they are given.
    fn list(&mut self, list: &List, across: usize) {
        if !list.title.is_empty() {
            self.block(Block::Heading(list.title.clone()));
        }
        let strips = across.max(1) as f64;
        let strip = (self.wide() - BETWEEN * (strips - 1.0)) / strips;
        let sum: u16 = list.columns.iter().map(|(_, share)| share).sum();
        let share = |n: usize| f64::from(list.columns[n].1) * strip / f64::from(sum.max(1));
        let broken = |cells: &[String], bold: bool| -> Vec<Vec<String>> {
            let each = cells.iter().enumerate();
            each.map(|(n, cell)| lines(cell, BODY, bold, share(n) - AIR))
                .collect()
        };
        let high = |cells: &[Vec<String>]| {
            let most = cells.iter().map(Vec::len).max().unwrap_or(1);
            most as f64 * BODY * LEADING + AIR
        };
        let names: Vec<String> = list.columns.iter().map(|(name, _)| name.clone()).collect();
        let head = broken(&names, true);
        let rows: Vec<Vec<Vec<String>>> = list.rows.iter().map(|row| broken(row, false)).collect();
        let highs: Vec<f64> = rows.iter().map(|row| high(row)).collect();
        let over = high(&head);
        let mut next = 0;
        while next < rows.len() {
            self.room(over + highs[next]);
            let rest: f64 = highs[next..].iter().sum();
            // As even as whole rows allow, where all is on this page.
            let room = self.left() - over;
            let mut most = (rest / strips).max(highs[next]).min(room);
            while most < room && filled(&highs[next..], across, most) < rows.len() - next {
                most = room.min(most + BODY * LEADING * 0.5);
            }
            let top = self.y;
            let mut low = top;
            for n in 0..across.max(1) {
                if next == rows.len() {
                    break;
                }
                let x = MARGIN + (strip + BETWEEN) * n as f64;
                let mut y = self.row(&head, x, top, true, &share) + over;
                self.put(ruled([x, y], [x + strip, y], 0.35));
                let start = y;
                // A row higher than a page is cut off by its foot, not lost.
                while next < rows.len() && (y == start || y + highs[next] <= start + most + 0.01) {
                    self.row(&rows[next], x, y, false, &share);
                    y += highs[next];
                    self.put(ruled([x, y], [x + strip, y], 0.1));
                    next += 1;
                }
                low = low.max(y);
            }
            self.y = low;
            if next < rows.len() {
                self.turn_over();
            }
        }
        self.y += AIR;
    }

    /// Writes one row from a height on; gives that height back.
    fn row(
        &mut self,
        cells: &[Vec<String>],
        left: f64,
        top: f64,
        bold: bool,
        share: &dyn Fn(usize) -> f64,
    ) -> f64 {
        let mut x = left;
        for (n, cell) in cells.iter().enumerate() {
            let most = share(n);
            for (k, line) in cell.iter().enumerate() {
                let y = top + BODY * (LEADING * k as f64 + 1.08);
                if line == TICK {
                    self.put(box_at([x, y]));
                } else if !line.is_empty() {
                    self.put(written(line, [x, y], BODY, bold, most - AIR));
                }
            }
            x += most;
        }
        top
    }

    /// The pages as files that stand alone.
    pub(super) fn pages(mut self, head: &Head) -> Vec<String> {
        self.turn_over();
        let count = self.pages.len();
        let [wide, high] = self.paper;
        let mut out = Vec::with_capacity(count);
        for (n, page) in self.pages.into_iter().enumerate() {
            let args = [
                ("page", Arg::Text((n + 1).to_string())),
                ("pages", Arg::Text(count.to_string())),
            ];
            let said = say("sheet-page", &args);
            let right = |text: &str, y: f64| {
                let x = wide - MARGIN - width(text, BODY, false);
                written(text, [x, y], BODY, false, wide)
            };
            let half = (wide - 2.0 * MARGIN) * 0.7;
            let title = lines(&head.title, BODY, true, half).swap_remove(0);
            let y = MARGIN + HEAD - 3.0;
            let mm = |n: f64| number(n) + "mm";
            let whole = Rectangle::new().set("width", "100%").set("height", "100%");
            let document = SVG::new()
                .set("xmlns", "http://www.w3.org/2000/svg")
                .set("width", mm(wide))
                .set("height", mm(high))
                .set("viewBox", [0.0, 0.0, wide, high].map(number).join(" "))
                .set(
                    "font-family",
                    "Arial, Helvetica, 'Liberation Sans', sans-serif",
                )
                .set("fill", "#000")
                .add(whole.set("fill", "#fff"))
                .add(written(
                    &head.name,
                    [MARGIN, MARGIN + NAME],
                    NAME,
                    true,
                    half,
                ))
                .add(right(&said, MARGIN + NAME))
                .add(written(&title, [MARGIN, MARGIN + 10.5], BODY, true, half))
                .add(right(&head.version, MARGIN + 10.5))
                .add(ruled([MARGIN, y], [wide - MARGIN, y], 0.3))
                .add(page);
            out.push(document.to_string());
        }
        out
    }
}
