//! Lenses to choose from.
use crate::layout::{Camera, Format};

/// Focal lengths lenses are commonly made in, mm (from memory).
const LENSES: [i32; 14] = [12, 14, 16, 18, 20, 24, 28, 35, 40, 50, 60, 85, 100, 135];
/// Those that phones are quoted with, by their usual cameras and the crops of
/// them, mm of equal diagonal (from memory).
const PHONE_LENSES: [i32; 5] = [24, 26, 28, 35, 48];

/// Focal lengths that are common for a format, mm, shortest first.
#[must_use]
pub const fn common_lenses(format: Format) -> &'static [i32] {
    match format {
        Format::Phone => &PHONE_LENSES,
        _ => &LENSES,
    }
}

/// Focal lengths to choose from, shortest first: the user's own, else the
/// common ones.
#[must_use]
pub fn at_hand(camera: &Camera) -> Vec<i32> {
    let own = camera.lenses.as_slice();
    let from = if own.is_empty() {
        common_lenses(camera.format)
    } else {
        own
    };
    let mut all = from.to_vec();
    crate::order::sort(&mut all, i32::cmp);
    all.dedup();
    all
}
