//! The papers a shoot runs from.
use planner::exposures::hold_of;
use planner::layout::Id;
use planner::papers::{crockery, running_order, steps};
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::objects::object;

#[wasm_bindgen]
impl Planner {
    /// The running order.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn running_order(&self) -> Result<JsValue, JsError> {
        object(&running_order(self.now()))
    }

    /// Paper crockery for paper of this breadth and height in mm, page by page.
    #[must_use]
    pub fn crockery(&self, wide: f64, high: f64) -> Vec<String> {
        crockery(self.now(), [wide, high])
    }

    /// The steps of the day.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn day_steps(&self) -> Result<JsValue, JsError> {
        object(&steps(self.now()))
    }

    /// How long a thing looks right on the set, minutes, as told or as usual; 0
    /// for what keeps.
    #[must_use]
    pub fn hold_of(&self, id: u16) -> i32 {
        let item = self.now().items.iter().find(|i| i.id == Id(id));
        item.and_then(hold_of).map_or(0, |hold| hold.0)
    }
}
