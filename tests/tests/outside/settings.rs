//! Place settings laid in one act, measured against what books and makers of
//! tables say.
//!
//! `reference/settings.csv` has the figures in mm with their sources. Grade
//! `published`: a printed standard or cook book; `weak`: one page on the web;
//! `practice`: common practice, no source. `low` and `high` hold the source's
//! own range and half a millimetre a side for whole millimetres.
use std::fmt::Write as _;

use outside_checks::Table;
use outside_checks::tree::{in_tests, read};
use planner::commands::{SettingsWish, lay_places};
use planner::layout::{Item, Layout, LayoutId, Linen, TableShape, open};
use planner::readings::{Study, report};
use planner::scene::linen_drop;
use planner::seats::{PITCH, TIGHT_PITCH, seats};

/// An empty table.
fn table(shape: &str, width: f64, depth: f64) -> Layout {
    let mut layout = Layout::empty(LayoutId(5));
    layout.table.shape = if shape == "round" {
        TableShape::Round
    } else {
        TableShape::Rect
    };
    (layout.table.width, layout.table.depth) = (width as i32, depth as i32);
    layout
}

/// The table with so many places laid.
fn laid(table: &Layout, setting: &str, places: usize) -> Layout {
    let wish = SettingsWish {
        setting: setting.into(),
        places,
        close: false,
    };
    let act = lay_places(table, &wish).expect("there is room");
    let mut after = table.clone();
    act.edit.apply_checked(&mut after).expect("fits");
    after
}

/// One thing at the near edge: left, right, top and bottom, mm.
struct Side {
    prop: String,
    left: f64,
    right: f64,
    top: f64,
    low: f64,
}

fn side(item: &Item) -> Side {
    let [w, d] = item.size.extent().map(f64::from);
    let upright = item.turn.half_degrees() % 360 == 0;
    let [w, d] = if upright || w == d { [w, d] } else { [d, w] };
    let (x, y) = (f64::from(item.at.x), f64::from(item.at.y));
    Side {
        prop: item.prop.clone(),
        left: x - w / 2.0,
        right: x + w / 2.0,
        top: y - d / 2.0,
        low: y + d / 2.0,
    }
}

/// A flat runner along the middle of a table, mm.
fn runner(table: &Layout, size: [i32; 2]) -> Linen {
    let mut file: serde_json::Value = serde_json::from_str(&table.to_json()).expect("JSON");
    let at = table.table.centre();
    file["next_id"] = 2.into();
    file["linens"] = serde_json::json!([{ "id": 1, "kind": "runner", "at": at, "size": size }]);
    open(&file.to_string())
        .expect("a sound file")
        .linens
        .remove(0)
}

/// The broadest runner along a table that nothing is said about, mm.
fn broadest(empty: &Layout) -> f64 {
    let noted = |broad: i32| {
        let mut layout = empty.clone();
        layout.head.next_id = 2;
        layout.linens = vec![runner(empty, [layout.table.width, broad])];
        let findings = report(&Study::new(&layout), false).findings;
        findings
            .iter()
            .any(|f| f.key.starts_with("settings:runner"))
    };
    let found = (1..empty.table.depth).rev().find(|broad| !noted(*broad));
    f64::from(found.expect("a narrow one is well"))
}

const PLATES: [&str; 3] = ["small-plate", "dinner-plate", "noodle-bowl"];

/// The things of the first place, which is at the near edge.
fn first(layout: &Layout) -> Vec<Side> {
    let group = layout.items[0].group;
    let own = layout.items.iter().filter(|i| i.group == group);
    own.map(side).collect()
}

fn one<'a>(place: &'a [Side], among: &[&str]) -> &'a Side {
    let found = place.iter().find(|s| among.contains(&s.prop.as_str()));
    found.unwrap_or_else(|| panic!("one of {among:?}"))
}

