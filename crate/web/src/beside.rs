//! Two layouts beside each other, which a worker works out.
use planner::compare::{Change, are_versions, changes};
use planner::layout::open;
use planner::readings::{Beside, Study, beside, report};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::Planner;
use crate::acts::spoken;
use crate::objects::object;

/// What changed from one layout to another, and how both read.
#[derive(Serialize)]
struct Compared {
    /// Whether they are versions of one, so that numbers mean the same.
    versions: bool,
    changes: Vec<Shown>,
    findings: Beside,
}

/// A change, and whether a client is shown it.
#[derive(Serialize)]
struct Shown {
    #[serde(flatten)]
    change: Change,
    client: bool,
}

#[wasm_bindgen]
impl Planner {
    /// What changed from the layout in `text` to the open one, and how both read.
    ///
    /// # Errors
    /// Every problem of the text, in one message.
    pub fn compared(&self, text: &str) -> Result<JsValue, JsError> {
        let before = open(text).map_err(|problems| spoken(&problems))?;
        let after = self.now();
        let versions = are_versions(&before, after);
        let [old, new] = [&before, after].map(|layout| report(&Study::new(layout), false));
        object(&Compared {
            versions,
            changes: changes(&before, after)
                .into_iter()
                .map(|change| Shown {
                    client: change.topic.is_shown_to_client(),
                    change,
                })
                .collect(),
            findings: beside(&old, &new, versions),
        })
    }
}
