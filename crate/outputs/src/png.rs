//! Drawings as pictures of pixels.
use std::sync::Arc;

use resvg::tiny_skia::{Pixmap, Transform};
use resvg::usvg::fontdb::Database;
use resvg::usvg::{Options, Tree};

use crate::face::CUTS;

/// How many pixels a picture gets.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Size {
    /// So many to an inch of the drawing's own size.
    Dpi(f64),
    /// So many across.
    Across(u32),
}

/// Longest side of a picture, pixels.
const MOST: f64 = 20_000.0;

/// Why there is no picture.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum PngFault {
    /// The drawing is not understood.
    #[error("the drawing is not read: {0}")]
    Drawing(String),
    /// It would have no pixels, or too many.
    #[error("{0} × {1} pixels: a picture has from 1 to 20,000 on each side")]
    Pixels(u64, u64),
    /// It cannot be packed.
    #[error("the picture is not packed: {0}")]
    Packed(String),
}

/// A drawing as a PNG, in the serif that PDFs have.
///
/// # Errors
/// When the drawing is not understood or the picture would be too large.
pub fn png(svg: &str, size: Size) -> Result<Vec<u8>, PngFault> {
    let mut fonts = Database::new();
    for cut in CUTS {
        fonts.load_font_data(cut.data().to_vec());
    }
    fonts.set_serif_family("Noto Serif");
    let options = Options {
        fontdb: Arc::new(fonts),
        ..Options::default()
    };
    let tree = Tree::from_str(svg, &options).map_err(|e| PngFault::Drawing(e.to_string()))?;
    let [wide, high] = [tree.size().width(), tree.size().height()].map(f64::from);
    let by = match size {
        Size::Dpi(dpi) => dpi / 96.0,
        Size::Across(pixels) => f64::from(pixels) / wide,
    };
    let [across, down] = [wide, high].map(|side| (side * by).round());
    if !(1.0..=MOST).contains(&across) || !(1.0..=MOST).contains(&down) {
        return Err(PngFault::Pixels(across as u64, down as u64));
    }
    let pixels = PngFault::Pixels(across as u64, down as u64);
    let mut picture = Pixmap::new(across as u32, down as u32).ok_or(pixels)?;
    let scale = Transform::from_scale((across / wide) as f32, (down / high) as f32);
    resvg::render(&tree, scale, &mut picture.as_mut());
    picture
        .encode_png()
        .map_err(|e| PngFault::Packed(e.to_string()))
}
