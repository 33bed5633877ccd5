//! How a layout is drawn, and one group of the drawing.
use std::borrow::Cow;

use glam::DVec2;
use svg::node::element::Group;

use crate::drawing::path::{short, tenth};
use crate::exposures::{combined, in_exposure};
use crate::layout::{Hand, Id, Layout};
use crate::optics;
use crate::readings::Mark;

/// Whose hands are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    /// Those of every exposure together.
    All,
    /// Those of every exposure, as the exposures show the table where each is
    /// laid over the others through its mask guide.
    Combined,
    /// Nobody's.
    None,
    /// Those of one exposure, over the table as it is set.
    Hands(Id),
    /// Those of one exposure, over the table as it stands in it.
    Exposure(Id),
}

impl Shown {
    /// Whether a hand is drawn.
    pub(super) fn has(self, hand: &Hand) -> bool {
        match self {
            Self::All | Self::Combined => true,
            Self::None => false,
            Self::Hands(id) | Self::Exposure(id) => hand.exposure == id,
        }
    }

    /// The table it is drawn over.
    pub(super) fn table(self, layout: &Layout) -> Cow<'_, Layout> {
        match self {
            Self::Exposure(id) => Cow::Owned(in_exposure(layout, id)),
            Self::Combined => Cow::Owned(combined(layout)),
            Self::All | Self::None | Self::Hands(_) => Cow::Borrowed(layout),
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
    /// Whether remarks not yet seen to lie on it, where tags do.
    pub notes: bool,
    /// Whether arm, stand and photographer are drawn.
    pub rig: bool,
    /// Whether the places along the table's edge are drawn.
    pub places: bool,
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
            notes: false,
            rig: false,
            places: false,
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

#[cfg(test)]
mod tests {
    use super::super::tests::{keys, laid};
    use super::*;
    use crate::drawing::groups;
    use crate::layout::{Action, As, Exposure, ExposureKind, Extra, State};

    /// The bowl is held in exposure 22 and stands nowhere, the loaf is moved.
    fn told() -> Layout {
        let mut layout = laid();
        let state = |item, is| State {
            item: Id(item),
            is,
            at: (is == As::Moved).then_some(crate::layout::Point::new(900, 300)),
            turn: None,
            parts: None,
            extra: Extra::new(),
        };
        layout.exposures[1].states = vec![state(6, As::Absent), state(8, As::Moved)];
        (layout.hands[1].action, layout.hands[1].holds) = (Action::Hold, Some(Id(6)));
        layout
            .exposures
            .push(Exposure::new(Id(39), ExposureKind::Empty));
        layout
    }

    fn of(shown: Shown) -> View {
        View {
            shown,
            ..View::default()
        }
    }

    #[test]
    fn an_exposure_is_drawn_on_the_table_as_it_stands_then() {
        let layout = told();
        let then = keys(&layout, &of(Shown::Exposure(Id(22))));
        for gone in ["item-6", "item-7", "hand-23"] {
            assert!(!then.contains(&gone.into()), "{gone} of {then:?}");
        }
        assert!(then.contains(&"item-8".into()), "{then:?}");
        let loaf = |shown| {
            let all = groups(&layout, &of(shown));
            let found = all.into_iter().find(|keyed| keyed.key == "item-8");
            found.and_then(|keyed| keyed.at).expect("drawn")
        };
        assert_eq!(loaf(Shown::Exposure(Id(22))), DVec2::new(900.0, 300.0));
        assert_eq!(loaf(Shown::Hands(Id(22))), DVec2::new(1000.0, 500.0));
        let set = keys(&layout, &of(Shown::Hands(Id(22))));
        assert!(set.contains(&"item-6".into()) && !set.contains(&"hand-23".into()));
        let empty = keys(&layout, &of(Shown::Exposure(Id(39))));
        let stands = |key: &String| key.starts_with("item") || key.starts_with("linen");
        assert!(!empty.iter().any(stands), "{empty:?}");
    }

    #[test]
    fn what_is_held_is_drawn_in_the_hand_though_it_stands_nowhere() {
        let mut layout = told();
        let hand = |layout: &Layout| {
            let all = groups(layout, &of(Shown::Exposure(Id(22))));
            let found = all.into_iter().find(|keyed| keyed.key == "hand-24");
            found.expect("drawn").group.to_string()
        };
        let held = hand(&layout);
        layout.hands[1].holds = None;
        assert!(hand(&layout).len() < held.len(), "the bowl is in it");
    }
}
