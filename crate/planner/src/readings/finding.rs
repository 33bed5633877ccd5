//! The one shape all findings have.
use glam::DVec2;
use serde::{Serialize, Serializer};

use super::rules::Rule;
use crate::edit::Edit;
use crate::layout::{Id, Srgb};

/// What a finding says of its thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum State {
    /// Arithmetic or physics forbids it.
    WontWork,
    /// Worth another look.
    LookAgain,
    /// All is well.
    Holds,
    /// The user means it so.
    Intended,
}

/// What a finding rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Grade {
    /// Physics or arithmetic.
    Physics,
    /// A published measure.
    PublishedMeasure,
    /// Trade practice.
    TradePractice,
    /// Our choice.
    OurChoice,
}

/// Something drawn on the picture for a finding. Places in mm on the table.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "mark")]
pub enum Mark {
    /// An edge that is lost, along the outline itself.
    LostEdge {
        /// The run of outline.
        #[serde(serialize_with = "points")]
        line: Vec<DVec2>,
    },
    /// A gap, from one outline to the other.
    Gap {
        /// One end.
        #[serde(serialize_with = "point")]
        from: DVec2,
        /// The other end.
        #[serde(serialize_with = "point")]
        to: DVec2,
        /// Its length as said.
        label: String,
    },
    /// An area that runs over an edge.
    Overrun {
        /// Its outline.
        #[serde(serialize_with = "points")]
        outline: Vec<DVec2>,
        /// How far, as said.
        label: String,
    },
    /// An area that is free or kept free, hatched.
    Area {
        /// Its outline.
        #[serde(serialize_with = "points")]
        outline: Vec<DVec2>,
        /// How much it is, as said.
        label: String,
    },
    /// A square of a tone, numbered.
    Swatch {
        /// Its middle.
        #[serde(serialize_with = "point")]
        at: DVec2,
        /// Its side.
        side: f64,
        /// The tone.
        tone: Srgb,
        /// Its number.
        label: String,
    },
    /// An arrow.
    Arrow {
        /// Its tail.
        #[serde(serialize_with = "point")]
        from: DVec2,
        /// Its head.
        #[serde(serialize_with = "point")]
        to: DVec2,
    },
    /// A line of equal light.
    StopLine {
        /// The line.
        #[serde(serialize_with = "points")]
        line: Vec<DVec2>,
        /// Stops from the hero's light, as said; empty for a further line of
        /// the same light.
        label: String,
    },
    /// How far a shadow reaches.
    Tip {
        /// What throws it.
        #[serde(serialize_with = "point")]
        from: DVec2,
        /// The tip.
        #[serde(serialize_with = "point")]
        to: DVec2,
    },
    /// A triangle.
    Triangle {
        /// Its corners.
        #[serde(serialize_with = "points")]
        corners: Vec<DVec2>,
    },
    /// A ring round a thing.
    Ring {
        /// Its centre.
        #[serde(serialize_with = "point")]
        at: DVec2,
        /// Its radius.
        radius: f64,
    },
    /// A name or a few words at a place, centred on it and drawn small beside
    /// the mark it belongs to: a corner of a triangle, the joint a crop cuts.
    Label {
        /// Its place.
        #[serde(serialize_with = "point")]
        at: DVec2,
        /// What is written.
        text: String,
    },
    /// What a shining surface mirrors: a pale, hatched patch.
    Glare {
        /// Its outline.
        #[serde(serialize_with = "points")]
        outline: Vec<DVec2>,
    },
    /// What an exposure adds to the combined picture: one ring of it.
    Added {
        /// The ring; a hole in what another ring encloses is one too.
        #[serde(serialize_with = "points")]
        outline: Vec<DVec2>,
        /// The exposure's place among those with hands, from 0, by which its
        /// lines and hatching are told from the others'.
        exposure: u8,
        /// Whether only its shadow falls there.
        shadow: bool,
        /// The exposure's number, on one ring of it.
        label: String,
    },
    /// Where a thing would be if a proposal were accepted: its outline.
    Ghost {
        /// Its outline.
        #[serde(serialize_with = "points")]
        outline: Vec<DVec2>,
    },
    /// Things that read as one group: a soft line round them all, neither
    /// hatched nor ticked, for nothing is wrong with it.
    Group {
        /// The line round them, convex.
        #[serde(serialize_with = "points")]
        outline: Vec<DVec2>,
    },
}

