//! The pen every part of a picture is drawn with.

use glam::DVec2;

/// Weight and light shared by everything in one picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pen {
    /// Base weight of an ink line on the table, mm.
    pub weight: f64,
    /// The way shadows fall, away from the window; a unit vector, y down.
    pub fall: DVec2,
    /// False halves grain, weave and herbs, for small screens.
    pub fine: bool,
}

impl Pen {
    /// `count` small things, or half of them where the pen is not fine.
    pub(super) fn some(&self, count: usize) -> usize {
        if self.fine { count } else { count.div_ceil(2) }
    }
}
