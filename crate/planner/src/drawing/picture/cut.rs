//! What the frame or one crop keeps of the picture.
use svg::Document;

use super::groups;
use super::view::{Keyed, View};
use crate::drawing::path::tenth;
use crate::figure::outline::bounds;
use crate::layout::{Id, Layout};
use crate::scene::crop_outline;
use crate::shape::frame_outline;

/// A part of the picture that stands alone.
pub struct Cut {
    /// Left, top, width and height of what it shows, mm.
    pub area: [f64; 4],
    /// The groups of the drawing, bottom to top.
    pub groups: Vec<Keyed>,
}

/// What the frame covers, or a crop; nothing when there is no such crop.
pub(super) fn area(layout: &Layout, crop: Option<Id>) -> Option<[f64; 4]> {
    let corners = match crop {
        None => frame_outline(&layout.frame),
        Some(id) => crop_outline(layout, layout.crops.iter().find(|c| c.id == id)?),
    };
    let (low, high) = bounds(&corners);
    Some([low.x, low.y, high.x - low.x, high.y - low.y])
}

/// What the frame keeps, or a crop without the tags, drawn for `pixels`
/// across; nothing when there is no such crop.
#[must_use]
pub fn cut(layout: &Layout, crop: Option<Id>, pixels: f64, view: &View) -> Option<Cut> {
    let area = area(layout, crop)?;
    let view = View {
        per_pixel: area[2] / pixels,
        frame: false,
        tags: view.tags && crop.is_none(),
        ..view.clone()
    };
    Some(Cut {
        area,
        groups: groups(layout, &view),
    })
}

/// What the frame keeps, or a crop, as a file that stands alone, so many pixels
/// across; nothing when there is no such crop.
#[must_use]
pub fn cut_file(layout: &Layout, crop: Option<Id>, pixels: f64, view: &View) -> Option<String> {
    let Cut { area, groups } = cut(layout, crop, pixels, view)?;
    let high = area[3] * pixels / area[2].max(1.0);
    Some(document(area, [pixels, high], groups).to_string())
}

/// A document of `size` pixels that shows `area`, with `groups` in it.
pub(super) fn document(area: [f64; 4], size: [f64; 2], groups: Vec<Keyed>) -> Document {
    let [width, height] = size.map(f64::round);
    let mut document = Document::new()
        .set("viewBox", view_box(area))
        .set("width", tenth(width))
        .set("height", tenth(height));
    for keyed in groups {
        document = document.add(keyed.placed());
    }
    document
}

/// A `viewBox` that shows `area`.
#[must_use]
pub fn view_box(area: [f64; 4]) -> String {
    area.map(tenth).join(" ")
}
