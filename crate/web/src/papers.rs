//! The papers a shoot runs from.
use planner::commands::{self, Said};
use planner::exposures::hold_of;
use planner::layout::{Id, MAX_SPARE, Source};
use planner::papers::{
    Known, Logged, Paper, Sheet, crockery, food, lists_with, pages_with, pull, running_order, steps,
};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::acts::during;
use crate::objects::object;

/// A paper by the word it is asked for with, and its name.
#[derive(Serialize)]
struct Named {
    key: &'static str,
    name: String,
    /// Whether it lies on its side.
    wide: bool,
}

const fn paper(letter: bool) -> Paper {
    if letter { Paper::Letter } else { Paper::A4 }
}

fn ids(all: Vec<u16>) -> Vec<Id> {
    all.into_iter().map(Id).collect()
}

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

    /// Every paper there is.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn sheets(&self) -> Result<JsValue, JsError> {
        let all = Sheet::ALL.map(|sheet| Named {
            key: sheet.key(),
            name: sheet.name(),
            wide: sheet.is_wide(),
        });
        object(&all)
    }

    /// The pages of a paper on A4 or, with `letter`, on US Letter: an SVG that
    /// stands alone for each; none for a paper there is not. With what was
    /// written down of exposures so far.
    ///
    /// # Errors
    /// When what was written down has no such form.
    pub fn sheet_pages(
        &self,
        key: &str,
        letter: bool,
        log: JsValue,
    ) -> Result<Vec<String>, JsError> {
        let log: Vec<Logged> = serde_wasm_bindgen::from_value(log)?;
        let known = Known {
            shelf: &self.shelf,
            logged: &log,
        };
        let made = |sheet| pages_with(self.now(), sheet, paper(letter), known);
        Ok(Sheet::of(key).map_or_else(Vec::new, made))
    }

    /// The lists on a paper: each its title, and its head and rows as text.
    ///
    /// # Errors
    /// When what was written down has no such form, or the browser refuses to
    /// make the object.
    pub fn sheet_rows(&self, key: &str, log: JsValue) -> Result<JsValue, JsError> {
        let log: Vec<Logged> = serde_wasm_bindgen::from_value(log)?;
        let sheet = Sheet::of(key);
        let known = Known {
            shelf: &self.shelf,
            logged: &log,
        };
        let all = sheet.map_or_else(Vec::new, |sheet| lists_with(self.now(), sheet, known));
        let all: Vec<_> = all
            .into_iter()
            .map(|list| (list.records(), list.title))
            .map(|(rows, title)| (title, rows))
            .collect();
        object(&all)
    }

    /// What is pulled, row by row.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn pull_list(&self) -> Result<JsValue, JsError> {
        object(&pull(self.now(), &self.shelf))
    }

    /// What is cooked and poured, row by row.
    ///
    /// # Errors
    /// When the browser refuses to make the object.
    pub fn food_list(&self) -> Result<JsValue, JsError> {
        object(&food(self.now()))
    }

    /// Has so many of the things of a row in the picture.
    ///
    /// # Errors
    /// When one that would go is locked.
    pub fn set_count(&mut self, things: Vec<u16>, count: u16) -> Result<JsValue, JsError> {
        let act = commands::set_count(self.now(), &ids(things), count.into())?;
        self.make(act, during(0))
    }

    /// Says how many of the things of a row are in reserve, during a visit to a
    /// field or 0.
    ///
    /// # Errors
    /// When the layout would leave its limits.
    pub fn set_spare(
        &mut self,
        things: Vec<u16>,
        spare: u16,
        visit: u32,
    ) -> Result<JsValue, JsError> {
        let said = Said::Spare(spare.min(MAX_SPARE as u16));
        let act = commands::say_of(self.now(), &ids(things), &said)?;
        self.make(act, during(visit))
    }

    /// Says where the things of a row come from (`own`, `hire`, `buy`,
    /// `borrow`, `client`, or nothing), and where they live.
    ///
    /// # Errors
    /// When the layout would leave its limits.
    pub fn set_stock(
        &mut self,
        things: Vec<u16>,
        source: Option<String>,
        shelf: Option<String>,
    ) -> Result<JsValue, JsError> {
        let said = match (source, shelf) {
            (_, Some(shelf)) => Said::Shelf(planner::layout::clean_text(&shelf)),
            (Some(word), None) => Said::Source(match word.as_str() {
                "own" => Some(Source::Own),
                "hire" => Some(Source::Hire),
                "buy" => Some(Source::Buy),
                "borrow" => Some(Source::Borrow),
                "client" => Some(Source::Client),
                _ => None,
            }),
            (None, None) => return Ok(JsValue::UNDEFINED),
        };
        let act = commands::say_of(self.now(), &ids(things), &said)?;
        self.make(act, during(0))
    }

    /// Says how long the food of a row looks right on the set, minutes, as
    /// usual for 0, or what stands in for it.
    ///
    /// # Errors
    /// When one of them is locked.
    pub fn set_food(
        &mut self,
        things: Vec<u16>,
        minutes: i32,
        stand_in: Option<String>,
        visit: u32,
    ) -> Result<JsValue, JsError> {
        let said = match stand_in {
            Some(name) => Said::StandIn(planner::layout::clean_text(&name)),
            None => Said::Hold((minutes > 0).then_some(minutes)),
        };
        let act = commands::say_of(self.now(), &ids(things), &said)?;
        self.make(act, during(visit))
    }
}
