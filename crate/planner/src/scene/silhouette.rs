//! The outline of one item from above.
use glam::DVec2;

use crate::figure::thing_outline;
use crate::layout::Item;
use crate::shape::{CHORD_ERROR, well};

/// The outline of an item on the table plane, mm: the very one
/// that is drawn.
#[must_use]
pub fn silhouette(item: &Item) -> Vec<DVec2> {
    let own = thing_outline(item);
    own.iter().map(|p| *p + item.at.vec()).collect()
}

/// The inside of a vessel's rim, where food lies; `None` without a rim.
#[must_use]
pub fn inner(item: &Item) -> Option<Vec<DVec2>> {
    well(&item.size, item.at.vec(), item.turn.degrees(), CHORD_ERROR)
}
