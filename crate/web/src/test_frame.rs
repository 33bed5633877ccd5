//! The plan laid over a test photo, and two frames of one set compared.
use std::fmt::Write as _;

use glam::DVec2;
use planner::layout::Id;
use planner::papers::{Aligned, FrameOff, bumped, find_again, tellable};
use planner::shape::MarksFault;
use planner::words::say;
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::objects::object;

/// The plan as it lies in the photo.
#[derive(Serialize)]
struct Over {
    /// Path of the outlines, px of the photo.
    path: String,
    /// How far the frame is off.
    frame: Option<FrameOff>,
}

/// What is wrong with marks, in words.
fn refused(fault: MarksFault) -> JsError {
    let id = match fault {
        MarksFault::Count => "marks-count",
        MarksFault::Line => "marks-line",
        MarksFault::Order => "marks-order",
    };
    JsError::new(&say(id, &[]))
}

/// Places from x and y in turn.
fn places(numbers: &[f64]) -> Vec<DVec2> {
    numbers.chunks_exact(2).map(DVec2::from_slice).collect()
}

impl Planner {
    fn aligned(&self, ids: &[u16], spots: &[f64]) -> Result<Aligned, JsError> {
        let ids = ids.iter().map(|id| Id(*id));
        let told: Vec<(Id, DVec2)> = ids.zip(places(spots)).collect();
        Aligned::fitted(self.now(), &told).map_err(refused)
    }
}

#[wasm_bindgen]
impl Planner {
    /// The things that can be told in a photo of the set, the best marks first.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn tellable(&self) -> Result<JsValue, JsError> {
        object(&tellable(self.now()))
    }

    /// The plan over a photo `width` by `height` px, from things and where in it
    /// each is told.
    ///
    /// # Errors
    /// When the marks say nothing, in words.
    pub fn plan_in_photo(
        &self,
        ids: &[u16],
        spots: &[f64],
        width: f64,
        height: f64,
    ) -> Result<JsValue, JsError> {
        let aligned = self.aligned(ids, spots)?;
        let mut path = String::new();
        for line in aligned.outlines(self.now()) {
            for (n, p) in line.iter().enumerate() {
                let verb = if n == 0 { 'M' } else { 'L' };
                // A string takes whatever is written to it.
                let _ = write!(path, "{verb}{} {}", p.x.round(), p.y.round());
            }
            path.push('z');
        }
        let frame = aligned.frame(self.now(), DVec2::new(width, height));
        object(&Over { path, frame })
    }

    /// How far a thing told at a place of the photo stands from its own;
    /// nothing when it is gone.
    ///
    /// # Errors
    /// When the marks say nothing, in words.
    pub fn drift_in_photo(
        &self,
        ids: &[u16],
        spots: &[f64],
        thing: u16,
        x: f64,
        y: f64,
    ) -> Result<JsValue, JsError> {
        let aligned = self.aligned(ids, spots)?;
        object(&aligned.drift(self.now(), Id(thing), DVec2::new(x, y)))
    }

    /// Finds the middle of a small square of pixels in a large one: how far off
    /// it lies, px, and how much lighter it is, stops; nothing when it is not there.
    #[must_use]
    pub fn found_again(small: &[u8], side: usize, large: &[u8], wide: usize) -> Vec<f64> {
        let found = find_again(small, side, large, wide);
        found.map_or_else(Vec::new, |f| vec![f.by.x, f.by.y, f.stops])
    }

    /// Compares two frames `width` by `height` px by marks, each in the first and
    /// then in the second, and by how much lighter each became.
    ///
    /// # Errors
    /// When the marks say nothing, in words.
    pub fn frames_compared(
        &self,
        width: f64,
        height: f64,
        marks: &[f64],
        stops: &[f64],
    ) -> Result<JsValue, JsError> {
        let marks: Vec<[DVec2; 2]> = marks
            .chunks_exact(4)
            .map(|m| [DVec2::new(m[0], m[1]), DVec2::new(m[2], m[3])])
            .collect();
        let size = DVec2::new(width, height);
        object(&bumped(self.now(), size, &marks, stops).map_err(refused)?)
    }
}
