//! The one light in space: where it stands, which way it faces, how large it
//! is, and what a level mirror shows of it and of the rig.
mod mirror;
mod mirrored;
mod rim;
mod source;

pub use mirror::{Mirror, WATER, fresnel};
pub use mirrored::{ARM, CAMERA, MIRRORED, Mirrored, PERSON};
pub use rim::catches;
pub use source::Source;
