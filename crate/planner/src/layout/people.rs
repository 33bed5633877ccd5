//! People and their hands.
use serde::{Deserialize, Serialize};

use super::limits::{MAX_HEIGHT, MAX_STATURE, MIN_STATURE};
use super::read::Fields;
use super::value::{Extra, Id, Point, Srgb};

/// How far a sleeve comes down the arm.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum SleeveLength {
    /// No sleeve in the picture.
    Bare,
    /// Rolled up to the elbow: the forearm shows.
    Rolled,
    /// Down to the wrist.
    #[default]
    Long,
}

/// A person's sleeve.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Sleeve {
    /// Its colour.
    pub colour: Srgb,
    /// How far it comes down.
    pub length: SleeveLength,
}

/// Someone whose hands are in the picture.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Person {
    /// Their number in the layout; the letter is their place in the list.
    pub id: Id,
    /// Skin tone.
    pub skin: Srgb,
    /// Sleeve.
    pub sleeve: Sleeve,
    /// Where they sit or stand, unless a hand says otherwise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub seat: Option<Id>,
    /// How tall they are, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stature: Option<i32>,
    /// The hand they write with.
    #[serde(skip_serializing_if = "Side::is_right")]
    pub handed: Side,
    /// The hand that wears a ring.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ring: Option<Side>,
    /// Painted nails.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nails: Option<Srgb>,
    /// Whether they agreed in writing to be photographed.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub released: bool,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Person {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let id = f.id("id");
        let sleeve = f.object("sleeve", |s| Sleeve {
            colour: s.colour("colour").unwrap_or(Sleeve::default().colour),
            length: s.choice("length").unwrap_or_default(),
        });
        Self {
            id: f.required("id", id, Id(0)),
            skin: f.colour("skin").unwrap_or(Srgb::hex(0x00c0_8f6f)),
            sleeve: sleeve.unwrap_or_default(),
            seat: f.id("seat"),
            stature: f.int("stature", MIN_STATURE..=MAX_STATURE),
            handed: f.choice("handed").unwrap_or_default(),
            ring: f.choice("ring"),
            nails: f.colour("nails"),
            released: f.flag("released"),
            extra: f.extra(),
        }
    }
}

impl Default for Sleeve {
    fn default() -> Self {
        Self {
            colour: Srgb::hex(0x0090_9aa0),
            length: SleeveLength::Long,
        }
    }
}

/// Left or right.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Side {
    /// The person's left hand.
    Left,
    /// The person's right hand.
    #[default]
    Right,
}

impl Side {
    #[expect(clippy::trivially_copy_pass_by_ref, reason = "serde gives a reference")]
    fn is_right(&self) -> bool {
        *self == Self::Right
    }
}

/// Which way the palm looks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Palm {
    /// The back of the hand is seen.
    #[default]
    Down,
    /// The palm is seen.
    Up,
}

/// What a hand does.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Action {
    /// Tears bread, with the other hand.
    Tear,
    /// Squeezes fruit.
    Squeeze,
    /// Pours.
    Pour,
    /// Sprinkles.
    Sprinkle,
    /// Spoons or serves.
    Spoon,
    /// Holds a dish.
    Hold,
    /// Reaches for something.
    #[default]
    Reach,
    /// Rests on the table.
    Rest,
    /// Cuts, with a knife.
    Cut,
    /// Passes a dish on.
    Pass,
    /// Sets a dish down.
    Place,
    /// Lifts a dish.
    Lift,
}

impl Action {
    /// All of them, in the order of the link's list.
    pub const ALL: [Self; 12] = [
        Self::Tear,
        Self::Squeeze,
        Self::Pour,
        Self::Sprinkle,
        Self::Spoon,
        Self::Hold,
        Self::Reach,
        Self::Rest,
        Self::Cut,
        Self::Pass,
        Self::Place,
        Self::Lift,
    ];
}

/// One hand in the picture.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Hand {
    /// Its number in the layout.
    pub id: Id,
    /// Whose it is.
    pub person: Id,
    /// The seat it comes from, when that is not the person's own: one person
    /// may play several sitters, one exposure after another.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub seat: Option<Id>,
    /// Left or right.
    pub side: Side,
    /// The other hand of the same action, when there are two.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pair: Option<Id>,
    /// What it does.
    pub action: Action,
    /// Where the arm comes into the frame; the nearest place on its edge.
    pub entry: Point,
    /// Where the fingertips are.
    pub target: Point,
    /// Fingertips above the table, mm.
    pub height: i32,
    /// Which way the palm looks.
    pub palm: Palm,
    /// The item it holds.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub holds: Option<Id>,
    /// The exposure it is shot in.
    pub exposure: Id,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Hand {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let (id, person, exposure) = (f.id("id"), f.id("person"), f.id("exposure"));
        let (entry, target) = (f.point("entry"), f.point("target"));
        Self {
            id: f.required("id", id, Id(0)),
            person: f.required("person", person, Id(0)),
            seat: f.id("seat"),
            side: f.choice("side").unwrap_or_default(),
            pair: f.id("pair"),
            action: f.choice("action").unwrap_or_default(),
            entry: f.required("entry", entry, Point::default()),
            target: f.required("target", target, Point::default()),
            height: f.int("height", 0..=MAX_HEIGHT).unwrap_or(100),
            palm: f.choice("palm").unwrap_or_default(),
            holds: f.id("holds"),
            exposure: f.required("exposure", exposure, Id(0)),
            extra: f.extra(),
        }
    }
}
