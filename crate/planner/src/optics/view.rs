//! Where the lens sees a point: everything is drawn out from the place right
//! under it.
//!
//! Relief displacement of a vertical photograph (Mahun, *Photogrammetry*, ch.
//! C; Hicks, *Handbook of Civil Engineering Calculations*): a point at height
//! `z` over the place `p` covers the table at `n + (p − n)·H/(H − z)`, with the
//! lens `H` above the place `n`.
use glam::DVec2;

use super::lens::{coverage, distance_for_width, image_distance};
use super::sensor::Sensor;
use crate::layout::{Camera, Format, Layout};

/// Where a view is taken from. Pictures are in mm on the table plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum View {
    /// From straight above every point: nothing leans.
    Above,
    /// Through a lens.
    Lens {
        /// The place right under the lens.
        under: DVec2,
        /// The lens above the table, mm.
        height: f64,
    },
}

/// Least distance in mm at which anything before the lens is still drawn:
/// what reaches higher is cut there.
pub const NEAREST: f64 = 10.0;

/// Two shapes whose sides differ by a smaller factor are the same. Our choice.
const SAME_SHAPE: f64 = 1.02;

impl View {
    /// What the camera of a layout sees; from above when its lens cannot show
    /// this frame.
    #[must_use]
    pub fn of(layout: &Layout) -> Self {
        let frame = &layout.frame;
        Lens::of(&layout.camera)
            .height_over(f64::from(frame.width), frame.height())
            .map_or(Self::Above, |height| Self::Lens {
                under: frame.at.vec(),
                height,
            })
    }

    /// How much larger than on the table a thing at height `z` mm is seen.
    #[must_use]
    pub fn scale(self, z: f64) -> f64 {
        match self {
            Self::Above => 1.0,
            Self::Lens { height, .. } => height / (height - z).max(NEAREST),
        }
    }

    /// Where on the table plane a point at height `z` mm over `p` is seen.
    #[must_use]
    pub fn project(self, p: DVec2, z: f64) -> DVec2 {
        match self {
            Self::Above => p,
            Self::Lens { under, .. } => under + (p - under) * self.scale(z),
        }
    }
}

/// A lens on its sensor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lens {
    /// Long and short side of the sensor, mm.
    pub sensor: DVec2,
    /// Real focal length, mm.
    pub focal: f64,
    /// Largest blur that still prints as sharp, mm.
    pub blur: f64,
    /// Pixels along the long and the short side.
    pub pixels: [i32; 2],
}

impl Lens {
    /// The lens of a camera.
    #[must_use]
    pub fn of(camera: &Camera) -> Self {
        let sensor = Sensor::of(camera.format);
        let quoted = f64::from(camera.focal);
        let (size, focal) = if camera.format == Format::Phone {
            super::sensor::phone_lens(quoted)
        } else {
            (sensor.size(), quoted)
        };
        let usual = [sensor.pixels_wide as i32, sensor.pixels_high as i32];
        Self {
            sensor: size,
            focal,
            blur: sensor.sharp_blur(),
            pixels: camera.pixels.unwrap_or(usual),
        }
    }

    /// Lens above the table, mm, when a picture of these sides just fills the
    /// sensor, its long side along the sensor's; `None` when it cannot.
    #[must_use]
    pub fn height_over(&self, width: f64, height: f64) -> Option<f64> {
        distance_for_width(self.sensor.x, self.focal, self.across(width, height))
    }

    /// What is seen across the sensor's long side when a picture of these
    /// sides just fills it, mm.
    fn across(&self, width: f64, height: f64) -> f64 {
        let (long, short) = (width.max(height), width.min(height));
        // A narrower ratio than the sensor's is cut out of its long side.
        long.max(short * self.sensor.x / self.sensor.y)
    }

    /// How wide a picture is that fills the sensor from so high, mm, when it
    /// is `share` times as high as wide; `None` from within the focal length.
    #[must_use]
    pub fn width_under(&self, lens: f64, share: f64) -> Option<f64> {
        let seen = coverage(self.sensor, self.focal, lens)?;
        Some(seen.x / self.across(1.0, share))
    }

    /// Pixels for each mm of the table when a picture of these sides just
    /// fills the sensor.
    #[must_use]
    pub fn density_over(&self, width: f64, height: f64) -> f64 {
        let [long, short] = self.pixels.map(f64::from);
        let upright = short * self.sensor.x / self.sensor.y;
        let (least, most) = (long.min(upright), long.max(upright));
        // Sizes of sensors are rounded; a camera that is told to save another
        // shape leaves pixels unused on one pair of sides.
        let fine = if most < least * SAME_SHAPE {
            least
        } else {
            most
        };
        fine / self.across(width, height)
    }

    /// Sensor above the table, mm, for a lens so high.
    #[must_use]
    pub fn sensor_height(&self, lens: f64) -> Option<f64> {
        image_distance(self.focal, lens).map(|behind| lens + behind)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use glam::dvec2;

    #[test]
    fn a_rim_leans_out_by_its_share_of_the_height() {
        let view = View::Lens {
            under: dvec2(100.0, 50.0),
            height: 1500.0,
        };
        let foot = dvec2(700.0, 50.0);
        let lean = view.project(foot, 240.0) - foot;
        // 600·240/(1500 − 240), away from the place under the lens.
        assert!((lean.x - 600.0 * 240.0 / 1260.0).abs() < 1e-9 && lean.y == 0.0);
        assert_eq!(view.project(dvec2(100.0, 50.0), 240.0), dvec2(100.0, 50.0));
        assert_eq!(View::Above.project(foot, 240.0), foot);
    }

    #[test]
    fn what_reaches_past_the_lens_stays_finite() {
        let view = View::Lens {
            under: DVec2::ZERO,
            height: 200.0,
        };
        for z in [200.0, 5_000.0] {
            assert!(view.project(dvec2(900.0, -900.0), z).is_finite(), "{z}");
        }
    }

    #[test]
    fn another_shape_of_file_has_pixels_no_larger() {
        let with = |pixels| {
            let camera = Camera {
                pixels: Some(pixels),
                ..Camera::default()
            };
            Lens::of(&camera).density_over(1_200.0, 675.0)
        };
        let usual = with([6_000, 4_000]);
        assert!((usual - 5.0).abs() < 1e-12, "6000 across 1200 mm: {usual}");
        for cut in [
            [6_000, 3_375],
            [4_000, 4_000],
            [5_328, 4_000],
            [6_020, 4_000],
        ] {
            let same = with(cut);
            assert!((same - usual).abs() < 1e-9, "{cut:?}: {same}");
        }
    }

    #[test]
    fn a_square_frame_needs_the_sensors_short_side() {
        let lens = Lens::of(&Camera::default());
        let whole = lens.height_over(900.0, 600.0).expect("sound");
        let square = lens.height_over(600.0, 600.0).expect("sound");
        assert!((whole - square).abs() < 1e-9, "both fill 24 mm with 600");
    }
}
