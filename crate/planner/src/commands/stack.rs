//! What goes along when a thing is moved, turned or taken away.
use std::collections::BTreeSet;

use super::lock::is_locked;
use crate::catalogue::{self, Kind};
use crate::layout::{Id, Item, Layout};

/// A thing, its group, all that stands on any of them, and theirs in turn.
#[must_use]
pub fn moving(layout: &Layout, id: Id) -> BTreeSet<Id> {
    spread(layout, &[id], true)
}

/// The same of several things together.
#[must_use]
pub fn moving_all(layout: &Layout, ids: &[Id]) -> BTreeSet<Id> {
    spread(layout, ids, true)
}

/// What goes along with a thing: its group too, unless it is taken out of it,
/// and all that stands on them.
#[must_use]
pub(super) fn along(layout: &Layout, id: Id, alone: bool) -> BTreeSet<Id> {
    spread(layout, &[id], !alone)
}

/// These things and all that stands on them.
pub(super) fn above(layout: &Layout, ids: &BTreeSet<Id>) -> BTreeSet<Id> {
    let ids: Vec<Id> = ids.iter().copied().collect();
    spread(layout, &ids, false)
}

/// Whether a thing is a support that other things stand on, no dish they lie in.
pub(super) fn is_board(item: &Item) -> bool {
    catalogue::prop(&item.prop).is_some_and(|entry| entry.kind == Kind::Board)
}

/// Whether something of what moves as one is locked, so that all of it stays.
pub(super) fn stays(layout: &Layout, along: &BTreeSet<Id>) -> bool {
    along.iter().any(|id| is_locked(layout, *id))
}

/// These things, all that stands on them and, where `grouped`, their groups.
fn spread(layout: &Layout, ids: &[Id], grouped: bool) -> BTreeSet<Id> {
    let mut all: BTreeSet<Id> = ids.iter().copied().collect();
    loop {
        let taken = layout
            .items
            .iter()
            .filter(|o| grouped && all.contains(&o.id));
        let groups: BTreeSet<Id> = taken.filter_map(|o| o.group).collect();
        let goes = |o: &&Item| {
            o.on.is_some_and(|on| all.contains(&on)) || o.group.is_some_and(|g| groups.contains(&g))
        };
        let new = layout.items.iter().filter(|o| !all.contains(&o.id));
        let more: Vec<Id> = new.filter(goes).map(|o| o.id).collect();
        if more.is_empty() {
            return all;
        }
        all.extend(more);
    }
}
