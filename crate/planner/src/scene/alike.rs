//! What of a layout is as it was before an edit.
use super::Stacks;
use crate::layout::{Id, Item, Layout};

/// Two layouts side by side, an edit between them.
pub(super) struct Alike<'a> {
    /// The one before.
    pub(super) before: &'a Layout,
    after: &'a Layout,
    stacks: [Stacks; 2],
}

impl<'a> Alike<'a> {
    pub(super) fn of(before: &'a Layout, after: &'a Layout) -> Self {
        Self {
            before,
            after,
            stacks: [before, after].map(Stacks::of),
        }
    }

    /// An item of this id in both.
    pub(super) fn both(&self, id: Id) -> Option<[&'a Item; 2]> {
        let [old, new] = &self.stacks;
        let old = self.before.items.get(old.place(id)?)?;
        Some([old, self.after.items.get(new.place(id)?)?])
    }

    /// Whether an item itself looks as it did.
    pub(super) fn looks(&self, id: Id) -> bool {
        self.both(id)
            .is_some_and(|[old, new]| looks_alike(old, new))
    }

    /// Whether an item and everything it lies on make the same pieces.
    pub(super) fn stands(&self, id: Id) -> bool {
        let mut at = Some(id);
        // A layout's `on` is acyclic; the counter ends it all the same.
        for _ in 0..=self.after.items.len() {
            let Some(id) = at else {
                return true;
            };
            let Some([_, new]) = self.both(id).filter(|[old, new]| looks_alike(old, new)) else {
                return false;
            };
            at = new.on;
        }
        true
    }
}

/// Whether two states of an item make the same pieces.
fn looks_alike(a: &Item, b: &Item) -> bool {
    (a.at, a.turn, a.height, a.on, a.face) == (b.at, b.turn, b.height, b.on, b.face)
        && a.size == b.size
        && a.parts == b.parts
        && a.prop == b.prop
}
