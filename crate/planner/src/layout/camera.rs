//! The camera.
use serde::{Deserialize, Serialize};

use super::limits::{MAX_HEIGHT, MAX_LENSES, MAX_PIXELS};
use super::read::Fields;
use super::value::Extra;

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
    /// The main camera of a phone; its focal length is the one it is quoted
    /// with, of equal diagonal on 36 × 24 mm.
    Phone,
}

/// The camera.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Camera {
    /// Sensor size.
    pub format: Format,
    /// Focal length, mm.
    pub focal: i32,
    /// The f-number, in tenths: 80 is f/8.
    pub aperture: i32,
    /// Where it focuses, mm above the table; without it, where both the cloth
    /// and the tallest rim come out equally sharp.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub focus_height: Option<i32>,
    /// Pixels along the long and the short side; without it, those of the
    /// usual model of this format.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pixels: Option<[i32; 2]>,
    /// Focal lengths at hand, mm; empty when not told.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub lenses: Vec<i32>,
    /// Unknown fields.
    #[serde(flatten)]
    pub extra: Extra,
}

/// Shortest and longest focal length, mm.
const FOCAL: [i32; 2] = [4, 600];

impl Camera {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let usual = Self::default();
        let [shortest, longest] = FOCAL;
        let pixels = f.size_pair("pixels", MAX_PIXELS);
        Self {
            format: f.choice("format").unwrap_or_default(),
            focal: f.int("focal", shortest..=longest).unwrap_or(usual.focal),
            aperture: f.int("aperture", 7..=640).unwrap_or(usual.aperture),
            focus_height: f.int("focus_height", 0..=MAX_HEIGHT),
            pixels: pixels.map(|[a, b]| [a.max(b), a.min(b)]),
            lenses: f.lengths("lenses", MAX_LENSES, shortest..=longest),
            extra: f.extra(),
        }
    }
}

impl Default for Camera {
    fn default() -> Self {
        Self {
            format: Format::FullFrame,
            focal: 50,
            aperture: 80,
            focus_height: None,
            pixels: None,
            lenses: Vec::new(),
            extra: Extra::new(),
        }
    }
}
