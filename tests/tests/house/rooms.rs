//! The rooms of the core stand in an order, and each uses only rooms before it.

use crate::tree::{Source, code, sources};

/// The rooms, each of which may use those named before it.
const ORDER: [&str; 28] = [
    "order",
    "layout",
    "words",
    "catalogue",
    "dates",
    "edit",
    "link",
    "shape",
    "figure",
    "colour",
    "measures",
    "seats",
    "arms",
    "optics",
    "light",
    "rig",
    "scene",
    "commands",
    "compare",
    "answers",
    "exposures",
    "readings",
    "arrangements",
    "propose",
    "drawing",
    "shelf",
    "papers",
    "starters",
];

#[test]
fn the_developers_page_lists_every_room_in_its_order() {
    let page = outside_checks::tree::read("../DEVELOPERS.md");
    let table = page.split("| room | holds |").nth(1).expect("the table");
    let rows = table
        .lines()
        .skip(2)
        .take_while(|line| line.starts_with('|'));
    let named: Vec<&str> = rows
        .flat_map(|row| {
            let cell = row.split('|').nth(1).unwrap_or_default();
            cell.split('`').skip(1).step_by(2)
        })
        .collect();
    assert_eq!(named, ORDER);
}

/// The room a file of the core lies in; none for `lib.rs`.
fn room(path: &str) -> Option<&str> {
    let inside = path.strip_prefix("crate/planner/src/")?;
    let first = inside.split('/').next()?;
    let name = first.strip_suffix(".rs").unwrap_or(first);
    (name != "lib").then_some(name)
}

fn rank(room: &str) -> Option<usize> {
    ORDER.iter().position(|&name| name == room)
}

/// The rooms named in `crate::…` paths, also inside `use crate::{…}`.
fn used(text: &str) -> Vec<String> {
    let mut names = Vec::new();
    let text = code(text);
    for (at, prefix) in text.match_indices("crate::") {
        let before = text[..at].chars().next_back();
        if before.is_some_and(|letter| letter.is_alphanumeric() || letter == '_') {
            continue;
        }
        let rest = &text[at + prefix.len()..];
        match rest.strip_prefix('{') {
            Some(group) => names.extend(heads(group)),
            None => names.push(word(rest)),
        }
    }
    names
}

fn word(text: &str) -> String {
    let end = text.find(|letter: char| !letter.is_alphanumeric() && letter != '_');
    text[..end.unwrap_or(text.len())].to_owned()
}

/// The first word of each entry of a group, up to its closing brace.
fn heads(group: &str) -> Vec<String> {
    let mut heads = Vec::new();
    let mut depth = 0_usize;
    let mut entry_starts = true;
    for (at, letter) in group.char_indices() {
        match letter {
            '}' if depth == 0 => break,
            '{' => depth += 1,
            '}' => depth -= 1,
            ',' if depth == 0 => entry_starts = true,
            _ if entry_starts && !letter.is_whitespace() => {
                heads.push(word(&group[at..]));
                entry_starts = false;
            }
            _ => {}
        }
    }
    heads
}

/// What in a file breaks the order.
fn upward(source: &Source) -> Vec<String> {
    let Some(own) = room(&source.path) else {
        return Vec::new();
    };
    let Some(own_rank) = rank(own) else {
        return vec![format!("{}: `{own}` is not among the rooms", source.path)];
    };
    used(&source.text)
        .iter()
        .filter(|name| rank(name).is_some_and(|rank| rank > own_rank))
        .map(|name| {
            format!(
                "{}: `{own}` uses `{name}`, which comes after it",
                source.path
            )
        })
        .collect()
}

#[test]
fn rooms_use_only_rooms_before_them() {
    let faults: Vec<String> = sources("crate/planner/src", &["rs"])
        .iter()
        .flat_map(upward)
        .collect();
    assert!(faults.is_empty(), "{faults:#?}");
}

#[test]
fn an_upward_use_is_found_however_it_is_written() {
    let uses = [
        "use crate::scene::Scene;",
        "use crate::{\n    layout::{Item, Table},\n    scene::Scene,\n};",
        "let scene = crate::scene::build();",
        "pub(crate) use crate::drawing;",
    ];
    for text in uses {
        let source = Source {
            path: "crate/planner/src/shape/hull.rs".into(),
            text: text.into(),
        };
        assert_eq!(upward(&source).len(), 1, "one fault in `{text}`");
    }
}

#[test]
fn a_downward_use_and_a_comment_are_no_fault() {
    let text =
        "use crate::{layout::Item, shape::{area, hull}};\n// crate::papers\nmycrate::papers();";
    let source = Source {
        path: "crate/planner/src/scene/mod.rs".into(),
        text: text.into(),
    };
    assert_eq!(
        upward(&source),
        Vec::<String>::new(),
        "nothing upward in `{text}`"
    );
}

#[test]
fn a_room_outside_the_order_is_a_fault() {
    let source = Source {
        path: "crate/planner/src/attic/mod.rs".into(),
        text: String::new(),
    };
    assert_eq!(upward(&source).len(), 1, "every room has its place");
}
