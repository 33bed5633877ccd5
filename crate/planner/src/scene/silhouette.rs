//! The outline of one item from above.
use glam::DVec2;

use crate::figure::{is_coated, thing_outline};
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
    let at = item.at.vec();
    if !is_coated(&item.prop) {
        return well(&item.size, at, item.turn.degrees(), CHORD_ERROR);
    }
    // A spout or a handle leaves no even rim: the inside is the outline drawn
    // in about the middle, which every such outline is starred about.
    let [w, d] = item.size.extent();
    let share = 1.0 - f64::from(2 * item.size.rim()) / f64::from(w.min(d).max(1));
    let drawn_in = |p: DVec2| at + p * share;
    (item.size.rim() > 0).then(|| thing_outline(item).into_iter().map(drawn_in).collect())
}
