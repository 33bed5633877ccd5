//! The picture whose directions and edges a reading goes by.
use glam::DVec2;

use crate::layout::{Crop, Frame};
use crate::words::clock;

/// The picture under study on the table plane: the frame, or a crop of it.
#[derive(Clone, Copy)]
pub(super) struct Picture {
    /// Its centre.
    pub(super) at: DVec2,
    /// Width and height, mm.
    pub(super) size: DVec2,
    /// Sine and cosine of its turn.
    turn: DVec2,
}

impl Picture {
    /// Of a frame, or of a crop of it.
    pub(super) fn of(frame: &Frame, crop: Option<&Crop>) -> Self {
        let (sin, cos) = libm::sincos(frame.turn.radians());
        let (at, size) = match crop {
            Some(crop) => (crop.at, DVec2::from_array(crop.extent())),
            None => (frame.at, DVec2::new(f64::from(frame.width), frame.height())),
        };
        Self {
            at: at.vec(),
            size,
            turn: DVec2::new(sin, cos),
        }
    }

    /// A place on the table in picture coordinates: mm right and down from
    /// the picture's top-left corner.
    pub(super) fn of_table(&self, p: DVec2) -> DVec2 {
        let back = DVec2::new(self.turn.y, -self.turn.x);
        back.rotate(p - self.at) + self.size * 0.5
    }

    /// A place in the picture on the table.
    pub(super) fn on_table(&self, p: DVec2) -> DVec2 {
        let turn = DVec2::new(self.turn.y, self.turn.x);
        turn.rotate(p - self.size * 0.5) + self.at
    }

    /// Where a place of the table lies from its middle, to the hour.
    pub(super) fn hour_of(&self, p: DVec2) -> String {
        let off = self.of_table(p) - self.size * 0.5;
        let degrees = libm::atan2(off.x, -off.y).to_degrees();
        clock((degrees / 30.0).round() * 30.0)
    }

    /// Its diagonal, mm.
    pub(super) fn diagonal(&self) -> f64 {
        self.size.length()
    }
}
