//! One thing on the table: a vessel, a board, a glass, or food.
use serde::{Deserialize, Serialize};

use super::limits::{MAX_HEIGHT, MAX_MINUTES};
use super::problem::ProblemKind;
use super::read::Fields;
use super::size::Size;
use super::stock::Stock;
use super::value::{Extra, Id, Point, Srgb, Turn};

/// How a thing shines.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Finish {
    /// No shine.
    #[default]
    Matt,
    /// A broad shine.
    Satin,
    /// Mirrors.
    Gloss,
    /// Glass.
    Clear,
    /// A level liquid.
    Liquid,
}

/// What a thing does in the picture.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Role {
    /// The picture's main dish.
    Hero,
    /// Another main dish.
    Support,
    /// A small bright thing.
    Accent,
    /// Everything else.
    #[default]
    Filler,
}

/// Which face of a food is up.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Face {
    /// It has no faces, or the usual one is up.
    #[default]
    Usual,
    /// The crust.
    Crust,
    /// The cut side.
    Cut,
    /// Opened.
    Open,
    /// Closed.
    Closed,
}

/// Where a colour comes from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Origin {
    /// The catalogue's guess.
    #[default]
    Guess,
    /// Read off a photo.
    Photo,
    /// Measured with an instrument.
    Measured,
}

impl Origin {
    /// Whether nobody has looked at the thing itself.
    #[must_use]
    pub fn is_guess(&self) -> bool {
        *self == Self::Guess
    }
}

/// One tone of a part and how much of it there is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Tone {
    /// The colour.
    pub srgb: Srgb,
    /// Its share of the part, percent.
    pub share: u8,
    /// Where it comes from.
    pub origin: Origin,
}

/// The colours of one part: one to three tones whose shares make 100.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Part {
    /// The tones.
    pub colours: Vec<Tone>,
}

impl Part {
    /// A part of one guessed colour.
    #[must_use]
    pub fn plain(srgb: Srgb) -> Self {
        Self {
            colours: vec![Tone {
                srgb,
                share: 100,
                origin: Origin::Guess,
            }],
        }
    }

    fn read(f: &mut Fields<'_>) -> Option<Self> {
        let colours = f.list("colours", 3, |t| {
            let srgb = t.colour("srgb");
            Tone {
                srgb: t.required("srgb", srgb, Srgb::default()),
                share: t.int("share", 1..=100).unwrap_or(100) as u8,
                origin: t.choice("origin").unwrap_or_default(),
            }
        });
        let sum: u32 = colours.iter().map(|t| u32::from(t.share)).sum();
        if colours.is_empty() || sum != 100 {
            let found = format!("{} colours, shares {sum}", colours.len());
            f.bad(
                ProblemKind::Value,
                "colours",
                &found,
                "1 to 3 colours whose shares make 100",
            );
            return None;
        }
        Some(Self { colours })
    }
}

/// The visible parts of a thing. A vessel has a rim and perhaps a well; food
/// has its food tones.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Parts {
    /// Outside and rim.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rim: Option<Part>,
    /// Inside, where food lies.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub well: Option<Part>,
    /// The food itself.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub food: Option<Part>,
}

impl Parts {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let mut part = |key: &str| f.object(key, Part::read).flatten();
        Self {
            rim: part("rim"),
            well: part("well"),
            food: part("food"),
        }
    }

    /// Whether no part has a colour.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

/// One thing on the table.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Item {
    /// Its number in the layout.
    pub id: Id,
    /// The number printed on its tag; never reused.
    pub number: u16,
    /// The user's name for it.
    pub name: String,
    /// Id in the catalogue, which says how it is drawn.
    pub prop: String,
    /// Its centre.
    pub at: Point,
    /// Its turn.
    pub turn: Turn,
    /// Its outline.
    pub size: Size,
    /// Height above what it stands on, mm.
    pub height: i32,
    /// Its colours; an absent part takes the catalogue's.
    #[serde(skip_serializing_if = "Parts::is_empty")]
    pub parts: Parts,
    /// How it shines.
    pub finish: Finish,
    /// Which face of food is up.
    pub face: Face,
    /// What it does in the picture.
    pub role: Role,
    /// The item it lies on, when not the table or a linen; a linen says itself
    /// what it lies over.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub on: Option<Id>,
    /// The group it moves with.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub group: Option<Id>,
    /// Whether it is safe from being moved by hand or by search.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub locked: bool,
    /// How long it looks right on the set, minutes; without it, what is usual
    /// for its food.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hold_minutes: Option<i32>,
    /// What lies in its place until the real food is swapped in; empty for
    /// real food from the start.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub stand_in: String,
    /// What is written beside it on the lists.
    #[serde(flatten)]
    pub stock: Stock,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Item {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let (id, at) = (f.id("id"), f.point("at"));
        let size = f.object("size", Size::read).flatten();
        Self {
            id: f.required("id", id, Id(0)),
            number: f.int("number", 0..=60_000).unwrap_or(0) as u16,
            name: f.name("name"),
            prop: f.name("prop"),
            at: f.required("at", at, Point::default()),
            turn: f.turn("turn").unwrap_or_default(),
            size: f.required(
                "size",
                size,
                Size::Disc {
                    diameter: 1,
                    rim: 0,
                },
            ),
            height: f.int("height", 0..=MAX_HEIGHT).unwrap_or(20),
            parts: f.object("parts", Parts::read).unwrap_or_default(),
            finish: f.choice("finish").unwrap_or_default(),
            face: f.choice("face").unwrap_or_default(),
            role: f.choice("role").unwrap_or_default(),
            on: f.id("on"),
            group: f.id("group"),
            locked: f.flag("locked"),
            hold_minutes: f.int("hold_minutes", 1..=MAX_MINUTES),
            stand_in: f.name("stand_in"),
            stock: Stock::read(f),
            extra: f.extra(),
        }
    }
}
