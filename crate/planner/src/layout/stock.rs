//! What a thing takes to have there on the day: how many in reserve, whose it
//! is, and where it lives.
use serde::{Deserialize, Serialize};

use super::limits::MAX_SPARE;
use super::read::Fields;

/// Where a thing comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Source {
    /// It is there already.
    Own,
    /// It is hired.
    Hire,
    /// It is bought.
    Buy,
    /// Somebody lends it.
    Borrow,
    /// The client brings it.
    Client,
}

/// What is written beside a thing on the lists.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Stock {
    /// How many are in reserve for all of this sort; a copy of the thing says
    /// the same again.
    #[serde(skip_serializing_if = "is_none_spare")]
    pub spare: u16,
    /// Where it comes from; nothing while nobody has said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub source: Option<Source>,
    /// Where it lives: a shelf, a box.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub shelf: String,
}

const fn is_none_spare(spare: &u16) -> bool {
    *spare == 0
}

impl Stock {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        Self {
            spare: f.int("spare", 0..=MAX_SPARE).unwrap_or(0) as u16,
            source: f.choice("source"),
            shelf: f.name("shelf"),
        }
    }
}
