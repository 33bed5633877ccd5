//! What must hold of any edit, whatever changed and in whatever order.
use proptest::prelude::*;

use super::{Edit, EditError, Key};
use crate::catalogue::{foods, item_from, props};
use crate::layout::{Group, Id, Layout, LayoutId, Point, Role, Turn, open};

/// What spoils a layout.
type Spoil = fn(&mut Layout);
/// One random change to a layout: what to do, to which thing, by how much.
type Step = (u8, usize, i32);

fn laid(count: u16) -> Layout {
    let mut layout = Layout::empty(LayoutId(9));
    for n in 0..count {
        step(&mut layout, (0, usize::from(n) * 7, i32::from(n) * 90));
    }
    layout
}

/// Makes one change that leaves the layout sound.
fn step(layout: &mut Layout, (what, which, by): Step) {
    let count = layout.items.len().max(1);
    let at = which % count;
    match what % 9 {
        0 => {
            let known: Vec<_> = props().iter().chain(foods()).collect();
            let id = Id(layout.head.next_id);
            let place = Point::new(by, -by);
            let entry = known[which % known.len()];
            layout.items.insert(
                at.min(layout.items.len()),
                item_from(entry, id, id.0, place),
            );
            layout.head.next_id += 1;
        }
        1 => {
            let gone = layout.items.get(at).map(|i| i.id);
            layout.items.retain(|i| Some(i.id) != gone);
            for item in layout.items.iter_mut().filter(|i| i.on == gone) {
                item.on = None;
            }
        }
        2 if !layout.items.is_empty() => {
            let item = layout.items.remove(at);
            let to = by.unsigned_abs() as usize % count;
            layout.items.insert(to, item);
        }
        3 if !layout.items.is_empty() => layout.items[at].at.x = by,
        4 if !layout.items.is_empty() => layout.items[at].turn = Turn::from_half_degrees(by),
        5 if at > 0 => {
            let below = layout.items.iter().find(|i| i.on.is_none()).map(|i| i.id);
            let own = layout.items[at].id;
            let free = layout.items.iter().all(|i| i.on != Some(own));
            layout.items[at].on = below.filter(|b| *b != own && free);
        }
        6 => {
            let id = Id(layout.head.next_id);
            layout.groups.push(Group {
                id,
                name: format!("group {by}"),
                extra: Default::default(),
            });
            layout.head.next_id += 1;
            if let Some(item) = layout.items.get_mut(at) {
                item.group = Some(id);
            }
        }
        7 => {
            layout.head.title = format!("title {by}");
            layout.light.clock = Turn::from_half_degrees(by);
        }
        _ => layout.items.reverse(),
    }
}

fn steps() -> impl Strategy<Value = Vec<Step>> {
    prop::collection::vec((any::<u8>(), 0_usize..40, -2_000_i32..2_000), 0..14)
}

proptest! {
    #[test]
    fn applied_is_the_other_layout_and_reverted_the_same_bytes(count in 0_u16..20, steps in steps()) {
        let before = laid(count);
        let mut after = before.clone();
        steps.into_iter().for_each(|s| step(&mut after, s));
        let edit = Edit::between(&before, &after);
        let mut now = before.clone();
        edit.apply_checked(&mut now).expect("it fits what it was made from");
        prop_assert_eq!(now.to_json(), after.to_json(), "applied");
        edit.reverted().apply_checked(&mut now).expect("it fits what it made");
        prop_assert_eq!(now.to_json(), before.to_json(), "reverted");
    }

    #[test]
    fn a_journal_entry_reads_as_it_was_written(count in 0_u16..12, steps in steps()) {
        let before = laid(count);
        let mut after = before.clone();
        steps.into_iter().for_each(|s| step(&mut after, s));
        let edit = Edit::between(&before, &after);
        let text = edit.to_json();
        let again = Edit::open(&text).expect("its own text opens");
        prop_assert_eq!(&again, &edit, "the same edit");
        prop_assert_eq!(open(&after.to_json()).expect("own file opens"), after, "the same layout");
    }

    #[test]
    fn damaged_journal_text_is_refused_without_a_panic(cut in 0_usize..4_000, with in ".{0,3}") {
        let (before, after) = (laid(2), laid(4));
        let text = Edit::between(&before, &after).to_json();
        let cut = (0..=cut.min(text.len() - 1)).rev().find(|n| text.is_char_boundary(*n)).unwrap_or(0);
        let _ = Edit::open(&format!("{}{with}{}", &text[..cut], &text[cut..]));
        prop_assert!(Edit::open(&text[..cut]).is_err(), "cut at {}", cut);
    }
}

