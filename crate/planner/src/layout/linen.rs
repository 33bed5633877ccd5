//! Cloth on the table.
use serde::{Deserialize, Serialize};

use super::item::Origin;
use super::limits::{MAX_ITEMS, MAX_SIZE};
use super::read::Fields;
use super::stock::Stock;
use super::value::{Extra, Id, Point, Srgb, Turn};

/// What a linen is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum LinenKind {
    /// A long strip along the table.
    #[default]
    Runner,
    /// A tablecloth.
    Cloth,
    /// A place mat.
    Mat,
    /// A napkin.
    Napkin,
}

/// How a linen lies.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum LinenState {
    /// Laid out at its full size.
    #[default]
    Flat,
    /// Folded to a quarter of its width and half its depth.
    Folded,
    /// Pushed together.
    Bunched,
    /// Dropped loosely.
    Thrown,
}

/// One linen.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Linen {
    /// Its number in the layout.
    pub id: Id,
    /// The user's name for it.
    pub name: String,
    /// What it is for.
    pub kind: LinenKind,
    /// How it lies.
    pub state: LinenState,
    /// Its centre.
    pub at: Point,
    /// Full width and depth when laid flat, mm.
    pub size: [i32; 2],
    /// Its turn.
    pub turn: Turn,
    /// Its colour.
    pub colour: Srgb,
    /// Where that comes from.
    #[serde(skip_serializing_if = "Origin::is_guess")]
    pub origin: Origin,
    /// The items on the table that it lies over, with what lies on them; all
    /// others stand on it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub over: Vec<Id>,
    /// Whether it is safe from being moved by hand or by search.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub locked: bool,
    /// What is written beside it on the lists.
    #[serde(flatten)]
    pub stock: Stock,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Linen {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let (id, at) = (f.id("id"), f.point("at"));
        Self {
            id: f.required("id", id, Id(0)),
            name: f.name("name"),
            kind: f.choice("kind").unwrap_or_default(),
            state: f.choice("state").unwrap_or_default(),
            at: f.required("at", at, Point::default()),
            size: f.size_pair("size", MAX_SIZE).unwrap_or([400, 400]),
            turn: f.turn("turn").unwrap_or_default(),
            colour: f.colour("colour").unwrap_or(Srgb::hex(0x00d8_c8a5)),
            origin: f.choice("origin").unwrap_or_default(),
            over: f.ids("over", MAX_ITEMS),
            locked: f.flag("locked"),
            stock: Stock::read(f),
            extra: f.extra(),
        }
    }

    /// Width and depth as it lies, mm.
    #[must_use]
    pub fn lying(&self) -> [f64; 2] {
        let [w, d] = self.size.map(f64::from);
        match self.state {
            LinenState::Flat => [w, d],
            LinenState::Folded => [w / 4.0, d / 2.0],
            LinenState::Bunched => [w * 0.7, d * 0.6],
            LinenState::Thrown => [w * 0.75, d * 0.7],
        }
    }
}
