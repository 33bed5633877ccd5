//! What the lists change: how many of a thing there are, and what is written
//! beside it.
use super::free::nearest_free;
use super::{Act, Refused, called, fresh_id, name_of, remove};
use crate::layout::{Id, Layout, MAX_SPARE, Role, Source, Stock};
use crate::order;

/// Most of one sort a list asks for.
const MOST: usize = 60;

/// Has so many of these things in the picture, which are one row of a list: the
/// latest go, and new ones are put down where there is room.
///
/// # Errors
/// When one that would go is locked, or something it stands on is.
pub fn set_count(layout: &Layout, ids: &[Id], count: usize) -> Result<Act, Refused> {
    let mut ids = ids.to_vec();
    order::sort(&mut ids, Id::cmp);
    let count = count.min(MOST);
    if count < ids.len() {
        return remove(layout, &ids[count..]);
    }
    let Some(last) = ids.last().copied() else {
        return Err(Refused::Unknown(String::new()));
    };
    let mut after = layout.clone();
    for _ in ids.len()..count {
        if let Some(item) = layout.items.iter().find(|o| o.id == last) {
            let mut copy = item.clone();
            copy.id = fresh_id(&mut after);
            (copy.on, copy.group, copy.locked) = (None, None, false);
            // The picture has one hero; a second of it is a main dish.
            if copy.role == Role::Hero {
                copy.role = Role::Support;
            }
            copy.at = nearest_free(&after, &copy);
            after.items.push(copy);
        } else if let Some(linen) = layout.linens.iter().find(|o| o.id == last) {
            let mut copy = linen.clone();
            copy.id = fresh_id(&mut after);
            copy.locked = false;
            copy.over.clear();
            let beside = after.linens.iter().filter(|o| o.name == linen.name).count();
            copy.at = copy.at.moved(0, linen.size[1] / 2 * beside as i32);
            after.linens.push(copy);
        }
    }
    Act::between(called("done-count", &name_of(layout, last)), layout, &after)
}

/// One thing a list says of a row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Said {
    /// How many are in reserve.
    Spare(u16),
    /// Where it comes from.
    Source(Option<Source>),
    /// Where it lives.
    Shelf(String),
    /// How long it looks right on the set, minutes; as usual for none.
    Hold(Option<i32>),
    /// What stands in for it.
    StandIn(String),
}

/// Says it of all these things, which are one row of a list.
///
/// # Errors
/// When one of them is locked and it is more than what the list alone knows.
pub fn say_of(layout: &Layout, ids: &[Id], said: &Said) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let tell = |stock: &mut Stock| match said {
        Said::Spare(count) => stock.spare = (*count).min(MAX_SPARE as u16),
        Said::Source(source) => stock.source = *source,
        Said::Shelf(shelf) => stock.shelf.clone_from(shelf),
        Said::Hold(_) | Said::StandIn(_) => {}
    };
    for item in after.items.iter_mut().filter(|o| ids.contains(&o.id)) {
        tell(&mut item.stock);
        match said {
            Said::Hold(minutes) => item.hold_minutes = *minutes,
            Said::StandIn(name) => item.stand_in.clone_from(name),
            _ => {}
        }
    }
    for linen in after.linens.iter_mut().filter(|o| ids.contains(&o.id)) {
        tell(&mut linen.stock);
    }
    let name = ids.first().map(|id| name_of(layout, *id));
    let name = called("done-listed", &name.unwrap_or_default());
    Act::between(name, layout, &after)
}

#[cfg(test)]
mod tests {
    use super::super::tests::{done, item, laid};
    use super::*;

    #[test]
    fn a_list_has_more_laid_where_there_is_room_and_the_latest_taken_away() {
        let before = laid();
        let name = item(&before, 3).name.clone();
        let of = |layout: &Layout| -> Vec<Id> {
            let alike = layout.items.iter().filter(|o| o.name == name);
            alike.map(|o| o.id).collect()
        };
        let three = done(&before, set_count(&before, &of(&before), 3));
        assert_eq!(of(&three).len(), 3);
        let ids = of(&three);
        let at = |id: Id| three.items.iter().find(|o| o.id == id).map(|o| o.at);
        assert!(
            at(ids[1]) != at(ids[2]) && at(ids[0]) != at(ids[1]),
            "apart"
        );
        let one = done(&three, set_count(&three, &ids, 1));
        assert_eq!(of(&one), of(&before), "the first stays");
    }

    #[test]
    fn a_lock_holds_the_place_and_not_the_list() {
        let mut before = laid();
        before.items.iter_mut().for_each(|o| o.locked = true);
        let id = before.items[0].id;
        let shelf = Said::Shelf("box 4".into());
        let after = done(&before, say_of(&before, &[id], &shelf));
        assert_eq!(after.items[0].stock.shelf, "box 4");
        assert!(say_of(&before, &[id], &Said::Hold(Some(5))).is_err());
        assert!(set_count(&before, &[id], 0).is_err());
    }
}