#[test]
fn only_what_moved_is_in_an_edit() {
    let before = laid(9);
    let mut after = before.clone();
    let last = after.items.pop().expect("nine items");
    let moved = last.id;
    after.items.insert(0, last);
    let edit = Edit::between(&before, &after);
    let keys: Vec<Key> = edit.0.iter().map(|c| c.key).collect();
    assert_eq!(keys, [Key::Item(moved)], "the other eight only shifted");
    assert_eq!(
        edit.touched().into_iter().collect::<Vec<_>>(),
        [moved],
        "touched"
    );
    assert!(edit.added().is_empty(), "nothing came");
}

#[test]
fn an_edit_that_does_not_fit_leaves_the_layout() {
    let before = laid(3);
    let mut after = before.clone();
    after.items[1].role = Role::Hero;
    let edit = Edit::between(&before, &after);
    let mut other = before.clone();
    other.items[1].at = Point::new(1, 1);
    let kept = other.to_json();
    let refused = edit.apply(&mut other);
    assert_eq!(
        refused,
        Err(EditError::Stale(Key::Item(before.items[1].id))),
        "stale"
    );
    assert_eq!(other.to_json(), kept, "as it was");
}

#[test]
fn an_edit_whose_references_lead_nowhere_is_refused() {
    let before = laid(3);
    let mut after = before.clone();
    after.items[2].on = Some(Id(900));
    let edit = Edit::between(&before, &after);
    let mut now = before.clone();
    assert_eq!(
        edit.apply_checked(&mut now),
        Err(EditError::References(1)),
        "refused"
    );
    assert_eq!(now, before, "as it was");
}

#[test]
fn a_journal_entry_must_speak_of_one_object_on_both_sides() {
    let before = laid(2);
    let mut after = before.clone();
    after.items[0].at.x = 77;
    let text = Edit::between(&before, &after).to_json();
    let [own, other] = [&before.items[0], &before.items[1]]
        .map(|i| format!("\"kind\":\"item\",\"id\":{}", i.id.0));
    for (from, to) in [
        ("\"kind\":\"item\"", "\"kind\":\"linen\""),
        (own.as_str(), other.as_str()),
        ("\"place\":0", "\"place\":-1"),
    ] {
        let bad = text.replacen(from, to, 1);
        assert_ne!(bad, text, "{from} is there to be changed");
        assert!(Edit::open(&bad).is_err(), "{from} to {to}");
    }
    assert!(Edit::open("{}").is_err(), "not a list");
    assert!(Edit::open("[null]").is_err(), "not a change");
}

#[test]
fn what_a_file_would_not_open_with_is_refused() {
    let before = laid(3);
    let cases: [(&str, Spoil); 6] = [
        ("a name too long", |l| l.items[0].name = "a".repeat(81)),
        ("a name with a direction mark", |l| {
            l.items[0].name = "a\u{202e}b".into()
        }),
        ("a place too far", |l| l.items[0].at.x = 20_001),
        ("a negative height", |l| l.items[0].height = -1),
        ("a frame too narrow", |l| l.frame.width = 49),
        ("too many items", |l| {
            let pot = l.items[0].clone();
            l.items.extend((1_000..1_800).map(|n| crate::layout::Item {
                id: Id(n),
                ..pot.clone()
            }));
            l.head.next_id = 1_800;
        }),
    ];
    for (name, spoil) in cases {
        let mut after = before.clone();
        spoil(&mut after);
        let edit = Edit::between(&before, &after);
        let mut now = before.clone();
        let refused = edit.apply_checked(&mut now);
        assert!(
            matches!(refused, Err(EditError::Limits(_))),
            "{name}: {refused:?}"
        );
        assert_eq!(now, before, "{name}: as it was");
    }
}
