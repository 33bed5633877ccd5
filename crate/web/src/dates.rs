//! The plan back from the day on sale.
use planner::dates::{back_plan, entries};
use planner::layout::Day;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::objects::object;

#[wasm_bindgen]
impl Planner {
    /// The plan as seen from this day, `YYYY-MM-DD`; null before the day on sale
    /// is told.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn back_plan(&self, today: &str) -> Result<JsValue, JsError> {
        object(&back_plan(self.now(), Day::parse(today)))
    }

    /// The plan as days of a calendar.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn calendar_days(&self) -> Result<JsValue, JsError> {
        object(&entries(self.now()))
    }
}
