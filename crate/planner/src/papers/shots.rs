//! The shot list and the running order as papers have them.
use super::list::{List, TICK};
use super::running_order::running_order;
use super::told::sides;
use crate::compare;
use crate::layout::{CropShape, Hand, Id, Layout, Role};
use crate::scene::letter;
use crate::words::{Arg, listed, place, running_time, say};

/// What is shot and what it is for, crop by crop.
pub(super) fn shot_list(layout: &Layout) -> List {
    let columns = [
        ("col-shot", 10),
        ("col-placement", 30),
        ("col-shape", 26),
        ("col-priority", 14),
        ("col-shows", 38),
        ("col-copy", 36),
        ("col-notes", 26),
        ("col-done", 12),
    ];
    let mut list = List::of("", &columns);
    let whole = sides(
        [f64::from(layout.frame.width), layout.frame.height()],
        layout.head.units,
    );
    list.rows.push(vec![
        "1".into(),
        say("shot-whole", &[]),
        whole,
        say("shot-must", &[]),
        listed(&names(layout, &|id| is_main(layout, id))),
        String::new(),
        String::new(),
        TICK.into(),
    ]);
    for (n, crop) in layout.crops.iter().enumerate() {
        let number = |n: i32| Arg::Text(n.to_string());
        let shape = match crop.shape {
            CropShape::Ratio(ratio) => {
                let args = [
                    ("wide", number(ratio.width.into())),
                    ("high", number(ratio.height.into())),
                ];
                say("shot-ratio", &args)
            }
            CropShape::Print([wide, high]) => say(
                "shot-print",
                &[("wide", number(wide)), ("high", number(high))],
            ),
        };
        let copy = crop.copy.as_ref().map(|copy| {
            let at = crate::layout::Point::new(crop.at.x + copy.area.dx, crop.at.y + copy.area.dy);
            let place = ("place", Arg::Text(place(at, &layout.frame)));
            if copy.wording.is_empty() {
                say("shot-copy", &[place])
            } else {
                say(
                    "shot-copy-words",
                    &[place, ("words", Arg::Name(copy.wording.clone()))],
                )
            }
        });
        let priority = if crop.must { "shot-must" } else { "shot-nice" };
        list.rows.push(vec![
            (n + 2).to_string(),
            crop.name.clone(),
            shape,
            say(priority, &[]),
            listed(&names(layout, &|id| crop.must_show.contains(&id))),
            copy.unwrap_or_default(),
            String::new(),
            TICK.into(),
        ]);
    }
    list
}

fn is_main(layout: &Layout, id: Id) -> bool {
    let item = layout.items.iter().find(|o| o.id == id);
    item.is_some_and(|o| matches!(o.role, Role::Hero | Role::Support))
}

pub(super) fn names(layout: &Layout, so: &dyn Fn(Id) -> bool) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for item in layout.items.iter().filter(|o| so(o.id)) {
        if !out.contains(&item.name) {
            out.push(item.name.clone());
        }
    }
    out
}

/// What a hand does, in a word.
pub(super) fn doing(hand: &Hand) -> String {
    say(compare::doing(hand.action), &[])
}

/// Who does what in an exposure: each person once.
pub(super) fn hands_of(layout: &Layout, exposure: Id) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for hand in layout.hands.iter().filter(|h| h.exposure == exposure) {
        let args = [
            ("person", Arg::Text(letter(layout, hand.person).to_string())),
            ("action", Arg::Text(doing(hand))),
        ];
        let line = say("shot-hands", &args);
        if !out.contains(&line) {
            out.push(line);
        }
    }
    out
}

/// The running order as a paper has it.
pub(super) fn order_list(layout: &Layout) -> List {
    let columns = [
        ("col-time", 19),
        ("col-exposure", 22),
        ("col-hands", 40),
        ("col-do", 47),
        ("col-food-by", 34),
        ("col-file", 16),
        ("col-ok", 8),
    ];
    let mut list = List::of("", &columns);
    let paper = running_order(layout);
    for turn in paper.turns {
        let mut who = turn.who;
        who.extend(hands_of(layout, turn.exposure));
        let does = [turn.props, turn.solo].concat();
        let mut food = turn.food;
        if turn.late {
            food.push(say("order-late", &[]));
        }
        list.rows.push(vec![
            [turn.from, turn.to].join("–"),
            turn.name,
            who.join("\n"),
            does.join("\n"),
            food.join("\n"),
            String::new(),
            TICK.into(),
        ]);
    }
    list
}

/// When the last exposure ends.
pub(super) fn length(layout: &Layout) -> String {
    let all = running_time(crate::exposures::running(layout).length);
    say("order-length", &[("time", Arg::Text(all))])
}
