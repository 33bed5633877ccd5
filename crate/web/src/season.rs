//! The table in another season, and places one prop can dress.
use planner::layout::Id;
use planner::papers::{Going, difference, going};
use planner::shelf::{Season, Wish, swap, swapped, twice};
use serde::{Deserialize, Serialize};
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::acts::during;
use crate::objects::{asked, object};

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

/// What the page asks of a season.
#[derive(Deserialize)]
struct Asked {
    /// `spring`, `summer`, `autumn` or `winter`.
    season: String,
    food: bool,
    linen: bool,
    board: bool,
    /// What stays as it is.
    keep: Vec<Id>,
}

impl Asked {
    /// Nothing for a season there is not.
    fn read(wish: JsValue) -> Result<Option<(Season, Wish)>, JsError> {
        let Self {
            season,
            food,
            linen,
            board,
            keep,
        } = asked(wish)?;
        let wish = Wish {
            food,
            linen,
            board,
            keep,
        };
        Ok(Season::of(&season).map(|season| (season, wish)))
    }
}

#[wasm_bindgen]
impl Planner {
    /// What a season would change, of food, linen and board what is wished,
    /// without the things to keep; nothing for a season there is not.
    ///
    /// # Errors
    /// When the wish cannot be read.
    pub fn season_plan(&self, wish: JsValue) -> Result<JsValue, JsError> {
        let now = self.now();
        let Some((season, wish)) = Asked::read(wish)? else {
            return Ok(JsValue::UNDEFINED);
        };
        let to = swapped(now, season, &wish);
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
    pub fn season_take(&mut self, wish: JsValue) -> Result<JsValue, JsError> {
        let Some((season, wish)) = Asked::read(wish)? else {
            return Ok(JsValue::UNDEFINED);
        };
        let act = swap(self.now(), season, &wish)?;
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