/// What a row asks for, measured on the table: every figure must lie between.
fn measured(row: outside_checks::Row<'_>) -> Vec<f64> {
    let (width, depth) = (row.number("width_mm"), row.number("depth_mm"));
    let empty = table(row.text("table"), width, depth);
    let setting = row.text("setting");
    match row.text("what") {
        "seats" => return vec![seats(&empty.table, PITCH) as f64],
        "runner-drop" => {
            let drop = row.number("setting") * 25.4;
            let long = (width + 2.0 * drop).round() as i32;
            return linen_drop(&empty.table, &runner(&empty, [long, 300])).into();
        }
        "runner-broadest" => return vec![broadest(&empty)],
        "seats-tight" => return vec![seats(&empty.table, TIGHT_PITCH) as f64],
        "pitch" => {
            let full = laid(&empty, setting, 4);
            let plates = full
                .items
                .iter()
                .filter(|i| PLATES.contains(&i.prop.as_str()));
            let at: Vec<(f64, f64)> = plates
                .map(|i| (f64::from(i.at.x), f64::from(i.at.y)))
                .collect();
            assert_eq!(at.len(), 4, "{}: all are laid", row.place());
            // Along the row; the other row sits across the table.
            let nearest = |n: usize| {
                let others = (0..at.len()).filter(|m| *m != n && at[*m].1 == at[n].1);
                let far = |m: usize| (at[n].0 - at[m].0).abs();
                others.map(far).fold(f64::INFINITY, f64::min)
            };
            // Round a table there are as many as it seats.
            if row.text("table") == "round" {
                let full = laid(&empty, setting, seats(&empty.table, PITCH));
                let plates: Vec<&Item> = full
                    .items
                    .iter()
                    .filter(|i| PLATES.contains(&i.prop.as_str()))
                    .collect();
                assert_eq!(plates.len(), 7, "{}: all are laid", row.place());
                let off = plates[0].at.vec() - plates[1].at.vec();
                return vec![off.length()];
            }
            return (0..at.len()).map(nearest).collect();
        }
        _ => {}
    }
    let full = laid(&empty, setting, 1);
    let place = first(&full);
    let plate = one(&place, &PLATES);
    let beside = |s: &&Side| s.prop.contains("fork") || s.prop.contains("knife");
    match row.text("what") {
        "breadth" => {
            let left = place.iter().map(|s| s.left).fold(f64::INFINITY, f64::min);
            let right = place.iter().map(|s| s.right).fold(0.0, f64::max);
            vec![right - left]
        }
        "depth" => {
            let top = place.iter().map(|s| s.top).fold(f64::INFINITY, f64::min);
            vec![depth - top]
        }
        "plate-to-edge" => vec![depth - plate.low],
        "lower-ends" => {
            let ends = place.iter().filter(beside);
            ends.map(|s| s.low - plate.low).collect()
        }
        "beside-plate" => {
            let fork = one(&place, &["fork", "dessert-fork"]);
            let knife = one(&place, &["knife", "dessert-knife"]);
            vec![plate.left - fork.right, knife.left - plate.right]
        }
        "between" => {
            let (knife, spoon) = (one(&place, &["knife"]), one(&place, &["spoon"]));
            vec![spoon.left - knife.right]
        }
        "glass-over-knife" => {
            let knife = one(&place, &["knife", "dessert-knife"]);
            let glass = one(&place, &["juice-glass", "goblet"]);
            let middle = |s: &Side| (s.left + s.right) / 2.0;
            assert!(
                (middle(glass) - middle(knife)).abs() < 1.0,
                "{}: over it",
                row.place()
            );
            vec![knife.top - glass.low]
        }
        "pieces-a-side" => {
            let cutlery = ["fork", "knife", "spoon"];
            let of = |left: bool| {
                let own = place.iter().filter(|s| cutlery.contains(&s.prop.as_str()));
                own.filter(|s| (s.left < plate.left) == left).count() as f64
            };
            vec![of(true), of(false)]
        }
        what => panic!("{}: nobody measures {what}", row.place()),
    }
}

#[test]
fn places_are_laid_as_the_sources_have_them() {
    let table = Table::read("settings.csv");
    assert!(table.len() > 20, "rows: {}", table.len());
    for row in table.rows() {
        let figures = measured(row);
        assert!(!figures.is_empty(), "{}: nothing measured", row.place());
        let (low, high) = (row.number("low") - 0.5, row.number("high") + 0.5);
        for figure in figures {
            assert!(
                (low..=high).contains(&figure),
                "{}: {} is {figure}, not {low} to {high}: {}",
                row.place(),
                row.text("what"),
                row.text("source")
            );
        }
    }
}

/// What a row measures, in words.
fn words(what: &str) -> &str {
    match what {
        "seats" => "places there is room for",
        "seats-tight" => "places a step closer",
        "pitch" => "middle to middle of two places, mm",
        "breadth" => "breadth of a place, mm",
        "depth" => "depth of a place, mm",
        "plate-to-edge" => "plate to the edge of the table, mm",
        "lower-ends" => "fork and knife below the plate's rim, mm",
        "beside-plate" => "fork and knife from the plate, mm",
        "between" => "knife to spoon, mm",
        "glass-over-knife" => "glass above the knife's tip, mm",
        "pieces-a-side" => "cutlery left and right",
        "runner-drop" => "runner over each end, mm",
        "runner-broadest" => "broadest runner without a note, mm",
        what => panic!("{what} has no words"),
    }
}

