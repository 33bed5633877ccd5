//! What holds the camera: does it stand, does it reach, and what would steady
//! it? Statics of rigid bodies. How far an arm sags and whether a clamp slips
//! is not worked out.
mod hold;
mod stand;
mod tipping;

pub use hold::{TARGET, bag_for, counterweight_for};
pub use stand::{ABOVE_CAMERA, BAG_ALONG, HUB_HEIGHT, Stand, leg_height};
pub use tipping::{Edge, MOST, Mass, Tipping, tipping};
