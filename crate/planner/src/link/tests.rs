//! Links of whole layouts.
use super::write::link_keeping;
use super::*;
use crate::layout::{Layout, LayoutId, Source, open};

/// A supper of 25 items, five hands and four crops.
fn harbour_supper() -> Layout {
    let file = include_str!("../../../../static/starters/harbour-supper.spread.json");
    open(file).expect("a sound file")
}

#[test]
fn a_supper_comes_back_whole_and_fits_a_message() {
    let layout = harbour_supper();
    let made = link(&layout);
    assert_eq!(made.losses, Vec::<String>::new(), "nothing is lost");
    let back = unlink(&made.fragment).expect("opens");
    assert_eq!(back.layout, layout, "the same layout");
    assert!(back.kept_sections.is_empty(), "all understood");
    let length = made.fragment.len();
    assert!(length <= 1_250, "{length} characters");
}

/// Two versions of the supper: its bread taken away, its loaf and platter moved.
fn two_suppers() -> [Layout; 2] {
    let (first, mut other) = (harbour_supper(), harbour_supper());
    other.items.retain(|o| o.prop != "torn-bread");
    for id in [2, 3, 5] {
        let item = other
            .items
            .iter_mut()
            .find(|o| o.id.0 == id)
            .expect("there");
        item.at = item.at.moved(-120, 35);
    }
    [first, other]
}

#[test]
fn two_versions_come_back_whole_and_fit_a_message() {
    let [first, other] = two_suppers();
    let made = link_two(&first, &other, ["with bread", "without"]);
    let back = unlink(&made.fragment).expect("opens");
    assert_eq!(back.layout, first, "the first");
    let second = back.other.expect("and the other");
    assert_eq!(second.layout, other);
    assert_eq!(second.names, ["with bread", "without"]);
    assert!(back.kept_sections.is_empty(), "all understood");
    let (one, two) = (link(&first).fragment.len(), made.fragment.len());
    println!("Harbour supper: {one} characters, two versions of it {two}");
    assert!(two <= one + 220, "{two} characters against {one}");
    // Whatever the two are, they come back.
    let far = link_two(&everything(), &Layout::empty(LayoutId(3)), ["", "empty"]);
    let back = unlink(&far.fragment).expect("opens");
    assert_eq!(back.layout, everything());
    assert_eq!(
        back.other.map(|o| o.layout),
        Some(Layout::empty(LayoutId(3)))
    );
}

#[test]
fn a_second_version_within_a_second_version_is_refused() {
    let [first, other] = two_suppers();
    let two = link_two(&first, &other, ["a", "b"]);
    let sections = super::envelope::unwrap(&two.fragment).expect("sections");
    // The other is written whole, and has a second version itself.
    let mut out = super::write::joined(&super::write::sections_of(&first).0);
    let mut bytes = vec![0, 0];
    super::bytes::put_varint(&mut bytes, (sections.len() as u64) << 1);
    bytes.extend(&sections);
    out.push(19);
    super::bytes::put_varint(&mut out, bytes.len() as u64);
    out.extend(bytes);
    let problems = unlink(&super::envelope::wrap(&out)).expect_err("nested");
    assert_eq!(problems[0].path, "other", "{problems:?}");
    assert!(problems[0].found.contains("two versions"), "{problems:?}");
}

#[test]
fn what_is_wrong_in_the_other_is_told_of_it() {
    let [first, mut other] = two_suppers();
    other.hands[0].person = crate::layout::Id(999);
    let made = link_two(&first, &other, ["a", "b"]);
    let problems = unlink(&made.fragment).expect_err("a hand of nobody");
    assert_eq!(problems[0].path, "other.hands[0].person", "{problems:?}");
}

#[test]
fn an_empty_board_is_short() {
    let layout = Layout::empty(LayoutId(u64::MAX));
    let made = link(&layout);
    assert_eq!(
        unlink(&made.fragment).expect("opens").layout,
        layout,
        "same"
    );
    assert!(made.fragment.len() <= 70, "{}", made.fragment);
}

/// A layout with every sort of field away from its usual value.
fn everything() -> Layout {
    open(include_str!(
        "../../../../tests/golden/version-1/everything.spread.json"
    ))
    .expect("a sound file")
}

#[test]
fn every_field_of_every_object_comes_back() {
    let layout = everything();
    let made = link(&layout);
    assert_eq!(made.losses, Vec::<String>::new(), "nothing is lost");
    assert_eq!(
        unlink(&made.fragment).expect("opens").layout,
        layout,
        "same"
    );
}

#[test]
fn unknown_fields_are_named_as_losses_and_the_rest_comes_back() {
    let mut layout = everything();
    let plain = layout.clone();
    let more = serde_json::json!({ "deep": [1, null] });
    layout.extra.insert("private".into(), more.clone());
    layout
        .table
        .surface
        .extra
        .insert("grain".into(), more.clone());
    layout.items[2].extra.insert("rack".into(), more.clone());
    layout.crops[0].extra.insert("later".into(), more);
    let made = link(&layout);
    let named = [
        "table.surface",
        "items[2].rack",
        "crops[0].later",
        "private",
    ];
    assert_eq!(made.losses, named, "each loss by its path");
    assert_eq!(
        unlink(&made.fragment).expect("opens").layout,
        plain,
        "the rest"
    );
}

#[test]
fn unknown_fields_called_as_sections_of_the_link_are_named_as_losses_too() {
    let mut layout = everything();
    let plain = layout.clone();
    for key in ["stock", "dated"] {
        layout.extra.insert(key.into(), "a word".into());
    }
    let made = link(&layout);
    assert_eq!(made.losses, ["stock", "dated"], "each is told");
    let back = unlink(&made.fragment).expect("opens").layout;
    assert_eq!(back, plain, "and what the link has under these names stays");
}

