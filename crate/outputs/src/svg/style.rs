//! How things are painted and lettered, taken over from what holds them.
use std::str::FromStr as _;

use roxmltree::Node;
use svgtypes::{Color, Length, LengthUnit};

use super::Fault;
use crate::face::Cut;

/// What an outline is filled or stroked with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Ink {
    pub(crate) rgb: [u8; 3],
    pub(crate) opacity: f64,
}

/// A colour, or nothing.
type Paint = Option<[u8; 3]>;

/// Which part of a line of words stands at its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Anchor {
    Start,
    Middle,
    End,
}

/// How something is painted and lettered.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Style {
    fill: Paint,
    stroke: Paint,
    fill_opacity: f64,
    stroke_opacity: f64,
    pub(crate) even_odd: bool,
    pub(crate) width: f64,
    pub(crate) round_cap: bool,
    pub(crate) round_join: bool,
    pub(crate) dashes: Vec<f64>,
    /// Whether the stroke lies under the fill.
    pub(crate) stroke_first: bool,
    pub(crate) letters: f64,
    bold: bool,
    italic: bool,
    pub(crate) anchor: Anchor,
}

impl Default for Style {
    /// As SVG has it.
    fn default() -> Self {
        Self {
            fill: Some([0; 3]),
            stroke: None,
            fill_opacity: 1.0,
            stroke_opacity: 1.0,
            even_odd: false,
            width: 1.0,
            round_cap: false,
            round_join: false,
            dashes: Vec::new(),
            stroke_first: false,
            letters: 16.0,
            bold: false,
            italic: false,
            anchor: Anchor::Start,
        }
    }
}

impl Style {
    /// What it is filled with.
    pub(crate) fn fill(&self) -> Option<Ink> {
        let opacity = self.fill_opacity;
        self.fill.map(|rgb| Ink { rgb, opacity })
    }

    /// What it is stroked with.
    pub(crate) fn stroke(&self) -> Option<Ink> {
        let opacity = self.stroke_opacity;
        let seen = self.stroke.filter(|_| self.width > 0.0);
        seen.map(|rgb| Ink { rgb, opacity })
    }

    /// The cut its words are set in.
    pub(crate) const fn cut(&self) -> Cut {
        match (self.bold, self.italic) {
            (true, _) => Cut::Bold,
            (_, true) => Cut::Italic,
            _ => Cut::Regular,
        }
    }

    /// Makes both paints fainter.
    pub(crate) fn fade(&mut self, by: f64) {
        self.fill_opacity *= by;
        self.stroke_opacity *= by;
    }

    /// Takes over one attribute, if it is of the style; says whether it is.
    pub(crate) fn take(&mut self, node: Node, name: &str, value: &str) -> Result<bool, Fault> {
        let fault = || wrong(node, name, value);
        match name {
            "fill" => self.fill = paint(value).ok_or_else(fault)?,
            "stroke" => self.stroke = paint(value).ok_or_else(fault)?,
            "fill-opacity" => self.fill_opacity = number(node, name, value)?,
            "stroke-opacity" => self.stroke_opacity = number(node, name, value)?,
            "stroke-width" => self.width = number(node, name, value)?,
            "font-size" => self.letters = number(node, name, value)?,
            "fill-rule" => self.even_odd = one_of(value, "nonzero", "evenodd").ok_or_else(fault)?,
            "stroke-linecap" => {
                self.round_cap = one_of(value, "butt", "round").ok_or_else(fault)?
            }
            "stroke-linejoin" => {
                self.round_join = one_of(value, "miter", "round").ok_or_else(fault)?;
            }
            "paint-order" => {
                self.stroke_first = one_of(value, "normal", "stroke").ok_or_else(fault)?
            }
            "font-weight" => self.bold = one_of(value, "normal", "bold").ok_or_else(fault)?,
            "font-style" => self.italic = one_of(value, "normal", "italic").ok_or_else(fault)?,
            "stroke-dasharray" => {
                let cuts = value.split([' ', ',']).filter(|part| !part.is_empty());
                let none = value == "none";
                let dashes = cuts.map(|part| number(node, name, part));
                self.dashes = if none {
                    Vec::new()
                } else {
                    dashes.collect::<Result<_, _>>()?
                };
            }
            "text-anchor" => {
                self.anchor = match value {
                    "start" => Anchor::Start,
                    "middle" => Anchor::Middle,
                    "end" => Anchor::End,
                    _ => return Err(fault()),
                }
            }
            // All words are set in the one serif.
            "font-family" => {}
            _ => return Ok(false),
        }
        Ok(true)
    }
}

/// A fault of a value.
pub(super) fn wrong(node: Node, attribute: &str, value: &str) -> Fault {
    Fault::Value {
        element: node.tag_name().name().to_owned(),
        attribute: attribute.to_owned(),
        value: value.chars().take(40).collect(),
    }
}

/// A finite number without a unit.
pub(super) fn number(node: Node, name: &str, value: &str) -> Result<f64, Fault> {
    let read = value.trim().parse::<f64>().ok().filter(|n| n.is_finite());
    read.ok_or_else(|| wrong(node, name, value))
}

/// A length on paper, points.
pub(super) fn points(node: Node, name: &str, value: &str) -> Result<f64, Fault> {
    let fault = || wrong(node, name, value);
    let Length { number, unit } = Length::from_str(value).map_err(|_| fault())?;
    let by = match unit {
        LengthUnit::None | LengthUnit::Px => 0.75,
        LengthUnit::Pt => 1.0,
        LengthUnit::In => 72.0,
        LengthUnit::Mm => 72.0 / 25.4,
        LengthUnit::Cm => 72.0 / 2.54,
        _ => return Err(fault()),
    };
    Ok(number * by)
}

fn one_of(value: &str, off: &str, on: &str) -> Option<bool> {
    (value == on || value == off).then_some(value == on)
}

/// A colour or none; nothing when it is neither.
fn paint(value: &str) -> Option<Paint> {
    if value == "none" {
        return Some(None);
    }
    let color = Color::from_str(value).ok().filter(|c| c.alpha == 255)?;
    Some(Some([color.red, color.green, color.blue]))
}
