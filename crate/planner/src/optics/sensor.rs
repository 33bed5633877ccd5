//! Sizes of sensors, and the lens of a phone from what it is quoted as.

use glam::DVec2;

use crate::layout::Format;

/// A sensor size as the trade names it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sensor {
    /// Long side, mm.
    pub width: f64,
    /// Short side, mm.
    pub height: f64,
    /// Ratio of the full-frame diagonal to this one, as commonly rounded.
    pub crop: f64,
    /// Pixels along the long side of the usual model (from memory).
    pub pixels_wide: u32,
    /// Pixels along the short side.
    pub pixels_high: u32,
}

impl Sensor {
    /// Long and short side, mm.
    #[must_use]
    pub const fn size(self) -> DVec2 {
        DVec2::new(self.width, self.height)
    }

    /// Largest blur in mm that still prints as sharp: full frame's 0.030 mm
    /// divided by the crop factor, from 0.25 mm on an 8 × 10 inch print.
    #[must_use]
    pub fn sharp_blur(self) -> f64 {
        0.030 / self.crop
    }

    /// Full frame, 36 × 24 mm.
    pub const FULL_FRAME: Self = Self::new(36.0, 24.0, 1.0, 6000, 4000);
    /// APS-C with crop factor 1.5 (size from memory).
    pub const APS_C: Self = Self::new(23.5, 15.6, 1.53, 6000, 4000);
    /// APS-C with crop factor 1.6.
    pub const APS_C_SMALL: Self = Self::new(22.3, 14.9, 1.61, 6000, 4000);
    /// Four thirds.
    pub const FOUR_THIRDS: Self = Self::new(17.3, 13.0, 2.0, 5184, 3888);
    /// Medium format 44 × 33; one source gives 32.8 for the short side.
    pub const MEDIUM: Self = Self::new(43.8, 32.9, 0.79, 8256, 6192);
    /// The main camera of a phone, 1/1.28 type (from memory).
    pub const PHONE: Self = Self::new(9.8, 7.3, 3.5, 4032, 3024);

    /// The sensor of a layout's camera.
    #[must_use]
    pub const fn of(format: Format) -> Self {
        match format {
            Format::FullFrame => Self::FULL_FRAME,
            Format::ApsC => Self::APS_C,
            Format::ApsCSmall => Self::APS_C_SMALL,
            Format::FourThirds => Self::FOUR_THIRDS,
            Format::Medium => Self::MEDIUM,
            Format::Phone => Self::PHONE,
        }
    }

    const fn new(width: f64, height: f64, crop: f64, wide: u32, high: u32) -> Self {
        Self {
            width,
            height,
            crop,
            pixels_wide: wide,
            pixels_high: high,
        }
    }
}

/// Every sensor known here.
pub const SENSORS: [Sensor; 6] = [
    Sensor::FULL_FRAME,
    Sensor::APS_C,
    Sensor::APS_C_SMALL,
    Sensor::FOUR_THIRDS,
    Sensor::MEDIUM,
    Sensor::PHONE,
];

/// Crop factor of [`Sensor::PHONE`].
pub const PHONE_CROP: f64 = Sensor::PHONE.crop;

/// Sensor size and real focal length, both in mm, of a phone whose lens is
/// quoted as `equivalent` mm.
///
/// Phones quote a focal length of equal diagonal: their 4:3 frame is
/// 34.61 × 25.96 mm at that length, and everything real is smaller by the crop
/// factor.
#[must_use]
pub fn phone_lens(equivalent: f64) -> (DVec2, f64) {
    (
        DVec2::new(34.61, 25.96) / PHONE_CROP,
        equivalent / PHONE_CROP,
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::optics::coverage;

    #[test]
    fn crop_factors_follow_from_the_diagonals() {
        let full = Sensor::FULL_FRAME.size().length();
        for sensor in SENSORS {
            let crop = full / sensor.size().length();
            assert!(
                (crop / sensor.crop - 1.0).abs() < 0.02,
                "{sensor:?}: {crop}"
            );
        }
    }

    #[test]
    fn long_side_comes_first() {
        for sensor in SENSORS {
            assert!(sensor.width > sensor.height, "{sensor:?}");
            assert!(sensor.pixels_wide > sensor.pixels_high, "{sensor:?}");
        }
    }

    #[test]
    fn phone_covers_by_its_equivalent() {
        for (equivalent, factor) in [(24.0, 1.442), (26.0, 1.331)] {
            let (sensor, focal) = phone_lens(equivalent);
            let distance = 1500.0 + focal;
            let width = coverage(sensor, focal, distance)
                .expect("in front of the lens")
                .x;
            assert!(
                (width / 1500.0 - factor).abs() < 5e-4,
                "{equivalent} mm: {width}"
            );
        }
    }
}
