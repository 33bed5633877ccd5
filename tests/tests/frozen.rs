//! What has once been sent or saved opens as it was. The files under
//! `golden/version-*` are never written again: a change that breaks one of
//! these tests is a change that alters a picture someone has already agreed to.
//!
//! `OVERSPREAD_FREEZE=1` adds what is missing (a new catalogue entry, a new
//! kept layout) and alters nothing that is there.
use std::fmt::Write as _;
use std::fs;

use outside_checks::tree::{in_tests, read};
use planner::catalogue::{foods, item_from, linens, props, surface_from, surfaces};
use planner::layout::{Id, Item, Layout, LayoutId, Point, Turn, open};
use planner::link::{link_two, unlink};
use planner::scene::{arm, silhouette};
use planner::shape::{area, perimeter};

/// Versions of the format in the world, with the number of layouts kept of
/// each: a folder that loses one must fail.
const KEPT: [(u32, usize); 2] = [(0, 4), (1, 6)];
/// The version written today.
const NOW: u32 = 1;

fn folder(version: u32) -> String {
    format!("golden/version-{version}")
}

/// The layouts kept of a version: name, file and link.
fn kept(version: u32) -> Vec<(String, String, String)> {
    let dir = in_tests(&folder(version));
    let entries = fs::read_dir(dir).expect("the folder");
    let names = entries.map(|e| e.expect("readable").file_name());
    let names = names.map(|name| name.to_string_lossy().into_owned());
    let mut names: Vec<String> = names
        .filter_map(|name| name.strip_suffix(".link").map(str::to_owned))
        .collect();
    names.sort();
    let each = names.into_iter().map(|name| {
        let file = read(&format!("{}/{name}.spread.json", folder(version)));
        let link = read(&format!("{}/{name}.link", folder(version)));
        (name, file, link)
    });
    each.collect()
}

#[test]
fn every_link_ever_sent_opens_as_the_layout_it_was_made_of() {
    for (version, count) in KEPT {
        let all = kept(version);
        assert_eq!(all.len(), count, "layouts of version {version}");
        for (name, file, link) in all {
            let was = open(&file).unwrap_or_else(|p| panic!("version {version}, {name}: {p:?}"));
            let is = unlink(link.trim()).unwrap_or_else(|p| panic!("{name}: {p:?}"));
            assert!(is.layout == was, "version {version}, {name}");
            assert!(is.kept_sections.is_empty(), "{name}: all of it is known");
        }
    }
}

/// A link of two versions that was sent: the supper, and beside it the layout
/// `everything`.
#[test]
fn both_versions_of_a_link_ever_sent_open_as_they_were() {
    let path = format!("{}/two-versions.sent", folder(1));
    let was = |name: &str| {
        let file = read(&format!("{}/{name}.spread.json", folder(1)));
        open(&file).expect("a sound file")
    };
    let (supper, everything) = (was("supper"), was("everything"));
    if std::env::var_os("OVERSPREAD_FREEZE").is_some() && !in_tests(&path).exists() {
        let sent = link_two(&supper, &everything, ["as it is now", "everything"]).fragment;
        fs::write(in_tests(&path), sent + "\n").expect("written");
    }
    let is = unlink(read(&path).trim()).expect("opens");
    assert!(is.layout == supper, "the first");
    let other = is.other.expect("and the other");
    assert!(other.layout == everything, "the other");
    assert_eq!(other.names, ["as it is now", "everything"]);
}

#[test]
fn every_file_ever_saved_opens_and_is_saved_again_as_it_was() {
    for (version, _) in KEPT {
        for (name, file, _) in kept(version) {
            let again = open(&file).expect("opens").to_json();
            let head = format!("\"version\": {version},");
            assert!(file.contains(&head), "{name} is of version {version}");
            let now = file.replacen(&head, &format!("\"version\": {NOW},"), 1);
            let (again, now) = (again.trim_end(), now.trim_end());
            let mut lines = again.lines().zip(now.lines());
            let other = lines.find(|(is, was)| is != was);
            assert_eq!(other, None, "version {version}, {name}");
            assert_eq!(again, now, "version {version}, {name}: its length");
        }
    }
}

/// A file with nothing but what must be there, and all that is then taken for
/// granted.
#[test]
fn what_is_not_said_is_still_taken_for_the_same() {
    let bare = open(&read("golden/version-1/bare.json")).expect("opens");
    let path = in_tests("golden/version-1/bare-as-read.json");
    if std::env::var_os("OVERSPREAD_FREEZE").is_some() && !path.exists() {
        fs::write(path, bare.to_json()).expect("written");
    }
    let whole = read("golden/version-1/bare-as-read.json");
    assert_eq!(bare.to_json(), whole, "stated defaults");
}

fn every_entry() -> Vec<Item> {
    let entries = props().iter().chain(foods());
    entries
        .enumerate()
        .map(|(n, entry)| {
            let id = Id(n as u16 + 1);
            item_from(entry, id, n as u16 + 1, Point::new(600, 450))
        })
        .collect()
}

/// A layout with nothing but these on it.
fn layout_of(items: Vec<Item>) -> Layout {
    let mut layout = Layout::empty(LayoutId(1));
    let last = items.iter().map(|item| item.id.0).max().unwrap_or(0);
    layout.head.next_id = last + 1;
    layout.head.next_number = layout.head.next_id;
    layout.items = items;
    layout
}

