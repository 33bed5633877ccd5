//! The outline of one item from above.
use glam::DVec2;

use crate::layout::{Item, Size};
use crate::shape::{CHORD_ERROR, disc, oval, placed, rect};

/// The outline of an item on the table plane, mm.
#[must_use]
pub fn silhouette(item: &Item) -> Vec<DVec2> {
    sized(&item.size, item.at.vec(), item.turn.degrees(), 0.0)
}

/// The inside of a vessel's rim, where food lies; `None` without a rim.
#[must_use]
pub fn inner(item: &Item) -> Option<Vec<DVec2>> {
    let rim = f64::from(item.size.rim());
    (rim > 0.0).then(|| sized(&item.size, item.at.vec(), item.turn.degrees(), rim))
}

fn sized(size: &Size, at: DVec2, turn: f64, inset: f64) -> Vec<DVec2> {
    let [w, d] = size.extent().map(f64::from);
    let extent = (DVec2::new(w, d) - inset * 2.0).max(DVec2::ONE);
    match size {
        Size::Disc { .. } => disc(at, extent.x * 0.5, CHORD_ERROR),
        Size::Oval { .. } => oval(at, extent, turn, CHORD_ERROR),
        Size::Rect { corner, .. } => {
            let corner = (f64::from(*corner) - inset).clamp(0.0, extent.min_element() * 0.5);
            rect(at, extent, corner, turn, CHORD_ERROR)
        }
        Size::Outline { points } => {
            let own: Vec<DVec2> = points.iter().map(|p| p.vec()).collect();
            placed(&own, at, turn)
        }
    }
}
