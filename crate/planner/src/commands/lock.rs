//! What is locked stays as it is until it is unlocked.
use crate::edit::{Edit, Object, Placed};
use crate::layout::{Id, Layout};

/// Whether a thing is locked.
pub(super) fn is_locked(layout: &Layout, id: Id) -> bool {
    let item = layout.items.iter().find(|o| o.id == id);
    let linen = layout.linens.iter().find(|o| o.id == id);
    item.is_some_and(|o| o.locked) || linen.is_some_and(|o| o.locked)
}

/// The first locked thing an edit changes in more than its lock and what the
/// lists say of it, which moves nothing.
pub(super) fn broken(edit: &Edit) -> Option<Id> {
    let broken = edit.0.iter().find(|change| {
        let Some(before) = &change.before else {
            return false;
        };
        locked(before) && !change.after.as_ref().is_some_and(|a| unlocks(before, a))
    });
    broken.and_then(|change| change.key.id())
}

fn locked(placed: &Placed) -> bool {
    match &placed.object {
        Object::Item(o) => o.locked,
        Object::Linen(o) => o.locked,
        _ => false,
    }
}

/// Whether the lock is taken off at most, and the lists changed.
fn unlocks(before: &Placed, after: &Placed) -> bool {
    let mut free = before.object.clone();
    match (&mut free, &after.object) {
        (Object::Item(o), Object::Item(to)) => {
            (o.locked, o.stock) = (to.locked, to.stock.clone());
        }
        (Object::Linen(o), Object::Linen(to)) => {
            (o.locked, o.stock) = (to.locked, to.stock.clone());
        }
        _ => {}
    }
    after.object == free
}
