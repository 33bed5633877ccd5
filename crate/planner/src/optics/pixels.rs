//! The camera's own pixels.
use glam::{DVec2, dvec2};

use super::view::Lens;
use crate::layout::Layout;
use crate::shape::frame_outline;

/// Where places on the table plane lie among the camera's pixels: the picture
/// upright as the camera sees it, (0, 0) its top left corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pixels {
    /// Pixels across and down.
    pub size: [i32; 2],
    /// Whether the layout says so many; else they are those of the usual model
    /// of its sensor.
    pub told: bool,
    /// The middle of the picture on the table, mm.
    at: DVec2,
    /// A mm of the table to the picture's right, in pixels.
    across: DVec2,
}

impl Pixels {
    /// The pixels of a layout's camera, whose picture the frame just fills.
    #[must_use]
    pub fn of(layout: &Layout) -> Self {
        let corners = frame_outline(&layout.frame);
        let (wide, high) = (f64::from(layout.frame.width), layout.frame.height());
        let lens = Lens::of(&layout.camera);
        let [long, short] = lens.pixels;
        // A picture higher than wide is shot with the camera on its side.
        let size = if high > wide {
            [short, long]
        } else {
            [long, short]
        };
        Self {
            size,
            told: layout.camera.pixels.is_some(),
            at: layout.frame.at.vec(),
            across: (corners[1] - corners[0]) * (lens.density_over(wide, high) / wide),
        }
    }

    /// Pixels to a mm of the table.
    #[must_use]
    pub fn per_mm(&self) -> f64 {
        self.across.length()
    }

    /// Half the picture, in pixels.
    #[must_use]
    pub fn half(&self) -> DVec2 {
        DVec2::from(self.size.map(f64::from)) * 0.5
    }

    /// Where a place of the table plane lies, in pixels.
    #[must_use]
    pub fn pixel(&self, place: DVec2) -> DVec2 {
        let by = place - self.at;
        dvec2(by.dot(self.across), self.across.perp_dot(by)) + self.half()
    }

    /// Which place of the table plane lies there, mm.
    #[must_use]
    pub fn place(&self, pixel: DVec2) -> DVec2 {
        let mm = self.across / self.across.length_squared();
        self.at + mm.rotate(pixel - self.half())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{LayoutId, Ratio, Turn};

    #[test]
    fn there_and_back_on_a_turned_frame() {
        let mut layout = Layout::empty(LayoutId(1));
        layout.frame.turn = Turn::from_degrees(90.0);
        let pixels = Pixels::of(&layout);
        assert_eq!((pixels.size, pixels.told), ([6_000, 4_000], false));
        let corner = frame_outline(&layout.frame)[0];
        assert!(pixels.pixel(corner).length() < 1e-6, "the top left corner");
        let off = pixels.place(pixels.pixel(DVec2::splat(7.0))) - DVec2::splat(7.0);
        assert!(off.length() < 1e-9, "{off}");
    }

    #[test]
    fn a_frame_higher_than_wide_is_a_picture_higher_than_wide() {
        let mut layout = Layout::empty(LayoutId(1));
        layout.frame.ratio = Ratio {
            width: 2,
            height: 3,
        };
        layout.camera.pixels = Some([900, 600]);
        let pixels = Pixels::of(&layout);
        assert_eq!((pixels.size, pixels.told), ([600, 900], true));
        let per = 600.0 / f64::from(layout.frame.width);
        assert!((pixels.per_mm() - per).abs() < 1e-9, "the frame fills it");
    }
}
