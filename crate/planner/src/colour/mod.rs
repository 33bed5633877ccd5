//! Colour as the eye and the camera compare it: Lab, differences, bands,
//! contrast, and how colour is read off a photo.
//!
//! ```
//! use planner::colour::{Band, Lab, hyab, lab, separation};
//! use planner::layout::Srgb;
//!
//! let [x, y] = [Lab { l: 50.0, a: 3.0, b: 4.0 }, Lab { l: 40.0, a: 0.0, b: 0.0 }];
//! assert_eq!(hyab(x, y), 15.0, "10 of lightness and 5 on the plane");
//! // Dark red on charcoal differs by 42, and by tone alone by 7: it sinks.
//! let [board, wine] = [0x42_3e39, 0x5c_1020].map(|hex| lab(Srgb::hex(hex)));
//! assert_eq!(separation(board, wine).band(), Band::Merges);
//! ```
mod contrast;
mod lab;
mod palette;
pub mod photo;
mod separation;
mod shades;
mod skin;

pub use contrast::{
    CONTRAST_LARGE, CONTRAST_TEXT, contrast, contrast_of, luminance_of, relative_luminance,
};
pub use lab::{Lab, ciede2000, delta_c, delta_l, hyab, lab, srgb, under_light};
pub use palette::{Family, MERGED_WITHIN, NEUTRAL_BELOW, Swatch, chroma, family, palette};
pub use separation::{
    Band, CLEAR_FROM, DARK_BELOW, STRONG_FROM, Separation, TONE_FROM, WEAK_FROM, separation,
};
pub use shades::{MixedSeparation, Shade, mixed_separation, shades};
pub use skin::SKINS;
