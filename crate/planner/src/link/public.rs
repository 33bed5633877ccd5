//! What of a layout is for others to see.
use crate::layout::{Dates, Layout, Rig};

/// The layout without the note, the client's name, the rig, the lenses at hand,
/// when it is wanted, what was answered and remarked, how long the food holds and
/// what stands in for it, where things come from and live, who has agreed to what
/// and what the photographer has accepted: nobody else's business. How many are
/// in reserve is.
#[must_use]
pub fn public(layout: &Layout) -> Layout {
    let mut shared = layout.clone();
    shared.head.note.clear();
    shared.head.client.clear();
    shared.head.revision.answer = None;
    shared.head.remarks.clear();
    shared.intended.clear();
    shared.rig = Rig::default();
    shared.camera.lenses.clear();
    shared.dates = Dates::default();
    for item in &mut shared.items {
        item.hold_minutes = None;
        item.stand_in.clear();
    }
    let items = shared.items.iter_mut().map(|item| &mut item.stock);
    let linens = shared.linens.iter_mut().map(|linen| &mut linen.stock);
    for stock in items.chain(linens) {
        stock.source = None;
        stock.shelf.clear();
    }
    for person in &mut shared.people {
        person.released = false;
    }
    shared
}
