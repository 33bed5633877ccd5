//! The picture of a layout, or why there is none.
use std::path::Path;

use outputs::{Meta, Size, pdf, png};
use planner::drawing::{Shown, View, cut_file, see_through, sheet, side_file};
use planner::layout::{Id, Layout};
use planner::link::public;
use planner::optics;

use crate::call::Drawing;
use crate::report::missing;

/// Pixels across a crop that is kept as a file.
const ACROSS: f64 = 1_100.0;

/// A drawing, and what is to be said beside it.
pub(crate) struct Drawn {
    /// The file.
    pub(crate) svg: String,
    /// What it was made of that nobody said; nothing when there is none.
    pub(crate) note: Option<String>,
}

/// A drawing of a layout with all hands or those of one exposure; of a picture
/// the sheet, or what a crop keeps.
pub(crate) fn drawn(
    layout: &Layout,
    exposure: Option<u16>,
    crop: Option<u16>,
    drawing: Drawing,
) -> Result<Drawn, String> {
    let shown = shown(layout, exposure)?;
    let svg = match drawing {
        Drawing::Above => picture(layout, shown, crop, optics::View::Above),
        Drawing::Lens => picture(layout, shown, crop, optics::View::of(layout)),
        Drawing::Side => {
            let none = "the lens cannot show this frame, so there is nothing to draw from the side";
            side_file(layout).ok_or_else(|| none.into())
        }
        Drawing::SeeThrough => return over_the_view(layout, shown),
    };
    svg.map(|svg| Drawn { svg, note: None })
}

/// A drawing as the file its name asks for: `.png`, so many pixels across or as
/// many as it has units; `.pdf`; or else SVG.
pub(crate) fn file(
    layout: &Layout,
    svg: &str,
    out: &str,
    width: Option<u32>,
) -> Result<Vec<u8>, String> {
    let ending = Path::new(out).extension().unwrap_or_default();
    if ending.eq_ignore_ascii_case("png") {
        let size = width.map_or(Size::Dpi(96.0), Size::Across);
        return png(svg, size).map_err(|fault| fault.to_string());
    }
    if !ending.eq_ignore_ascii_case("pdf") {
        return Ok(format!("{svg}\n").into_bytes());
    }
    let meta = Meta {
        title: &layout.head.title,
        language: "en",
    };
    let made = pdf(&[svg], &meta).map_err(|fault| fault.to_string())?;
    if let Some(note) = boxes(&made.missing) {
        eprintln!("{out}: {note}");
    }
    Ok(made.bytes)
}

/// What is to be said of letters without a shape; nothing when there are none.
pub(crate) fn boxes(missing: &[char]) -> Option<String> {
    let letters: Vec<String> = missing.iter().map(char::to_string).collect();
    let all = letters.join(" ");
    (!missing.is_empty()).then(|| format!("the font has no shape for {all}: an empty box for each"))
}

/// Whose hands an exposure has drawn.
fn shown(layout: &Layout, exposure: Option<u16>) -> Result<Shown, String> {
    match exposure.map(Id) {
        None => Ok(Shown::All),
        Some(id) if layout.exposures.iter().any(|e| e.id == id) => Ok(Shown::Exposure(id)),
        Some(id) => {
            let ids: Vec<Id> = layout.exposures.iter().map(|e| e.id).collect();
            Err(missing("exposure", id, &ids))
        }
    }
}

/// The transparent plan.
fn over_the_view(layout: &Layout, shown: Shown) -> Result<Drawn, String> {
    let none = "the lens cannot show this frame, so there is no view to lay a plan over";
    let plan = see_through(&public(layout), shown).ok_or(none)?;
    let [wide, high] = plan.pixels;
    let note =
        format!("camera.pixels is not said: drawn at {wide} × {high}, as usual for this sensor");
    Ok(Drawn {
        svg: plan.svg,
        note: (!plan.told).then_some(note),
    })
}

/// The sheet, or what a crop keeps.
fn picture(
    layout: &Layout,
    shown: Shown,
    crop: Option<u16>,
    eye: optics::View,
) -> Result<String, String> {
    let Some(id) = crop.map(Id) else {
        return Ok(sheet(layout, shown, eye));
    };
    let view = View {
        shown,
        eye,
        fine: true,
        ..View::default()
    };
    cut_file(layout, Some(id), ACROSS, &view).ok_or_else(|| {
        let ids: Vec<Id> = layout.crops.iter().map(|c| c.id).collect();
        missing("crop", id, &ids)
    })
}
