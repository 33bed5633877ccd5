//! Several things picked at once: which they are, and what is done to them.
use glam::DVec2;
use planner::commands::{self, Deed, Refused};
use planner::edit::Run;
use planner::layout::Id;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::arrange::these;

fn numbers(ids: Vec<Id>) -> Vec<u16> {
    ids.into_iter().map(|id| id.0).collect()
}

#[wasm_bindgen]
impl Planner {
    /// What is picked when these are, each only once and with its group.
    #[must_use]
    pub fn picked(&self, ids: &[u16]) -> Vec<u16> {
        numbers(commands::picked(self.now(), &these(ids)))
    }

    /// Everything there is to pick.
    #[must_use]
    pub fn pick_all(&self) -> Vec<u16> {
        numbers(commands::pick_all(self.now()))
    }

    /// What is picked when one more thing is, or one is no longer.
    #[must_use]
    pub fn pick_toggle(&self, before: &[u16], id: u16) -> Vec<u16> {
        numbers(commands::toggle(self.now(), &these(before), Id(id)))
    }

    /// What is picked with what lies in a loop, x and y in turn, mm.
    #[must_use]
    pub fn pick_within(&self, before: &[u16], path: &[f64]) -> Vec<u16> {
        let path: Vec<DVec2> = path.chunks_exact(2).map(DVec2::from_slice).collect();
        let ids = commands::pick_within(self.now(), &self.scene, &path, &these(before));
        numbers(ids)
    }

    /// All that goes along with what is picked.
    #[must_use]
    pub fn goes_along(&self, ids: &[u16]) -> Vec<u16> {
        commands::moving_all(self.now(), &these(ids))
            .into_iter()
            .map(|id| id.0)
            .collect()
    }

    /// Those of the picked things that can be changed.
    #[must_use]
    pub fn free_of(&self, ids: &[u16]) -> Vec<u16> {
        commands::free(self.now(), &these(ids)).map_or_else(|_| Vec::new(), numbers)
    }

    /// Where what is picked turns about, x and y, mm; nothing when none of it can.
    #[must_use]
    pub fn middle_of(&self, ids: &[u16]) -> Vec<i32> {
        let middle = commands::middle_of(self.now(), &these(ids));
        middle.map_or_else(Vec::new, |at| vec![at.x, at.y])
    }

    /// Nudges what is picked, mm, or else round its common middle, half degrees
    /// clockwise, at a time, ms.
    ///
    /// # Errors
    /// When all of it is locked, or it would leave the limits.
    pub fn nudge_picked(
        &mut self,
        ids: &[u16],
        dx: i32,
        dy: i32,
        half_degrees: i32,
        now: f64,
    ) -> Result<JsValue, JsError> {
        let act = if half_degrees == 0 {
            commands::move_picked(self.now(), &these(ids), [dx, dy])?
        } else {
            commands::turn_picked(self.now(), &these(ids), half_degrees)?
        };
        self.make(act, Run::Nudge(now))
    }

    /// Does something to all that is picked: `lock`, `unlock`, `group`,
    /// `apart`, `repeat` or `remove`.
    ///
    /// # Errors
    /// When all of it is locked, it is too few for it, or it would break a limit.
    pub fn do_picked(&mut self, ids: &[u16], deed: &str) -> Result<JsValue, JsError> {
        let deed = Deed::parse(deed).ok_or_else(|| Refused::Unknown(deed.into()))?;
        let act = commands::do_picked(self.now(), &these(ids), deed)?;
        self.make(act, Run::Alone)
    }
}
