//! Colour as the eye and the camera compare it: Lab, differences, bands,
//! contrast, what people with colour-vision deficiencies see, and how colour is
//! read off a photo.
mod contrast;
mod deficiency;
mod lab;
mod palette;
pub mod photo;
mod separation;
mod shades;
mod skin;

pub use contrast::{
    CONTRAST_LARGE, CONTRAST_TEXT, contrast, contrast_of, luminance_of, relative_luminance,
};
pub use deficiency::{Deficiency, seen, seen_lab};
pub use lab::{Lab, ciede2000, delta_c, delta_l, hyab, lab, srgb, under_light};
pub use palette::{Family, MERGED_WITHIN, NEUTRAL_BELOW, Swatch, chroma, family, palette};
pub use separation::{
    Band, CLEAR_FROM, DARK_BELOW, STRONG_FROM, Separation, TONE_FROM, WEAK_FROM, separation,
};
pub use shades::{MixedSeparation, Shade, mixed_separation, shades};
pub use skin::{SKIN_CLASSES, SKINS, typology_angle};
