//! The picture of a layout, or why there is none.
use planner::drawing::{Shown, View, cut_file, sheet, side_file};
use planner::layout::{Id, Layout};
use planner::optics;

use crate::report::missing;

/// Camera, stand and light from the side.
pub(crate) fn from_the_side(layout: &Layout) -> Result<String, String> {
    let none = "the lens cannot show this frame, so there is nothing to draw from the side";
    side_file(layout).ok_or_else(|| none.into())
}

/// The sheet, or what a crop keeps, with all hands or those of one exposure,
/// from above or through the lens.
pub(crate) fn drawn(
    layout: &Layout,
    exposure: Option<u16>,
    crop: Option<u16>,
    lens: bool,
) -> Result<String, String> {
    let shown = match exposure.map(Id) {
        None => Shown::All,
        Some(id) if layout.exposures.iter().any(|e| e.id == id) => Shown::Exposure(id),
        Some(id) => {
            let ids: Vec<Id> = layout.exposures.iter().map(|e| e.id).collect();
            return Err(missing("exposure", id, &ids));
        }
    };
    let eye = if lens {
        optics::View::of(layout)
    } else {
        optics::View::Above
    };
    let Some(id) = crop.map(Id) else {
        return Ok(sheet(layout, shown, eye));
    };
    let view = View {
        shown,
        eye,
        fine: true,
        ..View::default()
    };
    cut_file(layout, id, &view).ok_or_else(|| {
        let ids: Vec<Id> = layout.crops.iter().map(|c| c.id).collect();
        missing("crop", id, &ids)
    })
}
