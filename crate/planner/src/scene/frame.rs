//! Outlines of the table, its linens, the frame and the crops.
use glam::DVec2;

use crate::layout::{Crop, Layout, Linen, Table, TableShape};
use crate::shape::{CHORD_ERROR, disc, rect};

/// The table top.
#[must_use]
pub fn table_outline(table: &Table) -> Vec<DVec2> {
    let size = DVec2::new(f64::from(table.width), f64::from(table.depth));
    match table.shape {
        TableShape::Round => disc(size * 0.5, size.x * 0.5, CHORD_ERROR),
        TableShape::Rect => {
            let corner = f64::from(table.corner).min(size.min_element() * 0.5);
            rect(size * 0.5, size, corner, 0.0, CHORD_ERROR)
        }
    }
}

/// A linen as it lies.
#[must_use]
pub fn linen_outline(linen: &Linen) -> Vec<DVec2> {
    let [w, d] = linen.lying();
    rect(linen.at.vec(), DVec2::new(w, d), 0.0, linen.turn.degrees(), CHORD_ERROR)
}

/// The camera's frame on the table plane.
#[must_use]
pub fn frame_outline(layout: &Layout) -> Vec<DVec2> {
    let f = &layout.frame;
    let size = DVec2::new(f64::from(f.width), f.height());
    rect(f.at.vec(), size, 0.0, f.turn.degrees(), CHORD_ERROR)
}

/// A crop on the table plane; crops turn with the frame.
#[must_use]
pub fn crop_outline(layout: &Layout, crop: &Crop) -> Vec<DVec2> {
    let size = DVec2::from_array(crop.extent());
    rect(crop.at.vec(), size, 0.0, layout.frame.turn.degrees(), CHORD_ERROR)
}
