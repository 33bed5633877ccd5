//! Light, cards, stand and photographer under a finger, beside the table.
use glam::DVec2;
use planner::commands::{self, Carry, Fixture};
use planner::drawing::carried;
use planner::edit::Run;
use planner::layout::Id;
use planner::scene::card_at;
use wasm_bindgen::prelude::*;

use crate::Planner;

#[wasm_bindgen]
impl Planner {
    /// The card a finger takes that reaches so far, mm; 0 for none.
    #[must_use]
    pub fn card_at(&self, x: f64, y: f64, reach: f64) -> u16 {
        card_at(self.now(), DVec2::new(x, y), reach).map_or(0, |id| id.0)
    }

    /// Takes hold of the light on its ring where that is shown (`lit`), the
    /// stand or the photographer; false when none is in reach, mm.
    pub fn carry(&mut self, x: f64, y: f64, reach: f64, lit: bool) -> bool {
        self.carry = Carry::of(self.now(), DVec2::new(x, y), reach, lit);
        if let (Some(carry), Some(sheet)) = (&self.carry, &mut self.sheet) {
            let motions = carry.motions(self.history.layout());
            sheet.lift(|key| motions.iter().any(|motion| motion.key == key));
        }
        self.carry.is_some()
    }

    /// Moves what is carried by this much from where it was taken, mm.
    ///
    /// # Errors
    /// When the page refuses the drawing.
    pub fn carry_to(&mut self, dx: f64, dy: f64) -> Result<(), JsValue> {
        let (Some(carry), Some(sheet)) = (&mut self.carry, &self.sheet) else {
            return Ok(());
        };
        carry.move_to(DVec2::new(dx, dy));
        for motion in carry.motions(self.history.layout()) {
            let pose = carried(motion.by, motion.turn, motion.about);
            sheet.pose(motion.key, &pose)?;
        }
        Ok(())
    }

    /// The figure of what is carried.
    #[must_use]
    pub fn carry_words(&self) -> String {
        let carry = self.carry.as_ref();
        carry.map_or_else(String::new, |carry| carry.words(self.now()))
    }

    /// Lets go of what is carried; `keep` makes it one step, else it goes back.
    ///
    /// # Errors
    /// When it would leave the limits.
    pub fn carried(&mut self, keep: bool) -> Result<JsValue, JsError> {
        let Some(carry) = self.carry.take() else {
            return Ok(JsValue::UNDEFINED);
        };
        let layout = self.history.layout();
        if let Some(sheet) = &mut self.sheet {
            sheet.lift(|_| false);
            for motion in carry.motions(layout) {
                // No page refuses to take an attribute away.
                sheet.pose(motion.key, "").ok();
            }
        }
        if !keep {
            return Ok(JsValue::UNDEFINED);
        }
        let act = carry.drop(layout)?;
        self.make(act, Run::Alone)
    }

    /// What a finger takes that reaches so far, mm: 1 the light on its ring
    /// where that is shown (`lit`), 2 the stand, 3 the photographer, 0 nothing.
    #[must_use]
    pub fn about_at(&self, x: f64, y: f64, reach: f64, lit: bool) -> u8 {
        match commands::fixture_at(self.now(), DVec2::new(x, y), reach, lit) {
            None => 0,
            Some(Fixture::Light) => 1,
            Some(Fixture::Stand { .. }) => 2,
            Some(Fixture::Photographer) => 3,
        }
    }

    /// Sets the light to the hour at which a place lies.
    ///
    /// # Errors
    /// When it would leave the limits.
    pub fn aim_light(&mut self, x: f64, y: f64) -> Result<JsValue, JsError> {
        let act = commands::aim_light(self.now(), DVec2::new(x, y))?;
        self.make(act, Run::Alone)
    }

    /// Puts the stand, or the photographer, at a place, mm.
    ///
    /// # Errors
    /// When it would leave the limits.
    pub fn put_about(&mut self, stand: bool, x: f64, y: f64) -> Result<JsValue, JsError> {
        let at = DVec2::new(x, y);
        let act = if stand {
            commands::move_stand(self.now(), at)?
        } else {
            commands::move_photographer(self.now(), at)?
        };
        self.make(act, Run::Alone)
    }

    /// Whether it is a card.
    #[must_use]
    pub fn is_card(&self, id: u16) -> bool {
        self.now().cards.iter().any(|card| card.id == Id(id))
    }
}
