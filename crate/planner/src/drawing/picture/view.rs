//! How a layout is drawn, and one group of the drawing.
use glam::DVec2;
use svg::node::element::Group;

use crate::drawing::path::{short, tenth};
use crate::layout::{Hand, Id};
use crate::optics;
use crate::readings::Mark;

/// Whose hands are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    /// Those of every exposure together.
    All,
    /// Nobody's.
    None,
    /// Those of one exposure.
    Exposure(Id),
}

impl Shown {
    /// Whether a hand is drawn.
    pub(super) fn has(self, hand: &Hand) -> bool {
        match self {
            Self::All => true,
            Self::None => false,
            Self::Exposure(id) => hand.exposure == id,
        }
    }
}

/// Which crops are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trims {
    /// Every one.
    All,
    /// None.
    None,
    /// One of them.
    One(Id),
}

impl Trims {
    /// Whether the crop of this number is drawn.
    pub(super) fn has(self, crop: Id) -> bool {
        self == Self::All || self == Self::One(crop)
    }
}

/// How a layout is drawn.
#[derive(Clone, Debug)]
pub struct View {
    /// Mm on the table to a pixel; lines and tags keep their size in pixels.
    pub per_pixel: f64,
    /// Whose hands.
    pub shown: Shown,
    /// Where the things are seen from.
    pub eye: optics::View,
    /// Marks of findings, as they lie in the picture from there.
    pub marks: Vec<Mark>,
    /// Whether the frame, what lies past it and the marks are drawn.
    pub frame: bool,
    /// Which crops are drawn.
    pub crops: Trims,
    /// Whether dishes and hands wear their tags.
    pub tags: bool,
    /// Whether arm, stand and photographer are drawn.
    pub rig: bool,
    /// Whether the light is drawn where it stands, with the ring of its hours.
    pub lit: bool,
    /// Whether grain and weave are drawn in full.
    pub fine: bool,
    /// The paper the drawing lies on, as a paint.
    pub paper: &'static str,
    /// The ink on that paper, as a paint.
    pub ink: &'static str,
}

/// Paper and ink of a drawing that stands alone.
pub(super) const PAPER: &str = "#f3ecdd";
pub(super) const INKED: &str = "#1f1915";

impl Default for View {
    fn default() -> Self {
        Self {
            per_pixel: 3.0,
            shown: Shown::All,
            eye: optics::View::Above,
            marks: Vec::new(),
            frame: true,
            crops: Trims::None,
            tags: true,
            rig: false,
            lit: false,
            fine: false,
            paper: PAPER,
            ink: INKED,
        }
    }
}

/// One group of the drawing.
pub struct Keyed {
    /// What it is: `surface`, `item-7`, `tags`.
    pub key: String,
    /// Its nodes.
    pub group: Group,
    /// Where it is put, mm, when it is drawn about its own centre.
    pub at: Option<DVec2>,
}

impl Keyed {
    /// The group where it belongs.
    #[must_use]
    pub fn placed(self) -> Group {
        match self.at {
            Some(at) => Group::new()
                .set("transform", translation(at))
                .add(self.group),
            None => self.group,
        }
    }
}

/// A `transform` that enlarges about the origin.
pub(super) fn enlarged(scale: f64) -> String {
    let mut text = String::from(" scale(");
    text.push_str(&short(scale));
    text.push(')');
    text
}

/// A `transform` that turns about a place by degrees, then moves by `by` mm.
#[must_use]
pub fn carried(by: DVec2, degrees: f64, about: DVec2) -> String {
    let mut text = translation(by);
    text.push_str(" rotate(");
    text.push_str(&short(degrees));
    for n in about.to_array() {
        text.push(' ');
        text.push_str(&tenth(n));
    }
    text.push(')');
    text
}

/// A `transform` that moves by `by` mm.
#[must_use]
pub fn translation(by: DVec2) -> String {
    let mut text = String::from("translate(");
    text.push_str(&tenth(by.x));
    text.push(' ');
    text.push_str(&tenth(by.y));
    text.push(')');
    text
}
