//! Things of one's own, kept apart from any table: each is a layout that holds
//! the thing alone with what stands on it, so that it is read, checked and
//! written as every other layout is.
use std::collections::BTreeSet;

use super::stack::above;
use super::{Act, Refused, called, fresh_id, fresh_number, name_of};
use crate::layout::{Id, Layout, LayoutId, Point, Role};

/// A thing and what stands on it as a layout of its own, called as the thing
/// is; nothing when there is no such item or linen.
#[must_use]
pub fn kept(layout: &Layout, id: Id, own: LayoutId) -> Option<Layout> {
    let mut alone = Layout::empty(own);
    alone.head.title = name_of(layout, id);
    let middle = alone.table.centre();
    let linen = layout.linens.iter().find(|o| o.id == id);
    let item = layout.items.iter().find(|o| o.id == id);
    let from = linen.map(|o| o.at).or_else(|| item.map(|o| o.at))?;
    let along = above(layout, &BTreeSet::from([id]));
    alone.linens.extend(linen.cloned());
    let items = layout.items.iter().filter(|o| along.contains(&o.id));
    alone.items.extend(items.cloned());
    for linen in &mut alone.linens {
        linen.at = middle;
        linen.locked = false;
        linen.over.clear();
    }
    for item in &mut alone.items {
        item.at = item.at.moved(middle.x - from.x, middle.y - from.y);
        item.on = item.on.filter(|on| along.contains(on));
        item.group = None;
        item.locked = false;
        item.role = Role::Filler;
    }
    alone.head.next_id = layout.head.next_id;
    alone.head.next_number = layout.head.next_number;
    Some(alone)
}

/// Adds what was kept of a thing, at a place.
///
/// # Errors
/// When nothing was kept in it.
pub fn add_kept(layout: &Layout, kept: &Layout, at: Point) -> Result<Act, Refused> {
    if kept.items.is_empty() && kept.linens.is_empty() {
        return Err(Refused::NothingKept(kept.head.title.clone()));
    }
    let mut after = layout.clone();
    let from = kept.table.centre();
    let by = [at.x - from.x, at.y - from.y];
    for linen in &kept.linens {
        let mut linen = linen.clone();
        linen.id = fresh_id(&mut after);
        linen.at = linen.at.moved(by[0], by[1]);
        // How many there are of it is the shelf's, not the table's.
        linen.stock.spare = 0;
        after.linens.push(linen);
    }
    let ids: Vec<(Id, Id)> = kept
        .items
        .iter()
        .map(|item| (item.id, fresh_id(&mut after)))
        .collect();
    let fresh = |old: Id| ids.iter().find(|(from, _)| *from == old).map(|(_, to)| *to);
    for item in &kept.items {
        let mut item = item.clone();
        item.id = fresh(item.id).unwrap_or_default();
        item.number = fresh_number(&mut after);
        item.at = item.at.moved(by[0], by[1]);
        item.on = item.on.and_then(fresh);
        item.group = None;
        item.role = Role::Filler;
        if item.on.is_none() {
            item.stock.spare = 0;
        }
        after.items.push(item);
    }
    Act::between(called("done-added", &kept.head.title), layout, &after)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{item_from, prop};
    use crate::layout::open;

    /// A platter with fish on it, somewhere on a table, and a linen.
    fn laid() -> Layout {
        let mut layout = Layout::empty(LayoutId(1));
        for (id, name, on) in [(3, "oval-platter", None), (4, "roast-fish", Some(Id(3)))] {
            let entry = prop(name).expect("known");
            let mut item = item_from(entry, Id(id), id, Point::new(310, 220));
            item.on = on;
            item.locked = true;
            item.role = Role::Hero;
            layout.items.push(item);
        }
        layout.items[0].name = "grandmother's platter".into();
        layout.head.next_id = 9;
        layout.head.next_number = 5;
        layout
    }

    #[test]
    fn a_thing_comes_back_with_what_stands_on_it() {
        let layout = laid();
        let alone = kept(&layout, Id(3), LayoutId(77)).expect("it is there");
        assert_eq!(alone.head.title, "grandmother's platter", "its name");
        assert_eq!(
            open(&alone.to_json()).expect("opens"),
            alone,
            "a sound file"
        );
        let nothing = add_kept(&layout, &Layout::empty(LayoutId(5)), Point::new(0, 0));
        assert!(
            matches!(nothing, Err(Refused::NothingKept(_))),
            "what holds nothing says so"
        );
        let act = add_kept(&layout, &alone, Point::new(700, 500)).expect("free");
        let mut after = layout.clone();
        act.edit.apply_checked(&mut after).expect("fits");
        let [.., platter, fish] = after.items.as_slice() else {
            panic!("both are added");
        };
        assert_eq!(platter.id, Id(9), "the first id is the thing's");
        assert_eq!(platter.at, Point::new(700, 500), "where it was asked for");
        assert_eq!(
            (fish.on, fish.at),
            (Some(Id(9)), platter.at),
            "the fish on it"
        );
        assert!(
            !platter.locked && platter.role == Role::Filler,
            "it is free"
        );
        assert_ne!(platter.number, layout.items[0].number, "its own number");
    }

    #[test]
    fn food_kept_alone_stands_on_nothing_and_what_is_not_there_is_not_kept() {
        let alone = kept(&laid(), Id(4), LayoutId(77)).expect("it is there");
        assert_eq!((alone.items.len(), alone.items[0].on), (1, None), "alone");
        assert!(
            kept(&laid(), Id(5), LayoutId(77)).is_none(),
            "no such thing"
        );
    }
}
