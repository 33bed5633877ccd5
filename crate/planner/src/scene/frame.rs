//! Outlines of linens and crops.
use glam::DVec2;

use crate::figure::{Form, cloth_outline};
use crate::layout::{Crop, Layout, Linen};
use crate::shape::{CHORD_ERROR, rect};

/// How a linen lies, as far as its outline goes.
#[must_use]
pub fn linen_form(linen: &Linen) -> Form {
    let half = DVec2::from_array(linen.lying()) * 0.5;
    Form::new(u32::from(linen.id.0), half, linen.turn.radians())
}

/// A linen as it lies: the very outline that is drawn.
#[must_use]
pub fn linen_outline(linen: &Linen) -> Vec<DVec2> {
    let own = cloth_outline(linen.state, &linen_form(linen));
    own.iter().map(|p| *p + linen.at.vec()).collect()
}

/// The rectangle a linen lies along, its hems drawn straight: four corners.
#[must_use]
pub fn linen_span(linen: &Linen) -> Vec<DVec2> {
    let size = DVec2::from_array(linen.lying());
    let turn = linen.turn.degrees();
    rect(linen.at.vec(), size, 0.0, turn, CHORD_ERROR)
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
