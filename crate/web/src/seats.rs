//! Hands and their people: what they do and hold, whose they are, and where at
//! the table they come from.
use glam::DVec2;
use planner::arms::{STATURES, shorter};
use planner::colour::SKINS;
use planner::commands;
use planner::drawing::translation;
use planner::edit::Run;
use planner::layout::{Action, Id, Turn};
use planner::seats::stand_at;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::objects::asked;

#[wasm_bindgen]
impl Planner {
    /// Has the other hand do it.
    ///
    /// # Errors
    /// When it would break a limit.
    pub fn flip(&mut self, hand: u16) -> Result<JsValue, JsError> {
        let act = commands::flip(self.now(), Id(hand))?;
        self.make(act, Run::Alone)
    }

    /// The direction of the picture a hand comes from, degrees; nothing for one
    /// whose person has no place at the table.
    #[must_use]
    pub fn comes_from(&self, hand: u16) -> Option<f64> {
        let hand = self.now().hands.iter().find(|h| h.id == Id(hand))?;
        commands::comes_from(self.now(), hand).map(|turn| turn.degrees())
    }

    /// Lets a hand and its pair come from this direction of the picture,
    /// degrees.
    ///
    /// # Errors
    /// When there is no such hand, or no room for another place.
    pub fn come_from(&mut self, hand: u16, degrees: f64) -> Result<JsValue, JsError> {
        let clock = Turn::from_degrees(degrees);
        let act = commands::come_from(self.now(), Id(hand), clock)?;
        self.make(act, Run::Alone)
    }

    /// Whether the person of a hand stands.
    #[must_use]
    pub fn stands(&self, hand: u16) -> bool {
        let hand = self.now().hands.iter().find(|h| h.id == Id(hand));
        let seat = hand.and_then(|h| planner::scene::seat_of(self.now(), h));
        seat.is_some_and(|seat| seat.standing)
    }

    /// How tall someone is of whom nothing is told, mm.
    #[must_use]
    pub fn usual_stature(&self) -> f64 {
        planner::scene::USUAL_STATURE
    }

    /// Has the person of a hand stand up or sit down.
    ///
    /// # Errors
    /// When it has no place at the table.
    pub fn stand_or_sit(&mut self, hand: u16) -> Result<JsValue, JsError> {
        let act = commands::stand_or_sit(self.now(), Id(hand))?;
        self.make(act, Run::Alone)
    }

    /// Shoots a hand in another exposure.
    ///
    /// # Errors
    /// When there is no such exposure.
    pub fn shoot_in(&mut self, hand: u16, exposure: u16) -> Result<JsValue, JsError> {
        let act = commands::shoot_in(self.now(), Id(hand), Id(exposure))?;
        self.make(act, Run::Alone)
    }

    /// Has a hand and its pair do something else.
    ///
    /// # Errors
    /// When there is no such hand or action.
    pub fn do_else(&mut self, hand: u16, action: JsValue) -> Result<JsValue, JsError> {
        let action: Action = asked(action)?;
        let act = commands::do_else(self.now(), Id(hand), action)?;
        self.make(act, Run::Alone)
    }

    /// Has a hand and its pair hold a thing; 0 for nothing.
    ///
    /// # Errors
    /// When there is no such hand or thing.
    pub fn hold(&mut self, hand: u16, item: u16) -> Result<JsValue, JsError> {
        let item = Some(Id(item)).filter(|id| id.0 != 0);
        let act = commands::hold(self.now(), Id(hand), item)?;
        self.make(act, Run::Alone)
    }

    /// Gives a hand and its pair to another person; 0 for a new one.
    ///
    /// # Errors
    /// When there is no such hand or person, or no room for another.
    pub fn give_hand(&mut self, hand: u16, person: u16) -> Result<JsValue, JsError> {
        let person = Some(Id(person)).filter(|id| id.0 != 0);
        let act = commands::give_hand(self.now(), Id(hand), person)?;
        self.make(act, Run::Alone)
    }

    /// A tone of each class of skin, from very light to dark.
    #[must_use]
    pub fn skins(&self) -> Vec<String> {
        SKINS.iter().map(ToString::to_string).collect()
    }

    /// The fifth, fiftieth and ninety-fifth percentile of women's and then of
    /// men's statures, mm.
    #[must_use]
    pub fn statures(&self) -> Vec<i32> {
        STATURES.to_vec()
    }

    /// How many of a hundred women, and of a hundred men, are shorter.
    #[must_use]
    pub fn shorter(&self, stature: f64) -> Vec<f64> {
        shorter(stature).map(f64::round).to_vec()
    }

    /// The place at the table a finger takes that reaches so far, mm: its id, 0
    /// where there is room for one more, and nothing for none.
    #[must_use]
    pub fn place_at(&self, x: f64, y: f64, reach: f64) -> Option<u16> {
        let spot = commands::spot_at(self.now(), DVec2::new(x, y), reach)?;
        Some(spot.seat.map_or(0, |id| id.0))
    }

    /// A hand that comes from a place; 0 for none.
    #[must_use]
    pub fn hand_from(&self, seat: u16) -> u16 {
        let layout = self.now();
        let mut hands = layout.hands.iter();
        let own =
            hands.find(|h| planner::scene::seat_of(layout, h).is_some_and(|s| s.id == Id(seat)));
        own.map_or(0, |hand| hand.id.0)
    }

    /// Lets a hand and its pair come from the place at the table a finger takes
    /// that reaches so far, mm.
    ///
    /// # Errors
    /// When there is no such hand, or no room for another place.
    pub fn come_to(&mut self, hand: u16, x: f64, y: f64, reach: f64) -> Result<JsValue, JsError> {
        let place = DVec2::new(x, y);
        let spot = commands::spot_at(self.now(), place, reach);
        let at = spot.map_or(place, |spot| spot.at);
        let act = commands::come_to(self.now(), Id(hand), at)?;
        self.make(act, Run::Alone)
    }

    /// Takes hold of a place someone sits at; false when none is in reach, mm.
    pub fn slide(&mut self, x: f64, y: f64, reach: f64) -> bool {
        let place = DVec2::new(x, y);
        let spot = commands::spot_at(self.now(), place, reach);
        self.sliding = spot.and_then(|spot| Some((spot.seat?, spot.at)));
        self.sliding.is_some()
    }

    /// Moves the place in hand along the edge, to where it is nearest to this
    /// one, mm.
    ///
    /// # Errors
    /// When the page refuses the drawing.
    pub fn slide_to(&mut self, x: f64, y: f64) -> Result<(), JsValue> {
        let (Some((seat, to)), Some(over)) = (&mut self.sliding, &self.sheet) else {
            return Ok(());
        };
        *to = DVec2::new(x, y);
        let stand = stand_at(&self.history.layout().table, *to);
        let at = stand.at - stand.inward * commands::BEHIND;
        over.pose(&["place-", &seat.0.to_string()].concat(), &translation(at))
    }

    /// Lets go of the place in hand; `keep` makes it one step, else it goes
    /// back.
    ///
    /// # Errors
    /// When it would leave the limits.
    pub fn slid(&mut self, keep: bool) -> Result<JsValue, JsError> {
        let Some((seat, to)) = self.sliding.take() else {
            return Ok(JsValue::UNDEFINED);
        };
        if !keep {
            // No page refuses a place.
            self.patch().ok();
            return Ok(JsValue::UNDEFINED);
        }
        let act = commands::move_seat(self.now(), seat, to)?;
        self.make(act, Run::Alone)
    }
}
