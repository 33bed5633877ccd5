//! The table in another season, and places one prop can dress.
use planner::layout::Id;
use planner::papers::{Going, difference, going};
use planner::shelf::{Season, Wish, swap, swapped, twice};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::acts::during;
use crate::objects::object;

/// What comes of a season.
#[derive(Serialize)]
struct Plan {
    /// Food that would go.
    going: Vec<Going>,
    /// Why other food that is out of season stays, in words.
    stay: Vec<String>,
    /// The rows that change, their heading first.
    rows: Vec<Vec<String>>,
}

fn wish(food: bool, linen: bool, board: bool, keep: Vec<u16>) -> Wish {
    Wish {
        food,
        linen,
        board,
        keep: keep.into_iter().map(Id).collect(),
    }
}

#[wasm_bindgen]
impl Planner {
    /// What a season (`spring`, `summer`, `autumn`, `winter`) would change, of
    /// food, linen and board what is wished, without the things to keep;
    /// nothing for a season there is not.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn season_plan(
        &self,
        season: &str,
        food: bool,
        linen: bool,
        board: bool,
        keep: Vec<u16>,
    ) -> Result<JsValue, JsError> {
        let now = self.now();
        let Some(season) = Season::of(season) else {
            return Ok(JsValue::UNDEFINED);
        };
        let to = swapped(now, season, &wish(food, linen, board, keep));
        object(&Plan {
            going: going(now, &to.after),
            stay: to.told(now),
            rows: difference(now, &to.after).records(),
        })
    }

    /// Brings the table into that season.
    ///
    /// # Errors
    /// When something locked would change.
    pub fn season_take(
        &mut self,
        season: &str,
        food: bool,
        linen: bool,
        board: bool,
        keep: Vec<u16>,
    ) -> Result<JsValue, JsError> {
        let Some(season) = Season::of(season) else {
            return Ok(JsValue::UNDEFINED);
        };
        let act = swap(self.now(), season, &wish(food, linen, board, keep))?;
        self.make(act, during(0))
    }

    /// Pairs of places one prop can dress.
    ///
    /// # Errors
    /// When the browser refuses to make it.
    pub fn twice(&self) -> Result<JsValue, JsError> {
        object(&twice(self.now()))
    }
}