/// The committed report says what is measured today. Run with
/// `OVERSPREAD_WRITE_REPORT=1` to write it anew.
#[test]
fn the_report_of_laid_places_is_of_today() {
    let mut text = String::from(
        "# Places as they are laid, beside the sources\n\nWritten by `tests/tests/outside/settings.rs` \
         from `tests/reference/settings.csv`. Ours are the least and the most on an empty table; \
         a source's range is held to half a millimetre a side. Grade `published`: a printed \
         standard or cook book; `weak`: one page on the web; `practice`: common practice, no \
         source.\n\n| what | table, mm | setting | ours | source's | grade | source |\n\
         |---|---|---|---|---|---|---|\n",
    );
    for row in Table::read("settings.csv").rows() {
        let figures = measured(row);
        let least = figures.iter().copied().fold(f64::INFINITY, f64::min);
        let most = figures.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let range = |low: f64, high: f64| {
            if (high - low).abs() < 0.05 {
                format!("{low:.0}")
            } else {
                format!("{low:.0} to {high:.0}")
            }
        };
        let (what, setting) = (row.text("what"), row.text("setting"));
        let setting = match what {
            "runner-drop" => format!("meant to drop {setting} in"),
            _ => setting.into(),
        };
        writeln!(
            text,
            "| {} | {} {} × {} | {setting} | {} | {} | {} | {} |",
            words(what),
            row.text("table"),
            row.text("width_mm"),
            row.text("depth_mm"),
            range(least, most),
            range(row.number("low"), row.number("high")),
            row.text("grade"),
            row.text("source"),
        )
        .expect("a line");
    }
    let path = "reports/places.md";
    if std::env::var_os("OVERSPREAD_WRITE_REPORT").is_some() {
        std::fs::write(in_tests(path), &text).expect("written");
    }
    assert!(text == read(path), "{path} is of other places:\n{text}");
}

#[test]
fn forks_lie_left_and_the_knife_right_with_its_blade_inward() {
    let full = laid(&table("rect", 1_829.0, 914.0), "true", 1);
    let place = first(&full);
    let plate = one(&place, &PLATES);
    assert!(one(&place, &["fork"]).right < plate.left, "fork left");
    let (knife, spoon) = (one(&place, &["knife"]), one(&place, &["spoon"]));
    assert!(knife.left > plate.right, "knife right");
    assert!(spoon.left > knife.right, "spoon right of it");
    assert!(
        one(&place, &["folded-napkin"]).right < one(&place, &["fork"]).left,
        "napkin left"
    );
    // The belly of the blade is its edge: it reaches farther from the axis.
    let item = full.items.iter().find(|i| i.prop == "knife").expect("laid");
    let outline = planner::scene::silhouette(item);
    let x = f64::from(item.at.x);
    let blade = outline.iter().filter(|p| p.y < f64::from(item.at.y) - 20.0);
    let (mut left, mut right) = (0.0_f64, 0.0_f64);
    for p in blade {
        left = left.max(x - p.x);
        right = right.max(p.x - x);
    }
    assert!(left > right, "towards the plate: {left} and {right} mm");
}

#[test]
fn every_setting_faces_its_sitter() {
    for (shape, width, depth, people) in [
        ("rect", 1_829.0, 1_000.0, 8),
        ("round", 1_524.0, 1_524.0, 7),
    ] {
        let full = laid(&table(shape, width, depth), "camera", people);
        let centre = full.table.centre().vec();
        for group in &full.groups {
            let own = |prop: &str| {
                let mut all = full.items.iter().filter(|i| i.group == Some(group.id));
                all.find(|i| i.prop == prop).expect("laid").at.vec()
            };
            let (plate, fork) = (own("small-plate"), own("dessert-fork"));
            let (knife, glass) = (own("dessert-knife"), own("juice-glass"));
            let right = (knife - fork).normalize();
            // What is up to the sitter is a quarter turn against the clock from their right.
            let up = glam::dvec2(right.y, -right.x);
            assert!(up.dot(centre - plate) > 0.0, "{shape}: towards the middle");
            assert!((glass - plate).dot(up) > 0.0, "{shape}: the glass beyond");
            assert!((plate - fork).dot(right) > 0.0, "{shape}: fork left");
        }
    }
}
