//! What a lens sees of the table: sensor sizes, the thin lens, where things
//! lean, and how deep it is sharp.
mod depth;
mod hand;
mod lens;
mod pixels;
mod sensor;
mod view;

pub use depth::{STOPS, Sharp, airy, depth_of_field, focus_for, hyperfocal};
pub use hand::{at_hand, common_lenses};
pub use lens::{
    coverage, distance_for_width, image_distance, magnification, object_distance, sensor_to_object,
};
pub use pixels::Pixels;
pub use sensor::{PHONE_CROP, SENSORS, Sensor, phone_lens};
pub use view::{Lens, NEAREST, View};
