//! Two layouts beside each other, and both in one link.
use planner::compare::{Change, are_versions, changes};
use planner::layout::open;
use planner::link::{link_two, public, unlink};
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

/// The other version in a link, and what both are called.
#[derive(Serialize)]
struct Offered {
    names: [String; 2],
    file: String,
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

    /// What a link to this layout and to the other version in `text` carries
    /// after its `#`, without what is private.
    ///
    /// # Errors
    /// Every problem of the text, in one message.
    pub fn link_two(&self, name: &str, other_name: &str, text: &str) -> Result<String, JsError> {
        let other = open(text).map_err(|problems| spoken(&problems))?;
        let made = link_two(&public(self.now()), &public(&other), [name, other_name]);
        Ok(made.fragment)
    }

    /// The other version a link carries after its `#`; nothing when it carries
    /// one alone.
    ///
    /// # Errors
    /// When it holds no layout.
    pub fn other_in(&self, payload: &str) -> Result<JsValue, JsError> {
        let read = unlink(payload).map_err(|problems| spoken(&problems))?;
        read.other.map_or(Ok(JsValue::UNDEFINED), |other| {
            object(&Offered {
                names: other.names,
                file: other.layout.to_json(),
            })
        })
    }
}
