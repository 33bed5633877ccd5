//! The one light in space: where it stands, which way it faces, how large it
//! is; how much of it reaches a place, what stands in its way, and what a level
//! mirror shows of it and of the rig.
mod illuminance;
mod level;
mod mirror;
mod mirrored;
mod occluder;
mod rim;
mod shade;
mod source;
mod strip;

pub use illuminance::{illuminance, stops};
pub use level::{LevelShade, Plate};
pub use mirror::{Mirror, WATER, fresnel};
pub use mirrored::{ARM, CAMERA, MIRRORED, Mirrored, PERSON};
pub use occluder::Occluder;
pub use rim::catches;
pub use shade::{SCANS, may_shade, seen_share, seen_share_within};
pub use source::Source;
