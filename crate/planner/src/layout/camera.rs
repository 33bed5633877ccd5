//! The camera, the room above it and the one light.
use serde::{Deserialize, Serialize};

use super::limits::{MAX_PLACE, MAX_SIZE};
use super::read::Fields;
use super::value::{Extra, Turn};

/// The size of the camera's sensor.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Format {
    /// 36 × 24 mm.
    #[default]
    FullFrame,
    /// 23.5 × 15.6 mm.
    ApsC,
    /// 22.3 × 14.9 mm.
    ApsCSmall,
    /// 17.3 × 13 mm.
    FourThirds,
    /// 43.8 × 32.9 mm.
    Medium,
}

/// The camera.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Camera {
    /// Sensor size.
    pub format: Format,
    /// Focal length, mm.
    pub focal: i32,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Camera {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        Self {
            format: f.choice("format").unwrap_or_default(),
            focal: f.int("focal", 4..=600).unwrap_or(50),
            extra: f.extra(),
        }
    }
}

impl Default for Camera {
    fn default() -> Self {
        Self {
            format: Format::FullFrame,
            focal: 50,
            extra: Extra::new(),
        }
    }
}

/// What holds the camera, and the room it stands in.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Rig {
    /// Ceiling above the floor, mm.
    pub ceiling: i32,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

impl Rig {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        Self {
            ceiling: f
                .int("ceiling", 1_000..=MAX_PLACE)
                .unwrap_or(Self::default().ceiling),
            extra: f.extra(),
        }
    }
}

impl Default for Rig {
    fn default() -> Self {
        Self {
            ceiling: 2_600,
            extra: Extra::new(),
        }
    }
}

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
