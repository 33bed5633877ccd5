//! The outline of a thing as the user gives it.
use serde::{Deserialize, Serialize};

use super::limits::{MAX_OUTLINE, MAX_SIZE};
use super::problem::ProblemKind;
use super::read::Fields;
use super::value::Point;

/// The outline of a thing seen from above, in mm.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "shape")]
pub enum Size {
    /// A circle.
    Disc {
        /// Across.
        diameter: i32,
        /// Width of the rim.
        rim: i32,
    },
    /// Four corners, perhaps rounded.
    Rect {
        /// Across.
        width: i32,
        /// Down.
        depth: i32,
        /// Radius of the corners.
        corner: i32,
        /// Width of the rim.
        rim: i32,
    },
    /// An ellipse.
    Oval {
        /// Across.
        width: i32,
        /// Down.
        depth: i32,
        /// Width of the rim.
        rim: i32,
    },
    /// A traced outline about its own centre.
    Outline {
        /// Its corners in order.
        points: Vec<Point>,
    },
}

impl Size {
    /// Width and depth before turning, mm.
    #[must_use]
    pub fn extent(&self) -> [i32; 2] {
        match self {
            Self::Disc { diameter, .. } => [*diameter, *diameter],
            Self::Rect { width, depth, .. } | Self::Oval { width, depth, .. } => [*width, *depth],
            Self::Outline { points } => {
                let reach = |c: fn(&Point) -> i32| {
                    points.iter().map(c).map(i32::abs).max().unwrap_or(1) * 2
                };
                [reach(|p| p.x), reach(|p| p.y)]
            }
        }
    }

    /// Width of the rim, mm.
    #[must_use]
    pub fn rim(&self) -> i32 {
        match self {
            Self::Disc { rim, .. } | Self::Rect { rim, .. } | Self::Oval { rim, .. } => *rim,
            Self::Outline { .. } => 0,
        }
    }

    /// This size with a rim no wider than this.
    #[must_use]
    pub fn with_rim_within(mut self, most: i32) -> Self {
        match &mut self {
            Self::Disc { rim, .. } | Self::Rect { rim, .. } | Self::Oval { rim, .. } => {
                *rim = (*rim).min(most);
            }
            Self::Outline { .. } => {}
        }
        self
    }

    /// This size with another width and depth; a disc takes the width. Rim and
    /// corners shrink where they no longer fit.
    #[must_use]
    pub fn resized(&self, width: i32, depth: i32) -> Self {
        let (width, depth) = (width.clamp(1, MAX_SIZE), depth.clamp(1, MAX_SIZE));
        match self {
            Self::Disc { rim, .. } => Self::Disc {
                diameter: width,
                rim: (*rim).min(width / 2),
            },
            Self::Rect { corner, rim, .. } => Self::Rect {
                width,
                depth,
                corner: (*corner).min(width.min(depth) / 2),
                rim: (*rim).min(width.min(depth) / 2),
            },
            Self::Oval { rim, .. } => Self::Oval {
                width,
                depth,
                rim: (*rim).min(width.min(depth) / 2),
            },
            Self::Outline { points } => {
                let [w, d] = self.extent().map(f64::from);
                let (kx, ky) = (f64::from(width) / w.max(1.0), f64::from(depth) / d.max(1.0));
                let scaled = |p: &Point| {
                    Point::nearest(glam::DVec2::new(f64::from(p.x) * kx, f64::from(p.y) * ky))
                };
                Self::Outline {
                    points: points.iter().map(scaled).collect(),
                }
            }
        }
    }

    pub(super) fn read(f: &mut Fields<'_>) -> Option<Self> {
        #[derive(Deserialize)]
        #[serde(rename_all = "kebab-case")]
        enum Shape {
            Disc,
            Rect,
            Oval,
            Outline,
        }
        let side = |f: &mut Fields<'_>, key: &str| {
            let got = f.int(key, 1..=MAX_SIZE);
            f.required(key, got, 1)
        };
        let shape = f.choice::<Shape>("shape");
        let Some(shape) = shape else {
            f.required("shape", None, ());
            return None;
        };
        Some(match shape {
            Shape::Disc => {
                let diameter = side(f, "diameter");
                Self::Disc {
                    diameter,
                    rim: f.int("rim", 0..=diameter / 2).unwrap_or(0),
                }
            }
            Shape::Rect => {
                let (width, depth) = (side(f, "width"), side(f, "depth"));
                let least = width.min(depth) / 2;
                let corner = f.int("corner", 0..=least).unwrap_or(0);
                Self::Rect {
                    width,
                    depth,
                    corner,
                    rim: f.int("rim", 0..=least).unwrap_or(0),
                }
            }
            Shape::Oval => {
                let (width, depth) = (side(f, "width"), side(f, "depth"));
                let least = width.min(depth) / 2;
                Self::Oval {
                    width,
                    depth,
                    rim: f.int("rim", 0..=least).unwrap_or(0),
                }
            }
            Shape::Outline => {
                let points = f.points("points", MAX_OUTLINE);
                if points.len() < 3 {
                    let found = format!("{} points", points.len());
                    f.bad(ProblemKind::Value, "points", &found, "at least 3 points");
                    return None;
                }
                Self::Outline { points }
            }
        })
    }
}
