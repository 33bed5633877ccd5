//! What of a layout is for others to see.
use crate::layout::{Dates, Layout, Rig};

/// The layout without the note, the client's name, the rig, the lenses at hand,
/// when it is wanted, how long the food holds and what stands in for it, who has
/// agreed to what and what the photographer has accepted: nobody else's business.
#[must_use]
pub fn public(layout: &Layout) -> Layout {
    let mut shared = layout.clone();
    shared.head.note.clear();
    shared.head.client.clear();
    shared.intended.clear();
    shared.rig = Rig::default();
    shared.camera.lenses.clear();
    shared.dates = Dates::default();
    for item in &mut shared.items {
        item.hold_minutes = None;
        item.stand_in.clear();
    }
    for person in &mut shared.people {
        person.released = false;
    }
    shared
}
