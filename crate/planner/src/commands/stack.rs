//! What goes along when a thing is moved, turned or taken away.
use std::collections::BTreeSet;

use crate::layout::{Id, Item, Layout};

/// A thing, its group, all that stands on any of them, and theirs in turn.
#[must_use]
pub fn moving(layout: &Layout, id: Id) -> BTreeSet<Id> {
    spread(layout, &BTreeSet::from([id]), |item, along| {
        let other = |o: &&Item| along.contains(&o.id) && o.group == item.group;
        item.group.is_some() && layout.items.iter().any(|o| other(&o))
    })
}

/// What goes along with a thing: its group too, unless it is taken out of it,
/// and all that stands on them.
#[must_use]
pub(super) fn along(layout: &Layout, id: Id, alone: bool) -> BTreeSet<Id> {
    if alone {
        above(layout, &BTreeSet::from([id]))
    } else {
        moving(layout, id)
    }
}

/// These things and all that stands on them.
pub(super) fn above(layout: &Layout, ids: &BTreeSet<Id>) -> BTreeSet<Id> {
    spread(layout, ids, |_, _| false)
}

/// These things, all that stands on them and all that `joins` takes along.
fn spread(
    layout: &Layout,
    ids: &BTreeSet<Id>,
    joins: impl Fn(&Item, &BTreeSet<Id>) -> bool,
) -> BTreeSet<Id> {
    let mut all = ids.clone();
    loop {
        let new = layout.items.iter().filter(|o| !all.contains(&o.id));
        let goes = |o: &&Item| o.on.is_some_and(|on| all.contains(&on)) || joins(o, &all);
        let more: Vec<Id> = new.filter(goes).map(|o| o.id).collect();
        if more.is_empty() {
            return all;
        }
        all.extend(more);
    }
}
