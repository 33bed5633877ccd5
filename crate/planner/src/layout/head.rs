//! What stands above the picture: title, units, look, version, and what the
//! user has accepted.
use serde::{Deserialize, Serialize};

use super::limits::{MAX_NAME, MAX_REMARKS};
use super::read::Fields;
use super::remark::{Answered, Remark};
use super::value::{Extra, Id};

/// Centimetres or inches on the surface; the layout itself is in mm.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Units {
    /// Centimetres.
    #[default]
    Cm,
    /// Inches.
    In,
}

/// The tone the picture is meant to have.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Look {
    /// Dark ground on purpose.
    LowKey,
    /// Neither.
    #[default]
    Normal,
    /// Pale ground on purpose.
    HighKey,
}

/// Which version of the layout this is.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Revision {
    /// Counted up each time it is sent.
    pub number: u16,
    /// The day it was sent, `YYYY-MM-DD`, or empty.
    pub date: String,
    /// What was answered last.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub answer: Option<Answered>,
}

/// Title, notes and choices about the whole picture.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Head {
    /// The picture's title.
    pub title: String,
    /// Who it is for.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub client: String,
    /// A note that may travel with it.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// Units on the surface.
    pub units: Units,
    /// The tone it is meant to have.
    pub look: Look,
    /// Which version this is.
    pub revision: Revision,
    /// What was remarked, oldest first.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub remarks: Vec<Remark>,
    /// The next object id, so that none is reused.
    pub next_id: u16,
    /// The next printed number, so that none is reused.
    pub next_number: u16,
}

impl Head {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        Self {
            title: f.name("title"),
            client: f.name("client"),
            note: f.note("note"),
            units: f.choice("units").unwrap_or_default(),
            look: f.choice("look").unwrap_or_default(),
            revision: f
                .object("revision", |r| Revision {
                    number: r.int("number", 0..=60_000).unwrap_or(0) as u16,
                    date: r.text("date", MAX_NAME),
                    answer: r.object("answer", Answered::read),
                })
                .unwrap_or_default(),
            remarks: f.list("remarks", MAX_REMARKS, Remark::read),
            next_id: f.int("next_id", 1..=60_001).unwrap_or(1) as u16,
            next_number: f.int("next_number", 1..=60_001).unwrap_or(1) as u16,
        }
    }
}

/// Things that move together.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Group {
    /// Its number in the layout.
    pub id: Id,
    /// The user's name for it.
    pub name: String,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Group {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let id = f.id("id");
        Self {
            id: f.required("id", id, Id(0)),
            name: f.name("name"),
            extra: f.extra(),
        }
    }
}

/// A finding the user has looked at and means. It holds until the figure
/// really changes.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Accepted {
    /// Which finding: reading and objects, as the readings name it.
    pub finding: String,
    /// Its figure when it was accepted, rounded.
    pub figure: i32,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Accepted {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        Self {
            finding: f.name("finding"),
            figure: f.int("figure", -1_000_000..=1_000_000).unwrap_or(0),
            extra: f.extra(),
        }
    }
}
