//! The table, the floor under it and the camera's frame on it.
use serde::{Deserialize, Serialize};

use super::item::{Finish, Origin};
use super::limits::{MAX_HEIGHT, MAX_SIZE};
use super::read::Fields;
use super::value::{Extra, Point, Ratio, Srgb, Turn};

/// The outline of a table or board.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum TableShape {
    /// Four corners, perhaps rounded.
    #[default]
    Rect,
    /// A disc; width and depth are its diameter.
    Round,
}

/// What the table or board is made of, as the camera sees it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Surface {
    /// The user's name for it.
    pub name: String,
    /// Id in the catalogue of surfaces, which says how it is drawn.
    pub prop: String,
    /// Its colour.
    pub colour: Srgb,
    /// Where that comes from.
    #[serde(skip_serializing_if = "Origin::is_guess")]
    pub origin: Origin,
    /// How it shines.
    pub finish: Finish,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

/// The table or board the spread is laid on.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Table {
    /// Its outline.
    pub shape: TableShape,
    /// Across the picture, mm.
    pub width: i32,
    /// Down the picture, mm.
    pub depth: i32,
    /// Radius of the corners, mm.
    pub corner: i32,
    /// Top above the floor, mm.
    pub height: i32,
    /// Its surface.
    pub surface: Surface,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Table {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let shape = f.choice("shape").unwrap_or_default();
        let width = f.int("width", 100..=MAX_SIZE);
        let width = f.required("width", width, 1000);
        let depth = f.int("depth", 100..=MAX_SIZE).unwrap_or(width);
        Self {
            shape,
            width,
            depth: if shape == TableShape::Round {
                width
            } else {
                depth
            },
            corner: f.int("corner", 0..=MAX_SIZE).unwrap_or(0),
            height: f.int("height", 0..=MAX_HEIGHT).unwrap_or(750),
            surface: f
                .object("surface", Surface::read)
                .unwrap_or_else(|| Surface {
                    name: String::new(),
                    prop: "plain-board".into(),
                    colour: Srgb::hex(0x00c3_9f7b),
                    origin: Origin::Guess,
                    finish: Finish::Matt,
                    extra: Extra::new(),
                }),
            extra: f.extra(),
        }
    }

    /// The middle of the table, mm.
    #[must_use]
    pub fn centre(&self) -> Point {
        Point::new(self.width / 2, self.depth / 2)
    }
}

impl Surface {
    fn read(f: &mut Fields<'_>) -> Self {
        let colour = f.colour("colour");
        Self {
            name: f.name("name"),
            prop: f.name("prop"),
            colour: f.required("colour", colour, Srgb::hex(0x00c3_9f7b)),
            origin: f.choice("origin").unwrap_or_default(),
            finish: f.choice("finish").unwrap_or_default(),
            extra: f.extra(),
        }
    }
}

/// The floor around the table.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Floor {
    /// Its colour.
    pub colour: Srgb,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Floor {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        Self {
            colour: f.colour("colour").unwrap_or(Self::default().colour),
            extra: f.extra(),
        }
    }
}

impl Default for Floor {
    fn default() -> Self {
        Self {
            colour: Srgb::hex(0x00a7_9f92),
            extra: Extra::new(),
        }
    }
}

/// What the camera's sensor covers of the table plane.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Frame {
    /// Width to height.
    pub ratio: Ratio,
    /// Its centre; the lens looks straight down at it.
    pub at: Point,
    /// Width on the table plane, mm.
    pub width: i32,
    /// Turn of the camera; the stored places of things never change with it.
    pub turn: Turn,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Frame {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let (at, width) = (f.point("at"), f.int("width", 50..=MAX_SIZE));
        Self {
            ratio: f.ratio("ratio").unwrap_or(Ratio {
                width: 3,
                height: 2,
            }),
            at: f.required("at", at, Point::default()),
            width: f.required("width", width, 1000),
            turn: f.turn("turn").unwrap_or_default(),
            extra: f.extra(),
        }
    }

    /// Height on the table plane, mm.
    #[must_use]
    pub fn height(&self) -> f64 {
        self.ratio.height_for(f64::from(self.width))
    }
}
