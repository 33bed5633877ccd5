//! Outlines of linens and crops.
use glam::DVec2;

use crate::layout::{Crop, Layout, Linen};
use crate::shape::{CHORD_ERROR, rect};

/// A linen as it lies.
#[must_use]
pub fn linen_outline(linen: &Linen) -> Vec<DVec2> {
    let [w, d] = linen.lying();
    rect(
        linen.at.vec(),
        DVec2::new(w, d),
        0.0,
        linen.turn.degrees(),
        CHORD_ERROR,
    )
}

/// A crop on the table plane; crops turn with the frame.
#[must_use]
pub fn crop_outline(layout: &Layout, crop: &Crop) -> Vec<DVec2> {
    let size = DVec2::from_array(crop.extent());
    rect(
        crop.at.vec(),
        size,
        0.0,
        layout.frame.turn.degrees(),
        CHORD_ERROR,
    )
}
