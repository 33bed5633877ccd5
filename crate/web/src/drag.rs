//! A drag or a turn in hand: numbers in, numbers and transforms out.
use glam::DVec2;
use planner::commands::Drag;
use planner::drawing::reaching;
use planner::layout::Id;
use planner::scene::{arm, root};
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::arrange::these;

/// The group a hand is drawn in.
fn key_of(hand: Id) -> String {
    ["hand-", &hand.0.to_string()].concat()
}

#[wasm_bindgen]
impl Planner {
    /// Takes hold of a thing, with its group or `alone`; false when it is locked
    /// or not there.
    pub fn grab(&mut self, id: u16, alone: bool) -> bool {
        // In one exposure a thing is moved for itself; cloth lies as it is set.
        let own = self.moving_in(Id(id)).is_some();
        self.drag = if own && !self.table().items.iter().any(|i| i.id == Id(id)) {
            None
        } else {
            Drag::of(self.table(), &self.scene, Id(id), alone || own)
        };
        if let (Some(drag), Some(sheet)) = (&self.drag, &mut self.sheet) {
            sheet.lift(|key| drag.takes(key));
        }
        self.drag.is_some()
    }

    /// Takes hold of all that is picked; false when all of it is locked.
    pub fn grab_picked(&mut self, ids: &[u16]) -> bool {
        let ids = these(ids);
        if self.then.is_some() {
            return false;
        }
        self.drag = Drag::of_picked(self.history.layout(), &self.scene, &ids);
        self.drag.is_some()
    }

    /// Moves what is in hand by this much from where it was taken, mm, resting
    /// it against its neighbours within `reach` mm.
    ///
    /// # Errors
    /// When the page refuses the drawing.
    pub fn drag_to(&mut self, dx: f64, dy: f64, reach: f64) -> Result<(), JsValue> {
        let Some(drag) = &mut self.drag else {
            return Ok(());
        };
        drag.move_to(DVec2::new(dx, dy), reach);
        let Some(sheet) = &mut self.sheet else {
            return Ok(());
        };
        // An arm follows its hand: it is solved anew, and drawn alone.
        if let Some(hand) = drag.reaching(self.history.layout()) {
            let arm = reaching(self.history.layout(), &hand, &self.view);
            self.drawn.forget(hand.id);
            return sheet.replace(&key_of(hand.id), &arm);
        }
        sheet.shift(|key| drag.takes(key), drag.by())
    }

    /// Turns what is in hand; returns the turn taken, degrees.
    pub fn turn_to(&mut self, degrees: f64) -> f64 {
        self.drag.as_mut().map_or(0.0, |drag| drag.turn_to(degrees))
    }

    /// How far what is in hand has come to the right, mm.
    #[wasm_bindgen(getter)]
    #[must_use]
    pub fn drag_x(&self) -> f64 {
        self.drag.as_ref().map_or(0.0, |drag| drag.by().x)
    }

    /// How far what is in hand has come down, mm.
    #[wasm_bindgen(getter)]
    #[must_use]
    pub fn drag_y(&self) -> f64 {
        self.drag.as_ref().map_or(0.0, |drag| drag.by().y)
    }

    /// The upright line it rests against, mm from the left; NaN for none.
    #[wasm_bindgen(getter)]
    #[must_use]
    pub fn guide_x(&self) -> f64 {
        self.drag
            .as_ref()
            .and_then(|drag| drag.rest().upright)
            .unwrap_or(f64::NAN)
    }

    /// The level line it rests against, mm from the top; NaN for none.
    #[wasm_bindgen(getter)]
    #[must_use]
    pub fn guide_y(&self) -> f64 {
        self.drag
            .as_ref()
            .and_then(|drag| drag.rest().level)
            .unwrap_or(f64::NAN)
    }

    /// The figures of what is in hand.
    #[must_use]
    pub fn drag_words(&self) -> String {
        let layout = self.now();
        self.drag.as_ref().map_or_else(String::new, |drag| {
            drag.words(&layout.frame, layout.head.units)
        })
    }

    /// Puts what is in hand back where it was.
    ///
    /// # Errors
    /// When the page refuses the drawing.
    pub fn let_go(&mut self) -> Result<(), JsValue> {
        let (Some(drag), Some(sheet)) = (self.drag.take(), &mut self.sheet) else {
            return Ok(());
        };
        sheet.lift(|_| false);
        let layout = self.history.layout();
        let still = drag
            .one()
            .and_then(|id| layout.hands.iter().find(|h| h.id == id));
        if let Some(hand) = still {
            return sheet.replace(&key_of(hand.id), &reaching(layout, hand, &self.view));
        }
        sheet.shift(|key| drag.takes(key), DVec2::ZERO)
    }

    /// The outline of the hand in hand as it reaches now, x and y in turn, mm;
    /// empty when it is something else.
    #[must_use]
    pub fn drag_outline(&self) -> Vec<f64> {
        let layout = self.history.layout();
        let hand = self.drag.as_ref().and_then(|drag| drag.reaching(layout));
        hand.map_or_else(Vec::new, |hand| {
            let own = arm(layout, &hand).hand;
            own.iter().flat_map(|p| p.to_array()).collect()
        })
    }

    /// The bottom of the stack a thing stands in.
    #[must_use]
    pub fn root(&self, id: u16) -> u16 {
        root(self.history.layout(), Id(id)).0
    }
}
