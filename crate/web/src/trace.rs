//! Outlines traced over a photo.
use glam::DVec2;
use planner::commands;
use planner::shape::stroke;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::objects::object;

/// Places as they cross: x and y in turn.
fn places(flat: &[f64]) -> Vec<DVec2> {
    flat.chunks_exact(2).map(DVec2::from_slice).collect()
}

#[wasm_bindgen]
impl Planner {
    /// A stroke of the finger, x and y in turn, px, as the few points that
    /// keep it within `tolerance`.
    #[must_use]
    pub fn thin_stroke(line: &[f64], tolerance: f64) -> Vec<f64> {
        let thin = stroke(&places(line), tolerance);
        thin.iter().flat_map(|p| p.to_array()).collect()
    }

    /// The outline of a thing from points round it in a photo and two marks
    /// there, x and y in turn, px, and the length between the marks, mm.
    ///
    /// # Errors
    /// When they make no outline, in words.
    pub fn trace(&self, line: &[f64], marks: &[f64], length: f64) -> Result<JsValue, JsError> {
        let marks = places(marks);
        let at = |n: usize| marks.get(n).copied().unwrap_or(DVec2::NAN);
        let size = commands::trace(self.now(), &places(line), [at(0), at(1)], length)?;
        object(&size)
    }
}
