//! What of a layout is for others to see.
use crate::layout::{Layout, Rig};

/// The layout without the note, the client's name, the rig, the lenses at hand,
/// who has agreed to what and what the photographer has accepted, which are nobody else's business.
#[must_use]
pub fn public(layout: &Layout) -> Layout {
    let mut shared = layout.clone();
    shared.head.note.clear();
    shared.head.client.clear();
    shared.intended.clear();
    shared.rig = Rig::default();
    shared.camera.lenses.clear();
    for person in &mut shared.people {
        person.released = false;
    }
    shared
}
