//! What each placement cuts out of the picture.
use serde::{Serialize, Serializer};

use super::limits::{MAX_ITEMS, MAX_NAME, MAX_SIZE};
use super::problem::ProblemKind;
use super::read::Fields;
use super::value::{Extra, Id, Point, Ratio};

/// The proportions of a crop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CropShape {
    /// A ratio for the screen.
    Ratio(Ratio),
    /// A trimmed print size, mm: width and height.
    Print([i32; 2]),
}

impl CropShape {
    /// Height on the table for this width on the table, mm.
    #[must_use]
    pub fn height_for(self, width: f64) -> f64 {
        match self {
            Self::Ratio(r) => r.height_for(width),
            Self::Print([w, h]) => width * f64::from(h) / f64::from(w),
        }
    }
}

/// Where type goes within a crop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CopyArea {
    /// Centre, mm on the table from the crop's centre, right.
    pub dx: i32,
    /// Centre, mm on the table from the crop's centre, down.
    pub dy: i32,
    /// Width, mm on the table.
    pub width: i32,
    /// Depth, mm on the table.
    pub depth: i32,
}

impl Serialize for CopyArea {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        [self.dx, self.dy, self.width, self.depth].serialize(s)
    }
}

/// Copy space: the area and the words meant for it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CopySpace {
    /// Where.
    pub area: CopyArea,
    /// The words.
    pub wording: String,
}

/// One crop over the frame.
#[derive(Clone, Debug, PartialEq)]
pub struct Crop {
    /// Its number in the layout.
    pub id: Id,
    /// The user's name for it.
    pub name: String,
    /// Its proportions.
    pub shape: CropShape,
    /// Its centre on the table.
    pub at: Point,
    /// Width on the table plane, mm.
    pub width: i32,
    /// Bleed in mm of the print.
    pub bleed: i32,
    /// Safe margin in mm of the print.
    pub safe: i32,
    /// Gutter strip, centred on the fold, mm of the print; 0 for none.
    pub gutter: i32,
    /// Where type goes.
    pub copy: Option<CopySpace>,
    /// Whether it must be delivered, or would be nice.
    pub must: bool,
    /// Items it may not cut.
    pub must_show: Vec<Id>,
    /// Unknown fields.
    pub extra: Extra,
}

impl Crop {
    pub(super) fn read(f: &mut Fields<'_>) -> Self {
        let (id, at) = (f.id("id"), f.point("at"));
        let width = f.int("width", 20..=MAX_SIZE);
        let ratio = f.ratio("ratio").map(CropShape::Ratio);
        let print = f.size_pair("print", 5_000).map(CropShape::Print);
        if ratio.is_some() == print.is_some() {
            f.bad(
                ProblemKind::Value,
                "ratio",
                "both or neither",
                "a ratio or a print size",
            );
        }
        let copy = f.object("copy", |c| {
            let area = c.area("area").filter(|a| a[2] > 0 && a[3] > 0);
            let [dx, dy, width, depth] = c.required("area", area, [0, 0, 1, 1]);
            CopySpace {
                area: CopyArea {
                    dx,
                    dy,
                    width,
                    depth,
                },
                wording: c.text("wording", MAX_NAME * 2),
            }
        });
        let square = CropShape::Ratio(Ratio {
            width: 1,
            height: 1,
        });
        Self {
            id: f.required("id", id, Id(0)),
            name: f.name("name"),
            shape: ratio.or(print).unwrap_or(square),
            at: f.required("at", at, Point::default()),
            width: f.required("width", width, 100),
            bleed: f.int("bleed", 0..=100).unwrap_or(0),
            safe: f.int("safe", 0..=200).unwrap_or(0),
            gutter: f.int("gutter", 0..=200).unwrap_or(0),
            copy,
            must: f.flag("must"),
            must_show: f.ids("must_show", MAX_ITEMS),
            extra: f.extra(),
        }
    }

    /// Width and height on the table plane, mm.
    #[must_use]
    pub fn extent(&self) -> [f64; 2] {
        let width = f64::from(self.width);
        [width, self.shape.height_for(width)]
    }

    /// Millimetres on the table for one millimetre of the print, if printed.
    #[must_use]
    pub fn print_scale(&self) -> Option<f64> {
        match self.shape {
            CropShape::Print([w, _]) => Some(f64::from(self.width) / f64::from(w)),
            CropShape::Ratio(_) => None,
        }
    }
}

impl Serialize for Crop {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        #[derive(Serialize)]
        struct Written<'a> {
            id: Id,
            name: &'a str,
            #[serde(skip_serializing_if = "Option::is_none")]
            ratio: Option<Ratio>,
            #[serde(skip_serializing_if = "Option::is_none")]
            print: Option<[i32; 2]>,
            at: Point,
            width: i32,
            bleed: i32,
            safe: i32,
            gutter: i32,
            #[serde(skip_serializing_if = "Option::is_none")]
            copy: &'a Option<CopySpace>,
            must: bool,
            #[serde(skip_serializing_if = "Vec::is_empty")]
            must_show: &'a Vec<Id>,
            #[serde(flatten)]
            extra: &'a Extra,
        }
        let (ratio, print) = match self.shape {
            CropShape::Ratio(r) => (Some(r), None),
            CropShape::Print(p) => (None, Some(p)),
        };
        Written {
            id: self.id,
            name: &self.name,
            ratio,
            print,
            at: self.at,
            width: self.width,
            bleed: self.bleed,
            safe: self.safe,
            gutter: self.gutter,
            copy: &self.copy,
            must: self.must,
            must_show: &self.must_show,
            extra: &self.extra,
        }
        .serialize(s)
    }
}
