//! A thing laid again beside itself.
use super::stack::along;
use super::{Act, Refused, called, fresh_id, name_of};
use crate::layout::{Extra, Group, Id, Item, Layout, Role};

/// Air between a thing and its repeat, mm (our choice).
const BESIDE: i32 = 40;

/// Lays a linen or an item again beside itself, with its group unless it is
/// taken `alone`, and with what stands on them; changes nothing when it is neither.
///
/// # Errors
/// None so far as nothing there changes.
pub fn repeat(layout: &Layout, id: Id, alone: bool) -> Result<Act, Refused> {
    let mut after = layout.clone();
    let name = called("done-repeated", &name_of(layout, id));
    if let Some(linen) = layout.linens.iter().find(|o| o.id == id) {
        let mut copy = linen.clone();
        copy.id = fresh_id(&mut after);
        copy.at = copy.at.moved(0, copy.size[1] / 2 + BESIDE);
        copy.locked = false;
        after.linens.push(copy);
    }
    if let Some(first) = layout.items.iter().find(|o| o.id == id) {
        let along = along(layout, id, alone);
        let step = first.size.extent()[0] + BESIDE;
        let mut ids: Vec<(Id, Id)> = Vec::new();
        let known = |ids: &[(Id, Id)], old: Id| {
            let found = ids.iter().find(|(from, _)| *from == old);
            found.map(|(_, to)| *to)
        };
        for item in layout.items.iter().filter(|o| along.contains(&o.id)) {
            ids.push((item.id, fresh_id(&mut after)));
            if let Some(group) = item.group.filter(|g| !alone && known(&ids, *g).is_none()) {
                let copy = fresh_id(&mut after);
                ids.push((group, copy));
                after.groups.push(Group {
                    id: copy,
                    name: String::new(),
                    extra: Extra::new(),
                });
            }
        }
        for item in layout.items.iter().filter(|o| along.contains(&o.id)) {
            let mut copy: Item = item.clone();
            copy.id = known(&ids, item.id).unwrap_or_default();
            copy.on = copy.on.map(|on| known(&ids, on).unwrap_or(on));
            copy.group = copy.group.and_then(|group| known(&ids, group));
            copy.at = copy.at.moved(step, 0);
            copy.locked = false;
            // The picture has one hero; a second of it is a main dish.
            if copy.role == Role::Hero {
                copy.role = Role::Support;
            }
            after.items.push(copy);
        }
    }
    Act::between(name, layout, &after)
}
