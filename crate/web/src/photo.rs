//! Colours read off the pixels of a photo.
use planner::colour::photo::{Paper, Patch, in_inks, tones_of};
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::objects::object;

#[wasm_bindgen]
impl Planner {
    /// The tones of a thing in a photo, from pixels of the thing and of paper in
    /// the same light: red, green, blue and opacity, in rows of `width`. The
    /// paper is white, or a `grey` card.
    ///
    /// # Errors
    /// When one of them cannot be read, in words.
    pub fn photographed(
        thing: &[u8],
        width: usize,
        paper: &[u8],
        paper_width: usize,
        grey: bool,
    ) -> Result<JsValue, JsError> {
        let kind = if grey { Paper::Grey } else { Paper::White };
        let thing = Patch { rgba: thing, width };
        let paper = Patch {
            rgba: paper,
            width: paper_width,
        };
        object(&tones_of(thing, paper, kind)?)
    }

    /// Whether a file whose first bytes these are is a photo in printing inks.
    #[must_use]
    pub fn in_inks(head: &[u8]) -> bool {
        in_inks(head)
    }
}