#[test]
fn sections_of_a_later_planner_are_kept_and_written_again() {
    let layout = harbour_supper();
    let later = Section {
        number: 99,
        bytes: vec![1, 2, 3],
    };
    let known = Section {
        number: 10,
        bytes: vec![],
    };
    let kept = [later.clone(), known];
    let made = link_keeping(&layout, &kept);
    let back = unlink(&made.fragment).expect("opens");
    assert_eq!(back.layout, layout, "the layout as before");
    assert_eq!(back.kept_sections, [later], "only what is not known");
    let again = link_keeping(&back.layout, &back.kept_sections);
    assert_eq!(again, made, "the same link");
}

#[test]
fn what_the_lists_say_comes_back_beside_another_version_too() {
    let mut layout = everything();
    let first = layout.clone();
    layout.items[1].stock.shelf = "shelf 2, box 4".into();
    layout.items[3].stock.spare = 3;
    layout.linens[0].stock.source = Some(Source::Client);
    let made = link(&layout);
    assert_eq!(made.losses, Vec::<String>::new(), "nothing is lost");
    let back = unlink(&made.fragment).expect("opens");
    assert_eq!(back.layout, layout, "of one version");
    for (one, two) in [(&layout, &first), (&first, &layout), (&layout, &layout)] {
        let back = unlink(&link_two(one, two, ["a", "b"]).fragment).expect("opens");
        assert_eq!(&back.layout, one);
        assert_eq!(back.other.map(|o| o.layout).as_ref(), Some(two));
    }
}

/// The written format and the tables of the code must be the same.
#[test]
fn the_format_page_lists_every_field_as_it_is() {
    use fields::{SECTIONS, Usual};
    use kinds::Kind;
    let page = include_str!("FORMAT.md");
    let mut wanted = String::new();
    for chapter in &SECTIONS {
        let key = if chapter.key.is_empty() {
            "the layout itself"
        } else {
            chapter.key
        };
        let most = chapter.most.map(|m| format!(", a list of at most {m}"));
        wanted += &format!(
            "### {} {key}{}\n\n",
            chapter.number,
            most.unwrap_or_default()
        );
        wanted += "| field | kind | usual |\n|---|---|---|\n";
        for field in chapter.fields {
            let kind = match field.kind {
                Kind::Choice(words) => format!("choice: {}", words.join(", ")),
                other => format!("{other:?}").to_lowercase(),
            };
            let usual = match field.usual {
                Usual::Always => "always".into(),
                Usual::Absent => "absent".into(),
                Usual::Number(n) => n.to_string(),
                Usual::Two(a, b) => format!("[{a}, {b}]"),
                Usual::Words(text) => format!("{text:?}"),
                Usual::Off => "false".into(),
                Usual::Next => "next".into(),
                Usual::PropName => "prop name".into(),
            };
            let twin = if field.twin { "twin, " } else { "" };
            wanted += &format!("| `{}` | {kind} | {twin}{usual} |\n", field.key);
        }
        wanted += "\n";
    }
    assert!(page.contains(&wanted), "the tables should be:\n{wanted}");
    let listed: Vec<&str> = page.split("```").collect();
    let words = |n: usize| listed[n].split_whitespace().collect::<Vec<_>>();
    assert_eq!(words(1), names::PROPS, "catalogue ids");
    assert_eq!(words(3), phrases::WORDS, "common words");
}

#[test]
fn a_public_link_carries_the_layout_without_what_is_private() {
    let mut layout = harbour_supper();
    let mut expected = layout.clone();
    expected.intended.clear();
    assert!(expected.rig.at.is_some(), "where the stand is");
    expected.rig = Default::default();
    layout.head.note = "the client must not see this".into();
    layout.head.client = "someone".into();
    layout.items[0].hold_minutes = Some(12);
    layout.items[0].stand_in = "salt dough".into();
    for stock in [&mut layout.items[0].stock, &mut layout.linens[0].stock] {
        stock.spare = 2;
        stock.source = Some(Source::Hire);
        stock.shelf = "box 4".into();
    }
    expected.items[0].stock.spare = 2;
    expected.linens[0].stock.spare = 2;
    layout.dates.on_sale = crate::layout::Day::parse("2026-09-01");
    expected.items[0].hold_minutes = None;
    expected.items[0].stand_in.clear();
    expected.dates = Default::default();
    layout.intended.push(crate::layout::Accepted {
        finding: "fit:ceiling".into(),
        figure: 3,
        extra: Default::default(),
    });
    let read = unlink(&link(&public(&layout)).fragment).expect("reads");
    assert_eq!(read.layout, expected, "all but the private words");
}

#[test]
fn a_damaged_link_is_refused_in_words() {
    let whole = link(&harbour_supper()).fragment;
    for cut in [0, 1, 2, whole.len() / 2, whole.len() - 1] {
        let problems = unlink(&whole[..cut]).expect_err("cut");
        let said = problems.first().map(ToString::to_string);
        assert!(said.is_some_and(|said| !said.is_empty()), "cut at {cut}");
    }
}

#[test]
fn all_problems_of_a_link_are_said() {
    let mut layout = harbour_supper();
    layout.items[0].on = Some(crate::layout::Id(59_999));
    layout.items[1].on = Some(crate::layout::Id(59_998));
    let problems = unlink(&link(&layout).fragment).expect_err("two loose ends");
    let said: Vec<String> = problems.iter().map(ToString::to_string).collect();
    for (line, place) in said.iter().zip(["items[0].on: ", "items[1].on: "]) {
        assert!(line.starts_with(place), "{place} in: {line}");
    }
}
