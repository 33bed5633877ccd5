//! Starting arrangements, one at a time, so that whoever asks can stop between
//! them.
use planner::arrangements::{Character, arrangement, is_arrangeable};
use planner::commands::{self, TableWish};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::objects::{asked, object};

/// One arrangement as the page shows it.
#[derive(Serialize)]
struct Arranged {
    name: String,
    /// The layout so arranged, as a file; nothing where there is no room.
    file: Option<String>,
    /// Whether there is another one to ask for.
    more: bool,
}

#[wasm_bindgen]
impl Planner {
    /// Whether the open table can be arranged.
    #[must_use]
    pub fn is_arrangeable(&self) -> bool {
        is_arrangeable(self.now())
    }

    /// Arrangement number `n` of the table wished for, or of the open one where
    /// nothing is.
    ///
    /// # Errors
    /// When a dish or board of the wish is not known.
    pub fn arranged(&self, wish: JsValue, n: usize) -> Result<JsValue, JsError> {
        let Some(character) = Character::ALL.get(n).copied() else {
            return Ok(JsValue::UNDEFINED);
        };
        let found = if wish.is_undefined() {
            arrangement(self.now(), character)
        } else {
            let wish: TableWish = asked(wish)?;
            arrangement(&commands::lay(&wish)?, character)
        };
        object(&Arranged {
            name: character.name(),
            file: found.map(|found| found.layout.to_json()),
            more: n + 1 < Character::ALL.len(),
        })
    }
}
