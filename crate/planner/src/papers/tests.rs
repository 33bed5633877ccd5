//! Papers of the layouts that come with the planner.
use super::press::BODY;
use super::*;
use crate::layout::{Layout, Source, Units, open};
use crate::shelf::ShelfThing;

const STARTERS: [&str; 3] = [
    include_str!("../../../../static/starters/harbour-supper.spread.json"),
    include_str!("../../../../static/starters/citrus-breakfast.spread.json"),
    include_str!("../../../../static/starters/noodle-night.spread.json"),
];

fn starters() -> Vec<Layout> {
    let all = STARTERS.iter();
    all.map(|file| open(file).expect("a sound file")).collect()
}

/// The values of an attribute of all text nodes, with their words.
fn texts(page: &str) -> Vec<(f64, f64, f64, String)> {
    let mut out = Vec::new();
    for part in page.split("<text ").skip(1) {
        let (head, rest) = part.split_once('>').expect("closed");
        let get = |key: &str| -> f64 {
            let key = format!(" {key}=\"");
            let head = format!(" {head}");
            let from = head.find(&key).expect("there") + key.len();
            let value = &head[from..];
            value[..value.find('"').expect("quoted")]
                .parse()
                .expect("a number")
        };
        let words = rest.split_once("</text>").expect("ended").0;
        out.push((
            get("x"),
            get("y"),
            get("font-size"),
            words.trim().to_string(),
        ));
    }
    out
}

#[test]
fn every_page_keeps_its_margins_and_its_letters_are_large_enough() {
    for layout in starters() {
        for sheet in Sheet::ALL {
            for paper in [Paper::A4, Paper::Letter] {
                let all = pages(&layout, sheet, paper);
                let [wide, high] = sheet.size(paper);
                assert!(!all.is_empty(), "{sheet:?}");
                for (n, page) in all.iter().enumerate() {
                    let said = format!("page {} of {}", n + 1, all.len());
                    assert!(page.contains(&said), "{sheet:?}: {said}");
                    // A drawing stands in a group of its own, and words after it.
                    let parts: Vec<&str> = page.split("</g>").collect();
                    let words = texts(parts[parts.len() - 2]);
                    assert!(!words.is_empty(), "{sheet:?}: words on page {}", n + 1);
                    for (x, y, size, words) in words {
                        assert!(size >= BODY, "{sheet:?}: {words:?} is {size} mm");
                        let end = x + letters::width(&words, size, false);
                        assert!(
                            x >= 9.99 && end <= wide - 9.5,
                            "{sheet:?}: {words:?} to {end}"
                        );
                        assert!(y >= 10.0 && y <= high - 9.99, "{sheet:?}: {words:?} at {y}");
                    }
                }
            }
        }
        // Numbers on the plan are of 12 pt at least, which is 4.23 mm.
        let plan = pages(&layout, Sheet::Set, Paper::A4).swap_remove(0);
        let sizes = texts(&plan).into_iter().map(|text| text.2);
        let large = sizes.filter(|size| *size >= 4.23).count();
        let alone = layout.items.iter().filter(|item| item.on.is_none()).count();
        assert!(large > alone, "a number for each: {large}");
    }
}

#[test]
fn counts_are_those_of_the_picture() {
    for layout in starters() {
        let pulled: usize = pull(&layout, &[]).iter().map(|row| row.count).sum();
        let eaten = |i: &&crate::layout::Item| crate::catalogue::kind_of(&i.prop).is_food();
        let food_things = layout.items.iter().filter(eaten).count();
        assert_eq!(
            pulled,
            layout.items.len() - food_things + layout.linens.len(),
            "{}",
            layout.head.title
        );
        let mut listed: Vec<_> = food(&layout).into_iter().flat_map(|row| row.ids).collect();
        let count = listed.len();
        listed.dedup();
        assert_eq!(listed.len(), count, "nothing twice");
        assert!(count >= food_things);
    }
}

#[test]
fn what_differs_in_source_or_shelf_is_another_row() {
    let mut layout = starters().swap_remove(1);
    let rows = pull(&layout, &[]);
    let several = rows
        .iter()
        .find(|row| row.count > 1)
        .expect("place settings");
    let (id, count) = (several.ids[0], several.count);
    let item = layout.items.iter_mut().find(|i| i.id == id).expect("there");
    (item.stock.source, item.stock.spare) = (Some(Source::Hire), 2);
    let now = pull(&layout, &[]);
    assert_eq!(now.len(), rows.len() + 1);
    let own = now.iter().find(|row| row.ids == [id]).expect("its own");
    assert_eq!((own.count, own.spare, &*own.from), (1, 2, "hire"));
    let rest = now.iter().find(|row| row.ids.first() == several.ids.get(1));
    assert_eq!(rest.map(|row| row.count), Some(count - 1));
}

