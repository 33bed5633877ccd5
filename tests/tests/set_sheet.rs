//! A helper who never saw the layout lays the table from the set sheet. Here the
//! helper is this file: it knows nothing of the planner's sheets but the words
//! on their pages and where those stand, as any reader of a page has them.
//!
//! Tolerance: within 1 cm of the layout, as the job asks; within 1 mm of what is
//! printed, which is to the mm, or to a hundredth of an inch.
use std::collections::BTreeMap;

use outside_checks::tree::read;
use planner::layout::{Layout, Point, Turn, Units, open};
use planner::papers::{Paper, Sheet, pages};

/// A word of a page: where it begins, and what it says.
#[derive(Clone, Debug)]
struct Word {
    x: f64,
    y: f64,
    text: String,
}

/// All words of a page.
fn words(page: &str) -> Vec<Word> {
    let attribute = |head: &str, name: &str| -> f64 {
        let key = format!(" {name}=\"");
        let from = head.find(&key).expect("the attribute") + key.len();
        let end = from + head[from..].find('"').expect("quoted");
        head[from..end].parse().expect("a number")
    };
    page.split("<text")
        .skip(1)
        .map(|node| {
            let (head, rest) = node.split_once('>').expect("an open tag");
            let text = rest.split_once("</text>").expect("closed").0;
            Word {
                x: attribute(head, "x"),
                y: attribute(head, "y"),
                text: text.trim().replace("&amp;", "&").to_string(),
            }
        })
        .collect()
}

/// What one row says of a thing: x, y and turn, mm and degrees.
type Placed = [f64; 3];

/// The rows below heads of columns called x and y, by the numbers that stand
/// before them.
fn rebuilt(all: &[Word]) -> BTreeMap<String, Placed> {
    let mut out = BTreeMap::new();
    let heads: Vec<&Word> = all
        .iter()
        .filter(|w| w.text == "x cm" || w.text == "x in")
        .collect();
    for head in heads {
        let unit = if head.text == "x cm" { 10.0 } else { 25.4 };
        let same = |w: &&Word| (w.y - head.y).abs() < 0.1;
        let column = |name: &str, after: bool| -> f64 {
            let own = all.iter().filter(same).filter(|w| w.text.starts_with(name));
            let side = own.filter(|w| (w.x > head.x) == after);
            let near = |w: &&Word| ((w.x - head.x).abs() * 1e3) as i64;
            side.min_by_key(near).expect("a column").x
        };
        let (number, y, turn) = (
            column("No.", false),
            column("y", true),
            column("Turn", true),
        );
        let at = |x: f64, row: f64| {
            let found = all
                .iter()
                .find(|w| (w.x - x).abs() < 0.05 && (w.y - row).abs() < 0.05);
            found.map(|w| w.text.clone())
        };
        // What stands above is written on the plan.
        let below = all.iter().filter(|w| w.y > head.y);
        for row in below.filter(|w| (w.x - head.x).abs() < 0.05) {
            let Ok(across) = row.text.parse::<f64>() else {
                continue;
            };
            let figure = |x: f64| -> f64 {
                let text = at(x, row.y).expect("a figure");
                text.trim_end_matches('°').parse().expect("a number")
            };
            let number = at(number, row.y).expect("a number before it");
            let placed = [across * unit, figure(y) * unit, figure(turn)];
            let twice = out.insert(number.clone(), placed);
            assert!(twice.is_none(), "{number} stands twice");
        }
    }
    out
}

/// The numbers by which a helper finds a thing: its own, or with a place among
/// those that share it.
fn numbered(layout: &Layout) -> Vec<(String, Point, Turn)> {
    let mut out = Vec::new();
    for item in &layout.items {
        let alike: Vec<u16> = layout
            .items
            .iter()
            .filter(|o| o.number == item.number)
            .map(|o| o.id.0)
            .collect();
        let before = alike.iter().filter(|id| **id <= item.id.0).count();
        let tag = if alike.len() > 1 {
            format!("{}.{before}", item.number)
        } else {
            item.number.to_string()
        };
        out.push((tag, item.at, item.turn));
    }
    for linen in &layout.linens {
        let before = layout.linens.iter().filter(|o| o.id <= linen.id).count();
        out.push((format!("L{before}"), linen.at, linen.turn));
    }
    out
}

fn checked(name: &str, layout: &Layout) -> usize {
    let printed = match layout.head.units {
        Units::Cm => 0.001,
        Units::In => 0.128,
    };
    let all = numbered(layout);
    for paper in [Paper::A4, Paper::Letter] {
        let mut found = BTreeMap::new();
        for page in pages(layout, Sheet::Set, paper) {
            found.extend(rebuilt(&words(&page)));
        }
        assert_eq!(found.len(), all.len(), "{name}: as many as in the layout");
        for (tag, at, turn) in &all {
            let [x, y, degrees] = found
                .get(tag)
                .copied()
                .unwrap_or_else(|| panic!("{name}: {tag}"));
            let far = glam::dvec2(x - f64::from(at.x), y - f64::from(at.y)).length();
            assert!(far <= 10.0, "{name}: {tag} is {far} mm off");
            assert!(
                far <= printed * 1.5,
                "{name}: {tag} is printed {far} mm off"
            );
            assert!(
                (degrees - turn.degrees()).abs() < 0.01,
                "{name}: {tag} turned"
            );
        }
    }
    all.len()
}

/// Numbers that look like chance, the same each time.
struct Dice(u32);

impl Dice {
    fn below(&mut self, most: i32) -> i32 {
        self.0 = self.0.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        (self.0 >> 8) as i32 % most
    }
}

fn starters() -> Vec<(String, Layout)> {
    let names = ["harbour-supper", "citrus-breakfast", "noodle-night"];
    names
        .map(|name| {
            let file = read(&format!("../static/starters/{name}.spread.json"));
            (name.to_string(), open(&file).expect("a sound file"))
        })
        .into()
}

#[test]
fn the_table_is_laid_again_from_the_words_of_the_sheet_alone() {
    let mut rows = 0;
    for (name, layout) in starters() {
        rows += checked(&name, &layout);
        let mut inches = layout;
        inches.head.units = Units::In;
        checked(&name, &inches);
    }
    assert!(rows > 80, "{rows} things in three tables");
}

#[test]
fn so_is_any_other_table() {
    let mut dice = Dice(41);
    for (n, (name, mut layout)) in starters().into_iter().cycle().take(10).enumerate() {
        for item in &mut layout.items {
            item.at = Point::new(dice.below(2_400) - 200, dice.below(1_400) - 200);
            item.turn = Turn::from_half_degrees(dice.below(720));
        }
        for linen in &mut layout.linens {
            linen.at = Point::new(dice.below(2_400) - 200, dice.below(1_400) - 200);
        }
        // More of them than one page holds.
        if n == 0 {
            let more = layout.items.clone();
            for item in more.iter().cycle().take(150) {
                let mut copy = item.clone();
                copy.id = planner::layout::Id(layout.head.next_id);
                layout.head.next_id += 1;
                layout.items.push(copy);
            }
            assert!(
                pages(&layout, Sheet::Set, Paper::A4).len() > 1,
                "it goes on"
            );
        }
        if n % 2 == 1 {
            layout.head.units = Units::In;
        }
        checked(&name, &layout);
    }
}
