//! Exposures: frames shot one after another and combined later, and how each
//! thing is in each of them.
use serde::{Deserialize, Serialize};

use super::item::Parts;
use super::limits::{MAX_ITEMS, MAX_MINUTES};
use super::read::Fields;
use super::value::{Extra, Id, Point, Turn};

/// What an exposure is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum ExposureKind {
    /// The spread without hands.
    Clean,
    /// With hands.
    #[default]
    Hands,
    /// A grey card or colour target lies in the light.
    Card,
    /// The bare table.
    Empty,
    /// Steam against dark.
    Steam,
    /// The light blocked or moved so that nothing mirrors it.
    NoGlare,
    /// One more than is planned for, in case.
    Insurance,
}

/// How long a clean exposure takes where nothing else is told, minutes. Our
/// choice.
const CLEAN_MINUTES: i32 = 3;
/// How long one with hands, or of steam that comes and goes, takes with all its
/// takes, minutes. Our choice.
const HANDS_MINUTES: i32 = 10;

impl ExposureKind {
    /// How long an exposure of this kind usually takes, minutes.
    #[must_use]
    pub const fn usual_minutes(self) -> i32 {
        match self {
            Self::Hands | Self::Steam => HANDS_MINUTES,
            Self::Clean | Self::Card | Self::Empty | Self::NoGlare | Self::Insurance => {
                CLEAN_MINUTES
            }
        }
    }

    /// Whether the food is on the table in it.
    #[must_use]
    pub const fn shows_food(self) -> bool {
        !matches!(self, Self::Card | Self::Empty)
    }
}

/// How a thing is in one exposure.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum As {
    /// As it is set.
    #[default]
    #[serde(rename = "as-set")]
    Set,
    /// Not there.
    Absent,
    /// Somewhere else.
    Moved,
    /// Its food is another: cut, poured over, half eaten.
    Changed,
}

/// The state of one thing in one exposure.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct State {
    /// Which thing; one that is gone from the layout is told of, not refused.
    pub item: Id,
    /// How it is.
    #[serde(rename = "state")]
    pub is: As,
    /// Where it is, when moved.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at: Option<Point>,
    /// How it is turned, when moved.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub turn: Option<Turn>,
    /// Its colours, when changed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub parts: Option<Parts>,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl State {
    fn read(f: &mut Fields<'_>) -> Self {
        let item = f.id("item");
        Self {
            item: f.required("item", item, Id(0)),
            is: f.choice("state").unwrap_or_default(),
            at: f.point("at"),
            turn: f.turn("turn"),
            parts: f.object("parts", Parts::read),
            extra: f.extra(),
        }
    }
}

/// One frame shot to be combined later.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Exposure {
    /// Its number in the layout; hand exposures are counted in list order.
    pub id: Id,
    /// What it is for.
    pub kind: ExposureKind,
    /// How long it takes with all its takes, minutes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub minutes: Option<i32>,
    /// Every thing that is not as it is set.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub states: Vec<State>,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Exposure {
    /// An exposure of this kind with everything as it is set.
    #[must_use]
    pub const fn new(id: Id, kind: ExposureKind) -> Self {
        Self {
            id,
            kind,
            minutes: None,
            states: Vec::new(),
            extra: Extra::new(),
        }
    }

    /// How long it takes with all its takes, minutes: as told, or as usual.
    #[must_use]
    pub fn takes(&self) -> i32 {
        self.minutes.unwrap_or(self.kind.usual_minutes())
    }

    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let id = f.id("id");
        Self {
            id: f.required("id", id, Id(0)),
            kind: f.choice("kind").unwrap_or_default(),
            minutes: f.int("minutes", 1..=MAX_MINUTES),
            states: f.list("states", MAX_ITEMS, State::read),
            extra: f.extra(),
        }
    }
}
