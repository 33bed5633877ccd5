//! What a lens sees of the table: sensor sizes, the thin lens, where things
//! lean, and how deep it is sharp.
//!
//! ```
//! use glam::{DVec2, dvec2};
//! use planner::optics::{Sensor, View, coverage, depth_of_field};
//!
//! let seen = coverage(Sensor::FULL_FRAME.size(), 50.0, 1500.0).expect("in front");
//! assert!((seen - dvec2(1044.0, 696.0)).length() < 0.1);
//! let sharp = depth_of_field(50.0, 8.0, 0.03, 1500.0).expect("sound");
//! assert!((sharp.near - 1316.7).abs() < 0.1 && (sharp.far - 1742.6).abs() < 0.1);
//! let view = View::Lens { under: DVec2::ZERO, height: 1500.0 };
//! let lean = view.project(dvec2(600.0, 0.0), 240.0).x - 600.0;
//! assert!((lean - 600.0 * 240.0 / 1260.0).abs() < 1e-9);
//! ```
mod depth;
mod hand;
mod lens;
mod pixels;
mod sensor;
mod view;

pub use depth::{STOPS, Sharp, airy, depth_of_field, focus_for, hyperfocal};
pub use hand::{at_hand, common_lenses};
pub use lens::{coverage, distance_for_width, image_distance, magnification};
pub use pixels::Pixels;
pub use sensor::{PHONE_CROP, SENSORS, Sensor, phone_lens};
pub use view::{Lens, NEAREST, View};
