//! The SVG a drawing of ours is written in, as a small tree of resolved nodes.
//!
//! Read strictly: an element, an attribute or a value that would be left out of
//! the page is a fault, so that no paper ever lacks what its drawing has.
mod read;
mod style;

pub(crate) use read::read;
pub(crate) use style::{Anchor, Ink, Style};

/// Why an SVG is not understood.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum Fault {
    /// It is no XML.
    #[error("the drawing is no XML: {0}")]
    Markup(String),
    /// It says not how large it is.
    #[error("the drawing has no size")]
    Size,
    /// An element that is not drawn.
    #[error("<{0}> is not drawn")]
    Element(String),
    /// An attribute that is not drawn.
    #[error("{attribute} of <{element}> is not drawn")]
    Attribute {
        /// Whose it is.
        element: String,
        /// Its name.
        attribute: String,
    },
    /// A value that cannot be read.
    #[error("{attribute} of <{element}> is not read: {value}")]
    Value {
        /// Whose it is.
        element: String,
        /// Its name.
        attribute: String,
        /// What it is.
        value: String,
    },
}

/// `[a b c d e f]` as SVG and PDF write it.
pub(crate) type Matrix = [f64; 6];

/// Changes nothing.
pub(crate) const SAME: Matrix = [1.0, 0.0, 0.0, 1.0, 0.0, 0.0];

/// A stroke of the pen along an outline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Step {
    Move([f64; 2]),
    Line([f64; 2]),
    Curve([[f64; 2]; 3]),
    Close,
}

/// What is drawn.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Node {
    /// Several as one.
    Group(Group),
    /// An outline, filled and stroked.
    Shape { path: Vec<Step>, style: Style },
    /// A line of words.
    Text {
        at: [f64; 2],
        words: String,
        /// How long the line is made by stretching its letters.
        length: Option<f64>,
        style: Style,
    },
}

/// Several as one.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Group {
    pub(crate) matrix: Matrix,
    pub(crate) opacity: f64,
    /// What it is cut to.
    pub(crate) clip: Option<Vec<Step>>,
    pub(crate) nodes: Vec<Node>,
}

/// A drawing.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Drawing {
    /// Breadth and height on paper, points of 1/72 inch.
    pub(crate) size: [f64; 2],
    /// Left, top, breadth and height of what it shows, in units of its own.
    pub(crate) view: [f64; 4],
    pub(crate) nodes: Vec<Node>,
}
