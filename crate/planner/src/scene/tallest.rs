//! How high the picture reaches, and where to focus in it.
use super::rise;
use crate::layout::{Id, Layout};
use crate::optics::{Lens, focus_for};
use crate::shape::{Region, frame_outline};

/// The tallest thing in the frame and how high it reaches above the table.
#[must_use]
pub fn tallest(l: &Layout) -> Option<(Id, f64)> {
    let frame = Region::from_polygon(&frame_outline(&l.frame)).ok()?;
    let inside = l.items.iter().filter(|i| frame.contains(i.at.vec()));
    inside
        .map(|i| (i.id, rise(l, i).top))
        .max_by(|a, b| a.1.total_cmp(&b.1).then(b.0.cmp(&a.0)))
}

/// Where above the table to focus so that it and the tallest top come out
/// equally sharp, mm; `None` when something reaches up to the lens.
#[must_use]
pub fn even_focus(l: &Layout) -> Option<f64> {
    let lens = Lens::of(&l.camera);
    let height = lens.height_over(f64::from(l.frame.width), l.frame.height())?;
    let top = tallest(l).map_or(0.0, |t| t.1);
    let (distance, _) = focus_for(lens.focal, lens.blur, height - top, height)?;
    Some(height - distance)
}
