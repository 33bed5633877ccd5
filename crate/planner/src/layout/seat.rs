//! Where someone sits or stands at the table.
use serde::Serialize;

use super::read::Fields;
use super::value::{Extra, Id, Point};

/// A place at the table's edge.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Seat {
    /// Its number in the layout.
    pub id: Id,
    /// Where; the nearest place on the edge counts, so that it goes along when
    /// the table changes.
    pub at: Point,
    /// Whether one stands there instead of sitting.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub standing: bool,
    /// The place setting laid before it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub setting: Option<Id>,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Seat {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let (id, at) = (f.id("id"), f.point("at"));
        Self {
            id: f.required("id", id, Id(0)),
            at: f.required("at", at, Point::default()),
            standing: f.flag("standing"),
            setting: f.id("setting"),
            extra: f.extra(),
        }
    }
}
