//! The one light, and the cards that bounce or block it.
use serde::{Deserialize, Serialize};

use super::limits::{MAX_PLACE, MAX_SIZE};
use super::read::Fields;
use super::value::{Extra, Id, Point, Turn};

/// The outline of the light.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum LightShape {
    /// A round source.
    Disc,
    /// An upright rectangle.
    #[default]
    Window,
}

/// The one light, as a photographer sets it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Light {
    /// Where it stands, seen from the table's centre; relative to the table.
    pub clock: Turn,
    /// Level distance from the table's centre to the source's, mm.
    pub distance: i32,
    /// The source's centre above the table top, mm.
    pub height_above_table: i32,
    /// Its outline.
    pub shape: LightShape,
    /// Width, mm.
    pub width: i32,
    /// Height, mm.
    pub height: i32,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Light {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let usual = Self::default();
        let above = f.int("height_above_table", 50..=MAX_PLACE);
        Self {
            clock: f.turn("clock").unwrap_or(usual.clock),
            distance: f.int("distance", 0..=MAX_PLACE).unwrap_or(usual.distance),
            height_above_table: above.unwrap_or(usual.height_above_table),
            shape: f.choice("shape").unwrap_or_default(),
            width: f.int("width", 10..=MAX_SIZE).unwrap_or(usual.width),
            height: f.int("height", 10..=MAX_SIZE).unwrap_or(usual.height),
            extra: f.extra(),
        }
    }
}

impl Default for Light {
    fn default() -> Self {
        Self {
            clock: Turn::from_half_degrees(600),
            distance: 1_800,
            height_above_table: 1_200,
            shape: LightShape::Window,
            width: 1_200,
            height: 1_200,
            extra: Extra::new(),
        }
    }
}

/// What a card does to the light that meets it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum CardKind {
    /// Sends it back.
    #[default]
    White,
    /// Swallows it.
    Black,
}

/// A card that stands upright on or beside the table.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Card {
    /// Its number in the layout.
    pub id: Id,
    /// White or black.
    pub kind: CardKind,
    /// The middle of its foot.
    pub at: Point,
    /// Which way it faces.
    pub turn: Turn,
    /// Width, mm.
    pub width: i32,
    /// Height above the table, mm.
    pub height: i32,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Card {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let (id, at) = (f.id("id"), f.point("at"));
        Self {
            id: f.required("id", id, Id(0)),
            kind: f.choice("kind").unwrap_or_default(),
            at: f.required("at", at, Point::default()),
            turn: f.turn("turn").unwrap_or_default(),
            width: f.int("width", 10..=MAX_SIZE).unwrap_or(700),
            height: f.int("height", 10..=MAX_SIZE).unwrap_or(500),
            extra: f.extra(),
        }
    }
}