/// What the catalogue gives for each of its numbers: size, height, colours,
/// finish. A correction is a new number.
#[test]
fn catalogue_entries_stay_what_they_were() {
    let path = "golden/version-1/catalogue.json";
    if std::env::var_os("OVERSPREAD_FREEZE").is_some() && !in_tests(path).exists() {
        fs::write(in_tests(path), layout_of(every_entry()).to_json()).expect("written");
    }
    let mut was = open(&read(path)).expect("opens").items;
    let mut later = 2;
    while in_tests(&format!("golden/version-1/catalogue-{later}.json")).exists() {
        let path = format!("golden/version-1/catalogue-{later}.json");
        was.extend(open(&read(&path)).expect("opens").items);
        later += 1;
    }
    let fresh = |item: &Item| was.iter().all(|i| i.prop != item.prop);
    let fresh: Vec<Item> = every_entry().into_iter().filter(fresh).collect();
    if std::env::var_os("OVERSPREAD_FREEZE").is_some() && !fresh.is_empty() {
        let path = in_tests(&format!("golden/version-1/catalogue-{later}.json"));
        fs::write(path, layout_of(fresh.clone()).to_json()).expect("written");
        was.extend(fresh);
    }
    assert_eq!(
        was.len(),
        every_entry().len(),
        "OVERSPREAD_FREEZE=1 keeps what is new"
    );
    let now = every_entry();
    for item in was {
        let same = now.iter().find(|i| i.prop == item.prop);
        let same = same.unwrap_or_else(|| panic!("{} is gone", item.prop));
        let same = Item {
            id: item.id,
            number: item.number,
            ..same.clone()
        };
        assert_eq!(same, item, "{}", item.prop);
    }
}

/// The rows of a table kept under version 1 are what is worked out today; rows
/// that are new are added when asked to.
fn rows_stay(name: &str, today: &[String]) {
    let path = format!("golden/version-1/{name}");
    let key = |row: &str| row.split(',').next().unwrap_or_default().to_owned();
    if std::env::var_os("OVERSPREAD_FREEZE").is_some() {
        let mut text = fs::read_to_string(in_tests(&path)).unwrap_or_default();
        let known: Vec<String> = text.lines().map(key).collect();
        for row in today.iter().filter(|row| !known.contains(&key(row))) {
            writeln!(text, "{row}").expect("a string");
        }
        fs::write(in_tests(&path), text).expect("written");
    }
    let text = read(&path);
    assert!(
        text.lines().count() >= today.len(),
        "{name}: rows are missing"
    );
    for row in text.lines() {
        let own = today.iter().find(|t| key(t) == key(row));
        assert_eq!(own.map(String::as_str), Some(row), "{name}");
    }
}

#[test]
fn surfaces_and_cloth_stay_what_they_were() {
    let tops = surfaces().iter().map(|entry| {
        let s = surface_from(entry);
        format!("{},{},{:?}", s.prop, s.colour, s.finish)
    });
    let cloths = linens().iter().map(|l| {
        let [wide, deep] = l.size;
        format!("{:?},{wide},{deep},{}", l.kind, l.colour)
    });
    rows_stay("surfaces.csv", &tops.chain(cloths).collect::<Vec<_>>());
}

/// A number in a row: tenths of a millimetre.
fn tenths(mm: f64) -> i64 {
    (mm * 10.0).round() as i64
}

/// The number of a thing is its seed: its outline is the same on every phone
/// and in every year. Kept as points, area, perimeter and bounds.
#[test]
fn outlines_grow_from_the_same_seeds() {
    let mut rows = Vec::new();
    for item in every_entry() {
        for (id, turn) in [(7, 0), (4_321, 47)] {
            let seeded = Item {
                id: Id(id),
                turn: Turn::from_half_degrees(turn),
                ..item.clone()
            };
            let outline = silhouette(&seeded);
            let (mut min, mut max) = (outline[0], outline[0]);
            for p in &outline {
                min = min.min(*p);
                max = max.max(*p);
            }
            let round = perimeter(&outline);
            let numbers = [area(&outline) / 100.0, round, min.x, min.y, max.x, max.y].map(tenths);
            let numbers: Vec<String> = numbers.iter().map(i64::to_string).collect();
            let (prop, points) = (&item.prop, outline.len());
            rows.push(format!("{prop} {id},{points},{}", numbers.join(",")));
        }
    }
    rows_stay("outlines.csv", &rows);
}

/// Arms come in where they came in.
#[test]
fn arms_lie_where_they_lay() {
    let mut rows = Vec::new();
    for (version, _) in KEPT {
        for (name, file, _) in kept(version) {
            let layout = open(&file).expect("opens");
            for hand in &layout.hands {
                let arm = arm(&layout, hand);
                let [entry, tip, wrist, elbow] = [arm.entry, arm.tip, arm.wrist, arm.elbow];
                let numbers = [entry, tip, wrist, elbow].map(|p| {
                    let [x, y] = [p.x, p.y].map(tenths);
                    format!("{x},{y}")
                });
                let (id, area) = (hand.id.0, tenths(area(&arm.hand) / 100.0));
                rows.push(format!(
                    "{version} {name} {id},{area},{}",
                    numbers.join(",")
                ));
            }
        }
    }
    assert!(rows.len() > 8, "{} arms", rows.len());
    rows_stay("arms.csv", &rows);
}