impl Mark {
    /// The mark with every point of it carried.
    pub(super) fn carried(&self, carry: &dyn Fn(DVec2) -> DVec2) -> Self {
        let mut mark = self.clone();
        match &mut mark {
            // These lie on the table as it is.
            Self::StopLine { .. } | Self::Tip { .. } | Self::Added { .. } => {}
            Self::LostEdge { line: points }
            | Self::Overrun {
                outline: points, ..
            }
            | Self::Area {
                outline: points, ..
            }
            | Self::Triangle { corners: points }
            | Self::Glare { outline: points }
            | Self::Ghost { outline: points }
            | Self::Group { outline: points } => points.iter_mut().for_each(|p| *p = carry(*p)),
            Self::Gap { from, to, .. } | Self::Arrow { from, to } => {
                (*from, *to) = (carry(*from), carry(*to));
            }
            Self::Swatch { at, .. } | Self::Ring { at, .. } | Self::Label { at, .. } => {
                *at = carry(*at);
            }
        }
        mark
    }
}

fn point<S: Serializer>(p: &DVec2, s: S) -> Result<S::Ok, S::Error> {
    p.to_array().serialize(s)
}

fn points<S: Serializer>(line: &[DVec2], s: S) -> Result<S::Ok, S::Error> {
    s.collect_seq(line.iter().map(|p| p.to_array()))
}

/// An edit that helps, and the figure it leads to.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Remedy {
    /// What to do, as said.
    pub act: String,
    /// What it leads to, as said: "71% to 38%".
    pub predicted: String,
    /// The figure after, in the finding's own unit.
    pub after: f64,
    /// What changes.
    pub edit: Edit,
}

/// One thing a reading has to say.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Finding {
    /// Reading and objects: the same cause keeps its key while it is edited.
    pub key: String,
    /// Which reading.
    pub reading: &'static str,
    /// What it says.
    pub state: State,
    /// What it costs if found on the day: 1 cannot be shot or delivered, 2
    /// hero, hands or headline spoiled, 3 retouching hours.
    pub rank: u8,
    /// Its figure; the unit is the reading's.
    pub figure: f64,
    /// The objects it is about, the chief one first.
    pub about: Vec<Id>,
    /// The sentence.
    pub sentence: String,
    /// How it is worked out.
    pub working: Vec<String>,
    /// What it rests on.
    pub grade: Grade,
    /// Whether it is a matter of taste, silent until asked.
    pub taste: bool,
    /// What is drawn.
    pub marks: Vec<Mark>,
    /// What would help.
    pub remedy: Option<Remedy>,
    /// The thresholds it was judged by.
    #[serde(skip)]
    pub rule: &'static Rule,
}

impl Finding {
    /// A finding by a rule, with nothing drawn and no remedy yet.
    pub(super) fn by(
        rule: &'static Rule,
        key: String,
        (state, rank): (State, u8),
        figure: f64,
        about: Vec<Id>,
    ) -> Self {
        Self {
            key,
            reading: rule.reading,
            state,
            rank,
            figure,
            about,
            sentence: String::new(),
            working: Vec::new(),
            grade: rule.grade,
            taste: rule.taste,
            marks: Vec::new(),
            remedy: None,
            rule,
        }
    }

    /// Whether it asks for another look and is no matter of taste.
    #[must_use]
    pub fn is_pressing(&self) -> bool {
        !self.taste && matches!(self.state, State::WontWork | State::LookAgain)
    }

    /// How much it costs, larger being worse, in the unit of its figure.
    #[must_use]
    pub fn cost(&self) -> f64 {
        if self.rule.falls {
            -self.figure
        } else {
            self.figure
        }
    }
}
