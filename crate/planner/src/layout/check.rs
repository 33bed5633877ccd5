//! Whether ids are single and references lead somewhere.
use std::collections::{BTreeMap, BTreeSet};

use super::open::Layout;
use super::problem::{Problem, ProblemKind};
use super::value::Id;

/// Doubled ids, dangling references, and cycles in what lies on what.
#[must_use]
pub fn references(layout: &Layout) -> Vec<Problem> {
    let mut problems = Vec::new();
    let mut bad = |path: String, found: Id, allowed: &str| {
        let found = format!("id {}", found.0);
        problems.push(Problem::new(ProblemKind::Reference, &path, &found, allowed));
    };
    let mut seen = BTreeSet::new();
    let mut last = 0;
    for (path, id) in all_ids(layout) {
        last = last.max(id.0);
        if !seen.insert(id) {
            bad(path, id, "an id of its own");
        }
    }
    let mut items = BTreeMap::new();
    items.extend(layout.items.iter().map(|i| (i.id, i.on)));
    let people: Vec<Id> = layout.people.iter().map(|p| p.id).collect();
    let hands: Vec<Id> = layout.hands.iter().map(|h| h.id).collect();
    let exposures: Vec<Id> = layout.exposures.iter().map(|e| e.id).collect();
    let groups: Vec<Id> = layout.groups.iter().map(|g| g.id).collect();
    for (n, item) in layout.items.iter().enumerate() {
        if let Some(on) = item.on {
            if !items.contains_key(&on) {
                bad(format!("items[{n}].on"), on, "an item of this layout");
            } else if climbs_to_itself(item.id, &items) {
                bad(
                    format!("items[{n}].on"),
                    on,
                    "an item that does not lie on this one",
                );
            }
        }
        if let Some(group) = item.group.filter(|g| !groups.contains(g)) {
            bad(format!("items[{n}].group"), group, "a group of this layout");
        }
    }
    for (n, seat) in layout.seats.iter().enumerate() {
        if let Some(group) = seat.setting.filter(|g| !groups.contains(g)) {
            bad(
                format!("seats[{n}].setting"),
                group,
                "a group of this layout",
            );
        }
    }
    let unknown = |seat: Option<Id>| seat.filter(|s| !layout.seats.iter().any(|o| o.id == *s));
    for (n, person) in layout.people.iter().enumerate() {
        if let Some(seat) = unknown(person.seat) {
            bad(format!("people[{n}].seat"), seat, "a seat of this layout");
        }
    }
    for (n, hand) in layout.hands.iter().enumerate() {
        if !people.contains(&hand.person) {
            bad(
                format!("hands[{n}].person"),
                hand.person,
                "a person of this layout",
            );
        }
        if !exposures.contains(&hand.exposure) {
            bad(
                format!("hands[{n}].exposure"),
                hand.exposure,
                "an exposure of this layout",
            );
        }
        if let Some(pair) = hand.pair.filter(|p| !hands.contains(p) || *p == hand.id) {
            bad(
                format!("hands[{n}].pair"),
                pair,
                "another hand of this layout",
            );
        }
        if let Some(seat) = unknown(hand.seat) {
            bad(format!("hands[{n}].seat"), seat, "a seat of this layout");
        }
        if let Some(holds) = hand.holds.filter(|h| !items.contains_key(h)) {
            bad(format!("hands[{n}].holds"), holds, "an item of this layout");
        }
    }
    for (n, linen) in layout.linens.iter().enumerate() {
        for id in linen.over.iter().filter(|id| !items.contains_key(id)) {
            bad(format!("linens[{n}].over"), *id, "an item of this layout");
        }
    }
    for (n, crop) in layout.crops.iter().enumerate() {
        for id in crop.must_show.iter().filter(|id| !items.contains_key(id)) {
            bad(
                format!("crops[{n}].must_show"),
                *id,
                "an item of this layout",
            );
        }
    }
    if !layout.is_empty_of_objects() && layout.head.next_id <= last {
        bad(
            "next_id".into(),
            Id(layout.head.next_id),
            "more than every id in use",
        );
    }
    problems
}

/// Every object id with its path.
fn all_ids(layout: &Layout) -> Vec<(String, Id)> {
    let mut out = Vec::new();
    let mut list = |name: &str, ids: Vec<Id>| {
        out.extend(
            ids.into_iter()
                .enumerate()
                .map(|(n, id)| (format!("{name}[{n}].id"), id)),
        );
    };
    list("groups", layout.groups.iter().map(|o| o.id).collect());
    list("linens", layout.linens.iter().map(|o| o.id).collect());
    list("items", layout.items.iter().map(|o| o.id).collect());
    list("seats", layout.seats.iter().map(|o| o.id).collect());
    list("people", layout.people.iter().map(|o| o.id).collect());
    list("hands", layout.hands.iter().map(|o| o.id).collect());
    list("exposures", layout.exposures.iter().map(|o| o.id).collect());
    list("crops", layout.crops.iter().map(|o| o.id).collect());
    list("cards", layout.cards.iter().map(|o| o.id).collect());
    out
}

impl Layout {
    fn is_empty_of_objects(&self) -> bool {
        all_ids(self).is_empty()
    }
}

fn climbs_to_itself(start: Id, on: &BTreeMap<Id, Option<Id>>) -> bool {
    let mut at = start;
    for _ in 0..=on.len() {
        match on.get(&at).copied().flatten() {
            Some(next) if next == start => return true,
            Some(next) => at = next,
            None => return false,
        }
    }
    // A cycle further up: its own members report it.
    false
}