#[test]
fn inches_are_written_to_the_hundredth_and_no_paper_is_empty() {
    let mut layout = starters().swap_remove(0);
    layout.head.units = Units::In;
    let list = &lists(&layout, Sheet::Set)[0];
    assert_eq!(list.columns[2].0, "x in");
    let x: f64 = list.rows[0][2].parse().expect("a number");
    let item = layout
        .items
        .iter()
        .min_by_key(|i| (i.number, i.id))
        .expect("one");
    assert!((x * 25.4 - f64::from(item.at.x)).abs() <= 0.13, "{x}");
    for sheet in Sheet::ALL {
        for list in lists(&layout, sheet) {
            let rows = list.records();
            assert!(rows.len() > 1 && rows.iter().all(|r| r.len() == rows[0].len()));
            assert!(!rows.concat().iter().any(|cell| cell == super::list::TICK));
        }
    }
    let empty = Layout::empty(crate::layout::LayoutId(1));
    for sheet in Sheet::ALL {
        assert!(!pages(&empty, sheet, Paper::A4).is_empty(), "{sheet:?}");
    }
}

#[test]
fn what_was_logged_stands_in_the_log_and_nowhere_else() {
    let layout = starters().swap_remove(0);
    let exposure = layout.exposures[1].id;
    let shot = Logged {
        exposure,
        frames: 4,
        file: "0412".into(),
        note: "sleeve over the jug".into(),
        kept: true,
    };
    let gone = Logged {
        exposure: crate::layout::Id(9_999),
        frames: 7,
        ..Logged::default()
    };
    let logged = [gone, shot];
    let known = Known {
        logged: &logged,
        ..Known::default()
    };
    let list = lists_with(&layout, Sheet::Log, known).swap_remove(0);
    let before = lists(&layout, Sheet::Log).swap_remove(0);
    let other = |list: &List| [&list.rows[..1], &list.rows[2..]].concat();
    assert_eq!(other(&list), other(&before), "the rest is left for a pen");
    assert_eq!(list.rows[1][..3], before.rows[1][..3]);
    let written = ["4", "", "0412", "sleeve over the jug", "kept"];
    assert_eq!(list.rows[1][3..], written);
    let page = pages_with(&layout, Sheet::Log, Paper::A4, known).concat();
    assert!(page.contains(">0412<"), "on the paper too");
}

#[test]
fn the_pull_list_says_what_the_shelf_has() {
    let layout = starters().swap_remove(0);
    let rows = pull(&layout, &[]);
    assert!(rows.iter().all(|row| row.have.is_empty()), "no shelf");
    assert_eq!(shelf_told(&rows), "");
    let most = rows.iter().max_by_key(|row| row.count).expect("rows");
    let alone = crate::commands::kept(&layout, most.ids[0], crate::layout::LayoutId(1));
    let mut own = ShelfThing::of(&alone.expect("it is there")).expect("a thing");
    own.count = 1;
    own.place = "rack B".into();
    let rows = pull(&layout, std::slice::from_ref(&own));
    let row = rows
        .iter()
        .find(|row| row.ids == most.ids)
        .expect("its row");
    let need = most.count + usize::from(most.spare);
    assert_eq!(row.have, format!("have 1 of {need}, at rack B"));
    let all: usize = rows.iter().map(|r| r.count + usize::from(r.spare)).sum();
    let told = shelf_told(&rows);
    assert!(told.contains(&format!("1 of the {all} pieces")), "{told}");
    let known = Known {
        shelf: &[own],
        ..Known::default()
    };
    let paper = &lists_with(&layout, Sheet::Pull, known)[0];
    assert!(paper.rows.iter().flatten().any(|c| c.contains("at rack B")));
}

#[test]
fn another_season_lists_what_changes_and_nothing_else() {
    use crate::shelf::{Season, Wish, swapped};
    let wish = Wish {
        food: true,
        linen: true,
        board: true,
        keep: Vec::new(),
    };
    for (layout, season) in starters().iter().flat_map(|l| Season::ALL.map(|s| (l, s))) {
        let after = swapped(layout, season, &wish).after;
        let list = difference(layout, &after);
        let count = |change: &str| -> usize {
            let rows = list.rows.iter().filter(|row| row[0] == change);
            rows.map(|row| row[6].parse::<usize>().expect("a count"))
                .sum()
        };
        let pairs = layout.items.iter().zip(&after.items);
        let cloths = layout.linens.iter().zip(&after.linens);
        let changed = pairs.filter(|(a, b)| a != b).count()
            + cloths.filter(|(a, b)| a != b).count()
            + usize::from(layout.table.surface != after.table.surface);
        assert_eq!([count("out"), count("in")], [changed; 2], "{season:?}");
        let gone: usize = going(layout, &after).iter().map(|g| g.ids.len()).sum();
        let foods = layout.items.iter().zip(&after.items);
        assert_eq!(gone, foods.filter(|(a, b)| a.prop != b.prop).count());
        assert!(
            difference(&after, &after).rows.is_empty(),
            "none for itself"
        );
        // A colour goes by the word it has on the papers.
        for cloth in &after.linens {
            let word = super::told::colour(cloth.colour);
            assert!(cloth.name.starts_with(&word), "{} is {word}", cloth.name);
        }
    }
}
