//! What a lens sees of the table: sensor sizes and the thin lens.
mod lens;
mod sensor;

pub use lens::{
    coverage, distance_for_width, image_distance, magnification, object_distance, sensor_to_object,
};
pub use sensor::{PHONE_CROP, SENSORS, Sensor, phone_lens};
